/* lab_report.c - a lab in the form asked for. */
#include "lab/compose.h"
#include "lab/write_lab.h"
#include "report/page.h"
#include "report/write.h"

static char *page_of(const gtl_document *document)
{
    const gtl_page page = {.document = *document, .foot = "readings"};
    return document->failed ? NULL : gtl_write_html(&page);
}

char *gtl_lab_report(const gtl_lab *lab, gtl_form form)
{
    if (form == GTL_JSON) return gtl_write_lab_json(lab);
    if (form == GTL_CSV) return gtl_write_lab_csv(lab);
    gtl_document document = {0};
    gtl_lab_compose(lab, &document);
    char *written = form == GTL_HTML ? page_of(&document) : gtl_write_text(&document);
    gtl_document_end(&document);
    return written;
}
