/* compose_band.c - what friction stated as a range makes of the figures: the least and the most of each over
 * the rigs that were worked. */
#include "base/text.h"
#include "report/compose.h"

#include <math.h>
#include <stdlib.h>

/* What a row of a band tells of. */
typedef enum measure { PULL, TENSION, DEMAND } measure;

static const double *range_of(const gtl_band *band, measure of, int index)
{
    if (of == PULL) return band->pull[index];
    return of == TENSION ? band->tension[index] : band->demand[index];
}

static bool varies(const gtl_composer *composer, measure of, int index)
{
    const gtl_sheet *sheet = composer->sheet;
    for (int i = 0; i < sheet->outcome_count; i++) {
        const double *range = range_of(&sheet->outcomes[i].band, of, index);
        bool known = sheet->outcomes[i].possible && !isnan(range[0]);
        if (known && !gtl_is_one_force(&composer->units, range[0], range[1])) return true;
    }
    return false;
}

/* A row of least or greatest figures. */
static void row(gtl_composer *composer, measure of, int index, bool most)
{
    const gtl_sheet *sheet = composer->sheet;
    gtl_document_cell(composer->document, "%s", most ? "  most" : "  least");
    for (int i = 0; i < sheet->outcome_count; i++) {
        const double *range = range_of(&sheet->outcomes[i].band, of, index);
        bool up = most || gtl_is_one_force(&composer->units, range[0], range[1]);
        double value = sheet->outcomes[i].possible ? range[most] : NAN;
        gtl_document_cell(composer->document, "%s",
                          (up ? gtl_figure_force : gtl_figure_rating)(&composer->units, value).text);
    }
}

static void rows(gtl_composer *composer, measure of, int index)
{
    row(composer, of, index, false);
    row(composer, of, index, true);
}

static const char *stop_name(const gtl_rig *rig, int stop)
{
    return rig->things[rig->stops[stop].thing].name;
}

static void pulls(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    for (int i = 0; i < rig->thing_count; i++) {
        if (rig->things[i].kind != GTL_HAND || !varies(composer, PULL, i)) continue;
        gtl_document_row_head(composer->document, "pull of %s", rig->things[i].name);
        rows(composer, PULL, i);
    }
}

static void tensions(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    for (int i = 0; i < rig->part_count; i++) {
        const gtl_part *part = &rig->parts[i];
        if (!varies(composer, TENSION, i)) continue;
        gtl_document_row_head(composer->document, "%s %s, %s to %s",
                              gtl_kind_name(rig->lines[part->line].kind), rig->lines[part->line].name,
                              stop_name(rig, part->from), stop_name(rig, part->to));
        rows(composer, TENSION, i);
    }
}

/* Lines and hands stand above. */
static void demands(gtl_composer *composer)
{
    const gtl_sheet *sheet = composer->sheet;
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *part = &sheet->components[i];
        bool above = part->kind == GTL_HAND || part->kind == GTL_ROPE || part->kind == GTL_SLING;
        if (above || !varies(composer, DEMAND, i)) continue;
        gtl_document_row_head(composer->document, "%s %s", gtl_kind_name(part->kind), part->name);
        rows(composer, DEMAND, i);
    }
}

static void table(gtl_composer *composer)
{
    gtl_compose_case_table(composer, "Force");
    pulls(composer);
    tensions(composer);
    demands(composer);
}

static const char *pattern(const gtl_sheet *sheet)
{
    return sheet->every_corner
               ? "in every combination of the ends"
               : "all at their most, all at their least, each alone at its other end, and along "
                 "each rope all up to one stop one way and the rest the other";
}

static bool is_proven(const gtl_sheet *sheet)
{
    bool proven = true;
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].possible) proven &= gtl_band_is_proven(sheet, &sheet->outcomes[i]);
    return proven;
}

/* Cases printed with all friction at its least. */
static void printed(gtl_composer *composer)
{
    const gtl_sheet *sheet = composer->sheet;
    gtl_text names = {0};
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].possible && sheet->outcomes[i].band.freest)
            gtl_text_add(&names, "%s%s", names.length > 0 ? ", " : "", sheet->outcomes[i].name);
    gtl_text text = {0};
    gtl_text_add(&text, "Tables elsewhere have all friction at its most");
    if (names.length > 0)
        gtl_text_add(&text, "; of %s at its least, since that leaves the hand more to pull", names.bytes);
    gtl_text_add(&text, ". What is held against ratings is the worst of all.");
    text.failed |= names.failed;
    free(gtl_text_take(&names));
    gtl_document_put(composer->document, GTL_PARAGRAPH, NULL, &text);
}

void gtl_compose_band(gtl_composer *composer)
{
    const gtl_sheet *sheet = composer->sheet;
    if (!sheet->frees_all) return;
    gtl_document_heading(composer->document, "Friction as a range [%s]", composer->units.force);
    gtl_document_paragraph(composer->document,
                           "Each stop whose friction is a range was worked at both ends, %s: %d rigs.",
                           pattern(sheet), sheet->alternative_count + 1);
    printed(composer);
    if (is_proven(sheet))
        gtl_document_paragraph(composer->document,
                               "No body hangs elsewhere in any of them, so that no force is greater than its "
                               "most anywhere between.");
    else
        gtl_document_paragraph(
            composer->document,
            "THE BAND IS NOT PROVEN: between the ends a force may be greater than its most "
            "here; see band-not-proven under Warnings.");
    table(composer);
    gtl_document_paragraph(composer->document, "What is not listed is the same in all of them.");
}
