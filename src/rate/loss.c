/* loss.c - a part lets go, and the rig finds its new place: worked as any rig that hangs by itself, from
 * where hold has it. The sudden transfer is the loss factor on every force. */
#include "rate/rating.h"
#include "rig/other.h"
#include "rig/without.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Slack over the rig's size that is rounding [1]. */
#define SLACK 1e-6

static const char *name_of(const gtl_rig *rig, const gtl_asked *asked)
{
    if (asked->lost_kind == GTL_ANCHOR) return rig->things[asked->lost].name;
    if (asked->lost_kind == GTL_CONNECTOR) return rig->connectors[asked->lost].name;
    return rig->lines[asked->lost].name;
}

bool gtl_blank_outcome(const gtl_sheet *sheet, gtl_outcome *outcome)
{
    size_t count = (size_t)sheet->component_count + 1;
    double **const rooms[] = {&outcome->demand, &outcome->push, &outcome->keeps, &outcome->angle};
    bool made = true;
    outcome->rig = sheet->rig;
    outcome->velocity_ratio = outcome->estimated_advantage = outcome->efficiency = NAN;
    outcome->every_combination = true;
    outcome->places = 1;
    outcome->band = (gtl_band){.rigs = 1, .shifts = -1, .undecided = -1};
    outcome->state = gtl_state_new(sheet->rig);
    for (size_t i = 0; i < sizeof rooms / sizeof *rooms; i++) {
        *rooms[i] = calloc(count, sizeof **rooms[i]);
        for (size_t k = 0; *rooms[i] && k < count; k++) (*rooms[i])[k] = NAN;
        made = made && *rooms[i];
    }
    return made && outcome->state;
}

/* Whether what is left can be worked at all; the reason, where not, into `reason`. */
static bool can_be_worked(const gtl_rig *rig, const gtl_remains *remains, const char *lost,
                          char reason[GTL_REASON_SIZE])
{
    if (remains->falls >= 0)
        snprintf(reason, GTL_REASON_SIZE, "`%s` falls: nothing holds it once `%s` has let go",
                 rig->things[remains->falls].name, lost);
    else if (remains->tangled >= 0)
        snprintf(
            reason, GTL_REASON_SIZE,
            "once `%s` has let go, `%s` is led over two things in one place with nothing in between, and "
            "what each of them carries is not known; draw them apart",
            lost, rig->lines[remains->tangled].name);
    else if (remains->rig->piece_count == 0)
        snprintf(reason, GTL_REASON_SIZE, "nothing that could carry a force is left once `%s` has let go",
                 lost);
    else
        return true;
    return false;
}

/* Every force the loss factor times as great. Places, lengths and what an angle leaves stay. */
static void multiply(const gtl_rig *rig, int component_count, gtl_outcome *outcome)
{
    double factor = outcome->rig->loss_factor;
    gtl_forces *forces = &outcome->forces;
    for (int i = 0; i < rig->part_count; i++) outcome->state->tension[i] *= factor;
    for (int i = 0; i < rig->thing_count; i++) {
        for (int k = 0; k < 3; k++) {
            forces->passed[i][k] *= factor;
            forces->rope[i][k] *= factor;
            forces->governing[i][k] *= factor;
        }
    }
    for (int n = 0; n < rig->node_count; n++)
        for (int k = 0; k < 3; k++) forces->track[n][k] *= factor;
    for (int i = 0; i < component_count; i++) {
        forces->demand[i] *= factor;
        forces->push[i] *= factor;
        outcome->demand[i] *= factor;
        outcome->push[i] *= factor;
    }
}

/* A line that had slack when the part let go, and holds something afterwards, has caught it in a drop. The
 * copy is drawn as hold had the rig. */
static void find_drop(const gtl_rig *left, gtl_outcome *outcome)
{
    for (int p = 0; p < left->piece_count; p++) {
        const gtl_piece *piece = &left->pieces[p];
        double tension = outcome->state->tension[piece->first_part];
        double slack = piece->length - gtl_drawn_length(left, p);
        if (piece->rule != GTL_TIED || !(tension > GTL_IDLE_SHARE * gtl_rig_force(left))) continue;
        if (slack <= SLACK * gtl_rig_size(left) || slack <= outcome->drop) continue;
        outcome->drop = slack;
        outcome->catcher = left->lines[piece->line].name;
    }
}

/* A spar that lost one end hangs plumb under its other: what ties it there bears all of it. */
static void hang_spars(const gtl_rig *rig, const int *dangles, const gtl_bench *bench, gtl_outcome *outcome)
{
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_stop *stop = dangles[i] < 0 ? NULL : &rig->stops[dangles[i]];
        if (!stop || outcome->loose[stop->thing]) continue;
        for (int k = 0; k < stop->via.count; k++) {
            int component = bench->connector_component[rig->vias[stop->via.first + k]];
            outcome->demand[component] = fmax(outcome->demand[component], rig->lines[i].weight);
        }
    }
}

/* Refused: the reason goes with what has let go, since the drawing that it may speak of is where hold has the
 * rig. */
static void tell_refusal(const char *lost, gtl_outcome *outcome)
{
    char reason[GTL_REASON_SIZE];
    outcome->possible = false;
    memcpy(reason, outcome->state->reason, sizeof reason);
    snprintf(outcome->state->reason, sizeof outcome->state->reason, "once `%s` has let go: %.300s", lost,
             reason);
    outcome->reason = outcome->state->reason;
}

/* Work the rig that is left. One that has no answer is a case that cannot be: the others have theirs. */
static gtl_status work_remains(const gtl_rig *rig, const int *dangles, const char *lost, gtl_outcome *outcome)
{
    const gtl_rig *left = outcome->own_rig;
    gtl_bench bench;
    double **places = NULL;
    int count = 0;
    gtl_sheet aside = {.rig = left}; /* takes the reason that would be the whole rig's */
    bool made = gtl_bench_begin(&bench, left) && gtl_find_places(left, &places, &count);
    gtl_status status = GTL_NO_MEMORY;
    if (made) status = gtl_work_case(&bench, (const double *const *)places, count, outcome, &aside);
    if (status != GTL_NO_MEMORY && outcome->possible) {
        hang_spars(rig, dangles, &bench, outcome);
        find_drop(left, outcome);
        multiply(left, bench.component_count, outcome);
    } else if (status != GTL_NO_MEMORY)
        tell_refusal(lost, outcome);
    gtl_free_places(places, count);
    gtl_bench_end(&bench);
    return status == GTL_NO_MEMORY ? status : GTL_OK;
}

/* What each piece keeps once it happens: where hold gives its pull, what it had there. NULL without memory.
 */
static double *kept_lengths(const gtl_rig *rig, const gtl_state *hold)
{
    double *length = calloc((size_t)rig->piece_count + 1, sizeof *length);
    for (int p = 0; length && p < rig->piece_count; p++)
        length[p] = isnan(hold->kept_length[p]) ? hold->piece_length[p] : hold->kept_length[p];
    return length;
}

/* `rig` says which hand holds on, where there are two of which one is let go. */
static gtl_status lose(const gtl_rig *rig, const gtl_asked *asked, const gtl_state *hold,
                       gtl_outcome *outcome, gtl_sheet *sheet)
{
    const char *lost = name_of(rig, asked);
    char reason[GTL_REASON_SIZE];
    gtl_remains remains = {0};
    double *length = kept_lengths(rig, hold);
    bool made = length && gtl_rig_without(rig, asked->lost_kind, asked->lost, hold->at, length, &remains);
    gtl_status status = made ? GTL_OK : GTL_NO_MEMORY;
    bool halved = made && gtl_batten_is_half_held(rig, lost, &remains, reason);
    if (made && !halved && can_be_worked(rig, &remains, lost, reason)) {
        outcome->own_rig = remains.rig;
        outcome->part = remains.part;
        outcome->loose = remains.loose;
        remains.rig = NULL;
        remains.part = NULL;
        remains.loose = NULL;
        status = work_remains(rig, remains.dangles, lost, outcome);
    } else if (made) {
        outcome->falls = remains.falls >= 0;
        outcome->loose = remains.loose;
        remains.loose = NULL;
        status = gtl_blank_outcome(sheet, outcome) ? GTL_OK : GTL_NO_MEMORY;
        if (status == GTL_OK) memcpy(outcome->state->reason, reason, sizeof reason);
        if (status == GTL_OK) outcome->reason = outcome->state->reason;
    }
    gtl_remains_end(&remains);
    free(length);
    return status;
}

/* Of two hands the one that pulls holds on; no other takes hold of a line that begins to run. Where the rig
 * is in balance neither is known to, and the worse of both counts. */
static gtl_status lose_paired(const gtl_asked *asked, const gtl_outcome *hold, gtl_outcome *outcome,
                              gtl_sheet *sheet)
{
    gtl_status status = lose(hold->rig, asked, hold->state, outcome, sheet);
    if (status != GTL_OK || hold->state->effort > GTL_IDLE_SHARE * gtl_rig_force(hold->rig)) return status;
    gtl_outcome other = {.kind = outcome->kind, .name = outcome->name};
    gtl_rig *rig = gtl_rig_other(hold->rig);
    status = rig ? lose(rig, asked, hold->state, &other, sheet) : GTL_NO_MEMORY;
    if (status == GTL_OK)
        status = gtl_merge_worse(sheet->rig, outcome, &other);
    else
        gtl_outcome_end(&other);
    gtl_rig_free(rig);
    return status;
}

gtl_status gtl_work_loss(const gtl_asked *asked, gtl_outcome *outcome, gtl_sheet *sheet)
{
    const gtl_outcome *hold = gtl_sheet_outcome(sheet, GTL_HOLD);
    if (hold->possible && gtl_rig_is_paired(hold->rig)) return lose_paired(asked, hold, outcome, sheet);
    if (hold->possible) return lose(hold->rig, asked, hold->state, outcome, sheet);
    if (!gtl_blank_outcome(sheet, outcome)) return GTL_NO_MEMORY;
    outcome->reason = hold->reason;
    return GTL_OK;
}
