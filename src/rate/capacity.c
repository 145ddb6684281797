/* capacity.c - what a rating lets a part carry. */
#include <gantline/rate.h>
#include <math.h>

double gtl_capacity(const gtl_rating *rating)
{
    double by_strength = rating->mbs / rating->design_factor; /* NaN if either is not stated */
    return fmin(rating->wll, by_strength);                    /* fmin passes over a NaN */
}
