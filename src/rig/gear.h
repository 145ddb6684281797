/* gear.h - what the steps of gear.c share. */
#ifndef RIG_GEAR_H
#define RIG_GEAR_H

#include "rig/building.h"

#define GTL_ROPE_KINDS (GTL_ONE_KIND(GTL_ROPE) | GTL_ONE_KIND(GTL_SLING))

/* gear_rows.c: the row that an item names; NULL where it names none, or after a fault: the item is rough
 * then. */
const gtl_hardware_row *gtl_named_row(gtl_building *b, gtl_item *item, gtl_row_key key);

/* gear_rows.c: a row that the program itself looks for, since a key on that line needs it. NULL after a
 * fault: without the row, what the key takes from a rating would be forgotten. */
const gtl_hardware_row *gtl_needed_row(gtl_building *b, int line, gtl_hardware_kind kind, const char *name);

/* gear_rope.c: of a rope or sling, whose row and numbers are there: what it is made of, its ends and its
 * hitch. */
void gtl_find_rope_gear(gtl_building *b, gtl_item *item, gtl_gear *gear);

#endif
