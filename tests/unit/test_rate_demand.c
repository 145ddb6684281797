/* test_rate_demand.c - what is demanded of blocks, joints, anchors, connectors and spars. */
#include "rate/rating.h"
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

/* ---- the greatest resultant of any set of pulls ---- */

static double size_of(const double v[3])
{
    return sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
}

/* Every set, one by one. */
static double greatest_of_all_sets(double (*vectors)[3], int count)
{
    double most = 0;
    for (unsigned set = 0; set < 1U << count; set++) {
        double sum[3] = {0, 0, 0};
        for (int i = 0; i < count; i++)
            for (int k = 0; set >> i & 1U && k < 3; k++) sum[k] += vectors[i][k];
        most = fmax(most, size_of(sum));
    }
    return most;
}

static double random_between_one_and_minus_one(unsigned *seed)
{
    *seed = *seed * 1103515245U + 12345U; /* the C standard's example generator, from memory; any would do */
    return (double)(*seed >> 8 & 0xffffU) / 32767.5 - 1;
}

/* In `dim` dimensions, whole numbers with `steps`: many of them in line, opposite or in one plane. */
static void against_every_set(int dim, int steps)
{
    unsigned seed = 1;
    for (int trial = 0; trial < 400; trial++) {
        double vectors[9][3] = {{0}};
        double angles[18];
        double best[3];
        int count = 1 + trial % 9;
        for (int i = 0; i < count; i++)
            for (int k = 3 - dim; k < 3; k++) {
                double value = random_between_one_and_minus_one(&seed);
                vectors[i][k] = steps ? round(value * steps) : value;
            }
        double wanted = greatest_of_all_sets(vectors, count);
        double found = gtl_greatest_resultant(vectors, count, angles, best);
        assert_close(found, wanted);
        assert_close(size_of(best), wanted);
    }
}

static void any_set_of_pulls(void **state)
{
    (void)state;
    for (int dim = 1; dim <= 3; dim++) {
        against_every_set(dim, 0);
        against_every_set(dim, 2);
    }
}

/* ---- blocks and joints ---- */

/* A block with a becket that pulls up: the running parts count alone, not what is left of them. */
static void block_between_up_and_down(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = hold\n[anchor beam]\nat = 4 m\n[anchor roof]\nat = 6 m\n[block head]\non "
                   "= beam via strop\n"
                   "[connector strop]\n[block top]\non = roof\n[block tail]\nat = 1 m\nweight = 20 N\n"
                   "[load crate]\non = tail\nweight = 180 N\n[hand crew]\nat = 2 m\n"
                   "[rope fall]\npath = head, top, tail, head, crew\n");
    assert_close(demand_of(&rig, "head"), 200); /* two parts down; or one up and the beam's answer */
    assert_close(demand_of(&rig, "strop"), 100);
    assert_close(demand_of(&rig, "beam"), 100);
    assert_close(demand_of(&rig, "top"), 200);
    assert_close(demand_of(&rig, "tail"), 200);
    rated_end(&rig);
}

/* A becket that pulls down adds up, and so does the block's own weight. */
static void block_with_a_becket(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = hold\n[anchor beam]\nat = 4 m\n[block head]\non = beam\n"
                   "weight = 15 N\n[block tail]\nat = 1 m\nweight = 20 N\n[load crate]\non = tail\n"
                   "weight = 180 N\n[hand crew]\nat = 2 m\n[rope fall]\npath = head, tail, head, crew\n");
    assert_close(demand_of(&rig, "head"), 315);
    assert_close(demand_of(&rig, "beam"), 315);
    assert_close(demand_of(&rig, "tail"), 200);
    int head = thing_of(rig.rig, "head");
    assert_close(size_of(rig.sheet.outcomes[0].forces.rope[head]), 200);
    rated_end(&rig);
}

/* The legs of a flat bridle pull the joint harder than the load does. */
static void joint_of_a_flat_bridle(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[anchor left]\nat = 0 m, 4 m\n[anchor right]\nat = 6 m, 4 m\n[joint apex]\nat = 3 m, 3 m\n"
        "[load crate]\nat = 3 m, 1 m\nweight = 200 N\n[sling one]\npath = left, apex\n"
        "[sling two]\npath = right, apex\n[sling drop]\npath = apex, crate\n");
    double leg = 100 * sqrt(10.0);
    assert_close(demand_of(&rig, "one"), leg);
    assert_close(demand_of(&rig, "apex"), leg);
    assert_close(demand_of(&rig, "drop"), 200);
    assert_close(demand_of(&rig, "left"), leg);
    rated_end(&rig);
}

/* What hangs on an anchor counts, and so does what hangs on that. */
static void everything_on_an_anchor(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[rig]\ncases = hold\n[anchor beam]\nat = 4 m\n[block head]\non = beam via upper + lower\n"
                   "weight = 10 N\n[connector upper]\n[connector lower]\n[block second]\non = head via link\n"
                   "weight = 5 N\n[connector link]\n[load crate]\nat = 1 m\nweight = 100 N\n"
                   "[hand crew]\nat = 2 m\n[rope fall]\npath = crate, second, crew\n");
    assert_close(demand_of(&rig, "link"), 205);
    assert_close(demand_of(&rig, "second"), 205);
    assert_close(demand_of(&rig, "upper"), 215);
    assert_close(demand_of(&rig, "lower"), 215);
    assert_close(demand_of(&rig, "head"), 215);
    assert_close(demand_of(&rig, "beam"), 215);
    rated_end(&rig);
}

/* ---- connectors at stops ---- */

static void connectors_at_tied_stops(void **state)
{
    (void)state;
    rated rig = rate_sound(
        "[anchor left]\nat = 0 m, 4 m\n[anchor right]\nat = 6 m, 4 m\n[joint apex]\nat = 3 m, 3 m\n"
        "[load crate]\non = apex\nweight = 200 N\n[connector end]\n[connector ring]\n[connector pin]\n"
        "[rope bridle]\npath = left via end, apex via ring + pin, right\n");
    assert_close(demand_of(&rig, "bridle"), 100 * sqrt(10.0));
    assert_close(demand_of(&rig, "end"), 100 * sqrt(10.0));
    assert_close(demand_of(&rig, "ring"), 200); /* in the middle: the resultant of the two parts */
    assert_close(demand_of(&rig, "pin"), 200);
    rated_end(&rig);
}

/* ---- spars ---- */

/* Shears under a load, legs of 2.5 m with their feet 1.5 m out: 100 N and half of each leg's 30 N stand on
 * the apex, so each leg is pushed by 130 N / (2 x 0.8). */
static rated post(const char *ratings)
{
    return rate_sound(
        "[anchor ground]\nat = -1.5 m, 0 m\nwll = 1 kN\n[anchor other]\nat = 1.5 m, 0 m\nwll = 1 kN\n"
        "[load crate]\nat = 0 m, 2 m\nweight = 100 N\n"
        "[spar stay]\npath = other, crate\nweight = 30 N\npush wll = 1 kN\n"
        "[spar post]\npath = ground, crate\nweight = 30 N\n%s\n",
        ratings);
}

static void a_post_is_pushed(void **state)
{
    (void)state;
    const struct {
        const char *ratings;
        gtl_mark mark;
        gtl_verdict verdict;
    } rows[] = {
        {"wll = 1 kN", GTL_MARK_UNRATED, GTL_UNRATED},
        {"push wll = 81.25 N", GTL_MARK_WITHIN, GTL_WITHIN},
        {"wll = 1 kN\npush wll = 81 N", GTL_MARK_OVER, GTL_OVER},
        {"mbs = 9 kN\ndesign factor = 8", GTL_MARK_UNRATED, GTL_UNRATED},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        rated rig = post(rows[i].ratings);
        const gtl_component *component = component_of(&rig, "post");
        assert_true(component->push);
        assert_close(component->demand, 81.25);
        assert_int_equal(component->mark, rows[i].mark);
        assert_int_equal(rig.sheet.verdict, rows[i].verdict);
        /* The leg's push, 65 N down and 48.75 N out, and half of its weight. */
        assert_close(demand_of(&rig, "ground"), hypot(65 + 15, 48.75));
        rated_end(&rig);
    }
}

/* A spar that hangs: pull, not push; what holds its upper end holds all of it. */
static void a_hanging_spar_is_pulled(void **state)
{
    (void)state;
    rated rig =
        rate_sound("[anchor beam]\nat = 4 m\n[load crate]\nat = 2 m\nweight = 100 N\n[connector eye]\n"
                   "[connector foot]\n[spar rod]\npath = beam via eye, crate via foot\nweight = 30 N\n"
                   "wll = 115 N\npush wll = 1 N\n");
    const gtl_component *rod = component_of(&rig, "rod");
    assert_false(rod->push);
    assert_close(rod->demand, 115);
    assert_int_equal(rod->mark, GTL_MARK_WITHIN);
    assert_close(demand_of(&rig, "beam"), 130);
    assert_close(demand_of(&rig, "eye"), 130);
    assert_close(demand_of(&rig, "foot"), 115);
    rated_end(&rig);
}

/* ---- guides ---- */

static void a_track_resists_what_is_across(void **state)
{
    (void)state;
    rated rig = rate_sound("[anchor beam]\nat = 4 m, 5 m\n[load arbor]\nat = 0 m, 2 m\nweight = 100 N\n"
                           "guide = vertical\n[sling stay]\npath = beam, arbor\n");
    double across = 100 * 4.0 / 3;
    assert_close(rig.sheet.outcomes[0].forces.track[rig.rig->things[thing_of(rig.rig, "arbor")].node][0],
                 across);
    assert_close(demand_of(&rig, "stay"), 100 * 5.0 / 3);
    rated_end(&rig);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(any_set_of_pulls),
        cmocka_unit_test(block_between_up_and_down),
        cmocka_unit_test(block_with_a_becket),
        cmocka_unit_test(joint_of_a_flat_bridle),
        cmocka_unit_test(everything_on_an_anchor),
        cmocka_unit_test(connectors_at_tied_stops),
        cmocka_unit_test(a_post_is_pushed),
        cmocka_unit_test(a_hanging_spar_is_pulled),
        cmocka_unit_test(a_track_resists_what_is_across),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
