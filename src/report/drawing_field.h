/* drawing_field.h - where in a view there is room for a label.
 *
 * What stands in a view already is never covered: lines, bodies, arrows, other labels. */
#ifndef REPORT_DRAWING_FIELD_H
#define REPORT_DRAWING_FIELD_H

#include "report/drawing_shapes.h"

typedef struct gtl_segment {
    gtl_point a, b;
} gtl_segment;

typedef struct gtl_disc {
    gtl_point at;
    double radius;
} gtl_disc;

typedef struct gtl_field {
    gtl_bounds room; /* labels stay inside */
    gtl_segment *segments;
    size_t segment_count;
    size_t segment_capacity;
    gtl_disc *discs;
    size_t disc_count;
    size_t disc_capacity;
    gtl_bounds *boxes;
    size_t box_count;
    size_t box_capacity;
    bool failed;
} gtl_field;

/* All that stands in a view of a drawing. Ended in every case; look at `failed`. */
void gtl_field_begin(gtl_field *field, const gtl_drawing *drawing, int view, gtl_bounds room);
void gtl_field_end(gtl_field *field);

/* What a label tells of: a body, where a is b, or something long. */
typedef struct gtl_target {
    gtl_point a, b;
    double reach; /* from there to its outline */
    bool sided;   /* labels rather stand on the side that faces away from `inside` */
    gtl_point inside;
} gtl_target;

/* Where a label goes. */
typedef struct gtl_seat {
    gtl_bounds box;
    gtl_align align;
    bool led;       /* by a thin line */
    gtl_point from; /* at the box */
    gtl_point to;   /* at the target */
} gtl_seat;

/* A free place for a box of that size, `next` to the target's outline or as near to it as there is one;
 * taken, with its leader, if there is. */
bool gtl_field_take(gtl_field *field, const gtl_target *target, gtl_point size, double next, gtl_seat *seat);

/* How much is taken, and back to that. */
typedef struct gtl_field_mark {
    size_t segments;
    size_t boxes;
} gtl_field_mark;

gtl_field_mark gtl_field_now(const gtl_field *field);
void gtl_field_back(gtl_field *field, gtl_field_mark mark);

#endif
