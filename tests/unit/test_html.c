/* test_html.c - the report as a page: the document's words, drawings and bars, nothing from outside.
 */
#include "report/compose.h"
#include "report/words.h"
#include "unit/failing_memory.h"
#include "unit/markup.h"
#include "unit/rated.h"
#include "unit/report_text.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* A strop that is over, a crew at 77.0 % of its limit. */
static const char strop[] =
    "[rig]\ntitle = Bale under the ridge\n[anchor ridge]\nat = 0 m, 7 m\nwll = 5 kN\n"
    "[anchor ring]\nat = 1.2 m, 0.3 m\nwll = 2 kN\n[connector strop]\nwll = 0.6 kN\n"
    "[block head]\non = ridge\nefficiency = 92 %\nwll = 3 kN\n"
    "[block lead]\non = ring via strop\nefficiency = 92 %\n[load bale]\nat = -0.1 m, 1.5 m\nmass = 45 kg\n"
    "[hand crew]\nat = 6 m, 0.9 m\npeople = 3\neach = 220 N\n[rope fall]\npath = bale, head, lead, crew\n";

/* One load on one sling: a single case. */
static const char lamp[] =
    "[rig]\ntitle = %s\n[anchor beam]\nat = 3 m\nwll = 1 kN\n[load lamp]\nat = 2 m\nmass = 5 kg\n"
    "[sling leg]\npath = beam, lamp\nwll = 1 kN\n";

/* A rig's page with the rig in it; it has to be well-formed. */
static char *page(const char *text)
{
    rated rig = rate_sound("%s", text);
    char *written = page_of(&rig.sheet, text, strlen(text));
    assert_non_null(written);
    assert_well_formed(written);
    rated_end(&rig);
    return written;
}

/* --- words --- */

/* Go on to where `part` stands next in the words. */
static void expect_next(const char **words, const char *part)
{
    part += strspn(part, " ");
    const char *at = strstr(*words, part);
    if (!at) fail_msg("not said, or not in its place: %s", part);
    *words = at + strlen(part);
}

static void expect_table(const char **words, const gtl_table *table)
{
    for (int i = 0; i < table->column_count; i++) expect_next(words, table->columns[i].head);
    for (size_t i = 0; i < table->cell_count; i++)
        if (table->cells[i].text) expect_next(words, table->cells[i].text);
}

/* Whatever the document says stands in the page, in its order. */
static void the_page_says_what_the_text_says(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", strop);
    char *written = page_of(&rig.sheet, NULL, 0);
    char *words = words_between(written, "<body>", "</body>");
    const char *at = words;
    gtl_document document = {0};
    gtl_compose(&rig.sheet, &document);
    assert_false(document.failed);
    assert_true(document.count > 40);
    for (size_t i = 0; i < document.count; i++) {
        const gtl_element *element = &document.elements[i];
        if (element->label) expect_next(&at, element->label);
        if (element->text) expect_next(&at, element->text);
        if (element->table) expect_table(&at, element->table);
    }
    gtl_document_end(&document);
    rated_end(&rig);
    free(words);
    free(written);
}

static void verdict_and_cautions_come_first(void **state)
{
    (void)state;
    char *written = page(strop);
    char *words = words_between(written, "<header>", "</header>");
    assert_says(words, "Bale under the ridge");
    assert_says(words, "OVER: do not load this rig as it is (cases: hold, raise, lower)");
    assert_says(words, "Have the structure or tree checked by somebody qualified for it.");
    assert_says(words, "Checked by");
    assert_says(words, "Signature");
    assert_says(written, "<dd class=\"strong\">OVER");
    assert_true(strstr(written, "</header>") < strstr(written, "<svg"));
    free(words);
    free(written);
}

static void every_warning_is_explained(void **state)
{
    (void)state;
    for (gtl_warning_code code = 0; code < GTL_WARN_COUNT; code++) {
        const char *help = gtl_words_warning_help(code);
        if (!help || strlen(help) < 60) fail_msg("no help for %s", gtl_warning_name(code));
    }
    char *written = page(strop);
    assert_int_equal(count_of(written, "<dt>redirect-force</dt>"), 1);
    assert_says(written, "a line that turns back on itself loads its block with twice its tension");
    free(written);
    char *text = flowing(strop);
    assert_keeps_quiet(text, "turns back on itself");
    free(text);
}

/* Every case has a drawing, and where there are several, a button; raise is the one that is shown. */
static void cases_are_chosen_without_a_script(void **state)
{
    (void)state;
    char *written = page(strop);
    assert_int_equal(count_of(written, "type=\"radio\""), 3);
    assert_int_equal(count_of(written, "checked=\"checked\""), 1);
    assert_says(written, "id=\"pick-1\" checked=\"checked\"/><span>raise</span>");
    assert_says(written, "main:has(#pick-2:checked) #case-2{display:block}");
    assert_int_equal(count_of(written, "<div class=\"case\""), 3);
    assert_int_equal(count_of(written, "</desc>"), 3);
    free(written);
    rated rig = rate_sound(lamp, "One case");
    written = page_of(&rig.sheet, NULL, 0);
    assert_int_equal(count_of(written, "<input"), 0);
    assert_int_equal(count_of(written, "<div class=\"case\""), 1);
    assert_keeps_quiet(written, ".case{display:none}");
    assert_keeps_quiet(written, "The rig file as read");
    rated_end(&rig);
    free(written);
}

/* Raise, else hold, else whatever can be: here lower. */
static void the_case_that_tells_most(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", strop);
    assert_int_equal(gtl_drawn_outcome(&rig.sheet), 1);
    rig.sheet.outcomes[1].possible = false;
    assert_int_equal(gtl_drawn_outcome(&rig.sheet), 0);
    rig.sheet.outcomes[0].possible = false;
    assert_int_equal(gtl_drawn_outcome(&rig.sheet), 2);
    rig.sheet.outcomes[2].possible = false;
    assert_int_equal(gtl_drawn_outcome(&rig.sheet), 0);
    rated_end(&rig);
}

/* 508 N of 660 N, 680 N of 600 N. */
static void bars_are_never_too_short(void **state)
{
    (void)state;
    char *written = page(strop);
    assert_int_equal(count_of(written, "<path class=\"past\""), 1);
    assert_says(written, "<rect class=\"used\" x=\"5\" y=\"5\" width=\"770\" height=\"110\"/></svg> 77.0");
    assert_says(written, "width=\"1000\" height=\"110\"/><path class=\"past\"");
    assert_says(written, "</svg> 113.3</td>");
    assert_says(written, "<td class=\"word strong\">over</td>");
    free(written);
}

/* What a table does not allow is more than any bar: 1 + 1e-9 is the most that is within. */
static void a_bar_for_any_share(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", strop);
    gtl_component *part = &rig.sheet.components[0];
    const struct {
        double share;
        const char *bar;
    } bars[] = {{(double)INFINITY, "width=\"1000\" height=\"110\"/><path class=\"past\""},
                {1 + 0.5e-9, "width=\"1000\" height=\"110\"/></svg> 100.0"},
                {1e300, "width=\"1000\" height=\"110\"/><path class=\"past\""},
                {1e-12, "width=\"1\" height=\"110\"/></svg>"},
                {0, "width=\"0\" height=\"110\"/></svg> 0<"}};
    for (size_t i = 0; i < sizeof bars / sizeof *bars; i++) {
        part->utilisation = bars[i].share;
        char *written = page_of(&rig.sheet, NULL, 0);
        assert_says(written, bars[i].bar);
        free(written);
    }
    rated_end(&rig);
}

/* --- what a page must not do --- */

static void nothing_is_loaded(void **state)
{
    (void)state;
    static const char *const doors[] = {"<script",  "<link", "<img", "<iframe", "<object",
                                        "<base",    " src=", "url(", "@import", "http-equiv=\"refresh",
                                        " style=\""};
    char *written = page(strop);
    for (size_t i = 0; i < sizeof doors / sizeof *doors; i++) assert_keeps_quiet(written, doors[i]);
    assert_int_equal(count_of(written, "://"), count_of(written, "xmlns=\"http://www.w3.org/2000/svg\""));
    assert_int_equal(count_of(written, " href=\""), count_of(written, " href=\"#"));
    assert_says(written, "default-src 'none'; style-src 'unsafe-inline'");
    free(written);
}

static void the_same_rig_is_the_same_page(void **state)
{
    (void)state;
    char *one = page(strop), *other = page(strop);
    assert_string_equal(one, other);
    free(one);
    free(other);
}

/* --- memory --- */

static bool written_with(const rated *rig, gtl_form form, long allowed)
{
    long before = blocks_alive();
    gtl_report_wish wish = {.form = form, .outcome = -1, .source = "; \xE2\x80\xAEx\n", .source_size = 7};
    allow_allocations(allowed);
    char *report = gtl_report_as(&rig->sheet, &wish);
    bool refused = allow_all_allocations();
    assert_true((report == NULL) == refused);
    free(report);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void without_memory_there_is_no_page(void **state)
{
    (void)state;
    const gtl_form forms[] = {GTL_HTML, GTL_SVG, GTL_CSV};
    rated rig = rate_sound(lamp, "plain");
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
        long allowed = 0;
        while (!written_with(&rig, forms[i], allowed)) allowed++;
        assert_true(allowed > 10);
    }
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_page_says_what_the_text_says),
        cmocka_unit_test(verdict_and_cautions_come_first),
        cmocka_unit_test(every_warning_is_explained),
        cmocka_unit_test(cases_are_chosen_without_a_script),
        cmocka_unit_test(the_case_that_tells_most),
        cmocka_unit_test(bars_are_never_too_short),
        cmocka_unit_test(a_bar_for_any_share),
        cmocka_unit_test(nothing_is_loaded),
        cmocka_unit_test(the_same_rig_is_the_same_page),
        cmocka_unit_test(without_memory_there_is_no_page),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
