/* measure.c - how large a rig is, and how much moves it: what residuals and distances are held against. */
#include <gantline/rig.h>
#include <math.h>

double gtl_rig_size(const gtl_rig *rig)
{
    double square = 0;
    for (int k = 0; k < rig->dim; k++) {
        double low = INFINITY;
        double high = -INFINITY;
        for (int n = 0; n < rig->node_count; n++) {
            low = fmin(low, rig->nodes[n].at[k]);
            high = fmax(high, rig->nodes[n].at[k]);
        }
        square += (high - low) * (high - low);
    }
    return square > 0 ? sqrt(square) : 1;
}

double gtl_drawn_length(const gtl_rig *rig, int piece)
{
    double length = 0;
    for (int i = 0; i < rig->pieces[piece].part_count; i++) {
        const gtl_part *part = &rig->parts[rig->pieces[piece].first_part + i];
        const double *from = rig->nodes[rig->things[rig->stops[part->from].thing].node].at;
        const double *to = rig->nodes[rig->things[rig->stops[part->to].thing].node].at;
        double square = 0;
        for (int k = 0; k < rig->dim; k++) square += (to[k] - from[k]) * (to[k] - from[k]);
        length += sqrt(square);
    }
    return length;
}

double gtl_rig_force(const gtl_rig *rig)
{
    double sum = 0;
    for (int n = 0; n < rig->node_count; n++)
        if (!rig->nodes[n].fixed) sum += rig->nodes[n].weight;
    for (int p = 0; p < rig->piece_count; p++)
        if (rig->pieces[p].rule == GTL_PULLED) sum += rig->things[rig->pieces[p].hand].pull;
    return sum > 0 ? sum : 1;
}
