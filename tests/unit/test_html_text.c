/* test_html_text.c - whatever words a user or a caller hands over, in a page they are text; and the rig file
 * can be copied out of it.
 */
#include "unit/markup.h"
#include "unit/rated.h"
#include "unit/report_text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* One load on one sling. */
static const char lamp[] =
    "[rig]\ntitle = %s\n[anchor beam]\nat = 3 m\nwll = 1 kN\n[load lamp]\nat = 2 m\nmass = 5 kg\n"
    "[sling leg]\npath = beam, lamp\nwll = 1 kN\n";

/* Blocks, an anchor, a hand; and warnings that name them. */
static const char strop[] =
    "[rig]\ntitle = Bale under the ridge\n[anchor ridge]\nat = 0 m, 7 m\nwll = 5 kN\n"
    "[anchor ring]\nat = 1.2 m, 0.3 m\nwll = 2 kN\n[connector strop]\nwll = 0.6 kN\n"
    "[block head]\non = ridge\nefficiency = 92 %\nwll = 3 kN\n"
    "[block lead]\non = ring via strop\nefficiency = 92 %\n[load bale]\nat = -0.1 m, 1.5 m\nmass = 45 kg\n"
    "[hand crew]\nat = 6 m, 0.9 m\npeople = 3\neach = 220 N\n[rope fall]\npath = bale, head, lead, crew\n";

/* --- hostile words --- */

#define TURNED "\xE2\x80\xAE" /* U+202E: what follows runs from right to left */

static void a_title_stays_text(void **state)
{
    (void)state;
    const char *title = "</title><script>alert(1)</script>]]>\"' onload='x' &lt;b&amp; " TURNED "gnaw";
    rated rig = rate_sound(lamp, "plain");
    rename_to(&rig.rig->title, title);
    char *written = page_of(&rig.sheet, NULL, 0);
    assert_well_formed(written);
    assert_keeps_quiet(written, "<script");
    assert_keeps_quiet(written, TURNED);
    char *words = words_between(written, "<h1>", "</h1>");
    assert_string_equal(words, "</title><script>alert(1)</script>]]>\"' onload='x' &lt;b&amp; ?gnaw");
    char *again = words_between(written, "<title>", "</title>");
    assert_string_equal(again, words);
    rated_end(&rig);
    free(again);
    free(words);
    free(written);
}

/* Names like these come through the library alone. */
static void names_stay_text(void **state)
{
    (void)state;
    gtl_rig *rig = read_sound("%s", strop);
    for (int i = 0; i < rig->thing_count; i++)
        rename_to(&rig->things[i].name, "<b onclick=\"x\">'&\xFF\x01\xEF\xBF\xBE " TURNED "</td>");
    gtl_sheet sheet;
    assert_int_equal(gtl_rate(rig, &sheet), GTL_OK);
    char *written = page_of(&sheet, NULL, 0);
    assert_well_formed(written);
    assert_keeps_quiet(written, "<b ");
    assert_keeps_quiet(written, TURNED);
    assert_keeps_quiet(written, "\xEF\xBF\xBE");
    assert_says(written, "&lt;b onclick=&quot;x&quot;&gt;&#39;&amp;??\xEF\xBF\xBD ?&lt;/td&gt;");
    gtl_sheet_end(&sheet);
    gtl_rig_free(rig);
    free(written);
}

/* A title as long as anybody likes is cut where the text report would cut it, and whole further down. */
static void a_long_title_leaves_room(void **state)
{
    (void)state;
    rated rig = rate_sound(lamp, "plain");
    char *title = malloc(100001);
    memset(title, 'w', 100000);
    title[100000] = '\0';
    free(rig.rig->title);
    rig.rig->title = title;
    char *written = page_of(&rig.sheet, NULL, 0);
    char *words = words_between(written, "<h1>", "</h1>");
    assert_int_equal(strlen(words), 2 * 80 + 3);
    char *understood = words_between(written, "<dt>Title</dt>", "</dd>");
    assert_true(strlen(understood) >= 100000);
    rated_end(&rig);
    free(understood);
    free(words);
    free(written);
}

/* --- the rig file in the page --- */

/* What somebody who copies the file out of the page gets. */
static char *copied(const char *source, size_t size, bool complete)
{
    rated rig = rate_sound(lamp, "plain");
    char *written = page_of(&rig.sheet, source, size);
    assert_well_formed(written);
    char *words = words_between(written, "<pre><code>", "</code>");
    assert_true((strstr(written, "Some bytes are no text") == NULL) == complete);
    rated_end(&rig);
    free(written);
    return words;
}

static void the_rig_file_is_copied_out_whole(void **state)
{
    (void)state;
    static const char source[] =
        "\n\n[rig]\ttitle = <a href='x'>&amp;</code></pre> \"]]>  \n; \xC3\xA4\xE2\x98\x83 " TURNED
        "x\n\t \n; no end of line";
    char *copy = copied(source, sizeof source - 1, true);
    assert_string_equal(copy, source);
    free(copy);
    copy = copied("\xEF\xBB\xBF[rig]\r\ntitle = x\r\n", strlen("\xEF\xBB\xBF[rig]\r\ntitle = x\r\n"), true);
    assert_string_equal(copy, "[rig]\ntitle = x\n");
    free(copy);
    copy = copied("", 0, true);
    assert_string_equal(copy, "");
    free(copy);
}

/* Such files are refused by the reader; a caller of the library may hand over anything. */
static void bytes_that_are_no_text_are_told(void **state)
{
    (void)state;
    static const char odd[] = "a\0b\x01"
                              "c\xFF"
                              "d\re\xEF\xBF\xBE"
                              "f\xE2\x98";
    char *copy = copied(odd, sizeof odd - 1, false);
    assert_string_equal(copy, "a\xEF\xBF\xBD"
                              "b\xEF\xBF\xBD"
                              "c\xEF\xBF\xBD"
                              "d\xEF\xBF\xBD"
                              "e\xEF\xBF\xBD"
                              "f\xEF\xBF\xBD\xEF\xBF\xBD");
    free(copy);
}

/* A character that turns the direction of writing is copied, turns nothing else, and is named. */
static void what_turns_is_shut_in(void **state)
{
    (void)state;
    rated rig = rate_sound(lamp, "plain");
    char *written = page_of(&rig.sheet, "; " TURNED "x\n", 7);
    assert_says(written, "; <bdi class=\"named\" data-code=\"U+202E\">" TURNED "</bdi>x\n");
    assert_says(written, "are named in brackets");
    rated_end(&rig);
    free(written);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_title_stays_text),
        cmocka_unit_test(names_stay_text),
        cmocka_unit_test(a_long_title_leaves_room),
        cmocka_unit_test(the_rig_file_is_copied_out_whole),
        cmocka_unit_test(bytes_that_are_no_text_are_told),
        cmocka_unit_test(what_turns_is_shut_in),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
