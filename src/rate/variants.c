/* variants.c - one case of a rig and all that it may come to instead: stops that friction may hold either
 * way, and other places near the drawing. The report prints the first state; every demand takes the worst of
 * all. */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

typedef struct trial {
    gtl_bench *bench;
    const gtl_rig *rig;
    gtl_outcome *outcome;
    gtl_state *state;   /* of the variant being tried */
    gtl_forces forces;  /* likewise */
    signed char *sense; /* one a run */
    bool *forced;       /* one a run */
    int *open;          /* the runs that are tried both ways */
    int open_count;
    const double *place; /* where the search begins, NULL: the drawing */
} trial;

static bool begin_trial(trial *t, gtl_bench *bench, gtl_outcome *outcome)
{
    size_t runs = (size_t)bench->rig->run_count + 1;
    *t = (trial){.bench = bench, .rig = bench->rig, .outcome = outcome};
    t->state = gtl_state_new(bench->rig);
    t->sense = calloc(runs, sizeof *t->sense);
    t->forced = calloc(runs, sizeof *t->forced);
    t->open = calloc(runs, sizeof *t->open);
    bool forces = gtl_forces_begin(&t->forces, bench);
    return t->state && t->sense && t->forced && t->open && forces;
}

static void end_trial(trial *t)
{
    gtl_state_free(t->state);
    gtl_forces_end(&t->forces);
    free(t->sense);
    free(t->forced);
    free(t->open);
}

/* How bad a demand is, whatever its size: over the rating, of no known rating, within it. */
static int gravity_of(double demand, double keeps, double straight)
{
    if (isnan(keeps)) return 1;
    return keeps == 0 || demand / keeps > straight * (1 + GTL_UTILISATION_SLACK) ? 2 : 0;
}

bool gtl_is_worse(double demand, double keeps, double so_far, double kept, double straight)
{
    if (isnan(demand) || isnan(so_far)) return !isnan(demand);
    int now = gravity_of(demand, keeps, straight);
    int before = gravity_of(so_far, kept, straight);
    if (now != before) return now > before;
    if (keeps == 0 || kept == 0) return keeps == 0 && (kept != 0 || demand > so_far);
    return now == 1 ? demand > so_far : demand / keeps > so_far / kept;
}

void gtl_take_worst(gtl_outcome *outcome, const gtl_demands *other, const gtl_bench *bench)
{
    for (int i = 0; i < bench->component_count; i++) {
        outcome->push[i] = fmax(outcome->push[i], other->push[i]); /* fmax passes over a NaN */
        if (!gtl_is_worse(other->demand[i], other->keeps[i], outcome->demand[i], outcome->keeps[i],
                          bench->straight[i]))
            continue;
        outcome->demand[i] = other->demand[i];
        outcome->keeps[i] = other->keeps[i];
        outcome->angle[i] = other->angle[i];
    }
}

static void take_forces(gtl_outcome *outcome, const gtl_forces *forces, const gtl_bench *bench)
{
    gtl_take_worst(outcome, &(gtl_demands){forces->demand, forces->push, forces->keeps, forces->angle},
                   bench);
}

/* Work one variant and let its demands count. One that cannot be demands nothing; one that has no answer is
 * told. */
static void try_variant(trial *t)
{
    gtl_case which = {.kind = t->outcome->kind, .sense = t->sense, .forced = t->forced, .begin = t->place};
    if (gtl_solve(t->rig, &which, t->state) != GTL_OK) {
        t->outcome->every_combination = false;
        return;
    }
    if (!t->state->possible) return;
    gtl_find_forces(t->bench, t->outcome->kind, t->state, &t->forces);
    take_forces(t->outcome, &t->forces, t->bench);
    t->outcome->variants++;
}

/* Each of up to four stops equal, one way and the other: 3^k variants, the first of which is all equal. */
static void try_combinations(trial *t)
{
    int combinations = 1;
    for (int i = 0; i < t->open_count; i++) combinations *= 3;
    for (int c = 1; c < combinations; c++) {
        int rest = c;
        for (int i = 0; i < t->open_count; i++, rest /= 3)
            t->sense[t->open[i]] = (signed char)(rest % 3 == 2 ? -1 : rest % 3);
        try_variant(t);
    }
}

/* Too many to combine: each alone both ways, and all one way. */
static void try_singly(trial *t)
{
    t->outcome->every_combination = false;
    for (signed char way = -1; way <= 1; way = (signed char)(way + 2)) {
        for (int i = 0; i < t->open_count; i++) t->sense[t->open[i]] = way;
        try_variant(t);
        for (int i = 0; i < t->open_count; i++) {
            for (int k = 0; k < t->open_count; k++) t->sense[t->open[k]] = 0;
            t->sense[t->open[i]] = way;
            try_variant(t);
        }
    }
}

/* Stops without friction hold nothing: there is nothing to try. */
static bool has_friction(const gtl_thing *thing)
{
    if (!thing->friction_stated) return false;
    return isnan(thing->friction) ? thing->efficiency < 1 : thing->friction > 0;
}

static void find_open(trial *t, const gtl_state *state)
{
    t->open_count = 0;
    for (int r = 0; r < t->rig->run_count; r++) {
        t->sense[r] = 0;
        t->forced[r] = state->undecided[r] && has_friction(&t->rig->things[t->rig->runs[r].thing]);
        if (t->forced[r]) t->open[t->open_count++] = r;
    }
}

static void try_open_stops(trial *t)
{
    if (t->open_count == 0) return;
    if (t->open_count <= GTL_MOST_COMBINED)
        try_combinations(t);
    else
        try_singly(t);
}

/* Another place near the drawing: its own state first, then its own undecided stops. */
static void try_place(trial *t, const double *place)
{
    memset(t->forced, 0, (size_t)t->rig->run_count * sizeof *t->forced);
    t->place = place;
    try_variant(t);
    if (t->state->status != GTL_OK || !t->state->possible) return;
    find_open(t, t->state);
    try_open_stops(t);
}

/* With friction as in raise; what that leaves undecided holds for the case as a whole. A jam that cannot be
 * worked with its friction is not worked. */
static void try_jam_with_friction(trial *t, const double *place)
{
    t->place = place;
    try_variant(t);
    t->outcome->possible = t->state->status == GTL_OK && t->state->possible;
    if (t->outcome->possible)
        memcpy(t->outcome->state->undecided, t->state->undecided,
               (size_t)t->rig->run_count * sizeof *t->state->undecided);
    else
        memcpy(t->outcome->state->reason, t->state->reason, sizeof t->state->reason);
}

static void describe(const gtl_rig *rig, const gtl_bench *bench, gtl_outcome *outcome)
{
    const gtl_state *state = outcome->state;
    bool slow = outcome->kind <= GTL_LOWER; /* elsewhere the effort moves or holds more than the weights */
    if (!outcome->possible || rig->hand < 0) return;
    outcome->velocity_ratio = state->velocity_ratio;
    if (!slow || !(state->effort > GTL_IDLE_SHARE * bench->force)) return;
    outcome->estimated_advantage = gtl_lifted_weight(rig) / state->effort;
    if (outcome->kind != GTL_RAISE || !(state->velocity_ratio > 0)) return;
    double out = 0;
    for (int n = 0; n < rig->node_count; n++)
        if (!rig->nodes[n].fixed) out += rig->nodes[n].weight * state->rise[3 * n + rig->dim - 1];
    for (int p = 0; p < rig->piece_count; p++)
        if (rig->pieces[p].rule == GTL_PULLED)
            out += rig->things[rig->pieces[p].hand].pull * state->payout[p];
    outcome->efficiency = out / (state->effort * state->velocity_ratio);
}

/* Room for what the case comes to; nothing is demanded yet. */
static bool make_outcome(const gtl_bench *bench, gtl_outcome *outcome)
{
    size_t components = (size_t)bench->component_count + 1;
    outcome->rig = bench->rig;
    outcome->reason = "";
    outcome->velocity_ratio = outcome->estimated_advantage = outcome->efficiency = NAN;
    outcome->every_combination = true;
    outcome->places = 1;
    outcome->band = (gtl_band){.rigs = 1, .shifts = -1, .undecided = -1};
    outcome->state = gtl_state_new(bench->rig);
    outcome->demand = calloc(components, sizeof *outcome->demand);
    outcome->push = calloc(components, sizeof *outcome->push);
    outcome->keeps = calloc(components, sizeof *outcome->keeps);
    outcome->angle = calloc(components, sizeof *outcome->angle);
    bool forces = gtl_forces_begin(&outcome->forces, bench);
    if (!(outcome->state && outcome->demand && outcome->push && outcome->keeps && outcome->angle && forces))
        return false;
    for (int i = 0; i < bench->component_count; i++) {
        outcome->demand[i] = outcome->push[i] = outcome->angle[i] = NAN;
        outcome->keeps[i] = 1;
    }
    return true;
}

static bool vary(gtl_bench *bench, const double *const *places, int place_count, gtl_outcome *outcome)
{
    trial t;
    bool made = begin_trial(&t, bench, outcome);
    if (made) {
        if (outcome->kind == GTL_JAM) try_jam_with_friction(&t, places[0]);
        t.place = places[0];
        find_open(&t, outcome->state);
        try_open_stops(&t);
        for (int i = 1; i < place_count; i++) try_place(&t, places[i]);
    }
    end_trial(&t);
    return made;
}

gtl_status gtl_work_case(gtl_bench *bench, const double *const *places, int place_count, gtl_outcome *outcome,
                         gtl_sheet *sheet)
{
    if (!make_outcome(bench, outcome)) return GTL_NO_MEMORY;
    gtl_state *state = outcome->state;
    /* A jam is at its worst without friction nearly everywhere: that is printed, the other is a variant. */
    gtl_case which = {.kind = outcome->kind, .begin = places[0], .frictionless = outcome->kind == GTL_JAM};
    gtl_status status = gtl_solve(bench->rig, &which, state);
    outcome->reason = state->reason;
    /* Where the slow cases have an answer, a case beyond them that has none is told, and speaks against the
     * rig. */
    if (status == GTL_NO_ANSWER && outcome->kind > GTL_LOWER) return GTL_OK;
    if (status != GTL_OK) {
        memcpy(sheet->reason, state->reason, sizeof sheet->reason);
        sheet->blame = state->blame;
        return state->status;
    }
    outcome->possible = state->possible;
    outcome->places = place_count;
    if (!state->possible) return GTL_OK;
    gtl_find_forces(bench, outcome->kind, state, &outcome->forces);
    take_forces(outcome, &outcome->forces, bench);
    outcome->variants = 1;
    describe(bench->rig, bench, outcome);
    return vary(bench, places, place_count, outcome) ? GTL_OK : GTL_NO_MEMORY;
}

void gtl_outcome_end(gtl_outcome *outcome)
{
    gtl_state_free(outcome->state);
    gtl_forces_end(&outcome->forces);
    free(outcome->demand);
    free(outcome->push);
    free(outcome->keeps);
    free(outcome->angle);
    free(outcome->part);
    free(outcome->loose);
    gtl_band_end(&outcome->band);
    if (outcome->checked) gtl_outcome_end(outcome->checked);
    free(outcome->checked);
    gtl_drop_free(outcome->caught);
    gtl_rig_free(outcome->own_rig);
    *outcome = (gtl_outcome){0};
}
