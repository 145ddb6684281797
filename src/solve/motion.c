/* motion.c - the tangent of a state as the lifted load rises: how fast every part shortens, so how rope runs.
 */
#include "solve/work.h"
#include <math.h>

void gtl_part_rates(gtl_work *work)
{
    for (int p = 0; p < work->rig->piece_count; p++) {
        const gtl_plan *plan = &work->plans[p];
        for (int i = plan->first; i < plan->first + plan->count; i++) {
            const double *from = work->rate + 3 * work->walk_node[i + p];
            const double *to = work->rate + 3 * work->walk_node[i + p + 1];
            double sum = 0;
            for (int k = 0; k < 3; k++) sum += work->unit[3 * i + k] * (to[k] - from[k]);
            work->part_rate[i] = sum;
        }
    }
}

void gtl_motion(gtl_work *work)
{
    if (!work->fresh) gtl_sound(work);
    for (int i = 0; i < work->unknowns; i++) work->step[i] = 0;
    if (work->rig->driven >= 0) work->step[work->dofs + work->rig->driven] = 1;
    gtl_matrix_solve(&work->matrix, work->step);
    for (int i = 0; i < 3 * work->rig->node_count; i++)
        work->rate[i] = work->dof[i] < 0 ? 0 : work->step[work->dof[i]];
    gtl_part_rates(work);
}

double gtl_payout(const gtl_work *work, int piece)
{
    const gtl_plan *plan = &work->plans[piece];
    double sum = 0;
    for (int i = plan->first; i < plan->first + plan->count; i++) sum += work->part_rate[i];
    return sum;
}

double gtl_flows(const gtl_work *work, double *flow)
{
    double most = 0;
    for (int p = 0; p < work->rig->piece_count; p++) {
        const gtl_plan *plan = &work->plans[p];
        double shrunk = 0;
        for (int i = plan->first; i < plan->first + plan->count; i++) {
            if (work->walk_run[i] >= 0) {
                flow[work->walk_run[i]] = shrunk;
                most = fmax(most, fabs(shrunk));
            }
            shrunk -= work->part_rate[i];
        }
        if (work->rig->pieces[p].hand >= 0) most = fmax(most, fabs(shrunk));
    }
    return most;
}
