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

static bool states(const gtl_item *item, gtl_field field)
{
    return item->numbers[field].stated.yes;
}

bool gtl_asks_for_rope(const gtl_building *b)
{
    bool asks = states(&b->draft->sheet, GTL_F_LIFT);
    for (int i = 0; i < b->draft->item_count && !asks; i++) {
        const gtl_item *item = &b->draft->items[i];
        asks = states(item, GTL_F_SPARE) || states(item, GTL_F_CLEAR);
    }
    for (int i = 0; i < b->rig->line_count && !asks; i++) asks = b->rig->lines[i].have_line > 0;
    return asks;
}

/* Whether a part that can shorten ends at a thing, or at something that moves with it. */
static bool can_meet(const gtl_rig *rig, int thing)
{
    for (int p = 0; p < rig->part_count; p++) {
        const gtl_part *part = &rig->parts[p];
        const gtl_piece *piece = &rig->pieces[part->piece];
        int from = rig->things[rig->stops[part->from].thing].node;
        int to = rig->things[rig->stops[part->to].thing].node;
        bool shortens = piece->run_count > 0 || piece->hand >= 0;
        bool fixed = rig->nodes[from].fixed && rig->nodes[to].fixed;
        if (shortens && !fixed && (from == rig->things[thing].node || to == rig->things[thing].node))
            return true;
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
        gtl_faults_add(
            b->faults, lift.line,
            "`lift` changes nothing: nobody hauls whose pull is worked out; leave it out, or add a "
            "hand without `pull`");
    for (int i = 0; i < b->rig->thing_count; i++) check_clear(b, i);
}
