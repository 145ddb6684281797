/* later.c - words of the format that this version does not know yet. */
#include "read/later.h"

/* Each list ends with NULL. */
static const char *const keys[] = {
    "hardware",       "tables",       "knot",        "termination", "diameter",    "sheave diameter",
    "pin diameter",   "hitch",        "choke angle", "axis",        "side load",   "material",
    "wear",           "wet",          "use",         "species",     "fall",        "stretch",
    "length on load", "acceleration", "speed",       "time",        "loss factor", "or",
    "picks",          "loads",        NULL,
};
static const char *const kinds[] = {"batten", "arbor", NULL};
static const char *const cases[] = {"jam", "start", "stop", "lost", "drop", "all", NULL};

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

bool gtl_is_later_case(gtl_word word)
{
    return is_in(cases, word);
}
