/* drop.c - the case in which a load is caught after a fall: the rig as it holds, with the peak in place of
 * the weight of what falls. Ratings are held against more than that peak, worked in the same way. */
#include "rate/rating.h"
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* The rig with all that falls weighing so much [N]; NULL without memory. */
static gtl_rig *with_weight(const gtl_rig *rig, double weight)
{
    gtl_rig *copy = gtl_rig_copy(rig);
    if (!copy) return NULL;
    gtl_thing *load = &copy->things[rig->dropped];
    load->weight += weight - copy->nodes[load->node].weight;
    copy->nodes[load->node].weight = weight;
    return copy;
}

/* A case that cannot be, for a reason in printf's format. */
static gtl_status refuse(const gtl_sheet *sheet, gtl_outcome *outcome, const char *format, ...)
    GTL_PRINTF(3, 4);
static gtl_status refuse(const gtl_sheet *sheet, gtl_outcome *outcome, const char *format, ...)
{
    va_list arguments;
    if (!gtl_blank_outcome(sheet, outcome)) return GTL_NO_MEMORY;
    va_start(arguments, format);
    vsnprintf(outcome->state->reason, sizeof outcome->state->reason, format, arguments);
    va_end(arguments);
    outcome->reason = outcome->state->reason;
    return GTL_OK;
}

/* Where rope runs as the load goes down friction keeps tension from what lies beyond: what it takes a post to
 * hold, or the dead end of a tackle, may be more than with equal tensions. That is a variant. Without a hand
 * friction is tried both ways anyhow. */
static bool take_friction(gtl_bench *bench, const double *place, gtl_outcome *outcome)
{
    gtl_forces forces = {0};
    gtl_state *state = gtl_state_new(bench->rig);
    gtl_case which = {.kind = GTL_LOWER, .begin = place};
    bool made = gtl_forces_begin(&forces, bench) && state;
    if (made && gtl_solve(bench->rig, &which, state) == GTL_OK && state->possible) {
        gtl_find_forces(bench, outcome->kind, state, &forces);
        gtl_take_worst(outcome, &(gtl_demands){forces.demand, forces.push, forces.keeps, forces.angle},
                       bench);
        outcome->variants++;
    }
    made = made && state->status != GTL_NO_MEMORY;
    gtl_forces_end(&forces);
    gtl_state_free(state);
    return made;
}

/* Work the case with so much at the load into an outcome of its own rig. */
static gtl_status work_at(const gtl_rig *rig, const double *place, double weight, gtl_outcome *outcome)
{
    gtl_bench bench = {0};
    gtl_sheet aside = {.rig = rig}; /* takes the reason that would be the whole rig's */
    outcome->own_rig = with_weight(rig, weight);
    if (!outcome->own_rig) return GTL_NO_MEMORY;
    bool made = gtl_bench_begin(&bench, outcome->own_rig);
    gtl_status status = made ? gtl_work_case(&bench, &place, 1, outcome, &aside) : GTL_NO_MEMORY;
    bool rubs = status == GTL_OK && outcome->possible && rig->hand >= 0 && bench.friction_stated;
    if (rubs && !take_friction(&bench, place, outcome)) status = GTL_NO_MEMORY;
    gtl_bench_end(&bench);
    return status;
}

/* The state with all that falls weighing twice as much, on a rig of its own; NULL without memory. */
static gtl_state *work_twice(const gtl_rig *rig, const gtl_state *hold, gtl_rig **heavy)
{
    gtl_case which = {.kind = GTL_HOLD, .begin = hold->at};
    *heavy = with_weight(rig, 2 * rig->nodes[rig->things[rig->dropped].node].weight);
    gtl_state *state = *heavy ? gtl_state_new(*heavy) : NULL;
    if (state && gtl_solve(*heavy, &which, state) == GTL_NO_MEMORY) {
        gtl_state_free(state);
        return NULL;
    }
    return state;
}

/* How far each line is pulled, and stretched, at the peak. */
static void look_at_lines(const gtl_outcome *outcome)
{
    const gtl_rig *rig = outcome->rig;
    for (int p = 0; p < rig->part_count; p++) {
        gtl_drop_line *line = &outcome->caught->lines[rig->parts[p].line];
        line->tension = fmax(line->tension, outcome->state->tension[p]);
    }
    for (int i = 0; i < rig->line_count; i++) {
        gtl_drop_line *line = &outcome->caught->lines[i];
        const gtl_line *of = &rig->lines[i];
        line->stretch = line->tension * of->stretch / of->stretch_force;
        outcome->caught->beyond |= gtl_is_beyond_stretch(of, line);
    }
}

/* Both loads at the peak, the second in place of the first for whatever is rated. */
static gtl_status work_peaks(const gtl_rig *rig, const double *place, gtl_outcome *outcome)
{
    gtl_outcome *checked = calloc(1, sizeof *checked);
    if (!checked) return GTL_NO_MEMORY;
    outcome->checked = checked;
    *checked = (gtl_outcome){.kind = outcome->kind, .name = outcome->name};
    gtl_status status = work_at(rig, place, outcome->caught->peak, outcome);
    if (status == GTL_OK) status = work_at(rig, place, outcome->caught->checked, checked);
    if (status == GTL_NO_MEMORY) return status;
    if (outcome->possible && !checked->possible) {
        memcpy(outcome->state->reason, checked->state->reason, sizeof outcome->state->reason);
        outcome->possible = false;
    }
    if (outcome->possible) look_at_lines(outcome);
    return GTL_OK;
}

static gtl_status catch_load(const gtl_rig *rig, const gtl_state *hold, const gtl_state *twice,
                             gtl_outcome *outcome, const gtl_sheet *sheet)
{
    const char *name = rig->things[rig->dropped].name;
    if (twice->status != GTL_OK || !twice->possible)
        return refuse(sheet, outcome, "with `%s` twice as heavy: %.300s", name, twice->reason);
    outcome->caught = gtl_find_catch(rig, hold, twice);
    if (!outcome->caught) return GTL_NO_MEMORY;
    if (!isfinite(outcome->caught->checked))
        return refuse(sheet, outcome,
                      "nothing that states its stretch takes any of `%s` as it is caught, and what does not "
                      "give makes no peak that could be worked out: state the `stretch` of its line",
                      name);
    return work_peaks(rig, hold->at, outcome);
}

gtl_status gtl_work_drop(gtl_outcome *outcome, gtl_sheet *sheet)
{
    const gtl_outcome *hold = gtl_sheet_outcome(sheet, GTL_HOLD);
    gtl_rig *heavy = NULL;
    if (!hold->possible) return refuse(sheet, outcome, "%s", hold->reason);
    gtl_state *twice = work_twice(hold->rig, hold->state, &heavy);
    gtl_status status = twice ? catch_load(hold->rig, hold->state, twice, outcome, sheet) : GTL_NO_MEMORY;
    gtl_state_free(twice);
    gtl_rig_free(heavy);
    return status;
}
