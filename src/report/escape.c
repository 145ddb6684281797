/* escape.c - the only door through which a user's words come into a report. */
#include "report/escape.h"
#include <stdlib.h>
#include <string.h>

#define REPLACEMENT "\xEF\xBF\xBD"

bool gtl_steers(unsigned long code)
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
    return !character.valid || gtl_steers(character.code) ? "?" : NULL;
}

static const char *for_programs(gtl_character character)
{
    return character.valid ? NULL : REPLACEMENT;
}

/* Of the control characters XML has but the tab and the line ends. */
bool gtl_is_xml(gtl_character character)
{
    unsigned long code = character.code;
    bool control = code < 0x20 && code != '\t' && code != '\n' && code != '\r';
    return character.valid && !control && code != 0xFFFE && code != 0xFFFF;
}

/* A carriage return as such: a reader of markup would make a line end of it. */
static const char *for_markup(gtl_character character)
{
    switch (character.code) {
    case '&':
        return "&amp;";
    case '<':
        return "&lt;";
    case '>':
        return "&gt;";
    case '"':
        return "&quot;";
    case '\'':
        return "&#39;";
    case '\r':
        return "&#13;";
    default:
        return gtl_is_xml(character) ? NULL : REPLACEMENT;
    }
}

static void escape(gtl_text *out, const char *text, const char *(*instead_of)(gtl_character))
{
    while (*text) {
        gtl_character next = gtl_character_at(text);
        const char *instead = instead_of(next);
        if (instead)
            gtl_text_put(out, instead, strlen(instead));
        else
            gtl_text_put(out, text, next.bytes);
        text += next.bytes;
    }
}

static char *escaped(const char *text, const char *(*instead_of)(gtl_character))
{
    gtl_text out = {0};
    escape(&out, text, instead_of);
    return gtl_text_take(&out);
}

void gtl_escape_markup(gtl_text *out, const char *text)
{
    escape(out, text, for_markup);
}

char *gtl_escape_for_people(const char *text)
{
    return escaped(text, for_people);
}

char *gtl_escape_for_programs(const char *text)
{
    return escaped(text, for_programs);
}
