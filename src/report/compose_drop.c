/* compose_drop.c - a load that is caught after a fall: the peak, what it comes from, and how far to believe
 * it. */
#include "base/text.h"
#include "report/compose.h"

#include <math.h>
#include <stdlib.h>

/* A part of line that takes less than this of the load takes none of it [1]. */
#define NO_SHARE 1e-6

static void fall_words(gtl_composer *composer, const gtl_drop *drop)
{
    const gtl_thing *load = &composer->rig->things[drop->load];
    gtl_text text = {0};
    gtl_text_add(&text, "%s, %s", load->name, gtl_figure_force_unit(&composer->units, drop->weight).text);
    if (drop->weight > load->weight) gtl_text_add(&text, " with what is on it");
    if (drop->fall > 0)
        gtl_text_add(&text, ", falls %s free before its line begins to take it",
                     gtl_figure_length_unit(&composer->units, drop->fall).text);
    else
        gtl_text_add(&text, ", let go all at once with its line just taut");
    gtl_document_put(composer->document, GTL_PAIR, "Fall", &text);
}

static void peak_words(gtl_composer *composer, const gtl_drop *drop)
{
    const gtl_print_units *units = &composer->units;
    const gtl_line *catcher = &composer->rig->lines[drop->catcher];
    gtl_document_pair(composer->document, "Peak", "%s at the load, %s times its weight",
                      gtl_figure_force_unit(units, drop->peak).text,
                      gtl_figure_ratio(drop->peak / drop->weight).text);
    gtl_document_strong(composer->document);
    gtl_document_pair(composer->document, "Checked at",
                      "%s at the load: parts are held against their ratings at this, not at the peak",
                      gtl_figure_force_unit(units, drop->checked).text);
    gtl_document_strong(composer->document);
    gtl_document_pair(composer->document, "Stiffness",
                      "%s for each %s that the load goes down; %s until it is stopped",
                      gtl_figure_force_unit(units, drop->stiffness * units->metres).text, units->length,
                      gtl_figure_length_unit(units, drop->give).text);
    gtl_document_pair(composer->document, "Fall factor", "%s: the fall over the %s of %s that give",
                      gtl_figure_ratio(drop->fall_factor).text,
                      gtl_figure_length_unit(units, drop->lines[drop->catcher].elastic).text, catcher->name);
}

/* Whether running at all is worth anything: over a short way the rope stops it harder than by its stretch. */
static void run_words(gtl_composer *composer, const gtl_drop *drop)
{
    const gtl_thing *load = &composer->rig->things[drop->load];
    const gtl_print_units *units = &composer->units;
    gtl_text text = {0};
    if (isnan(drop->run_average)) return;
    gtl_text_add(&text, "stopped over %s of rope let run: %s on average, ",
                 gtl_figure_length_unit(units, load->run_out).text,
                 gtl_figure_force_unit(units, drop->run_average).text);
    if (drop->run_peak < drop->peak)
        gtl_text_add(&text, "%s at the most if it is held ever harder, as by a spring",
                     gtl_figure_force_unit(units, drop->run_peak).text);
    else
        gtl_text_add(&text, "and held ever harder, as by a spring, no less than the peak");
    gtl_text_add(&text, ". No part was checked at that: whether it runs so is in somebody's hands");
    gtl_document_put(composer->document, GTL_PAIR, "Let run", &text);
}

static void line_row(gtl_composer *composer, int index, const gtl_drop_line *line)
{
    const gtl_line *of = &composer->rig->lines[index];
    gtl_document_cell(composer->document, "%s %s", gtl_kind_name(of->kind), of->name);
    if (of->stretch > 0)
        gtl_document_cell(composer->document, "%s %% at %s", gtl_figure_typed(100 * of->stretch).text,
                          gtl_figure_force_unit(&composer->units, of->stretch_force).text);
    else
        gtl_document_cell(composer->document, "none stated");
    gtl_document_cell(composer->document, "%s", gtl_figure_length(&composer->units, line->elastic).text);
    gtl_document_cell(composer->document, "%s", gtl_figure_percent(line->share).text);
    gtl_document_cell(composer->document, "%s", gtl_figure_force(&composer->units, line->tension).text);
    gtl_document_cell(composer->document, "%s", gtl_figure_percent(line->stretch).text);
}

static void line_table(gtl_composer *composer, const gtl_drop *drop)
{
    const gtl_print_units *units = &composer->units;
    gtl_document_table(composer->document, &(gtl_column){"Line that catches", false}, 1);
    static const char *const heads[] = {"stretch stated", NULL, "takes, %", NULL, "stretched, %"};
    for (size_t i = 0; i < sizeof heads / sizeof *heads; i++) {
        gtl_text text = {0};
        if (i == 1) gtl_text_add(&text, "gives, %s", units->length);
        if (i == 3) gtl_text_add(&text, "peak, %s", units->force);
        char *made = gtl_text_take(&text);
        const char *head = heads[i] ? heads[i] : made;
        if (head) gtl_document_column(composer->document, &(gtl_column){head, i > 0}, false);
        if (!made) composer->document->failed = true;
        free(made);
    }
    for (int i = 0; i < composer->rig->line_count; i++)
        if (drop->lines[i].share > NO_SHARE) line_row(composer, i, &drop->lines[i]);
}

/* How far to believe it. */
static void trust(gtl_composer *composer)
{
    gtl_document_paragraph(
        composer->document,
        "The peak is that of a weight which falls onto a spring: W (1 + sqrt(1 + 2 h k / W)). Such figures "
        "were found 2 to 3 times too high in drop tests in trees (HSE RR668, 2008, chapter 8, as quoted), "
        "and "
        "up to 30 %% too low with rigid anchors (Weber, International Technical Rescue Symposium 2002). All "
        "anchors here are rigid, and what a tree gives nobody knows before: so parts are checked at the peak "
        "over 0.7.");
    gtl_document_paragraph(
        composer->document,
        "Tensions are equal all along a line here: friction found by slow pulls does not carry over to "
        "snatches (Kane and Reiland 2016). What gives is counted up to the first thing that the line is "
        "turned round (`turns`), else to its end. What states no stretch counts as stiff. Where the friction "
        "stated would keep the line beyond a stop from giving its share, parts are checked at the higher "
        "peak that this makes.");
}

void gtl_compose_drop(gtl_composer *composer)
{
    const gtl_outcome *outcome = gtl_sheet_outcome(composer->sheet, GTL_DROP);
    if (!outcome) return;
    gtl_document_heading(composer->document, "Drop");
    if (!outcome->possible) {
        gtl_document_paragraph(composer->document, "It could not be worked out: %s.", outcome->reason);
        return;
    }
    fall_words(composer, outcome->caught);
    peak_words(composer, outcome->caught);
    run_words(composer, outcome->caught);
    line_table(composer, outcome->caught);
    trust(composer);
}
