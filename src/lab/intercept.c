/* intercept.c - a weight that nobody counted, or a drag that no load makes: the effort that is left over
 * where the load is nothing.
 *
 * Friction of sheaves grows with the load, so that effort over load is a straight line through what the
 * stated weights take. A line through the readings that begins clearly above that was drawn up by something
 * else. */
#include "lab/work.h"

#include <math.h>

/* Loads as near to each other as this say nothing of none [1]. */
#define LOADS_APART 1.5
/* Less than this share of the mean load is not worth a word [1]. */
#define WORTH 0.02

/* How many standard deviations hold 99.73 % of a mean, one in 370 left outside, for 3 and more degrees of
 * freedom. Source: JCGM 100:2008, table G.2, from memory. */
static double student(int freedom)
{
    static const double factors[] = {9.22, 6.62, 5.51, 4.90, 4.53, 4.28, 4.09, 3.96};
    const int count = sizeof factors / sizeof *factors;
    return factors[freedom - 3 < count ? freedom - 3 : count - 1];
}

/* A straight line by least squares, each point with its sigma. */
typedef struct line {
    double begin;   /* at no load [N] */
    double slope;   /* [1] */
    double begin_u; /* for the sigmas given [N] */
    double miss;    /* sum of squares over them [1] */
} line;

/* What the row's effort is without the weights that are stated [N]. */
static double left_over(const gtl_lab_row *row, const gtl_lab_fitted *fitted, int i)
{
    double known = fitted->effort[i] - fitted->slope[i] * fitted->effort[i] / row->effort * row->load;
    return row->effort - known;
}

static line draw_line(const gtl_lab *lab, const gtl_lab_fitted *fitted)
{
    double w = 0, x = 0, y = 0, xx = 0, xy = 0;
    line drawn = {.miss = 0};
    for (int i = 0; i < fitted->count; i++) {
        const gtl_lab_row *row = &lab->rows[fitted->rows[i]];
        double weight = 1 / (fitted->sigma[i] * fitted->sigma[i]);
        double effort = left_over(row, fitted, i);
        w += weight;
        x += weight * row->load;
        y += weight * effort;
        xx += weight * row->load * row->load;
        xy += weight * row->load * effort;
    }
    double determinant = w * xx - x * x;
    drawn.slope = (w * xy - x * y) / determinant;
    drawn.begin = (xx * y - x * xy) / determinant;
    drawn.begin_u = sqrt(xx / determinant);
    for (int i = 0; i < fitted->count; i++) {
        const gtl_lab_row *row = &lab->rows[fitted->rows[i]];
        double miss = left_over(row, fitted, i) - drawn.begin - drawn.slope * row->load;
        drawn.miss += miss * miss / (fitted->sigma[i] * fitted->sigma[i]);
    }
    return drawn;
}

static bool loads_apart(const gtl_lab *lab, const gtl_lab_fitted *fitted, double *mean)
{
    double least = INFINITY, most = 0, sum = 0;
    for (int i = 0; i < fitted->count; i++) {
        double load = lab->rows[fitted->rows[i]].load;
        least = fmin(least, load);
        most = fmax(most, load);
        sum += load;
    }
    *mean = sum / fitted->count;
    return most >= LOADS_APART * least;
}

bool gtl_lab_left_over(const gtl_lab *lab, const gtl_lab_set_up *set_up, const gtl_lab_fitted *fitted,
                       double *weight, double *expanded)
{
    double mean;
    bool stated = set_up->fit == GTL_LAB_FIT_READINGS;
    int freedom = fitted->count - 2;
    if (isnan(set_up->sheave_efficiency) || freedom < (stated ? 1 : 3)) return false;
    if (!loads_apart(lab, fitted, &mean)) return false;
    line drawn = draw_line(lab, fitted);
    double scatter = sqrt(drawn.miss / freedom);
    double factor = stated ? 3 * fmax(1, scatter) : student(freedom) * scatter;
    *weight = drawn.begin / drawn.slope;
    *expanded = factor * drawn.begin_u / drawn.slope;
    return drawn.slope > 0 && *weight > *expanded && *weight > WORTH * mean;
}
