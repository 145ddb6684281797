/* solve.c - one case of one rig, step by step: shape, motion, friction, audit. */
#include "solve/work.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void fill_nan(double *values, int count)
{
    for (int i = 0; i < count; i++) values[i] = NAN;
}

/* No number survives from the state before. */
static void blank(const gtl_rig *rig, gtl_state *state)
{
    fill_nan(state->at, 3 * rig->node_count);
    fill_nan(state->rise, 3 * rig->node_count);
    fill_nan(state->added, 3 * rig->node_count);
    fill_nan(state->tension, rig->part_count);
    fill_nan(state->piece_length, rig->piece_count);
    fill_nan(state->kept_length, rig->piece_count);
    fill_nan(state->payout, rig->piece_count);
    fill_nan(state->flow, rig->run_count);
    memset(state->slack, 0, (size_t)rig->piece_count * sizeof *state->slack);
    memset(state->sense, 0, (size_t)rig->run_count * sizeof *state->sense);
    memset(state->undecided, 0, (size_t)rig->run_count * sizeof *state->undecided);
    state->effort = state->velocity_ratio = state->residual = state->pivot_ratio = NAN;
    state->neutral = state->poorly_conditioned = state->runs_away = false;
    state->held_by_friction = state->would_push = false;
    state->neutral_node = -1;
    state->linear_solves = state->blame = 0;
    state->reason[0] = '\0';
    state->possible = true;
    state->status = GTL_OK;
}

gtl_state *gtl_state_new(const gtl_rig *rig)
{
    gtl_state *state = calloc(1, sizeof *state);
    if (!state) return NULL;
    size_t nodes = (size_t)rig->node_count + 1;
    size_t parts = (size_t)rig->part_count + 1;
    size_t pieces = (size_t)rig->piece_count + 1;
    size_t runs = (size_t)rig->run_count + 1;
    state->at = calloc(3 * nodes, sizeof *state->at);
    state->rise = calloc(3 * nodes, sizeof *state->rise);
    state->added = calloc(3 * nodes, sizeof *state->added);
    state->tension = calloc(parts, sizeof *state->tension);
    state->piece_length = calloc(pieces, sizeof *state->piece_length);
    state->kept_length = calloc(pieces, sizeof *state->kept_length);
    state->payout = calloc(pieces, sizeof *state->payout);
    state->slack = calloc(pieces, sizeof *state->slack);
    state->sense = calloc(runs, sizeof *state->sense);
    state->undecided = calloc(runs, sizeof *state->undecided);
    state->flow = calloc(runs, sizeof *state->flow);
    state->scratch = calloc(3 * nodes, sizeof *state->scratch);
    state->work = gtl_work_new(rig);
    bool made = state->at && state->rise && state->added && state->tension && state->piece_length &&
                state->kept_length && state->payout && state->slack && state->sense && state->undecided &&
                state->flow && state->scratch && state->work;
    if (!made) {
        gtl_state_free(state);
        return NULL;
    }
    blank(rig, state);
    return state;
}

void gtl_state_free(gtl_state *state)
{
    if (!state) return;
    gtl_work_free(state->work);
    void *rooms[] = {state->added,        state->at,          state->rise,   state->tension,
                     state->piece_length, state->kept_length, state->payout, state->slack,
                     state->sense,        state->undecided,   state->flow,   state->scratch};
    for (size_t i = 0; i < sizeof rooms / sizeof *rooms; i++) free(rooms[i]);
    free(state);
}

static void write_nodes(const gtl_work *work, gtl_state *state)
{
    for (int i = 0; i < 3 * work->rig->node_count; i++) {
        state->at[i] = work->x[i] * work->size;
        state->rise[i] = work->rate[i];
        state->added[i] = work->added[i] * work->force;
    }
}

static void write_piece(const gtl_work *work, int p, gtl_state *state)
{
    const gtl_plan *plan = &work->plans[p];
    bool slack = work->row[p] == GTL_ROW_SLACK;
    bool along = gtl_goes_along(work, p) && fabs(work->t[p]) <= GTL_NO_PUSH;
    bool idle = slack || along || (work->row[p] == GTL_ROW_PULL && work->pull[p] == 0);
    for (int i = 0; i < plan->count; i++)
        state->tension[work->walk_part[plan->first + i]] =
            idle ? 0 : gtl_part_tension(work, p, i) * work->force;
    bool keeps = slack || work->row[p] == GTL_ROW_LENGTH;
    state->piece_length[p] = work->length[p] * work->size;
    state->kept_length[p] = keeps ? work->kept[p] * work->size : NAN;
    state->slack[p] = slack;
    state->payout[p] = gtl_payout(work, p);
}

static void write_runs(gtl_work *work, gtl_state *state)
{
    gtl_flows(work, work->flow);
    for (int r = 0; r < work->rig->run_count; r++) {
        bool back = work->rig->pieces[work->rig->runs[r].piece].hand_first;
        state->flow[r] = back ? -work->flow[r] : work->flow[r];
        state->sense[r] = (signed char)(back ? -work->sense[r] : work->sense[r]);
    }
}

static void write_state(gtl_work *work, gtl_state *state)
{
    write_nodes(work, state);
    for (int p = 0; p < work->rig->piece_count; p++) write_piece(work, p, state);
    write_runs(work, state);
    state->pivot_ratio = work->pivot_ratio;
    state->poorly_conditioned = work->pivot_ratio < GTL_POOR && !state->neutral;
    state->linear_solves = work->solves;
    int driven = work->rig->driven;
    if (driven < 0) return;
    state->effort = gtl_part_tension(work, driven, work->plans[driven].count - 1) * work->force;
    state->velocity_ratio = work->jammed ? NAN : -state->payout[driven];
}

/* Hauling that hardly moves the load, or moves it without end, is no hauling. */
static bool hauls(gtl_work *work, gtl_state *state)
{
    const double least = 1e-6;
    if (work->rig->driven < 0) return true;
    double travel = fabs(gtl_payout(work, work->rig->driven));
    if (travel >= least && travel <= 1 / least) return true;
    const gtl_thing *load = &work->rig->things[work->rig->load];
    gtl_refuse(
        state, load->line,
        "`%s` can move while the hauling rope stands still: nothing holds it in place, or the rope that is "
        "hauled does not lift it",
        load->name);
    return false;
}

/* Which stops stay undecided: all where nobody hauls, and those that found no sense. */
static void mark_undecided(const gtl_work *work, const gtl_case *which, gtl_state *state)
{
    bool moving = gtl_case_direction(which->kind) != 0 && !which->frictionless;
    for (int r = 0; r < work->rig->run_count; r++) {
        bool forced = which->forced && which->sense && which->forced[r];
        state->undecided[r] = forced || work->rig->driven < 0 || (moving && work->sense[r] == 0);
    }
}

/* A load that hauling does not lift, and nothing else holds, is no run-away: raising it would take work. With
 * heights alone there is nowhere else for it to rest. */
static bool pulled_down(gtl_work *work, gtl_state *state)
{
    double out = 0; /* work on all weights and known pulls for one unit of lift */
    for (int n = 0; n < work->rig->node_count; n++)
        out += work->weight[n] * work->rate[3 * n + work->rig->dim - 1];
    for (int p = 0; p < work->rig->piece_count; p++) out += work->pull[p] * gtl_payout(work, p);
    if (!(out > 0) || (work->rig->dim > 1 && !gtl_falls(work))) return false;
    const gtl_thing *load = &work->rig->things[work->rig->load];
    gtl_refuse(
        state, load->line,
        "nothing holds `%s`: hauling the rope as it is led does not lift it; lead it over something that "
        "is above the load",
        load->name);
    return true;
}

static void work_case(gtl_work *work, const gtl_case *which, gtl_state *state)
{
    if (!gtl_shape(work, state)) return;
    state->status = GTL_OK;
    state->reason[0] = '\0';
    memset(work->sense, 0, (size_t)work->rig->run_count * sizeof *work->sense);
    gtl_motion(work);
    if (!hauls(work, state)) return;
    state->would_push = state->runs_away;
    /* Of two hands the other one holds it at rest, and this one may have to haul against friction. */
    bool paired = work->rig->driven >= 0 && work->rig->things[work->rig->hand].other >= 0;
    bool moved = paired && gtl_case_direction(which->kind) != 0;
    if (state->runs_away && !moved && pulled_down(work, state)) return;
    if (state->runs_away && gtl_case_direction(which->kind) == 0) {
        state->possible = false;
        snprintf(state->reason, sizeof state->reason,
                 "the load runs away: other weights or pulls lift it, and the hand would have to push");
        return;
    }
    bool without_hand = work->rig->driven < 0;
    bool rubs = gtl_case_direction(which->kind) != 0 || (without_hand && which->forced);
    if (rubs && !which->frictionless) gtl_friction(work, which, state);
    if (which->kind == GTL_JAM && state->status == GTL_OK && state->possible) gtl_jam(work, which, state);
}

int gtl_case_direction(gtl_case_kind kind)
{
    static const int directions[GTL_CASE_KIND_COUNT] = {
        [GTL_RAISE] = 1, [GTL_LOWER] = -1, [GTL_JAM] = 1, [GTL_START] = 1, [GTL_STOP] = -1};
    return directions[kind];
}

double gtl_given_pull(const gtl_thing *hand, gtl_case_kind kind)
{
    if (kind != GTL_JAM) return hand->pull;
    return hand->let_go ? 0 : fmax(hand->limit, hand->pull); /* fmax passes over a NaN */
}

double gtl_hand_pull(const gtl_rig *rig, const gtl_state *state, int hand)
{
    for (int p = 0; p < rig->piece_count; p++) {
        const gtl_piece *piece = &rig->pieces[p];
        if (piece->hand == hand)
            return state->tension[piece->first_part + (piece->hand_first ? 0 : piece->part_count - 1)];
    }
    return NAN;
}

static void audit_state(const gtl_rig *rig, const gtl_case *which, gtl_state *state)
{
    state->residual = gtl_audit(rig, which, state);
    if (state->residual <= GTL_AUDIT_LIMIT) return;
    gtl_refuse(state, 0,
               "the audit of `%s` found the forces out of balance by %.1e of the weight: no answer is given",
               gtl_case_name(which->kind), state->residual);
}

/* Nothing is left of the case before. */
static void start_case(gtl_work *work)
{
    const gtl_rig *rig = work->rig;
    work->jammed = false;
    memset(work->added, 0, 3 * (size_t)rig->node_count * sizeof *work->added);
    for (int p = 0; p < rig->piece_count; p++)
        if (rig->pieces[p].rule == GTL_PULLED)
            work->pull[p] = rig->things[rig->pieces[p].hand].pull / work->force;
}

gtl_status gtl_solve(const gtl_rig *rig, const gtl_case *which, gtl_state *state)
{
    gtl_work *work = state->work;
    blank(rig, state);
    work->random = 1;
    work->neutral_node = -1;
    work->solves = 0;
    work->begin = which->begin;
    start_case(work);
    work_case(work, which, state);
    if (state->status == GTL_OK && state->possible) {
        write_state(work, state);
        mark_undecided(work, which, state);
        audit_state(rig, which, state);
    }
    if (state->status == GTL_OK && state->possible) return GTL_OK;
    gtl_status status = state->status;
    bool possible = state->possible;
    int blame = state->blame;
    bool runs_away = state->runs_away;
    bool held_by_friction = state->held_by_friction;
    bool would_push = state->would_push;
    char reason[GTL_REASON_SIZE];
    memcpy(reason, state->reason, sizeof reason);
    blank(rig, state);
    state->status = status;
    state->possible = possible;
    state->blame = blame;
    state->runs_away = runs_away;
    state->held_by_friction = held_by_friction;
    state->would_push = would_push;
    memcpy(state->reason, reason, sizeof reason);
    return status;
}

double gtl_length_sensitivity(const gtl_rig *rig, gtl_state *state, int *line)
{
    gtl_work *work = state->work;
    *line = -1;
    double most = 0;
    double worst = 0;
    for (int p = 0; p < rig->piece_count; p++) most = fmax(most, fabs(work->t[p]));
    for (int p = 0; p < rig->piece_count && most > 0; p++) {
        if (rig->pieces[p].rule != GTL_TIED || work->row[p] != GTL_ROW_LENGTH) continue;
        for (int i = 0; i < work->unknowns; i++) work->step[i] = 0;
        work->step[work->dofs + p] = 0.01 * work->kept[p];
        gtl_matrix_solve(&work->matrix, work->step);
        for (int k = 0; k < rig->piece_count; k++) {
            double share = fabs(work->step[work->dofs + k]) / most;
            if (!(share > worst)) continue;
            worst = share;
            *line = rig->pieces[p].line;
        }
    }
    return worst;
}
