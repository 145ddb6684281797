/* test_gear.c - gear in a row down to its anchor, its weakest part, and head fittings. */
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

/* ---- chains ---- */

/* All chains in words: "leg shackle beam (shackle); ...", the weakest in brackets. */
static void assert_chains(const rated *rig, const char *wanted)
{
    char text[1024] = "";
    size_t used = 0;
    const gtl_sheet *sheet = &rig->sheet;
    for (int c = 0; c < sheet->chain_count; c++) {
        const gtl_chain *chain = &sheet->chains[c];
        for (int i = 0; i < chain->link_count; i++) {
            int link = sheet->links[chain->first_link + i];
            used += (size_t)snprintf(text + used, sizeof text - used, "%s ", sheet->components[link].name);
        }
        const char *weakest = chain->weakest < 0 ? "-" : sheet->components[chain->weakest].name;
        used += (size_t)snprintf(text + used, sizeof text - used, "(%s); ", weakest);
    }
    assert_string_equal(text, wanted);
}

/* 300 N on a sling with two connectors; what each states. */
#define HUNG                                                                                                 \
    "[anchor beam]\nat = 4 m\n%s\n[connector shackle]\n%s\n[connector ring]\n%s\n[load bell]\nat = 2 m\n"    \
    "weight = 300 N\n[sling leg]\npath = beam via shackle + ring, bell\n%s\n"

static void weakest_of_a_line(void **state)
{
    (void)state;
    const struct {
        const char *beam, *shackle, *ring, *leg, *chains;
    } rows[] = {
        {"wll = 400 N", "wll = 390 N", "wll = 380 N", "wll = 370 N", "leg ring shackle beam (leg); "},
        {"wll = 400 N", "wll = 390 N", "wll = 380 N", "wll = 410 N", "leg ring shackle beam (ring); "},
        {"wll = 310 N", "wll = 390 N", "wll = 380 N", "wll = 410 N", "leg ring shackle beam (beam); "},
        {"wll = 200 N", "wll = 390 N", "wll = 380 N", "wll = 410 N", "leg ring shackle beam (beam); "},
        /* One without a rating may be the weakest, however much another is over. */
        {"wll = 200 N", "", "wll = 380 N", "wll = 410 N", "leg ring shackle beam (-); "},
        {"", "wll = 390 N", "wll = 380 N", "wll = 410 N", "leg ring shackle beam (-); "},
        {"wll = 400 N", "wll = 390 N", "wll = 380 N", "mbs = 9 kN", "leg ring shackle beam (-); "},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        rated rig = rate_sound(HUNG, rows[i].beam, rows[i].shackle, rows[i].ring, rows[i].leg);
        assert_chains(&rig, rows[i].chains);
        rated_end(&rig);
    }
}

/* Not the part of least rating: the part nearest to its own. */
static void weakest_by_use_not_by_rating(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[anchor beam]\nat = 6 m\nwll = 1 kN\n[connector strop]\nwll = 900 N\n[block head]\n"
        "on = beam via strop\nefficiency = 100 %%\nwll = 950 N\n[load bell]\nat = 2 m\nweight = 300 N\n"
        "[hand crew]\nat = 3 m\n[rope fall]\npath = bell, head, crew\nwll = 320 N\n[sling tie]\n"
        "path = beam, bell\nlength = 5 m\n");
    /* The tie is slack: it cannot be the weakest, and needs no rating. */
    assert_chains(&rig, "tie beam (beam); head strop beam (strop); ");
    rated_end(&rig);
}

static void all_idle(void **state)
{
    (void)state;
    rated rig = rate_sound("[anchor beam]\nat = 6 m\nwll = 1 kN\n[anchor spare]\nat = 6 m\n[load bell]\n"
                           "at = 2 m\nweight = 300 N\n[sling leg]\npath = beam, bell\nwll = 1 kN\n"
                           "[sling tie]\npath = spare, bell\nlength = 5 m\n");
    assert_chains(&rig, "leg beam (leg); tie spare (-); ");
    rated_end(&rig);
}

/* Tied at both ends and in the middle; a spar; a stop at what sits on an anchor. */
static void ends_and_middles(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[anchor left]\nat = 0 m, 4 m\n[anchor right]\nat = 4 m, 4 m\n[anchor top]\nat = 2 m, 6 m\n"
        "[connector eye]\n[connector hook]\n[joint plate]\non = top via eye\n[load bell]\nat = 1 m, 2 m\n"
        "mass = 20 kg\n[load drum]\nat = 3 m, 2 m\nmass = 20 kg\n[rope span]\n"
        "path = left, bell, plate via hook, drum, right\n[load bob]\nat = 4 m, 2 m\nmass = 5 kg\n"
        "[spar rod]\npath = right, bob\n");
    assert_chains(&rig,
                  "span left (-); span hook plate eye top (-); span right (-); rod right (-); plate eye top "
                  "(-); ");
    rated_end(&rig);
}

/* Things in a row down to the anchor. What sits on a free body ends there, and so does a line at a hand. */
static void things_in_a_row(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[anchor beam]\nat = 6 m\nwll = 2 kN\n[connector shackle]\nwll = 2 kN\n[joint plate]\n"
        "on = beam via shackle\nwll = 1.5 kN\n[connector link]\nwll = 2 kN\n[connector ring]\nwll = 2 kN\n"
        "[block head]\non = plate via link + ring\nefficiency = 100 %%\nwll = 2 kN\n[block tail]\nat = 3 m\n"
        "weight = 10 N\nefficiency = 100 %%\nwll = 2 kN\n[joint hook]\non = tail\nwll = 2 kN\n[load bell]\n"
        "on = hook\nweight = 300 N\n[hand crew]\nat = 4 m\n[rope fall]\npath = head, tail, head, crew\n"
        "wll = 1 kN\n");
    assert_chains(&rig, "fall head ring link plate shackle beam (plate); plate shackle beam (plate); "
                        "head ring link plate shackle beam (plate); ");
    rated_end(&rig);
}

/* ---- head fittings ---- */

static const gtl_head_fitting *only_head(const rated *rig)
{
    assert_int_equal(rig->sheet.head_fitting_count, 1);
    return &rig->sheet.head_fittings[0];
}

/* A whip without friction has in all of its line what the load weighs, 10 kN. Led off level, which
 * leaves 14.1 kN on the block; or straight down again. */
#define WHIP(beam, engine, winch)                                                                            \
    "[rig]\n%s\n[anchor beam]\nat = " beam "\nwll = 90 kN\n[connector shackle]\nwll = 90 kN\n"               \
    "[connector swivel]\n%s\n[block head]\non = beam via shackle + swivel\nefficiency = %s\nwll = 90 kN\n"   \
    "%s\n[load engine]\nat = " engine "\nweight = 10 kN\n[hand winch]\nat = " winch "\nlimit = 16 kN\n"      \
    "[rope fall]\npath = engine, head, winch\nwll = 90 kN\n"
#define LEVEL WHIP("0 m, 6 m", "0 m, 2 m", "5 m, 6 m")
#define PLUMB WHIP("6 m", "2 m", "3 m")

/* Lloyd's Code for Lifting Appliances in a Marine Environment, chapter 8, 5.1 (seen): the head fitting of a
 * single-sheave block at least twice the line: on 10 kN, 18 kN fails and 20 kN passes. */
static void twice_the_line(void **state)
{
    (void)state;
    const struct {
        const char *swivel;
        gtl_mark mark;
        gtl_verdict verdict;
    } rows[] = {
        {"wll = 18 kN", GTL_MARK_OVER, GTL_OVER},
        {"wll = 20 kN", GTL_MARK_WITHIN, GTL_WITHIN},
        {"wll = 19.99999999 kN", GTL_MARK_WITHIN, GTL_WITHIN}, /* 1 + 5e-10 */
        {"wll = 19.9999999 kN", GTL_MARK_OVER, GTL_OVER},      /* 1 + 5e-9 */
        {"mbs = 90 kN\ndesign factor = 5", GTL_MARK_OVER, GTL_OVER},
        {"", GTL_MARK_UNRATED, GTL_UNRATED},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        rated rig = rate_sound(LEVEL, "", rows[i].swivel, "100 %", "");
        const gtl_head_fitting *head = only_head(&rig);
        assert_close(head->needed, 20000);
        assert_string_equal(rig.sheet.components[head->block].name, "head");
        assert_string_equal(rig.sheet.components[head->fitting].name, "swivel");
        assert_int_equal(head->mark, rows[i].mark);
        assert_int_equal(rig.sheet.verdict, rows[i].verdict);
        assert_int_equal((rig.sheet.why & GTL_WHY_HEAD_FITTING) != 0, rows[i].mark == GTL_MARK_OVER);
        rated_end(&rig);
    }
}

/* The greatest tension on either side of the sheave in any case, not the force on the block. */
static void worst_of_all_cases(void **state)
{
    (void)state;
    const struct {
        const char *sheet, *efficiency;
        double needed;
    } rows[] = {
        {"cases = hold", "80 %", 20000},
        {"", "80 %", 2 * 10000 / 0.8},
        {"cases = lower", "80 %", 20000}, /* the load's side carries more, and no more than the load */
        {"cases = jam", "80 %", 32000},
        {"cases = hold, lost swivel", "80 %", 20000}, /* then the block is off, and carries nothing */
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        rated rig = rate_sound(PLUMB, rows[i].sheet, "wll = 90 kN", rows[i].efficiency, "");
        assert_close(only_head(&rig)->needed, rows[i].needed);
        rated_end(&rig);
    }
}

/* One sheave, stated or in use; nothing to say of others. */
static void one_sheave_alone(void **state)
{
    (void)state;
    rated rig = rate_sound(LEVEL, "", "wll = 18 kN", "100 %", "sheaves = 1");
    assert_int_equal(only_head(&rig)->mark, GTL_MARK_OVER);
    rated_end(&rig);
    rig = rate_sound(LEVEL, "", "wll = 18 kN", "100 %", "sheaves = 2");
    assert_int_equal(rig.sheet.head_fitting_count, 0);
    assert_int_equal(rig.sheet.verdict, GTL_WITHIN);
    rated_end(&rig);
    rig = rate_sound("[anchor beam]\nat = 6 m\n[connector shackle]\n[block head]\non = beam via shackle\n"
                     "[block tail]\nat = 3 m\n[load bell]\non = tail\nweight = 300 N\n[hand crew]\nat = 4 m\n"
                     "[rope fall]\npath = tail, head, tail, head, crew\n");
    assert_int_equal(rig.sheet.head_fitting_count, 0); /* passed twice; the other has no connector */
    rated_end(&rig);
}

/* A ring is no block, and a block without a line over it, or with a slack one, has nothing to hold twice. */
static void nothing_to_hold(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[anchor beam]\nat = 6 m\n[connector one]\n[connector two]\n[connector three]\n[fairlead ring]\n"
        "on = beam via one\n[block spare]\non = beam via two\nsheaves = 1\n[block keeper]\n"
        "on = beam via three\n[load bell]\nat = 2 m\nweight = 300 N\n[hand crew]\nat = 4 m\n[rope fall]\n"
        "path = bell, ring, crew\n[anchor floor]\nat = 1 m\n[rope backup]\npath = bell, keeper, floor\n"
        "length = 12 m\n");
    assert_int_equal(rig.sheet.head_fitting_count, 0);
    rated_end(&rig);
}

/* A stop at which friction may hold either side harder than is printed: the line's worst counts. 180 N on two
 * parts are 80 and 100 at a block of 80 %, and 125 beyond the next one. */
static void undecided_line(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[rig]\nefficiency = 80 %%\n[anchor left]\nat = 4 m\n[anchor right]\nat = 2 m\n[anchor beam]\n"
        "at = 6 m\n[connector shackle]\nwll = 240 N\n[block keeper]\non = beam via shackle\n[block tail]\n"
        "at = 1 m\n[load crate]\non = tail\nweight = 180 N\n[rope bight]\npath = left, tail, keeper, "
        "right\n");
    assert_close(only_head(&rig)->needed, 2 * 125);
    assert_int_equal(only_head(&rig)->mark, GTL_MARK_OVER);
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(weakest_of_a_line),  cmocka_unit_test(weakest_by_use_not_by_rating),
        cmocka_unit_test(all_idle),           cmocka_unit_test(ends_and_middles),
        cmocka_unit_test(things_in_a_row),    cmocka_unit_test(twice_the_line),
        cmocka_unit_test(worst_of_all_cases), cmocka_unit_test(one_sheave_alone),
        cmocka_unit_test(nothing_to_hold),    cmocka_unit_test(undecided_line),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
