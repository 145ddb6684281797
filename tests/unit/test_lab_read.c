/* test_lab_read.c - tables of readings as people and spreadsheets write them, and what is wrong with others:
 * whole messages. */
#include "unit/lab_text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define HEAD "parts,load [N],effort [N],load distance [m],effort distance [m]\n"

static void assert_line(const char *text, int row, int line, double load)
{
    lab_text read = sound_lab(text);
    assert_int_equal(read.lab.rows[row].line, line);
    assert_true(read.lab.rows[row].load == load);
    lab_end(&read);
}

/* Line breaks of every kind, inside quotes too; blank lines; a byte order mark; the last line unended. */
static void lines(void **state)
{
    (void)state;
    assert_line(HEAD "2,10,6,1,2\n2,11,6,1,2", 1, 3, 11);
    assert_line("\xEF\xBB\xBF" HEAD "2,10,6,1,2\n", 0, 2, 10);
    assert_line(
        "parts,load [N],effort [N],load distance [m],effort distance [m]\r\n2,10,6,1,2\r\n\r\n2,11,6,1,2\r\n",
        1, 4, 11);
    assert_line("parts,load [N],effort [N],load distance [m],effort distance [m]\r2,10,6,1,2\r2,11,6,1,2\r",
                1, 3, 11);
    assert_line("\n\n" HEAD ",,,,\n  \n2,10,6,1,2\n", 0, 6, 10);
    assert_line("group,\"parts\",\"load\n[N]\",effort [N],load distance [m],effort distance [m]\n"
                "\"red, \r\n\"\"A\"\"\",2,10,6,1,2\nblue,2,11,6,1,2\n",
                1, 5, 11);
}

static void cells(void **state)
{
    (void)state;
    lab_text read = sound_lab("GROUP;Parts;  load [ N ] ;effort [N];load distance [m];effort distance [m];\n"
                              " \"red, \"\"A\"\"\nB\";2;\" 1e1 \";+6;1;2;\n");
    assert_string_equal(read.lab.rows[0].group, "red, \"A\" B");
    assert_true(read.lab.rows[0].load == 10 && read.lab.rows[0].effort == 6);
    assert_int_equal(read.lab.rows[0].line, 2);
    lab_end(&read);
}

static void no_tables(void **state)
{
    (void)state;
    static const char zero[] = HEAD "2,10\0,6,1,2\n";
    const char *const wide[] = {"\xFF\xFEp", "\xFE\xFFp"};
    lab_text read;
    assert_faults("", "bench.csv: the table is empty; its first line names the columns, such as `parts,load "
                      "[N],effort [N],load distance [m],effort distance [m]`\n");
    assert_faults(HEAD, "bench.csv: the table has no row of readings under its header\n");
    for (int i = 0; i < 2; i++)
        assert_faults(wide[i], "bench.csv: the file is in UTF-16, which is not read; save the table as `CSV "
                               "UTF-8`\n");
    assert_faults(
        "group," HEAD "M\xFCller,2,10,6,1,2\n",
        "bench.csv:2: `M\xFCller` is not in UTF-8, or holds a control character; save the table as `CSV "
        "UTF-8`\n");
    gtl_faults_begin(&read.faults, "bench.csv");
    assert_int_equal(gtl_lab_read(zero, sizeof zero - 1, NULL, &read.lab, &read.faults), GTL_FAULTY);
    assert_string_equal(read.faults.items[0].text,
                        "the file holds zero bytes, so it is no plain text; save the table as `CSV UTF-8`");
    lab_end(&read);
}

static void quotes(void **state)
{
    (void)state;
    static const char told[] =
        "a quote inside a cell, or one that is not closed: put a cell that holds a quote in "
        "quotes as a whole, and write the quote in it twice\n";
    char wanted[400];
    snprintf(wanted, sizeof wanted, "bench.csv:3: %s", told);
    assert_faults("group," HEAD "a,2,10,6,1,2\nb\"c\",2,10,6,1,2\n", wanted);
    assert_faults("group," HEAD "a,2,10,6,1,2\n\"b,2,10,6,1,2\nc,2,10,6,1,2\n", wanted);
    assert_faults("group," HEAD "a,2,10,6,1,2\n\"b\"c,2,10,6,1,2\n", wanted);
}

/* One row more than the most, and one byte. */
static void limits(void **state)
{
    (void)state;
    static char text[GTL_LAB_SIZE_LIMIT + 2];
    strcpy(text, HEAD);
    size_t used = strlen(text);
    for (int i = 0; i < GTL_LAB_ROW_LIMIT; i++, used += 11) memcpy(text + used, "2,10,6,1,2\n", 12);
    lab_text read = sound_lab(text);
    assert_int_equal(read.lab.row_count, GTL_LAB_ROW_LIMIT);
    lab_end(&read);
    memcpy(text + used, "2,10,6,1,2\n", 12);
    assert_faults(text, "bench.csv: the table has more than 2000 rows; split it\n");
    memset(text + used, '\n', sizeof text - 1 - used);
    text[GTL_LAB_SIZE_LIMIT] = '\0';
    read = sound_lab(text);
    lab_end(&read);
    text[GTL_LAB_SIZE_LIMIT] = '\n';
    text[GTL_LAB_SIZE_LIMIT + 1] = '\0';
    assert_faults(text, "bench.csv: the table is larger than 256 KiB; split it\n");
}

static void header(void **state)
{
    (void)state;
    assert_faults(
        "parts,load (N),effort [newton],load distance [m],load distance [m]\n1,2,3,4,5\n",
        "bench.csv:1: `load (N)`: a unit stands in square brackets; write `load [N]`\n"
        "bench.csv:1: the unit of `effort`: `newton` is written N\n"
        "bench.csv:1: the column `load distance` is there twice; leave one of them\n"
        "bench.csv:1: the column `effort distance [m]` is missing: how far the hand moves, or the rope "
        "that it pulls out\n");
    assert_faults(
        "parts [N],load,effort [N,lode distance [m],effort distance [s],mood\n1,2,3,4,5,6\n",
        "bench.csv:1: `parts` has no unit: leave out what is in brackets\n"
        "bench.csv:1: `load` has no unit; write it in square brackets: `load [N]`\n"
        "bench.csv:1: `effort [N`: the unit's bracket is not closed; write `load [N]`\n"
        "bench.csv:1: unknown column `lode distance`; did you mean `load distance [m]`?\n"
        "bench.csv:1: the unit of `effort distance`: `1 s` is a time; a length is wanted here, such as "
        "5.5 m\n"
        "bench.csv:1: unknown column `mood`; take it out, or rename it: `gantline lab --help` lists the "
        "columns\n"
        "bench.csv:1: the column `effort [N]` is missing: the pull as the scale shows it\n");
    assert_faults(
        "parts;load [N];effort [N];load distance [m];effort distance [m];\"mood, day\"\n1;2;3;4;5;6\n",
        "bench.csv:1: unknown column `mood, day`; take it out, or rename it: `gantline lab --help` lists "
        "the columns\n");
    assert_faults(
        "load [N],effort [N],load distance [m],effort distance [m]\n1,2,3,4\n",
        "bench.csv:1: nothing says what was measured: a column `parts` (how many parts of rope the load "
        "hangs on) or `rig` (a rig file) is missing\n");
}

#define WIDE                                                                                                 \
    "rig,"                                                                                                   \
    "parts,load [N],effort [N],load distance [m],effort distance [m],scale,scale weight [N],"                \
    "state,moving weight [N],reading [N],distance reading [m]\n"

static void numbers(void **state)
{
    (void)state;
    assert_faults(
        WIDE ",2,\"1,5\",-1,0,3 m,,,,,,\n,0,1e999,0x3,nan,4,,,,-1,,\n,2.5,,1,1,1,,,,,,\n,101,1,1,1,1\n",
        "bench.csv:2: `load`: `1,5` has a comma; write the decimal point: 0.5\n"
        "bench.csv:2: `effort` is -1; it must be more than 0\n"
        "bench.csv:2: `load distance` is 0; it must be more than 0\n"
        "bench.csv:2: `effort distance`: `3 m` is no plain number; the unit stands in the header, once, "
        "as in `load [N]`\n"
        "bench.csv:3: `parts` is 0; it must be more than 0\n"
        "bench.csv:3: `load`: `1e999 N` is too large a number; write a force such as 4.5 kN\n"
        "bench.csv:3: `effort`: `0x3 N` is not written in decimals; write a force such as 4.5 kN\n"
        "bench.csv:3: `load distance`: `nan` is no plain number; the unit stands in the header, once, as "
        "in `load [N]`\n"
        "bench.csv:3: `moving weight` is -1; it must be 0 or more\n"
        "bench.csv:4: `parts`: `2.5` is not whole; write a whole number such as 2\n"
        "bench.csv:4: no value in the column `load`; fill it in, or take the row out\n"
        "bench.csv:5: `parts` is more than 100: check it\n");
}

static void words(void **state)
{
    (void)state;
    assert_faults(
        WIDE "three.ini,3,9,4,1,3,,,,,,\n,,9,4,1,3,,,,,,\n,3,9,4,1,3,sideways,1,moved,,,\n"
             ",3,9,4,1,3,,1,,,,\nthree.ini,,9,4,1,3,,,,1,,\n,3,9,4,1,3,,,,,,,stray\n"
             ",3,9,4,1,3,,,,,4,1\n",
        "bench.csv:2: both `rig` and `parts`: leave one of them out\n"
        "bench.csv:3: neither `rig` nor `parts`: nothing says what was measured; fill one of them in\n"
        "bench.csv:4: `scale`: `sideways` is neither `upright` nor `upside down`\n"
        "bench.csv:4: `state`: `moved` is neither `moving` nor `held`\n"
        "bench.csv:5: `scale weight` changes nothing without `scale`: say whether it was `upright` or "
        "`upside down`\n"
        "bench.csv:6: `moving weight` beside a rig: the rig file says what its blocks weigh; leave one "
        "out\n"
        "bench.csv:7: `stray` stands in column 13, which has no heading: name it in the header, or take "
        "it out; a cell that holds the separator stands in quotes\n"
        "bench.csv:8: `reading` is no less than the `effort` itself; it is the half-width of a reading: "
        "0.05 for +/- 0.05\n"
        "bench.csv:8: `distance reading` is no less than the `load distance` itself; it is the "
        "half-width of a reading: 0.05 for +/- 0.05\n");
}

static void rigs(void **state)
{
    (void)state;
    assert_faults(
        LAB_RIG "gone.ini,9,4,1,3,,\nidle.ini,9,4,1,3,,\ngone.ini,9,4,1,3,,\nbroken.ini,9,4,1,3,,\n"
                "ranged.ini,9,4,1,3,,\n",
        "gone.ini: there is no such file\n"
        "broken.ini:2: `at`: unknown unit `furlong`; the units of a length are m cm mm ft in\n"
        "bench.csv:2: the rig `gone.ini` cannot be used: see its own faults\n"
        "bench.csv:3: in the rig `idle.ini` nobody's pull is worked out, so that there is no effort to "
        "compare: it needs a load and one hand whose pull is not given\n"
        "bench.csv:4: the rig `gone.ini` cannot be used: see its own faults\n"
        "bench.csv:5: the rig `broken.ini` cannot be used: see its own faults\n"
        "bench.csv:6: in the rig `ranged.ini` the friction of `wheel` is a range, and a reading is compared "
        "with one figure; write one number there\n");
}

static void without_source(void **state)
{
    (void)state;
    static const char text[] = LAB_RIG "three.ini,9,4,1,3,,\n";
    lab_text read;
    gtl_faults_begin(&read.faults, "bench.csv");
    assert_int_equal(gtl_lab_read(text, sizeof text - 1, NULL, &read.lab, &read.faults), GTL_FAULTY);
    assert_string_equal(read.faults.items[0].text, "no rig can be read here; write `parts` instead");
    lab_end(&read);
}

/* The help lists every column once, in order. */
static void columns(void **state)
{
    (void)state;
    size_t i = 0;
    for (const gtl_lab_column_help *help; (help = gtl_lab_column_at(i)); i++) {
        assert_int_equal(help->column, i);
        assert_true(strlen(help->name) > 0 && strlen(help->meaning) > 0 && strlen(help->need) > 0);
        assert_int_equal(strncmp(help->example, help->name, strlen(help->name)), 0);
        assert_int_equal(strchr(help->example, '[') != NULL, help->unit[0] != '\0');
    }
    assert_int_equal(i, GTL_LAB_COLUMN_COUNT);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lines),   cmocka_unit_test(cells),          cmocka_unit_test(no_tables),
        cmocka_unit_test(quotes),  cmocka_unit_test(limits),         cmocka_unit_test(header),
        cmocka_unit_test(words),   cmocka_unit_test(numbers),        cmocka_unit_test(rigs),
        cmocka_unit_test(columns), cmocka_unit_test(without_source),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
