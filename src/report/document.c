/* document.c - a report before it has a form. */
#include "report/document.h"
#include "base/grow.h"
#include "report/escape.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* An element at the document's end, NULL without memory. */
static gtl_element *append(gtl_document *document, gtl_element_kind kind)
{
    if (document->failed) return NULL;
    gtl_element *elements =
        gtl_grow(document->elements, document->count, &document->capacity, sizeof *elements);
    if (!elements) {
        document->failed = true;
        return NULL;
    }
    document->elements = elements;
    gtl_element *element = &elements[document->count++];
    *element = (gtl_element){.kind = kind};
    return element;
}

static char *cleaned(gtl_document *document, const char *text)
{
    char *clean = text ? gtl_escape_for_people(text) : NULL;
    if (!clean) document->failed = true;
    return clean;
}

static char *formatted(gtl_document *document, const char *format, va_list arguments)
{
    gtl_text text = {0};
    gtl_text_add_list(&text, format, arguments);
    char *raw = gtl_text_take(&text);
    char *clean = cleaned(document, raw);
    free(raw);
    return clean;
}

/* An element whose text is formatted. */
static void append_formatted(gtl_document *document, gtl_element_kind kind, const char *label,
                             const char *format, va_list arguments)
{
    gtl_element *element = append(document, kind);
    if (!element) return;
    if (label) element->label = cleaned(document, label);
    element->text = formatted(document, format, arguments);
}

static void append_short(gtl_document *document, gtl_element_kind kind, int most_lines, const char *text)
{
    gtl_element *element = append(document, kind);
    if (!element) return;
    element->most_lines = most_lines;
    element->text = cleaned(document, text);
}

void gtl_document_title(gtl_document *document, int most_lines, const char *text)
{
    append_short(document, GTL_TITLE, most_lines, text);
}

void gtl_document_short(gtl_document *document, int most_lines, const char *text)
{
    append_short(document, GTL_PARAGRAPH, most_lines, text);
}

void gtl_document_shorten(gtl_document *document, int most_lines)
{
    if (!document->failed) document->elements[document->count - 1].most_lines = most_lines;
}

void gtl_document_heading(gtl_document *document, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    append_formatted(document, GTL_HEADING, NULL, format, arguments);
    va_end(arguments);
}

void gtl_document_paragraph(gtl_document *document, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    append_formatted(document, GTL_PARAGRAPH, NULL, format, arguments);
    va_end(arguments);
}

void gtl_document_pair(gtl_document *document, const char *label, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    append_formatted(document, GTL_PAIR, label, format, arguments);
    va_end(arguments);
}

void gtl_document_bullet(gtl_document *document, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    append_formatted(document, GTL_BULLET, NULL, format, arguments);
    va_end(arguments);
}

void gtl_document_step(gtl_document *document, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    append_formatted(document, GTL_STEP, NULL, format, arguments);
    va_end(arguments);
}

void gtl_document_equation(gtl_document *document, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    append_formatted(document, GTL_EQUATION, NULL, format, arguments);
    va_end(arguments);
}

void gtl_document_figure(gtl_document *document, const char *label, gtl_text *markup)
{
    char *whole = gtl_text_take(markup);
    gtl_element *element = append(document, GTL_FIGURE);
    if (!element || !whole) {
        document->failed = true;
        free(whole);
        return;
    }
    element->text = whole;
    element->label = cleaned(document, label);
}

void gtl_document_room(gtl_document *document, int lines)
{
    gtl_element *element = append(document, GTL_ROOM);
    if (element) element->most_lines = lines;
}

void gtl_document_leaf(gtl_document *document)
{
    append(document, GTL_LEAF);
}

void gtl_document_note(gtl_document *document, const char *label, const char *text)
{
    append_short(document, GTL_NOTE, 0, text);
    if (!document->failed) document->elements[document->count - 1].label = cleaned(document, label);
}

void gtl_document_put(gtl_document *document, gtl_element_kind kind, const char *label, gtl_text *text)
{
    char *whole = gtl_text_take(text);
    gtl_element *element = append(document, kind);
    if (element) {
        if (label) element->label = cleaned(document, label);
        element->text = cleaned(document, whole);
    }
    free(whole);
}

/* The table at the document's end, NULL where memory failed. */
static gtl_table *last_table(gtl_document *document)
{
    return document->failed ? NULL : document->elements[document->count - 1].table;
}

void gtl_document_table(gtl_document *document, const gtl_column *columns, int column_count)
{
    gtl_element *element = append(document, GTL_TABLE);
    if (!element) return;
    element->table = calloc(1, sizeof *element->table);
    if (!element->table) document->failed = true;
    for (int i = 0; i < column_count; i++) gtl_document_column(document, &columns[i], false);
}

void gtl_document_column(gtl_document *document, const gtl_column *column, bool apart)
{
    gtl_table *table = last_table(document);
    if (!table) return;
    gtl_table_column *columns =
        gtl_grow(table->columns, (size_t)table->column_count, &table->column_capacity, sizeof *columns);
    if (!columns) {
        document->failed = true;
        return;
    }
    table->columns = columns;
    columns[table->column_count++] =
        (gtl_table_column){cleaned(document, column->head), column->number, apart};
}

/* Put a cell, whose text the table owns from now on. */
static void put_cell(gtl_document *document, char *text)
{
    gtl_table *table = last_table(document);
    gtl_table_cell *cells =
        table ? gtl_grow(table->cells, table->cell_count, &table->cell_capacity, sizeof *cells) : NULL;
    if (!cells) {
        document->failed = true;
        free(text);
        return;
    }
    table->cells = cells;
    table->cells[table->cell_count++] = (gtl_table_cell){.text = text, .bar = NAN};
}

void gtl_document_cell(gtl_document *document, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    put_cell(document, formatted(document, format, arguments));
    va_end(arguments);
}

void gtl_document_put_cell(gtl_document *document, gtl_text *text)
{
    char *whole = gtl_text_take(text);
    put_cell(document, cleaned(document, whole));
    free(whole);
}

/* The cell put last, NULL where memory failed. */
static gtl_table_cell *last_cell(gtl_document *document)
{
    gtl_table *table = last_table(document);
    return table ? &table->cells[table->cell_count - 1] : NULL;
}

void gtl_document_bar(gtl_document *document, double share)
{
    gtl_table_cell *cell = last_cell(document);
    if (cell) cell->bar = share;
}

void gtl_document_strong(gtl_document *document)
{
    gtl_table_cell *cell = last_cell(document);
    if (cell)
        cell->strong = true;
    else if (!document->failed)
        document->elements[document->count - 1].strong = true;
}

void gtl_document_row_head(gtl_document *document, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    put_cell(document, formatted(document, format, arguments));
    va_end(arguments);
    if (document->failed) return;
    int rest = document->elements[document->count - 1].table->column_count - 1;
    for (int i = 0; i < rest; i++) put_cell(document, NULL);
}

static void end_table(gtl_table *table)
{
    if (!table) return;
    for (int i = 0; i < table->column_count; i++) free(table->columns[i].head);
    for (size_t i = 0; i < table->cell_count; i++) free(table->cells[i].text);
    free(table->columns);
    free(table->cells);
    free(table);
}

void gtl_document_end(gtl_document *document)
{
    for (size_t i = 0; i < document->count; i++) {
        gtl_element *element = &document->elements[i];
        free(element->label);
        free(element->text);
        end_table(element->table);
    }
    free(document->elements);
    *document = (gtl_document){0};
}
