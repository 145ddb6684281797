/* test_drawing_told.c - a drawing told in words: what differs from case to case, and nothing that the case
 * does not bear out. Forces are small round ones, worked out by hand beside each test. */
#include "unit/report_text.h"
#include "unit/told.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>

#include <cmocka.h>

/* ---- what differs from case to case ---- */

/* Two tied lines side by side, one of them too long. */
static void slack_lines(void **state)
{
    (void)state;
    static const char rig[] = "[anchor a]\nat = 0 m, 6 m\n[anchor b]\nat = 1 m, 6 m\n[load drum]\n"
                              "at = 0 m, 2 m\nweight = 100 N\n[sling tight]\npath = a, drum\n[sling spare]\n"
                              "path = b, drum\nlength = 7 m\n";
    expect(rig, "hold",
           "The sling spare is tied to b and goes down to drum, where it is tied; it is slack and "
           "carries nothing.");
    expect(rig, "hold", "The anchor b holds nothing.");
    expect(rig, "hold", "The anchor a holds 100 N, pulled straight down.");
}

/* One rope, tied to the load in its middle, which is drawn to the right of both anchors: it swings under the
 * nearer one, and the part to the other one comes slack. */
static void slack_parts(void **state)
{
    (void)state;
    expect("[anchor near]\nat = 0 m, 6 m\n[anchor far]\nat = -1 m, 6 m\n[load drum]\nat = 1 m, 2 m\n"
           "weight = 100 N\n[rope line]\npath = near, drum, far\n",
           "hold", "goes down to drum (100 N), where it is tied, up to far (slack), where it is tied.\n");
}

/* A spreader 4 m wide, hung at 3-4-5 slopes: 2 m across, 1.5 m down, 80 N a leg's height. Push: 80 x 2/1.5 /
 * 2 where the legs share 160 N: each leg's height carries 80 N, its level part is 80 x 2 / 1.5 = 106.67 N. */
static void spars_are_pushed_or_pulled(void **state)
{
    (void)state;
    static const char rig[] = "[anchor hook]\nat = 0 m, 5 m\n[joint left]\nat = -2 m, 3.5 m\n[joint right]\n"
                              "at = 2 m, 3.5 m\n[load west]\nat = -2 m, 1 m\nweight = 80 N\n[load east]\n"
                              "at = 2 m, 1 m\nweight = 80 N\n[spar pole]\npath = left, right\n[sling one]\n"
                              "path = hook, left\n[sling two]\npath = hook, right\n[sling three]\n"
                              "path = left, west\n[sling four]\npath = right, east\n";
    expect(rig, "hold",
           "The spar pole goes from left across to the right to right; it is pushed with 107 N.");
    expect("[anchor hook]\nat = 0 m, 5 m\n[joint eye]\nat = 0 m, 3 m\n[load west]\nat = 0 m, 1 m\n"
           "weight = 80 N\n[spar bar]\npath = hook, eye\n[sling leg]\npath = eye, west\n",
           "hold", "The spar bar goes from hook down to eye; it is pulled with 80.0 N.");
}

/* One of two lines lets go: the other takes all of 100 N, twice, for the loss factor. */
static void losses(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = lost west\n[anchor a]\nat = -3 m, 6 m\n[anchor b]\nat = 3 m, 6 m\n"
                           "[load drum]\nat = 0 m, 2 m\nweight = 100 N\n[sling west]\npath = a, drum\n"
                           "[sling east]\npath = b, drum\n");
    char *text = told_of(&rig, "lost west");
    assert_says(text, "Case lost west: a part lets go, and the rig hangs anew. All forces are times 2.\n");
    assert_says(text, "The sling west is gone.\n");
    assert_says(text,
                "The sling east is tied to b and goes down to drum, where it is tied; it carries 200 N.\n");
    assert_says(text, "The anchor a holds nothing. The anchor b holds 200 N, pulled straight down.\n");
    free(text);
    rated_end(&rig);
}

/* The anchor of a redirect lets go: its block comes loose, and the rope goes straight on. */
static void lost_anchors_and_loose_bodies(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = lost eye\nloss factor = 3\n[anchor beam]\nat = 0 m, 6 m\n"
                           "[anchor eye]\nat = 2 m, 5 m\n[block kick]\non = eye\nefficiency = 100 %%\n"
                           "[load drum]\nat = 0 m, 2 m\nweight = 100 N\n[block head]\non = beam\n"
                           "efficiency = 100 %%\n[hand crew]\nat = 4 m, 5 m\n[rope fall]\n"
                           "path = drum, head, kick, crew\n");
    char *text = told_of(&rig, "lost eye");
    assert_says(text, "All forces are times 3. kick came loose and is left out.");
    assert_says(text,
                "What is left of the rope fall is tied to drum and goes up to head, over it, across to the "
                "right to crew; it carries 300 N throughout.\n");
    assert_says(text, "The anchor eye has let go.");
    assert_keeps_quiet(text, "kick 0");
    free(text);
    rated_end(&rig);
}

/* A line with slack that catches what another lets go is told as the drop that it is. */
static void drops(void **state)
{
    (void)state;
    char *text =
        told("[rig]\ncases = lost main\n[anchor a]\nat = 0 m, 6 m\n[load drum]\nat = 0 m, 2 m\n"
             "weight = 100 N\n[sling main]\npath = a, drum\n[anchor b]\nat = 1 m, 6 m\n[sling spare]\n"
             "path = b, drum\nlength = 5 m\n",
             "lost main");
    assert_says(text, "What spare catches drops before that, since the line had 0.877 m of slack: that makes "
                      "more force than is told here.");
    free(text);
}

/* A case that cannot be has its reason, the route, and not one force but the weight. */
static void cases_that_cannot_be(void **state)
{
    (void)state;
    static const char rig[] = "[rig]\ncases = lost hook\n[anchor a]\nat = 6 m\nwll = 9 kN\n[load drum]\n"
                              "at = 2 m\nweight = 500 N\n[rope rope]\npath = a via hook, drum\nwll = 9 kN\n"
                              "[connector hook]\nwll = 9 kN\n";
    char *text = told(rig, "lost hook");
    assert_string_equal(
        text, "Case lost hook: a part lets go, and the rig hangs anew. `drum` falls: nothing holds it once "
              "`hook` has let go. What follows is the rig as its file draws it, without forces.\n"
              "The rope rope is tied to a by hook and goes down to drum, where it is tied.\n"
              "The load drum weighs 500 N (51.0 kgf).\n"
              "The verdict on the rig, by all cases worked, is unrated: too little is stated to say more; a "
              "load falls after: lost hook.");
    free(text);
}

/* A counterweight over a block that hardly turns holds the load: it does not come down by itself. */
static void lowers_that_cannot_be(void **state)
{
    (void)state;
    char *text =
        told("[anchor post]\nat = 2 m, 4 m\n[fairlead ring]\non = post\nfriction = 0\n[block b]\n"
             "on = post\nefficiency = 10 %\n[load drum]\nat = 2 m, 1 m\nweight = 100 N\n"
             "[load keg]\nat = 0 m, 1 m\nweight = 95 N\n[hand crew]\nat = 4 m, 1 m\n[rig]\n"
             "load = drum\n[rope line]\npath = drum, b, keg\n[rope other]\npath = drum, ring, crew\n",
             "lower");
    assert_says(text, "It cannot be: ");
    assert_says(text, "without forces.\n");
    assert_keeps_quiet(text, "pulls");
    assert_keeps_quiet(text, "carries");
    assert_keeps_quiet(text, "The anchor");
    free(text);
}

/* Friction that is not stated makes every figure of raising too good, and that is said where it stands. */
static void friction_not_stated(void **state)
{
    (void)state;
    static const char rig[] = "[anchor beam]\nat = 6 m\n[block head]\non = beam\n[load drum]\nat = 2 m\n"
                              "weight = 100 N\n[hand crew]\nat = 1 m\n[rope fall]\npath = drum, head, crew\n";
    expect(rig, "raise", " Friction is not stated everywhere: the true pull is more.\n");
    expect(rig, "raise", "; friction not stated: head.");
    expect_not(rig, "lower", "the true pull is more");
    static const char stated[] = "[anchor beam]\nat = 6 m\n[block head]\non = beam\nefficiency = 100 %\n"
                                 "[load drum]\nat = 2 m\nweight = 100 N\n[hand crew]\nat = 1 m\n"
                                 "[rope fall]\npath = drum, head, crew\n";
    expect_not(stated, "raise", "the true pull is more");
}

/* A crate in the bight of a line between two beams: at 80 % one side carries 80 N and the other 100 N, or the
 * other way; equal tensions are 90 N. */
static void undecided_stops(void **state)
{
    (void)state;
    char *text = told("[anchor left]\nat = 4 m\n[anchor right]\nat = 5 m\n[block tail]\nat = 1 m\n"
                      "efficiency = 80 %\n[load crate]\non = tail\nweight = 180 N\n[rope bight]\n"
                      "path = left, tail, right\n",
                      "hold");
    assert_says(text, "Tensions and pulls are of one state out of 3 that may be, the one with equal tensions "
                      "where friction may act either way; forces on bodies and anchors are the worst of "
                      "all.\n");
    assert_says(text, "goes down to tail, under it, up to right, where it is tied; it carries 90.0 N");
    assert_says(text, "The anchor left holds 100 N, pulled straight down. The anchor right holds 100 N");
    free(text);
}

/* Jam: 250 N of the hand, with friction more at the beam than without. */
static void jams(void **state)
{
    (void)state;
    char *text = told("[rig]\ncases = jam\n[anchor beam]\nat = 6 m\n[block head]\non = beam\n"
                      "efficiency = 90 %\n[load drum]\nat = 2 m\nweight = 100 N\n[hand crew]\nat = 1 m\n"
                      "limit = 250 N\n[rope fall]\npath = drum, head, crew\n",
                      "jam");
    assert_says(text, "the one without friction; forces on bodies and anchors are the worst of all.\n");
    assert_says(text, "The hand crew pulls 250 N (25.5 kgf).\n");
    free(text);
}

static void guides(void **state)
{
    (void)state;
    /* 3-4-5: 100 N of height, 75 N of side pull, all of which the track takes. */
    expect("[anchor a]\nat = 3 m, 5 m\n[load arbor]\nat = 0 m, 1 m\nguide = vertical\nweight = 100 N\n"
           "[sling line]\npath = a, arbor\n",
           "hold", "The track of arbor has to resist 75.0 N.\n");
}

static void tied_in_the_middle(void **state)
{
    (void)state;
    expect("[anchor a]\nat = 0 m, 6 m\n[connector ring]\n[joint knot]\nat = 0 m, 4 m\n[load drum]\n"
           "at = 0 m, 2 m\nweight = 100 N\n[rope line]\npath = a, knot via ring, drum\n",
           "hold", "goes down to knot, where it is tied by ring, down to drum, where it is tied;");
}

/* ---- the verdict ---- */

static void what_is_over(void **state)
{
    (void)state;
    char *text = told("[anchor beam]\nat = 6 m\nwll = 50 N\n[load drum]\nat = 2 m\nweight = 100 N\n"
                      "[sling leg]\npath = beam, drum\nwll = 80 N\n",
                      "hold");
    assert_says(text,
                "is over: do not load this rig as it is; over the rating: beam, leg. The anchor beam is "
                "over its rating, at 200.0 %, by hold. The sling leg is over its rating, at 125.0 %, by "
                "hold.");
    free(text);
    expect("[anchor beam]\nat = 6 m\nwll = 500 N\n[load drum]\nat = 2 m\nweight = 100 N\n[sling leg]\n"
           "path = beam, drum\nwll = 800 N\n",
           "hold", "is within the ratings typed in.");
}

static void figures_in_pounds(void **state)
{
    (void)state;
    char *text = told("[rig]\nunits = us\n[anchor beam]\nat = 20 ft\n[load drum]\nat = 2 ft\nmass = 100 lb\n"
                      "[sling leg]\npath = beam, drum\n",
                      "hold");
    assert_says(text, "it carries 100 lbf.");
    assert_keeps_quiet(text, "kgf");
    free(text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(slack_lines),
        cmocka_unit_test(slack_parts),
        cmocka_unit_test(spars_are_pushed_or_pulled),
        cmocka_unit_test(losses),
        cmocka_unit_test(lost_anchors_and_loose_bodies),
        cmocka_unit_test(drops),
        cmocka_unit_test(cases_that_cannot_be),
        cmocka_unit_test(lowers_that_cannot_be),
        cmocka_unit_test(friction_not_stated),
        cmocka_unit_test(undecided_stops),
        cmocka_unit_test(jams),
        cmocka_unit_test(guides),
        cmocka_unit_test(tied_in_the_middle),
        cmocka_unit_test(what_is_over),
        cmocka_unit_test(figures_in_pounds),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
