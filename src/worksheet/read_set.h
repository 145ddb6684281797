/* read_set.h - one problem of a set on its way from entries. */
#ifndef WORKSHEET_READ_SET_H
#define WORKSHEET_READ_SET_H

#include "worksheet/set.h"

/* What every step of reading needs. */
typedef struct gtl_set_reading {
    gtl_set *set;
    gtl_set_opener *open;
    void *context;
    gtl_fault_list *faults;
} gtl_set_reading;

/* read_problem.c: the keys of one section, header first, into a problem that is blank but for its name. */
void gtl_read_problem(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *header,
                      const gtl_entry *end);

/* read_vary.c: `vary NAME KEY = VALUES`, once the problem's rig was read. */
void gtl_read_vary(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *entry);

/* A section's other entry with the same key that stands before it, NULL for none. */
const gtl_entry *gtl_set_twin(const gtl_entry *header, const gtl_entry *entry);

/* Tell a key that no row of `keys` has. */
void gtl_set_refuse_key(const gtl_set_reading *reading, const gtl_entry *entry, const char *const *keys,
                        size_t count);

#endif
