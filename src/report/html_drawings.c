/* html_drawings.c - every case drawn. Which one is shown is chosen without a script: radio buttons, and rules
 * of the style sheet that look at them (gtl_html_style). */
#include "report/escape.h"
#include "report/html.h"

#include <stdlib.h>

static void choice(gtl_text *out, const gtl_page *page)
{
    gtl_text_add(out, "<fieldset class=\"choice\">\n<legend>Case that is shown</legend>\n");
    for (int i = 0; i < page->case_count; i++) {
        gtl_text_add(out, "<label><input type=\"radio\" name=\"case\" id=\"pick-%d\"%s/>", i,
                     i == page->chosen ? " checked=\"checked\"" : "");
        gtl_html_element(out, "span", "", page->cases[i].name);
        gtl_text_add(out, "</label>\n");
    }
    gtl_text_add(out, "</fieldset>\n");
}

static void drawn(gtl_text *out, const gtl_page_case *one, int number)
{
    gtl_text prefix = {0}, label = {0};
    gtl_text_add(&prefix, "case-%d", number);
    gtl_text_add(&label, "Drawing of the case: %s", one->name);
    if (prefix.failed || label.failed) out->failed = true;
    char *ids = gtl_text_take(&prefix), *name = gtl_text_take(&label);
    if (!out->failed) {
        gtl_text_add(out, "<div class=\"case\" id=\"case-%d\">\n", number);
        gtl_text_add(out, "<h3>Case: ");
        gtl_escape_markup(out, one->name);
        gtl_text_add(out, "</h3>\n");
        gtl_html_scroll_begin(out, "drawing", name, 1);
        gtl_write_drawing_pieces(out, one->drawing, ids, one->words);
        gtl_html_scroll_end(out);
        gtl_text_add(out, "<details>\n<summary>The drawing in words</summary>\n");
        gtl_html_element(out, "p", "", one->words);
        gtl_text_add(out, "\n</details>\n</div>\n");
    }
    free(ids);
    free(name);
}

void gtl_html_drawings(gtl_text *out, const gtl_page *page)
{
    gtl_text_add(out, "<section>\n<h2 id=\"drawing\">Drawing</h2>\n");
    if (page->case_count > 1) choice(out, page);
    for (int i = 0; i < page->case_count; i++) drawn(out, &page->cases[i], i);
    gtl_text_add(out, "</section>\n");
}
