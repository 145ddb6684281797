/* drawing_rope.c - how line runs: round which side of each sheave, and straight between the sheaves where it
 * touches them.
 *
 * A radius carries its sense as a sign: above 0 the line goes round clockwise. A straight stretch between two
 * such circles then has one tangent only, on the outside where the signs agree, crossing over where not. */
#include "report/drawing_picture.h"

#include <math.h>

#define WHOLE_TURN 6.283185307179586 /* [rad] */
/* Within this of turning right round (its sine) the turn itself does not say round which side: what runs
 * beside it does. */
#define NEARLY_BACK 0.17
/* Two circles that a line joins take this share of the way between them at the most [1]. */
#define SHARE 0.7
/* A sheave that would be smaller is left out: the line bends on the spot. */
#define SMALLEST 1.5
/* So much more than the real turn may be drawn: large sheaves near each other make lines slant [rad]. */
#define SLANT 2.2
/* Stretches shorter than this are seen end on. */
#define SHORTEST 0.05
/* A pass that came out wrong is mended so often; each mends at most twice, and seldom at the cost of others.
 */
#define ROUNDS 6

/* --- senses --- */

static const gtl_spot *spot_of(const gtl_picture *picture, const gtl_view *view, int stop)
{
    return &view->spots[picture->rig->stops[stop].thing];
}

/* The ways that a line comes to a running stop and leaves it, between the places themselves. */
static void ways_at(const gtl_picture *picture, const gtl_view *view, int run, gtl_point *in, gtl_point *out)
{
    const gtl_run *at = &picture->rig->runs[run];
    const gtl_part *parts = picture->rig->parts;
    gtl_point here = spot_of(picture, view, at->stop)->node;
    *in = gtl_between(spot_of(picture, view, parts[at->before].from)->node, here);
    *out = gtl_between(here, spot_of(picture, view, parts[at->before + 1].to)->node);
}

/* 1 clockwise, -1 counter-clockwise, 0 where the turn does not say. */
static int turn_of(const gtl_picture *picture, const gtl_view *view, int run)
{
    gtl_point in, out, none = {0, 0};
    ways_at(picture, view, run, &in, &out);
    in = gtl_unit(in, none);
    out = gtl_unit(out, none);
    double sine = gtl_cross(in, out);
    if (gtl_dot(in, out) < 0 && fabs(sine) < NEARLY_BACK) return 0;
    if (fabs(sine) < 1e-9) return 0;
    return sine > 0 ? 1 : -1;
}

/* The decided run next to `from`, in steps of 1 or -1; -1 for none among `count` runs from `first` on. */
static int decided(const gtl_view *view, int first, int count, int from, int step)
{
    while (from >= first && from < first + count && view->passes[from].turn == 0) from += step;
    return from >= first && from < first + count ? from : -1;
}

/* What the turn itself does not decide goes round like the nearest of the same line that is decided, so that
 * the parts of a tackle do not cross. */
static void set_senses(const gtl_picture *picture, gtl_view *view, int first, int count)
{
    int last = -1, next = -1;
    for (int i = first; i < first + count; i++) view->passes[i].turn = turn_of(picture, view, i);
    for (int i = first; i < first + count; i++) {
        if (view->passes[i].turn != 0) last = i;
        if (i == first || (next >= 0 && next < i)) next = decided(view, first, count, i, 1);
        bool nearer = last >= 0 && (next < 0 || i - last <= next - i);
        int like = nearer ? last : next;
        view->passes[i].radius = like < 0 ? 1 : view->passes[like].turn;
    }
}

static int runs_of(const gtl_rig *rig, const gtl_line *line)
{
    int count = 0;
    for (int k = 0; k < line->piece_count; k++) count += rig->pieces[line->first_piece + k].run_count;
    return count;
}

static void find_senses(const gtl_picture *picture, gtl_view *view)
{
    const gtl_rig *rig = picture->rig;
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        if (line->piece_count > 0)
            set_senses(picture, view, rig->pieces[line->first_piece].first_run, runs_of(rig, line));
    }
}

/* --- radii --- */

static double radius_of(const gtl_picture *picture, const gtl_view *view, int run)
{
    int thing = picture->rig->runs[run].thing;
    const gtl_spot *spot = &view->spots[thing];
    if (picture->rig->things[thing].kind != GTL_BLOCK) return spot->reach;
    return gtl_sheave_radius(view, spot, view->passes[run].sheave);
}

/* Two circles next to each other on a line leave room for it between them. */
static void make_way(const gtl_picture *picture, gtl_view *view, int part)
{
    const gtl_stretch *of = &view->stretches[part];
    const gtl_part *at = &picture->rig->parts[part];
    gtl_pass *a = of->from < 0 ? NULL : &view->passes[of->from];
    gtl_pass *b = of->to < 0 ? NULL : &view->passes[of->to];
    double way =
        gtl_length(gtl_between(spot_of(picture, view, at->from)->at, spot_of(picture, view, at->to)->at));
    double taken = (a ? fabs(a->radius) : 0) + (b ? fabs(b->radius) : 0);
    if (way < SHORTEST || taken <= SHARE * way) return;
    if (a) a->radius *= SHARE * way / taken;
    if (b) b->radius *= SHARE * way / taken;
}

static void find_radii(const gtl_picture *picture, gtl_view *view)
{
    for (int i = 0; i < picture->rig->run_count; i++) {
        gtl_pass *pass = &view->passes[i];
        pass->faults = 0;
        pass->radius *= radius_of(picture, view, i);
    }
    for (int i = 0; i < picture->rig->part_count; i++) make_way(picture, view, i);
    for (int i = 0; i < picture->rig->run_count; i++)
        if (fabs(view->passes[i].radius) < SMALLEST) view->passes[i].radius = 0;
}

/* --- stretches --- */

/* The tangent from circle to circle. Where it touches, the middle is a quarter turn, and the radius with its
 * sign, off the line: so middle + quarter(u) * -radius is on it, for the unit vector u along it. */
static bool set_tangent(gtl_point from, double from_radius, gtl_point to, double to_radius,
                        gtl_stretch *stretch)
{
    gtl_point way = gtl_between(from, to);
    double length = gtl_length(way), offset = to_radius - from_radius;
    if (length < SHORTEST || fabs(offset) >= length) return false;
    double angle = atan2(way.y, way.x) - asin(offset / length);
    gtl_point side = {-sin(angle), cos(angle)};
    stretch->a = gtl_along(from, side, -from_radius);
    stretch->b = gtl_along(to, side, -to_radius);
    return true;
}

/* Tied ends stop at the outline of what they are tied to. */
static void clip(const gtl_picture *picture, const gtl_view *view, int part, gtl_stretch *stretch)
{
    const gtl_part *of = &picture->rig->parts[part];
    const gtl_stop *stops = picture->rig->stops;
    gtl_point way = gtl_between(stretch->a, stretch->b);
    double length = gtl_length(way);
    gtl_point unit = gtl_unit(way, (gtl_point){0, 1});
    double first = stretch->from < 0 ? gtl_outline_reach(picture, view, stops[of->from].thing, unit) : 0;
    double last = stretch->to < 0 ? gtl_outline_reach(picture, view, stops[of->to].thing, unit) : 0;
    if (first + last > 0.9 * length) return;
    stretch->a = gtl_along(stretch->a, unit, first);
    stretch->b = gtl_along(stretch->b, unit, -last);
}

static void lay_stretch(const gtl_picture *picture, gtl_view *view, int part)
{
    const gtl_part *of = &picture->rig->parts[part];
    gtl_stretch *stretch = &view->stretches[part];
    const gtl_spot *from = spot_of(picture, view, of->from), *to = spot_of(picture, view, of->to);
    gtl_pass *a = stretch->from < 0 ? NULL : &view->passes[stretch->from];
    gtl_pass *b = stretch->to < 0 ? NULL : &view->passes[stretch->to];
    stretch->shown = from->shown && to->shown &&
                     set_tangent(from->at, a ? a->radius : 0, to->at, b ? b->radius : 0, stretch);
    if (!stretch->shown) return;
    clip(picture, view, part, stretch);
    if (a) a->out = stretch->a;
    if (b) b->in = stretch->b;
}

/* --- passes --- */

/* How far a line is drawn to turn at a pass that has both its stretches [rad]. */
static double drawn_turn(const gtl_view *view, int before, const gtl_pass *pass)
{
    const gtl_stretch *in = &view->stretches[before], *out = in + 1;
    gtl_point one = gtl_between(in->a, in->b), other = gtl_between(out->a, out->b);
    double turn = atan2(gtl_cross(one, other), gtl_dot(one, other));
    if (pass->radius < 0) turn = -turn;
    return turn < -1e-6 ? turn + WHOLE_TURN : turn;
}

/* Large sheaves on a line that runs nearly straight may turn it the other way round: then it goes round on
 * their other side, and where that is no better it bends without a sheave. Whether that changed anything. */
static bool mend_pass(const gtl_picture *picture, gtl_view *view, int run)
{
    gtl_pass *pass = &view->passes[run];
    int before = picture->rig->runs[run].before;
    gtl_point in, out;
    pass->shown = view->stretches[before].shown && view->stretches[before + 1].shown;
    if (!pass->shown || pass->radius == 0) return false;
    ways_at(picture, view, run, &in, &out);
    double real = atan2(fabs(gtl_cross(in, out)), gtl_dot(in, out));
    if (drawn_turn(view, before, pass) <= real + SLANT) return false;
    pass->radius = pass->faults++ == 0 ? -pass->radius : 0;
    return true;
}

void gtl_lay_lines(const gtl_picture *picture, gtl_view *view)
{
    bool changed = true;
    find_senses(picture, view);
    find_radii(picture, view);
    for (int round = 0; changed; round++) {
        changed = false;
        for (int i = 0; i < picture->rig->part_count; i++) lay_stretch(picture, view, i);
        for (int i = 0; i < picture->rig->run_count && round < ROUNDS; i++)
            changed |= mend_pass(picture, view, i);
    }
}
