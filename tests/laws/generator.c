/* generator.c - a random rig put together: support, lift, cargo, lead, and what may come on top. */
#include "laws/generator.h"
#include "laws/draft.h"
#include <math.h>
#include <string.h>

/* The body that is lifted, where it has a place of its own. */
static int lifted(const draft *d)
{
    return sketch_root(d->s, d->tail >= 0 ? d->tail : d->load);
}

/* A backup line too long to carry. */
static void add_slack_line(draft *d)
{
    int body = lifted(d);
    int anchor = draft_aside(d, GTL_ANCHOR, body, 1, chance_between(&d->c, 6, 9));
    int line = draft_sling(d, anchor, body);
    const double *from = d->s->things[anchor].at;
    const double *to = d->s->things[body].at;
    double square = 0;
    for (int k = 0; k < 3; k++) square += (from[k] - to[k]) * (from[k] - to[k]);
    d->s->lines[line].length = sqrt(square) * chance_between(&d->c, 1.08, 1.6);
}

/* Somebody on a tag line, aside, half of the time over a block. */
static void add_known_pull(draft *d)
{
    int body = sketch_root(d->s, d->load);
    double height = chance_between(&d->c, 0.1, 0.6);
    int line = sketch_line_of(d->s, GTL_ROPE);
    draft_tie(d, line, body);
    if (chance_of(&d->c, 0.5)) {
        sketch_stop_at(d->s, line, draft_block_on(d, draft_aside(d, GTL_ANCHOR, body, 3, height)));
        height += chance_between(&d->c, 0.5, 1);
    }
    int hand = draft_aside(d, GTL_HAND, body, 3, height);
    d->s->things[hand].pull = d->s->things[d->load].weight * chance_between(&d->c, 0.01, 0.08);
    draft_tie(d, line, hand);
}

static void add_guide(draft *d)
{
    sketch_thing *body = &d->s->things[lifted(d)];
    if (d->s->dim > 1 && (body->kind == GTL_BLOCK || body->kind == GTL_JOINT || body->kind == GTL_LOAD))
        body->guided = true;
}

/* Where nobody hauls no load is named. */
static void settle_load(draft *d)
{
    int loads = 0;
    for (int i = 0; i < d->s->thing_count; i++) loads += d->s->things[i].kind == GTL_LOAD;
    d->s->load = d->tied_off || loads < 2 ? -1 : d->load;
}

void generate(uint64_t seed, generated *out)
{
    memset(out, 0, sizeof *out);
    draft d = {.out = out, .s = &out->sketch, .c = chance_begin(seed), .tail = -1, .load = -1, .fall = -1};
    double dimension = chance_between(&d.c, 0, 1);
    sketch_begin(d.s, dimension < 0.2 ? 1 : dimension < 0.6 ? 2 : 3);
    d.all_stated = chance_of(&d.c, 0.85);
    d.has_connectors = chance_of(&d.c, 0.3);
    d.tied_off = chance_of(&d.c, 0.12);
    draft_support(&d);
    draft_lift(&d);
    draft_cargo(&d);
    draft_lead(&d);
    if (chance_of(&d.c, 0.17)) add_slack_line(&d);
    if (chance_of(&d.c, 0.14)) add_known_pull(&d);
    if (chance_of(&d.c, 0.12)) add_guide(&d);
    settle_load(&d);
}
