/* read_set.c - the text of a set, strictly screened like a rig file's, to its problems. */
#include "worksheet/read_set.h"

#include "base/grow.h"
#include "base/suggest.h"
#include "base/word.h"
#include "read/ini.h"

#include <stdlib.h>
#include <string.h>

static const gtl_sort_of_file set_file = {"set of problems", "[problem two-parts], or [set]",
                                          "[set] or [problem two-parts]"};

static const char *const set_keys[] = {"title", "note"};

const gtl_entry *gtl_set_twin(const gtl_entry *header, const gtl_entry *entry)
{
    for (const gtl_entry *other = header + 1; other < entry; other++)
        if (gtl_text_compare(other->key, entry->key) == 0) return other;
    return NULL;
}

void gtl_set_refuse_key(const gtl_set_reading *reading, const gtl_entry *entry, const char *const *keys,
                        size_t count)
{
    gtl_suggestion near = {.wanted = gtl_word_of(entry->key), .best = -1};
    gtl_text all = {0};
    for (size_t i = 0; i < count; i++) {
        gtl_suggest_try(&near, gtl_word_of(keys[i]), (int)i);
        gtl_text_add(&all, "%s%s", i > 0 ? ", " : "", keys[i]);
    }
    char *list = gtl_text_take(&all);
    if (near.best >= 0)
        gtl_faults_add(reading->faults, entry->line, "[%s] has no key `%s`; did you mean `%s`?", entry->kind,
                       entry->key, keys[near.best]);
    else if (list)
        gtl_faults_add(reading->faults, entry->line, "[%s] has no key `%s`; its keys are: %s", entry->kind,
                       entry->key, list);
    else
        reading->faults->out_of_memory = true;
    free(list);
}

/* The section [set]. */
static void read_head(const gtl_set_reading *reading, const gtl_entry *header, const gtl_entry *end)
{
    const char **slots[] = {&reading->set->title, &reading->set->note};
    if (header->name[0])
        gtl_faults_add(reading->faults, header->line,
                       "[set] has no name; write [set], and what it is as its `title`");
    for (const gtl_entry *entry = header + 1; entry < end; entry++) {
        const gtl_entry *twin = gtl_set_twin(header, entry);
        size_t key = 0;
        while (key < 2 && gtl_text_compare(entry->key, set_keys[key]) != 0) key++;
        if (key == 2)
            gtl_set_refuse_key(reading, entry, set_keys, 2);
        else if (twin)
            gtl_faults_add(reading->faults, entry->line,
                           "`%s` is given twice (first in line %d); keep one of them", entry->key,
                           twin->line);
        else
            *slots[key] = entry->value;
    }
}

/* A header like one before it: nobody can tell which one is meant. */
static bool tell_twin(const gtl_set_reading *reading, const gtl_entry *header)
{
    const gtl_entry *entries = reading->set->screened.entries;
    for (const gtl_entry *other = entries; other < header; other++) {
        if (other->key || gtl_text_compare(other->kind, header->kind) != 0 ||
            gtl_text_compare(other->name, header->name) != 0)
            continue;
        gtl_faults_add(
            reading->faults, header->line,
            "there is a [%s%s%s] already (line %d); choose another name, or write all of it in one",
            header->kind, header->name[0] ? " " : "", header->name, other->line);
        return true;
    }
    return false;
}

/* A problem at the set's end that says nothing yet; NULL after a fault. */
static gtl_problem *add_problem(const gtl_set_reading *reading, const gtl_entry *header)
{
    gtl_set *set = reading->set;
    if (header->name[0] == '\0') {
        gtl_faults_add(reading->faults, header->line, "a problem needs a name; write [problem NAME]");
        return NULL;
    }
    if (set->problem_count == GTL_MOST_PROBLEMS) {
        gtl_faults_add(reading->faults, header->line, "more than %d problems; make two sets of them",
                       GTL_MOST_PROBLEMS);
        return NULL;
    }
    gtl_problem *problems =
        gtl_grow(set->problems, (size_t)set->problem_count, &set->problem_capacity, sizeof *problems);
    if (!problems) {
        reading->faults->out_of_memory = true;
        return NULL;
    }
    set->problems = problems;
    problems[set->problem_count] = (gtl_problem){
        .name = header->name, .text = "", .line = header->line, .mistake = -1, .room = GTL_USUAL_ROOM};
    return &problems[set->problem_count++];
}

static void read_section(const gtl_set_reading *reading, const gtl_entry *header, const gtl_entry *end)
{
    if (tell_twin(reading, header)) return;
    if (gtl_text_compare(header->kind, "set") == 0) {
        read_head(reading, header, end);
    } else if (gtl_text_compare(header->kind, "problem") == 0) {
        gtl_problem *problem = add_problem(reading, header);
        if (problem) gtl_read_problem(reading, problem, header, end);
    } else {
        gtl_faults_add(reading->faults, header->line,
                       "a set has no section `%s`; write [set], or [problem NAME]", header->kind);
    }
}

static void read_sections(const gtl_set_reading *reading)
{
    gtl_set *set = reading->set;
    const gtl_entry *entries = set->screened.entries;
    for (size_t i = 0, next; i < set->screened.count && !reading->faults->out_of_memory; i = next) {
        for (next = i + 1; next < set->screened.count && entries[next].key; next++) continue;
        read_section(reading, &entries[i], &entries[next]);
    }
    if (set->problem_count == 0 && reading->faults->count == 0 && !reading->faults->out_of_memory)
        gtl_faults_add(reading->faults, 0,
                       "no problem in this set; write [problem NAME], and under it a `rig`");
}

gtl_set *gtl_set_read(const char *text, size_t size, gtl_set_opener *open, void *context,
                      gtl_fault_list *faults)
{
    gtl_set *set = calloc(1, sizeof *set);
    if (!set) {
        faults->out_of_memory = true;
        return NULL;
    }
    gtl_set_reading reading = {set, open, context, faults};
    set->title = set->note = "";
    if (gtl_screen(text, size, &set_file, &set->screened, faults) &&
        gtl_ini_values(&set->screened.clean, set->screened.entries, set->screened.count, &set->values,
                       faults))
        read_sections(&reading);
    if (faults->count == 0 && !faults->out_of_memory) gtl_set_try(set, faults);
    if (faults->count == 0 && !faults->out_of_memory) return set;
    gtl_set_free(set);
    return NULL;
}

static void end_problem(gtl_problem *problem)
{
    for (int i = 0; i < problem->varied_count; i++) gtl_range_end(&problem->varied[i]);
    gtl_range_end(&problem->lift);
    gtl_ini_end(problem->values);
    gtl_screened_end(&problem->rig);
    free(problem->file);
}

void gtl_set_free(gtl_set *set)
{
    if (!set) return;
    for (int i = 0; i < set->problem_count; i++) end_problem(&set->problems[i]);
    free(set->problems);
    gtl_ini_end(set->values);
    gtl_screened_end(&set->screened);
    free(set);
}
