/* test_geometry.c - angles that the report shows. */
#include "report/geometry.h"
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>

#include <cmocka.h>

static const double pi = 3.14159265358979323846;

static void direction_of_a_pull(void **state)
{
    (void)state;
    const struct {
        double pull[3];
        int dim;
        double angle;
    } rows[] = {
        {{-5, 0, 0}, 1, 0},     {{5, 0, 0}, 1, pi},       {{0, -5, 0}, 2, 0},
        {{5, 0, 0}, 2, pi / 2}, {{-5, -5, 0}, 2, pi / 4}, {{0, 5, 0}, 2, pi},
        {{3, 4, 0}, 3, pi / 2}, {{3, 4, -5}, 3, pi / 4},  {{0, 1, sqrt(3)}, 3, 5 * pi / 6},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_close(gtl_from_vertical(rows[i].pull, rows[i].dim), rows[i].angle);
    assert_true(isnan(gtl_from_vertical((double[]){0, 0, 0}, 3)));
}

static double wrap(const char *bend, const char *crew)
{
    rated rig = rate_sound(
        "[anchor top]\nat = 0 m, 5 m\n[fairlead ring]\non = top\nfriction = 0.1\n%s\n[load crate]\n"
        "at = 0 m, 2 m\nweight = 200 N\n[hand crew]\nat = %s\n[rope whip]\n"
        "path = crate, ring, crew\n",
        bend, crew);
    double angle = gtl_wrap_angle(&rig.sheet.outcomes[0], 0);
    rated_end(&rig);
    return angle;
}

static void wrap_at_a_bend(void **state)
{
    (void)state;
    assert_close(wrap("", "3 m, 5 m"), pi / 2);
    assert_close(wrap("", "3 m, 2 m"), 3 * pi / 4);
    assert_close(wrap("turns = 2", "3 m, 5 m"), 4.5 * pi);
    assert_close(wrap("wrap = 60 deg", "3 m, 5 m"), pi / 3);
    assert_close(wrap("wrap = 60 deg\nturns = 1", "3 m, 5 m"), pi / 3 + 2 * pi);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(direction_of_a_pull),
        cmocka_unit_test(wrap_at_a_bend),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
