/* findings.c - what looks wrong with a row, by what evidence, and whether the row still counts.
 *
 * Numbers of the table's rules that are no one's measurement stand here with their reason. U is 2u (k = 2),
 * of what is compared; it is 0 where half-widths are not stated. */
#include "lab/work.h"

#include "base/grow.h"

#include <math.h>
#include <stdlib.h>

/* Rope stretches, and a tape is laid along it by hand: distances of a bench are right to a twentieth [1]. */
#define DISTANCE_SLACK 0.05
/* Two to one and the reverse are apart by more than any slack; one to one says nothing [1]. */
#define SWAP_LEAST 1.2
/* A rig file's efficiencies are rarely known better than to a tenth of the whole effort [1]. */
#define PREDICTION_SLACK 0.10
/* At rest without friction, to a hundredth; and raising must take clearly more than that [1]. */
#define HELD_SLACK 0.01
#define HELD_APART 0.05
/* What rounding of the arithmetic may add to an efficiency of 1 [1]. */
#define ROUNDING 1e-9

/* The rules. `bars`: the row is left out of mean and fit, because its efficiency cannot be right, or is not
 * one of motion. What is only doubtful by a prediction does not bar: a rig file may be wrong, and a
 * measurement is not to be sorted by what was expected of it. */
static const struct {
    const char *name;
    bool bars;
} rules[GTL_LAB_CODE_COUNT] = {
    /* Over 1 by no more than U: agrees with 1. Left out, the mean would lean to one side. */
    [GTL_LAB_OVER_WITHIN] = {"efficiency-over-100-within", false},
    /* Over 1 by more than U: no machine gives more work than it takes. */
    [GTL_LAB_OVER_BEYOND] = {"efficiency-over-100-beyond", true},
    /* Over 1, and no U to hold it against. */
    [GTL_LAB_OVER_NOT_STATED] = {"efficiency-over-100-uncertainty-not-stated", true},
    /* Ideal advantage by distances is 1/rig's within the greater of U and DISTANCE_SLACK, and not the rig's.
     */
    [GTL_LAB_DISTANCES_SWAPPED] = {"distances-swapped", true},
    /* Advantage by forces cannot be believed, its reverse can: suspects.c. */
    [GTL_LAB_UPSIDE_DOWN_RATIO] = {"ratio-upside-down", true},
    /* Likewise with one force times 1000/g, or g: suspects.c. */
    [GTL_LAB_GRAMS] = {"grams-for-newtons", true},
    [GTL_LAB_KILOGRAMS] = {"kilograms-for-newtons", true},
    /* `state` says so: friction helps to hold, so that it is no efficiency of raising. */
    [GTL_LAB_HELD] = {"held-not-moving", true},
    /* Not said to be held, on a rig with friction: effort within the greater of U and HELD_SLACK of the rig
     * at rest without friction, that of raising beyond U and HELD_APART. */
    [GTL_LAB_LOOKS_HELD] = {"looks-held", false},
    /* `upside down`, and no `scale weight`: the effort is not known. */
    [GTL_LAB_SCALE_WEIGHT_MISSING] = {"scale-weight-missing", true},
    /* Ideal advantage by distances is not the rig's, or the parts, by more than U and DISTANCE_SLACK. */
    [GTL_LAB_NOT_THIS_RIG] = {"distances-not-of-this-rig", true},
    [GTL_LAB_NOT_THESE_PARTS] = {"parts-not-of-distances", true},
    /* Raised with less than without friction, by more than U and HELD_SLACK, which the distances hide: an
     * efficiency over 1 is told as that. */
    [GTL_LAB_BELOW_FRICTIONLESS] = {"effort-below-frictionless", true},
    /* On a rig with friction: by more than U and PREDICTION_SLACK from its raise, or out of its range that
     * holds. */
    [GTL_LAB_FAR_FROM_PREDICTION] = {"far-from-prediction", false},
    [GTL_LAB_NO_PREDICTION] = {"no-prediction", true},
    /* Of set-ups: intercept.c, fit.c, set_up.c. */
    [GTL_LAB_WEIGHT_FORGOTTEN] = {"weight-forgotten", false},
    [GTL_LAB_UNCERTAINTY_NOT_STATED] = {"uncertainty-not-stated", false},
    [GTL_LAB_SCATTER] = {"scatter-beyond-readings", false},
    [GTL_LAB_NO_FRICTION] = {"no-friction-found", false},
    [GTL_LAB_NO_FIT] = {"no-fit", false},
};

const char *gtl_lab_code_name(gtl_lab_code code)
{
    return rules[code].name;
}

bool gtl_lab_keep_finding(gtl_lab *lab, gtl_lab_finding finding)
{
    gtl_lab_finding *grown =
        gtl_grow(lab->findings, (size_t)lab->finding_count, &lab->finding_capacity, sizeof *grown);
    if (!grown) return false;
    finding.bars = rules[finding.code].bars;
    lab->findings = grown;
    grown[lab->finding_count++] = finding;
    return true;
}

static bool add(gtl_lab *lab, int row, gtl_lab_code code, double value, double other)
{
    return gtl_lab_keep_finding(
        lab, (gtl_lab_finding){
                 .code = code, .row = row, .set_up = lab->rows[row].set_up, .value = value, .other = other});
}

double gtl_lab_share(const gtl_lab_row *row)
{
    return row->predicted_hold / row->effort;
}

/* --- each rule --- */

static bool find_state(gtl_lab *lab, int row)
{
    const gtl_lab_row *r = &lab->rows[row];
    bool unknown = r->scale == GTL_LAB_UPSIDE_DOWN && isnan(r->scale_weight);
    if (unknown && !add(lab, row, GTL_LAB_SCALE_WEIGHT_MISSING, r->effort_read, NAN)) return false;
    if (r->held && !add(lab, row, GTL_LAB_HELD, r->effort_read, NAN)) return false;
    return !isnan(r->predicted_effort) || add(lab, row, GTL_LAB_NO_PREDICTION, r->load, NAN);
}

static bool find_distances(gtl_lab *lab, int row)
{
    const gtl_lab_row *r = &lab->rows[row];
    double ideal = r->ideal_advantage;
    double promised = r->reference_advantage;
    double slack = fmax(gtl_lab_distance_share(r), DISTANCE_SLACK);
    if (isnan(promised) || fabs(ideal - promised) <= slack * promised) return true;
    bool turned = fabs(ideal - 1 / promised) <= slack / promised;
    if (turned && (promised >= SWAP_LEAST || promised <= 1 / SWAP_LEAST))
        return add(lab, row, GTL_LAB_DISTANCES_SWAPPED, ideal, promised);
    bool parts = lab->set_ups[r->set_up].parts > 0;
    return add(lab, row, parts ? GTL_LAB_NOT_THESE_PARTS : GTL_LAB_NOT_THIS_RIG, ideal, promised);
}

/* By the row's own work: where a moving weight is stated, raising it is work too. */
static double whole_efficiency(const gtl_lab_row *row)
{
    return isnan(row->efficiency_all) ? row->efficiency : row->efficiency_all;
}

static bool find_over(gtl_lab *lab, int row)
{
    const gtl_lab_row *r = &lab->rows[row];
    double whole = whole_efficiency(r);
    double expanded = 2 * r->efficiency_u * whole / r->efficiency;
    if (r->held || !(whole > 1 + ROUNDING)) return true;
    if (isnan(expanded)) return add(lab, row, GTL_LAB_OVER_NOT_STATED, whole, NAN);
    return add(lab, row, whole > 1 + ROUNDING + expanded ? GTL_LAB_OVER_BEYOND : GTL_LAB_OVER_WITHIN, whole,
               expanded);
}

static bool find_held_range(gtl_lab *lab, int row)
{
    const gtl_lab_row *r = &lab->rows[row];
    double slack = fmax(gtl_lab_force_share(r), PREDICTION_SLACK);
    if (r->effort < r->predicted_least * (1 - slack))
        return add(lab, row, GTL_LAB_FAR_FROM_PREDICTION, r->effort, r->predicted_least);
    if (r->effort > r->predicted_most * (1 + slack))
        return add(lab, row, GTL_LAB_FAR_FROM_PREDICTION, r->effort, r->predicted_most);
    return true;
}

static bool find_effort(gtl_lab *lab, int row)
{
    const gtl_lab_row *r = &lab->rows[row];
    double u = gtl_lab_force_share(r);
    if (r->held) return find_held_range(lab, row);
    if (whole_efficiency(r) <= 1 + ROUNDING && r->effort < r->predicted_hold * (1 - fmax(u, HELD_SLACK)))
        return add(lab, row, GTL_LAB_BELOW_FRICTIONLESS, r->effort, r->predicted_hold);
    if (r->predicted_case != GTL_RAISE) return true;
    bool at_rest = fabs(r->effort - r->predicted_hold) <= fmax(u, HELD_SLACK) * r->predicted_hold;
    if (at_rest && r->predicted_effort - r->effort > fmax(u, HELD_APART) * r->predicted_effort)
        return add(lab, row, GTL_LAB_LOOKS_HELD, r->effort, r->predicted_hold);
    if (fabs(r->effort - r->predicted_effort) > fmax(u, PREDICTION_SLACK) * r->predicted_effort)
        return add(lab, row, GTL_LAB_FAR_FROM_PREDICTION, r->effort, r->predicted_effort);
    return true;
}

/* --- what share is likely --- */

static int compare(const void *left, const void *right)
{
    double a = *(const double *)left;
    double b = *(const double *)right;
    return (a > b) - (a < b);
}

/* The median share of a set-up's other rows that look like a bench; NaN: there are none. `room` has one place
 * a row. */
static double median_share(const gtl_lab *lab, int row, double *room)
{
    size_t count = 0;
    for (int i = 0; i < lab->row_count; i++) {
        double share = gtl_lab_share(&lab->rows[i]);
        bool of_it = i != row && lab->rows[i].set_up == lab->rows[row].set_up;
        if (of_it && share >= 0.5 && share <= 1) room[count++] = share;
    }
    if (count == 0) return NAN;
    qsort(room, count, sizeof *room, compare);
    return room[count / 2];
}

static double likely_share(const gtl_lab *lab, int row, double *room)
{
    const gtl_lab_row *r = &lab->rows[row];
    if (r->predicted_case == GTL_RAISE) return r->predicted_hold / r->predicted_effort;
    return median_share(lab, row, room);
}

/* --- all of a row --- */

static bool find_row(gtl_lab *lab, int row, double *room)
{
    gtl_lab_row *r = &lab->rows[row];
    r->first_finding = lab->finding_count;
    /* Causes before what comes of them. */
    if (!find_state(lab, row) || !find_distances(lab, row) ||
        !gtl_lab_suspect(lab, row, likely_share(lab, row, room)) || !find_over(lab, row) ||
        !find_effort(lab, row))
        return false;
    r->finding_count = lab->finding_count - r->first_finding;
    r->counted = true;
    for (int i = r->first_finding; i < lab->finding_count; i++) r->counted &= !lab->findings[i].bars;
    lab->set_ups[r->set_up].counted += r->counted;
    return true;
}

bool gtl_lab_find_rows(gtl_lab *lab)
{
    double *room = calloc((size_t)lab->row_count, sizeof *room);
    bool done = room != NULL;
    for (int i = 0; done && i < lab->row_count; i++) done = find_row(lab, i, room);
    free(room);
    return done;
}
