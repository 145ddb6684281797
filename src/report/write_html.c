/* write_html.c - a page as HTML: the document's own words in their order, the drawings behind its head, the
 * rig file behind its end. No script, and nothing is loaded from anywhere: the policy in the head forbids it.
 */
#include "report/character.h"
#include "report/escape.h"
#include "report/html.h"
#include "report/write.h"

#include <gantline/version.h>
#include <stdlib.h>
#include <string.h>

/* --- pieces --- */

void gtl_html_element(gtl_text *out, const char *tag, const char *attributes, const char *text)
{
    gtl_text_add(out, "<%s%s>", tag, attributes);
    gtl_escape_markup(out, text);
    gtl_text_add(out, "</%s>", tag);
}

void gtl_html_scroll_begin(gtl_text *out, const char *kind, const char *label, int number)
{
    gtl_text_add(out, "<div class=\"scroll %s\" tabindex=\"0\" role=\"region\" aria-label=\"", kind);
    gtl_escape_markup(out, label);
    if (number > 1) gtl_text_add(out, " (%d)", number);
    gtl_text_add(out, "\">\n");
}

void gtl_html_scroll_end(gtl_text *out)
{
    gtl_text_add(out, "</div>\n");
}

/* A heading's words as an id: small letters and figures, up to what is said behind a comma or in brackets. No
 * word of the user's stands in a heading. */
static void add_id(gtl_text *out, const char *heading)
{
    size_t length = strcspn(heading, ",:[");
    while (length > 0 && heading[length - 1] == ' ') length--;
    for (size_t i = 0; i < length; i++) {
        char letter = heading[i];
        bool capital = letter >= 'A' && letter <= 'Z';
        bool plain = (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9');
        gtl_text_add(out, "%c", capital ? letter - 'A' + 'a' : plain ? letter : '-');
    }
}

/* Words that may be shortened, and are no longer than that many lines of text. */
static void add_short(gtl_text *out, const gtl_element *element)
{
    size_t room = (size_t)element->most_lines * GTL_TEXT_WIDTH, size = strlen(element->text);
    if (element->most_lines == 0 || gtl_columns(element->text, size) <= room) {
        gtl_escape_markup(out, element->text);
        return;
    }
    size_t length = 0, columns = 0;
    while (columns < room) {
        gtl_character next = gtl_character_at(element->text + length);
        columns += gtl_character_width(next.code);
        length += next.bytes;
    }
    char *front = gtl_text_copy(element->text, length);
    if (front)
        gtl_escape_markup(out, front);
    else
        out->failed = true;
    gtl_text_add(out, "...");
    free(front);
}

/* --- elements --- */

static void wrapped(gtl_text *out, const char *tag, const gtl_element *element)
{
    gtl_text_add(out, element->strong ? "<%s class=\"strong\">" : "<%s>", tag);
    add_short(out, element);
    gtl_text_add(out, "</%s>\n", tag);
}

static void labelled(gtl_text *out, const gtl_element *element)
{
    gtl_text_add(out, "<div>");
    gtl_html_element(out, "dt", "", element->label);
    wrapped(out, "dd", element);
    gtl_text_add(out, "</div>\n");
}

static void title(gtl_text *out, const gtl_element *element)
{
    wrapped(out, "h1", element);
}

static void paragraph(gtl_text *out, const gtl_element *element)
{
    wrapped(out, "p", element);
}

static void bullet(gtl_text *out, const gtl_element *element)
{
    wrapped(out, "li", element);
}

static void equation(gtl_text *out, const gtl_element *element)
{
    gtl_html_element(out, "p", " class=\"equation\"", element->text);
    gtl_text_add(out, "\n");
}

static void figure(gtl_text *out, const gtl_element *element)
{
    gtl_html_scroll_begin(out, "drawing", element->label, 1);
    gtl_text_add(out, "%s", element->text);
    gtl_html_scroll_end(out);
}

/* A line of handwriting takes 9 mm. */
static void room(gtl_text *out, const gtl_element *element)
{
    gtl_text_add(out, "<div class=\"room\" style=\"height:%dmm\"></div>\n", 9 * element->most_lines);
}

static void leaf(gtl_text *out, const gtl_element *element)
{
    (void)element;
    gtl_text_add(out, "<div class=\"leaf\"></div>\n");
}

/* How each kind is written, and what a run of that kind stands in; a heading opens a section. */
static const struct gtl_html_kind {
    void (*write)(gtl_text *out, const gtl_element *element);
    const char *open;
    const char *close;
} kinds[] = {
    [GTL_TITLE] = {title, "", ""},
    [GTL_PARAGRAPH] = {paragraph, "", ""},
    [GTL_PAIR] = {labelled, "<dl class=\"pairs\">\n", "</dl>\n"},
    [GTL_BULLET] = {bullet, "<ul>\n", "</ul>\n"},
    [GTL_NOTE] = {labelled, "<h3>What these warnings mean</h3>\n<dl class=\"notes\">\n", "</dl>\n"},
    [GTL_EQUATION] = {equation, "", ""},
    [GTL_FIGURE] = {figure, "", ""},
    [GTL_ROOM] = {room, "", ""},
    [GTL_LEAF] = {leaf, "", ""},
};

/* All elements of one kind that stand together; where the next stands. */
static size_t run_of(gtl_text *out, const gtl_document *document, size_t at)
{
    gtl_element_kind kind = document->elements[at].kind;
    gtl_text_add(out, "%s", kinds[kind].open);
    for (; at < document->count && document->elements[at].kind == kind; at++)
        kinds[kind].write(out, &document->elements[at]);
    gtl_text_add(out, "%s", kinds[kind].close);
    return at;
}

static bool ends_step(gtl_element_kind kind)
{
    return kind == GTL_HEADING || kind == GTL_STEP || kind == GTL_LEAF;
}

/* Elements that stand under `heading`, up to one at which `ends` says so; where that stands. */
static size_t elements_until(gtl_text *out, const gtl_document *document, size_t at, const char *heading,
                             bool (*ends)(gtl_element_kind))
{
    while (at < document->count && !ends(document->elements[at].kind)) {
        if (document->elements[at].kind == GTL_TABLE)
            gtl_html_table(out, document->elements[at++].table, heading);
        else
            at = run_of(out, document, at);
    }
    return at;
}

/* Open as long as nobody folds it away, so that whoever only reads misses nothing. */
static size_t step(gtl_text *out, const gtl_document *document, size_t at)
{
    const char *title = document->elements[at].text;
    gtl_text_add(out, "<details class=\"step\" open=\"open\">\n<summary>");
    gtl_html_element(out, "h3", "", title);
    gtl_text_add(out, "</summary>\n");
    at = elements_until(out, document, at + 1, title, ends_step);
    gtl_text_add(out, "</details>\n");
    return at;
}

static bool ends_plain(gtl_element_kind kind)
{
    return kind == GTL_HEADING || kind == GTL_STEP;
}

/* Everything up to the next heading; where that stands. */
static size_t up_to_heading(gtl_text *out, const gtl_document *document, size_t at, const char *heading)
{
    while (at < document->count && document->elements[at].kind != GTL_HEADING) {
        if (document->elements[at].kind == GTL_STEP)
            at = step(out, document, at);
        else
            at = elements_until(out, document, at, heading, ends_plain);
    }
    return at;
}

static void sections(gtl_text *out, const gtl_document *document, size_t at)
{
    while (at < document->count) {
        const char *heading = document->elements[at].text;
        gtl_text_add(out, "<section>\n<h2 id=\"");
        add_id(out, heading);
        gtl_text_add(out, "\">");
        gtl_escape_markup(out, heading);
        gtl_text_add(out, "</h2>\n");
        at = up_to_heading(out, document, at + 1, heading);
        gtl_text_add(out, "</section>\n");
    }
}

/* --- the page --- */

static void link_to(gtl_text *out, const char *id, const char *words)
{
    gtl_text_add(out, "<li><a href=\"#");
    add_id(out, id);
    gtl_text_add(out, "\">");
    gtl_escape_markup(out, words);
    gtl_text_add(out, "</a></li>\n");
}

static void contents(gtl_text *out, const gtl_page *page)
{
    const gtl_document *document = &page->document;
    gtl_text_add(out, "<nav aria-label=\"Contents\">\n<details>\n<summary>Contents</summary>\n<ul>\n");
    if (page->case_count > 0) link_to(out, "drawing", "Drawing");
    for (size_t i = 0; i < document->count; i++)
        if (document->elements[i].kind == GTL_HEADING)
            link_to(out, document->elements[i].text, document->elements[i].text);
    if (page->source) link_to(out, "rig-file", "The rig file as read");
    gtl_text_add(out, "</ul>\n</details>\n</nav>\n");
}

/* Empty on purpose: it is filled in by hand, on paper. */
static const char checked_by[] =
    "<section class=\"checked\">\n<h2 id=\"checked-by\">Checked by</h2>\n"
    "<dl>\n<div><dt>Name</dt><dd></dd></div>\n<div><dt>Date</dt><dd></dd></div>\n"
    "<div><dt>Signature</dt><dd></dd></div>\n</dl>\n"
    "<p>While this is empty nobody has checked it.</p>\n</section>\n";

static void head(gtl_text *out, const gtl_page *page)
{
    gtl_text_add(out, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n"
                      "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; "
                      "style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'\"/>\n"
                      "<meta name=\"referrer\" content=\"no-referrer\"/>\n"
                      "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n"
                      "<meta name=\"generator\" content=\"gantline ");
    gtl_escape_markup(out, gtl_version());
    gtl_text_add(out, "\"/>\n<title>");
    add_short(out, &page->document.elements[0]);
    gtl_text_add(out, "</title>\n<style>\n");
    gtl_html_style(out, page);
    gtl_text_add(out, "</style>\n</head>\n");
}

/* The document's head is its title and what stands before the first heading. */
char *gtl_write_html(const gtl_page *page)
{
    gtl_text out = {0};
    head(&out, page);
    gtl_text_add(&out, "<body>\n<main>\n<header>\n");
    size_t at = up_to_heading(&out, &page->document, 0, "");
    gtl_text_add(&out, "%s</header>\n", page->checked_by ? checked_by : "");
    contents(&out, page);
    if (page->case_count > 0) gtl_html_drawings(&out, page);
    sections(&out, &page->document, at);
    gtl_html_source(&out, page);
    gtl_text_add(&out, "</main>\n<footer>\n<p>Written by gantline %s.</p>\n</footer>\n</body>\n</html>\n",
                 gtl_version());
    return gtl_text_take(&out);
}
