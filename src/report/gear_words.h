/* gear_words.h - what is stated of a piece of gear beside its ratings, in words. */
#ifndef REPORT_GEAR_WORDS_H
#define REPORT_GEAR_WORDS_H

#include "base/text.h"
#include "report/figures.h"

/* Append ", material polyester, diameter 12 mm ..."; nothing where nothing is stated. `dim` counts the
 * coordinates of an axis. */
void gtl_gear_words(gtl_text *text, const gtl_print_units *units, const gtl_gear *gear, int dim);

#endif
