/* test_lab_report.c - what people see of readings: every finding has its words, nothing doubtful looks good,
 * and memory that fails is no report. All readings are invented. */
#include "lab/compose.h"
#include "lab/plot.h"
#include "unit/failing_memory.h"
#include "unit/lab_text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* The text with each line end and the blanks about it as one blank. The caller frees it. */
static char *flat(char *text)
{
    char *to = text;
    for (const char *from = text; *from; from++) {
        bool blank = *from == ' ' || *from == '\n';
        if (!blank)
            *to++ = *from;
        else if (to > text && to[-1] != ' ')
            *to++ = ' ';
    }
    *to = '\0';
    return text;
}

static char *report_of(const char *table, gtl_form form)
{
    lab_text read = sound_lab(table);
    char *text = gtl_lab_report(&read.lab, form);
    assert_non_null(text);
    lab_end(&read);
    return flat(text);
}

static void assert_says(const char *text, const char *words)
{
    if (!strstr(text, words)) fail_msg("lacks `%s`: %s", words, text);
}

static void assert_silent(const char *text, const char *words)
{
    if (strstr(text, words)) fail_msg("says `%s`: %s", words, text);
}

static bool is_of_set_up(gtl_lab_code code)
{
    return code >= GTL_LAB_WEIGHT_FORGOTTEN;
}

/* Each code is put on a sound row, or set-up, in turn. */
static void every_finding(void **state)
{
    (void)state;
    for (int code = 0; code < GTL_LAB_CODE_COUNT; code++) {
        lab_text read = sound_lab("group," LAB_PARTS "Ash,4,10,2.9,0.2,0.8,0.05,0.002\n");
        bool whole = is_of_set_up((gtl_lab_code)code);
        gtl_lab_finding finding = {
            .code = (gtl_lab_code)code, .row = whole ? -1 : 0, .bars = true, .value = 2.5, .other = 3};
        gtl_lab lab = read.lab;
        lab.findings = &finding;
        lab.finding_count = 1;
        lab.rows[0].finding_count = whole ? 0 : 1;
        lab.set_ups[0].finding_count = whole ? 1 : 0;
        char *text = gtl_lab_report(&lab, GTL_TEXT);
        assert_non_null(text);
        flat(text);
        assert_says(text, whole ? "- Set-up A (4 parts): " : "- Line 2, group Ash: ");
        assert_says(text, ". Look first at: ");
        assert_says(text, gtl_lab_code_name((gtl_lab_code)code));
        assert_true(strlen(gtl_lab_finding_title((gtl_lab_code)code)) > 3);
        free(text);
        lab.findings = read.lab.findings;
        lab_end(&read);
    }
}

/* What the words of the wrong unit say of which column. */
static void units(void **state)
{
    (void)state;
    char *text = report_of(LAB_PARTS "3,200,0.7,0.2,0.6,0.02,0.001\n", GTL_TEXT);
    assert_says(text, "the load is about 102 times too great for this set-up, as if grams stood in a column");
    free(text);
    text = report_of(LAB_PARTS "3,2,70,0.2,0.6,0.02,0.001\n", GTL_TEXT);
    assert_says(text, "the effort is about 102 times too great for this set-up, as if grams stood");
    free(text);
    text = report_of(LAB_PARTS "3,0.2,0.7,0.2,0.6,0.02,0.001\n", GTL_TEXT);
    assert_says(text, "the load is about 9.81 times too small for this set-up, as if kilograms stood");
    free(text);
}

/* 140 %: told, in brackets, and not in the mean of the two others, 95.2 % and 90.9 %. */
static void doubtful(void **state)
{
    (void)state;
    char *text = report_of(LAB_PARTS "3,2,0.7,0.2,0.6,0.01,0.001\n3,2,0.7333,0.2,0.6,0.01,0.001\n"
                                     "3,2,0.476,0.2,0.6,0.01,0.001\n",
                           GTL_TEXT);
    assert_says(text, "Left out 1 of 3 rows: in no mean and no fit");
    assert_says(text, "(140.1)");
    assert_says(text, "A: 3 parts 3 2 93.1 3.1");
    assert_says(text, "left out: line 4 (over 100 %, beyond the uncertainty)");
    free(text);
    text = report_of(LAB_PARTS "3,2,0.7,0.2,0.6,0.01,0.001\n", GTL_TEXT);
    assert_silent(text, "Left out");
    assert_says(text, "Findings none; a slip that looks right is not found");
    free(text);
}

/* A mark that would push all others together is told, not drawn; no effort is drawn that is not known. */
static void figures(void **state)
{
    (void)state;
    char *page = report_of(LAB_PARTS "3,2,0.7,0.2,0.6,0.01,0.001\n3,200,0.7,0.2,0.6,0.01,0.001\n", GTL_HTML);
    assert_says(page, "viewBox=\"0 0 640 ");
    assert_says(page, "Not drawn: line 3 (9523.8 %, off the scale).");
    assert_says(page, "Not drawn: line 3 (0.7 N, predicted 66.7 N, off the scale).");
    assert_says(page, "Set-up A (3 parts): 1 mark; 0 on the line within U, 1 above, 0 below.");
    free(page);
    page = report_of("scale," LAB_PARTS "upside down,2,6,3,0.2,0.4,0.02,0.001\n", GTL_HTML);
    assert_says(page, "id=\"efficiency-0-title\"");
    assert_silent(page, "id=\"effort-title\"");
    free(page);
}

/* Numbers from dust to ships leave no axis without end and no figure that is none. */
static void sizes(void **state)
{
    (void)state;
    static const char *const tables[] = {
        LAB_PARTS "3,2e-7,7e-8,0.2,0.6,,\n", LAB_PARTS "3,2000000,700000,0.2,0.6,,\n",
        LAB_PARTS "3,0.000002,0.00000068,0.2,0.6,,\n", LAB_PARTS "3,2,0.7,0.0002,0.0006,5,5\n"};
    for (size_t i = 0; i < sizeof tables / sizeof *tables; i++) {
        lab_text read = read_lab(tables[i]);
        for (int form = GTL_TEXT; read.status == GTL_OK && form <= GTL_HTML; form++) {
            if (form == GTL_SVG) continue;
            char *text = gtl_lab_report(&read.lab, (gtl_form)form);
            assert_non_null(text);
            assert_silent(text, "nan");
            assert_silent(text, " inf");
            assert_true(strlen(text) < 100000);
            free(text);
        }
        lab_end(&read);
    }
    for (double highest = 1e-9; highest < 1e12; highest *= 1.7) {
        gtl_axis axis = gtl_axis_to(highest, 0, 100);
        assert_true(axis.high >= highest * (1 - 1e-9) && axis.high <= 2 * highest);
        assert_in_range(gtl_axis_ticks(&axis), 5, 13);
    }
}

static void names(void **state)
{
    (void)state;
    assert_string_equal(gtl_letter_of(0).text, "A");
    assert_string_equal(gtl_letter_of(25).text, "Z");
    assert_string_equal(gtl_letter_of(26).text, "AA");
    assert_string_equal(gtl_letter_of(51).text, "AZ");
    assert_string_equal(gtl_letter_of(52).text, "BA");
    assert_string_equal(gtl_lab_typed(0.7).text, "0.7");
    assert_string_equal(gtl_lab_typed(1.96133).text, "1.96133");
    assert_string_equal(gtl_lab_typed(0.00001).text, "1e-05");
    assert_string_equal(gtl_lab_typed(200).text, "200");
}

static void memory(void **state)
{
    (void)state;
    static const gtl_form forms[] = {GTL_TEXT, GTL_HTML, GTL_CSV};
    lab_text read = sound_lab("group,state,parts," LAB_RIG "a,,2,,6,3.3,0.2,0.4,0.02,0.001\n"
                              "b,held,,three.ini,6,2.2,0.2,0.6,0.02,0.001\n"
                              "c,,,three.ini,200,2.2,0.2,0.6,0.02,0.001\n");
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
        bool refused = true;
        long before = blocks_alive();
        for (long allowed = 0; refused; allowed++) {
            allow_allocations(allowed);
            char *report = gtl_lab_report(&read.lab, forms[i]);
            refused = allow_all_allocations();
            assert_true((report == NULL) == refused);
            free(report);
            assert_int_equal(blocks_alive(), before);
        }
    }
    lab_end(&read);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_finding), cmocka_unit_test(units), cmocka_unit_test(doubtful),
        cmocka_unit_test(figures),       cmocka_unit_test(sizes), cmocka_unit_test(names),
        cmocka_unit_test(memory),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
