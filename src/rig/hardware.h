/* hardware.h - for those that fill a set of hardware rows. */
#ifndef RIG_HARDWARE_H
#define RIG_HARDWARE_H

#include <gantline/hardware.h>

/* Give back all rows from number `row_count` on: the set is as it was when it had that many. */
void gtl_hardware_cut(gtl_hardware *set, int row_count);

#endif
