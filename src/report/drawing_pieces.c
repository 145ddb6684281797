/* drawing_pieces.c - see drawing_pieces.h. */
#include "report/drawing_pieces.h"
#include "report/drawing_picture.h"

#include <math.h>

/* From a bold line of the frame down to what it is the title of, and on into that [units]. */
#define TITLE_REACH 60.0

/* From one height to another. */
typedef struct gtl_stripe {
    double top;
    double foot;
} gtl_stripe;

static gtl_stripe band_of(const gtl_shape *shape)
{
    switch (shape->kind) {
    case GTL_SHAPE_ARC:
    case GTL_SHAPE_CIRCLE:
        return (gtl_stripe){shape->a.y - shape->radius, shape->a.y + shape->radius};
    case GTL_SHAPE_HEAD:
        return (gtl_stripe){fmin(shape->a.y, fmin(shape->b.y, shape->c.y)),
                            fmax(shape->a.y, fmax(shape->b.y, shape->c.y))};
    case GTL_SHAPE_TEXT:
        return (gtl_stripe){gtl_text_bounds(shape).low.y, gtl_text_bounds(shape).high.y};
    default:
        return (gtl_stripe){fmin(shape->a.y, shape->b.y), fmax(shape->a.y, shape->b.y)};
    }
}

/* A drawing with what has to stay together. */
typedef struct gtl_cutter {
    const gtl_drawing *drawing;
    gtl_stripe views[GTL_MOST_VIEWS];
} gtl_cutter;

static gtl_cutter cutter_for(const gtl_drawing *drawing)
{
    gtl_cutter cutter = {.drawing = drawing};
    for (int i = 0; i < GTL_MOST_VIEWS; i++) cutter.views[i] = (gtl_stripe){INFINITY, -INFINITY};
    for (int i = 0; i < drawing->count; i++) {
        if (drawing->shapes[i].view < 0) continue;
        gtl_stripe *view = &cutter.views[drawing->shapes[i].view], own = band_of(&drawing->shapes[i]);
        *view = (gtl_stripe){fmin(view->top, own.top), fmax(view->foot, own.foot)};
    }
    return cutter;
}

/* All of a shape's view; of a title what it stands above, too. */
static gtl_stripe kept_whole(const gtl_cutter *cutter, const gtl_shape *shape)
{
    if (shape->view >= 0) return cutter->views[shape->view];
    gtl_stripe band = band_of(shape);
    if (shape->kind == GTL_SHAPE_TEXT && shape->bold) band.foot += TITLE_REACH;
    return band;
}

/* The nearest height to `at`, upwards or downwards, that cuts nothing. Each step leaves at least one shape
 * behind, so that it comes to an end. */
static double clear_of_shapes(const gtl_cutter *cutter, double at, bool upwards)
{
    for (int i = 0; i < cutter->drawing->count; i++) {
        gtl_stripe band = kept_whole(cutter, &cutter->drawing->shapes[i]);
        if (at <= band.top || at >= band.foot) continue;
        at = upwards ? band.top : band.foot;
        i = -1;
    }
    return at;
}

/* As many pieces as it takes, as nearly of one height as can be. */
double gtl_drawing_cut(const gtl_drawing *drawing, double top)
{
    double left = drawing->height - top;
    if (left <= GTL_SHEET_HEIGHT) return drawing->height;
    gtl_cutter cutter = cutter_for(drawing);
    double wanted = top + left / ceil(left / GTL_SHEET_HEIGHT);
    double above = clear_of_shapes(&cutter, wanted, true), below = clear_of_shapes(&cutter, wanted, false);
    bool fits = below <= top + GTL_SHEET_HEIGHT && below - wanted < wanted - above;
    return above <= top || fits ? fmin(below, drawing->height) : above;
}

bool gtl_shape_within(const gtl_shape *shape, double top, double foot)
{
    gtl_stripe band = band_of(shape);
    double middle = (band.top + band.foot) / 2;
    return middle >= top && middle < foot;
}
