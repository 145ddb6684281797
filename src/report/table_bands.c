/* table_bands.c - see table_bands.h. */
#include "report/table_bands.h"
#include "report/character.h"
#include "report/write.h"

#include <stdlib.h>
#include <string.h>

/* The first column keeps this, whatever the others take. */
#define LEAST_FIRST 16
/* It keeps this where bands can be parted neatly. */
#define NEAT_FIRST 24

static size_t columns_of(const char *text)
{
    return gtl_columns(text, strlen(text));
}

static void widen(size_t *width, size_t candidate)
{
    if (candidate > *width) *width = candidate;
}

gtl_width gtl_width_of_figure(const char *figure)
{
    size_t all = columns_of(figure), whole = strcspn(figure, ".");
    if (whole > all) whole = all;
    return (gtl_width){whole, all - whole, all};
}

size_t gtl_table_rows(const gtl_table *table)
{
    return table->cell_count / (size_t)table->column_count;
}

const gtl_table_cell *gtl_table_row(const gtl_table *table, size_t row)
{
    return table->cells + row * (size_t)table->column_count;
}

bool gtl_heads_rows(const gtl_table *table, const gtl_table_cell *row)
{
    return table->column_count > 1 && !row[1].text;
}

static void measure(gtl_layout *layout, int column)
{
    const gtl_table *table = layout->table;
    gtl_width *width = &layout->widths[column];
    widen(&width->all, columns_of(table->columns[column].head));
    for (size_t i = 0; i < gtl_table_rows(table); i++) {
        const gtl_table_cell *row = gtl_table_row(table, i);
        if (!row[column].text || gtl_heads_rows(table, row)) continue;
        gtl_width needed = gtl_width_of_figure(row[column].text);
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
    for (int i = from; i < to; i++) width += GTL_TABLE_GAP + layout->widths[i].all;
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

bool gtl_layout_next(gtl_layout *layout)
{
    int count = layout->table->column_count;
    bool first = layout->to == 0;
    if (!first && layout->to == count) return false;
    layout->from = first ? 1 : layout->to;
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
    return true;
}

bool gtl_layout_begin(gtl_layout *layout, const gtl_table *table)
{
    *layout = (gtl_layout){.table = table};
    layout->widths = calloc((size_t)table->column_count, sizeof *layout->widths);
    for (int i = 0; layout->widths && i < table->column_count; i++) measure(layout, i);
    return layout->widths;
}

void gtl_layout_end(gtl_layout *layout)
{
    free(layout->widths);
}
