/* hang.c - where a rig of given lengths hangs, from any drawing.
 *
 * Without friction and with every length given, the potential energy of a rig of ropes is convex: there is
 * one place, and slack lines show by themselves. Ropes stretch a little and only pull; directions blur a
 * little, so that bodies may pass through each other on their way. Both shrink in three stages. The hauled
 * length is corrected until the load is at its height. Method tried on 2,000 rigs; the figures below are what
 * worked there. */
#include "solve/work.h"
#include <math.h>

#define MOST_STEPS    200
#define MOST_ROUNDS   12
#define ARRIVED       1e-7
#define LONGEST_STEP  0.5
#define DESCENT       1e-4
#define ROUNDING      1e-12
#define FIRST_DAMPING 1e-3
#define MOST_DAMPING  1e12
/* Flatter than this, the load's height says nothing of the hauled length: go by BLIND_STEP instead. */
#define FLAT               (-1e-3)
#define BLIND_STEP         0.1
#define NUDGE              1e-6
#define LONGEST_CORRECTION 0.25

static const struct {
    double stretch;
    double smooth;
    bool correct; /* the hauled length, or keep it as drawn */
} stages[] = {{0.3, 0.1, false}, {1e-3, 1e-3, true}, {1e-5, 1e-5, true}};

/* Tensions follow from lengths: a rope pulls by its stretch, a spar pulls or pushes. */
static void stretch_lines(gtl_work *work)
{
    gtl_measure(work);
    for (int p = 0; p < work->rig->piece_count; p++) {
        gtl_piece_rule rule = work->rig->pieces[p].rule;
        double tension = (work->length[p] - work->kept[p]) / (work->stretch * work->kept[p]);
        if (rule == GTL_PULLED) {
            work->row[p] = GTL_ROW_PULL;
            work->t[p] = work->pull[p];
        } else if (rule == GTL_STRUT || tension > 0 || gtl_goes_along(work, p)) {
            work->row[p] = GTL_ROW_ELASTIC;
            work->t[p] = rule == GTL_STRUT ? tension : fmax(tension, 0);
        } else {
            work->row[p] = GTL_ROW_SLACK;
            work->t[p] = 0;
        }
    }
}

static double energy(gtl_work *work)
{
    double sum = 0;
    for (int n = 0; n < work->rig->node_count; n++)
        sum += work->weight[n] * work->x[3 * n + work->rig->dim - 1];
    for (int p = 0; p < work->rig->piece_count; p++) {
        if (work->row[p] == GTL_ROW_PULL) sum += work->pull[p] * work->length[p];
        if (work->row[p] == GTL_ROW_ELASTIC)
            sum += work->t[p] * work->t[p] * work->stretch * work->kept[p] / 2;
    }
    return sum;
}

static double worst_force(const gtl_work *work)
{
    double worst = 0;
    for (int i = 0; i < work->dofs; i++) worst = fmax(worst, fabs(work->residual[i]));
    return worst;
}

/* How the energy changes along the step, at the state as it is. */
static double slope(const gtl_work *work)
{
    double sum = 0;
    for (int i = 0; i < work->dofs; i++) sum -= work->residual[i] * work->step[i];
    return sum;
}

static bool damped_step(gtl_work *work, double damping)
{
    for (int i = 0; i < work->dofs; i++) work->matrix.values[work->matrix.diagonal[i]] -= damping;
    for (int i = 0; i < work->unknowns; i++) work->step[i] = -work->residual[i];
    work->solves++;
    gtl_matrix_factor(&work->matrix);
    gtl_matrix_solve(&work->matrix, work->step);
    double most = 0;
    for (int i = 0; i < work->dofs; i++) most = fmax(most, fabs(work->step[i]));
    for (int i = 0; i < work->dofs; i++)
        if (most > LONGEST_STEP) work->step[i] *= LONGEST_STEP / most;
    return isfinite(slope(work)) && slope(work) < 0;
}

static void take_step(gtl_work *work)
{
    for (int i = 0; i < 3 * work->rig->node_count; i++)
        if (work->dof[i] >= 0) work->x[i] = work->before_step.x[i] + work->step[work->dof[i]];
    stretch_lines(work);
    gtl_balance(work);
}

/* Go down to where forces balance at the stage's stretch and blur. */
static bool descend(gtl_work *work)
{
    double damping = FIRST_DAMPING;
    stretch_lines(work);
    gtl_balance(work);
    for (int step = 0; step < MOST_STEPS; step++) {
        if (worst_force(work) <= ARRIVED) return true;
        double before = energy(work);
        gtl_keep(work, &work->before_step);
        bool downhill = damped_step(work, damping);
        double promised = slope(work);
        if (downhill) take_step(work);
        double change = energy(work) - before;
        bool rounding = fabs(change) <= ROUNDING * (1 + fabs(before)) && fabs(slope(work)) <= -promised / 2;
        if (downhill && (change <= DESCENT * promised || rounding)) {
            damping *= 0.2;
            continue;
        }
        damping *= 5;
        if (damping > MOST_DAMPING) return false;
        gtl_restore(work, &work->before_step);
        gtl_balance(work);
    }
    return false;
}

static double load_height(const gtl_work *work)
{
    return work->x[3 * work->rig->things[work->rig->load].node + work->rig->dim - 1];
}

/* How the load's height changes with the hauled length; 0 where the hauling rope is slack. */
static double height_slope(gtl_work *work)
{
    int driven = work->rig->driven;
    if (work->row[driven] != GTL_ROW_ELASTIC) return 0;
    gtl_sound(work);
    for (int i = 0; i < work->unknowns; i++) work->step[i] = 0;
    work->step[work->dofs + driven] = 1 + work->stretch * work->t[driven];
    gtl_matrix_solve(&work->matrix, work->step);
    return work->step[work->height_dof];
}

/* The hauled length for the next round. [low, high] brackets it: the load is too high at low. */
static double correct(gtl_work *work, double *low, double *high)
{
    double kept = work->kept[work->rig->driven];
    double above = load_height(work) - work->height;
    if (above > 0)
        *low = kept;
    else
        *high = kept;
    double rate = height_slope(work);
    double change = above > 0 ? BLIND_STEP : -BLIND_STEP;
    if (rate < FLAT) change = fmax(-LONGEST_CORRECTION, fmin(LONGEST_CORRECTION, -above / rate));
    double next = kept + change;
    if (next <= *low || next >= *high) next = isfinite(*high) ? (*low + *high) / 2 : kept + change;
    return fmax(next, 1e-9);
}

static bool hang_stage(gtl_work *work, double stretch, double smooth, bool corrects)
{
    work->stretch = stretch;
    work->smooth = smooth;
    if (!corrects || work->rig->driven < 0) return descend(work);
    double low = 0;
    double high = INFINITY;
    for (int round = 0; round < MOST_ROUNDS; round++) {
        if (!descend(work)) return false;
        if (fabs(load_height(work) - work->height) <= fmax(1e-4, stretch)) return true;
        work->kept[work->rig->driven] = correct(work, &low, &high);
    }
    return descend(work);
}

/* A spar balanced on its end is at rest, and no place to stay: off it. */
static void nudge(gtl_work *work)
{
    for (int i = 0; work->spars && i < 3 * work->rig->node_count; i++)
        if (work->dof[i] >= 0) work->x[i] += NUDGE * gtl_random(work);
}

bool gtl_hang(gtl_work *work, gtl_hang_from from)
{
    double share = work->share;
    work->share = 0;
    bool hung = true;
    for (size_t i = from; hung && i < sizeof stages / sizeof *stages; i++) {
        nudge(work);
        hung = hang_stage(work, stages[i].stretch, stages[i].smooth, stages[i].correct);
    }
    work->share = share;
    return hung;
}

bool gtl_falls(gtl_work *work)
{
    int node;
    int driven = work->rig->driven;
    double kept = work->kept[driven];
    gtl_keep(work, &work->hung);
    work->kept[driven] = 1e3; /* so long that it holds nothing within sight */
    work->stretch = stages[GTL_HANG_SOFT].stretch;
    work->smooth = stages[GTL_HANG_SOFT].smooth;
    descend(work);
    bool falls = gtl_farthest(work, &node) > GTL_LOST;
    work->kept[driven] = kept;
    work->smooth = 0;
    gtl_restore(work, &work->hung);
    gtl_balance(work);
    return falls;
}
