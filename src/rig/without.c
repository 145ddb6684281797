/* without.c - what lets go with a part of a rig, and what that leaves.
 *
 * What is held by what is named lets go first; then whatever hangs on nothing any more drops out, until
 * nothing changes. Stops drop out of paths: a rope that loses its end runs out up to where it is tied next, a
 * rope that loses a stop in the middle goes straight on. */
#include "rig/without.h"

#include "rig/cut.h"
#include "rig/kind.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* What still reaches a node. */
typedef struct reach {
    int stops;
    int ties;     /* how many of those are tied */
    int runs;     /* how many are not */
    int piece;    /* that of a running stop */
    bool several; /* pieces run here, which may hold it between them */
    bool loaded;
    bool held; /* lines that are left lead to something fixed */
} reach;

typedef struct parting {
    const gtl_rig *rig; /* as it was: paths are read here */
    gtl_rig *left;      /* things and nodes as they are now */
    bool *gone;         /* one a stop: not in its path any more */
    int *dangles;       /* as in gtl_remains */
    reach *reaches;     /* one a node of `left` */
} parting;

/* --- paths --- */

static int first_of(const parting *p, int line)
{
    return p->rig->lines[line].first_stop;
}

static int last_of(const parting *p, int line)
{
    return p->rig->lines[line].first_stop + p->rig->lines[line].stop_count - 1;
}

/* The next stop of a line that is left, from `stop` on itself, in steps of 1 or -1; -1 for none. */
static int left_from(const parting *p, int line, int stop, int step)
{
    while (stop >= first_of(p, line) && stop <= last_of(p, line) && p->gone[stop]) stop += step;
    return stop >= first_of(p, line) && stop <= last_of(p, line) ? stop : -1;
}

/* The tied stop that ends the piece which begins at the tied stop `stop`: a line always ends tied. */
static int far_end(const parting *p, int line, int stop, int step)
{
    do stop = left_from(p, line, stop + step, step);
    while (!p->rig->stops[stop].tied);
    return stop;
}

/* A tied stop lets go. A spar that loses one end hangs on its other with all its weight. */
static void let_go(parting *p, int line, int stop)
{
    if (p->gone[stop]) return;
    int first = left_from(p, line, first_of(p, line), 1);
    int last = left_from(p, line, last_of(p, line), -1);
    if (stop != first && stop != last) {
        p->gone[stop] = true;
        return;
    }
    int step = stop == first ? 1 : -1;
    int end = far_end(p, line, stop, step);
    for (int i = stop; i != end; i += step) p->gone[i] = true;
    if (end != (step > 0 ? last : first)) return;
    p->gone[end] = true;
    p->left->things[p->rig->stops[end].thing].weight += p->rig->lines[line].weight;
    if (p->rig->lines[line].weight > 0) p->dangles[line] = end;
}

static void let_go_ties(parting *p, int thing)
{
    for (int line = 0; line < p->rig->line_count; line++)
        for (int i = first_of(p, line); i <= last_of(p, line); i++)
            if (p->rig->stops[i].tied && p->rig->stops[i].thing == thing) let_go(p, line, i);
}

/* --- what is named --- */

/* A thing comes off what it is on. A hand that does cannot hold its rope. */
static void take_off(parting *p, int thing)
{
    p->left->things[thing].on = -1;
    p->left->things[thing].via = (gtl_via){0, 0};
    if (p->rig->things[thing].kind == GTL_HAND) let_go_ties(p, thing);
}

static void lose_anchor(parting *p, int anchor)
{
    for (int i = 0; i < p->rig->thing_count; i++)
        if (p->rig->things[i].on == anchor) take_off(p, i);
    let_go_ties(p, anchor);
    p->left->things[anchor].weight = 0; /* of a spar that was tied here alone at last */
    for (int line = 0; line < p->rig->line_count; line++)
        if (p->dangles[line] >= 0 && p->rig->stops[p->dangles[line]].thing == anchor) p->dangles[line] = -1;
}

static void lose_line(parting *p, int line)
{
    for (int i = first_of(p, line); i <= last_of(p, line); i++) p->gone[i] = true;
}

static void lose_connector(parting *p, int connector)
{
    int stop = p->rig->connectors[connector].stop;
    if (stop < 0) {
        take_off(p, p->rig->connectors[connector].thing);
        return;
    }
    int line = 0;
    while (stop > last_of(p, line) || stop < first_of(p, line)) line++;
    let_go(p, line, stop);
}

static void lose(parting *p, gtl_kind kind, int index)
{
    if (kind == GTL_ANCHOR)
        lose_anchor(p, index);
    else if (kind == GTL_CONNECTOR)
        lose_connector(p, index);
    else
        lose_line(p, index);
}

/* --- nodes --- */

/* Nodes of the things as they sit on each other now, where they were when it happened. */
static void join_things(parting *p, const double *at)
{
    gtl_rig *left = p->left;
    for (int i = 0; i < left->thing_count; i++) {
        memcpy(left->things[i].at, at + 3 * left->things[i].node, sizeof left->things[i].at);
        left->things[i].node = -1;
    }
    left->node_count = 0;
    for (int i = 0; i < left->thing_count; i++) {
        int root = i;
        while (left->things[root].on >= 0) root = left->things[root].on;
        gtl_join_node(left, i, root);
    }
    gtl_weigh_nodes(left);
}

static int node_at(const parting *p, int stop)
{
    return p->left->things[p->rig->stops[stop].thing].node;
}

static bool is_fixed(const parting *p, int stop)
{
    return p->left->nodes[node_at(p, stop)].fixed;
}

static void find_reach(parting *p)
{
    memset(p->reaches, 0, (size_t)p->left->node_count * sizeof *p->reaches);
    for (int i = 0; i < p->rig->stop_count; i++) {
        if (p->gone[i]) continue;
        p->reaches[node_at(p, i)].stops++;
        if (p->rig->stops[i].tied) p->reaches[node_at(p, i)].ties++;
    }
    for (int i = 0; i < p->rig->run_count; i++) {
        const gtl_run *run = &p->rig->runs[i];
        if (p->gone[run->stop]) continue;
        reach *at = &p->reaches[node_at(p, run->stop)];
        at->several = at->several || (at->runs > 0 && at->piece != run->piece);
        at->piece = run->piece;
        at->runs++;
    }
    for (int i = 0; i < p->left->thing_count; i++)
        if (gtl_is_of(p->left->things[i].kind, GTL_WEIGHT_KINDS))
            p->reaches[p->left->things[i].node].loaded = true;
}

/* --- what that takes along --- */

/* A free body that only rides on one rope comes out of it. */
static bool drop_riders(parting *p)
{
    bool changed = false;
    for (int i = 0; i < p->rig->stop_count; i++) {
        const reach *at = &p->reaches[node_at(p, i)];
        if (p->gone[i] || is_fixed(p, i) || at->loaded || at->ties > 0 || at->several) continue;
        p->gone[i] = changed = true;
    }
    return changed;
}

/* A weightless body at the end of one rope hangs limp: neither carries anything. */
static bool drop_limp(parting *p, int line)
{
    bool changed = false;
    for (int i = first_of(p, line); i <= last_of(p, line); i++) {
        const reach *at = &p->reaches[node_at(p, i)];
        bool limp = at->stops == 1 && !at->loaded && p->left->nodes[node_at(p, i)].weight == 0;
        if (p->gone[i] || is_fixed(p, i) || !limp || p->rig->lines[line].kind == GTL_SPAR) continue;
        let_go(p, line, i);
        changed = true;
    }
    return changed;
}

static bool pulls(const parting *p, int stop)
{
    return !isnan(p->rig->things[p->rig->stops[stop].thing].pull);
}

/* A piece at the end of a line that reaches nothing but fixed points carries nothing: what it kept taut has
 * dropped out of it. */
static bool drop_idle(parting *p, int line, int step)
{
    int end = left_from(p, line, step > 0 ? first_of(p, line) : last_of(p, line), step);
    if (end < 0) return false;
    int other = far_end(p, line, end, step);
    bool idle = !pulls(p, end) && !pulls(p, other);
    for (int i = end; i != other + step; i += step) idle = idle && (p->gone[i] || is_fixed(p, i));
    if (idle) let_go(p, line, end);
    return idle;
}

/* Of two stops next to each other at one place one is enough, where it is the same thing. A piece between two
 * ties there hangs in a loop that carries nothing. Whether either could be mended. */
static bool close_up(parting *p, int line, int stop, int next)
{
    const gtl_stop *a = &p->rig->stops[stop];
    const gtl_stop *b = &p->rig->stops[next];
    bool begins = left_from(p, line, stop - 1, -1) < 0;
    bool ends = left_from(p, line, next + 1, 1) < 0;
    if (a->tied && b->tied && (begins || ends))
        let_go(p, line, begins ? stop : next);
    else if (a->thing == b->thing && !(a->tied && b->tied))
        p->gone[b->tied ? stop : next] = true;
    else
        return false;
    return true;
}

/* The first stop that has the next one at its own place, with that in *next; -1 for none. */
static int find_doubled(const parting *p, int line, int *next)
{
    int stop = left_from(p, line, first_of(p, line), 1);
    for (; stop >= 0; stop = *next) {
        *next = left_from(p, line, stop + 1, 1);
        if (*next >= 0 && node_at(p, stop) == node_at(p, *next)) break;
    }
    return stop;
}

static bool close_line(parting *p, int line)
{
    int next;
    int stop = find_doubled(p, line, &next);
    return stop >= 0 && close_up(p, line, stop, next);
}

static void settle(parting *p)
{
    bool changed;
    do {
        find_reach(p);
        changed = drop_riders(p);
        for (int line = 0; line < p->rig->line_count; line++) {
            changed |= drop_limp(p, line);
            if (p->rig->lines[line].kind == GTL_SPAR) continue;
            changed |= drop_idle(p, line, 1);
            changed |= drop_idle(p, line, -1);
            changed |= close_line(p, line);
        }
    } while (changed);
}

/* --- what falls --- */

/* What one stop of a line leads to something fixed, all do. */
static bool spread(parting *p, int line)
{
    int held = 0;
    int count = 0;
    for (int i = first_of(p, line); i <= last_of(p, line); i++) {
        if (p->gone[i]) continue;
        held += p->reaches[node_at(p, i)].held;
        count++;
    }
    for (int i = first_of(p, line); held > 0 && i <= last_of(p, line); i++)
        if (!p->gone[i]) p->reaches[node_at(p, i)].held = true;
    return held > 0 && held < count;
}

static void find_held(parting *p)
{
    for (int n = 0; n < p->left->node_count; n++) p->reaches[n].held = p->left->nodes[n].fixed;
    bool changed;
    do {
        changed = false;
        for (int line = 0; line < p->rig->line_count; line++) changed |= spread(p, line);
    } while (changed);
}

/* What is not held is left out: it stands where it was, without weight or lines. */
static void leave_out(parting *p, gtl_remains *remains)
{
    for (int i = 0; i < p->rig->stop_count; i++)
        if (!p->reaches[node_at(p, i)].held) p->gone[i] = true;
    for (int i = 0; i < p->left->thing_count; i++) {
        gtl_thing *thing = &p->left->things[i];
        remains->loose[i] = !p->reaches[thing->node].held;
        if (!remains->loose[i]) continue;
        if (gtl_is_of(thing->kind, GTL_WEIGHT_KINDS) && remains->falls < 0) remains->falls = i;
        thing->weight = 0;
        p->left->nodes[thing->node].weight = 0;
        p->left->nodes[thing->node].guided = false;
        p->left->nodes[thing->node].fixed = true;
    }
}

/* The first line that still meets its own place twice, -1 for none. */
static int find_tangled(const parting *p)
{
    int next;
    for (int line = 0; line < p->rig->line_count; line++)
        if (find_doubled(p, line, &next) >= 0) return line;
    return -1;
}

static bool part_with(parting *p, gtl_kind kind, int index, const double *at, const double *length,
                      gtl_remains *remains)
{
    lose(p, kind, index);
    join_things(p, at);
    settle(p);
    find_held(p);
    leave_out(p, remains);
    remains->tangled = find_tangled(p);
    p->left->hand = p->left->load = p->left->driven = -1;
    return gtl_recut(p->left, p->rig, p->gone, length, remains->part);
}

bool gtl_rig_without(const gtl_rig *rig, gtl_kind kind, int index, const double *at, const double *length,
                     gtl_remains *remains)
{
    *remains = (gtl_remains){.falls = -1, .tangled = -1};
    remains->rig = gtl_rig_copy(rig);
    remains->part = calloc((size_t)rig->part_count + 1, sizeof *remains->part);
    remains->loose = calloc((size_t)rig->thing_count + 1, sizeof *remains->loose);
    remains->dangles = calloc((size_t)rig->line_count + 1, sizeof *remains->dangles);
    for (int i = 0; remains->dangles && i < rig->line_count; i++) remains->dangles[i] = -1;
    parting p = {.rig = rig, .left = remains->rig, .dangles = remains->dangles};
    p.gone = calloc((size_t)rig->stop_count + 1, sizeof *p.gone);
    p.reaches = calloc((size_t)rig->thing_count + 1, sizeof *p.reaches);
    bool made = remains->rig && remains->part && remains->loose && remains->dangles && p.gone && p.reaches;
    made = made && part_with(&p, kind, index, at, length, remains);
    free(p.gone);
    free(p.reaches);
    return made;
}

void gtl_remains_end(gtl_remains *remains)
{
    gtl_rig_free(remains->rig);
    free(remains->part);
    free(remains->loose);
    free(remains->dangles);
    *remains = (gtl_remains){.falls = -1, .tangled = -1};
}
