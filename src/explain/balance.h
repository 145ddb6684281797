/* balance.h - the bodies of a rig in the order in which their pulls can be worked out, and the balance of
 * each as an equation.
 *
 * The unknowns are the pulls of the pieces of line: in a case every part's pull is a multiple of the pull of
 * one part of its piece, the base. Without friction all multiples are 1. */
#ifndef EXPLAIN_BALANCE_H
#define EXPLAIN_BALANCE_H

#include "explain/lesson.h"

/* Of longer lists only the beginning is told. */
#define GTL_MOST_ITEMS 40
/* Sums of more terms are told by their value alone. */
#define GTL_MOST_TERMS 24
/* What is rounding of the arithmetic in a cosine, a ratio or a sum of them [1]. */
#define GTL_NEARLY 1e-9

/* Below this share of what else acts on a body a force, or a coefficient, decides nothing [1]. */
#define GTL_NOTHING 1e-7

typedef struct gtl_bodies {
    gtl_lesson *lesson;
    const gtl_outcome *outcome;
    gtl_pull *pulls; /* node by node */
    int *first;      /* one a node, and one more: where its pulls begin */
    int *base;       /* one a piece: the part whose pull stands for all */
    bool *idle;      /* one a piece: it carries nothing */
    bool *known;     /* one a piece: its pull is known by now; idle ones are */
    int *order;      /* nodes: `alone` that can be worked one by one, `together`, `checks` */
    int alone;
    int together;
    int checks;
    int equations;       /* of those together */
    int pieces;          /* unknown in them */
    double *coefficient; /* 3 a piece: room */
    double *scale;       /* one a piece: room */
} gtl_bodies;

/* Sort the bodies of a case. False without memory, when the document is failed. Give back in either case. */
bool gtl_bodies_begin(gtl_bodies *bodies, gtl_lesson *lesson, const gtl_outcome *outcome);
void gtl_bodies_end(gtl_bodies *bodies);

/* Known again is only what is known from the start. */
void gtl_bodies_restart(gtl_bodies *bodies);

/* The unknown pieces in the balance of a node, in `pieces` as far as three go. Returns how many there are. */
int gtl_bodies_unknown(gtl_bodies *bodies, int node, int pieces[3]);

/* The pull of a piece's base, and a part's over it. */
double gtl_base_pull(const gtl_bodies *bodies, int piece);
double gtl_multiple(const gtl_bodies *bodies, int part);

/* Whether a node is free to move along an axis. */
bool gtl_is_free(const gtl_rig *rig, int node, int axis);

/* --- equation.c: the balance of a node along an axis, as a sum of items --- */

/* Pulls alike, or a weight: count x factor x the symbol. */
typedef struct gtl_item {
    gtl_figure symbol;
    double factor; /* cosine along the axis, of a weight -1 [1] */
    int count;
    double value; /* of the symbol [N] */
    int piece;    /* whose pull it is, -1: a weight */
    int part;
} gtl_item;

typedef struct gtl_equation {
    gtl_item *items;
    int count;
    size_t capacity;
} gtl_equation;

/* How items are written. */
typedef enum gtl_writing {
    GTL_SYMBOLS, /* all as symbols */
    GTL_PARTLY,  /* what is known by its value */
    GTL_VALUES   /* all by their values */
} gtl_writing;

/* Collect the items of a node along an axis; idle lines are left out, and all where they come to nothing
 * beside what else acts on the node. Without memory the document is failed,
 * and the equation has no items. The caller gives it back. */
void gtl_equation_of(const gtl_bodies *bodies, int node, int axis, gtl_equation *equation);
void gtl_equation_end(gtl_equation *equation);

/* Append an item as a term of a sum, its sign turned round where `against`. */
void gtl_put_item(gtl_text *sum, const gtl_bodies *bodies, const gtl_item *item, bool against,
                  gtl_writing writing);

/* Append all items, or all that are known, those with a plus first. */
void gtl_put_items(gtl_text *sum, const gtl_bodies *bodies, const gtl_equation *equation, bool against,
                   gtl_writing writing, bool known);

/* Put the equation into the document: what acts one way = what acts the other way. */
void gtl_put_equation(const gtl_bodies *bodies, const gtl_equation *equation, gtl_writing writing);

/* --- body_step.c --- */

typedef enum gtl_body_kind { GTL_BODY_ALONE, GTL_BODY_TOGETHER, GTL_BODY_CHECK } gtl_body_kind;

/* The step of one body: its pulls, their balance, what comes out. What comes out is known then. */
void gtl_body_step(gtl_bodies *bodies, int node, gtl_body_kind kind);

/* body_solve.c: work out the unknown pieces of a body, from its equations along each axis; they are known
 * then. */
void gtl_body_solve(gtl_bodies *bodies, const gtl_equation equations[3], const int *pieces, int count);

/* The other parts of a piece whose base is known, by their multiples. */
void gtl_tell_parts(const gtl_bodies *bodies, int piece);

/* bodies.c: the steps of all bodies, one by one and together. */
void gtl_body_steps(gtl_bodies *bodies);

/* effort.c: the last step: what the hand pulls. */
void gtl_effort_step(const gtl_bodies *bodies);

#endif
