/* explain.h - a worked solution of a rig, as a teacher would write it, made from what was worked out. */
#ifndef GANTLINE_EXPLAIN_H
#define GANTLINE_EXPLAIN_H

#include <gantline/report.h>

/* Which steps are told. */
typedef enum gtl_steps {
    GTL_STEPS_ALL,
    GTL_STEPS_FORCES,   /* pulls on bodies, friction, supports */
    GTL_STEPS_DISTANCES /* rope kept, travel, work */
} gtl_steps;

typedef struct gtl_explain_wish {
    gtl_form form; /* GTL_TEXT or GTL_HTML */
    bool ideal;    /* friction is left out altogether */
    gtl_steps steps;
} gtl_explain_wish;

/* Write the worked solution of a rated rig. No sentence stands in it that the rig does not bear out, and each
 * equation holds to its printed digits. Figures are rounded to the nearest, not up as in a report. Returns
 * text that the caller frees; NULL without memory, or for another form. Text: as gtl_report_as. */
GTL_API char *gtl_explain(const gtl_sheet *sheet, const gtl_explain_wish *wish);

#endif
