/* counting.h - whether the parts of the rope may be counted, and how many then bear. */
#ifndef EXPLAIN_COUNTING_H
#define EXPLAIN_COUNTING_H

#include "explain/travel.h"

/* Why the parts may not be counted. */
typedef enum gtl_no_counting {
    GTL_COUNTS,        /* they may */
    GTL_NO_AT_REST,    /* it does not hold at rest */
    GTL_NO_OTHER_BODY, /* `node` moves, and not as the load does */
    GTL_NO_OTHER_LINE, /* `part` of another piece carries too */
    GTL_NO_ROPE_THERE, /* the hauled rope holds nothing of what rises with the load */
    GTL_NO_PLUMB,      /* `part` of it stands at an angle */
    GTL_NO_UPWARD,     /* `part` of it leads down from there */
    GTL_NO_SUM         /* the count is not the velocity ratio */
} gtl_no_counting;

typedef struct gtl_counting {
    gtl_no_counting why;
    int node;          /* the one that `why` speaks of, -1 for none */
    int part;          /* likewise */
    int count;         /* of parts that bear; only where `why` is GTL_COUNTS */
    bool hand_counts;  /* the part in the hand is among them */
    bool hand_on_body; /* since the hand is on what rises */
} gtl_counting;

/* Parts may be counted where the hauled piece alone holds up the load and what rises with it as one, by plumb
 * parts, and nothing else moves: then each of them shortens by h, and all pull alike. Without friction. */
gtl_counting gtl_count_parts(const gtl_lesson *lesson);

/* Whether a part is one of those that bear. */
bool gtl_part_bears(const gtl_lesson *lesson, int part);

/* A step that counts, or says why not. */
void gtl_lesson_counting(gtl_lesson *lesson);

#endif
