/* test_timber.c - green wood: the shipped species against their source, typed here once more from it; volumes
 * and spreads; what a rig takes over; failing memory. Published volumes stand in tests/known. */
#include "unit/failing_memory.h"
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define PI 3.14159265358979323846
#define G  9.80665 /* [m/s2] */

/* ---- the shipped species ---- */

/* US Forest Service, FIA species reference, the data of NRS-38 (seen). */
static const struct {
    const char *name;
    double gravity;  /* basic [1] */
    double moisture; /* [%] */
    double density;  /* [kg/m3] */
} species[] = {
    {"balsam-fir", 0.33, 118.5, 721},        {"douglas-fir", 0.45, 35.3, 609},
    {"eastern-white-pine", 0.34, 65.0, 561}, {"red-pine", 0.41, 64.2, 673},
    {"ponderosa-pine", 0.38, 89.8, 721},     {"loblolly-pine", 0.47, 80.7, 849},
    {"red-spruce", 0.37, 47.3, 545},         {"eastern-hemlock", 0.38, 110.9, 801},
    {"tamarack", 0.49, 53.7, 753},           {"redwood", 0.36, 122.6, 801},
    {"western-redcedar", 0.31, 39.6, 433},   {"red-maple", 0.49, 63.5, 801},
    {"silver-maple", 0.44, 67.5, 737},       {"sugar-maple", 0.56, 57.4, 881},
    {"yellow-birch", 0.55, 71.9, 945},       {"paper-birch", 0.48, 73.6, 833},
    {"shagbark-hickory", 0.64, 60.2, 1026},  {"american-beech", 0.56, 54.5, 865},
    {"white-ash", 0.55, 45.7, 801},          {"green-ash", 0.53, 57.2, 833},
    {"honeylocust", 0.60, 60.2, 962},        {"black-walnut", 0.51, 79.1, 914},
    {"sweetgum", 0.46, 74.2, 801},           {"yellow-poplar", 0.40, 95.0, 780},
    {"american-sycamore", 0.46, 81.2, 833},  {"eastern-cottonwood", 0.37, 116.6, 801},
    {"quaking-aspen", 0.35, 128.9, 801},     {"black-cherry", 0.47, 53.4, 721},
    {"white-oak", 0.60, 68.3, 1010},         {"northern-red-oak", 0.56, 83.1, 1026},
    {"pin-oak", 0.58, 76.8, 1026},           {"live-oak", 0.80, 52.2, 1218},
    {"black-locust", 0.66, 40.8, 929},       {"black-willow", 0.36, 127.0, 817},
    {"american-basswood", 0.32, 105.3, 657}, {"american-elm", 0.46, 94.0, 892},
};

#define SPECIES ((int)(sizeof species / sizeof *species))

static void test_species(void **state)
{
    (void)state;
    gtl_hardware set = {0};
    int count = 0;
    assert_true(gtl_hardware_add_shipped(&set));
    for (int i = 0; i < SPECIES; i++) {
        const gtl_hardware_row *row = gtl_hardware_find(&set, GTL_HW_GREEN_WOOD, species[i].name);
        if (!row) {
            fail_msg("no %s", species[i].name);
            return;
        }
        assert_true(fabs(row->numbers[GTL_HW_SPECIFIC_GRAVITY] - species[i].gravity) < 1e-12);
        assert_true(fabs(row->numbers[GTL_HW_MOISTURE] - species[i].moisture / 100) < 1e-12);
        assert_true(fabs(row->numbers[GTL_HW_DENSITY] - species[i].density) < 1e-9);
        /* Wood Handbook, equation 4-14; the published figure is rounded to a pound a cubic foot, 16 kg/m3. */
        double sum = 1000 * species[i].gravity * (1 + species[i].moisture / 100);
        assert_true(fabs(sum - species[i].density) <= 8.1);
    }
    for (int i = 0; i < set.row_count; i++) count += set.rows[i].kind == GTL_HW_GREEN_WOOD;
    assert_int_equal(count, SPECIES);
    gtl_hardware_end(&set);
}

/* The heavy end is the careful one whatever the species, and no wood is heavier than soaked. */
static void test_spread(void **state)
{
    (void)state;
    gtl_hardware set = {0};
    int soaked = 0;
    assert_true(gtl_hardware_add_shipped(&set));
    for (int i = 0; i < set.row_count; i++) {
        if (set.rows[i].kind != GTL_HW_GREEN_WOOD) continue;
        gtl_timber timber = {
            .length = 1, .diameter_count = 1, .diameters = {0.3}, .bark = NAN, .row = &set.rows[i]};
        gtl_timber_work(&timber);
        const double *densities = timber.densities;
        double mean = set.rows[i].numbers[GTL_HW_DENSITY];
        assert_close(densities[GTL_WOOD_MEAN], mean);
        assert_true(densities[GTL_WOOD_LIGHT] < mean && mean < densities[GTL_WOOD_HEAVY]);
        assert_close(densities[GTL_WOOD_LIGHT], mean / 1.2);
        assert_true(densities[GTL_WOOD_HEAVY] <= timber.soaked * (1 + 1e-12));
        bool full = fabs(densities[GTL_WOOD_HEAVY] - timber.soaked) < 1e-9;
        bool fifth = fabs(densities[GTL_WOOD_HEAVY] - 1.2 * mean) < 1e-9;
        bool own = strcmp(set.rows[i].name, "western-redcedar") == 0;
        assert_int_equal(full + fifth + own, 1);
        if (own) assert_close(densities[GTL_WOOD_HEAVY], 1082);
        soaked += full;
    }
    assert_true(soaked >= 4); /* the oaks and the hickory hardly float */
    gtl_hardware_end(&set);
}

/* What nobody settled is the heavy end. */
static void test_blank_is_heavy(void **state)
{
    (void)state;
    gtl_timber timber = {0};
    assert_string_equal(gtl_wood_end_name(timber.end), "heavy");
}

/* ---- volumes ---- */

static gtl_timber stem(double length, int count, double first, double second, double third, double bark)
{
    gtl_timber timber = {.length = length,
                         .diameter_count = count,
                         .diameters = {first, second, third},
                         .bark = bark,
                         .typed = {900, 1000}};
    gtl_timber_work(&timber);
    return timber;
}

static double chance(void)
{
    return rand() / (RAND_MAX + 1.0);
}

/* On random stems: the frustum lies between the cylinder of its middle and Smalian's figure; Newton's is
 * exact for it, and for a paraboloid; twice as long is twice as much, twice as thick four times. */
static void test_volumes(void **state)
{
    (void)state;
    srand(20261128);
    for (int i = 0; i < 1000; i++) {
        double length = 0.2 + 9 * chance(), one = 0.05 + chance(), other = 0.05 + chance();
        double middle = (one + other) / 2, round = sqrt((one * one + other * other) / 2);
        gtl_timber huber = stem(length, 1, middle, NAN, NAN, NAN);
        gtl_timber smalian = stem(length, 2, one, other, NAN, NAN);
        gtl_timber newton = stem(length, 3, one, middle, other, NAN);
        gtl_timber paraboloid = stem(length, 3, one, round, other, NAN);
        assert_close(huber.volume, PI / 4 * middle * middle * length);
        assert_true(isnan(huber.frustum));
        assert_close(newton.volume, smalian.frustum);
        assert_close(newton.frustum, smalian.frustum);
        assert_close(paraboloid.volume, smalian.volume);
        assert_true(huber.volume <= smalian.frustum * (1 + 1e-12));
        assert_true(smalian.frustum <= smalian.volume * (1 + 1e-12));
        assert_close(stem(2 * length, 2, one, other, NAN, NAN).volume, 2 * smalian.volume);
        assert_close(stem(length, 2, 2 * one, 2 * other, NAN, NAN).volume, 4 * smalian.volume);
        assert_close(stem(length, 2, other, one, NAN, NAN).volume, smalian.volume);
        /* Measured under the bark it is the stem that is thicker by twice the bark. */
        assert_close(stem(length, 2, one, other, NAN, 0.02).volume,
                     stem(length, 2, one + 0.04, other + 0.04, NAN, NAN).volume);
        assert_close(smalian.masses[GTL_WOOD_HEAVY], 1000 * smalian.volume);
        assert_close(smalian.masses[GTL_WOOD_MEAN], 950 * smalian.volume);
        assert_close(smalian.masses[GTL_WOOD_LIGHT], 900 * smalian.volume);
    }
}

/* Where something is missing there is no figure at all. */
static void test_missing(void **state)
{
    (void)state;
    assert_true(isnan(stem(NAN, 2, 0.4, 0.3, NAN, NAN).masses[GTL_WOOD_HEAVY]));
    assert_true(isnan(stem(2, 0, NAN, NAN, NAN, NAN).masses[GTL_WOOD_HEAVY]));
    gtl_timber timber = stem(2, 1, 0.4, NAN, NAN, NAN);
    timber.typed[1] = NAN;
    gtl_timber_work(&timber);
    assert_true(isnan(timber.masses[GTL_WOOD_HEAVY]));
}

/* ---- in a rig ---- */

#define HOISTED                                                                                              \
    "[anchor beam]\nat = 9 m\nwll = 40 kN\n[block head]\non = beam\nefficiency = 92 %%\nwll = 40 kN\n"       \
    "[hand winch]\nat = 1 m\nlimit = 20 kN\n[rope fall]\npath = piece, head, winch\nwll = 20 kN\n"           \
    "[load piece]\nat = 3 m\n%s\n"

static double weight_with(const char *keys)
{
    gtl_rig *rig = read_sound(HOISTED, keys);
    double weight = rig->things[thing_of(rig, "piece")].weight;
    gtl_rig_free(rig);
    return weight;
}

/* The heavy end unless told otherwise, at the rig's own gravity; every spelling of one species is one. */
static void test_weight(void **state)
{
    (void)state;
    double volume = PI / 4 * 0.16 * 2;
    assert_close(weight_with("species = red spruce\nlength = 2 m\ndiameter = 40 cm"), volume * 545 * 1.2 * G);
    assert_close(weight_with("species = Red-Spruce\nlength = 200 cm\ndiameter = 400 mm\ndensity end = heavy"),
                 volume * 545 * 1.2 * G);
    assert_close(weight_with("species = RED  spruce\nlength = 2 m\ndiameter = 40 cm\ndensity end = mean"),
                 volume * 545 * G);
    assert_close(weight_with("density = 900 kg/m3\nlength = 2 m\ndiameter = 40 cm"), volume * 900 * G);
    assert_close(weight_with("density = 900 kg/m3 .. 1.1e3 kg/m3\nlength = 2 m\ndiameter = 40 cm"),
                 volume * 1100 * G);
    assert_close(weight_with("density = 900 kg/m3 .. 1100 kg/m3\nlength = 2 m\ndiameter = 40 cm\n"
                             "density end = mean"),
                 volume * 1000 * G);
    assert_close(
        weight_with("density = 900 kg/m3\nlength = 2 m\ndiameter = 40 cm\n[rig]\ngravity = 9.8 m/s2"),
        volume * 900 * 9.8);
}

/* A piece of timber and a load that was weighed to be the same are the same rig. */
static void test_as_weighed(void **state)
{
    (void)state;
    rated timber = rate_sound(HOISTED, "species = white oak\nlength = 2 m\ndiameter = 45 cm, 35 cm");
    char keys[64];
    double mass = timber.rig->woods[0].timber.masses[GTL_WOOD_HEAVY];
    snprintf(keys, sizeof keys, "mass = %.17g kg", mass);
    rated weighed = rate_sound(HOISTED, keys);
    assert_int_equal(timber.sheet.verdict, weighed.sheet.verdict);
    const char *const parts[] = {"beam", "head", "winch", "fall"};
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
        assert_close(demand_of(&timber, parts[i]), demand_of(&weighed, parts[i]));
    assert_int_equal(weighed.rig->wood_count, 0);
    rated_end(&timber);
    rated_end(&weighed);
}

/* Half of a spar's weight comes down at each end; how long the piece is moves neither end. */
static void test_spar(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("[anchor left]\nat = 0 m, 9 m\n[anchor right]\nat = 3 m, 9 m\n[joint butt]\n"
                              "at = 0 m, 6 m\n[joint tip]\nat = 3 m, 6 m\n[sling one]\npath = left, butt\n"
                              "[sling two]\npath = right, tip\n[spar log]\npath = butt, tip\ndensity = 900 "
                              "kg/m3\nlength = 4 m\ndiameter = 40 cm, 36 cm\n");
    double weight = 4 * PI / 4 * (0.16 + 0.36 * 0.36) / 2 * 900 * G;
    int log = 0;
    while (strcmp(rig->lines[log].name, "log") != 0) log++;
    assert_close(rig->lines[log].weight, weight);
    assert_true(isnan(rig->lines[log].length));
    assert_close(rig->nodes[rig->things[thing_of(rig, "butt")].node].weight, weight / 2);
    assert_int_equal(rig->wood_count, 1);
    assert_int_equal(rig->woods[0].kind, GTL_SPAR);
    assert_int_equal(rig->woods[0].index, log);
    gtl_rig *copy = gtl_rig_copy(rig);
    assert_int_equal(copy->wood_count, 1);
    assert_close(copy->woods[0].timber.masses[GTL_WOOD_HEAVY] * G, weight);
    gtl_rig_free(copy);
    gtl_rig_free(rig);
}

/* A heavier end never makes a better verdict. */
static void test_heavier_is_no_better(void **state)
{
    (void)state;
    const char *form = "species = sugar maple\nlength = %g m\ndiameter = 60 cm, 50 cm%s";
    int better = 0, over = 0;
    for (int step = 4; step < 36; step++) {
        double length = step / 4.0;
        char keys[128];
        snprintf(keys, sizeof keys, form, length, "");
        rated heavy = rate_sound(HOISTED, keys);
        snprintf(keys, sizeof keys, form, length, "\ndensity end = mean");
        rated mean = rate_sound(HOISTED, keys);
        better += heavy.sheet.verdict == GTL_WITHIN && mean.sheet.verdict != GTL_WITHIN;
        over += heavy.sheet.verdict == GTL_OVER && mean.sheet.verdict == GTL_WITHIN;
        assert_true(demand_of(&mean, "fall") < demand_of(&heavy, "fall"));
        rated_end(&heavy);
        rated_end(&mean);
    }
    assert_int_equal(better, 0);
    assert_true(over > 0);
}

/* ---- what is told ---- */

static bool tells(const char *keys, const char *words)
{
    rated rig = rate_sound(HOISTED, keys);
    char *report = gtl_report(&rig.sheet, GTL_TEXT);
    bool told = report && strstr(report, words) != NULL;
    free(report);
    rated_end(&rig);
    return told;
}

/* What was worked light stands at the very top; what no figure of timber holds is never called checked. */
static void test_told(void **state)
{
    (void)state;
    const char *heavy = "species = white oak\nlength = 2 m\ndiameter = 40 cm";
    const char *mean = "species = white oak\nlength = 2 m\ndiameter = 40 cm\ndensity end = mean";
    assert_true(tells(mean, "Timber    MEAN DENSITY of piece"));
    assert_false(tells(heavy, "MEAN DENSITY"));
    assert_true(tells(heavy, "worked with  heavy end: 305 kg"));
    assert_true(tells(mean, "worked with  mean density, as the file says: 254 kg"));
    assert_true(
        tells(heavy, "\n- the true weight and soundness of piece: moisture, branches, foliage, decay"));
    assert_true(tells(heavy, "\n- green-wood white-oak: US Forest Service"));
    assert_false(tells("mass = 300 kg", "Timber"));
}

/* ---- failing memory ---- */

static const char piece[] = "[anchor beam]\nat = 9 m\n[load piece]\nat = 3 m\nspecies = oak of ours\n"
                            "length = 2 m\ndiameter = 45 cm, 35 cm\n[sling strop]\npath = beam, piece\n";

static bool reads_with(const char *text, long allowed)
{
    gtl_fault_list faults;
    long before = blocks_alive();
    allow_allocations(allowed);
    gtl_faults_begin(&faults, "piece");
    gtl_rig *rig = gtl_read_text(text, strlen(text), &faults);
    bool refused = allow_all_allocations();
    assert_true(faults.out_of_memory == refused);
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void test_failing_reading(void **state)
{
    (void)state;
    const char *typed = "[anchor beam]\nat = 9 m\n[load piece]\nat = 3 m\ndensity = 900 kg/m3\n"
                        "length = 2 m\ndiameter = 45 cm, 35 cm\n[sling strop]\npath = beam, piece\n";
    long allowed = 0;
    while (!reads_with(typed, allowed)) allowed++;
    assert_true(allowed > 10);
    /* With tables there are thousands; the name that is kept is among the first. */
    for (allowed = 0; allowed < 400; allowed++) reads_with(piece, allowed);
}

static bool tells_with(const gtl_timber *timber, gtl_form form, long allowed)
{
    long before = blocks_alive();
    allow_allocations(allowed);
    char *report = gtl_timber_report(timber, form, false);
    bool refused = allow_all_allocations();
    assert_true((report == NULL) == refused);
    free(report);
    if (form == GTL_TEXT) assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void test_failing_report(void **state)
{
    (void)state;
    gtl_timber timber = stem(2, 2, 0.4, 0.3, NAN, 0.01);
    long allowed = 0;
    while (!tells_with(&timber, GTL_TEXT, allowed)) allowed++;
    assert_true(allowed > 20);
    for (allowed = 0; !tells_with(&timber, GTL_JSON, allowed);) allowed++;
    rated rig = rate_sound(HOISTED, "density = 900 kg/m3\nlength = 2 m\ndiameter = 40 cm");
    for (allowed = 0;; allowed++) {
        allow_allocations(allowed);
        char *report = gtl_report(&rig.sheet, GTL_TEXT);
        bool refused = allow_all_allocations();
        assert_true((report == NULL) == refused);
        free(report);
        if (!refused) break;
    }
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_species),
        cmocka_unit_test(test_spread),
        cmocka_unit_test(test_blank_is_heavy),
        cmocka_unit_test(test_volumes),
        cmocka_unit_test(test_missing),
        cmocka_unit_test(test_weight),
        cmocka_unit_test(test_as_weighed),
        cmocka_unit_test(test_spar),
        cmocka_unit_test(test_heavier_is_no_better),
        cmocka_unit_test(test_told),
        cmocka_unit_test(test_failing_reading),
        cmocka_unit_test(test_failing_report),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
