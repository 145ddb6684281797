/* report.c - a sheet in the form asked for. */
#include "report/compose.h"
#include "report/write.h"
#include <gantline/report.h>

char *gtl_report(const gtl_sheet *sheet, gtl_form form)
{
    if (form == GTL_JSON) return gtl_write_json(sheet);
    gtl_document document = {0};
    gtl_compose(sheet, &document);
    char *text = gtl_write_text(&document);
    gtl_document_end(&document);
    return text;
}
