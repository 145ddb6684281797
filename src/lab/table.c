/* table.c - the text of a table, cut into records by libcsv, strictly.
 *
 * The parser is fed byte by byte, so that it is known on which line a record begins, whatever line breaks
 * stand inside quotes. */
#include "lab/table.h"

#include "base/grow.h"
#include "base/utf8.h"
#include "base/word.h"

#include <csv.h>
#include <gantline/lab.h>
#include <stdlib.h>
#include <string.h>

typedef struct cutting {
    gtl_lab_table *table;
    gtl_fault_list *faults;
    gtl_lab_record record; /* under way; line 0: not begun */
    bool anything;         /* a cell of it is not empty */
    bool after_return;     /* the last byte was a carriage return */
    int line;              /* of the byte that comes next */
    bool failed;           /* no memory */
} cutting;

/* --- what can be no table --- */

static bool refuse(gtl_fault_list *faults, int line, const char *text)
{
    gtl_faults_add(faults, line, "%s", text);
    return false;
}

static bool check_encoding(const char *text, size_t size, gtl_fault_list *faults)
{
    static const char save[] = "save the table as `CSV UTF-8`";
    bool wide = size >= 2 && (memcmp(text, "\xFF\xFE", 2) == 0 || memcmp(text, "\xFE\xFF", 2) == 0);
    if (wide) {
        gtl_faults_add(faults, 0, "the file is in UTF-16, which is not read; %s", save);
        return false;
    }
    if (memchr(text, '\0', size)) {
        gtl_faults_add(faults, 0, "the file holds zero bytes, so it is no plain text; %s", save);
        return false;
    }
    return true;
}

static bool check_whole(const char *text, size_t size, gtl_fault_list *faults)
{
    if (size > GTL_LAB_SIZE_LIMIT) {
        gtl_faults_add(faults, 0, "the table is larger than %d KiB; split it", GTL_LAB_SIZE_LIMIT / 1024);
        return false;
    }
    return size == 0 ? true : check_encoding(text, size, faults);
}

/* --- cells and records --- */

/* A line break inside a cell is a blank to us: no cell is a text of several lines. */
static void smooth(char *cell)
{
    for (; *cell; cell++)
        if (*cell == '\n' || *cell == '\r' || *cell == '\t') *cell = ' ';
}

static void check_cell(cutting *cut, const char *cell)
{
    char excerpt[GTL_EXCERPT_SIZE];
    if (gtl_is_plain(cell)) return;
    gtl_faults_add(cut->faults, cut->record.line,
                   "`%s` is not in UTF-8, or holds a control character; save the table as `CSV UTF-8`",
                   gtl_excerpt(gtl_word_of(cell), excerpt));
}

/* libcsv's call for a finished cell. */
static void take_cell(void *bytes, size_t length, void *data)
{
    cutting *cut = data;
    gtl_lab_table *table = cut->table;
    size_t *cells = gtl_grow(table->cells, table->cell_count, &table->cell_capacity, sizeof *cells);
    if (!cells) {
        cut->failed = true;
        return;
    }
    table->cells = cells;
    cells[table->cell_count] = table->bytes.length;
    gtl_word word = gtl_word_trim((gtl_word){bytes, bytes ? length : 0});
    if (word.length > 0) gtl_text_put(&table->bytes, word.start, word.length);
    gtl_text_put(&table->bytes, "", 1);
    if (table->bytes.failed) {
        cut->failed = true;
        return;
    }
    smooth(table->bytes.bytes + cells[table->cell_count]);
    check_cell(cut, table->bytes.bytes + cells[table->cell_count]);
    table->cell_count++;
    cut->record.count++;
    cut->anything |= word.length > 0;
}

/* libcsv's call for a finished record. */
static void take_record(int end, void *data)
{
    (void)end;
    cutting *cut = data;
    gtl_lab_table *table = cut->table;
    if (cut->anything && !cut->failed) {
        gtl_lab_record *records =
            gtl_grow(table->records, table->record_count, &table->record_capacity, sizeof *records);
        cut->failed |= !records;
        if (records) {
            table->records = records;
            records[table->record_count++] = cut->record;
        }
    }
    cut->record = (gtl_lab_record){0, table->cell_count, 0};
    cut->anything = false;
}

/* --- the text --- */

static bool is_break(char byte)
{
    return byte == '\n' || byte == '\r';
}

/* A comma, unless the first line that says anything has semicolons alone, as spreadsheets write them where
 * the comma is the decimal mark. */
static unsigned char find_mark(const char *text, size_t size)
{
    bool quoted = false;
    bool semicolon = false;
    for (size_t i = 0; i < size; i++) {
        if (text[i] == '"') quoted = !quoted;
        if (quoted) continue;
        if (text[i] == ',') return ',';
        semicolon |= text[i] == ';';
        if (semicolon && is_break(text[i])) break;
    }
    return semicolon ? ';' : ',';
}

/* Lines end with a line feed, a carriage return, or both. */
static void count_line(cutting *cut, char byte)
{
    bool second = byte == '\n' && cut->after_return;
    if (is_break(byte) && !second) cut->line++;
    cut->after_return = byte == '\r';
}

/* False where the parser has to stop. */
static bool feed(struct csv_parser *parser, char byte, cutting *cut)
{
    if (cut->record.line == 0 && !is_break(byte) && !gtl_is_blank(byte)) cut->record.line = cut->line;
    if (csv_parse(parser, &byte, 1, take_cell, take_record, cut) != 1) return false;
    count_line(cut, byte);
    return !cut->failed;
}

static void tell_stop(struct csv_parser *parser, cutting *cut)
{
    if (cut->failed || csv_error(parser) != CSV_EPARSE) {
        cut->faults->out_of_memory = true;
        return;
    }
    gtl_faults_add(
        cut->faults, cut->record.line,
        "a quote inside a cell, or one that is not closed: put a cell that holds a quote in quotes "
        "as a whole, and write the quote in it twice");
}

static void cut_text(const char *text, size_t size, cutting *cut)
{
    struct csv_parser parser;
    if (csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI) != 0) {
        cut->faults->out_of_memory = true;
        return;
    }
    csv_set_realloc_func(&parser, realloc);
    csv_set_free_func(&parser, free);
    csv_set_delim(&parser, find_mark(text, size));
    bool going = true;
    for (size_t i = 0; going && i < size; i++) going = feed(&parser, text[i], cut);
    if (!going || csv_fini(&parser, take_cell, take_record, cut) != 0 || cut->failed) tell_stop(&parser, cut);
    csv_free(&parser);
}

bool gtl_lab_table_read(const char *text, size_t size, gtl_lab_table *table, gtl_fault_list *faults)
{
    size_t before = faults->count;
    cutting cut = {.table = table, .faults = faults, .line = 1};
    if (!check_whole(text, size, faults)) return false;
    if (size >= 3 && memcmp(text, "\xEF\xBB\xBF", 3) == 0) {
        text += 3;
        size -= 3;
    }
    cut_text(text, size, &cut);
    if (faults->out_of_memory || faults->count > before) return false;
    if (table->record_count == 0)
        return refuse(faults, 0,
                      "the table is empty; its first line names the columns, such as "
                      "`parts,load [N],effort [N],load distance [m],effort distance [m]`");
    if (table->record_count == 1)
        return refuse(faults, 0, "the table has no row of readings under its header");
    if (table->record_count - 1 > GTL_LAB_ROW_LIMIT) {
        gtl_faults_add(faults, 0, "the table has more than %d rows; split it", GTL_LAB_ROW_LIMIT);
        return false;
    }
    return true;
}

void gtl_lab_table_end(gtl_lab_table *table)
{
    free(gtl_text_take(&table->bytes));
    free(table->cells);
    free(table->records);
    *table = (gtl_lab_table){0};
}

const char *gtl_lab_cell(const gtl_lab_table *table, const gtl_lab_record *record, int column)
{
    if (column < 0 || (size_t)column >= record->count) return "";
    return table->bytes.bytes + table->cells[record->first + (size_t)column];
}
