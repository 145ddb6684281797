/* report_text.c - see report_text.h. */
#include "unit/report_text.h"
#include "unit/rated.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

char *printed(const char *rig)
{
    rated result = rate_sound("%s", rig);
    char *text = gtl_report(&result.sheet, GTL_TEXT);
    rated_end(&result);
    assert_non_null(text);
    return text;
}

char *flowing(const char *rig)
{
    char *text = printed(rig), *to = text;
    for (const char *from = text; *from; from++) {
        char sign = *from;
        if (sign == '\n') sign = ' ';
        if (sign != ' ' || (to > text && to[-1] != ' ')) *to++ = sign;
    }
    *to = '\0';
    return text;
}

void assert_says(const char *text, const char *words)
{
    if (!strstr(text, words)) fail_msg("not said: %s\n%s", words, text);
}

void assert_keeps_quiet(const char *text, const char *words)
{
    if (strstr(text, words)) fail_msg("said: %s\n%s", words, text);
}
