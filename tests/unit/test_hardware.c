/* test_hardware.c - the hardware tables as data: the shipped figures against their sources, typed here once
 * more from those; every edge of every step; what stands first is found; memory that fails. */
#include "read/table_shipped.h"

#include <gantline/hardware.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define DEGREE (3.14159265358979323846 / 180) /* [rad] */

/* ---- help ---- */

static gtl_hardware shipped;

static int set_up(void **state)
{
    (void)state;
    return gtl_hardware_add_shipped(&shipped) ? 0 : -1;
}

static int tear_down(void **state)
{
    (void)state;
    gtl_hardware_end(&shipped);
    return 0;
}

static const gtl_hardware_row *row_of(gtl_hardware_kind kind, const char *name)
{
    const gtl_hardware_row *row = gtl_hardware_find(&shipped, kind, name);
    if (!row) fail_msg("no [%s %s]", gtl_hardware_kind_name(kind), name);
    return row;
}

static void check_near(const char *what, double value, double expected, double tolerance)
{
    bool both_none = isnan(value) && isnan(expected);
    if (!both_none && !(fabs(value - expected) <= tolerance))
        fail_msg("%s: %.12g, expected %.12g", what, value, expected);
}

/* ---- what is shipped ---- */

static void test_shipped_reads(void **state)
{
    (void)state;
    gtl_hardware set = {0};
    for (const gtl_shipped_table *table = gtl_shipped_tables; table->file; table++) {
        gtl_fault_list faults;
        gtl_faults_begin(&faults, table->file);
        bool well = gtl_hardware_read(&set, table->text, strlen(table->text), true, &faults);
        if (!well) fail_msg("%s: %s", table->file, faults.count > 0 ? faults.items[0].text : "no memory");
        gtl_faults_end(&faults);
    }
    assert_int_equal(set.row_count, shipped.row_count);
    gtl_hardware_end(&set);
}

static void test_shipped_rows(void **state)
{
    (void)state;
    int counts[GTL_HW_KIND_COUNT] = {0};
    for (int i = 0; i < shipped.row_count; i++) {
        const gtl_hardware_row *row = &shipped.rows[i];
        counts[row->kind]++;
        assert_true(row->shipped);
        assert_true(row->source[0] != '\0');
        assert_string_not_equal(row->seen, "own");
        assert_ptr_equal(gtl_hardware_find(&shipped, row->kind, row->name), row);
        bool invented = strncmp(row->name, "example-", 8) == 0;
        assert_int_equal(strcmp(row->seen, "invented") == 0, invented);
        if (row->material[0]) row_of(GTL_HW_MATERIAL, row->material);
    }
    for (int i = 0; i < GTL_HW_KIND_COUNT; i++) assert_true(counts[i] > 0);
}

/* ---- published figures ---- */

/* What a row keeps, by one figure. Sources beside each; how they are known is in the tables. */
static const struct {
    gtl_hardware_kind kind;
    const char *name;
    double keeps;
} single[] = {
    /* the low end in print: HSE CRR 364/2001, Cordage Institute, Plymouth Cordage 1946 */
    {GTL_HW_KNOT, "bowline", 0.55},
    {GTL_HW_KNOT, "figure-eight-loop", 0.65},
    {GTL_HW_KNOT, "alpine-butterfly", 0.60},
    {GTL_HW_KNOT, "clove-hitch", 0.60},
    {GTL_HW_KNOT, "two-half-hitches", 0.60},
    {GTL_HW_KNOT, "anchor-bend", 0.55},
    {GTL_HW_KNOT, "sheet-bend", 0.48},
    {GTL_HW_KNOT, "fishermans", 0.50},
    {GTL_HW_KNOT, "reef", 0.43},
    {GTL_HW_KNOT, "any-other", 0.50},
    {GTL_HW_TERMINATION, "eye-splice", 0.90},
    /* TM 5-3810-305-10, table 4 */
    {GTL_HW_TERMINATION, "poured-socket", 1.00},
    {GTL_HW_TERMINATION, "swaged-socket", 0.95},
    {GTL_HW_TERMINATION, "clips", 0.80},
    {GTL_HW_TERMINATION, "wedge-socket", 0.75},
    {GTL_HW_TERMINATION, "hand-tucked-splice-half-inch", 0.86},
    /* EN style mode factors; EN 1492 */
    {GTL_HW_HITCH, "straight", 1.0},
    {GTL_HW_HITCH, "choke", 0.8},
    {GTL_HW_HITCH, "basket", 2.0},
    {GTL_HW_MODE, "two-legs-to-45", 1.4},
    {GTL_HW_MODE, "two-legs-45-to-60", 1.0},
    {GTL_HW_MODE, "three-or-four-legs-to-45", 2.1},
    {GTL_HW_MODE, "three-or-four-legs-45-to-60", 1.5},
};

static void test_single_figures(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof single / sizeof *single; i++) {
        const gtl_hardware_row *row = row_of(single[i].kind, single[i].name);
        check_near(single[i].name, gtl_hardware_factor(row, NAN), single[i].keeps, 1e-12);
    }
}

/* 29 CFR 1918 Appendix II, table 2, natural fibre rope slings [lb]: no size may be flattered by the one
 * figure. */
static void test_natural_fibre_choked(void **state)
{
    (void)state;
    static const double vertical[] = {550, 1100, 1800, 6200};
    static const double choker[] = {250, 550, 900, 3100};
    double keeps = gtl_hardware_factor(row_of(GTL_HW_HITCH, "choke-natural-fibre"), 0);
    for (int i = 0; i < 4; i++) assert_true(keeps * vertical[i] <= choker[i]);
    assert_true(keeps * vertical[0] > choker[0] - 5);
}

/* 0027/ND rev. 11.2, 7.6.1 and 7.7.2, printed to 0.1 %. */
static void test_bend_formula(void **state)
{
    (void)state;
    static const double ratios[] = {1, 2, 4, 6, 10, 20, 25};
    static const double keeps[] = {0.500, 0.646, 0.750, 0.796, 0.842, 0.888, 0.900};
    const gtl_hardware_row *row = row_of(GTL_HW_BEND, "wire-rope");
    for (int i = 0; i < 7; i++)
        check_near("wire-rope", gtl_hardware_factor(row, ratios[i]), keeps[i], 0.0005);
    assert_true(isnan(gtl_hardware_factor(row, 1 - 1e-6)));
    check_near("a rounding below 1", gtl_hardware_factor(row, 1 - 1e-10), 0.5, 1e-9);
}

/* The steps of a row, edges as printed (rising) with what is kept there. `below` is what is left under the
 * first edge or beyond the last one. */
typedef struct stepped {
    gtl_hardware_kind kind;
    const char *name;
    double unit; /* of the edges */
    int count;
    double edges[10];
    double keeps[10];
    double outside;
} stepped;

static const stepped rising[] = {
    /* the wire-rope trade's table, two copies */
    {GTL_HW_BEND,
     "wire-rope-steps",
     1,
     10,
     {1, 2, 4, 6, 8, 10, 15, 20, 30, 40},
     {0.50, 0.65, 0.75, 0.79, 0.83, 0.86, 0.89, 0.91, 0.93, 0.95},
     NAN},
    /* ASME B30.9 as restated */
    {GTL_HW_CHOKE, "chain", DEGREE, 4, {30, 60, 90, 120}, {0.40, 0.55, 0.65, 0.80}, NAN},
    {GTL_HW_CHOKE, "sling", DEGREE, 5, {0, 30, 60, 90, 120}, {0.49, 0.62, 0.74, 0.87, 1.00}, NAN},
};

static const stepped falling[] = {
    /* two published tables of shoulder eyebolts, the lower of each angle */
    {GTL_HW_FITTING, "shoulder-eyebolt", DEGREE, 4, {5, 15, 30, 45}, {1.00, 0.80, 0.65, 0.25}, 0},
    {GTL_HW_FITTING, "plain-eyebolt", DEGREE, 1, {1}, {1.00}, 0},
    /* ASME B30.26 as restated */
    {GTL_HW_SIDE_LOAD, "shackle", DEGREE, 3, {5, 45, 90}, {1.00, 0.70, 0.50}, 0},
};

/* At an edge, within a rounding of it, a millionth to either side, and half-way to the next. */
static void test_rising_steps(void **state)
{
    (void)state;
    for (size_t k = 0; k < sizeof rising / sizeof *rising; k++) {
        const stepped *steps = &rising[k];
        const gtl_hardware_row *row = row_of(steps->kind, steps->name);
        assert_int_equal(row->step_count, steps->count);
        for (int i = 0; i < steps->count; i++) {
            double edge = steps->edges[i] * steps->unit;
            double next = i + 1 < steps->count ? steps->edges[i + 1] * steps->unit : 2 * edge;
            double before = i > 0 ? steps->keeps[i - 1] : steps->outside;
            check_near(steps->name, gtl_hardware_factor(row, edge), steps->keeps[i], 1e-12);
            check_near(steps->name, gtl_hardware_factor(row, edge * (1 - 1e-10)), steps->keeps[i], 1e-12);
            check_near(steps->name, gtl_hardware_factor(row, edge + 1e-6), steps->keeps[i], 1e-12);
            check_near(steps->name, gtl_hardware_factor(row, edge - 1e-6), before, 1e-12);
            check_near(steps->name, gtl_hardware_factor(row, (edge + next) / 2), steps->keeps[i], 1e-12);
        }
    }
}

static void test_falling_steps(void **state)
{
    (void)state;
    for (size_t k = 0; k < sizeof falling / sizeof *falling; k++) {
        const stepped *steps = &falling[k];
        const gtl_hardware_row *row = row_of(steps->kind, steps->name);
        assert_int_equal(row->step_count, steps->count);
        check_near(steps->name, gtl_hardware_factor(row, 0), 1, 1e-12);
        for (int i = 0; i < steps->count; i++) {
            double edge = steps->edges[i] * steps->unit;
            double beyond = i + 1 < steps->count ? steps->keeps[i + 1] : steps->outside;
            check_near(steps->name, gtl_hardware_factor(row, edge), steps->keeps[i], 1e-12);
            check_near(steps->name, gtl_hardware_factor(row, edge * (1 + 1e-10)), steps->keeps[i], 1e-12);
            check_near(steps->name, gtl_hardware_factor(row, edge - 1e-6), steps->keeps[i], 1e-12);
            check_near(steps->name, gtl_hardware_factor(row, edge + 1e-6), beyond, 1e-12);
        }
        check_near(steps->name, gtl_hardware_factor(row, 3.14), steps->outside, 1e-12);
    }
}

/* Worked in the sources: 5,000 kg choked at 20 degrees 2,450 kg; shackle 3.25 t at 90 degrees 1.625 t;
 * shoulder eyebolt 1,550 lb at 15 degrees 1,240 lb. Which rating a choke counts on is part of the figure. */
static void test_worked_figures(void **state)
{
    (void)state;
    check_near("choke", 5000 * gtl_hardware_factor(row_of(GTL_HW_CHOKE, "sling"), 20 * DEGREE), 2450, 1e-9);
    check_near("shackle", 3.25 * gtl_hardware_factor(row_of(GTL_HW_SIDE_LOAD, "shackle"), 90 * DEGREE), 1.625,
               1e-12);
    check_near("eyebolt", 1550 * gtl_hardware_factor(row_of(GTL_HW_FITTING, "shoulder-eyebolt"), 15 * DEGREE),
               1240, 1e-9);
    assert_false(row_of(GTL_HW_CHOKE, "sling")->on_single_leg);
    assert_true(row_of(GTL_HW_CHOKE, "chain")->on_single_leg);
}

/* An angle that is none, or negative, has no factor, whatever the row allows. */
static void test_no_angle(void **state)
{
    (void)state;
    static const double none[] = {NAN, -1e-9, -1, -INFINITY};
    for (size_t i = 0; i < sizeof none / sizeof *none; i++) {
        assert_true(isnan(gtl_hardware_factor(row_of(GTL_HW_SIDE_LOAD, "shackle"), none[i])));
        assert_true(isnan(gtl_hardware_factor(row_of(GTL_HW_CHOKE, "sling"), none[i])));
        assert_true(isnan(gtl_hardware_factor(row_of(GTL_HW_BEND, "wire-rope"), none[i])));
    }
}

/* Design factors: wire rope, fibre rope, chain, shackle, metal, share of a WLL; NaN where the source is
 * silent. */
static const struct {
    const char *name;
    double numbers[6];
    bool over_people;
} uses[] = {
    /* EU Directive 2006/42/EC Annex I 4.1.2.5 */
    {"eu-machinery", {5, 7, 4, NAN, 4, NAN}, false},
    /* DGUV Information 215-313 table 1 */
    {"over-people-germany", {10, 14, 8, 10, 8, 0.5}, true},
    {"marine-terminal", {5, NAN, NAN, NAN, NAN, NAN}, false},     /* 29 CFR 1917.42 */
    {"suspended-platform", {10, NAN, NAN, NAN, NAN, NAN}, false}, /* WAC 296-870-70085 */
    {"fibre-rope-general", {NAN, 12, NAN, NAN, NAN, NAN}, false}, /* CI 1401: 5-12, the high end */
    {"rigging-blocks", {NAN, NAN, NAN, NAN, 4, NAN}, false},      /* B30.26 as restated */
    /* a stage-rigging course's minima, class notes 2015 */
    {"stage-course", {8, 10, NAN, NAN, NAN, NAN}, false},
    {"stage-course-standing-wire", {5, NAN, NAN, NAN, NAN, NAN}, false},
};

static void test_uses(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof uses / sizeof *uses; i++) {
        const gtl_hardware_row *row = row_of(GTL_HW_USE, uses[i].name);
        for (int k = 0; k < 6; k++)
            check_near(uses[i].name, row->numbers[GTL_HW_WIRE_ROPE + k], uses[i].numbers[k], 1e-12);
        assert_int_equal(row->over_people, uses[i].over_people);
    }
    int count = 0;
    for (int i = 0; i < shipped.row_count; i++) count += shipped.rows[i].kind == GTL_HW_USE;
    assert_int_equal(count, sizeof uses / sizeof *uses); /* what is not confirmed is not there */
}

/* Ranges, whose low end is never above the source's. */
static void test_ranges(void **state)
{
    (void)state;
    static const struct {
        gtl_hardware_kind kind;
        const char *name;
        double low;
        double high;
    } ranges[] = {
        {GTL_HW_SHEAVE, "wire-plain-bearing", 1 / 1.09, 1 / 1.09},   /* Wire Rope Users Manual */
        {GTL_HW_SHEAVE, "wire-bronze-bushed", 1 / 1.045, 1 / 1.045}, /* riggers' handbook */
        {GTL_HW_SHEAVE, "wire-roller-bearing", 1 / 1.04, 1 / 1.02},  /* both */
        {GTL_HW_SHEAVE, "pulley-ball-bearing", 0.86, 0.91},          /* Delaney 2024 */
        {GTL_HW_SHEAVE, "pulley-bushed", 0.80, 0.80},
        {GTL_HW_SHEAVE, "pulley-progress-capture", 1 / 1.35, 1 / 1.14},
        {GTL_HW_SHEAVE, "one-connector", 0.59, 0.59},
        {GTL_HW_SHEAVE, "two-connectors", 0.54, 0.54},
        {GTL_HW_FRICTION, "aluminium-tube", 0.140, 0.214}, /* Delaney 2022 */
        {GTL_HW_FRICTION, "galvanised-tube", 0.194, 0.194},
        {GTL_HW_FRICTION, "steel-bar", 0.235, 0.240},
        {GTL_HW_FRICTION, "sawn-timber", 0.355, 0.375},
        {GTL_HW_FRICTION, "concrete-edge", 0.439, 0.439},
    };
    for (size_t i = 0; i < sizeof ranges / sizeof *ranges; i++) {
        const gtl_hardware_row *row = row_of(ranges[i].kind, ranges[i].name);
        assert_true(row->numbers[GTL_HW_LOW] <= ranges[i].low + 1e-12);
        check_near(ranges[i].name, row->numbers[GTL_HW_LOW], ranges[i].low, 0.001);
        check_near(ranges[i].name, row->numbers[GTL_HW_HIGH], ranges[i].high, 0.001);
    }
}

/* 29 CFR 1918 Appendix II, table 1; EN 12275: basic connectors. */
static void test_gear_and_clips(void **state)
{
    (void)state;
    static const struct {
        const char *name;
        double inches;
        double count;
        double spacing; /* [in] */
    } clips[] = {{"half-inch", 0.5, 3, 3},
                 {"three-quarter-inch", 0.75, 4, 4.5},
                 {"one-inch", 1, 5, 6},
                 {"one-and-a-half-inch", 1.5, 7, 9}};
    for (size_t i = 0; i < sizeof clips / sizeof *clips; i++) {
        const gtl_hardware_row *row = row_of(GTL_HW_CLIP, clips[i].name);
        check_near(clips[i].name, row->numbers[GTL_HW_DIAMETER], clips[i].inches * 0.0254, 1e-12);
        check_near(clips[i].name, row->numbers[GTL_HW_COUNT], clips[i].count, 1e-12);
        check_near(clips[i].name, row->numbers[GTL_HW_SPACING], clips[i].spacing * 0.0254, 1e-12);
    }
    check_near("closed", row_of(GTL_HW_GEAR, "en12275-basic-closed")->numbers[GTL_HW_MBS], 20e3, 1e-9);
    check_near("open", row_of(GTL_HW_GEAR, "en12275-basic-open")->numbers[GTL_HW_MBS], 7e3, 1e-9);
    check_near("across", row_of(GTL_HW_GEAR, "en12275-basic-across")->numbers[GTL_HW_MBS], 7e3, 1e-9);
}

/* ---- what a row is for ---- */

static void test_classes(void **state)
{
    (void)state;
    static const struct {
        gtl_hardware_kind kind;
        const char *name;
        bool suits[GTL_CLASS_COUNT]; /* none stated, fibre, natural fibre, wire, chain */
    } rows[] = {
        {GTL_HW_HITCH, "straight", {true, true, true, true, true}},
        {GTL_HW_HITCH, "choke", {false, true, false, true, true}},
        {GTL_HW_HITCH, "choke-natural-fibre", {false, false, true, false, false}},
        {GTL_HW_TERMINATION, "eye-splice", {false, true, true, false, false}},
        {GTL_HW_TERMINATION, "clips", {false, false, false, true, false}},
        {GTL_HW_BEND, "wire-rope", {false, false, false, true, false}},
        {GTL_HW_CHOKE, "sling", {false, true, false, true, false}},
        {GTL_HW_CHOKE, "chain", {false, false, false, false, true}},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const gtl_hardware_row *row = row_of(rows[i].kind, rows[i].name);
        for (int k = 0; k < GTL_CLASS_COUNT; k++)
            assert_int_equal(gtl_hardware_suits(row, (gtl_rope_class)k), rows[i].suits[k]);
    }
}

/* Knots are for fibre rope that is known to bear them. */
static void test_knotless_materials(void **state)
{
    (void)state;
    static const char *const knotless[] = {"aramid", "HMPE", "wire-rope", "steel-chain"};
    static const char *const knotted[] = {"nylon", "polyester", "polypropylene", "manila", "sisal"};
    for (int i = 0; i < 4; i++) assert_true(row_of(GTL_HW_MATERIAL, knotless[i])->no_knots);
    for (int i = 0; i < 5; i++) assert_false(row_of(GTL_HW_MATERIAL, knotted[i])->no_knots);
}

/* Sizes of ASME B36.10M and EN 39; a wall of steel, 7,850 kg/m3, weighs what the table says within 0.3 %. */
static void test_pipes(void **state)
{
    (void)state;
    static const struct {
        const char *name;
        double diameter, wall, weight; /* inches and pounds a foot, or millimetres and kilograms a metre */
    } pipes[] = {
        {"schedule-40-1-in", 1.315, 0.133, 1.68},    {"schedule-40-1-1-4-in", 1.66, 0.14, 2.27},
        {"schedule-40-1-1-2-in", 1.9, 0.145, 2.72},  {"schedule-40-2-in", 2.375, 0.154, 3.66},
        {"schedule-40-2-1-2-in", 2.875, 0.203, 5.8}, {"schedule-80-1-1-4-in", 1.66, 0.191, 3},
        {"schedule-80-1-1-2-in", 1.9, 0.2, 3.63},    {"schedule-80-2-in", 2.375, 0.218, 5.03},
        {"tube-48-3-by-3-2-mm", 48.3, 3.2, 3.56},    {"tube-48-3-by-4-mm", 48.3, 4, 4.37},
    };
    for (size_t i = 0; i < sizeof pipes / sizeof *pipes; i++) {
        const double *numbers = row_of(GTL_HW_PIPE, pipes[i].name)->numbers;
        bool metric = pipes[i].diameter > 10;
        double length = metric ? 1e-3 : 0.0254, weight = metric ? 1 : 0.45359237 / 0.3048;
        double diameter = numbers[GTL_HW_DIAMETER], wall = numbers[GTL_HW_WALL];
        check_near(pipes[i].name, diameter, pipes[i].diameter * length, 1e-12);
        check_near(pipes[i].name, wall, pipes[i].wall * length, 1e-12);
        check_near(pipes[i].name, numbers[GTL_HW_LINEAR_MASS], pipes[i].weight * weight, 1e-12);
        check_near(pipes[i].name, numbers[GTL_HW_MODULUS], 200e9, 1);
        double steel = 7850 * 180 * DEGREE * wall * (diameter - wall);
        check_near(pipes[i].name, numbers[GTL_HW_LINEAR_MASS] / steel, 1, 0.003);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_shipped_reads),  cmocka_unit_test(test_shipped_rows),
        cmocka_unit_test(test_single_figures), cmocka_unit_test(test_natural_fibre_choked),
        cmocka_unit_test(test_bend_formula),   cmocka_unit_test(test_rising_steps),
        cmocka_unit_test(test_falling_steps),  cmocka_unit_test(test_worked_figures),
        cmocka_unit_test(test_no_angle),       cmocka_unit_test(test_uses),
        cmocka_unit_test(test_ranges),         cmocka_unit_test(test_gear_and_clips),
        cmocka_unit_test(test_classes),        cmocka_unit_test(test_knotless_materials),
        cmocka_unit_test(test_pipes),
    };
    return cmocka_run_group_tests(tests, set_up, tear_down);
}
