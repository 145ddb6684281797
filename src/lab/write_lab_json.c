/* write_lab_json.c - a lab as JSON. The format is a contract: docs/lab.schema.json describes it, fields may
 * be added, none is renamed. Numbers are SI and unrounded. */
#include "base/text.h"
#include "lab/write_lab.h"
#include "report/json_value.h"

#include <gantline/version.h>
#include <stdlib.h>

#define FORMAT "gantline-lab-1"

static json_t *findings(const gtl_lab *lab, int first, int count)
{
    gtl_json_array list = {json_array()};
    for (int i = first; i < first + count; i++) {
        const gtl_lab_finding *finding = &lab->findings[i];
        bool mass = finding->code == GTL_LAB_GRAMS || finding->code == GTL_LAB_KILOGRAMS;
        json_t *column = mass ? json_string(finding->on_load ? "load" : "effort") : json_null();
        gtl_json_append(
            &list, json_pack("{s:s, s:o, s:o, s:o, s:b}", "code", gtl_lab_code_name(finding->code), "value",
                             gtl_json_number(finding->value), "other", gtl_json_number(finding->other),
                             "column", column, "bars", (int)finding->bars));
    }
    return list.array;
}

/* Null for a set-up of parts. */
static json_t *rig_of(const gtl_lab_set_up *set_up)
{
    return set_up->rig ? gtl_json_text(set_up->name) : json_null();
}

static json_t *parts_of(const gtl_lab_set_up *set_up)
{
    return set_up->rig ? json_null() : json_integer(set_up->parts);
}

static json_t *readings(const gtl_lab_row *row)
{
    static const char *const scales[] = {
        [GTL_LAB_SCALE_NOT_STATED] = "not stated",
        [GTL_LAB_UPRIGHT] = "upright",
        [GTL_LAB_UPSIDE_DOWN] = "upside down",
    };
    const char *state = !row->state_stated ? "not stated" : row->held ? "held" : "moving";
    return json_pack("{s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:s, s:s}", "load", gtl_json_number(row->load),
                     "effort", gtl_json_number(row->effort_read), "load_distance",
                     gtl_json_number(row->load_distance), "effort_distance",
                     gtl_json_number(row->effort_distance), "reading", gtl_json_number(row->reading),
                     "distance_reading", gtl_json_number(row->distance_reading), "moving_weight",
                     gtl_json_number(row->moving_weight), "scale_weight", gtl_json_number(row->scale_weight),
                     "scale", scales[row->scale], "state", state);
}

static json_t *prediction(const gtl_lab_row *row)
{
    return json_pack("{s:s, s:o, s:o, s:o, s:o, s:o}", "case", gtl_case_name(row->predicted_case), "effort",
                     gtl_json_number(row->predicted_effort), "hold", gtl_json_number(row->predicted_hold),
                     "held_least", gtl_json_number(row->predicted_least), "held_most",
                     gtl_json_number(row->predicted_most), "ideal_advantage",
                     gtl_json_number(row->reference_advantage));
}

static json_t *row_of(const gtl_lab *lab, const gtl_lab_row *row)
{
    const gtl_lab_set_up *set_up = &lab->set_ups[row->set_up];
    return json_pack(
        "{s:i, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:b, "
        "s:o}",
        "line", row->line, "group", gtl_json_text(row->group), "rig", rig_of(set_up), "parts",
        parts_of(set_up), "readings", readings(row), "effort", gtl_json_number(row->effort), "work_in",
        gtl_json_number(row->work_in), "work_out", gtl_json_number(row->work_out), "ideal_advantage",
        gtl_json_number(row->ideal_advantage), "ideal_advantage_u", gtl_json_number(row->ideal_advantage_u),
        "measured_advantage", gtl_json_number(row->measured_advantage), "measured_advantage_u",
        gtl_json_number(row->measured_advantage_u), "efficiency", gtl_json_number(row->efficiency),
        "efficiency_u", gtl_json_number(row->efficiency_u), "efficiency_by_percentages",
        gtl_json_number(row->efficiency_school), "efficiency_all", gtl_json_number(row->efficiency_all),
        "predicted_effort", gtl_json_number(row->predicted_effort), "prediction", prediction(row), "counted",
        (int)row->counted, "findings", findings(lab, row->first_finding, row->finding_count));
}

static json_t *all_rows(const gtl_lab *lab)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < lab->row_count; i++) gtl_json_append(&list, row_of(lab, &lab->rows[i]));
    return list.array;
}

/* The lines of a set-up's rows: all of them, or those that count. */
static json_t *lines(const gtl_lab *lab, int s, bool counted_only)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < lab->row_count; i++) {
        const gtl_lab_row *row = &lab->rows[i];
        if (row->set_up == s && (row->counted || !counted_only))
            gtl_json_append(&list, json_integer(row->line));
    }
    return list.array;
}

static json_t *set_up_of(const gtl_lab *lab, int s)
{
    static const char *const fits[] = {
        [GTL_LAB_FIT_NONE] = "none",
        [GTL_LAB_FIT_READINGS] = "readings",
        [GTL_LAB_FIT_SCATTER] = "scatter",
        [GTL_LAB_FIT_UNKNOWN] = "uncertainty not known",
    };
    const gtl_lab_set_up *set_up = &lab->set_ups[s];
    return json_pack(
        "{s:o, s:o, s:o, s:o, s:o, s:b, s:o, s:o, s:o, s:o, s:s, s:i, s:o, s:o}", "rig", rig_of(set_up),
        "parts", parts_of(set_up), "rows", lines(lab, s, false), "counted", lines(lab, s, true),
        "ideal_advantage", gtl_json_number(set_up->velocity_ratio), "friction_stated",
        (int)set_up->friction_stated, "efficiency_mean", gtl_json_number(set_up->efficiency_mean),
        "efficiency_spread", gtl_json_number(set_up->efficiency_spread), "sheave_efficiency",
        gtl_json_number(set_up->sheave_efficiency), "sheave_efficiency_u",
        gtl_json_number(set_up->sheave_efficiency_u), "fit", fits[set_up->fit], "degrees_of_freedom",
        set_up->degrees_of_freedom, "reason", gtl_json_text(set_up->reason), "findings",
        findings(lab, set_up->first_finding, set_up->finding_count));
}

static json_t *all_set_ups(const gtl_lab *lab)
{
    gtl_json_array list = {json_array()};
    for (int s = 0; s < lab->set_up_count; s++) gtl_json_append(&list, set_up_of(lab, s));
    return list.array;
}

/* A force's column in mass was taken times standard gravity. */
static json_t *all_columns(const gtl_lab *lab)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < GTL_LAB_COLUMN_COUNT; i++) {
        const gtl_lab_column_use *use = &lab->columns[i];
        if (!use->there) continue;
        gtl_json_append(&list, json_pack("{s:s, s:s, s:b}", "name", gtl_lab_column_at((size_t)i)->name,
                                         "unit", use->unit, "used_gravity", (int)use->used_gravity));
    }
    return list.array;
}

char *gtl_write_lab_json(const gtl_lab *lab)
{
    json_t *report = json_pack("{s:s, s:o, s:o, s:o, s:o}", "format", FORMAT, "program",
                               json_sprintf("gantline %s", gtl_version()), "columns", all_columns(lab),
                               "rows", all_rows(lab), "set_ups", all_set_ups(lab));
    return gtl_json_written(report);
}
