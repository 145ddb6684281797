/* failing_rating.h - rating a rig while memory fails. */
#ifndef UNIT_FAILING_RATING_H
#define UNIT_FAILING_RATING_H

#include <gantline/rate.h>

/* Rate with the first `allowed` allocations granted: the status says whether one was refused, and nothing is
 * left behind. True once none was refused. */
bool rates_with(const gtl_rig *rig, long allowed);

#endif
