/* escape.c - the only door through which a user's words come into a report. */
#include "report/escape.h"
#include "base/text.h"
#include "report/character.h"
#include <stdlib.h>
#include <string.h>

/* Characters that would steer a terminal, break the line, hide, or turn the direction of writing. */
static bool steers(unsigned long code)
{
    bool control = code < 0x20 || (code >= 0x7F && code <= 0x9F);
    bool line_end = code == 0x2028 || code == 0x2029;
    bool direction = code == 0x061C || code == 0x200E || code == 0x200F ||
                     (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
    bool hidden = code == 0x200B || code == 0xFEFF || (code >= 0xE0000 && code <= 0xE007F);
    return control || line_end || direction || hidden;
}

/* What stands for a character in text for people, NULL for itself. */
static const char *for_people(gtl_character character)
{
    if (character.valid && (character.code == '\t' || character.code == '\n' || character.code == '\r'))
        return " ";
    return !character.valid || steers(character.code) ? "?" : NULL;
}

static const char *for_programs(gtl_character character)
{
    return character.valid ? NULL : "\xEF\xBF\xBD";
}

static char *escaped(const char *text, const char *(*instead_of)(gtl_character))
{
    gtl_text out = {0};
    gtl_text_put(&out, "", 0);
    while (*text) {
        gtl_character next = gtl_character_at(text);
        const char *instead = instead_of(next);
        if (instead)
            gtl_text_put(&out, instead, strlen(instead));
        else
            gtl_text_put(&out, text, next.bytes);
        text += next.bytes;
    }
    return gtl_text_take(&out);
}

char *gtl_escape_for_people(const char *text)
{
    return escaped(text, for_people);
}

char *gtl_escape_for_programs(const char *text)
{
    return escaped(text, for_programs);
}
