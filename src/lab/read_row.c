/* read_row.c - one record of a table to a row of readings. */
#include "base/suggest.h"
#include "base/word.h"
#include "lab/work.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* No bench has more parts than this; a larger number is a slip. */
#define MOST_PARTS 100

static const char *cell_of(const gtl_lab_reading *r, const gtl_lab_record *record, gtl_lab_column column)
{
    return gtl_lab_cell(r->table, record, r->places->at[column]);
}

/* A comma between digits is somebody's decimal mark; a letter at the end is a unit. */
static bool refuse_spelling(const gtl_lab_reading *r, int line, const char *name, gtl_word cell)
{
    char excerpt[GTL_EXCERPT_SIZE];
    char last = cell.start[cell.length - 1];
    if (memchr(cell.start, ',', cell.length)) {
        gtl_faults_add(r->faults, line, "`%s`: `%s` has a comma; write the decimal point: 0.5", name,
                       gtl_excerpt(cell, excerpt));
        return true;
    }
    if ((last >= '0' && last <= '9') || last == '.') return false;
    gtl_faults_add(r->faults, line,
                   "`%s`: `%s` is no plain number; the unit stands in the header, once, as in `load [N]`",
                   name, gtl_excerpt(cell, excerpt));
    return true;
}

/* A number in the header's unit; NaN where there is none, or where it is told what is wrong. */
static double read_number(const gtl_lab_reading *r, const gtl_lab_record *record, gtl_lab_column column,
                          bool may_be_zero)
{
    const gtl_lab_column_help *help = gtl_lab_column_at((size_t)column);
    gtl_word cell = gtl_word_of(cell_of(r, record, column));
    char typed[64];
    char why[GTL_WHY_SIZE];
    char excerpt[GTL_EXCERPT_SIZE];
    double si = NAN;
    if (cell.length == 0) return NAN;
    if (refuse_spelling(r, record->line, help->name, cell)) return NAN;
    if (cell.length > 40) {
        gtl_faults_add(r->faults, record->line, "`%s`: `%s` has too many digits", help->name,
                       gtl_excerpt(cell, excerpt));
        return NAN;
    }
    snprintf(typed, sizeof typed, "%.*s %s", GTL_SPELL(cell), r->lab->columns[column].unit);
    if (!gtl_parse_quantity(typed, gtl_lab_quantity(column), GTL_STANDARD_GRAVITY, &si, NULL, why)) {
        gtl_faults_add(r->faults, record->line, "`%s`: %s", help->name, why);
        return NAN;
    }
    if (si > 0 || (may_be_zero && si == 0)) return si + 0.0; /* -0 is 0 */
    gtl_faults_add(r->faults, record->line, "`%s` is %s; it must be %s", help->name,
                   gtl_excerpt(cell, excerpt), may_be_zero ? "0 or more" : "more than 0");
    return NAN;
}

static double require_number(const gtl_lab_reading *r, const gtl_lab_record *record, gtl_lab_column column)
{
    const char *cell = cell_of(r, record, column);
    if (cell[0] == '\0')
        gtl_faults_add(r->faults, record->line,
                       "no value in the column `%s`; fill it in, or take the row out",
                       gtl_lab_column_at((size_t)column)->name);
    return read_number(r, record, column, false);
}

/* One of two words: 0 where the cell is empty, 1 or 2, or -1 where it is told what is wrong. */
static int read_choice(const gtl_lab_reading *r, const gtl_lab_record *record, gtl_lab_column column,
                       const char *first, const char *second)
{
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_word cell = gtl_word_of(cell_of(r, record, column));
    if (cell.length == 0) return 0;
    if (gtl_word_compare(cell, gtl_word_of(first)) == 0) return 1;
    if (gtl_word_compare(cell, gtl_word_of(second)) == 0) return 2;
    gtl_faults_add(r->faults, record->line, "`%s`: `%s` is neither `%s` nor `%s`",
                   gtl_lab_column_at((size_t)column)->name, gtl_excerpt(cell, excerpt), first, second);
    return -1;
}

/* What stands past the header, or under a heading without words, would be left out silently. */
static void check_strays(const gtl_lab_reading *r, const gtl_lab_record *record)
{
    char excerpt[GTL_EXCERPT_SIZE];
    for (int i = 0; (size_t)i < record->count; i++) {
        const char *cell = gtl_lab_cell(r->table, record, i);
        if (cell[0] == '\0' || gtl_lab_cell(r->table, &r->table->records[0], i)[0] != '\0') continue;
        gtl_faults_add(
            r->faults, record->line,
            "`%s` stands in column %d, which has no heading: name it in the header, or take it out; "
            "a cell that holds the separator stands in quotes",
            gtl_excerpt(gtl_word_of(cell), excerpt), i + 1);
    }
}

/* A half-width as great as what was read is a slip of units, and would make every other figure void. */
static void check_half_width(const gtl_lab_reading *r, const gtl_lab_row *row, double half_width, double read,
                             const char *name, const char *of)
{
    if (half_width >= read)
        gtl_faults_add(r->faults, row->line,
                       "`%s` is no less than the `%s` itself; it is the half-width of a reading: 0.05 for "
                       "+/- 0.05",
                       name, of);
}

static void check_row(const gtl_lab_reading *r, const gtl_lab_row *row, bool on_rig, bool scale_told)
{
    check_half_width(r, row, row->reading, row->load, "reading", "load");
    check_half_width(r, row, row->reading, row->effort_read, "reading", "effort");
    check_half_width(r, row, row->distance_reading, row->load_distance, "distance reading", "load distance");
    check_half_width(r, row, row->distance_reading, row->effort_distance, "distance reading",
                     "effort distance");
    if (on_rig && !isnan(row->moving_weight))
        gtl_faults_add(
            r->faults, row->line,
            "`moving weight` beside a rig: the rig file says what its blocks weigh; leave one out");
    if (!isnan(row->scale_weight) && row->scale == GTL_LAB_SCALE_NOT_STATED && !scale_told)
        gtl_faults_add(r->faults, row->line,
                       "`scale weight` changes nothing without `scale`: say whether it was `upright` or "
                       "`upside down`");
}

static int read_parts(const gtl_lab_reading *r, const gtl_lab_record *record)
{
    double parts = read_number(r, record, GTL_LAB_PARTS, false);
    if (isnan(parts)) return 0;
    if (parts <= MOST_PARTS) return (int)parts;
    gtl_faults_add(r->faults, record->line, "`parts` is more than %d: check it", MOST_PARTS);
    return 0;
}

/* Each row has a rig, or a number of parts. */
static int read_set_up(const gtl_lab_reading *r, const gtl_lab_record *record)
{
    const char *rig = cell_of(r, record, GTL_LAB_RIG);
    bool parts = cell_of(r, record, GTL_LAB_PARTS)[0] != '\0';
    if (rig[0] != '\0' && parts) {
        gtl_faults_add(r->faults, record->line, "both `rig` and `parts`: leave one of them out");
        return 0;
    }
    if (rig[0] == '\0' && !parts) {
        gtl_faults_add(r->faults, record->line,
                       "neither `rig` nor `parts`: nothing says what was measured; fill one of them in");
        return 0;
    }
    int count = parts ? read_parts(r, record) : 0;
    if (parts && count == 0) return 0;
    return gtl_lab_find_set_up(r, rig, count, record->line);
}

static void read_numbers(const gtl_lab_reading *r, const gtl_lab_record *record, gtl_lab_row *row)
{
    row->load = require_number(r, record, GTL_LAB_LOAD);
    row->effort_read = require_number(r, record, GTL_LAB_EFFORT);
    row->load_distance = require_number(r, record, GTL_LAB_LOAD_DISTANCE);
    row->effort_distance = require_number(r, record, GTL_LAB_EFFORT_DISTANCE);
    row->reading = read_number(r, record, GTL_LAB_READING, true);
    row->distance_reading = read_number(r, record, GTL_LAB_DISTANCE_READING, true);
    row->moving_weight = read_number(r, record, GTL_LAB_MOVING_WEIGHT, true);
    row->scale_weight = read_number(r, record, GTL_LAB_SCALE_WEIGHT, true);
}

void gtl_lab_read_row(const gtl_lab_reading *r, const gtl_lab_record *record)
{
    const char *group = cell_of(r, record, GTL_LAB_GROUP);
    gtl_lab_row *row = &r->lab->rows[r->lab->row_count++];
    *row = (gtl_lab_row){.line = record->line, .group = gtl_text_copy(group, strlen(group))};
    if (!row->group) r->faults->out_of_memory = true;
    row->set_up = read_set_up(r, record);
    read_numbers(r, record, row);
    int scale = read_choice(r, record, GTL_LAB_SCALE, "upright", "upside down");
    int state = read_choice(r, record, GTL_LAB_STATE, "moving", "held");
    if (scale == 1) row->scale = GTL_LAB_UPRIGHT;
    if (scale == 2) row->scale = GTL_LAB_UPSIDE_DOWN;
    row->state_stated = state > 0;
    row->held = state == 2;
    check_row(r, row, cell_of(r, record, GTL_LAB_RIG)[0] != '\0', scale < 0);
    check_strays(r, record);
}
