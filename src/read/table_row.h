/* table_row.h - a row of a hardware table while its section is read. */
#ifndef READ_TABLE_ROW_H
#define READ_TABLE_ROW_H

#include "read/table_keys.h"

#include <gantline/read.h>

typedef struct gtl_table_row {
    gtl_hardware_row *row;
    bool shipped;
    bool rough; /* something in it could not be read: nothing may be called missing, no lists be compared */
    int edge_count;
    int share_count;
    int lines[GTL_TABLE_KEY_LIMIT]; /* where each key was stated, 0 where it was not */
    gtl_fault_list *faults;
} gtl_table_row;

/* Where a key of the row's kind was stated, 0 where it was not. */
int gtl_table_line(const gtl_table_row *r, const char *key);

/* Read the value of `entry`, whose key has that index, into the row. What cannot be read is a fault. */
void gtl_table_store(gtl_table_row *r, int key, const gtl_entry *entry);

/* table_wood.c: what contradicts itself in a species' row. */
void gtl_table_check_wood(gtl_table_row *r);

/* Once all keys are read: tell what the row lacks, and what contradicts itself; settle its rule and steps. */
void gtl_table_finish(gtl_table_row *r);

#endif
