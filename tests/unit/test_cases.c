/* test_cases.c - a load that jams, a start from rest and a stop while lowering, against sums by hand. */
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const double g = 9.80665;

static double effort(const rated *rig, gtl_case_kind kind)
{
    const gtl_outcome *outcome = gtl_sheet_outcome(&rig->sheet, kind);
    assert_non_null(outcome);
    assert_true(outcome->possible);
    return outcome->state->effort;
}

/* The tension of a line's first part in one case [N]. */
static double tension(const rated *rig, gtl_case_kind kind, const char *line)
{
    const gtl_component *component = component_of(rig, line);
    return gtl_outcome_tension(gtl_sheet_outcome(&rig->sheet, kind),
                               rig->rig->lines[component->index].first_part);
}

/* What a case adds to the lifted load's weight, upwards, where height is all there is [N]. */
static double added(const rated *rig, gtl_case_kind kind)
{
    return gtl_sheet_outcome(&rig->sheet, kind)->state->added[3 * rig->rig->things[rig->rig->load].node];
}

/* ---- jam ---- */

/* Two parts at the load, one lead block: without friction every part carries what the hand pulls. */
static const char two_parts[] =
    "[rig]\ncases = %s\n[anchor beam]\nat = 6 m\n[block head]\non = beam\nefficiency = 80 %%\n"
    "[block tail]\nat = 2 m\nweight = 20 N\nefficiency = 80 %%\n[load crate]\non = tail\nweight = 180 N\n"
    "[hand crew]\nat = 1 m\npeople = 2\neach = 250 N\n[rope fall]\npath = beam, tail, head, crew\n";

static void jam_carries_all_the_hands_pull(void **state)
{
    (void)state;
    rated rig = rate_sound(two_parts, "jam");
    assert_close(effort(&rig, GTL_JAM), 500);
    assert_close(demand_of(&rig, "fall"), 500);
    assert_close(demand_of(&rig, "tail"), 1000);
    assert_close(demand_of(&rig, "head"), 1000);
    assert_close(demand_of(&rig, "beam"), 1500);
    rated_end(&rig);
}

/* What the hand pulls in a jam is its limit by definition: it is held against it in the other cases alone. */
static void jam_says_nothing_of_the_hand(void **state)
{
    (void)state;
    rated rig = rate_sound(two_parts, "raise, jam");
    const gtl_component *crew = component_of(&rig, "crew");
    assert_int_equal(rig.sheet.outcomes[crew->governing].kind, GTL_RAISE);
    rated_end(&rig);
}

/* A limit under the effort: the load rests on what it is caught by, and the parts carry what is pulled. */
static void jam_with_little_pull(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = jam\n[anchor beam]\nat = 6 m\n[block tail]\nat = 2 m\nefficiency = 80 %%\n"
                   "[load crate]\non = tail\nweight = 180 N\n[hand crew]\nat = 5 m\nlimit = 10 N\n"
                   "[rope fall]\npath = beam, tail, crew\n");
    assert_close(effort(&rig, GTL_JAM), 10);
    assert_close(tension(&rig, GTL_JAM, "fall"), 10);
    assert_close(added(&rig, GTL_JAM), 160); /* 180 - 2 x 10 */
    rated_end(&rig);
}

/* A second hand with a known pull pulls all it can as well. */
static void jam_with_two_hands(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = jam\n[anchor beam]\nat = 6 m\n[block tail]\nat = 2 m\nefficiency = 100 %%\n"
        "[load crate]\non = tail\nweight = 180 N\n[hand crew]\nat = 5 m\nlimit = 300 N\n"
        "[hand mate]\nat = 5.5 m\npull = 40 N\nlimit = 70 N\n"
        "[rope fall]\npath = beam, tail, crew\n[rope aid]\npath = crate, mate\n");
    assert_close(demand_of(&rig, "fall"), 300);
    assert_close(demand_of(&rig, "aid"), 70);
    assert_close(demand_of(&rig, "tail"), 600);
    assert_close(added(&rig, GTL_JAM), 180 - 670); /* what holds the load down */
    rated_end(&rig);
}

/* The load caught in a bridle under a hauled redirect: across, everything still has to balance. */
static void jam_in_the_plane(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = jam\n[anchor left]\nat = -2 m, 6 m\n[anchor right]\nat = 2 m, 6 m\n"
        "[block head]\non = right\nefficiency = 100 %%\n[load crate]\nat = 0 m, 3 m\nweight = 180 N\n"
        "[hand crew]\nat = 2 m, 1 m\nlimit = 400 N\n[rope fall]\npath = crate, head, crew\n"
        "[sling tag]\npath = left, crate\n");
    /* The load hangs where the sling lets it, at its height; both legs have the same level pull. */
    const gtl_state *s = gtl_sheet_outcome(&rig.sheet, GTL_JAM)->state;
    double x = s->at[3 * rig.rig->things[rig.rig->load].node];
    double span = hypot(2 - x, 3);
    double other = hypot(2 + x, 3);
    assert_close(demand_of(&rig, "fall"), 400);
    assert_close(demand_of(&rig, "tag"), 400 * (2 - x) / span * other / (2 + x));
    rated_end(&rig);
}

/* ---- start and stop ---- */

static const char one_fixed[] =
    "[rig]\ncases = raise, lower, start, stop\nacceleration = 1.5 m/s2\n[anchor beam]\nat = 6 m\n"
    "[block head]\non = beam\nefficiency = %s\n[load crate]\nat = 2 m\nmass = 40 kg\n"
    "[hand crew]\nat = 1 m\n[rope fall]\npath = crate, head, crew\n";

/* Newton's second law: 1 + a/g of the weight. */
static void start_on_one_fixed_block(void **state)
{
    (void)state;
    rated rig = rate_sound(one_fixed, "100 %");
    assert_close(effort(&rig, GTL_START), 40 * (g + 1.5));
    assert_close(effort(&rig, GTL_STOP), 40 * (g + 1.5));
    assert_close(demand_of(&rig, "beam"), 2 * 40 * (g + 1.5));
    rated_end(&rig);
    rig = rate_sound(one_fixed, "80 %");
    assert_close(effort(&rig, GTL_START), 40 * (g + 1.5) / 0.8);
    assert_close(effort(&rig, GTL_STOP), 40 * (g + 1.5) * 0.8);
    rated_end(&rig);
}

/* d'Alembert on 3 to 1: a load on its block, and a runner that travels twice as fast, both with mass. */
static void start_on_three_to_one(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = start\nacceleration = 2 m/s2\nefficiency = 100 %%\n[anchor beam]\nat = 6 m\n"
        "[block head]\non = beam\n[block tail]\nat = 2 m\nmass = 12 kg\n[load crate]\non = tail\nmass = 60 "
        "kg\n"
        "[hand crew]\nat = 5 m\n[rope fall]\npath = tail, head, tail, crew\n");
    assert_close(effort(&rig, GTL_START), 72 * (g + 2) / 3);
    rated_end(&rig);
}

/* Whip upon whip: the second block runs at twice the load's speed, so its inertia counts twice, and once more
 * through the ratio. */
static void start_with_bodies_at_several_speeds(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = start\nspeed = 0.6 m/s\ntime = 0.3 s\nefficiency = 100 %%\n[anchor beam]\nat = 6 m\n"
        "[block lower]\nat = 1 m\nmass = 5 kg\n[load crate]\non = lower\nmass = 60 kg\n"
        "[block upper]\nat = 3 m\nmass = 4 kg\n[hand crew]\nat = 5.5 m\n"
        "[rope first]\npath = beam, lower, upper\n[rope second]\npath = beam, upper, crew\n");
    double a = 0.6 / 0.3;
    double first = 65 * (g + a) / 2;
    assert_close(demand_of(&rig, "first"), first);
    assert_close(effort(&rig, GTL_START), (first + 4 * (g + 2 * a)) / 2);
    rated_end(&rig);
}

/* A body that sinks as the load rises is made lighter by its inertia: Atwood's machine with a hand that
 * helps. */
static void start_with_a_counterweight(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = start, stop\nload = crate\nacceleration = 1 m/s2\n[anchor beam]\nat = 6 m\n"
        "[block head]\non = beam\nefficiency = 100 %%\n[block lead]\non = beam\nefficiency = 100 %%\n"
        "[load crate]\nat = 2 m\nmass = 50 kg\n[load arbor]\nat = 4 m\nmass = 30 kg\n[hand crew]\nat = 1 m\n"
        "[rope lift]\npath = crate, head, arbor\n[rope fall]\npath = crate, lead, crew\n");
    assert_close(tension(&rig, GTL_START, "lift"), 30 * (g - 1));
    assert_close(effort(&rig, GTL_START), 50 * (g + 1) - 30 * (g - 1));
    rated_end(&rig);
}

/* In the plane a body's inertia has a direction: the work of the hand is what weights and inertia take. */
static void start_pays_for_all_inertia(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = hold, start\nload = crate\nacceleration = 3 m/s2\n[anchor left]\nat = -3 m, 6 m\n"
        "[anchor right]\nat = 3 m, 6 m\n[joint apex]\nat = 0 m, 4 m\nmass = 3 kg\n[load crate]\nat = 0 m, 2 "
        "m\n"
        "mass = 50 kg\n[block head]\non = right\nefficiency = 100 %%\n[hand crew]\nat = 3 m, 0 m\n"
        "[sling leg]\npath = left, apex\n[sling drop]\npath = apex, crate\n[rope fall]\npath = apex, head, "
        "crew\n");
    const gtl_state *s = gtl_sheet_outcome(&rig.sheet, GTL_START)->state;
    double out = 0;
    for (int n = 0; n < rig.rig->node_count; n++) {
        const double *rise = s->rise + 3 * n;
        double mass = rig.rig->nodes[n].fixed ? 0 : rig.rig->nodes[n].weight / g;
        out += mass * (g * rise[1] + 3 * (rise[0] * rise[0] + rise[1] * rise[1]));
    }
    assert_close(s->effort * s->velocity_ratio, out);
    assert_true(s->residual < 1e-10);
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(jam_carries_all_the_hands_pull),
        cmocka_unit_test(jam_says_nothing_of_the_hand),
        cmocka_unit_test(jam_with_little_pull),
        cmocka_unit_test(jam_with_two_hands),
        cmocka_unit_test(jam_in_the_plane),
        cmocka_unit_test(start_on_one_fixed_block),
        cmocka_unit_test(start_on_three_to_one),
        cmocka_unit_test(start_with_bodies_at_several_speeds),
        cmocka_unit_test(start_with_a_counterweight),
        cmocka_unit_test(start_pays_for_all_inertia),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
