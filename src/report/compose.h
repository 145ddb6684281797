/* compose.h - a sheet into a document. The sections stand in compose.c in their order; each has a function,
 * and the files compose_*.c hold them by subject. Nothing here computes a force. */
#ifndef REPORT_COMPOSE_H
#define REPORT_COMPOSE_H

#include "report/document.h"
#include "report/figures.h"
#include <gantline/rate.h>

/* What every section is composed from. */
typedef struct gtl_composer {
    const gtl_sheet *sheet;
    const gtl_rig *rig;
    gtl_print_units units;
    gtl_document *document;
} gtl_composer;

/* Compose the whole report; `document` is empty before. Look at document->failed afterwards. */
void gtl_compose(const gtl_sheet *sheet, gtl_document *document);

/* --- the sections --- */

void gtl_compose_head(gtl_composer *composer);
void gtl_compose_understood(gtl_composer *composer);
void gtl_compose_timber(gtl_composer *composer);
/* In the head: what was worked lighter than it may be. */
void gtl_compose_light_timber(gtl_composer *composer, int most_names);
void gtl_compose_cases(gtl_composer *composer);
void gtl_compose_effort(gtl_composer *composer);
void gtl_compose_drop(gtl_composer *composer);
void gtl_compose_band(gtl_composer *composer);
void gtl_compose_turns(gtl_composer *composer);
void gtl_compose_lines(gtl_composer *composer);
void gtl_compose_blocks(gtl_composer *composer);
void gtl_compose_joints(gtl_composer *composer);
void gtl_compose_anchors(gtl_composer *composer);
void gtl_compose_guides(gtl_composer *composer);
void gtl_compose_balance(gtl_composer *composer);
void gtl_compose_battens(gtl_composer *composer);
void gtl_compose_places(gtl_composer *composer);
void gtl_compose_rope_bill(gtl_composer *composer);
void gtl_compose_components(gtl_composer *composer);
void gtl_compose_chains(gtl_composer *composer);
void gtl_compose_ratings(gtl_composer *composer);
void gtl_compose_gear_rows(gtl_composer *composer);
void gtl_compose_use(gtl_composer *composer);
void gtl_compose_sources(gtl_composer *composer);
void gtl_compose_warnings(gtl_composer *composer);
void gtl_compose_not_checked(gtl_composer *composer);
void gtl_compose_method(gtl_composer *composer);
void gtl_compose_cautions(gtl_composer *composer);

/* compose_battens.c: a batten as it was read, one pair. */
void gtl_compose_batten_pair(gtl_composer *composer, const gtl_batten *batten);

/* --- shared by them --- */

/* A figure of one outcome for item `index`; only asked of an outcome that can be. */
typedef gtl_figure gtl_case_figure(const gtl_composer *composer, const gtl_outcome *outcome, int index);

/* What a case is called where room is short: "raise"; a loss by its number, "loss 1". */
gtl_figure gtl_compose_case(const gtl_sheet *sheet, int outcome);

/* A table with a column a case worked; `first` heads the first one. */
void gtl_compose_case_table(gtl_composer *composer, const char *first);

/* A row of it, its label in printf's format. Cells of a case that cannot be are `-`. */
void gtl_compose_case_row(gtl_composer *composer, gtl_case_figure *figure, int index, const char *label, ...)
    GTL_PRINTF(4, 5);

/* The demand of a component in one case; `index` into the sheet's components. */
gtl_figure gtl_compose_demand(const gtl_composer *composer, const gtl_outcome *outcome, int index);

/* A sink for words.h: each sentence a bullet. */
void gtl_compose_bullet(void *composer, const char *sentence);

/* Add a sentence to others; NULL where memory failed. */
void gtl_compose_join(gtl_text *whole, const char *between, const char *sentence);

/* The cautions as one paragraph, or one pair with its label. */
void gtl_compose_put_cautions(gtl_composer *composer, gtl_element_kind kind, const char *label);

/* Whether anybody hauls, be it with a known pull. */
bool gtl_compose_has_hand(const gtl_rig *rig);

/* The component that governs: rated, with the greatest utilisation; NULL for none. */
const gtl_component *gtl_compose_worst(const gtl_sheet *sheet);

#endif
