/* page.h - a document on its way to a page. A report's page has more: every case drawn and told in words, the
 * rig file, a box for whoever checks it. */
#ifndef REPORT_PAGE_H
#define REPORT_PAGE_H

#include "report/document.h"
#include "report/drawing.h"
#include <gantline/report.h>

/* One case. Its texts have come through gtl_escape_for_people. */
typedef struct gtl_page_case {
    char *name; /* "raise", "lost beam" */
    char *words;
    gtl_drawing *drawing;
} gtl_page_case;

typedef struct gtl_page {
    gtl_document document;
    gtl_page_case *cases;
    int case_count;
    int chosen;         /* the case that is shown first */
    bool checked_by;    /* with a box to sign */
    const char *foot;   /* at the foot of each sheet of paper: "verdict: within"; plain words of our own */
    const char *source; /* the rig file as read, not a byte of it changed; NULL: it is not shown */
    size_t source_size; /* [bytes] */
} gtl_page;

/* Compose a report's page; false without memory. The sheet and the source must outlive it; the caller ends it
 * in every case. */
bool gtl_page_begin(gtl_page *page, const gtl_sheet *sheet, const gtl_report_wish *wish);
void gtl_page_end(gtl_page *page);

#endif
