/* body_figure.h - a body cut free: the forces on it, drawn and in words.
 *
 * Forces that are alike are one: of four parts with one pull beside each other it is said once, and four
 * arrows are drawn. */
#ifndef EXPLAIN_BODY_FIGURE_H
#define EXPLAIN_BODY_FIGURE_H

#include "explain/lesson.h"
#include "report/drawing_shapes.h"

/* So many different forces are drawn; parts of one line, side by side, are taken together to come to that. */
#define GTL_MOST_FORCES 12

typedef enum gtl_force_kind {
    GTL_FORCE_PULL,
    GTL_FORCE_PUSH, /* of a spar */
    GTL_FORCE_WEIGHT,
    GTL_FORCE_SUPPORT, /* of an anchor, a track, or whoever holds a hand's place */
} gtl_force_kind;

typedef struct gtl_force {
    gtl_force_kind kind;
    int count;         /* how many are alike */
    gtl_figure symbol; /* of the first */
    gtl_figure last;   /* of the last, where they are alike but for their size */
    double way[3];     /* unit vector in which it acts on the body [1] */
    double least;      /* of one [N] */
    double most;       /* likewise; the same unless `last` is needed [N] */
    int line;          /* of a pull or push, else -1 */
    int thing;         /* of the body, on which it acts */
    int other;         /* of a single pull or push: the thing at the other end, else -1 */
} gtl_force;

typedef struct gtl_body {
    const gtl_lesson *lesson;
    const gtl_outcome *outcome;
    int node;
    gtl_force forces[GTL_MOST_FORCES];
    int count;
    int left_out;   /* forces that are not among those */
    int idle;       /* parts that pull nothing here */
    double largest; /* force of all [N] */
} gtl_body;

/* body_forces.c: gather what acts on a node; false without memory. */
bool gtl_body_gather(gtl_body *body, const gtl_lesson *lesson, const gtl_outcome *outcome, int node);

/* Whether the forces that are taken together are of different size. */
bool gtl_force_varies(const gtl_force *force);

/* "T", "4 x T", "T1 to T24". */
gtl_figure gtl_force_name(const gtl_force *force);

/* "293.2 N", "293.2 N each", "40.12 N to 60.30 N". */
gtl_figure gtl_force_size(const gtl_body *body, const gtl_force *force);

/* body_view.c: how one view shows the body. */
typedef struct gtl_body_view {
    int number;     /* of the view, as the shapes have it */
    int across;     /* the axis that goes across; the height goes up */
    bool keyed;     /* short letters stand in it, and all else in a list */
    gtl_point spot; /* where the middle of its upper edge goes */
    double width;
} gtl_body_view;

/* Draw it; false where no label fits and it has to be keyed. Gives where it ends. */
bool gtl_body_view_draw(const gtl_body *body, gtl_drawing *drawing, const gtl_body_view *view, double *foot);

/* What a force is called in a view that is keyed. */
gtl_figure gtl_force_key(const gtl_body *body, int force);

/* body_words.c: the whole in sentences, which the caller frees; NULL without memory. */
char *gtl_body_words(const gtl_body *body);

/* Which way a force acts: "straight up", "up to the left, 35.3 deg from upright"; in space its parts along
 * the axes. */
void gtl_add_way_words(gtl_text *text, const gtl_body *body, const gtl_force *force);

#endif
