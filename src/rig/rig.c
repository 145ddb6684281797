/* rig.c - the rig's own words, and its end. */
#include "rig/kind.h"

#include <gantline/rig.h>
#include <math.h>
#include <stdlib.h>

static const char *const kinds[GTL_KIND_COUNT] = {
    [GTL_SHEET] = "a rig",         [GTL_ANCHOR] = "an anchor", [GTL_BLOCK] = "a block",
    [GTL_FAIRLEAD] = "a fairlead", [GTL_JOINT] = "a joint",    [GTL_LOAD] = "a load",
    [GTL_ARBOR] = "an arbor",      [GTL_HAND] = "a hand",      [GTL_ROPE] = "a rope",
    [GTL_SLING] = "a sling",       [GTL_SPAR] = "a spar",      [GTL_CONNECTOR] = "a connector",
    [GTL_BATTEN] = "a batten",
};

const char *gtl_a_kind(gtl_kind kind)
{
    return kinds[kind];
}

const char *gtl_kind_name(gtl_kind kind)
{
    return kinds[kind] + (kinds[kind][1] == 'n' ? 3 : 2);
}

const char *gtl_case_name(gtl_case_kind kind)
{
    static const char *const names[GTL_CASE_KIND_COUNT] = {"hold",  "raise", "lower", "jam",
                                                           "start", "stop",  "lost",  "drop"};
    return names[kind];
}

void gtl_free_bend(gtl_thing *thing)
{
    if (isnan(thing->freest)) return;
    *(isnan(thing->friction) ? &thing->efficiency : &thing->friction) = thing->freest;
    thing->freest = NAN;
}

gtl_thing gtl_bend_of(const gtl_rig *rig, int run)
{
    gtl_thing bend = rig->things[rig->runs[run].thing];
    if (rig->stops[rig->runs[run].stop].freest) gtl_free_bend(&bend);
    return bend;
}

bool gtl_rig_asks(const gtl_rig *rig, gtl_case_kind kind)
{
    for (int i = 0; i < rig->case_count; i++)
        if (rig->cases[i].kind == kind) return true;
    return false;
}

const gtl_timber *gtl_timber_of(const gtl_rig *rig, gtl_kind kind, int index)
{
    for (int i = 0; i < rig->wood_count; i++)
        if (rig->woods[i].kind == kind && rig->woods[i].index == index) return &rig->woods[i].timber;
    return NULL;
}

void gtl_rig_free(gtl_rig *rig)
{
    if (!rig) return;
    for (int i = 0; i < rig->thing_count; i++) free(rig->things[i].name);
    for (int i = 0; i < rig->line_count; i++) free(rig->lines[i].name);
    for (int i = 0; i < rig->connector_count; i++) free(rig->connectors[i].name);
    char *texts[] = {rig->file, rig->title, rig->place, rig->date, rig->by, rig->note};
    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) free(texts[i]);
    free(rig->things);
    free(rig->nodes);
    free(rig->lines);
    free(rig->stops);
    free(rig->parts);
    free(rig->pieces);
    free(rig->runs);
    free(rig->connectors);
    free(rig->vias);
    for (int i = 0; i < rig->case_count; i++) free(rig->cases[i].name);
    free(rig->cases);
    for (int i = 0; i < rig->batten_count; i++) free(rig->battens[i].name);
    free(rig->battens);
    free(rig->picks);
    free(rig->hung);
    free(rig->woods);
    if (rig->hardware) gtl_hardware_end(rig->hardware);
    free(rig->hardware);
    free(rig);
}
