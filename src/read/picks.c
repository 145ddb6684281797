/* picks.c - the picks of battens as items of the draft, so that lines tie to them as to any load. */
#include "read/picks.h"

/* A batten lies level: with one length all its picks have its height, with two and three it runs along the
 * first axis. */
static void place(const gtl_item *batten, double along, gtl_item *pick)
{
    pick->at = batten->at;
    if (pick->at.count > 1) pick->at.at[0] += along;
    if (!batten->at.stated.yes) pick->at.stated = batten->picks.stated; /* that is told of the batten */
}

static bool add_pick(gtl_draft *draft, int batten, gtl_pick_typed *typed)
{
    const gtl_item *whole = &draft->items[batten];
    const char *name = gtl_draft_keep_name(draft, typed->name);
    if (!name) return false;
    gtl_item pick = gtl_item_blank(GTL_LOAD, name, whole->picks.stated.line);
    pick.batten = batten;
    pick.rough = whole->rough;
    pick.numbers[GTL_F_WEIGHT].stated = whole->picks.stated;
    place(whole, typed->at, &pick);
    typed->item = draft->item_count;
    return gtl_draft_add_item(draft, &pick);
}

/* A pick whose name something else has, or another pick, is lost with it. */
static void tell_twins(gtl_draft *draft, gtl_fault_list *faults)
{
    const gtl_named *named = draft->by_name;
    for (int i = 1; i < draft->item_count; i++) {
        gtl_item *first = &draft->items[named[i - 1].item];
        gtl_item *second = &draft->items[named[i].item];
        if (second->batten < 0 || gtl_word_compare(named[i - 1].name, named[i].name) != 0) continue;
        gtl_faults_add(faults, second->line, "the name `%s` is taken already (line %d); choose another",
                       second->name, first->line);
        first->lost = second->lost = true;
        draft->whole = false;
    }
}

void gtl_add_picks(gtl_draft *draft, gtl_fault_list *faults)
{
    int sections = draft->item_count;
    for (int i = 0; i < sections; i++) {
        gtl_list picks = draft->items[i].picks;
        if (draft->items[i].lost) continue;
        for (int k = 0; k < picks.count; k++)
            if (!add_pick(draft, i, &draft->picks[picks.first + k])) faults->out_of_memory = true;
    }
    if (draft->item_count == sections) return;
    if (!gtl_draft_sort_names(draft)) faults->out_of_memory = true;
    if (!faults->out_of_memory) tell_twins(draft, faults);
}
