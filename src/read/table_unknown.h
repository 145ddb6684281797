/* table_unknown.h - what to say of a kind or a key that hardware tables do not have. */
#ifndef READ_TABLE_UNKNOWN_H
#define READ_TABLE_UNKNOWN_H

#include <gantline/hardware.h>
#include <gantline/read.h>

void gtl_table_refuse_kind(const gtl_entry *header, gtl_fault_list *faults);
void gtl_table_refuse_key(const gtl_entry *entry, gtl_hardware_kind kind, gtl_fault_list *faults);

#endif
