/* row.c - work, advantages and efficiency of one row, and how well they are known.
 *
 * A reading within +/- a, any value in between as likely as another, has the standard uncertainty a/sqrt(3)
 * (JCGM 100:2008, 4.3.7, from memory). In products and ratios relative variances add up (the same, 5.1.6,
 * from memory). The school's rule adds the relative half-widths themselves. */
#include "lab/work.h"

#include <math.h>

double gtl_lab_standard(double half_width)
{
    return half_width / sqrt(3.0);
}

/* Relative variance of a product or ratio of two readings of one half-width [1]. */
static double variance(double half_width, double one, double other)
{
    double u = gtl_lab_standard(half_width);
    return u * u * (1 / (one * one) + 1 / (other * other));
}

static double shares(double half_width, double one, double other)
{
    return half_width / one + half_width / other;
}

double gtl_lab_force_share(const gtl_lab_row *row)
{
    double u = sqrt(variance(row->reading, row->load, row->effort));
    return isnan(u) ? 0 : 2 * u;
}

double gtl_lab_distance_share(const gtl_lab_row *row)
{
    double u = sqrt(variance(row->distance_reading, row->load_distance, row->effort_distance));
    return isnan(u) ? 0 : 2 * u;
}

/* What the rope is pulled with: a scale that hangs on it by its hook pulls with its own weight too, which it
 * does not show. */
static double effort_of(const gtl_lab_row *row)
{
    return row->scale == GTL_LAB_UPSIDE_DOWN ? row->effort_read + row->scale_weight : row->effort_read;
}

void gtl_lab_work_row(gtl_lab_row *row)
{
    row->effort = effort_of(row);
    double forces = variance(row->reading, row->load, row->effort);
    double distances = variance(row->distance_reading, row->load_distance, row->effort_distance);
    row->work_in = row->effort * row->effort_distance;
    row->work_out = row->load * row->load_distance;
    row->ideal_advantage = row->effort_distance / row->load_distance;
    row->ideal_advantage_u = row->ideal_advantage * sqrt(distances);
    row->measured_advantage = row->load / row->effort;
    row->measured_advantage_u = row->measured_advantage * sqrt(forces);
    row->efficiency = row->work_out / row->work_in;
    row->efficiency_u = row->efficiency * sqrt(forces + distances);
    row->efficiency_school =
        row->efficiency * (shares(row->reading, row->load, row->effort) +
                           shares(row->distance_reading, row->load_distance, row->effort_distance));
    row->efficiency_all = (row->load + row->moving_weight) * row->load_distance / row->work_in;
}
