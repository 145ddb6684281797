/* drawing_pieces.h - where a drawing that is higher than a sheet of paper is cut across. */
#ifndef REPORT_DRAWING_PIECES_H
#define REPORT_DRAWING_PIECES_H

#include "report/drawing_shapes.h"

/* What stands on a sheet of paper as wide as the drawing, its text still to be read [units]. */
#define GTL_SHEET_HEIGHT 1250.0

/* The lower edge of the piece that begins at `top`: as low as a sheet bears at the most, but no view, no line
 * of text and no shape is cut, nor a view's title left behind. Where that leaves nothing the piece is as much
 * higher as it has to be. The last one ends with the drawing. */
double gtl_drawing_cut(const gtl_drawing *drawing, double top);

/* Whether a shape stands in the piece from `top` to `foot`. */
bool gtl_shape_within(const gtl_shape *shape, double top, double foot);

#endif
