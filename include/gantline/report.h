/* report.h - the sheet as words and figures, in several forms. Nothing here computes a force. */
#ifndef GANTLINE_REPORT_H
#define GANTLINE_REPORT_H

#include <gantline/limit.h>
#include <gantline/rate.h>

typedef enum gtl_form { GTL_TEXT, GTL_JSON } gtl_form;

/* Write the report of a rated rig. Returns text that the caller frees, NULL without memory.
 * Text: no line over 80 columns, ASCII but for the user's own words, no control characters.
 * JSON: the format "gantline-report-1", docs/report.schema.json. */
GTL_API char *gtl_report(const gtl_sheet *sheet, gtl_form form);

/* Write the limits that gtl_find_limit found, in the same way. JSON: the format "gantline-limit-1",
 * docs/limit.schema.json. */
GTL_API char *gtl_limit_report(const gtl_limit *limit, gtl_form form);

#endif
