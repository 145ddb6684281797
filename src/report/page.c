/* page.c - see page.h. */
#include "report/page.h"
#include "report/compose.h"
#include "report/escape.h"

#include <stdlib.h>

static bool begin_case(gtl_page_case *one, const gtl_sheet *sheet, int outcome)
{
    char *words = gtl_words_drawing(sheet, outcome);
    one->name = gtl_escape_for_people(sheet->outcomes[outcome].name);
    one->words = words ? gtl_escape_for_people(words) : NULL;
    one->drawing = gtl_draw(sheet, outcome);
    free(words);
    return one->name && one->words && one->drawing;
}

static const char *const feet[] = {
    [GTL_WITHIN] = "verdict: within", [GTL_OVER] = "verdict: over", [GTL_UNRATED] = "verdict: unrated"};

bool gtl_page_begin(gtl_page *page, const gtl_sheet *sheet, const gtl_report_wish *wish)
{
    *page = (gtl_page){.chosen = gtl_drawn_outcome(sheet),
                       .checked_by = true,
                       .foot = feet[sheet->verdict],
                       .source = wish->source,
                       .source_size = wish->source_size};
    page->cases = calloc((size_t)sheet->outcome_count + 1, sizeof *page->cases);
    if (!page->cases) return false;
    gtl_compose(sheet, &page->document);
    bool made = !page->document.failed;
    for (int i = 0; made && i < sheet->outcome_count; i++) {
        page->case_count++;
        made = begin_case(&page->cases[i], sheet, i);
    }
    return made;
}

void gtl_page_end(gtl_page *page)
{
    for (int i = 0; i < page->case_count; i++) {
        free(page->cases[i].name);
        free(page->cases[i].words);
        gtl_drawing_end(page->cases[i].drawing);
    }
    free(page->cases);
    gtl_document_end(&page->document);
}
