/* draft.c - the parts of which random rigs are made, each with keys drawn at random. */
#include "laws/draft.h"
#include <math.h>

const char *draft_choose(draft *d, const draft_choice *choices, size_t count)
{
    double at = chance_between(&d->c, 0, 1);
    size_t i = 0;
    while (i + 1 < count && at >= choices[i].share) at -= choices[i++].share;
    if (d->s->dim < choices[i].least_dim) i = 0;
    choices[i].make(d);
    return choices[i].name;
}

int draft_near(draft *d, gtl_kind kind, int thing, double across, double along, double up)
{
    const double *at = d->s->things[sketch_root(d->s, thing)].at;
    return sketch_thing_at(d->s, kind, at[0] + across, at[1] + along, at[2] + up);
}

static double rough_efficiency(draft *d)
{
    return chance_of(&d->c, 0.06) ? 1 : chance_between(&d->c, 0.5, 1);
}

void draft_friction(draft *d, int thing)
{
    sketch_thing *t = &d->s->things[thing];
    if (!d->all_stated && chance_of(&d->c, 0.3)) return;
    if (t->kind == GTL_FAIRLEAD && chance_of(&d->c, 0.7)) {
        t->friction = chance_between(&d->c, 0, 0.35);
        t->turns = chance_of(&d->c, 0.4) ? 1 + chance_below(&d->c, 2) : 0;
    } else {
        t->efficiency = rough_efficiency(d);
    }
    if (chance_of(&d->c, 0.08)) t->wrap = chance_between(&d->c, 0.2, 3.1);
}

static void weigh_gear(draft *d, int thing)
{
    if (chance_of(&d->c, 0.5)) d->s->things[thing].weight = chance_between(&d->c, 3, 40);
}

static sketch_via some_connectors(draft *d)
{
    if (!d->has_connectors || !chance_of(&d->c, 0.5)) return (sketch_via){0, 0};
    return sketch_connectors(d->s, 1 + chance_below(&d->c, 2));
}

int draft_block_on(draft *d, int on)
{
    int block = sketch_thing_on(d->s, GTL_BLOCK, on);
    d->s->things[block].via = some_connectors(d);
    draft_friction(d, block);
    weigh_gear(d, block);
    return block;
}

int draft_block_near(draft *d, int thing, double across, double along, double up)
{
    int block = draft_near(d, GTL_BLOCK, thing, across, along, up);
    draft_friction(d, block);
    weigh_gear(d, block);
    return block;
}

int draft_aside(draft *d, gtl_kind kind, int thing, double reach, double height)
{
    const double *at = d->s->things[sketch_root(d->s, thing)].at;
    double across = at[0] + chance_between(&d->c, -reach, reach);
    return sketch_thing_at(d->s, kind, across, at[1] + chance_between(&d->c, -reach, reach), height);
}

void draft_weigh(draft *d, int load)
{
    d->s->things[load].weight = chance_between(&d->c, 200, 3000);
}

void draft_tie(draft *d, int line, int thing)
{
    sketch_stop_at(d->s, line, thing);
    if (d->s->things[thing].kind == GTL_HAND) return;
    sketch_line *l = &d->s->lines[line];
    l->stops[l->stop_count - 1].via = some_connectors(d);
}

int draft_sling(draft *d, int from, int to)
{
    int line = sketch_line_of(d->s, GTL_SLING);
    draft_tie(d, line, from);
    draft_tie(d, line, to);
    return line;
}

int draft_spar(draft *d, int from, int to)
{
    int spar = sketch_line_of(d->s, GTL_SPAR);
    draft_tie(d, spar, from);
    draft_tie(d, spar, to);
    if (chance_of(&d->c, 0.7)) d->s->lines[spar].weight = chance_between(&d->c, 20, 300);
    return spar;
}

void draft_end_at_hand(draft *d, int line, double across, double along, double height)
{
    int end = sketch_thing_at(d->s, d->tied_off ? GTL_ANCHOR : GTL_HAND, across, along, height);
    draft_tie(d, line, end);
}

int draft_last_stop(const draft *d, int line)
{
    return d->s->lines[line].stops[d->s->lines[line].stop_count - 1].thing;
}
