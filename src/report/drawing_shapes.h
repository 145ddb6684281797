/* drawing_shapes.h - what a drawing is made of: lines, arcs, circles, boxes, arrow heads and texts.
 *
 * Places and sizes are in the drawing's units, across to the right and down; angles count from across towards
 * down, as seen clockwise. */
#ifndef REPORT_DRAWING_SHAPES_H
#define REPORT_DRAWING_SHAPES_H

#include "report/drawing.h"

/* Width of every drawing, and the least size of a text in it. */
#define GTL_DRAWING_WIDTH 640.0
#define GTL_TEXT_SIZE     16.0
/* From one line of text to the next. */
#define GTL_TEXT_STEP 20.0

typedef struct gtl_point {
    double x;
    double y;
} gtl_point;

/* A box along the axes. */
typedef struct gtl_bounds {
    gtl_point low;
    gtl_point high;
} gtl_bounds;

typedef enum gtl_shape_kind {
    GTL_SHAPE_LINE,   /* a to b */
    GTL_SHAPE_ARC,    /* about a */
    GTL_SHAPE_CIRCLE, /* about a */
    GTL_SHAPE_BOX,    /* a: upper left, b: lower right */
    GTL_SHAPE_HEAD,   /* of an arrow: tip a, the other corners b and c; filled */
    GTL_SHAPE_TEXT    /* a: on its foot line, at the end that `align` says */
} gtl_shape_kind;

/* What a shape stands for. */
typedef enum gtl_role {
    GTL_ROLE_PART,   /* a straight stretch of line; index: the part */
    GTL_ROLE_WRAP,   /* line round a sheave; index: the run */
    GTL_ROLE_SHEAVE, /* index: the run, -1: a sheave that nothing runs over */
    GTL_ROLE_BODY,   /* index: the thing */
    GTL_ROLE_LINK,   /* a connector; index: it */
    GTL_ROLE_ARROW,  /* a force, from tail to tip; index: the thing */
    GTL_ROLE_LABEL,  /* text in a view, and its mark */
    GTL_ROLE_LEADER, /* from a label to what it tells of */
    GTL_ROLE_FRAME   /* title, notes, scales, list */
} gtl_role;

/* Where a text stands by its point. */
typedef enum gtl_align { GTL_ALIGN_LEFT, GTL_ALIGN_MIDDLE, GTL_ALIGN_RIGHT } gtl_align;

typedef enum gtl_fill { GTL_FILL_NONE, GTL_FILL_WHITE, GTL_FILL_BLACK } gtl_fill;

typedef struct gtl_shape {
    gtl_shape_kind kind;
    gtl_role role;
    int index;
    int view; /* in which view it stands, -1: in none */
    gtl_point a, b, c;
    double radius;
    double from;  /* of an arc: where it begins [rad] */
    double sweep; /* of an arc: how far it goes on, its sign the sense [rad] */
    double width; /* of the pen; 0: no outline */
    bool dashed;
    gtl_fill fill;
    bool bold;
    gtl_align align;
    char *text; /* owned; for people, not yet escaped for a form */
} gtl_shape;

struct gtl_drawing {
    gtl_shape *shapes;
    int count;
    int capacity;
    double top;    /* 0 of a whole one, as `left` */
    double height; /* where it ends */
    double left;
    double width;   /* read only of a bare one: others have GTL_DRAWING_WIDTH */
    double newtons; /* what one unit of an arrow stands for [N]; 0: no arrows */
    double scale;   /* of places [units/m] */
    char *title;    /* owned */
    bool bare;      /* by gtl_draw_bare: cut to what it holds */
    bool failed;    /* memory was short: it is not whole */
};

/* Add a shape; the drawing takes its text. Once memory fails nothing is added any more. */
void gtl_shape_add(gtl_drawing *drawing, gtl_shape shape);

/* Add a text, in printf's format, at the left end of its foot line. */
void gtl_shape_text(gtl_drawing *drawing, gtl_role role, gtl_point at, bool bold, const char *format, ...)
    GTL_PRINTF(5, 6);

/* The box that a text of the drawing takes up at the most. */
gtl_bounds gtl_text_bounds(const gtl_shape *text);

/* How wide the first `bytes` bytes of a text are at the most that fonts make of them. */
double gtl_text_width(const char *text, size_t bytes, bool bold);

#endif
