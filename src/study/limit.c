/* limit.c - the range of loads that a rig is permitted: the drawn one first, then both ends of the range. */
#include "study/search.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Where the load is all that moves the rig, or all is vertical, no load changes the rig's shape, and doubling
 * passes over nothing. Elsewhere what a shape does is looked at more closely [1]. */
#define COARSE_STEP 2.0
#define FINE_STEP   1.189207115002721 /* a quarter of an octave */

const char *gtl_edge_name(gtl_edge_kind kind)
{
    static const char *const names[] = {
        [GTL_EDGE_NONE] = "",
        [GTL_EDGE_RATING] = "rating",
        [GTL_EDGE_FITTING] = "head fitting",
        [GTL_EDGE_UNKNOWN] = "unknown rating",
        [GTL_EDGE_CASE] = "case",
        [GTL_EDGE_NO_ANSWER] = "no answer",
    };
    return names[kind];
}

/* --- which load --- */

static gtl_status refuse(gtl_limit *limit, int line, const char *why)
{
    snprintf(limit->reason, sizeof limit->reason, "%s", why);
    limit->blame = line;
    return GTL_FAULTY;
}

/* The lifted load; where nobody hauls, the only one. */
static gtl_status choose_load(gtl_limit *limit)
{
    const gtl_rig *rig = limit->rig;
    int count = 0, last = -1;
    for (int i = 0; i < rig->thing_count; i++) {
        if (rig->things[i].kind != GTL_LOAD) continue;
        count++;
        last = i;
    }
    limit->load = rig->load >= 0 ? rig->load : last;
    if (limit->load >= 0 && gtl_batten_of(rig, limit->load) >= 0)
        return refuse(
            limit, rig->battens[gtl_batten_of(rig, limit->load)].line,
            "what is lifted is a batten, and it is not said which of its `loads` is to grow; change "
            "them in the file, and rate it again");
    if (rig->load >= 0 || count == 1) return GTL_OK;
    if (count == 0)
        return refuse(
            limit, 0,
            "there is no load whose limit could be looked for; add a load, such as [load crate] with "
            "mass = 60 kg");
    return refuse(
        limit, rig->things[last].line,
        "several loads hang here and nobody hauls, so it is not said which one is to grow; write the "
        "others as [joint] with their mass");
}

/* --- the search --- */

/* Whether the rig hangs alike under every load. */
static bool keeps_shape(const gtl_rig *rig, int load)
{
    if (rig->dim == 1) return true;
    for (int n = 0; n < rig->node_count; n++)
        if (!rig->nodes[n].fixed && n != rig->things[load].node && rig->nodes[n].weight > 0) return false;
    for (int p = 0; p < rig->piece_count; p++)
        if (rig->pieces[p].rule == GTL_PULLED) return false;
    return rig->nodes[rig->things[load].node].weight == rig->things[load].weight;
}

static bool begin_search(gtl_search *search, gtl_limit *limit)
{
    limit->own_rig = gtl_rig_copy(limit->rig);
    if (!limit->own_rig) return false;
    *search = (gtl_search){.rig = limit->own_rig,
                           .load = limit->load,
                           .low = limit->lowest,
                           .high = limit->highest,
                           .step = keeps_shape(limit->rig, limit->load) ? COARSE_STEP : FINE_STEP};
    return true;
}

/* What is not known as drawn bars no load: it is told instead. */
static bool *list_excused(const gtl_sheet *sheet)
{
    bool *excused = calloc((size_t)sheet->component_count + 1, sizeof *excused);
    for (int i = 0; excused && i < sheet->component_count; i++)
        excused[i] = sheet->components[i].mark == GTL_MARK_UNRATED;
    return excused;
}

/* Both ends of the permitted range, from any load in it; then once more at the limit, to keep its sheet. */
static gtl_status find_range(gtl_search *search, gtl_limit *limit, const gtl_tried *drawn)
{
    gtl_tried within = *drawn;
    limit->found = (drawn->permitted || gtl_seek_permitted(search, drawn, &within)) && !search->failed;
    if (limit->found) gtl_find_edge(search, &within, true, &limit->heaviest);
    search->low = fmax(search->low, GTL_LIMIT_LIGHT * within.mass);
    if (limit->found && !search->failed) gtl_find_edge(search, &within, false, &limit->lightest);
    if (search->failed) return GTL_NO_MEMORY;
    if (!limit->found) return GTL_OK;
    bool limited = limit->heaviest.kind != GTL_EDGE_NONE;
    gtl_set_load(search, limited ? limit->heaviest.mass : within.mass);
    /* It had an answer a moment ago. */
    return gtl_rate(search->rig, &limit->at_limit) == GTL_OK ? GTL_OK : GTL_NO_MEMORY;
}

/* The load as drawn, which was rated already. */
static void judge_drawn(const gtl_limit *limit, const bool *excused, gtl_tried *drawn)
{
    if (limit->answered)
        gtl_judge_load(&limit->as_drawn, excused, drawn);
    else
        gtl_bar_load(drawn, GTL_EDGE_NO_ANSWER, -1, limit->as_drawn.outcome_count - 1,
                     limit->as_drawn.reason);
    drawn->mass = limit->drawn;
}

static gtl_status look_for_range(gtl_limit *limit, const bool *excused)
{
    gtl_search search;
    gtl_tried drawn = {.use = NAN}; /* of no answer no more is known */
    if (!begin_search(&search, limit)) return GTL_NO_MEMORY;
    search.excused = excused;
    judge_drawn(limit, excused, &drawn);
    gtl_status status = find_range(&search, limit, &drawn);
    limit->permitted = drawn.within && limit->found;
    if (!limit->permitted) limit->barred = drawn.edge;
    limit->tried = search.tried;
    return status;
}

/* Where nothing is permitted and the rig has no answer as drawn, that is what has to be told. */
static gtl_status conclude(gtl_limit *limit)
{
    if (limit->answered || limit->found) return gtl_summarise(limit) ? GTL_OK : GTL_NO_MEMORY;
    memcpy(limit->reason, limit->barred.reason, sizeof limit->reason);
    return GTL_NO_ANSWER;
}

static gtl_status study(gtl_limit *limit)
{
    gtl_status status = gtl_rate(limit->rig, &limit->as_drawn);
    limit->answered = status == GTL_OK;
    limit->blame = limit->as_drawn.blame;
    if (status != GTL_OK && status != GTL_NO_ANSWER) return status;
    bool *excused = limit->answered ? list_excused(&limit->as_drawn) : NULL;
    if (limit->answered && !excused) return GTL_NO_MEMORY;
    status = look_for_range(limit, excused);
    free(excused);
    return status == GTL_OK ? conclude(limit) : status;
}

gtl_status gtl_find_limit(const gtl_rig *rig, gtl_limit *limit)
{
    static const gtl_edge none = {.mass = NAN, .component = -1, .outcome = -1};
    *limit = (gtl_limit){
        .rig = rig, .barred = none, .heaviest = none, .lightest = none, .every_combination = true};
    gtl_status status = choose_load(limit);
    if (status != GTL_OK) return status;
    limit->drawn = rig->things[limit->load].weight / rig->gravity;
    limit->lowest = GTL_LIMIT_LEAST * limit->drawn;
    limit->highest = GTL_LIMIT_MOST * limit->drawn;
    return study(limit);
}

void gtl_limit_end(gtl_limit *limit)
{
    gtl_sheet_end(&limit->as_drawn);
    gtl_sheet_end(&limit->at_limit);
    gtl_rig_free(limit->own_rig);
    free(limit->needs);
    free(limit->undecided);
    *limit = (gtl_limit){.rig = limit->rig};
}
