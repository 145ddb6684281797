/* test_lab_findings.c - each finding is told of a row that has it, and not of one that differs by little. All
 * readings are invented. */
#include "unit/lab_text.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define LIST(...) ((const int[]){__VA_ARGS__, -1})
#define NOTHING   ((const int[]){-1})

/* The first row of a table has these findings, and no others. */
static void assert_first(const char *head, const char *rows, const int *codes)
{
    char text[2000];
    strcpy(text, head);
    strcat(text, rows);
    lab_text read = sound_lab(text);
    assert_findings(&read, 0, codes);
    bool bars = false;
    for (int i = 0; i < read.lab.rows[0].finding_count; i++) bars |= read.lab.findings[i].bars;
    assert_int_equal(read.lab.rows[0].counted, !bars);
    lab_end(&read);
}

/* Load 6 N on three parts; efficiency 2/effort. U = 2u of the efficiency is 0.0209 here. */
static void over(void **state)
{
    (void)state;
    assert_first(LAB_PARTS, "3,6,2.01,0.2,0.6,0.03,0.001\n", NOTHING);
    assert_first(LAB_PARTS, "3,6,1.99,0.2,0.6,0.03,0.001\n", LIST(GTL_LAB_OVER_WITHIN));
    assert_first(LAB_PARTS, "3,6,1.965,0.2,0.6,0.03,0.001\n", LIST(GTL_LAB_OVER_WITHIN));
    assert_first(LAB_PARTS, "3,6,1.95,0.2,0.6,0.03,0.001\n", LIST(GTL_LAB_OVER_BEYOND));
    /* 140 %. */
    assert_first(LAB_PARTS, "3,6,1.4286,0.2,0.6,0.03,0.001\n", LIST(GTL_LAB_OVER_BEYOND));
    assert_first(LAB_PARTS, "3,6,1.99,0.2,0.6,0.03,\n", LIST(GTL_LAB_OVER_NOT_STATED));
    assert_first(LAB_PARTS, "3,6,2.01,0.2,0.6,,\n", NOTHING);
    /* 100 %, which comes out a little higher by rounding: 0.42 J and 0.42 J. */
    assert_first(LAB_PARTS, "3,2.1,0.7,0.2,0.6,,\n", NOTHING);
}

/* Raising the moving block is work too: 92 % by the load alone, 103 % with the block. */
static void over_with_block(void **state)
{
    (void)state;
    const char head[] =
        "parts,load [N],effort [N],load distance [m],effort distance [m],reading [N],distance "
        "reading [m],moving weight [N]\n";
    assert_first(head, "2,6,3.25,0.2,0.4,0.02,0.0005,0.7\n", LIST(GTL_LAB_OVER_BEYOND));
    assert_first(head, "2,6,3.25,0.2,0.4,0.02,0.0005,0.4\n", NOTHING);
}

static void distances(void **state)
{
    (void)state;
    assert_first(LAB_PARTS, "3,6,2.1,0.6,0.2,0.02,0.001\n",
                 LIST(GTL_LAB_DISTANCES_SWAPPED, GTL_LAB_OVER_BEYOND));
    assert_first(LAB_PARTS, "3,6,2.1,0.6,0.24,0.02,0.001\n",
                 LIST(GTL_LAB_NOT_THESE_PARTS, GTL_LAB_OVER_BEYOND));
    assert_first(LAB_PARTS, "3,6,2.1,0.2,0.64,0.02,0.001\n", LIST(GTL_LAB_NOT_THESE_PARTS));
    assert_first(LAB_PARTS, "3,6,2.1,0.2,0.62,0.02,0.001\n", NOTHING);
    /* The same, but read so coarsely that it is no contradiction. */
    assert_first(LAB_PARTS, "3,6,2.1,0.2,0.64,0.02,0.02\n", NOTHING);
    /* One to one both ways. */
    assert_first(LAB_PARTS, "1,6,6.3,0.2,0.2,0.02,0.001\n", NOTHING);
    assert_first(LAB_RIG, "three.ini,6,2.2,0.6,0.2,0.02,0.001\n",
                 LIST(GTL_LAB_DISTANCES_SWAPPED, GTL_LAB_OVER_BEYOND));
    assert_first(LAB_RIG, "three.ini,6,2.2,0.2,0.8,0.02,0.001\n", LIST(GTL_LAB_NOT_THIS_RIG));
    assert_first(LAB_RIG, "three.ini,6,2.2,0.2,0.6,0.02,0.001\n", NOTHING);
}

static void ratio(void **state)
{
    (void)state;
    assert_first(LAB_PARTS, "3,2.1,6,0.2,0.6,0.02,0.001\n", LIST(GTL_LAB_UPSIDE_DOWN_RATIO));
    /* A bad tackle of two parts, 45 %: turned round it would hardly be better. */
    assert_first(LAB_PARTS, "2,5.4,6,0.2,0.4,0.02,0.001\n", NOTHING);
    assert_first(LAB_PARTS, "2,3.6,6,0.2,0.4,0.02,0.001\n", LIST(GTL_LAB_UPSIDE_DOWN_RATIO));
    /* Two slips explain it; another row on the same bench leaves one of them. */
    assert_first(LAB_PARTS, "4,1.8,6,0.2,0.8,0.02,0.001\n",
                 LIST(GTL_LAB_UPSIDE_DOWN_RATIO, GTL_LAB_KILOGRAMS));
    assert_first(LAB_PARTS, "4,1.8,6,0.2,0.8,0.02,0.001\n4,6,1.58,0.2,0.8,0.02,0.001\n",
                 LIST(GTL_LAB_UPSIDE_DOWN_RATIO));
}

/* A load of 6 N is 611.8 g or 0.6118 kg, an effort of 2.1 N is 214.1 g or 0.2141 kg. */
static void masses(void **state)
{
    (void)state;
    lab_text read = sound_lab(LAB_PARTS "3,611.8,2.1,0.2,0.6,0.02,0.001\n3,6,214.1,0.2,0.6,0.02,0.001\n"
                                        "3,0.6118,2.1,0.2,0.6,0.02,0.001\n3,6,0.2141,0.2,0.6,0.02,0.001\n");
    assert_findings(&read, 0, LIST(GTL_LAB_GRAMS, GTL_LAB_OVER_BEYOND));
    assert_findings(&read, 1, LIST(GTL_LAB_GRAMS));
    assert_findings(&read, 2, LIST(GTL_LAB_KILOGRAMS));
    assert_findings(&read, 3, LIST(GTL_LAB_KILOGRAMS, GTL_LAB_OVER_BEYOND));
    const bool on_load[] = {true, false, true, false};
    for (int i = 0; i < 4; i++) {
        const gtl_lab_finding *finding = &read.lab.findings[read.lab.rows[i].first_finding];
        assert_int_equal(finding->on_load, on_load[i]);
        assert_true(fabs(finding->other - 6 / 2.1 / 3) < 0.001);
        assert_false(read.lab.rows[i].counted);
    }
    lab_end(&read);
    /* Both in grams cancel, as they do in the efficiency: nothing shows. */
    assert_first(LAB_PARTS, "3,611.8,214.1,0.2,0.6,0.5,0.001\n", NOTHING);
    /* Four times too much is neither. */
    assert_first(LAB_PARTS, "3,24,2.1,0.2,0.6,0.02,0.001\n", LIST(GTL_LAB_OVER_BEYOND));
}

#define STATED "state," LAB_RIG

static void held(void **state)
{
    (void)state;
    assert_first(STATED, "held,three.ini,6,2.1,0.2,0.6,0.02,0.001\n", LIST(GTL_LAB_HELD));
    assert_first(STATED, "moving,three.ini,6,2.2,0.2,0.6,0.02,0.001\n", NOTHING);
    /* Held, more than 100 % would be no wonder: friction holds with the hand. */
    assert_first(STATED, "held,three.ini,6,1.9,0.2,0.6,0.02,0.001\n", LIST(GTL_LAB_HELD));
    /* 2.00 N at rest without friction, 2.214 N to raise. */
    assert_first(STATED, ",three.ini,6,2.01,0.2,0.6,0.02,0.001\n", LIST(GTL_LAB_LOOKS_HELD));
    assert_first(STATED, ",three.ini,6,2.06,0.2,0.6,0.02,0.001\n", NOTHING);
    /* Raising is within the readings too. */
    assert_first(STATED, ",three.ini,6,2.01,0.2,0.6,0.2,0.001\n", NOTHING);
    assert_first(STATED, ",bare.ini,6,2.01,0.2,0.6,0.02,0.001\n", NOTHING);
}

/* 2.214 N to raise; held from 1.794 N to 2.214 N. */
static void prediction(void **state)
{
    (void)state;
    assert_first(STATED, "moving,three.ini,6,2.5,0.2,0.6,0.02,0.001\n", LIST(GTL_LAB_FAR_FROM_PREDICTION));
    assert_first(STATED, "moving,three.ini,6,2.4,0.2,0.6,0.02,0.001\n", NOTHING);
    assert_first(STATED, "moving,three.ini,6,2.5,0.2,0.6,0.3,0.001\n", NOTHING);
    assert_first(STATED, "moving,bare.ini,6,2.5,0.2,0.6,0.02,0.001\n", NOTHING);
    assert_first(STATED, "held,three.ini,6,1.5,0.2,0.6,0.02,0.001\n",
                 LIST(GTL_LAB_HELD, GTL_LAB_FAR_FROM_PREDICTION));
    assert_first(STATED, "held,three.ini,6,2.5,0.2,0.6,0.02,0.001\n",
                 LIST(GTL_LAB_HELD, GTL_LAB_FAR_FROM_PREDICTION));
    assert_first(STATED, "held,three.ini,6,2.3,0.2,0.6,0.02,0.001\n", LIST(GTL_LAB_HELD));
}

/* Less than without friction, and the distances make it look like less than 100 %. */
static void below(void **state)
{
    (void)state;
    assert_first(LAB_PARTS, "3,6,1.93,0.2,0.625,0.02,0.001\n", LIST(GTL_LAB_BELOW_FRICTIONLESS));
    assert_first(LAB_PARTS, "3,6,1.98,0.2,0.625,0.02,0.001\n", NOTHING);
}

static void scale_weight(void **state)
{
    (void)state;
    assert_first("scale,scale weight [N]," LAB_PARTS, "upside down,,3,6,2.1,0.2,0.6,0.02,0.001\n",
                 LIST(GTL_LAB_SCALE_WEIGHT_MISSING));
    assert_first("scale,scale weight [N]," LAB_PARTS, "upside down,0.1,3,6,2.1,0.2,0.6,0.02,0.001\n",
                 NOTHING);
    assert_first("scale,scale weight [N]," LAB_PARTS, "upright,,3,6,2.1,0.2,0.6,0.02,0.001\n", NOTHING);
}

/* --- set-ups --- */

static void assert_set_up(const char *text, gtl_lab_code code, bool wanted, gtl_lab_finding *found)
{
    lab_text read = sound_lab(text);
    if (has_finding(&read.lab, -1, 0, code, found) != wanted)
        fail_msg("%s %s:\n%s", wanted ? "lacks" : "has", gtl_lab_code_name(code), text);
    lab_end(&read);
}

/* Two parts, 90 %: effort = (load + weight) / 1.71, weight 1 N. Derived. */
static void forgotten(void **state)
{
    (void)state;
    gtl_lab_finding found;
    assert_set_up(LAB_PARTS "2,2,1.75,0.2,0.4,0.02,0.001\n2,5,3.51,0.2,0.4,0.02,0.001\n"
                            "2,9,5.85,0.2,0.4,0.02,0.001\n",
                  GTL_LAB_WEIGHT_FORGOTTEN, true, &found);
    assert_true(fabs(found.value - 1) < 0.03 && found.other > 0 && found.other < 0.3);
    /* The same weight, stated. */
    assert_set_up("moving weight [N]," LAB_PARTS "1,2,2,1.75,0.2,0.4,0.02,0.001\n"
                  "1,2,5,3.51,0.2,0.4,0.02,0.001\n1,2,9,5.85,0.2,0.4,0.02,0.001\n",
                  GTL_LAB_WEIGHT_FORGOTTEN, false, NULL);
    /* So coarsely read that it does not show. */
    assert_set_up(LAB_PARTS "2,2,1.75,0.2,0.4,0.3,0.001\n2,5,3.51,0.2,0.4,0.3,0.001\n"
                            "2,9,5.85,0.2,0.4,0.3,0.001\n",
                  GTL_LAB_WEIGHT_FORGOTTEN, false, NULL);
    /* One load only: nothing can show. */
    assert_set_up(LAB_PARTS "2,5,3.51,0.2,0.4,0.02,0.001\n2,5,3.51,0.2,0.4,0.02,0.001\n"
                            "2,5,3.51,0.2,0.4,0.02,0.001\n",
                  GTL_LAB_WEIGHT_FORGOTTEN, false, NULL);
    /* Nothing forgotten: effort = load / 1.71. */
    assert_set_up(LAB_PARTS "2,2,1.17,0.2,0.4,0.02,0.001\n2,5,2.92,0.2,0.4,0.02,0.001\n"
                            "2,9,5.26,0.2,0.4,0.02,0.001\n",
                  GTL_LAB_WEIGHT_FORGOTTEN, false, NULL);
}

/* By scatter alone, five rows are needed. */
static void forgotten_by_scatter(void **state)
{
    (void)state;
    assert_set_up(LAB_PARTS "2,2,1.75,0.2,0.4,,\n2,4,2.93,0.2,0.4,,\n2,6,4.09,0.2,0.4,,\n2,8,5.27,0.2,0.4,,\n"
                            "2,9,5.85,0.2,0.4,,\n",
                  GTL_LAB_WEIGHT_FORGOTTEN, true, NULL);
    assert_set_up(LAB_PARTS
                  "2,2,1.75,0.2,0.4,,\n2,4,2.93,0.2,0.4,,\n2,6,4.09,0.2,0.4,,\n2,8,5.27,0.2,0.4,,\n",
                  GTL_LAB_WEIGHT_FORGOTTEN, false, NULL);
}

static void of_set_ups(void **state)
{
    (void)state;
    gtl_lab_finding found;
    assert_set_up(LAB_PARTS "2,6,3.5,0.2,0.4,0.02,\n2,6,3.5,0.2,0.4,0.02,0.001\n",
                  GTL_LAB_UNCERTAINTY_NOT_STATED, true, &found);
    assert_true(found.value == 1 && found.other == 2);
    assert_set_up(LAB_PARTS "2,6,3.5,0.2,0.4,0.02,0.001\n", GTL_LAB_UNCERTAINTY_NOT_STATED, false, NULL);
    assert_set_up(LAB_PARTS "2,6,3.3,0.2,0.4,0.02,0.001\n2,6,3.5,0.2,0.4,0.02,0.001\n"
                            "2,6,3.7,0.2,0.4,0.02,0.001\n",
                  GTL_LAB_SCATTER, true, NULL);
    assert_set_up(LAB_PARTS "2,6,3.48,0.2,0.4,0.02,0.001\n2,6,3.5,0.2,0.4,0.02,0.001\n"
                            "2,6,3.52,0.2,0.4,0.02,0.001\n",
                  GTL_LAB_SCATTER, false, NULL);
    assert_set_up(LAB_PARTS "2,6,2.98,0.2,0.4,0.04,0.001\n", GTL_LAB_NO_FRICTION, true, &found);
    assert_true(found.value > 1 && found.value - found.other < 1);
    assert_set_up(LAB_PARTS "2,6,3.02,0.2,0.4,0.04,0.001\n", GTL_LAB_NO_FRICTION, false, NULL);
    assert_set_up(LAB_PARTS "2,6,2,0.2,0.4,0.04,0.001\n", GTL_LAB_NO_FIT, true, &found);
    assert_true(found.value == 0);
    assert_set_up(LAB_PARTS "2,6,3.1,0.2,0.4,0.04,0.001\n", GTL_LAB_NO_FIT, false, NULL);
}

/* Each code has a name of its own. */
static void names(void **state)
{
    (void)state;
    for (int i = 0; i < GTL_LAB_CODE_COUNT; i++)
        for (int k = 0; k < i; k++)
            assert_string_not_equal(gtl_lab_code_name((gtl_lab_code)i), gtl_lab_code_name((gtl_lab_code)k));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(over),         cmocka_unit_test(over_with_block),
        cmocka_unit_test(distances),    cmocka_unit_test(ratio),
        cmocka_unit_test(masses),       cmocka_unit_test(held),
        cmocka_unit_test(prediction),   cmocka_unit_test(below),
        cmocka_unit_test(scale_weight), cmocka_unit_test(forgotten),
        cmocka_unit_test(of_set_ups),   cmocka_unit_test(forgotten_by_scatter),
        cmocka_unit_test(names),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
