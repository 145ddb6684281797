/* rated.h - a random rig with ratings put on it at random, and rated. */
#ifndef LAWS_RATED_H
#define LAWS_RATED_H

#include "laws/trial.h"

typedef struct rated {
    sketch drawn; /* with its ratings; the rig's names are KIND-INDEX of it */
    gtl_rig *rig; /* NULL: not read */
    gtl_sheet sheet;
    bool answered;
} rated;

/* Rate a specimen: its ratings and cases come from its seed. The caller gives it back with rated_end. */
void rate(const specimen *s, rated *r);
/* The same for a sketch with its ratings. */
void rate_drawn(const sketch *drawn, rated *r);
void rated_end(rated *r);

/* Whether any running stop states its friction; whether any does not. */
bool any_friction(const gtl_rig *rig);
bool any_unstated(const gtl_rig *rig);

#endif
