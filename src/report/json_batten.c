/* json_batten.c - battens of the report as JSON: what comes down on each pick, both ways. */
#include "report/json_batten.h"
#include "report/json_value.h"

static json_t *pick(const gtl_rig *rig, const gtl_pick *at)
{
    return json_pack("{s:o, s:o, s:o, s:o, s:o, s:o}", "pick", gtl_json_text(rig->things[at->thing].name),
                     "along", gtl_json_number(at->position), "stiff_lines", gtl_json_number(at->stiff),
                     "springs", gtl_json_number(at->springs), "as_props", gtl_json_number(at->pushes),
                     "gains_10_mm_short", gtl_json_number(at->settles));
}

static json_t *picks(const gtl_rig *rig, const gtl_batten *batten)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < batten->pick_count; i++)
        gtl_json_append(&list, pick(rig, &rig->picks[batten->first_pick + i]));
    return list.array;
}

static json_t *loads(const gtl_rig *rig, const gtl_batten *batten)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < batten->hung_count; i++) {
        const gtl_hung *hung = &rig->hung[batten->first_hung + i];
        gtl_json_append(&list, json_pack("{s:o, s:o, s:o}", "weight", gtl_json_number(hung->weight), "from",
                                         gtl_json_number(hung->from), "to", gtl_json_number(hung->to)));
    }
    return list.array;
}

json_t *gtl_json_battens(const gtl_rig *rig)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < rig->batten_count; i++) {
        const gtl_batten *batten = &rig->battens[i];
        json_t *pipe = batten->pipe ? gtl_json_text(batten->pipe->name) : json_null();
        gtl_json_append(&list,
                        json_pack("{s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o}", "batten",
                                  gtl_json_text(batten->name), "length", gtl_json_number(batten->length),
                                  "pipe", pipe, "weight", gtl_json_number(batten->weight), "total",
                                  gtl_json_number(batten->total), "centre", gtl_json_number(batten->centre),
                                  "stiffness", gtl_json_number(batten->stiffness), "loads",
                                  loads(rig, batten), "picks", picks(rig, batten)));
    }
    return list.array;
}
