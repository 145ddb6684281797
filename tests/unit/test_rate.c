/* test_rate.c - capacity, utilisation, marks, and the rules of the verdict one by one. */
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

/* ---- capacity ---- */

static void smaller_of_wll_and_strength(void **state)
{
    (void)state;
    const double no = NAN;
    const struct {
        double wll, mbs, factor, capacity;
    } rows[] = {
        {1000, no, no, 1000},   {no, 8000, 8, 1000},     {1000, 16000, 8, 1000},
        {3000, 16000, 8, 2000}, {1000, 16000, no, 1000}, {1000, no, 8, 1000},
        {no, 16000, no, no},    {no, no, 8, no},         {no, no, no, no},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        gtl_rating rating = {rows[i].wll, no, rows[i].mbs, rows[i].factor};
        double capacity = gtl_capacity(&rating);
        if (isnan(rows[i].capacity))
            assert_true(isnan(capacity));
        else
            assert_close(capacity, rows[i].capacity);
    }
}

static void push_is_no_pull(void **state)
{
    (void)state;
    assert_true(isnan(gtl_capacity(&(gtl_rating){NAN, 500, NAN, NAN})));
}

/* The rig's design factor is for parts that state none. */
static void own_design_factor(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ndesign factor = 8\n[anchor beam]\nat = 3 m\nmbs = 8 kN\n[load crate]\nat = 1 m\n"
                   "weight = 100 N\n[sling leg]\npath = beam, crate\nmbs = 8 kN\ndesign factor = 5\n");
    assert_close(component_of(&rig, "beam")->capacity, 1000);
    assert_close(component_of(&rig, "leg")->capacity, 1600);
    rated_end(&rig);
}

/* Work done on all weights and known pulls over the work of the hand: the load's 200 N less the helper's 50 N
 * at 80 %. */
static void efficiency_of_raising(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[anchor top]\nat = 5 m\n[block wheel]\non = top\nefficiency = 80 %%\n[load crate]\n"
                   "at = 2 m\nweight = 200 N\n[hand crew]\nat = 4 m\n[rope lift]\npath = crate, crew\n"
                   "[hand helper]\nat = 1 m\npull = 50 N\n[rope help]\npath = crate, wheel, helper\n");
    const gtl_outcome *raise = gtl_sheet_outcome(&rig.sheet, GTL_RAISE);
    assert_close(raise->efficiency, (200 - 50) / (200 - 50 * 0.8));
    assert_close(raise->estimated_advantage, 200 / (200 - 50 * 0.8));
    assert_close(raise->velocity_ratio, 1);
    assert_true(isnan(gtl_sheet_outcome(&rig.sheet, GTL_HOLD)->efficiency));
    assert_true(isnan(gtl_sheet_outcome(&rig.sheet, GTL_LOWER)->efficiency));
    rated_end(&rig);
}

/* ---- utilisation and marks ---- */

static gtl_mark mark_at(const char *wll)
{
    rated rig = rate_sound("[anchor beam]\nat = 3 m\nwll = 1 kN\n[load crate]\nat = 1 m\nweight = 100 N\n"
                           "[sling leg]\npath = beam, crate\nwll = %s\n",
                           wll);
    gtl_mark mark = component_of(&rig, "leg")->mark;
    assert_int_equal(rig.sheet.verdict, mark == GTL_MARK_OVER ? GTL_OVER : GTL_WITHIN);
    rated_end(&rig);
    return mark;
}

static void loaded_to_its_rating(void **state)
{
    (void)state;
    assert_int_equal(mark_at("100 N"), GTL_MARK_WITHIN);
    assert_int_equal(mark_at("99.99999995 N"), GTL_MARK_WITHIN); /* 1 + 5e-10 */
    assert_int_equal(mark_at("99.9999998 N"), GTL_MARK_OVER);    /* 1 + 2e-9 */
    assert_int_equal(mark_at("99 N"), GTL_MARK_OVER);
}

static void idle_is_not_unrated(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[anchor beam]\nat = 3 m\nwll = 1 kN\n[anchor spare]\nat = 3 m\n[load crate]\nat = 1 m\n"
                   "weight = 100 N\n[sling leg]\npath = beam, crate\nwll = 1 kN\n");
    assert_int_equal(component_of(&rig, "spare")->mark, GTL_MARK_IDLE);
    assert_int_equal(rig.sheet.verdict, GTL_WITHIN);
    rated_end(&rig);
}

/* ---- the verdict ---- */

/* A single travelling block under 200 N: 100 N in each part without friction. What each part of the gear
 * states. */
#define HOIST                                                                                                \
    "[rig]\n%s\n[anchor beam]\nat = 4 m\n%s\n[block tail]\nat = 1 m\nweight = 20 N\n%s\n[load crate]\n"      \
    "on = tail\nweight = 180 N\n[hand crew]\nat = 3 m\n%s\n[rope fall]\npath = beam, tail, crew\n%s\n"

typedef struct ruling {
    const char *sheet, *beam, *tail, *crew, *fall;
    gtl_verdict verdict;
    unsigned why;
} ruling;

static const ruling rulings[] = {
    {"", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "", "wll = 1 kN", GTL_WITHIN, 0},
    {"", "wll = 1 kN", "wll = 1 kN\nefficiency = 100 %", "", "wll = 1 kN", GTL_WITHIN, 0},
    {"", "wll = 90 N", "wll = 1 kN\nefficiency = 80 %", "", "wll = 1 kN", GTL_OVER, GTL_WHY_OVER},
    {"", "", "wll = 1 kN\nefficiency = 80 %", "", "wll = 1 kN", GTL_UNRATED, GTL_WHY_UNRATED},
    {"", "wll = 90 N", "efficiency = 80 %", "", "wll = 1 kN", GTL_OVER, GTL_WHY_OVER | GTL_WHY_UNRATED},
    {"", "wll = 1 kN", "wll = 1 kN", "", "wll = 1 kN", GTL_UNRATED, GTL_WHY_FRICTION},
    {"", "wll = 90 N", "wll = 1 kN", "", "wll = 1 kN", GTL_OVER, GTL_WHY_OVER | GTL_WHY_FRICTION},
    {"", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "", "mbs = 9 kN", GTL_UNRATED, GTL_WHY_UNRATED},
    {"design factor = 8", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "", "mbs = 9 kN", GTL_WITHIN, 0},
    /* Which cases are worked. */
    {"cases = hold", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "", "wll = 1 kN", GTL_UNRATED,
     GTL_WHY_NOT_MOVED},
    {"cases = raise", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "", "wll = 1 kN", GTL_WITHIN, 0},
    {"cases = lower", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "", "wll = 1 kN", GTL_WITHIN, 0},
    {"cases = hold", "wll = 1 kN", "wll = 1 kN", "", "wll = 1 kN", GTL_UNRATED, GTL_WHY_FRICTION},
    /* The beam holds 100 N at rest, 88.9 N while the load goes up, 111.1 N while it goes down. */
    {"cases = raise", "wll = 95 N", "wll = 1 kN\nefficiency = 80 %", "", "wll = 1 kN", GTL_OVER,
     GTL_WHY_OVER},
    {"cases = raise", "wll = 105 N", "wll = 1 kN\nefficiency = 80 %", "", "wll = 1 kN", GTL_WITHIN, 0},
    {"cases = lower", "wll = 105 N", "wll = 1 kN\nefficiency = 80 %", "", "wll = 1 kN", GTL_OVER,
     GTL_WHY_OVER},
    /* A hand with a limit: 111.1 N to raise, 88.9 N to lower; at rest it counts only where no friction is
       stated. */
    {"", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "limit = 112 N", "wll = 1 kN", GTL_WITHIN, 0},
    {"", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "limit = 111 N", "wll = 1 kN", GTL_OVER,
     GTL_WHY_OVER},
    {"", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "people = 2\neach = 56 N", "wll = 1 kN", GTL_WITHIN,
     0},
    {"", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "people = 2\neach = 55 N", "wll = 1 kN", GTL_OVER,
     GTL_WHY_OVER},
    {"cases = lower", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "limit = 90 N", "wll = 1 kN", GTL_WITHIN,
     0},
    {"cases = hold", "wll = 1 kN", "wll = 1 kN\nefficiency = 80 %", "limit = 90 N", "wll = 1 kN", GTL_UNRATED,
     GTL_WHY_UNRATED | GTL_WHY_NOT_MOVED},
    {"cases = hold", "wll = 1 kN", "wll = 1 kN", "limit = 90 N", "wll = 1 kN", GTL_OVER,
     GTL_WHY_OVER | GTL_WHY_FRICTION},
    {"cases = hold", "wll = 1 kN", "wll = 1 kN", "limit = 101 N", "wll = 1 kN", GTL_UNRATED,
     GTL_WHY_FRICTION},
};

static void each_rule_of_the_verdict(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof rulings / sizeof *rulings; i++) {
        const ruling *row = &rulings[i];
        rated rig = rate_sound(HOIST, row->sheet, row->beam, row->tail, row->crew, row->fall);
        if (rig.sheet.verdict != row->verdict || rig.sheet.why != row->why)
            fail_msg("row %zu: %s, why %u", i, gtl_verdict_name(rig.sheet.verdict), rig.sheet.why);
        rated_end(&rig);
    }
}

static void governing_cases(void **state)
{
    (void)state;
    rated rig = rate_sound(HOIST, "", "", "efficiency = 80 %", "limit = 1 kN", "");
    assert_close(demand_of(&rig, "crew"), 200 / 1.8);
    assert_int_equal(rig.sheet.outcomes[component_of(&rig, "crew")->governing].kind, GTL_RAISE);
    assert_close(demand_of(&rig, "beam"), 200 / 1.8);
    assert_int_equal(rig.sheet.outcomes[component_of(&rig, "beam")->governing].kind, GTL_LOWER);
    assert_close(demand_of(&rig, "fall"), 200 / 1.8);
    assert_close(component_of(&rig, "crew")->utilisation, 0.2 / 1.8);
    rated_end(&rig);
}

static void a_hand_without_limit_is_no_component(void **state)
{
    (void)state;
    rated rig = rate_sound(HOIST, "", "", "efficiency = 80 %", "", "");
    assert_null(gtl_sheet_component(&rig.sheet, GTL_HAND, thing_of(rig.rig, "crew")));
    assert_null(gtl_sheet_component(&rig.sheet, GTL_LOAD, thing_of(rig.rig, "crate")));
    assert_non_null(gtl_sheet_component(&rig.sheet, GTL_BLOCK, thing_of(rig.rig, "tail")));
    rated_end(&rig);
}

/* A counterweight over a wheel, and a line to a hand. */
#define BALANCE                                                                                              \
    "[rig]\nload = crate\n%s\n[anchor top]\nat = 5 m\nwll = 1 kN\n[block wheel]\non = top\nefficiency = "    \
    "%s\n"                                                                                                   \
    "wll = 1 kN\n[load crate]\nat = 2 m\nweight = 100 N\n[load weight]\nat = 1 m\nweight = %s\n"             \
    "[hand crew]\nat = 4 m\n[rope balance]\npath = crate, wheel, weight\nwll = 1 kN\n"                       \
    "[rope lift]\npath = crate, crew\nwll = 1 kN\n"

static void lower_that_cannot_be_is_no_verdict(void **state)
{
    (void)state;
    rated rig = rate_sound(BALANCE, "", "90 %", "95 N");
    assert_false(gtl_sheet_outcome(&rig.sheet, GTL_LOWER)->possible);
    assert_true(strlen(gtl_sheet_outcome(&rig.sheet, GTL_LOWER)->reason) > 0);
    assert_int_equal(rig.sheet.verdict, GTL_WITHIN);
    assert_int_equal(rig.sheet.why, 0);
    rated_end(&rig);
}

static void hold_that_cannot_be(void **state)
{
    (void)state;
    rated rig = rate_sound(BALANCE, "", "90 %", "105 N");
    assert_false(gtl_sheet_outcome(&rig.sheet, GTL_HOLD)->possible);
    assert_int_equal(rig.sheet.verdict, GTL_UNRATED);
    assert_true(rig.sheet.why & GTL_WHY_HOLD_IMPOSSIBLE);
    rated_end(&rig);
}

/* A turn round a ring on the load, under the hand. */
#define JAM                                                                                                  \
    "[rig]\ncases = %s\n[anchor top]\nat = 5 m\nwll = 9 kN\n[block head]\non = top\nefficiency = 95 %%\n"    \
    "wll = 9 kN\n[load crate]\nat = 2 m\nweight = 100 N\n[fairlead ring]\non = crate\nfriction = 0.12\n"     \
    "turns = 1\nwll = 9 kN\n[hand crew]\nat = 0.5 m\n[rope fall]\npath = crate, head, ring, crew\n"          \
    "wll = 9 kN\n"

static void raise_that_cannot_be(void **state)
{
    (void)state;
    rated rig = rate_sound(JAM, "raise, lower");
    assert_false(gtl_sheet_outcome(&rig.sheet, GTL_RAISE)->possible);
    assert_int_equal(rig.sheet.verdict, GTL_UNRATED);
    assert_int_equal(rig.sheet.why, GTL_WHY_RAISE_IMPOSSIBLE);
    rated_end(&rig);
    rig = rate_sound(JAM, "lower");
    assert_int_equal(rig.sheet.verdict, GTL_WITHIN);
    rated_end(&rig);
}

static void known_pull_against_its_limit(void **state)
{
    (void)state;
    static const char text[] =
        "[anchor beam]\nat = 4 m\nwll = 1 kN\n[load crate]\nat = 1 m\nweight = 200 N\n"
        "[hand helper]\nat = 3 m\npull = 60 N\nlimit = %s\n[rope help]\n"
        "path = crate, helper\nwll = 1 kN\n[sling leg]\npath = beam, crate\nwll = 1 kN\n";
    rated rig = rate_sound(text, "60 N");
    assert_int_equal(rig.sheet.verdict, GTL_WITHIN);
    assert_close(demand_of(&rig, "beam"), 140);
    rated_end(&rig);
    rig = rate_sound(text, "59 N");
    assert_int_equal(component_of(&rig, "helper")->mark, GTL_MARK_OVER);
    assert_int_equal(rig.sheet.verdict, GTL_OVER);
    rated_end(&rig);
}

static void no_answer_has_a_reason(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("[anchor beam]\nat = 4 m\n[load crate]\nat = 1 m\nweight = 200 N\n"
                              "[sling one]\npath = beam, crate\n[sling two]\npath = beam, crate\n");
    gtl_sheet sheet;
    assert_int_equal(gtl_rate(rig, &sheet), GTL_NO_ANSWER);
    assert_non_null(strstr(sheet.reason, "share"));
    assert_int_equal(sheet.blame, 6);
    gtl_sheet_end(&sheet);
    gtl_rig_free(rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(smaller_of_wll_and_strength),
        cmocka_unit_test(push_is_no_pull),
        cmocka_unit_test(own_design_factor),
        cmocka_unit_test(efficiency_of_raising),
        cmocka_unit_test(loaded_to_its_rating),
        cmocka_unit_test(idle_is_not_unrated),
        cmocka_unit_test(each_rule_of_the_verdict),
        cmocka_unit_test(governing_cases),
        cmocka_unit_test(a_hand_without_limit_is_no_component),
        cmocka_unit_test(lower_that_cannot_be_is_no_verdict),
        cmocka_unit_test(hold_that_cannot_be),
        cmocka_unit_test(raise_that_cannot_be),
        cmocka_unit_test(known_pull_against_its_limit),
        cmocka_unit_test(no_answer_has_a_reason),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
