/* pair.c - a rig with two hands of which only one pulls: each case is worked with the one that need not push.
 *
 * The rig as read has one of them worked out and the other let go; where that one would have to push, a copy
 * of the rig has it the other way round, and the case is the copy's. */
#include "rate/rating.h"
#include "rig/other.h"
#include <stdlib.h>

/* Work a case of a rig that the outcome is given to own. */
static gtl_status work_own(gtl_rig *rig, gtl_outcome *outcome, gtl_sheet *aside)
{
    gtl_bench bench = {0};
    double **places = NULL;
    int count = 0;
    *aside = (gtl_sheet){.rig = rig};
    if (!rig) return GTL_NO_MEMORY;
    bool made = gtl_bench_begin(&bench, rig) && gtl_find_places(rig, &places, &count);
    gtl_status status = GTL_NO_MEMORY;
    if (made) status = gtl_work_case(&bench, (const double *const *)places, count, outcome, aside);
    outcome->own_rig = rig;
    gtl_free_places(places, count);
    gtl_bench_end(&bench);
    return status;
}

static gtl_outcome blank(const gtl_outcome *outcome)
{
    return (gtl_outcome){.kind = outcome->kind, .name = outcome->name};
}

static void replace(gtl_outcome *outcome, gtl_outcome *by)
{
    gtl_outcome_end(outcome);
    *outcome = *by;
}

/* Whether the second hand's outcome tells more: what it comes to, or else why neither can pull. */
static bool tells_more(gtl_status first, const gtl_outcome *one, gtl_status second, const gtl_outcome *other)
{
    if (second != GTL_OK) return first == GTL_NO_ANSWER && one->state->would_push;
    return other->possible || first != GTL_OK || one->state->would_push;
}

/* A case that the first hand came to no figures in, with the other. */
static gtl_status work_other(const gtl_rig *rig, gtl_status status, gtl_outcome *outcome, gtl_sheet *sheet)
{
    gtl_outcome other = blank(outcome);
    gtl_sheet aside;
    gtl_status second = work_own(gtl_rig_other(rig), &other, &aside);
    if (second == GTL_NO_MEMORY || !tells_more(status, outcome, second, &other)) {
        gtl_outcome_end(&other);
        return second == GTL_NO_MEMORY ? second : status;
    }
    replace(outcome, &other);
    if (second == GTL_OK) return GTL_OK;
    sheet->blame = aside.blame;
    for (int i = 0; i < GTL_REASON_SIZE; i++) sheet->reason[i] = aside.reason[i];
    return second;
}

/* --- jam --- */

/* Let both outcomes of one case count: its demands are the worse, and it can be if both can. */
static void merge(const gtl_bench *bench, gtl_outcome *outcome, gtl_outcome *other)
{
    if (outcome->possible && !other->possible) {
        replace(outcome, other);
        return;
    }
    if (outcome->possible) {
        gtl_take_worst(outcome, &(gtl_demands){other->demand, other->push, other->keeps, other->angle},
                       bench);
        outcome->variants += other->variants;
        outcome->every_combination &= other->every_combination;
    }
    gtl_outcome_end(other);
}

gtl_status gtl_merge_worse(const gtl_rig *rig, gtl_outcome *outcome, gtl_outcome *other)
{
    gtl_bench bench;
    bool made = gtl_bench_begin(&bench, rig);
    if (made)
        merge(&bench, outcome, other);
    else
        gtl_outcome_end(other);
    gtl_bench_end(&bench);
    return made ? GTL_OK : GTL_NO_MEMORY;
}

/* Everything but what the hands pull by order is that of `rig`: there the other hand pulls all it can. */
static gtl_rig *pulled_by_other(const gtl_rig *rig)
{
    gtl_rig *copy = gtl_rig_copy(rig);
    if (!copy) return NULL;
    copy->things[rig->hand].let_go = true;
    copy->things[rig->things[rig->hand].other].let_go = false;
    return copy;
}

/* Either hand pulls all it can, the other is let go. What hauls upwards is printed. */
static gtl_status jam_from(const gtl_rig *rig, bool lifts, gtl_outcome *outcome)
{
    gtl_outcome other = blank(outcome);
    gtl_sheet aside;
    gtl_status first = work_own(gtl_rig_copy(rig), lifts ? outcome : &other, &aside);
    gtl_status second = work_own(pulled_by_other(rig), lifts ? &other : outcome, &aside);
    if (first == GTL_NO_MEMORY || second == GTL_NO_MEMORY) {
        gtl_outcome_end(&other);
        return GTL_NO_MEMORY;
    }
    return gtl_merge_worse(rig, outcome, &other);
}

/* Worked from the hand that raises the load, or holds it: with the other one nothing would hold it. */
static gtl_status work_jam(gtl_outcome *outcome, const gtl_sheet *sheet)
{
    const gtl_outcome *raise = gtl_sheet_outcome(sheet, GTL_RAISE);
    const gtl_outcome *hold = gtl_sheet_outcome(sheet, GTL_HOLD);
    const gtl_outcome *from = raise && raise->possible ? raise : hold;
    gtl_status status = jam_from(from->rig, !(from->velocity_ratio < 0), outcome);
    if (status != GTL_OK || outcome->possible) return status;
    gtl_outcome again = blank(outcome);
    gtl_rig *other = gtl_rig_other(from->rig);
    status = other ? jam_from(other, from->velocity_ratio < 0, &again) : GTL_NO_MEMORY;
    gtl_rig_free(other);
    if (status == GTL_OK && again.possible)
        replace(outcome, &again);
    else
        gtl_outcome_end(&again);
    return status;
}

gtl_status gtl_work_pair(gtl_bench *bench, const double *const *places, int place_count, gtl_outcome *outcome,
                         gtl_sheet *sheet)
{
    if (outcome->kind == GTL_JAM) return work_jam(outcome, sheet);
    gtl_status status = gtl_work_case(bench, places, place_count, outcome, sheet);
    if (status == GTL_NO_MEMORY || (status == GTL_OK && outcome->possible)) return status;
    return work_other(bench->rig, status, outcome, sheet);
}
