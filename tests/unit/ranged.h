/* ranged.h - a rig's text to the limits of its load, for tests that then look at one of them. */
#ifndef UNIT_RANGED_H
#define UNIT_RANGED_H

#include "unit/rated.h"

/* Standard gravity [m/s2]. */
#define G GTL_STANDARD_GRAVITY

typedef struct ranged {
    gtl_rig *rig;
    gtl_limit limit;
} ranged;

/* Read a text, which has to be sound, and find its limits. The caller gives it back. */
ranged find_range(const char *text);
void ranged_end(ranged *found);

/* A component of either sheet has that name. */
void assert_part(const ranged *found, int component, const char *name);
/* An edge by a rating: at that weight [N], with that part, in that case. */
void assert_at_rating(const ranged *found, const gtl_edge *edge, double weight, const char *part,
                      const char *which);

#endif
