/* beam.h - what comes down on the lines that hold a level beam. Pure mechanics: no rig, no memory, SI.
 *
 * Reactions are what a line carries, upwards on the beam. Supports stand in rising order. */
#ifndef RIG_BEAM_H
#define RIG_BEAM_H

#include <stdbool.h>

/* The most supports of one beam. */
#define GTL_BEAM_MOST 64

/* What hangs on a beam, spread evenly; `from` and `to` alike: in one point. */
typedef struct gtl_beam_load {
    double weight; /* all of it [N] */
    double from;   /* from the beam's first end [m] */
    double to;     /* likewise, not less [m] */
} gtl_beam_load;

typedef struct gtl_beam {
    const double *at; /* one a support, rising: from the beam's first end [m] */
    int support_count;
    const gtl_beam_load *loads; /* its own weight among them */
    int load_count;
    double length; /* [m] */
} gtl_beam;

/* All that hangs [N]. */
double gtl_beam_weight(const gtl_beam *beam);

/* The centre of gravity, from the first end [m]; NaN where nothing hangs. */
double gtl_beam_centre(const gtl_beam *beam);

/* A continuous beam on supports that do not give and can push as well: by the three-moment equations. `lift`,
 * one a support, is how far it stands above level times the beam's bending stiffness [N m3]; NULL: all level.
 * With one support it carries all. */
void gtl_beam_on_props(const gtl_beam *beam, const double *lift, double *reaction);

/* The same on lines, which cannot push: one that would have to is slack, its reaction is 0, and the beam is
 * above its level there. False where the centre of gravity is not between the outermost lines, so that the
 * beam tips; `reaction` is not to be read then. */
bool gtl_beam_on_lines(const gtl_beam *beam, const double *lift, double *reaction);

/* A bar that does not bend, on lines that all give alike and cannot push. False likewise. */
bool gtl_beam_on_springs(const gtl_beam *beam, double *reaction);

#endif
