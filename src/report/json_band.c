/* json_band.c - see json_band.h. */
#include "report/json_band.h"
#include "report/json_value.h"

static json_t *hands(const gtl_rig *rig, const gtl_band *band)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_HAND)
            gtl_json_append(&list, json_pack("{s:o, s:o, s:o}", "hand", gtl_json_text(rig->things[i].name),
                                             "least", gtl_json_number(band->pull[i][0]), "most",
                                             gtl_json_number(band->pull[i][1])));
    return list.array;
}

static json_t *stop(const gtl_rig *rig, int index)
{
    return gtl_json_text(rig->things[rig->stops[index].thing].name);
}

static json_t *lines(const gtl_rig *rig, const gtl_band *band)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < rig->part_count; i++) {
        const gtl_part *part = &rig->parts[i];
        gtl_json_append(&list,
                        json_pack("{s:o, s:o, s:o, s:o, s:o}", "line",
                                  gtl_json_text(rig->lines[part->line].name), "from", stop(rig, part->from),
                                  "to", stop(rig, part->to), "least", gtl_json_number(band->tension[i][0]),
                                  "most", gtl_json_number(band->tension[i][1])));
    }
    return list.array;
}

static json_t *components(const gtl_sheet *sheet, const gtl_band *band)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < sheet->component_count; i++)
        gtl_json_append(&list,
                        json_pack("{s:o, s:o, s:o}", "component", gtl_json_text(sheet->components[i].name),
                                  "least", gtl_json_number(band->demand[i][0]), "most",
                                  gtl_json_number(band->demand[i][1])));
    return list.array;
}

json_t *gtl_json_band(const gtl_sheet *sheet, const gtl_outcome *outcome)
{
    const gtl_band *band = &outcome->band;
    if (!band->pull || !outcome->possible) return json_null();
    return json_pack("{s:i, s:b, s:b, s:b, s:o, s:o, s:o}", "rigs", band->rigs, "least_friction_printed",
                     (int)band->freest, "proven", (int)gtl_band_is_proven(sheet, outcome), "sometimes_held",
                     (int)band->sometimes, "hands", hands(sheet->rig, band), "lines", lines(sheet->rig, band),
                     "components", components(sheet, band));
}

static json_t *turns(const gtl_post *post)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i <= GTL_POST_TURNS; i++) {
        const gtl_post_turn *turn = &post->turns[i];
        gtl_json_append(&list,
                        json_pack("{s:i, s:o, s:o, s:o, s:o, s:o}", "turns", i, "to_hold",
                                  gtl_json_number(turn->hold), "to_raise", gtl_json_number(turn->raise),
                                  "in_lead", gtl_json_number(turn->lead), "on_post",
                                  gtl_json_number(turn->force), "on_anchor", gtl_json_number(turn->anchor)));
    }
    return list.array;
}

json_t *gtl_json_posts(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < sheet->post_count; i++) {
        const gtl_post *post = &sheet->posts[i];
        json_t *enough = post->enough < 0 ? json_null() : json_integer(post->enough);
        gtl_json_append(&list, json_pack("{s:o, s:o, s:o}", "post",
                                         gtl_json_text(sheet->rig->things[post->thing].name), "enough",
                                         enough, "turns", turns(post)));
    }
    return list.array;
}
