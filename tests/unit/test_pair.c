/* test_pair.c - two hands of which one is let go, and arbors: which hand pulls in which case, what a jam and
 * a loss make of them, what is told of the balance; with memory that fails as well. */
#include "rig/other.h"
#include "unit/failing_memory.h"
#include "unit/failing_rating.h"
#include "unit/rated.h"

#include <gantline/report.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* A single purchase set with heights alone: what is to be said under [rig], masses, what else. */
#define SET                                                                                                  \
    "[rig]\nefficiency = 97 %%\n%s\n[anchor grid]\nat = 9 m\nwll = 9 kN\n[anchor floor]\nat = 0 m\nwll = 9 " \
    "kN\n[block head]\non = grid\nwll = 9 kN\n[block foot]\non = floor\nwll = 9 kN\n"                        \
    "[load batten]\nat = 2 m\nmass = %g kg\n[arbor frame]\nat = 6 m\nmass = %g kg\neach = 6 kg\n"            \
    "[rope lift]\npath = batten, head, frame\nmbs = 40 kN\ndesign factor = 8\n"                              \
    "[rope front]\npath = frame, head, down\nmbs = 16 kN\ndesign factor = 8\n"                               \
    "[rope back]\npath = frame, foot, up\nmbs = 16 kN\ndesign factor = 8\n"                                  \
    "[hand down]\nat = 1.5 m\nlimit = 250 N\nor = up\n[hand up]\nat = 1.2 m\nlimit = 300 N\n"

static const gtl_outcome *outcome_of(const rated *rig, gtl_case_kind kind)
{
    const gtl_outcome *outcome = gtl_sheet_outcome(&rig->sheet, kind);
    assert_non_null(outcome);
    return outcome;
}

static const char *puller(const rated *rig, gtl_case_kind kind)
{
    const gtl_outcome *outcome = outcome_of(rig, kind);
    assert_true(outcome->possible);
    return outcome->rig->things[outcome->rig->hand].name;
}

static double demand_in(const rated *rig, const gtl_outcome *outcome, gtl_kind kind, const char *name)
{
    for (int i = 0; i < rig->sheet.component_count; i++)
        if (rig->sheet.components[i].kind == kind && !strcmp(rig->sheet.components[i].name, name))
            return outcome->demand[i];
    fail();
    return NAN;
}

/* As read the first hand is worked out; the other rig has it the other way round, and back again. */
static void roles(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound(SET, "", 100.0, 98.0);
    gtl_rig *other = gtl_rig_other(rig);
    gtl_rig *back = gtl_rig_other(other);
    assert_true(gtl_rig_is_paired(rig));
    assert_string_equal(rig->things[rig->hand].name, "down");
    assert_string_equal(other->things[other->hand].name, "up");
    assert_int_equal(back->hand, rig->hand);
    assert_int_equal(back->driven, rig->driven);
    assert_true(other->things[rig->hand].let_go && !other->things[other->hand].let_go);
    assert_true(other->things[rig->hand].pull == 0 && isnan(other->things[other->hand].pull));
    assert_int_equal(other->pieces[other->driven].hand, other->hand);
    assert_int_equal(other->pieces[rig->driven].rule, GTL_PULLED);
    gtl_rig_free(back);
    gtl_rig_free(other);
    gtl_rig_free(rig);
}

/* 2 kg too heavy, and friction of more: held and raised from one side, lowered from the other. */
static void each_case_by_itself(void **state)
{
    (void)state;
    rated light = rate_sound(SET, "cases = all\nacceleration = 0.1 m/s2", 100.0, 98.0);
    assert_string_equal(puller(&light, GTL_HOLD), "up");
    assert_string_equal(puller(&light, GTL_RAISE), "up");
    assert_string_equal(puller(&light, GTL_LOWER), "down");
    assert_true(fabs(outcome_of(&light, GTL_HOLD)->state->effort - 2 * 9.80665) < 1e-9);
    assert_int_equal(light.sheet.verdict, GTL_WITHIN);
    assert_true(outcome_of(&light, GTL_LOWER)->velocity_ratio < 0);
    /* The lift line leaves 0.97 of the batten at the arbor, and the hand line costs as much again. */
    assert_close(outcome_of(&light, GTL_LOWER)->state->effort, (98 - 0.97 * 100) / 0.97 * 9.80665);
    rated_end(&light);
    /* 10 kg too light: the arbor lifts it, and down holds it back; braking takes a pull as well. */
    rated heavy = rate_sound(SET, "cases = all\nacceleration = 0.3 m/s2", 90.0, 100.0);
    for (int kind = GTL_HOLD; kind <= GTL_STOP; kind++)
        if (kind != GTL_JAM) assert_string_equal(puller(&heavy, (gtl_case_kind)kind), "down");
    double hold = outcome_of(&heavy, GTL_HOLD)->state->effort;
    assert_true(outcome_of(&heavy, GTL_RAISE)->state->effort < hold);
    assert_true(outcome_of(&heavy, GTL_LOWER)->state->effort > hold);
    assert_true(outcome_of(&heavy, GTL_STOP)->state->effort < hold); /* inertia brakes too */
    rated_end(&heavy);
}

/* Each pulls all that it can, the other nothing: both their ropes feel it. */
static void jam(void **state)
{
    (void)state;
    const double arbors[] = {98, 100, 120};
    for (int i = 0; i < 3; i++) {
        rated rig = rate_sound(SET, "cases = all", 100.0, arbors[i]);
        const gtl_outcome *jam = outcome_of(&rig, GTL_JAM);
        assert_true(jam->possible);
        assert_true(demand_in(&rig, jam, GTL_ROPE, "lift") > arbors[i] * 9.8 + 300);
        assert_true(demand_in(&rig, jam, GTL_ROPE, "back") >= 300 - 1e-9);
        assert_true(demand_in(&rig, jam, GTL_ROPE, "front") >= 250 - 1e-9);
        assert_true(demand_in(&rig, jam, GTL_ROPE, "back") < 300 * 1.05);
        assert_true(demand_in(&rig, jam, GTL_ROPE, "front") < 250 * 1.05);
        assert_true(demand_in(&rig, jam, GTL_ANCHOR, "floor") < 600 * 1.05); /* never both at once there */
        rated_end(&rig);
    }
}

/* What held goes on holding, and nobody else takes hold. In balance the worse of both counts. */
static void losses(void **state)
{
    (void)state;
    rated held = rate_sound(SET, "cases = hold, lost front", 100.0, 98.0);
    const gtl_outcome *lost = outcome_of(&held, GTL_LOST);
    assert_true(lost->possible);
    double pull = gtl_hand_pull(lost->rig, lost->state, thing_of(held.rig, "up"));
    assert_close(pull, 2 * 2 * 9.80665); /* times 2 */
    rated_end(&held);
    rated dropped = rate_sound(SET, "cases = hold, lost front", 98.0, 100.0);
    assert_false(outcome_of(&dropped, GTL_LOST)->possible);
    assert_int_equal(dropped.sheet.verdict, GTL_UNRATED);
    rated_end(&dropped);
    rated level = rate_sound(SET, "cases = hold, lost front", 100.0, 100.0);
    assert_false(outcome_of(&level, GTL_LOST)->possible);
    rated_end(&level);
    /* In balance by a third hand: once that is lost the arbor sinks, and who says that `down` holds it? */
    level = rate_sound(SET "[hand aid]\nat = 1 m\npull = 49.03325 N\n[rope spare]\npath = frame, head, aid\n",
                       "cases = hold, lost spare", 100.0, 105.0);
    assert_string_equal(puller(&level, GTL_HOLD), "down");
    assert_false(outcome_of(&level, GTL_LOST)->possible);
    rated_end(&level);
    rated falls = rate_sound(SET, "cases = hold, lost back, lost lift", 100.0, 98.0);
    assert_true(falls.sheet.why & GTL_WHY_LOAD_FALLS);
    rated_end(&falls);
}

/* An arbor that falls is told as a load that does. */
static void arbor_falls(void **state)
{
    (void)state;
    rated rig = rate_sound(SET, "cases = hold, lost lift", 100.0, 98.0);
    bool told = false;
    for (int i = 0; i < rig.sheet.warning_count; i++)
        told |= rig.sheet.warnings[i].code == GTL_WARN_LOAD_FALLS &&
                !strcmp(rig.sheet.warnings[i].about, "batten");
    assert_true(told);
    rated_end(&rig);
}

static void balance(void **state)
{
    (void)state;
    rated rig = rate_sound(SET, "", 100.0, 80.0);
    const gtl_balance *of = &rig.sheet.balances[0];
    double g = rig.rig->gravity;
    assert_int_equal(rig.sheet.balance_count, 1);
    assert_true(fabs(of->travel - 1) < 1e-9 && fabs(of->over - 20 * g) < 1e-6);
    assert_true(fabs(of->needed - 100 * g) < 1e-6);
    assert_int_equal(of->choice_count, 2);
    assert_true(of->choice[0].count == 3 && of->choice[1].count == 4 && of->nearest == 0);
    assert_true(fabs(of->choice[0].over - 2 * g) < 1e-6 && fabs(of->choice[1].over + 4 * g) < 1e-6);
    assert_true(fabs(of->choice[1].on_line - 4 * g) < 1e-6);
    rated_end(&rig);
    rated whole = rate_sound(SET, "", 100.0, 118.0); /* three too many, nothing over */
    of = &whole.sheet.balances[0];
    assert_true(of->choice_count == 1 && of->choice[0].count == -3 && of->choice[0].over == 0);
    rated_end(&whole);
}

/* A hand on one side alone: beyond balance nobody holds, and nothing is told where it runs away as it is. */
static void one_hand(void **state)
{
    (void)state;
    static const char one[] =
        "[anchor grid]\nat = 9 m\n[anchor floor]\nat = 0 m\n[block head]\non = grid\n[block foot]\non = "
        "floor\n"
        "[load batten]\nat = 2 m\nmass = 100 kg\n[arbor frame]\nat = 6 m\nmass = %g kg\neach = 6 kg\n"
        "[rope lift]\npath = batten, head, frame\n[rope back]\npath = frame, foot, up\n[hand up]\nat = 1 m\n";
    rated rig = rate_sound(one, 98.0);
    const gtl_balance *of = &rig.sheet.balances[0];
    assert_true(of->choice[0].count == 0 && fabs(of->choice[0].on_line - 2 * 9.80665) < 1e-6);
    assert_true(of->choice[1].count == 1 && isnan(of->choice[1].on_line));
    char *text = gtl_report(&rig.sheet, GTL_TEXT);
    assert_non_null(strstr(text, "runs away"));
    free(text);
    rated_end(&rig);
    rated away = rate_sound(one, 110.0);
    assert_false(outcome_of(&away, GTL_HOLD)->possible);
    assert_true(isnan(away.sheet.balances[0].over) && away.sheet.balances[0].choice_count == 0);
    text = gtl_report(&away.sheet, GTL_TEXT);
    assert_non_null(strstr(text, "Not worked out, since hold cannot be"));
    free(text);
    rated_end(&away);
}

static const double masses[][2] = {{100, 98}, {90, 100}, {100, 100}};

static void memory(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof masses / sizeof *masses; i++) {
        gtl_rig *rig = read_sound(SET, "cases = all, lost front", masses[i][0], masses[i][1]);
        for (long allowed = 0; !rates_with(rig, allowed);) allowed++;
        gtl_rig_free(rig);
    }
}

static void memory_of_report(void **state)
{
    (void)state;
    rated rig = rate_sound(SET, "cases = all", 100.0, 98.0);
    bool refused = true;
    for (long allowed = 0; refused; allowed++) {
        long before = blocks_alive();
        allow_allocations(allowed);
        char *report = gtl_report(&rig.sheet, GTL_TEXT);
        refused = allow_all_allocations();
        assert_true((report == NULL) == refused);
        free(report);
        assert_int_equal(blocks_alive(), before);
    }
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(roles),
        cmocka_unit_test(each_case_by_itself),
        cmocka_unit_test(jam),
        cmocka_unit_test(losses),
        cmocka_unit_test(arbor_falls),
        cmocka_unit_test(balance),
        cmocka_unit_test(one_hand),
        cmocka_unit_test(memory),
        cmocka_unit_test(memory_of_report),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
