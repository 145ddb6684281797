/* draft_support.c - what the upper gear hangs on: an anchor, a sling, a bridle, a derrick, a carriage. */
#include "laws/draft.h"
#include <math.h>

static const double turn = 6.28318530717958647693;

static void hang_on_anchor(draft *d)
{
    d->hook = sketch_thing_at(d->s, GTL_ANCHOR, 0, 0, chance_between(&d->c, 7, 9));
}

static void hang_on_sling(draft *d)
{
    int anchor = sketch_thing_at(d->s, GTL_ANCHOR, 0, 0, chance_between(&d->c, 8.5, 10));
    d->hook = draft_near(d, GTL_JOINT, anchor, chance_between(&d->c, -0.3, 0.3), 0,
                         chance_between(&d->c, -1.5, -0.7));
    draft_sling(d, anchor, d->hook);
}

/* Legs of unequal length from anchors all round, at heights of their own. */
static void hang_on_bridle(draft *d)
{
    int legs = d->s->dim == 3 && chance_of(&d->c, 0.7) ? 3 : 2;
    double first = d->s->dim == 3 ? chance_between(&d->c, 0, turn) : 0;
    d->hook = sketch_thing_at(d->s, GTL_JOINT, 0, 0, chance_between(&d->c, 6.5, 7.5));
    for (int i = 0; i < legs; i++) {
        double angle = first + turn * i / legs + (d->s->dim == 3 ? chance_between(&d->c, -0.3, 0.3) : 0);
        double out = chance_between(&d->c, 1.5, 4);
        int anchor = draft_near(d, GTL_ANCHOR, d->hook, out * cos(angle), out * sin(angle),
                                chance_between(&d->c, 1.5, 3.5));
        draft_sling(d, anchor, d->hook);
    }
}

/* A spar from its heel, held back by one guy in the plane, by two in space. */
static void hang_on_derrick(draft *d)
{
    double reach = chance_between(&d->c, 1.2, 3);
    d->hook = sketch_thing_at(d->s, GTL_JOINT, 0, 0, chance_between(&d->c, 6.5, 8));
    int heel = draft_near(d, GTL_ANCHOR, d->hook, -reach, 0, chance_between(&d->c, -6, -5));
    draft_spar(d, heel, d->hook);
    int guys = d->s->dim == 3 ? 2 : 1;
    for (int i = 0; i < guys; i++) {
        double side = guys == 1 ? 0 : (i == 0 ? 1 : -1) * chance_between(&d->c, 2, 3.5);
        double back = chance_between(&d->c, 3, 6);
        int anchor = draft_near(d, GTL_ANCHOR, heel, -back, side, chance_between(&d->c, 0, 4));
        draft_sling(d, anchor, d->hook);
    }
}

/* A block that rides on a taut line, kept from rolling down to its middle by a sling. */
static void hang_on_carriage(draft *d)
{
    double span = chance_between(&d->c, 4, 6);
    int near = sketch_thing_at(d->s, GTL_ANCHOR, 3, 0, chance_between(&d->c, 8, 9.5));
    int far = sketch_thing_at(d->s, GTL_ANCHOR, 3 - 2 * span, chance_between(&d->c, -1, 1),
                              chance_between(&d->c, 8, 9.5));
    d->hook = sketch_thing_at(d->s, GTL_BLOCK, 0, 0, chance_between(&d->c, 6, 7.5));
    draft_friction(d, d->hook);
    int track = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, track, near);
    sketch_stop_at(d->s, track, d->hook);
    draft_tie(d, track, far);
    int stay =
        draft_near(d, GTL_ANCHOR, near, chance_between(&d->c, 0, 1), 0, chance_between(&d->c, -1, -0.3));
    draft_sling(d, stay, d->hook);
}

static const draft_choice supports[] = {
    {"anchor", 0.45, 1, hang_on_anchor},     {"sling", 0.12, 1, hang_on_sling},
    {"bridle", 0.20, 2, hang_on_bridle},     {"derrick", 0.13, 2, hang_on_derrick},
    {"carriage", 0.10, 2, hang_on_carriage},
};

void draft_support(draft *d)
{
    d->out->support = draft_choose(d, supports, sizeof supports / sizeof *supports);
}
