/* limit_mass.c - loads as masses: never rounded towards more than was found to be permitted. */
#include "report/limit_words.h"

#include <math.h>

#define POUND 0.45359237 /* [kg]; exact, NIST SP 811 */

/* Figures of a mass: more where the ends of a range would meet. */
#define DIGITS      4
#define MOST_DIGITS 9
/* What a figure as typed shows. */
#define MOST_DECIMALS 4
/* From here on a figure as typed has a power of ten and three digits. */
#define PLAIN_LIMIT 1e6
#define FEW_DIGITS  3

static bool is_us(const gtl_limit *limit)
{
    return limit->rig->us_units;
}

static gtl_figure with_unit(const gtl_limit *limit, double mass)
{
    return gtl_figure_after(gtl_figure_typed(mass), is_us(limit) ? "lb" : "kg");
}

/* In the printed unit. */
static double printed(const gtl_limit *limit, double kilograms)
{
    return is_us(limit) ? kilograms / POUND : kilograms;
}

/* To that many digits; what differs from a round mass by rounding noise is that mass. */
static double rounded(double mass, int digits, bool up)
{
    int decimals = (mass < PLAIN_LIMIT ? digits : FEW_DIGITS) - 1 - (int)floor(log10(mass));
    double scale = pow(10, decimals < MOST_DECIMALS ? decimals : MOST_DECIMALS);
    double count = mass * scale;
    double slack = count * GTL_UTILISATION_SLACK;
    return (up ? ceil(count - slack) : floor(count + slack)) / scale;
}

/* So many that the printed range is one, as far as there are such. */
static int digits_of(const gtl_limit *limit)
{
    double most = printed(limit, limit->heaviest.mass);
    double least = printed(limit, limit->lightest.mass);
    int digits = DIGITS;
    if (!(least > 0 && most > 0)) return digits; /* one end is open */
    while (digits < MOST_DIGITS && rounded(most, digits, false) < rounded(least, digits, true)) digits++;
    return digits;
}

gtl_figure gtl_limit_mass_down(const gtl_limit *limit, double kilograms)
{
    return with_unit(limit, rounded(printed(limit, kilograms), digits_of(limit), false));
}

gtl_figure gtl_limit_mass_up(const gtl_limit *limit, double kilograms)
{
    return with_unit(limit, rounded(printed(limit, kilograms), digits_of(limit), true));
}

gtl_figure gtl_limit_mass_drawn(const gtl_limit *limit)
{
    return with_unit(limit, printed(limit, limit->drawn));
}
