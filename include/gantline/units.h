/* units.h - a number and a unit, as typed, to SI. The only way in; the way back is in the report. */
#ifndef GANTLINE_UNITS_H
#define GANTLINE_UNITS_H

#include <gantline/fault.h>

/* Standard gravity, exact. Source: NIST SP 811. */
#define GTL_STANDARD_GRAVITY 9.80665 /* [m/s2] */

typedef enum gtl_quantity {
    GTL_MASS,         /* [kg] */
    GTL_FORCE,        /* [N]; a mass is taken times gravity, as tags on gear say it */
    GTL_LENGTH,       /* [m]; feet and inches may stand together: 16 ft 4 in */
    GTL_ANGLE,        /* [rad] */
    GTL_FRACTION,     /* [1]; % or bare */
    GTL_ACCELERATION, /* [m/s2] */
    GTL_SPEED,        /* [m/s] */
    GTL_TIME,         /* [s] */
    GTL_LINEAR_MASS,  /* [kg/m] */
    GTL_ELASTICITY,   /* [Pa] */
    GTL_DENSITY,      /* [kg/m3] */
    GTL_NUMBER,       /* [1]; bare only */
    GTL_WHOLE         /* [1]; a whole number, bare only */
} gtl_quantity;

/* The longest message gtl_parse_quantity writes, with its final zero. */
#define GTL_WHY_SIZE 200

/* Read `text` as a quantity of the kind wanted. `gravity` [m/s2] turns a mass into a force where a force
 * is wanted. On success *si holds the value in SI and *used_gravity (may be NULL) is set to true if
 * gravity went into it, else left alone. On failure false, and `why` says what is wrong and what to write
 * instead. No locale, no inf, nan, hexadecimal, or decimal comma. */
GTL_API bool gtl_parse_quantity(const char *text, gtl_quantity wanted, double gravity, double *si,
                                bool *used_gravity, char why[GTL_WHY_SIZE]);

/* The units a quantity may be typed in, blank-separated, for help texts: "kg g t lb". */
GTL_API const char *gtl_unit_names(gtl_quantity quantity);

#endif
