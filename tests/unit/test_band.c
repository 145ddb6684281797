/* test_band.c - friction as a range: what is printed, what is demanded, when the band is sure; turns on a
 * post.
 */
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
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

/* ---- the band ---- */

/* One sheave: raising takes W/e, lowering W e. */
static void one_sheave(void **state)
{
    (void)state;
    rated rig = rate_sound("[anchor beam]\nat = 6 m\n[block head]\non = beam\nefficiency = 80 .. 90 %%\n"
                           "[load crate]\nat = 1 m\nweight = 720 N\n[hand crew]\nat = 2 m\nlimit = 2 kN\n"
                           "[rope fall]\npath = crate, head, crew\n");
    const gtl_outcome *raise = gtl_sheet_outcome(&rig.sheet, GTL_RAISE);
    const gtl_outcome *lower = gtl_sheet_outcome(&rig.sheet, GTL_LOWER);
    int crew = thing_of(rig.rig, "crew");
    assert_int_equal(raise->band.rigs, 2);
    assert_close(raise->band.pull[crew][0], 800);
    assert_close(raise->band.pull[crew][1], 900);
    assert_close(raise->state->effort, 900);
    assert_false(raise->band.freest);
    assert_close(lower->band.pull[crew][0], 576);
    assert_close(lower->band.pull[crew][1], 648);
    assert_close(lower->state->effort, 648); /* what the hand must be ready for */
    assert_true(lower->band.freest);
    assert_close(demand_of(&rig, "beam"), 1620);
    assert_close(demand_of(&rig, "crew"), 900);
    assert_true(gtl_band_is_proven(&rig.sheet, raise));
    rated_end(&rig);
}

/* A block that rope runs over twice has two sheaves, and nothing says that they are alike: the part between
 * them carries most with one at either end. */
static void sheaves_of_one_block_differ(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = raise\n[anchor beam]\nat = 6 m\n[block head]\non = beam\n"
                           "efficiency = 50 .. 100 %%\n[block tail]\nat = 1 m\nefficiency = 100 %%\n"
                           "[load crate]\non = tail\nweight = 700 N\n[hand crew]\nat = 2 m\n"
                           "[rope fall]\npath = tail, head, tail, head, crew\n");
    const gtl_outcome *raise = gtl_sheet_outcome(&rig.sheet, GTL_RAISE);
    int first = rig.rig->lines[0].first_part, crew = thing_of(rig.rig, "crew");
    assert_int_equal(raise->band.rigs, 4);
    /* Parts 1, k, k and the hand's k times the other sheave's: 1 + 2 k = 700 N over the first. */
    assert_close(raise->band.tension[first][0], 140);
    assert_close(raise->band.tension[first][1], 700 / 3.0);
    assert_close(raise->band.tension[first + 1][1], 280);
    assert_close(raise->band.pull[crew][1], 560);
    assert_close(raise->band.pull[crew][0], 700 / 3.0);
    rated_end(&rig);
}

/* With many ranges the tension in the middle is still found: friction before it at its most, behind it at its
 * least. */
static void middle_of_a_long_lead(void **state)
{
    (void)state;
    char text[1500] = "[rig]\ncases = raise\n[anchor top]\nat = 9 m\n[anchor foot]\nat = 0 m\n",
         path[400] = "crate";
    for (int i = 0; i < 8; i++) {
        size_t used = strlen(text);
        snprintf(text + used, sizeof text - used, "[block b%d]\non = %s\nefficiency = 80 .. 90 %%\n", i,
                 i % 2 ? "foot" : "top");
        used = strlen(path);
        snprintf(path + used, sizeof path - used, ", b%d", i);
    }
    size_t used = strlen(text);
    snprintf(text + used, sizeof text - used,
             "[load crate]\nat = 1 m\nweight = 100 N\n[hand crew]\nat = 5 m\n[rope fall]\npath = %s, crew\n",
             path);
    rated rig = rate_sound("%s", text);
    const gtl_outcome *raise = gtl_sheet_outcome(&rig.sheet, GTL_RAISE);
    assert_false(rig.sheet.every_corner);
    assert_true(warns(&rig, GTL_WARN_BAND_NOT_PROVEN, ""));
    assert_int_equal(raise->band.rigs, 32);
    assert_close(raise->band.pull[thing_of(rig.rig, "crew")][1], 100 / pow(0.8, 8));
    assert_close(raise->band.tension[rig.rig->lines[0].first_part + 4][1], 100 / pow(0.8, 4));
    rated_end(&rig);
}

/* ---- cases that cannot be at one end ---- */

/* A crate held down by a hand, and a heavier weight that pulls it up over a wheel. */
static const char pulled_up[] =
    "[rig]\nload = crate\n[anchor top]\nat = 5 m\n[block wheel]\non = top\nefficiency = %s\n"
    "[load crate]\nat = 2 m\nweight = 95 N\n[load stone]\nat = 2 m\nweight = 100 N\n"
    "[hand crew]\nat = 0 m\nlimit = 1 kN\n[rope balance]\npath = crate, wheel, stone\n"
    "[rope down]\npath = crate, crew\n";

static void raise_that_cannot_be_at_one_end(void **state)
{
    (void)state;
    rated rig = rate_sound(pulled_up, "94 .. 96 %");
    const gtl_outcome *raise = gtl_sheet_outcome(&rig.sheet, GTL_RAISE);
    assert_false(raise->possible);
    assert_true(rig.sheet.why & GTL_WHY_RAISE_IMPOSSIBLE);
    rated_end(&rig);
    rig = rate_sound(pulled_up, "96 .. 98 %");
    raise = gtl_sheet_outcome(&rig.sheet, GTL_RAISE);
    assert_true(raise->possible);
    assert_true(raise->band.freest); /* less friction, more to hold back */
    assert_close(raise->state->effort, 100 * 0.98 - 95);
    rated_end(&rig);
}

static void load_that_may_not_come_down(void **state)
{
    (void)state;
    static const char text[] =
        "[rig]\nload = crate\n[anchor top]\nat = 5 m\n[block wheel]\non = top\nefficiency = 94 .. 96 %%\n"
        "[load crate]\nat = 2 m\nweight = 100 N\n[load stone]\nat = 2 m\nweight = 95 N\n"
        "[hand crew]\nat = 4 m\n[rope balance]\npath = crate, wheel, stone\n[rope lift]\npath = crate, "
        "crew\n";
    rated rig = rate_sound(text);
    const gtl_outcome *lower = gtl_sheet_outcome(&rig.sheet, GTL_LOWER);
    assert_true(lower->possible);
    assert_true(lower->band.sometimes);
    assert_close(lower->state->effort, 100 - 95 / 0.96);
    assert_true(warns(&rig, GTL_WARN_MAY_NOT_LOWER, "crate"));
    assert_false(gtl_band_is_proven(&rig.sheet, lower));
    assert_false(rig.sheet.why & GTL_WHY_LOWER_IMPOSSIBLE);
    rated_end(&rig);
}

/* Of a jam only the state without friction is kept: what hangs where with it is not known. */
static void jam_of_what_sways(void **state)
{
    (void)state;
    static const char text[] =
        "[rig]\ncases = raise, jam\n[anchor top]\nat = 0 m, 5 m\n[block wheel]\non = top\n"
        "efficiency = 80 .. 90 %%\n%s[load crate]\nat = 0 m, 1 m\nweight = 100 N\n[hand crew]\nat = 2 m, 1 "
        "m\n"
        "limit = 1 kN\n[rope fall]\npath = %s, wheel, crew\n%s";
    rated rig = rate_sound(text, "", "crate", "");
    assert_true(gtl_band_is_proven(&rig.sheet, gtl_sheet_outcome(&rig.sheet, GTL_JAM)));
    rated_end(&rig);
    rig = rate_sound(text, "[joint hook]\nat = 0 m, 2 m\n", "hook", "[sling strop]\npath = hook, crate\n");
    assert_true(gtl_band_is_proven(&rig.sheet, gtl_sheet_outcome(&rig.sheet, GTL_RAISE)));
    assert_false(gtl_band_is_proven(&rig.sheet, gtl_sheet_outcome(&rig.sheet, GTL_JAM)));
    rated_end(&rig);
}

/* ---- turns ---- */

/* Textbook: mu 0.4, 1,000 N: 81.0 N with one turn, 6.56 N with two. */
static void turns_by_the_textbook(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = hold\n[anchor quay]\nat = 3 m\n[fairlead post]\non = quay\n"
                           "friction = 0.4 .. 0.5\nwrap = 0 deg\n[load barge]\nat = 1 m\nweight = 1000 N\n"
                           "[hand crew]\nat = 2 m\nlimit = 80 N\n[rope line]\npath = barge, post, crew\n");
    assert_int_equal(rig.sheet.post_count, 1);
    const gtl_post *post = &rig.sheet.posts[0];
    assert_string_equal(rig.rig->things[post->thing].name, "post");
    assert_close(post->turns[0].hold, 1000);
    assert_true(fabs(post->turns[1].hold - 81.0) < 0.05);
    assert_true(fabs(post->turns[2].hold - 6.56) < 0.005);
    assert_int_equal(post->enough, 2);
    assert_close(post->turns[1].raise, 1000 * exp(0.5 * 2 * 3.14159265358979323846));
    assert_close(post->turns[1].lead, 1000);
    assert_close(post->turns[1].anchor, 1000 + post->turns[1].raise);
    rated_end(&rig);
}

/* The row of the turns that are stated is what the cases come to. */
static void stated_turns_are_the_cases(void **state)
{
    (void)state;
    rated rig = rate_sound("[anchor quay]\nat = 3 m\n[fairlead post]\non = quay\nfriction = 0.15 .. 0.22\n"
                           "turns = 1\n[load barge]\nat = 1 m\nweight = 1000 N\n[hand crew]\nat = 2 m\n"
                           "[rope line]\npath = barge, post, crew\n");
    const gtl_post_turn *turn = &rig.sheet.posts[0].turns[1];
    assert_close(turn->hold, gtl_sheet_outcome(&rig.sheet, GTL_LOWER)->state->effort);
    assert_close(turn->raise, gtl_sheet_outcome(&rig.sheet, GTL_RAISE)->state->effort);
    assert_close(turn->force, demand_of(&rig, "post"));
    assert_int_equal(rig.sheet.posts[0].enough, -1); /* nobody says what the hand can pull */
    rated_end(&rig);
}

static void no_post_without_friction(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[anchor quay]\nat = 3 m\n[fairlead post]\non = quay\nfriction = 0\n[load barge]\nat = 1 m\n"
        "weight = 1000 N\n[hand crew]\nat = 2 m\n[rope line]\npath = barge, post, crew\n");
    assert_int_equal(rig.sheet.post_count, 0);
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_sheave),
        cmocka_unit_test(sheaves_of_one_block_differ),
        cmocka_unit_test(middle_of_a_long_lead),
        cmocka_unit_test(raise_that_cannot_be_at_one_end),
        cmocka_unit_test(load_that_may_not_come_down),
        cmocka_unit_test(jam_of_what_sways),
        cmocka_unit_test(turns_by_the_textbook),
        cmocka_unit_test(stated_turns_are_the_cases),
        cmocka_unit_test(no_post_without_friction),
    };
    return cmocka_run_group_tests_name("band", tests, NULL, NULL);
}
