/* test_report_cases.c - what the report says of its cases, and how its tables cope with many of them. */
#include "unit/report_text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* A crate on two legs that are both taut, and a hand that hauls it over a ring. */
#define HOIST(sheet, hand)                                                                                   \
    "[rig]\n" sheet "[anchor beam]\nat = 0 m, 6 m\nwll = 9 kN\n[anchor floor-ring]\nat = 2 m, 0 m\n"         \
    "wll = 9 kN\n[block head]\non = beam\nefficiency = 92 %\nwll = 9 kN\n[block lead]\n"                     \
    "on = floor-ring\nefficiency = 92 %\nwll = 9 kN\n[load crate]\nat = 0 m, 2 m\nweight = 400 N\n"          \
    "[hand crew]\nat = 4 m, 1 m\n" hand "\n[rope fall]\npath = crate, head, lead, crew\nwll = 9 kN\n"

static void every_case_is_told(void **state)
{
    (void)state;
    char *text =
        flowing(HOIST("cases = all, lost floor-ring\nspeed = 0.5 m/s\ntime = 0.2 s\n", "limit = 600 N"));
    assert_says(text, "(cases: hold, raise, lower, jam, start, stop, lost floor-ring)");
    assert_says(text, "hold at rest, without friction raise");
    assert_says(text,
                "jam the load is caught at its height and every hand pulls all it can: crew 0.600 kN; with "
                "friction as in raise and without, the worse counts start");
    assert_says(text, "start raising from rest at 2.5 m/s2 (0.5 m/s in 0.2 s), 25.5 % of g;");
    assert_says(text, "stop braking while lowering at 2.5 m/s2");
    assert_says(text, "loss 1 anchor floor-ring lets go; the rig hangs anew; forces times 2; left out, being "
                      "loose: lead After a loss");
    assert_says(text, "what hits what is not computed. The factor 2 is");
    assert_says(text,
                "block lead, efficiency 92 % at 180 deg whole force on it - of that from running rope - wrap "
                "of fall [deg] - A block's");
    assert_says(text, "- dynamics beyond a steady start and stop: snatching, swinging, wind");
    assert_says(text, "- what a loss makes things drop on, swing into or hit");
    assert_keeps_quiet(text, "cases not worked");
    assert_says(text, "jam: 2 states were rated, without friction and with it as in raise.");
    assert_says(text, "Figures are of the one without friction; demands take the worst.");
    free(text);
}

static void what_is_not_worked_is_told(void **state)
{
    (void)state;
    char *text = flowing(HOIST("cases = all\n", ""));
    assert_says(
        text,
        "- cases not worked: jam (no limit of crew is stated), start and stop (no acceleration is stated), "
        "lost NAME -");
    assert_says(text, "- dynamics: starting, stopping, snatching, swinging, wind -");
    assert_keeps_quiet(text, "what a loss makes");
    free(text);
    text = flowing(HOIST("cases = raise, start\nacceleration = 1 m/s2\n", "limit = 600 N"));
    assert_says(text, "- cases not worked: lower, jam, stop, lost NAME -");
    assert_says(text, "- dynamics beyond a steady start: stopping, snatching, swinging, wind -");
    free(text);
}

/* Nothing of what a loss takes away may look like a figure of the whole rig. */
static void what_a_loss_takes_away_has_no_figure(void **state)
{
    (void)state;
    char *text =
        flowing("[rig]\ncases = lost left\nloss factor = 3\n[anchor west]\nat = 0 m, 5 m\nwll = 9 kN\n"
                "[anchor east]\nat = 4 m, 5 m\nwll = 9 kN\n[load crate]\nat = 2 m, 3 m\nweight = 400 N\n"
                "[sling left]\npath = west, crate\nwll = 9 kN\n[sling right]\npath = east, crate\n"
                "wll = 9 kN\n");
    /* By hand: two legs at 45 degrees, 400 / sqrt 2; then one leg plumb, three times 400. */
    assert_says(text, "west to crate 0.283 gone ");
    assert_says(text, "east to crate 0.283 1.20 ");
    assert_says(text, "The factor on the forces is the one stated.");
    free(text);
}

static void a_load_that_falls_is_a_reason(void **state)
{
    (void)state;
    char *text = flowing(HOIST("cases = all, lost fall\n", "limit = 600 N"));
    assert_says(text, "Because a load falls after: lost fall Governs");
    assert_says(text, "loss 1 rope fall lets go; no figures, see Effort");
    assert_says(text, "- lost fall: `crate` falls: ");
    free(text);
}

/* --- size --- */

#define LEGS 12

/* Long names, long texts, all kinds of reasons and a dozen losses. */
static void write_crowded(char *rig, size_t size)
{
    int used =
        snprintf(rig, size,
                 "[rig]\ntitle = %0200d\nplace = %0100d\nuse = over-people-germany\nacceleration = 1 m/s2\n"
                 "units = us\ncases = hold, lower, jam, start, stop",
                 1, 2);
    for (int i = 0; i < LEGS; i++)
        used += snprintf(rig + used, size - (size_t)used, ", lost leg-with-quite-a-long-name-%02d", i);
    used += snprintf(rig + used, size - (size_t)used,
                     "\n[anchor beam-with-quite-a-long-name-00]\nat = 0 m, 8 m\nwll = 300 N\n"
                     "fitting = plain-eyebolt\naxis = 1, 0\n[joint plate-with-quite-a-long-name-00]\n"
                     "at = 0 m, 6 m\n[sling main-with-quite-a-long-name-000]\nhitch = choke\nwll = 100 N\n"
                     "path = beam-with-quite-a-long-name-00, plate-with-quite-a-long-name-00\n");
    for (int i = 0; i < LEGS; i++)
        used +=
            snprintf(rig + used, size - (size_t)used,
                     "[anchor post-with-quite-a-long-name-%02d]\nat = %d m, 9 m\n"
                     "[sling leg-with-quite-a-long-name-%02d]\nlength = 30 m\nhitch = choke\nwll = 100 N\n"
                     "path = post-with-quite-a-long-name-%02d, plate-with-quite-a-long-name-00\n",
                     i, i - 6, i, i);
    used +=
        snprintf(rig + used, size - (size_t)used,
                 "[block head-with-quite-a-long-name-00]\nwll = 50 N\n"
                 "on = plate-with-quite-a-long-name-00 via ring-with-quite-a-long-name-000\n"
                 "[connector ring-with-quite-a-long-name-000]\nwll = 100 N\n"
                 "[load crate-with-quite-a-long-name-0]\nat = 0 m, 2 m\nmass = 60 kg\n"
                 "[hand crew-with-quite-a-long-name-00]\nat = 3 m, 1 m\npeople = 2\neach = 200 N\n"
                 "[rope whip-with-quite-a-long-name-00]\nmbs = 20 kN\npath = crate-with-quite-a-long-name-0, "
                 "head-with-quite-a-long-name-00, crew-with-quite-a-long-name-00\n");
    assert_true((size_t)used < size);
}

static char *crowded(void)
{
    static char rig[16000];
    write_crowded(rig, sizeof rig);
    return printed(rig);
}

static void the_head_fits_a_screen(void **state)
{
    (void)state;
    char *text = crowded();
    const char *end = strstr(text, "\n\nUnderstood from the file\n");
    int lines = 1;
    assert_non_null(end);
    for (const char *at = text; at < end; at++) lines += *at == '\n';
    if (lines > 24) fail_msg("%d lines\n%s", lines, text);
    assert_says(text, "LOADS OVER PEOPLE");
    assert_says(text, "and 10 more, see Cases)");
    free(text);
}

static void no_line_is_wider_than_a_screen(void **state)
{
    (void)state;
    char *text = crowded();
    for (char *line = strtok(text, "\n"); line; line = strtok(NULL, "\n"))
        if (strlen(line) > 80) fail_msg("%zu columns: %s", strlen(line), line);
    free(text);
}

/* Each band has the first column and its own heads. */
static void wide_tables_come_in_bands(void **state)
{
    (void)state;
    char *text = crowded();
    char *table = strstr(text, "\nAnchors, largest first");
    assert_non_null(table);
    *strstr(table, "\nDirection of") = '\0';
    static const char *const heads[] = {"\nAnchor ", " hold ",      " stop\n",     "\n\nAnchor ",
                                        "loss 1 ",   "loss 4\n",    "\n\nAnchor ", "loss 5 ",
                                        "loss 8\n",  "\n\nAnchor ", "loss 12 ",    " deg from down\n"};
    const char *at = table;
    for (size_t i = 0; i < sizeof heads / sizeof *heads; i++) {
        const char *found = strstr(at, heads[i]);
        if (!found) fail_msg("no%s in%s", heads[i], at);
        at = found + strlen(heads[i]) - 1;
    }
    free(text);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_case_is_told),
        cmocka_unit_test(what_is_not_worked_is_told),
        cmocka_unit_test(what_a_loss_takes_away_has_no_figure),
        cmocka_unit_test(a_load_that_falls_is_a_reason),
        cmocka_unit_test(the_head_fits_a_screen),
        cmocka_unit_test(no_line_is_wider_than_a_screen),
        cmocka_unit_test(wide_tables_come_in_bands),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
