/* draft_lift.c - what lifts: a tackle, a burton, a hitch on the fall's own rope, a hand on the body that it
 * hauls, a counterweight, a log on two lines. */
#include "laws/draft.h"
#include <math.h>

static double low(draft *d)
{
    return chance_between(&d->c, 2.2, 3.2);
}

static double sway(draft *d)
{
    return chance_between(&d->c, -0.3, 0.3);
}

/* A block on the hook for a pass of the rope: often the same one again. */
static int head_block(draft *d, int last)
{
    return last >= 0 && chance_of(&d->c, 0.7) ? last : draft_block_on(d, d->hook);
}

/* A body under the hook, for the cargo. */
static int tail_of(draft *d, gtl_kind kind)
{
    double height = low(d);
    int tail = draft_near(d, kind, d->hook, sway(d), sway(d), 0);
    d->s->things[tail].at[2] = height;
    if (kind == GTL_BLOCK) draft_friction(d, tail);
    return tail;
}

/* Passes over head and tail in turn, after the rope's first stop. */
static void reeve(draft *d, int passes, bool tail_first)
{
    int head = -1;
    for (int i = 0; i < passes; i++) {
        bool at_tail = (i % 2 == 0) == tail_first;
        if (!at_tail) head = head_block(d, head);
        sketch_stop_at(d->s, d->fall, at_tail ? d->tail : head);
        d->leads_up = at_tail;
    }
}

/* Where the standing part is made fast above: a rope cannot be tied to a carriage's sheave, so a block of its
 * own there. */
static int standing_end(draft *d)
{
    return d->s->things[d->hook].kind == GTL_BLOCK ? draft_block_on(d, d->hook) : d->hook;
}

static void lift_by_tackle(draft *d)
{
    int passes = 1 + chance_below(&d->c, 5);
    bool from_head = chance_of(&d->c, 0.6);
    if (passes == 1) from_head = chance_of(&d->c, 0.3); /* one pass from the head: a moving block alone */
    d->tail = tail_of(d, passes == 1 && !from_head ? GTL_JOINT : GTL_BLOCK);
    d->fall = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, d->fall, from_head ? standing_end(d) : d->tail);
    reeve(d, passes, from_head);
}

/* Two ropes over one fixed and one moving block. */
static void lift_by_single_burton(draft *d)
{
    int fixed = draft_block_on(d, d->hook);
    d->tail = tail_of(d, GTL_JOINT);
    int moving = draft_block_near(d, d->tail, sway(d), sway(d), chance_between(&d->c, 1.8, 2.5));
    int first = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, first, moving);
    sketch_stop_at(d->s, first, fixed);
    draft_tie(d, first, d->tail);
    d->fall = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, d->fall, d->tail);
    sketch_stop_at(d->s, d->fall, moving);
}

static void lift_by_double_burton(draft *d)
{
    bool with_double_block = chance_of(&d->c, 0.5);
    int fixed = draft_block_on(d, d->hook);
    d->tail = tail_of(d, GTL_BLOCK);
    int moving = draft_block_near(d, d->tail, sway(d), sway(d), chance_between(&d->c, 1.8, 2.5));
    int first = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, first, moving);
    sketch_stop_at(d->s, first, fixed);
    draft_tie(d, first, d->tail);
    d->fall = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, d->fall, with_double_block ? d->tail : moving);
    sketch_stop_at(d->s, d->fall, with_double_block ? moving : d->tail);
    sketch_stop_at(d->s, d->fall, with_double_block ? d->tail : moving);
    if (with_double_block) sketch_stop_at(d->s, d->fall, fixed);
}

static void lift_by_burton(draft *d)
{
    if (chance_of(&d->c, 0.5))
        lift_by_single_burton(d);
    else
        lift_by_double_burton(d);
}

/* The fall comes back to a block on a grab on its own standing part. */
static void lift_by_grab(draft *d)
{
    int head = draft_block_on(d, d->hook);
    d->tail = tail_of(d, GTL_JOINT);
    int grab = draft_near(d, GTL_JOINT, d->tail, 0, 0, chance_between(&d->c, 1, 2));
    int traveller = draft_block_on(d, grab);
    d->fall = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, d->fall, d->tail);
    draft_tie(d, d->fall, grab);
    sketch_stop_at(d->s, d->fall, head);
    sketch_stop_at(d->s, d->fall, traveller);
    d->leads_up = true;
}

/* Somebody aloft hauls the fall of the tackle that holds him. */
static void lift_oneself(draft *d)
{
    int passes = 1 + 2 * chance_below(&d->c, 2);
    d->tail = tail_of(d, GTL_BLOCK);
    d->fall = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, d->fall, d->tail);
    reeve(d, passes, false);
    int hand = sketch_thing_on(d->s, d->tied_off ? GTL_JOINT : GTL_HAND, d->tail);
    draft_tie(d, d->fall, hand);
    d->fall = -1;
}

/* A batten against an arbor, hauled down by a line under it; where the arbor is heavier, the batten runs
 * away. */
static void lift_by_counterweight(draft *d)
{
    double off = chance_between(&d->c, 1.5, 3);
    int loft = draft_block_on(d, d->hook);
    int head = sketch_thing_at(d->s, GTL_ANCHOR, off, 0, chance_between(&d->c, 7, 9));
    head = draft_block_on(d, head);
    d->load = tail_of(d, GTL_LOAD);
    draft_weigh(d, d->load);
    int arbor = draft_near(d, GTL_LOAD, head, 0, 0, chance_between(&d->c, -4, -3));
    d->s->things[arbor].weight = d->s->things[d->load].weight * chance_between(&d->c, 0.2, 1.1);
    d->s->things[d->load].guided = d->s->things[arbor].guided = d->s->dim > 1 && chance_of(&d->c, 0.8);
    int lift = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, lift, d->load);
    sketch_stop_at(d->s, lift, loft);
    sketch_stop_at(d->s, lift, head);
    draft_tie(d, lift, arbor);
    int floor = draft_near(d, GTL_ANCHOR, arbor, sway(d), sway(d), 0);
    d->s->things[floor].at[2] = chance_between(&d->c, 0.2, 0.8);
    d->fall = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, d->fall, arbor);
    sketch_stop_at(d->s, d->fall, draft_block_on(d, floor));
    d->leads_up = true;
    d->tail = -1;
}

/* A spar on its way up, one end on a sling, the other on the fall. */
static void lift_log(draft *d)
{
    double length = chance_between(&d->c, 2, 3.5);
    d->tail = tail_of(d, GTL_JOINT);
    int other = draft_near(d, GTL_JOINT, d->tail, -length, 0, chance_between(&d->c, -0.3, 0.3));
    int anchor = draft_near(d, GTL_ANCHOR, other, sway(d), sway(d), chance_between(&d->c, 3, 5));
    draft_sling(d, anchor, other);
    int log = draft_spar(d, other, d->tail);
    d->s->lines[log].weight =
        chance_between(&d->c, 50, 600); /* one without would stay anywhere on a slack sling */
    d->fall = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, d->fall, d->tail);
    sketch_stop_at(d->s, d->fall, draft_block_on(d, d->hook));
}

static const draft_choice lifts[] = {
    {"tackle", 0.44, 1, lift_by_tackle},
    {"burton", 0.17, 1, lift_by_burton},
    {"grab", 0.12, 1, lift_by_grab},
    {"oneself", 0.07, 1, lift_oneself},
    {"counterweight", 0.11, 1, lift_by_counterweight},
    {"log", 0.09, 2, lift_log},
};

void draft_lift(draft *d)
{
    d->out->lift = draft_choose(d, lifts, sizeof lifts / sizeof *lifts);
}
