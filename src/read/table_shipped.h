/* table_shipped.h - the shipped tables, compiled in: the Makefile makes the array from hardware-tables/. */
#ifndef READ_TABLE_SHIPPED_H
#define READ_TABLE_SHIPPED_H

typedef struct gtl_shipped_table {
    const char *file; /* "hardware-tables/knots.ini" */
    const char *text;
} gtl_shipped_table;

/* Ends with a table without a file. */
extern const gtl_shipped_table gtl_shipped_tables[];

#endif
