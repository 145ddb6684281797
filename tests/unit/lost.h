/* lost.h - what the loss of a part comes to in a rated rig, by the case's name, for tests. */
#ifndef UNIT_LOST_H
#define UNIT_LOST_H

#include "unit/rated.h"

/* The case of that name; fails where there is none, or, if so asked for, where it cannot be. */
const gtl_outcome *outcome_of(const rated *rig, const char *name);
const gtl_outcome *possible_outcome(const rated *rig, const char *name);

/* What a case demands of a part [N]. */
double demand_in(const rated *rig, const char *outcome, const char *name);
/* The tension of a part of a line, by the numbers that they have in the file [N]. */
double tension_in(const rated *rig, const char *outcome, int line, int part);
/* A coordinate of a thing [m]. */
double place_in(const rated *rig, const char *outcome, const char *name, int axis);
bool is_loose(const rated *rig, const char *outcome, const char *name);

/* Within 1e-9 of a metre. */
void assert_place(double value, double wanted);

#endif
