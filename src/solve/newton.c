/* newton.c - Newton's method on the balance, with steps kept short enough to trust the linear picture. */
#include "solve/work.h"
#include <math.h>
#include <string.h>

#define MOST_STEPS 15
/* Residual that one more step would not better. */
#define LAST_DIGIT  1e-15
#define MOST_ROUNDS 8
/* A step moves nothing further than this share of the rig's size ... */
#define LONGEST_STEP 0.3
/* ... leaves every part this share of its length ... */
#define LEAST_SPAN 0.2
/* ... and turns none past 100 degrees. */
#define LEAST_COSINE (-0.17)
#define LEAST_FACTOR 1e-7
/* The residual has to fall by this share of what the linear picture promises. */
#define DESCENT 1e-4
/* A line this much longer than it is drawn begins slack; what is less may be the drawing's rounding. */
#define DRAWN_SLACK 1.02
/* A slack line is taken back when it is longer than it may be by this share, of itself and of the rig. */
#define TOO_LONG 1e-9

double gtl_random(gtl_work *work)
{
    /* Knuth's MMIX linear congruential generator, constants from memory; any would do. */
    work->random = work->random * 6364136223846793005ULL + 1442695040888963407ULL;
    return (double)(work->random >> 11) / 4503599627370496.0 - 1;
}

void gtl_keep(const gtl_work *work, gtl_snapshot *snapshot)
{
    size_t pieces = (size_t)work->rig->piece_count;
    memcpy(snapshot->x, work->x, 3 * (size_t)work->rig->node_count * sizeof *work->x);
    memcpy(snapshot->t, work->t, pieces * sizeof *work->t);
    memcpy(snapshot->row, work->row, pieces * sizeof *work->row);
}

void gtl_restore(gtl_work *work, const gtl_snapshot *snapshot)
{
    size_t pieces = (size_t)work->rig->piece_count;
    memcpy(work->x, snapshot->x, 3 * (size_t)work->rig->node_count * sizeof *work->x);
    memcpy(work->t, snapshot->t, pieces * sizeof *work->t);
    memcpy(work->row, snapshot->row, pieces * sizeof *work->row);
    work->fresh = false;
}

static double norm(const gtl_work *work)
{
    double sum = 0;
    for (int i = 0; i < work->unknowns; i++) sum += work->residual[i] * work->residual[i];
    return sqrt(sum);
}

/* Put the state `factor` of the step away from the one kept. */
static void move(gtl_work *work, double factor)
{
    int coordinates = 3 * work->rig->node_count;
    for (int i = 0; i < coordinates; i++)
        work->x[i] = work->before_step.x[i] + (work->dof[i] < 0 ? 0 : factor * work->step[work->dof[i]]);
    for (int p = 0; p < work->rig->piece_count; p++)
        work->t[p] = work->before_step.t[p] + factor * work->step[work->dofs + p];
}

/* Whether the parts survive a step: none shrunk to nothing, none turned about. */
static bool gentle(const gtl_work *work, double factor)
{
    for (int p = 0; p < work->rig->piece_count; p++) {
        const gtl_plan *plan = &work->plans[p];
        for (int i = plan->first; i < plan->first + plan->count; i++) {
            const int *from = work->dof + 3 * work->walk_node[i + p];
            const int *to = work->dof + 3 * work->walk_node[i + p + 1];
            double square = 0;
            double along = 0;
            for (int k = 0; k < 3; k++) {
                double turn = (to[k] < 0 ? 0 : work->step[to[k]]) - (from[k] < 0 ? 0 : work->step[from[k]]);
                double now = work->unit[3 * i + k] * work->span[i] + factor * turn;
                square += now * now;
                along += now * work->unit[3 * i + k];
            }
            double span = sqrt(square);
            if (span < LEAST_SPAN * work->span[i] || along < LEAST_COSINE * span) return false;
        }
    }
    return true;
}

static double longest_factor(const gtl_work *work)
{
    double most = 0;
    for (int i = 0; i < work->dofs; i++) most = fmax(most, fabs(work->step[i]));
    double factor = most > LONGEST_STEP ? LONGEST_STEP / most : 1;
    while (factor > LEAST_FACTOR && !gentle(work, factor)) factor /= 2;
    return factor;
}

/* What can turn or shift freely stays as it is: no step goes that way. */
static void keep_turn_out(gtl_work *work)
{
    double along = gtl_turned(work, work->step);
    for (int i = 0; along != 0 && i < work->dofs; i++) work->step[i] -= along * work->turn[i];
}

static bool find_step(gtl_work *work)
{
    work->solves++;
    work->pivot_ratio = gtl_matrix_factor(&work->matrix);
    double sum = 0;
    for (int i = 0; i < work->unknowns; i++) work->step[i] = -work->residual[i];
    gtl_matrix_solve(&work->matrix, work->step);
    keep_turn_out(work);
    for (int i = 0; i < work->unknowns; i++) sum += work->step[i] * 0.0;
    return sum == 0;
}

/* One step, halved until the residual falls. */
static bool advance(gtl_work *work)
{
    if (!find_step(work)) return false;
    double before = norm(work);
    gtl_keep(work, &work->before_step);
    double factor = longest_factor(work);
    while (factor > LEAST_FACTOR) {
        move(work, factor);
        gtl_balance(work);
        if (norm(work) <= (1 - DESCENT * factor) * before) return true;
        factor /= 2;
    }
    return false;
}

/* One step more than arriving needs, for the last digits; undone where rounding has the last word. */
static void polish(gtl_work *work)
{
    double before = norm(work);
    if (before <= LAST_DIGIT || !find_step(work)) return;
    gtl_keep(work, &work->before_step);
    move(work, 1);
    gtl_balance(work);
    if (norm(work) <= before) return;
    move(work, 0);
    gtl_balance(work);
}

bool gtl_newton(gtl_work *work)
{
    work->smooth = 0;
    gtl_balance(work);
    for (int step = 0; gtl_worst(work) > GTL_ARRIVED; step++)
        if (step == MOST_STEPS || !advance(work)) return false;
    if (isnan(gtl_worst(work))) return false;
    polish(work);
    return true;
}

double gtl_sound(gtl_work *work)
{
    gtl_balance(work);
    work->solves++;
    work->pivot_ratio = gtl_matrix_factor(&work->matrix);
    work->fresh = true;
    return work->pivot_ratio;
}

bool gtl_pushes(const gtl_work *work, bool driven_too)
{
    for (int p = 0; p < work->rig->piece_count; p++) {
        bool rope = work->rig->pieces[p].rule != GTL_STRUT && (driven_too || p != work->rig->driven);
        if (rope && !(work->t[p] >= -GTL_NO_PUSH)) return true;
    }
    return false;
}

bool gtl_drawn_slack(const gtl_work *work, int piece)
{
    return work->kept[piece] > DRAWN_SLACK * work->length[piece];
}

bool gtl_goes_along(const gtl_work *work, int piece)
{
    const gtl_plan *plan = &work->plans[piece];
    const gtl_node *nodes = work->rig->nodes;
    int first = work->walk_node[plan->first + piece],
        last = work->walk_node[plan->first + piece + plan->count];
    return work->rig->pieces[piece].rule == GTL_TIED && (nodes[first].limp || nodes[last].limp);
}

/* Let go every tied rope that pushes, take back every slack one that is too long; whether anything changed.
 */
static bool change_slack(gtl_work *work)
{
    bool changed = false;
    for (int p = 0; p < work->rig->piece_count; p++) {
        if (work->rig->pieces[p].rule != GTL_TIED) continue;
        bool slack = work->row[p] == GTL_ROW_SLACK;
        bool let_go = !slack && work->t[p] < -GTL_NO_PUSH;
        bool take_back = slack && work->length[p] > work->kept[p] + TOO_LONG * (1 + work->kept[p]);
        if (let_go) work->row[p] = GTL_ROW_SLACK;
        if (let_go) work->t[p] = 0;
        if (take_back) work->row[p] = GTL_ROW_LENGTH;
        changed |= let_go || take_back;
    }
    return changed;
}

bool gtl_settle(gtl_work *work)
{
    for (int round = 0; round < MOST_ROUNDS; round++) {
        if (!gtl_newton(work)) return false;
        /* A singular matrix gives an arbitrary split: nothing may be let go by it. */
        if (gtl_sound(work) < GTL_SINGULAR && gtl_pushes(work, false)) return true;
        if (!change_slack(work)) return true;
    }
    return false;
}
