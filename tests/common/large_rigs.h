/* large_rigs.h - rigs too large to type, and the exact answers to them. */
#ifndef COMMON_LARGE_RIGS_H
#define COMMON_LARGE_RIGS_H

#include <gantline/rig.h>

/* A tackle of two blocks, 1000 N on the lower one, with an even number of sheaves in all; `efficiency` as
 * typed. NULL without memory. */
gtl_rig *large_tackle(int sheaves, const char *efficiency);
/* The pull that raises its load: the tension falls by `efficiency` at each sheave away from the hand [N]. */
double large_tackle_effort(int sheaves, double efficiency);

/* A chain between two points at one height: joints that share what a chain of 1000 N weighs, and links of
 * equal length between them. It is drawn as a parabola. NULL without memory. */
gtl_rig *large_chain(int joints);
#define CHAIN_SPAN   10.0   /* [m] */
#define CHAIN_LENGTH 13.0   /* [m] */
#define CHAIN_WEIGHT 1000.0 /* half a link's share at each end rests on the anchors [N] */

/* What it comes to. */
typedef struct chain_figures {
    double level; /* the level pull, the same in every link [N] */
    double sag;   /* of the lowest point under the anchors [m] */
} chain_figures;

/* Link by link, exactly. */
chain_figures chain_of_links(int joints);
/* Of a chain of endlessly many links: the catenary. */
chain_figures catenary(void);

#endif
