/* compose_understood.c - the rig as it was read, so that a mistyped file shows. */
#include "base/text.h"
#include "report/compose.h"
#include "report/friction_words.h"
#include "report/gear_words.h"
#include "report/names.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static void add_vias(const gtl_rig *rig, gtl_text *text, gtl_via via)
{
    for (int i = 0; i < via.count; i++)
        gtl_text_add(text, "%s%s", i > 0 ? " + " : " via ", rig->connectors[rig->vias[via.first + i]].name);
}

/* Where a thing is and what may move it. */
static void add_seat(const gtl_composer *composer, gtl_text *text, const gtl_thing *thing)
{
    const gtl_rig *rig = composer->rig;
    const gtl_node *node = &rig->nodes[thing->node];
    if (thing->on >= 0) {
        gtl_text_add(text, ", on %s", rig->things[thing->on].name);
        add_vias(rig, text, thing->via);
    } else {
        gtl_text_add(text, ", at %s %s", gtl_figure_place(&composer->units, thing->at, rig->dim).text,
                     composer->units.length);
    }
    gtl_text_add(text, "%s",
                 node->fixed    ? ", fixed"
                 : node->guided ? ", guided: moves in height only"
                                : ", free");
}

static void add_friction(gtl_text *text, const gtl_thing *thing)
{
    gtl_text_add(text, ", ");
    gtl_friction_words(text, thing);
    if (thing->turns > 0)
        gtl_text_add(text, ", %d whole turn%s more", thing->turns, thing->turns > 1 ? "s" : "");
    if (!isnan(thing->wrap))
        gtl_text_add(text, ", wrap stated: %s deg", gtl_figure_degrees(thing->wrap).text);
}

/* How often lines run over a thing. */
static int runs_over(const gtl_rig *rig, int thing)
{
    int count = 0;
    for (int i = 0; i < rig->run_count; i++) count += rig->runs[i].thing == thing;
    return count;
}

static void add_sheaves(const gtl_rig *rig, gtl_text *text, int index)
{
    int sheaves = rig->things[index].sheaves > 0 ? rig->things[index].sheaves : runs_over(rig, index);
    gtl_text_add(text, ", %d sheave%s", sheaves, sheaves == 1 ? "" : "s");
}

static void add_weight(const gtl_composer *composer, gtl_text *text, const gtl_thing *thing)
{
    if (!thing->weight_stated) return;
    gtl_text_add(text, ", weight %s", gtl_figure_force_unit(&composer->units, thing->weight).text);
    if (composer->units.kgf) gtl_text_add(text, " (%s kgf)", gtl_figure_kgf(thing->weight).text);
}

static void add_fall(const gtl_composer *composer, gtl_text *text, const gtl_thing *load)
{
    gtl_text_add(text, ", falls %s", gtl_figure_length_unit(&composer->units, load->fall).text);
    if (!isnan(load->run_out))
        gtl_text_add(text, ", rope let run %s", gtl_figure_length_unit(&composer->units, load->run_out).text);
}

static void add_pull(const gtl_composer *composer, gtl_text *text, const gtl_thing *hand)
{
    if (hand->other >= 0)
        gtl_text_add(text, ", pulls where %s would have to push, worked out",
                     composer->rig->things[hand->other].name);
    else if (isnan(hand->pull))
        gtl_text_add(text, ", its pull is worked out");
    else
        gtl_text_add(text, ", pulls %s", gtl_figure_force_unit(&composer->units, hand->pull).text);
    if (hand->people > 0)
        gtl_text_add(text, ", %d %s", hand->people, hand->people == 1 ? "person" : "people");
    if (!isnan(hand->limit))
        gtl_text_add(text, ", at most %s", gtl_figure_rating_unit(&composer->units, hand->limit).text);
}

static void body_pair(gtl_composer *composer, int index)
{
    const gtl_thing *thing = &composer->rig->things[index];
    gtl_text text = {0};
    int batten = gtl_batten_of(composer->rig, index);
    if (batten >= 0)
        gtl_text_add(&text, "pick of %s", composer->rig->battens[batten].name);
    else
        gtl_text_add(&text, "%s", gtl_kind_name(thing->kind));
    if (batten < 0 && index == composer->rig->load) gtl_text_add(&text, " that is lifted");
    add_seat(composer, &text, thing);
    if (thing->kind == GTL_BLOCK) add_sheaves(composer->rig, &text, index);
    if (thing->kind == GTL_BLOCK || thing->kind == GTL_FAIRLEAD) add_friction(&text, thing);
    if (thing->clear > 0)
        gtl_text_add(&text, ", clear %s", gtl_figure_length_unit(&composer->units, thing->clear).text);
    if (thing->kind == GTL_HAND) add_pull(composer, &text, thing);
    add_weight(composer, &text, thing);
    if (index == composer->rig->dropped) add_fall(composer, &text, thing);
    gtl_gear_words(&text, &composer->units, &thing->gear, composer->rig->dim);
    gtl_document_put(composer->document, GTL_PAIR, thing->name, &text);
}

static void add_stop(const gtl_rig *rig, gtl_text *text, const gtl_stop *stop)
{
    const gtl_thing *thing = &rig->things[stop->thing];
    gtl_text_add(text, "%s", thing->name);
    add_vias(rig, text, stop->via);
    gtl_text_add(text, "%s", thing->kind == GTL_HAND ? " (hand)" : stop->tied ? " (tied)" : " (runs)");
}

static void line_pair(gtl_composer *composer, const gtl_line *line)
{
    gtl_text text = {0};
    gtl_text_add(&text, "%s: ", gtl_kind_name(line->kind));
    for (int i = 0; i < line->stop_count; i++) {
        if (i > 0) gtl_text_add(&text, " - ");
        add_stop(composer->rig, &text, &composer->rig->stops[line->first_stop + i]);
    }
    if (!isnan(line->length))
        gtl_text_add(&text, "; length %s", gtl_figure_length_unit(&composer->units, line->length).text);
    if (!isnan(line->have))
        gtl_text_add(&text, "; %s of it to haul with",
                     gtl_figure_length_unit(&composer->units, line->have).text);
    if (line->spare > 0)
        gtl_text_add(&text, "; spare %s", gtl_figure_length_unit(&composer->units, line->spare).text);
    if (line->stretch > 0)
        gtl_text_add(&text, "; stretches %s %% at %s", gtl_figure_typed(100 * line->stretch).text,
                     gtl_figure_force_unit(&composer->units, line->stretch_force).text);
    if (line->weight > 0)
        gtl_text_add(&text, "; weight %s, half at each end",
                     gtl_figure_force_unit(&composer->units, line->weight).text);
    gtl_gear_words(&text, &composer->units, &line->gear, composer->rig->dim);
    gtl_document_put(composer->document, GTL_PAIR, line->name, &text);
}

/* A connector of which more is stated than its ratings; where it stands, its neighbours tell. */
static void connector_pair(gtl_composer *composer, const gtl_connector *connector)
{
    gtl_text gear = {0};
    gtl_gear_words(&gear, &composer->units, &connector->gear, composer->rig->dim);
    bool any = gear.length > 0;
    char *words = gtl_text_take(&gear);
    if (any && words) gtl_document_pair(composer->document, connector->name, "connector%s", words);
    if (!words) composer->document->failed = true;
    free(words);
}

/* The user's own tables, the first found of each. */
static void tables(gtl_composer *composer)
{
    const gtl_hardware *set = composer->rig->hardware;
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = GTL_ALL_NAMES};
    for (int i = 0; set && i < set->row_count; i++) {
        const gtl_hardware_row *row = &set->rows[i];
        if (!row->shipped && (i == 0 || strcmp(row->file, set->rows[i - 1].file) != 0))
            gtl_names_add(&names, row->file);
    }
    char *files = gtl_text_take(&text);
    if (!files) composer->document->failed = true;
    if (names.count > 0 && files) gtl_document_pair(composer->document, "Tables", "%s", files);
    free(files);
}

/* Free text, whole: the head may have shortened it. */
static void stated(gtl_composer *composer, const char *label, const char *text)
{
    if (text[0]) gtl_document_pair(composer->document, label, "%s", text);
}

void gtl_compose_understood(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    gtl_document_heading(composer->document, "Understood from the file");
    stated(composer, "Title", rig->title);
    stated(composer, "Place", rig->place);
    stated(composer, "Date", rig->date);
    stated(composer, "By", rig->by);
    stated(composer, "Note", rig->note);
    stated(composer, "Use", rig->use ? rig->use->name : "");
    if (!isnan(rig->lift))
        gtl_document_pair(composer->document, "Lift", "%s",
                          gtl_figure_length_unit(&composer->units, rig->lift).text);
    tables(composer);
    for (int i = 0; i < rig->thing_count; i++) body_pair(composer, i);
    for (int i = 0; i < rig->batten_count; i++) gtl_compose_batten_pair(composer, &rig->battens[i]);
    for (int i = 0; i < rig->line_count; i++) line_pair(composer, &rig->lines[i]);
    for (int i = 0; i < rig->connector_count; i++) connector_pair(composer, &rig->connectors[i]);
}
