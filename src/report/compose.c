/* compose.c - a sheet into a document: the sections in order, and what they share. */
#include "report/compose.h"
#include "base/text.h"
#include "report/words.h"

#include <math.h>

static void (*const sections[])(gtl_composer *) = {
    gtl_compose_head,        gtl_compose_understood, gtl_compose_effort,   gtl_compose_lines,
    gtl_compose_blocks,      gtl_compose_joints,     gtl_compose_anchors,  gtl_compose_guides,
    gtl_compose_places,      gtl_compose_components, gtl_compose_ratings,  gtl_compose_warnings,
    gtl_compose_not_checked, gtl_compose_method,     gtl_compose_cautions,
};

void gtl_compose(const gtl_sheet *sheet, gtl_document *document)
{
    gtl_composer composer = {
        .sheet = sheet, .rig = sheet->rig, .units = gtl_print_units_for(sheet), .document = document};
    for (size_t i = 0; i < sizeof sections / sizeof *sections; i++) sections[i](&composer);
}

void gtl_compose_case_table(gtl_composer *composer, const char *first)
{
    gtl_column columns[1 + GTL_CASE_COUNT] = {{first, false}};
    int count = 1;
    for (int i = 0; i < composer->sheet->outcome_count; i++)
        columns[count++] = (gtl_column){gtl_case_name(composer->sheet->outcomes[i].kind), true};
    gtl_document_table(composer->document, columns, count);
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
    return gtl_figure_force(&composer->units, outcome->demand[index]);
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
