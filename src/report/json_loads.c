/* json_loads.c - what hangs in the rig, as JSON. */
#include "report/json_loads.h"

#include "report/json_timber.h"
#include "report/json_value.h"

static json_t *timber_of(const gtl_rig *rig, gtl_kind kind, int index)
{
    const gtl_timber *timber = gtl_timber_of(rig, kind, index);
    return timber ? gtl_json_timber(timber) : json_null();
}

static json_t *load(const gtl_rig *rig, gtl_kind kind, int index, const char *name, double weight)
{
    return json_pack("{s:o, s:s, s:o, s:o, s:o}", "load", gtl_json_text(name), "kind", gtl_kind_name(kind),
                     "weight", gtl_json_number(weight), "mass", gtl_json_number(weight / rig->gravity),
                     "timber", timber_of(rig, kind, index));
}

json_t *gtl_json_loads(const gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    gtl_json_array list = {json_array()};
    for (int i = 0; i < rig->thing_count; i++) {
        const gtl_thing *thing = &rig->things[i];
        bool weighs = thing->kind == GTL_LOAD || thing->kind == GTL_ARBOR;
        if (weighs && gtl_batten_of(rig, i) < 0)
            gtl_json_append(&list, load(rig, thing->kind, i, thing->name, thing->weight));
    }
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        if (line->kind == GTL_SPAR && line->weight > 0)
            gtl_json_append(&list, load(rig, GTL_SPAR, i, line->name, line->weight));
    }
    return list.array;
}
