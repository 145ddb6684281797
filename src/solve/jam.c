/* jam.c - the lifted load caught at its height while every hand pulls all it can.
 *
 * The state arrived at, with friction as in raise or without, is taken over; its hand's pull is no longer
 * worked out but led up (or down) to what is given, and what holds the load in place is found instead. */
#include "solve/work.h"
#include <math.h>

#define SMALLEST_STEP 1e-4

static double given(const gtl_work *work, int piece, gtl_case_kind kind)
{
    return gtl_given_pull(&work->rig->things[work->rig->pieces[piece].hand], kind) / work->force;
}

static bool is_hauled(const gtl_work *work, int piece)
{
    return work->rig->pieces[piece].hand >= 0 && work->rig->pieces[piece].rule != GTL_TIED;
}

/* What each hand pulls now becomes what it pulls by order. */
static void take_over(gtl_work *work)
{
    int driven = work->rig->driven;
    work->pull[driven] = gtl_part_tension(work, driven, work->plans[driven].count - 1);
    work->row[driven] = GTL_ROW_PULL;
    work->jammed = true;
}

/* Lead all pulls to those given: `done` of the way so far, in one step or in smaller ones. */
static bool pull_on(gtl_work *work, gtl_case_kind kind)
{
    double done = 0;
    double step = 1;
    while (done < 1) {
        double share = fmin(step, 1 - done) / (1 - done); /* of what is left */
        gtl_keep(work, &work->partly);
        for (int p = 0; p < work->rig->piece_count; p++)
            if (is_hauled(work, p)) work->pull[p] += share * (given(work, p, kind) - work->pull[p]);
        if (gtl_settle(work)) {
            done += step;
            step *= 2;
            continue;
        }
        gtl_restore(work, &work->partly);
        for (int p = 0; p < work->rig->piece_count; p++)
            if (is_hauled(work, p))
                work->pull[p] = (work->pull[p] - share * given(work, p, kind)) / (1 - share);
        step /= 3;
        if (step < SMALLEST_STEP) return false;
    }
    return true;
}

static void stand_still(gtl_work *work)
{
    for (int i = 0; i < 3 * work->rig->node_count; i++) work->rate[i] = 0;
    for (int i = 0; i < work->rig->part_count; i++) work->part_rate[i] = 0;
}

void gtl_jam(gtl_work *work, const gtl_case *which, gtl_state *state)
{
    int up = 3 * work->rig->things[work->rig->load].node + work->rig->dim - 1;
    gtl_sound(work);
    take_over(work);
    if (!pull_on(work, which->kind) || gtl_pushes(work, true))
        gtl_forbid(state, "no place was found where the rig is in balance with its load caught");
    else if (gtl_sound(work) < GTL_SINGULAR && !state->neutral)
        gtl_forbid(state, "with its load caught the rig has no single answer");
    stand_still(work);
    work->added[up] = work->caught;
}
