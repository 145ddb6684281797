/* plot.h - what the plots of a lab are made of: axes, marks, bars and texts, black on white.
 *
 * Places are in a drawing's units, as in report/drawing_shapes.h. */
#ifndef LAB_PLOT_H
#define LAB_PLOT_H

#include "report/document.h"
#include "report/drawing_shapes.h"

/* An axis: values from `low` to `high` stand from place `from` to place `to`. */
typedef struct gtl_axis {
    double low;  /* in the axis's own unit */
    double high; /* likewise */
    double step; /* from one tick to the next, likewise */
    double from; /* [units of the drawing] */
    double to;   /* [units of the drawing] */
} gtl_axis;

/* An axis from zero to a round value that `highest` does not pass. */
gtl_axis gtl_axis_to(double highest, double from, double to);

double gtl_axis_place(const gtl_axis *axis, double value);

/* What is read at an axis's tick, which is no rounding noise beside the step. */
double gtl_axis_tick(const gtl_axis *axis, int tick);
int gtl_axis_ticks(const gtl_axis *axis);

/* A drawing without a shape; NULL without memory. */
gtl_drawing *gtl_plot_begin(const char *title);

void gtl_plot_line(gtl_drawing *plot, gtl_point a, gtl_point b, double width, bool dashed);
void gtl_plot_box(gtl_drawing *plot, gtl_point low, gtl_point high);
void gtl_plot_text(gtl_drawing *plot, gtl_point at, gtl_align align, bool bold, const char *format, ...)
    GTL_PRINTF(5, 6);

/* Words in as many lines as they take, from `at` to the right margin; the foot line of the next line. */
double gtl_plot_words(gtl_drawing *plot, gtl_point at, const char *words);

/* A bar from a to b, along one axis, with a stroke across each end. */
void gtl_plot_bar(gtl_drawing *plot, gtl_point a, gtl_point b);

/* Append the plot to a document as a figure: `prefix` begins its ids, `alternative` tells it in words and is
 * empty afterwards. The plot, NULL where memory failed, is given back. */
void gtl_plot_end(gtl_drawing *plot, gtl_document *document, const char *prefix, gtl_text *alternative);

/* How many shapes of marks there are; beyond that they come again. */
#define GTL_MARK_SHAPES 7

/* Half of a mark's size [units of the drawing]. */
#define GTL_MARK_HALF 6.0

/* The mark of set-up `number`, filled or not. */
void gtl_plot_mark(gtl_drawing *plot, gtl_point at, int number, bool filled);

/* The letter of set-up `number`: A to Z, then AA and so on. */
typedef struct gtl_letter {
    char text[8];
} gtl_letter;
gtl_letter gtl_letter_of(int number);

#endif
