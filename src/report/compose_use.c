/* compose_use.c - the design factors that are asked for by use, beside the user's own, never in their place.
 */
#include "base/text.h"
#include "rate/rating.h"
#include "report/compose.h"
#include "report/gear_items.h"

#include <math.h>

/* What a row of uses may ask for. */
static const struct asked {
    gtl_hardware_number number;
    const char *words;
} asks[] = {
    {GTL_HW_WIRE_ROPE, "wire rope"}, {GTL_HW_FIBRE_ROPE, "fibre rope"}, {GTL_HW_CHAIN, "chain"},
    {GTL_HW_SHACKLE, "shackles"},    {GTL_HW_METAL, "metal parts"},
};

static void row_words(gtl_composer *composer, const gtl_hardware_row *use)
{
    bool any = false;
    gtl_text text = {0};
    gtl_text_add(&text, "%s asks for ", use->name);
    for (size_t i = 0; i < sizeof asks / sizeof *asks; i++) {
        if (isnan(use->numbers[asks[i].number])) continue;
        gtl_text_add(&text, "%s%s %s", any ? ", " : "", asks[i].words,
                     gtl_figure_typed(use->numbers[asks[i].number]).text);
        any = true;
    }
    if (!isnan(use->numbers[GTL_HW_WLL_SHARE]))
        gtl_text_add(&text, "%sof a WLL no more than %s %%", any ? "; " : "",
                     gtl_figure_typed(100 * use->numbers[GTL_HW_WLL_SHARE]).text);
    gtl_text_add(&text, ". The file's own figures were used, whatever the row says.");
    gtl_document_put(composer->document, GTL_PARAGRAPH, NULL, &text);
}

/* A part that has a rating, its own design factor and what the use asks for. What has a WLL alone has no
 * factor to compare: of that the row may leave a share. */
static void part_row(gtl_composer *composer, const gtl_component *part)
{
    const gtl_step *last = &composer->sheet->steps[part->first_step + part->step_count - 1];
    bool by_factor = last->kind == GTL_STEP_FACTOR;
    double share = composer->rig->use->numbers[GTL_HW_WLL_SHARE];
    gtl_document_cell(composer->document, "%s %s", gtl_kind_name(part->kind), part->name);
    gtl_document_cell(composer->document, "%s", by_factor ? gtl_figure_typed(last->value).text : "WLL");
    if (by_factor || isnan(share))
        gtl_document_cell(composer->document, "%s",
                          gtl_figure_typed(gtl_use_factor(composer->rig, part->kind, part->index)).text);
    else
        gtl_document_cell(composer->document, "%s %% of it", gtl_figure_typed(100 * share).text);
}

void gtl_compose_use(gtl_composer *composer)
{
    static const gtl_column columns[] = {{"Part", false}, {"own factor", true}, {"asked for", true}};
    const gtl_sheet *sheet = composer->sheet;
    if (!composer->rig->use) return;
    gtl_document_heading(composer->document, "Design factors by use");
    row_words(composer, composer->rig->use);
    gtl_document_table(composer->document, columns, sizeof columns / sizeof *columns);
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *part = &sheet->components[i];
        if (part->kind != GTL_HAND && part->step_count > 0) part_row(composer, part);
    }
    if (composer->rig->use->over_people)
        gtl_document_paragraph(
            composer->document,
            "The row is for loads over people. Factors are doubled where the law says so. This "
            "program is not for lifting, holding or catching people.");
}
