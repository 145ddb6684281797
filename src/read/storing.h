/* storing.h - what the files that store values share. */
#ifndef READ_STORING_H
#define READ_STORING_H

#include "read/store.h"

/* One value on its way. */
typedef struct gtl_storing {
    gtl_draft *draft;
    gtl_item *item;
    const gtl_key_row *row;
    const gtl_entry *entry;
    gtl_fault_list *faults;
} gtl_storing;

/* Cut off the word that comes first; it ends at a blank. */
gtl_word gtl_first_word(gtl_word *rest);

/* Whether a word is that text; case does not count. */
bool gtl_word_is(gtl_word word, const char *text);

/* store.c: a number as its row wants it, in SI; false after a fault. */
bool gtl_read_number(const gtl_storing *s, const char *text, double *value);
void gtl_store_number(const gtl_storing *s);

/* store_range.c: a number, or two as `high` beside it. */
void gtl_store_range(const gtl_storing *s);

/* store_cases.c */
void gtl_store_cases(const gtl_storing *s);

/* store_batten.c */
void gtl_store_picks(const gtl_storing *s);
void gtl_store_hung(const gtl_storing *s);

/* store_gear.c */
void gtl_store_row(const gtl_storing *s);
void gtl_store_hitch(const gtl_storing *s);
void gtl_store_axis(const gtl_storing *s);
void gtl_store_tables(const gtl_storing *s);

/* store_timber.c */
void gtl_store_species(const gtl_storing *s);
void gtl_store_diameters(const gtl_storing *s);
void gtl_store_wood_end(const gtl_storing *s);

/* store_stretch.c */
void gtl_store_stretch(const gtl_storing *s);

#endif
