/* predict.c - what the rig file, or the textbook tackle of so many parts, says about a row. */
#include "lab/work.h"

#include "study/search.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

/* One answer of a rig. */
typedef struct answer {
    double effort; /* [N]; NaN: none */
    double ratio;  /* [1]; likewise */
    bool held;     /* the load stays up by friction alone */
} answer;

/* Hang a load on a rig and work one case. `reason` receives why there is no answer, unless it says something
 * already; NULL: nobody asks. False without memory. */
static bool ask_rig(gtl_rig *rig, double load, gtl_case_kind kind, answer *got, char *reason)
{
    *got = (answer){NAN, NAN, false};
    gtl_hang_load(rig, rig->load, load);
    gtl_state *state = gtl_state_new(rig);
    if (!state) return false;
    gtl_case which = {.kind = kind};
    gtl_status status = gtl_solve(rig, &which, state);
    if (status == GTL_OK && state->possible)
        *got = (answer){state->effort, state->velocity_ratio, false};
    else if (reason && reason[0] == '\0')
        snprintf(reason, GTL_REASON_SIZE, "%s", state->reason);
    got->held = state->held_by_friction;
    gtl_state_free(state);
    return status != GTL_NO_MEMORY;
}

/* --- the prediction --- */

static bool states_friction(const gtl_rig *rig)
{
    for (int r = 0; r < rig->run_count; r++)
        if (rig->things[rig->runs[r].thing].friction_stated) return true;
    return false;
}

/* Between coming down and going up, what holds the load: no single effort is right. */
static bool predict_held(gtl_rig *rig, gtl_lab_row *row)
{
    answer least;
    answer most;
    if (!ask_rig(rig, row->load, GTL_LOWER, &least, NULL) || !ask_rig(rig, row->load, GTL_RAISE, &most, NULL))
        return false;
    row->predicted_least = least.held ? 0 : least.effort;
    row->predicted_most = most.effort;
    return true;
}

static bool predict_on_rig(gtl_lab_set_up *set_up, gtl_rig *rig, gtl_lab_row *row)
{
    answer rest;
    answer moving;
    if (!ask_rig(rig, row->load, GTL_HOLD, &rest, set_up->reason)) return false;
    row->reference_advantage = rest.ratio;
    row->predicted_hold = row->predicted_effort = rest.effort;
    if (!set_up->friction_stated) return true;
    if (row->held) return predict_held(rig, row);
    if (!ask_rig(rig, row->load, GTL_RAISE, &moving, set_up->reason)) return false;
    row->predicted_case = GTL_RAISE;
    row->predicted_effort = moving.effort;
    return true;
}

/* What rises: the load, and what is stated to rise with it [N]. */
static double raised(const gtl_lab_row *row)
{
    return row->load + (isnan(row->moving_weight) ? 0 : row->moving_weight);
}

static bool predict_row(gtl_lab_set_up *set_up, gtl_rig *rig, gtl_lab_row *row)
{
    row->predicted_case = GTL_HOLD;
    row->predicted_least = row->predicted_most = NAN;
    if (rig) return predict_on_rig(set_up, rig, row);
    row->reference_advantage = set_up->parts;
    row->predicted_hold = row->predicted_effort = raised(row) / set_up->parts;
    return true;
}

static bool predict_set_up(gtl_lab *lab, int s)
{
    gtl_lab_set_up *set_up = &lab->set_ups[s];
    gtl_rig *copy = set_up->rig ? gtl_rig_copy(set_up->rig) : NULL;
    if (set_up->rig && !copy) return false;
    set_up->friction_stated = copy && states_friction(copy);
    set_up->velocity_ratio = NAN;
    bool done = true;
    for (int i = 0; done && i < lab->row_count; i++) {
        gtl_lab_row *row = &lab->rows[i];
        if (row->set_up != s) continue;
        done = predict_row(set_up, copy, row);
        set_up->row_count++;
        if (isnan(set_up->velocity_ratio)) set_up->velocity_ratio = row->reference_advantage;
    }
    gtl_rig_free(copy);
    return done;
}

bool gtl_lab_predict(gtl_lab *lab)
{
    for (int s = 0; s < lab->set_up_count; s++)
        if (!predict_set_up(lab, s)) return false;
    return true;
}

/* --- with one efficiency for all blocks --- */

/* The hauling part leaves the fixed block: the first sheave takes its share before any part carries. */
static double textbook_effort(const gtl_lab_set_up *set_up, const gtl_lab_row *row, double e)
{
    double sum = 0;
    double part = 1;
    for (int i = 0; i < set_up->parts; i++) {
        part *= e;
        sum += part;
    }
    return raised(row) / sum;
}

static bool even_effort(gtl_rig *even, const gtl_lab_row *row, double e, double *effort)
{
    answer got;
    for (int i = 0; i < even->thing_count; i++) {
        gtl_thing *thing = &even->things[i];
        if (thing->kind != GTL_BLOCK) continue;
        thing->efficiency = e;
        thing->friction_stated = true;
    }
    bool done = ask_rig(even, row->load, GTL_RAISE, &got, NULL);
    *effort = got.effort;
    return done;
}

/* How far below 1 the efforts are taken that are carried on beyond 1 [1]. */
#define APART 0.02

bool gtl_lab_model(const gtl_lab_set_up *set_up, gtl_rig *even, const gtl_lab_row *row, double e,
                   double *effort)
{
    if (!even) {
        *effort = textbook_effort(set_up, row, e);
        return true;
    }
    if (e <= 1) return even_effort(even, row, e, effort);
    /* No rig is worked with more than 100 %: the logarithm of the effort over that of e is all but a straight
     * line, and is carried on as a parabola. */
    double log_effort[3];
    double place = log(e) / APART;
    for (int i = 0; i < 3; i++) {
        double below;
        if (!even_effort(even, row, exp(-APART * i), &below)) return false;
        log_effort[i] = log(below);
    }
    *effort = exp(log_effort[0] * (place + 1) * (place + 2) / 2 - log_effort[1] * place * (place + 2) +
                  log_effort[2] * place * (place + 1) / 2);
    return true;
}
