/* losses.c - see losses.h. */
#include "laws/losses.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_LOST = 64 };

static void add_loss(gtl_rig *rig, gtl_kind kind, int index, const char *name)
{
    if (rig->case_count == MOST_LOST) return;
    gtl_asked *asked = &rig->cases[rig->case_count++];
    *asked =
        (gtl_asked){.kind = GTL_LOST, .lost_kind = kind, .lost = index, .name = malloc(strlen(name) + 6)};
    if (!asked->name) abort();
    sprintf(asked->name, "lost %s", name);
}

losses lose_each(const gtl_rig *rig, double factor)
{
    losses l = {.rig = gtl_rig_copy(rig)};
    if (!l.rig) abort();
    for (int i = 1; i < l.rig->case_count; i++) free(l.rig->cases[i].name);
    l.rig->case_count = 1;
    l.rig->cases = realloc(l.rig->cases, MOST_LOST * sizeof *l.rig->cases);
    if (!l.rig->cases) abort();
    l.rig->loss_factor = factor;
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_ANCHOR) add_loss(l.rig, GTL_ANCHOR, i, rig->things[i].name);
    for (int i = 0; i < rig->line_count; i++) add_loss(l.rig, rig->lines[i].kind, i, rig->lines[i].name);
    for (int i = 0; i < rig->connector_count; i++) add_loss(l.rig, GTL_CONNECTOR, i, rig->connectors[i].name);
    l.answered = gtl_rate(l.rig, &l.sheet) == GTL_OK;
    return l;
}

void losses_end(losses *l)
{
    gtl_sheet_end(&l->sheet);
    gtl_rig_free(l->rig);
}

const losses *plain_losses(const specimen *s)
{
    static losses kept;
    static uint64_t seed;
    if (kept.rig && seed == s->seed) return &kept;
    if (kept.rig) losses_end(&kept);
    seed = s->seed;
    kept = lose_each(s->rig, 1);
    return &kept;
}
