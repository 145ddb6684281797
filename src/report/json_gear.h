/* json_gear.h - ratings, chains of gear and hardware tables as JSON. Each returns a new reference, NULL
 * without memory. */
#ifndef REPORT_JSON_GEAR_H
#define REPORT_JSON_GEAR_H

#include <gantline/rate.h>
#include <jansson.h>

/* From a component's paper rating to its capacity; empty where nothing rates it. */
json_t *gtl_json_steps(const gtl_sheet *sheet, const gtl_component *part);

json_t *gtl_json_chains(const gtl_sheet *sheet);
json_t *gtl_json_head_fittings(const gtl_sheet *sheet);

/* The row of design factors by use; null where none is stated. */
json_t *gtl_json_use(const gtl_sheet *sheet);

/* What rope is needed, and how far the load goes up; null where the file does not ask. json_rope_bill.c */
json_t *gtl_json_rope_bill(const gtl_sheet *sheet);

/* Which parts are rows of hardware tables. */
json_t *gtl_json_hardware(const gtl_sheet *sheet);

#endif
