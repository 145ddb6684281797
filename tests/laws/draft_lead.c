/* draft_lead.c - how the hauling end comes to the hand: straight, over redirects, over one that floats on a
 * sling, by another tackle, or by a grab on it. */
#include "laws/draft.h"

static double reach(draft *d)
{
    return chance_between(&d->c, -2, 2);
}

static void haul_here(draft *d, int line, double height)
{
    const double *at = d->s->things[sketch_root(d->s, draft_last_stop(d, line))].at;
    double across = at[0] + reach(d);
    draft_end_at_hand(d, line, across, at[1] + reach(d), height);
}

static double down(draft *d)
{
    return chance_between(&d->c, 0.6, 1.6);
}

static double up(draft *d)
{
    return chance_between(&d->c, 8, 10);
}

static void lead_straight(draft *d)
{
    haul_here(d, d->fall, down(d));
}

/* A block or fairlead on the structure, at that height. */
static void redirect(draft *d, double height)
{
    int anchor = draft_aside(d, GTL_ANCHOR, draft_last_stop(d, d->fall), 2, height);
    if (chance_of(&d->c, 0.5)) {
        sketch_stop_at(d->s, d->fall, draft_block_on(d, anchor));
        return;
    }
    int bend = sketch_thing_on(d->s, GTL_FAIRLEAD, anchor);
    draft_friction(d, bend);
    sketch_stop_at(d->s, d->fall, bend);
}

static void lead_redirected(draft *d)
{
    redirect(d, chance_between(&d->c, 0.3, 1));
    if (chance_of(&d->c, 0.4)) redirect(d, up(d));
    haul_here(d, d->fall, chance_between(&d->c, 1.5, 3));
}

/* A block that finds its own place between the rope's pull and its sling. */
static void lead_over_floating(draft *d)
{
    int last = draft_last_stop(d, d->fall);
    int anchor = draft_aside(d, GTL_ANCHOR, last, 1.5, chance_between(&d->c, 0, 0.4));
    int block =
        draft_block_near(d, anchor, chance_between(&d->c, -0.3, 0.3), 0, chance_between(&d->c, 0.5, 1));
    draft_sling(d, anchor, block);
    sketch_stop_at(d->s, d->fall, block);
    haul_here(d, d->fall, chance_between(&d->c, 2.5, 4));
    d->out->floating_redirect = true;
}

/* A second tackle, its moving block tied to the fall, its standing one on the floor. */
static void lead_by_tackle(draft *d)
{
    int last = draft_last_stop(d, d->fall);
    int anchor = draft_aside(d, GTL_ANCHOR, last, 1, chance_between(&d->c, 0, 0.3));
    int floor = draft_block_on(d, anchor);
    int moving = draft_block_near(d, anchor, 0, 0, chance_between(&d->c, 2, 3));
    draft_tie(d, d->fall, moving);
    int second = sketch_line_of(d->s, GTL_ROPE);
    int passes = 1 + chance_below(&d->c, 3);
    bool from_floor = chance_of(&d->c, 0.5) || passes == 1;
    draft_tie(d, second, from_floor ? floor : moving);
    for (int i = 0; i < passes; i++)
        sketch_stop_at(d->s, second, (i % 2 == 0) == from_floor ? moving : floor);
    bool at_floor = draft_last_stop(d, second) == floor;
    haul_here(d, second, at_floor ? chance_between(&d->c, 3.5, 5) : chance_between(&d->c, 0.5, 1));
}

/* A grab on the fall is hauled; somebody tails the rest of it with a known pull. */
static void lead_by_grab(draft *d)
{
    int last = draft_last_stop(d, d->fall);
    int grab = draft_aside(d, GTL_JOINT, last, 0.8, chance_between(&d->c, 2.2, 3));
    draft_tie(d, d->fall, grab);
    const double *at = d->s->things[grab].at;
    int tailer = sketch_thing_at(d->s, GTL_HAND, at[0] + reach(d), at[1], chance_between(&d->c, 0.2, 1));
    d->s->things[tailer].pull = chance_between(&d->c, 2, 25);
    draft_tie(d, d->fall, tailer);
    int second = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, second, grab);
    haul_here(d, second, down(d));
}

static const draft_choice leads[] = {
    {"straight", 0.26, 1, lead_straight},      {"redirected", 0.29, 1, lead_redirected},
    {"floating", 0.19, 1, lead_over_floating}, {"tackle", 0.14, 1, lead_by_tackle},
    {"grab", 0.12, 1, lead_by_grab},
};

void draft_lead(draft *d)
{
    d->out->lead = "own";
    if (d->fall < 0) return;
    if (d->leads_up && chance_of(&d->c, 0.3)) {
        haul_here(d, d->fall, up(d));
        d->out->lead = "upwards";
        return;
    }
    if (d->leads_up) redirect(d, up(d));
    d->out->lead = draft_choose(d, leads, sizeof leads / sizeof *leads);
}
