/* test_explain.c - a worked solution: its forms, its beginning, and each allocation failing in turn. */
#include "unit/failing_memory.h"
#include "unit/rated.h"
#include "unit/report_text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* Two parts, heights alone; nothing is rated but the beam, and that too low. */
static const char tackle[] =
    "[rig]\ntitle = Basket\n[anchor beam]\nat = 6 m\nwll = 0.1 kN\n[block head]\non = beam\n"
    "efficiency = 90 %\n[block tail]\nat = 1 m\nmass = 2 kg\nefficiency = 90 %\n"
    "[load crate]\non = tail\nmass = 40 kg\n[hand crew]\nat = 1 m\n"
    "[rope fall]\npath = beam, tail, head, crew\n";

/* In a plane: a spar, a known pull, a joint, a load on two lines, its weight stated as a force. */
static const char derrick[] =
    "[rig]\ntitle = Boom\n[anchor foot]\nat = 0 m, 0 m\n[anchor top]\nat = 0 m, 3 m\n"
    "[joint tip]\nat = 2 m, 2 m\n[spar boom]\npath = foot, tip\nmass = 12 kg\n"
    "[sling topping]\npath = top, tip\n[load bale]\nat = 2 m, 1 m\nweight = 321 N\n"
    "[sling drop]\npath = tip, bale\n[hand tag]\nat = 4 m, 1 m\npull = 20 N\n"
    "[rope guy]\npath = tip, tag\n";

/* In space: three lines to a ring, and a tackle. */
static const char space[] = "[anchor west]\nat = 0 m, 0 m, 4 m\n[anchor east]\nat = 4 m, 0 m, 4 m\n"
                            "[anchor mast]\nat = 2 m, 3 m, 5 m\n[block lead]\non = mast\nefficiency = 95 %\n"
                            "[load moon]\nat = 2 m, 1 m, 2 m\nmass = 9 kg\n[sling left]\npath = west, moon\n"
                            "[sling right]\npath = east, moon\n[hand crew]\nat = 2 m, 4 m, 1 m\n"
                            "[rope fall]\npath = moon, lead, crew\n";

/* Explain a sheet. The caller frees it. */
static char *explained(const rated *rig, gtl_form form, bool ideal, gtl_steps steps)
{
    gtl_explain_wish wish = {.form = form, .ideal = ideal, .steps = steps};
    return gtl_explain(&rig->sheet, &wish);
}

static void other_forms(void **state)
{
    (void)state;
    static const gtl_form forms[] = {GTL_JSON, GTL_CSV, GTL_SVG};
    rated rig = rate_sound("%s", tackle);
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++)
        assert_null(explained(&rig, forms[i], false, GTL_STEPS_ALL));
    rated_end(&rig);
}

/* What is not checked has to be said, and what is over too. */
static void beginning(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", tackle);
    char *text = explained(&rig, GTL_TEXT, false, GTL_STEPS_ALL);
    assert_non_null(text);
    assert_int_equal(strncmp(text, "Worked solution: Basket\n", 24), 0);
    assert_says(text, "Ratings   are no part of this solution; `gantline report` checks them; its\n"
                      "          verdict on this rig is OVER: do not load it as it is\n");
    assert_says(text, "Arithmetic on the numbers typed in, no approval.");
    assert_says(text, "\n    W(crate) = 40 kg x 9.80665 m/s2 = 392.3 N\n");
    assert_says(text, "\nhead            efficiency 90 % at 180 deg\n");
    free(text);
    rated_end(&rig);
}

static void ideal(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", tackle);
    char *text = explained(&rig, GTL_TEXT, true, GTL_STEPS_ALL);
    assert_non_null(text);
    assert_keeps_quiet(text, "at 180 deg");
    assert_keeps_quiet(text, "with friction");
    assert_keeps_quiet(text, "\nFriction\n");
    free(text);
    rated_end(&rig);
}

static void stated_as_they_were(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", derrick);
    char *text = explained(&rig, GTL_TEXT, false, GTL_STEPS_FORCES);
    assert_non_null(text);
    assert_says(text, "\n    W(bale) = 321.0 N\n");
    assert_says(text, "\n    W(boom) = 12 kg x 9.80665 m/s2 = 117.7 N\n");
    assert_says(text, "\n    P(tag) = 20.00 N\n");
    assert_says(text, "its\n          verdict on this rig is UNRATED");
    free(text);
    rated_end(&rig);
}

static void pounds(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\nunits = us\n[anchor beam]\nat = 20 ft\n[load crate]\nat = 3 ft\nmass = 260 lb\n"
                   "[sling drop]\npath = beam, crate\n");
    char *text = explained(&rig, GTL_TEXT, false, GTL_STEPS_ALL);
    assert_non_null(text);
    assert_says(text, "\n    W(crate) = 260 lb x 9.80665 m/s2 = 260.0 lbf\n");
    free(text);
    rated_end(&rig);
}

/* With the first `allowed` allocations granted: nothing, or all of it; true once none was refused. */
static bool explains_with(const rated *rig, gtl_form form, long allowed)
{
    long before = blocks_alive();
    allow_allocations(allowed);
    char *text = explained(rig, form, false, GTL_STEPS_ALL);
    bool refused = allow_all_allocations();
    assert_int_equal(text == NULL, refused);
    free(text);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void memory(void **state)
{
    (void)state;
    const char *const texts[] = {tackle, derrick, space};
    static const gtl_form forms[] = {GTL_TEXT, GTL_HTML};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        rated rig = rate_sound("%s", texts[i]);
        for (int k = 0; k < 2; k++) {
            long allowed = 0;
            while (!explains_with(&rig, forms[k], allowed)) allowed++;
            assert_true(allowed > 50);
        }
        rated_end(&rig);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(other_forms),         cmocka_unit_test(beginning), cmocka_unit_test(ideal),
        cmocka_unit_test(stated_as_they_were), cmocka_unit_test(pounds),    cmocka_unit_test(memory),
    };
    return cmocka_run_group_tests_name("explain", tests, NULL, NULL);
}
