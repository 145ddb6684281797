/* test_loss.c - a part lets go: where the rig comes to rest, and with what forces. Scenes and weights are
 * invented; every wanted figure is derived beside it. */
#include "unit/lost.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

/* ---- a bridle of two legs ---- */

#define BRIDLE                                                                                               \
    "[anchor west]\nat = 0 m, 6 m\n[anchor east]\nat = 4 m, 6 m\n[joint apex]\nat = %s\n"                    \
    "[load bell]\nat = %s\nweight = 1000 N\n[sling leg-a]\npath = west, apex\n"                              \
    "[sling leg-b]\npath = apex via hook, east\n[sling drop]\npath = apex, bell\n[connector hook]\n"

/* The leg that is left hangs plumb under its anchor with the whole weight: derived by hand. */
static void check_plumb(const rated *rig, const char *lost, const char *leg, const char *anchor,
                        double across, double length, double factor)
{
    assert_close(demand_in(rig, lost, leg), factor * 1000);
    assert_close(demand_in(rig, lost, anchor), factor * 1000);
    assert_close(demand_in(rig, lost, "apex"), factor * 1000);
    assert_close(demand_in(rig, lost, "drop"), factor * 1000);
    assert_place(place_in(rig, lost, "apex", 0), across);
    assert_place(place_in(rig, lost, "apex", 1), 6 - length);
    assert_place(place_in(rig, lost, "bell", 0), across);
    assert_place(place_in(rig, lost, "bell", 1), 6 - length - 1);
}

static void bridle_that_is_even(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = lost leg-a, lost leg-b\n" BRIDLE, "2 m, 4 m", "2 m, 3 m");
    double length = sqrt(8);                                           /* 2 m across, 2 m down */
    assert_close(demand_in(&rig, "hold", "leg-a"), 1000 * length / 4); /* W/(2 cos 45 deg) */
    check_plumb(&rig, "lost leg-a", "leg-b", "east", 4, length, 2);
    check_plumb(&rig, "lost leg-b", "leg-a", "west", 0, length, 2);
    assert_true(demand_in(&rig, "lost leg-a", "leg-a") == 0);
    assert_true(demand_in(&rig, "lost leg-a", "west") == 0);
    assert_true(demand_in(&rig, "lost leg-b", "hook") == 0);
    assert_close(demand_in(&rig, "lost leg-a", "hook"), 2000);
    rated_end(&rig);
}

static void bridle_that_is_not(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = lost leg-a, lost west, lost hook, lost east\nloss factor = 3\n" BRIDLE,
                   "1 m, 4 m", "1 m, 3 m");
    check_plumb(&rig, "lost leg-a", "leg-b", "east", 4, sqrt(13), 3); /* 3 m across, 2 m down */
    check_plumb(&rig, "lost west", "leg-b", "east", 4, sqrt(13), 3);
    check_plumb(&rig, "lost hook", "leg-a", "west", 0, sqrt(5), 3); /* 1 m across, 2 m down */
    check_plumb(&rig, "lost east", "leg-a", "west", 0, sqrt(5), 3);
    rated_end(&rig);
}

static void factor_of_one(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = lost leg-a\nloss factor = 1\n" BRIDLE, "1 m, 4 m", "1 m, 3 m");
    check_plumb(&rig, "lost leg-a", "leg-b", "east", 4, sqrt(13), 1);
    rated_end(&rig);
}

/* One force reads the same everywhere: a part's tension, what things pass on, what is demanded. */
static void one_force_everywhere(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = lost leg-a\n" BRIDLE, "1 m, 4 m", "1 m, 3 m");
    const gtl_outcome *lost = possible_outcome(&rig, "lost leg-a");
    int east = thing_of(rig.rig, "east");
    int apex = thing_of(rig.rig, "apex");
    assert_close(tension_in(&rig, "lost leg-a", 1, 0), 2000);
    assert_close(-lost->forces.passed[east][1], 2000);
    assert_close(fabs(lost->forces.governing[apex][1]), 2000);
    assert_close(lost->forces.demand[component_of(&rig, "leg-b") - rig.sheet.components], 2000);
    assert_true(lost->state->residual < 1e-9);
    assert_true(gtl_outcome_slack(lost, 0)); /* the leg that is gone */
    assert_true(gtl_outcome_tension(lost, 0) == 0);
    assert_false(gtl_outcome_slack(lost, 1));
    assert_false(is_loose(&rig, "lost leg-a", "west"));
    rated_end(&rig);
}

/* Three legs in space: with one gone the load hangs under the line between the two other anchors. */
static void three_legs(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = lost leg-d, lost d\n[anchor b]\nat = -1 m, 0 m, 4 m\n[anchor c]\nat = 1 m, 0 m, 4 m\n"
        "[anchor d]\nat = 0 m, 3 m, 4 m\n[load urn]\nat = 0 m, 1 m, 1 m\nweight = 600 N\n"
        "[sling leg-b]\npath = b, urn\n[sling leg-c]\npath = c, urn\n[sling leg-d]\npath = d, urn\n");
    const char *const cases[] = {"lost leg-d", "lost d"};
    for (int i = 0; i < 2; i++) {
        double leg = sqrt(11); /* 1 m across, 1 m along, 3 m down */
        double down = sqrt(10);
        assert_close(demand_in(&rig, cases[i], "leg-b"), 2 * 300 * leg / down);
        assert_close(demand_in(&rig, cases[i], "leg-c"), 2 * 300 * leg / down);
        assert_place(place_in(&rig, cases[i], "urn", 0), 0);
        assert_place(place_in(&rig, cases[i], "urn", 1), 0);
        assert_place(place_in(&rig, cases[i], "urn", 2), 4 - down);
    }
    rated_end(&rig);
}

/* ---- a redirect ---- */

#define REDIRECTED                                                                                           \
    "[anchor beam]\nat = 0 m, 6 m\n[anchor post]\nat = 3 m, 0 m\n[block head]\non = beam\n%s\n"              \
    "[block foot]\non = post via strop\n%s\n[connector strop]\n[load drum]\nat = 0 m, 2 m\nweight = 500 N\n" \
    "[hand crew]\n%s\nlimit = 900 N\n[rope fall]\npath = drum, head, foot, crew\n"

/* The rope goes straight from the head block to the hand, keeps its length, and the load comes down by what
 * the way is shorter: both sides of the head block carry the load's weight, doubled. */
static void redirect_that_lets_go(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = hold, lost post, lost strop\n" REDIRECTED, "", "", "at = 5 m, 1 m");
    double rope = 4 + sqrt(45) + sqrt(5);
    const char *const cases[] = {"lost post", "lost strop"};
    for (int i = 0; i < 2; i++) {
        for (int part = 0; part < 3; part++) assert_close(tension_in(&rig, cases[i], 0, part), 1000);
        assert_place(place_in(&rig, cases[i], "drum", 0), 0);
        assert_place(place_in(&rig, cases[i], "drum", 1), 6 - (rope - sqrt(50)));
        assert_close(demand_in(&rig, cases[i], "head"), 1000 * 2 * cos(acos(-1) / 8)); /* 45 deg apart */
        assert_close(demand_in(&rig, cases[i], "beam"), 1000 * 2 * cos(acos(-1) / 8));
        assert_true(demand_in(&rig, cases[i], "strop") == 0);
        assert_true(demand_in(&rig, cases[i], "post") == 0);
        assert_true(demand_in(&rig, cases[i], "foot") == 0);
        assert_true(is_loose(&rig, cases[i], "foot"));
        assert_false(is_loose(&rig, cases[i], "drum"));
        assert_close(demand_in(&rig, cases[i], "crew"), 1000);
    }
    rated_end(&rig);
}

/* Nobody knows which way rope comes to rest: friction at the head block may put more on the hand than the
 * load weighs. The contract's law of a sheave, put in: (T2 - T1)^2 = f^2 (T1^2 + T2^2 - 2 T1 T2 cos w). */
static void redirect_with_friction(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = hold, raise, lost post\n" REDIRECTED, "efficiency = 90 %",
                           "efficiency = 90 %", "at = 5 m, 1 m");
    double less = 500;
    double more = demand_in(&rig, "lost post", "crew") / 2;
    double f = 0.1 / 1.9;
    double bearing = less * less + more * more + 2 * less * more * sqrt(0.5); /* w = 135 deg */
    assert_true(more > less);
    assert_close((more - less) * (more - less), f * f * bearing);
    assert_int_equal(possible_outcome(&rig, "lost post")->variants, 3);
    assert_int_equal(component_of(&rig, "crew")->mark, GTL_MARK_OVER); /* its limit is 900 N */
    assert_int_equal(component_of(&rig, "crew")->governing, 2);
    rated_end(&rig);
}

/* ---- what catches, and what does not ---- */

/* A rope with 2 m of slack takes the load once the other is gone. */
static void backup_that_catches(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = lost main, lost backup, lost a\n[anchor a]\nat = 0 m, 6 "
                           "m\n[anchor b]\nat = 1 m, 6 m\n"
                           "[load drum]\nat = 0 m, 2 m\nweight = 500 N\n[rope main]\npath = a, drum\n"
                           "[rope backup]\npath = b, drum\nlength = 6 m\n");
    const char *const cases[] = {"lost main", "lost a"};
    for (int i = 0; i < 2; i++) {
        assert_close(demand_in(&rig, cases[i], "backup"), 1000);
        assert_close(demand_in(&rig, cases[i], "b"), 1000);
        assert_place(place_in(&rig, cases[i], "drum", 0), 1);
        assert_place(place_in(&rig, cases[i], "drum", 1), 0);
    }
    /* To lose what carries nothing changes nothing but the factor. */
    assert_close(demand_in(&rig, "lost backup", "main"), 1000);
    assert_place(place_in(&rig, "lost backup", "drum", 1), 2);
    rated_end(&rig);
}

/* The same with heights alone, and a tackle in place of the main rope. */
static void backup_with_heights_alone(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = hold, lost fall, lost a, lost link, lost backup\n[anchor a]\nat = 6 m\n[anchor b]\n"
        "at = 6 m\n[block tail]\nat = 3 m\n[load drum]\nat = 2 m\nweight = 500 N\n[sling link]\n"
        "path = tail, drum\n[block head]\non = b\n[hand crew]\nat = 1 m\nlimit = 900 N\n[rope fall]\n"
        "path = a, tail, head, crew\n[anchor d]\nat = 8 m\n[sling backup]\npath = d, drum\nlength = 7 m\n");
    const char *const cases[] = {"lost fall", "lost a", "lost link"};
    for (int i = 0; i < 3; i++) {
        assert_close(demand_in(&rig, cases[i], "backup"), 1000);
        assert_place(place_in(&rig, cases[i], "drum", 0), 1);
        assert_true(demand_in(&rig, cases[i], "fall") == 0);
        assert_true(is_loose(&rig, cases[i], "tail"));
    }
    assert_close(demand_in(&rig, "lost backup", "fall"), 500);
    assert_close(demand_in(&rig, "lost backup", "crew"), 500);
    assert_place(place_in(&rig, "lost backup", "drum", 0), 2);
    rated_end(&rig);
}

/* ---- a rope tied in the middle ---- */

/* Without its middle the rope is one from end to end: its middle part is level, its ends lean as far as
 * that leaves. All by symmetry: 5 m level between two legs of 2.5 m over 6 m. */
static void middle_that_lets_go(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = lost mid, lost ring, lost west\n[anchor west]\nat = 0 m, 6 m\n[anchor mid]\nat = 3 "
        "m, 6 m\n"
        "[anchor east]\nat = 6 m, 6 m\n[connector ring]\n[load drum]\nat = 1.5 m, 4 m\nweight = 500 N\n"
        "[load keg]\nat = 4.5 m, 4 m\nweight = 500 N\n[rope line]\npath = west, drum, mid via ring, keg, "
        "east\n");
    const char *const cases[] = {"lost mid", "lost ring"};
    for (int i = 0; i < 2; i++) {
        assert_place(place_in(&rig, cases[i], "drum", 0), 0.5);
        assert_place(place_in(&rig, cases[i], "drum", 1), 6 - sqrt(6)); /* 2.5^2 = 0.5^2 + 6 */
        assert_place(place_in(&rig, cases[i], "keg", 0), 5.5);
        assert_close(tension_in(&rig, cases[i], 0, 0), 2 * 500 * 2.5 / sqrt(6));
        assert_close(tension_in(&rig, cases[i], 0, 1), 2 * 500 * 0.5 / sqrt(6));
        assert_close(tension_in(&rig, cases[i], 0, 2), 2 * 500 * 0.5 / sqrt(6)); /* the same stretch now */
        assert_close(tension_in(&rig, cases[i], 0, 3), 2 * 500 * 2.5 / sqrt(6));
        assert_true(demand_in(&rig, cases[i], "ring") == 0);
        assert_true(demand_in(&rig, cases[i], "mid") == 0);
    }
    /* An end that lets go runs out up to where the rope is tied next: the drum hangs under the middle. */
    assert_true(tension_in(&rig, "lost west", 0, 0) == 0);
    assert_close(tension_in(&rig, "lost west", 0, 1), 1000);
    assert_place(place_in(&rig, "lost west", "drum", 0), 3);
    assert_place(place_in(&rig, "lost west", "drum", 1), 6 - 2.5);
    assert_place(place_in(&rig, "lost west", "keg", 0), 4.5);
    rated_end(&rig);
}

/* Without the block in between, the rope passes the head block once where it passed it twice, and pays out
 * the 6 m that it led down and up again. */
static void rope_that_closes_up(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = lost link\n[anchor beam]\nat = 6 m\n[anchor roof]\nat = 8 m\n[anchor floor]\nat = 0 "
        "m\n"
        "[block head]\non = beam\n[block tail]\nat = 3 m\n[load drum]\nat = 2 m\nweight = 300 N\n[load keg]\n"
        "at = 3 m\nweight = 100 N\n[sling link]\npath = tail, drum\n[rope stay]\npath = roof, drum\n[rope "
        "fall]\n"
        "path = keg, head, tail, head, floor\n");
    assert_close(demand_in(&rig, "hold", "stay"), 100);
    assert_close(demand_in(&rig, "lost link", "stay"), 2 * 300);
    for (int part = 0; part < 4; part++) assert_close(tension_in(&rig, "lost link", 2, part), 2 * 100);
    assert_close(demand_in(&rig, "lost link", "head"), 2 * 200);
    assert_place(place_in(&rig, "lost link", "keg", 0), 3 - 6);
    assert_place(place_in(&rig, "lost link", "drum", 0), 2);
    rated_end(&rig);
}

/* ---- spars, known pulls, bodies that hang limp ---- */

/* A bar that loses one end hangs on the other with all its weight. */
static void bar_that_hangs_on_one_end(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = lost pin, lost bar\nloss factor = 1\n[anchor hook]\nat = 0 m, 8 m\n[connector pin]\n"
        "[joint left]\nat = -2 m, 5 m\n[joint right]\nat = 2 m, 5 m\n[sling up-a]\npath = hook, left\n"
        "[sling up-b]\npath = hook, right\n[spar bar]\npath = left via pin, right\nweight = 100 N\n"
        "[load slab]\nat = -2 m, 3 m\nweight = 300 N\n[load slate]\nat = 2 m, 3 m\nweight = 300 N\n"
        "[sling a]\npath = left, slab\n[sling b]\npath = right, slate\n");
    assert_close(demand_in(&rig, "hold", "hook"), 700);
    assert_close(demand_in(&rig, "lost pin", "up-a"), 300);
    assert_close(demand_in(&rig, "lost pin", "up-b"), 400);
    assert_close(demand_in(&rig, "lost pin", "hook"), 700);
    assert_true(demand_in(&rig, "lost pin", "bar") == 0);
    assert_close(demand_in(&rig, "lost bar", "up-b"), 300);
    assert_close(demand_in(&rig, "lost bar", "hook"), 600);
    rated_end(&rig);
}

/* A hand of known pull goes on pulling: with the load's weight it makes one force, and the rope that is left
 * points against that. */
static void pull_that_stays(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = lost main\n[anchor a]\nat = 0 m, 6 m\n[anchor b]\nat = 1 m, 6 m\n"
                           "[load drum]\nat = 0 m, 2 m\nweight = 400 N\n[rope main]\npath = a, drum\n"
                           "[rope backup]\npath = b, drum\nlength = 5 m\n[hand tag]\nat = 6 m, 2 m\n"
                           "pull = 50 N\n[rope line]\npath = drum, tag\n");
    double x = place_in(&rig, "lost main", "drum", 0);
    double z = place_in(&rig, "lost main", "drum", 1);
    double way = hypot(6 - x, 2 - z);
    double force[2] = {50 * (6 - x) / way, 50 * (2 - z) / way - 400};
    assert_close(tension_in(&rig, "lost main", 2, 0), 2 * 50);
    assert_close(tension_in(&rig, "lost main", 1, 0), 2 * hypot(force[0], force[1]));
    assert_place(hypot(x - 1, z - 6), 5);
    assert_place((x - 1) * force[1] - (z - 6) * force[0], 0);
    rated_end(&rig);
}

/* A weightless block that only its sling holds any more carries nothing, and stops nothing from being worked.
 */
static void block_that_hangs_limp(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\ncases = hold, lost fall, lost hitch\n[anchor a]\nat = 0 m, 6 m\n[anchor b]\nat = 0 m, 7 m\n"
        "[block head]\nat = 0 m, 5 m\n[sling hitch]\npath = a, head\n[load drum]\nat = 0 m, 1 m\n"
        "weight = 500 N\n[hand crew]\nat = 2 m, 1 m\n[rope fall]\npath = drum, head, crew\n[rope backup]\n"
        "path = b, drum\nlength = 8 m\n");
    assert_close(demand_in(&rig, "lost fall", "backup"), 1000);
    assert_true(demand_in(&rig, "lost fall", "a") == 0);
    assert_true(is_loose(&rig, "lost fall", "head"));
    assert_true(is_loose(&rig, "lost hitch", "head"));
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bridle_that_is_even),
        cmocka_unit_test(bridle_that_is_not),
        cmocka_unit_test(factor_of_one),
        cmocka_unit_test(one_force_everywhere),
        cmocka_unit_test(three_legs),
        cmocka_unit_test(redirect_that_lets_go),
        cmocka_unit_test(redirect_with_friction),
        cmocka_unit_test(backup_that_catches),
        cmocka_unit_test(backup_with_heights_alone),
        cmocka_unit_test(middle_that_lets_go),
        cmocka_unit_test(rope_that_closes_up),
        cmocka_unit_test(bar_that_hangs_on_one_end),
        cmocka_unit_test(pull_that_stays),
        cmocka_unit_test(block_that_hangs_limp),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
