/* test_read_gear.c - rig files that name rows of hardware tables, and cases with their data: what the rig
 * holds. What is refused stands in tests/bad-input, nearly all of it; here are its near misses. */
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* ---- help ---- */

#define HOISTED                                                                                              \
    "[anchor beam]\nat = 3 m\n[load crate]\non = tail\nmass = 20 kg\n[hand crew]\nat = 2.5 m\nlimit = 500 "  \
    "N\n"

static const gtl_line *line_of(const gtl_rig *rig, const char *name)
{
    for (int i = 0; i < rig->line_count; i++)
        if (strcmp(rig->lines[i].name, name) == 0) return &rig->lines[i];
    fail_msg("no line %s", name);
    return NULL;
}

static const gtl_thing *thing_named(const gtl_rig *rig, const char *name)
{
    return &rig->things[thing_of(rig, name)];
}

static void check_row(const gtl_hardware_row *row, const char *name)
{
    if (!row && name) fail_msg("no row, expected %s", name);
    if (row && !name) fail_msg("%s, expected no row", row->name);
    if (row) assert_string_equal(row->name, name);
}

/* A strop from a beam to a crate, with these keys; in the sections before and after it what else there is. */
static gtl_rig *strop(const char *keys)
{
    return read_sound("[anchor beam]\nat = 3 m\n[load crate]\nat = 1 m\nmass = 20 kg\npin diameter = 20 mm\n"
                      "[sling gauge]\npath = beam, crate\ndiameter = 10 mm\n"
                      "[sling strop]\npath = beam, crate\n%s",
                      keys);
}

/* ---- a row of gear ---- */

/* The example gear's figures are those of hardware-tables/example-gear.ini, which are invented. */
static void test_row_fills(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("[rig]\ndesign factor = 8\ngravity = 9.8 m/s2\n" HOISTED
                              "[block tail]\nat = 1 m\nhardware = Example-Single-Block\nwrap = 180 deg\n"
                              "[rope fall]\npath = beam, tail, crew\nhardware = example-rope-12\n");
    const gtl_thing *tail = thing_named(rig, "tail");
    assert_close(tail->efficiency, 0.92);
    assert_true(tail->friction_stated && tail->weight_stated);
    assert_close(tail->weight, 0.9 * 9.8);
    assert_close(rig->nodes[tail->node].weight, 20.9 * 9.8);
    assert_close(tail->gear.sheave_diameter, 0.075);
    check_row(tail->gear.row, "example-single-block");
    const gtl_line *fall = line_of(rig, "fall");
    check_row(fall->gear.row, "example-rope-12");
    check_row(fall->gear.material, "polyester");
    check_row(fall->gear.bend, NULL); /* no figure is published for fibre */
    assert_close(fall->gear.diameter, 0.012);
    /* Ratings stay with the row; the factor for them is the rig's. */
    assert_true(isnan(tail->rating.wll) && isnan(fall->rating.mbs));
    assert_close(fall->rating.design_factor, 8);
    gtl_rig_free(rig);
}

static void test_own_keys_win(void **state)
{
    (void)state;
    gtl_rig *rig =
        read_sound("[rig]\nefficiency = 70 %%\n" HOISTED
                   "[block tail]\nat = 1 m\nhardware = example-single-block\nefficiency = 80 %%\n"
                   "weight = 30 N\nsheave diameter = 60 mm\n[block spare]\non = beam\n"
                   "[rope fall]\npath = beam, tail, crew\nhardware = example-rope-12\nmaterial = nylon\n"
                   "diameter = 11 mm\ndesign factor = 6\n");
    const gtl_thing *tail = thing_named(rig, "tail");
    assert_close(tail->efficiency, 0.8);
    assert_close(tail->weight, 30);
    assert_close(tail->gear.sheave_diameter, 0.06);
    assert_close(thing_named(rig, "spare")->efficiency, 0.7);
    const gtl_line *fall = line_of(rig, "fall");
    check_row(fall->gear.material, "nylon");
    assert_close(fall->gear.diameter, 0.011);
    assert_close(fall->rating.design_factor, 6); /* for the row's `mbs` */
    gtl_rig_free(rig);
}

/* The row's efficiency stands before the rig's. */
static void test_row_before_rig(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("[rig]\nefficiency = 70 %%\n" HOISTED
                              "[block tail]\nat = 1 m\nhardware = example-single-block\n"
                              "[block spare]\non = beam\n[rope fall]\npath = beam, tail, crew\n");
    assert_close(thing_named(rig, "tail")->efficiency, 0.92);
    assert_close(thing_named(rig, "spare")->efficiency, 0.7);
    gtl_rig_free(rig);
}

/* A row's mass is weighed by the rig's gravity, so that stating gravity changes something. */
static void test_gravity_of_row(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("[rig]\ngravity = 9.8 m/s2\n[anchor beam]\nat = 3 m\n[joint plate]\nat = 1 m\n"
                              "hardware = example-shackle\n[load crate]\non = plate\nweight = 200 N\n"
                              "[rope strop]\npath = beam, plate\n");
    assert_close(rig->nodes[thing_named(rig, "crate")->node].weight, 200 + 0.3 * 9.8);
    gtl_rig_free(rig);
}

static void test_other_kinds(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound(
        "[anchor beam]\nat = 0 m, 5 m\nhardware = example-eyebolt\nwear = 90 %%\n"
        "[anchor post]\nat = 4 m, 5 m\n"
        "[fairlead bollard]\nat = 2 m, 2 m\nhardware = example-lowering-bollard\nturns = 1\nwear = 80 %%\n"
        "[joint plate]\nat = 2 m, 3 m\n[load crate]\non = plate\nmass = 20 kg\n[load log]\non = bollard\n"
        "mass = 30 kg\n[connector shackle]\nhardware = example-shackle\nside load = 45 deg\n"
        "[sling left]\npath = beam, plate via shackle\nhardware = example-round-sling\nwet = 85 %%\n"
        "[sling right]\npath = post, plate\n"
        "[rope run]\npath = beam, bollard, post\n[anchor low]\nat = 0 m, 0 m\n"
        "[spar boom]\npath = low, plate\nhardware = example-spar\n");
    const gtl_thing *bollard = thing_named(rig, "bollard");
    assert_close(bollard->friction, 0.2);
    assert_true(isnan(bollard->efficiency) && bollard->friction_stated && bollard->turns == 1);
    assert_close(bollard->weight, 4 * GTL_STANDARD_GRAVITY);
    assert_close(bollard->gear.wear, 0.8);
    check_row(thing_named(rig, "beam")->gear.row, "example-eyebolt");
    assert_close(thing_named(rig, "beam")->gear.wear, 0.9);
    const gtl_gear *shackle = &rig->connectors[0].gear;
    check_row(shackle->row, "example-shackle");
    check_row(shackle->side, "shackle");
    assert_close(shackle->side_load, 3.14159265358979323846 / 4);
    assert_close(shackle->pin_diameter, 0.013);
    assert_close(line_of(rig, "left")->gear.wet, 0.85);
    assert_close(line_of(rig, "boom")->weight, 25 * GTL_STANDARD_GRAVITY);
    gtl_rig_free(rig);
}

/* ---- ropes and slings ---- */

static void check_strop(const char *keys, const char *material, const char *hitch, const char *choke)
{
    gtl_rig *rig = strop(keys);
    const gtl_gear *gear = &line_of(rig, "strop")->gear;
    check_row(gear->material, material);
    check_row(gear->hitch, hitch);
    check_row(gear->choke, choke);
    gtl_rig_free(rig);
}

/* A hitch is looked up for the material, then for its class, then for any sling. */
static void test_hitches(void **state)
{
    (void)state;
    check_strop("hitch = straight\n", NULL, "straight", NULL);
    check_strop("hitch = basket\nmaterial = manila\n", "manila", "basket", NULL);
    check_strop("hitch = CHOKE\nmaterial = polyester\nchoke angle = 0 deg\n", "polyester", "choke", "sling");
    check_strop("hitch = choke\nmaterial = wire-rope\nchoke angle = 180 deg\n", "wire-rope", "choke",
                "sling");
    check_strop("hitch = choke\nmaterial = manila\n", "manila", "choke-natural-fibre", NULL);
    check_strop("hitch = choke\nhardware = example-chain-7\nchoke angle = 120 deg\n", "steel-chain", "choke",
                "chain");
    check_strop("hitch = choke\n", NULL, "choke", "sling"); /* rating asks for the material */
}

static void test_ends(void **state)
{
    (void)state;
    gtl_rig *rig =
        strop("knot = bowline\ntermination = eye-splice\nmaterial = manila\nwear = 0.9\nwet = 80 %\n");
    const gtl_gear *gear = &line_of(rig, "strop")->gear;
    check_row(gear->knot, "bowline");
    check_row(gear->termination, "eye-splice");
    assert_close(gear->wear, 0.9);
    assert_close(gear->wet, 0.8);
    assert_true(isnan(gear->choke_angle) && isnan(gear->diameter));
    gtl_rig_free(rig);
    gtl_rig_free(strop("knot = bowline\n"));
    gtl_rig_free(strop("material = hmpe\n")); /* said in the report */
    gtl_rig_free(strop("material = wire-rope\ntermination = wedge-socket\n"));
}

/* A bend has figures for wire rope; a rope of which nobody says what it is takes them too. */
static void test_bends(void **state)
{
    (void)state;
    static const struct {
        const char *keys;
        const char *bend;
    } ropes[] = {
        {"diameter = 6 mm\n", "wire-rope"},
        {"diameter = 6 mm\nmaterial = wire-rope\n", "wire-rope"},
        {"hardware = example-wire-6\n", "wire-rope"},
        {"diameter = 6 mm\nmaterial = nylon\n", NULL},
        {"diameter = 6 mm\nmaterial = sisal\n", NULL},
        {"diameter = 6 mm\nmaterial = steel-chain\n", NULL},
        {"material = wire-rope\n", NULL},
    };
    for (size_t i = 0; i < sizeof ropes / sizeof ropes[0]; i++) {
        gtl_rig *rig = strop(ropes[i].keys);
        check_row(line_of(rig, "strop")->gear.bend, ropes[i].bend);
        gtl_rig_free(rig);
    }
}

/* Of connectors at a stop the line lies in the last; a block's sheave and pin are two places. */
static void test_diameters_that_count(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound(HOISTED "[block tail]\nat = 1 m\nefficiency = 90 %%\nsheave diameter = 75 mm\n"
                                      "pin diameter = 10 mm\n[connector ring]\n[connector shackle]\n"
                                      "pin diameter = 13 mm\n[anchor hook]\nat = 0.2 m\n"
                                      "[rope fall]\npath = beam via ring + shackle, tail, crew\n"
                                      "diameter = 12 mm\n[sling tether]\npath = tail, hook\ndiameter = 8 mm\n"
                                      "length = 3 m\n");
    assert_close(rig->connectors[1].gear.pin_diameter, 0.013);
    gtl_rig_free(rig);
    /* A diameter that is typed may meet one that a row states. */
    gtl_rig_free(read_sound("[anchor beam]\nat = 3 m\n[load crate]\nat = 1 m\nmass = 20 kg\n"
                            "[connector shackle]\nhardware = example-shackle\n"
                            "[rope strop]\npath = beam via shackle, crate\ndiameter = 12 mm\n"));
}

/* ---- axes ---- */

static void check_axis(const char *places, const char *axis, double x, double y, double z)
{
    const char *height = places[0] == '1' ? "" : places[0] == '2' ? "0 m, " : "0 m, 0 m, ";
    gtl_rig *rig = read_sound("[anchor beam]\nat = %s3 m\nfitting = shoulder-eyebolt\naxis = %s\n"
                              "[load crate]\nat = %s1 m\nmass = 20 kg\n[rope strop]\npath = beam, crate\n",
                              height, axis, height);
    const gtl_gear *gear = &thing_named(rig, "beam")->gear;
    check_row(gear->fitting, "shoulder-eyebolt");
    assert_close(gear->axis[0], x);
    assert_close(gear->axis[1], y);
    assert_close(gear->axis[2], z);
    gtl_rig_free(rig);
}

static void test_axes(void **state)
{
    (void)state;
    check_axis("1", "down", -1, 0, 0);
    check_axis("1", "2.5", 1, 0, 0);
    check_axis("2", "Down", 0, -1, 0);
    check_axis("2", "up", 0, 1, 0);
    check_axis("2", "3, -4", 0.6, -0.8, 0);
    check_axis("3", "down", 0, 0, -1);
    check_axis("3", "1e-20, 0, 0", 1, 0, 0);
    check_axis("3", "-2, 1, 2", -2.0 / 3, 1.0 / 3, 2.0 / 3);
}

/* ---- the sheet: use and cases ---- */

static void check_cases(const char *sheet, const char *names)
{
    gtl_rig *rig = read_sound("[rig]\n%s" HOISTED "[block tail]\nat = 1 m\nefficiency = 90 %%\n"
                              "[rope fall]\npath = beam, tail, crew\n",
                              sheet);
    char all[200] = "";
    for (int i = 0; i < rig->case_count; i++)
        snprintf(all + strlen(all), sizeof all - strlen(all), "%s%s", i > 0 ? ", " : "", rig->cases[i].name);
    assert_string_equal(all, names);
    gtl_rig_free(rig);
}

static void test_cases(void **state)
{
    (void)state;
    check_cases("title = none named\n", "hold, raise, lower");
    check_cases("cases = all\n", "hold, raise, lower, jam");
    check_cases("cases = all\nacceleration = 0.5 m/s2\n", "hold, raise, lower, jam, start, stop");
    check_cases("cases = stop, jam\nspeed = 0.5 m/s\ntime = 1 s\n", "hold, jam, stop");
    check_cases("cases = lost fall, raise, LOST Beam\nloss factor = 1\n",
                "hold, raise, lost fall, lost beam");
    check_cases("cases = all, lost beam\n", "hold, raise, lower, jam, lost beam");
}

static void test_sheet(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("[rig]\nuse = eu-machinery\ncases = start, lost beam\nspeed = 30 m/min\n"
                              "time = 250 ms\n" HOISTED "[block tail]\nat = 1 m\nefficiency = 90 %%\n"
                              "[rope fall]\npath = beam, tail, crew\n");
    check_row(rig->use, "eu-machinery");
    assert_close(rig->acceleration, 2);
    assert_close(rig->speed, 0.5);
    assert_close(rig->time, 0.25);
    assert_true(rig->loss_factor == 2 && !rig->loss_factor_stated);
    assert_true(rig->cases[2].kind == GTL_LOST && rig->cases[2].lost_kind == GTL_ANCHOR);
    assert_int_equal(rig->cases[2].lost, thing_of(rig, "beam"));
    gtl_rig_free(rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_row_fills),
        cmocka_unit_test(test_own_keys_win),
        cmocka_unit_test(test_row_before_rig),
        cmocka_unit_test(test_gravity_of_row),
        cmocka_unit_test(test_other_kinds),
        cmocka_unit_test(test_hitches),
        cmocka_unit_test(test_ends),
        cmocka_unit_test(test_bends),
        cmocka_unit_test(test_diameters_that_count),
        cmocka_unit_test(test_axes),
        cmocka_unit_test(test_cases),
        cmocka_unit_test(test_sheet),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
