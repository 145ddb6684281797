/* test_drawing_pieces.c - a drawing that is higher than a sheet of paper, cut where nothing is cut through.
 */
#include "report/drawing_pieces.h"
#include "unit/markup.h"
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* In space, so that there are three views. */
static const char lantern[] = "[anchor west]\nat = 0 m, 0 m, 9 m\n[anchor east]\nat = 12 m, 0 m, 8.5 "
                              "m\n[anchor north]\nat = 6 m, 10 m, 9.5 m\n"
                              "[load lamp]\nat = 6 m, 4 m, 4 m\nmass = 30 kg\n[sling one]\npath = west, "
                              "lamp\n[sling two]\npath = east, lamp\n"
                              "[sling three]\npath = north, lamp\n";

static gtl_shape line_at(double top, double foot, int view)
{
    return (gtl_shape){
        .kind = GTL_SHAPE_LINE, .view = view, .a = {10, top}, .b = {10, foot}, .width = 1, .index = -1};
}

static void a_low_drawing_is_one_piece(void **state)
{
    (void)state;
    gtl_drawing drawing = {.height = GTL_SHEET_HEIGHT};
    assert_true(gtl_drawing_cut(&drawing, 0) == GTL_SHEET_HEIGHT);
}

/* The middle is at 700: free; or in a view that ends at 900; or in one that ends too low for a sheet. */
static void cuts_go_round_views(void **state)
{
    (void)state;
    const struct {
        double top, foot, cut;
    } views[] = {{100, 690, 700}, {600, 900, 600}, {500, 900, 500}, {100, 900, 900}, {300, 1300, 300}};
    for (size_t i = 0; i < sizeof views / sizeof *views; i++) {
        gtl_drawing drawing = {.height = 1400};
        gtl_shape_add(&drawing, line_at(views[i].top, (views[i].top + views[i].foot) / 2, 1));
        gtl_shape_add(&drawing, line_at(views[i].foot - 10, views[i].foot, 1));
        assert_true(gtl_drawing_cut(&drawing, 0) == views[i].cut);
        free(drawing.shapes);
    }
}

/* What no sheet bears stays whole all the same. */
static void a_view_is_never_cut(void **state)
{
    (void)state;
    gtl_drawing drawing = {.height = 4000};
    gtl_shape_add(&drawing, line_at(0, 3000, 0));
    gtl_shape_add(&drawing, line_at(3100, 3900, 1));
    assert_true(gtl_drawing_cut(&drawing, 0) == 3000);
    assert_true(gtl_drawing_cut(&drawing, 3000) == 4000);
    free(drawing.shapes);
}

/* Every text and stroke stands in the pieces once; the ids are those of one drawing. */
static void pieces_make_the_whole(void **state)
{
    (void)state;
    static const char *const inks[] = {"<text",  "<line", "<circle",     "<path",
                                       " id=\"", "<desc", "role=\"img\""};
    rated rig = rate_sound("%s", lantern);
    gtl_drawing *drawing = gtl_draw(&rig.sheet, 0);
    assert_true(drawing->height > GTL_SHEET_HEIGHT);
    gtl_text whole = {0}, cut = {0};
    gtl_write_drawing(&whole, drawing, "d", "words");
    gtl_write_drawing_pieces(&cut, drawing, "d", "words");
    assert_well_formed(cut.bytes);
    assert_true(count_of(cut.bytes, "<svg") > 1);
    for (size_t i = 0; i < sizeof inks / sizeof *inks; i++)
        assert_int_equal(count_of(cut.bytes, inks[i]), count_of(whole.bytes, inks[i]));
    free(whole.bytes);
    free(cut.bytes);
    gtl_drawing_end(drawing);
    rated_end(&rig);
}

/* A view's title is the last that a piece may end with. */
static void titles_go_with_their_views(void **state)
{
    (void)state;
    rated rig = rate_sound("%s", lantern);
    gtl_drawing *drawing = gtl_draw(&rig.sheet, 0);
    double cut = gtl_drawing_cut(drawing, 0);
    int titles = 0;
    for (int i = 0; i < drawing->count; i++) {
        const gtl_shape *shape = &drawing->shapes[i];
        if (shape->kind != GTL_SHAPE_TEXT || !strstr(shape->text, ", along")) continue;
        titles++;
        assert_false(shape->a.y < cut && shape->a.y > cut - 60);
    }
    assert_int_equal(titles, 1);
    gtl_drawing_end(drawing);
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_low_drawing_is_one_piece), cmocka_unit_test(cuts_go_round_views),
        cmocka_unit_test(a_view_is_never_cut),        cmocka_unit_test(pieces_make_the_whole),
        cmocka_unit_test(titles_go_with_their_views),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
