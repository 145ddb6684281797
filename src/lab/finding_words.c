/* finding_words.c - what each finding says, and what to look at first. docs/lab.md has a chapter for each. */
#include "lab/compose.h"

#include <math.h>

/* What was worked out, not typed. */
static gtl_figure worked(double newtons)
{
    return gtl_figure_after(gtl_figure_ratio(newtons), "N");
}

static gtl_figure percent(double share)
{
    return gtl_figure_after(gtl_figure_percent(share), "%");
}

/* --- more than 100 % --- */

/* Where a moving weight is stated, it is the efficiency with that raised too. */
static void add_efficiency(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    bool all = isfinite(lab->rows[finding->row].efficiency_all);
    gtl_text_add(text, "the efficiency%s comes to %s", all ? ", the moving weight counted as raised," : "",
                 percent(finding->value).text);
}

static void over_within(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    add_efficiency(text, lab, finding);
    gtl_text_add(text,
                 ". That is over 100 %%, but by no more than its uncertainty (U = %s): it agrees with 100 %%",
                 percent(finding->other).text);
}

static void over_beyond(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    add_efficiency(text, lab, finding);
    gtl_text_add(text,
                 ", over 100 %% by more than its uncertainty (U = %s). No machine gives more work than it "
                 "takes, so a reading is wrong",
                 percent(finding->other).text);
}

static void over_not_stated(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    add_efficiency(text, lab, finding);
    gtl_text_add(text, ", over 100 %%. Without half-widths nobody can say whether reading error explains it");
}

/* --- the wrong column, the wrong unit --- */

static void swapped(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text,
                 "the effort is said to have run %s times as far as the load, but this set-up needs %s "
                 "times: each of the two distances seems to stand in the other's column",
                 gtl_figure_ratio(finding->value).text, gtl_figure_ratio(finding->other).text);
}

static void upside_down(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text,
                 "load over effort is %s, where this set-up has %s without friction: load and effort seem to "
                 "stand in each other's column, so that the ratio is upside down",
                 gtl_figure_ratio(finding->value).text, gtl_figure_ratio(finding->other).text);
}

/* The column's number is that many times what would fit, or that part of it, as `unit` for newtons makes it.
 */
static void wrong_unit(gtl_text *text, const gtl_lab_finding *finding, const char *size, const char *unit)
{
    double factor = finding->value > 1 ? finding->value : 1 / finding->value;
    gtl_text_add(text,
                 "the %s is about %s times too %s for this set-up, as if %s stood in a column of newtons; "
                 "mended, the efficiency would be about %s",
                 finding->on_load ? "load" : "effort", gtl_figure_ratio(factor).text, size, unit,
                 percent(finding->other).text);
}

static void grams(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    wrong_unit(text, finding, "great", "grams");
}

static void kilograms(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    wrong_unit(text, finding, "small", "kilograms");
}

/* --- held, hung --- */

static void held(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text,
                 "the row says held. A load at rest is held by any effort between that of lowering and that "
                 "of raising, so %s gives no efficiency",
                 gtl_lab_newtons(finding->value).text);
}

static void looks_held(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text,
                 "the effort, %s, is that of this rig at rest without friction (%s), though friction is "
                 "stated: it looks as if the scale was read while the load hung still",
                 gtl_lab_newtons(finding->value).text, worked(finding->other).text);
}

static void scale_weight(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text,
                 "the scale hung upside down and showed %s, but its own weight pulled too, and `scale "
                 "weight` is not stated: the effort is not known, and nothing is worked out from it",
                 gtl_lab_newtons(finding->value).text);
}

/* --- another rig than the one named --- */

static void not_this_rig(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text,
                 "the effort ran %s times as far as the load, but the rig named makes it run %s times as "
                 "far, and the uncertainty does not explain that",
                 gtl_figure_ratio(finding->value).text, gtl_figure_ratio(finding->other).text);
}

static void not_these_parts(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text,
                 "the effort ran %s times as far as the load, but %s carrying it make it run %s times as far",
                 gtl_figure_ratio(finding->value).text, gtl_lab_count((int)finding->other, "part").text,
                 gtl_figure_ratio(finding->other).text);
}

static void below_frictionless(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text, "the effort, %s, is less than raising takes even without friction, %s",
                 gtl_lab_newtons(finding->value).text, worked(finding->other).text);
}

static void far_off(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    const char *what = "the effort of raising that is worked out";
    const gtl_lab_row *row = &lab->rows[finding->row];
    if (isfinite(row->predicted_least)) what = "the nearest effort that would hold it";
    gtl_text_add(text, "the effort, %s, is far from %s, %s", gtl_lab_newtons(finding->value).text, what,
                 worked(finding->other).text);
}

static void no_prediction(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    gtl_text_add(text, "with a load of %s the rig has no answer, so nothing is predicted (%s)",
                 gtl_lab_newtons(finding->value).text, lab->set_ups[finding->set_up].reason);
}

/* --- of a set-up --- */

static void forgotten(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text,
                 "the efforts at several loads lie as if %s more than stated were raised each time (give or "
                 "take %s): a weight that rises with the load seems to be forgotten",
                 worked(finding->value).text, worked(finding->other).text);
}

static void not_stated(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    if (finding->value == finding->other)
        gtl_text_add(text, "no row states");
    else
        gtl_text_add(text, "%.0f of its %.0f rows do not state", finding->value, finding->other);
    gtl_text_add(text,
                 " both `reading` and `distance reading`, so the efficiency has no known uncertainty there");
}

static void scatter(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text, "its readings scatter %s times as much as the half-widths stated explain",
                 gtl_figure_ratio(finding->value).text);
}

static void no_friction(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    gtl_text_add(text, "the efficiency per sheave that fits best is %s", percent(finding->value).text);
    if (isfinite(finding->other)) gtl_text_add(text, " (U = %s)", percent(finding->other).text);
    gtl_text_add(text, ": these readings show no friction");
}

static void no_fit(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    (void)lab;
    if (finding->value < 1)
        gtl_text_add(text, "no row counts, so there is no efficiency per sheave to be fitted");
    else
        gtl_text_add(text, "no efficiency per sheave fits the %s that count",
                     gtl_lab_count((int)finding->value, "row").text);
}

static const struct gtl_finding_words {
    void (*add)(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding);
    const char *title;
    const char *look;
} words[GTL_LAB_CODE_COUNT] = {
    [GTL_LAB_OVER_WITHIN] = {over_within, "over 100 %, within the uncertainty",
                             "nothing is wrong so far; a larger load or a finer scale tells more"},
    [GTL_LAB_OVER_BEYOND] =
        {over_beyond, "over 100 %, beyond the uncertainty",
         "the zero of the scale, in the attitude in which it was read; whether both distances are of the "
         "same lift; whether the load was going up, slowly and steadily, while the scale was read"},
    [GTL_LAB_OVER_NOT_STATED] = {over_not_stated, "over 100 %, uncertainty not stated",
                                 "the smallest step on the scale and on the ruler: type half of it, or more, "
                                 "as `reading` and `distance reading`; then the zero of the scale"},
    [GTL_LAB_DISTANCES_SWAPPED] = {swapped, "distances swapped",
                                   "the heads of the two distance columns on the sheet"},
    [GTL_LAB_UPSIDE_DOWN_RATIO] = {upside_down, "ratio upside down",
                                   "the heads of the load and effort columns on the sheet"},
    [GTL_LAB_GRAMS] = {grams, "grams for newtons",
                       "the unit printed on the scale and on the weights; 100 g weigh 0.981 N"},
    [GTL_LAB_KILOGRAMS] = {kilograms, "kilograms for newtons",
                           "the unit printed on the scale and on the weights; 1 kg weighs 9.81 N"},
    [GTL_LAB_HELD] = {held, "held, not moving",
                      "how the scale is read: while the load goes up, slowly and steadily"},
    [GTL_LAB_LOOKS_HELD] = {looks_held, "looks as if held",
                            "whether the load was going up while the scale was read; if not, write `held` in "
                            "the column `state`"},
    [GTL_LAB_SCALE_WEIGHT_MISSING] =
        {scale_weight, "scale weight missing",
         "the scale itself: weigh it, and type its weight in the column `scale weight`"},
    [GTL_LAB_NOT_THIS_RIG] = {not_this_rig, "distances of another rig",
                              "which rig it was; and whether the effort distance is the length of rope "
                              "hauled, measured over the same lift"},
    [GTL_LAB_NOT_THESE_PARTS] = {not_these_parts, "distances of other parts",
                                 "the parts of rope at the moving block, counted once more; and whether the "
                                 "effort distance is the length of rope hauled"},
    [GTL_LAB_BELOW_FRICTIONLESS] = {below_frictionless, "effort below the frictionless",
                                    "the zero of the scale; whether the load was going up, not down, while "
                                    "it was read; whether the load is the one typed"},
    [GTL_LAB_FAR_FROM_PREDICTION] = {far_off, "far from the prediction",
                                     "whether this row is of the set-up that it names, and the load the one "
                                     "typed; then rope that rubs, and sheaves that do not turn"},
    [GTL_LAB_NO_PREDICTION] = {no_prediction, "no prediction", "the rig file, by `gantline report`"},
    [GTL_LAB_WEIGHT_FORGOTTEN] = {forgotten, "a weight forgotten",
                                  "the moving block and the hook: weigh them; with `parts` type the weight "
                                  "in the column `moving weight`, with a rig as the block's `mass` in the "
                                  "rig file. A scale that did not show zero does the same"},
    [GTL_LAB_UNCERTAINTY_NOT_STATED] = {not_stated, "uncertainty not stated",
                                        "the smallest step on the scale and on the ruler: type half of it, "
                                        "or more, as `reading` and `distance reading`"},
    [GTL_LAB_SCATTER] = {scatter, "scatter beyond the readings",
                         "whether all groups read the scale in the same way: moving, straight before the "
                         "eye, at a steady speed; and whether a half-width is typed too small"},
    [GTL_LAB_NO_FRICTION] = {no_friction, "no friction found",
                             "the zero of the scale; whether the load was going up while it was read"},
    [GTL_LAB_NO_FIT] = {no_fit, "no fit", "the findings of its rows"},
};

void gtl_lab_say_finding(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding)
{
    words[finding->code].add(text, lab, finding);
}

const char *gtl_lab_look_first(gtl_lab_code code)
{
    return words[code].look;
}

const char *gtl_lab_finding_title(gtl_lab_code code)
{
    return words[code].title;
}
