/* geometry.h - angles and distances that a report shows of a finished state. */
#ifndef REPORT_GEOMETRY_H
#define REPORT_GEOMETRY_H

#include <gantline/solve.h>

/* Size of a vector of `dim` entries, in its own unit. */
double gtl_vector_size(const double *vector, int dim);

/* Angle of a pull: 0 straight down, pi straight up; NaN where there is no pull [rad]. */
double gtl_from_vertical(const double *pull, int dim);

/* Angle that a line turns through at a running stop, whole turns included [rad]. */
double gtl_wrap_angle(const gtl_rig *rig, const gtl_state *state, int run);

/* How far a node is from its drawing [m]. */
double gtl_off_drawing(const gtl_rig *rig, const gtl_state *state, int node);

#endif
