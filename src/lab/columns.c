/* columns.c - the columns that a table of readings may have, and the header that names them. */
#include "lab/columns.h"

#include "base/suggest.h"
#include "base/unit_names.h"
#include "base/word.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define ALWAYS "always"
#define FREE   "may be left out"

static const struct {
    gtl_lab_column_help help;
    gtl_quantity quantity; /* of columns with a unit */
} rows[GTL_LAB_COLUMN_COUNT] = {
    {{GTL_LAB_GROUP, "group", "group", "", FREE, "who measured, in any words"}, GTL_NUMBER},
    {{GTL_LAB_RIG, "rig", "rig", "", "this or parts", "a rig file, its name from the folder of the table"},
     GTL_NUMBER},
    {{GTL_LAB_PARTS, "parts", "parts", "", "this or rig",
      "how many parts of rope the load hangs on, a whole number"},
     GTL_WHOLE},
    {{GTL_LAB_LOAD, "load", "load [N]", GTL_FORCE_UNITS, ALWAYS, "the weight that is raised"}, GTL_FORCE},
    {{GTL_LAB_EFFORT, "effort", "effort [N]", GTL_FORCE_UNITS, ALWAYS, "the pull as the scale shows it"},
     GTL_FORCE},
    {{GTL_LAB_LOAD_DISTANCE, "load distance", "load distance [m]", GTL_LENGTH_UNITS, ALWAYS,
      "how far the load rises"},
     GTL_LENGTH},
    {{GTL_LAB_EFFORT_DISTANCE, "effort distance", "effort distance [m]", GTL_LENGTH_UNITS, ALWAYS,
      "how far the hand moves, or the rope that it pulls out"},
     GTL_LENGTH},
    {{GTL_LAB_READING, "reading", "reading [N]", GTL_FORCE_UNITS, FREE,
      "half-width of the load's and the effort's readings: 0.05 for +/- 0.05"},
     GTL_FORCE},
    {{GTL_LAB_DISTANCE_READING, "distance reading", "distance reading [m]", GTL_LENGTH_UNITS, FREE,
      "half-width of the readings of both distances"},
     GTL_LENGTH},
    {{GTL_LAB_MOVING_WEIGHT, "moving weight", "moving weight [N]", GTL_FORCE_UNITS, FREE,
      "what rises with the load, such as the moving block; with `parts` only, as a rig file says it itself"},
     GTL_FORCE},
    {{GTL_LAB_SCALE_WEIGHT, "scale weight", "scale weight [N]", GTL_FORCE_UNITS, FREE,
      "of the scale itself; it pulls too where the scale hangs upside down"},
     GTL_FORCE},
    {{GTL_LAB_SCALE, "scale", "scale", "", FREE,
      "`upright`, or `upside down`: hung on the rope by its hook; zeroed in that attitude"},
     GTL_NUMBER},
    {{GTL_LAB_STATE, "state", "state", "", FREE,
      "`moving`: read while the load rose slowly; or `held`: read at rest"},
     GTL_NUMBER},
};

const gtl_lab_column_help *gtl_lab_column_at(size_t index)
{
    return index < GTL_LAB_COLUMN_COUNT ? &rows[index].help : NULL;
}

bool gtl_lab_is_measured(gtl_lab_column column)
{
    return rows[column].help.unit[0] != '\0';
}

gtl_quantity gtl_lab_quantity(gtl_lab_column column)
{
    return rows[column].quantity;
}

/* One header under way. */
typedef struct heading {
    int line;
    gtl_lab_places *places;
    gtl_lab_column_use *uses;
    gtl_fault_list *faults;
    bool meant[GTL_LAB_COLUMN_COUNT]; /* misspelt, and told as that: not told as missing as well */
} heading;

static int find_column(gtl_word name)
{
    for (int i = 0; i < GTL_LAB_COLUMN_COUNT; i++)
        if (gtl_word_compare(name, gtl_word_of(rows[i].help.name)) == 0) return i;
    return -1;
}

/* `load (N)` and `load / N` are misspelt units, not unknown columns. */
static int find_with_unit(gtl_word name)
{
    size_t length = 0;
    while (length < name.length && !strchr("(/", name.start[length])) length++;
    return length == name.length ? -1 : find_column(gtl_word_trim((gtl_word){name.start, length}));
}

static void refuse_unknown(heading *h, gtl_word name)
{
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_suggestion near = {.wanted = name, .best = -1};
    int meant = find_with_unit(name);
    gtl_excerpt(name, excerpt);
    if (meant >= 0 && gtl_lab_is_measured((gtl_lab_column)meant)) {
        h->meant[meant] = true;
        gtl_faults_add(h->faults, h->line, "`%s`: a unit stands in square brackets; write `%s`", excerpt,
                       rows[meant].help.example);
        return;
    }
    for (int i = 0; i < GTL_LAB_COLUMN_COUNT; i++) gtl_suggest_try(&near, gtl_word_of(rows[i].help.name), i);
    if (near.best >= 0) {
        h->meant[near.best] = true;
        gtl_faults_add(h->faults, h->line, "unknown column `%s`; did you mean `%s`?", excerpt,
                       rows[near.best].help.example);
    } else {
        gtl_faults_add(
            h->faults, h->line,
            "unknown column `%s`; take it out, or rename it: `gantline lab --help` lists the columns",
            excerpt);
    }
}

/* The unit in a number's heading, by way of the reader of quantities, so that its advice is given here too.
 */
static void read_unit(heading *h, int column, gtl_word unit)
{
    const gtl_lab_column_help *help = &rows[column].help;
    gtl_lab_column_use *use = &h->uses[column];
    char one[32];
    char why[GTL_WHY_SIZE];
    double si = 0;
    if (unit.length == 0) {
        gtl_faults_add(h->faults, h->line, "`%s` has no unit; write it in square brackets: `%s`", help->name,
                       help->example);
        return;
    }
    snprintf(one, sizeof one, "1 %.*s", (int)(unit.length < 20 ? unit.length : 20), unit.start);
    if (!gtl_parse_quantity(one, rows[column].quantity, GTL_STANDARD_GRAVITY, &si, &use->used_gravity, why)) {
        gtl_faults_add(h->faults, h->line, "the unit of `%s`: %s", help->name, why);
        return;
    }
    snprintf(use->unit, sizeof use->unit, "%.*s", GTL_SPELL(unit));
}

static void take_column(heading *h, int column, gtl_word unit, bool bracketed, int place)
{
    const char *name = rows[column].help.name;
    if (h->places->at[column] >= 0) {
        gtl_faults_add(h->faults, h->line, "the column `%s` is there twice; leave one of them", name);
        return;
    }
    h->places->at[column] = place;
    h->uses[column].there = true;
    if (gtl_lab_is_measured((gtl_lab_column)column))
        read_unit(h, column, unit);
    else if (bracketed)
        gtl_faults_add(h->faults, h->line, "`%s` has no unit: leave out what is in brackets", name);
}

/* NAME, or NAME [UNIT]. */
static void read_heading(heading *h, gtl_word text, int place)
{
    const char *open = memchr(text.start, '[', text.length);
    gtl_word name = text;
    gtl_word unit = {text.start + text.length, 0};
    char excerpt[GTL_EXCERPT_SIZE];
    if (open) {
        name.length = (size_t)(open - text.start);
        if (text.start[text.length - 1] != ']') {
            gtl_faults_add(h->faults, h->line, "`%s`: the unit's bracket is not closed; write `load [N]`",
                           gtl_excerpt(text, excerpt));
            return;
        }
        unit = gtl_word_trim((gtl_word){open + 1, text.length - name.length - 2});
    }
    name = gtl_word_trim(name);
    int column = find_column(name);
    if (column < 0)
        refuse_unknown(h, name);
    else
        take_column(h, column, unit, open != NULL, place);
}

static void require(heading *h)
{
    for (int i = 0; i < GTL_LAB_COLUMN_COUNT; i++) {
        const gtl_lab_column_help *help = &rows[i].help;
        if (strcmp(help->need, ALWAYS) == 0 && h->places->at[i] < 0 && !h->meant[i])
            gtl_faults_add(h->faults, h->line, "the column `%s` is missing: %s", help->example,
                           help->meaning);
    }
    bool any = h->places->at[GTL_LAB_RIG] >= 0 || h->places->at[GTL_LAB_PARTS] >= 0;
    if (!any && !h->meant[GTL_LAB_RIG] && !h->meant[GTL_LAB_PARTS])
        gtl_faults_add(h->faults, h->line,
                       "nothing says what was measured: a column `parts` (how many parts of rope the load "
                       "hangs on) or `rig` (a rig file) is missing");
}

bool gtl_lab_read_header(const gtl_lab_table *table, gtl_lab_places *places,
                         gtl_lab_column_use uses[GTL_LAB_COLUMN_COUNT], gtl_fault_list *faults)
{
    const gtl_lab_record *header = &table->records[0];
    size_t before = faults->count;
    heading h = {header->line, places, uses, faults, {false}};
    for (int i = 0; i < GTL_LAB_COLUMN_COUNT; i++) places->at[i] = -1;
    /* A heading without words is right only over an empty column: read_row.c looks at that. */
    for (int i = 0; (size_t)i < header->count; i++) {
        gtl_word text = gtl_word_of(gtl_lab_cell(table, header, i));
        if (text.length > 0) read_heading(&h, text, i);
    }
    require(&h);
    return faults->count == before && !faults->out_of_memory;
}
