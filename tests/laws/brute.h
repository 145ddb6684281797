/* brute.h - what is demanded of every part of the gear in one state, the contract's words taken literally:
 * every set of the pulls on a body is tried. */
#ifndef LAWS_BRUTE_H
#define LAWS_BRUTE_H

#include "laws/mechanics.h"

/* The most pulls on a body whose sets are all tried. */
enum { BRUTE_PULLS = 12 };

/* Demand in that state of a component [N]: of a spar in pull, `push` in push. NaN where a body has too many
 * pulls. A hand's is its pull, whatever the case. */
double brute_demand(const mechanics *m, const gtl_component *component, bool push);

#endif
