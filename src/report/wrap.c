/* wrap.c - running text into lines of a width. */
#include "report/wrap.h"
#include "report/character.h"

#include <string.h>

#define DOTS "..."

/* How many bytes of `words` go on a line of `room` columns: up to the last blank that fits, else as many
 * characters as fit, but always one. */
static size_t fitting(const char *words, size_t room)
{
    size_t columns = 0, at = 0, blank = 0;
    while (words[at]) {
        if (words[at] == ' ') blank = at;
        gtl_character next = gtl_character_at(words + at);
        columns += gtl_character_width(next.code);
        if (columns > room && words[at] == ' ') return at;
        if (columns > room) return blank > 0 ? blank : at > 0 ? at : next.bytes;
        at += next.bytes;
    }
    return at;
}

static size_t without_blanks_behind(const char *words, size_t length)
{
    while (length > 0 && words[length - 1] == ' ') length--;
    return length;
}

void gtl_wrap_indent(gtl_text *out, size_t columns)
{
    gtl_text_add(out, "%*s", (int)columns, "");
}

/* The last line that is allowed, with dots if there is more than fits it. */
static void last_line(gtl_text *out, const char *words, size_t room)
{
    size_t length = strlen(words);
    if (gtl_columns(words, length) <= room) {
        gtl_text_add(out, "%s\n", words);
        return;
    }
    length = without_blanks_behind(words, fitting(words, room - strlen(DOTS)));
    gtl_text_put(out, words, length);
    gtl_text_add(out, DOTS "\n");
}

void gtl_wrap_words(gtl_text *out, const char *words, const gtl_wrap *wrap)
{
    size_t room = wrap->width - wrap->column;
    for (int line = 1; line != wrap->most_lines; line++) {
        size_t taken = fitting(words, room);
        gtl_text_put(out, words, without_blanks_behind(words, taken));
        gtl_text_put(out, "\n", 1);
        words += taken;
        words += strspn(words, " ");
        if (!*words) return;
        gtl_wrap_indent(out, wrap->indent);
        room = wrap->width - wrap->indent;
    }
    last_line(out, words, room);
}
