/* test_loss_told.c - losses that are told and not worked, copies of rigs, and memory that fails. */
#include "unit/failing_memory.h"
#include "unit/failing_rating.h"
#include "unit/lost.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* ---- loads that fall ---- */

/* What stands on the anchor that lets go holds no rope any more. */
static void hand_on_what_lets_go(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = hold, lost post\n[anchor beam]\nat = 0 m, 6 m\n[anchor post]\n"
                   "at = 3 m, 0 m\n[block head]\non = beam\n[load drum]\nat = 0 m, 2 m\nweight = 500 N\n"
                   "[hand winch]\non = post\n[rope fall]\npath = drum, head, winch\n");
    const gtl_outcome *lost = outcome_of(&rig, "lost post");
    assert_true(outcome_of(&rig, "hold")->possible);
    assert_false(lost->possible);
    assert_true(lost->falls);
    rated_end(&rig);
}

static void load_that_falls(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = lost rope, lost hook\n[anchor a]\nat = 6 m\nwll = 9 kN\n"
                           "[load drum]\nat = 2 m\nweight = 500 N\n[rope rope]\npath = a via hook, drum\n"
                           "wll = 9 kN\n[connector hook]\nwll = 9 kN\n");
    const gtl_outcome *lost = outcome_of(&rig, "lost rope");
    assert_false(lost->possible);
    assert_true(lost->falls);
    assert_string_equal(lost->reason, "`drum` falls: nothing holds it once `rope` has let go");
    assert_string_equal(outcome_of(&rig, "lost hook")->reason,
                        "`drum` falls: nothing holds it once `hook` has let go");
    assert_int_equal(rig.sheet.verdict, GTL_UNRATED);
    assert_int_equal(rig.sheet.why, GTL_WHY_LOAD_FALLS);
    assert_close(demand_of(&rig, "rope"), 500);
    rated_end(&rig);
}

/* A load that comes off what it is on falls, and so does one on an anchor that lets go. */
static void load_that_comes_off(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = lost hook, lost ledge\n[anchor a]\nat = 6 m\n[anchor ledge]\nat = 1 m\n"
                   "[joint ring]\nat = 3 m\n[load drum]\non = ring via hook\nweight = 500 N\n"
                   "[load keg]\non = ledge\nweight = 90 N\n[rope rope]\npath = a, ring\n"
                   "[connector hook]\n");
    assert_true(outcome_of(&rig, "lost hook")->falls);
    assert_string_equal(outcome_of(&rig, "lost ledge")->reason,
                        "`keg` falls: nothing holds it once `ledge` has let go");
    rated_end(&rig);
}

/* ---- what is told and not worked ---- */

static void hold_that_cannot_be(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\nload = drum\ncases = lost a\n[anchor a]\nat = 0 m, 6 m\n[block head]\non = a\n"
                   "[load drum]\nat = 0 m, 2 m\nweight = 100 N\n[load keg]\nat = 1 m, 2 m\n"
                   "weight = 300 N\n[rope counter]\npath = drum, head, keg\n[block foot]\non = a\n"
                   "[hand crew]\nat = 3 m, 1 m\n[rope fall]\npath = drum, foot, crew\n");
    const gtl_outcome *hold = outcome_of(&rig, "hold");
    const gtl_outcome *lost = outcome_of(&rig, "lost a");
    assert_false(hold->possible);
    assert_false(lost->possible);
    assert_false(lost->falls);
    assert_string_equal(lost->reason, hold->reason);
    rated_end(&rig);
}

/* Without its hand's rope the drum runs down, and the keg up into the block: hold has its answer all the
 * same. */
static void place_that_is_not_found(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\nload = drum\ncases = lost fall\n[anchor a]\nat = 0 m, 6 m\nwll = 9 kN\n[block head]\n"
        "on = a\n[load drum]\nat = 0 m, 2 m\nweight = 300 N\n[load keg]\nat = 1 m, 2 m\n"
        "weight = 100 N\n[rope counter]\npath = drum, head, keg\n[block foot]\non = a\n"
        "[hand crew]\nat = 3 m, 1 m\n[rope fall]\npath = drum, foot, crew\n");
    const gtl_outcome *lost = outcome_of(&rig, "lost fall");
    assert_true(outcome_of(&rig, "hold")->possible);
    assert_false(lost->possible);
    assert_false(lost->falls);
    assert_true(strncmp(lost->reason, "once `fall` has let go: ", 24) == 0);
    assert_true(rig.sheet.why & GTL_WHY_CASE_IMPOSSIBLE);
    rated_end(&rig);
}

/* A rope that comes straight from the anchor to a block on that anchor: which of them carries what? */
static void rope_that_is_tangled(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = lost link\n[anchor beam]\nat = 6 m\n[anchor roof]\nat = 8 m\n"
                           "[block head]\non = beam\n[block tail]\nat = 3 m\n[load drum]\nat = 2 m\n"
                           "weight = 300 N\n[load keg]\nat = 1 m\nweight = 100 N\n[sling link]\n"
                           "path = tail, drum\n[rope stay]\npath = roof, drum\n[rope fall]\n"
                           "path = beam, tail, head, keg\n");
    const gtl_outcome *lost = outcome_of(&rig, "lost link");
    assert_false(lost->possible);
    assert_string_equal(lost->reason,
                        "once `link` has let go, `fall` is led over two things in one place with nothing in "
                        "between, and what each of them carries is not known; draw them apart");
    rated_end(&rig);
}

static void nothing_that_is_left(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = lost a\n[anchor a]\nat = 0 m, 0 m\n[joint ring]\nat = 2 m, 0 m\n"
                           "[rope stay]\npath = a, ring\n[hand crew]\nat = 5 m, 0 m\npull = 200 N\n"
                           "[rope line]\npath = ring, crew\n");
    const gtl_outcome *lost = outcome_of(&rig, "lost a");
    assert_false(lost->possible);
    assert_string_equal(lost->reason, "nothing that could carry a force is left once `a` has let go");
    rated_end(&rig);
}

/* ---- copies and memory ---- */

/* Names, vias, a path tied in the middle, all kinds of losses, and two that come to nothing. */
static const char yard[] =
    "[rig]\ntitle = Boat yard\nload = drum\ncases = hold, lost post, lost strop, lost line, lost fall\n"
    "[anchor beam]\nat = 0 m, 6 m\n[anchor post]\nat = 3 m, 0 m\n[block head]\non = beam\nefficiency = 90 %\n"
    "[block foot]\non = post via strop\n[connector strop]\n[load drum]\nat = 0 m, 2 m\nweight = 500 N\n"
    "[hand crew]\nat = 5 m, 1 m\n[rope fall]\npath = drum, head, foot, crew\n[anchor west]\nat = 10 m, 6 m\n"
    "[load keg]\nat = 11 m, 4 m\nweight = 50 N\n[anchor mid]\nat = 12 m, 6 m\n[load cask]\nat = 13 m, 4 m\n"
    "weight = 60 N\n[anchor east]\nat = 14 m, 6 m\n[rope line]\npath = west, keg, mid, cask, east\n";

static void copies(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("%s", yard);
    for (long allowed = 0; allowed >= 0; allowed++) {
        long before = blocks_alive();
        allow_allocations(allowed);
        gtl_rig *copy = gtl_rig_copy(rig);
        bool refused = allow_all_allocations();
        assert_true((copy == NULL) == refused);
        if (copy) {
            assert_null(copy->hardware);
            assert_int_equal(copy->thing_count, rig->thing_count);
            assert_int_equal(copy->case_count, rig->case_count);
            assert_string_equal(copy->title, "Boat yard");
            assert_string_equal(copy->cases[1].name, "lost post");
            assert_string_equal(copy->things[thing_of(rig, "keg")].name, "keg");
            assert_ptr_not_equal(copy->things[0].name, rig->things[0].name);
            assert_memory_equal(copy->pieces, rig->pieces, (size_t)rig->piece_count * sizeof *rig->pieces);
            assert_memory_equal(copy->stops, rig->stops, (size_t)rig->stop_count * sizeof *rig->stops);
            allowed = -2; /* done */
        }
        gtl_rig_free(copy);
        assert_int_equal(blocks_alive(), before);
    }
    gtl_rig_free(rig);
}

static void memory_that_fails(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("%s", yard);
    long allowed = 0;
    while (!rates_with(rig, allowed)) allowed++;
    assert_true(allowed > 500);
    gtl_rig_free(rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(hand_on_what_lets_go),    cmocka_unit_test(load_that_falls),
        cmocka_unit_test(load_that_comes_off),     cmocka_unit_test(hold_that_cannot_be),
        cmocka_unit_test(place_that_is_not_found), cmocka_unit_test(rope_that_is_tangled),
        cmocka_unit_test(nothing_that_is_left),    cmocka_unit_test(copies),
        cmocka_unit_test(memory_that_fails),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
