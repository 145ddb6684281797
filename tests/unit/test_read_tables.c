/* test_read_tables.c - rig files that bring hardware tables of their own: which rows are found, whose faults
 * are told, failing memory. */
#define _POSIX_C_SOURCE 200809L /* mkdtemp */

#include "unit/failing_memory.h"
#include "unit/rated.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include <cmocka.h>

static void check_row(const gtl_hardware_row *row, const char *name)
{
    assert_non_null(row);
    assert_string_equal(row->name, name);
}

/* ---- tables of one's own ---- */

static const char own_table[] = "[knot bowline]\nkeeps = 40 %\n"
                                "[gear my-rope]\nmbs = 20 kN\nmaterial = my-hemp\n"
                                "[material my-hemp]\nclass = natural-fibre\n"
                                "[hitch choke-my-hemp]\nkeeps = 30 %\n"
                                "[termination my-splice]\nkeeps = 85 %\nclass = fibre\n"
                                "[choke natural-fibre]\nclass = natural-fibre\non = choker\nfrom = 90 deg\n"
                                "keeps = 50 %\n";

static const char own_rig[] = "[rig]\ntables = %s\n[anchor beam]\nat = 3 m\n[load crate]\nat = 1 m\n"
                              "mass = 20 kg\n[sling strop]\npath = beam, crate\nknot = bowline\n"
                              "hardware = my-rope\nhitch = choke\nchoke angle = 120 deg\n";

/* A folder with the table in it, and the rig file's name there; both are removed by end_folder. */
typedef struct folder {
    char path[40];
    char table[60];
    char rig[60];
} folder;

static folder begin_folder(void)
{
    folder made = {.path = "/tmp/gantline-XXXXXX"};
    assert_non_null(mkdtemp(made.path));
    snprintf(made.table, sizeof made.table, "%s/mine.ini", made.path);
    snprintf(made.rig, sizeof made.rig, "%s/rig.ini", made.path);
    FILE *file = fopen(made.table, "w");
    assert_non_null(file);
    assert_true(fputs(own_table, file) >= 0 && fclose(file) == 0);
    return made;
}

static void end_folder(const folder *made)
{
    assert_int_equal(remove(made->table), 0);
    assert_int_equal(rmdir(made->path), 0);
}

static gtl_rig *read_at(const char *file, const char *tables, gtl_fault_list *faults)
{
    char text[1000];
    snprintf(text, sizeof text, own_rig, tables);
    gtl_faults_begin(faults, file);
    return gtl_read_text(text, strlen(text), faults);
}

static void check_own_rows(const char *file, const char *tables)
{
    gtl_fault_list faults;
    gtl_rig *rig = read_at(file, tables, &faults);
    if (!rig) fail_msg("%s", faults.items[0].text);
    const gtl_gear *gear = &rig->lines[0].gear;
    check_row(gear->row, "my-rope");
    check_row(gear->material, "my-hemp");
    check_row(gear->hitch, "choke-my-hemp");
    check_row(gear->choke, "natural-fibre");
    check_row(gear->knot, "bowline"); /* before the shipped one */
    assert_true(!gear->knot->shipped && gear->knot->numbers[GTL_HW_KEEPS] == 0.4);
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
}

/* A table's name counts from the rig file's folder, not from where the program is called. */
static void test_own_tables(void **state)
{
    (void)state;
    folder made = begin_folder();
    gtl_fault_list faults;
    check_own_rows(made.rig, "mine.ini");
    check_own_rows("elsewhere/rig.ini", made.table);
    check_own_rows("rig.ini", made.table);
    assert_null(read_at("elsewhere/rig.ini", "mine.ini", &faults));
    assert_int_equal(faults.count, 1); /* nor are the rows that it may have called unknown */
    assert_non_null(strstr(faults.items[0].text, "`elsewhere/mine.ini`"));
    gtl_faults_end(&faults);
    end_folder(&made);
}

/* The figure of a fibre that shipped ends are not for may come from its maker. */
static void test_own_end(void **state)
{
    (void)state;
    static const char text[] = "[rig]\ntables = mine.ini\n[anchor beam]\nat = 3 m\n[load crate]\nat = 1 m\n"
                               "mass = 20 kg\n[rope strop]\npath = beam, crate\nmaterial = hmpe\n"
                               "termination = my-splice\n";
    folder made = begin_folder();
    gtl_fault_list faults;
    gtl_faults_begin(&faults, made.rig);
    gtl_rig *rig = gtl_read_text(text, strlen(text), &faults);
    if (!rig) fail_msg("%s", faults.items[0].text);
    check_row(rig->lines[0].gear.termination, "my-splice");
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    end_folder(&made);
}

/* A rig that uses no row carries no tables about. */
static void test_plain_rig(void **state)
{
    (void)state;
    gtl_rig *rig =
        read_sound("[anchor beam]\nat = 3 m\n[load crate]\non = tail\nmass = 20 kg\n[hand crew]\nat = 2.5 m\n"
                   "[block tail]\nat = 1 m\nefficiency = 90 %%\nwear = 90 %%\n"
                   "[rope fall]\npath = beam, tail, crew\nwet = 80 %%\n");
    assert_null(rig->hardware);
    gtl_rig_free(rig);
}

/* ---- faults of several files ---- */

static void test_faults_of_files(void **state)
{
    (void)state;
    gtl_fault_list faults, table, other;
    gtl_faults_begin(&faults, "rig.ini");
    gtl_faults_begin(&table, "mine.ini");
    gtl_faults_begin(&other, "other.ini");
    gtl_faults_add(&faults, 0, "of the rig");
    gtl_faults_add(&table, 7, "second");
    gtl_faults_add(&table, 3, "first");
    gtl_faults_add(&other, 1, "third");
    gtl_faults_take(&faults, &table);
    gtl_faults_take(&faults, &other);
    gtl_faults_add(&faults, 3, "first");
    gtl_faults_add(&faults, 0, "of the rig");
    assert_int_equal(table.count, 0);
    char *text = gtl_faults_text(&faults);
    assert_string_equal(text,
                        "mine.ini:3: first\nmine.ini:7: second\nother.ini:1: third\nrig.ini: of the rig\n"
                        "rig.ini:3: first\n");
    assert_string_equal(gtl_fault_file(&faults, &faults.items[1]), "mine.ini");
    assert_string_equal(gtl_fault_file(&faults, &faults.items[4]), "rig.ini");
    free(text);
    gtl_faults_end(&table);
    gtl_faults_end(&other);
    gtl_faults_end(&faults);
}

/* ---- failing memory ---- */

/* Read with the first `allowed` allocations granted. True once none was refused. */
static bool read_short_of_memory(const char *file, const char *text, long allowed, bool good)
{
    gtl_fault_list faults;
    long before = blocks_alive();
    allow_allocations(allowed);
    gtl_faults_begin(&faults, file);
    gtl_rig *rig = gtl_read_text(text, strlen(text), &faults);
    bool refused = allow_all_allocations();
    assert_true(faults.out_of_memory == refused);
    assert_true((rig != NULL) == (good && !refused));
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void test_failing_memory(void **state)
{
    (void)state;
    folder made = begin_folder();
    char good[1000];
    static const char bad[] =
        "[rig]\ntables = mine.ini, none.ini\ncases = lost cratf\n[anchor beam]\nat = 3 m\n"
        "fitting = eyebolt-of-mine\n[load crate]\nat = 1 m\nmass = 20 kg\n"
        "[sling strop]\npath = beam, crate\nknot = bowlin\n";
    snprintf(good, sizeof good, own_rig, "mine.ini");
    long allowed = 0;
    while (!read_short_of_memory(made.rig, good, allowed, true)) allowed++;
    assert_true(allowed > 100);
    for (allowed = 0; !read_short_of_memory(made.rig, bad, allowed, false);) allowed++;
    assert_true(allowed > 100);
    end_folder(&made);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_own_tables),     cmocka_unit_test(test_own_end),
        cmocka_unit_test(test_plain_rig),      cmocka_unit_test(test_faults_of_files),
        cmocka_unit_test(test_failing_memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
