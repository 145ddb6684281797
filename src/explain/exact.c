/* exact.c - figures of equations: to the nearest, since an equation has to hold to its printed digits. */
#include "explain/lesson.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define DIGITS      4
#define NOISE       1e-9              /* what is rounding of the arithmetic, not the rig's [1] */
#define FULL_CIRCLE 6.283185307179586 /* [rad] */

/* Behind the point: as many as make four digits in all, but one at least. */
static int decimals(double number)
{
    int before = (int)floor(log10(fabs(number))) + 1;
    int behind = DIGITS - before;
    return behind < 1 ? 1 : behind > 9 ? 9 : behind;
}

static gtl_figure rounded(double number)
{
    gtl_figure figure = {"0"};
    if (!isfinite(number))
        snprintf(figure.text, sizeof figure.text, "-");
    else if (fabs(number) > NOISE)
        snprintf(figure.text, sizeof figure.text, "%.*f", decimals(number), number);
    return figure;
}

gtl_figure gtl_exact_number(double number)
{
    gtl_figure figure;
    double whole = round(number);
    if (!isfinite(number) || fabs(number - whole) > NOISE * fmax(1, fabs(whole)) || fabs(whole) > 1e6)
        return rounded(number);
    snprintf(figure.text, sizeof figure.text, "%.0f", whole == 0 ? 0.0 : whole);
    return figure;
}

gtl_figure gtl_exact_force(const gtl_lesson *lesson, double newtons)
{
    bool none = fabs(newtons) <= lesson->units.noise;
    return gtl_figure_after(rounded(none ? 0 : newtons / lesson->units.newtons), lesson->units.force);
}

gtl_figure gtl_exact_length(const gtl_lesson *lesson, double metres)
{
    return gtl_figure_after(rounded(metres / lesson->units.metres), lesson->units.length);
}

gtl_figure gtl_exact_work(const gtl_lesson *lesson, double joules)
{
    const gtl_print_units *units = &lesson->units;
    char name[24];
    bool metric = strcmp(units->length, "m") == 0;
    if (metric)
        snprintf(name, sizeof name, "%s", strcmp(units->force, "kN") == 0 ? "kJ" : "J");
    else
        snprintf(name, sizeof name, "%s %s", units->length, units->force);
    bool none = fabs(joules) <= units->noise * units->metres;
    return gtl_figure_after(rounded(none ? 0 : joules / (units->newtons * units->metres)), name);
}

gtl_figure gtl_exact_percent(double share)
{
    gtl_figure figure;
    snprintf(figure.text, sizeof figure.text, "%.1f %%", share * 100);
    return figure;
}

gtl_figure gtl_exact_degrees(double radians)
{
    gtl_figure figure;
    snprintf(figure.text, sizeof figure.text, "%.1f deg", radians * 360 / FULL_CIRCLE);
    return figure;
}
