/* told.c - see told.h. */
#include "unit/told.h"
#include "unit/lost.h"
#include "unit/report_text.h"

#include "report/drawing.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

char *told_of(const rated *rig, const char *name)
{
    char *text = gtl_words_drawing(&rig->sheet, (int)(outcome_of(rig, name) - rig->sheet.outcomes));
    assert_non_null(text);
    return text;
}

char *told(const char *text, const char *name)
{
    rated rig = rate_sound("%s", text);
    char *words = told_of(&rig, name);
    rated_end(&rig);
    return words;
}

void expect(const char *rig, const char *name, const char *words)
{
    char *text = told(rig, name);
    assert_says(text, words);
    free(text);
}

void expect_not(const char *rig, const char *name, const char *words)
{
    char *text = told(rig, name);
    assert_keeps_quiet(text, words);
    free(text);
}
