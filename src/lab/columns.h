/* columns.h - the header of a table: which column stands where, and in what unit. */
#ifndef LAB_COLUMNS_H
#define LAB_COLUMNS_H

#include "lab/table.h"

#include <gantline/lab.h>

/* Where each column stands in a record, from 0; -1: nowhere. */
typedef struct gtl_lab_places {
    int at[GTL_LAB_COLUMN_COUNT];
} gtl_lab_places;

/* Read the header. `uses` receives what is told of the columns. False with what is wrong in `faults`. */
bool gtl_lab_read_header(const gtl_lab_table *table, gtl_lab_places *places,
                         gtl_lab_column_use uses[GTL_LAB_COLUMN_COUNT], gtl_fault_list *faults);

/* Whether a column's cells are numbers with the header's unit, and of which quantity. */
bool gtl_lab_is_measured(gtl_lab_column column);
gtl_quantity gtl_lab_quantity(gtl_lab_column column);

#endif
