/* json_timber.h - weights, and the timber that they were worked out of, as JSON. Each returns a new
 * reference, NULL without memory. */
#ifndef REPORT_JSON_TIMBER_H
#define REPORT_JSON_TIMBER_H

#include <gantline/rate.h>
#include <jansson.h>

/* A piece of timber. */
json_t *gtl_json_timber(const gtl_timber *timber);

/* A figure for each end of the spread: heavy, mean, light. */
json_t *gtl_json_spread(const double figures[GTL_WOOD_END_COUNT], double factor);

/* What no figure of timber holds, a sentence each. */
json_t *gtl_json_timber_cautions(const gtl_timber *timber);

#endif
