/* mechanics.h - statics and motion worked out anew from a state's places and tensions. Nothing here comes
 * from the solver's own rooms or its audit. */
#ifndef LAWS_MECHANICS_H
#define LAWS_MECHANICS_H

#include <gantline/gantline.h>

typedef struct mechanics {
    const gtl_rig *rig;
    const gtl_state *state;
    double force; /* what forces are measured by: weights and known pulls, or the greatest tension if greater
                     [N] */
    double size;  /* what lengths are measured by [m] */
} mechanics;

mechanics mechanics_of(const gtl_rig *rig, const gtl_state *state);

/* Unit vector of a part along the path; its length [m]. */
double part_direction(const mechanics *m, int part, double unit[3]);
/* How fast a part grows for one unit of lift, from the bodies' motion [1]. */
double part_rate(const mechanics *m, int part);
/* Rope passing a run along the path for one unit of lift [1]. */
double run_flow(const mechanics *m, int run);
double piece_length(const mechanics *m, int piece);
double piece_rate(const mechanics *m, int piece);
/* The same with all bodies as drawn [m]. */
double drawn_length(const gtl_rig *rig, int piece);
/* The part of a hauled piece that is in the hand. */
int hand_part(const gtl_piece *piece);

/* What lines and weights do to a node [N]. */
void node_force(const mechanics *m, int node, double sum[3]);
/* Work on all weights and against all known pulls, for one unit of lift [N]. */
double work_out(const mechanics *m);

/* The greater tension that a run's friction allows beside the lesser one [N], from the law of its kind. */
double greatest_beside(const mechanics *m, int run, double lesser);
bool has_friction(const gtl_thing *thing);

#endif
