/* write.h - the writers of the report's forms. */
#ifndef REPORT_WRITE_H
#define REPORT_WRITE_H

#include "report/document.h"
#include "report/page.h"
#include <gantline/limit.h>
#include <gantline/rate.h>

/* The width that no line of text is wider than, in columns. */
#define GTL_TEXT_WIDTH 80

/* A document as plain text. The caller frees it; NULL without memory. */
char *gtl_write_text(const gtl_document *document);

/* A sheet as JSON, "gantline-report-1". The caller frees it; NULL without memory. */
char *gtl_write_json(const gtl_sheet *sheet);

/* A limit as JSON, "gantline-limit-1". Likewise. */
char *gtl_write_limit_json(const gtl_limit *limit);

/* A page as HTML that needs nothing beside it; well-formed XML too. Likewise. */
char *gtl_write_html(const gtl_page *page);

/* Every force and check of a sheet as CSV (RFC 4180), SI. Likewise. */
char *gtl_write_csv(const gtl_sheet *sheet);

#endif
