/* pulls.c - what acts on the bodies at one node. */
#include "explain/lesson.h"

#include <math.h>

/* The unit vector from one node to another as the state has them. */
static void way_between(const gtl_rig *rig, const gtl_state *state, int from, int to, double way[3])
{
    double length = 0;
    for (int i = 0; i < 3; i++) way[i] = 0;
    for (int i = 0; i < rig->dim; i++) {
        way[i] = state->at[3 * to + i] - state->at[3 * from + i];
        length = hypot(length, way[i]);
    }
    for (int i = 0; i < rig->dim && length > 0; i++) way[i] /= length;
}

static gtl_pull pull_of(const gtl_rig *rig, const gtl_state *state, int part, int thing, int other)
{
    gtl_pull pull = {.part = part,
                     .thing = thing,
                     .other = other,
                     .force = state->tension[part],
                     .slack = state->slack[rig->parts[part].piece]};
    way_between(rig, state, rig->things[thing].node, rig->things[other].node, pull.way);
    return pull;
}

int gtl_pulls_on(const gtl_lesson *lesson, const gtl_outcome *outcome, int node, gtl_pull *pulls)
{
    const gtl_rig *rig = lesson->rig;
    int count = 0;
    for (int i = 0; i < rig->part_count; i++) {
        int from = rig->stops[rig->parts[i].from].thing, to = rig->stops[rig->parts[i].to].thing;
        if (rig->things[from].node == node) pulls[count++] = pull_of(rig, outcome->state, i, from, to);
        if (rig->things[to].node == node) pulls[count++] = pull_of(rig, outcome->state, i, to, from);
    }
    return count;
}

void gtl_add_body_name(gtl_text *text, const gtl_lesson *lesson, int node)
{
    const gtl_rig *rig = lesson->rig;
    int root = rig->nodes[node].root, count = 0;
    gtl_text_add(text, "%s", rig->things[root].name);
    for (int i = 0; i < rig->thing_count; i++) {
        if (rig->things[i].node != node || i == root) continue;
        gtl_text_add(text, "%s%s", count++ == 0 ? " with " : " and ", rig->things[i].name);
    }
    if (count > 0) gtl_text_add(text, " on it");
}
