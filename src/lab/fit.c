/* fit.c - the one efficiency per sheave that fits a set-up's readings.
 *
 * Least squares of effort against the model, by Gauss and Newton's steps in the logarithm of e, which keeps e
 * above 0. Each row weighs 1/sigma^2, sigma being the effort's standard uncertainty by its own reading and by
 * the load's; where those are not stated, sigma is taken as in proportion to the effort, and its size from
 * the scatter about the fit. Readings of different rows are taken as independent. */
#include "lab/work.h"

#include <math.h>
#include <stdlib.h>

/* A sheave is not looked for outside of these [1]: at the lower end it is a brake, at the upper no reading
 * error. A fit that ends there is none. */
#define LEAST 0.05
#define MOST  1.25
/* Where to begin, and when a step of ln e moves nothing any more [1]. */
#define BEGIN  0.9
#define STILL  1e-9
#define ROUNDS 60
/* For a slope by differences: of ln e, and of the load as a share of it [1]. */
#define NUDGE 1e-4
/* The sum of squares over its degrees of freedom is 1 on the whole, with a standard deviation of sqrt(2/n);
 * three of them beyond, the scatter is not that of the readings [1]. */
#define BIRGE_LIMIT 3

/* A fit under way. */
typedef struct fitting {
    const gtl_lab *lab;
    const gtl_lab_set_up *set_up;
    gtl_rig *even;
    gtl_lab_fitted *at;
    double *by_log; /* slope of the model's effort by ln e, one a counted row [N] */
    bool stated;    /* sigma is from half-widths; else it is the model's effort */
    bool failed;    /* no memory */
} fitting;

static double model(fitting *f, const gtl_lab_row *row, double e)
{
    double effort = NAN;
    if (!f->failed) f->failed = !gtl_lab_model(f->set_up, f->even, row, e, &effort);
    return effort;
}

static const gtl_lab_row *row_of(const fitting *f, int i)
{
    return &f->lab->rows[f->at->rows[i]];
}

/* The model of all rows at e, and how it changes; false where it has no answer. */
static bool evaluate(fitting *f, double e)
{
    bool answered = true;
    for (int i = 0; i < f->at->count && answered && !f->failed; i++) {
        const gtl_lab_row *row = row_of(f, i);
        double above = model(f, row, e * exp(NUDGE));
        double below = model(f, row, e * exp(-NUDGE));
        f->at->effort[i] = model(f, row, e);
        f->by_log[i] = (above - below) / (2 * NUDGE);
        /* The effort as read would weigh low readings more than high ones. */
        if (!f->stated) f->at->sigma[i] = f->at->effort[i];
        answered = isfinite(f->at->effort[i]) && isfinite(f->by_log[i]);
    }
    return answered && !f->failed;
}

/* The sums that a step needs, of the rows as evaluated last. */
typedef struct sums {
    double slope_square; /* [1] */
    double slope_miss;   /* [1] */
    double miss_square;  /* [1] */
} sums;

static sums add_up(const fitting *f)
{
    sums s = {0};
    for (int i = 0; i < f->at->count; i++) {
        double slope = f->by_log[i] / f->at->sigma[i];
        double miss = (row_of(f, i)->effort - f->at->effort[i]) / f->at->sigma[i];
        s.slope_square += slope * slope;
        s.slope_miss += slope * miss;
        s.miss_square += miss * miss;
    }
    return s;
}

/* Steps until nothing moves; an answer that is missing on the way halves the step. NaN: no fit. */
static double close_in(fitting *f)
{
    double place = log(BEGIN);
    double step = 0;
    for (int round = 0; round < ROUNDS && !f->failed; round++) {
        if (evaluate(f, exp(place + step))) {
            place += step;
            sums s = add_up(f);
            if (!(s.slope_square > 0)) return NAN;
            step = s.slope_miss / s.slope_square;
            step = fmin(fmax(place + step, log(LEAST)), log(MOST)) - place;
            if (fabs(step) < STILL) {
                bool inside = place > log(LEAST) + STILL && place < log(MOST) - STILL;
                return inside ? exp(place) : NAN;
            }
        } else {
            if (round == 0) return NAN;
            step /= 2;
        }
    }
    return NAN;
}

/* How the effort grows with the load, near the row's own [1]. */
static double load_slope(fitting *f, const gtl_lab_row *row)
{
    gtl_lab_row other = *row;
    other.load *= 1 + NUDGE;
    double here = model(f, row, BEGIN);
    return (model(f, &other, BEGIN) - here) / (NUDGE * row->load) * row->effort / here;
}

/* Standard uncertainties of the efforts. They are stated only if all of them are, and none is nothing. */
static void find_sigmas(fitting *f)
{
    f->stated = true;
    for (int i = 0; i < f->at->count; i++) {
        const gtl_lab_row *row = row_of(f, i);
        f->at->slope[i] = load_slope(f, row);
        f->at->sigma[i] = gtl_lab_standard(row->reading) * hypot(1, f->at->slope[i]);
        f->stated &= f->at->sigma[i] > 0;
    }
}

static void judge(gtl_lab_set_up *set_up, gtl_lab_fitted *fitted, const sums *s, bool stated)
{
    int freedom = fitted->count - 1;
    double by_log = 1 / sqrt(s->slope_square); /* of ln e, for rows of sigma 1 */
    double scatter = freedom > 0 ? sqrt(s->miss_square / freedom) : NAN;
    set_up->sheave_efficiency_u = NAN;
    set_up->fit = stated ? GTL_LAB_FIT_READINGS : freedom >= 2 ? GTL_LAB_FIT_SCATTER : GTL_LAB_FIT_UNKNOWN;
    if (set_up->fit == GTL_LAB_FIT_UNKNOWN) return;
    if (!stated) {
        set_up->degrees_of_freedom = freedom;
        by_log *= scatter;
    } else if (freedom >= 2 && scatter * scatter > 1 + BIRGE_LIMIT * sqrt(2.0 / freedom)) {
        fitted->birge = scatter;
        by_log *= scatter;
    }
    set_up->sheave_efficiency_u = set_up->sheave_efficiency * by_log;
}

static bool make_room(const gtl_lab *lab, const gtl_lab_set_up *set_up, gtl_lab_fitted *at)
{
    size_t room = (size_t)set_up->counted + 1;
    at->rows = calloc(room, sizeof *at->rows);
    at->effort = calloc(room, sizeof *at->effort);
    at->slope = calloc(room, sizeof *at->slope);
    at->sigma = calloc(room, sizeof *at->sigma);
    at->birge = 1;
    if (!at->rows || !at->effort || !at->slope || !at->sigma) return false;
    for (int i = 0; i < lab->row_count; i++)
        if (lab->rows[i].counted && &lab->set_ups[lab->rows[i].set_up] == set_up) at->rows[at->count++] = i;
    return true;
}

void gtl_lab_fitted_end(gtl_lab_fitted *fitted)
{
    free(fitted->rows);
    free(fitted->effort);
    free(fitted->slope);
    free(fitted->sigma);
}

bool gtl_lab_fit(const gtl_lab *lab, gtl_lab_set_up *set_up, gtl_rig *even, gtl_lab_fitted *fitted)
{
    set_up->sheave_efficiency = set_up->sheave_efficiency_u = NAN;
    if (!make_room(lab, set_up, fitted)) return false;
    if (fitted->count == 0) return true;
    fitting f = {lab, set_up, even, fitted, calloc((size_t)fitted->count, sizeof(double)), false, false};
    if (!f.by_log) return false;
    find_sigmas(&f);
    set_up->sheave_efficiency = close_in(&f);
    sums s = add_up(&f);
    if (!isnan(set_up->sheave_efficiency)) judge(set_up, fitted, &s, f.stated);
    free(f.by_log);
    return !f.failed;
}
