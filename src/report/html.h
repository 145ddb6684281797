/* html.h - the pieces of which a page is written. All markup is well-formed XML too. */
#ifndef REPORT_HTML_H
#define REPORT_HTML_H

#include "report/page.h"

/* The words of an element: `<tag attributes>text</tag>`; `attributes` "" for none. */
void gtl_html_element(gtl_text *out, const char *tag, const char *attributes, const char *text);

/* A place that scrolls by itself where its content is too wide, by keyboard too; what it holds is named by
 * `label` and, from the second of several on, by its number. */
void gtl_html_scroll_begin(gtl_text *out, const char *kind, const char *label, int number);
void gtl_html_scroll_end(gtl_text *out);

/* As many digits and points as a figure may lack of the longest fraction below or above it. */
#define GTL_MOST_LACKING 8

/* A table, in bands where it is too wide for paper; `heading` is what it stands under. */
void gtl_html_table(gtl_text *out, const gtl_table *table, const char *heading);

/* Every case drawn; on a screen the one that is chosen is shown, on paper all are. */
void gtl_html_drawings(gtl_text *out, const gtl_page *page);

/* The rig file, so that it can be copied and run again. */
void gtl_html_source(gtl_text *out, const gtl_page *page);

/* The content of <style>. */
void gtl_html_style(gtl_text *out, const gtl_page *page);

#endif
