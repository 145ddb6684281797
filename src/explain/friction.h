/* friction.h - by how much friction at each stop makes one part pull more than the other. */
#ifndef EXPLAIN_FRICTION_H
#define EXPLAIN_FRICTION_H

#include "explain/balance.h"

/* A ratio of two pulls, k1, k2 ..., of all stops that are alike. */
typedef struct gtl_ratio {
    int run;      /* the first stop that has it */
    double angle; /* of contact, whole turns included [rad] */
    double ratio; /* greater over lesser pull [1] */
} gtl_ratio;

typedef struct gtl_ratios {
    gtl_ratio *items;
    int count;
    int *of_run; /* one a run: index into items, -1: equal pulls */
} gtl_ratios;

/* Whether a stop is stated to rub. */
bool gtl_rubs(const gtl_thing *thing);

/* Whether raising is told: worked, possible, and some stop rubs. */
bool gtl_tells_friction(const gtl_lesson *lesson);

/* Find the ratios of a case. False without memory. Give back in either case. */
bool gtl_ratios_begin(gtl_ratios *ratios, const gtl_bodies *bodies);
void gtl_ratios_end(gtl_ratios *ratios);

/* The step of one ratio: where it comes from. */
void gtl_ratio_step(const gtl_bodies *bodies, const gtl_ratios *ratios, int index);

#endif
