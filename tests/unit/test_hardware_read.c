/* test_hardware_read.c - hardware tables as they are read: units, origin, what stands first; what a set holds
 * after a fault and without memory. What the faults say is in tests/tables. */
#include "unit/failing_memory.h"

#include <gantline/hardware.h>
#include <gantline/units.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* Read a table that has to be well. */
static void read_well(gtl_hardware *set, const char *text)
{
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "own.ini");
    if (!gtl_hardware_read(set, text, strlen(text), false, &faults))
        fail_msg("%s", faults.count > 0 ? faults.items[0].text : "no memory");
    gtl_faults_end(&faults);
}

static void check_near(const char *what, double value, double expected, double tolerance)
{
    bool both_none = isnan(value) && isnan(expected);
    if (!both_none && !(fabs(value - expected) <= tolerance))
        fail_msg("%s: %.12g, expected %.12g", what, value, expected);
}

/* A shipped table whose figures nobody can trace is a fault. */
static void test_shipped_needs_its_origin(void **state)
{
    (void)state;
    static const char *const texts[] = {"[knot bowline]\nkeeps = 55 %\nseen = seen\n",
                                        "[knot bowline]\nkeeps = 55 %\nsource = a book\n",
                                        "[knot bowline]\nkeeps = 55 %\nseen = seen\nsource = \"\"\n"};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        gtl_hardware set = {0};
        gtl_fault_list faults;
        gtl_faults_begin(&faults, "table");
        assert_false(gtl_hardware_read(&set, texts[i], strlen(texts[i]), true, &faults));
        assert_int_equal(faults.count, 1);
        assert_non_null(strstr(faults.items[0].text, i == 1 ? "has no `seen`" : "has no `source`"));
        assert_int_equal(set.row_count, 0);
        gtl_faults_end(&faults);
        gtl_hardware_end(&set);
    }
}

/* ---- a user's table ---- */

static void test_first_row_wins(void **state)
{
    (void)state;
    gtl_hardware set = {0};
    read_well(&set, "[knot BOWLINE]\nkeeps = 52 %\n");
    read_well(&set, "[knot bowline]\nkeeps = 70 %\n[material bowline]\nclass = wire\n");
    assert_true(gtl_hardware_add_shipped(&set));
    const gtl_hardware_row *row = gtl_hardware_find(&set, GTL_HW_KNOT, "Bowline");
    check_near("first", gtl_hardware_factor(row, 0), 0.52, 1e-12);
    assert_string_equal(row->seen, "own");
    assert_string_equal(row->source, "");
    assert_string_equal(row->file, "own.ini");
    assert_int_equal(row->line, 1);
    assert_false(row->shipped);
    assert_int_equal(gtl_hardware_find(&set, GTL_HW_MATERIAL, "bowline")->rope_class, GTL_CLASS_WIRE);
    assert_null(gtl_hardware_find(&set, GTL_HW_GEAR, "bowline"));
    assert_null(gtl_hardware_find(NULL, GTL_HW_KNOT, "bowline"));
    gtl_hardware_end(&set);
}

/* Units as in rig files; a mass for a force is taken times standard gravity, and that is kept. */
static void test_figures_in_si(void **state)
{
    (void)state;
    gtl_hardware set = {0};
    read_well(&set, "\xEF\xBB\xBF[gear bit]\r\nWLL = 3.25 t\r\nmbs = 100 kN\r\nmass = 2 lb\r\n"
                    "diameter = 0.5 in ; of its bow\r\nefficiency = 0.9\r\n");
    const gtl_hardware_row *row = gtl_hardware_find(&set, GTL_HW_GEAR, "bit");
    check_near("wll", row->numbers[GTL_HW_WLL], 3250 * GTL_STANDARD_GRAVITY, 1e-9);
    assert_true(row->weighed[GTL_HW_WLL]);
    assert_false(row->weighed[GTL_HW_MBS]);
    assert_false(row->weighed[GTL_HW_MASS]);
    check_near("mass", row->numbers[GTL_HW_MASS], 0.90718474, 1e-12); /* NIST SP 811 */
    check_near("diameter", row->numbers[GTL_HW_DIAMETER], 0.0127, 1e-15);
    check_near("efficiency", row->numbers[GTL_HW_EFFICIENCY], 0.9, 1e-15);
    for (int i = 0; i < GTL_HW_NUMBER_COUNT; i++) {
        bool stated = i == GTL_HW_WLL || i == GTL_HW_MBS || i == GTL_HW_MASS || i == GTL_HW_DIAMETER ||
                      i == GTL_HW_EFFICIENCY;
        assert_int_equal(isnan(row->numbers[i]), !stated);
    }
    gtl_hardware_end(&set);
}

/* ---- after a fault, and without memory, a set is as it was ---- */

static void test_fault_leaves_nothing(void **state)
{
    (void)state;
    gtl_hardware set = {0};
    read_well(&set, "[knot bowline]\nkeeps = 52 %\n");
    static const char text[] = "[knot reef]\nkeeps = 43 %\n[gear line]\nmbs = 20\n";
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "faulty");
    assert_false(gtl_hardware_read(&set, text, sizeof text - 1, false, &faults));
    assert_int_equal(faults.count, 1);
    assert_int_equal(set.row_count, 1);
    assert_null(gtl_hardware_find(&set, GTL_HW_KNOT, "reef"));
    gtl_faults_end(&faults);
    gtl_hardware_end(&set);
}

static const char varied[] =
    "[gear line]\nmbs = 21 kN\nmaterial = flax\nsource = the loft book\nseen = seen\nnote = \"a; b\"\n"
    "[material flax]\nclass = natural-fibre\n[choke web]\nfrom = 120 deg, 90 deg\nkeeps = 80 %, 60 %\n"
    "on = straight\nclass = fibre, wire\n";

/* Faults of all sorts, whose messages need memory too. */
static const char faulty[] = "[knott a]\nkeeps = 5 %\n[block b]\n[gear c]\npath = a\ncolour = 1\nkeeps = 1\n"
                             "[knot d]\nkeeps = 200 %\nnote = x\nnote = y\n[knot D]\nkeeps = 5 %\n";

static bool reads_with(const char *text, bool well, long allowed)
{
    long before = blocks_alive();
    gtl_hardware set = {0};
    gtl_fault_list faults;
    allow_allocations(allowed);
    gtl_faults_begin(&faults, "table");
    bool read = gtl_hardware_read(&set, text, strlen(text), false, &faults);
    bool refused = allow_all_allocations();
    assert_int_equal(read, well && !refused);
    if (refused) assert_true(faults.out_of_memory);
    if (!read) assert_int_equal(set.row_count, 0);
    gtl_faults_end(&faults);
    gtl_hardware_end(&set);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void test_reading_without_memory(void **state)
{
    (void)state;
    long allowed = 0;
    while (!reads_with(varied, true, allowed)) allowed++;
    assert_true(allowed > 20);
    for (allowed = 0; !reads_with(faulty, false, allowed);) allowed++;
    assert_true(allowed > 20);
}

static void test_shipped_without_memory(void **state)
{
    (void)state;
    gtl_hardware all = {0};
    assert_true(gtl_hardware_add_shipped(&all));
    bool refused = true;
    long before = blocks_alive();
    for (long allowed = 0; refused; allowed += 1 + allowed / 20) {
        gtl_hardware set = {0};
        allow_allocations(allowed);
        bool well = gtl_hardware_add_shipped(&set);
        refused = allow_all_allocations();
        assert_int_equal(well, !refused);
        assert_int_equal(set.row_count, refused ? 0 : all.row_count);
        gtl_hardware_end(&set);
        assert_int_equal(blocks_alive(), before);
    }
    gtl_hardware_end(&all);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_shipped_needs_its_origin),
        cmocka_unit_test(test_first_row_wins),
        cmocka_unit_test(test_figures_in_si),
        cmocka_unit_test(test_fault_leaves_nothing),
        cmocka_unit_test(test_reading_without_memory),
        cmocka_unit_test(test_shipped_without_memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
