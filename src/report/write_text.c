/* write_text.c - a document as plain text, no line wider than GTL_TEXT_WIDTH columns. */
#include "base/text.h"
#include "report/character.h"
#include "report/table_text.h"
#include "report/wrap.h"
#include "report/write.h"

#include <string.h>

/* Labels of pairs that stand together are lined up, as long as none is wider than this. */
#define WIDEST_LABEL 20

/* A line of a sign, as wide as given. */
static void rule(gtl_text *out, char sign, size_t width)
{
    for (size_t i = 0; i < width; i++) gtl_text_put(out, &sign, 1);
    gtl_text_put(out, "\n", 1);
}

static void words(gtl_text *out, const gtl_element *element, size_t indent)
{
    gtl_wrap wrap = {
        .column = indent, .indent = indent, .width = GTL_TEXT_WIDTH, .most_lines = element->most_lines};
    gtl_wrap_words(out, element->text, &wrap);
}

static void title(gtl_text *out, const gtl_element *element)
{
    words(out, element, 0);
    rule(out, '=', GTL_TEXT_WIDTH);
}

static void heading(gtl_text *out, const gtl_element *element)
{
    if (out->length > 0) gtl_text_put(out, "\n", 1);
    words(out, element, 0);
    size_t width = gtl_columns(element->text, strlen(element->text));
    rule(out, '-', width < GTL_TEXT_WIDTH ? width : GTL_TEXT_WIDTH);
}

static void bullet(gtl_text *out, const gtl_element *element)
{
    gtl_text_add(out, "- ");
    words(out, element, 2);
}

/* Where the text begins of the pairs around element `at`: behind the widest of their labels. */
static size_t pair_indent(const gtl_document *document, size_t at)
{
    size_t widest = 0;
    for (size_t i = at; i < document->count && document->elements[i].kind == GTL_PAIR; i++) {
        const char *label = document->elements[i].label;
        size_t width = gtl_columns(label, strlen(label));
        if (width > widest && width <= WIDEST_LABEL) widest = width;
    }
    return widest + 2;
}

/* A label too wide to be lined up has its text begin right behind it. */
static void pair(gtl_text *out, const gtl_element *element, size_t indent)
{
    size_t width = gtl_columns(element->label, strlen(element->label));
    gtl_wrap wrap = {
        .column = indent, .indent = indent, .width = GTL_TEXT_WIDTH, .most_lines = element->most_lines};
    if (width + 2 > GTL_TEXT_WIDTH / 2) {
        gtl_wrap name = {.width = GTL_TEXT_WIDTH};
        gtl_wrap_words(out, element->label, &name);
        gtl_wrap_indent(out, indent);
    } else {
        gtl_text_add(out, "%s", element->label);
        gtl_wrap_indent(out, width + 2 > indent ? 2 : indent - width);
        if (width + 2 > indent) wrap.column = width + 2;
    }
    gtl_wrap_words(out, element->text, &wrap);
}

static void paragraph(gtl_text *out, const gtl_element *element)
{
    words(out, element, 0);
}

static void step(gtl_text *out, const gtl_element *element)
{
    gtl_text_put(out, "\n", 1);
    words(out, element, 0);
}

/* Set in, and what goes on below it further. */
static void equation(gtl_text *out, const gtl_element *element)
{
    gtl_wrap wrap = {.column = 4, .indent = 8, .width = GTL_TEXT_WIDTH};
    gtl_wrap_indent(out, 4);
    gtl_wrap_words(out, element->text, &wrap);
}

static void room(gtl_text *out, const gtl_element *element)
{
    for (int i = 0; i < element->most_lines; i++) gtl_text_put(out, "\n", 1);
}

/* A printer's own sign for it. */
static void leaf(gtl_text *out, const gtl_element *element)
{
    (void)element;
    gtl_text_put(out, "\f", 1);
}

/* Room is short here: docs/report.md has what a note says. Nor can anything be drawn. */
static void left_out(gtl_text *out, const gtl_element *element)
{
    (void)out, (void)element;
}

static void (*const plain[])(gtl_text *, const gtl_element *) = {
    [GTL_TITLE] = title,   [GTL_HEADING] = heading, [GTL_PARAGRAPH] = paragraph, [GTL_BULLET] = bullet,
    [GTL_NOTE] = left_out, [GTL_STEP] = step,       [GTL_EQUATION] = equation,   [GTL_FIGURE] = left_out,
    [GTL_ROOM] = room,     [GTL_LEAF] = leaf};

char *gtl_write_text(const gtl_document *document)
{
    if (document->failed) return NULL;
    gtl_text out = {0};
    size_t indent = 0;
    for (size_t i = 0; i < document->count; i++) {
        const gtl_element *element = &document->elements[i];
        bool opens = i == 0 || document->elements[i - 1].kind != GTL_PAIR;
        if (element->kind == GTL_PAIR && opens) indent = pair_indent(document, i);
        if (element->kind == GTL_PAIR)
            pair(&out, element, indent);
        else if (element->kind == GTL_TABLE)
            gtl_table_text(&out, element->table);
        else
            plain[element->kind](&out, element);
    }
    return gtl_text_take(&out);
}
