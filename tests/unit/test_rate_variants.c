/* test_rate_variants.c - undecided stops, several places, and what a length does: the worst of all that may
 * be. */
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static bool warns(const rated *rig, gtl_warning_code code, const char *about)
{
    for (int i = 0; i < rig->sheet.warning_count; i++)
        if (rig->sheet.warnings[i].code == code && strcmp(rig->sheet.warnings[i].about, about) == 0)
            return true;
    return false;
}

/* ---- undecided stops ---- */

/* A crate in the bight of a rope over a block that is hoisted: no rope runs over that block. */
static void bight_that_does_not_run(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[anchor beam]\nat = 6 m\n[block tail]\nat = 4 m\nweight = 20 N\nefficiency = 90 %%\n"
                   "[block saddle]\nat = 3 m\nefficiency = 80 %%\n[load crate]\nat = 1 m\nweight = 180 N\n"
                   "[hand crew]\nat = 5 m\n[rope fall]\npath = beam, tail, crew\n"
                   "[sling link]\npath = tail, saddle\n[rope bight]\npath = crate, saddle, crate\n");
    const gtl_outcome *hold = gtl_sheet_outcome(&rig.sheet, GTL_HOLD);
    const gtl_outcome *raise = gtl_sheet_outcome(&rig.sheet, GTL_RAISE);
    assert_int_equal(hold->variants, 1);
    assert_int_equal(raise->variants, 3);
    assert_true(raise->every_combination);
    int part = rig.rig->lines[2].first_part;
    assert_close(raise->state->tension[part], 90); /* printed: equal */
    assert_close(raise->state->tension[part + 1], 90);
    assert_close(demand_of(&rig, "bight"), 100); /* demanded: 80 and 100 add up to 180 */
    assert_int_equal(rig.sheet.outcomes[component_of(&rig, "bight")->governing].kind, GTL_RAISE);
    assert_close(demand_of(&rig, "saddle"), 180);
    assert_true(warns(&rig, GTL_WARN_UNDECIDED, "saddle"));
    assert_false(warns(&rig, GTL_WARN_UNDECIDED, "tail"));
    rated_end(&rig);
}

static void without_a_hand_every_stop_is_undecided(void **state)
{
    (void)state;
    static const char text[] =
        "[anchor left]\nat = 4 m\n[anchor right]\nat = 5 m\n[block tail]\nat = 1 m\n%s\n"
        "[load crate]\non = tail\nweight = 180 N\n[rope bight]\npath = left, tail, right\n";
    rated rig = rate_sound(text, "efficiency = 80 %");
    assert_int_equal(rig.sheet.outcome_count, 1);
    assert_int_equal(rig.sheet.outcomes[0].variants, 3);
    assert_close(demand_of(&rig, "bight"), 100);
    assert_close(demand_of(&rig, "left"), 100); /* each is the greater one once */
    assert_close(demand_of(&rig, "right"), 100);
    assert_true(warns(&rig, GTL_WARN_UNDECIDED, "tail"));
    rated_end(&rig);
    rig = rate_sound(text, "efficiency = 100 %");
    assert_int_equal(rig.sheet.outcomes[0].variants, 1);
    assert_close(demand_of(&rig, "bight"), 90);
    assert_false(warns(&rig, GTL_WARN_UNDECIDED, "tail"));
    rated_end(&rig);
}

/* A rope from a beam round the load's block and over fixed ones to a beam: one undecided stop, and `fixed`
 * more. */
static rated zigzag(int fixed)
{
    static const char *const stops[] = {"", ", top-1", ", top-1, foot-1", ", top-1, foot-1, top-2",
                                        ", top-1, foot-1, top-2, foot-2"};
    return rate_sound(
        "[rig]\nefficiency = 80 %%\n[anchor left]\nat = 4 m\n[anchor right]\nat = 2 m\n[block tail]\n"
        "at = 1 m\n[load crate]\non = tail\nweight = 180 N\n"
        "[anchor beam]\nat = 4 m\n[anchor floor]\nat = 0 m\n"
        "[block top-1]\non = beam\n[block top-2]\non = beam\n[block foot-1]\non = floor\n"
        "[block foot-2]\non = floor\n[rope line]\npath = left, tail%s, right\n",
        stops[fixed]);
}

static void four_stops_in_every_combination(void **state)
{
    (void)state;
    rated rig = zigzag(3);
    assert_int_equal(rig.sheet.outcomes[0].variants, 81);
    assert_true(rig.sheet.outcomes[0].every_combination);
    assert_false(warns(&rig, GTL_WARN_NOT_EVERY_COMBINATION, ""));
    /* The tension rises all the way: t (1 + 1/0.8) = 180 at the block, then over three stops more. */
    assert_close(demand_of(&rig, "line"), 180 / 1.8 / (0.8 * 0.8 * 0.8));
    rated_end(&rig);
}

static void five_stops_each_alone_and_all_one_way(void **state)
{
    (void)state;
    rated rig = zigzag(4);
    assert_int_equal(rig.sheet.outcomes[0].variants, 1 + 2 * (5 + 1));
    assert_false(rig.sheet.outcomes[0].every_combination);
    assert_true(warns(&rig, GTL_WARN_NOT_EVERY_COMBINATION, ""));
    assert_close(demand_of(&rig, "line"), 180 / 1.8 / (0.8 * 0.8 * 0.8 * 0.8));
    assert_close(demand_of(&rig, "left"), 100); /* the tension falls along the way, at the block at least */
    rated_end(&rig);
}

/* ---- several places ---- */

/* A post that level pulls hold leaning either way; the right one is stronger by very little. */
static const char leaning[] =
    "[anchor foot]\nat = 0 m, 0 m\n[load head]\nat = 0.1 m, 2 m\nweight = 200 N\n"
    "[spar post]\npath = foot, head\n[hand west]\nat = -1 m, 2 m\npull = 20 kN\n"
    "[rope left-guy]\npath = head, west\n[hand east]\nat = 1 m, 2 m\npull = 20.001 kN\n"
    "[rope right-guy]\npath = head, east\n";

static double post_tension(const gtl_rig *rig, gtl_state *state, const double *begin)
{
    gtl_case which = {.kind = GTL_HOLD, .begin = begin};
    assert_int_equal(gtl_solve(rig, &which, state), GTL_OK);
    return state->tension[rig->lines[0].first_part];
}

static void every_place_is_rated(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", leaning);
    const gtl_outcome *hold = gtl_sheet_outcome(&rig.sheet, GTL_HOLD);
    int node = rig.rig->things[thing_of(rig.rig, "head")].node;
    assert_int_equal(hold->places, 2);
    assert_int_equal(hold->variants, 2);
    assert_true(warns(&rig, GTL_WARN_SEVERAL_PLACES, ""));
    assert_true(hold->state->at[3 * node] > 0.1); /* the one nearer the drawing is printed */

    gtl_state *other = gtl_state_new(rig.rig);
    double begin[12];
    assert_true(3 * (size_t)rig.rig->node_count <= sizeof begin / sizeof *begin);
    memcpy(begin, hold->state->at, 3 * (size_t)rig.rig->node_count * sizeof *begin);
    double here = post_tension(rig.rig, other, begin);
    begin[3 * node] = -begin[3 * node];
    double there = post_tension(rig.rig, other, begin);
    assert_true(other->at[3 * node] < 0);
    assert_true(fabs(here - there) > 1);
    int post = (int)(component_of(&rig, "post") - rig.sheet.components);
    assert_close(hold->demand[post], fmax(0, fmax(here, there)));
    assert_close(hold->push[post], fmax(0, fmax(-here, -there)));
    gtl_state_free(other);
    rated_end(&rig);
}

/* A post that is drawn leaning onto one of two guys, each a little longer than it needs upright: it stays
 * there, and may lean onto the other. */
static void the_guy_that_is_drawn_taut(void **state)
{
    (void)state;
    const double lengths[] = {1.10, 1.12, 1.15};
    for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++) {
        rated rig =
            rate_sound("[anchor foot]\nat = 0 m, 0 m\n[anchor west]\nat = -1 m, 2.2 m\n[anchor east]\n"
                       "at = 1 m, 2.2 m\n[load head]\nat = 0.1 m, 2 m\nweight = 200 N\n[spar post]\n"
                       "path = foot, head\n[sling left-guy]\npath = west, head\nlength = 1.12 m\n"
                       "[sling right-guy]\npath = east, head\nlength = %g m\n",
                       lengths[i]);
        const gtl_outcome *hold = gtl_sheet_outcome(&rig.sheet, GTL_HOLD);
        int head = rig.rig->things[thing_of(rig.rig, "head")].node;
        assert_true(hold->state->at[3 * head] > 0.1 && hold->state->at[3 * head] < 0.11);
        assert_int_equal(hold->places, 2);
        assert_true(demand_of(&rig, "left-guy") > 0);
        assert_true(demand_of(&rig, "right-guy") > 0);
        rated_end(&rig);
    }
}

/* ---- lengths ---- */

/* Unlike legs of a bridle; each is stated, `more` longer than it needs. */
static double greatest_tension(double longer_one, double longer_two)
{
    rated rig =
        rate_sound("[anchor left]\nat = 0 m, 4 m\n[anchor right]\nat = 5 m, 4.5 m\n[load crate]\n"
                   "at = 2 m, 3.2 m\nweight = 200 N\n[sling one]\npath = left, crate\nlength = %.9f m\n"
                   "[sling two]\npath = right, crate\nlength = %.9f m\n",
                   2.2 * (1 + longer_one), 3.3 * (1 + longer_two));
    double most = fmax(demand_of(&rig, "one"), demand_of(&rig, "two"));
    rated_end(&rig);
    return most;
}

static void sensitivity_to_length(void **state)
{
    (void)state;
    gtl_rig *rig =
        read_sound("[anchor left]\nat = 0 m, 4 m\n[anchor right]\nat = 5 m, 4.5 m\n[load crate]\n"
                   "at = 2 m, 3.2 m\nweight = 200 N\n[sling one]\npath = left, crate\nlength = 2.2 m\n"
                   "[sling two]\npath = right, crate\nlength = 3.3 m\n");
    gtl_state *solved = gtl_state_new(rig);
    assert_int_equal(gtl_solve(rig, &(gtl_case){.kind = GTL_HOLD}, solved), GTL_OK);
    int line;
    double share = gtl_length_sensitivity(rig, solved, &line);
    double most = greatest_tension(0, 0);
    double by_one = fabs(greatest_tension(1e-5, 0) - greatest_tension(-1e-5, 0)) / 2e-5 * 0.01 / most;
    double by_two = fabs(greatest_tension(0, 1e-5) - greatest_tension(0, -1e-5)) / 2e-5 * 0.01 / most;
    assert_int_equal(line, by_one > by_two ? 0 : 1);
    assert_float_equal((float)share, (float)fmax(by_one, by_two), 1e-4f);
    gtl_state_free(solved);
    gtl_rig_free(rig);
}

static void weights_on_one_line_are_not_sensitive(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("[anchor beam]\nat = 4 m\n[load crate]\nat = 1 m\nweight = 200 N\n"
                              "[sling leg]\npath = beam, crate\n");
    gtl_state *solved = gtl_state_new(rig);
    assert_int_equal(gtl_solve(rig, &(gtl_case){.kind = GTL_HOLD}, solved), GTL_OK);
    int line;
    assert_true(gtl_length_sensitivity(rig, solved, &line) < 1e-9);
    gtl_state_free(solved);
    gtl_rig_free(rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bight_that_does_not_run),
        cmocka_unit_test(without_a_hand_every_stop_is_undecided),
        cmocka_unit_test(four_stops_in_every_combination),
        cmocka_unit_test(five_stops_each_alone_and_all_one_way),
        cmocka_unit_test(every_place_is_rated),
        cmocka_unit_test(the_guy_that_is_drawn_taut),
        cmocka_unit_test(sensitivity_to_length),
        cmocka_unit_test(weights_on_one_line_are_not_sensitive),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
