/* drawing.h - one case of a rig as a line drawing: shapes and texts with a place each, before they have a
 * form.
 *
 * Places are in the drawing's own units, across to the right and down; one unit is one CSS pixel where the
 * drawing is shown at its own size, so that a text of 16 units is one of 16 pixels. Places of bodies are to
 * scale; the size of sheaves and the spreading of parts that lie on each other are not. All text has come
 * through gtl_escape_for_people. */
#ifndef REPORT_DRAWING_H
#define REPORT_DRAWING_H

#include "base/text.h"
#include <gantline/rate.h>

typedef struct gtl_drawing gtl_drawing;

/* Draw one case of a sheet: an elevation; of a rig in space an elevation, a side view and a plan. A case that
 * cannot be is drawn as the rig is drawn in the file, without forces, and says so. The caller ends it; NULL
 * without memory. */
gtl_drawing *gtl_draw(const gtl_sheet *sheet, int outcome);
/* Draw the rig as its file draws it, with names alone: without a force, a weight, a case or a verdict, so
 * that nothing is given away to whoever is to work it out. `title` names it, since a rig's own may tell too
 * much. Likewise. */
gtl_drawing *gtl_draw_bare(const gtl_sheet *sheet, const char *title);
void gtl_drawing_end(gtl_drawing *drawing);

/* The drawing as an <svg> element. `prefix` begins each of its ids, so that several stand in one page.
 * `alternative` is the text that tells it in words (gtl_words_drawing), put into <desc>. */
void gtl_write_drawing(gtl_text *out, const gtl_drawing *drawing, const char *prefix,
                       const char *alternative);

/* The same as several <svg> elements, one to follow below the other, where it is higher than a sheet of
 * paper; no shape is cut. The first has the ids and the alternative. */
void gtl_write_drawing_pieces(gtl_text *out, const gtl_drawing *drawing, const char *prefix,
                              const char *alternative);

/* The same case told in sentences: the route of every line, and the forces. The caller frees it; NULL without
 * memory. */
char *gtl_words_drawing(const gtl_sheet *sheet, int outcome);

/* What gtl_draw_bare shows, in sentences: the route of every line. Likewise. */
char *gtl_words_bare(const gtl_sheet *sheet);

#endif
