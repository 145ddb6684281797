/* test_drop.c - a load that is caught after a fall: against closed forms, against the energy that its lines
 * hold at the peak, and as its figures have to move. Scenes and figures are invented. */
#include "unit/failing_rating.h"
#include "unit/lost.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const gtl_outcome *drop_of(const rated *rig)
{
    return possible_outcome(rig, "drop");
}

static const gtl_drop *caught_in(const rated *rig)
{
    return drop_of(rig)->caught;
}

/* ---- what a fall of 0 is ---- */

/* Twice the weight, to the last bit, and every force twice that at rest. */
static void let_go_at_once(void **state)
{
    (void)state;
    static const char *const ropes[] = {"1 % at 9 kN", "25 % at 300 N"};
    for (size_t i = 0; i < sizeof ropes / sizeof *ropes; i++) {
        rated rig =
            rate_sound("[rig]\ncases = drop\n[anchor west]\nat = 0 m, 6 m\n[anchor east]\nat = 5 m, 5 m\n"
                       "[joint apex]\nat = 2 m, 4 m\n[load log]\nat = 2 m, 2 m\nweight = 700 N\n"
                       "fall = 0 m\n[sling a]\npath = west, apex\n[sling b]\npath = apex, east\n"
                       "[rope line]\npath = apex, log\nstretch = %s\n",
                       ropes[i]);
        assert_true(caught_in(&rig)->peak == 1400);
        for (int k = 0; k < 3; k++)
            assert_close(tension_in(&rig, "drop", k, 0), 2 * tension_in(&rig, "hold", k, 0));
        assert_close(demand_in(&rig, "drop", "west"), 2 * demand_in(&rig, "hold", "west"));
        rated_end(&rig);
    }
}

/* ---- a tackle of ratio r: k = r^2 EA / L ---- */

/* A path over `parts` parts between two blocks, from the beam or from the load, and to a hand below. */
static void tackle_path(int parts, char path[200])
{
    strcpy(path, parts % 2 == 0 ? "beam" : "low");
    for (int i = parts; i > 0; i--) strcat(path, i % 2 == 0 ? ", low" : ", high");
    strcat(path, ", crew");
}

static void tackles(void **state)
{
    (void)state;
    for (int parts = 1; parts <= 6; parts++) {
        char path[200];
        tackle_path(parts, path);
        rated rig = rate_sound("[rig]\ncases = drop\nefficiency = 100 %%\n[anchor beam]\nat = 8 m\n"
                               "[anchor post]\nat = 7.9 m\n[block high]\non = post\n[block low]\nat = 2 m\n"
                               "[load log]\non = low\nweight = 900 N\nfall = 1.25 m\n[hand crew]\nat = 1 m\n"
                               "[rope line]\npath = %s\nstretch = 4 %% at 2 kN\n",
                               path);
        double length = (parts % 2 == 0 ? 6 : 5.9) + (parts - 1) * 5.9 + 6.9;
        double stiffness = parts * parts * 2000 / 0.04 / length;
        assert_close(caught_in(&rig)->lines[0].elastic, length);
        assert_close(caught_in(&rig)->stiffness, stiffness);
        assert_close(caught_in(&rig)->peak, 900 * (1 + sqrt(1 + 2 * 1.25 * stiffness / 900)));
        assert_close(tension_in(&rig, "drop", 0, 0), caught_in(&rig)->peak / parts);
        assert_close(caught_in(&rig)->fall_factor, 1.25 / length);
        assert_close(caught_in(&rig)->checked, caught_in(&rig)->peak / 0.7); /* no friction */
        rated_end(&rig);
    }
}

/* ---- what the lines hold at the peak is what the load has lost ---- */

/* Energy in a part that is pulled with T: T^2 L / (2 EA), of its length at rest. Weights at rest are none. */
static double held_energy(const rated *rig)
{
    const gtl_outcome *drop = drop_of(rig);
    double sum = 0;
    for (int p = 0; p < rig->rig->part_count; p++) {
        const gtl_part *part = &rig->rig->parts[p];
        const gtl_line *line = &rig->rig->lines[part->line];
        const double *from = drop->state->at + 3 * rig->rig->things[rig->rig->stops[part->from].thing].node;
        const double *to = drop->state->at + 3 * rig->rig->things[rig->rig->stops[part->to].thing].node;
        double length = hypot(hypot(to[0] - from[0], to[1] - from[1]), to[2] - from[2]);
        double tension = drop->state->tension[p];
        if (line->stretch > 0) sum += tension * tension * length * line->stretch / line->stretch_force / 2;
    }
    return sum;
}

static void energy(void **state)
{
    (void)state;
    static const char *const scenes[] = {
        "[anchor a]\nat = 0 m, 6 m\n[anchor b]\nat = 5 m, 5 m\n[joint apex]\nat = 2 m, 4 m\n"
        "[load log]\nat = 2 m, 2 m\nweight = 700 N\nfall = 0.6 m\n[sling sa]\npath = a, apex\n"
        "stretch = 2 % at 3 kN\n[sling sb]\npath = apex, b\nstretch = 9 % at 1 kN\n[rope line]\n"
        "path = apex, log\nstretch = 5 % at 2 kN\n",
        "[anchor a]\nat = 0 m, 0 m, 6 m\n[anchor b]\nat = 4 m, 0 m, 6 m\n[anchor c]\nat = 1 m, 4 m, 5 m\n"
        "[load log]\nat = 1.5 m, 1 m, 2 m\nweight = 400 N\nfall = 2 m\n[rope ra]\npath = a, log\n"
        "stretch = 2 % at 3 kN\n[rope rb]\npath = b, log\n[rope rc]\npath = c, log\nstretch = 7 % at 1 kN\n",
        "[anchor a]\nat = 0 m, 6 m\n[anchor b]\nat = 3 m, 5 m\n[block tail]\nat = 1 m, 3 m\nefficiency = 100 "
        "%\n"
        "[load log]\non = tail\nweight = 1 kN\nfall = 0.3 m\n[rope line]\npath = a, tail, b\n"
        "stretch = 3 % at 2 kN\n",
    };
    for (size_t i = 0; i < sizeof scenes / sizeof *scenes; i++) {
        rated rig = rate_sound("[rig]\ncases = drop\n%s", scenes[i]);
        const gtl_drop *caught = caught_in(&rig);
        assert_close(held_energy(&rig), caught->weight * (caught->fall + caught->give));
        assert_false(caught->shifts);
        rated_end(&rig);
    }
}

/* ---- the holding point ---- */

#define LOWERED                                                                                              \
    "[rig]\ncases = drop\n[anchor stem]\nat = 0.4 m, 9 m\n[anchor butt]\nat = 0.2 m, 1 m\n"                  \
    "[block lead]\non = stem\nefficiency = %s\n[fairlead post]\non = butt\nfriction = 0.2\nturns = %d\n"     \
    "[load log]\nat = 0.4 m, 7 m\nweight = 500 N\nfall = 2 m\nrun = %s\n[hand crew]\nat = 4 m, 1 m\n%s"      \
    "[rope line]\npath = log, lead, post, crew\nstretch = 3 %% at %s\n"

static void holding_point(void **state)
{
    (void)state;
    rated made_fast = rate_sound(LOWERED, "100 %", 1, "3 m", "", "9 kN");
    rated led_on = rate_sound(LOWERED, "100 %", 0, "3 m", "", "9 kN");
    double to_post = 2 + hypot(0.2, 8);
    assert_close(caught_in(&made_fast)->lines[0].elastic, to_post);
    assert_close(caught_in(&led_on)->lines[0].elastic, to_post + 3.8);
    assert_close(caught_in(&made_fast)->stiffness, 9000 / 0.03 / to_post);
    assert_true(caught_in(&made_fast)->peak > caught_in(&led_on)->peak);
    /* Behind the turns nobody knows; without them the hand has all of it. */
    assert_true(caught_in(&made_fast)->let_out == thing_of(made_fast.rig, "crew"));
    assert_true(made_fast.sheet.why & GTL_WHY_CATCHING_HAND);
    assert_true(isnan(gtl_outcome_pull(drop_of(&made_fast), thing_of(made_fast.rig, "crew"))));
    assert_true(caught_in(&led_on)->let_out == -1);
    assert_close(gtl_outcome_pull(drop_of(&led_on), thing_of(led_on.rig, "crew")), caught_in(&led_on)->peak);
    rated_end(&made_fast);
    rated_end(&led_on);
}

/* Friction at the lead keeps from the rope beyond it what it can: 1/k = (L1 + e L2) stretch / force, where
 * the rope turns by half a turn, and here nearly so. */
static void friction_stiffens(void **state)
{
    (void)state;
    rated rig = rate_sound(LOWERED, "80 %", 1, "3 m", "", "9 kN");
    const gtl_drop *caught = caught_in(&rig);
    double wanted = 9000 / 0.03 / (2 + 0.8 * hypot(0.2, 8));
    assert_true(fabs(caught->held / wanted - 1) < 1e-4);
    assert_close(caught->stiffness, 9000 / 0.03 / (2 + hypot(0.2, 8)));
    assert_close(caught->checked, 500 * (1 + sqrt(1 + 4 * caught->held / 500)) / 0.7);
    assert_close(demand_of(&rig, "line"), caught->checked);
    assert_close(demand_in(&rig, "drop", "line"), caught->peak);
    rated_end(&rig);
}

/* A post that the rope is led straight by feels nothing of equal tensions, and all of it where it holds. */
static void post_in_line(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = drop\n[anchor butt]\nat = 5 m\n[fairlead post]\non = butt\n"
                   "friction = 0.2\nturns = 3\n[load log]\nat = 3 m\nweight = 500 N\nfall = 0 m\n"
                   "[hand crew]\nat = 10 m\n[rope line]\npath = log, post, crew\nstretch = 3 %% at 8 kN\n");
    double left = exp(-0.2 * 6 * 3.14159265358979323846);
    assert_close(demand_in(&rig, "drop", "post"), 1000 * (1 - left));
    assert_close(demand_of(&rig, "butt"), 1000 / 0.7 * (1 - left));
    rated_end(&rig);
}

/* ---- how figures move ---- */

static double peak_with(const char *stretch, const char *fall, double *checked)
{
    rated rig = rate_sound("[rig]\ncases = drop\n[anchor beam]\nat = 0 m, 8 m\n[anchor butt]\nat = 1 m, 0 m\n"
                           "[block lead]\non = beam\nefficiency = 85 %%\n[load log]\nat = 0 m, 5 m\n"
                           "weight = 600 N\nfall = %s\n[rope line]\npath = log, lead, butt\nstretch = %s\n",
                           fall, stretch);
    double peak = caught_in(&rig)->peak;
    *checked = caught_in(&rig)->checked;
    rated_end(&rig);
    return peak;
}

static void more_of_it(void **state)
{
    (void)state;
    static const char *const stretches[] = {"0.1 % at 2 kN", "1 % at 2 kN", "3 % at 2 kN", "3 % at 1 kN",
                                            "30 % at 2 kN"};
    static const char *const falls[] = {"0 m", "1 mm", "0.5 m", "2 m", "20 m"};
    for (int f = 0; f < 5; f++) {
        double before = INFINITY, before_checked = INFINITY, checked;
        for (int s = 0; s < 5; s++) { /* more stretch never raises the peak */
            double peak = peak_with(stretches[s], falls[f], &checked);
            assert_true(peak <= before && checked <= before_checked);
            assert_true(peak >= 1200 && checked >= peak / 0.7 * (1 - 1e-12));
            before = peak;
            before_checked = checked;
        }
    }
    for (int s = 0; s < 5; s++) {
        double before = 0, checked;
        for (int f = 0; f < 5; f++) { /* nor does a shorter fall */
            double peak = peak_with(stretches[s], falls[f], &checked);
            assert_true(peak > before);
            before = peak;
        }
    }
}

/* ---- what is not known never reads well ---- */

/* All parts rated well enough; only what is added or changed speaks against it. */
static rated rate_strong(const char *stretch, const char *extra)
{
    return rate_sound(
        "[rig]\ncases = drop\n[anchor beam]\nat = 0 m, 8 m\nwll = 90 kN\n[load log]\n"
        "at = 0 m, 5 m\nweight = 600 N\nfall = 1 m\n[rope line]\npath = beam, log\nwll = 90 kN\n"
        "stretch = %s\n%s",
        stretch, extra);
}

static void doubts(void **state)
{
    (void)state;
    rated plain = rate_strong("10 % at 9 kN", "");
    rated beyond = rate_strong("10 % at 1 kN", "");
    rated aside = rate_strong("10 % at 9 kN", "[hand tag]\nat = 9 m, 5 m\npull = 40 N\n[rope side]\n"
                                              "path = log, tag\nwll = 90 kN\n");
    assert_int_equal(plain.sheet.verdict, GTL_WITHIN);
    assert_int_equal(beyond.sheet.verdict, GTL_UNRATED);
    assert_int_equal(beyond.sheet.why, GTL_WHY_STRETCH);
    assert_int_equal(aside.sheet.verdict, GTL_UNRATED);
    assert_int_equal(aside.sheet.why, GTL_WHY_CATCH);
    assert_true(caught_in(&aside)->shifts);
    rated_end(&plain);
    rated_end(&beyond);
    rated_end(&aside);
}

/* The line that states its stretch carries nothing of the load: there is no peak, and no case. */
static void nothing_gives(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = drop\n[anchor beam]\nat = 8 m\nwll = 90 kN\n[load log]\nat = 5 m\n"
                   "weight = 600 N\nfall = 1 m\n[rope line]\npath = beam, log\nwll = 90 kN\n"
                   "[sling spare]\npath = beam, log\nlength = 9 m\nwll = 90 kN\nstretch = 3 %% at 2 kN\n");
    const gtl_outcome *drop = outcome_of(&rig, "drop");
    assert_false(drop->possible);
    assert_non_null(strstr(drop->reason, "nothing that states its stretch"));
    assert_int_equal(rig.sheet.verdict, GTL_UNRATED);
    assert_true(rig.sheet.why & GTL_WHY_CASE_IMPOSSIBLE);
    rated_end(&rig);
}

/* All that sits on the load falls with it. */
static void falls_along(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = drop\n[anchor beam]\nat = 8 m\n[load log]\nat = 5 m\nweight = 600 N\n"
                   "fall = 1 m\n[joint eye]\non = log\nweight = 100 N\n[rope line]\npath = beam, eye\n"
                   "stretch = 3 %% at 20 kN\n");
    assert_close(caught_in(&rig)->weight, 700);
    assert_close(caught_in(&rig)->peak, 700 * (1 + sqrt(1 + 2 * (20000 / 0.03 / 3) / 700)));
    assert_close(tension_in(&rig, "drop", 0, 0), caught_in(&rig)->peak);
    rated_end(&rig);
}

/* ---- memory that fails ---- */

static void memory(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound(LOWERED, "80 % .. 90 %", 1, "3 m", "limit = 300 N\n", "9 kN");
    long allowed = 0;
    while (!rates_with(rig, allowed)) allowed++;
    assert_true(allowed > 200);
    gtl_rig_free(rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(let_go_at_once), cmocka_unit_test(tackles),      cmocka_unit_test(energy),
        cmocka_unit_test(holding_point),  cmocka_unit_test(post_in_line), cmocka_unit_test(friction_stiffens),
        cmocka_unit_test(more_of_it),     cmocka_unit_test(doubts),       cmocka_unit_test(nothing_gives),
        cmocka_unit_test(falls_along),    cmocka_unit_test(memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
