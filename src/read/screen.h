/* screen.h - the strict look at a rig file's text before iniparser sees it.
 *
 * iniparser merges, cuts and drops silently: a section or key given twice, a value with `#` or `;` in it, the
 * line after a trailing `\`, a last line of one byte, `[]`. The screen tells all that, and passes on only
 * lines that it has understood, without their comments, so that the two cannot read a line differently. */
#ifndef READ_SCREEN_H
#define READ_SCREEN_H

#include "base/text.h"

#include <gantline/read.h>

typedef struct gtl_screened {
    gtl_text clean;     /* the understood lines, for iniparser; line numbers are not kept */
    gtl_entry *entries; /* as the lines say, but every value is still "" */
    size_t count;
    size_t capacity;
    bool rough;    /* a line was left out for a fault: nothing may be called missing */
    bool headless; /* one of them was a header: nor may a name be called unknown */

    char *bytes; /* kinds, names and keys point in here */
} gtl_screened;

/* What messages call the file, and headers that it may hold. */
typedef struct gtl_sort_of_file {
    const char *name;
    const char *headers; /* instead of a wrong one */
    const char *first;   /* instead of none */
} gtl_sort_of_file;

extern const gtl_sort_of_file gtl_rig_file;
extern const gtl_sort_of_file gtl_table_file;

/* Screen a text. False if nothing of it can be read, or without memory. The caller gives the result back
 * with gtl_screened_end in every case. */
bool gtl_screen(const char *text, size_t size, const gtl_sort_of_file *sort, gtl_screened *screened,
                gtl_fault_list *faults);
void gtl_screened_end(gtl_screened *screened);

#endif
