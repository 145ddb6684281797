/* report.h - the sheet as words and figures, in several forms. Nothing here computes a force. */
#ifndef GANTLINE_REPORT_H
#define GANTLINE_REPORT_H

#include <gantline/limit.h>
#include <gantline/rate.h>

typedef enum gtl_form {
    GTL_TEXT,
    GTL_JSON,
    GTL_CSV, /* every force and check in one flat table, SI */
    GTL_SVG, /* one case as a line drawing */
    GTL_HTML /* one page that needs nothing beside it */
} gtl_form;

/* What a report is to be. */
typedef struct gtl_report_wish {
    gtl_form form;
    int outcome;        /* GTL_SVG: which case is drawn, its index in the sheet; -1: gtl_drawn_outcome */
    const char *source; /* GTL_HTML: the rig file as it was read; NULL: it is not shown */
    size_t source_size; /* in bytes */
} gtl_report_wish;

/* The case that tells most at a glance: raise, or hold, or the first that can be; the first where none can.
 */
GTL_API int gtl_drawn_outcome(const gtl_sheet *sheet);

/* Write a report in any form. Returns text that the caller frees, NULL without memory. User text stays text
 * in every form; the same sheet and wish give the same bytes. */
GTL_API char *gtl_report_as(const gtl_sheet *sheet, const gtl_report_wish *wish);

/* The report in a form that needs no more to be said: text or JSON. Returns text that the caller frees, NULL
 * without memory. Text: no line over 80 columns, ASCII but for the user's own words, no control characters.
 * JSON: the format "gantline-report-1", docs/report.schema.json. */
GTL_API char *gtl_report(const gtl_sheet *sheet, gtl_form form);

/* Write the limits that gtl_find_limit found, in the same way. JSON: the format "gantline-limit-1",
 * docs/limit.schema.json. */
GTL_API char *gtl_limit_report(const gtl_limit *limit, gtl_form form);

/* Write what one piece of timber, worked by gtl_timber_work, weighs, in the same way. JSON: the format
 * "gantline-timber-1", docs/timber.schema.json. */
GTL_API char *gtl_timber_report(const gtl_timber *timber, gtl_form form, bool us_units);

#endif
