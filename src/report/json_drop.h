/* json_drop.h - a load that is caught after a fall, as JSON. */
#ifndef REPORT_JSON_DROP_H
#define REPORT_JSON_DROP_H

#include <gantline/rate.h>
#include <jansson.h>

/* A new reference; null where the case cannot be; NULL without memory. */
json_t *gtl_json_drop(const gtl_sheet *sheet, const gtl_outcome *outcome);

#endif
