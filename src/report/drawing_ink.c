/* drawing_ink.c - a view that is laid out, as shapes. What is over its rating is drawn heavier. */
#include "report/drawing_picture.h"
#include "rig/kind.h"

#include <math.h>

#define WHOLE_TURN 6.283185307179586 /* [rad] */

/* Pens. Weight tells the kinds of line apart; a heavy one is more than the thickest of its kind otherwise. */
#define FINE   0.8
#define PLAIN  1.3
#define HEAVY  3.4
#define ROPE   1.7
#define SLING  3.0
#define OVER   2.6 /* times as wide */
#define GROUND 2.6
#define BATTEN 2.2
/* A batten's ends keep this far from the drawing's edge. */
#define MARGIN 4.0
/* Between the two lines of a spar. */
#define SPAR_APART 5.0
/* The sides of an arbor's track: from its box, and how far up and down. */
#define TRACK_APART 4.0
#define TRACK_HIGH  26.0
#define HATCH_HALF  15.0
#define HATCH_DEEP  8.0
#define HATCHES     5

typedef struct gtl_ink {
    gtl_picture *picture;
    const gtl_view *view;
    int number;
} gtl_ink;

static void add(const gtl_ink *ink, gtl_shape shape)
{
    shape.view = ink->number;
    gtl_shape_add(ink->picture->drawing, shape);
}

static void add_line(const gtl_ink *ink, gtl_role role, int index, gtl_point a, gtl_point b, double width)
{
    add(ink,
        (gtl_shape){.kind = GTL_SHAPE_LINE, .role = role, .index = index, .a = a, .b = b, .width = width});
}

static void add_circle(const gtl_ink *ink, gtl_role role, int index, gtl_point at, double radius,
                       double width, gtl_fill fill)
{
    add(ink, (gtl_shape){.kind = GTL_SHAPE_CIRCLE,
                         .role = role,
                         .index = index,
                         .a = at,
                         .radius = radius,
                         .width = width,
                         .fill = fill});
}

static double outline(const gtl_ink *ink, int thing)
{
    gtl_kind kind = ink->picture->rig->things[thing].kind;
    return gtl_over_component(ink->picture, kind, thing) ? HEAVY : PLAIN;
}

/* --- bodies --- */

/* A short thick line, hatched on the ground's side. */
static void ink_anchor(const gtl_ink *ink, int thing)
{
    const gtl_spot *spot = &ink->view->spots[thing];
    double size = ink->view->size, half = HATCH_HALF * size;
    gtl_point side = gtl_quarter(spot->hang);
    double heavy = outline(ink, thing) > PLAIN ? 2 : 1;
    add_line(ink, GTL_ROLE_BODY, thing, gtl_along(spot->at, side, -half), gtl_along(spot->at, side, half),
             GROUND * heavy);
    for (int i = 0; i < HATCHES; i++) {
        gtl_point foot = gtl_along(spot->at, side, half * (2.0 * i / (HATCHES - 1) - 1));
        gtl_point end = gtl_along(gtl_along(foot, side, 6 * size), spot->hang, -HATCH_DEEP * size);
        add_line(ink, GTL_ROLE_BODY, thing, foot, end, heavy);
    }
}

/* Sheaves about one axle, those that are used drawn with their passes, in a cheek. */
static void ink_block(const gtl_ink *ink, int thing)
{
    const gtl_picture *picture = ink->picture;
    const gtl_spot *spot = &ink->view->spots[thing];
    int used = 0;
    for (int i = 0; i < picture->rig->run_count; i++) {
        const gtl_pass *pass = &ink->view->passes[i];
        if (picture->rig->runs[i].thing != thing) continue;
        used++;
        if (pass->radius != 0)
            add_circle(ink, GTL_ROLE_SHEAVE, i, spot->at, fabs(pass->radius), FINE, GTL_FILL_NONE);
    }
    for (int i = 0; i < picture->sheaves[thing] - used; i++)
        add_circle(ink, GTL_ROLE_SHEAVE, -1, spot->at, gtl_sheave_radius(ink->view, spot, i), FINE,
                   GTL_FILL_NONE);
    add_circle(ink, GTL_ROLE_BODY, thing, spot->at, spot->reach, outline(ink, thing), GTL_FILL_NONE);
    add_circle(ink, GTL_ROLE_BODY, thing, spot->at, fmin(2.2, spot->reach / 3), 0, GTL_FILL_BLACK);
}

static void ink_fairlead(const gtl_ink *ink, int thing)
{
    const gtl_spot *spot = &ink->view->spots[thing];
    bool over = outline(ink, thing) > PLAIN;
    add_circle(ink, GTL_ROLE_BODY, thing, spot->at, spot->reach, 0, GTL_FILL_BLACK);
    if (over) add_circle(ink, GTL_ROLE_BODY, thing, spot->at, spot->reach + 5, HEAVY, GTL_FILL_NONE);
}

static void ink_joint(const gtl_ink *ink, int thing)
{
    const gtl_spot *spot = &ink->view->spots[thing];
    add_circle(ink, GTL_ROLE_BODY, thing, spot->at, spot->reach, outline(ink, thing), GTL_FILL_WHITE);
}

static void ink_load(const gtl_ink *ink, int thing)
{
    gtl_point at = ink->view->spots[thing].at;
    double wide = GTL_LOAD_WIDE * ink->view->size, high = GTL_LOAD_HIGH * ink->view->size;
    add(ink, (gtl_shape){.kind = GTL_SHAPE_BOX,
                         .role = GTL_ROLE_BODY,
                         .index = thing,
                         .a = {at.x - wide, at.y - high},
                         .b = {at.x + wide, at.y + high},
                         .width = PLAIN,
                         .fill = GTL_FILL_WHITE});
}

/* A box between the two sides of its track, which is seen where heights are. */
static void ink_arbor(const gtl_ink *ink, int thing)
{
    const gtl_view *view = ink->view;
    gtl_point at = view->spots[thing].at;
    double off = (GTL_LOAD_WIDE + TRACK_APART) * view->size, half = TRACK_HIGH * view->size;
    ink_load(ink, thing);
    if (view->up != ink->picture->rig->dim - 1) return;
    for (int side = -1; side <= 1; side += 2)
        add_line(ink, GTL_ROLE_BODY, thing, (gtl_point){at.x + side * off, at.y - half},
                 (gtl_point){at.x + side * off, at.y + half}, FINE);
}

/* An open end: a bar across the line. */
static void ink_hand(const gtl_ink *ink, int thing)
{
    const gtl_spot *spot = &ink->view->spots[thing];
    gtl_point side = gtl_quarter(spot->hang);
    double half = 7 * ink->view->size;
    add_line(ink, GTL_ROLE_BODY, thing, gtl_along(spot->at, side, -half), gtl_along(spot->at, side, half),
             outline(ink, thing) > PLAIN ? HEAVY : 2);
}

/* Links in a row from `from` towards `to`. */
static void ink_links(const gtl_ink *ink, gtl_via via, gtl_point from, gtl_point to)
{
    gtl_point way = gtl_between(from, to);
    double step = gtl_length(way) / (via.count + 1);
    gtl_point unit = gtl_unit(way, (gtl_point){0, 1});
    double radius = fmin(6 * ink->view->size, step / 2);
    for (int i = 0; i < via.count; i++) {
        int connector = ink->picture->rig->vias[via.first + i];
        bool over = gtl_over_component(ink->picture, GTL_CONNECTOR, connector);
        add_circle(ink, GTL_ROLE_LINK, connector, gtl_along(from, unit, step * (i + 1)), radius,
                   over ? HEAVY : PLAIN, GTL_FILL_WHITE);
    }
}

/* What a body sits on holds it by a short line, with the connectors on it. */
static void ink_hold(const gtl_ink *ink, int thing)
{
    const gtl_thing *of = &ink->picture->rig->things[thing];
    const gtl_spot *spot = &ink->view->spots[thing];
    if (of->on < 0 || !ink->view->spots[of->on].shown) return;
    const gtl_spot *base = &ink->view->spots[of->on];
    double way = gtl_length(gtl_between(base->at, spot->at));
    if (way < base->reach + spot->reach) return;
    gtl_point from =
        gtl_along(base->at, spot->hang, gtl_outline_reach(ink->picture, ink->view, of->on, spot->hang));
    gtl_point to =
        gtl_along(spot->at, spot->hang, -gtl_outline_reach(ink->picture, ink->view, thing, spot->hang));
    add_line(ink, GTL_ROLE_BODY, thing, from, to, PLAIN);
    ink_links(ink, of->via, from, to);
}

/* A batten runs from pick to pick, and where it is seen from the side on to its ends. */
static void ink_batten(const gtl_ink *ink, const gtl_batten *batten)
{
    const gtl_picture *picture = ink->picture;
    const gtl_pick *first = &picture->rig->picks[batten->first_pick], *last = first + batten->pick_count - 1;
    const gtl_spot *spots = ink->view->spots;
    double scale = ink->view->across == 0 && picture->rig->dim > 1 ? picture->scale : 0;
    gtl_point way = gtl_unit(gtl_between(spots[first->thing].at, spots[last->thing].at), (gtl_point){1, 0});
    for (const gtl_pick *pick = first; pick <= last; pick++) {
        if (!spots[pick->thing].shown) return;
        gtl_point at = spots[pick->thing].at;
        double before = pick == first ? scale * pick->position : 0;
        double behind = pick == last ? scale * (batten->length - pick->position) : 0;
        gtl_point from = gtl_along(at, way, -before);
        gtl_point to = pick == last ? gtl_along(at, way, behind) : spots[pick[1].thing].at;
        from.x = fmin(fmax(from.x, MARGIN), GTL_DRAWING_WIDTH - MARGIN);
        to.x = fmin(fmax(to.x, MARGIN), GTL_DRAWING_WIDTH - MARGIN);
        if (gtl_length(gtl_between(from, to)) > 0)
            add_line(ink, GTL_ROLE_BODY, pick->thing, from, to, BATTEN);
    }
}

static void ink_bodies(const gtl_ink *ink)
{
    static void (*const body[GTL_KIND_COUNT])(const gtl_ink *, int) = {
        [GTL_ANCHOR] = ink_anchor, [GTL_BLOCK] = ink_block, [GTL_FAIRLEAD] = ink_fairlead,
        [GTL_JOINT] = ink_joint,   [GTL_LOAD] = ink_load,   [GTL_HAND] = ink_hand,
        [GTL_ARBOR] = ink_arbor,
    };
    for (int i = 0; i < ink->picture->rig->batten_count; i++) ink_batten(ink, &ink->picture->rig->battens[i]);
    for (int i = 0; i < ink->picture->rig->thing_count; i++) {
        if (!ink->view->spots[i].shown) continue;
        ink_hold(ink, i);
        body[ink->picture->rig->things[i].kind](ink, i);
    }
}

/* --- lines --- */

static double line_width(const gtl_ink *ink, int line)
{
    gtl_kind kind = ink->picture->rig->lines[line].kind;
    double width = kind == GTL_SLING ? SLING : kind == GTL_SPAR ? PLAIN : ROPE;
    return gtl_over_component(ink->picture, kind, line) ? OVER * width : width;
}

static bool is_slack(const gtl_ink *ink, int part)
{
    const gtl_picture *picture = ink->picture;
    return picture->solved && picture->outcome->state->slack[picture->rig->parts[part].piece];
}

static void ink_stretch(const gtl_ink *ink, int part)
{
    const gtl_stretch *of = &ink->view->stretches[part];
    int line = ink->picture->rig->parts[part].line;
    bool spar = ink->picture->rig->lines[line].kind == GTL_SPAR;
    gtl_point side = gtl_quarter(gtl_unit(gtl_between(of->a, of->b), (gtl_point){0, 1}));
    for (int i = 0; i < (spar ? 2 : 1); i++) {
        double off = spar ? SPAR_APART * (i - 0.5) : 0;
        add(ink, (gtl_shape){.kind = GTL_SHAPE_LINE,
                             .role = GTL_ROLE_PART,
                             .index = part,
                             .a = gtl_along(of->a, side, off),
                             .b = gtl_along(of->b, side, off),
                             .width = line_width(ink, line),
                             .dashed = is_slack(ink, part)});
    }
}

/* Round a sheave, from where the line comes on to where it leaves. */
static void ink_pass(const gtl_ink *ink, int run)
{
    const gtl_pass *pass = &ink->view->passes[run];
    const gtl_run *at = &ink->picture->rig->runs[run];
    if (!pass->shown || pass->radius == 0) return;
    gtl_point middle = ink->view->spots[at->thing].at;
    gtl_point in = gtl_between(middle, pass->in), out = gtl_between(middle, pass->out);
    double sweep = atan2(gtl_cross(in, out), gtl_dot(in, out));
    if (pass->radius > 0 && sweep < -1e-6) sweep += WHOLE_TURN;
    if (pass->radius < 0 && sweep > 1e-6) sweep -= WHOLE_TURN;
    add(ink, (gtl_shape){.kind = GTL_SHAPE_ARC,
                         .role = GTL_ROLE_WRAP,
                         .index = run,
                         .a = middle,
                         .radius = fabs(pass->radius),
                         .from = atan2(in.y, in.x),
                         .sweep = sweep,
                         .width = line_width(ink, ink->picture->rig->parts[at->before].line),
                         .dashed = is_slack(ink, at->before)});
}

/* Connectors at a tied end, on the line next to it. */
static void ink_tie(const gtl_ink *ink, int stop, gtl_point end, gtl_point other)
{
    gtl_via via = ink->picture->rig->stops[stop].via;
    gtl_point way = gtl_between(end, other);
    double most = fmin(gtl_length(way) / 2, 15 * ink->view->size * (via.count + 1));
    if (via.count > 0) ink_links(ink, via, end, gtl_along(end, gtl_unit(way, (gtl_point){0, 1}), most));
}

static void ink_lines(const gtl_ink *ink)
{
    const gtl_rig *rig = ink->picture->rig;
    for (int i = 0; i < rig->part_count; i++) {
        const gtl_stretch *of = &ink->view->stretches[i];
        if (!of->shown) continue;
        ink_stretch(ink, i);
        ink_tie(ink, rig->parts[i].from, of->a, of->b);
        if (i + 1 == rig->part_count || of->to < 0) ink_tie(ink, rig->parts[i].to, of->b, of->a);
    }
    for (int i = 0; i < rig->run_count; i++) ink_pass(ink, i);
}

/* --- forces --- */

/* The shaft is as long as the force is great; the head lies on its end. */
static void ink_arrow(const gtl_ink *ink, int thing)
{
    const gtl_arrow *arrow = &ink->view->arrows[thing];
    gtl_point way = gtl_between(arrow->tail, arrow->tip);
    double length = gtl_length(way), head = fmin(11, 0.6 * length);
    gtl_point unit = gtl_unit(way, (gtl_point){0, 1}), side = gtl_quarter(unit);
    gtl_point neck = gtl_along(arrow->tip, unit, -head);
    add_line(ink, GTL_ROLE_ARROW, thing, arrow->tail, arrow->tip, PLAIN);
    add(ink, (gtl_shape){.kind = GTL_SHAPE_HEAD,
                         .role = GTL_ROLE_BODY,
                         .index = thing,
                         .a = arrow->tip,
                         .b = gtl_along(neck, side, head / 3),
                         .c = gtl_along(neck, side, -head / 3),
                         .width = 0,
                         .fill = GTL_FILL_BLACK});
}

void gtl_ink_view(gtl_picture *picture, int view)
{
    gtl_ink ink = {picture, &picture->views[view], view};
    ink_bodies(&ink);
    ink_lines(&ink);
    for (int i = 0; i < picture->rig->thing_count; i++)
        if (picture->views[view].arrows[i].shown) ink_arrow(&ink, i);
}
