/* compose_anchors.c - what the structure feels: anchors, largest first; and where free bodies really hang. */
#include "report/compose.h"
#include "report/geometry.h"

#include <math.h>
#include <stdlib.h>

/* One anchor with the outcome that pulls most at it: demands, so the worst of all variants, not of the
 * printed state. */
typedef struct gtl_footing {
    int component;
    const gtl_outcome *worst; /* NULL where no case can be */
    double force;             /* [N] */
} gtl_footing;

static gtl_footing footing(const gtl_sheet *sheet, int component)
{
    gtl_footing found = {.component = component};
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        double force = outcome->demand[component];
        if (!outcome->possible || (found.worst && force <= found.force)) continue;
        found.worst = outcome;
        found.force = force;
    }
    return found;
}

/* The largest first; equal ones in the file's order. */
static int compare(const void *left, const void *right)
{
    const gtl_footing *a = left, *b = right;
    if (a->force != b->force) return a->force > b->force ? -1 : 1;
    return a->component < b->component ? -1 : 1;
}

static void row(gtl_composer *composer, const gtl_footing *anchor)
{
    const gtl_component *component = &composer->sheet->components[anchor->component];
    double angle = anchor->worst
                       ? gtl_from_vertical(anchor->worst->forces.passed[component->index], composer->rig->dim)
                       : NAN;
    gtl_compose_case_row(composer, gtl_compose_demand, anchor->component, "%s", component->name);
    if (composer->units.kgf)
        gtl_document_cell(composer->document, "%s", anchor->worst ? gtl_figure_kgf(anchor->force).text : "-");
    gtl_document_cell(composer->document, "%s", gtl_figure_degrees(angle).text);
}

static void table(gtl_composer *composer)
{
    gtl_column columns[GTL_COLUMN_LIMIT] = {{"Anchor", false}};
    int count = 1;
    for (int i = 0; i < composer->sheet->outcome_count; i++)
        columns[count++] = (gtl_column){gtl_case_name(composer->sheet->outcomes[i].kind), true};
    if (composer->units.kgf) columns[count++] = (gtl_column){"most, kgf", true};
    columns[count++] = (gtl_column){"deg from down", true};
    gtl_document_table(composer->document, columns, count);
}

void gtl_compose_anchors(gtl_composer *composer)
{
    const gtl_sheet *sheet = composer->sheet;
    gtl_footing *anchors = calloc((size_t)sheet->component_count + 1, sizeof *anchors);
    if (!anchors) {
        composer->document->failed = true;
        return;
    }
    size_t count = 0;
    for (int i = 0; i < sheet->component_count; i++)
        if (sheet->components[i].kind == GTL_ANCHOR) anchors[count++] = footing(sheet, i);
    qsort(anchors, count, sizeof *anchors, compare);
    gtl_document_heading(composer->document, "Anchors, largest first [%s]", composer->units.force);
    table(composer);
    for (size_t i = 0; i < count; i++) row(composer, &anchors[i]);
    gtl_document_paragraph(composer->document,
                           "Direction of the greatest pull: 0 deg is straight down, 180 deg straight up.");
    free(anchors);
}

/* --- where it hangs --- */

/* A body this near its drawing hangs as drawn, as far as anybody can measure [m]. */
#define AS_DRAWN 0.0005

static void place(gtl_composer *composer, const gtl_outcome *outcome, int node)
{
    const double *at = outcome->state->at + 3 * node;
    gtl_document_cell(composer->document, "  %s", gtl_case_name(outcome->kind));
    gtl_document_cell(composer->document, "%s",
                      gtl_figure_place(&composer->units, at, composer->rig->dim).text);
    gtl_document_cell(
        composer->document, "%s",
        gtl_figure_length(&composer->units, gtl_off_drawing(composer->rig, outcome->state, node)).text);
}

/* Whether some case moves a node from where it is drawn. */
static bool shifts(const gtl_sheet *sheet, int node)
{
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].possible &&
            gtl_off_drawing(sheet->rig, sheet->outcomes[i].state, node) > AS_DRAWN)
            return true;
    return false;
}

static void places_of(gtl_composer *composer, int node)
{
    const gtl_rig *rig = composer->rig;
    gtl_document_row_head(composer->document, "%s", rig->things[rig->nodes[node].root].name);
    for (int i = 0; i < composer->sheet->outcome_count; i++)
        if (composer->sheet->outcomes[i].possible) place(composer, &composer->sheet->outcomes[i], node);
}

void gtl_compose_places(gtl_composer *composer)
{
    static const gtl_column columns[] = {
        {"Body and case", false}, {"hangs at", false}, {"off drawing", true}};
    const gtl_rig *rig = composer->rig;
    bool any = false;
    gtl_document_heading(composer->document, "Where free bodies hang [%s]", composer->units.length);
    for (int i = 0; i < rig->node_count; i++) {
        if (rig->nodes[i].fixed || !shifts(composer->sheet, i)) continue;
        if (!any) gtl_document_table(composer->document, columns, 3);
        any = true;
        places_of(composer, i);
    }
    if (!any) gtl_document_paragraph(composer->document, "Every free body hangs as it is drawn.");
}
