/* body_spokes.h - a body that is cut free, laid out: its things in a column, its forces as arrows around it.
 *
 * Places are across to the right and down, from the first thing's middle. */
#ifndef EXPLAIN_BODY_SPOKES_H
#define EXPLAIN_BODY_SPOKES_H

#include "explain/body_figure.h"

/* So many things of a body are drawn. */
#define GTL_MOST_SLABS 4
/* Of forces that are alike so many are drawn. */
#define GTL_MOST_ALIKE  6
#define GTL_MOST_SPOKES (GTL_MOST_FORCES * GTL_MOST_ALIKE)

/* A thing of the body. */
typedef struct gtl_slab {
    int thing;
    bool round; /* else a box */
    gtl_point at;
    double wide; /* half of it; of what is round the radius */
    double high; /* likewise */
} gtl_slab;

/* An arrow. */
typedef struct gtl_spoke {
    int force;
    int slab;
    gtl_point out; /* unit vector from the body to where the arrow stands */
    double angle;  /* of that, from across towards down [rad] */
    double offset; /* to the side, from the line through the thing's middle */
    double length;
    gtl_point near; /* its end at the body */
    gtl_point far;  /* its other end */
} gtl_spoke;

typedef struct gtl_layout {
    gtl_slab slabs[GTL_MOST_SLABS];
    int slab_count;
    bool stands; /* the anchor below, not above */
    gtl_spoke spokes[GTL_MOST_SPOKES];
    int spoke_count;
} gtl_layout;

void gtl_lay_out(gtl_layout *layout, const gtl_body *body, const gtl_body_view *view);

/* How long an arrow is for one newton, and the least length of one. */
double gtl_arrow_scale(const gtl_body *body);
#define GTL_LEAST_ARROW 18.0

#endif
