/* support.h - what anchors, tracks and hands' places hold. */
#ifndef EXPLAIN_SUPPORT_H
#define EXPLAIN_SUPPORT_H

#include "explain/balance.h"

/* Whether a node is an anchor's. */
bool gtl_is_support(const gtl_rig *rig, int node);

/* What a fixed or guided node gives the rig along an axis in a case, the weights on it included [N]. */
double gtl_reaction(const gtl_bodies *bodies, int node, int axis);

/* support_total.c: the balance of the whole rig in height, in one case. */
void gtl_whole_step(const gtl_bodies *bodies);

/* support_gear.c: what the supports hold in each case side by side, and without the gear's own weight. Either
 * case may be NULL. */
void gtl_supports_table(gtl_lesson *lesson, const gtl_bodies *hold, const gtl_bodies *raise);

#endif
