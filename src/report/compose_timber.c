/* compose_timber.c - what the rig's pieces of green wood were measured to be, and what they may weigh. */
#include "report/compose.h"
#include "report/names.h"
#include "report/timber_words.h"

#include <stdio.h>
#include <stdlib.h>

static const char *name_of(const gtl_rig *rig, const gtl_wood *wood)
{
    return wood->kind == GTL_SPAR ? rig->lines[wood->index].name : rig->things[wood->index].name;
}

/* The one piece, NULL where there are several: what holds for some of them is told of all. */
static const gtl_timber *only(const gtl_rig *rig)
{
    static const gtl_timber cylinder = {.formula = GTL_HUBER};
    if (rig->wood_count == 1) return &rig->woods[0].timber;
    for (int i = 0; i < rig->wood_count; i++)
        if (rig->woods[i].timber.formula == GTL_HUBER) return &cylinder;
    return NULL;
}

/* Which end the checks rest on, and what that comes to. */
static void used(gtl_composer *composer, const gtl_wood *wood)
{
    const gtl_timber *timber = &wood->timber;
    double mass = timber->masses[timber->end];
    gtl_figure weight = gtl_figure_force_unit(&composer->units, mass * composer->rig->gravity);
    gtl_figure figure = gtl_figure_mass(&composer->units, mass);
    bool spread = timber->densities[GTL_WOOD_HEAVY] > timber->densities[GTL_WOOD_LIGHT];
    gtl_document_pair(composer->document, "worked with", "%s%s: %s %s, %s%s",
                      spread ? gtl_wood_end_name(timber->end) : "the one density typed in",
                      spread && timber->end == GTL_WOOD_HEAVY  ? " end"
                      : spread && timber->end == GTL_WOOD_MEAN ? " density, as the file says"
                                                               : "",
                      figure.text, composer->units.mass, weight.text,
                      wood->kind == GTL_SPAR ? ", half at each end" : "");
    if (spread && timber->end == GTL_WOOD_MEAN) gtl_document_strong(composer->document);
}

void gtl_compose_light_timber(gtl_composer *composer, int most_names)
{
    const gtl_rig *rig = composer->rig;
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = most_names};
    for (int i = 0; i < rig->wood_count; i++)
        if (rig->woods[i].timber.end == GTL_WOOD_MEAN) gtl_names_add(&names, name_of(rig, &rig->woods[i]));
    gtl_names_end(&names);
    char *list = gtl_text_take(&text);
    if (!list) composer->document->failed = true;
    if (names.count > 0 && list)
        gtl_document_pair(composer->document, "Timber",
                          "MEAN DENSITY of %s, as the file says: a heavy piece weighs more", list);
    free(list);
}

void gtl_compose_timber(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    gtl_document *document = composer->document;
    char kind[24];
    if (rig->wood_count == 0) return;
    gtl_document_heading(document, "Timber");
    for (int i = 0; i < rig->wood_count; i++) {
        const gtl_wood *wood = &rig->woods[i];
        snprintf(kind, sizeof kind, "%s of ", gtl_kind_name(wood->kind));
        gtl_compose_stem(document, &composer->units, name_of(rig, wood), kind, &wood->timber);
        gtl_compose_wood(document, &composer->units, "density", &wood->timber);
        used(composer, wood);
    }
    gtl_compose_wood_table(document);
    for (int i = 0; i < rig->wood_count; i++)
        gtl_compose_wood_rows(document, &composer->units, name_of(rig, &rig->woods[i]), &rig->woods[i].timber,
                              rig->gravity);
    gtl_words_timber(only(rig), gtl_compose_bullet, composer);
}
