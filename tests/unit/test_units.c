/* test_units.c - numbers and units as typed: exact factors, every unit, every refusal.
 * Link with cmocka and the library. */
#include "base/unit_names.h"

#include <gantline/units.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#define COUNT(table) (sizeof(table) / sizeof(table)[0])

static double read_well(const char *text, gtl_quantity wanted)
{
    char why[GTL_WHY_SIZE] = "";
    double si = NAN;
    if (!gtl_parse_quantity(text, wanted, GTL_STANDARD_GRAVITY, &si, NULL, why))
        fail_msg("%s: %s", text, why);
    return si;
}

/* Every value here is exact in its source, so that only the rounding of one product is allowed. */
static void check_values(const char *text, gtl_quantity wanted, double expected)
{
    double si = read_well(text, wanted);
    if (fabs(si - expected) > 4e-16 * fabs(expected))
        fail_msg("%s: %.17g, expected %.17g", text, si, expected);
}

static void test_exact_factors(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        gtl_quantity wanted;
        double si;
    } cases[] = {
        /* NIST SP 811, appendix B, exact values (memory; restated in the project's own check figures) */
        {"1 lb", GTL_MASS, 0.45359237},
        {"1 lbf", GTL_FORCE, 4.4482216152605},
        {"1 kgf", GTL_FORCE, 9.80665},
        {"1 kip", GTL_FORCE, 4448.2216152605},
        {"1 ft", GTL_LENGTH, 0.3048},
        {"1 in", GTL_LENGTH, 0.0254},
        {"1 ft/s2", GTL_ACCELERATION, 0.3048},
        /* The SI itself: prefixes, the tonne, the degree (derived) */
        {"1 kg", GTL_MASS, 1},
        {"1 g", GTL_MASS, 0.001},
        {"1 t", GTL_MASS, 1000},
        {"1 N", GTL_FORCE, 1},
        {"1 kN", GTL_FORCE, 1000},
        {"1 daN", GTL_FORCE, 10},
        {"1 m", GTL_LENGTH, 1},
        {"1 cm", GTL_LENGTH, 0.01},
        {"1 mm", GTL_LENGTH, 0.001},
        {"180 deg", GTL_ANGLE, 3.14159265358979323846},
        {"1 rad", GTL_ANGLE, 1},
        {"92 %", GTL_FRACTION, 0.92},
        {"9.81 m/s2", GTL_ACCELERATION, 9.81},
        {"2 m/s", GTL_SPEED, 2},
        {"60 m/min", GTL_SPEED, 1},
        {"1 ft/s", GTL_SPEED, 0.3048},
        {"200 ft/min", GTL_SPEED, 1.016},
        {"1.5 s", GTL_TIME, 1.5},
        {"400 ms", GTL_TIME, 0.4},
        {"0.5 min", GTL_TIME, 30},
        {"1026 kg/m3", GTL_DENSITY, 1026},
        {"62.5 lb/ft3", GTL_DENSITY, 62.5 * 0.45359237 / 0.028316846592},
        {"4.37 kg/m", GTL_LINEAR_MASS, 4.37},
        {"1 lb/ft", GTL_LINEAR_MASS, 1.488163943569554},
        {"200 GPa", GTL_ELASTICITY, 200e9},
        {"70000 MPa", GTL_ELASTICITY, 70e9},
        /* Products of the above (derived) */
        {"16 ft 4 in", GTL_LENGTH, 196 * 0.0254},
        {"5000 lbf", GTL_FORCE, 22241.1080763025},
        {"3.25 t", GTL_FORCE, 3250 * 9.80665},
        {"1 lb", GTL_FORCE, 4.4482216152605},
    };
    for (size_t i = 0; i < COUNT(cases); i++) check_values(cases[i].text, cases[i].wanted, cases[i].si);
}

static void test_spellings(void **state)
{
    (void)state;
    check_values("4.5kN", GTL_FORCE, 4500);
    check_values("  4.5\tkn  ", GTL_FORCE, 4500);
    check_values("16ft4in", GTL_LENGTH, 196 * 0.0254);
    check_values("-3 ft 4 in", GTL_LENGTH, -40 * 0.0254);
    check_values("-0 ft 6 in", GTL_LENGTH, -6 * 0.0254);
    check_values("6 ft 0 in", GTL_LENGTH, 6 * 0.3048);
    check_values("6 ft 3.5 in", GTL_LENGTH, 75.5 * 0.0254);
    check_values("+.5 m", GTL_LENGTH, 0.5);
    check_values("5. m", GTL_LENGTH, 5);
    check_values("1.5e3 N", GTL_FORCE, 1500);
    check_values("15E-1 m", GTL_LENGTH, 1.5);
    check_values("0.92", GTL_FRACTION, 0.92);
    check_values("92%", GTL_FRACTION, 0.92);
    check_values("8", GTL_NUMBER, 8);
    check_values("0.25", GTL_NUMBER, 0.25);
    check_values("3", GTL_WHOLE, 3);
    check_values("3.0", GTL_WHOLE, 3);
    check_values("0 N", GTL_FORCE, 0);
    check_values("0.1 m", GTL_LENGTH, 0.1);
}

static void test_gravity(void **state)
{
    (void)state;
    char why[GTL_WHY_SIZE];
    double si = NAN;
    bool used = false;
    assert_true(gtl_parse_quantity("100 kg", GTL_MASS, 9.8, &si, &used, why));
    assert_false(used);
    assert_true(gtl_parse_quantity("100 kgf", GTL_FORCE, 9.8, &si, &used, why));
    assert_false(used);
    assert_true(fabs(si - 980.665) < 1e-12);
    assert_true(gtl_parse_quantity("100 kg", GTL_FORCE, 9.8, &si, &used, why));
    assert_true(used);
    assert_true(fabs(si - 980) < 1e-12);
}

static const struct {
    const char *text;
    gtl_quantity wanted;
    const char *says; /* a word of the message that the user needs */
} refusals[] = {
    {"", GTL_MASS, "no value"},
    {"   ", GTL_LENGTH, "no value"},
    {"5", GTL_MASS, "no unit"},
    {"5", GTL_ANGLE, "no unit"},
    {"heavy", GTL_MASS, "begin with a number"},
    {"inf", GTL_NUMBER, "begin with a number"},
    {"infinity kg", GTL_MASS, "begin with a number"},
    {"nan", GTL_NUMBER, "begin with a number"},
    {"-nan kg", GTL_MASS, "begin with a number"},
    {"0x10 kg", GTL_MASS, "decimals"},
    {"0X1p3", GTL_NUMBER, "decimals"},
    {"2,5 kg", GTL_MASS, "point"},
    {"1,000 kg", GTL_MASS, "thousands"},
    {"1_000 kg", GTL_MASS, "thousands"},
    {"1.2.3 kg", GTL_MASS, "point"},
    {"1e999 kg", GTL_MASS, "too large"},
    {"1e99999999999999999999 kg", GTL_MASS, "too large"},
    {"1e13 kg", GTL_MASS, "too large"},
    {"1e-999 kg", GTL_MASS, "too small"},
    {"1 e3 kg", GTL_MASS, "unknown unit"},
    {"1e kg", GTL_MASS, "unknown unit"},
    {"--5 kg", GTL_MASS, "begin with a number"},
    {"- 5 kg", GTL_MASS, "begin with a number"},
    {". kg", GTL_MASS, "begin with a number"},
    {"2 ton", GTL_MASS, "write lb, kg or t"},
    {"2 Tons", GTL_FORCE, "write lb, kg or t"},
    {"2 lbs", GTL_MASS, "lb"},
    {"5' 4\"", GTL_LENGTH, "ft"},
    {"90\xC2\xB0", GTL_ANGLE, "deg"},
    {"9.81 m/s^2", GTL_ACCELERATION, "m/s2"},
    {"9.81 m/s", GTL_ACCELERATION, "is a speed"},
    {"9.81 m/h", GTL_ACCELERATION, "unknown unit"},
    {"0.5 m/s2", GTL_SPEED, "is an acceleration"},
    {"0.5", GTL_SPEED, "no unit"},
    {"30 fpm", GTL_SPEED, "ft/min"},
    {"2 km/h", GTL_SPEED, "unknown unit"},
    {"2", GTL_TIME, "no unit"},
    {"2 sec", GTL_TIME, "is written s"},
    {"2 m", GTL_TIME, "is a length"},
    {"2 min", GTL_LENGTH, "is a time"},
    {"1 min 20 s", GTL_TIME, "more than one"},
    {"4 kN", GTL_MASS, "is a force"},
    {"4 kg", GTL_LENGTH, "is a mass"},
    {"4 m", GTL_FORCE, "is a length"},
    {"4 deg", GTL_FRACTION, "is an angle"},
    {"4 %", GTL_NUMBER, "percentage"},
    {"4 kg", GTL_NUMBER, "is a mass"},
    {"4 pieces", GTL_WHOLE, "without a unit"},
    {"1.5", GTL_WHOLE, "not whole"},
    {"1e10", GTL_WHOLE, "too large"},
    {"5 kg 3 g", GTL_MASS, "more than one"},
    {"5 kg and so on", GTL_MASS, "more than one"},
    {"5 m 20 cm", GTL_LENGTH, "more than one"},
    {"5 in 3 ft", GTL_LENGTH, "more than one"},
    {"5 ft 4", GTL_LENGTH, "only inches"},
    {"5 ft 4 cm", GTL_LENGTH, "only inches"},
    {"5 ft 4 in 3", GTL_LENGTH, "only inches"},
    {"5 ft -4 in", GTL_LENGTH, "more than one"},
    {"5.5 ft 4 in", GTL_LENGTH, "mixed up"},
    {"5 ft 12 in", GTL_LENGTH, "mixed up"},
    {"5 kg\x01", GTL_MASS, "unknown unit"},
};

static void test_refusals(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT(refusals); i++) {
        char why[GTL_WHY_SIZE] = "";
        double si = 77;
        bool used = false;
        if (gtl_parse_quantity(refusals[i].text, refusals[i].wanted, GTL_STANDARD_GRAVITY, &si, &used, why)) {
            fail_msg("`%s` was read as %g", refusals[i].text, si);
        }
        if (!strstr(why, refusals[i].says)) fail_msg("`%s`: %s", refusals[i].text, why);
        assert_true(strlen(why) + 1 < GTL_WHY_SIZE);
        assert_true(si == 77 && !used);
    }
}

/* Whatever the words, a message fits its room and is cut nowhere. */
static void test_long_words(void **state)
{
    (void)state;
    char text[600];
    char why[GTL_WHY_SIZE];
    double si = 0;
    for (size_t length = 0; length < sizeof text; length++) {
        memset(text, 'x', length);
        text[length] = '\0';
        assert_false(gtl_parse_quantity(text, GTL_FORCE, GTL_STANDARD_GRAVITY, &si, NULL, why));
        if (length > 1) text[0] = '1';
        assert_false(gtl_parse_quantity(text, GTL_FORCE, GTL_STANDARD_GRAVITY, &si, NULL, why));
        assert_true(strlen(why) + 1 < GTL_WHY_SIZE);
    }
}

/* The names that are listed for help are the names that are read. */
static void test_names(void **state)
{
    (void)state;
    for (int quantity = GTL_MASS; quantity <= GTL_WHOLE; quantity++) {
        char names[100];
        snprintf(names, sizeof names, "%s", gtl_unit_names((gtl_quantity)quantity));
        for (char *name = strtok(names, " "); name; name = strtok(NULL, " ")) {
            char text[40];
            snprintf(text, sizeof text, "1 %s", name);
            assert_true(read_well(text, (gtl_quantity)quantity) > 0);
        }
    }
    assert_string_equal(gtl_unit_names(GTL_MASS), GTL_MASS_UNITS);
    assert_string_equal(gtl_unit_names(GTL_NUMBER), "");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_exact_factors), cmocka_unit_test(test_spellings),
        cmocka_unit_test(test_gravity),       cmocka_unit_test(test_refusals),
        cmocka_unit_test(test_long_words),    cmocka_unit_test(test_names),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
