/* drawing_picture.h - one case of a rig on its way to a drawing: where every body, line and force goes in
 * each view.
 *
 * A view is laid out by one scale for all places and one size for all bodies; both are found by trying, and
 * the same steps are taken each time: spots, senses, stretches, arrows. Lengths are in the drawing's units
 * unless said otherwise. */
#ifndef REPORT_DRAWING_PICTURE_H
#define REPORT_DRAWING_PICTURE_H

#include "report/drawing_shapes.h"
#include "report/figures.h"

#define GTL_MOST_VIEWS 3
/* Half of a load's box. */
#define GTL_LOAD_WIDE 15.0
#define GTL_LOAD_HIGH 11.0

/* Where a thing is drawn. */
typedef struct gtl_spot {
    bool shown;
    bool laid;      /* its body has its place */
    gtl_point flat; /* its node's place on paper: right and down [m]; across in columns with heights alone */
    gtl_point node; /* the same, to scale */
    gtl_point at;   /* the middle of its body: off its node where it sits on another thing */
    gtl_point hang; /* unit vector from what it sits on; of an anchor from its ground to what it holds */
    double reach;   /* radius of the circle about `at` that holds its body */
    double shrink;  /* what its sheaves keep of their size beside near bodies [1] */
} gtl_spot;

/* A line on its way over a sheave or fairlead. */
typedef struct gtl_pass {
    bool shown;
    int sheave;    /* its number on the block, from the middle outwards */
    int turn;      /* of the line itself: 1 clockwise, -1 the other way, 0: it does not say */
    int faults;    /* how often it came out wrong */
    double radius; /* its sign the sense: above 0 clockwise; 0: the line bends without a sheave */
    gtl_point in;  /* where the line comes on */
    gtl_point out; /* where it leaves */
} gtl_pass;

/* A part of line between what its ends touch. */
typedef struct gtl_stretch {
    bool shown; /* false too where it is seen end on */
    int from;   /* the run at its beginning, -1: tied there */
    int to;     /* likewise at its end */
    gtl_point a, b;
} gtl_stretch;

/* A force, from tail to tip. */
typedef struct gtl_arrow {
    bool shown;
    gtl_point tail, tip;
} gtl_arrow;

typedef struct gtl_view {
    const char *title;      /* NULL: the only one */
    int across;             /* coordinate that runs to the right, -1: columns */
    int up;                 /* coordinate that runs upwards */
    double share;           /* its bodies over those of the elevation [1] */
    double size;            /* of its bodies, over their full size [1] */
    gtl_spot *spots;        /* one a thing */
    gtl_pass *passes;       /* one a run */
    gtl_stretch *stretches; /* one a part */
    gtl_arrow *arrows;      /* one a thing: anchors and hands */
    gtl_bounds bounds;      /* of all of these */
    gtl_bounds room;        /* that labels may use as well */
} gtl_view;

typedef struct gtl_picture {
    const gtl_sheet *sheet;
    int index; /* of the outcome */
    const gtl_outcome *outcome;
    const gtl_rig *rig; /* what is drawn: the case's own */
    bool solved; /* places and forces are the case's; false: places are the file's, there are no forces */
    bool bare;   /* names only: nothing that has to be worked out, nor a verdict */
    gtl_print_units units;
    gtl_view views[GTL_MOST_VIEWS];
    int view_count;
    int *sheaves;   /* one a thing: how many are drawn */
    double scale;   /* of places [units/m] */
    double column;  /* from one column to the next, with heights alone */
    double size;    /* of bodies in the elevation, over their full size [1] */
    double newtons; /* what one unit of an arrow stands for [N]; 0: no arrows */
    gtl_drawing *drawing;
} gtl_picture;

/* An outcome that is none: the rig is drawn bare. */
#define GTL_BARE (-1)

/* Take in what is drawn; false without memory. Ended in every case. */
bool gtl_picture_begin(gtl_picture *picture, const gtl_sheet *sheet, int outcome, gtl_drawing *drawing);
void gtl_picture_end(gtl_picture *picture);

/* drawing_columns.c: spread what has heights alone: flat.x becomes a column, a whole number. False without
 * memory. */
bool gtl_spread_columns(const gtl_picture *picture, gtl_view *view);

/* --- one view, step by step; `origin` is where flat's zero comes to lie --- */

/* drawing_spots.c: bodies, each with its sheaves as large as its neighbours let it be. */
void gtl_lay_spots(const gtl_picture *picture, gtl_view *view, gtl_point origin);
/* How far from the middle of a body its outline is, in a direction. */
double gtl_outline_reach(const gtl_picture *picture, const gtl_view *view, int thing, gtl_point way);
/* How far the sheave of that number is from the middle of its block. */
double gtl_sheave_radius(const gtl_view *view, const gtl_spot *spot, int number);

/* drawing_rope.c: the sense of every pass, and the lines between. */
void gtl_lay_lines(const gtl_picture *picture, gtl_view *view);

/* drawing_arrows.c: the forces. */
void gtl_choose_force_scale(gtl_picture *picture);
void gtl_lay_arrows(const gtl_picture *picture, gtl_view *view);
/* The force that an anchor feels or a hand pulls with in this case; NaN: none is known [N]. */
double gtl_shown_force(const gtl_picture *picture, int thing);

/* drawing_fit.c: find scale and size, and lay out all views below `top`. Returns where they end. */
double gtl_fit_views(gtl_picture *picture, double top);

/* drawing_ink.c: the shapes of a view that is laid out. */
void gtl_ink_view(gtl_picture *picture, int view);

/* Whether a part of the gear is over its rating in any case. */
const gtl_component *gtl_over_component(const gtl_picture *picture, gtl_kind kind, int index);

/* --- points as vectors --- */

static inline gtl_point gtl_along(gtl_point from, gtl_point direction, double distance)
{
    return (gtl_point){from.x + direction.x * distance, from.y + direction.y * distance};
}

static inline gtl_point gtl_between(gtl_point from, gtl_point to)
{
    return (gtl_point){to.x - from.x, to.y - from.y};
}

/* A quarter turn clockwise. */
static inline gtl_point gtl_quarter(gtl_point v)
{
    return (gtl_point){-v.y, v.x};
}

static inline double gtl_dot(gtl_point v, gtl_point w)
{
    return v.x * w.x + v.y * w.y;
}

/* Above 0 where the way from v to w turns clockwise. */
static inline double gtl_cross(gtl_point v, gtl_point w)
{
    return v.x * w.y - v.y * w.x;
}

double gtl_length(gtl_point v);

/* The unit vector along v; `otherwise` where v has no length. */
gtl_point gtl_unit(gtl_point v, gtl_point otherwise);

#endif
