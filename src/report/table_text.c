/* table_text.c - a table as plain text. One that is too wide is told in bands, one below the other, each with
 * the first column before it. */
#include "report/table_text.h"
#include "report/character.h"
#include "report/wrap.h"
#include "report/write.h"

#include <stdlib.h>
#include <string.h>

#define GAP 2
/* The first column keeps this, whatever the others take. */
#define LEAST_FIRST 16
/* It keeps this where bands can be parted neatly. */
#define NEAT_FIRST 24

/* A column's width. A figure is `whole` columns up to its point, `rest` from there on. */
typedef struct gtl_width {
    size_t whole;
    size_t rest;
    size_t all;
} gtl_width;

/* How a table stands on the page. Of its columns the first and `from` to `to`, that one not included, are
 * told together. */
typedef struct gtl_layout {
    const gtl_table *table;
    gtl_width *widths; /* one a column; of the first, what it needs */
    size_t first;      /* what the first column has here */
    int from;
    int to;
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

/* What columns take beside the first one. */
static size_t taken(const gtl_layout *layout, int from, int to)
{
    size_t width = 0;
    for (int i = from; i < to; i++) width += GAP + layout->widths[i].all;
    return width;
}

/* Whether all columns go in one band. */
static bool is_narrow(const gtl_layout *layout)
{
    const gtl_table *table = layout->table;
    size_t least = LEAST_FIRST;
    for (int i = 1; i < table->column_count; i++)
        if (table->columns[i].apart) least = NEAT_FIRST;
    return taken(layout, 1, table->column_count) + least <= GTL_TEXT_WIDTH;
}

/* The next band: all columns that are left, or those up to the next that stands apart, as far as they fit. */
static void next_band(gtl_layout *layout)
{
    int count = layout->table->column_count;
    layout->from = layout->to;
    layout->to = count;
    if (!is_narrow(layout)) {
        int last = layout->from + 1;
        while (last < count && !layout->table->columns[last].apart &&
               taken(layout, layout->from, last + 1) + LEAST_FIRST <= GTL_TEXT_WIDTH)
            last++;
        layout->to = last;
    }
    size_t others = taken(layout, layout->from, layout->to);
    size_t left = others + LEAST_FIRST < GTL_TEXT_WIDTH ? GTL_TEXT_WIDTH - others : LEAST_FIRST;
    layout->first = layout->widths[0].all < left ? layout->widths[0].all : left;
}

/* A cell in its column. The last column of a band is not padded behind. */
static void cell(gtl_text *out, const gtl_layout *layout, int column, const char *text, bool figure)
{
    const gtl_width *width = &layout->widths[column];
    gtl_width needed = width_of_figure(text);
    size_t before = 0;
    if (layout->table->columns[column].number)
        before = width->all - (figure ? needed.whole + width->rest : needed.all);
    gtl_wrap_indent(out, GAP + before);
    gtl_text_add(out, "%s", text);
    if (column < layout->to - 1) gtl_wrap_indent(out, width->all - before - needed.all);
}

static void first_cell(gtl_text *out, const gtl_layout *layout, const char *text)
{
    size_t width = layout->first, needed = columns_of(text);
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
    for (int i = layout->from; i < layout->to; i++)
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
    for (int i = layout->from; i < layout->to; i++) cell(out, layout, i, cells[i], true);
    end_line(out);
}

static void band(gtl_text *out, const gtl_layout *layout)
{
    head(out, layout);
    for (size_t i = 0; i < row_count(layout->table); i++) row(out, layout, row_at(layout->table, i));
}

void gtl_table_text(gtl_text *out, const gtl_table *table)
{
    gtl_layout layout = {.table = table, .to = 1};
    layout.widths = calloc((size_t)table->column_count, sizeof *layout.widths);
    if (!layout.widths) {
        out->failed = true;
        return;
    }
    for (int i = 0; i < table->column_count; i++) measure(&layout, i);
    do {
        if (layout.to > 1) gtl_text_put(out, "\n", 1);
        next_band(&layout);
        band(out, &layout);
    } while (layout.to < table->column_count);
    free(layout.widths);
}
