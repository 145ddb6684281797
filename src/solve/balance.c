/* balance.c - the equations: force balance of every free coordinate, one row a piece, and their exact
 * derivatives.
 *
 * Along a piece the tension of part k is T_k = t exp(ln_k - ln_g), where ln rises by the contact's log at
 * each run in its sense and g is the part where it is greatest: t never overflows, whatever the friction. Its
 * derivative by the coordinates is carried along the walk, so that 10,000 sheaves on two blocks stay linear.
 */
#include "solve/work.h"
#include <math.h>
#include <string.h>

/* On every diagonal of the matrix, never of the residual: no step is ever singular, bodies that nothing holds
 * sideways stay put, and singularity is judged afterwards instead of met. */
#define REGULAR 1e-11

void gtl_measure(gtl_work *work)
{
    for (int p = 0; p < work->rig->piece_count; p++) {
        const gtl_plan *plan = &work->plans[p];
        const int *node = work->walk_node + plan->first + p;
        double length = 0;
        for (int i = 0; i < plan->count; i++) {
            double *unit = work->unit + 3 * (plan->first + i);
            const double *from = work->x + 3 * node[i];
            const double *to = work->x + 3 * node[i + 1];
            double x = to[0] - from[0];
            double y = to[1] - from[1];
            double z = to[2] - from[2];
            double blur = work->smooth > 0 ? work->smooth * work->kept[p] / plan->count : 0;
            double span = sqrt(x * x + y * y + z * z + blur * blur);
            unit[0] = x / span;
            unit[1] = y / span;
            unit[2] = z / span;
            work->span[plan->first + i] = span;
            length += span;
        }
        work->length[p] = length;
    }
}

/* Unit vectors that lead away from the run before part i: back along the part before, on along this one. */
static void away(const gtl_work *work, int i, double back[3], const double **on)
{
    for (int k = 0; k < 3; k++) back[k] = -work->unit[3 * (i - 1) + k];
    *on = work->unit + 3 * i;
}

/* Whether friction does anything at the run before part i. */
static bool rubs(const gtl_work *work, int i)
{
    int run = work->walk_run[i];
    return work->share > 0 && work->sense[run] != 0 && work->contact[run] > 0;
}

/* Log of the tensions at the run before part i, in the run's sense and the share in force; its slope is kept.
 */
static double run_log(gtl_work *work, int i)
{
    int run = work->walk_run[i];
    double back[3];
    const double *on;
    away(work, i, back, &on);
    double signed_share = work->share * work->sense[run];
    double log = gtl_contact_log(work, run, back, on, &work->log_slope[i]);
    work->log_slope[i] *= signed_share;
    return log * signed_share;
}

static void find_ratios(gtl_work *work, int p)
{
    const gtl_plan *plan = &work->plans[p];
    double log = 0;
    double most = 0;
    work->greatest[p] = 0;
    work->log_ratio[plan->first] = 0;
    for (int i = plan->first + 1; i < plan->first + plan->count; i++) {
        work->log_slope[i] = 0;
        if (rubs(work, i)) log += run_log(work, i);
        work->log_ratio[i] = log;
        if (log > most) {
            most = log;
            work->greatest[p] = i - plan->first;
        }
    }
}

double gtl_part_tension(const gtl_work *work, int piece, int index)
{
    const gtl_plan *plan = &work->plans[piece];
    double most = work->log_ratio[plan->first + work->greatest[piece]];
    return work->t[piece] * exp(work->log_ratio[plan->first + index] - most);
}

/* Add to work->gradient, by local coordinate, the derivative of the log at the run before part i, times
 * `factor`. s = |a + b|/2, so ds = (a + b).(da + db)/(4 s), and a unit vector turns only by what is square to
 * it. */
static void add_gradient(gtl_work *work, int p, int i, double factor)
{
    double slope = work->log_slope[i];
    if (slope == 0) return;
    double back[3];
    const double *on;
    away(work, i, back, &on);
    double sum[3];
    double square = 0;
    double by_back = 0;
    double by_on = 0;
    for (int k = 0; k < 3; k++) {
        sum[k] = back[k] + on[k];
        square += sum[k] * sum[k];
        by_back += sum[k] * back[k];
        by_on += sum[k] * on[k];
    }
    double scale = factor * slope / (2 * sqrt(square)); /* 4 s = 2 |a + b| */
    const int *local = work->walk_local + 3 * (i + p);
    for (int k = 0; k < 3; k++) {
        double before = scale * (sum[k] - by_back * back[k]) / work->span[i - 1];
        double after = scale * (sum[k] - by_on * on[k]) / work->span[i];
        if (local[k - 3] >= 0) work->gradient[local[k - 3]] += before;
        if (local[k] >= 0) work->gradient[local[k]] -= before + after;
        if (local[k + 3] >= 0) work->gradient[local[k + 3]] += after;
    }
}

/* The forces of part i on the stops at its ends, and how they change with its direction and its tension. */
static void add_part(gtl_work *work, int p, int i, double tension, double share)
{
    const gtl_plan *plan = &work->plans[p];
    const int *dof = work->local_dof + plan->first_local;
    const double *unit = work->unit + 3 * i;
    double *values = work->matrix.values;
    double stiff = tension / work->span[i];
    for (int end = 0; end < 2; end++) {
        const int *local = work->walk_local + 3 * (i + p + end);
        const int *other = work->walk_local + 3 * (i + p + 1 - end);
        double toward = end == 0 ? 1 : -1;
        for (int k = 0; k < 3; k++) {
            if (local[k] < 0) continue;
            work->residual[dof[local[k]]] += toward * tension * unit[k];
            values[plan->tension_place[local[k]]] += toward * share * unit[k];
            int *places = plan->force_place + local[k] * plan->locals;
            for (int m = 0; m < 3; m++) {
                double turn = stiff * ((k == m) - unit[k] * unit[m]);
                if (local[m] >= 0) values[places[local[m]]] -= turn;
                if (other[m] >= 0) values[places[other[m]]] += turn;
            }
        }
    }
}

/* How the forces of part i change because friction's ratio does: the gradient holds d ln_i - d ln_g. */
static void add_ratio_turn(gtl_work *work, int p, int i, double tension)
{
    const gtl_plan *plan = &work->plans[p];
    const double *unit = work->unit + 3 * i;
    for (int end = 0; end < 2; end++) {
        const int *local = work->walk_local + 3 * (i + p + end);
        for (int k = 0; k < 3; k++) {
            if (local[k] < 0) continue;
            double pull = (end == 0 ? tension : -tension) * unit[k];
            int *places = plan->force_place + local[k] * plan->locals;
            for (int m = 0; m < plan->locals; m++) work->matrix.values[places[m]] += pull * work->gradient[m];
        }
    }
}

static void add_length_row(gtl_work *work, int p)
{
    const gtl_plan *plan = &work->plans[p];
    for (int i = plan->first; i < plan->first + plan->count; i++) {
        const int *local = work->walk_local + 3 * (i + p);
        for (int k = 0; k < 3; k++) {
            double unit = work->unit[3 * i + k];
            if (local[k] >= 0) work->matrix.values[plan->row_place[local[k]]] -= unit;
            if (local[k + 3] >= 0) work->matrix.values[plan->row_place[local[k + 3]]] += unit;
        }
    }
}

/* The pull at the hand is the last part's tension; the gradient holds d ln_last - d ln_g. */
static double add_pull_row(gtl_work *work, int p, double last)
{
    const gtl_plan *plan = &work->plans[p];
    work->matrix.values[plan->own_place] += exp(work->log_ratio[plan->first + plan->count - 1] -
                                                work->log_ratio[plan->first + work->greatest[p]]);
    for (int m = 0; m < plan->locals; m++)
        work->matrix.values[plan->row_place[m]] += last * work->gradient[m];
    return last - work->pull[p];
}

static double add_row(gtl_work *work, int p, double last)
{
    const gtl_plan *plan = &work->plans[p];
    double soft = work->stretch * work->kept[p];
    switch (work->row[p]) {
    case GTL_ROW_LENGTH:
        add_length_row(work, p);
        return work->length[p] - work->kept[p];
    case GTL_ROW_ELASTIC:
        add_length_row(work, p);
        work->matrix.values[plan->own_place] -= soft;
        return work->length[p] - work->kept[p] - soft * work->t[p];
    case GTL_ROW_PULL:
        return add_pull_row(work, p, last);
    case GTL_ROW_HEIGHT:
        work->matrix.values[plan->height_place] += 1;
        return work->x[3 * work->rig->things[work->rig->load].node + work->rig->dim - 1] - work->height;
    case GTL_ROW_SLACK:
        break;
    }
    work->matrix.values[plan->own_place] += 1;
    return work->t[p];
}

static void balance_piece(gtl_work *work, int p)
{
    const gtl_plan *plan = &work->plans[p];
    find_ratios(work, p);
    bool turns = false;
    for (int i = plan->first + 1; i < plan->first + plan->count; i++) turns |= rubs(work, i);
    memset(work->gradient, 0, (size_t)plan->locals * sizeof *work->gradient);
    for (int i = plan->first + 1; turns && i <= plan->first + work->greatest[p]; i++)
        add_gradient(work, p, i, -1);
    double tension = 0;
    double most = work->log_ratio[plan->first + work->greatest[p]];
    for (int i = plan->first; i < plan->first + plan->count; i++) {
        double share = turns ? exp(work->log_ratio[i] - most) : 1;
        tension = work->t[p] * share;
        if (i > plan->first && turns) add_gradient(work, p, i, 1);
        add_part(work, p, i, tension, share);
        if (turns) add_ratio_turn(work, p, i, tension);
    }
    work->residual[work->dofs + p] = add_row(work, p, tension);
}

/* A caught load keeps its height; what it takes to catch it is whatever its balance there lacks. */
static void catch_load(gtl_work *work)
{
    gtl_matrix *matrix = &work->matrix;
    int row = work->height_dof;
    for (int i = 0; i < matrix->starts[matrix->order]; i++)
        if (matrix->rows[i] == row) matrix->values[i] = 0;
    matrix->values[matrix->diagonal[row]] = 1;
    work->caught = -work->residual[row];
    work->residual[row] =
        work->x[3 * work->rig->things[work->rig->load].node + work->rig->dim - 1] - work->height;
}

void gtl_balance(gtl_work *work)
{
    const gtl_rig *rig = work->rig;
    work->fresh = false;
    gtl_matrix_clear(&work->matrix);
    for (int i = 0; i < work->unknowns; i++) {
        work->matrix.values[work->matrix.diagonal[i]] = -REGULAR;
        work->residual[i] = 0;
    }
    for (int n = 0; n < rig->node_count; n++) {
        int height = work->dof[3 * n + rig->dim - 1];
        if (height >= 0) work->residual[height] = -work->weight[n];
    }
    for (int i = 0; i < 3 * rig->node_count; i++)
        if (work->dof[i] >= 0) work->residual[work->dof[i]] += work->share * work->added[i];
    gtl_measure(work);
    for (int p = 0; p < rig->piece_count; p++) balance_piece(work, p);
    if (work->jammed) catch_load(work);
}

double gtl_worst(const gtl_work *work)
{
    double worst = 0;
    for (int i = 0; i < work->unknowns; i++) {
        double size = fabs(work->residual[i]);
        if (!(size <= worst)) worst = size; /* NaN is kept */
        if (isnan(worst)) return NAN;
    }
    return worst;
}
