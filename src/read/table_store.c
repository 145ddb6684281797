/* table_store.c - the value of one key into a row of a hardware table, by the way that the key's own row
 * names. */
#include "read/table_row.h"

#include "base/text.h"
#include "base/utf8.h"
#include "read/keys.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define PI 3.14159265358979323846 /* [rad] */

/* One value on its way. */
typedef struct storing {
    gtl_table_row *r;
    const gtl_table_key *key;
    const gtl_entry *entry;
} storing;

/* What a number has to be: from `low` (or above it) to `high`, in SI, and how a message says so. */
static const struct {
    double low;
    bool above;
    double high;
    const char *words;
} ranges[] = {
    [GTL_TABLE_NOT_NEGATIVE] = {0, false, INFINITY, "0 or more"},
    [GTL_TABLE_ABOVE_ZERO] = {0, true, INFINITY, "more than 0"},
    [GTL_TABLE_AT_LEAST_ONE] = {1, false, INFINITY, "1 or more"},
    [GTL_TABLE_ABOVE_ONE] = {1, true, INFINITY, "more than 1: a factor of 1 leaves nothing in hand"},
    [GTL_TABLE_SHARE] = {0, true, 1, "more than 0 and at most 100 %, such as 60 % or 0.6"},
    [GTL_TABLE_MULTIPLE] = {0, true, 4, "more than 0 and at most 400 %, such as 80 % or 200 %"},
    [GTL_TABLE_END_ANGLE] = {0, true, PI, "more than 0 and at most 180 deg"},
    [GTL_TABLE_ANGLE] = {0, false, PI, "0 to 180 deg"},
    [GTL_TABLE_WOOD] = {GTL_WOOD_LIGHTEST, false, GTL_WOOD_SUBSTANCE, GTL_WOOD_WORDS},
};

int gtl_table_line(const gtl_table_row *r, const char *key)
{
    int index = gtl_table_key_find(r->row->kind, gtl_word_of(key));
    return index >= 0 ? r->lines[index] : 0;
}

/* Read one quantity of the value; false after a fault. */
static bool read_number(const storing *s, gtl_word piece, const char *hint, double *value, bool *weighed)
{
    char text[GTL_LINE_LIMIT + 1];
    char why[GTL_WHY_SIZE];
    char excerpt[GTL_EXCERPT_SIZE];
    snprintf(text, sizeof text, "%.*s", GTL_SPELL(piece));
    if (!gtl_parse_quantity(text, s->key->quantity, GTL_STANDARD_GRAVITY, value, weighed, why)) {
        gtl_faults_add(s->r->faults, s->entry->line, "`%s`: %s%s", s->key->key, why, hint);
        return false;
    }
    double low = ranges[s->key->range].low;
    bool enough = ranges[s->key->range].above ? *value > low : *value >= low;
    if (enough && *value <= ranges[s->key->range].high) return true;
    gtl_faults_add(s->r->faults, s->entry->line, "`%s`: `%s` is out of range; it has to be %s", s->key->key,
                   gtl_excerpt(piece, excerpt), ranges[s->key->range].words);
    return false;
}

static bool store_number(const storing *s)
{
    double value = NAN;
    bool weighed = false;
    bool listed = s->key->slot == GTL_HW_KEEPS && strchr(s->entry->value, ',');
    const char *hint = listed ? " (one value stands here: lists are for steps)" : "";
    if (!read_number(s, gtl_word_of(s->entry->value), hint, &value, &weighed)) return false;
    s->r->row->numbers[s->key->slot] = value;
    s->r->row->weighed[s->key->slot] = weighed;
    return true;
}

static bool store_formula(const storing *s)
{
    return read_number(s, gtl_word_of(s->entry->value), "", &s->r->row->shares[s->key->slot], NULL);
}

/* Quantities with commas between them, in the order of the file. */
static bool read_list(const storing *s, double *list, int *count)
{
    bool alone = !strchr(s->entry->value, ',');
    const char *hint = alone ? "" : " (commas stand between values; decimals take a point)";
    gtl_word rest = gtl_word_of(s->entry->value);
    gtl_word piece;
    int read = 0;
    while (gtl_word_cut(&rest, ',', &piece)) {
        if (read == GTL_HW_STEPS) {
            gtl_faults_add(s->r->faults, s->entry->line, "`%s`: more than %d values; leave some steps out",
                           s->key->key, GTL_HW_STEPS);
            return false;
        }
        if (!read_number(s, piece, hint, &list[read++], NULL)) return false;
    }
    *count = read;
    return true;
}

static bool store_edges(const storing *s)
{
    return read_list(s, s->r->row->edges, &s->r->edge_count);
}

static bool store_shares(const storing *s)
{
    return read_list(s, s->r->row->shares, &s->r->share_count);
}

/* Which of the words the value is, -1 after a fault. */
static int read_word(const storing *s, gtl_word value, const char *const *words, int count, const char *hint)
{
    char excerpt[GTL_EXCERPT_SIZE];
    for (int i = 0; i < count; i++) {
        if (gtl_word_compare(value, gtl_word_of(words[i])) == 0) return i;
    }
    gtl_faults_add(s->r->faults, s->entry->line, "`%s`: cannot read `%s`; write %s", s->key->key,
                   gtl_excerpt(value, excerpt), hint);
    return -1;
}

static int read_one_word(const storing *s, const char *const *words, int count, const char *hint)
{
    return read_word(s, gtl_word_trim(gtl_word_of(s->entry->value)), words, count, hint);
}

/* One class; GTL_CLASS_NONE after a fault. */
static gtl_rope_class read_class(const storing *s, gtl_word piece, const char *hint)
{
    const char *names[GTL_CLASS_COUNT - 1];
    for (int i = 1; i < GTL_CLASS_COUNT; i++) names[i - 1] = gtl_rope_class_name((gtl_rope_class)i);
    return (gtl_rope_class)(read_word(s, piece, names, GTL_CLASS_COUNT - 1, hint) + 1);
}

static bool store_class(const storing *s)
{
    gtl_word value = gtl_word_trim(gtl_word_of(s->entry->value));
    gtl_rope_class found = read_class(s, value, "fibre, natural-fibre, wire or chain");
    s->r->row->rope_class = found;
    s->r->row->classes[found] = true;
    return found != GTL_CLASS_NONE;
}

static bool store_classes(const storing *s)
{
    gtl_word rest = gtl_word_of(s->entry->value);
    gtl_word piece;
    while (gtl_word_cut(&rest, ',', &piece)) {
        gtl_rope_class found = read_class(s, piece, "fibre, natural-fibre, wire, chain, or some of them");
        if (found == GTL_CLASS_NONE) return false;
        if (s->r->row->classes[found]) {
            gtl_faults_add(s->r->faults, s->entry->line, "`class` names %s twice; once will do",
                           gtl_rope_class_name(found));
            return false;
        }
        if (s->r->row->rope_class == GTL_CLASS_NONE) s->r->row->rope_class = found;
        s->r->row->classes[found] = true;
    }
    return true;
}

static bool store_knots(const storing *s)
{
    static const char *const words[] = {"none"};
    s->r->row->no_knots =
        read_one_word(s, words, 1, "none, or leave the line out where figures for knots may be used") == 0;
    return s->r->row->no_knots;
}

static bool store_on(const storing *s)
{
    static const char *const words[] = {"choker", "straight"};
    int found = read_one_word(s, words, 2, "choker or straight: the rating that `keeps` counts on");
    s->r->row->on_single_leg = found == 1;
    return found >= 0;
}

static bool store_beyond(const storing *s)
{
    static const char *const words[] = {"not allowed", "not given"};
    int found = read_one_word(s, words, 2, "not allowed or not given");
    s->r->row->forbidden = found == 0;
    return found >= 0;
}

static bool store_people(const storing *s)
{
    static const char *const words[] = {"no", "yes"};
    int found = read_one_word(s, words, 2, "yes or no");
    s->r->row->over_people = found == 1;
    return found >= 0;
}

static bool store_text(const storing *s, gtl_word value, char **place)
{
    char *copy = gtl_text_copy(value.start, value.length);
    if (!copy) {
        s->r->faults->out_of_memory = true;
        return false;
    }
    free(*place);
    *place = copy;
    return true;
}

static bool store_material(const storing *s)
{
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_word value = gtl_word_trim(gtl_word_of(s->entry->value));
    if (gtl_is_name(value)) return store_text(s, value, &s->r->row->material);
    gtl_faults_add(s->r->faults, s->entry->line,
                   "`material`: `%s` is no name; write the name of a material's row, such as polyester",
                   gtl_excerpt(value, excerpt));
    return false;
}

static bool store_source(const storing *s)
{
    return store_text(s, gtl_word_trim(gtl_word_of(s->entry->value)), &s->r->row->source);
}

static bool store_note(const storing *s)
{
    return store_text(s, gtl_word_trim(gtl_word_of(s->entry->value)), &s->r->row->note);
}

static bool store_seen(const storing *s)
{
    static const char *const words[] = {"seen", "quoted", "memory", "derived", "invented", "own"};
    int found = read_one_word(s, words, 6, "seen, quoted, memory, derived, invented or own");
    return found >= 0 && store_text(s, gtl_word_of(words[found]), &s->r->row->seen);
}

void gtl_table_store(gtl_table_row *r, int key, const gtl_entry *entry)
{
    static bool (*const stores[GTL_TABLE_HOW_COUNT])(const storing *) = {
        [GTL_TABLE_NUMBER] = store_number,     [GTL_TABLE_EDGES] = store_edges,
        [GTL_TABLE_SHARES] = store_shares,     [GTL_TABLE_FORMULA] = store_formula,
        [GTL_TABLE_CLASS] = store_class,       [GTL_TABLE_CLASSES] = store_classes,
        [GTL_TABLE_KNOTS] = store_knots,       [GTL_TABLE_ON] = store_on,
        [GTL_TABLE_BEYOND] = store_beyond,     [GTL_TABLE_PEOPLE] = store_people,
        [GTL_TABLE_MATERIAL] = store_material, [GTL_TABLE_SOURCE] = store_source,
        [GTL_TABLE_SEEN] = store_seen,         [GTL_TABLE_NOTE] = store_note,
    };
    storing s = {r, gtl_table_key_at(key), entry};
    r->lines[key] = entry->line;
    if (!gtl_is_plain(entry->value)) {
        gtl_faults_add(r->faults, entry->line,
                       "`%s`: its text is not UTF-8, or holds control characters; save the file as UTF-8",
                       s.key->key);
        r->rough = true;
        return;
    }
    if (!stores[s.key->how](&s)) r->rough = true;
}
