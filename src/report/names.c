/* names.c - a list of names in a sentence: "head, tail and 3 more". */
#include "report/names.h"

static int left_out(const gtl_names *names)
{
    return names->most < 0 || names->count <= names->most ? 0 : names->count - names->most;
}

void gtl_names_add(gtl_names *names, const char *name)
{
    names->count++;
    if (left_out(names) == 0) gtl_text_add(names->text, "%s%s", names->count > 1 ? ", " : "", name);
}

void gtl_names_end(gtl_names *names)
{
    if (left_out(names) > 0) gtl_text_add(names->text, " and %d more", left_out(names));
}
