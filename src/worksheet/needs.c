/* needs.c - whether a rig has one answer, and only one, to what is asked of it. */
#include "worksheet/worked.h"

#include "report/geometry.h"

#include <math.h>

/* A body that hangs further from its drawing than this share of the rig's size would mislead whoever works
 * from the drawing [1]. */
#define AS_DRAWN 0.01

static bool hangs_as_drawn(const gtl_worked *worked)
{
    const gtl_rig *rig = worked->rig;
    for (int i = 0; i < rig->thing_count; i++)
        if (gtl_off_drawing(rig, worked->hold, i) > AS_DRAWN * gtl_rig_size(rig)) return false;
    return true;
}

/* More than one state may be what the case comes to. */
static bool is_open(const gtl_outcome *outcome)
{
    return outcome->variants > 1 || outcome->places > 1 || outcome->band.rigs > 1;
}

static const char *raise_missing(const gtl_worked *worked)
{
    if (worked->sheet.why & GTL_WHY_FRICTION)
        return "friction is not stated everywhere; give each block its `efficiency`";
    if (!gtl_rig_asks(worked->rig, GTL_RAISE))
        return "the rig's `cases` leave out raise, which this asks for; add it";
    if (!worked->raise || !(worked->raise->state->effort > 0))
        return "the load cannot be raised by the hand's pull";
    if (is_open(worked->raise)) return "friction, or where the rig hangs, leaves more than one answer";
    return NULL;
}

const char *gtl_needs_missing(const gtl_worked *worked, unsigned needs)
{
    const gtl_rig *rig = worked->rig;
    bool hauls = needs & (GTL_NEEDS_HAND | GTL_NEEDS_RAISE | GTL_NEEDS_LIFT | GTL_NEEDS_STEADY);
    const char *missing = NULL;
    if (!worked->hold) return "the load runs away: without friction no pull of the hand holds it";
    if (worked->hold->places > 1)
        return "the rig can hang in several places, so that there are several answers";
    if (!hangs_as_drawn(worked))
        return "it hangs otherwise than its file draws it, so nobody could work it out from the drawing; "
               "write "
               "the places where it hangs into the rig file";
    if (rig->batten_count > 0) return "it has a batten, whose lines share its weight in more than one way";
    if ((needs & GTL_NEEDS_LOAD) && rig->load < 0) return "it has no load that is lifted";
    if (hauls && (rig->hand < 0 || rig->load < 0)) return "it has no hand whose pull is worked out";
    if (hauls && !(worked->hold->state->effort > 0)) return "the load needs no pull to be held";
    if (needs & GTL_NEEDS_RAISE) missing = raise_missing(worked);
    if (missing) return missing;
    if ((needs & (GTL_NEEDS_LIFT | GTL_NEEDS_STEADY)) && !gtl_is_steady(worked))
        return "its advantage changes as the load rises, since parts of rope turn, so a distance has no one "
               "answer";
    if ((needs & GTL_NEEDS_LIFT) && isnan(worked->lift))
        return "it asks for a distance or for work; write lift = 0.5 m";
    return NULL;
}
