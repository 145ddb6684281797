/* document.h - a report before it has a form: headings, paragraphs, pairs, bullets, tables, and what a worked
 * solution needs beside them, in order.
 *
 * All text in a document but a figure's has come through gtl_escape_for_people: a writer has nothing to fear
 * from it but its own markup. Once memory fails the document stays failed, so that composers look once, at
 * the end. */
#ifndef REPORT_DOCUMENT_H
#define REPORT_DOCUMENT_H

#include "base/text.h"

typedef enum gtl_element_kind {
    GTL_TITLE,     /* of the whole; shortened by the writer to `most_lines` */
    GTL_HEADING,   /* of a section */
    GTL_PARAGRAPH, /* likewise shortened if `most_lines` is not 0 */
    GTL_PAIR,      /* a label and what belongs to it; likewise */
    GTL_BULLET,
    GTL_NOTE, /* a label and what it means at more length; left out where room is short */
    GTL_TABLE,
    GTL_STEP, /* heads what follows, up to the next step, heading or leaf; can be folded away on a screen */
    GTL_EQUATION, /* one line of symbols or figures, told word for word */
    GTL_FIGURE,   /* a finished <svg>, which tells itself in words; left out where nothing can be drawn */
    GTL_ROOM,     /* empty lines to write on, `most_lines` of them */
    GTL_LEAF      /* what follows begins a new sheet of paper */
} gtl_element_kind;

typedef struct gtl_column {
    const char *head;
    bool number; /* lined up by the decimal point */
} gtl_column;

/* A column of a table in a document, which owns its head. */
typedef struct gtl_table_column {
    char *head;
    bool number;
    bool apart; /* where columns have to be told in several bands, one begins here */
} gtl_table_column;

typedef struct gtl_table_cell {
    char *text;  /* NULL after the first cell of a row that heads the rows below it */
    double bar;  /* share of a whole that its figure stands for, may be over 1 [1]; NaN: it is no share */
    bool strong; /* must not be overlooked */
} gtl_table_cell;

/* The first column holds words of any length, the others short words or figures. */
typedef struct gtl_table {
    gtl_table_column *columns;
    int column_count;
    size_t column_capacity;
    gtl_table_cell *cells; /* row by row */
    size_t cell_count;
    size_t cell_capacity;
} gtl_table;

typedef struct gtl_element {
    gtl_element_kind kind;
    int most_lines; /* of text; 0: as many as it takes */
    bool strong;    /* must not be overlooked */
    char *label;    /* of a pair, a note or a figure, else NULL */
    char *text;     /* of a figure its markup; NULL of a table, a room and a leaf */
    gtl_table *table;
} gtl_element;

typedef struct gtl_document {
    gtl_element *elements;
    size_t count;
    size_t capacity;
    bool failed;
} gtl_document;

/* Append an element, printf's format. */
void gtl_document_title(gtl_document *document, int most_lines, const char *text);
void gtl_document_heading(gtl_document *document, const char *format, ...) GTL_PRINTF(2, 3);
void gtl_document_paragraph(gtl_document *document, const char *format, ...) GTL_PRINTF(2, 3);
void gtl_document_pair(gtl_document *document, const char *label, const char *format, ...) GTL_PRINTF(3, 4);
void gtl_document_bullet(gtl_document *document, const char *format, ...) GTL_PRINTF(2, 3);
void gtl_document_note(gtl_document *document, const char *label, const char *text);

/* Append an element of a text made piece by piece; `label` only of a pair. `text` is empty afterwards. */
void gtl_document_put(gtl_document *document, gtl_element_kind kind, const char *label, gtl_text *text);

void gtl_document_step(gtl_document *document, const char *format, ...) GTL_PRINTF(2, 3);
void gtl_document_equation(gtl_document *document, const char *format, ...) GTL_PRINTF(2, 3);

/* Append a figure; `label` names it. `markup`, the <svg> as gtl_write_drawing makes it, is empty afterwards.
 */
void gtl_document_figure(gtl_document *document, const char *label, gtl_text *markup);

/* Append room for that many lines of handwriting. */
void gtl_document_room(gtl_document *document, int lines);

void gtl_document_leaf(gtl_document *document);

/* A paragraph that may be shortened. */
void gtl_document_short(gtl_document *document, int most_lines, const char *text);

/* The element appended last may be shortened. */
void gtl_document_shorten(gtl_document *document, int most_lines);

/* Append a table, then more columns if there are any, then its cells, row by row. */
void gtl_document_table(gtl_document *document, const gtl_column *columns, int column_count);
void gtl_document_column(gtl_document *document, const gtl_column *column, bool apart);
void gtl_document_cell(gtl_document *document, const char *format, ...) GTL_PRINTF(2, 3);

/* Append a cell made piece by piece; `text` is empty afterwards. */
void gtl_document_put_cell(gtl_document *document, gtl_text *text);

/* The cell appended last is a figure that stands for a share of a whole [1]. */
void gtl_document_bar(gtl_document *document, double share);

/* The element appended last, of a table its last cell, must not be overlooked. */
void gtl_document_strong(gtl_document *document);

/* A row of one cell that heads the rows below it. */
void gtl_document_row_head(gtl_document *document, const char *format, ...) GTL_PRINTF(2, 3);

/* Give back all that a document holds. */
void gtl_document_end(gtl_document *document);

#endif
