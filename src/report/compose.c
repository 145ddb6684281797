/* compose.c - a sheet into a document: the sections in order, and what they share. */
#include "report/compose.h"
#include "base/text.h"
#include "report/geometry.h"
#include "report/words.h"

#include <math.h>
#include <stdio.h>

/* Losses in one band of a table. */
#define LOSSES_A_BAND 4

static void (*const sections[])(gtl_composer *) = {
    gtl_compose_head,        gtl_compose_understood, gtl_compose_timber,   gtl_compose_cases,
    gtl_compose_battens,     gtl_compose_effort,     gtl_compose_band,     gtl_compose_turns,
    gtl_compose_drop,        gtl_compose_lines,      gtl_compose_blocks,   gtl_compose_joints,
    gtl_compose_anchors,     gtl_compose_guides,     gtl_compose_balance,  gtl_compose_places,
    gtl_compose_rope_bill,   gtl_compose_components, gtl_compose_chains,   gtl_compose_ratings,
    gtl_compose_gear_rows,   gtl_compose_use,        gtl_compose_sources,  gtl_compose_warnings,
    gtl_compose_not_checked, gtl_compose_method,     gtl_compose_cautions,
};

void gtl_compose(const gtl_sheet *sheet, gtl_document *document)
{
    gtl_composer composer = {
        .sheet = sheet, .rig = sheet->rig, .units = gtl_print_units_for(sheet), .document = document};
    for (size_t i = 0; i < sizeof sections / sizeof *sections; i++) sections[i](&composer);
}

/* Which loss an outcome is, from 1 on; 0: none. */
static int loss_number(const gtl_sheet *sheet, int outcome)
{
    int number = 0;
    for (int i = 0; i <= outcome; i++) number += sheet->outcomes[i].kind == GTL_LOST;
    return sheet->outcomes[outcome].kind == GTL_LOST ? number : 0;
}

gtl_figure gtl_compose_case(const gtl_sheet *sheet, int outcome)
{
    gtl_figure name;
    int number = loss_number(sheet, outcome);
    if (number > 0)
        snprintf(name.text, sizeof name.text, "loss %d", number);
    else
        snprintf(name.text, sizeof name.text, "%s", gtl_case_name(sheet->outcomes[outcome].kind));
    return name;
}

void gtl_compose_case_table(gtl_composer *composer, const char *first)
{
    const gtl_sheet *sheet = composer->sheet;
    gtl_document_table(composer->document, &(gtl_column){first, false}, 1);
    for (int i = 0; i < sheet->outcome_count; i++) {
        gtl_figure head = gtl_compose_case(sheet, i);
        bool apart = loss_number(sheet, i) % LOSSES_A_BAND == 1;
        gtl_document_column(composer->document, &(gtl_column){head.text, true}, apart);
    }
}

void gtl_compose_case_row(gtl_composer *composer, gtl_case_figure *figure, int index, const char *label, ...)
{
    gtl_text text = {0};
    va_list arguments;
    va_start(arguments, label);
    gtl_text_add_list(&text, label, arguments);
    va_end(arguments);
    gtl_document_put_cell(composer->document, &text);
    for (int i = 0; i < composer->sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &composer->sheet->outcomes[i];
        gtl_document_cell(composer->document, "%s",
                          outcome->possible ? figure(composer, outcome, index).text : "-");
    }
}

gtl_figure gtl_compose_demand(const gtl_composer *composer, const gtl_outcome *outcome, int index)
{
    const gtl_component *part = &composer->sheet->components[index];
    bool loose = part->kind < GTL_ROPE && gtl_is_loose(outcome, part->index);
    return gtl_figure_force(&composer->units, loose ? NAN : outcome->demand[index]);
}

void gtl_compose_bullet(void *composer, const char *sentence)
{
    gtl_composer *self = composer;
    if (sentence)
        gtl_document_bullet(self->document, "%s", sentence);
    else
        self->document->failed = true;
}

void gtl_compose_join(gtl_text *whole, const char *between, const char *sentence)
{
    if (sentence)
        gtl_text_add(whole, "%s%s", whole->length > 0 ? between : "", sentence);
    else
        whole->failed = true;
}

/* A sink for words.h. */
static void add_caution(void *text, const char *sentence)
{
    gtl_compose_join(text, " ", sentence);
}

void gtl_compose_put_cautions(gtl_composer *composer, gtl_element_kind kind, const char *label)
{
    gtl_text text = {0};
    gtl_words_cautions(add_caution, &text);
    gtl_document_put(composer->document, kind, label, &text);
}

bool gtl_compose_has_hand(const gtl_rig *rig)
{
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_HAND) return true;
    return false;
}

const gtl_component *gtl_compose_worst(const gtl_sheet *sheet)
{
    const gtl_component *worst = NULL;
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *part = &sheet->components[i];
        if (!isnan(part->utilisation) && (!worst || part->utilisation > worst->utilisation)) worst = part;
    }
    return worst;
}
