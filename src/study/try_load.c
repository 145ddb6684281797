/* try_load.c - one load hung into the rig, worked in all cases, and judged. */
#include "study/search.h"
#include <math.h>
#include <stdio.h>

/* Whatever else than a rating speaks against the rig, and is not only open, bars a load. */
#define BARRING_CASES (~(unsigned)(GTL_LIMIT_OPEN | GTL_WHY_OVER | GTL_WHY_HEAD_FITTING | GTL_WHY_ON_THE_WAY))

/* Take a share of a rating if it is the greatest so far. */
static void use_most(gtl_tried *tried, double use, gtl_edge_kind kind, int component, int outcome)
{
    if (isnan(use) || use <= tried->use) return;
    tried->use = use;
    tried->edge.kind = kind;
    tried->edge.component = component;
    tried->edge.outcome = outcome;
}

/* At rest further up the lift, where one is stated. */
static void find_use_on_the_way(const gtl_sheet *sheet, gtl_tried *tried)
{
    const gtl_rope_bill *bill = sheet->rope_bill;
    for (int i = 0; bill && bill->worked && i < sheet->component_count; i++)
        use_most(tried, bill->strains[i].use, GTL_EDGE_RATING, i, -1);
}

static void find_use(const gtl_sheet *sheet, gtl_tried *tried)
{
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *part = &sheet->components[i];
        if (part->mark != GTL_MARK_IDLE)
            use_most(tried, part->utilisation, GTL_EDGE_RATING, i, part->governing);
    }
    for (int i = 0; i < sheet->head_fitting_count; i++) {
        const gtl_head_fitting *head = &sheet->head_fittings[i];
        use_most(tried, head->needed / head->capacity, GTL_EDGE_FITTING, head->fitting, -1);
    }
    find_use_on_the_way(sheet, tried);
}

/* The first case that speaks against the rig, as the verdict sees it; -1 for none. */
static int barring_case(const gtl_sheet *sheet)
{
    for (int i = 0; sheet->why & BARRING_CASES && i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        bool excused = outcome->state && outcome->state->held_by_friction;
        if (!outcome->possible && !excused) return i;
    }
    return -1;
}

/* The first part of which nothing is known any more, -1 for none. */
static int lost_rating(const gtl_sheet *sheet, const bool *excused)
{
    for (int i = 0; excused && i < sheet->component_count; i++)
        if (sheet->components[i].mark == GTL_MARK_UNRATED && !excused[i]) return i;
    return -1;
}

void gtl_bar_load(gtl_tried *tried, gtl_edge_kind kind, int component, int outcome, const char *reason)
{
    tried->permitted = tried->within = false;
    tried->edge = (gtl_edge){.kind = kind, .mass = NAN, .component = component, .outcome = outcome};
    snprintf(tried->edge.reason, sizeof tried->edge.reason, "%s", reason);
}

void gtl_judge_load(const gtl_sheet *sheet, const bool *excused, gtl_tried *tried)
{
    const gtl_outcome *hold = gtl_sheet_outcome(sheet, GTL_HOLD);
    int unknown = lost_rating(sheet, excused);
    int impossible = barring_case(sheet);
    *tried = (gtl_tried){.mass = tried->mass, .use = -1}; /* any use is more */
    tried->edge = (gtl_edge){.mass = NAN, .component = -1, .outcome = -1};
    find_use(sheet, tried);
    if (tried->use < 0) tried->use = NAN;
    tried->permitted = !(tried->use > 1);
    tried->within = !(tried->use > 1 + GTL_UTILISATION_SLACK);
    tried->runs_away = hold && !hold->possible && hold->state->runs_away;
    if (unknown >= 0)
        gtl_bar_load(tried, GTL_EDGE_UNKNOWN, unknown, sheet->components[unknown].governing, "");
    if (sheet->why & BARRING_CASES)
        gtl_bar_load(tried, GTL_EDGE_CASE, -1, impossible,
                     impossible < 0 ? "" : sheet->outcomes[impossible].reason);
}

/* All that is on a node, in the order in which it is added up when a rig is built: rounding has to be the
 * same, since what is found must hold for a file with that mass in it. */
static double weight_on(const gtl_rig *rig, int node)
{
    double sum = 0;
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].node == node) sum += rig->things[i].weight;
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        for (int k = 0; line->kind == GTL_SPAR && k < line->stop_count; k++)
            if (rig->things[rig->stops[line->first_stop + k].thing].node == node) sum += line->weight / 2;
    }
    return sum;
}

void gtl_hang_load(gtl_rig *rig, int load, double weight)
{
    int node = rig->things[load].node;
    rig->things[load].weight = weight;
    rig->nodes[node].weight = weight_on(rig, node);
}

void gtl_set_load(gtl_search *search, double mass)
{
    gtl_hang_load(search->rig, search->load, mass * search->rig->gravity);
}

void gtl_try_load(gtl_search *search, double mass, gtl_tried *tried)
{
    gtl_sheet sheet;
    *tried = (gtl_tried){.mass = mass, .use = NAN};
    gtl_set_load(search, mass);
    search->tried++;
    gtl_status status = gtl_rate(search->rig, &sheet);
    if (status == GTL_OK)
        gtl_judge_load(&sheet, search->excused, tried);
    else if (status == GTL_NO_ANSWER)
        gtl_bar_load(tried, GTL_EDGE_NO_ANSWER, -1, sheet.outcome_count - 1, sheet.reason);
    else
        search->failed = true;
    gtl_sheet_end(&sheet);
}
