/* table_bands.h - how a table that is too wide is told in bands, one below the other, each with the first
 * column before it. */
#ifndef REPORT_TABLE_BANDS_H
#define REPORT_TABLE_BANDS_H

#include "report/document.h"

/* Columns of characters between two columns of a table. */
#define GTL_TABLE_GAP 2

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

/* Measure a table; false without memory. The caller ends it in every case. */
bool gtl_layout_begin(gtl_layout *layout, const gtl_table *table);
void gtl_layout_end(gtl_layout *layout);

/* Go on to the next band: all columns that are left, or those up to the next that stands apart, as far as
 * they fit. False where no column is left; a table of one column is one band. */
bool gtl_layout_next(gtl_layout *layout);

gtl_width gtl_width_of_figure(const char *figure);

size_t gtl_table_rows(const gtl_table *table);
const gtl_table_cell *gtl_table_row(const gtl_table *table, size_t row);

/* Whether a row has but its first cell. */
bool gtl_heads_rows(const gtl_table *table, const gtl_table_cell *row);

#endif
