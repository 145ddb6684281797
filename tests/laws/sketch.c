/* sketch.c - parts of a drawn rig added one by one, and the ways to draw it otherwise. */
#include "laws/sketch.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A test that outgrows its sketch is itself wrong. */
static int grown(int *count, int limit, const char *what)
{
    if (*count < limit) return (*count)++;
    fprintf(stderr, "a sketch has no room for more %s than %d\n", what, limit);
    abort();
}

void sketch_begin(sketch *s, int dim)
{
    memset(s, 0, sizeof *s);
    s->dim = dim;
    s->load = -1;
    s->design_factor = s->acceleration = NAN;
}

int sketch_thing_at(sketch *s, gtl_kind kind, double across, double along, double height)
{
    int index = grown(&s->thing_count, SKETCH_THINGS, "things");
    s->things[index] = (sketch_thing){.kind = kind,
                                      .at = {across, along, height},
                                      .on = -1,
                                      .weight = NAN,
                                      .efficiency = NAN,
                                      .friction = NAN,
                                      .wrap = NAN,
                                      .pull = NAN,
                                      .limit = NAN,
                                      .wll = NAN,
                                      .mbs = NAN,
                                      .wear = NAN};
    return index;
}

int sketch_thing_on(sketch *s, gtl_kind kind, int on)
{
    const double *at = s->things[on].at;
    int index = sketch_thing_at(s, kind, at[0], at[1], at[2]);
    s->things[index].on = on;
    return index;
}

int sketch_line_of(sketch *s, gtl_kind kind)
{
    int index = grown(&s->line_count, SKETCH_LINES, "lines");
    s->lines[index] = (sketch_line){.kind = kind,
                                    .length = NAN,
                                    .weight = NAN,
                                    .wll = NAN,
                                    .push_wll = NAN,
                                    .wear = NAN,
                                    .wet = NAN,
                                    .knot = "",
                                    .hitch = ""};
    return index;
}

void sketch_stop_at(sketch *s, int line, int thing)
{
    int stop = grown(&s->lines[line].stop_count, SKETCH_STOPS, "stops");
    s->lines[line].stops[stop] = (sketch_stop){.thing = thing};
}

sketch_via sketch_connectors(sketch *s, int count)
{
    sketch_via via = {s->connector_count, count};
    for (int i = 0; i < count; i++)
        s->connectors[grown(&s->connector_count, SKETCH_CONNECTORS, "connectors")] = NAN;
    return via;
}

int sketch_root(const sketch *s, int thing)
{
    while (s->things[thing].on >= 0) thing = s->things[thing].on;
    return thing;
}

/* What is no length to speak of is none; the reader refuses 1e-40 m. */
static double rounded(double length)
{
    return fabs(length) < 1e-25 ? 0 : length;
}

void sketch_place(const sketch *s, int thing, double at[3])
{
    static const int written[4][3] = {{0}, {2}, {0, 2}, {0, 1, 2}};
    for (int k = 0; k < s->dim; k++) at[k] = rounded(s->things[sketch_root(s, thing)].at[written[s->dim][k]]);
}

void sketch_mirror(sketch *s)
{
    for (int i = 0; i < s->thing_count; i++) s->things[i].at[0] = -s->things[i].at[0];
}

void sketch_turn(sketch *s, double angle)
{
    for (int i = 0; i < s->thing_count; i++) {
        double *at = s->things[i].at;
        double across = at[0] * cos(angle) - at[1] * sin(angle);
        at[1] = at[0] * sin(angle) + at[1] * cos(angle);
        at[0] = across;
    }
}

void sketch_reverse_paths(sketch *s)
{
    for (int i = 0; i < s->line_count; i++) {
        sketch_line *line = &s->lines[i];
        for (int a = 0, b = line->stop_count - 1; a < b; a++, b--) {
            sketch_stop stop = line->stops[a];
            line->stops[a] = line->stops[b];
            line->stops[b] = stop;
        }
    }
}

void sketch_scale_forces(sketch *s, double factor)
{
    for (int i = 0; i < s->thing_count; i++) {
        s->things[i].weight *= factor;
        s->things[i].pull *= factor;
    }
    for (int i = 0; i < s->line_count; i++) s->lines[i].weight *= factor;
}

void sketch_add_friction(sketch *s, chance *c, double most)
{
    for (int i = 0; i < s->thing_count; i++) {
        s->things[i].efficiency *= 1 - chance_between(c, 0, most);
        s->things[i].friction *= 1 + chance_between(c, 0, most);
    }
}

/* Whether a line is tied to a thing that stands in the middle of its path. */
static bool ties_in_the_middle(const sketch *s, int thing)
{
    gtl_kind kind = s->things[thing].kind;
    return kind == GTL_ANCHOR || kind == GTL_JOINT || kind == GTL_LOAD;
}

/* Cut a rope where it is tied; what comes after is a rope of its own. The connectors stay with what comes
 * before. */
static void cut(sketch *s, int line, int stop)
{
    int rest = sketch_line_of(s, s->lines[line].kind);
    for (int i = stop; i < s->lines[line].stop_count; i++) {
        sketch_stop_at(s, rest, s->lines[line].stops[i].thing);
        if (i > stop) s->lines[rest].stops[i - stop].via = s->lines[line].stops[i].via;
    }
    s->lines[line].stop_count = stop + 1;
}

double sketch_length(const sketch *s, int index)
{
    const sketch_line *line = &s->lines[index];
    double length = 0;
    for (int i = 0; i + 1 < line->stop_count; i++) {
        double a[3];
        double b[3];
        sketch_place(s, line->stops[i].thing, a);
        sketch_place(s, line->stops[i + 1].thing, b);
        double square = 0;
        for (int k = 0; k < s->dim; k++) square += (a[k] - b[k]) * (a[k] - b[k]);
        length += sqrt(square);
    }
    return length;
}

static bool is_hauled(const sketch *s, const sketch_line *line)
{
    return s->things[line->stops[0].thing].kind == GTL_HAND ||
           s->things[line->stops[line->stop_count - 1].thing].kind == GTL_HAND;
}

void sketch_fix_lengths(sketch *s)
{
    for (int i = 0; i < s->line_count; i++) /* grows while cutting */
        for (int k = 1; k + 1 < s->lines[i].stop_count; k++)
            if (ties_in_the_middle(s, s->lines[i].stops[k].thing)) cut(s, i, k);
    for (int i = 0; i < s->line_count; i++) {
        sketch_line *line = &s->lines[i];
        if (!is_hauled(s, line) && line->kind != GTL_SPAR && isnan(line->length))
            line->length = sketch_length(s, i);
    }
}

/* Spread a mark over spars from root to root; whether it went any further. */
static bool spread(const sketch *s, bool *marked)
{
    bool further = false;
    for (int i = 0; i < s->line_count; i++) {
        if (s->lines[i].kind != GTL_SPAR) continue;
        int a = sketch_root(s, s->lines[i].stops[0].thing);
        int b = sketch_root(s, s->lines[i].stops[1].thing);
        further |= marked[a] != marked[b];
        marked[a] = marked[b] = marked[a] || marked[b];
    }
    return further;
}

void sketch_lift(sketch *s, int thing, double rise)
{
    bool marked[SKETCH_THINGS] = {false};
    marked[sketch_root(s, thing)] = true;
    while (spread(s, marked)) continue;
    for (int i = 0; i < s->thing_count; i++)
        if (marked[i]) s->things[i].at[2] += rise;
}

int sketch_find_thing(const sketch *s, const gtl_rig *rig, int thing)
{
    char name[GTL_NAME_LIMIT + 1];
    sketch_name(name, s->things[thing].kind, thing);
    for (int i = 0; i < rig->thing_count; i++)
        if (strcmp(rig->things[i].name, name) == 0) return i;
    return -1;
}

int sketch_find_line(const sketch *s, const gtl_rig *rig, int line)
{
    char name[GTL_NAME_LIMIT + 1];
    sketch_name(name, s->lines[line].kind, line);
    for (int i = 0; i < rig->line_count; i++)
        if (strcmp(rig->lines[i].name, name) == 0) return i;
    return -1;
}

void sketch_draw_solved(sketch *s, const gtl_rig *rig, const gtl_state *state)
{
    for (int i = 0; i < s->thing_count; i++) {
        int thing = sketch_find_thing(s, rig, i);
        if (rig->nodes[rig->things[thing].node].fixed) continue;
        const double *at = state->at + 3 * rig->things[thing].node;
        s->things[i].at[2] = at[rig->dim - 1];
        for (int k = 0; k < rig->dim - 1; k++) s->things[i].at[k] = at[k];
    }
}
