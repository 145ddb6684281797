/* sections.h - entries to a draft. */
#ifndef READ_SECTIONS_H
#define READ_SECTIONS_H

#include "rig/draft.h"

#include <gantline/read.h>

/* Read all entries into a draft that was begun. Lines that are missing among them, for faults told already,
 * are the draft's to know: its sheet is rough then. What cannot be read is a fault; the draft can be built on
 * in any case but out of memory. */
void gtl_read_sections(const gtl_entry *entries, size_t count, gtl_draft *draft, gtl_fault_list *faults);

#endif
