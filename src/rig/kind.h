/* kind.h - words and sets of kinds, for messages and checks. */
#ifndef RIG_KIND_H
#define RIG_KIND_H

#include <gantline/rig.h>

/* A set of kinds: bits of GTL_ONE_KIND. */
#define GTL_ONE_KIND(kind) (1U << (kind))

#define GTL_LINE_KINDS (GTL_ONE_KIND(GTL_ROPE) | GTL_ONE_KIND(GTL_SLING) | GTL_ONE_KIND(GTL_SPAR))
/* Bodies that are there for their weight. */
#define GTL_WEIGHT_KINDS (GTL_ONE_KIND(GTL_LOAD) | GTL_ONE_KIND(GTL_ARBOR))
#define GTL_BODY_KINDS                                                                                       \
    (GTL_ONE_KIND(GTL_ANCHOR) | GTL_ONE_KIND(GTL_BLOCK) | GTL_ONE_KIND(GTL_FAIRLEAD) |                       \
     GTL_ONE_KIND(GTL_JOINT) | GTL_WEIGHT_KINDS)
#define GTL_THING_KINDS (GTL_BODY_KINDS | GTL_ONE_KIND(GTL_HAND))
/* These may be timber. */
#define GTL_TIMBER_KINDS (GTL_ONE_KIND(GTL_LOAD) | GTL_ONE_KIND(GTL_SPAR))
/* Over these a line runs where it passes in the middle of its path. */
#define GTL_RUNNING_KINDS (GTL_ONE_KIND(GTL_BLOCK) | GTL_ONE_KIND(GTL_FAIRLEAD))

/* Whether a kind is of a set. */
static inline bool gtl_is_of(gtl_kind kind, unsigned set)
{
    return (set & GTL_ONE_KIND(kind)) != 0;
}

/* "an anchor", "a block", ... */
const char *gtl_a_kind(gtl_kind kind);

#endif
