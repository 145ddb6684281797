/* json_loads.h - what hangs in the rig, as JSON. */
#ifndef REPORT_JSON_LOADS_H
#define REPORT_JSON_LOADS_H

#include <gantline/rate.h>
#include <jansson.h>

/* Loads, arbors, and spars with a weight: what each weighs, and how that is known. A new reference, NULL
 * without memory. The picks of battens are not among them: they stand under their batten. */
json_t *gtl_json_loads(const gtl_sheet *sheet);

#endif
