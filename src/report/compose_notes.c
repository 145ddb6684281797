/* compose_notes.c - what to know about the figures: warnings, what is not checked, method, cautions. */
#include "base/text.h"
#include "report/compose.h"
#include "report/names.h"
#include "report/words.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* --- warnings: one bullet for all parts that are told the same --- */

/* The sentences of all warnings, NULL without memory. */
static char **sentences_of(const gtl_composer *composer)
{
    const gtl_sheet *sheet = composer->sheet;
    char **sentences = calloc((size_t)sheet->warning_count + 1, sizeof *sentences);
    if (!sentences) return NULL;
    for (int i = 0; i < sheet->warning_count; i++) {
        sentences[i] = gtl_words_warning(sheet, &composer->units, &sheet->warnings[i]);
        if (!sentences[i]) composer->document->failed = true;
    }
    return sentences;
}

/* One bullet for warning `first` and all later ones that say the same; those are told thereby. */
static void bullet(gtl_composer *composer, char **sentences, bool *told, int first)
{
    const gtl_sheet *sheet = composer->sheet;
    gtl_warning_code code = sheet->warnings[first].code;
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = GTL_ALL_NAMES};
    gtl_text_add(&text, "[%s] ", gtl_warning_name(code));
    for (int i = first; i < sheet->warning_count; i++) {
        if (told[i] || sheet->warnings[i].code != code || strcmp(sentences[i], sentences[first]) != 0)
            continue;
        told[i] = true;
        if (sheet->warnings[i].about[0]) gtl_names_add(&names, sheet->warnings[i].about);
    }
    gtl_names_end(&names);
    gtl_text_add(&text, "%s%s", names.count > 0 ? ": " : "", sentences[first]);
    gtl_document_put(composer->document, GTL_BULLET, NULL, &text);
}

/* What each code means, once, in the order of the codes. */
static void explain(gtl_composer *composer)
{
    const gtl_sheet *sheet = composer->sheet;
    bool found[GTL_WARN_COUNT] = {false};
    for (int i = 0; i < sheet->warning_count; i++) found[sheet->warnings[i].code] = true;
    for (gtl_warning_code code = 0; code < GTL_WARN_COUNT; code++)
        if (found[code])
            gtl_document_note(composer->document, gtl_warning_name(code), gtl_words_warning_help(code));
}

void gtl_compose_warnings(gtl_composer *composer)
{
    int count = composer->sheet->warning_count;
    gtl_document_heading(composer->document, "Warnings");
    if (count == 0) gtl_document_paragraph(composer->document, "None.");
    char **sentences = sentences_of(composer);
    bool *told = calloc((size_t)count + 1, sizeof *told);
    if (!sentences || !told) composer->document->failed = true;
    for (int i = 0; i < count && !composer->document->failed; i++)
        if (!told[i]) bullet(composer, sentences, told, i);
    explain(composer);
    for (int i = 0; sentences && i < count; i++) free(sentences[i]);
    free(sentences);
    free(told);
}

/* --- the rest --- */

void gtl_compose_not_checked(gtl_composer *composer)
{
    gtl_document_heading(composer->document, "NOT CHECKED");
    gtl_words_not_checked(composer->sheet, gtl_compose_bullet, composer);
}

static double worst_residual(const gtl_sheet *sheet)
{
    double worst = 0;
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].possible) worst = fmax(worst, sheet->outcomes[i].state->residual);
    return worst;
}

void gtl_compose_method(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    gtl_document_heading(composer->document, "How this was computed");
    gtl_document_paragraph(
        composer->document,
        "Statics of the rig as it really hangs, no rule of thumb; hold without friction, raise "
        "and lower with it, each case by itself.");
    gtl_document_paragraph(composer->document,
                           "Checked by another road: worst imbalance %s of the rig's weight and size.",
                           gtl_figure_power(worst_residual(composer->sheet)).text);
    gtl_document_paragraph(composer->document,
                           "g = %s m/s2%s. Forces and utilisations are rounded up, ratings and margins down.",
                           gtl_figure_gravity(rig->gravity).text,
                           rig->gravity_stated ? ", as stated in the file" : ", standard gravity");
}

void gtl_compose_cautions(gtl_composer *composer)
{
    gtl_document_heading(composer->document, "Cautions, once more");
    gtl_compose_put_cautions(composer, GTL_PARAGRAPH, NULL);
}
