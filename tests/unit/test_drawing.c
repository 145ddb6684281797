/* test_drawing.c - what a drawing shows of rigs that are known: senses, tackles, marks, words, hostile text,
 * and memory that fails. That lines touch and labels keep clear is held by tests/laws/drawing.c. */
#include "common/large_rigs.h"
#include "report/drawing_shapes.h"
#include "unit/failing_memory.h"
#include "unit/markup.h"
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include <cmocka.h>

/* Invented, as all here. */
static const char whip[] = "[rig]\ntitle = Bale door\n[anchor ridge]\nat = 0 m, 5 m\nwll = 2 kN\n"
                           "[block head]\non = ridge\nefficiency = 90 %\nwll = 2 kN\n"
                           "[load bale]\nat = -1 m, 1 m\nweight = 400 N\n"
                           "[hand crew]\nat = 1 m, 1 m\nlimit = 600 N\n"
                           "[rope fall]\npath = bale, head, crew\nwll = 2 kN\n";

/* --- helpers --- */

static int case_of(const gtl_sheet *sheet, gtl_case_kind kind)
{
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].kind == kind) return i;
    fail_msg("the case was not worked");
    return -1;
}

static gtl_drawing *draw(const rated *rig, gtl_case_kind kind)
{
    gtl_drawing *drawing = gtl_draw(&rig->sheet, case_of(&rig->sheet, kind));
    assert_non_null(drawing);
    return drawing;
}

static int count_role(const gtl_drawing *drawing, gtl_role role)
{
    int count = 0;
    for (int i = 0; i < drawing->count; i++) count += drawing->shapes[i].role == role;
    return count;
}

/* The first text that holds `part`, NULL for none. */
static const gtl_shape *text_with(const gtl_drawing *drawing, const char *part)
{
    for (int i = 0; i < drawing->count; i++)
        if (drawing->shapes[i].text && strstr(drawing->shapes[i].text, part)) return &drawing->shapes[i];
    return NULL;
}

static const gtl_shape *shape_of(const gtl_drawing *drawing, gtl_role role, int index)
{
    for (int i = 0; i < drawing->count; i++)
        if (drawing->shapes[i].role == role && drawing->shapes[i].index == index) return &drawing->shapes[i];
    fail_msg("no such shape");
    return NULL;
}

static char *svg_of(const gtl_drawing *drawing)
{
    gtl_text out = {0};
    gtl_write_drawing(&out, drawing, "case-1", "told & \"in\" <words>");
    return gtl_text_take(&out);
}

/* --- lines --- */

/* From the left up over the block and down to the right is clockwise; mirrored it is not; under is. */
static void round_the_right_side(void **state)
{
    (void)state;
    const struct {
        const char *load, *hand;
        double height;
        int sense;
    } rows[] = {{"-1 m, 1 m", "1 m, 1 m", 5, 1}, {"1 m, 1 m", "-1 m, 1 m", 5, -1}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        rated rig =
            rate_sound("[anchor ridge]\nat = 0 m, 5 m\n[block head]\non = ridge\nefficiency = 90 %%\n"
                       "[load bale]\nat = %s\nguide = vertical\nweight = 400 N\n[hand crew]\nat = %s\n"
                       "[rope fall]\npath = bale, head, crew\n",
                       rows[i].load, rows[i].hand);
        gtl_drawing *drawing = draw(&rig, GTL_RAISE);
        assert_int_equal(shape_of(drawing, GTL_ROLE_WRAP, 0)->sweep > 0 ? 1 : -1, rows[i].sense);
        gtl_drawing_end(drawing);
        rated_end(&rig);
    }
}

static rated tackle(int sheaves)
{
    char path[1000] = "head";
    for (int i = 0; i < sheaves; i++) strcat(path, ", tail, head");
    return rate_sound("[anchor beam]\nat = 9 m\nwll = 90 kN\n[block head]\non = beam\nefficiency = 96 %%\n"
                      "wll = 90 kN\n[block tail]\nat = 3 m\nefficiency = 96 %%\nwll = 90 kN\n"
                      "[load stone]\non = tail\nmass = 200 kg\n[hand crew]\nat = 1 m\nlimit = 1 kN\n"
                      "[rope fall]\npath = %s, crew\nwll = 9 kN\n",
                      path);
}

/* Parts of a tackle run beside each other: no two of them cross, and none lies on another. */
static void parts_beside_each_other(void **state)
{
    (void)state;
    rated rig = tackle(4);
    gtl_drawing *drawing = draw(&rig, GTL_RAISE);
    for (int i = 0; i < 8; i++)
        for (int k = 0; k < i; k++) {
            const gtl_shape *a = shape_of(drawing, GTL_ROLE_PART, i),
                            *b = shape_of(drawing, GTL_ROLE_PART, k);
            gtl_point top_a = a->a.y < a->b.y ? a->a : a->b, foot_a = a->a.y < a->b.y ? a->b : a->a;
            gtl_point top_b = b->a.y < b->b.y ? b->a : b->b, foot_b = b->a.y < b->b.y ? b->b : b->a;
            assert_true((top_a.x - top_b.x) * (foot_a.x - foot_b.x) > 0);
        }
    gtl_drawing_end(drawing);
    rated_end(&rig);
}

/* Letters in the drawing, or a range of them; what each carries in the list. */
static void tackles_are_lettered(void **state)
{
    (void)state;
    const struct {
        int sheaves;
        const char *label, *first, *last;
    } rows[] = {{2, "d", "head to tail: 0.4", "tail to head: 0.5"},
                {12, "a-x", "head to tail:", "tail to head:"}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        rated rig = tackle(rows[i].sheaves);
        gtl_drawing *drawing = draw(&rig, GTL_RAISE);
        bool found = false;
        int listed = 0;
        for (int k = 0; k < drawing->count; k++) {
            const gtl_shape *shape = &drawing->shapes[k];
            if (!shape->text) continue;
            found |= shape->role == GTL_ROLE_LABEL && strcmp(shape->text, rows[i].label) == 0;
            listed += shape->role == GTL_ROLE_FRAME &&
                      (strstr(shape->text, "head to tail: ") || strstr(shape->text, "tail to head: "));
        }
        assert_true(found);
        assert_int_equal(listed, 2 * rows[i].sheaves);
        gtl_drawing_end(drawing);
        rated_end(&rig);
    }
}

/* One circle a sheave, of different sizes. */
static void one_circle_a_sheave(void **state)
{
    (void)state;
    rated rig = tackle(3);
    gtl_drawing *drawing = draw(&rig, GTL_HOLD);
    assert_int_equal(count_role(drawing, GTL_ROLE_SHEAVE), 6);
    for (int i = 0; i < 6; i++)
        for (int k = 0; k < i; k++)
            if (rig.rig->runs[i].thing == rig.rig->runs[k].thing)
                assert_true(fabs(shape_of(drawing, GTL_ROLE_SHEAVE, i)->radius -
                                 shape_of(drawing, GTL_ROLE_SHEAVE, k)->radius) > 5);
    gtl_drawing_end(drawing);
    rated_end(&rig);
}

/* --- words and marks --- */

static void head_of_a_drawing(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", whip);
    gtl_drawing *drawing = draw(&rig, GTL_RAISE);
    assert_non_null(text_with(drawing, "Bale door"));
    assert_non_null(text_with(drawing, "Case raise: the load moving up, slowly"));
    assert_non_null(text_with(drawing, "Verdict on all cases: within"));
    assert_non_null(text_with(drawing, "Governs: hand crew, at "));
    assert_non_null(text_with(drawing, "Positions to scale"));
    assert_non_null(text_with(drawing, "(arrows)"));
    assert_null(text_with(drawing, "OVER"));
    assert_non_null(text_with(drawing, "40.7886 kg"));
    gtl_drawing_end(drawing);
    rated_end(&rig);
}

/* Heavier, with a cross in a box, and the word; in other cases too, where it says which. */
static void what_is_over_is_marked(void **state)
{
    (void)state;
    char text[sizeof whip + 40];
    snprintf(text, sizeof text, "%s[connector hook]\nwll = 0.1 kN\n", whip);
    char *via = strstr(text, "on = ridge\n");
    assert_non_null(via);
    rated sound = rate_sound("%s", whip);
    rated rig =
        rate_sound("%.*son = ridge via hook\n%s", (int)(via - text), text, via + strlen("on = ridge\n"));
    gtl_drawing *plain = draw(&sound, GTL_RAISE), *raise = draw(&rig, GTL_RAISE),
                *hold = draw(&rig, GTL_HOLD);
    const gtl_shape *over = text_with(raise, "OVER ");
    assert_non_null(over);
    assert_true(over->bold);
    assert_null(strstr(over->text, " in "));
    assert_non_null(text_with(hold, " % in raise"));
    assert_non_null(text_with(raise, "Verdict on all cases: over (over the rating: hook"));
    assert_true(shape_of(raise, GTL_ROLE_LINK, 0)->width > 2 * shape_of(plain, GTL_ROLE_BODY, 1)->width);
    gtl_drawing_end(plain);
    gtl_drawing_end(raise);
    gtl_drawing_end(hold);
    rated_end(&sound);
    rated_end(&rig);
}

/* The widest pen that a thing's body is drawn with. */
static double pen_of(const gtl_drawing *drawing, int thing)
{
    double widest = 0;
    for (int i = 0; i < drawing->count; i++)
        if (drawing->shapes[i].role == GTL_ROLE_BODY && drawing->shapes[i].index == thing)
            widest = fmax(widest, drawing->shapes[i].width);
    return widest;
}

/* So is everything else that can be over. */
static void all_that_is_over_is_heavy(void **state)
{
    (void)state;
    static const char rig_text[] = "[rig]\ncases = hold, raise\n[anchor ridge]\nat = 0 m, 5 m\nwll = %s\n"
                                   "[block head]\non = ridge\nefficiency = 90 %%\nwll = %s\n"
                                   "[joint ring]\nat = -1 m, 2 m\nwll = %s\n[load bale]\nat = -1 m, 1 m\n"
                                   "weight = 400 N\n[sling strop]\npath = ring, bale\nwll = %s\n"
                                   "[hand crew]\nat = 1 m, 1 m\nlimit = %s\n"
                                   "[rope fall]\npath = ring, head, crew\nwll = %s\n";
    const char *good = "9 kN", *bad = "9 N";
    rated sound = rate_sound(rig_text, good, good, good, good, good, good);
    rated rig = rate_sound(rig_text, bad, bad, bad, bad, bad, bad);
    gtl_drawing *plain = draw(&sound, GTL_RAISE), *heavy = draw(&rig, GTL_RAISE);
    const char *const things[] = {"ridge", "head", "ring", "crew"};
    for (size_t i = 0; i < sizeof things / sizeof *things; i++) {
        int thing = thing_of(rig.rig, things[i]);
        assert_true(pen_of(heavy, thing) >= 1.5 * pen_of(plain, thing));
    }
    for (int part = 0; part < rig.rig->part_count; part++)
        assert_true(shape_of(heavy, GTL_ROLE_PART, part)->width >
                    2 * shape_of(plain, GTL_ROLE_PART, part)->width);
    int told = 0;
    for (int i = 0; i < heavy->count; i++)
        told += heavy->shapes[i].text && strncmp(heavy->shapes[i].text, "OVER ", 5) == 0;
    assert_int_equal(told, 6);
    gtl_drawing_end(plain);
    gtl_drawing_end(heavy);
    rated_end(&sound);
    rated_end(&rig);
}

/* No force is shown of a case that cannot be; the rig stands where the file has it. */
static void a_case_that_cannot_be(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = hold, lost ridge\n[anchor ridge]\nat = 1 m, 5 m\n[load bell]\n"
                           "at = 1 m, 2 m\nmass = 9 kg\n[sling strop]\npath = ridge, bell\n");
    gtl_drawing *drawing = draw(&rig, GTL_LOST);
    assert_int_equal(count_role(drawing, GTL_ROLE_ARROW), 0);
    assert_int_equal(count_role(drawing, GTL_ROLE_PART), 1);
    assert_non_null(text_with(drawing, "falls"));
    assert_null(text_with(drawing, "(arrows)"));
    for (int i = 0; i < drawing->count; i++)
        assert_true(isfinite(drawing->shapes[i].a.x + drawing->shapes[i].a.y));
    gtl_drawing_end(drawing);
    rated_end(&rig);
}

/* What let go is left out, what is slack is dashed. */
static void gone_and_slack(void **state)
{
    (void)state;
    rated rig = rate_sound("[rig]\ncases = hold, lost left\n[anchor west]\nat = 0 m, 5 m\n[anchor east]\n"
                           "at = 4 m, 5 m\n[anchor north]\nat = 2 m, 5 m\n[load bell]\nat = 2 m, 2 m\n"
                           "mass = 9 kg\n[sling left]\npath = west, bell\n[sling right]\npath = east, bell\n"
                           "[sling spare]\npath = north, bell\nlength = 9 m\n");
    gtl_drawing *hold = draw(&rig, GTL_HOLD), *lost = draw(&rig, GTL_LOST);
    assert_int_equal(count_role(hold, GTL_ROLE_PART), 3);
    assert_true(shape_of(hold, GTL_ROLE_PART, 2)->dashed);
    assert_false(shape_of(hold, GTL_ROLE_PART, 0)->dashed);
    assert_non_null(text_with(hold, "spare slack"));
    assert_int_equal(count_role(lost, GTL_ROLE_PART), 2);
    assert_non_null(text_with(lost, "forces times 2"));
    gtl_drawing_end(hold);
    gtl_drawing_end(lost);
    rated_end(&rig);
}

/* --- the form --- */

static void svg_is_well_formed(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", whip);
    gtl_drawing *drawing = draw(&rig, GTL_RAISE), *again = draw(&rig, GTL_RAISE);
    char *svg = svg_of(drawing), *same = svg_of(again);
    assert_string_equal(svg, same);
    assert_well_formed(svg);
    assert_non_null(strstr(svg, "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 640 "));
    assert_non_null(strstr(svg, " role=\"img\" aria-labelledby=\"case-1-title case-1-desc\">"));
    assert_non_null(strstr(svg, "<desc id=\"case-1-desc\">told &amp; &quot;in&quot; &lt;words&gt;</desc>"));
    assert_non_null(strstr(svg, "fill=\"#fff\""));
    /* Black and white are all its colours. */
    assert_int_equal(count_of(svg, "\"#"), count_of(svg, "\"#fff\"") + count_of(svg, "\"#000\""));
    assert_null(strstr(svg, "nan"));
    assert_null(strstr(svg, "inf"));
    free(svg);
    free(same);
    gtl_drawing_end(drawing);
    gtl_drawing_end(again);
    rated_end(&rig);
}

static void rename_thing(gtl_rig *rig, int thing, const char *name)
{
    free(rig->things[thing].name);
    rig->things[thing].name = gtl_text_copy(name, strlen(name));
}

/* Through the library names can be anything, and of any length. */
static void hostile_words(void **state)
{
    (void)state;
    char longest[5000];
    memset(longest, 'W', sizeof longest - 1);
    longest[sizeof longest - 1] = '\0';
    const char *const names[] = {"</text><script>alert(1)</script>",
                                 "]]>&amp;\"'",
                                 "\xE2\x80\xAEturned\xE2\x80\xAC",
                                 "\x01\x1B[31m\xFF",
                                 longest,
                                 ""};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        rated rig = rate_sound("%s", whip);
        rename_thing(rig.rig, thing_of(rig.rig, "bale"), names[i]);
        free(rig.rig->title);
        rig.rig->title = gtl_text_copy(names[i], strlen(names[i]));
        gtl_drawing *drawing = draw(&rig, GTL_RAISE);
        char *svg = svg_of(drawing);
        assert_well_formed(svg);
        assert_null(strstr(svg, "<script"));
        assert_null(strstr(svg, "\xE2\x80\xAE"));
        assert_null(strchr(svg, '\x1B'));
        for (int k = 0; k < drawing->count; k++) {
            if (!drawing->shapes[k].text) continue;
            gtl_bounds box = gtl_text_bounds(&drawing->shapes[k]);
            assert_true(box.low.x >= 0 && box.high.x <= GTL_DRAWING_WIDTH);
        }
        free(svg);
        gtl_drawing_end(drawing);
        rated_end(&rig);
    }
}

/* Two thousand sheaves, and as many parts: listed, and no long wait. */
static void large_rig(void **state)
{
    (void)state;
    gtl_rig *rig = large_tackle(2000, "99.9 %");
    gtl_sheet sheet;
    assert_non_null(rig);
    assert_int_equal(gtl_rate(rig, &sheet), GTL_OK);
    clock_t begin = clock();
    gtl_drawing *drawing = gtl_draw(&sheet, 0);
    double seconds = (double)(clock() - begin) / CLOCKS_PER_SEC;
    assert_non_null(drawing);
    printf("drawn in %.2f s\n", seconds);
    assert_true(seconds < 20); /* far above what it takes, even under a sanitizer on a busy machine */
    assert_non_null(text_with(drawing, "head"));
    gtl_drawing_end(drawing);
    gtl_sheet_end(&sheet);
    gtl_rig_free(rig);
}

static void memory_that_fails(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", whip);
    long alive = blocks_alive(), count = 0;
    for (bool refused = true; refused; count++) {
        allow_allocations(count);
        gtl_drawing *drawing = gtl_draw(&rig.sheet, 0);
        refused = allow_all_allocations();
        if (refused) assert_null(drawing);
        if (!refused) assert_non_null(drawing);
        gtl_drawing_end(drawing);
        assert_int_equal(blocks_alive(), alive);
    }
    assert_true(count > 50);
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(round_the_right_side),
        cmocka_unit_test(parts_beside_each_other),
        cmocka_unit_test(tackles_are_lettered),
        cmocka_unit_test(one_circle_a_sheave),
        cmocka_unit_test(head_of_a_drawing),
        cmocka_unit_test(what_is_over_is_marked),
        cmocka_unit_test(all_that_is_over_is_heavy),
        cmocka_unit_test(a_case_that_cannot_be),
        cmocka_unit_test(gone_and_slack),
        cmocka_unit_test(svg_is_well_formed),
        cmocka_unit_test(hostile_words),
        cmocka_unit_test(large_rig),
        cmocka_unit_test(memory_that_fails),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
