/* html_source.c - the rig file in the page, so that whoever gets the page can copy it out and run it again.
 *
 * Copied text has the file's bytes, but for line ends, which are LF, and a byte-order mark before them all,
 * which says nothing in a page. What would hide or turn the direction of writing stays in it, shut into an
 * element of its own, where it turns nothing else, and is named. */
#include "report/escape.h"
#include "report/html.h"

#include <stdlib.h>
#include <string.h>

/* The longest character in UTF-8 [bytes]. */
#define LONGEST 4

#define BYTE_ORDER_MARK "\xEF\xBB\xBF"

/* What the file holds that is not plain. */
typedef struct gtl_oddities {
    bool named; /* characters that are named in brackets */
    bool lost;  /* bytes that no page can hold */
} gtl_oddities;

/* One character as a string. */
static void put(gtl_text *out, const char *at, size_t bytes)
{
    char one[LONGEST + 1] = {0};
    memcpy(one, at, bytes);
    gtl_escape_markup(out, one);
}

static void put_named(gtl_text *out, const char *at, gtl_character character)
{
    gtl_text_add(out, "<bdi class=\"named\" data-code=\"U+%04lX\">", character.code);
    put(out, at, character.bytes);
    gtl_text_add(out, "</bdi>");
}

/* The character at `at`, of which some may lie past the end of the file. */
static void add_character(gtl_text *out, const char *at, gtl_character character, gtl_oddities *odd)
{
    bool kept = character.code == '\t' || character.code == '\n';
    if (!gtl_is_xml(character) || character.code == '\r') {
        odd->lost = true;
        gtl_text_add(out, "\xEF\xBF\xBD");
    } else if (gtl_steers(character.code) && !kept) {
        odd->named = true;
        put_named(out, at, character);
    } else {
        put(out, at, character.bytes);
    }
}

/* `text` ends with a zero behind its `size` bytes, and may hold others. */
static void add_text(gtl_text *out, const char *text, size_t size, gtl_oddities *odd)
{
    size_t begin = strncmp(text, BYTE_ORDER_MARK, strlen(BYTE_ORDER_MARK)) == 0 ? strlen(BYTE_ORDER_MARK) : 0;
    for (size_t i = begin; i < size;) {
        gtl_character next = gtl_character_at(text + i);
        bool line_end = text[i] == '\r' && text[i + 1] == '\n';
        if (!line_end) add_character(out, text + i, next, odd);
        i += next.bytes;
    }
}

static void introduce(gtl_text *out, const gtl_oddities *odd)
{
    gtl_text_add(out, "<p>Copy this into a file to run the same rig again.");
    if (odd->named)
        gtl_text_add(out, " Characters that hide, or turn the direction of writing, are named in brackets; "
                          "they are copied with the rest.");
    if (odd->lost)
        gtl_text_add(out,
                     " Some bytes are no text that a page can hold: a copy lacks them, and has a mark in "
                     "the place of each.");
    gtl_text_add(out, "</p>\n");
}

void gtl_html_source(gtl_text *out, const gtl_page *page)
{
    if (!page->source) return;
    gtl_text shown = {0};
    gtl_oddities odd = {false, false};
    char *text = gtl_text_copy(page->source, page->source_size);
    if (text)
        add_text(&shown, text, page->source_size, &odd);
    else
        out->failed = true;
    free(text);
    gtl_text_add(out, "<section>\n<h2 id=\"rig-file\">The rig file as read</h2>\n");
    introduce(out, &odd);
    gtl_html_scroll_begin(out, "source", "The rig file as read", 1);
    gtl_text_add(out, "<pre><code>");
    if (shown.failed) out->failed = true;
    if (shown.length > 0) gtl_text_put(out, shown.bytes, shown.length);
    gtl_text_add(out, "</code></pre>\n");
    gtl_html_scroll_end(out);
    gtl_text_add(out, "</section>\n");
    free(shown.bytes);
}
