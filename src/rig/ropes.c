/* ropes.c - what a file says of the rope that there is, and of how far the load is to go. */
#include "rig/building.h"

#include <math.h>

static bool is_hand(const gtl_rig *rig, int stop)
{
    int thing = rig->stops[stop].thing;
    return thing >= 0 && rig->things[thing].kind == GTL_HAND;
}

void gtl_settle_ropes(gtl_building *b)
{
    gtl_rig *rig = b->rig;
    for (int i = 0; i < rig->line_count; i++) {
        gtl_line *line = &rig->lines[i];
        gtl_stated stated = gtl_line_item(b, i)->numbers[GTL_F_LENGTH].stated;
        if (line->kind != GTL_ROPE || !stated.yes || line->stop_count == 0) continue;
        int last = line->first_stop + line->stop_count - 1;
        if (!is_hand(rig, line->first_stop) && !is_hand(rig, last)) continue;
        line->have = line->length;
        line->have_line = stated.line;
        line->length = NAN;
    }
}

/* Whether a part of a rope that runs over one of its ends, so that it can shorten, ends at a thing. */
static bool can_meet(const gtl_rig *rig, int thing)
{
    for (int p = 0; p < rig->part_count; p++) {
        const gtl_part *part = &rig->parts[p];
        int from = rig->stops[part->from].thing, to = rig->stops[part->to].thing;
        bool rope = rig->lines[part->line].kind == GTL_ROPE;
        bool runs = !rig->stops[part->from].tied || !rig->stops[part->to].tied;
        if (rope && runs && (from == thing || to == thing)) return true;
    }
    return false;
}

static void check_clear(gtl_building *b, int thing)
{
    const gtl_rig *rig = b->rig;
    gtl_stated stated = gtl_thing_item(b, thing)->numbers[GTL_F_CLEAR].stated;
    if (!stated.yes) return;
    if (rig->hand < 0)
        gtl_faults_add(b->faults, stated.line,
                       "`clear` changes nothing: nobody hauls whose pull is worked out, so nothing comes "
                       "closer; leave it out");
    else if (!can_meet(rig, thing))
        gtl_faults_add(b->faults, stated.line,
                       "`clear` changes nothing: no rope runs from `%s` to anything that can come closer; "
                       "leave it out",
                       rig->things[thing].name);
}

void gtl_check_travel(gtl_building *b)
{
    gtl_stated lift = b->draft->sheet.numbers[GTL_F_LIFT].stated;
    if (lift.yes && b->rig->hand < 0)
        gtl_faults_add(b->faults, lift.line,
                       "`lift` changes nothing: nobody hauls whose pull is worked out; leave it out, or add a "
                       "hand without `pull`");
    for (int i = 0; i < b->rig->thing_count; i++) check_clear(b, i);
}
