/* later.c - words of the format that this version does not know yet. */
#include "read/later.h"

/* Each list ends with NULL. */
static const char *const keys[] = {"length on load", NULL};
static const char *const kinds[] = {NULL};

static bool is_in(const char *const *list, gtl_word word)
{
    while (*list && gtl_word_compare(word, gtl_word_of(*list)) != 0) list++;
    return *list != NULL;
}

bool gtl_is_later_key(gtl_word word)
{
    return is_in(keys, word);
}

bool gtl_is_later_kind(gtl_word word)
{
    return is_in(kinds, word);
}
