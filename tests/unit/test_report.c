/* test_report.c - how the report prints figures, names and running text.
 */
#include "report/character.h"
#include "report/escape.h"
#include "report/figures.h"
#include "report/names.h"
#include "report/wrap.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const gtl_print_units newtons = {
    .force = "N", .newtons = 1, .length = "m", .metres = 1, .length_decimals = 3, .kgf = true, .noise = 1e-6};
static const gtl_print_units kilonewtons = {.force = "kN",
                                            .newtons = 1000,
                                            .length = "m",
                                            .metres = 1,
                                            .length_decimals = 3,
                                            .kgf = true,
                                            .noise = 1e-6};

static void forces_go_up(void **state)
{
    (void)state;
    assert_string_equal(gtl_figure_force(&newtons, 490.3325).text, "491");
    assert_string_equal(gtl_figure_force(&newtons, 490).text, "490");
    assert_string_equal(gtl_figure_force(&newtons, 490 * (1 + 1e-12)).text, "490");
    assert_string_equal(gtl_figure_force(&newtons, 999.6).text, "1000");
    assert_string_equal(gtl_figure_force(&newtons, 9.996).text, "10.0");
    assert_string_equal(gtl_figure_force(&newtons, 1231).text, "1240");
    assert_string_equal(gtl_figure_force(&newtons, -490.3).text, "-491");
    assert_string_equal(gtl_figure_force(&kilonewtons, 1234).text, "1.24");
    assert_string_equal(gtl_figure_force(&kilonewtons, 0.01).text, "0.0001");
    assert_string_equal(gtl_figure_force_unit(&kilonewtons, 1230).text, "1.23 kN");
}

static void ratings_and_margins_go_down(void **state)
{
    (void)state;
    assert_string_equal(gtl_figure_rating(&kilonewtons, 31871.6).text, "31.8");
    assert_string_equal(gtl_figure_rating(&kilonewtons, 3000 * (1 - 1e-12)).text, "3.00");
    assert_string_equal(gtl_figure_rating(&kilonewtons, -1231).text, "-1.24");
    assert_string_equal(gtl_figure_rating_unit(&newtons, 250).text, "250 N");
}

static void utilisation_never_flatters(void **state)
{
    (void)state;
    assert_string_equal(gtl_figure_utilisation(1).text, "100.0");
    assert_string_equal(gtl_figure_utilisation(1 + 1e-10).text, "100.0");
    assert_string_equal(gtl_figure_utilisation(1 + 1e-8).text, "100.1");
    assert_string_equal(gtl_figure_utilisation(1.0004).text, "100.1");
    assert_string_equal(gtl_figure_utilisation(0.84321).text, "84.4");
    assert_string_equal(gtl_figure_utilisation(1e-9).text, "0.1");
    assert_string_equal(gtl_figure_utilisation(0).text, "0");
}

/* What is left of a rating goes down too. 1 - 0.5 / sqrt(6) is 0.795876. */
static void shares_go_down(void **state)
{
    (void)state;
    assert_string_equal(gtl_figure_share(0.55).text, "0.55");
    assert_string_equal(gtl_figure_share(0.795876).text, "0.7958");
    assert_string_equal(gtl_figure_share(2).text, "2");
    assert_string_equal(gtl_figure_share(0).text, "0");
    assert_string_equal(gtl_figure_share((double)NAN).text, "?");
    assert_string_equal(gtl_figure_utilisation((double)INFINITY).text, "not allowed");
}

static void what_is_no_number_is_a_dash(void **state)
{
    (void)state;
    assert_string_equal(gtl_figure_force(&newtons, (double)NAN).text, "-");
    assert_string_equal(gtl_figure_rating(&newtons, (double)INFINITY).text, "-");
    assert_string_equal(gtl_figure_ratio((double)NAN).text, "-");
    assert_string_equal(gtl_figure_degrees((double)NAN).text, "-");
    assert_string_equal(gtl_figure_power((double)NAN).text, "-");
}

static void nothing_is_zero_without_a_sign(void **state)
{
    (void)state;
    assert_string_equal(gtl_figure_force(&newtons, -0.0).text, "0");
    assert_string_equal(gtl_figure_force(&newtons, -1e-9).text, "0");
    assert_string_equal(gtl_figure_ratio(-0.0).text, "0");
    assert_string_equal(gtl_figure_length(&newtons, -1e-9).text, "0");
    assert_string_equal(gtl_figure_ratio(5e-324).text, "0");
}

static void any_size_stays_narrow(void **state)
{
    (void)state;
    assert_string_equal(gtl_figure_force(&newtons, 1.2345e8).text, "1.24e8");
    assert_string_equal(gtl_figure_force(&newtons, 9.999e299).text, "1.00e300");
    assert_string_equal(gtl_figure_power(1.23e-14).text, "1.3e-14");
    assert_string_equal(gtl_figure_power(9.99e-15).text, "1.0e-14");
}

static void typed_figures_have_no_idle_zeros(void **state)
{
    (void)state;
    assert_string_equal(gtl_figure_typed(8).text, "8");
    assert_string_equal(gtl_figure_typed(92.5).text, "92.5");
    assert_string_equal(gtl_figure_typed(100).text, "100");
    assert_string_equal(gtl_figure_typed(0.15).text, "0.15");
    assert_string_equal(gtl_figure_gravity(9.80665).text, "9.80665");
    assert_string_equal(gtl_figure_degrees(1.5707963267948966).text, "90.0");
    const double at[] = {1.5, -2, 0};
    assert_string_equal(gtl_figure_place(&newtons, at, 3).text, "1.500, -2.000, 0");
}

static void expect_clean(const char *raw, const char *wanted)
{
    char *clean = gtl_escape_for_people(raw);
    assert_string_equal(clean, wanted);
    free(clean);
}

static void people_are_not_fooled(void **state)
{
    (void)state;
    expect_clean("plain", "plain");
    expect_clean("", "");
    expect_clean("gr\xC3\xBC\xC3\x9F", "gr\xC3\xBC\xC3\x9F");
    expect_clean("a\tb\nc", "a b c");
    expect_clean("\033[31mred", "?[31mred");
    expect_clean("c1 \xC2\x9B", "c1 ?");
    expect_clean("right \xE2\x80\xAE left", "right ? left");
    expect_clean("cut \xE6\xBB", "cut ??");
    expect_clean("long \xC0\xAF", "long ??");
    expect_clean("surrogate \xED\xA0\x80", "surrogate ???");
    char *valid = gtl_escape_for_programs("\033 \xFF");
    assert_string_equal(valid, "\033 \xEF\xBF\xBD");
    free(valid);
}

static void columns_are_those_of_a_screen(void **state)
{
    (void)state;
    assert_int_equal(gtl_columns("abc", 3), 3);
    assert_int_equal(gtl_columns("\xC3\xBC", 2), 1);
    assert_int_equal(gtl_columns("e\xCC\x81", 3), 1);
    assert_int_equal(gtl_columns("\xE6\xBB\x91", 3), 2);
}

static void expect_wrapped(const char *words, gtl_wrap wrap, const char *wanted)
{
    gtl_text text = {0};
    gtl_wrap_words(&text, words, &wrap);
    char *lines = gtl_text_take(&text);
    assert_string_equal(lines, wanted);
    free(lines);
}

static void text_is_wrapped(void **state)
{
    (void)state;
    expect_wrapped("one two three", (gtl_wrap){.width = 7}, "one two\nthree\n");
    expect_wrapped("one two three", (gtl_wrap){.width = 20}, "one two three\n");
    expect_wrapped("one two", (gtl_wrap){.column = 5, .indent = 2, .width = 8}, "one\n  two\n");
    expect_wrapped("abcdefgh", (gtl_wrap){.width = 3}, "abc\ndef\ngh\n");
    expect_wrapped("one two three", (gtl_wrap){.width = 10, .most_lines = 1}, "one two...\n");
    expect_wrapped("", (gtl_wrap){.width = 10}, "\n");
}

static void names_are_counted(void **state)
{
    (void)state;
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = 2};
    gtl_names_add(&names, "a");
    gtl_names_add(&names, "b");
    gtl_names_add(&names, "c");
    gtl_names_end(&names);
    char *said = gtl_text_take(&text);
    assert_string_equal(said, "a, b and 1 more");
    free(said);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(forces_go_up),
        cmocka_unit_test(ratings_and_margins_go_down),
        cmocka_unit_test(utilisation_never_flatters),
        cmocka_unit_test(shares_go_down),
        cmocka_unit_test(what_is_no_number_is_a_dash),
        cmocka_unit_test(nothing_is_zero_without_a_sign),
        cmocka_unit_test(any_size_stays_narrow),
        cmocka_unit_test(typed_figures_have_no_idle_zeros),
        cmocka_unit_test(people_are_not_fooled),
        cmocka_unit_test(columns_are_those_of_a_screen),
        cmocka_unit_test(text_is_wrapped),
        cmocka_unit_test(names_are_counted),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
