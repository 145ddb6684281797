/* compose_components.c - components against their ratings, worst first. */
#include "report/compose.h"

#include <math.h>
#include <stdlib.h>

/* How a part is ordered: over and within by utilisation, then unrated, then idle. */
static int group(const gtl_component *part)
{
    if (part->mark == GTL_MARK_IDLE) return 2;
    return isnan(part->utilisation) ? 1 : 0;
}

static int compare(const void *left, const void *right)
{
    const gtl_component *a = *(const gtl_component *const *)left, *b = *(const gtl_component *const *)right;
    if (group(a) != group(b)) return group(a) - group(b);
    if (group(a) == 0 && a->utilisation != b->utilisation) return a->utilisation > b->utilisation ? -1 : 1;
    return a < b ? -1 : 1;
}

static void row(gtl_composer *composer, const gtl_component *part)
{
    gtl_document *document = composer->document;
    gtl_document_cell(document, "%s %s", gtl_kind_name(part->kind), part->name);
    gtl_document_cell(document, "%s", gtl_figure_force(&composer->units, part->demand).text);
    gtl_document_cell(document, "%s%s",
                      part->governing < 0 ? "-" : gtl_compose_case(composer->sheet, part->governing).text,
                      part->push ? ", push" : "");
    gtl_document_cell(document, "%s", gtl_figure_rating(&composer->units, part->capacity).text);
    bool idle = part->mark == GTL_MARK_IDLE;
    gtl_document_cell(document, "%s", idle ? "-" : gtl_figure_utilisation(part->utilisation).text);
    gtl_document_bar(document, idle ? NAN : part->utilisation);
    gtl_document_cell(document, "%s",
                      gtl_figure_rating(&composer->units, part->capacity - part->demand).text);
    gtl_document_cell(document, "%s", gtl_mark_name(part->mark));
    if (part->mark == GTL_MARK_OVER) gtl_document_strong(document);
}

void gtl_compose_components(gtl_composer *composer)
{
    static const gtl_column columns[] = {{"Part", false},  {"demand", true},  {"case", false},
                                         {"rating", true}, {"used, %", true}, {"margin", true},
                                         {"status", false}};
    const gtl_sheet *sheet = composer->sheet;
    size_t count = (size_t)sheet->component_count;
    const gtl_component **order = calloc(count + 1, sizeof *order);
    if (!order) {
        composer->document->failed = true;
        return;
    }
    for (size_t i = 0; i < count; i++) order[i] = &sheet->components[i];
    qsort(order, count, sizeof *order, compare);
    gtl_document_heading(composer->document, "Parts against their ratings, worst first [%s]",
                         composer->units.force);
    gtl_document_table(composer->document, columns, sizeof columns / sizeof *columns);
    for (size_t i = 0; i < count; i++) row(composer, order[i]);
    const gtl_outcome *drop = gtl_sheet_outcome(sheet, GTL_DROP);
    if (drop && drop->possible)
        gtl_document_paragraph(composer->document,
                               "By drop a part is held against its rating at more than the peak: see Drop.");
    free(order);
}
