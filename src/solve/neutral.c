/* neutral.c - what can turn or shift without any rope running or weight rising: it stays as drawn.
 *
 * No equation holds it, so that rounding would turn it as it likes. Its motion is the null vector of the
 * matrix; how far a displacement goes along that motion is measured blind to shifts of the whole, since what
 * it hangs on may move. */
#include "solve/work.h"
#include <math.h>

/* Of a motion scaled to 1: what takes part. */
#define TAKES_PART 0.05
/* What stays as drawn may turn by this, over the rig's size. */
#define TURNED      1e-7
#define MOST_ROUNDS 8

static bool takes_part(const gtl_work *work, int node)
{
    const double *rate = work->rate + 3 * node;
    return fmax(fabs(rate[0]), fmax(fabs(rate[1]), fabs(rate[2]))) >= TAKES_PART;
}

/* Along one axis: the motion of what takes part, less its mean, so that shifting the whole counts for
 * nothing. */
static void centre_turn(gtl_work *work, int axis)
{
    double sum = 0;
    int count = 0;
    for (int pass = 0; pass < 2; pass++) {
        for (int n = 0; n < work->rig->node_count; n++) {
            int dof = work->dof[3 * n + axis];
            if (dof < 0 || !takes_part(work, n)) continue;
            if (pass == 0) sum += work->turn[dof];
            if (pass == 0) count++;
            if (pass == 1) work->turn_by[dof] = work->turn[dof] - (count > 1 ? sum / count : 0);
        }
    }
}

/* Keep the null vector as the motion of what stays anywhere, and what measures it. */
void gtl_keep_turn(gtl_work *work)
{
    double product = 0;
    for (int i = 0; i < work->dofs; i++) {
        work->turn[i] = work->step[i];
        work->turn_by[i] = 0;
    }
    for (int axis = 0; axis < work->rig->dim; axis++) centre_turn(work, axis);
    for (int i = 0; i < work->dofs; i++) product += work->turn[i] * work->turn_by[i];
    for (int i = 0; product > 0 && i < work->dofs; i++) work->turn_by[i] /= product;
}

double gtl_turned(const gtl_work *work, const double *displacement)
{
    double along = 0;
    for (int i = 0; work->neutral_node >= 0 && i < work->dofs; i++)
        along += displacement[i] * work->turn_by[i];
    return along;
}

double gtl_turned_since(gtl_work *work, const double *places)
{
    for (int i = 0; i < 3 * work->rig->node_count; i++)
        if (work->dof[i] >= 0) work->step[work->dof[i]] = work->x[i] - places[i];
    return gtl_turned(work, work->step);
}

bool gtl_turn_back(gtl_work *work, const double *places)
{
    for (int round = 0; work->neutral_node >= 0 && round < MOST_ROUNDS; round++) {
        double along = gtl_turned_since(work, places);
        if (fabs(along) < TURNED) return true;
        for (int i = 0; i < 3 * work->rig->node_count; i++)
            if (work->dof[i] >= 0) work->x[i] -= along * work->turn[work->dof[i]];
        if (!gtl_settle(work)) return false;
    }
    return true;
}
