/* drawing_frame.h - what stands around the views: the title, scales, what the pens mean, notes, the list. */
#ifndef REPORT_DRAWING_FRAME_H
#define REPORT_DRAWING_FRAME_H

#include "report/drawing_notes.h"
#include "report/drawing_picture.h"

/* Each begins at `top` and returns where it ends. */
double gtl_frame_head(gtl_picture *picture, double top);
double gtl_frame_foot(gtl_picture *picture, double top);
double gtl_frame_list(gtl_picture *picture, const gtl_notes *notes, double top);

/* drawing_paragraph.c: a paragraph from `foot` on, no line wider than `width`, `most` lines at the most (0:
 * no limit). Returns the foot of the next line. */
double gtl_frame_words(gtl_drawing *drawing, gtl_point foot, double width, int most, bool bold,
                       const char *words);

#define GTL_MARGIN 16.0
/* Between both margins. */
#define GTL_FULL_WIDTH (GTL_DRAWING_WIDTH - 2 * GTL_MARGIN)

#endif
