/* mechanics.c - forces, lengths, rates and friction from places and tensions. */
#include "laws/mechanics.h"
#include <math.h>

static const double pi = 3.14159265358979323846;

static int stop_node(const gtl_rig *rig, int stop)
{
    return rig->things[rig->stops[stop].thing].node;
}

mechanics mechanics_of(const gtl_rig *rig, const gtl_state *state)
{
    mechanics m = {rig, state, gtl_rig_force(rig), gtl_rig_size(rig)};
    for (int i = 0; i < rig->part_count; i++) m.force = fmax(m.force, fabs(state->tension[i]));
    return m;
}

double part_direction(const mechanics *m, int part, double unit[3])
{
    const double *a = m->state->at + 3 * stop_node(m->rig, m->rig->parts[part].from);
    const double *b = m->state->at + 3 * stop_node(m->rig, m->rig->parts[part].to);
    double length = hypot(hypot(b[0] - a[0], b[1] - a[1]), b[2] - a[2]);
    for (int k = 0; k < 3; k++) unit[k] = (b[k] - a[k]) / length;
    return length;
}

double part_rate(const mechanics *m, int part)
{
    double unit[3];
    part_direction(m, part, unit);
    const double *a = m->state->rise + 3 * stop_node(m->rig, m->rig->parts[part].from);
    const double *b = m->state->rise + 3 * stop_node(m->rig, m->rig->parts[part].to);
    return (b[0] - a[0]) * unit[0] + (b[1] - a[1]) * unit[1] + (b[2] - a[2]) * unit[2];
}

/* What a stretch of rope from a tied end loses has passed its other end. */
double run_flow(const mechanics *m, int run)
{
    const gtl_run *r = &m->rig->runs[run];
    const gtl_piece *piece = &m->rig->pieces[r->piece];
    double flow = 0;
    for (int i = 0; i < piece->part_count; i++) {
        int part = piece->first_part + i;
        bool before = part <= r->before;
        if (piece->hand >= 0 && piece->hand_first && !before) flow += part_rate(m, part);
        if (!(piece->hand >= 0 && piece->hand_first) && before) flow -= part_rate(m, part);
    }
    return flow;
}

double piece_length(const mechanics *m, int piece)
{
    double unit[3];
    double sum = 0;
    for (int i = 0; i < m->rig->pieces[piece].part_count; i++)
        sum += part_direction(m, m->rig->pieces[piece].first_part + i, unit);
    return sum;
}

double piece_rate(const mechanics *m, int piece)
{
    double sum = 0;
    for (int i = 0; i < m->rig->pieces[piece].part_count; i++)
        sum += part_rate(m, m->rig->pieces[piece].first_part + i);
    return sum;
}

double drawn_length(const gtl_rig *rig, int piece)
{
    double sum = 0;
    for (int i = 0; i < rig->pieces[piece].part_count; i++) {
        const gtl_part *part = &rig->parts[rig->pieces[piece].first_part + i];
        const double *a = rig->nodes[stop_node(rig, part->from)].at;
        const double *b = rig->nodes[stop_node(rig, part->to)].at;
        sum += hypot(hypot(b[0] - a[0], b[1] - a[1]), b[2] - a[2]);
    }
    return sum;
}

int hand_part(const gtl_piece *piece)
{
    return piece->hand_first ? piece->first_part : piece->first_part + piece->part_count - 1;
}

void node_force(const mechanics *m, int node, double sum[3])
{
    for (int k = 0; k < 3; k++) sum[k] = 0;
    for (int i = 0; i < m->rig->part_count; i++) {
        double unit[3];
        part_direction(m, i, unit);
        double pull = m->state->tension[i];
        int ends = (stop_node(m->rig, m->rig->parts[i].from) == node) -
                   (stop_node(m->rig, m->rig->parts[i].to) == node);
        for (int k = 0; k < 3; k++) sum[k] += ends * pull * unit[k];
    }
    for (int i = 0; i < m->rig->thing_count; i++)
        if (m->rig->things[i].node == node) sum[m->rig->dim - 1] -= m->rig->things[i].weight;
    for (int i = 0; i < m->rig->line_count; i++) {
        const gtl_line *line = &m->rig->lines[i];
        if (stop_node(m->rig, line->first_stop) == node) sum[m->rig->dim - 1] -= line->weight / 2;
        if (stop_node(m->rig, line->first_stop + line->stop_count - 1) == node)
            sum[m->rig->dim - 1] -= line->weight / 2;
    }
}

double work_out(const mechanics *m)
{
    int up = m->rig->dim - 1;
    double sum = 0;
    for (int i = 0; i < m->rig->thing_count; i++)
        sum += m->rig->things[i].weight * m->state->rise[3 * m->rig->things[i].node + up];
    for (int i = 0; i < m->rig->line_count; i++) {
        const gtl_line *line = &m->rig->lines[i];
        int first = stop_node(m->rig, line->first_stop);
        int last = stop_node(m->rig, line->first_stop + line->stop_count - 1);
        sum += line->weight / 2 * (m->state->rise[3 * first + up] + m->state->rise[3 * last + up]);
    }
    for (int p = 0; p < m->rig->piece_count; p++)
        if (m->rig->pieces[p].rule == GTL_PULLED)
            sum += m->rig->things[m->rig->pieces[p].hand].pull * piece_rate(m, p);
    return sum;
}

bool has_friction(const gtl_thing *thing)
{
    if (!thing->friction_stated) return false;
    return isnan(thing->friction) ? thing->efficiency < 1 : thing->friction > 0;
}

/* Sine and cosine of the angle by which a run bends its rope. */
static double contact(const mechanics *m, int run)
{
    const gtl_thing *thing = &m->rig->things[m->rig->runs[run].thing];
    if (!isnan(thing->wrap)) return thing->wrap;
    double in[3];
    double out[3];
    part_direction(m, m->rig->runs[run].before, in);
    part_direction(m, m->rig->runs[run].before + 1, out);
    double cross = hypot(hypot(in[1] * out[2] - in[2] * out[1], in[2] * out[0] - in[0] * out[2]),
                         in[0] * out[1] - in[1] * out[0]);
    return atan2(cross, in[0] * out[0] + in[1] * out[1] + in[2] * out[2]);
}

/* A sheave: (T2 - T1)^2 = f^2 (T1^2 + T2^2 - 2 T1 T2 cos w), solved for T2 = q T1 as a quadratic in q,
 * (1 - f^2) q^2 - 2 (1 - f^2 cos w) q + (1 - f^2) = 0, its discriminant free of cancellation. */
double greatest_beside(const mechanics *m, int run, double lesser)
{
    const gtl_thing *thing = &m->rig->things[m->rig->runs[run].thing];
    if (!thing->friction_stated) return lesser;
    double w = contact(m, run);
    if (thing->kind == GTL_FAIRLEAD) {
        double mu = isnan(thing->friction) ? -log(thing->efficiency) / pi : thing->friction;
        return lesser * exp(mu * (w + 2 * pi * thing->turns));
    }
    double f = (1 - thing->efficiency) / (1 + thing->efficiency);
    double chord = 2 * f * f * sin(w / 2) * sin(w / 2); /* f^2 (1 - cos w) */
    return lesser * (1 + (chord + sqrt(chord * (chord + 2 * (1 - f * f)))) / (1 - f * f));
}
