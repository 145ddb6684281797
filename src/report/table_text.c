/* table_text.c - a table as plain text. */
#include "report/table_text.h"
#include "report/character.h"
#include "report/wrap.h"
#include "report/write.h"

#include <string.h>

#define GAP 2
/* The first column keeps this, whatever the others take. */
#define LEAST_FIRST 12

/* A column's width. A figure is `whole` columns up to its point, `rest` from there on. */
typedef struct gtl_width {
    size_t whole;
    size_t rest;
    size_t all;
} gtl_width;

typedef struct gtl_layout {
    const gtl_table *table;
    gtl_width widths[GTL_COLUMN_LIMIT];
} gtl_layout;

static size_t columns_of(const char *text)
{
    return gtl_columns(text, strlen(text));
}

static void widen(size_t *width, size_t candidate)
{
    if (candidate > *width) *width = candidate;
}

static gtl_width width_of_figure(const char *figure)
{
    size_t all = columns_of(figure), whole = strcspn(figure, ".");
    if (whole > all) whole = all;
    return (gtl_width){whole, all - whole, all};
}

static size_t row_count(const gtl_table *table)
{
    return table->cell_count / (size_t)table->column_count;
}

static char *const *row_at(const gtl_table *table, size_t row)
{
    return table->cells + row * (size_t)table->column_count;
}

/* Whether a row has but its first cell. */
static bool heads_rows(const gtl_table *table, char *const *row)
{
    return table->column_count > 1 && !row[1];
}

static void measure(gtl_layout *layout, int column)
{
    const gtl_table *table = layout->table;
    gtl_width *width = &layout->widths[column];
    widen(&width->all, columns_of(table->columns[column].head));
    for (size_t i = 0; i < row_count(table); i++) {
        const char *text = row_at(table, i)[column];
        if (!text || heads_rows(table, row_at(table, i))) continue;
        gtl_width needed = width_of_figure(text);
        widen(&width->whole, needed.whole);
        widen(&width->rest, needed.rest);
        widen(&width->all, needed.all);
    }
    if (table->columns[column].number) widen(&width->all, width->whole + width->rest);
}

/* The first column takes what it needs, or what the others leave. */
static void fit(gtl_layout *layout)
{
    size_t others = 0;
    for (int i = 1; i < layout->table->column_count; i++) others += GAP + layout->widths[i].all;
    size_t left = others + LEAST_FIRST < GTL_TEXT_WIDTH ? GTL_TEXT_WIDTH - others : LEAST_FIRST;
    if (layout->widths[0].all > left) layout->widths[0].all = left;
}

/* A cell in its column. The last column is not padded behind. */
static void cell(gtl_text *out, const gtl_layout *layout, int column, const char *text, bool figure)
{
    const gtl_width *width = &layout->widths[column];
    gtl_width needed = width_of_figure(text);
    size_t before = 0;
    if (layout->table->columns[column].number)
        before = width->all - (figure ? needed.whole + width->rest : needed.all);
    gtl_wrap_indent(out, GAP + before);
    gtl_text_add(out, "%s", text);
    if (column < layout->table->column_count - 1) gtl_wrap_indent(out, width->all - before - needed.all);
}

static void first_cell(gtl_text *out, const gtl_layout *layout, const char *text)
{
    size_t width = layout->widths[0].all, needed = columns_of(text);
    if (needed > width) {
        size_t indent = strspn(text, " ");
        gtl_wrap wrap = {.column = indent, .indent = indent + GAP, .width = GTL_TEXT_WIDTH};
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
    for (int i = 1; i < layout->table->column_count; i++)
        cell(out, layout, i, layout->table->columns[i].head, false);
    end_line(out);
}

static void row(gtl_text *out, const gtl_layout *layout, char *const *cells)
{
    if (heads_rows(layout->table, cells)) {
        gtl_wrap wrap = {.indent = GAP, .width = GTL_TEXT_WIDTH};
        gtl_wrap_words(out, cells[0], &wrap);
        return;
    }
    first_cell(out, layout, cells[0]);
    for (int i = 1; i < layout->table->column_count; i++) cell(out, layout, i, cells[i], true);
    end_line(out);
}

void gtl_table_text(gtl_text *out, const gtl_table *table)
{
    gtl_layout layout = {.table = table};
    for (int i = 0; i < table->column_count; i++) measure(&layout, i);
    fit(&layout);
    head(out, &layout);
    for (size_t i = 0; i < row_count(table); i++) row(out, &layout, row_at(table, i));
}
