/* geometry.c - angles and distances that a report shows of a finished state. */
#include "report/geometry.h"

#include <math.h>

#define WHOLE_TURN 6.283185307179586 /* [rad] */

double gtl_vector_size(const double *vector, int dim)
{
    double size = 0;
    for (int i = 0; i < dim; i++) size = hypot(size, vector[i]);
    return size;
}

double gtl_from_vertical(const double *pull, int dim)
{
    double across = gtl_vector_size(pull, dim - 1), down = -pull[dim - 1];
    if (across == 0 && down == 0) return NAN;
    return atan2(across, down);
}

/* Unit vector from one stop of a line towards another. */
static void direction(const gtl_rig *rig, const gtl_state *state, int from, int to, double unit[3])
{
    const double *start = state->at + 3 * rig->things[rig->stops[from].thing].node;
    const double *end = state->at + 3 * rig->things[rig->stops[to].thing].node;
    for (int i = 0; i < rig->dim; i++) unit[i] = end[i] - start[i];
    double size = gtl_vector_size(unit, rig->dim);
    for (int i = 0; i < rig->dim; i++) unit[i] /= size;
}

bool gtl_is_loose(const gtl_outcome *outcome, int thing)
{
    return outcome->loose && outcome->loose[thing];
}

int gtl_run_in(const gtl_rig *rig, const gtl_outcome *outcome, int run)
{
    if (!outcome->part) return run;
    const gtl_run *wanted = &rig->runs[run];
    int before = outcome->part[wanted->before], after = outcome->part[wanted->before + 1];
    if (before < 0 || after != before + 1) return -1;
    /* Runs keep their order, and those that are gone only bring the others nearer. */
    int last = outcome->rig->run_count - 1;
    for (int i = run < last ? run : last; i >= 0; i--) {
        const gtl_run *at = &outcome->rig->runs[i];
        if (at->before == before && at->thing == wanted->thing) return i;
    }
    return -1;
}

double gtl_wrap_angle(const gtl_outcome *outcome, int run)
{
    const gtl_rig *rig = outcome->rig;
    const gtl_state *state = outcome->state;
    const gtl_run *at = &rig->runs[run];
    const gtl_thing *thing = &rig->things[at->thing];
    double turns = WHOLE_TURN * thing->turns;
    if (!isnan(thing->wrap)) return thing->wrap + turns;
    double back[3], onward[3], sum[3], difference[3];
    direction(rig, state, at->stop, rig->parts[at->before].from, back);
    direction(rig, state, at->stop, rig->parts[at->before + 1].to, onward);
    for (int i = 0; i < rig->dim; i++) {
        sum[i] = back[i] + onward[i];
        difference[i] = back[i] - onward[i];
    }
    /* The half angle from its sine and cosine: an arc cosine would lose small angles. */
    return 2 * atan2(gtl_vector_size(sum, rig->dim), gtl_vector_size(difference, rig->dim)) + turns;
}

double gtl_off_drawing(const gtl_rig *rig, const gtl_outcome *outcome, int thing)
{
    const double *at = outcome->state->at + 3 * outcome->rig->things[thing].node;
    double way[3];
    for (int i = 0; i < rig->dim; i++) way[i] = at[i] - rig->nodes[rig->things[thing].node].at[i];
    return gtl_vector_size(way, rig->dim);
}
