/* losses.h - a random rig with the loss of each part that may let go, and what they come to. */
#ifndef LAWS_LOSSES_H
#define LAWS_LOSSES_H

#include "laws/trial.h"

typedef struct losses {
    gtl_rig *rig; /* a copy that asks for hold and the losses */
    gtl_sheet sheet;
    bool answered;
} losses;

/* Hold, and the loss of each anchor, line and connector. The caller gives it back with losses_end. */
losses lose_each(const gtl_rig *rig, double factor);
void losses_end(losses *l);

/* The same with a factor of 1, kept for as long as it is the same rig that is looked at. */
const losses *plain_losses(const specimen *s);

#endif
