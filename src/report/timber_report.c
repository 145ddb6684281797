/* timber_report.c - one piece of green wood by itself, as text or as JSON. */
#include "report/json_timber.h"
#include "report/json_value.h"
#include "report/timber_words.h"
#include "report/write.h"

#include <gantline/report.h>
#include <gantline/units.h>
#include <gantline/version.h>
#include <stdlib.h>

#define FORMAT "gantline-timber-1"

/* A sink for words.h. */
static void add_bullet(void *document, const char *sentence)
{
    gtl_document_bullet(document, "%s", sentence);
}

static char *as_text(const gtl_timber *timber, bool us_units)
{
    gtl_print_units units =
        gtl_print_units_plain(us_units, timber->masses[GTL_WOOD_HEAVY] * GTL_STANDARD_GRAVITY);
    gtl_document document = {0};
    gtl_document_title(&document, 2, timber->row ? timber->row->name : "Timber");
    gtl_compose_stem(&document, &units, "Piece", "", timber);
    gtl_compose_wood(&document, &units, "Density", timber);
    if (timber->row)
        gtl_document_pair(&document, "Source", "%s [%s; %s]",
                          timber->row->source[0] ? timber->row->source : "none is stated", timber->row->seen,
                          timber->row->file);
    gtl_compose_wood_table(&document);
    gtl_compose_wood_rows(&document, &units, "Piece", timber, GTL_STANDARD_GRAVITY);
    gtl_document_paragraph(&document,
                           "Plan with the heavy end. Masses and weights are rounded up; g = %s m/s2.",
                           gtl_figure_gravity(GTL_STANDARD_GRAVITY).text);
    gtl_document_heading(&document, "Not in these figures");
    gtl_words_timber(timber, add_bullet, &document);
    char *text = document.failed ? NULL : gtl_write_text(&document);
    gtl_document_end(&document);
    return text;
}

static char *as_json(const gtl_timber *timber)
{
    json_t *whole = json_pack("{s:s, s:o, s:o, s:o, s:o}", "format", FORMAT, "program",
                              json_sprintf("gantline %s", gtl_version()), "gravity",
                              gtl_json_number(GTL_STANDARD_GRAVITY), "timber", gtl_json_timber(timber),
                              "weight", gtl_json_spread(timber->masses, GTL_STANDARD_GRAVITY));
    return gtl_json_written(whole);
}

char *gtl_timber_report(const gtl_timber *timber, gtl_form form, bool us_units)
{
    return form == GTL_JSON ? as_json(timber) : as_text(timber, us_units);
}
