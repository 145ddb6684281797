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
    gtl_compose_case_table(composer, "Anchor");
    if (composer->units.kgf) gtl_document_column(composer->document, &(gtl_column){"most, kgf", true}, false);
    gtl_document_column(composer->document, &(gtl_column){"deg from down", true}, false);
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

static void place(gtl_composer *composer, int index, int thing)
{
    const gtl_outcome *outcome = &composer->sheet->outcomes[index];
    int node = outcome->rig->things[thing].node;
    const double *at = outcome->state->at + 3 * node;
    gtl_document_cell(composer->document, "  %s", gtl_compose_case(composer->sheet, index).text);
    gtl_document_cell(composer->document, "%s",
                      gtl_figure_place(&composer->units, at, composer->rig->dim).text);
    gtl_document_cell(
        composer->document, "%s",
        gtl_figure_length(&composer->units, gtl_off_drawing(composer->rig, outcome, thing)).text);
}

/* A row for a body that came loose and is left out. */
static void no_place(gtl_composer *composer, int index)
{
    gtl_document_cell(composer->document, "  %s", gtl_compose_case(composer->sheet, index).text);
    gtl_document_cell(composer->document, "-");
    gtl_document_cell(composer->document, "-");
}

/* Whether a thing is a free body in a case: it moves, and sits on nothing else. */
static bool is_free_body(const gtl_outcome *outcome, int thing)
{
    if (!outcome->possible || gtl_is_loose(outcome, thing)) return false;
    const gtl_node *node = &outcome->rig->nodes[outcome->rig->things[thing].node];
    return !node->fixed && node->root == thing;
}

/* Whether some case moves a thing, as a body of its own, from where it is drawn. */
static bool shifts(const gtl_sheet *sheet, int thing)
{
    for (int i = 0; i < sheet->outcome_count; i++)
        if (is_free_body(&sheet->outcomes[i], thing) &&
            gtl_off_drawing(sheet->rig, &sheet->outcomes[i], thing) > AS_DRAWN)
            return true;
    return false;
}

static void places_of(gtl_composer *composer, int thing)
{
    const gtl_sheet *sheet = composer->sheet;
    gtl_document_row_head(composer->document, "%s", composer->rig->things[thing].name);
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        if (is_free_body(outcome, thing))
            place(composer, i, thing);
        else if (outcome->possible && gtl_is_loose(outcome, thing))
            no_place(composer, i);
    }
}

void gtl_compose_places(gtl_composer *composer)
{
    static const gtl_column columns[] = {
        {"Body and case", false}, {"hangs at", false}, {"off drawing", true}};
    const gtl_rig *rig = composer->rig;
    bool any = false;
    gtl_document_heading(composer->document, "Where free bodies hang [%s]", composer->units.length);
    for (int i = 0; i < rig->thing_count; i++) {
        if (!shifts(composer->sheet, i)) continue;
        if (!any) gtl_document_table(composer->document, columns, 3);
        any = true;
        places_of(composer, i);
    }
    if (!any) gtl_document_paragraph(composer->document, "Every free body hangs as it is drawn.");
}
