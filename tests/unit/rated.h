/* rated.h - a rig's text to a rated sheet, for tests that then look at one finding. */
#ifndef UNIT_RATED_H
#define UNIT_RATED_H

#include <gantline/gantline.h>

typedef struct rated {
    gtl_rig *rig;
    gtl_sheet sheet;
} rated;

/* Read a text, which has to be sound; printf's format. The caller frees the rig. */
gtl_rig *read_sound(const char *format, ...) GTL_PRINTF(1, 2);
/* Read and rate it; it has to have an answer. The caller gives it back with rated_end. */
rated rate_sound(const char *format, ...) GTL_PRINTF(1, 2);
void rated_end(rated *rig);

/* A component by its name; fails where there is none. */
const gtl_component *component_of(const rated *rig, const char *name);
/* A thing's index by its name; fails where there is none. */
int thing_of(const gtl_rig *rig, const char *name);
/* A part's demand over all cases [N]. */
double demand_of(const rated *rig, const char *name);

/* Equal but for rounding, over the greater of the two. */
void assert_close(double value, double wanted);

#endif
