/* test_read.c - texts and entries to rigs: what a rig holds, what is understood, large rigs, failing memory.
 */
#define _POSIX_C_SOURCE 200809L /* clock_gettime */

#include "unit/failing_memory.h"

#include <gantline/gantline.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <cmocka.h>

/* ---- help ---- */

static const char hoist[] = "[rig]\n"
                            "title = Painted drop, dock hoist\n"
                            "design factor = 8\n"
                            "[anchor beam]\n"
                            "at = 5.5 m\n"
                            "wll = 3 kN\n"
                            "[block head]\n"
                            "on = beam via shackle-a\n"
                            "efficiency = 92 %\n"
                            "wll = 2.5 kN\n"
                            "[connector shackle-a]\n"
                            "wll = 5 kN\n"
                            "[block tail]\n"
                            "at = 1.5 m\n"
                            "efficiency = 92 %\n"
                            "mass = 0.9 kg\n"
                            "wll = 2.5 kN\n"
                            "[load drop]\n"
                            "on = tail\n"
                            "mass = 60 kg\n"
                            "[hand crew]\n"
                            "at = 1 m\n"
                            "people = 2\n"
                            "each = 250 N\n"
                            "[rope fall]\n"
                            "path = beam, tail, head, crew\n"
                            "mbs = 18 kN\n";

/* The rig of a text that has to be read without a fault. */
static gtl_rig *read_well(const char *text, size_t size)
{
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "test");
    gtl_rig *rig = gtl_read_text(text, size, &faults);
    if (!rig) fail_msg("%s", faults.count > 0 ? faults.items[0].text : "no memory");
    assert_int_equal(faults.count, 0);
    gtl_faults_end(&faults);
    return rig;
}

/* The one fault of a text. */
static void check_fault(const char *text, size_t size, int line, const char *says)
{
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "test");
    assert_null(gtl_read_text(text, size, &faults));
    assert_int_equal(faults.count, 1);
    assert_int_equal(faults.items[0].line, line);
    if (!strstr(faults.items[0].text, says)) fail_msg("%s", faults.items[0].text);
    gtl_faults_end(&faults);
}

static void check_near(double value, double expected)
{
    if (!(fabs(value - expected) <= 1e-12 * fabs(expected)))
        fail_msg("%.17g, expected %.17g", value, expected);
}

static int thing_named(const gtl_rig *rig, const char *name)
{
    for (int i = 0; i < rig->thing_count; i++) {
        if (strcmp(rig->things[i].name, name) == 0) return i;
    }
    fail_msg("no thing %s", name);
    return -1;
}

/* ---- what a rig holds ---- */

static void test_things(void **state)
{
    (void)state;
    gtl_rig *rig = read_well(hoist, strlen(hoist));
    const gtl_thing *beam = &rig->things[thing_named(rig, "beam")];
    const gtl_thing *head = &rig->things[thing_named(rig, "head")];
    const gtl_thing *tail = &rig->things[thing_named(rig, "tail")];
    const gtl_thing *drop = &rig->things[thing_named(rig, "drop")];
    const gtl_thing *crew = &rig->things[thing_named(rig, "crew")];
    assert_int_equal(rig->thing_count, 5);
    assert_int_equal(rig->node_count, 3);
    assert_int_equal(rig->dim, 1);
    assert_string_equal(rig->title, "Painted drop, dock hoist");
    assert_string_equal(rig->note, "");
    assert_true(head->node == beam->node && rig->nodes[beam->node].fixed);
    assert_true(drop->node == tail->node && !rig->nodes[tail->node].fixed);
    assert_true(rig->nodes[crew->node].fixed);
    assert_true(head->at[0] == 5.5 && drop->at[0] == 1.5);
    check_near(rig->nodes[tail->node].weight, 60.9 * 9.80665);
    check_near(head->rating.wll, 2500);
    check_near(head->rating.design_factor, 8);
    assert_true(isnan(head->rating.mbs));
    check_near(head->efficiency, 0.92);
    assert_true(head->friction_stated && !head->weight_stated && tail->weight_stated);
    check_near(crew->limit, 500);
    assert_true(isnan(crew->pull) && crew->people == 2);
    assert_int_equal(head->line, 7);
    assert_int_equal(head->via.count, 1);
    assert_int_equal(rig->connectors[rig->vias[head->via.first]].thing, thing_named(rig, "head"));
    assert_true(gtl_rig_asks(rig, GTL_HOLD) && gtl_rig_asks(rig, GTL_RAISE) && gtl_rig_asks(rig, GTL_LOWER));
    gtl_rig_free(rig);
}

static void test_path(void **state)
{
    (void)state;
    gtl_rig *rig = read_well(hoist, strlen(hoist));
    const gtl_line *fall = &rig->lines[0];
    assert_int_equal(rig->line_count, 1);
    assert_int_equal(fall->stop_count, 4);
    assert_int_equal(rig->part_count, 3);
    assert_int_equal(rig->piece_count, 1);
    assert_int_equal(rig->run_count, 2);
    const gtl_piece *piece = &rig->pieces[0];
    assert_true(piece->rule == GTL_DRIVEN && piece->part_count == 3 && piece->run_count == 2);
    assert_int_equal(piece->hand, thing_named(rig, "crew"));
    assert_false(piece->hand_first);
    assert_true(rig->stops[0].tied && !rig->stops[1].tied && !rig->stops[2].tied && rig->stops[3].tied);
    assert_int_equal(rig->runs[1].thing, thing_named(rig, "head"));
    assert_int_equal(rig->runs[1].before, 1);
    assert_int_equal(rig->driven, 0);
    assert_int_equal(rig->load, thing_named(rig, "drop"));
    assert_int_equal(rig->hand, thing_named(rig, "crew"));
    gtl_rig_free(rig);
}

/* A rope tied in the middle falls into pieces; a spar weighs half at each end; defaults of [rig]. */
static void test_pieces(void **state)
{
    (void)state;
    static const char text[] = "[rig]\nefficiency = 90 %\ngravity = 9.8 m/s2\nunits = us\ncases = raise\n"
                               "[hand crew]\nat = 0 m, 0 m\n"
                               "[block head]\nat = 0 m, 5 m\non = post\n"
                               "[anchor post]\nat = 0 m, 5 m\n"
                               "[joint grab]\nat = 1 m, 4 m\n"
                               "[joint far]\nat = 2 m, 3 m\nguide = vertical\n"
                               "[load crate]\non = far\nweight = 500 N\n"
                               "[anchor wall]\nat = 6 m, 4 m\n"
                               "[rope fall]\npath = crew, head, grab, wall\n"
                               "[spar boom]\npath = grab, far\nmass = 10 kg\n";
    char *mended = strdup(text);
    char *both = strstr(mended, "at = 0 m, 5 m\non");
    memset(both, ' ', strlen("at = 0 m, 5 m"));
    gtl_rig *rig = read_well(mended, strlen(mended));
    assert_int_equal(rig->piece_count, 3);
    assert_true(rig->pieces[0].rule == GTL_DRIVEN && rig->pieces[0].hand_first &&
                rig->pieces[0].run_count == 1);
    assert_true(rig->pieces[1].rule == GTL_TIED && rig->pieces[1].hand < 0 && rig->pieces[1].part_count == 1);
    assert_true(rig->pieces[2].rule == GTL_STRUT);
    assert_int_equal(rig->pieces[1].first_part, 2);
    assert_int_equal(rig->parts[2].from, 2);
    check_near(rig->nodes[rig->things[thing_named(rig, "grab")].node].weight, 49);
    check_near(rig->nodes[rig->things[thing_named(rig, "far")].node].weight, 549);
    assert_true(rig->nodes[rig->things[thing_named(rig, "crate")].node].guided);
    check_near(rig->things[thing_named(rig, "head")].efficiency, 0.9);
    assert_true(rig->us_units && rig->gravity_stated && rig->dim == 2);
    assert_true(gtl_rig_asks(rig, GTL_HOLD) && gtl_rig_asks(rig, GTL_RAISE) && !gtl_rig_asks(rig, GTL_LOWER));
    gtl_rig_free(rig);
    free(mended);
}

/* ---- what is understood ---- */

static void test_forms(void **state)
{
    (void)state;
    static const char text[] = "\xEF\xBB\xBF; a comment that ends in \\\r\n"
                               "[RIG] # the sheet\r\n"
                               "\tTitle =  \"Kr\xC3\xA4n; # 1\"   ; in quotes\r\n"
                               "note = it's 5 = 5 # not in quotes\r\n"
                               "by = ''\r\n"
                               "date =\r\n"
                               "\r\n"
                               "[Anchor Beam]\r\n"
                               "AT=3 M\r\n"
                               "[load crate];\r\n"
                               "at = \"1 m\"\r\n"
                               "mass = 20 kg\r\n"
                               "[ rope   fall ]\r\n"
                               "path = BEAM , crate via RING+ shackle\r\n"
                               "[connector ring]\r\n"
                               "[connector Shackle]";
    /* the one thing here that is a fault: `;` without a blank before it */
    check_fault(text, strlen(text), 10, "put a blank before it");
    char *mended = strdup(text);
    *strstr(mended, ";\r\nat") = ' ';
    gtl_rig *rig = read_well(mended, strlen(mended));
    assert_string_equal(rig->title, "Kr\xC3\xA4n; # 1");
    assert_string_equal(rig->note, "it's 5 = 5");
    assert_string_equal(rig->by, "");
    assert_string_equal(rig->date, "");
    assert_string_equal(rig->things[0].name, "Beam");
    assert_int_equal(rig->things[0].line, 8);
    assert_int_equal(rig->stops[1].via.count, 2);
    assert_string_equal(rig->connectors[rig->vias[rig->stops[1].via.first + 1]].name, "Shackle");
    gtl_rig_free(rig);
    free(mended);
}

static void test_size_limits(void **state)
{
    (void)state;
    size_t size = GTL_FILE_LIMIT + 1;
    char *text = malloc(size + 1);
    assert_non_null(text);
    memset(text, '\n', size);
    memcpy(text, hoist, strlen(hoist));
    text[size] = '\0';
    check_fault(text, size, 0, "256 KiB");
    gtl_rig_free(read_well(text, size - 1));
    size_t start = strlen(hoist);
    memset(text + start, 'x', GTL_LINE_LIMIT + 1);
    text[start] = '#';
    check_fault(text, size - 1, 28, "1,000 bytes");
    text[start + GTL_LINE_LIMIT] = '\n';
    gtl_rig_free(read_well(text, size - 1));
    free(text);
}

/* No name may be longer than 32 letters in a file; entries may hold any. */
static void test_entries(void **state)
{
    (void)state;
    static const char name[] = "a-name-that-is-much-longer-than-any-name-in-a-file-may-be";
    const gtl_entry entries[] = {
        {"anchor", "beam", NULL, NULL, 1},  {"anchor", "beam", "at", "3 m", 2},
        {"load", name, NULL, NULL, 3},      {"load", name, "at", "1 m", 4},
        {"load", name, "mass", "20 kg", 5}, {"rope", "fall", NULL, NULL, 6},
        {"rope", "fall", "path", name, 7},
    };
    char path[200];
    snprintf(path, sizeof path, "beam, %s", name);
    gtl_entry mended[sizeof entries / sizeof entries[0]];
    memcpy(mended, entries, sizeof entries);
    mended[6].value = path;
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "entries");
    gtl_rig *rig = gtl_read_entries(mended, 7, &faults);
    assert_non_null(rig);
    assert_string_equal(rig->things[1].name, name);
    gtl_rig_free(rig);
    assert_null(gtl_read_entries(entries, 7, &faults));    /* one stop only */
    assert_null(gtl_read_entries(mended + 1, 6, &faults)); /* a key before any header */
    mended[4].name = "beam";
    assert_null(gtl_read_entries(mended, 7, &faults)); /* a key of another section */
    gtl_faults_end(&faults);
}

/* The table of keys: in order of kinds, complete, each row with its words. */
static void test_keys(void **state)
{
    (void)state;
    const gtl_key *key = NULL;
    gtl_kind last = GTL_SHEET;
    size_t count = 0;
    for (; (key = gtl_key_at(count)); count++) {
        assert_true(key->kind >= last && key->kind < GTL_KIND_COUNT);
        assert_true(key->key[0] && key->form[0] && key->meaning[0] && key->unit);
        last = key->kind;
    }
    assert_int_equal(last, GTL_BATTEN);
    assert_true(count > 60);
    for (int kind = 0; kind < GTL_KIND_COUNT; kind++)
        assert_true(gtl_kind_meaning((gtl_kind)kind)[0] != '\0');
}

/* ---- the fault list ---- */

static void test_faults(void **state)
{
    (void)state;
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "a.ini");
    gtl_faults_add(&faults, 7, "second %d", 7);
    gtl_faults_add(&faults, 3, "first");
    gtl_faults_add(&faults, 7, "third \x1b[31m");
    gtl_faults_add(&faults, 0, "whole");
    gtl_faults_add(&faults, 7, "second %d", 7);
    char *text = gtl_faults_text(&faults);
    assert_string_equal(text, "a.ini: whole\na.ini:3: first\na.ini:7: second 7\na.ini:7: third ?[31m\n");
    free(text);
    gtl_faults_end(&faults);
    gtl_faults_end(&faults);
}

/* ---- large rigs ---- */

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

/* A rope passes two blocks 5,000 times each. */
static void test_many_stops(void **state)
{
    (void)state;
    enum { PASSES = 5000 };
    char *path = malloc(PASSES * 12 + 40);
    assert_non_null(path);
    char *end = path + sprintf(path, "beam");
    for (int i = 0; i < PASSES; i++) end += sprintf(end, ", tail, head");
    sprintf(end, ", crew");
    const gtl_entry entries[] = {
        {"anchor", "beam", NULL, NULL, 1},  {"anchor", "beam", "at", "5 m", 2},
        {"block", "head", NULL, NULL, 3},   {"block", "head", "on", "beam", 4},
        {"block", "tail", NULL, NULL, 5},   {"block", "tail", "at", "1 m", 6},
        {"load", "drop", NULL, NULL, 7},    {"load", "drop", "on", "tail", 8},
        {"load", "drop", "mass", "9 t", 9}, {"hand", "crew", NULL, NULL, 10},
        {"hand", "crew", "at", "1 m", 11},  {"rope", "fall", NULL, NULL, 12},
        {"rope", "fall", "path", path, 13},
    };
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "entries");
    double begin = seconds();
    gtl_rig *rig = gtl_read_entries(entries, sizeof entries / sizeof entries[0], &faults);
    double took = seconds() - begin;
    assert_non_null(rig);
    assert_int_equal(rig->run_count, 2 * PASSES);
    assert_true(took < 0.5);
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    free(path);
}

/* A chain of 2,000 joints between two anchors, named so that their order of name is not that of the file. */
static void test_many_names(void **state)
{
    (void)state;
    enum { JOINTS = 2000, SIZE = 48, PER_LINK = 6 };
    char(*texts)[SIZE] = calloc((size_t)JOINTS * 4 + 8, SIZE);
    gtl_entry *entries = calloc((size_t)JOINTS * PER_LINK + 8, sizeof *entries);
    assert_true(texts && entries);
    int line = 0, used = 0;
    for (int i = 0; i <= JOINTS + 1; i++) {
        bool end = i == 0 || i == JOINTS + 1;
        const char *kind = end ? "anchor" : i % 2 ? "joint" : "load";
        char *name = texts[used++];
        char *at = texts[used++];
        snprintf(name, SIZE, "n%d", i * 7919 % 10007);
        snprintf(at, SIZE, "%d m, %d m", i, i % 3);
        entries[line] = (gtl_entry){kind, name, NULL, NULL, line + 1};
        entries[line + 1] = (gtl_entry){kind, name, "at", at, line + 2};
        line += 2;
        if (!end) entries[line] = (gtl_entry){kind, name, "mass", "2 kg", line + 1}, line++;
        if (i == 0) continue;
        char *sling = texts[used++];
        char *path = texts[used++];
        snprintf(sling, SIZE, "s%d", i);
        snprintf(path, SIZE, "n%d, n%d", (i - 1) * 7919 % 10007, i * 7919 % 10007);
        entries[line] = (gtl_entry){"sling", sling, NULL, NULL, line + 1};
        entries[line + 1] = (gtl_entry){"sling", sling, "path", path, line + 2};
        line += 2;
    }
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "entries");
    double begin = seconds();
    gtl_rig *rig = gtl_read_entries(entries, (size_t)line, &faults);
    double took = seconds() - begin;
    if (!rig) fail_msg("%s", faults.items[0].text);
    assert_int_equal(rig->node_count, JOINTS + 2);
    assert_int_equal(rig->piece_count, JOINTS + 1);
    assert_true(took < 0.5);
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    free(entries);
    free(texts);
}

/* ---- failing memory ---- */

/* Read with the first `allowed` allocations granted. True once none was refused. */
static bool read_short_of_memory(const char *text, long allowed, bool good)
{
    gtl_fault_list faults;
    long before = blocks_alive();
    allow_allocations(allowed);
    gtl_faults_begin(&faults, "test");
    gtl_rig *rig = gtl_read_text(text, strlen(text), &faults);
    bool refused = allow_all_allocations();
    assert_true(faults.out_of_memory == refused);
    assert_true((rig != NULL) == (good && !refused));
    if (!good && !refused) assert_true(faults.count > 3);
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void test_failing_memory(void **state)
{
    (void)state;
    static const char bad[] =
        "[rig]\ncolour = red\nload = drp\n[anchor beam\nat = 3\n[load drop]\nat = 1 m\nmas = 20 kg\n"
        "mass = 3 kg\nmass = 4 kg\n[load drop]\n[pulley x]\n[rope fall]\npath = beam, drop, cr via x\n"
        "[rope next]\nlength = 5\npath = drop, drop, beam\n[hand crew]\n";
    long allowed = 0;
    while (!read_short_of_memory(hoist, allowed, true)) allowed++;
    assert_true(allowed > 30);
    for (allowed = 0; !read_short_of_memory(bad, allowed, false);) allowed++;
    assert_true(allowed > 30);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_things),         cmocka_unit_test(test_path),
        cmocka_unit_test(test_pieces),         cmocka_unit_test(test_forms),
        cmocka_unit_test(test_size_limits),    cmocka_unit_test(test_entries),
        cmocka_unit_test(test_keys),           cmocka_unit_test(test_faults),
        cmocka_unit_test(test_many_stops),     cmocka_unit_test(test_many_names),
        cmocka_unit_test(test_failing_memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
