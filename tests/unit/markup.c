/* markup.c - see markup.h. */
#include "unit/markup.h"
#include "base/text.h"

#include <ctype.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define DEEPEST 64

char *page_of(const gtl_sheet *sheet, const char *source, size_t size)
{
    gtl_report_wish wish = {.form = GTL_HTML, .outcome = -1, .source = source, .source_size = size};
    return gtl_report_as(sheet, &wish);
}

void rename_to(char **name, const char *text)
{
    free(*name);
    *name = gtl_text_copy(text, strlen(text));
}

static const struct entity {
    const char *written;
    char sign;
} entities[] = {{"&amp;", '&'}, {"&lt;", '<'}, {"&gt;", '>'}, {"&quot;", '"'}, {"&#39;", '\''}};

static const struct entity *entity_at(const char *at)
{
    for (size_t i = 0; i < sizeof entities / sizeof *entities; i++)
        if (strncmp(at, entities[i].written, strlen(entities[i].written)) == 0) return &entities[i];
    return NULL;
}

/* Past the tag at `at`, whose attributes have to be quoted. */
static const char *tag_end(const char *at)
{
    const char *begin = at;
    while (*at && *at != '>') {
        if (*at == '=' && at[1] != '"') fail_msg("an attribute without quotes: %.80s", begin);
        if (*at == '<' && at > begin) fail_msg("a tag in a tag: %.80s", begin);
        if (*at != '"') {
            at++;
            continue;
        }
        const char *close = strchr(at + 1, '"');
        assert_non_null(close);
        for (const char *in = at + 1; in < close; in++)
            if (*in == '<' || (*in == '&' && !entity_at(in))) fail_msg("not escaped: %.80s", in);
        at = close + 1;
    }
    assert_true(*at == '>');
    return at + 1;
}

static size_t name_length(const char *name)
{
    return strcspn(name, " />\n");
}

void assert_well_formed(const char *page)
{
    const char *open[DEEPEST];
    size_t depth = 0;
    for (const char *at = page; *at;) {
        if (*at == '&' && !entity_at(at)) fail_msg("not escaped: %.80s", at);
        if (*at != '<' || at[1] == '!' || at[1] == '?') {
            at++;
            continue;
        }
        const char *end = tag_end(at);
        if (at[1] == '/') {
            size_t length = name_length(at + 2);
            if (depth-- == 0 || name_length(open[depth]) != length ||
                strncmp(open[depth], at + 2, length) != 0)
                fail_msg("closes what is not open: %.80s", at);
        } else if (end[-2] != '/') {
            assert_true(depth < DEEPEST && isalpha((unsigned char)at[1]));
            open[depth++] = at + 1;
        }
        at = end;
    }
    assert_int_equal(depth, 0);
    for (const char *id = strstr(page, " id=\""); id; id = strstr(id + 1, " id=\"")) {
        char whole[128] = "";
        strncat(whole, id, (size_t)(strchr(id + 5, '"') + 1 - id));
        if (count_of(page, whole) != 1) fail_msg("twice: %s", whole);
    }
}

char *words_between(const char *page, const char *from, const char *to)
{
    const char *at = strstr(page, from), *end = at ? strstr(at, to) : NULL;
    if (!end) fail_msg("not found: %s ... %s", from, to);
    char *words = malloc(strlen(page) + 1), *put = words;
    while (at < end) {
        const struct entity *entity = entity_at(at);
        if (*at == '<') {
            at = tag_end(at);
        } else if (entity) {
            *put++ = entity->sign;
            at += strlen(entity->written);
        } else {
            *put++ = *at++;
        }
    }
    *put = '\0';
    return words;
}

size_t count_of(const char *text, const char *part)
{
    size_t count = 0;
    for (const char *at = strstr(text, part); at; at = strstr(at + 1, part)) count++;
    return count;
}
