/* test_worksheet.c - sheets for a class: what is drawn, the answers, the mistakes, and that no sheet gives an
 * answer away. All rigs are invented; figures worked by hand say so. */
#include "base/text.h"
#include "report/drawing.h"
#include "unit/failing_memory.h"
#include "unit/markup.h"
#include "unit/problems.h"
#include "unit/rated.h"
#include "unit/report_text.h"
#include "worksheet/worked.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define G 9.80665

/* --- which figures --- */

/* No two students have the same figures as long as there are enough, whatever the seed. */
static void nobody_shares(void **state)
{
    (void)state;
    for (uint64_t sets = 1; sets <= 300; sets++)
        for (uint64_t seed = 0; seed < 4; seed++) {
            bool used[300] = {false};
            for (int student = 1; student <= (int)sets; student++) {
                uint64_t number = gtl_draw_number(seed, (int)sets % 3, student, sets);
                assert_true(number < sets);
                assert_false(used[number]);
                used[number] = true;
            }
            assert_int_equal(gtl_draw_number(seed, 1, 1, sets),
                             gtl_draw_number(seed, 1, (int)sets + 1, sets));
        }
}

/* Each of ten sets comes first for about a tenth of all seeds; 99.9 % of fair draws lie within (chi-squared,
 * 9 degrees of freedom: 27.88). */
static void every_set_is_as_likely(void **state)
{
    (void)state;
    int counts[10] = {0};
    double sum = 0;
    for (uint64_t seed = 0; seed < 10000; seed++) counts[gtl_draw_number(seed, 0, 1, 10)]++;
    for (int i = 0; i < 10; i++) sum += pow(counts[i] - 1000, 2) / 1000;
    assert_true(sum < 27.88);
}

/* Written down once, so that a seed means the same tomorrow and elsewhere. */
static void seeds_keep_their_meaning(void **state)
{
    (void)state;
    static const int drawn[] = {64, 363, 952, 663, 443, 980};
    for (int i = 0; i < (int)(sizeof drawn / sizeof *drawn); i++)
        assert_int_equal(gtl_draw_number(7, 2, i + 1, 1000), drawn[i]);
}

/* --- ranges --- */

/* The values with `|` between them, or `refused: ` and why; the caller frees it. */
static char *values_of(const char *text)
{
    gtl_vary vary = {0};
    gtl_text all = {0};
    char why[GTL_WHY_SIZE];
    if (gtl_range_read(text, &vary, why))
        for (int i = 0; i < vary.count; i++) gtl_text_add(&all, "%s%s", i > 0 ? "|" : "", vary.values[i]);
    else
        gtl_text_add(&all, "refused: %s", why);
    gtl_range_end(&vary);
    return gtl_text_take(&all);
}

/* Of a refusal only the beginning, up to its advice, is compared. */
static void assert_values(const char *text, const char *wanted)
{
    char *got = values_of(text);
    bool refused = strncmp(wanted, "refused", 7) == 0;
    if (refused ? strncmp(got, wanted, strlen(wanted)) != 0 : strcmp(got, wanted) != 0)
        fail_msg("%s: %s", text, got);
    free(got);
}

static void ranges(void **state)
{
    (void)state;
    assert_values("20 kg to 30 kg step 5 kg", "20 kg|25 kg|30 kg");
    assert_values("0.1kg TO 0.3 KG step .1 kg", "0.1 kg|0.2 kg|0.3 kg");
    assert_values("0.95 to 1.05 step 0.05", "0.95|1|1.05");
    assert_values("1 m to 1.5 m step 0.25 m", "1 m|1.25 m|1.5 m");
    assert_values("80 % or 85 % or 9e1 %", "80 %|85 %|9e1 %");
    assert_values("0 m, 3 m or 0 m, 4 m", "0 m, 3 m|0 m, 4 m");
    assert_values("3 m", "3 m");
    assert_values("20 kg to 30 kg", "refused: a range needs its step");
    assert_values("20 kg to 30 kg step 3 kg", "refused: the steps do not end");
    assert_values("20 kg to 30 kg step 0 kg", "refused: a range goes up by a step");
    assert_values("30 kg to 20 kg step 5 kg", "refused: a range goes up by a step");
    assert_values("20 kg to 30 lb step 5 kg", "refused: `30 lb` has another unit");
    assert_values("-5 kg to 30 kg step 5 kg", "refused: `-5 kg` is no number");
    assert_values("1 kg to 5 kg step 1e3 kg", "refused: `1e3 kg` has another unit");
    assert_values("0 kg to 200 kg step 1 kg", "refused: more than 200 values");
    assert_values("1 kg or 2 kg or 1 KG", "refused: `1 KG` stands there twice");
    assert_values("1.0000001 kg to 1000000000000 kg step 1 kg", "refused: ");
}

/* --- answers --- */

/* The answers to a problem's first set of figures, into `values`; how many there are. */
static int answers_to(const char *text, double values[8])
{
    gtl_set *set = read_sound_set(text);
    gtl_choice first = {{0}};
    gtl_worked worked;
    char why[GTL_REASON_SIZE];
    assert_true(gtl_work_problem(&set->problems[0], &first, &worked, why));
    int count = worked.answer_count;
    for (int i = 0; i < count && i < 8; i++) values[i] = worked.answers[i].value;
    gtl_worked_end(&worked);
    gtl_set_free(set);
    return count;
}

/* By hand: T1 + T1/e = W, E = T1/e^2. */
static void two_parts_by_hand(void **state)
{
    (void)state;
    double v[8], w = 10 * G, effort = w / (1 + 1 / 0.9) / 0.81;
    assert_int_equal(
        answers_to("[problem a]\nrig = two.ini\nask = weight, hold, raise, ideal advantage, estimated "
                   "advantage, efficiency, support, support in raising\n",
                   v),
        8);
    assert_close(v[0], 9 * G);
    assert_close(v[1], w / 2);
    assert_close(v[2], effort);
    assert_close(v[3], 2);
    assert_close(v[4], 9 * G / effort);
    assert_close(v[5], w / (2 * effort));
    assert_close(v[6], w + G + w / 2);
    assert_close(v[7], w + G + effort);
    assert_int_equal(
        answers_to(
            "[problem a]\nrig = two.ini\nlift = 0.5 m or 2 m\nask = hand distance, work in, work out\n", v),
        3);
    assert_close(v[0], 1);
    assert_close(v[1], effort);
    assert_close(v[2], 9 * G / 2);
    assert_int_equal(answers_to("[problem a]\nrig = legs.ini\nask = support\n", v), 2);
    assert_close(v[0], w / 2 / 0.8);
    assert_close(v[1], w / 2 / 0.8);
}

/* --- mistakes --- */

static void assert_mistake(const char *rig, const char *mistake, double wrong, double right)
{
    char text[200], why[GTL_REASON_SIZE];
    snprintf(text, sizeof text, "[problem a]\nrig = %s\nmistake = %s\n%s", rig, mistake,
             strstr("work-saved rope-as-lift ideal-with-friction", mistake) ? "lift = 0.5 m\n" : "");
    gtl_set *set = read_sound_set(text);
    gtl_choice first = {{0}};
    gtl_worked worked;
    assert_true(gtl_work_problem(&set->problems[0], &first, &worked, why));
    assert_true(fabs(worked.shown.wrong / wrong - 1) < 1e-6);
    assert_true(fabs(worked.shown.right / right - 1) < 1e-6);
    /* The wrong figure stands in the solution, the right one only in the reason; unless it is the weight,
     * which one part holds alone. */
    gtl_figure bad = gtl_answer_figure(&worked, worked.shown.unit, wrong);
    gtl_figure good = gtl_answer_figure(&worked, worked.shown.unit, right);
    bool told = false;
    for (size_t i = 0; i < worked.shown.solution.count; i++) {
        told = told || strstr(worked.shown.solution.elements[i].text, bad.text);
        assert_true(strcmp(mistake, "lead-block-counted") == 0 ||
                    !strstr(worked.shown.solution.elements[i].text, good.text));
    }
    assert_true(told);
    assert_non_null(strstr(worked.shown.reason.bytes, good.text));
    assert_null(strstr(worked.shown.asked.bytes, good.text));
    gtl_worked_end(&worked);
    gtl_set_free(set);
}

/* By hand, from the rigs of problems.c. */
static void mistakes(void **state)
{
    (void)state;
    double w = 10 * G, effort = w / (1 + 1 / 0.9) / 0.81;
    assert_mistake("two.ini", "hauling-part-counted", w / 3, w / 2);
    assert_mistake("three.ini", "hauling-part-not-counted", 9 * G / 2, 9 * G / 3);
    assert_mistake("led.ini", "lead-block-counted", w / 2, w);
    assert_mistake("two.ini", "anchor-sees-load-only", 11 * G, 16 * G);
    /* At head: a part down, and one towards 2 across, 5 down. */
    assert_mistake("led.ini", "anchor-sees-one-part", w, w * hypot(2 / sqrt(29), 1 + 5 / sqrt(29)));
    assert_mistake("two.ini", "friction-forgotten", w / 2, effort);
    assert_mistake("two.ini", "one-sheave-for-all", w / 1.8, effort);
    assert_mistake("two.ini", "ideal-with-friction", w / 2, effort);
    assert_mistake("two.ini", "mass-as-newtons", 5, w / 2);
    assert_mistake("two.ini", "ratio-upside-down", effort / (9 * G), 9 * G / effort);
    assert_mistake("two.ini", "work-saved", w / 4, w / 2);
    assert_mistake("two.ini", "rope-as-lift", 0.5, 1);
    assert_mistake("legs.ini", "angle-from-wrong-side", w / 2 / 0.6, w / 2 / 0.8);
    assert_mistake("legs.ini", "parts-not-parallel", w / 2, w / 2 / 0.8);
}

#define SHOWS(rig, mistake) "[problem a]\nrig = " rig "\nmistake = " mistake "\n"

/* A rig that does not bear a mistake out is refused, each for its reason. */
static void mistakes_refused(void **state)
{
    (void)state;
    assert_set_fault(SHOWS("three.ini", "hauling-part-counted"), 3, "leaves the moving block");
    assert_set_fault(SHOWS("two.ini", "hauling-part-not-counted"), 3, "leaves a fixed block");
    assert_set_fault(SHOWS("two.ini", "lead-block-counted"), 3, "no lead block");
    assert_set_fault(SHOWS("legs.ini", "hauling-part-counted"), 3, "no hand");
    assert_set_fault(SHOWS("led.ini", "anchor-sees-load-only"), 3, "more than one anchor");
    assert_set_fault(SHOWS("three.ini", "anchor-sees-load-only"), 3, "does not pull straight down");
    assert_set_fault(SHOWS("two.ini", "anchor-sees-one-part"), 3, "no anchor that holds a single redirect");
    assert_set_fault(SHOWS("led.ini", "one-sheave-for-all"), 3, "not all of the same efficiency");
    assert_set_fault(SHOWS("odd.ini", "angle-from-wrong-side"), 3, "no point that hangs on two legs alike");
    assert_set_fault(SHOWS("two.ini", "parts-not-parallel"), 3, "no point that hangs on two legs alike");
    assert_set_fault(SHOWS("led.ini", "rope-as-lift") "lift = 1 m\n", 3, "as far as the load rises");
    assert_set_fault(SHOWS("led.ini", "work-saved") "lift = 1 m\n", 3, "as far as the load rises");
    assert_set_fault(
        SHOWS("two.ini",
              "friction-forgotten") "vary rig title = a or b\nvary head efficiency = 100 % or 99 %\n"
                                    "vary tail efficiency = 100 % or 99 %\n",
        3, "by less than 2 %");
    assert_set_fault(SHOWS("two.ini", "mass-as-newtns"), 3, "did you mean `mass-as-newtons`?");
}

/* --- faults of a set --- */

static void faults_of_sets(void **state)
{
    (void)state;
    assert_set_fault("[set]\ntitle = a\n", 0, "no problem in this set");
    assert_set_fault("[problem a]\nask = hold\n", 1, "has no rig");
    assert_set_fault("[problem a]\nrig = two.ini\n", 1, "asks nothing");
    assert_set_fault("[problem a]\nrig = none.ini\nask = hold\n", 2, "cannot read `none.ini`: there is none");
    assert_set_fault("[problem a]\nrig = two.ini\nask = hold, hold\n", 3, "names `hold` twice");
    assert_set_fault("[problem a]\nrig = two.ini\nask = hold\nlift = 1 m\n", 4, "changes nothing here");
    assert_set_fault("[problem a]\nrig = two.ini\nask = work out\nlift = 1 kg\n", 4, "a length is wanted");
    assert_set_fault("[problem a]\nrig = two.ini\nask = work out\n", 3, "write lift = 0.5 m");
    assert_set_fault("[problem a]\nrig = legs.ini\nask = hold\n", 3, "no hand");
    assert_set_fault("[problem a]\nrig = two.ini\nask = hold\nvary crat mass = 1 kg or 2 kg\n", 4,
                     "did you mean `crate`?");
    assert_set_fault("[problem a]\nrig = two.ini\nask = hold\nvary crate masse = 1 kg or 2 kg\n", 4,
                     "did you mean `mass`?");
    assert_set_fault("[problem a]\nrig = two.ini\nask = hold\nvary crate mass = 1 kg or 0 kg\n", 4,
                     "two.ini:15: `mass`: `0 kg` is out of range");
    assert_set_fault("[problem a]\nrig = fault.ini\nask = hold\n", 2, "`at`");
    assert_set_fault("[problem a]\nrig = two.ini\nask = hold\n[problem a]\nrig = two.ini\nask = hold\n", 4,
                     "already (line 1)");
    assert_set_fault("[problem a]\nrig = two.ini\nask = hold\n[seta]\n", 4, "no section `seta`");
    assert_set_fault("[problem a]\nrig = two.ini\nask = hold\ncolour = 3\n", 4, "no key `colour`");
}

/* --- pages --- */

static const char class_set[] =
    "[set]\ntitle = Blocks\nnote = <Friday>\n[problem pull]\nrig = two.ini\nask = weight, hold, raise, "
    "efficiency, support\n"
    "vary crate mass = 5 kg to 60 kg step 1 kg\nvary head efficiency = 85 % to 95 % step 1 %\n"
    "[problem wrong]\nrig = legs.ini\nmistake = parts-not-parallel\nvary lamp mass = 3 kg to 30 kg step 1 "
    "kg\n";

static gtl_worksheets make(const gtl_set *set, uint64_t seed, int students, bool together)
{
    gtl_worksheets made;
    gtl_fault_list faults;
    gtl_worksheet_wish wish = {seed, students, together};
    gtl_faults_begin(&faults, "test.set");
    assert_int_equal(gtl_worksheet(set, &wish, &made, &faults), GTL_OK);
    gtl_faults_end(&faults);
    return made;
}

/* What stands between a student's heading and the next. */
static char *sheet_of(const char *page, int student)
{
    char from[64], to[64];
    snprintf(from, sizeof from, "<h2 id=\"student-%d\">", student);
    snprintf(to, sizeof to, "</section>");
    const char *begin = strstr(page, from);
    assert_non_null(begin);
    const char *end = strstr(begin, to);
    assert_non_null(end);
    return gtl_text_copy(begin, (size_t)(end - begin));
}

static void same_seed_same_sheets(void **state)
{
    (void)state;
    gtl_set *set = read_sound_set(class_set);
    gtl_worksheets one = make(set, 5, 3, false), same = make(set, 5, 3, false), more = make(set, 5, 9, false),
                   other = make(set, 6, 3, false);
    assert_string_equal(one.sheets, same.sheets);
    assert_string_equal(one.key, same.key);
    for (int student = 1; student <= 2; student++) {
        char *few = sheet_of(one.sheets, student), *many = sheet_of(more.sheets, student);
        char *others = sheet_of(other.sheets, student);
        assert_string_equal(few, many);
        assert_string_not_equal(few, others);
        free(few);
        free(many);
        free(others);
    }
    gtl_worksheets_end(&one);
    gtl_worksheets_end(&same);
    gtl_worksheets_end(&more);
    gtl_worksheets_end(&other);
    gtl_set_free(set);
}

/* Every answer of every student stands in the key, and in no byte of the sheets. */
static void sheets_give_nothing_away(void **state)
{
    (void)state;
    gtl_set *set = read_sound_set(class_set);
    gtl_worksheets made = make(set, 11, 20, false);
    for (int student = 1; student <= 20; student++)
        for (int i = 0; i < set->problem_count; i++) {
            const gtl_problem *problem = &set->problems[i];
            uint64_t number = gtl_draw_number(11, i, student, gtl_problem_sets(problem));
            gtl_choice choice = gtl_problem_choice(problem, number);
            gtl_worked worked;
            char why[GTL_REASON_SIZE], *sheet = sheet_of(made.sheets, student);
            assert_true(gtl_work_problem(problem, &choice, &worked, why));
            for (int k = 0; k < worked.answer_count; k++) {
                const gtl_answer *answer = &worked.answers[k];
                const char *figure = gtl_answer_figure(&worked, answer->unit, answer->value).text;
                /* A weight may be given where a solution holds the mistake. */
                if (strstr(sheet, figure)) fail_msg("student %d, problem %d: %s", student, i + 1, figure);
                assert_non_null(strstr(made.key, figure));
            }
            gtl_worked_end(&worked);
            free(sheet);
        }
    assert_null(strstr(made.sheets, "Gives it away"));
    assert_null(strstr(made.sheets, "The handbook"));
    assert_int_equal(count_of(made.sheets, "verdict"), 0);
    assert_well_formed(made.sheets);
    assert_well_formed(made.key);
    assert_non_null(strstr(made.sheets, "&lt;Friday&gt;"));
    assert_int_equal(count_of(made.sheets, "<svg"), 40);
    assert_int_equal(count_of(made.sheets, "class=\"leaf\""), 19);
    gtl_worksheets_end(&made);
    gtl_set_free(set);
}

static void key_behind_the_sheets(void **state)
{
    (void)state;
    gtl_set *set = read_sound_set(class_set);
    gtl_worksheets made = make(set, 1, 29, true);
    assert_null(made.key);
    assert_non_null(strstr(made.sheets, "<h2 id=\"key\">"));
    assert_non_null(strstr(made.sheets, "Answers of student 29"));
    assert_int_equal(made.least_sets, 28);
    assert_non_null(strstr(made.sheets, "Problem 2 has 28 sets of figures for 29 students"));
    assert_null(strstr(made.sheets, "Problem 1 has"));
    assert_well_formed(made.sheets);
    gtl_worksheets_end(&made);
    gtl_set_free(set);
}

/* --- the bare drawing --- */

static void bare_drawing(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", TWO_PARTS);
    gtl_drawing *drawing = gtl_draw_bare(&rig.sheet, "A rig & its rope");
    char *words = gtl_words_bare(&rig.sheet);
    gtl_text out = {0};
    assert_non_null(drawing);
    assert_non_null(words);
    gtl_write_drawing(&out, drawing, "x", words);
    char *markup = gtl_text_take(&out);
    assert_non_null(strstr(markup, "A rig &amp; its rope"));
    const char *const names[] = {"beam", "head", "tail", "crate", "crew"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) assert_non_null(strstr(markup, names[i]));
    const char *const secrets[] = {" N<",     " kN",  "kgf",  "Verdict", "erdict",
                                   "Governs", "Case", "OVER", "Gives it"};
    for (size_t i = 0; i < sizeof secrets / sizeof *secrets; i++) assert_null(strstr(markup, secrets[i]));
    assert_null(strpbrk(words, "0123456789"));
    gtl_drawing_end(drawing);
    free(words);
    free(markup);
    rated_end(&rig);
}

/* --- memory --- */

/* All of it with the first `allowed` allocations granted; true once none was refused. */
static bool works_with(long allowed)
{
    static const char text[] = "[problem a]\nrig = two.ini\nask = hold\nvary crate mass = 1 kg or 2 kg\n"
                               "[problem b]\nrig = legs.ini\nmistake = parts-not-parallel\n";
    gtl_fault_list faults;
    gtl_worksheets made = {0};
    long before = blocks_alive();
    allow_allocations(allowed);
    gtl_set *set = read_set(text, &faults);
    gtl_status status =
        set ? gtl_worksheet(set, &(gtl_worksheet_wish){1, 2, false}, &made, &faults) : GTL_NO_MEMORY;
    bool refused = allow_all_allocations();
    assert_int_equal(status, refused ? GTL_NO_MEMORY : GTL_OK);
    assert_true((made.sheets && made.key) == !refused);
    gtl_worksheets_end(&made);
    gtl_set_free(set);
    gtl_faults_end(&faults);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

/* Every allocation of the reading, then one in some forty. */
static void failing(void **state)
{
    (void)state;
    long allowed = 0;
    while (!works_with(allowed)) allowed += 1 + (allowed > 400 ? allowed / 40 : 0);
    assert_true(allowed > 1000);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nobody_shares),
        cmocka_unit_test(every_set_is_as_likely),
        cmocka_unit_test(seeds_keep_their_meaning),
        cmocka_unit_test(ranges),
        cmocka_unit_test(two_parts_by_hand),
        cmocka_unit_test(mistakes),
        cmocka_unit_test(mistakes_refused),
        cmocka_unit_test(faults_of_sets),
        cmocka_unit_test(same_seed_same_sheets),
        cmocka_unit_test(sheets_give_nothing_away),
        cmocka_unit_test(key_behind_the_sheets),
        cmocka_unit_test(bare_drawing),
        cmocka_unit_test(failing),
    };
    return cmocka_run_group_tests_name("worksheet", tests, NULL, NULL);
}
