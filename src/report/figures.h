/* figures.h - SI numbers to printed figures, the only way back from SI.
 *
 * The direction of rounding never flatters a rig: forces and utilisations go up, ratings and margins down,
 * all else to the nearest. What differs from a round figure by rounding noise only (GTL_UTILISATION_SLACK) is
 * that figure. A number that is none prints as `-`. No locale. */
#ifndef REPORT_FIGURES_H
#define REPORT_FIGURES_H

#include <gantline/rate.h>

/* A printed figure. Handed over by value, so that a call can stand among printf's arguments. */
typedef struct gtl_figure {
    char text[48];
} gtl_figure;

/* The units of one report: the same for every force in it. */
typedef struct gtl_print_units {
    const char *force;
    double newtons; /* one unit of force [N] */
    const char *length;
    double metres;       /* one unit of length [m] */
    int length_decimals; /* of places and distances */
    const char *width;   /* of ropes, sheaves and pins */
    double width_metres; /* one unit of width [m] */
    const char *mass;
    double kilograms; /* one unit of mass [kg] */
    bool kgf;         /* kilograms-force stand beside forces that hands and anchors feel */
    double noise;     /* a force of this size is none [N] */
} gtl_print_units;

/* The units for a sheet: metric or US as the rig says, small or large as its largest force asks. */
gtl_print_units gtl_print_units_for(const gtl_sheet *sheet);
/* The same where there is no sheet: `largest` is the largest force [N]. */
gtl_print_units gtl_print_units_plain(bool us_units, double largest);

/* Whether two forces differ by rounding alone. */
bool gtl_is_one_force(const gtl_print_units *units, double one, double other);

/* Three digits each; a force in its unit, without the unit's name. */
gtl_figure gtl_figure_force(const gtl_print_units *units, double newtons);  /* up, away from zero */
gtl_figure gtl_figure_rating(const gtl_print_units *units, double newtons); /* down; margins too */
gtl_figure gtl_figure_kgf(double newtons);                                  /* up, away from zero */
gtl_figure gtl_figure_ratio(double ratio);                                  /* to the nearest */
gtl_figure gtl_figure_mass(const gtl_print_units *units, double kilograms); /* up */

/* As typed: up to four decimals, without idle zeros. */
gtl_figure gtl_figure_typed(double number);

/* What is left of a rating, down to four decimals, without idle zeros; a number that is none is `?` [1]. */
gtl_figure gtl_figure_share(double share);

/* Five decimals, which g is defined to [m/s2]. */
gtl_figure gtl_figure_gravity(double gravity);

/* What is worked out of timber: a density is whole, or in pounds to one decimal, and goes up; a volume to the
 * nearest. */
gtl_figure gtl_figure_density(const gtl_print_units *units, double density);      /* [kg/m3] */
gtl_figure gtl_figure_density_unit(const gtl_print_units *units, double density); /* [kg/m3] */
gtl_figure gtl_figure_volume_unit(const gtl_print_units *units, double volume);   /* [m3] */

/* A figure with a unit or sign behind it. */
gtl_figure gtl_figure_after(gtl_figure number, const char *unit);

/* The same with the unit's name: "1.25 kN". */
gtl_figure gtl_figure_force_unit(const gtl_print_units *units, double newtons);
gtl_figure gtl_figure_rating_unit(const gtl_print_units *units, double newtons);
gtl_figure gtl_figure_length_unit(const gtl_print_units *units, double metres);

/* As typed, with the unit's name. */
gtl_figure gtl_figure_width_unit(const gtl_print_units *units, double metres);
gtl_figure gtl_figure_mass_unit(const gtl_print_units *units, double kilograms);
gtl_figure gtl_figure_speed_unit(const gtl_print_units *units, double speed);               /* [m/s] */
gtl_figure gtl_figure_acceleration_unit(const gtl_print_units *units, double acceleration); /* [m/s2] */

gtl_figure gtl_figure_length(const gtl_print_units *units, double metres);            /* to the nearest */
gtl_figure gtl_figure_length_up(const gtl_print_units *units, double metres);         /* up */
gtl_figure gtl_figure_length_down_unit(const gtl_print_units *units, double metres);  /* down */
gtl_figure gtl_figure_place(const gtl_print_units *units, const double *at, int dim); /* "1.5, 2" likewise */
gtl_figure gtl_figure_percent(double share);     /* one decimal, to the nearest */
gtl_figure gtl_figure_utilisation(double share); /* per cent, one decimal, up; infinite: not allowed */
gtl_figure gtl_figure_degrees(double radians);   /* one decimal, to the nearest */
gtl_figure gtl_figure_power(double number);      /* 1.2e-14, of any size, up */

#endif
