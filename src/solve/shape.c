/* shape.c - where the rig hangs without friction: Newton's method from the drawing; where that is not good
 * enough, hanging, which needs no good drawing. */
#include "solve/work.h"
#include <math.h>
#include <string.h>

/* Newton's shape, that only the hand contradicts, is kept if it stays this close to the drawing. */
#define CLOSE 0.02
/* What can turn freely is as drawn within this, over the rig's size. */
#define TURNED      1e-6
#define TURN_ROUNDS 10
/* Tension that Newton starts with: any that is not 0, or ropes in line would hold nothing sideways. */
#define FIRST_TENSION 0.5

double gtl_away(const gtl_work *work, int node)
{
    double square = 0;
    for (int k = 0; k < 3; k++) {
        double off = work->x[3 * node + k] - work->drawn[3 * node + k];
        square += off * off;
    }
    return isnan(square) ? INFINITY : sqrt(square); /* a place that is no number counts as lost */
}

double gtl_farthest(const gtl_work *work, int *node)
{
    double most = 0;
    *node = -1;
    for (int n = 0; n < work->rig->node_count; n++) {
        if (gtl_away(work, n) <= most) continue;
        most = gtl_away(work, n);
        *node = n;
    }
    return most;
}

static void measure_drawing(gtl_work *work)
{
    memcpy(work->x, work->drawn, 3 * (size_t)work->rig->node_count * sizeof *work->x);
    work->smooth = 0;
    gtl_measure(work);
    for (int p = 0; p < work->rig->piece_count; p++) {
        double length = work->rig->pieces[p].length / work->size;
        work->kept[p] = isnan(length) ? work->length[p] : length;
    }
}

static const gtl_row first_rows[] = {[GTL_TIED] = GTL_ROW_LENGTH,
                                     [GTL_PULLED] = GTL_ROW_PULL,
                                     [GTL_DRIVEN] = GTL_ROW_HEIGHT,
                                     [GTL_STRUT] = GTL_ROW_LENGTH};

/* The state that a search begins with. `slack_as_drawn`: lines drawn shorter than they are begin slack.
 * Returns whether any does. */
static bool begin(gtl_work *work, bool slack_as_drawn)
{
    const double *places = work->begin;
    bool any = false;
    measure_drawing(work);
    for (int i = 0; places && i < 3 * work->rig->node_count; i++)
        if (work->dof[i] >= 0) work->x[i] = places[i] / work->size;
    gtl_measure(work);
    for (int p = 0; p < work->rig->piece_count; p++) {
        gtl_piece_rule rule = work->rig->pieces[p].rule;
        bool slack = slack_as_drawn && rule == GTL_TIED && gtl_drawn_slack(work, p);
        work->row[p] = slack ? GTL_ROW_SLACK : first_rows[rule];
        work->t[p] = slack ? 0 : FIRST_TENSION;
        any |= slack;
    }
    work->share = 0;
    return any;
}

void gtl_exact_rows(gtl_work *work)
{
    for (int p = 0; p < work->rig->piece_count; p++) {
        gtl_piece_rule rule = work->rig->pieces[p].rule;
        bool slack = work->row[p] == GTL_ROW_SLACK && rule == GTL_TIED;
        if (!slack) work->row[p] = first_rows[rule];
    }
}

static void keep_shape(gtl_work *work, gtl_state *state)
{
    gtl_keep(work, &work->shape);
    state->neutral_node = work->neutral_node;
    state->neutral = work->neutral_node >= 0;
}

/* The free node that a spar's fall moves most: the higher of its ends. */
static int upper_end(const gtl_work *work, int piece)
{
    int up = work->rig->dim - 1;
    int from = work->walk_node[work->plans[piece].first + piece];
    int to = work->walk_node[work->plans[piece].first + piece + 1];
    if (work->rig->nodes[from].fixed) return to;
    if (work->rig->nodes[to].fixed) return from;
    return work->x[3 * from + up] > work->x[3 * to + up] ? from : to;
}

/* A place that a touch undoes. */
static void refuse_fall(gtl_work *work, gtl_state *state)
{
    int node;
    bool moved = gtl_farthest(work, &node) > 0;
    for (int p = 0; !moved && p < work->rig->piece_count; p++)
        if (work->rig->pieces[p].rule == GTL_STRUT) node = upper_end(work, p);
    const gtl_thing *body = &work->rig->things[work->rig->nodes[node].root];
    gtl_refuse(state, body->line,
               "`%s` falls over when it is touched: stay it, or draw it where it can stand", body->name);
}

/* With a spar a far place is one that the rig fell into, or one of several. */
static bool refuse_far(gtl_work *work, gtl_state *state)
{
    int node;
    if (gtl_farthest(work, &node) <= GTL_FAR) return false;
    if (state->reason[0]) return true; /* what is wrong with the drawn place tells more */
    const gtl_thing *body = &work->rig->things[work->rig->nodes[node].root];
    gtl_refuse(state, body->line,
               "`%s` ends more than a quarter of the rig's size from where it is drawn, and with a spar "
               "that is no answer: draw it closer to where it hangs",
               body->name);
    return true;
}

/* What can turn freely is put back as drawn. Its motion is that of the place where it is, so that it takes a
 * few rounds. */
static bool turn_as_drawn(gtl_work *work, gtl_state *state)
{
    for (int round = 0; round < TURN_ROUNDS && work->neutral_node >= 0; round++) {
        if (fabs(gtl_turned_since(work, work->drawn)) < TURNED) return true;
        if (!gtl_turn_back(work, work->drawn) || gtl_judge(work, state) == GTL_SICK) return false;
    }
    return true;
}

/* Whether the arrived state is an answer; one that is not leaves its reason in `state`, if it is at rest at
 * all. */
static bool acceptable(gtl_work *work, gtl_state *state)
{
    if (gtl_pushes(work, true)) return false;
    if (gtl_judge(work, state) == GTL_SICK || !turn_as_drawn(work, state)) return false;
    if (!work->spars) return true;
    if (refuse_far(work, state)) return false;
    if (gtl_stable(work)) return true;
    refuse_fall(work, state);
    return false;
}

/* The hanging state, made exact. */
static bool hang_from(gtl_work *work, gtl_state *state, gtl_hang_from from)
{
    begin(work, false);
    bool hung = gtl_hang(work, from);
    gtl_keep(work, &work->hung);
    gtl_exact_rows(work);
    return hung && gtl_settle(work) && acceptable(work, state);
}

/* Soft ropes would let a spar fall over on the way: with spars, try stiff ones first. */
static bool hang(gtl_work *work, gtl_state *state)
{
    if (work->spars && hang_from(work, state, GTL_HANG_STIFF)) return true;
    return hang_from(work, state, GTL_HANG_SOFT);
}

/* Newton's method from the drawing: where lines are drawn slack, first with those let go, then with all taut.
 */
static bool newton_from_drawing(gtl_work *work, gtl_state *state, bool *arrived)
{
    bool slack = begin(work, true);
    if (slack && gtl_newton(work) && gtl_settle(work) && acceptable(work, state)) return true;
    begin(work, false);
    *arrived = gtl_newton(work);
    return *arrived && acceptable(work, state);
}

bool gtl_shape(gtl_work *work, gtl_state *state)
{
    int node;
    bool arrived = false;
    if (newton_from_drawing(work, state, &arrived)) {
        keep_shape(work, state);
        return true;
    }
    /* Where the hand would have to push, so would every line between it and the load: that is no other fault.
     */
    int driven = work->rig->driven;
    bool runs_away =
        arrived && driven >= 0 && work->t[driven] < -GTL_NO_PUSH && gtl_judge(work, state) == GTL_GOOD;
    bool drawn_place = runs_away && !gtl_pushes(work, false) && gtl_farthest(work, &node) < CLOSE;
    gtl_keep(work, &work->newton);

    bool hung = hang(work, state);
    bool far = hung && gtl_farthest(work, &node) > GTL_FAR;
    if (hung && !(far && drawn_place)) {
        keep_shape(work, state);
        return true;
    }
    /* With spars a place was found, and refused: then a hand that pushes elsewhere is no answer either. */
    if (runs_away && work->spars && state->reason[0]) return false;
    if (runs_away) {
        gtl_restore(work, &work->newton);
        state->runs_away = true;
        work->neutral_node = -1;
        keep_shape(work, state);
        return true;
    }
    gtl_name_failure(work, state);
    return false;
}
