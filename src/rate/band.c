/* band.c - the cases of a rig once more for each rig that it may be, and what lies between them. */
#include "rate/rating.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Bodies nearer than this over the rig's size are in one place [1]. */
#define SAME 1e-6

static void widen(double range[2], double value)
{
    range[0] = fmin(range[0], value); /* both pass over a NaN */
    range[1] = fmax(range[1], value);
}

static bool begin_band(const gtl_sheet *sheet, gtl_outcome *outcome)
{
    gtl_band *band = &outcome->band;
    band->tension = calloc((size_t)sheet->rig->part_count + 1, sizeof *band->tension);
    band->demand = calloc((size_t)sheet->component_count + 1, sizeof *band->demand);
    if (!band->tension || !band->demand) return false;
    for (int i = 0; i < sheet->rig->part_count; i++) band->tension[i][0] = band->tension[i][1] = NAN;
    for (int i = 0; i < sheet->component_count; i++) band->demand[i][0] = band->demand[i][1] = NAN;
    return true;
}

void gtl_band_end(gtl_band *band)
{
    free(band->tension);
    free(band->demand);
    *band = (gtl_band){0};
}

/* Let the figures of one rig count. */
static void take(const gtl_sheet *sheet, const gtl_outcome *from, gtl_band *band)
{
    if (!from->possible) return;
    widen(band->effort, from->state->effort);
    for (int i = 0; i < sheet->rig->part_count; i++) widen(band->tension[i], gtl_outcome_tension(from, i));
    for (int i = 0; i < sheet->component_count; i++) widen(band->demand[i], from->demand[i]);
}

static bool shifted(const gtl_rig *rig, const gtl_outcome *one, const gtl_outcome *other)
{
    double size = gtl_rig_size(rig);
    if (one->kind == GTL_LOST || !one->possible || !other->possible) return false;
    for (int n = 0; n < rig->node_count; n++)
        for (int k = 0; k < rig->dim; k++)
            if (fabs(one->state->at[3 * n + k] - other->state->at[3 * n + k]) > SAME * size) return true;
    return false;
}

/* What is lost in a fall in another rig is told with the names of the sheet's. */
static void take_drop(const gtl_rig *rig, const gtl_outcome *other, gtl_outcome *outcome)
{
    if (!(other->drop > outcome->drop)) return;
    for (int i = 0; i < rig->line_count; i++)
        if (strcmp(rig->lines[i].name, other->catcher) == 0) outcome->catcher = rig->lines[i].name;
    outcome->drop = other->drop;
}

/* A case that cannot be in one of the rigs. Only of a load that friction holds it is no matter: it comes down
 * in those that let it. Any other cannot be relied on in any. */
static void lose(const gtl_outcome *other, gtl_outcome *outcome)
{
    outcome->band.sometimes |= outcome->possible;
    if (!outcome->possible || other->state->held_by_friction) return;
    outcome->possible = false;
    outcome->falls = other->falls;
    memcpy(outcome->state->reason, other->reason, strlen(other->reason) + 1);
    outcome->reason = outcome->state->reason;
}

/* The case of one more rig, whose figures are in the band already. */
static void merge(const gtl_bench *bench, const gtl_outcome *other, gtl_outcome *outcome)
{
    const gtl_rig *rig = bench->rig;
    outcome->band.rigs++;
    if (!other->possible) {
        lose(other, outcome);
        return;
    }
    outcome->band.sometimes |= !outcome->possible;
    outcome->band.shifts |= shifted(rig, outcome, other);
    gtl_take_worst(outcome, &(gtl_demands){other->demand, other->push, other->keeps, other->angle}, bench);
    outcome->variants += other->variants;
    outcome->every_combination &= other->every_combination;
    take_drop(rig, other, outcome);
}

/* A load that comes down is printed as it does most freely, since so it pulls hardest on who holds it. */
static bool is_freer(const gtl_outcome *other, int index, const gtl_outcome *outcome)
{
    return gtl_case_direction(outcome->kind) < 0 && other->possible && (index == 0 || !outcome->possible);
}

static void swap(gtl_outcome *outcome, gtl_outcome *other)
{
    gtl_outcome aside = *outcome;
    gtl_band band = other->band;
    *outcome = *other;
    *other = aside;
    outcome->band = aside.band;
    outcome->name = aside.name;
    other->band = band;
}

static gtl_status work_one(const gtl_bench *bench, gtl_sheet *sheet, int index)
{
    gtl_bench own;
    gtl_sheet aside = {.rig = sheet->alternatives[index]};
    bool made = gtl_bench_begin(&own, aside.rig);
    aside.outcomes = calloc((size_t)aside.rig->case_count + 1, sizeof *aside.outcomes);
    gtl_status status = made && aside.outcomes ? gtl_work_cases(&own, &aside) : GTL_NO_MEMORY;
    if (status == GTL_NO_ANSWER) {
        memcpy(sheet->reason, aside.reason, sizeof sheet->reason);
        sheet->blame = aside.blame;
    }
    for (int i = 0; status == GTL_OK && i < sheet->outcome_count; i++) {
        gtl_outcome *outcome = &sheet->outcomes[i], *other = &aside.outcomes[i];
        take(sheet, other, &outcome->band);
        if (is_freer(other, index, outcome)) swap(outcome, other);
        merge(bench, other, outcome);
    }
    gtl_bench_end(&own);
    gtl_sheet_end(&aside);
    return status;
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
    return status;
}
