/* names.h - a list of names in a sentence: "head, tail and 3 more". */
#ifndef REPORT_NAMES_H
#define REPORT_NAMES_H

#include "base/text.h"

/* As many names as there are. */
#define GTL_ALL_NAMES (-1)

typedef struct gtl_names {
    gtl_text *text; /* where the names go */
    int most;       /* how many are said, or GTL_ALL_NAMES */
    int count;      /* how many there were */
} gtl_names;

void gtl_names_add(gtl_names *names, const char *name);

/* Say how many were left out. */
void gtl_names_end(gtl_names *names);

#endif
