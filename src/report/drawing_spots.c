/* drawing_spots.c - how large each body is drawn, and where: on its node, or beside what it sits on. */
#include "report/drawing_picture.h"
#include "rig/kind.h"

#include <math.h>

/* Sheaves: the innermost, from one to the next, and the cheek beyond the outermost. Parts of a tackle that
 * run as far apart as GAP leave room for a letter between them. */
#define INNERMOST 12.0
#define GAP       20.0
#define CHEEK     6.0
/* The largest block. */
#define MOST_REACH 190.0
/* A block takes this share of the way to the next body at the most [1]. */
#define SHARE 0.36
/* Bodies nearer than this are on one spot: shrinking would leave nothing of them. */
#define ONE_SPOT 3.0
/* Beyond so many things only those that lines join are held apart: pairs grow as their square. */
#define MOST_PAIRED 400
/* Between a body and what it sits on, and room for one connector in a row. */
#define NEXT 4.0
#define LINK 19.0
/* A direction is seen in a view if so much of it is left there [1]. */
#define SEEN 0.3

static const double reach_of_kind[GTL_KIND_COUNT] = {
    [GTL_ANCHOR] = 4, [GTL_FAIRLEAD] = 6, [GTL_JOINT] = 6, [GTL_LOAD] = 19, [GTL_ARBOR] = 19, [GTL_HAND] = 5,
};

static double full_radius(const gtl_view *view, int number)
{
    return view->size * (INNERMOST + GAP * number);
}

double gtl_sheave_radius(const gtl_view *view, const gtl_spot *spot, int number)
{
    return spot->shrink * full_radius(view, number);
}

static double full_reach(const gtl_picture *picture, const gtl_view *view, int thing)
{
    const gtl_thing *of = &picture->rig->things[thing];
    if (of->kind != GTL_BLOCK) return view->size * reach_of_kind[of->kind];
    return full_radius(view, picture->sheaves[thing] - 1) + view->size * CHEEK;
}

double gtl_outline_reach(const gtl_picture *picture, const gtl_view *view, int thing, gtl_point way)
{
    gtl_kind kind = picture->rig->things[thing].kind;
    if (kind == GTL_ANCHOR || kind == GTL_HAND) return 0;
    if (!gtl_is_of(kind, GTL_WEIGHT_KINDS)) return view->spots[thing].reach;
    double across = fabs(way.x) > 0 ? GTL_LOAD_WIDE * view->size / fabs(way.x) : INFINITY;
    double down = fabs(way.y) > 0 ? GTL_LOAD_HIGH * view->size / fabs(way.y) : INFINITY;
    return fmin(across, down);
}

static void limit_reach(const gtl_picture *picture, gtl_view *view, int thing, double most)
{
    gtl_spot *spot = &view->spots[thing];
    if (picture->rig->things[thing].kind != GTL_BLOCK || spot->reach <= most) return;
    spot->shrink *= most / spot->reach;
    spot->reach = most;
}

/* Two bodies at different places do not grow into each other. Those on one node lie beside each other by
 * where they are set. */
static void hold_apart(const gtl_picture *picture, gtl_view *view, int one, int other)
{
    if (!view->spots[one].shown || !view->spots[other].shown) return;
    if (picture->rig->things[one].node == picture->rig->things[other].node) return;
    double way = gtl_length(gtl_between(view->spots[one].at, view->spots[other].at));
    if (way < ONE_SPOT) return;
    limit_reach(picture, view, one, SHARE * way);
    limit_reach(picture, view, other, SHARE * way);
}

/* Every block as large as the others leave it room where they are now. */
static void shrink_bodies(const gtl_picture *picture, gtl_view *view)
{
    const gtl_rig *rig = picture->rig;
    for (int i = 0; rig->thing_count <= MOST_PAIRED && i < rig->thing_count; i++)
        for (int k = 0; k < i; k++) hold_apart(picture, view, i, k);
    for (int i = 0; i < rig->part_count; i++)
        hold_apart(picture, view, rig->stops[rig->parts[i].from].thing, rig->stops[rig->parts[i].to].thing);
}

/* A vector of the rig as the view shows it; without length where hardly anything of it is seen. */
static gtl_point seen(const gtl_picture *picture, const gtl_view *view, const double *vector)
{
    double whole = 0;
    for (int i = 0; i < picture->rig->dim; i++) whole = hypot(whole, vector[i]);
    gtl_point flat = {view->across < 0 ? 0 : vector[view->across], -vector[view->up]};
    return gtl_length(flat) > SEEN * whole && whole > picture->units.noise ? flat : (gtl_point){0, 0};
}

/* The way in which the lines at a thing lead away from it, all together. */
static gtl_point lines_lead(const gtl_picture *picture, const gtl_view *view, int thing)
{
    const gtl_rig *rig = picture->rig;
    gtl_point sum = {0, 0};
    for (int i = 0; i < rig->part_count; i++) {
        int from = rig->stops[rig->parts[i].from].thing, to = rig->stops[rig->parts[i].to].thing;
        if (from != thing && to != thing) continue;
        int other = from == thing ? to : from;
        gtl_point way = gtl_between(view->spots[thing].node, view->spots[other].node);
        sum = gtl_along(sum, gtl_unit(way, (gtl_point){0, 0}), 1);
    }
    return sum;
}

/* Which way a body hangs off what it sits on, or an anchor is pulled. In a plan what hangs plumb stays on its
 * spot: there the vector has no length. */
static gtl_point hanging(const gtl_picture *picture, const gtl_view *view, int thing)
{
    const gtl_thing *of = &picture->rig->things[thing];
    gtl_point down = {0, view->up == picture->rig->dim - 1 ? 1 : 0};
    if (of->kind == GTL_HAND) return (gtl_point){1, 0};
    if (picture->solved) return gtl_unit(seen(picture, view, picture->outcome->forces.passed[thing]), down);
    if (gtl_is_of(of->kind, GTL_WEIGHT_KINDS)) return down;
    return gtl_unit(lines_lead(picture, view, thing), down);
}

/* Whether a body would lie on one that sits at the same node. */
static bool collides(const gtl_picture *picture, const gtl_view *view, int thing)
{
    const gtl_rig *rig = picture->rig;
    for (int i = 0; i < rig->thing_count; i++) {
        if (!view->spots[i].laid || i == thing || rig->things[i].node != rig->things[thing].node) continue;
        double way = gtl_length(gtl_between(view->spots[thing].at, view->spots[i].at));
        if (way < 0.95 * (view->spots[thing].reach + view->spots[i].reach)) return true;
    }
    return false;
}

static gtl_point turned(gtl_point v, double angle)
{
    return (gtl_point){v.x * cos(angle) - v.y * sin(angle), v.x * sin(angle) + v.y * cos(angle)};
}

/* Beside the thing that it sits on, the way in which it hangs, or as near to that as there is room. */
static void set_beside(const gtl_picture *picture, gtl_view *view, int thing)
{
    static const double turns[] = {0, 0.6, -0.6, 1.2, -1.2, 1.8, -1.8, 2.4, -2.4, 3.1};
    gtl_spot *spot = &view->spots[thing];
    const gtl_thing *of = &picture->rig->things[thing];
    const gtl_spot *base = &view->spots[of->on];
    gtl_point way = hanging(picture, view, thing);
    double gap = view->size * (NEXT + LINK * of->via.count);
    double distance = base->reach + spot->reach + gap;
    if (gtl_length(way) == 0) distance = 0;
    for (size_t i = 0; i < sizeof turns / sizeof *turns; i++) {
        spot->hang = turned(way, turns[i]);
        spot->at = gtl_along(base->at, spot->hang, distance);
        if (distance == 0 || !collides(picture, view, thing)) return;
    }
}

/* What it sits on comes first. */
static void set_body(const gtl_picture *picture, gtl_view *view, int thing)
{
    gtl_spot *spot = &view->spots[thing];
    int on = picture->rig->things[thing].on;
    if (spot->laid || !spot->shown) return;
    spot->laid = true;
    if (on >= 0 && view->spots[on].shown) {
        set_body(picture, view, on);
        set_beside(picture, view, thing);
        return;
    }
    spot->at = spot->node;
    spot->hang = gtl_unit(hanging(picture, view, thing), (gtl_point){0, 1});
}

static void set_bodies(const gtl_picture *picture, gtl_view *view)
{
    for (int i = 0; i < picture->rig->thing_count; i++) view->spots[i].laid = false;
    for (int i = 0; i < picture->rig->thing_count; i++) set_body(picture, view, i);
}

/* Blocks are shrunk where their nodes are, and once more where they really hang: what sits on something is
 * set off from there by its own size. */
void gtl_lay_spots(const gtl_picture *picture, gtl_view *view, gtl_point origin)
{
    view->size = picture->size * view->share;
    double across = view->across < 0 ? picture->column : picture->scale;
    for (int i = 0; i < picture->rig->thing_count; i++) {
        gtl_spot *spot = &view->spots[i];
        spot->node.x = origin.x + across * spot->flat.x;
        spot->node.y = origin.y + picture->scale * spot->flat.y;
        spot->at = spot->node;
        spot->shrink = 1;
        spot->reach = full_reach(picture, view, i);
        limit_reach(picture, view, i, view->size * MOST_REACH);
    }
    shrink_bodies(picture, view);
    set_bodies(picture, view);
    shrink_bodies(picture, view);
    set_bodies(picture, view);
}
