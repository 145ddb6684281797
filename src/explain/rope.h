/* rope.h - the rope's length kept, piece by piece: what its files share. */
#ifndef EXPLAIN_ROPE_H
#define EXPLAIN_ROPE_H

#include "explain/travel.h"

/* As many parts or terms are told one by one; equal ones in longer rows are told together. */
#define GTL_MOST_SINGLE 6

/* By how much each part shortens or lengthens, and why. */
void gtl_rope_parts(gtl_lesson *lesson, const gtl_outcome *outcome, const gtl_piece *piece);

/* The same worked out for the parts at an angle. */
void gtl_rope_oblique(gtl_lesson *lesson, const gtl_outcome *outcome, const gtl_piece *piece);

#endif
