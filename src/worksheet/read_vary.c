/* read_vary.c - `vary NAME KEY = VALUES`: which value of the rig it is, and what may stand there. */
#include "worksheet/read_set.h"

#include "base/suggest.h"
#include "base/word.h"

#include <stddef.h>

#define HOW "write vary NAME KEY = 20 kg to 60 kg step 5 kg, with a name and a key of the rig file"

/* A section's header in the rig; `rig` names [rig]. The nearest name, for messages. */
static const gtl_entry *find_section(const gtl_problem *problem, gtl_word name, const char **nearest)
{
    gtl_suggestion near = {.wanted = name, .best = -1};
    for (size_t i = 0; i < problem->rig.count; i++) {
        const gtl_entry *entry = &problem->rig.entries[i];
        const char *own = entry->name[0] ? entry->name : entry->kind;
        if (entry->key) continue;
        if (gtl_word_compare(gtl_word_of(own), name) == 0) return entry;
        gtl_suggest_try(&near, gtl_word_of(own), (int)i);
    }
    if (near.best >= 0) {
        const gtl_entry *entry = &problem->rig.entries[near.best];
        *nearest = entry->name[0] ? entry->name : entry->kind;
    }
    return NULL;
}

static const gtl_entry *find_key(const gtl_problem *problem, const gtl_entry *header, gtl_word key,
                                 const char **nearest)
{
    const gtl_entry *end = problem->rig.entries + problem->rig.count;
    gtl_suggestion near = {.wanted = key, .best = -1};
    for (const gtl_entry *entry = header + 1; entry < end && entry->key; entry++) {
        if (gtl_word_compare(gtl_word_of(entry->key), key) == 0) return entry;
        gtl_suggest_try(&near, gtl_word_of(entry->key), (int)(entry - header));
    }
    if (near.best >= 0) *nearest = header[near.best].key;
    return NULL;
}

static void refuse(const gtl_set_reading *reading, int line, const char *what, gtl_word word,
                   const char *nearest)
{
    if (nearest)
        gtl_faults_add(reading->faults, line, "`vary`: the rig has no %s `%.*s`; did you mean `%s`?", what,
                       GTL_SPELL(word), nearest);
    else
        gtl_faults_add(reading->faults, line, "`vary`: the rig has no %s `%.*s`; " HOW, what,
                       GTL_SPELL(word));
}

/* The entry that the key's words name, NULL after a fault. */
static const gtl_entry *find_entry(const gtl_set_reading *reading, const gtl_problem *problem,
                                   const gtl_entry *entry)
{
    const char *nearest = NULL;
    gtl_word rest = gtl_word_of(entry->key), name;
    gtl_word_cut(&rest, ' ', &name); /* the word `vary` */
    rest = gtl_word_trim(rest);
    if (rest.length == 0 || !gtl_word_cut(&rest, ' ', &name) || gtl_word_trim(rest).length == 0) {
        gtl_faults_add(reading->faults, entry->line, "`%s` does not say what is varied; " HOW, entry->key);
        return NULL;
    }
    rest = gtl_word_trim(rest);
    const gtl_entry *header = find_section(problem, name, &nearest);
    if (!header) {
        refuse(reading, entry->line, "part", name, nearest);
        return NULL;
    }
    const gtl_entry *found = find_key(problem, header, rest, &nearest);
    if (!found) refuse(reading, entry->line, "key there named", rest, nearest);
    return found;
}

static bool is_varied(const gtl_problem *problem, size_t entry)
{
    for (int i = 0; i < problem->varied_count; i++)
        if (problem->varied[i].entry == entry) return true;
    return false;
}

void gtl_read_vary(const gtl_set_reading *reading, gtl_problem *problem, const gtl_entry *entry)
{
    char why[GTL_WHY_SIZE];
    const gtl_entry *found = find_entry(reading, problem, entry);
    if (!found) return;
    size_t place = (size_t)(found - problem->rig.entries);
    if (is_varied(problem, place)) {
        gtl_faults_add(reading->faults, entry->line, "`%s` is varied already; keep one of them", entry->key);
        return;
    }
    if (problem->varied_count == GTL_MOST_VARIED) {
        gtl_faults_add(reading->faults, entry->line, "more than %d values vary in one problem; keep fewer",
                       GTL_MOST_VARIED);
        return;
    }
    gtl_vary *vary = &problem->varied[problem->varied_count++];
    *vary = (gtl_vary){.line = entry->line, .entry = place};
    if (!gtl_range_read(entry->value, vary, why)) {
        if (why[0])
            gtl_faults_add(reading->faults, entry->line, "`%s`: %s", entry->key, why);
        else
            reading->faults->out_of_memory = true;
    } else if (vary->count < 2) {
        gtl_faults_add(reading->faults, entry->line,
                       "`%s` has one value only; " HOW ", or 20 kg or 25 kg; or put it into the rig file",
                       entry->key);
    }
}
