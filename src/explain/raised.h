/* raised.h - what is raised as the load rises by h: weights and known pulls, each with how far it counts. */
#ifndef EXPLAIN_RAISED_H
#define EXPLAIN_RAISED_H

#include "explain/travel.h"

typedef struct gtl_raised_item {
    gtl_figure symbol; /* W(drop), W(log), W(log)/2, P(helper) */
    const char *name;  /* of the thing or the line; the rig's */
    int thing;         /* -1: a spar, or half of it */
    int end;           /* of half a spar: the thing that it sits at, else -1 */
    bool pull;         /* a known pull, else a weight */
    double force;      /* [N] */
    double way;        /* how far it is raised for one unit of lift; of a pull, against it [1] */
} gtl_raised_item;

typedef struct gtl_raised {
    gtl_raised_item *items;
    int count;
    double sum; /* force times way, all together: Q [N] */
} gtl_raised;

/* All that moves against its force, or with it, in a case. Returns false without memory, and the document has
 * failed. The caller gives it back with gtl_raised_end in every case. */
bool gtl_raised_begin(gtl_lesson *lesson, const gtl_outcome *outcome, gtl_raised *raised);
void gtl_raised_end(gtl_raised *raised);

/* Q in symbols and in figures, as one or two equations; a list that is too long is told by its sum alone. */
void gtl_raised_equations(gtl_lesson *lesson, const gtl_raised *raised);

/* U(out) for one unit of length that the load rises, with a table of its terms or without. */
void gtl_raised_work(gtl_lesson *lesson, const gtl_raised *raised, bool table);

/* U(in) of an effort for the same. */
void gtl_work_in(gtl_lesson *lesson, const gtl_outcome *outcome);

/* "metre" or "foot". */
const char *gtl_length_word(const gtl_lesson *lesson);

#endif
