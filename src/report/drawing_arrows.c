/* drawing_arrows.c - forces on anchors, and pulls of hands, as arrows to one scale. */
#include "report/drawing_picture.h"

#include <math.h>

/* The longest arrow. */
#define LONGEST 90.0
/* From the anchor's point to the tip: the arrow comes from the ground's side, where there is room. */
#define BEHIND 17.0
/* From the end of the line to the tail of a hand's arrow. */
#define BEYOND 7.0

static bool pulls_in_case(const gtl_picture *picture, int thing)
{
    return picture->solved &&
           (picture->rig->things[thing].kind == GTL_ANCHOR || picture->rig->things[thing].kind == GTL_HAND);
}

double gtl_shown_force(const gtl_picture *picture, int thing)
{
    const gtl_outcome *outcome = picture->outcome;
    if (!pulls_in_case(picture, thing)) return NAN;
    if (picture->rig->things[thing].kind == GTL_HAND) return gtl_outcome_pull(outcome, thing);
    const gtl_component *anchor = gtl_sheet_component(picture->sheet, GTL_ANCHOR, thing);
    return anchor ? outcome->demand[anchor - picture->sheet->components] : NAN;
}

void gtl_choose_force_scale(gtl_picture *picture)
{
    double most = 0;
    for (int i = 0; i < picture->rig->thing_count; i++) {
        double force = picture->views[0].spots[i].shown ? gtl_shown_force(picture, i) : NAN;
        if (isfinite(force) && force > most) most = force;
    }
    picture->newtons = most > picture->units.noise ? most / LONGEST : 0;
}

/* The direction of an anchor's force as it is: a unit vector of the rig. False where nothing pulls. */
static bool anchor_way(const gtl_picture *picture, int thing, double way[3])
{
    const double *force = picture->outcome->forces.passed[thing];
    double size = 0;
    for (int i = 0; i < picture->rig->dim; i++) size = hypot(size, force[i]);
    for (int i = 0; i < picture->rig->dim; i++) way[i] = force[i] / size;
    return size > picture->units.noise;
}

/* What a view shows of a unit vector of the rig. */
static gtl_point flat_way(const gtl_view *view, const double way[3])
{
    return (gtl_point){view->across < 0 ? 0 : way[view->across], -way[view->up]};
}

static void lay_anchor(const gtl_picture *picture, gtl_view *view, int thing)
{
    double way[3] = {0};
    gtl_spot *spot = &view->spots[thing];
    gtl_arrow *arrow = &view->arrows[thing];
    double length = gtl_shown_force(picture, thing) / picture->newtons;
    if (!anchor_way(picture, thing, way) || !isfinite(length)) return;
    gtl_point flat = flat_way(view, way);
    spot->hang = gtl_unit(flat, spot->hang);
    arrow->tip = gtl_along(spot->at, spot->hang, -BEHIND * view->size);
    arrow->tail = gtl_along(arrow->tip, flat, -length);
    arrow->shown = length * gtl_length(flat) > 0.5;
}

/* The part at a hand, -1 for none. */
static int part_of_hand(const gtl_picture *picture, int hand)
{
    const gtl_rig *rig = picture->rig;
    for (int i = 0; i < rig->part_count; i++)
        if (rig->stops[rig->parts[i].from].thing == hand || rig->stops[rig->parts[i].to].thing == hand)
            return i;
    return -1;
}

/* How much of a part's length its view shows, from the places themselves [1]. */
static double share_seen(const gtl_picture *picture, const gtl_view *view, int part)
{
    const gtl_rig *rig = picture->rig;
    const double *at = picture->outcome->state->at;
    const double *from = at + 3 * rig->things[rig->stops[rig->parts[part].from].thing].node;
    const double *to = at + 3 * rig->things[rig->stops[rig->parts[part].to].thing].node;
    double way[3] = {0}, whole = 0;
    for (int i = 0; i < rig->dim; i++) way[i] = to[i] - from[i];
    for (int i = 0; i < rig->dim; i++) whole = hypot(whole, way[i]);
    return whole > 0 ? gtl_length(flat_way(view, way)) / whole : 0;
}

/* Along its line, away from it. */
static void lay_hand(const gtl_picture *picture, gtl_view *view, int thing)
{
    int part = part_of_hand(picture, thing);
    double length = gtl_shown_force(picture, thing) / picture->newtons;
    if (part < 0 || !view->stretches[part].shown || !isfinite(length)) return;
    const gtl_stretch *line = &view->stretches[part];
    bool first = picture->rig->stops[picture->rig->parts[part].from].thing == thing;
    gtl_point way = first ? gtl_between(line->b, line->a) : gtl_between(line->a, line->b);
    gtl_arrow *arrow = &view->arrows[thing];
    view->spots[thing].hang = way = gtl_unit(way, (gtl_point){0, 1});
    length *= share_seen(picture, view, part);
    arrow->tail = gtl_along(view->spots[thing].at, way, BEYOND * view->size);
    arrow->tip = gtl_along(arrow->tail, way, length);
    arrow->shown = length > 0.5;
}

void gtl_lay_arrows(const gtl_picture *picture, gtl_view *view)
{
    for (int i = 0; i < picture->rig->thing_count; i++) {
        view->arrows[i].shown = false;
        if (!(picture->newtons > 0) || !view->spots[i].shown || !pulls_in_case(picture, i)) continue;
        if (picture->rig->things[i].kind == GTL_ANCHOR)
            lay_anchor(picture, view, i);
        else
            lay_hand(picture, view, i);
    }
}
