/* test_rope_bill.c - rope that is needed, things that meet, resets, what grows on the way; with memory that
 * fails as well. */
#include "unit/failing_memory.h"
#include "unit/failing_rating.h"
#include "unit/rated.h"

#include <gantline/limit.h>
#include <gantline/report.h>
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const double pi = 3.14159265358979323846;

/* Heights alone, blocks 4 m apart: what stands under [rig], head, tail and the rope. */
#define TACKLE                                                                                               \
    "[rig]\n%s\n[anchor beam]\nat = 6 m\n[block head]\non = beam\n%s\n[block tail]\nat = 2 m\n%s\n"          \
    "[load crate]\non = tail\nmass = 50 kg\n[hand crew]\nat = 1 m\n[rope fall]\npath = beam, tail, head, "   \
    "crew\n%s\n"

/* A tackle of two parts at the foot of a whip, 2 m between what meets. */
#define JIG                                                                                                  \
    "[rig]\nlift = %g m\n[anchor beam]\nat = 10 m\n[block head]\non = beam\n[load crate]\nat = 1 m\nmass = " \
    "50 kg\n[%s grab]\nat = 3 m\n[block upper]\non = grab\nclear = 0.5 m\n[anchor floor]\nat = 0.5 m\n"      \
    "[block lower]\non = floor\n[hand crew]\nat = 9 m\n[rope whip]\npath = crate, head, grab\n"              \
    "[rope jig]\npath = lower, upper, lower, crew\n"

static const gtl_rope_bill *bill_of(const rated *rig)
{
    assert_non_null(rig->sheet.rope_bill);
    assert_true(rig->sheet.rope_bill->worked);
    return rig->sheet.rope_bill;
}

static const gtl_rope_need *need_of(const rated *rig, const char *name)
{
    const gtl_rope_bill *bill = bill_of(rig);
    for (int i = 0; i < bill->rope_count; i++)
        if (!strcmp(rig->rig->lines[bill->ropes[i].line].name, name)) return &bill->ropes[i];
    fail();
    return NULL;
}

static bool tells(const rated *rig, gtl_warning_code code, const char *about)
{
    for (int i = 0; i < rig->sheet.warning_count; i++)
        if (rig->sheet.warnings[i].code == code && !strcmp(rig->sheet.warnings[i].about, about)) return true;
    return false;
}

static void asked_for(void **state)
{
    (void)state;
    static const struct {
        const char *sheet, *tail, *rope;
        bool asks;
    } files[] = {{"", "", "", false},
                 {"lift = 1 m", "", "", true},
                 {"", "clear = 0.2 m", "", true},
                 {"", "", "spare = 1 m", true},
                 {"", "", "length = 20 m", true}};
    for (size_t i = 0; i < sizeof files / sizeof *files; i++) {
        rated rig = rate_sound(TACKLE, files[i].sheet, "", files[i].tail, files[i].rope);
        assert_int_equal(rig.sheet.rope_bill != NULL, files[i].asks);
        rated_end(&rig);
    }
}

/* Without a lift the figures are for the rig as drawn, and the run is told all the same. */
static void as_drawn(void **state)
{
    (void)state;
    rated rig = rate_sound(TACKLE, "", "", "", "spare = 1.5 m");
    const gtl_rope_need *need = need_of(&rig, "fall");
    assert_close(need->now, 13);
    assert_close(need->needed, 14.5);
    assert_true(isnan(need->comes));
    assert_close(bill_of(&rig)->run, 4);
    assert_true(bill_of(&rig)->way == 0);
    assert_int_equal(bill_of(&rig)->resets, -1);
    assert_false(tells(&rig, GTL_WARN_LIFT_CUT_SHORT, "crate"));
    rated_end(&rig);
}

static void hauling(void **state)
{
    (void)state;
    rated rig = rate_sound(TACKLE, "lift = 3 m", "", "", "length = 14 m");
    const gtl_rope_need *need = need_of(&rig, "fall");
    assert_close(need->comes, 6);
    assert_close(need->most, 13);
    assert_int_equal(need->open_wraps, 2);
    assert_int_equal(bill_of(&rig)->resets, 0);
    assert_close(bill_of(&rig)->way, 3);
    rated_end(&rig);
}

/* Half a turn at the least, more where it is more, whole turns too; the rope's own thickness lies outside. */
static void wraps(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\nlift = 1 m\n[anchor beam]\nat = 0 m, 6 m\n[block head]\non = beam\nsheave "
                           "diameter = 88 mm\n[anchor stem]\nat = 3 m, 2 m\n[block lead]\non = stem\nsheave "
                           "diameter = 88 mm\nefficiency = 90 %%\nwrap = 270 deg\n[load crate]\nat = 0 m, 2 "
                           "m\nmass = 50 kg\n[hand crew]\nat = 5 m, 3 m\n[rope fall]\npath = crate, head, "
                           "lead, crew\ndiameter = 12 mm\n");
    const gtl_rope_need *need = need_of(&rig, "fall");
    assert_close(need->wraps, pi * 0.05 + 1.5 * pi * 0.05);
    assert_close(need->needed, need->most + need->wraps);
    rated_end(&rig);
    rig = rate_sound(
        "[rig]\nlift = 1 m\n[anchor beam]\nat = 0 m, 6 m\n[block head]\non = beam\n[anchor "
        "stem]\nat = 3 m, 1 m\n[fairlead post]\non = stem\nfriction = 0.2\nturns = 2\npin diameter "
        "= 200 mm\n[load crate]\nat = 0 m, 2 m\nmass = 50 kg\n[hand crew]\nat = 5 m, 1 m\n"
        "[rope fall]\npath = crate, head, post, crew\n");
    assert_close(need_of(&rig, "fall")->wraps, 5 * pi * 0.1);
    assert_int_equal(need_of(&rig, "fall")->open_wraps, 1);
    rated_end(&rig);
}

/* The greater of two clear distances counts, a block's on the anchor too; else sheaves; else centres. */
static void meetings(void **state)
{
    (void)state;
    static const struct {
        const char *head, *tail;
        double run;
        gtl_meeting meeting;
        bool one_only;
    } pairs[] = {
        {"", "", 4, GTL_MEET_CENTRES, false},
        {"", "clear = 0.3 m", 3.7, GTL_MEET_CLEAR, false},
        {"clear = 0.5 m", "clear = 0.3 m", 3.5, GTL_MEET_CLEAR, false},
        {"clear = 0.3 m", "sheave diameter = 1 m", 3.7, GTL_MEET_CLEAR, false},
        {"sheave diameter = 80 mm", "sheave diameter = 60 mm", 3.93, GTL_MEET_SHEAVES, false},
        {"", "sheave diameter = 60 mm", 3.97, GTL_MEET_SHEAVES, true},
        {"clear = 4 m", "", 0, GTL_MEET_CLEAR, false},
        {"clear = 5 m", "", 0, GTL_MEET_CLEAR, false},
    };
    for (size_t i = 0; i < sizeof pairs / sizeof *pairs; i++) {
        rated rig = rate_sound(TACKLE, "lift = 1 m", pairs[i].head, pairs[i].tail, "");
        const gtl_rope_bill *bill = bill_of(&rig);
        assert_int_equal(bill->end, GTL_WAY_BLOCKED);
        assert_true(fabs(bill->run - pairs[i].run) < 1e-9);
        assert_int_equal(bill->meeting, pairs[i].meeting);
        assert_int_equal(bill->size_of_one_only, pairs[i].one_only);
        assert_int_equal(tells(&rig, GTL_WARN_LIFT_CUT_SHORT, "crate"), pairs[i].run == 0);
        assert_false(bill->can_reset);
        rated_end(&rig);
    }
}

static void resets(void **state)
{
    (void)state;
    static const struct {
        double lift;
        int resets;
    } lifts[] = {{1, 0}, {2, 0}, {2.0001, 1}, {4, 1}, {6, 2}, {6.0001, 3}};
    for (size_t i = 0; i < sizeof lifts / sizeof *lifts; i++) {
        rated rig = rate_sound(JIG, lifts[i].lift, "joint");
        assert_true(bill_of(&rig)->can_reset);
        assert_close(bill_of(&rig)->run, 2);
        assert_int_equal(bill_of(&rig)->resets, lifts[i].resets);
        assert_int_equal(tells(&rig, GTL_WARN_LIFT_CUT_SHORT, "crate"), lifts[i].resets > 0);
        rated_end(&rig);
    }
}

/* A tackle right over the load takes no new hold. */
static void no_reset(void **state)
{
    (void)state;
    rated rig = rate_sound(TACKLE, "lift = 5 m", "", "", "");
    assert_int_equal(bill_of(&rig)->resets, -1);
    assert_close(bill_of(&rig)->way, 4);
    assert_close(need_of(&rig, "fall")->comes, 8);
    char *text = gtl_report(&rig.sheet, GTL_TEXT);
    assert_non_null(strstr(text, "none helps"));
    free(text);
    rated_end(&rig);
}

/* A line that is let out as the load goes up takes most at the top. */
#define TAG                                                                                                  \
    "[rig]\nlift = 2 m\n[anchor beam]\nat = 6 m\n[block head]\non = beam\n[load crate]\nat = 2 m\nmass = "   \
    "50 "                                                                                                    \
    "kg\n[hand crew]\nat = 1 m\n[hand mate]\nat = 0.5 m\npull = 40 N\n[rope fall]\npath = crate, head, "     \
    "crew\n[rope tag]\npath = crate, mate\nlength = %g m\n"

static void let_out(void **state)
{
    (void)state;
    gtl_sheet sheet;
    rated rig = rate_sound(TAG, 3.5);
    assert_close(need_of(&rig, "tag")->comes, -2);
    assert_close(need_of(&rig, "tag")->needed, 3.5);
    rated_end(&rig);
    gtl_rig *short_rope = read_sound(TAG, 3.4999);
    assert_int_equal(gtl_rate(short_rope, &sheet), GTL_NO_ANSWER);
    assert_int_equal(sheet.blame, 19);
    assert_non_null(strstr(sheet.reason, "3.500 m are needed, 1.500 m of it"));
    gtl_sheet_end(&sheet);
    gtl_rig_free(short_rope);
}

/* A hauled rope that is tied in its middle too: its length is that of the whole, and no stretch of it keeps
 * it. */
static void tied_in_the_middle(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\nlift = 1 m\n[anchor beam]\nat = 6 m\n[block head]\non = beam\n[joint "
                           "grip]\nat = 3 m\n[load crate]\nat = 1 m\nmass = 50 kg\n[hand crew]\nat = 1 "
                           "m\n[rope fall]\npath = crate, grip, head, crew\nlength = 10 m\n");
    const gtl_outcome *hold = gtl_sheet_outcome(&rig.sheet, GTL_HOLD);
    assert_close(hold->state->piece_length[0], 2);
    assert_close(need_of(&rig, "fall")->now, 10);
    assert_close(bill_of(&rig)->run, 3);
    rated_end(&rig);
}

/* Of an endless line the second hand gives out what comes to the first. */
static void two_hands(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\nlift = 1 m\nefficiency = 95 %%\n[anchor grid]\nat = 9 m\n[anchor floor]\nat = "
                   "0 m\n[block head]\non = grid\n[block foot]\non = floor\n[load bar]\nat = 2 m\nmass = "
                   "50 kg\n[arbor frame]\nat = 6 m\nmass = %g kg\n[rope lift]\npath = bar, head, "
                   "frame\n[rope front]\npath = frame, head, down\n[rope back]\npath = frame, foot, "
                   "up\n[hand down]\nat = 1.5 m\n[hand up]\nat = 1.2 m\nor = down\n",
                   40.0);
    const gtl_rope_need *front = need_of(&rig, "front"), *back = need_of(&rig, "back");
    assert_close(fabs(front->comes), 1);
    assert_close(front->comes, -back->comes);
    assert_true(isnan(need_of(&rig, "lift")->comes));
    rated_end(&rig);
}

/* What runs away has no bill, and says so. */
static void runs_away(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\nlift = 1 m\nload = bar\n[anchor grid]\nat = 9 m\n[block head]\non = grid\n[load "
                   "bar]\nat = 2 m\nmass = 40 kg\n[load frame]\nat = 6 m\nmass = 50 kg\n[rope lift]\npath = "
                   "bar, head, frame\n[rope hold]\npath = frame, crew\n[hand crew]\nat = 1 m\n");
    assert_non_null(rig.sheet.rope_bill);
    assert_false(rig.sheet.rope_bill->worked);
    char *text = gtl_report(&rig.sheet, GTL_TEXT), *json = gtl_report(&rig.sheet, GTL_JSON);
    assert_non_null(strstr(text, "Not worked: the rig does not hold"));
    assert_non_null(strstr(json, "\"worked\": false"));
    free(text);
    free(json);
    rated_end(&rig);
}

/* Two lines that flatten as a crate goes up between them. */
#define FLAT                                                                                                 \
    "[rig]\n%s\nefficiency = 95 %%\n[anchor west]\nat = 0 m, 5 m\nwll = 5 kN\n[anchor east]\nat = 4 m, 5 "   \
    "m\nwll = 5 kN\n[block head]\non = east\nwll = 5 kN\n[joint apex]\nat = 2 m, 3 m\nwll = 5 kN\n[load "    \
    "crate]\non = apex\nmass = %g kg\n[hand crew]\nat = 5 m, 1 m\nlimit = 3 kN\n[sling left]\npath = west, " \
    "apex\nwll = 300 N\n[rope right]\npath = apex, head, crew\nwll = 3 kN\n"

/* Within where it is drawn, over further up: the verdict is over, and the limit is lower. */
static void grows(void **state)
{
    (void)state;
    rated low = rate_sound(FLAT, "", 20.0), high = rate_sound(FLAT, "lift = 1.7 m", 20.0);
    assert_int_equal(low.sheet.verdict, GTL_WITHIN);
    assert_int_equal(high.sheet.verdict, GTL_OVER);
    assert_int_equal(high.sheet.why, GTL_WHY_ON_THE_WAY);
    assert_true(tells(&high, GTL_WARN_GROWS_ON_THE_WAY, "left"));
    char *text = gtl_report(&high.sheet, GTL_TEXT);
    assert_non_null(strstr(text, "over the rating further up the lift, at rest: left"));
    free(text);
    gtl_limit limit;
    assert_int_equal(gtl_find_limit(high.rig, &limit), GTL_OK);
    assert_true(limit.found && !limit.permitted && limit.heaviest.kind == GTL_EDGE_RATING);
    double mass = limit.heaviest.mass;
    gtl_limit_end(&limit);
    rated_end(&low);
    rated_end(&high);
    rated at = rate_sound(FLAT, "lift = 1.7 m", mass), over = rate_sound(FLAT, "lift = 1.7 m", 1.0001 * mass);
    assert_int_equal(at.sheet.verdict, GTL_WITHIN);
    assert_int_equal(over.sheet.verdict, GTL_OVER);
    rated_end(&at);
    rated_end(&over);
}

/* An eyebolt that is pulled ever more to the side: as the same rig says that is drawn at the top. */
#define EYEBOLT                                                                                              \
    "[rig]\n%s\n[anchor west]\nat = 0 m, 5 m\nwll = 2 kN\nfitting = shoulder-eyebolt\naxis = down\n"         \
    "[anchor east]\nat = 4 m, 5 m\nwll = 5 kN\n[block head]\non = east\nwll = 5 kN\n[joint apex]\nat = %g "  \
    "m, %g m\nwll = 5 kN\n[load crate]\non = apex\nmass = 20 kg\n[hand crew]\nat = 5 m, 1 m\nlimit = 3 "     \
    "kN\n[sling left]\npath = west, apex\nlength = 2.5 m\nwll = 5 kN\n[rope right]\npath = apex, head, "     \
    "crew\nwll = 5 kN\n"

static void angles_on_the_way(void **state)
{
    (void)state;
    rated low = rate_sound(EYEBOLT, "lift = 0.15 m", 1.5, 3.0);
    rated high = rate_sound(EYEBOLT, "", sqrt(2.5 * 2.5 - 1.85 * 1.85), 3.15);
    const gtl_component *low_eye = component_of(&low, "west"), *high_eye = component_of(&high, "west");
    const gtl_strain *strain = &bill_of(&low)->strains[low_eye - low.sheet.components];
    assert_true(low_eye->utilisation < high_eye->utilisation);
    assert_true(fabs(strain->use / high_eye->utilisation - 1) < 1e-5);
    assert_true(fabs(strain->most / high_eye->demand - 1) < 1e-5);
    rated_end(&low);
    rated_end(&high);
    low = rate_sound(EYEBOLT, "lift = 1 m", 1.5, 3.0); /* beyond 45 degrees its table allows nothing */
    low_eye = component_of(&low, "west");
    assert_true(isinf(bill_of(&low)->strains[low_eye - low.sheet.components].use));
    assert_int_equal(low_eye->mark, GTL_MARK_WITHIN);
    assert_int_equal(low.sheet.verdict, GTL_OVER);
    rated_end(&low);
}

/* Where no place is found any more the way ends short of it, with a reason. */
static void no_place(void **state)
{
    (void)state;
    rated rig = rate_sound(FLAT, "lift = 3 m", 20.0);
    const gtl_rope_bill *bill = bill_of(&rig);
    assert_int_equal(bill->end, GTL_WAY_NO_PLACE);
    /* The sling is 2.828 m long: level, its end would be 2 m up. */
    assert_true(bill->run > 1.7 && bill->run < 2);
    assert_true(bill->reason[0] != '\0');
    assert_int_equal(bill->resets, -1);
    assert_true(bill->way == bill->run);
    rated_end(&rig);
}

/* --- memory --- */

static bool reports_with(const rated *rig, gtl_form form, long allowed)
{
    allow_allocations(allowed);
    char *report = gtl_report(&rig->sheet, form);
    bool refused = allow_all_allocations();
    assert_true((report == NULL) == refused);
    free(report);
    return !refused;
}

static void memory(void **state)
{
    (void)state;
    static const gtl_form forms[] = {GTL_TEXT, GTL_JSON, GTL_HTML};
    rated rig = rate_sound(JIG, 5.0, "joint");
    for (long allowed = 0; !rates_with(rig.rig, allowed);) allowed += 3;
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++)
        for (long allowed = 0; !reports_with(&rig, forms[i], allowed);) allowed += 7;
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(asked_for), cmocka_unit_test(as_drawn),
        cmocka_unit_test(hauling),   cmocka_unit_test(wraps),
        cmocka_unit_test(meetings),  cmocka_unit_test(resets),
        cmocka_unit_test(no_reset),  cmocka_unit_test(let_out),
        cmocka_unit_test(two_hands), cmocka_unit_test(tied_in_the_middle),
        cmocka_unit_test(runs_away), cmocka_unit_test(grows),
        cmocka_unit_test(no_place),  cmocka_unit_test(angles_on_the_way),
        cmocka_unit_test(memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
