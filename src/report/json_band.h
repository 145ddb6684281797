/* json_band.h - what figures stated as ranges make of a case, and turns on posts, as JSON. */
#ifndef REPORT_JSON_BAND_H
#define REPORT_JSON_BAND_H

#include <gantline/rate.h>
#include <jansson.h>

/* A new reference each, NULL without memory. Of a case that cannot be, or of a rig without ranges, null. */
json_t *gtl_json_band(const gtl_sheet *sheet, const gtl_outcome *outcome);
json_t *gtl_json_posts(const gtl_sheet *sheet);

#endif
