/* without.h - what is left of a rig once a part of it has let go. */
#ifndef RIG_WITHOUT_H
#define RIG_WITHOUT_H

#include <gantline/rig.h>

/* What is left. */
typedef struct gtl_remains {
    gtl_rig *rig; /* things, lines and connectors have the indices that they had; a line that is gone has no
                   * stops. Drawn where it let go; every piece keeps its length, or has its known pull. */
    int *part;    /* one a part as it was: its index now, -1: gone */
    bool *loose;  /* one a thing: it came loose; it weighs nothing, and stands where it let go */
    int *dangles; /* one a line: the stop, as it was, at which a spar hangs that lost its other end, -1: none
                   */
    int falls;    /* a load that nothing holds any more (thing index), -1 for none */
    int tangled;  /* a line that now meets two things in one place (line index), so that no force can be given
                   * for each, -1 for none */
} gtl_remains;

/* Let an anchor, a line or a connector go, with all that this takes along. `at` is where the rig is when it
 * does (3 a node [m]), `length` what each piece has then (1 a piece [m]). Nobody hauls afterwards: a hand of
 * no known pull holds on to its rope. False without memory. The caller gives the remains back in every case.
 */
bool gtl_rig_without(const gtl_rig *rig, gtl_kind kind, int index, const double *at, const double *length,
                     gtl_remains *remains);
void gtl_remains_end(gtl_remains *remains);

/* recut.c: cut the paths of `left`, a copy of `rig`, anew without the stops that are `gone`. Pieces that a
 * dropped stop joins keep the sum of their lengths. Fills `part` as above. False without memory. */
bool gtl_recut(gtl_rig *left, const gtl_rig *rig, const bool *gone, const double *length, int *part);

#endif
