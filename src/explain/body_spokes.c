/* body_spokes.c - arrows around a body: those that point nearly the same way stand side by side. */
#include "explain/body_spokes.h"
#include "report/drawing_picture.h"

#include <math.h>
#include <stdlib.h>

#define LONGEST 92.0
/* An arrow that is foreshortened to less is seen on end, and left out of the view [1]. */
#define ON_END 0.05
/* Ways that differ by less stand side by side [rad]. */
#define NEARLY_ONE 0.6
/* Between arrows side by side, with labels written out or with keys, and between those of forces that are
 * alike. */
#define APART      28.0
#define KEYS_APART 22.0
#define ALIKE_PART 12.0
/* Of more different forces, fewer of each are drawn. */
#define FEW_FORCES 3
#define FEW_ALIKE  3
/* A way steeper than that stands on the column's end [1]. */
#define STEEP      0.7
#define WHOLE_TURN 6.283185307179586 /* [rad] */

double gtl_arrow_scale(const gtl_body *body)
{
    return body->largest > 0 ? LONGEST / body->largest : 0;
}

/* --- the column of things --- */

/* From the top: what holds first, what weighs last. */
static const gtl_kind order[] = {GTL_ANCHOR, GTL_BLOCK, GTL_FAIRLEAD, GTL_JOINT,
                                 GTL_HAND,   GTL_LOAD,  GTL_ARBOR};

static const struct {
    bool round;
    double wide, high;
} sizes[GTL_KIND_COUNT] = {
    [GTL_ANCHOR] = {false, 18, 5}, [GTL_BLOCK] = {true, 20, 20}, [GTL_FAIRLEAD] = {true, 9, 9},
    [GTL_JOINT] = {true, 6, 6},    [GTL_HAND] = {false, 12, 3},  [GTL_LOAD] = {false, 26, 15},
    [GTL_ARBOR] = {false, 26, 15},
};

static void add_slab(gtl_layout *layout, const gtl_rig *rig, int thing)
{
    gtl_kind kind = rig->things[thing].kind;
    if (layout->slab_count < GTL_MOST_SLABS)
        layout->slabs[layout->slab_count++] = (gtl_slab){
            .thing = thing, .round = sizes[kind].round, .wide = sizes[kind].wide, .high = sizes[kind].high};
}

static bool stands(const gtl_body *body)
{
    int up = body->lesson->rig->dim - 1;
    for (int i = 0; i < body->count; i++)
        if (body->forces[i].kind == GTL_FORCE_SUPPORT && body->forces[i].way[up] < 0) return true;
    return false;
}

static void add_slabs(gtl_layout *layout, const gtl_body *body)
{
    const gtl_rig *rig = body->lesson->rig;
    int last = (int)(sizeof order / sizeof *order) - 1;
    layout->stands = stands(body);
    for (int k = 0; k <= last; k++)
        for (int i = 0; i < rig->thing_count; i++)
            if (rig->things[i].node == body->node &&
                rig->things[i].kind == order[layout->stands ? last - k : k])
                add_slab(layout, rig, i);
}

static int slab_of(const gtl_layout *layout, int thing, gtl_point out)
{
    if (out.y < -STEEP) return 0;
    if (out.y > STEEP) return layout->slab_count - 1;
    for (int i = 0; i < layout->slab_count; i++)
        if (layout->slabs[i].thing == thing) return i;
    return 0;
}

/* --- the arrows --- */

static void add_spokes(gtl_layout *layout, const gtl_body *body, int across, int force)
{
    const gtl_force *of = &body->forces[force];
    int dim = body->lesson->rig->dim, alike = body->count <= FEW_FORCES ? GTL_MOST_ALIKE : FEW_ALIKE;
    double sign = of->kind == GTL_FORCE_PUSH ? -1 : 1;
    gtl_point way = {dim > 1 ? sign * of->way[across] : 0, -sign * of->way[dim - 1]};
    double seen = gtl_length(way), size = (of->least + of->most) / 2 * gtl_arrow_scale(body);
    if (seen < ON_END) return;
    gtl_spoke spoke = {.force = force, .out = gtl_unit(way, (gtl_point){0, 1})};
    spoke.angle = atan2(spoke.out.y, spoke.out.x);
    spoke.length = fmax(size, GTL_LEAST_ARROW) * seen;
    spoke.slab = slab_of(layout, of->thing, spoke.out);
    for (int i = 0; i < of->count && i < alike; i++) layout->spokes[layout->spoke_count++] = spoke;
}

/* Round the body; at its foot the other way about, so that equal ways go from left to right everywhere. */
static int by_angle(const void *left, const void *right)
{
    const gtl_spoke *a = left, *b = right;
    if (fabs(a->angle - b->angle) > 1e-9) return a->angle < b->angle ? -1 : 1;
    int turn = a->out.y > 0 ? -1 : 1;
    return turn * ((a->force > b->force) - (a->force < b->force));
}

/* Behind the widest gap between arrows that follow each other round the body. */
static int beginning(const gtl_layout *layout)
{
    int count = layout->spoke_count, first = 0;
    double widest = -1;
    for (int i = 0; i < count; i++) {
        int next = (i + 1) % count;
        double gap = layout->spokes[next].angle - layout->spokes[i].angle;
        if (next == 0) gap += WHOLE_TURN;
        if (gap <= widest) continue;
        widest = gap;
        first = next;
    }
    return first;
}

static double turn_between(const gtl_spoke *from, const gtl_spoke *to)
{
    double turn = to->angle - from->angle;
    return turn < 0 ? turn + WHOLE_TURN : turn;
}

/* Spread a row of arrows, `count` from `first` on, about their middle. */
static void spread(gtl_layout *layout, int first, int count, const gtl_body_view *view)
{
    double places[GTL_MOST_SPOKES] = {0};
    int all = layout->spoke_count;
    for (int k = 1; k < count; k++) {
        const gtl_spoke *before = &layout->spokes[(first + k - 1) % all];
        bool alike = before->force == layout->spokes[(first + k) % all].force;
        places[k] = places[k - 1] + (alike ? ALIKE_PART : view->keyed ? KEYS_APART : APART);
    }
    double whole = places[count - 1], share = fmin(1, 0.75 * view->width / fmax(whole, 1));
    for (int k = 0; k < count; k++)
        layout->spokes[(first + k) % all].offset = share * (places[k] - whole / 2);
}

static void spread_all(gtl_layout *layout, const gtl_body_view *view)
{
    int all = layout->spoke_count;
    if (all == 0) return;
    int first = beginning(layout);
    for (int done = 0, count; done < all; done += count) {
        int at = first + done;
        for (count = 1; done + count < all; count++)
            if (turn_between(&layout->spokes[(at + count - 1) % all], &layout->spokes[(at + count) % all]) >
                NEARLY_ONE)
                break;
        spread(layout, at % all, count, view);
    }
}

/* --- the whole --- */

/* As wide as its arrows ask. */
static void place_slabs(gtl_layout *layout)
{
    for (int i = 0; i < layout->spoke_count; i++) {
        const gtl_spoke *spoke = &layout->spokes[i];
        gtl_slab *slab = &layout->slabs[spoke->slab];
        slab->wide = fmax(slab->wide, fabs(spoke->offset) + 6);
        if (slab->round) slab->high = slab->wide;
    }
    for (int i = 1; i < layout->slab_count; i++)
        layout->slabs[i].at.y =
            layout->slabs[i - 1].at.y + layout->slabs[i - 1].high + layout->slabs[i].high + 12;
}

/* From a point inside a thing to its outline. */
static double way_out(const gtl_slab *slab, gtl_point from, gtl_point out)
{
    double offset = gtl_cross(out, from), along = gtl_dot(out, from);
    if (slab->round) return sqrt(fmax(0, slab->wide * slab->wide - offset * offset)) - along;
    double across = out.x == 0 ? INFINITY : (copysign(slab->wide, out.x) - from.x) / out.x;
    double down = out.y == 0 ? INFINITY : (copysign(slab->high, out.y) - from.y) / out.y;
    return fmax(0, fmin(across, down));
}

static void place_spokes(gtl_layout *layout)
{
    for (int i = 0; i < layout->spoke_count; i++) {
        gtl_spoke *spoke = &layout->spokes[i];
        const gtl_slab *slab = &layout->slabs[spoke->slab];
        gtl_point aside = gtl_along((gtl_point){0, 0}, gtl_quarter(spoke->out), spoke->offset);
        gtl_point from = gtl_along(slab->at, aside, 1);
        spoke->near = gtl_along(from, spoke->out, way_out(slab, aside, spoke->out) + 1.5);
        spoke->far = gtl_along(spoke->near, spoke->out, spoke->length);
    }
}

void gtl_lay_out(gtl_layout *layout, const gtl_body *body, const gtl_body_view *view)
{
    *layout = (gtl_layout){.slab_count = 0};
    add_slabs(layout, body);
    for (int i = 0; i < body->count; i++) add_spokes(layout, body, view->across, i);
    qsort(layout->spokes, (size_t)layout->spoke_count, sizeof *layout->spokes, by_angle);
    spread_all(layout, view);
    place_slabs(layout);
    place_spokes(layout);
}
