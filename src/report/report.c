/* report.c - a sheet in the form asked for. */
#include "report/compose.h"
#include "report/page.h"
#include "report/write.h"

#include <gantline/report.h>
#include <stdlib.h>

static char *text_of(const gtl_sheet *sheet)
{
    gtl_document document = {0};
    gtl_compose(sheet, &document);
    char *text = gtl_write_text(&document);
    gtl_document_end(&document);
    return text;
}

static char *drawing_of(const gtl_sheet *sheet, int outcome)
{
    gtl_drawing *drawing = gtl_draw(sheet, outcome);
    char *words = gtl_words_drawing(sheet, outcome);
    gtl_text out = {.failed = !drawing || !words};
    gtl_text_add(&out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    if (!out.failed) gtl_write_drawing(&out, drawing, "drawing", words);
    gtl_drawing_end(drawing);
    free(words);
    return gtl_text_take(&out);
}

static char *page_of(const gtl_sheet *sheet, const gtl_report_wish *wish)
{
    gtl_page page;
    char *written = gtl_page_begin(&page, sheet, wish) ? gtl_write_html(&page) : NULL;
    gtl_page_end(&page);
    return written;
}

int gtl_drawn_outcome(const gtl_sheet *sheet)
{
    static const gtl_case_kind liked[] = {GTL_RAISE, GTL_HOLD};
    for (size_t i = 0; i < sizeof liked / sizeof *liked; i++) {
        const gtl_outcome *outcome = gtl_sheet_outcome(sheet, liked[i]);
        if (outcome && outcome->possible) return (int)(outcome - sheet->outcomes);
    }
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].possible) return i;
    return 0;
}

char *gtl_report_as(const gtl_sheet *sheet, const gtl_report_wish *wish)
{
    switch (wish->form) {
    case GTL_JSON:
        return gtl_write_json(sheet);
    case GTL_CSV:
        return gtl_write_csv(sheet);
    case GTL_SVG:
        return drawing_of(sheet, wish->outcome < 0 ? gtl_drawn_outcome(sheet) : wish->outcome);
    case GTL_HTML:
        return page_of(sheet, wish);
    default:
        return text_of(sheet);
    }
}

char *gtl_report(const gtl_sheet *sheet, gtl_form form)
{
    return gtl_report_as(sheet, &(gtl_report_wish){.form = form, .outcome = -1});
}
