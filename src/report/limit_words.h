/* limit_words.h - sentences and masses of a limit, for every form of its report. */
#ifndef REPORT_LIMIT_WORDS_H
#define REPORT_LIMIT_WORDS_H

#include "report/figures.h"
#include "report/words.h"
#include <gantline/limit.h>

/* The sheet whose parts and units stand for both. */
const gtl_sheet *gtl_limit_sheet(const gtl_limit *limit);

/* A part by its kind and name; the component of either sheet. */
gtl_figure gtl_limit_part(const gtl_limit *limit, int component);

/* The mass of a load [kg] with the printed unit, kg or lb: of the heaviest load rounded down, of the lightest
 * up, as drawn to the nearest. Figures enough that a narrow range stays one. */
gtl_figure gtl_limit_mass_down(const gtl_limit *limit, double kilograms);
gtl_figure gtl_limit_mass_up(const gtl_limit *limit, double kilograms);
gtl_figure gtl_limit_mass_drawn(const gtl_limit *limit);

/* What bars the loads beyond an end of the range; NULL without memory. The caller frees it. */
char *gtl_limit_edge(const gtl_limit *limit, const gtl_edge *edge);

/* Why there is no heaviest load, likewise: none is permitted, or no rating is reached. */
char *gtl_limit_none(const gtl_limit *limit);

/* What bars the load as drawn, likewise. */
char *gtl_limit_barred(const gtl_limit *limit);

/* Why there is no limit, none that is permitted, none that a rating makes; why the load as drawn is not
 * permitted. */
void gtl_limit_why(const gtl_limit *limit, gtl_sink *sink, void *context);

/* What is unrated, undecided or not stated, so that no limit is whole. */
void gtl_limit_open(const gtl_limit *limit, gtl_sink *sink, void *context);

#endif
