/* rate.c - a rig to its sheet: places, cases with their variants, demands, verdict, warnings. */
#include "rate/rating.h"
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

const gtl_component *gtl_sheet_component(const gtl_sheet *sheet, gtl_kind kind, int index)
{
    for (int i = 0; i < sheet->component_count; i++)
        if (sheet->components[i].kind == kind && sheet->components[i].index == index)
            return &sheet->components[i];
    return NULL;
}

static gtl_status work_cases(gtl_bench *bench, gtl_sheet *sheet)
{
    double **places = NULL;
    int count = 0;
    gtl_status status = gtl_find_places(sheet->rig, &places, &count) ? GTL_OK : GTL_NO_MEMORY;
    for (int kind = GTL_HOLD; status == GTL_OK && kind < GTL_CASE_COUNT; kind++) {
        if (!sheet->rig->cases[kind]) continue;
        gtl_outcome *outcome = &sheet->outcomes[sheet->outcome_count++];
        status =
            gtl_work_case(bench, (gtl_case_kind)kind, (const double *const *)places, count, outcome, sheet);
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
        status = sheet->components ? work_cases(&bench, sheet) : GTL_NO_MEMORY;
    }
    if (status == GTL_OK) {
        gtl_mark_components(&bench, sheet);
        gtl_find_verdict(&bench, sheet);
        if (!gtl_find_warnings(&bench, sheet)) status = GTL_NO_MEMORY;
    }
    gtl_bench_end(&bench);
    return status;
}

void gtl_sheet_end(gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->outcome_count; i++) gtl_outcome_end(&sheet->outcomes[i]);
    free(sheet->components);
    free(sheet->warnings);
    *sheet = (gtl_sheet){.verdict = GTL_UNRATED};
}
