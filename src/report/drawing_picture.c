/* drawing_picture.c - what of a case is drawn, and its places as each view sees them. */
#include "report/drawing_picture.h"
#include "report/geometry.h"

#include <math.h>
#include <stdlib.h>

/* Places beyond this are drawn there, so that no sum of them overflows [m]. */
#define FARTHEST 1e12
/* Of a block with more sheaves than are used so many are drawn in all. */
#define MOST_IDLE_SHEAVES 4

static const gtl_view columns[] = {{.across = -1, .up = 0, .share = 1}};
static const gtl_view plane[] = {{.across = 0, .up = 1, .share = 1}};
static const gtl_view space[] = {
    {.title = "Elevation: across, height", .across = 0, .up = 2, .share = 1},
    {.title = "Side: along, height", .across = 1, .up = 2, .share = 0.7},
    {.title = "Plan: across, along", .across = 0, .up = 1, .share = 0.7},
};

double gtl_length(gtl_point v)
{
    return hypot(v.x, v.y);
}

gtl_point gtl_unit(gtl_point v, gtl_point otherwise)
{
    double size = gtl_length(v);
    return size > 0 ? (gtl_point){v.x / size, v.y / size} : otherwise;
}

const gtl_component *gtl_over_component(const gtl_picture *picture, gtl_kind kind, int index)
{
    const gtl_component *component = gtl_sheet_component(picture->sheet, kind, index);
    return component && !picture->bare && component->mark == GTL_MARK_OVER ? component : NULL;
}

/* What let go is not there any more, nor what came loose with it. */
static bool is_shown(const gtl_picture *picture, int thing)
{
    if (!picture->solved) return true;
    const gtl_asked *asked = &picture->sheet->rig->cases[picture->index];
    bool lost = asked->kind == GTL_LOST && asked->lost_kind == GTL_ANCHOR && asked->lost == thing;
    return !lost && !gtl_is_loose(picture->outcome, thing);
}

/* Number the sheaves of each block in the order in which rope comes to them, counted from a line's tied end,
 * so that what leaves a tackle leaves its outermost sheave. */
static void number_sheaves(gtl_picture *picture, gtl_view *view)
{
    const gtl_rig *rig = picture->rig;
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        if (line->stop_count == 0) continue;
        int first = rig->pieces[line->first_piece].first_run, count = 0;
        for (int k = 0; k < line->piece_count; k++) count += rig->pieces[line->first_piece + k].run_count;
        bool backwards = rig->things[rig->stops[line->first_stop].thing].kind == GTL_HAND;
        for (int k = 0; k < count; k++) {
            int run = first + (backwards ? count - 1 - k : k);
            view->passes[run].sheave = picture->sheaves[rig->runs[run].thing]++;
        }
    }
}

/* Sheaves that nothing runs over lie inside those that are used. */
static void add_idle_sheaves(gtl_picture *picture, gtl_view *view)
{
    for (int i = 0; i < picture->rig->thing_count; i++) {
        const gtl_thing *thing = &picture->rig->things[i];
        int used = picture->sheaves[i], most = thing->sheaves;
        if (thing->kind != GTL_BLOCK) continue;
        if (most > MOST_IDLE_SHEAVES) most = MOST_IDLE_SHEAVES;
        if (most < 1) most = 1;
        if (most <= used) continue;
        picture->sheaves[i] = most;
        for (int run = 0; run < picture->rig->run_count; run++)
            if (picture->rig->runs[run].thing == i) view->passes[run].sheave += most - used;
    }
}

/* Which runs lie at the ends of each part. */
static void find_ends(const gtl_rig *rig, gtl_view *view)
{
    for (int i = 0; i < rig->part_count; i++) view->stretches[i].from = view->stretches[i].to = -1;
    for (int i = 0; i < rig->run_count; i++) {
        view->stretches[rig->runs[i].before].to = i;
        view->stretches[rig->runs[i].before + 1].from = i;
    }
}

static double coordinate(const gtl_picture *picture, int thing, int axis)
{
    const gtl_thing *of = &picture->rig->things[thing];
    double at = picture->solved ? picture->outcome->state->at[3 * of->node + axis] : of->at[axis];
    return fmin(fmax(at, -FARTHEST), FARTHEST);
}

/* Flat places, counted from the upper left corner of all that is shown. */
static void flatten(const gtl_picture *picture, gtl_view *view)
{
    gtl_point corner = {INFINITY, INFINITY};
    for (int i = 0; i < picture->rig->thing_count; i++) {
        gtl_spot *spot = &view->spots[i];
        spot->shown = is_shown(picture, i);
        if (!spot->shown) continue;
        spot->flat.x = view->across < 0 ? 0 : coordinate(picture, i, view->across);
        spot->flat.y = -coordinate(picture, i, view->up);
        corner.x = fmin(corner.x, spot->flat.x);
        corner.y = fmin(corner.y, spot->flat.y);
    }
    for (int i = 0; i < picture->rig->thing_count; i++) {
        gtl_spot *spot = &view->spots[i];
        if (spot->shown) spot->flat = gtl_between(corner, spot->flat);
    }
}

static bool make_room(const gtl_picture *picture, gtl_view *view)
{
    const gtl_rig *rig = picture->rig;
    view->spots = calloc((size_t)rig->thing_count + 1, sizeof *view->spots);
    view->passes = calloc((size_t)rig->run_count + 1, sizeof *view->passes);
    view->stretches = calloc((size_t)rig->part_count + 1, sizeof *view->stretches);
    view->arrows = calloc((size_t)rig->thing_count + 1, sizeof *view->arrows);
    return view->spots && view->passes && view->stretches && view->arrows;
}

static bool begin_view(gtl_picture *picture, gtl_view *view)
{
    if (!make_room(picture, view)) return false;
    for (int i = 0; i < picture->rig->thing_count; i++) picture->sheaves[i] = 0;
    find_ends(picture->rig, view);
    number_sheaves(picture, view);
    add_idle_sheaves(picture, view);
    flatten(picture, view);
    return view->across >= 0 || gtl_spread_columns(picture, view);
}

bool gtl_picture_begin(gtl_picture *picture, const gtl_sheet *sheet, int outcome, gtl_drawing *drawing)
{
    const gtl_outcome *of = outcome == GTL_BARE ? NULL : &sheet->outcomes[outcome];
    bool solved = of && of->possible;
    *picture = (gtl_picture){.sheet = sheet,
                             .index = outcome,
                             .outcome = of,
                             .rig = solved ? of->rig : sheet->rig,
                             .solved = solved,
                             .bare = !of,
                             .units = gtl_print_units_for(sheet),
                             .scale = 1,
                             .size = 1,
                             .drawing = drawing};
    const gtl_view *views = sheet->rig->dim == 1 ? columns : sheet->rig->dim == 2 ? plane : space;
    picture->view_count = sheet->rig->dim == 3 ? 3 : 1;
    for (int i = 0; i < picture->view_count; i++) picture->views[i] = views[i];
    picture->sheaves = calloc((size_t)picture->rig->thing_count + 1, sizeof *picture->sheaves);
    bool made = picture->sheaves;
    for (int i = 0; made && i < picture->view_count; i++) made = begin_view(picture, &picture->views[i]);
    if (made) gtl_choose_force_scale(picture);
    return made;
}

void gtl_picture_end(gtl_picture *picture)
{
    for (int i = 0; i < picture->view_count; i++) {
        free(picture->views[i].spots);
        free(picture->views[i].passes);
        free(picture->views[i].stretches);
        free(picture->views[i].arrows);
    }
    free(picture->sheaves);
}
