/* compose_hardware.c - what the rows of hardware tables gave, and where their figures come from. */
#include "base/text.h"
#include "report/compose.h"
#include "report/gear_items.h"

#include <math.h>
#include <stdlib.h>

/* --- rows of gear --- */

static gtl_figure percent(const gtl_print_units *units, double share)
{
    (void)units;
    return gtl_figure_after(gtl_figure_typed(100 * share), "%");
}

static gtl_figure plain(const gtl_print_units *units, double number)
{
    (void)units;
    return gtl_figure_typed(number);
}

/* What a row of gear may give. */
static const struct gift {
    gtl_hardware_number number;
    const char *words;
    gtl_figure (*print)(const gtl_print_units *units, double number);
    bool rating; /* counts beside the file's own: both stand under the ratings */
} gifts[] = {
    {GTL_HW_WLL, "WLL", gtl_figure_rating_unit, true},
    {GTL_HW_PUSH_WLL, "WLL in push", gtl_figure_rating_unit, true},
    {GTL_HW_MBS, "MBS", gtl_figure_rating_unit, true},
    {GTL_HW_MASS, "mass", gtl_figure_mass_unit, false},
    {GTL_HW_EFFICIENCY, "efficiency", percent, false},
    {GTL_HW_COEFFICIENT, "friction", plain, false},
    {GTL_HW_DIAMETER, "diameter", gtl_figure_width_unit, false},
    {GTL_HW_SHEAVE_DIAMETER, "sheave diameter", gtl_figure_width_unit, false},
    {GTL_HW_PIN_DIAMETER, "pin diameter", gtl_figure_width_unit, false},
};

#define GIFTS (sizeof gifts / sizeof *gifts)

/* A stated figure went to SI and back: no more than rounding may lie between. */
static bool same(double left, double right)
{
    return fabs(left - right) <= GTL_UTILISATION_SLACK * fabs(right);
}

static void add_given(gtl_text *text, const gtl_composer *composer, const gtl_hardware_row *row)
{
    bool any = false;
    for (size_t i = 0; i < GIFTS; i++) {
        double number = row->numbers[gifts[i].number];
        if (isnan(number)) continue;
        gtl_text_add(text, "%s%s %s", any ? ", " : ": ", gifts[i].words,
                     gifts[i].print(&composer->units, number).text);
        any = true;
    }
    if (row->material[0]) gtl_text_add(text, "%smaterial %s", any ? ", " : ": ", row->material);
}

/* Whether the file states a friction of its own, as a range. */
static bool is_range(const gtl_gear_item *item, gtl_hardware_number number)
{
    bool friction = number == GTL_HW_EFFICIENCY || number == GTL_HW_COEFFICIENT;
    return friction && item->thing && !isnan(item->thing->freest);
}

/* What of it the file's own keys put out of use, or the part's kind has no use for. */
static void add_overridden(gtl_text *text, const gtl_composer *composer, const gtl_gear_item *item)
{
    const gtl_hardware_row *row = item->gear->row;
    for (size_t i = 0; i < GIFTS; i++) {
        double given = row->numbers[gifts[i].number];
        if (gifts[i].rating || isnan(given)) continue;
        double worked = gtl_gear_worked(composer->rig, item, gifts[i].number);
        bool range = is_range(item, gifts[i].number);
        if (isnan(worked))
            gtl_text_add(text, "; %s not used here", gifts[i].words);
        else if (range || !same(worked, given))
            gtl_text_add(text, "; the file's own %s, %s%s, is used instead", gifts[i].words,
                         range ? "a range, at its roughest " : "",
                         gifts[i].print(&composer->units, worked).text);
    }
    const gtl_hardware_row *material = item->gear->material;
    if (row->material[0] && material && gtl_text_compare(row->material, material->name) != 0)
        gtl_text_add(text, "; the file's own material, %s, is used instead", material->name);
}

void gtl_compose_gear_rows(gtl_composer *composer)
{
    bool any = false;
    for (int i = 0; i < gtl_gear_count(composer->rig); i++) {
        gtl_gear_item item = gtl_gear_item_at(composer->rig, i);
        if (!item.gear->row) continue;
        if (!any) gtl_document_heading(composer->document, "Gear from hardware tables");
        any = true;
        gtl_text text = {0};
        gtl_text_add(&text, "%s", item.gear->row->name);
        add_given(&text, composer, item.gear->row);
        add_overridden(&text, composer, &item);
        gtl_document_put(composer->document, GTL_PAIR, item.name, &text);
    }
}

/* --- sources --- */

/* Materials hold no figure, only what class of rope they are. */
static void source(gtl_composer *composer, const gtl_hardware_row *row)
{
    if (row->kind == GTL_HW_MATERIAL) return;
    gtl_document_bullet(composer->document, "%s %s: %s [%s; %s]", gtl_hardware_kind_name(row->kind),
                        row->name, row->source[0] ? row->source : "no source is stated", row->seen,
                        row->file);
}

void gtl_compose_sources(gtl_composer *composer)
{
    int count;
    bool *used = gtl_gear_rows(composer->rig, &count);
    if (count == 0) return;
    if (!used) {
        composer->document->failed = true;
        return;
    }
    gtl_document_heading(composer->document, "Sources of the tables' figures");
    gtl_document_paragraph(composer->document, "In brackets: how the figures were seen, and the table.");
    for (int i = 0; i < count; i++)
        if (used[i]) source(composer, &composer->rig->hardware->rows[i]);
    free(used);
}
