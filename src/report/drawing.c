/* drawing.c - one case of a rig as a line drawing: reads like a table of contents. */
#include "report/drawing.h"
#include "report/drawing_frame.h"
#include "report/escape.h"

#include <math.h>
#include <stdlib.h>

/* Around a drawing that is cut. */
#define EDGE 6.0

static void title_views(const gtl_picture *picture)
{
    for (int i = 0; i < picture->view_count; i++)
        if (picture->views[i].title)
            gtl_shape_text(picture->drawing, GTL_ROLE_FRAME,
                           (gtl_point){GTL_MARGIN, picture->views[i].room.low.y - 10}, true, "%s",
                           picture->views[i].title);
}

static gtl_bounds bounds_of(const gtl_shape *shape)
{
    gtl_bounds bounds = {{fmin(shape->a.x, shape->b.x), fmin(shape->a.y, shape->b.y)},
                         {fmax(shape->a.x, shape->b.x), fmax(shape->a.y, shape->b.y)}};
    if (shape->kind == GTL_SHAPE_TEXT) return gtl_text_bounds(shape);
    if (shape->kind == GTL_SHAPE_ARC || shape->kind == GTL_SHAPE_CIRCLE)
        bounds = (gtl_bounds){{shape->a.x - shape->radius, shape->a.y - shape->radius},
                              {shape->a.x + shape->radius, shape->a.y + shape->radius}};
    return bounds;
}

/* Cut a drawing to what it holds. A bare one has no heads of arrows. */
static void cut(gtl_drawing *drawing)
{
    gtl_bounds all = {{GTL_DRAWING_WIDTH, drawing->height}, {0, 0}};
    for (int i = 0; i < drawing->count; i++) {
        gtl_bounds one = bounds_of(&drawing->shapes[i]);
        all.low = (gtl_point){fmin(all.low.x, one.low.x), fmin(all.low.y, one.low.y)};
        all.high = (gtl_point){fmax(all.high.x, one.high.x), fmax(all.high.y, one.high.y)};
    }
    drawing->left = fmax(all.low.x - EDGE, 0);
    drawing->top = fmax(all.low.y - EDGE, 0);
    drawing->width = fmin(all.high.x + EDGE, GTL_DRAWING_WIDTH) - drawing->left;
    drawing->height = fmin(all.high.y + EDGE, drawing->height);
    drawing->bare = true;
}

static void draw(gtl_picture *picture)
{
    gtl_drawing *drawing = picture->drawing;
    gtl_notes notes;
    double y = gtl_frame_head(picture, 8);
    y = gtl_fit_views(picture, y);
    title_views(picture);
    for (int i = 0; i < picture->view_count; i++) gtl_ink_view(picture, i);
    gtl_notes_begin(&notes, picture);
    gtl_label_views(picture, &notes);
    y = gtl_frame_foot(picture, y);
    if (!notes.failed) y = gtl_frame_list(picture, &notes, y);
    drawing->failed = drawing->failed || notes.failed;
    gtl_notes_end(&notes);
    drawing->height = y + GTL_MARGIN;
    if (picture->bare) cut(drawing);
    drawing->scale = picture->scale;
    drawing->newtons = picture->newtons;
}

static gtl_drawing *drawn(const gtl_sheet *sheet, int outcome, const char *title)
{
    gtl_drawing *drawing = calloc(1, sizeof *drawing);
    if (!drawing) return NULL;
    gtl_picture picture;
    drawing->title = gtl_escape_for_people(title);
    bool made = gtl_picture_begin(&picture, sheet, outcome, drawing) && drawing->title;
    if (made) draw(&picture);
    gtl_picture_end(&picture);
    if (made && !drawing->failed) return drawing;
    gtl_drawing_end(drawing);
    return NULL;
}

gtl_drawing *gtl_draw(const gtl_sheet *sheet, int outcome)
{
    return drawn(sheet, outcome, sheet->rig->title);
}

gtl_drawing *gtl_draw_bare(const gtl_sheet *sheet, const char *title)
{
    return drawn(sheet, GTL_BARE, title);
}
