/* html_table.c - a table as HTML, with a bar beside each figure that is a share of a whole. */
#include "report/escape.h"
#include "report/html.h"
#include "report/table_bands.h"

#include <math.h>
#include <string.h>

/* A table of no more rows stays on one page of paper, whatever room that leaves. */
#define SHORT 15

/* A bar's length for a whole [1/1000 of it]. */
#define WHOLE 1000

/* An outline, filled as far as the share goes: never less than it. Over a whole it is full, and two strokes
 * cross its end. */
static void bar(gtl_text *out, double share)
{
    if (isnan(share)) return;
    bool over = share > 1 + GTL_UTILISATION_SLACK;
    int length = over ? WHOLE : (int)ceil(fmax(share, 0) * WHOLE * (1 - GTL_UTILISATION_SLACK));
    gtl_text_add(out,
                 "<svg class=\"bar\" viewBox=\"0 0 1150 120\" aria-hidden=\"true\">"
                 "<rect class=\"whole\" x=\"5\" y=\"5\" width=\"%d\" height=\"110\"/>"
                 "<rect class=\"used\" x=\"5\" y=\"5\" width=\"%d\" height=\"110\"/>",
                 WHOLE, length);
    if (over)
        gtl_text_add(out, "<path class=\"past\" d=\"M1040 0L1090 60L1040 120M1090 0L1140 60L1090 120\"/>");
    gtl_text_add(out, "</svg> ");
}

/* Figures stand below each other by their points: each has as much room behind it as it lacks of the longest
 * fraction in its column. The classes are those of gtl_html_style. */
static void add_figure_class(gtl_text *out, const char *figure, size_t rest)
{
    size_t own = gtl_width_of_figure(figure).rest, lacking = rest > own ? rest - own : 0;
    if (lacking > GTL_MOST_LACKING) lacking = GTL_MOST_LACKING;
    gtl_text_add(out, "number");
    if (lacking > 0) gtl_text_add(out, " %s-%zu", own == 0 ? "point" : "digits", lacking);
}

/* A class for what is strong, not an element: some readers of tagged paper lose the words of that. */
static void put_cell(gtl_text *out, const gtl_layout *layout, const gtl_table_cell *cell, int column)
{
    gtl_text_add(out, "<td class=\"");
    if (layout->table->columns[column].number)
        add_figure_class(out, cell->text, layout->widths[column].rest);
    else
        gtl_text_add(out, "word");
    gtl_text_add(out, cell->strong ? " strong\">" : "\">");
    bar(out, cell->bar);
    gtl_escape_markup(out, cell->text);
    gtl_text_add(out, "</td>");
}

/* Blanks before a label set it in, below the row that heads it. */
static void row(gtl_text *out, const gtl_layout *layout, const gtl_table_cell *cells)
{
    const char *label = cells[0].text + strspn(cells[0].text, " ");
    gtl_text_add(out, "<tr><th scope=\"row\"%s>", label > cells[0].text ? " class=\"below\"" : "");
    gtl_escape_markup(out, label);
    gtl_text_add(out, "</th>");
    for (int i = layout->from; i < layout->to; i++) put_cell(out, layout, &cells[i], i);
    gtl_text_add(out, "</tr>\n");
}

/* A row that heads others opens a group of its own. */
static void row_head(gtl_text *out, const gtl_layout *layout, const gtl_table_cell *cells, bool first)
{
    if (!first) gtl_text_add(out, "</tbody>\n<tbody>\n");
    gtl_text_add(out, "<tr class=\"group\"><th scope=\"rowgroup\" colspan=\"%d\">",
                 1 + layout->to - layout->from);
    gtl_escape_markup(out, cells[0].text);
    gtl_text_add(out, "</th></tr>\n");
}

static void head(gtl_text *out, const gtl_layout *layout)
{
    const gtl_table_column *columns = layout->table->columns;
    gtl_text_add(out, "<thead>\n<tr>");
    gtl_html_element(out, "th", " scope=\"col\"", columns[0].head);
    for (int i = layout->from; i < layout->to; i++)
        gtl_html_element(out, "th", columns[i].number ? " scope=\"col\" class=\"number\"" : " scope=\"col\"",
                         columns[i].head);
    gtl_text_add(out, "</tr>\n</thead>\n<tbody>\n");
}

static void band(gtl_text *out, const gtl_layout *layout)
{
    head(out, layout);
    for (size_t i = 0; i < gtl_table_rows(layout->table); i++) {
        const gtl_table_cell *cells = gtl_table_row(layout->table, i);
        if (gtl_heads_rows(layout->table, cells))
            row_head(out, layout, cells, i == 0);
        else
            row(out, layout, cells);
    }
    gtl_text_add(out, "</tbody>\n");
}

void gtl_html_table(gtl_text *out, const gtl_table *table, const char *heading)
{
    gtl_layout layout;
    int number = 0;
    if (!gtl_layout_begin(&layout, table)) out->failed = true;
    while (!out->failed && gtl_layout_next(&layout)) {
        gtl_html_scroll_begin(out, "table", heading, ++number);
        gtl_text_add(out, gtl_table_rows(table) <= SHORT ? "<table class=\"short\">\n" : "<table>\n");
        gtl_html_element(out, "caption", "", heading);
        band(out, &layout);
        gtl_text_add(out, "</table>\n");
        gtl_html_scroll_end(out);
    }
    gtl_layout_end(&layout);
}
