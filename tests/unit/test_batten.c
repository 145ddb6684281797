/* test_batten.c - battens from the file to the demands of their lines, against sums by hand. */
#include "unit/failing_memory.h"
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* Three drops to one clew, which a hand hauls over nothing more. `%s`: cases, loads, efficiency. Blocks stand
 * right above the picks. */
static const char hauled[] =
    "[rig]\ncases = %s\nefficiency = %s\n"
    "[batten pole]\nat = 0 m, 1 m\nlength = 6 m\nweight = 600 N\n"
    "picks = right at 6 m, left at 0 m, mid at 3 m\n%s"
    "[anchor a]\nat = 0 m, 7 m\n[anchor b]\nat = 3 m, 7 m\n[anchor c]\nat = 6 m, 7 m\n[anchor d]\nat = 8 m, "
    "7 m\n"
    "[block one]\non = a\n[block two]\non = b\n[block three]\non = c\n[block head]\non = d\n"
    "[joint clew]\nat = 8 m, 4 m\n[hand crew]\nat = 8 m, 1 m\nlimit = 1 kN\n"
    "[rope drop-1]\npath = left, one, head, clew\n[rope drop-2]\npath = mid, two, head, clew\n"
    "[rope drop-3]\npath = right, three, head, clew\n[rope fall]\npath = clew, crew\n";

static double weight_of(const gtl_rig *rig, const char *pick)
{
    return rig->things[thing_of(rig, pick)].weight;
}

/* Two bays under an even load: 3/16, 10/16, 3/16; a bar on springs: a third each. */
static void picks_are_loads(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound(hauled, "hold", "100 %", "");
    assert_int_equal(rig->batten_count, 1);
    assert_close(weight_of(rig, "left"), 112.5);
    assert_close(weight_of(rig, "mid"), 375);
    assert_close(weight_of(rig, "right"), 112.5);
    const gtl_pick *picks = rig->picks;
    assert_string_equal(rig->things[picks[0].thing].name, "left"); /* in order along it, not as typed */
    assert_close(picks[1].position, 3);
    for (int i = 0; i < 3; i++) assert_close(picks[i].springs, 200);
    assert_true(isnan(picks[1].settles));
    assert_close(rig->things[picks[2].thing].at[0], 6);
    assert_close(rig->things[picks[2].thing].at[1], 1);
    gtl_rig_free(rig);
}

/* The lifted load is the batten: its heaviest pick stands for it, its whole weight counts. */
static void lifts_the_batten(void **state)
{
    (void)state;
    rated rig = rate_sound(hauled, "hold, raise", "100 %", "");
    assert_int_equal(rig.rig->load, thing_of(rig.rig, "mid"));
    assert_close(gtl_lifted_weight(rig.rig), 600);
    assert_string_equal(gtl_lifted_name(rig.rig), "pole");
    const gtl_outcome *raise = gtl_sheet_outcome(&rig.sheet, GTL_RAISE);
    assert_close(raise->state->effort, 600);
    assert_close(raise->estimated_advantage, 1);
    assert_close(raise->efficiency, 1);
    assert_close(raise->velocity_ratio, 1);
    rated_end(&rig);
}

/* Each line's demand is the worse of the two ways: 200 N outside, 375 N in the middle. */
static void demands_take_the_worse(void **state)
{
    (void)state;
    rated rig = rate_sound(hauled, "hold", "100 %", "");
    assert_close(demand_of(&rig, "drop-1"), 200);
    assert_close(demand_of(&rig, "drop-2"), 375);
    assert_close(demand_of(&rig, "drop-3"), 200);
    assert_close(demand_of(&rig, "fall"), 600);
    assert_int_equal(rig.sheet.alternative_count, 1);
    rated_end(&rig);
}

/* 3 kN halfway along the right bay: the left line would have to push 0.1875 W less 112.5 N; without it the
 * two others share by statics: the load halves, of the batten the right one gets nothing. */
static const char lopsided[] = "loads = 3 kN at 4.5 m\n";

static void slack_line_is_let_go(void **state)
{
    (void)state;
    rated rig = rate_sound(hauled, "hold, raise, lower", "90 %", lopsided);
    const gtl_pick *left = &rig.rig->picks[0];
    assert_close(left->pushes, 112.5 - 3.0 / 32 * 3000);
    assert_true(left->stiff == 0);
    assert_close(weight_of(rig.rig, "mid"), 1500 + 600);
    assert_close(weight_of(rig.rig, "right"), 1500);
    const gtl_outcome *raise = gtl_sheet_outcome(&rig.sheet, GTL_RAISE);
    assert_true(raise->possible);
    assert_true(gtl_outcome_tension(raise, rig.rig->lines[0].first_part) == 0);
    /* On springs it carries 1200 - 1.25 x 3600 x 3 / 18 = 450: the shared third, less the turning. */
    assert_close(left->springs, 1200 - 3600 * (4.25 - 3) * 3 / 18);
    assert_true(demand_of(&rig, "drop-1") > left->springs);
    rated_end(&rig);
}

/* Where only one hangs over, the two ways are one and nothing is tried twice. */
static void two_lines_are_statics(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = hold\n[anchor a]\nat = 6 m\n[batten pole]\nat = 1 m\nlength = 4 m\n"
                   "mass = 0 kg\npicks = p at 1 m, q at 3 m\nloads = 100 N at 0 m, 300 N from 2 m to 4 m\n"
                   "[sling s]\npath = a, p\n[sling t]\npath = a, q\n");
    assert_close(weight_of(rig.rig, "p"), 150);
    assert_close(weight_of(rig.rig, "q"), 250);
    assert_int_equal(rig.sheet.alternative_count, 0);
    assert_true(rig.rig->picks[0].settles == 0);
    rated_end(&rig);
}

/* Caught by the pick that the hand pulls hardest on: 1000 N, less what the others hang there with. */
static void may_be_caught_by_any_pick(void **state)
{
    (void)state;
    rated rig = rate_sound(hauled, "hold, raise, jam", "100 %", "");
    assert_close(demand_of(&rig, "drop-2"), 1000 - 2 * 112.5);
    assert_close(demand_of(&rig, "drop-1"), 1000 - 2 * 200);
    assert_close(demand_of(&rig, "drop-3"), 1000 - 2 * 200);
    rated_end(&rig);
}

/* A line that lets go leaves the batten on its others: no figure, and nothing falls. */
static void half_held_has_no_figures(void **state)
{
    (void)state;
    rated rig = rate_sound(hauled, "hold, lost drop-2", "100 %", "");
    const gtl_outcome *lost = gtl_sheet_outcome(&rig.sheet, GTL_LOST);
    assert_false(lost->possible);
    assert_false(lost->falls);
    assert_non_null(strstr(lost->reason, "its other lines take over"));
    assert_true(rig.sheet.why & GTL_WHY_CASE_IMPOSSIBLE);
    assert_true(rig.sheet.verdict == GTL_UNRATED);
    rated_end(&rig);
}

/* All its lines together: it falls as any load. */
static void falls_where_nothing_holds(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = hold, lost a\n[anchor a]\nat = 6 m\n[batten pole]\nat = 1 m\n"
                           "length = 4 m\nmass = 9 kg\npicks = p at 1 m, q at 3 m\n"
                           "[sling s]\npath = a, p\n[sling t]\npath = a, q\n");
    assert_true(gtl_sheet_outcome(&rig.sheet, GTL_LOST)->falls);
    rated_end(&rig);
}

/* A pipe's weight and stiffness by hand: 48.3 mm by 4 mm, 4.37 kg/m, 200 GPa. Raised by 10 mm in the middle
 * of two bays of 3 m it takes 48 EI / L^3 of that. */
static void pipe_gives_weight_and_stiffness(void **state)
{
    (void)state;
    gtl_rig *rig =
        read_sound("[rig]\ncases = hold\n[anchor a]\nat = 6 m\n[batten pole]\nat = 1 m\nlength = 6 m\n"
                   "pipe = tube-48-3-by-4-mm\npicks = p at 0 m, q at 3 m, r at 6 m\n"
                   "loads = 1 kN from 0 m to 6 m\n"
                   "[sling s]\npath = a, p\n[sling t]\npath = a, q\n[sling u]\npath = a, r\n");
    double inertia = 3.14159265358979323846 / 64 * (pow(0.0483, 4) - pow(0.0403, 4));
    assert_close(rig->battens[0].weight, 6 * 4.37 * 9.80665);
    assert_close(rig->battens[0].stiffness, 200e9 * inertia);
    double gain = 48 * 200e9 * inertia * 0.01 / 216;
    assert_true(fabs(rig->picks[1].settles - gain) < 1e-6 * gain);
    gtl_rig_free(rig);
}

/* Ten millimetres on a short stiff batten are more than hangs there: the line then takes all that it can,
 * since its neighbours go slack. */
static void gains_no_more_than_there_is(void **state)
{
    (void)state;
    gtl_rig *rig =
        read_sound("[rig]\ncases = hold\n[anchor a]\nat = 6 m\n[batten pole]\nat = 1 m\nlength = 1 m\n"
                   "pipe = schedule-80-2-in\npicks = p at 0 m, q at 0.5 m, r at 1 m\n"
                   "[sling s]\npath = a, p\n[sling t]\npath = a, q\n[sling u]\npath = a, r\n");
    assert_close(rig->picks[1].stiff + rig->picks[1].settles, rig->battens[0].total);
    gtl_rig_free(rig);
}

static void names_the_batten_as_load(void **state)
{
    (void)state;
    gtl_rig *rig =
        read_sound("[rig]\nload = POLE\n[anchor a]\nat = 6 m\n[batten pole]\nat = 1 m\nlength = 4 m\n"
                   "mass = 9 kg\npicks = p at 2 m\n[load sack]\nat = 2 m\nmass = 50 kg\n"
                   "[sling s]\npath = a, sack\n[block head]\non = a\n[hand h]\nat = 1 m\n"
                   "[rope r]\npath = p, head, h\n");
    assert_string_equal(gtl_lifted_name(rig), "pole");
    assert_close(gtl_lifted_weight(rig), 9 * 9.80665);
    assert_true(gtl_is_lifted(rig, thing_of(rig, "p")));
    assert_false(gtl_is_lifted(rig, thing_of(rig, "sack")));
    gtl_rig_free(rig);
}

/* Two lines that lean in: the solver hangs each pick plumb, which no batten can do. */
static void parted_picks_leave_it_open(void **state)
{
    (void)state;
    static const char leaning[] =
        "[rig]\ncases = hold\n[anchor a]\nat = %s m, 6 m\nwll = 9 kN\n[anchor b]\nat = 5 m, 6 m\nwll = 9 kN\n"
        "[batten pole]\nat = 0 m, 1 m\nlength = 6 m\nmass = 9 kg\npicks = p at 1 m, q at 5 m\n"
        "[sling s]\npath = a, p\nwll = 9 kN\n[sling t]\npath = b, q\nwll = 9 kN\n";
    rated plumb = rate_sound(leaning, "1"), off = rate_sound(leaning, "1.5");
    assert_true(plumb.sheet.verdict == GTL_WITHIN);
    assert_true(off.sheet.verdict == GTL_UNRATED);
    assert_true(off.sheet.why == GTL_WHY_BATTEN);
    rated_end(&plumb);
    rated_end(&off);
}

/* A copy owns its battens. */
static void copies_outlive(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound(hauled, "hold", "100 %", lopsided);
    gtl_rig *copy = gtl_rig_copy(rig);
    assert_non_null(copy);
    assert_string_equal(copy->battens[0].name, "pole");
    assert_ptr_not_equal(copy->battens[0].name, rig->battens[0].name);
    assert_ptr_not_equal(copy->hung, rig->hung);
    assert_close(copy->hung[0].from, 4.5);
    gtl_rig_free(copy);
    gtl_rig_free(rig);
}

static void no_load_of_its_own_to_limit(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound(hauled, "hold", "100 %", "");
    gtl_limit limit;
    assert_int_equal(gtl_find_limit(rig, &limit), GTL_FAULTY);
    assert_non_null(strstr(limit.reason, "a batten"));
    assert_int_equal(limit.blame, rig->battens[0].line);
    gtl_limit_end(&limit);
    gtl_rig_free(rig);
}

/* Reading and rating with each allocation failing in turn. */
static bool works_with(long allowed)
{
    gtl_fault_list faults;
    gtl_sheet sheet = {0};
    char text[2000];
    int size = snprintf(text, sizeof text, hauled, "hold, jam, lost drop-2", "90 %", lopsided);
    long before = blocks_alive();
    allow_allocations(allowed);
    gtl_faults_begin(&faults, "rig.ini");
    gtl_rig *rig = gtl_read_text(text, (size_t)size, &faults);
    gtl_status status = rig ? gtl_rate(rig, &sheet) : GTL_NO_MEMORY;
    char *report = status == GTL_OK ? gtl_report(&sheet, GTL_TEXT) : NULL;
    bool refused = allow_all_allocations();
    assert_int_equal(status == GTL_OK && report, !refused);
    free(report);
    gtl_sheet_end(&sheet);
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void memory_fails(void **state)
{
    (void)state;
    long allowed = 0;
    while (!works_with(allowed)) allowed += allowed < 400 ? 1 : 7;
    assert_true(allowed > 400);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(picks_are_loads),
        cmocka_unit_test(lifts_the_batten),
        cmocka_unit_test(demands_take_the_worse),
        cmocka_unit_test(slack_line_is_let_go),
        cmocka_unit_test(two_lines_are_statics),
        cmocka_unit_test(may_be_caught_by_any_pick),
        cmocka_unit_test(half_held_has_no_figures),
        cmocka_unit_test(falls_where_nothing_holds),
        cmocka_unit_test(pipe_gives_weight_and_stiffness),
        cmocka_unit_test(gains_no_more_than_there_is),
        cmocka_unit_test(names_the_batten_as_load),
        cmocka_unit_test(parted_picks_leave_it_open),
        cmocka_unit_test(copies_outlive),
        cmocka_unit_test(no_load_of_its_own_to_limit),
        cmocka_unit_test(memory_fails),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
