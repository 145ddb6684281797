/* summary.c - what stands beside a limit: the parts next to it, what ratings would have to be, what is open.
 */
#include "study/search.h"
#include <math.h>
#include <stdlib.h>

/* --- the parts next to the one that bars --- */

static bool listed(const gtl_limit *limit, int component)
{
    for (int i = 0; i < limit->next_count; i++)
        if (limit->next[i] == component) return true;
    return limit->heaviest.kind == GTL_EDGE_RATING && limit->heaviest.component == component;
}

/* The part of the greatest use that is not listed yet, -1 for none. */
static int next_part(const gtl_limit *limit)
{
    const gtl_component *parts = limit->at_limit.components;
    int most = -1;
    for (int i = 0; i < limit->at_limit.component_count; i++) {
        if (isnan(parts[i].utilisation) || parts[i].mark == GTL_MARK_IDLE || listed(limit, i)) continue;
        if (most < 0 || parts[i].utilisation > parts[most].utilisation) most = i;
    }
    return most;
}

static void find_next(gtl_limit *limit)
{
    for (int part; limit->next_count < GTL_LIMIT_NEXT && (part = next_part(limit)) >= 0;)
        limit->next[limit->next_count++] = part;
}

/* --- what ratings would have to be --- */

/* What the part has to hold: its demand, or what it bears on the way up; a head fitting, twice its line as
 * well [N]. */
static double to_hold(const gtl_sheet *sheet, int component)
{
    const gtl_component *part = &sheet->components[component];
    double most = part->mark == GTL_MARK_IDLE ? 0 : part->demand;
    if (sheet->rope_bill && sheet->rope_bill->worked)
        most = fmax(most, sheet->rope_bill->strains[component].most);
    for (int i = 0; i < sheet->head_fitting_count; i++)
        if (sheet->head_fittings[i].fitting == component) most = fmax(most, sheet->head_fittings[i].needed);
    return most;
}

/* The steps after the paper rating stay what they are, whatever that is. */
static gtl_need need_of(const gtl_sheet *sheet, int component)
{
    const gtl_component *part = &sheet->components[component];
    const gtl_step *steps = sheet->steps + part->first_step;
    gtl_need need = {component, steps[0].kind, steps[0].factor, to_hold(sheet, component)};
    if (need.needed == 0) return need;
    for (int i = 1; i < part->step_count; i++)
        need.needed =
            steps[i].kind == GTL_STEP_FACTOR ? need.needed * steps[i].value : need.needed / steps[i].factor;
    return need;
}

static bool find_needs(gtl_limit *limit)
{
    const gtl_sheet *sheet = &limit->as_drawn;
    limit->needs = calloc((size_t)sheet->component_count + 1, sizeof *limit->needs);
    if (!limit->needs) return false;
    for (int i = 0; i < sheet->component_count; i++)
        if (sheet->components[i].step_count > 0 && !isnan(sheet->components[i].demand))
            limit->needs[limit->need_count++] = need_of(sheet, i);
    return true;
}

/* --- what is open --- */

static bool has_friction(const gtl_thing *thing)
{
    return thing->friction_stated && !(thing->efficiency == 1) && !(thing->friction == 0);
}

static void note_undecided(gtl_limit *limit, int thing)
{
    for (int i = 0; i < limit->undecided_count; i++)
        if (limit->undecided[i] == thing) return;
    limit->undecided[limit->undecided_count++] = thing;
}

static void find_open(gtl_limit *limit, const gtl_sheet *sheet)
{
    if (sheet->why & GTL_LIMIT_OPEN) limit->open = true;
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        if (!outcome->possible) continue;
        if (!outcome->every_combination) limit->every_combination = false;
        if (!gtl_band_is_proven(sheet, outcome)) limit->between_ends = true;
        for (int r = 0; r < outcome->rig->run_count; r++) {
            int thing = outcome->rig->runs[r].thing;
            if (outcome->state->undecided[r] && has_friction(&outcome->rig->things[thing]))
                note_undecided(limit, thing);
        }
    }
    if (limit->undecided_count > 0 || !limit->every_combination || limit->between_ends) limit->open = true;
}

bool gtl_summarise(gtl_limit *limit)
{
    limit->undecided = calloc((size_t)limit->rig->thing_count + 1, sizeof *limit->undecided);
    if (!limit->undecided || (limit->answered && !find_needs(limit))) return false;
    if (limit->answered) find_open(limit, &limit->as_drawn);
    if (limit->found) find_open(limit, &limit->at_limit);
    if (limit->heaviest.kind != GTL_EDGE_NONE) find_next(limit);
    return true;
}
