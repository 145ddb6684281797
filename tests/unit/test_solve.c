/* test_solve.c - large rigs against exact answers, known pulls, slack lines, and what has no answer. */
#include "common/large_rigs.h"
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static gtl_state *solved(const gtl_rig *rig, gtl_case_kind kind, gtl_status wanted)
{
    gtl_state *state = gtl_state_new(rig);
    assert_non_null(state);
    assert_int_equal(gtl_solve(rig, &(gtl_case){.kind = kind}, state), wanted);
    return state;
}

static double effort(const gtl_rig *rig, gtl_case_kind kind)
{
    gtl_state *state = solved(rig, kind, GTL_OK);
    assert_true(state->possible);
    double pull = state->effort;
    gtl_state_free(state);
    return pull;
}

/* ---- tackles ---- */

static void sheaves_without_end(void **state)
{
    (void)state;
    for (int sheaves = 2; sheaves <= 10000; sheaves *= sheaves == 2 ? 5 : 10) {
        gtl_rig *rig = large_tackle(sheaves, "99.9999 %");
        assert_non_null(rig);
        assert_close(effort(rig, GTL_HOLD), large_tackle_effort(sheaves, 1));
        assert_close(effort(rig, GTL_RAISE), large_tackle_effort(sheaves, 0.999999));
        assert_close(effort(rig, GTL_LOWER), large_tackle_effort(sheaves, 1 / 0.999999));
        gtl_rig_free(rig);
    }
}

/* 0.92 to the power of 10,000 is no number any more: no pull is printed, and it is said why. */
static void friction_beyond_all_rigs(void **state)
{
    (void)state;
    gtl_rig *rig = large_tackle(10000, "92 %");
    gtl_state *refused = solved(rig, GTL_RAISE, GTL_NO_ANSWER);
    assert_non_null(strstr(refused->reason, "`fall`"));
    assert_non_null(strstr(refused->reason, "1e13"));
    assert_int_equal(refused->blame, rig->lines[0].line);
    assert_true(isnan(refused->effort));
    assert_true(isnan(refused->tension[0]));
    gtl_state_free(refused);
    gtl_sheet sheet;
    assert_int_equal(gtl_rate(rig, &sheet), GTL_NO_ANSWER);
    assert_non_null(strstr(sheet.reason, "1e13"));
    gtl_sheet_end(&sheet);
    gtl_rig_free(rig);
}

/* The most that is allowed still is right: 0.92 to the power of 340 is 5e-13. */
static void friction_up_to_the_limit(void **state)
{
    (void)state;
    gtl_rig *rig = large_tackle(340, "92 %");
    assert_close(effort(rig, GTL_RAISE), large_tackle_effort(340, 0.92));
    assert_close(effort(rig, GTL_LOWER), large_tackle_effort(340, 1 / 0.92));
    gtl_rig_free(rig);
}

/* ---- chains ---- */

static chain_figures solved_chain(int joints)
{
    gtl_rig *rig = large_chain(joints);
    assert_non_null(rig);
    gtl_state *state = solved(rig, GTL_HOLD, GTL_OK);
    chain_figures figures = {0, 0};
    for (int n = 0; n < rig->node_count; n++) figures.sag = fmax(figures.sag, -state->at[3 * n + 1]);
    int first = rig->lines[0].first_part;
    const double *from = state->at + 3 * rig->things[rig->stops[rig->parts[first].from].thing].node;
    const double *to = state->at + 3 * rig->things[rig->stops[rig->parts[first].to].thing].node;
    figures.level = state->tension[first] * fabs(to[0] - from[0]) / hypot(to[0] - from[0], to[1] - from[1]);
    gtl_state_free(state);
    gtl_rig_free(rig);
    return figures;
}

static void chains_link_by_link(void **state)
{
    (void)state;
    const int sizes[] = {10, 11, 100, 500, 2000};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        chain_figures found = solved_chain(sizes[i]);
        chain_figures wanted = chain_of_links(sizes[i]);
        assert_true(fabs(found.level / wanted.level - 1) < 1e-7);
        assert_true(fabs(found.sag / wanted.sag - 1) < 1e-7);
    }
}

/* Twice the links, a quarter of the difference: what is left is the links' own. */
static void chains_become_catenaries(void **state)
{
    (void)state;
    chain_figures wanted = catenary();
    double before = 0;
    for (int joints = 49; joints < 1000; joints = 2 * joints + 1) {
        double off = fabs(solved_chain(joints).level / wanted.level - 1);
        if (joints == 49) assert_true(off < 1e-3);
        if (before > 0) assert_in_range((int)(1000 * before / off), 3900, 4100);
        before = off;
    }
    assert_true(fabs(solved_chain(799).sag / wanted.sag - 1) < 1e-5);
}

/* ---- known pulls and slack lines ---- */

/* A known pull is what the hand gives: friction on the way takes from it, or adds to it. */
static void known_pull_over_a_sheave(void **state)
{
    (void)state;
    gtl_rig *rig =
        read_sound("[anchor top]\nat = 5 m\n[block wheel]\non = top\nefficiency = 80 %%\n[load crate]\n"
                   "at = 2 m\nweight = 200 N\n[hand crew]\nat = 4 m\n[rope lift]\npath = crate, crew\n"
                   "[hand helper]\nat = 1 m\npull = 50 N\n[rope help]\npath = crate, wheel, helper\n");
    assert_close(effort(rig, GTL_HOLD), 150);
    assert_close(effort(rig, GTL_RAISE), 200 - 50 * 0.8);
    assert_close(effort(rig, GTL_LOWER), 200 - 50 / 0.8);
    gtl_rig_free(rig);
}

/* Greater over lesser tension at a sheave, by the quadratic form of its law: (T2 - T1)^2 = f^2 (T1^2 + T2^2 -
 * 2 T1 T2 cos wrap) with T1 = 1. */
static double sheave_ratio(double efficiency, double wrap)
{
    double f = (1 - efficiency) / (1 + efficiency);
    double a = 1 - f * f;
    double b = 1 - f * f * cos(wrap);
    return (b + sqrt(b * b - a * a)) / a;
}

/* Friction draws the block aside while it is raised: one slack line comes taut, the other does not. */
static void slack_line_that_friction_takes_up(void **state)
{
    (void)state;
    gtl_rig *rig =
        read_sound("[anchor beam]\nat = 0 m, 4 m\n[block tail]\nat = 1 m, 1 m\nefficiency = 80 %%\n"
                   "[load crate]\non = tail\nweight = 200 N\n[hand crew]\nat = 2 m, 4 m\n[rope fall]\n"
                   "path = beam, tail, crew\n[anchor low]\nat = 0 m, 1 m\n[anchor high]\nat = 0 m, 2 m\n"
                   "[sling stay]\npath = low, tail\nlength = 1.03 m\n"
                   "[sling spare]\npath = high, tail\nlength = 3 m\n");
    gtl_state *raised = solved(rig, GTL_RAISE, GTL_OK);
    double left = atan2(1.03, 3); /* of the parts, from the vertical */
    double right = atan2(0.97, 3);
    double ratio = sheave_ratio(0.8, 3.14159265358979323846 - left - right);
    double first = 200 / (cos(left) + ratio * cos(right));
    assert_close(raised->effort, first * ratio);
    assert_close(raised->tension[rig->lines[1].first_part], first * (ratio * sin(right) - sin(left)));
    assert_true(raised->slack[rig->lines[2].first_piece]);
    gtl_state_free(raised);
    gtl_state *held = solved(rig, GTL_HOLD, GTL_OK);
    assert_true(held->slack[rig->lines[1].first_piece]);
    gtl_state_free(held);
    gtl_rig_free(rig);
}

/* Two lines side by side that differ by less than ropes stretch share the load in a way that nobody knows.
 * The trunk makes them a small part of the whole, so that no stretch within the search decides instead. */
static void lengths_that_are_as_good_as_equal(void **state)
{
    (void)state;
    static const char text[] =
        "[anchor beam]\nat = 4 m\n[load crate]\nat = 1 m\nweight = 200 N\n[sling one]\n"
        "path = beam, crate\nlength = 3 m\n[sling two]\npath = beam, crate\nlength = %s m\n"
        "[load trunk]\nat = 2 m\nweight = 9800 N\n[sling drop]\npath = beam, trunk\n";
    const char *const shared[] = {"3", "3.00001", "3.00002"};
    for (size_t i = 0; i < sizeof shared / sizeof *shared; i++) {
        gtl_rig *rig = read_sound(text, shared[i]);
        gtl_state *refused = solved(rig, GTL_HOLD, GTL_NO_ANSWER);
        assert_non_null(strstr(refused->reason, "share the load"));
        gtl_state_free(refused);
        gtl_rig_free(rig);
    }
    gtl_rig *rig = read_sound(text, "3.0001");
    gtl_state *held = solved(rig, GTL_HOLD, GTL_OK);
    assert_close(held->tension[0], 200);
    assert_true(held->slack[1]);
    gtl_state_free(held);
    gtl_rig_free(rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(sheaves_without_end),
        cmocka_unit_test(friction_beyond_all_rigs),
        cmocka_unit_test(friction_up_to_the_limit),
        cmocka_unit_test(chains_link_by_link),
        cmocka_unit_test(chains_become_catenaries),
        cmocka_unit_test(known_pull_over_a_sheave),
        cmocka_unit_test(slack_line_that_friction_takes_up),
        cmocka_unit_test(lengths_that_are_as_good_as_equal),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
