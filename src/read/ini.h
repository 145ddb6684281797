/* ini.h - the values of a screened text, as iniparser reads them. */
#ifndef READ_INI_H
#define READ_INI_H

#include "base/text.h"

#include <gantline/read.h>

/* Read the text and give every key among the entries its value. The values belong to *kept, which the caller
 * gives back with gtl_ini_end, in every case. False after a fault or without memory. */
bool gtl_ini_values(const gtl_text *clean, gtl_entry *entries, size_t count, void **kept,
                    gtl_fault_list *faults);
void gtl_ini_end(void *kept);

#endif
