/* set_up.c - all rows on one rig, or of so many parts, taken together. */
#include "lab/work.h"

#include <math.h>

static void find_mean(const gtl_lab *lab, gtl_lab_set_up *set_up, const gtl_lab_fitted *fitted)
{
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < fitted->count; i++) sum += lab->rows[fitted->rows[i]].efficiency;
    set_up->efficiency_mean = fitted->count > 0 ? sum / fitted->count : NAN;
    for (int i = 0; i < fitted->count; i++) {
        double off = lab->rows[fitted->rows[i]].efficiency - set_up->efficiency_mean;
        squares += off * off;
    }
    set_up->efficiency_spread = fitted->count > 1 ? sqrt(squares / (fitted->count - 1)) : NAN;
}

static bool add(gtl_lab *lab, int s, gtl_lab_code code, double value, double other)
{
    return gtl_lab_keep_finding(
        lab, (gtl_lab_finding){.code = code, .row = -1, .set_up = s, .value = value, .other = other});
}

static int count_unstated(const gtl_lab *lab, int s)
{
    int count = 0;
    for (int i = 0; i < lab->row_count; i++) {
        const gtl_lab_row *row = &lab->rows[i];
        count += row->set_up == s && (isnan(row->reading) || isnan(row->distance_reading));
    }
    return count;
}

static bool find_all(gtl_lab *lab, int s, const gtl_lab_fitted *fitted)
{
    const gtl_lab_set_up *set_up = &lab->set_ups[s];
    double weight;
    double expanded;
    int unstated = count_unstated(lab, s);
    double e = set_up->sheave_efficiency;
    if (unstated > 0 && !add(lab, s, GTL_LAB_UNCERTAINTY_NOT_STATED, unstated, set_up->row_count))
        return false;
    if (gtl_lab_left_over(lab, set_up, fitted, &weight, &expanded) &&
        !add(lab, s, GTL_LAB_WEIGHT_FORGOTTEN, weight, expanded))
        return false;
    if (fitted->birge > 1 && !add(lab, s, GTL_LAB_SCATTER, fitted->birge, NAN)) return false;
    if (e > 1 && !add(lab, s, GTL_LAB_NO_FRICTION, e, 2 * set_up->sheave_efficiency_u)) return false;
    return set_up->fit != GTL_LAB_FIT_NONE || add(lab, s, GTL_LAB_NO_FIT, fitted->count, NAN);
}

static bool sum_up(gtl_lab *lab, int s)
{
    gtl_lab_set_up *set_up = &lab->set_ups[s];
    gtl_lab_fitted fitted = {0};
    gtl_rig *even = set_up->rig ? gtl_rig_copy(set_up->rig) : NULL;
    bool done = (even || !set_up->rig) && gtl_lab_fit(lab, set_up, even, &fitted);
    if (done) find_mean(lab, set_up, &fitted);
    set_up->first_finding = lab->finding_count;
    done = done && find_all(lab, s, &fitted);
    set_up->finding_count = lab->finding_count - set_up->first_finding;
    gtl_lab_fitted_end(&fitted);
    gtl_rig_free(even);
    return done;
}

bool gtl_lab_sum_up(gtl_lab *lab)
{
    for (int s = 0; s < lab->set_up_count; s++)
        if (!sum_up(lab, s)) return false;
    return true;
}
