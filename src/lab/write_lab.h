/* write_lab.h - the writers of a lab's forms for programs. The caller frees what they return; NULL without
 * memory. */
#ifndef LAB_WRITE_LAB_H
#define LAB_WRITE_LAB_H

#include <gantline/lab.h>

/* "gantline-lab-1". */
char *gtl_write_lab_json(const gtl_lab *lab);

/* One flat table (RFC 4180), SI: the rows, then the set-ups. */
char *gtl_write_lab_csv(const gtl_lab *lab);

#endif
