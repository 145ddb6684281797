/* draft_cargo.c - what is lifted, hung from the body that the lift brings up. */
#include "laws/draft.h"

static int load_on(draft *d, int thing)
{
    int load = sketch_thing_on(d->s, GTL_LOAD, thing);
    draft_weigh(d, load);
    return load;
}

static int load_under(draft *d, int thing)
{
    int load = draft_near(d, GTL_LOAD, thing, 0, 0, chance_between(&d->c, -1.2, -0.6));
    draft_weigh(d, load);
    draft_sling(d, thing, load);
    return load;
}

static void carry_directly(draft *d)
{
    d->load = load_on(d, d->tail);
}

static void carry_on_sling(draft *d)
{
    d->load = load_under(d, d->tail);
}

/* One load under the other; either may be the one whose height counts. */
static void carry_two(draft *d)
{
    int upper = load_on(d, d->tail);
    int lower = load_under(d, upper);
    d->load = d->s->load = chance_of(&d->c, 0.5) ? upper : lower;
}

/* A spreader under two slings of its own, loaded nearly alike at both ends. */
static void carry_on_spreader(draft *d)
{
    double half = chance_between(&d->c, 0.6, 1);
    double drop = -chance_between(&d->c, 0.7, 1.1);
    int ends[2];
    int loads[2];
    for (int i = 0; i < 2; i++) {
        ends[i] = draft_near(d, GTL_JOINT, d->tail, i == 0 ? -half : half, 0, drop);
        draft_sling(d, d->tail, ends[i]);
        loads[i] = chance_of(&d->c, 0.5) ? load_on(d, ends[i]) : load_under(d, ends[i]);
    }
    draft_spar(d, ends[0], ends[1]);
    d->s->things[loads[1]].weight = d->s->things[loads[0]].weight * chance_between(&d->c, 0.8, 1.25);
    d->load = d->s->load = loads[chance_below(&d->c, 2)];
}

static const draft_choice cargoes[] = {
    {"direct", 0.5, 1, carry_directly},
    {"sling", 0.2, 1, carry_on_sling},
    {"two", 0.15, 1, carry_two},
    {"spreader", 0.15, 2, carry_on_spreader},
};

void draft_cargo(draft *d)
{
    d->out->cargo = "own";
    if (d->tail < 0) return;
    d->out->cargo = draft_choose(d, cargoes, sizeof cargoes / sizeof *cargoes);
}
