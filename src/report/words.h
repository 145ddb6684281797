/* words.h - every sentence of a report that does not belong to one form alone. */
#ifndef REPORT_WORDS_H
#define REPORT_WORDS_H

#include "report/figures.h"
#include "report/names.h"
#include <gantline/rate.h>

/* Where sentences go, one call each; NULL where memory failed. */
typedef void gtl_sink(void *context, const char *sentence);

/* What a report can never be, in order; always the same. */
void gtl_words_cautions(gtl_sink *sink, void *context);

/* Why the verdict is not `within`. Of a list of names at most `most` are said, the rest counted. */
void gtl_words_why(const gtl_sheet *sheet, int most, gtl_sink *sink, void *context);

/* All that the verdict does not cover: unrated parts by name, then what is never checked. */
void gtl_words_not_checked(const gtl_sheet *sheet, gtl_sink *sink, void *context);

/* A warning as one or two sentences without the part's name. The caller frees it; NULL without memory. */
char *gtl_words_warning(const gtl_sheet *sheet, const gtl_print_units *units, const gtl_warning *warning);

/* What a warning means and what to do about it, at more length than its sentence; of every rig the same. */
const char *gtl_words_warning_help(gtl_warning_code code);

#endif
