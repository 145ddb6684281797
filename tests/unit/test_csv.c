/* test_csv.c - every force and check as a flat table: read back, and safe in a spreadsheet. */
#include "report/csv.h"
#include "unit/markup.h"
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum {
    RECORD,
    NAME,
    OF,
    FROM,
    TO,
    CASE,
    FORCE,
    ACROSS,
    ALONG,
    HEIGHT,
    CAPACITY,
    UTILISATION,
    STATUS,
    FIELDS
};

#define MOST_ROWS 400

/* A table as read back; `text` holds the fields. */
typedef struct csv_table {
    char *text;
    const char *rows[MOST_ROWS][FIELDS];
    int count;
} csv_table;

/* Read one field in place, and what ends it: `,` or `\r`. */
static char *read_field(char **from, char *end)
{
    char *at = *from, *put = at, *begin = at;
    if (*at == '"') {
        for (at++; *at != '"' || at[1] == '"'; *put++ = *at++) {
            assert_true(*at);
            at += *at == '"';
        }
        at++;
    } else {
        for (; *at != ',' && *at != '\r'; *put++ = *at++) assert_true(*at && *at != '"' && *at != '\n');
    }
    *end = *at;
    assert_true(*end == ',' || *end == '\r');
    *put = '\0';
    *from = at + 1;
    return begin;
}

/* By RFC 4180: lines end with CR LF, the last one too; every row has as many fields. */
static csv_table read_table(char *text)
{
    csv_table table = {.text = text};
    for (char *at = text; *at; table.count++) {
        char end = ',';
        assert_true(table.count < MOST_ROWS);
        for (int i = 0; i < FIELDS; i++) {
            assert_true(end == ',');
            table.rows[table.count][i] = read_field(&at, &end);
        }
        assert_true(end == '\r' && *at == '\n');
        at++;
    }
    return table;
}

static csv_table table_of(const gtl_sheet *sheet)
{
    char *text = gtl_report(sheet, GTL_CSV);
    assert_non_null(text);
    return read_table(text);
}

/* The row of a record for a name in a case, any of the three NULL for "whatever it is"; fails where there is
 * none. */
static const char *const *row_of(const csv_table *table, const char *record, const char *name, const char *in)
{
    for (int i = 0; i < table->count; i++) {
        const char *const *row = table->rows[i];
        if (strcmp(row[RECORD], record) == 0 && (!name || strcmp(row[NAME], name) == 0) &&
            (!in || strcmp(row[CASE], in) == 0))
            return row;
    }
    fail_msg("no %s %s in %s", record, name ? name : "", in ? in : "");
    return NULL;
}

static int count_rows(const csv_table *table, const char *record)
{
    int count = 0;
    for (int i = 0; i < table->count; i++) count += strcmp(table->rows[i][RECORD], record) == 0;
    return count;
}

/* --- what stands in it --- */

/* 100 N over a block that turns the line by a right angle; the strop holds less than that. */
static const char corner[] = "[rig]\ntitle = Round, a \"corner\"\n[anchor ring]\nat = 0 m, 3 m\nwll = 1 "
                             "kN\n[connector strop]\nwll = 0.1 kN\n"
                             "[block lead]\non = ring via strop\nefficiency = 100 %\nwll = 1 kN\n[load "
                             "bag]\nat = 0 m, 1 m\nweight = 100 N\n"
                             "[hand one]\nat = 4 m, 3 m\nlimit = 200 N\n[rope fall]\npath = bag, lead, one\n";

static void forces_and_checks(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", corner);
    csv_table table = table_of(&rig.sheet);
    assert_string_equal(table.rows[0][FORCE], "force [N]");
    assert_string_equal(table.rows[0][STATUS], "status");
    assert_string_equal(table.rows[1][RECORD], "verdict");
    assert_string_equal(table.rows[1][NAME], "Round, a \"corner\"");
    assert_string_equal(table.rows[1][STATUS], "over");
    const char *const *anchor = row_of(&table, "anchor", "ring", "hold");
    assert_close(strtod(anchor[FORCE], NULL), 100 * sqrt(2));
    assert_close(strtod(anchor[ACROSS], NULL), 100);
    assert_string_equal(anchor[ALONG], "");
    assert_close(strtod(anchor[HEIGHT], NULL), -100);
    const char *const *part = row_of(&table, "line", "fall", "raise");
    assert_string_equal(part[FROM], "bag");
    assert_string_equal(part[TO], "lead");
    assert_close(strtod(part[FORCE], NULL), 100);
    const char *const *check = row_of(&table, "check", "strop", NULL);
    assert_close(strtod(check[UTILISATION], NULL), sqrt(2));
    assert_close(strtod(check[CAPACITY], NULL), 100);
    assert_string_equal(check[STATUS], "over");
    assert_string_equal(row_of(&table, "check", "fall", NULL)[CAPACITY], "");
    assert_string_equal(row_of(&table, "check", "fall", NULL)[STATUS], "unrated");
    assert_close(strtod(row_of(&table, "head fitting", "strop", NULL)[FORCE], NULL), 200);
    assert_close(strtod(row_of(&table, "hand", "one", "lower")[FORCE], NULL), 100);
    row_of(&table, "caution", "Static loads only.", NULL);
    row_of(&table, "why", "over the rating: strop", NULL);
    free(table.text);
    rated_end(&rig);
}

/* Three cases, two parts of line; every component in each case, and once against its rating. */
static void nothing_is_left_out(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", corner);
    csv_table table = table_of(&rig.sheet);
    assert_int_equal(count_rows(&table, "case"), 3);
    assert_int_equal(count_rows(&table, "line"), 3 * 2);
    assert_int_equal(count_rows(&table, "anchor"), 3);
    assert_int_equal(count_rows(&table, "rope on block"), 3);
    assert_int_equal(count_rows(&table, "hand"), 3);
    assert_int_equal(count_rows(&table, "demand"), 3 * rig.sheet.component_count);
    assert_int_equal(count_rows(&table, "check"), rig.sheet.component_count);
    assert_int_equal(count_rows(&table, "warning"), rig.sheet.warning_count);
    free(table.text);
    rated_end(&rig);
}

/* A case that cannot be has a row that says so, and no force; a part that is gone, or slack, is told. */
static void what_has_no_figure_has_none(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = hold, lost leg\n[anchor beam]\nat = 3 m\n[load lamp]\nat = 2 m\n"
                           "mass = 5 kg\n[sling leg]\npath = beam, lamp\n");
    csv_table table = table_of(&rig.sheet);
    assert_string_equal(row_of(&table, "case", "lost leg", NULL)[STATUS], "cannot be");
    assert_true(strlen(row_of(&table, "why", NULL, "lost leg")[NAME]) > 0);
    assert_int_equal(count_rows(&table, "line"), 1);
    free(table.text);
    rated_end(&rig);
    rig = rate_sound(
        "[rig]\ncases = hold, lost leg\n[anchor beam]\nat = 3 m\n[load lamp]\nat = 2 m\n"
        "mass = 5 kg\n[sling leg]\npath = beam, lamp\n[sling spare]\npath = beam, lamp\nlength = 1.2 m\n");
    table = table_of(&rig.sheet);
    assert_string_equal(row_of(&table, "line", "leg", "lost leg")[STATUS], "gone");
    assert_string_equal(row_of(&table, "line", "spare", "hold")[STATUS], "slack");
    assert_string_equal(row_of(&table, "line", "spare", "lost leg")[STATUS], "");
    free(table.text);
    rated_end(&rig);
}

static void a_pushed_spar_has_a_minus_sign(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[anchor foot]\nat = 0 m, 0 m\n[load box]\nat = 0 m, 2 m\nweight = 50 N\nguide = vertical\n"
        "[spar post]\npath = foot, box\npush wll = 1 kN\n");
    csv_table table = table_of(&rig.sheet);
    assert_close(strtod(row_of(&table, "line", "post", "hold")[FORCE], NULL), -50);
    assert_true(row_of(&table, "line", "post", "hold")[FORCE][0] == '-');
    assert_close(strtod(row_of(&table, "demand in push", "post", "hold")[FORCE], NULL), 50);
    assert_close(strtod(row_of(&table, "check in push", "post", NULL)[FORCE], NULL), 50);
    assert_string_equal(row_of(&table, "guide", "box", "hold")[FORCE], "0");
    free(table.text);
    rated_end(&rig);
}

/* --- fields --- */

static void expect_field(const char *text, const char *wanted)
{
    gtl_text out = {0};
    gtl_csv_text(&out, text);
    char *field = gtl_text_take(&out);
    assert_string_equal(field, wanted);
    free(field);
}

static void texts_are_no_formulas(void **state)
{
    (void)state;
    expect_field("plain-name_1", "plain-name_1");
    expect_field("", "");
    expect_field("   ", "   ");
    expect_field("=cmd|' /C calc'!A0", "\"'=cmd|' /C calc'!A0\"");
    expect_field("+1", "\"'+1\"");
    expect_field("-1", "\"'-1\"");
    expect_field("@SUM(A1)", "\"'@SUM(A1)\"");
    expect_field("\t=1", "\"' =1\"");
    expect_field("\r=1", "\"' =1\"");
    expect_field("  =1", "\"'  =1\"");
    expect_field(" \t-1", "\"'  -1\"");
    expect_field("\xEF\xBC\x9D"
                 "1",
                 "\"'\xEF\xBC\x9D"
                 "1\"");
    expect_field("a=1", "\"a=1\"");
    expect_field("a;=1", "\"a;=1\"");
    expect_field("say \"no\", twice", "\"say \"\"no\"\", twice\"");
    expect_field("two\r\nlines", "two  lines");
    expect_field("\xE2\x80\xAE=1", "\"?=1\"");
    expect_field("\xFF", "\"?\"");
}

static void expect_number(double number, const char *wanted)
{
    gtl_text out = {0};
    gtl_csv_number(&out, number);
    char *field = gtl_text_take(&out);
    assert_string_equal(field, wanted);
    free(field);
}

static void numbers_read_as_the_same_again(void **state)
{
    (void)state;
    expect_number(-12.5, "-12.5");
    expect_number(0.1, "0.1");
    expect_number(-0.0, "0");
    expect_number(1e-300, "1e-300");
    expect_number((double)NAN, "");
    expect_number((double)INFINITY, "");
    expect_number(1.0 / 3, "0.3333333333333333");
    srand(4);
    for (int i = 0; i < 20000; i++) {
        double number = ldexp(rand() - RAND_MAX / 2.0, rand() % 200 - 100) / (1 + rand());
        gtl_text out = {0};
        gtl_csv_number(&out, number);
        char *field = gtl_text_take(&out);
        assert_true(strtod(field, NULL) == number && strlen(field) <= 24);
        free(field);
    }
}

/* Whether no text of a row looks like a formula. */
static bool is_harmless(const char *const *row)
{
    for (int i = 0; i < FIELDS; i++)
        if ((i < FORCE || i == STATUS) && row[i][0] && strchr("=+-@", row[i][0])) return false;
    return true;
}

/* Names and a title that come through the library alone. */
static void hostile_names(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("%s", corner);
    rename_to(&rig->title, "=HYPERLINK(\"x\",\"y\")\r\n@,");
    rename_to(&rig->lines[0].name, "-2+3\",\"=1");
    for (int i = 0; i < rig->thing_count; i++) rename_to(&rig->things[i].name, " @SUM(1)");
    gtl_sheet sheet;
    assert_int_equal(gtl_rate(rig, &sheet), GTL_OK);
    csv_table table = table_of(&sheet);
    assert_string_equal(table.rows[1][NAME], "'=HYPERLINK(\"x\",\"y\")  @,");
    assert_string_equal(row_of(&table, "line", "'-2+3\",\"=1", "hold")[FROM], "' @SUM(1)");
    for (int i = 0; i < table.count; i++) assert_true(is_harmless(table.rows[i]));
    free(table.text);
    gtl_sheet_end(&sheet);
    gtl_rig_free(rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(forces_and_checks),
        cmocka_unit_test(nothing_is_left_out),
        cmocka_unit_test(what_has_no_figure_has_none),
        cmocka_unit_test(a_pushed_spar_has_a_minus_sign),
        cmocka_unit_test(texts_are_no_formulas),
        cmocka_unit_test(numbers_read_as_the_same_again),
        cmocka_unit_test(hostile_names),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
