/* unknown.h - what to say of a kind or a key that the table does not have. */
#ifndef READ_UNKNOWN_H
#define READ_UNKNOWN_H

#include <gantline/read.h>

void gtl_refuse_kind(const gtl_entry *header, gtl_fault_list *faults);
void gtl_refuse_key(const gtl_entry *entry, gtl_kind kind, gtl_fault_list *faults);

#endif
