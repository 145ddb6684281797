/* problems.c - sets of problems in memory. */
#include "unit/problems.h"
#include "base/text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const struct {
    const char *name;
    const char *text;
} rigs[] = {
    {"two.ini", TWO_PARTS},
    {"three.ini",
     "[anchor beam]\nat = 3 m\n[block head]\non = beam\nefficiency = 90 %\n[block tail]\nat = 1 m\n"
     "efficiency = 90 %\nmass = 1 kg\n[load crate]\non = tail\nmass = 8 kg\n[hand crew]\nat = 2.5 m\n"
     "[rope fall]\npath = tail, head, tail, crew\n"},
    {"led.ini", "[anchor beam]\nat = 0 m, 5 m\n[anchor ring]\nat = 2 m, 0 m\n[block head]\non = beam\n"
                "efficiency = 90 %\n[block lead]\non = ring\nefficiency = 95 %\n[load crate]\nat = 0 m, 1 m\n"
                "mass = 10 kg\n[hand crew]\nat = 5 m, 0 m\n[rope fall]\npath = crate, head, lead, crew\n"},
    {"legs.ini", "[anchor left]\nat = -3 m, 4 m\n[anchor right]\nat = 3 m, 4 m\n[load lamp]\nat = 0 m, 0 m\n"
                 "mass = 10 kg\n[sling one]\npath = left, lamp\n[sling two]\npath = right, lamp\n"},
    {"odd.ini", "[anchor left]\nat = -3 m, 4 m\n[anchor right]\nat = 1 m, 4 m\n[load lamp]\nat = 0 m, 0 m\n"
                "mass = 10 kg\n[sling one]\npath = left, lamp\n[sling two]\npath = right, lamp\n"},
    {"fault.ini", "[anchor beam]\nat = 3 kg\n"},
};

static bool open_rig(void *context, const char *name, gtl_set_file *file, char why[GTL_UNREADABLE_SIZE])
{
    (void)context;
    for (size_t i = 0; i < sizeof rigs / sizeof *rigs; i++) {
        if (strcmp(rigs[i].name, name) != 0) continue;
        file->size = strlen(rigs[i].text);
        file->name = gtl_text_copy(name, strlen(name));
        file->text = gtl_text_copy(rigs[i].text, file->size);
        snprintf(why, GTL_UNREADABLE_SIZE, "out of memory");
        return file->name && file->text;
    }
    snprintf(why, GTL_UNREADABLE_SIZE, "there is none");
    return false;
}

gtl_set *read_set(const char *text, gtl_fault_list *faults)
{
    gtl_faults_begin(faults, "test.set");
    return gtl_set_read(text, strlen(text), open_rig, NULL, faults);
}

gtl_set *read_sound_set(const char *text)
{
    gtl_fault_list faults;
    gtl_set *set = read_set(text, &faults);
    if (faults.count > 0) fail_msg("line %d: %s", faults.items[0].line, faults.items[0].text);
    assert_non_null(set);
    gtl_faults_end(&faults);
    return set;
}

void assert_set_fault(const char *text, int line, const char *words)
{
    gtl_fault_list faults;
    gtl_set *set = read_set(text, &faults);
    if (set) fail_msg("no fault in: %s", text);
    assert_int_equal(faults.count, 1);
    assert_int_equal(faults.items[0].line, line);
    if (!strstr(faults.items[0].text, words)) fail_msg("said: %s", faults.items[0].text);
    gtl_faults_end(&faults);
}
