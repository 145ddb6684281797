/* figures.c - SI numbers to printed figures, the only way back from SI. */
#include "report/figures.h"

#include <gantline/units.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

/* Exact. Sources: NIST SP 811 (pound-force, foot, inch, pound, kilogram-force). */
#define POUND_FORCE 4.4482216152605 /* [N] */
#define FOOT        0.3048          /* [m] */
#define INCH        0.0254          /* [m] */
#define POUND       0.45359237      /* [kg] */
/* A force of this size is left by rounding alone [N]. */
#define NOTHING        1e-9
#define KILOGRAM_FORCE 9.80665 /* [N] */

#define DEGREES_A_RADIAN 57.29577951308232

/* The largest force still printed in the small unit: beyond it three digits leave zeros that say nothing. */
#define LARGEST_IN_NEWTONS 1000.0
#define LARGEST_IN_POUNDS  10000.0

/* A force this small beside the largest is what the arithmetic leaves of nothing [1]. */
#define NOISE 1e-9

#define DIGITS        3
#define MOST_DECIMALS 4
/* From here on a figure is written with a power of ten, so that columns stay narrow. */
#define PLAIN_LIMIT 1e6

typedef enum gtl_rounding { ROUND_UP, ROUND_DOWN, ROUND_NEAREST } gtl_rounding;

/* To a whole number. Up is away from zero, down is towards minus infinity. */
static double whole(double number, gtl_rounding rounding)
{
    double slack = fabs(number) * GTL_UTILISATION_SLACK;
    if (rounding == ROUND_UP) return copysign(ceil(fabs(number) - slack), number);
    return rounding == ROUND_DOWN ? floor(number + slack) : round(number);
}

static double scaled(double number, int decimals)
{
    return decimals < 0 ? number / pow(10, -decimals) : number * pow(10, decimals);
}

/* A count of units of the last decimal as digits. By hand, since printf's point belongs to the locale. */
static gtl_figure digits(double count, int decimals)
{
    gtl_figure figure;
    long long left = llround(fabs(count));
    for (int i = decimals; i < 0; i++) left *= 10;
    if (left == 0) return (gtl_figure){"0"};
    char *end = figure.text + sizeof figure.text - 1, *at = end;
    *end = '\0';
    for (int i = 0; left > 0 || i <= decimals; i++) {
        if (i > 0 && i == decimals) *--at = '.';
        *--at = (char)('0' + left % 10);
        left /= 10;
    }
    if (count < 0) *--at = '-';
    memmove(figure.text, at, (size_t)(end - at) + 1);
    return figure;
}

static gtl_figure none(void)
{
    return (gtl_figure){"-"};
}

/* Which power of ten a number has: 0 from 1 up to 10. */
static int magnitude(double number)
{
    return (int)floor(log10(fabs(number)));
}

/* With a power of ten: 1.23e7. */
static gtl_figure power(double number, int decimals, gtl_rounding rounding)
{
    if (!isfinite(number)) return none();
    if (fpclassify(number) != FP_NORMAL) return digits(0, 0);
    int exponent = magnitude(number);
    double limit = pow(10, decimals + 1);
    double count = whole(scaled(number, decimals - exponent), rounding);
    if (fabs(count) >= limit) count = whole(scaled(number, decimals - ++exponent), rounding);
    gtl_figure figure, front = digits(count, decimals);
    snprintf(figure.text, sizeof figure.text, "%.20se%d", front.text, exponent);
    return figure;
}

/* With a fixed count of decimals, as long as that stays readable. */
static gtl_figure fixed(double number, int decimals, gtl_rounding rounding)
{
    if (!isfinite(number)) return none();
    if (fabs(number) >= PLAIN_LIMIT) return power(number, DIGITS - 1, rounding);
    return digits(whole(scaled(number, decimals), rounding), decimals);
}

/* With three digits that count. */
static gtl_figure significant(double number, gtl_rounding rounding)
{
    if (!isfinite(number)) return none();
    if (fpclassify(number) != FP_NORMAL) return digits(0, 0);
    int decimals = DIGITS - 1 - magnitude(number);
    if (decimals > MOST_DECIMALS) decimals = MOST_DECIMALS;
    bool carried = fabs(whole(scaled(number, decimals), rounding)) >= pow(10, DIGITS);
    return fixed(number, carried ? decimals - 1 : decimals, rounding);
}

gtl_figure gtl_figure_after(gtl_figure number, const char *unit)
{
    gtl_figure figure;
    snprintf(figure.text, sizeof figure.text, "%.24s %.6s", number.text, unit);
    return figure;
}

static void take_larger(double *largest, double candidate)
{
    if (fabs(candidate) > *largest) *largest = fabs(candidate);
}

static double largest_force(const gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    double largest = 0;
    for (int i = 0; i < sheet->component_count; i++) take_larger(&largest, sheet->components[i].demand);
    for (int i = 0; i < rig->thing_count; i++) take_larger(&largest, rig->things[i].weight);
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].possible) take_larger(&largest, sheet->outcomes[i].state->effort);
    return largest;
}

gtl_print_units gtl_print_units_for(const gtl_sheet *sheet)
{
    return gtl_print_units_plain(sheet->rig->us_units, largest_force(sheet));
}

gtl_print_units gtl_print_units_plain(bool us_units, double largest)
{
    if (us_units) {
        bool small = largest < LARGEST_IN_POUNDS * POUND_FORCE;
        return (gtl_print_units){.force = small ? "lbf" : "kip",
                                 .newtons = small ? POUND_FORCE : 1000 * POUND_FORCE,
                                 .length = "ft",
                                 .metres = FOOT,
                                 .length_decimals = 2,
                                 .width = "in",
                                 .width_metres = INCH,
                                 .mass = "lb",
                                 .kilograms = POUND,
                                 .kgf = false,
                                 .noise = largest * NOISE};
    }
    bool small = largest < LARGEST_IN_NEWTONS;
    return (gtl_print_units){.force = small ? "N" : "kN",
                             .newtons = small ? 1 : 1000,
                             .length = "m",
                             .metres = 1,
                             .length_decimals = 3,
                             .width = "mm",
                             .width_metres = 0.001,
                             .mass = "kg",
                             .kilograms = 1,
                             .kgf = true,
                             .noise = largest * NOISE};
}

bool gtl_is_one_force(const gtl_print_units *units, double one, double other)
{
    return fabs(one - other) <= fmax(units->noise, GTL_UTILISATION_SLACK * fmax(fabs(one), fabs(other)));
}

gtl_figure gtl_figure_force(const gtl_print_units *units, double newtons)
{
    return fabs(newtons) <= units->noise ? digits(0, 0) : significant(newtons / units->newtons, ROUND_UP);
}

gtl_figure gtl_figure_rating(const gtl_print_units *units, double newtons)
{
    return fabs(newtons) <= units->noise ? digits(0, 0) : significant(newtons / units->newtons, ROUND_DOWN);
}

gtl_figure gtl_figure_kgf(double newtons)
{
    bool none = fabs(newtons) < NOTHING;
    return significant(none ? 0 : newtons / KILOGRAM_FORCE, ROUND_UP);
}

gtl_figure gtl_figure_mass(const gtl_print_units *units, double kilograms)
{
    return significant(kilograms / units->kilograms, ROUND_UP);
}

gtl_figure gtl_figure_ratio(double ratio)
{
    return significant(ratio, ROUND_NEAREST);
}

gtl_figure gtl_figure_force_unit(const gtl_print_units *units, double newtons)
{
    return gtl_figure_after(gtl_figure_force(units, newtons), units->force);
}

gtl_figure gtl_figure_rating_unit(const gtl_print_units *units, double newtons)
{
    return gtl_figure_after(gtl_figure_rating(units, newtons), units->force);
}

gtl_figure gtl_figure_length(const gtl_print_units *units, double metres)
{
    return fixed(metres / units->metres, units->length_decimals, ROUND_NEAREST);
}

gtl_figure gtl_figure_length_unit(const gtl_print_units *units, double metres)
{
    return gtl_figure_after(gtl_figure_length(units, metres), units->length);
}

gtl_figure gtl_figure_length_up(const gtl_print_units *units, double metres)
{
    return fixed(metres / units->metres, units->length_decimals, ROUND_UP);
}

gtl_figure gtl_figure_length_down_unit(const gtl_print_units *units, double metres)
{
    return gtl_figure_after(fixed(metres / units->metres, units->length_decimals, ROUND_DOWN), units->length);
}

gtl_figure gtl_figure_place(const gtl_print_units *units, const double *at, int dim)
{
    gtl_figure place = gtl_figure_length(units, at[0]);
    for (int i = 1; i < dim; i++) {
        size_t used = strlen(place.text);
        snprintf(place.text + used, sizeof place.text - used, ", %.12s",
                 gtl_figure_length(units, at[i]).text);
    }
    return place;
}

gtl_figure gtl_figure_percent(double share)
{
    return fixed(share * 100, 1, ROUND_NEAREST);
}

gtl_figure gtl_figure_utilisation(double share)
{
    if (isinf(share)) return (gtl_figure){"not allowed"};
    return fixed(share * 100, 1, ROUND_UP);
}

gtl_figure gtl_figure_degrees(double radians)
{
    return fixed(radians * DEGREES_A_RADIAN, 1, ROUND_NEAREST);
}

/* Without zeros at the end of its decimals. */
static gtl_figure trimmed(gtl_figure figure)
{
    size_t length = strlen(figure.text);
    if (!strchr(figure.text, '.') || strchr(figure.text, 'e')) return figure;
    while (figure.text[length - 1] == '0') length--;
    if (figure.text[length - 1] == '.') length--;
    figure.text[length] = '\0';
    return figure;
}

gtl_figure gtl_figure_typed(double number)
{
    return trimmed(fixed(number, MOST_DECIMALS, ROUND_NEAREST));
}

gtl_figure gtl_figure_share(double share)
{
    if (isnan(share)) return (gtl_figure){"?"};
    return trimmed(fixed(share, MOST_DECIMALS, ROUND_DOWN));
}

gtl_figure gtl_figure_width_unit(const gtl_print_units *units, double metres)
{
    return gtl_figure_after(gtl_figure_typed(metres / units->width_metres), units->width);
}

gtl_figure gtl_figure_mass_unit(const gtl_print_units *units, double kilograms)
{
    return gtl_figure_after(gtl_figure_typed(kilograms / units->kilograms), units->mass);
}

/* A unit of volume. */
static double cube(const gtl_print_units *units)
{
    return units->metres * units->metres * units->metres;
}

gtl_figure gtl_figure_density(const gtl_print_units *units, double density)
{
    return fixed(density / units->kilograms * cube(units), units->kilograms == 1 ? 0 : 1, ROUND_UP);
}

gtl_figure gtl_figure_density_unit(const gtl_print_units *units, double density)
{
    char unit[16];
    snprintf(unit, sizeof unit, "%.4s/%.4s3", units->mass, units->length);
    return gtl_figure_after(gtl_figure_density(units, density), unit);
}

gtl_figure gtl_figure_volume_unit(const gtl_print_units *units, double volume)
{
    char unit[16];
    snprintf(unit, sizeof unit, "%.4s3", units->length);
    return gtl_figure_after(significant(volume / cube(units), ROUND_NEAREST), unit);
}

/* A figure in units of length a time: "0.5 m/s". */
static gtl_figure a_time(const gtl_print_units *units, double number, const char *time)
{
    char unit[16];
    snprintf(unit, sizeof unit, "%.4s/%.4s", units->length, time);
    return gtl_figure_after(gtl_figure_typed(number / units->metres), unit);
}

gtl_figure gtl_figure_speed_unit(const gtl_print_units *units, double speed)
{
    return a_time(units, speed, "s");
}

gtl_figure gtl_figure_acceleration_unit(const gtl_print_units *units, double acceleration)
{
    return a_time(units, acceleration, "s2");
}

gtl_figure gtl_figure_gravity(double gravity)
{
    return fixed(gravity, 5, ROUND_NEAREST);
}

gtl_figure gtl_figure_power(double number)
{
    return power(number, 1, ROUND_UP);
}
