/* way.h - what the steps of making a rope bill share: the things that may meet, and the load's way up. */
#ifndef RATE_WAY_H
#define RATE_WAY_H

#include <gantline/rope_bill.h>

/* Two things next to each other on a rope that can shorten between them. */
typedef struct gtl_meet {
    int one; /* thing */
    int other;
    double clear; /* [m] */
    gtl_meeting meeting;
    bool size_of_one_only;
    double way_up; /* with heights alone: 1 where `one` is the higher as drawn, else -1 [1] */
} gtl_meet;

/* meet.c: all such pairs of a rig, in the order of its parts. NULL without memory; the caller frees it. */
gtl_meet *gtl_list_meets(const gtl_rig *rig, const gtl_state *hold, int *count);
/* The distance of their centres in a state, below 0 where they have passed each other [m]. */
double gtl_meet_distance(const gtl_rig *rig, const gtl_meet *meet, const gtl_state *state);
/* How fast that shrinks for one unit of lift [1]. */
double gtl_meet_closing(const gtl_rig *rig, const gtl_meet *meet, const gtl_state *state);
/* Whether the tackle whose things meet acts on the load through a rope that a grab or hitch holds, so that it
 * can take a new hold. False, and *failed set, without memory. */
bool gtl_can_reset(const gtl_rig *rig, const gtl_meet *meet, bool *failed);

/* A place on the way up, in which the rig holds. */
typedef void gtl_way_visit(void *context, double height, const gtl_state *state);

/* way.c: the load's way up from where it is drawn, on to where things meet, whether before or after `lift`
 * (NaN: not stated); `visit` is told each place on it up to `lift`, the first one too. Fills what the
 * bill says of the way, all but its resets. False without memory. */
bool gtl_go_up(const gtl_rig *rig, const gtl_state *hold, double lift, gtl_rope_bill *bill,
               gtl_way_visit *visit, void *context);

#endif
