/* test_limit_edges.c - limits that are no rating reached, what is open, what is needed, faults and memory.
 * All gear is invented. */
#include "unit/failing_memory.h"
#include "unit/ranged.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* --- edges that are no rating reached --- */

/* A known pull draws a pump's sling off the eyebolt's axis, the more the lighter the pump; beyond 45 degrees
 * the shipped table allows nothing. */
#define OFF_AXIS                                                                                             \
    "[anchor eye]\nat = 0 m, 4 m\naxis = down\nfitting = shoulder-eyebolt\nwll = 9 kN\n"                     \
    "[load pump]\nat = 0.2 m, 2 m\nweight = %.17g N\n[sling drop]\npath = eye, pump\nwll = 30 kN\n"          \
    "[hand tag]\nat = 9 m, 2 m\npull = 1 kN\n[rope tag-line]\npath = pump, tag\nwll = 5 kN\n"

static void jumps(void **state)
{
    (void)state;
    double pi = acos(-1);
    static char text[1000];
    snprintf(text, sizeof text, OFF_AXIS, 3000.0);
    ranged f = find_range(text);
    double weight = f.limit.lightest.mass * G;
    assert_int_equal(f.limit.lightest.kind, GTL_EDGE_RATING);
    assert_part(&f, f.limit.lightest.component, "eye");
    assert_true(f.limit.lightest.jumps);
    assert_false(f.limit.heaviest.jumps);
    rated last = rate_sound(OFF_AXIS, weight);
    int eye = (int)(component_of(&last, "eye") - last.sheet.components);
    assert_true(fabs(last.sheet.outcomes[0].angle[eye] - pi / 4) < 1e-8);
    assert_int_equal(last.sheet.verdict, GTL_WITHIN);
    rated beyond = rate_sound(OFF_AXIS, weight * (1 - 1e-6));
    assert_int_equal(beyond.sheet.verdict, GTL_OVER);
    assert_true(isinf(component_of(&beyond, "eye")->utilisation));
    rated_end(&beyond);
    rated_end(&last);
    ranged_end(&f);
    /* Drawn where no rating is enough: that is what it needs. */
    snprintf(text, sizeof text, OFF_AXIS, 300.0);
    ranged light = find_range(text);
    assert_false(light.limit.permitted);
    assert_true(light.limit.found);
    assert_true(isinf(light.limit.needs[0].needed));
    assert_close(light.limit.lightest.mass * G, weight);
    ranged_end(&light);
}

/* A preventer without a rating, slack as drawn, comes taut under a lighter load: nothing is known beyond. The
 * pump then hangs 2 m under a, aside by x, 3 m from b: (2 - x)^2 + y^2 = 9 with x^2 + y^2 = 4 gives x = -1/4.
 */
static void unknown_rating(void **state)
{
    (void)state;
    ranged f =
        find_range("[anchor a]\nat = 0 m, 4 m\nwll = 90 kN\n[anchor b]\nat = 2 m, 4 m\nwll = 90 kN\n"
                   "[load pump]\nat = 0 m, 2 m\nmass = 300 kg\n[sling drop]\npath = a, pump\nwll = 30 kN\n"
                   "[sling stay]\npath = b, pump\nlength = 3 m\n[hand tag]\nat = -9 m, 2 m\npull = 100 N\n"
                   "[rope tag-line]\npath = pump, tag\nwll = 5 kN\n");
    assert_int_equal(f.limit.lightest.kind, GTL_EDGE_UNKNOWN);
    assert_part(&f, f.limit.lightest.component, "stay");
    assert_false(f.limit.open);
    double x = 0.25, y = sqrt(4 - x * x), across = 9 - x, down = 2 - y;
    double length = sqrt(across * across + down * down);
    /* Across: 100 N by the tag line, against the drop; up and down likewise. */
    double drop = 100 * (across / length) / (x / 2);
    double weight = drop * y / 2 - 100 * down / length;
    if (!(fabs(f.limit.lightest.mass * G / weight - 1) < 1e-6))
        fail_msg("%.12g, by hand %.12g", f.limit.lightest.mass * G, weight);
    ranged_end(&f);
}

/* The head fitting of a block with one sheave holds twice its line: S = 2 W/e. Derived. */
static void head_fitting(void **state)
{
    (void)state;
    ranged f = find_range("[anchor beam]\nat = 4 m\nwll = 20 kN\n[connector shackle]\nwll = 900 N\n"
                          "[block head]\non = beam via shackle\nefficiency = 80 %\nwll = 8 kN\n"
                          "[load pail]\nat = 1 m\nmass = 40 kg\n[hand mason]\nat = 1.5 m\nlimit = 5 kN\n"
                          "[rope line]\npath = pail, head, mason\nwll = 9 kN\n");
    assert_int_equal(f.limit.heaviest.kind, GTL_EDGE_FITTING);
    assert_part(&f, f.limit.heaviest.component, "shackle");
    assert_true(fabs(f.limit.heaviest.mass * G / (900 * 0.8 / 2) - 1) <= 1e-9);
    assert_false(f.limit.permitted);
    for (int i = 0; i < f.limit.need_count; i++)
        if (strcmp(f.limit.as_drawn.components[f.limit.needs[i].component].name, "shackle") == 0)
            assert_close(f.limit.needs[i].needed, 2 * 40 * G / 0.8);
    ranged_end(&f);
}

/* Of two legs one lets go: the load comes to hang on the other, and its weight counts twice. Derived. */
static void after_a_loss(void **state)
{
    (void)state;
    ranged f =
        find_range("[rig]\ncases = hold, lost west\n[anchor west]\nat = -1 m, 3 m\nwll = 90 kN\n"
                   "[anchor east]\nat = 1 m, 3 m\nwll = 90 kN\n[load sign]\nat = 0 m, 2 m\nmass = 100 kg\n"
                   "[sling left]\npath = west, sign\nwll = 10 kN\n[sling right]\npath = east, sign\n"
                   "wll = 10 kN\n");
    assert_at_rating(&f, &f.limit.heaviest, 5000, "right", "lost west");
    ranged_end(&f);
}

/* A jam that overloads its rope does so under any load. */
static void nothing_is_permitted(void **state)
{
    (void)state;
    ranged f = find_range(
        "[rig]\ncases = raise, jam\n[anchor beam]\nat = 4 m\nwll = 20 kN\n[block head]\non = beam\n"
        "efficiency = 80 %\nwll = 8 kN\n[load pail]\nat = 1 m\nmass = 9 kg\n"
        "[hand mason]\nat = 1.5 m\nlimit = 500 N\n[rope line]\npath = pail, head, mason\n"
        "wll = 300 N\n");
    assert_false(f.limit.found || f.limit.permitted || f.limit.open);
    assert_int_equal(f.limit.barred.kind, GTL_EDGE_RATING);
    assert_true(isnan(f.limit.heaviest.mass) && isnan(f.limit.lightest.mass));
    ranged_end(&f);
}

static void no_limit(void **state)
{
    (void)state;
    ranged f = find_range("[anchor beam]\nat = 4 m\nwll = 1000000 kN\n[load bob]\nat = 1 m\nmass = 10 g\n"
                          "[sling drop]\npath = beam, bob\nwll = 1000000 kN\n");
    assert_true(f.limit.found && f.limit.permitted && !f.limit.open);
    assert_int_equal(f.limit.heaviest.kind, GTL_EDGE_NONE);
    assert_true(isnan(f.limit.heaviest.mass));
    assert_int_equal(f.limit.next_count, 0);
    ranged_end(&f);
}

/* --- what is open --- */

static void open_ends(void **state)
{
    (void)state;
    static const char unrated[] = "[anchor beam]\nat = 4 m\n[load bob]\nat = 1 m\nmass = 1 kg\n"
                                  "[sling drop]\npath = beam, bob\nwll = 1 kN\n";
    static const char no_friction[] =
        "[anchor beam]\nat = 4 m\nwll = 9 kN\n[block head]\non = beam\nwll = 9 kN\n"
        "[load pail]\nat = 1 m\nmass = 9 kg\n[hand mason]\nat = 1 m\n"
        "[rope line]\npath = pail, head, mason\nwll = 300 N\n";
    /* Nobody hauls: friction may hold the saddle either way. */
    static const char undecided[] =
        "[anchor a]\nat = 0 m, 4 m\nwll = 9 kN\n[anchor b]\nat = 3 m, 4 m\nwll = 9 kN\n"
        "[block saddle]\nat = 1.5 m, 2 m\nefficiency = 90 %\nwll = 9 kN\n[load bell]\non = saddle\nmass = 9 "
        "kg\n"
        "[rope bight]\npath = a, saddle, b\nwll = 3 kN\n";
    /* The backup is slack while the main sling holds: the bale drops into it. */
    static const char drop[] = "[rig]\ncases = hold, lost main\n[anchor a]\nat = 0 m, 9 m\nwll = 20 kN\n"
                               "[anchor b]\nat = 0.5 m, 9 m\nwll = 20 kN\n[load bale]\nat = 0 m, 5 m\n"
                               "mass = 50 kg\n[sling main]\npath = a, bale\nwll = 9 kN\n"
                               "[sling backup]\npath = b, bale\nlength = 8 m\nwll = 9 kN\n";
    const struct ends {
        const char *text, *part;
        int undecided;
    } cases[] = {
        {unrated, "drop", 0}, {no_friction, "line", 0}, {undecided, "bight", 1}, {drop, "backup", 0}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        ranged f = find_range(cases[i].text);
        assert_true(f.limit.open && f.limit.permitted);
        assert_int_equal(f.limit.undecided_count, cases[i].undecided);
        assert_part(&f, f.limit.heaviest.component, cases[i].part);
        ranged_end(&f);
    }
}

/* --- what a rating would have to be --- */

/* Demand x design factor / what the knot keeps. */
static void needs(void **state)
{
    (void)state;
    ranged f =
        find_range("[rig]\ndesign factor = 8\n[anchor beam]\nat = 4 m\nwll = 9 kN\n[load bob]\nat = 1 m\n"
                   "mass = 100 kg\n[sling drop]\npath = beam, bob\nmbs = 12 kN\nmaterial = polyester\n"
                   "knot = bowline\n");
    assert_int_equal(f.limit.need_count, 2);
    assert_int_equal(f.limit.needs[1].kind, GTL_STEP_MBS);
    assert_close(f.limit.needs[1].paper, 12000);
    assert_close(f.limit.needs[1].needed, 100 * G * 8 / 0.55);
    assert_close(f.limit.needs[0].needed, 100 * G);
    ranged_end(&f);
}

/* --- faults, and memory --- */

static void which_load(void **state)
{
    (void)state;
    static const struct refused {
        const char *text, *told;
        int line;
    } rows[] = {
        {"[anchor beam]\nat = 4 m\n[load a]\nat = 2 m\nmass = 1 kg\n[load b]\nat = 1 m\nmass = 1 kg\n"
         "[sling c]\npath = beam, a\n[sling d]\npath = a, b\n",
         "write the others as [joint]", 6},
        {"[anchor beam]\nat = 4 m\n[joint a]\nat = 2 m\nmass = 1 kg\n[sling c]\npath = beam, a\n",
         "add a load", 0},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        gtl_limit limit;
        gtl_rig *rig = read_sound("%s", rows[i].text);
        assert_int_equal(gtl_find_limit(rig, &limit), GTL_FAULTY);
        assert_non_null(strstr(limit.reason, rows[i].told));
        assert_int_equal(limit.blame, rows[i].line);
        gtl_limit_end(&limit);
        gtl_rig_free(rig);
    }
}

/* Nothing holds the pulley's rope but the load: no weight makes an answer of it. */
static void no_answer(void **state)
{
    (void)state;
    gtl_limit limit;
    gtl_rig *rig =
        read_sound("[anchor beam]\nat = 4 m\n[block head]\non = beam\n[load a]\nat = 2 m\nmass = 3 kg\n"
                   "[joint b]\nat = 1 m\nmass = 1 kg\n[rope line]\npath = a, head, b\n");
    assert_int_equal(gtl_find_limit(rig, &limit), GTL_NO_ANSWER);
    assert_true(limit.reason[0] != '\0');
    gtl_limit_end(&limit);
    gtl_rig_free(rig);
}

/* True once no allocation was refused. */
static bool finds_with(const gtl_rig *rig, long allowed)
{
    gtl_limit limit;
    long before = blocks_alive();
    allow_allocations(allowed);
    gtl_status status = gtl_find_limit(rig, &limit);
    bool refused = allow_all_allocations();
    assert_int_equal(status, refused ? GTL_NO_MEMORY : GTL_OK);
    gtl_limit_end(&limit);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

static bool reports_with(const gtl_limit *limit, gtl_form form, long allowed)
{
    allow_allocations(allowed);
    char *report = gtl_limit_report(limit, form);
    bool refused = allow_all_allocations();
    assert_true(refused ? !report : !!report);
    free(report);
    return !refused;
}

/* A window beside the load as drawn. */
static const char balanced[] =
    "[rig]\nload = drop\n[anchor beam]\nat = 5 m\nwll = 20 kN\n[block head]\non = beam\nefficiency = 98 %\n"
    "wll = 9 kN\n[load drop]\nat = 1 m\nmass = 49 kg\n[load arbor]\nat = 3 m\nmass = 50 kg\n"
    "[rope lift]\npath = drop, head, arbor\nwll = 5 kN\n[hand crew]\nat = 0.5 m\nlimit = 40 N\n"
    "[rope haul]\npath = arbor, crew\nwll = 5 kN\n";

/* Each of the first allocations fails in turn, then fewer and fewer of the many. */
static void memory(void **state)
{
    (void)state;
    ranged f = find_range(balanced);
    for (long allowed = 0; !finds_with(f.rig, allowed);) allowed += 1 + allowed / 40;
    for (int form = GTL_TEXT; form <= GTL_JSON; form++)
        for (long allowed = 0; !reports_with(&f.limit, (gtl_form)form, allowed);) allowed++;
    ranged_end(&f);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(jumps),
        cmocka_unit_test(unknown_rating),
        cmocka_unit_test(head_fitting),
        cmocka_unit_test(after_a_loss),
        cmocka_unit_test(nothing_is_permitted),
        cmocka_unit_test(no_limit),
        cmocka_unit_test(open_ends),
        cmocka_unit_test(needs),
        cmocka_unit_test(which_load),
        cmocka_unit_test(no_answer),
        cmocka_unit_test(memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
