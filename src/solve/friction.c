/* friction.c - friction put on a shape, each stop in the sense in which rope runs over it.
 *
 * The sense comes from the motion of the shape and is confirmed by the motion with the friction in it. A stop
 * whose motion contradicts its sense is turned round once; one that contradicts itself both ways, or over
 * which no rope runs, is undecided and keeps equal tensions. */
#include "solve/work.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

#define SMALLEST_SHARE 1e-4
#define RESCUES        5
#define RESCUE_SHAKE   0.01
/* Along one rope, friction that multiplies the pull by 1e13 is no rig any more. */
#define MOST_LOG 30.0
/* Inertia that changes by less, over the rig's force, has settled. */
#define SAME_INERTIA   1e-11
#define INERTIA_ROUNDS 200

void gtl_forbid(gtl_state *state, const char *reason)
{
    state->possible = false;
    snprintf(state->reason, sizeof state->reason, "%s", reason);
}

static bool forced(const gtl_case *which, int run)
{
    return which->forced && which->sense && which->forced[run];
}

/* A forced sense is given along the path; the walk may go the other way. */
static signed char forced_sense(const gtl_work *work, const gtl_case *which, int run)
{
    bool back = work->rig->pieces[work->rig->runs[run].piece].hand_first;
    return (signed char)(back ? -which->sense[run] : which->sense[run]);
}

static signed char sense_of(double flow, double most, int direction)
{
    if (fabs(flow) <= GTL_STILL * most) return 0;
    return (signed char)(flow * direction > 0 ? 1 : -1);
}

static void first_senses(gtl_work *work, const gtl_case *which, int direction)
{
    double most = gtl_flows(work, work->flow);
    memset(work->tried, 0, 3 * (size_t)work->rig->run_count * sizeof *work->tried);
    for (int r = 0; r < work->rig->run_count; r++)
        work->sense[r] =
            forced(which, r) ? forced_sense(work, which, r) : sense_of(work->flow[r], most, direction);
}

/* Hold the senses against the motion with friction in it; whether any had to change. */
static bool revise_senses(gtl_work *work, const gtl_case *which, gtl_state *state, int direction)
{
    bool changed = false;
    double most = gtl_flows(work, work->flow);
    for (int r = 0; r < work->rig->run_count; r++) {
        if (forced(which, r) || state->undecided[r]) continue;
        signed char sense = sense_of(work->flow[r], most, direction);
        if (sense == work->sense[r]) continue;
        if (work->contact[r] > 0) {
            bool *tried = work->tried + 3 * r + 1;
            tried[work->sense[r]] = true;
            state->undecided[r] = tried[sense];
            changed = true;
        }
        work->sense[r] = state->undecided[r] ? 0 : sense;
    }
    return changed;
}

/* Friction in one step from the shape, in smaller ones where that does not arrive. */
static bool slide(gtl_work *work)
{
    gtl_restore(work, &work->shape);
    gtl_keep(work, &work->partly);
    double done = 0;
    double step = 1;
    while (done < 1) {
        work->share = fmin(1, done + step);
        if (gtl_settle(work)) {
            done = work->share;
            gtl_keep(work, &work->partly);
            step *= 2;
        } else {
            gtl_restore(work, &work->partly);
            step /= 3;
            if (step < SMALLEST_SHARE) return false;
        }
    }
    return gtl_turn_back(work, work->shape.x);
}

/* A line that is slack while the rig hangs may come taut once rope runs: begin with it taut, a little off. */
static bool slide_with_slack_taken_up(gtl_work *work)
{
    bool any = false;
    for (int p = 0; p < work->rig->piece_count; p++) any |= work->shape.row[p] == GTL_ROW_SLACK;
    for (int attempt = 0; any && attempt < RESCUES; attempt++) {
        gtl_restore(work, &work->shape);
        work->share = 1;
        for (int i = 0; i < 3 * work->rig->node_count; i++)
            if (work->dof[i] >= 0) work->x[i] += RESCUE_SHAKE * gtl_random(work);
        for (int p = 0; p < work->rig->piece_count; p++)
            if (work->row[p] == GTL_ROW_SLACK) work->row[p] = GTL_ROW_LENGTH;
        if (gtl_newton(work) && !gtl_pushes(work, false)) return true;
    }
    return false;
}

/* Whether a rope's friction is beyond all rigs; says so. */
static bool out_of_range(gtl_work *work, gtl_state *state)
{
    work->share = 1;
    gtl_balance(work);
    for (int p = 0; p < work->rig->piece_count; p++) {
        const gtl_plan *plan = &work->plans[p];
        double least = 0;
        for (int i = plan->first; i < plan->first + plan->count; i++) least = fmin(least, work->log_ratio[i]);
        if (work->log_ratio[plan->first + work->greatest[p]] - least <= MOST_LOG) continue;
        const gtl_line *line = &work->rig->lines[work->rig->pieces[p].line];
        gtl_refuse(state, line->line,
                   "friction along `%s` multiplies the pull by more than 1e13: check its stops' "
                   "efficiency, friction and turns",
                   line->name);
        return true;
    }
    return false;
}

static double effort_of(const gtl_work *work)
{
    return gtl_part_tension(work, work->rig->driven, work->plans[work->rig->driven].count - 1);
}

static bool shifted(const gtl_work *work)
{
    for (int i = 0; i < 3 * work->rig->node_count; i++)
        if (fabs(work->x[i] - work->shape.x[i]) > 1e-9) return true;
    return false;
}

/* Whether the arrived state is one in which the load moves that way at all. Where other weights outdo the
 * load the hand pays rope out as it rises: then it is rising that wants no push. */
static void look_at_effort(gtl_work *work, const gtl_case *which, gtl_state *state)
{
    if (work->rig->driven < 0) return;
    double effort = effort_of(work);
    double held = work->shape.t[work->rig->driven];
    bool pushes = effort < -GTL_NO_PUSH;
    state->would_push = pushes;
    bool up = gtl_case_direction(which->kind) > 0;
    bool brakes = which->kind == GTL_STOP; /* inertia takes from what has to be hauled */
    bool hauls = (gtl_payout(work, work->rig->driven) < 0) == up;
    if (pushes && !hauls && up)
        gtl_forbid(state,
                   "the load would not go up by itself: friction holds it, and the hand would have to push");
    else if (pushes && !hauls) {
        gtl_forbid(
            state,
            "the load would not come down by itself: friction holds it, and the hand would have to push");
        state->held_by_friction = true;
    } else if (pushes && held < -GTL_NO_PUSH)
        gtl_forbid(state, "the load runs away: it moves by itself, and the hand would have to push");
    else if (hauls && (pushes || (!brakes && !shifted(work) && effort < held - GTL_NO_PUSH)))
        gtl_forbid(state, "the rig jams: with this friction no pull moves the load that way");
}

static bool arrive(gtl_work *work, gtl_state *state)
{
    if (!slide(work) && !slide_with_slack_taken_up(work)) {
        gtl_forbid(
            state,
            "no place was found where the rig is in balance with its friction: a body that rides on a rope "
            "may be dragged along by it");
        return false;
    }
    if (gtl_pushes(work, false)) {
        gtl_forbid(state, "no place was found where every rope pulls with the friction that is stated");
        return false;
    }
    gtl_motion(work);
    if (work->pivot_ratio >= GTL_SINGULAR || state->neutral) return true;
    gtl_forbid(state, "with its friction the rig has no single answer");
    return false;
}

/* Every moving body's own inertia, through its own velocity ratio: raising from rest and braking while
 * lowering both speed the load upwards. Whether it differs from what was in force. */
static bool revise_inertia(gtl_work *work, gtl_case_kind kind)
{
    double change = 0;
    if (kind != GTL_START && kind != GTL_STOP) return false;
    double share = work->rig->acceleration / work->rig->gravity;
    for (int n = 0; n < work->rig->node_count; n++) {
        for (int k = 0; k < 3; k++) {
            double inertia = -share * work->weight[n] * work->rate[3 * n + k];
            change = fmax(change, fabs(inertia - work->added[3 * n + k]));
            work->added[3 * n + k] = inertia;
        }
    }
    return change > SAME_INERTIA;
}

void gtl_friction(gtl_work *work, const gtl_case *which, gtl_state *state)
{
    int direction = gtl_case_direction(which->kind) < 0 ? -1 : 1;
    first_senses(work, which, direction);
    revise_inertia(work, which->kind);
    if (out_of_range(work, state)) return;
    /* Each round turns a stop at least, and none more than three times; inertia settles in a few. */
    int rounds = 3 * work->rig->run_count + INERTIA_ROUNDS;
    bool changed = true;
    while (changed && rounds-- > 0) {
        if (!arrive(work, state)) return;
        changed = revise_senses(work, which, state, direction);
        changed |= revise_inertia(work, which->kind);
    }
    if (changed)
        gtl_forbid(state, "no steady motion was found: the bodies' inertia moves them about");
    else
        look_at_effort(work, which, state);
}
