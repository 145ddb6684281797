/* drawing_fit.c - the scale of places and the size of bodies, so that all of it fits the drawing's width. */
#include "report/drawing_picture.h"

#include <math.h>

/* Beside what is drawn labels want this much room; above and below it this much. */
#define SIDES    104.0
#define HEADROOM 46.0
#define EDGE     14.0
#define TITLE    28.0
/* The most that places take of the height, where one view stands alone or three share it. */
#define HIGH_ALONE    520.0
#define HIGH_SHARED   300.0
#define WIDEST_COLUMN 150.0
/* What a bare drawing, which stands beside text, takes of that; of a rig with many things, and in space, more
 * [1]. */
#define BARE_SHARE      0.32
#define BARE_MANY_SHARE 0.5
#define MANY_THINGS     7
#define BARE_SPACE      0.65
/* The highest view, bodies and arrows included. */
#define HIGHEST 1400.0
#define SMALLER 0.88
#define TRIES   200

static void take_in(gtl_bounds *bounds, gtl_point at, double reach)
{
    bounds->low.x = fmin(bounds->low.x, at.x - reach);
    bounds->low.y = fmin(bounds->low.y, at.y - reach);
    bounds->high.x = fmax(bounds->high.x, at.x + reach);
    bounds->high.y = fmax(bounds->high.y, at.y + reach);
}

static void find_bounds(const gtl_picture *picture, gtl_view *view)
{
    const double hatch = 18 * view->size;
    view->bounds = (gtl_bounds){{INFINITY, INFINITY}, {-INFINITY, -INFINITY}};
    for (int i = 0; i < picture->rig->thing_count; i++) {
        const gtl_spot *spot = &view->spots[i];
        if (!spot->shown) continue;
        take_in(&view->bounds, spot->at, fmax(spot->reach, hatch));
        if (!view->arrows[i].shown) continue;
        take_in(&view->bounds, view->arrows[i].tail, 3);
        take_in(&view->bounds, view->arrows[i].tip, 3);
    }
    if (!(view->bounds.low.x <= view->bounds.high.x)) view->bounds = (gtl_bounds){{0, 0}, {0, 0}};
}

static void lay(const gtl_picture *picture, gtl_view *view, gtl_point origin)
{
    gtl_lay_spots(picture, view, origin);
    gtl_lay_lines(picture, view);
    gtl_lay_arrows(picture, view);
    find_bounds(picture, view);
}

/* As far as places go; all views together [m]. */
static gtl_point extent(const gtl_picture *picture)
{
    gtl_point most = {0, 0};
    for (int k = 0; k < picture->view_count; k++)
        for (int i = 0; i < picture->rig->thing_count; i++) {
            const gtl_spot *spot = &picture->views[k].spots[i];
            if (!spot->shown) continue;
            most.x = fmax(most.x, spot->flat.x);
            most.y = fmax(most.y, spot->flat.y);
        }
    return most;
}

static void choose_scale(gtl_picture *picture)
{
    gtl_point most = extent(picture);
    double wide = GTL_DRAWING_WIDTH - 2 * (SIDES + EDGE);
    double high = picture->view_count > 1 ? HIGH_SHARED : HIGH_ALONE;
    double column = WIDEST_COLUMN;
    if (picture->bare) {
        double share = picture->rig->thing_count > MANY_THINGS ? BARE_MANY_SHARE : BARE_SHARE;
        if (picture->view_count > 1) share = BARE_SPACE;
        high *= share;
        wide *= share;
        column *= share;
    }
    picture->column = most.x > 0 ? fmin(column, wide / most.x) : column;
    if (picture->views[0].across < 0) most.x = 0;
    double least = fmax(most.x / wide, most.y / high);
    picture->scale = least > 0 ? 1 / least : high;
    picture->size = 1;
}

static bool fits(const gtl_picture *picture)
{
    for (int i = 0; i < picture->view_count; i++) {
        const gtl_bounds *bounds = &picture->views[i].bounds;
        if (bounds->high.x - bounds->low.x > GTL_DRAWING_WIDTH - 2 * EDGE) return false;
        if (bounds->high.y - bounds->low.y > HIGHEST) return false;
    }
    return true;
}

double gtl_fit_views(gtl_picture *picture, double top)
{
    gtl_point zero = {0, 0};
    choose_scale(picture);
    for (int i = 0; i < TRIES; i++) {
        for (int k = 0; k < picture->view_count; k++) lay(picture, &picture->views[k], zero);
        if (fits(picture)) break;
        picture->scale *= SMALLER;
        picture->column *= SMALLER;
        picture->size *= SMALLER;
        picture->newtons /= SMALLER;
    }
    for (int k = 0; k < picture->view_count; k++) {
        gtl_view *view = &picture->views[k];
        double headroom = HEADROOM + (view->title ? TITLE : 0);
        gtl_point origin = {(GTL_DRAWING_WIDTH - view->bounds.low.x - view->bounds.high.x) / 2,
                            top + headroom - view->bounds.low.y};
        lay(picture, view, origin);
        view->room.low = (gtl_point){EDGE / 2, top + (view->title ? TITLE : 4)};
        view->room.high = (gtl_point){GTL_DRAWING_WIDTH - EDGE / 2, view->bounds.high.y + HEADROOM};
        top = view->room.high.y + 8;
    }
    return top;
}
