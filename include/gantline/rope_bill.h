/* rope_bill.h - how much rope a rig takes for a lift, and how far its load goes up before two of its blocks
 * meet. Everything is worked out on solved places, at rest and without friction: the rig once more with its
 * load drawn higher, every tied line as long as before. */
#ifndef GANTLINE_ROPE_BILL_H
#define GANTLINE_ROPE_BILL_H

#include <gantline/solve.h>

/* One rope. */
typedef struct gtl_rope_need {
    int line;       /* index among the rig's lines */
    double now;     /* in the reeving where the load is drawn, centre to centre [m] */
    double most;    /* at most: there with friction too, and on the way up [m]; NaN: not known */
    double comes;   /* to the hand on the way; negative: the hand gives out as much [m]; NaN: nobody hauls it,
                     * or not known */
    double wraps;   /* round sheaves and posts of known diameter: half a turn, or more where it is more [m] */
    int open_wraps; /* how often it runs over something whose diameter nobody states */
    double needed;  /* most, wraps and spare [m]; NaN: not known */
} gtl_rope_need;

/* What a part of the gear has to bear on the way up, at rest; a spar the greater of pull and push. */
typedef struct gtl_strain {
    double drawn;  /* where the load is drawn [N]; NaN: a hand's, where friction is stated */
    double most;   /* the greatest anywhere on the way [N] */
    double height; /* how far up that is [m] */
    double use; /* further up than drawn, the greatest share of its rating, what the angle of its pull takes
                 * counted; infinite: not allowed so, or beyond its table; NaN: not rated [1] */
    bool known; /* where the load is drawn its angle is within its table */
} gtl_strain;

/* What ends the way up. */
typedef enum gtl_way_end {
    GTL_WAY_OPEN,    /* nothing, as far as was looked */
    GTL_WAY_BLOCKED, /* two things next to each other on a rope come as close as they may */
    GTL_WAY_NO_PLACE /* further up no place was found in which the rig holds */
} gtl_way_end;

/* By what two things are said to meet. */
typedef enum gtl_meeting {
    GTL_MEET_CLEAR,   /* by the distance that one of them states */
    GTL_MEET_SHEAVES, /* by the size of their sheaves, as far as it is stated */
    GTL_MEET_CENTRES  /* their centres meet: no size is known */
} gtl_meeting;

/* One run may be this much longer than it is for the same number of them: rounding must not add one [1]. */
#define GTL_RUN_SLACK 1e-9
/* Nobody counts more runs than that. */
#define GTL_MOST_RUNS 10000

typedef struct gtl_rope_bill {
    bool worked;     /* the rig holds where it is drawn; else nothing below may be read */
    double way;      /* what the ropes' figures are for: the lift, or as much of it as one run gives; 0:
                      * no lift is stated [m] */
    gtl_way_end end; /* of the run */
    double run;      /* how far the load goes up before that, never too far [m]; NaN: open */
    double looked;   /* how far was looked [m] */
    int one;         /* the two that meet, or are nearest to meeting there (thing indices); -1: none */
    int other;
    double gap;   /* between their centres there [m]; NaN: none */
    double clear; /* what has to be left of that [m]; 0 where centres meet */
    gtl_meeting meeting;
    bool
        size_of_one_only; /* GTL_MEET_SHEAVES: of the other no diameter is stated, and it counts as a point */
    char reason[GTL_REASON_SIZE]; /* GTL_WAY_NO_PLACE: why, else "" */
    bool can_reset;       /* the tackle acts on the load by a rope that runs over something: held meanwhile by
                           * other means, it can take a new hold */
    int resets;           /* how many the lift takes; -1: not known, not stated, or no reset helps */
    gtl_rope_need *ropes; /* every rope of the rig; owned */
    int rope_count;
    gtl_strain *strains; /* one a component of the sheet; owned */
} gtl_rope_bill;

/* Whether a rig asks for a bill: it states a lift, what there is to haul with, a spare or a clear distance.
 */
GTL_API bool gtl_wants_rope_bill(const gtl_rig *rig);

/* Give back a bill and all that it owns; NULL is allowed. */
GTL_API void gtl_rope_bill_free(gtl_rope_bill *bill);

#endif
