/* json_drop.c - a load that is caught after a fall, as JSON. */
#include "report/json_drop.h"
#include "report/json_value.h"

#include <math.h>

static json_t *line(const gtl_line *of, const gtl_drop_line *line)
{
    return json_pack("{s:o, s:o, s:o, s:o, s:o, s:o, s:o}", "line", gtl_json_text(of->name), "stated_stretch",
                     gtl_json_number(of->stretch > 0 ? of->stretch : NAN), "stated_force",
                     gtl_json_number(of->stretch > 0 ? of->stretch_force : NAN), "elastic_length",
                     gtl_json_number(line->elastic), "share", gtl_json_number(line->share), "tension",
                     gtl_json_number(line->tension), "stretch", gtl_json_number(line->stretch));
}

static json_t *lines(const gtl_rig *rig, const gtl_drop *drop)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < rig->line_count; i++) gtl_json_append(&list, line(&rig->lines[i], &drop->lines[i]));
    return list.array;
}

/* Null where no rope is let run. */
static json_t *run(const gtl_thing *load, const gtl_drop *drop)
{
    if (isnan(drop->run_average)) return json_null();
    return json_pack("{s:o, s:o, s:o}", "distance", gtl_json_number(load->run_out), "average",
                     gtl_json_number(drop->run_average), "peak", gtl_json_number(drop->run_peak));
}

json_t *gtl_json_drop(const gtl_sheet *sheet, const gtl_outcome *outcome)
{
    const gtl_drop *drop = outcome->caught;
    const gtl_rig *rig = sheet->rig;
    if (!outcome->possible) return json_null();
    return json_pack("{s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o}", "load",
                     gtl_json_text(rig->things[drop->load].name), "weight", gtl_json_number(drop->weight),
                     "fall", gtl_json_number(drop->fall), "peak", gtl_json_number(drop->peak), "factor",
                     gtl_json_number(drop->peak / drop->weight), "checked", gtl_json_number(drop->checked),
                     "stiffness", gtl_json_number(drop->stiffness), "stiffness_with_friction",
                     gtl_json_number(drop->held), "give", gtl_json_number(drop->give), "catcher",
                     gtl_json_text(rig->lines[drop->catcher].name), "elastic_length",
                     gtl_json_number(drop->lines[drop->catcher].elastic), "fall_factor",
                     gtl_json_number(drop->fall_factor), "run", run(&rig->things[drop->load], drop), "lines",
                     lines(rig, drop));
}
