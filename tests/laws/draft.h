/* draft.h - what the rooms of the generator share: a rig half made, and parts that any may add. */
#ifndef LAWS_DRAFT_H
#define LAWS_DRAFT_H

#include "laws/generator.h"

typedef struct draft {
    generated *out;
    sketch *s;
    chance c;
    int hook;        /* where the upper gear hangs */
    int tail;        /* the body that the cargo hangs from, -1 where the lift brings its own load */
    int load;        /* the lifted load */
    int fall;        /* the line whose hauling end is not led to a hand yet, -1 where it is */
    bool leads_up;   /* the fall leaves its last stop upwards */
    bool all_stated; /* every stop's friction */
    bool has_connectors;
    bool tied_off; /* nobody hauls */
} draft;

/* One way to make a part of the rig, how often it is taken, and from how many dimensions on it can be. */
typedef struct draft_choice {
    const char *name;
    double share; /* of all, they add up to 1 */
    int least_dim;
    void (*make)(draft *);
} draft_choice;

/* Make one of them, the first where the one drawn needs more dimensions; returns its name. */
const char *draft_choose(draft *d, const draft_choice *choices, size_t count);

/* Parts with random keys of their own, `across` and so on relative to another thing's place. */
int draft_near(draft *d, gtl_kind kind, int thing, double across, double along, double up);
int draft_block_on(draft *d, int on);
int draft_block_near(draft *d, int thing, double across, double along, double up);
/* Anywhere beside a thing, within `reach` on all sides, at a height of its own. */
int draft_aside(draft *d, gtl_kind kind, int thing, double reach, double height);
/* Keys of a block or fairlead; of a load. */
void draft_friction(draft *d, int thing);
void draft_weigh(draft *d, int load);
/* A tied stop, with connectors now and then. */
void draft_tie(draft *d, int line, int thing);
int draft_sling(draft *d, int from, int to);
int draft_spar(draft *d, int from, int to);
/* Goes on to a hand, or to an anchor where the rig is tied off. */
void draft_end_at_hand(draft *d, int line, double across, double along, double height);
int draft_last_stop(const draft *d, int line);

void draft_support(draft *d);
void draft_lift(draft *d);
void draft_cargo(draft *d);
void draft_lead(draft *d);

#endif
