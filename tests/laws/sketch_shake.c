/* sketch_shake.c - a rig drawn badly. */
#include "laws/sketch.h"
#include <math.h>

/* Rounds of putting spars right one after the other; a chain of them converges like a chain of sticks. */
enum { ROUNDS = 400 };

/* Which coordinates of a body may be drawn elsewhere. */
static bool may_move(const sketch *s, int body, int axis, int load)
{
    gtl_kind kind = s->things[body].kind;
    bool written = axis == 2 || (axis == 0 && s->dim > 1) || (axis == 1 && s->dim > 2);
    bool lifted = axis == 2 && load >= 0 && body == sketch_root(s, load);
    bool track = s->things[body].guided && axis != 2;
    return written && !lifted && !track && s->things[body].on < 0 && kind != GTL_ANCHOR && kind != GTL_HAND;
}

/* Move both ends along the spar by what they may, until it is as long as it was. */
static void restore_spar(sketch *s, int a, int b, double length, int load)
{
    double *from = s->things[a].at;
    double *to = s->things[b].at;
    double way[3];
    for (int k = 0; k < 3; k++) way[k] = to[k] - from[k];
    double now = sqrt(way[0] * way[0] + way[1] * way[1] + way[2] * way[2]);
    for (int k = 0; k < 3; k++) {
        bool both = may_move(s, a, k, load) && may_move(s, b, k, load);
        double step = way[k] * (length / now - 1) / (both ? 2 : 1);
        if (may_move(s, a, k, load)) from[k] -= step;
        if (may_move(s, b, k, load)) to[k] += step;
    }
}

static void restore_spars(sketch *s, const double *lengths, int load)
{
    for (int round = 0; round < ROUNDS; round++)
        for (int i = 0; i < s->line_count; i++)
            if (s->lines[i].kind == GTL_SPAR)
                restore_spar(s, sketch_root(s, s->lines[i].stops[0].thing),
                             sketch_root(s, s->lines[i].stops[1].thing), lengths[i], load);
}

void sketch_shake(sketch *s, chance *c, int load, double most)
{
    double lengths[SKETCH_LINES] = {0};
    for (int i = 0; i < s->line_count; i++) lengths[i] = sketch_length(s, i);
    for (int i = 0; i < s->thing_count; i++)
        for (int k = 0; k < 3; k++)
            if (may_move(s, i, k, load)) s->things[i].at[k] += chance_between(c, -most, most);
    restore_spars(s, lengths, load);
}
