/* route_words.h - the way of a line told in a sentence: where it begins, which way each part of it goes, on
 * which side it turns, and what the parts carry. */
#ifndef REPORT_ROUTE_WORDS_H
#define REPORT_ROUTE_WORDS_H

#include "base/text.h"
#include "report/figures.h"
#include <gantline/rate.h>

/* One case as it is told. */
typedef struct gtl_scene {
    const gtl_sheet *sheet;
    const gtl_outcome *outcome;
    const gtl_rig *rig; /* what is told: the case's own; the file's where the case cannot be */
    gtl_print_units units;
    bool figures; /* false: the case cannot be, the rig is told as drawn and without forces */
} gtl_scene;

/* Append the sentences for a line. */
void gtl_add_route(gtl_text *text, const gtl_scene *scene, int line);

#endif
