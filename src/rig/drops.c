/* drops.c - which load is let drop, and whether what catches it can be told. */
#include "rig/building.h"

#include <math.h>
#include <stdlib.h>

static const gtl_stated *stated(const gtl_item *item, gtl_field field)
{
    return &item->numbers[field].stated;
}

bool gtl_any_fall(const gtl_building *b)
{
    for (int i = 0; i < b->draft->item_count; i++)
        if (stated(&b->draft->items[i], GTL_F_FALL)->yes) return true;
    return false;
}

/* Something could not be read: nothing may be called missing. */
static bool any_rough(const gtl_draft *draft)
{
    bool rough = draft->sheet.rough;
    for (int i = 0; i < draft->item_count && !rough; i++) rough = draft->items[i].rough;
    return rough;
}

/* Keys that the case reads, without the case. */
static void refuse_unused(gtl_building *b)
{
    if (b->draft->sheet.rough) return;
    for (int i = 0; i < b->draft->item_count; i++) {
        const gtl_item *item = &b->draft->items[i];
        if (stated(item, GTL_F_FALL)->yes)
            gtl_faults_add(
                b->faults, stated(item, GTL_F_FALL)->line,
                "`fall` changes nothing here: drop is not worked; add drop to `cases`, or leave it "
                "out");
        if (stated(item, GTL_F_STRETCH)->yes && !any_rough(b->draft) && !gtl_any_fall(b))
            gtl_faults_add(b->faults, stated(item, GTL_F_STRETCH)->line,
                           "`stretch` changes nothing here: no load has a `fall`; give the load one and add "
                           "drop to `cases`, or leave it out");
    }
}

/* The one load that falls; -1 for none. */
static int find_dropped(gtl_building *b)
{
    int found = -1;
    for (int i = 0; i < b->rig->thing_count; i++) {
        const gtl_stated *fall = stated(gtl_thing_item(b, i), GTL_F_FALL);
        if (!fall->yes) continue;
        if (found >= 0)
            gtl_faults_add(
                b->faults, fall->line,
                "`%s` has a `fall`, and so has `%s` (line %d); one load at a time can be let drop: "
                "leave one of them out",
                b->rig->things[i].name, b->rig->things[found].name, b->rig->things[found].line);
        else
            found = i;
    }
    return found;
}

/* Whether a part of a line ends at a place that is reached. A path is reached as a whole. */
static bool touches(const gtl_rig *rig, const gtl_line *line, const bool *reached)
{
    for (int i = 0; i < line->stop_count; i++)
        if (reached[rig->things[rig->stops[line->first_stop + i].thing].node]) return true;
    return false;
}

/* Reach on from a line: what is fixed holds, and nothing beyond it gives. Whether that reached more. */
static bool reach_on(const gtl_rig *rig, const gtl_line *line, bool *reached)
{
    bool more = false;
    for (int i = 0; i < line->stop_count; i++) {
        int node = rig->things[rig->stops[line->first_stop + i].thing].node;
        if (reached[node] || rig->nodes[node].fixed) continue;
        reached[node] = more = true;
    }
    return more;
}

/* Whether any line that the load hangs by, straight or through others, states how far it stretches. */
static bool has_stretch(gtl_building *b, int load)
{
    const gtl_rig *rig = b->rig;
    bool *reached = gtl_room(b, rig->node_count, sizeof *reached);
    bool more = reached != NULL, found = false;
    if (reached) reached[rig->things[load].node] = true;
    while (more) {
        more = false;
        for (int i = 0; i < rig->line_count; i++) {
            if (!touches(rig, &rig->lines[i], reached)) continue;
            found |= stated(gtl_line_item(b, i), GTL_F_STRETCH)->yes;
            more |= reach_on(rig, &rig->lines[i], reached);
        }
    }
    free(reached);
    return found;
}

static void check_dropped(gtl_building *b, int load)
{
    const gtl_thing *thing = &b->rig->things[load];
    int line = stated(gtl_thing_item(b, load), GTL_F_FALL)->line;
    if (b->rig->nodes[thing->node].fixed)
        gtl_faults_add(b->faults, line,
                       "load `%s` sits on something fixed, so it cannot fall; give it `at`, or `on` a body "
                       "that moves",
                       thing->name);
    else if (!any_rough(b->draft) && !has_stretch(b, load))
        gtl_faults_add(b->faults, line,
                       "`fall` needs the `stretch` of the line that catches `%s`: how far it gives decides "
                       "the peak, and there is no default, since rope that is sold as static may stretch "
                       "by next to nothing or by 6 %% at a tenth of its strength; add what its maker states, "
                       "such as stretch = 3 %% at 2 kN",
                       thing->name);
}

void gtl_settle_drop(gtl_building *b)
{
    bool asked = b->draft->cases[GTL_DROP];
    int load = find_dropped(b);
    if (!asked) {
        refuse_unused(b);
        return;
    }
    b->rig->dropped = load;
    if (load >= 0)
        check_dropped(b, load);
    else if (!any_rough(b->draft))
        gtl_faults_add(
            b->faults, b->draft->sheet.cases.line,
            "`cases` asks for drop, which needs a load with a `fall`: how far it falls free before "
            "its line takes it, such as fall = 1 m");
}
