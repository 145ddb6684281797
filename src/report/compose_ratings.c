/* compose_ratings.c - components against their ratings, worst first, and the ratings as they were typed. */
#include "base/text.h"
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
    gtl_document_cell(document, "%s%s", isnan(part->demand) ? "-" : gtl_case_name(part->governing),
                      part->push ? ", push" : "");
    gtl_document_cell(document, "%s", gtl_figure_rating(&composer->units, part->capacity).text);
    bool idle = part->mark == GTL_MARK_IDLE;
    gtl_document_cell(document, "%s", idle ? "-" : gtl_figure_utilisation(part->utilisation).text);
    gtl_document_cell(document, "%s",
                      gtl_figure_rating(&composer->units, part->capacity - part->demand).text);
    gtl_document_cell(document, "%s", gtl_mark_name(part->mark));
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
    free(order);
}

/* The rating of a component that is no hand. */
static const gtl_rating *rating_of(const gtl_rig *rig, const gtl_component *part)
{
    switch (part->kind) {
    case GTL_CONNECTOR:
        return &rig->connectors[part->index].rating;
    case GTL_ROPE:
    case GTL_SLING:
    case GTL_SPAR:
        return &rig->lines[part->index].rating;
    default:
        return &rig->things[part->index].rating;
    }
}

static void add_limit(gtl_text *text, const gtl_print_units *units, const char *name, double newtons)
{
    if (isnan(newtons)) return;
    gtl_text_add(text, "%s%s %s", text->length > 0 ? "; " : "", name,
                 gtl_figure_rating_unit(units, newtons).text);
}

static void add_rating(gtl_text *text, const gtl_print_units *units, const gtl_rating *rating)
{
    add_limit(text, units, "WLL", rating->wll);
    add_limit(text, units, "WLL in push", rating->push_wll);
    add_limit(text, units, "MBS", rating->mbs);
    if (isnan(rating->mbs)) return;
    if (isnan(rating->design_factor))
        gtl_text_add(text, ", no design factor");
    else
        gtl_text_add(text, " / %s = %s", gtl_figure_typed(rating->design_factor).text,
                     gtl_figure_rating_unit(units, rating->mbs / rating->design_factor).text);
}

void gtl_compose_ratings(gtl_composer *composer)
{
    gtl_document_heading(composer->document, "Ratings as typed, in the report's unit");
    gtl_document_paragraph(composer->document,
                           "WLL is the working load limit, MBS the breaking strength, divided by the design "
                           "factor; the smaller rules. A rating typed as a mass was taken times g.");
    bool any = false;
    for (int i = 0; i < composer->sheet->component_count; i++) {
        const gtl_component *part = &composer->sheet->components[i];
        gtl_text text = {0};
        if (part->kind == GTL_HAND)
            add_limit(&text, &composer->units, "limit", composer->rig->things[part->index].limit);
        else
            add_rating(&text, &composer->units, rating_of(composer->rig, part));
        if (text.length == 0 && !text.failed) continue;
        any = true;
        gtl_document_put(composer->document, GTL_PAIR, part->name, &text);
    }
    if (!any) gtl_document_paragraph(composer->document, "None is stated.");
}
