/* table.h - the text of a table as records of cells, each record with the line on which it begins. */
#ifndef LAB_TABLE_H
#define LAB_TABLE_H

#include "base/text.h"

typedef struct gtl_lab_record {
    int line;
    size_t first; /* cell */
    size_t count;
} gtl_lab_record;

/* Begin with {0}. The first record is the header. */
typedef struct gtl_lab_table {
    gtl_text bytes; /* of all cells, each with a final zero */
    size_t *cells;  /* where each begins in `bytes` */
    size_t cell_count;
    size_t cell_capacity;
    gtl_lab_record *records;
    size_t record_count;
    size_t record_capacity;
} gtl_lab_table;

/* Cut a text into records. Records without anything in them are passed over: a spreadsheet leaves them. False
 * with what is wrong in `faults`, where out_of_memory is set without memory. */
bool gtl_lab_table_read(const char *text, size_t size, gtl_lab_table *table, gtl_fault_list *faults);
void gtl_lab_table_end(gtl_lab_table *table);

/* What stands in a column of a record, without blanks at its ends; "" past the record's end. */
const char *gtl_lab_cell(const gtl_lab_table *table, const gtl_lab_record *record, int column);

#endif
