/* rate.c - a rig to its sheet: places, cases with their variants, demands, verdict, warnings. */
#include "rate/rating.h"
#include "rig/other.h"
#include <math.h>
#include <stdlib.h>

const char *gtl_verdict_name(gtl_verdict verdict)
{
    static const char *const names[] = {
        [GTL_WITHIN] = "within", [GTL_OVER] = "over", [GTL_UNRATED] = "unrated"};
    return names[verdict];
}

const char *gtl_mark_name(gtl_mark mark)
{
    static const char *const names[] = {[GTL_MARK_WITHIN] = "within",
                                        [GTL_MARK_OVER] = "over",
                                        [GTL_MARK_UNRATED] = "unrated",
                                        [GTL_MARK_IDLE] = "idle"};
    return names[mark];
}

const gtl_outcome *gtl_sheet_outcome(const gtl_sheet *sheet, gtl_case_kind kind)
{
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].kind == kind) return &sheet->outcomes[i];
    return NULL;
}

const gtl_outcome *gtl_rated(const gtl_outcome *outcome)
{
    return outcome->checked && outcome->possible ? outcome->checked : outcome;
}

bool gtl_is_behind_turns(const gtl_rig *rig, int hand)
{
    for (int r = 0; r < rig->run_count; r++)
        if (rig->pieces[rig->runs[r].piece].hand == hand && rig->things[rig->runs[r].thing].turns > 0)
            return true;
    return false;
}

double gtl_outcome_pull(const gtl_outcome *outcome, int hand)
{
    if (outcome->kind == GTL_DROP && gtl_is_behind_turns(outcome->rig, hand)) return NAN;
    return gtl_hand_pull(outcome->rig, outcome->state, hand);
}

double gtl_outcome_tension(const gtl_outcome *outcome, int part)
{
    int at = outcome->part ? outcome->part[part] : part;
    return at < 0 ? 0 : outcome->state->tension[at];
}

bool gtl_outcome_slack(const gtl_outcome *outcome, int part)
{
    int at = outcome->part ? outcome->part[part] : part;
    return at < 0 || outcome->state->slack[outcome->rig->parts[at].piece];
}

const gtl_component *gtl_sheet_component(const gtl_sheet *sheet, gtl_kind kind, int index)
{
    for (int i = 0; i < sheet->component_count; i++)
        if (sheet->components[i].kind == kind && sheet->components[i].index == index)
            return &sheet->components[i];
    return NULL;
}

gtl_status gtl_work_cases(gtl_bench *bench, gtl_sheet *sheet)
{
    double **places = NULL;
    int count = 0;
    gtl_status status = gtl_find_places(sheet->rig, &places, &count) ? GTL_OK : GTL_NO_MEMORY;
    const double *const *starts = (const double *const *)places;
    for (int i = 0; status == GTL_OK && i < sheet->rig->case_count; i++) {
        const gtl_asked *asked = &sheet->rig->cases[i];
        gtl_outcome *outcome = &sheet->outcomes[sheet->outcome_count++];
        *outcome = (gtl_outcome){.kind = asked->kind, .name = asked->name};
        if (asked->kind == GTL_LOST)
            status = gtl_work_loss(asked, outcome, sheet);
        else if (asked->kind == GTL_DROP)
            status = gtl_work_drop(outcome, sheet);
        else if (gtl_rig_is_paired(sheet->rig))
            status = gtl_work_pair(bench, starts, count, outcome, sheet);
        else
            status = gtl_work_case(bench, starts, count, outcome, sheet);
    }
    gtl_free_places(places, count);
    return status;
}

gtl_status gtl_rate(const gtl_rig *rig, gtl_sheet *sheet)
{
    *sheet = (gtl_sheet){.rig = rig, .verdict = GTL_UNRATED};
    gtl_bench bench;
    gtl_status status = gtl_bench_begin(&bench, rig) ? GTL_OK : GTL_NO_MEMORY;
    if (status == GTL_OK) {
        sheet->components = gtl_list_components(&bench);
        sheet->component_count = bench.component_count;
        sheet->outcomes = calloc((size_t)rig->case_count + 1, sizeof *sheet->outcomes);
        bool made = sheet->components && sheet->outcomes && gtl_list_alternatives(sheet);
        status = made ? gtl_work_cases(&bench, sheet) : GTL_NO_MEMORY;
    }
    if (status == GTL_OK) status = gtl_work_alternatives(&bench, sheet);
    if (status == GTL_OK) status = gtl_find_rope_bill(sheet);
    if (status == GTL_OK) {
        bool kept = gtl_mark_components(&bench, sheet) && gtl_find_chains(&bench, sheet) &&
                    gtl_find_balances(sheet) && gtl_find_posts(sheet);
        if (kept) gtl_find_verdict(&bench, sheet);
        if (!kept || !gtl_find_warnings(&bench, sheet)) status = GTL_NO_MEMORY;
    }
    gtl_bench_end(&bench);
    return status;
}

void gtl_sheet_end(gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->outcome_count; i++) gtl_outcome_end(&sheet->outcomes[i]);
    free(sheet->outcomes);
    for (int i = 0; i < sheet->alternative_count; i++) gtl_rig_free(sheet->alternatives[i]);
    free(sheet->alternatives);
    free(sheet->components);
    free(sheet->steps);
    free(sheet->chains);
    free(sheet->links);
    free(sheet->head_fittings);
    free(sheet->balances);
    free(sheet->posts);
    free(sheet->warnings);
    gtl_rope_bill_free(sheet->rope_bill);
    *sheet = (gtl_sheet){.verdict = GTL_UNRATED};
}
