/* test_explain_figure.c - bodies cut free: each force has its arrow and its label, and no label covers
 * another. */
#include "explain/body_figure.h"
#include "explain/body_spokes.h"
#include "unit/rated.h"
#include "unit/report_text.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* A rig at rest, or as its load rises, and the body at one thing of it. */
typedef struct cut {
    rated rig;
    gtl_lesson lesson;
    gtl_document document;
    gtl_body body;
} cut;

static void cut_free(cut *at, gtl_case_kind kind, const char *thing, const char *text)
{
    *at = (cut){.rig = rate_sound("%s", text)};
    at->lesson = (gtl_lesson){.sheet = &at->rig.sheet,
                              .rig = at->rig.rig,
                              .wish = {.form = GTL_HTML},
                              .units = gtl_print_units_for(&at->rig.sheet),
                              .document = &at->document,
                              .prefix = "test"};
    const gtl_outcome *outcome = gtl_sheet_outcome(&at->rig.sheet, kind);
    int node = at->rig.rig->things[thing_of(at->rig.rig, thing)].node;
    assert_true(gtl_body_gather(&at->body, &at->lesson, outcome, node));
}

static void end(cut *at)
{
    gtl_document_end(&at->document);
    rated_end(&at->rig);
}

/* A tackle of so many parts, upright, with two weights below. */
static char *tackle(int parts, const char *efficiency)
{
    gtl_text text = {0};
    gtl_text_add(&text,
                 "[rig]\nefficiency = %s\n[anchor beam]\nat = 9 m\n[block head]\non = beam\n[block tail]\n"
                 "at = 1 m\nmass = 2 kg\n[load crate]\non = tail\nmass = 90 kg\n[hand crew]\nat = 2 m\n"
                 "[rope fall]\npath = head",
                 efficiency);
    for (int i = 0; i < parts; i += 2) gtl_text_add(&text, ", tail, head");
    gtl_text_add(&text, ", crew\n");
    char *rig = gtl_text_take(&text);
    assert_non_null(rig);
    return rig;
}

/* All forces on what hangs balance, so that none is missing and none points the wrong way. */
static void assert_balance(const gtl_body *body)
{
    double sum[3] = {0};
    for (int i = 0; i < body->count; i++) {
        const gtl_force *force = &body->forces[i];
        assert_false(gtl_force_varies(force));
        for (int axis = 0; axis < 3; axis++) sum[axis] += force->count * force->way[axis] * force->most;
    }
    for (int axis = 0; axis < 3; axis++) assert_true(fabs(sum[axis]) < 1e-6 * body->largest);
}

static void together(void **state)
{
    (void)state;
    char *rig = tackle(24, "100 %");
    cut at;
    cut_free(&at, GTL_HOLD, "tail", rig);
    assert_int_equal(at.body.count, 3);
    assert_string_equal(gtl_force_name(&at.body.forces[0]).text, "24 x T");
    assert_balance(&at.body);
    char *words = gtl_body_words(&at.body);
    assert_says(words, "tail with crate on it, cut free. 24 x T pulls 37.59 N each, straight up.");
    assert_says(words, "W(crate) weighs 882.6 N, straight down.");
    free(words);
    end(&at);
    free(rig);
}

/* Of more pulls than can be told apart those of one line are one; least and most are told. */
static void side_by_side(void **state)
{
    (void)state;
    char *rig = tackle(24, "95 %");
    cut at;
    cut_free(&at, GTL_RAISE, "tail", rig);
    assert_int_equal(at.body.count, 3);
    assert_string_equal(gtl_force_name(&at.body.forces[0]).text, "T1 ... T24");
    assert_int_equal(at.body.forces[0].count, 24);
    assert_true(gtl_force_varies(&at.body.forces[0]));
    end(&at);
    free(rig);
}

static bool overlap(gtl_bounds one, gtl_bounds other)
{
    return one.low.x < other.high.x && other.low.x < one.high.x && one.low.y < other.high.y &&
           other.low.y < one.high.y;
}

static gtl_drawing *drawn(const gtl_body *body, bool keyed, bool *fits)
{
    gtl_drawing *drawing = calloc(1, sizeof *drawing);
    gtl_body_view view = {.keyed = keyed, .spot = {GTL_DRAWING_WIDTH / 2, 0}, .width = GTL_DRAWING_WIDTH};
    double foot = 0;
    assert_non_null(drawing);
    *fits = gtl_body_view_draw(body, drawing, &view, &foot);
    assert_false(drawing->failed);
    return drawing;
}

static int count_of(const gtl_drawing *drawing, gtl_shape_kind kind)
{
    int count = 0;
    for (int i = 0; i < drawing->count; i++) count += drawing->shapes[i].kind == kind;
    return count;
}

static void assert_legible(const gtl_drawing *drawing)
{
    for (int i = 0; i < drawing->count; i++) {
        if (drawing->shapes[i].kind != GTL_SHAPE_TEXT) continue;
        gtl_bounds box = gtl_text_bounds(&drawing->shapes[i]);
        assert_true(box.low.x >= 0 && box.high.x <= GTL_DRAWING_WIDTH);
        for (int k = 0; k < i; k++)
            if (drawing->shapes[k].kind == GTL_SHAPE_TEXT)
                assert_false(overlap(box, gtl_text_bounds(&drawing->shapes[k])));
    }
}

/* From two to twelve pulls beside each other, each with a figure of its own. */
static void labels(void **state)
{
    (void)state;
    for (int parts = 2; parts <= 12; parts += 2) {
        char *rig = tackle(parts, "93 %");
        cut at;
        cut_free(&at, GTL_RAISE, "tail", rig);
        bool fits;
        gtl_drawing *drawing = drawn(&at.body, false, &fits);
        if (!fits) {
            assert_int_equal(drawing->count, 0);
            gtl_drawing_end(drawing);
            drawing = drawn(&at.body, true, &fits);
        }
        assert_true(fits);
        assert_int_equal(count_of(drawing, GTL_SHAPE_TEXT), at.body.count);
        assert_true(count_of(drawing, GTL_SHAPE_HEAD) >= at.body.count);
        assert_legible(drawing);
        gtl_drawing_end(drawing);
        end(&at);
        free(rig);
    }
}

/* A ring on three lines that nearly have one direction. */
static void nearly_one_way(void **state)
{
    (void)state;
    cut at;
    cut_free(&at, GTL_HOLD, "ring",
             "[anchor a]\nat = 0 m, 9 m\n[anchor b]\nat = 1 m, 9 m\n[joint ring]\nat = 0.5 m, 1 m\n"
             "[sling one]\npath = a, ring\n[sling two]\npath = b, ring\n[load crate]\nat = 0.5 m, 0 m\n"
             "mass = 40 kg\n[sling drop]\npath = ring, crate\n");
    assert_balance(&at.body);
    bool fits;
    gtl_drawing *drawing = drawn(&at.body, false, &fits);
    assert_true(fits);
    assert_int_equal(count_of(drawing, GTL_SHAPE_HEAD), 3);
    assert_legible(drawing);
    gtl_drawing_end(drawing);
    end(&at);
}

/* A spar that pushes: its arrow stands on the spar's side, and its tip at the body. */
static void pushes(void **state)
{
    (void)state;
    cut at;
    cut_free(&at, GTL_HOLD, "tip",
             "[anchor foot]\nat = 0 m, 0 m\n[anchor top]\nat = 0 m, 4 m\n[joint tip]\nat = 3 m, 0 m\n"
             "[spar boom]\npath = foot, tip\n[sling topping]\npath = top, tip\n[load bale]\nat = 3 m, -1 m\n"
             "mass = 30 kg\n[sling drop]\npath = tip, bale\n");
    assert_balance(&at.body);
    char *words = gtl_body_words(&at.body);
    assert_says(words, "S(boom) pushes 220.6 N, level to the right, from foot.");
    assert_says(words, "T(topping) pulls 367.7 N, up to the left, 36.9 deg from upright, towards top.");
    free(words);
    gtl_layout layout;
    gtl_body_view view = {.width = GTL_DRAWING_WIDTH};
    gtl_lay_out(&layout, &at.body, &view);
    int found = 0;
    for (int i = 0; i < layout.spoke_count; i++) {
        const gtl_spoke *spoke = &layout.spokes[i];
        if (at.body.forces[spoke->force].kind != GTL_FORCE_PUSH) continue;
        found++;
        assert_true(spoke->far.x < spoke->near.x);
    }
    assert_int_equal(found, 1);
    end(&at);
}

/* What holds is there too: without it no anchor's forces balance. */
static void supports(void **state)
{
    (void)state;
    char *rig = tackle(4, "95 %");
    cut at;
    cut_free(&at, GTL_RAISE, "beam", rig);
    assert_balance(&at.body);
    gtl_lesson_body_figure(&at.lesson, at.body.outcome, at.body.node);
    assert_false(at.document.failed);
    assert_int_equal(at.document.count, 1);
    assert_string_equal(at.document.elements[0].label, "beam with head on it, cut free, with friction");
    assert_says(at.document.elements[0].text, " width=\"640\"");
    assert_says(at.document.elements[0].text, "R(beam) holds");
    assert_says(at.document.elements[0].text, "id=\"test-1-desc\"");
    end(&at);
    free(rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(together),       cmocka_unit_test(side_by_side), cmocka_unit_test(labels),
        cmocka_unit_test(nearly_one_way), cmocka_unit_test(pushes),       cmocka_unit_test(supports),
    };
    return cmocka_run_group_tests_name("explain-figure", tests, NULL, NULL);
}
