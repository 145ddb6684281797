/* timber_words.h - pieces of green wood as parts of a document, for reports and for `gantline timber`. */
#ifndef REPORT_TIMBER_WORDS_H
#define REPORT_TIMBER_WORDS_H

#include "report/document.h"
#include "report/figures.h"
#include "report/words.h"

/* Append what was measured of a piece and what it holds, as a pair. `kind`: "load of ", or "". */
void gtl_compose_stem(gtl_document *document, const gtl_print_units *units, const char *label,
                      const char *kind, const gtl_timber *timber);

/* Append what a species' row says, or that a density was typed, as a pair. */
void gtl_compose_wood(gtl_document *document, const gtl_print_units *units, const char *label,
                      const gtl_timber *timber);

/* Begin a table of densities and masses, and append the rows of one piece; weights at that gravity [m/s2]. */
void gtl_compose_wood_table(gtl_document *document);
void gtl_compose_wood_rows(gtl_document *document, const gtl_print_units *units, const char *name,
                           const gtl_timber *timber, double gravity);

/* What no such figure holds, in order. `timber`: the one piece that it is about, NULL: several. */
void gtl_words_timber(const gtl_timber *timber, gtl_sink *sink, void *context);

#endif
