/* json_case.h - one case of the report as JSON. */
#ifndef REPORT_JSON_CASE_H
#define REPORT_JSON_CASE_H

#include <gantline/rate.h>
#include <jansson.h>

/* A new reference, NULL without memory. */
json_t *gtl_json_case(const gtl_sheet *sheet, const gtl_outcome *outcome);

#endif
