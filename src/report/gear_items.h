/* gear_items.h - every thing, line and connector of a rig in one row, and the rows of hardware tables that
 * they rest on. */
#ifndef REPORT_GEAR_ITEMS_H
#define REPORT_GEAR_ITEMS_H

#include <gantline/rate.h>

typedef struct gtl_gear_item {
    gtl_kind kind;
    const char *name;
    const gtl_gear *gear;
    const gtl_thing *thing; /* NULL of lines and connectors */
    const gtl_line *line;   /* NULL of all but lines */
} gtl_gear_item;

/* How many there are: things, then lines, then connectors, each in the order of the file. */
int gtl_gear_count(const gtl_rig *rig);
gtl_gear_item gtl_gear_item_at(const gtl_rig *rig, int index);

/* What it was worked with of a number that a row of gear may give, in the row's unit; NaN: nothing. Not for
 * ratings, which count beside each other. */
double gtl_gear_worked(const gtl_rig *rig, const gtl_gear_item *item, gtl_hardware_number number);

/* Which rows of the rig's hardware anything rests on, one a row of it; NULL without memory, or without rows:
 * then *count is 0. The caller frees it. */
bool *gtl_gear_rows(const gtl_rig *rig, int *count);

#endif
