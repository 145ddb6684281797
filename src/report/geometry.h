/* geometry.h - angles and distances that a report shows of a finished state. */
#ifndef REPORT_GEOMETRY_H
#define REPORT_GEOMETRY_H

#include <gantline/rate.h>

/* Size of a vector of `dim` entries, in its own unit. */
double gtl_vector_size(const double *vector, int dim);

/* Angle of a pull: 0 straight down, pi straight up; NaN where there is no pull [rad]. */
double gtl_from_vertical(const double *pull, int dim);

/* Whether a thing came loose in a case, and is left out of its state. */
bool gtl_is_loose(const gtl_outcome *outcome, int thing);

/* A running stop of the sheet's rig as an index into the runs of the case's own; -1: the line runs over it no
 * more. */
int gtl_run_in(const gtl_rig *rig, const gtl_outcome *outcome, int run);

/* Angle that a line turns through at a running stop of the case's own rig, whole turns included [rad]. */
double gtl_wrap_angle(const gtl_outcome *outcome, int run);

/* How far a thing that is not loose is from its place in the file, of which `rig` is [m]. */
double gtl_off_drawing(const gtl_rig *rig, const gtl_outcome *outcome, int thing);

#endif
