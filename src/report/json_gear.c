/* json_gear.c - ratings, chains of gear and hardware tables as JSON. */
#include "report/json_gear.h"
#include "base/text.h"
#include "rate/rating.h"
#include "report/figures.h"
#include "report/gear_items.h"
#include "report/json_value.h"

#include <math.h>
#include <stdlib.h>

/* --- steps --- */

static const char *const step_words[GTL_STEP_KIND_COUNT] = {
    [GTL_STEP_LIMIT] = "limit",       [GTL_STEP_WLL] = "wll",
    [GTL_STEP_PUSH_WLL] = "push wll", [GTL_STEP_MBS] = "mbs",
    [GTL_STEP_KNOT] = "knot",         [GTL_STEP_TERMINATION] = "termination",
    [GTL_STEP_BEND] = "bend",         [GTL_STEP_HITCH] = "hitch",
    [GTL_STEP_CHOKE] = "choke angle", [GTL_STEP_AXIS] = "axis",
    [GTL_STEP_SIDE] = "side load",    [GTL_STEP_WEAR] = "wear",
    [GTL_STEP_WET] = "wet",           [GTL_STEP_FACTOR] = "design factor",
};

/* A text made piece by piece; NULL without memory. */
static json_t *take(gtl_text *text)
{
    char *whole = gtl_text_take(text);
    json_t *value = gtl_json_text(whole);
    free(whole);
    return value;
}

/* "knot bowline", "bend wire-rope at head", "design factor 8". */
static json_t *what(const gtl_step *step)
{
    gtl_text text = {0};
    gtl_text_add(&text, "%s", step_words[step->kind]);
    if (step->row && step->kind > GTL_STEP_MBS) gtl_text_add(&text, " %s", step->row->name);
    if (step->at[0]) gtl_text_add(&text, " at %s", step->at);
    if (step->kind == GTL_STEP_FACTOR) gtl_text_add(&text, " %s", gtl_figure_typed(step->value).text);
    return take(&text);
}

/* Where a figure comes from: the row's source and its table. */
static json_t *source(const gtl_hardware_row *row)
{
    gtl_text text = {0};
    if (row)
        gtl_text_add(&text, "%s; %s", row->source[0] ? row->source : "no source is stated", row->file);
    else
        gtl_text_add(&text, "rig file");
    return take(&text);
}

json_t *gtl_json_steps(const gtl_sheet *sheet, const gtl_component *part)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < part->step_count; i++) {
        const gtl_step *step = &sheet->steps[part->first_step + i];
        gtl_json_append(&list, json_pack("{s:o, s:o, s:o}", "what", what(step), "factor",
                                         gtl_json_number(step->factor), "source", source(step->row)));
    }
    return list.array;
}

/* --- chains --- */

static json_t *chain(const gtl_sheet *sheet, const gtl_chain *at)
{
    gtl_json_array parts = {json_array()};
    for (int i = 0; i < at->link_count; i++)
        gtl_json_append(&parts, gtl_json_text(sheet->components[sheet->links[at->first_link + i]].name));
    const gtl_component *weakest = at->weakest < 0 ? NULL : &sheet->components[at->weakest];
    return json_pack("{s:o, s:o, s:o}", "parts", parts.array, "weakest",
                     weakest ? gtl_json_text(weakest->name) : json_null(), "utilisation",
                     gtl_json_number(weakest ? weakest->utilisation : NAN));
}

json_t *gtl_json_chains(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < sheet->chain_count; i++) gtl_json_append(&list, chain(sheet, &sheet->chains[i]));
    return list.array;
}

json_t *gtl_json_head_fittings(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < sheet->head_fitting_count; i++) {
        const gtl_head_fitting *head = &sheet->head_fittings[i];
        gtl_json_append(&list,
                        json_pack("{s:o, s:o, s:o, s:o, s:s}", "block",
                                  gtl_json_text(sheet->components[head->block].name), "fitting",
                                  gtl_json_text(sheet->components[head->fitting].name), "needed",
                                  gtl_json_number(head->needed), "capacity", gtl_json_number(head->capacity),
                                  "status", gtl_mark_name(head->mark)));
    }
    return list.array;
}

/* --- tables --- */

static json_t *use_parts(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *part = &sheet->components[i];
        if (part->kind == GTL_HAND || part->step_count == 0) continue;
        const gtl_step *last = &sheet->steps[part->first_step + part->step_count - 1];
        double own = last->kind == GTL_STEP_FACTOR ? last->value : NAN;
        gtl_json_append(&list,
                        json_pack("{s:o, s:o, s:o}", "component", gtl_json_text(part->name), "own",
                                  gtl_json_number(own), "asked",
                                  gtl_json_number(gtl_use_factor(sheet->rig, part->kind, part->index))));
    }
    return list.array;
}

json_t *gtl_json_use(const gtl_sheet *sheet)
{
    const gtl_hardware_row *use = sheet->rig->use;
    if (!use) return json_null();
    return json_pack("{s:o, s:o, s:o, s:s, s:b, s:o, s:o}", "row", gtl_json_text(use->name), "table",
                     gtl_json_text(use->file), "source", gtl_json_text(use->source), "seen", use->seen,
                     "over_people", (int)use->over_people, "wll_share",
                     gtl_json_number(use->numbers[GTL_HW_WLL_SHARE]), "parts", use_parts(sheet));
}

json_t *gtl_json_hardware(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < gtl_gear_count(sheet->rig); i++) {
        gtl_gear_item item = gtl_gear_item_at(sheet->rig, i);
        const gtl_hardware_row *row = item.gear->row;
        if (!row) continue;
        gtl_json_append(&list, json_pack("{s:o, s:o, s:o, s:o, s:s}", "part", gtl_json_text(item.name), "row",
                                         gtl_json_text(row->name), "table", gtl_json_text(row->file),
                                         "source", gtl_json_text(row->source), "seen", row->seen));
    }
    return list.array;
}
