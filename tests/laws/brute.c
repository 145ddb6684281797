/* brute.c - pulls on a thing collected one by one, and all 2^n sets of them. */
#include "laws/brute.h"
#include <math.h>
#include <string.h>

typedef struct pulls {
    double vectors[BRUTE_PULLS + 1][3];
    int count; /* may be more than there is room for */
} pulls;

static void add(pulls *p, const double v[3])
{
    if (p->count < BRUTE_PULLS + 1) memcpy(p->vectors[p->count], v, 3 * sizeof *v);
    p->count++;
}

static void add_weight(pulls *p, int up, double weight)
{
    double v[3] = {0, 0, 0};
    v[up] = -weight;
    if (weight > 0) add(p, v);
}

/* What a part does to the stop at one of its ends. */
static void part_force(const mechanics *m, int part, bool at_start, double v[3])
{
    part_direction(m, part, v);
    for (int k = 0; k < 3; k++) v[k] *= (at_start ? 1 : -1) * m->state->tension[part];
}

static void add_stop(const mechanics *m, const gtl_line *line, int i, pulls *p)
{
    double back[3] = {0, 0, 0};
    double on[3] = {0, 0, 0};
    bool first = i == 0;
    bool last = i == line->stop_count - 1;
    if (!first) part_force(m, line->first_part + i - 1, false, back);
    if (!last) part_force(m, line->first_part + i, true, on);
    if (m->rig->stops[line->first_stop + i].tied) {
        if (!first) add(p, back);
        if (!last) add(p, on);
        add_weight(p, m->rig->dim - 1, line->weight / 2);
        return;
    }
    for (int k = 0; k < 3; k++) on[k] += back[k];
    add(p, on);
}

static void resultant(const mechanics *m, int thing, double sum[3]);

/* All pulls on a thing but that of what it is on. */
static void collect(const mechanics *m, int thing, pulls *p)
{
    p->count = 0;
    for (int l = 0; l < m->rig->line_count; l++)
        for (int i = 0; i < m->rig->lines[l].stop_count; i++)
            if (m->rig->stops[m->rig->lines[l].first_stop + i].thing == thing)
                add_stop(m, &m->rig->lines[l], i, p);
    for (int other = 0; other < m->rig->thing_count; other++) {
        if (m->rig->things[other].on != thing) continue;
        double passed[3];
        resultant(m, other, passed);
        add(p, passed);
    }
    add_weight(p, m->rig->dim - 1, m->rig->things[thing].weight);
}

/* What a thing passes on; NaN where its pulls are too many to keep. */
static void resultant(const mechanics *m, int thing, double sum[3])
{
    pulls p;
    collect(m, thing, &p);
    for (int k = 0; k < 3; k++) {
        sum[k] = p.count > BRUTE_PULLS + 1 ? NAN : 0;
        for (int i = 0; i < p.count && i < BRUTE_PULLS + 1; i++) sum[k] += p.vectors[i][k];
    }
}

static double size_of(const double v[3])
{
    return hypot(hypot(v[0], v[1]), v[2]);
}

static double best_set(const pulls *p)
{
    double best = 0;
    if (p->count > BRUTE_PULLS) return NAN;
    for (unsigned set = 0; set < 1u << p->count; set++) {
        double sum[3] = {0, 0, 0};
        for (int i = 0; i < p->count; i++)
            for (int k = 0; k < 3 && (set >> i & 1u); k++) sum[k] += p->vectors[i][k];
        best = fmax(best, size_of(sum));
    }
    return best;
}

static double body_demand(const mechanics *m, int thing)
{
    pulls p;
    collect(m, thing, &p);
    if (m->rig->things[thing].on >= 0) {
        double passed[3];
        resultant(m, thing, passed);
        if (isnan(passed[0])) return NAN;
        for (int k = 0; k < 3; k++) passed[k] = -passed[k];
        add(&p, passed);
    }
    return best_set(&p);
}

static double line_demand(const mechanics *m, const gtl_line *line, bool push)
{
    double most = 0;
    for (int i = 0; i < line->stop_count - 1; i++)
        most = fmax(most, (push ? -1 : 1) * m->state->tension[line->first_part + i]);
    return most;
}

/* What the parts of a line that come together at a stop pull. */
static void stop_force(const mechanics *m, int stop, double sum[3])
{
    for (int k = 0; k < 3; k++) sum[k] = 0;
    for (int i = 0; i < m->rig->part_count; i++) {
        double v[3] = {0, 0, 0};
        if (m->rig->parts[i].from == stop) part_force(m, i, true, v);
        if (m->rig->parts[i].to == stop) part_force(m, i, false, v);
        for (int k = 0; k < 3; k++) sum[k] += v[k];
    }
}

static double half_weight(const gtl_rig *rig, int stop)
{
    for (int i = 0; i < rig->line_count; i++)
        if (stop >= rig->lines[i].first_stop && stop < rig->lines[i].first_stop + rig->lines[i].stop_count)
            return rig->lines[i].weight / 2;
    return 0;
}

/* Between a thing and what it is on, all that it passes on; at a tied stop what the line pulls, with the half
 * of a spar's weight that hangs there or without it, whichever is worse. */
static double connector_demand(const mechanics *m, const gtl_connector *connector)
{
    double sum[3];
    if (connector->thing >= 0) {
        resultant(m, connector->thing, sum);
        return size_of(sum);
    }
    stop_force(m, connector->stop, sum);
    double alone = size_of(sum);
    sum[m->rig->dim - 1] -= half_weight(m->rig, connector->stop);
    return fmax(alone, size_of(sum));
}

double brute_demand(const mechanics *m, const gtl_component *component, bool push)
{
    double sum[3];
    switch (component->kind) {
    case GTL_ANCHOR:
    case GTL_HAND:
        resultant(m, component->index, sum);
        return size_of(sum);
    case GTL_ROPE:
    case GTL_SLING:
    case GTL_SPAR:
        return line_demand(m, &m->rig->lines[component->index], push);
    case GTL_CONNECTOR:
        return connector_demand(m, &m->rig->connectors[component->index]);
    default:
        return body_demand(m, component->index);
    }
}
