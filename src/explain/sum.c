/* sum.c - a sum, term by term. */
#include "explain/lesson.h"

void gtl_sum_add(gtl_text *sum, bool minus, const char *term)
{
    if (sum->length > 0)
        gtl_text_add(sum, minus ? " - %s" : " + %s", term);
    else
        gtl_text_add(sum, minus ? "-%s" : "%s", term);
}

char *gtl_sum_take(gtl_text *sum)
{
    if (sum->length == 0) gtl_text_add(sum, "0");
    return gtl_text_take(sum);
}
