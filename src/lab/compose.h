/* compose.h - a lab as a document, piece by piece. Nothing here computes what a reading comes to. */
#ifndef LAB_COMPOSE_H
#define LAB_COMPOSE_H

#include "report/document.h"
#include "report/figures.h"
#include <gantline/lab.h>

/* The factor of coverage that is meant by U [1]. */
#define GTL_LAB_COVERAGE 2.0

/* Compose the whole document. Figures need room and are left out of the text form. */
void gtl_lab_compose(const gtl_lab *lab, gtl_document *document);

/* --- its sections, each with its heading, or nothing where there is nothing to say --- */

void gtl_lab_compose_findings(const gtl_lab *lab, gtl_document *document);
void gtl_lab_compose_set_ups(const gtl_lab *lab, gtl_document *document);
void gtl_lab_compose_readings(const gtl_lab *lab, gtl_document *document);
void gtl_lab_compose_work(const gtl_lab *lab, gtl_document *document);
void gtl_lab_compose_prediction(const gtl_lab *lab, gtl_document *document);
void gtl_lab_compose_notes(gtl_document *document);

/* --- figures: appended to the document, or nothing where no row can be drawn --- */

void gtl_lab_plot_effort(const gtl_lab *lab, gtl_document *document);
void gtl_lab_plot_efficiency(const gtl_lab *lab, gtl_document *document);

/* --- words --- */

/* "line 7, group Blue"; "set-up B (3 parts)"; `capital`: it begins a sentence. */
void gtl_lab_add_row(gtl_text *text, const gtl_lab_row *row, bool capital);
void gtl_lab_add_set_up(gtl_text *text, const gtl_lab *lab, int set_up, bool capital);

/* "3 parts", or the rig's file. */
void gtl_lab_add_name(gtl_text *text, const gtl_lab_set_up *set_up);

/* What a finding says, with its figures; what to look at first. */
void gtl_lab_say_finding(gtl_text *text, const gtl_lab *lab, const gtl_lab_finding *finding);
const char *gtl_lab_look_first(gtl_lab_code code);

/* In a few words: "distances swapped". */
const char *gtl_lab_finding_title(gtl_lab_code code);

/* "1 row", "2 rows": a count with its noun. */
gtl_figure gtl_lab_count(int count, const char *noun);

/* As typed: up to six digits that count, without idle zeros; a number that is none is `-`. */
gtl_figure gtl_lab_typed(double number);
gtl_figure gtl_lab_newtons(double newtons); /* with its unit */

/* The first finding that bars a row from the mean, NULL where none does. */
const gtl_lab_finding *gtl_lab_bar(const gtl_lab *lab, const gtl_lab_row *row);

/* U of the effort, half of what its bar spans [N]; NaN: not stated. */
double gtl_lab_effort_coverage(const gtl_lab_row *row);

#endif
