/* test_rate_memory.c - rating and reporting with each allocation failing in turn. */
#include "unit/failing_memory.h"
#include "unit/failing_rating.h"
#include "unit/rated.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

/* Names and ratings, three cases, an undecided stop, warnings. */
static const char hoist[] =
    "[rig]\ntitle = Gantry\nnote = A crate in a bight.\ndesign factor = 8\n"
    "[anchor beam]\nat = 6 m\nwll = 3 kN\n[block tail]\nat = 4 m\nefficiency = 90 %\n"
    "[block saddle]\nat = 3 m\nefficiency = 80 %\n[connector hook]\nwll = 1 kN\n"
    "[load crate]\nat = 1 m\nmass = 18 kg\n[hand crew]\nat = 5 m\npeople = 2\neach = 200 N\n"
    "[rope fall]\npath = beam, tail, crew\nmbs = 9 kN\n[sling link]\npath = tail, saddle via hook\n"
    "[rope bight]\npath = crate, saddle, crate\n";

/* Friction as a range, and a post. */
static const char ranged[] = "[anchor quay]\nat = 3 m\n[fairlead post]\non = quay\nfriction = 0.15 .. 0.22\n"
                             "[load barge]\nat = 1 m\nmass = 30 kg\n[hand crew]\nat = 2 m\n"
                             "[rope line]\npath = barge, post, crew\n";

/* Two coordinates, several places, joints and a spar. */
static const char leaning[] = "[anchor foot]\nat = 0 m, 0 m\n[load head]\nat = 0.1 m, 2 m\nmass = 20 kg\n"
                              "[spar post]\npath = foot, head\n[hand west]\nat = -1 m, 2 m\npull = 20 kN\n"
                              "[rope left-guy]\npath = head, west\n[hand east]\nat = 1 m, 2 m\npull = 20 kN\n"
                              "[rope right-guy]\npath = head, east\n";

static void rating(void **state)
{
    (void)state;
    const char *const texts[] = {hoist, leaning, ranged};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        gtl_rig *rig = read_sound("%s", texts[i]);
        long allowed = 0;
        while (!rates_with(rig, allowed)) allowed++;
        assert_true(allowed > 100);
        gtl_rig_free(rig);
    }
}

/* The same for the report. Of JSON only our own allocations are refused, and the text is jansson's: it is not
 * counted. */
static bool reports_with(const rated *rig, gtl_form form, long allowed)
{
    long before = blocks_alive();
    allow_allocations(allowed);
    char *report = gtl_report(&rig->sheet, form);
    bool refused = allow_all_allocations();
    assert_true((report == NULL) == refused);
    free(report);
    if (form == GTL_TEXT) assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void reporting(void **state)
{
    (void)state;
    const char *const texts[] = {hoist, leaning, ranged};
    const gtl_form forms[] = {GTL_TEXT, GTL_JSON};
    for (size_t i = 0; i < 2 * sizeof texts / sizeof *texts; i++) {
        rated rig = rate_sound("%s", texts[i / 2]);
        long allowed = 0;
        while (!reports_with(&rig, forms[i % 2], allowed)) allowed++;
        assert_true(allowed > 20);
        rated_end(&rig);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rating),
        cmocka_unit_test(reporting),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
