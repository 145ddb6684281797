/* compose_chains.c - gear in a row down to each anchor, the weakest part of each; and head fittings. */
#include "base/text.h"
#include "report/compose.h"

#include <math.h>
#include <stdlib.h>

static const gtl_component *link_at(const gtl_sheet *sheet, const gtl_chain *chain, int link)
{
    return &sheet->components[sheet->links[chain->first_link + link]];
}

static bool carries_nothing(const gtl_sheet *sheet, const gtl_chain *chain)
{
    for (int i = 0; i < chain->link_count; i++)
        if (link_at(sheet, chain, i)->mark != GTL_MARK_IDLE) return false;
    return true;
}

/* The greatest utilisation in a chain; what is not known stands before all that is, what is idle behind. */
static double strain(const gtl_sheet *sheet, const gtl_chain *chain)
{
    if (chain->weakest >= 0) return sheet->components[chain->weakest].utilisation;
    return carries_nothing(sheet, chain) ? -1 : INFINITY;
}

typedef struct ranked {
    const gtl_sheet *sheet;
    const gtl_chain *chain;
} ranked;

/* The most strained first; equal ones in the sheet's order. */
static int compare(const void *left, const void *right)
{
    const ranked *a = left, *b = right;
    double strain_a = strain(a->sheet, a->chain), strain_b = strain(b->sheet, b->chain);
    if (strain_a > strain_b || strain_a < strain_b) return strain_a > strain_b ? -1 : 1;
    return a->chain < b->chain ? -1 : 1;
}

static void add_weakest(gtl_text *text, const gtl_sheet *sheet, const gtl_chain *chain)
{
    const gtl_component *weakest = chain->weakest < 0 ? NULL : &sheet->components[chain->weakest];
    if (weakest)
        gtl_text_add(text, "%s, %s%s", weakest->name, gtl_figure_utilisation(weakest->utilisation).text,
                     isinf(weakest->utilisation) ? "" : " %");
    else if (carries_nothing(sheet, chain))
        gtl_text_add(text, "carries nothing here");
    else
        gtl_text_add(text, "not known, since not every part has a rating");
}

static void chain_row(gtl_composer *composer, const gtl_chain *chain)
{
    gtl_text text = {0};
    for (int i = 0; i < chain->link_count; i++)
        gtl_text_add(&text, "%s%s", i > 0 ? " - " : "", link_at(composer->sheet, chain, i)->name);
    gtl_text_add(&text, ": ");
    add_weakest(&text, composer->sheet, chain);
    gtl_document_put(composer->document, GTL_BULLET, NULL, &text);
}

static void chains(gtl_composer *composer)
{
    const gtl_sheet *sheet = composer->sheet;
    size_t count = (size_t)sheet->chain_count;
    if (count == 0) return;
    ranked *order = calloc(count, sizeof *order);
    if (!order) {
        composer->document->failed = true;
        return;
    }
    for (size_t i = 0; i < count; i++) order[i] = (ranked){sheet, &sheet->chains[i]};
    qsort(order, count, sizeof *order, compare);
    gtl_document_heading(composer->document, "Chains of gear, weakest part first");
    gtl_document_paragraph(
        composer->document,
        "Gear in a row down to its anchor: the weakest part, and how much of its rating is "
        "used.");
    for (size_t i = 0; i < count; i++) chain_row(composer, order[i].chain);
    free(order);
}

static void head_fittings(gtl_composer *composer)
{
    static const gtl_column columns[] = {
        {"Block and fitting", false}, {"needed", true}, {"rating", true}, {"status", false}};
    const gtl_sheet *sheet = composer->sheet;
    if (sheet->head_fitting_count == 0) return;
    gtl_document_heading(composer->document, "Head fittings of single-sheave blocks [%s]",
                         composer->units.force);
    gtl_document_table(composer->document, columns, sizeof columns / sizeof *columns);
    for (int i = 0; i < sheet->head_fitting_count; i++) {
        const gtl_head_fitting *head = &sheet->head_fittings[i];
        gtl_document_cell(composer->document, "%s, %s", sheet->components[head->block].name,
                          sheet->components[head->fitting].name);
        gtl_document_cell(composer->document, "%s", gtl_figure_force(&composer->units, head->needed).text);
        gtl_document_cell(composer->document, "%s", gtl_figure_rating(&composer->units, head->capacity).text);
        gtl_document_cell(composer->document, "%s", gtl_mark_name(head->mark));
        if (head->mark == GTL_MARK_OVER) gtl_document_strong(composer->document);
    }
    gtl_document_paragraph(composer->document,
                           "A fitting at the head of a block with one sheave has to bear twice the line "
                           "(Lloyd's Code for Lifting Appliances in a Marine Environment, chapter 8, 5.1).");
}

void gtl_compose_chains(gtl_composer *composer)
{
    chains(composer);
    head_fittings(composer);
}
