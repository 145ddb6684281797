/* test_report_gear.c - ratings step by step, rows of hardware tables, uses and chains of gear in the report.
 */
#include "unit/failing_memory.h"
#include "unit/rated.h"
#include "unit/report_text.h"

#include <jansson.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* A crate on one rope. */
#define HUNG(sheet, anchor, line)                                                                            \
    "[rig]\n" sheet "[anchor beam]\nat = 0 m, 6 m\n" anchor "[load crate]\nat = 0 m, 2 m\nmass = 120 kg\n"   \
    "[rope fall]\npath = beam, crate\n" line

/* 22 kN, a bowline that keeps 55 %, a design factor of 8: 1.5125 kN, rounded down. */
static void the_way_to_a_rating_is_told(void **state)
{
    (void)state;
    char *text = flowing(HUNG("", "wll = 5 kN\n", "mbs = 22 kN\ndesign factor = 8\nknot = bowline\n"));
    assert_says(text, " beam 5.00 kN WLL fall 22.0 kN MBS x 0.55 bowline / 8 = 1.51 kN Sources");
    assert_says(text, "- knot bowline: ");
    assert_says(text, "hardware-tables/knots.ini]");
    assert_says(text, "fall rope: beam (tied) - crate (tied), knot bowline Cases");
    free(text);
}

static void ratings_that_do_not_rule_are_told(void **state)
{
    (void)state;
    char *text = flowing(HUNG("", "wll = 5 kN\n",
                              "hardware = example-rope-12\nwll = 9 kN\nmbs = 22 kN\n"
                              "design factor = 8\nwear = 90 %\nwet = 85 %\n"));
    assert_says(text,
                "fall 22.0 kN MBS x 0.9 wear x 0.85 wet / 8 = 2.10 kN; also stated: 9.00 kN WLL; 24.0 kN "
                "MBS (example-rope-12) / 8 = 3.00 kN ");
    free(text);
    text = flowing(HUNG("", "wll = 5 kN\n", "mbs = 22 kN\n"));
    assert_says(text, "fall 22.0 kN MBS, no design factor Warnings");
    free(text);
}

static void of_an_end_and_a_bend_the_worse_counts(void **state)
{
    (void)state;
    /* 1 - 0.5 / sqrt(24 / 6) = 0.75, as much as a wedge socket keeps; at 1 it is 0.5. */
    char *text = flowing(HUNG("", "wll = 5 kN\npin diameter = 6 mm\n",
                              "mbs = 21 kN\ndesign factor = 5\n"
                              "diameter = 6 mm\nmaterial = wire-rope\n"
                              "termination = wedge-socket\n"));
    assert_says(text,
                "fall 21.0 kN MBS x 0.5 bend at beam, 1.00 times the rope's diameter / 5 = 2.10 kN; leaves "
                "more, so not counted: x 0.75 wedge-socket ");
    assert_says(text, "- edges that lines lie over - bends of fall at crate: no diameter is stated there -");
    free(text);
}

static void what_is_not_allowed_is_no_figure(void **state)
{
    (void)state;
    const char *rig = HUNG("", "wll = 5 kN\nfitting = plain-eyebolt\naxis = 1, 0\n", "wll = 5 kN\n");
    char *text = flowing(rig);
    assert_says(text, "Verdict OVER");
    assert_says(text, "Governs anchor beam, used in a way that is not allowed, by hold");
    assert_says(text, "anchor beam 1.18 hold 0 not allowed -1.18 over");
    assert_says(text, "beam 5.00 kN WLL x 0 plain-eyebolt, 90.0 deg off its axis (not allowed) = 0 kN");
    assert_says(text, "- fall - beam: beam, not allowed ");
    free(text);
}

static void what_no_table_reaches_is_unrated(void **state)
{
    (void)state;
    char *text =
        flowing("[anchor beam]\nat = 0 m, 6 m\nwll = 5 kN\n[load crate]\nat = 0 m, 2 m\nmass = 120 kg\n"
                "[sling strop]\npath = beam, crate\nwll = 50 kN\nmaterial = steel-chain\nhitch = choke\n"
                "choke angle = 20 deg\n");
    assert_says(text, "Verdict UNRATED");
    assert_says(text, "sling strop 1.18 hold - - - unrated");
    assert_says(text, "x ? choke angle 20.0 deg (nothing is published for that): no rating");
    assert_says(text, "- sling strop: no figure is published for the way it is used");
    assert_says(text, "- strop - beam: not known, since not every part has a rating");
    free(text);
}

static void what_is_not_stated_of_lines_is_named(void **state)
{
    (void)state;
    static const char two[] = "[anchor beam]\nat = 0 m, 6 m\n[load crate]\nat = 0 m, 2 m\nmass = 120 kg\n"
                              "[load box]\nat = 2 m, 2 m\nmass = 120 kg\n[anchor post]\nat = 2 m, 5 m\n"
                              "[rope fall]\npath = beam, crate\nmbs = 20 kN\nknot = reef\n"
                              "[rope tail]\npath = post, box\n";
    char *text = flowing(two);
    assert_says(text, "- knots and terminations of tail: none is stated -");
    assert_says(text, "- edges and bends that lines lie over -");
    free(text);
}

static void rows_and_what_overrides_them_are_told(void **state)
{
    (void)state;
    static const char rig[] =
        "[anchor beam]\nat = 0 m, 6 m\n[block head]\non = beam\n"
        "hardware = example-single-block\nefficiency = 96 %\n[load crate]\nat = 0 m, 2 m\n"
        "mass = 120 kg\n[hand crew]\nat = 3 m, 1 m\n[rope fall]\npath = crate, head, crew\n";
    char *text = flowing(rig);
    assert_says(
        text, "head example-single-block: WLL 2.50 kN, mass 0.9 kg, efficiency 92 %, sheave diameter 75 mm; "
              "the file's own efficiency, 96 %, is used instead Sources");
    assert_says(text, "efficiency 96 % at 180 deg");
    assert_says(text, "- gear example-single-block: invented for examples; no real product [invented; "
                      "hardware-tables/example-gear.ini]");
    free(text);
}

static void the_use_stands_beside_the_own_factor(void **state)
{
    (void)state;
    char *text = flowing(HUNG("use = over-people-germany\n", "wll = 5 kN\n",
                              "mbs = 22 kN\ndesign factor = 8\nmaterial = polyester\n"));
    assert_says(text, "People LOADS OVER PEOPLE (over-people-germany)");
    assert_says(text, "Verdict WITHIN");
    assert_says(
        text,
        "wire rope 10, fibre rope 14, chain 8, shackles 10, metal parts 8; of a WLL no more than 50 %.");
    assert_says(text, "anchor beam WLL 50 % of it rope fall 8 14 ");
    assert_says(text, "not for lifting, holding or catching people. Sources");
    free(text);
    text = flowing(HUNG("use = eu-machinery\n", "wll = 5 kN\n", "mbs = 22 kN\ndesign factor = 8\n"));
    assert_keeps_quiet(text, "OVER PEOPLE");
    /* The material is not stated: the greater of wire and fibre rope. */
    assert_says(text, "anchor beam WLL 4 rope fall 8 7 ");
    free(text);
}

/* A crate of 500 N over one fixed block: twice the line is 1000 N. */
static void head_fittings_are_told(void **state)
{
    (void)state;
    static const char rig[] =
        "[anchor beam]\nat = 6 m\nwll = 9 kN\n[block head]\non = beam via ring\n"
        "efficiency = 100 %%\nwll = 9 kN\n[connector ring]\nwll = %s\n[load crate]\nat = 2 m\n"
        "weight = 500 N\n[hand crew]\nat = 1 m\nlimit = 1 kN\n[rope fall]\n"
        "path = crate, head, crew\nwll = 9 kN\n";
    static const struct row {
        const char *wll, *words, *reason;
    } rows[] = {
        {"1000 N", "head, ring 1.00 1.00 within", NULL},
        {"999 N", "head, ring 1.00 0.999 over", "head fitting under twice the line: ring"},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        static char filled[1000];
        snprintf(filled, sizeof filled, rig, rows[i].wll);
        char *text = flowing(filled);
        assert_says(text, rows[i].words);
        if (rows[i].reason) assert_says(text, rows[i].reason);
        free(text);
    }
}

/* --- as JSON --- */

static json_t *report_of(const char *text)
{
    rated rig = rate_sound("%s", text);
    char *report = gtl_report(&rig.sheet, GTL_JSON);
    rated_end(&rig);
    assert_non_null(report);
    json_t *root = json_loads(report, 0, NULL);
    free(report);
    assert_non_null(root);
    return root;
}

static const char *word(const json_t *entry, const char *key)
{
    return json_string_value(json_object_get(entry, key));
}

static double number(const json_t *entry, const char *key)
{
    return json_number_value(json_object_get(entry, key));
}

static const json_t *component(const json_t *root, const char *name)
{
    size_t i;
    json_t *entry;
    json_array_foreach(json_object_get(root, "components"), i, entry)
    {
        if (strcmp(word(entry, "component"), name) == 0) return entry;
    }
    fail_msg("no component %s", name);
    return NULL;
}

static void chains_multiply_to_the_capacity(void **state)
{
    (void)state;
    static const char *const whats[] = {"mbs", "knot bowline", "wear", "wet", "design factor 7"};
    static const double factors[] = {22000, 0.55, 0.9, 0.85, 1.0 / 7};
    json_t *root = report_of(HUNG("", "wll = 5 kN\n",
                                  "mbs = 22 kN\ndesign factor = 7\nknot = bowline\nwear = 90 %\n"
                                  "wet = 85 %\n"));
    const json_t *fall = component(root, "fall"), *chain = json_object_get(fall, "chain");
    double product = 1;
    assert_int_equal(json_array_size(chain), 5);
    for (size_t i = 0; i < 5; i++) {
        const json_t *step = json_array_get(chain, i);
        assert_string_equal(word(step, "what"), whats[i]);
        assert_close(number(step, "factor"), factors[i]);
        bool table = strcmp(word(step, "source"), "rig file") != 0;
        assert_int_equal(table, i == 1);
        product *= number(step, "factor");
    }
    assert_true(fabs(product / number(fall, "capacity") - 1) < 1e-12);
    assert_true(json_is_null(json_object_get(root, "use")));
    assert_int_equal(json_array_size(json_object_get(root, "hardware")), 0);
    json_decref(root);
}

static void json_has_no_utilisation_where_nothing_is_allowed(void **state)
{
    (void)state;
    json_t *root = report_of(HUNG("", "wll = 5 kN\nfitting = plain-eyebolt\naxis = 1, 0\n", "wll = 5 kN\n"));
    const json_t *beam = component(root, "beam");
    assert_string_equal(word(root, "verdict"), "over");
    assert_string_equal(word(beam, "status"), "over");
    assert_true(json_is_null(json_object_get(beam, "utilisation")));
    assert_true(number(beam, "capacity") == 0);
    json_decref(root);
}

static void json_of_a_loss(void **state)
{
    (void)state;
    json_t *root =
        report_of("[rig]\ncases = lost ring\nloss factor = 3\n[anchor beam]\nat = 0 m, 6 m\n"
                  "[anchor ring]\nat = 2 m, 0 m\n[block head]\non = beam\n[block lead]\non = ring\n"
                  "[load crate]\nat = 0 m, 2 m\nweight = 400 N\n[hand crew]\nat = 4 m, 1 m\n"
                  "[rope fall]\npath = crate, head, lead, crew\n");
    const json_t *cases = json_object_get(root, "cases"), *lost = json_array_get(cases, 1);
    assert_string_equal(word(lost, "case"), "lost ring");
    assert_true(number(lost, "factor") == 3);
    assert_string_equal(json_string_value(json_array_get(json_object_get(lost, "loose"), 0)), "lead");
    assert_int_equal(json_array_size(json_object_get(lost, "lines")), 3);
    /* The crate alone hangs: the head is fixed, and what came loose has no place. */
    assert_int_equal(json_array_size(json_object_get(lost, "places")), 1);
    assert_true(number(json_array_get(cases, 0), "factor") == 1);
    json_decref(root);
}

/* --- memory --- */

/* Rows of all kinds, a use, losses, chains and head fittings. */
static const char geared[] =
    "[rig]\ncases = all, lost ring, lost fall\nload = crate\nuse = over-people-germany\ndesign factor = 8\n"
    "acceleration = 0.5 m/s2\n[anchor beam]\nat = 0 m, 6 m\nwll = 5 kN\nfitting = shoulder-eyebolt\naxis = "
    "down\n"
    "[anchor ring]\nat = 2 m, 0 m\nwll = 3 kN\n[block head]\non = beam via eye\nhardware = "
    "example-single-block\n"
    "efficiency = 94 %\n[connector eye]\nwll = 2 kN\nside load = 30 deg\nwear = 90 %\n[block lead]\non = "
    "ring\n"
    "efficiency = 90 %\nsheave diameter = 60 mm\n[load crate]\nat = 0 m, 2 m\nmass = 30 kg\n[hand crew]\n"
    "at = 4 m, 1 m\nlimit = 500 N\n[rope fall]\npath = crate, head, lead, crew\nhardware = example-wire-6\n"
    "mbs = 30 kN\ntermination = wedge-socket\n[load box]\nat = 5 m, 2 m\nmass = 10 kg\n[anchor post]\n"
    "at = 5 m, 4 m\n[sling strop]\npath = post, box\nhitch = choke\nwll = 1 kN\n";

/* Report with the first `allowed` allocations granted; true once none was refused. Of JSON the text is
 * jansson's: it is not counted. */
static bool reports_with(const rated *rig, gtl_form form, long allowed)
{
    long before = blocks_alive();
    allow_allocations(allowed);
    char *report = gtl_report(&rig->sheet, form);
    bool refused = allow_all_allocations();
    assert_true((report == NULL) == refused);
    free(report);
    if (form == GTL_TEXT) assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void memory_that_fails_is_no_report(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", geared);
    for (int form = GTL_TEXT; form <= GTL_JSON; form++) {
        long allowed = 0;
        while (!reports_with(&rig, (gtl_form)form, allowed)) allowed++;
        assert_true(allowed > 100);
    }
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_way_to_a_rating_is_told),
        cmocka_unit_test(ratings_that_do_not_rule_are_told),
        cmocka_unit_test(of_an_end_and_a_bend_the_worse_counts),
        cmocka_unit_test(what_is_not_allowed_is_no_figure),
        cmocka_unit_test(what_no_table_reaches_is_unrated),
        cmocka_unit_test(what_is_not_stated_of_lines_is_named),
        cmocka_unit_test(rows_and_what_overrides_them_are_told),
        cmocka_unit_test(the_use_stands_beside_the_own_factor),
        cmocka_unit_test(head_fittings_are_told),
        cmocka_unit_test(chains_multiply_to_the_capacity),
        cmocka_unit_test(json_has_no_utilisation_where_nothing_is_allowed),
        cmocka_unit_test(json_of_a_loss),
        cmocka_unit_test(memory_that_fails_is_no_report),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
