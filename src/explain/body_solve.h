/* body_solve.h - an equation solved for one pull. */
#ifndef EXPLAIN_BODY_SOLVE_H
#define EXPLAIN_BODY_SOLVE_H

#include "explain/balance.h"

/* One unknown along one axis: coefficient x symbol = rest. */
typedef struct gtl_solving {
    const gtl_bodies *bodies;
    const gtl_equation *equation;
    int piece;
    double coefficient; /* of the piece's base, positive [1] */
    bool against;       /* all signs are turned round to make it so */
    double rest;        /* [N] */
} gtl_solving;

/* By how much the pull of a piece's base counts in an equation [1]. */
double gtl_coefficient(const gtl_bodies *bodies, const gtl_equation *equation, int piece);

/* What is known, on the other side: "1157.2 N + 15.69 N". Pulls that cancel each other out are left out. The
 * caller frees it; NULL without memory. */
char *gtl_known_side(const gtl_solving *solving);

/* Put into the document "4 x T = 1157.2 N + 15.69 N = 1172.9 N", then "T = 1172.9 N / 4 = 293.2 N". Takes
 * `left`, the left side. */
void gtl_put_solution(const gtl_solving *solving, char *left);

/* The symbol of a piece's base. */
gtl_figure gtl_symbol_base(const gtl_bodies *bodies, int piece);

/* body_cross.c: two unknown pulls by two of the equations, each multiplied so that one pull falls out. False,
 * with nothing told, where no two equations give them plainly. */
bool gtl_solve_across(const gtl_bodies *bodies, const gtl_equation equations[3], const int pieces[2]);

/* body_several.c: two or three pulls of which no equation has one alone. */
void gtl_solve_several(gtl_bodies *bodies, const gtl_equation equations[3], const int *pieces, int count);

/* body_chain.c: of bodies that have to be taken together, as many pulls as one of them tells plainly; they
 * are known then. */
void gtl_solve_chain(gtl_bodies *bodies);

#endif
