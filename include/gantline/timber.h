/* timber.h - the mass of a piece of green wood: its volume by the formula that fits what was measured, and
 * the density of its species, which nobody knows well. */
#ifndef GANTLINE_TIMBER_H
#define GANTLINE_TIMBER_H

#include <gantline/hardware.h>

/* How the volume follows from the diameters that were measured. A1, A2: the areas at the ends, Am: halfway
 * along, L: the length. */
typedef enum gtl_stem_formula {
    GTL_HUBER,   /* L Am, of one diameter */
    GTL_SMALIAN, /* L (A1 + A2) / 2, of both ends; more than a cone frustum of these ends holds */
    GTL_NEWTON,  /* L (A1 + 4 Am + A2) / 6, of all three */
    GTL_STEM_FORMULA_COUNT
} gtl_stem_formula;

/* "Huber", "Smalian" or "Newton". */
GTL_API const char *gtl_stem_formula_name(gtl_stem_formula formula);

/* An end of the spread of a density, or its middle. The heavy one is first: what nobody settles is heavy. */
typedef enum gtl_wood_end { GTL_WOOD_HEAVY, GTL_WOOD_MEAN, GTL_WOOD_LIGHT, GTL_WOOD_END_COUNT } gtl_wood_end;

/* "heavy", "mean" or "light". */
GTL_API const char *gtl_wood_end_name(gtl_wood_end end);

/* The density of a wood's own substance, without any hollow: what none can be over. Source: Wood Handbook,
 * USDA Forest Service FPL-GTR-282, specific gravity 1.54 [kg/m3]. */
#define GTL_WOOD_SUBSTANCE 1540.0
/* Below this is no green wood: a density in lb/ft3 that was given kg/m3 is [kg/m3]. */
#define GTL_WOOD_LIGHTEST 100.0

/* How far a published density goes wrong: "by 20 % or more", by sapwood, season and decay [1]. */
#define GTL_WOOD_SPREAD 1.2

/* One piece: what was measured, what it is of, and what follows. */
typedef struct gtl_timber {
    double length;       /* [m] */
    int diameter_count;  /* 1: halfway; 2: at both ends; 3: end, halfway, end */
    double diameters[3]; /* as measured [m] */
    double bark;         /* its thickness, where they were measured under it [m]; NaN: they are over it */

    const gtl_hardware_row *row; /* of its species; NULL: its density was typed */
    double typed[2];             /* that density, least and most; alike where it is one figure [kg/m3] */
    gtl_wood_end end;            /* what is worked with */

    gtl_stem_formula formula;
    double volume;                        /* by that formula, bark included [m3] */
    double frustum;                       /* of a cone's frustum with these ends [m3]; NaN: not both known */
    double densities[GTL_WOOD_END_COUNT]; /* [kg/m3] */
    double soaked;                        /* with every hollow full of water [kg/m3]; NaN: not known */
    double masses[GTL_WOOD_END_COUNT];    /* [kg] */
} gtl_timber;

/* From what was measured, and `row` or `typed`, to all below `end`. NaN where something is missing. */
GTL_API void gtl_timber_work(gtl_timber *timber);

/* Whether the diameter halfway lies outside those of the ends: they may be typed in another order. */
GTL_API bool gtl_is_waisted(const gtl_timber *timber);

/* The density of wood of a basic specific gravity [1] when every hollow in it is full of water [kg/m3]; a
 * piece of denser wood than its species has on average weighs a little more. NaN for NaN. */
GTL_API double gtl_wood_soaked(double specific_gravity);

#endif
