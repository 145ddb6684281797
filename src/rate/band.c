/* band.c - the cases of a rig once more for each rig that it may be, and what lies between them. */
#include "rate/rating.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Bodies nearer than this over the rig's size are in one place [1]. */
#define SAME 1e-6

static void widen(double range[2], double value)
{
    range[0] = fmin(range[0], value); /* both pass over a NaN */
    range[1] = fmax(range[1], value);
}

bool gtl_band_is_proven(const gtl_sheet *sheet, const gtl_outcome *outcome)
{
    bool corners = sheet->alternative_count == 0 || sheet->every_corner;
    const gtl_band *band = &outcome->band;
    bool settled = sheet->alternative_count == 0 || outcome->places <= 1;
    return corners && settled && band->shifts < 0 && band->undecided < 0 && !band->sometimes;
}

/* Room for `count` ranges without a number yet; NULL without memory. */
static void *ranges(int count)
{
    double(*made)[2] = calloc((size_t)count + 1, sizeof *made);
    for (int i = 0; made && i < count; i++) made[i][0] = made[i][1] = NAN;
    return made;
}

static bool begin_band(const gtl_sheet *sheet, gtl_outcome *outcome)
{
    gtl_band *band = &outcome->band;
    band->shifts = band->undecided = -1;
    band->pull = ranges(sheet->rig->thing_count);
    band->tension = ranges(sheet->rig->part_count);
    band->demand = ranges(sheet->component_count);
    return band->pull && band->tension && band->demand;
}

void gtl_band_end(gtl_band *band)
{
    free(band->pull);
    free(band->tension);
    free(band->demand);
    *band = (gtl_band){0};
}

/* Let the figures of one rig count. */
static void take(const gtl_sheet *sheet, const gtl_outcome *from, gtl_band *band)
{
    if (!from->possible) return;
    for (int i = 0; i < sheet->rig->thing_count; i++)
        if (sheet->rig->things[i].kind == GTL_HAND) widen(band->pull[i], gtl_outcome_pull(from, i));
    for (int i = 0; i < sheet->rig->part_count; i++) widen(band->tension[i], gtl_outcome_tension(from, i));
    for (int i = 0; i < sheet->component_count; i++) widen(band->demand[i], from->demand[i]);
    for (int r = 0; r < from->rig->run_count; r++) {
        int thing = from->rig->runs[r].thing;
        bool rubs = !isnan(sheet->rig->things[thing].freest);
        if (from->state->undecided[r] && rubs && band->undecided < 0) band->undecided = thing;
    }
}

/* A body that hangs elsewhere in the other; -1: none. After a loss each has a rig of its own. */
static int shifted(const gtl_outcome *one, const gtl_outcome *other)
{
    const gtl_rig *rig = one->rig;
    double size = gtl_rig_size(rig);
    for (int n = 0; n < rig->node_count && n < other->rig->node_count; n++)
        for (int k = 0; k < rig->dim; k++)
            if (fabs(one->state->at[3 * n + k] - other->state->at[3 * n + k]) > SAME * size)
                return rig->nodes[n].root;
    return -1;
}

/* What is lost in a fall in another rig is told with the names of the sheet's. */
static void take_drop(const gtl_rig *rig, const gtl_outcome *other, gtl_outcome *outcome)
{
    if (!(other->drop > outcome->drop)) return;
    for (int i = 0; i < rig->line_count; i++)
        if (strcmp(rig->lines[i].name, other->catcher) == 0) outcome->catcher = rig->lines[i].name;
    outcome->drop = other->drop;
}

/* Whatever speaks against one catch speaks against both. */
static void take_catch(const gtl_bench *bench, const gtl_outcome *other, gtl_outcome *outcome)
{
    const gtl_outcome *checked = other->checked;
    if (!checked || !outcome->checked) return;
    gtl_take_worst(outcome->checked,
                   &(gtl_demands){checked->demand, checked->push, checked->keeps, checked->angle}, bench);
    outcome->caught->shifts |= other->caught->shifts;
    if (outcome->caught->along < 0) outcome->caught->along = other->caught->along;
    if (outcome->caught->let_out < 0) outcome->caught->let_out = other->caught->let_out;
}

/* How much speaks against a case as one rig has it. Of a load that friction holds it is no matter that it
 * does not come down: it does in the rigs that let it. What cannot be in any other way cannot be relied on at
 * all.
 */
typedef enum standing { HELD, POSSIBLE, IMPOSSIBLE } standing;

static standing stands(const gtl_outcome *outcome)
{
    if (outcome->possible) return POSSIBLE;
    return outcome->state->held_by_friction ? HELD : IMPOSSIBLE;
}

/* Which of two rigs is printed: what speaks more against the case; of a catch the harder one; the end of
 * least friction, where it pulls harder on the hand than that of most. */
static bool is_printed(const gtl_outcome *other, bool freest, const gtl_outcome *outcome)
{
    standing one = stands(outcome), two = stands(other);
    if (one != two) return two > one;
    if (two != POSSIBLE) return false;
    if (other->caught && outcome->caught) return other->caught->checked > outcome->caught->checked;
    return freest && gtl_case_direction(outcome->kind) != 0 && other->state->effort > outcome->state->effort;
}

/* A reason that holds in another rig than the one that the file would be taken for. */
static void tell_where(const gtl_rig *rig, char reason[GTL_REASON_SIZE])
{
    char own[GTL_REASON_SIZE];
    memcpy(own, reason, sizeof own);
    snprintf(reason, GTL_REASON_SIZE, "%s: %.300s",
             rig->batten_count > 0 ? "with friction elsewhere in its range, or a batten hung otherwise"
                                   : "with friction elsewhere in its range",
             own);
}

/* Put the other rig's outcome in the place of the first, which keeps its name and its band. */
static void swap(gtl_outcome *outcome, gtl_outcome *other, bool freest)
{
    gtl_outcome aside = *outcome;
    gtl_band band = other->band;
    *outcome = *other;
    *other = aside;
    outcome->band = aside.band;
    outcome->band.freest = freest;
    outcome->name = aside.name;
    other->band = band;
    if (stands(outcome) != IMPOSSIBLE) return;
    tell_where(outcome->rig, outcome->state->reason);
    outcome->reason = outcome->state->reason;
}

/* The case of one more rig, whose figures are in the band already. What it demands counts, whether or not the
 * case can be in every rig. */
static void merge(const gtl_bench *bench, const gtl_outcome *other, gtl_outcome *outcome)
{
    gtl_band *band = &outcome->band;
    band->rigs++;
    band->sometimes |= stands(outcome) == HELD || stands(other) == HELD;
    if (!other->possible) return;
    gtl_take_worst(outcome, &(gtl_demands){other->demand, other->push, other->keeps, other->angle}, bench);
    if (!outcome->possible) return;
    if (band->shifts < 0) band->shifts = shifted(outcome, other);
    outcome->every_combination &= other->every_combination;
    take_drop(bench->rig, other, outcome);
    take_catch(bench, other, outcome);
}

static gtl_status work_one(const gtl_bench *bench, gtl_sheet *sheet, int index)
{
    gtl_bench own;
    gtl_sheet aside = {.rig = sheet->alternatives[index]};
    bool made = gtl_bench_begin(&own, aside.rig), freest = index == 0 && sheet->frees_all;
    aside.outcomes = calloc((size_t)aside.rig->case_count + 1, sizeof *aside.outcomes);
    gtl_status status = made && aside.outcomes ? gtl_work_cases(&own, &aside) : GTL_NO_MEMORY;
    if (status == GTL_NO_ANSWER) {
        memcpy(sheet->reason, aside.reason, sizeof sheet->reason);
        tell_where(sheet->rig, sheet->reason);
        sheet->blame = aside.blame;
    }
    for (int i = 0; status == GTL_OK && i < sheet->outcome_count; i++) {
        gtl_outcome *outcome = &sheet->outcomes[i], *other = &aside.outcomes[i];
        take(sheet, other, &outcome->band);
        if (is_printed(other, freest, outcome)) swap(outcome, other, freest);
        merge(bench, other, outcome);
    }
    gtl_bench_end(&own);
    gtl_sheet_end(&aside);
    return status;
}

/* Of a jam that state is kept alone which has no friction; with friction others than the caught load may hang
 * elsewhere, unless all that moves goes up and down. */
static void look_at_jam(const gtl_rig *rig, gtl_outcome *jam)
{
    for (int n = 0; n < rig->node_count; n++) {
        bool sways = !rig->nodes[n].fixed && !rig->nodes[n].guided && n != rig->things[rig->load].node;
        if (rig->dim > 1 && sways && jam->band.shifts < 0) jam->band.shifts = rig->nodes[n].root;
    }
}

gtl_status gtl_work_alternatives(const gtl_bench *bench, gtl_sheet *sheet)
{
    gtl_status status = GTL_OK;
    if (sheet->alternative_count == 0) return GTL_OK;
    for (int i = 0; i < sheet->outcome_count; i++) {
        if (!begin_band(sheet, &sheet->outcomes[i])) return GTL_NO_MEMORY;
        take(sheet, &sheet->outcomes[i], &sheet->outcomes[i].band);
    }
    for (int i = 0; status == GTL_OK && i < sheet->alternative_count; i++) status = work_one(bench, sheet, i);
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].kind == GTL_JAM) look_at_jam(sheet->rig, &sheet->outcomes[i]);
    return status;
}
