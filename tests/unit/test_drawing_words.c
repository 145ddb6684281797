/* test_drawing_words.c - a drawing told in words: the way of each line. Forces are small round ones, worked
 * out by hand beside each test. */
#include "unit/failing_memory.h"
#include "unit/report_text.h"
#include "unit/told.h"

#include "base/text.h"
#include "report/drawing.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* ---- routes ---- */

/* 100 N on two parts of line: 50 N in each. Beam: 50 N of the becket, and two parts over the head. */
static const char two_parts[] = "[rig]\nefficiency = 100 %\n[anchor beam]\nat = 0 m, 6 m\n"
                                "[block head]\non = beam\n[block tail]\nat = 0 m, 2 m\n"
                                "[load drum]\non = tail\nweight = 100 N\n[hand crew]\nat = 0 m, 1 m\n"
                                "[rope fall]\npath = head, tail, head, crew\n";

static void whole_text(void **state)
{
    (void)state;
    char *text = told(two_parts, "hold");
    assert_string_equal(
        text,
        "Case hold: at rest, without friction.\n"
        "The rope fall is tied to the becket of head and goes down to tail, under it, up to head, over it, "
        "down to crew; it carries 50.0 N throughout.\n"
        "The hand crew pulls 50.0 N (5.10 kgf).\n"
        "The whole force on each block or fairlead: head 150 N, tail 100 N.\n"
        "The anchor beam holds 150 N, pulled straight down.\n"
        "The load drum, on tail, weighs 100 N (10.2 kgf) and is the one that is lifted.\n"
        "The verdict on the rig, by all cases worked, is unrated: too little is stated to say more; no "
        "rating "
        "to check by: beam, head, tail, fall.");
    free(text);
}

/* Efficiency 50 % at 180 degrees: each turn doubles the tension. Raising 300 N, the first part carries 100 N,
 * the second 200 N, the hand 400 N. */
static void parts_that_differ(void **state)
{
    (void)state;
    expect("[rig]\nefficiency = 50 %\n[anchor beam]\nat = 0 m, 6 m\n[block head]\non = beam\n"
           "[block tail]\nat = 0 m, 2 m\n[load drum]\non = tail\nweight = 300 N\n[hand crew]\n"
           "at = 0 m, 1 m\n[rope fall]\npath = head, tail, head, crew\n",
           "raise",
           "goes down to tail (100 N), under it, up to head (200 N), over it, down to crew (400 N).\n");
}

/* A path told from the hand's end begins there. */
static void begins_at_the_hand(void **state)
{
    (void)state;
    expect(
        "[rig]\nefficiency = 100 %\n[anchor beam]\nat = 0 m, 6 m\n[connector hook]\n[block head]\n"
        "on = beam\n[load drum]\nat = 0 m, 2 m\nweight = 100 N\n[hand crew]\nat = 4 m, 6 m\n"
        "[rope fall]\npath = crew, head, drum via hook\n",
        "hold",
        "The rope fall begins at the hand crew and goes across to the left to head, over it, down to drum, "
        "where it is tied by hook; it carries 100 N throughout.\n");
}

/* Drawn mirrored, left and right change places and nothing else. */
static const char turns[] =
    "[rig]\nefficiency = 100 %%\n[anchor sill]\nat = %s8 m, 6 m\n[anchor wall]\nat = %s8 m, 5 m\n"
    "[anchor floor]\nat = 0 m, 0 m\n[anchor beam]\nat = 0 m, 6 m\n[block head]\non = beam\n"
    "[block lead]\non = floor\n[block cheek]\non = wall\n[load drum]\nat = %s1 m, 1 m\nweight = 100 N\n"
    "[hand crew]\nat = 0 m, 4.9 m\n[rope fall]\npath = drum, head, lead, cheek, crew\n"
    "[sling tag]\npath = sill, drum\n";

static void sides_of_turns(void **state)
{
    (void)state;
    char text[1024];
    snprintf(text, sizeof text, turns, "", "", "");
    expect(text, "hold",
           "over it, down to lead, under it, slanting up to the right to cheek, round it, "
           "across to the left to crew");
    snprintf(text, sizeof text, turns, "-", "-", "-");
    expect(text, "hold",
           "over it, down to lead, under it, slanting up to the left to cheek, round it, "
           "across to the right to crew");
}

/* With heights alone nothing goes to a side, and a line that goes straight through does not turn. */
static void heights_alone(void **state)
{
    (void)state;
    static const char rig[] = "[rig]\nefficiency = 100 %\n[anchor top]\nat = 6 m\n[anchor mid]\nat = 4 m\n"
                              "[block head]\non = top\n[block guide]\non = mid\n[load drum]\nat = 1 m\n"
                              "weight = 100 N\n[hand crew]\nat = 2 m\n[rope fall]\n"
                              "path = drum, guide, head, crew\n";
    expect(rig, "hold", "goes up to guide, straight past it, up to head, over it, down to crew;");
    expect(rig, "hold", "The anchor mid holds nothing.\n");
    expect_not(rig, "hold", "right");
}

/* In space there is no right or left. */
static void in_space(void **state)
{
    (void)state;
    static const char rig[] = "[anchor a]\nat = 0 m, 0 m, 4 m\n[anchor b]\nat = 6 m, 0 m, 4 m\n[load drum]\n"
                              "at = 3 m, 0 m, 0 m\nweight = 80 N\n[sling one]\npath = a, drum\n[sling two]\n"
                              "path = b, drum\n";
    /* Legs 3 across and 4 down: each 40 N x 5 / 4, which is 36.87 deg from down. */
    expect(rig, "hold",
           "The sling one is tied to a and goes slanting down to drum, where it is tied; it "
           "carries 50.0 N.");
    expect(rig, "hold", "The anchor b holds 50.0 N, pulled down, 36.9 deg from straight down.");
    expect_not(rig, "hold", "right");
    expect_not(rig, "hold", "lifted");
}

static void fairleads_with_turns(void **state)
{
    (void)state;
    expect("[anchor post]\nat = 2 m, 4 m\n[fairlead bollard]\non = post\nfriction = 0.1\nturns = 2\n"
           "[load drum]\nat = 2 m, 1 m\nweight = 100 N\n[hand crew]\nat = 5 m, 4 m\n[rope line]\n"
           "path = drum, bollard, crew\n",
           "hold", "goes up to bollard, round it with 2 whole turns more, across to the right to crew;");
}

/* ---- long tackles ---- */

/* A line to and fro between two blocks, `parts` times; then over a lead to the hand. */
static char *tackle(int parts)
{
    static char path[8192];
    size_t used = 0;
    for (int i = 0; i < parts; i++)
        used += (size_t)snprintf(path + used, sizeof path - used, "%s, ", i % 2 ? "tail" : "head");
    rated rig = rate_sound("[rig]\nefficiency = 96 %%\n[anchor beam]\nat = 0 m, 9 m\n[anchor floor]\n"
                           "at = 2 m, 0 m\n[block head]\non = beam\n[block tail]\nat = 0 m, 3 m\n"
                           "[block lead]\non = floor\n[load drum]\non = tail\nweight = 1 kN\n[hand crew]\n"
                           "at = 5 m, 1 m\n[rope fall]\npath = %shead, lead, crew\n",
                           path);
    char *text = told_of(&rig, "raise");
    rated_end(&rig);
    return text;
}

/* However long, a tackle is told in a few lines, and both its ends in full. */
static void long_tackles(void **state)
{
    (void)state;
    char *text = tackle(24), *longer = tackle(120);
    assert_says(text, "goes down to tail (");
    assert_says(text, ", over it, down to tail (");
    assert_says(text, ", under it, and so on to and fro between head and tail, and at last from head ");
    assert_says(text, "to lead (");
    assert_says(text, " Of its 26 parts the least carries ");
    assert_says(longer, " Of its 122 parts the least carries ");
    assert_true(strlen(longer) < strlen(text) + 40);
    free(text);
    free(longer);
    text = tackle(6); /* 9 stops: still told in full */
    assert_keeps_quiet(text, "to and fro");
    assert_keeps_quiet(text, "at last");
    free(text);
}

/* What does not go to and fro is not said to. */
static void long_way_round(void **state)
{
    (void)state;
    gtl_text text = {0};
    for (int i = 0; i < 10; i++)
        gtl_text_add(&text, "[anchor a%d]\nat = %d m, %d m\n[block b%d]\non = a%d\n", i, i, i % 2 ? 5 : 6, i,
                     i);
    gtl_text_add(&text, "[rig]\nefficiency = 100 %%\n[load drum]\nat = 0 m, 1 m\nweight = 100 N\n"
                        "[hand crew]\nat = 9 m, 1 m\n[rope fall]\npath = drum, b0, b1, b2, b3, b4, b5, b6, "
                        "b7, b8, b9, crew\n");
    char *rig = gtl_text_take(&text);
    /* Twelve stops. Three parts reach b2, the last two begin at b8: five more stops lead to b7, the sixth to
     * b8. */
    expect(rig, "hold",
           "b2, over it, then on by 6 more stops in the order of its path, and at last from b8 ");
    expect(rig, "hold", "; it carries 100 N throughout.");
    free(rig);
}

/* ---- memory ---- */

static void memory_that_fails(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", two_parts);
    long alive = blocks_alive();
    bool refused = true;
    long count = 0;
    for (; refused; count++) {
        allow_allocations(count);
        char *text = gtl_words_drawing(&rig.sheet, 0);
        refused = allow_all_allocations();
        if (refused) assert_null(text);
        free(text);
        assert_int_equal(blocks_alive(), alive);
    }
    assert_true(count > 10);
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(whole_text),           cmocka_unit_test(parts_that_differ),
        cmocka_unit_test(begins_at_the_hand),   cmocka_unit_test(sides_of_turns),
        cmocka_unit_test(heights_alone),        cmocka_unit_test(in_space),
        cmocka_unit_test(fairleads_with_turns), cmocka_unit_test(long_tackles),
        cmocka_unit_test(long_way_round),       cmocka_unit_test(memory_that_fails),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
