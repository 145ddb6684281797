/* json_batten.h - battens of the report as JSON. */
#ifndef REPORT_JSON_BATTEN_H
#define REPORT_JSON_BATTEN_H

#include <gantline/rate.h>
#include <jansson.h>

/* A new reference, NULL without memory; empty where there is no batten. */
json_t *gtl_json_battens(const gtl_rig *rig);

#endif
