/* store.c - the value of one key into the draft, by the way that its row in the table names. */
#include "read/store.h"

#include "base/utf8.h"
#include "read/storing.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define NAMES_HINT                                                                                           \
    "write names with commas between them, and connectors after `via`, as in beam, tail via shackle + "      \
    "ring, crew"

/* What a number has to be: from `low` (or above it) to `high`, in SI, and how a message says so. The ends of
 * an angle are let out by a rounding of its conversion. */
static const struct {
    double low;
    bool above;
    double high;
    const char *words;
} ranges[] = {
    [GTL_ANY] = {-INFINITY, false, INFINITY, ""},
    [GTL_NOT_NEGATIVE] = {0, false, INFINITY, "0 or more"},
    [GTL_ABOVE_ZERO] = {0, true, INFINITY, "more than 0"},
    [GTL_AT_LEAST_ONE] = {1, false, INFINITY, "1 or more"},
    [GTL_ABOVE_ONE] = {1, true, INFINITY, "more than 1: a factor of 1 leaves nothing in hand"},
    [GTL_SHARE] = {0, true, 1, "more than 0 and at most 100 %, such as 92 % or 0.92"},
    [GTL_WITHIN_TURN] = {0, false, 6.2831853071795872, "0 to 360 deg"},
    [GTL_HALF_TURN] = {0, false, 3.1415926535897936, "0 to 180 deg"},
    [GTL_ON_EARTH] = {9.7, false, 10, "9.7 to 10 m/s2, which is all that there is on the ground"},
    [GTL_WOODEN] = {GTL_WOOD_LIGHTEST, false, GTL_WOOD_SUBSTANCE, GTL_WOOD_WORDS},
};

/* Where it is kept that a key was stated. */
static gtl_stated *stated_of(gtl_item *item, const gtl_key_row *row)
{
    switch (row->how) {
    case GTL_STORE_NUMBER:
    case GTL_STORE_RANGE:
    case GTL_STORE_STRETCH:
        return &item->numbers[row->slot].stated;
    case GTL_STORE_AT:
        return &item->at.stated;
    case GTL_STORE_ON:
        return &item->on.stated;
    case GTL_STORE_PATH:
        return &item->path.stated;
    case GTL_STORE_LOAD:
        return &item->load.stated;
    case GTL_STORE_OR:
        return &item->other.stated;
    case GTL_STORE_GUIDE:
        return &item->guide;
    case GTL_STORE_CASES:
        return &item->cases;
    case GTL_STORE_ROW:
    case GTL_STORE_HITCH:
    case GTL_STORE_SPECIES:
        return &item->rows[row->slot].stated;
    case GTL_STORE_AXIS:
        return &item->axis.stated;
    case GTL_STORE_PICKS:
        return &item->picks.stated;
    case GTL_STORE_HUNG:
        return &item->hung.stated;
    case GTL_STORE_DIAMETERS:
        return &item->diameters.stated;
    case GTL_STORE_WOOD_END:
        return &item->wood_end_stated;
    case GTL_STORE_TABLES:
        return &item->tables.stated;
    default:
        return &item->others;
    }
}

void gtl_store_nothing(gtl_draft *draft, gtl_item *item, const gtl_key_row *row, int line)
{
    *stated_of(item, row) = (gtl_stated){true, line};
    item->rough = true;
    if (row->how == GTL_STORE_ON || row->how == GTL_STORE_PATH || row->how == GTL_STORE_OR)
        draft->whole = false;
}

static void store_remark(const gtl_storing *s)
{
    s->draft->remarks[s->row->slot] = s->entry->value;
}

bool gtl_read_number(const gtl_storing *s, const char *text, double *value)
{
    char why[GTL_WHY_SIZE];
    const char *key = s->row->key.key;
    bool weighed = s->row->quantity == GTL_MASS;
    bool well = gtl_parse_quantity(text, s->row->quantity, s->draft->gravity, value, &weighed, why);
    if (weighed || !well) s->draft->mass_typed = true; /* what cannot be read may have been a mass */
    if (!well) {
        gtl_faults_add(s->faults, s->entry->line, "`%s`: %s", key, why);
        return false;
    }
    double low = ranges[s->row->range].low;
    bool enough = ranges[s->row->range].above ? *value > low : *value >= low;
    if (enough && *value <= ranges[s->row->range].high) return true;
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_faults_add(s->faults, s->entry->line, "`%s`: `%s` is out of range; it has to be %s", key,
                   gtl_excerpt(gtl_word_of(text), excerpt), ranges[s->row->range].words);
    return false;
}

void gtl_store_number(const gtl_storing *s)
{
    double value = NAN;
    if (gtl_read_number(s, s->entry->value, &value)) s->item->numbers[s->row->slot].value = value;
}

/* One of the quantities of `at`; false after a fault. */
static bool store_coordinate(const gtl_storing *s, gtl_word piece, double *value, bool alone)
{
    char text[GTL_LINE_LIMIT + 1];
    char why[GTL_WHY_SIZE];
    if (piece.length > GTL_LINE_LIMIT) piece.length = GTL_LINE_LIMIT;
    snprintf(text, sizeof text, "%.*s", GTL_SPELL(piece));
    if (gtl_parse_quantity(text, GTL_LENGTH, s->draft->gravity, value, NULL, why)) return true;
    gtl_faults_add(s->faults, s->entry->line, "`at`: %s%s", why,
                   alone ? "" : " (commas stand between lengths; decimals take a point)");
    return false;
}

static void store_at(const gtl_storing *s)
{
    gtl_place_typed *at = &s->item->at;
    gtl_word rest = gtl_word_of(s->entry->value);
    gtl_word piece;
    bool alone = !strchr(s->entry->value, ',');
    int count = 0;
    while (gtl_word_cut(&rest, ',', &piece)) {
        if (count == 3) {
            gtl_faults_add(s->faults, s->entry->line, "`at`: more than three lengths; write %s",
                           s->row->key.form);
            return;
        }
        if (!store_coordinate(s, piece, &at->at[count++], alone)) return;
    }
    at->count = count;
}

static bool no_memory(const gtl_storing *s)
{
    s->faults->out_of_memory = true;
    return false;
}

static bool refuse_names(const gtl_storing *s, gtl_word piece)
{
    char excerpt[GTL_EXCERPT_SIZE];
    if (piece.length == 0) {
        gtl_faults_add(s->faults, s->entry->line, "`%s`: a name is missing; " NAMES_HINT, s->row->key.key);
    } else {
        gtl_faults_add(s->faults, s->entry->line, "`%s`: cannot read `%s`; " NAMES_HINT, s->row->key.key,
                       gtl_excerpt(piece, excerpt));
    }
    return false;
}

gtl_word gtl_first_word(gtl_word *rest)
{
    gtl_word word = {rest->start, 0};
    while (word.length < rest->length && !gtl_is_blank(rest->start[word.length])) word.length++;
    *rest = gtl_word_trim((gtl_word){rest->start + word.length, rest->length - word.length});
    return word;
}

/* NAME, or NAME via NAME + NAME; false after a fault. */
static bool store_ref(const gtl_storing *s, gtl_word piece)
{
    gtl_word rest = piece;
    gtl_word name = gtl_first_word(&rest);
    gtl_word connector;
    if (!gtl_is_name(name)) return refuse_names(s, piece);
    if (!gtl_draft_add_ref(s->draft, name)) return no_memory(s);
    if (rest.length == 0) return true;
    if (gtl_word_compare(gtl_first_word(&rest), gtl_word_of("via")) != 0) return refuse_names(s, piece);
    while (gtl_word_cut(&rest, '+', &connector)) {
        if (!gtl_is_name(connector)) return refuse_names(s, piece);
        if (!gtl_draft_add_via(s->draft, connector)) return no_memory(s);
    }
    return true;
}

/* Names with commas between them; after a fault the list stays empty. */
static void store_list(const gtl_storing *s, gtl_list *list)
{
    int first = s->draft->ref_count;
    gtl_word rest = gtl_word_of(s->entry->value);
    gtl_word piece;
    bool well = true;
    while (well && gtl_word_cut(&rest, ',', &piece)) well = store_ref(s, piece);
    if (well) {
        list->first = first;
        list->count = s->draft->ref_count - first;
    } else {
        s->draft->whole = false;
    }
}

/* As a list, but one name only. */
static void store_one(const gtl_storing *s, gtl_list *list)
{
    store_list(s, list);
    if (list->count <= 1) return;
    gtl_faults_add(s->faults, s->entry->line, "`%s` takes one name, not %d", s->row->key.key, list->count);
    list->count = 0;
    s->draft->whole = false;
}

static void store_on(const gtl_storing *s)
{
    store_one(s, &s->item->on);
}

static void store_path(const gtl_storing *s)
{
    store_list(s, &s->item->path);
}

static void store_or(const gtl_storing *s)
{
    store_one(s, &s->item->other);
    if (s->item->other.count != 1 || s->draft->refs[s->item->other.first].via_count == 0) return;
    gtl_faults_add(s->faults, s->entry->line, "`or` takes the name of a hand alone, without `via`");
    s->item->other.count = 0;
    s->draft->whole = false;
}

static void store_load(const gtl_storing *s)
{
    store_one(s, &s->item->load);
    if (s->item->load.count != 1 || s->draft->refs[s->item->load.first].via_count == 0) return;
    gtl_faults_add(s->faults, s->entry->line, "`load` takes the name of a load alone, without `via`");
    s->item->load.count = 0;
}

bool gtl_word_is(gtl_word word, const char *text)
{
    return gtl_word_compare(word, gtl_word_of(text)) == 0;
}

static void store_guide(const gtl_storing *s)
{
    gtl_word value = gtl_word_trim(gtl_word_of(s->entry->value));
    char excerpt[GTL_EXCERPT_SIZE];
    if (gtl_word_is(value, "vertical")) return;
    gtl_faults_add(s->faults, s->entry->line,
                   "`guide`: cannot read `%s`; the one guide there is is `vertical`",
                   gtl_excerpt(value, excerpt));
}

static void store_units(const gtl_storing *s)
{
    gtl_word value = gtl_word_trim(gtl_word_of(s->entry->value));
    char excerpt[GTL_EXCERPT_SIZE];
    s->draft->us_units = gtl_word_is(value, "us");
    if (s->draft->us_units || gtl_word_is(value, "metric")) return;
    gtl_faults_add(s->faults, s->entry->line, "`units`: cannot read `%s`; write metric or us",
                   gtl_excerpt(value, excerpt));
}

void gtl_store(gtl_draft *draft, gtl_item *item, const gtl_key_row *row, const gtl_entry *entry,
               gtl_fault_list *faults)
{
    static void (*const stores[GTL_HOW_COUNT])(const gtl_storing *) = {
        [GTL_STORE_NUMBER] = gtl_store_number,
        [GTL_STORE_RANGE] = gtl_store_range,
        [GTL_STORE_REMARK] = store_remark,
        [GTL_STORE_AT] = store_at,
        [GTL_STORE_ON] = store_on,
        [GTL_STORE_PATH] = store_path,
        [GTL_STORE_LOAD] = store_load,
        [GTL_STORE_OR] = store_or,
        [GTL_STORE_GUIDE] = store_guide,
        [GTL_STORE_UNITS] = store_units,
        [GTL_STORE_CASES] = gtl_store_cases,
        [GTL_STORE_ROW] = gtl_store_row,
        [GTL_STORE_HITCH] = gtl_store_hitch,
        [GTL_STORE_AXIS] = gtl_store_axis,
        [GTL_STORE_TABLES] = gtl_store_tables,
        [GTL_STORE_PICKS] = gtl_store_picks,
        [GTL_STORE_HUNG] = gtl_store_hung,
        [GTL_STORE_STRETCH] = gtl_store_stretch,
        [GTL_STORE_SPECIES] = gtl_store_species,
        [GTL_STORE_DIAMETERS] = gtl_store_diameters,
        [GTL_STORE_WOOD_END] = gtl_store_wood_end,
    };
    gtl_storing s = {draft, item, row, entry, faults};
    *stated_of(item, row) = (gtl_stated){true, entry->line};
    if (gtl_is_plain(entry->value)) {
        stores[row->how](&s);
        return;
    }
    gtl_faults_add(faults, entry->line,
                   "`%s`: its text is not UTF-8, or holds control characters; save the file as UTF-8",
                   row->key.key);
    gtl_store_nothing(draft, item, row, entry->line);
}
