/* census.h - how many of the random rigs hold what makes rigs hard; too few of a kind is a failure. */
#ifndef LAWS_CENSUS_H
#define LAWS_CENSUS_H

#include "laws/trial.h"

void census_count(const specimen *s);
/* Print the mix and judge it: at least 8 % of all rigs of each kind, where there are enough of them. */
void census_judge(int rigs, int *passed, int *failed);

#endif
