/* table_text.c - a table as plain text. */
#include "report/table_text.h"
#include "report/character.h"
#include "report/table_bands.h"
#include "report/wrap.h"
#include "report/write.h"

#include <string.h>

/* A cell in its column. The last column of a band is not padded behind. */
static void cell(gtl_text *out, const gtl_layout *layout, int column, const char *text, bool figure)
{
    const gtl_width *width = &layout->widths[column];
    gtl_width needed = gtl_width_of_figure(text);
    size_t before = 0;
    if (layout->table->columns[column].number)
        before = width->all - (figure ? needed.whole + width->rest : needed.all);
    gtl_wrap_indent(out, GTL_TABLE_GAP + before);
    gtl_text_add(out, "%s", text);
    if (column < layout->to - 1) gtl_wrap_indent(out, width->all - before - needed.all);
}

static void first_cell(gtl_text *out, const gtl_layout *layout, const char *text)
{
    size_t width = layout->first, needed = gtl_columns(text, strlen(text));
    if (needed > width) {
        size_t indent = strspn(text, " ");
        gtl_wrap wrap = {.column = indent, .indent = indent + GTL_TABLE_GAP, .width = GTL_TEXT_WIDTH};
        gtl_wrap_indent(out, indent);
        gtl_wrap_words(out, text + indent, &wrap);
        gtl_wrap_indent(out, width);
    } else {
        gtl_text_add(out, "%s", text);
        gtl_wrap_indent(out, width - needed);
    }
}

static void end_line(gtl_text *out)
{
    while (out->length > 0 && out->bytes[out->length - 1] == ' ') out->bytes[--out->length] = '\0';
    gtl_text_put(out, "\n", 1);
}

static void head(gtl_text *out, const gtl_layout *layout)
{
    first_cell(out, layout, layout->table->columns[0].head);
    for (int i = layout->from; i < layout->to; i++)
        cell(out, layout, i, layout->table->columns[i].head, false);
    end_line(out);
}

static void row(gtl_text *out, const gtl_layout *layout, const gtl_table_cell *cells)
{
    if (gtl_heads_rows(layout->table, cells)) {
        gtl_wrap wrap = {.indent = GTL_TABLE_GAP, .width = GTL_TEXT_WIDTH};
        gtl_wrap_words(out, cells[0].text, &wrap);
        return;
    }
    first_cell(out, layout, cells[0].text);
    for (int i = layout->from; i < layout->to; i++) cell(out, layout, i, cells[i].text, true);
    end_line(out);
}

static void band(gtl_text *out, const gtl_layout *layout)
{
    head(out, layout);
    for (size_t i = 0; i < gtl_table_rows(layout->table); i++)
        row(out, layout, gtl_table_row(layout->table, i));
}

void gtl_table_text(gtl_text *out, const gtl_table *table)
{
    gtl_layout layout;
    if (!gtl_layout_begin(&layout, table)) out->failed = true;
    while (!out->failed && gtl_layout_next(&layout)) {
        if (layout.from > 1) gtl_text_put(out, "\n", 1);
        band(out, &layout);
    }
    gtl_layout_end(&layout);
}
