/* store.h - the value of one key into the draft. */
#ifndef READ_STORE_H
#define READ_STORE_H

#include "read/keys.h"
#include "rig/draft.h"

/* Read the value of `entry`, whose key is `row`, into `item`. What cannot be read is a fault and stays
 * absent. */
void gtl_store(gtl_draft *draft, gtl_item *item, const gtl_key_row *row, const gtl_entry *entry,
               gtl_fault_list *faults);

/* Keep that the key was stated, but not its value: a fault was told of it. */
void gtl_store_nothing(gtl_draft *draft, gtl_item *item, const gtl_key_row *row, int line);

#endif
