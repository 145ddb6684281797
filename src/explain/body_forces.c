/* body_forces.c - what acts on the body that is cut free, alike forces taken together. */
#include "explain/body_figure.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What the arithmetic leaves between forces that are one [1]. */
#define ALIKE 1e-9
/* Ways of parts that lie side by side in a drawing: cosine of about a degree [1]. */
#define SIDE_BY_SIDE 0.99985

bool gtl_force_varies(const gtl_force *force)
{
    return force->most - force->least > ALIKE * force->most;
}

gtl_figure gtl_force_name(const gtl_force *force)
{
    gtl_figure name = force->symbol;
    if (force->last.text[0])
        snprintf(name.text, sizeof name.text, "%.20s ... %.20s", force->symbol.text, force->last.text);
    else if (force->count > 1)
        snprintf(name.text, sizeof name.text, "%d x %.32s", force->count, force->symbol.text);
    return name;
}

gtl_figure gtl_force_size(const gtl_body *body, const gtl_force *force)
{
    gtl_figure least = gtl_exact_force(body->lesson, force->least);
    if (force->count == 1) return least;
    if (!gtl_force_varies(force)) return gtl_figure_after(least, "each");
    gtl_figure most = gtl_exact_force(body->lesson, force->most), size;
    snprintf(size.text, sizeof size.text, "%.20s to %.20s", least.text, most.text);
    return size;
}

static double dot(const double a[3], const double b[3])
{
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/* --- taking together --- */

static bool same(const gtl_force *one, const gtl_force *other)
{
    return one->kind == other->kind && dot(one->way, other->way) > 1 - ALIKE &&
           fabs(one->most - other->most) <= ALIKE * one->most &&
           strcmp(one->symbol.text, other->symbol.text) == 0;
}

static bool side_by_side(const gtl_force *one, const gtl_force *other)
{
    return one->kind == other->kind && one->line >= 0 && one->line == other->line &&
           dot(one->way, other->way) > SIDE_BY_SIDE;
}

static void join(gtl_force *into, const gtl_force *more)
{
    if (strcmp(into->symbol.text, more->symbol.text) != 0) into->last = more->symbol;
    into->count++;
    into->least = fmin(into->least, more->least);
    into->most = fmax(into->most, more->most);
    into->other = -1;
}

/* False where there is no room for one more. */
static bool add(gtl_body *body, const gtl_force *force, bool coarse)
{
    body->largest = fmax(body->largest, force->most);
    for (int i = 0; i < body->count; i++) {
        if (!(coarse ? side_by_side : same)(&body->forces[i], force)) continue;
        join(&body->forces[i], force);
        return true;
    }
    if (body->count == GTL_MOST_FORCES) {
        body->left_out++;
        return false;
    }
    body->forces[body->count++] = *force;
    return true;
}

/* --- what acts --- */

static gtl_force force_of(const gtl_body *body, const gtl_pull *pull)
{
    bool push = pull->force < 0;
    gtl_force force = {.kind = push ? GTL_FORCE_PUSH : GTL_FORCE_PULL,
                       .count = 1,
                       .symbol = gtl_symbol_pull(body->lesson, body->outcome, pull->part),
                       .least = fabs(pull->force),
                       .most = fabs(pull->force),
                       .line = body->lesson->rig->parts[pull->part].line,
                       .thing = pull->thing,
                       .other = pull->other};
    for (int i = 0; i < 3; i++) force.way[i] = push ? -pull->way[i] : pull->way[i];
    return force;
}

/* A force along an axis, its sign the sense. */
static gtl_force along_axis(gtl_force_kind kind, gtl_figure symbol, double size, int axis, int thing)
{
    gtl_force force = {.kind = kind,
                       .count = 1,
                       .symbol = symbol,
                       .least = fabs(size),
                       .most = fabs(size),
                       .line = -1,
                       .thing = thing,
                       .other = -1};
    force.way[axis] = size < 0 ? -1 : 1;
    return force;
}

static bool at_node(const gtl_rig *rig, int stop, int node)
{
    return rig->things[rig->stops[stop].thing].node == node;
}

static bool add_weights(gtl_body *body, bool coarse)
{
    const gtl_lesson *lesson = body->lesson;
    const gtl_rig *rig = lesson->rig;
    int up = rig->dim - 1;
    bool fits = true;
    for (int i = 0; i < rig->thing_count; i++) {
        if (rig->things[i].node != body->node || rig->things[i].weight <= 0) continue;
        gtl_force force =
            along_axis(GTL_FORCE_WEIGHT, gtl_symbol_weight(lesson, i), -rig->things[i].weight, up, i);
        fits = add(body, &force, coarse) && fits;
    }
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        if (line->kind != GTL_SPAR || line->weight <= 0) continue;
        for (int k = 0; k < line->stop_count; k++) {
            if (!at_node(rig, line->first_stop + k, body->node)) continue;
            gtl_force force = along_axis(GTL_FORCE_WEIGHT, gtl_symbol_spar_half(lesson, i), -line->weight / 2,
                                         up, rig->stops[line->first_stop + k].thing);
            fits = add(body, &force, coarse) && fits;
        }
    }
    return fits;
}

/* What holds a body that cannot move, or not so: whatever the rest does not balance. */
static bool add_support(gtl_body *body, const double rest[3], bool coarse)
{
    const gtl_lesson *lesson = body->lesson;
    const gtl_node *node = &lesson->rig->nodes[body->node];
    int axes = node->fixed ? lesson->rig->dim : node->guided ? lesson->rig->dim - 1 : 0;
    bool fits = true;
    for (int i = 0; i < axes; i++) {
        if (fabs(rest[i]) <= lesson->units.noise) continue;
        gtl_force force = along_axis(GTL_FORCE_SUPPORT, gtl_symbol_reaction(lesson, node->root, i), -rest[i],
                                     i, node->root);
        fits = add(body, &force, coarse) && fits;
    }
    return fits;
}

static bool add_all(gtl_body *body, const gtl_pull *pulls, int count, bool coarse)
{
    const gtl_rig *rig = body->lesson->rig;
    double rest[3] = {0};
    bool fits = true;
    body->count = body->left_out = body->idle = 0;
    for (int i = 0; i < count; i++) {
        if (pulls[i].slack || fabs(pulls[i].force) <= body->lesson->units.noise) {
            body->idle++;
            continue;
        }
        gtl_force force = force_of(body, &pulls[i]);
        for (int axis = 0; axis < rig->dim; axis++) rest[axis] += force.way[axis] * force.most;
        fits = add(body, &force, coarse) && fits;
        if (!fits && !coarse) return false;
    }
    rest[rig->dim - 1] -= rig->nodes[body->node].weight;
    fits = add_weights(body, coarse) && fits;
    return add_support(body, rest, coarse) && fits;
}

bool gtl_body_gather(gtl_body *body, const gtl_lesson *lesson, const gtl_outcome *outcome, int node)
{
    *body = (gtl_body){.lesson = lesson, .outcome = outcome, .node = node};
    gtl_pull *pulls = calloc(2 * (size_t)lesson->rig->part_count + 1, sizeof *pulls);
    if (!pulls) return false;
    int count = gtl_pulls_on(lesson, outcome, node, pulls);
    if (!add_all(body, pulls, count, false)) add_all(body, pulls, count, true);
    free(pulls);
    return true;
}
