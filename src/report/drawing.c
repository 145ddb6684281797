/* drawing.c - one case of a rig as a line drawing: reads like a table of contents. */
#include "report/drawing.h"
#include "report/drawing_frame.h"
#include "report/escape.h"

#include <stdlib.h>

static void title_views(const gtl_picture *picture)
{
    for (int i = 0; i < picture->view_count; i++)
        if (picture->views[i].title)
            gtl_shape_text(picture->drawing, GTL_ROLE_FRAME,
                           (gtl_point){GTL_MARGIN, picture->views[i].room.low.y - 10}, true, "%s",
                           picture->views[i].title);
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
    drawing->scale = picture->scale;
    drawing->newtons = picture->newtons;
}

gtl_drawing *gtl_draw(const gtl_sheet *sheet, int outcome)
{
    gtl_drawing *drawing = calloc(1, sizeof *drawing);
    if (!drawing) return NULL;
    gtl_picture picture;
    drawing->title = gtl_escape_for_people(sheet->rig->title);
    bool made = gtl_picture_begin(&picture, sheet, outcome, drawing) && drawing->title;
    if (made) draw(&picture);
    gtl_picture_end(&picture);
    if (made && !drawing->failed) return drawing;
    gtl_drawing_end(drawing);
    return NULL;
}
