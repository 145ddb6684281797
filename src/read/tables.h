/* tables.h - the hardware tables that a rig uses. */
#ifndef READ_TABLES_H
#define READ_TABLES_H

#include "rig/draft.h"

/* Give a draft, read from all its entries, the rows of its own tables and after them the shipped ones, if it
 * uses any. Faults of a table are told with the table's name. */
void gtl_load_tables(gtl_draft *draft, gtl_fault_list *faults);

#endif
