/* read_problem.c - one [problem NAME] of a set. */
#include "worksheet/read_set.h"
#include "worksheet/worked.h"

#include "base/word.h"
#include "read/ini.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define MOST_ROOM 40

/* --- the rig --- */

/* The rig's text into entries, once it was seen that it can be read as it stands. */
static void take_rig(const gtl_set_reading *reading, gtl_problem *problem, const gtl_set_file *file)
{
    gtl_fault_list own;
    gtl_faults_begin(&own, file->name);
    gtl_rig *rig = own.out_of_memory ? NULL : gtl_read_text(file->text, file->size, &own);
    gtl_rig_free(rig);
    if (rig && gtl_screen(file->text, file->size, &gtl_rig_file, &problem->rig, &own))
        gtl_ini_values(&problem->rig.clean, problem->rig.entries, problem->rig.count, &problem->values, &own);
    gtl_faults_take(reading->faults, &own);
    gtl_faults_end(&own);
}

static void read_rig(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *entry)
{
    gtl_set_file file = {0};
    char why[GTL_UNREADABLE_SIZE] = "";
    problem->rig_line = entry->line;
    if (entry->value[0] == '\0') {
        gtl_faults_add(reading->faults, entry->line,
                       "`rig` is empty; write a rig file's name, counted from this set's folder");
        return;
    }
    if (reading->open(reading->context, entry->value, &file, why))
        take_rig(reading, problem, &file);
    else
        gtl_faults_add(reading->faults, entry->line,
                       "`rig`: cannot read `%s`: %s; mend the name, which counts from this set's folder",
                       entry->value, why);
    problem->file = file.name;
    free(file.text);
}

/* --- what is asked --- */

static void refuse_word(const gtl_set_reading *reading, const gtl_entry *entry, gtl_word word,
                        const char *nearest)
{
    char excerpt[GTL_EXCERPT_SIZE];
    if (nearest)
        gtl_faults_add(reading->faults, entry->line, "`%s`: there is no `%s`; did you mean `%s`?", entry->key,
                       gtl_excerpt(word, excerpt), nearest);
    else
        gtl_faults_add(reading->faults, entry->line,
                       "`%s`: there is no `%s`; `gantline worksheet --help` lists all", entry->key,
                       gtl_excerpt(word, excerpt));
}

static void add_ask(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *entry,
                    gtl_word word)
{
    const char *nearest = NULL;
    int ask = gtl_ask_find(word, &nearest);
    if (ask < 0) {
        refuse_word(reading, entry, word, nearest);
        return;
    }
    for (int i = 0; i < problem->ask_count; i++) {
        if (problem->asks[i] != ask) continue;
        gtl_faults_add(reading->faults, entry->line, "`ask` names `%.*s` twice; keep one of them",
                       GTL_SPELL(word));
        return;
    }
    if (problem->ask_count < GTL_MOST_ASKED) problem->asks[problem->ask_count++] = ask;
}

static void read_asks(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *entry)
{
    gtl_word rest = gtl_word_of(entry->value), word;
    problem->ask_line = entry->line;
    while (gtl_word_cut(&rest, ',', &word)) add_ask(reading, problem, entry, word);
}

static void read_mistake(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *entry)
{
    const char *nearest = NULL;
    gtl_word word = gtl_word_of(entry->value);
    problem->ask_line = entry->line;
    problem->mistake = gtl_mistake_find(word, &nearest);
    if (problem->mistake < 0) refuse_word(reading, entry, word, nearest);
}

/* --- the rest --- */

static void read_text(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *entry)
{
    (void)reading;
    problem->text = entry->value;
}

static void read_room(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *entry)
{
    char why[GTL_WHY_SIZE];
    double lines = 0;
    if (!gtl_parse_quantity(entry->value, GTL_WHOLE, NAN, &lines, NULL, why))
        gtl_faults_add(reading->faults, entry->line, "`room`: %s", why);
    else if (lines < 1 || lines > MOST_ROOM)
        gtl_faults_add(reading->faults, entry->line, "`room`: write 1 to %d lines", MOST_ROOM);
    else
        problem->room = (int)lines;
}

static void read_lift(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *entry)
{
    char why[GTL_WHY_SIZE];
    problem->lift.line = entry->line;
    if (!gtl_range_read(entry->value, &problem->lift, why)) {
        if (why[0])
            gtl_faults_add(reading->faults, entry->line, "`lift`: %s", why);
        else
            reading->faults->out_of_memory = true;
        return;
    }
    for (int i = 0; i < problem->lift.count; i++) {
        double metres = 0;
        bool read = gtl_parse_quantity(problem->lift.values[i], GTL_LENGTH, NAN, &metres, NULL, why);
        if (!read)
            gtl_faults_add(reading->faults, entry->line, "`lift`: %s", why);
        else if (!(metres > 0))
            gtl_faults_add(reading->faults, entry->line,
                           "`lift` is above zero; write how far the load rises");
    }
}

static const char *const names[] = {"rig", "ask", "mistake", "text", "room", "lift", "vary NAME KEY"};

static void (*const readers[])(const gtl_set_reading *, gtl_problem *, const gtl_entry *) = {
    read_rig, read_asks, read_mistake, read_text, read_room, read_lift};

#define KEY_COUNT (sizeof readers / sizeof *readers)

static bool is_vary(const char *key)
{
    gtl_word word = gtl_word_of(key);
    if (word.length > 4) word.length = 4;
    return gtl_word_compare(word, gtl_word_of("vary")) == 0 && (key[4] == ' ' || key[4] == '\0');
}

static void read_key(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *header,
                     const gtl_entry *entry)
{
    const gtl_entry *twin = gtl_set_twin(header, entry);
    size_t key = 0;
    while (key < KEY_COUNT && gtl_text_compare(entry->key, names[key]) != 0) key++;
    if (twin)
        gtl_faults_add(reading->faults, entry->line,
                       "`%s` is given twice (first in line %d); keep one of them", entry->key, twin->line);
    else if (key < KEY_COUNT)
        readers[key](reading, problem, entry);
    else if (!is_vary(entry->key))
        gtl_set_refuse_key(reading, entry, names, KEY_COUNT + 1);
}

static bool has_key(const gtl_entry *header, const gtl_entry *end, const char *key)
{
    for (const gtl_entry *entry = header + 1; entry < end; entry++)
        if (gtl_text_compare(entry->key, key) == 0) return true;
    return false;
}

/* What only the whole section can say. */
static void check_whole(const gtl_set_reading *reading, const gtl_problem *problem, const gtl_entry *header,
                        const gtl_entry *end)
{
    bool asks = has_key(header, end, "ask"), shows = has_key(header, end, "mistake");
    if (!has_key(header, end, "rig"))
        gtl_faults_add(reading->faults, header->line, "[problem %s] has no rig; write rig = FILE",
                       problem->name);
    if (!asks && !shows)
        gtl_faults_add(reading->faults, header->line,
                       "[problem %s] asks nothing; write ask = hold, say, or mistake = friction-forgotten",
                       problem->name);
    if (asks && shows)
        gtl_faults_add(reading->faults, problem->ask_line,
                       "a mistake has its own question; write either `ask` or `mistake`");
    if (problem->lift.line == 0) return;
    unsigned needs = shows && problem->mistake >= 0 ? gtl_mistake_needs(problem->mistake) : 0;
    for (int i = 0; i < problem->ask_count; i++) needs |= gtl_ask_needs(problem->asks[i]);
    if (!(needs & GTL_NEEDS_LIFT))
        gtl_faults_add(reading->faults, problem->lift.line,
                       "`lift` changes nothing here: no question is about a distance or work; leave it out");
}

void gtl_read_problem(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *header,
                      const gtl_entry *end)
{
    for (const gtl_entry *entry = header + 1; entry < end; entry++) read_key(reading, problem, header, entry);
    check_whole(reading, problem, header, end);
    if (!problem->values) return; /* its rig was not read: what it varies cannot be looked up */
    for (const gtl_entry *entry = header + 1; entry < end; entry++)
        if (is_vary(entry->key) && !gtl_set_twin(header, entry)) gtl_read_vary(reading, problem, entry);
}
