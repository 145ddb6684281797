/* json_rope_bill.c - a rope bill as JSON; docs/report.schema.json describes it. */
#include "report/json_gear.h"
#include "report/json_value.h"

#include <math.h>

static json_t *name_of(const gtl_sheet *sheet, int thing)
{
    return thing < 0 ? json_null() : gtl_json_text(sheet->rig->things[thing].name);
}

static json_t *ropes(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    const gtl_rope_bill *bill = sheet->rope_bill;
    for (int i = 0; i < bill->rope_count; i++) {
        const gtl_rope_need *need = &bill->ropes[i];
        const gtl_line *line = &sheet->rig->lines[need->line];
        gtl_json_append(&list,
                        json_pack("{s:o, s:o, s:o, s:o, s:o, s:i, s:o, s:o, s:o}", "rope",
                                  gtl_json_text(line->name), "rove", gtl_json_number(need->now), "most",
                                  gtl_json_number(need->most), "to_hand", gtl_json_number(need->comes),
                                  "wraps", gtl_json_number(need->wraps), "open_wraps", need->open_wraps,
                                  "spare", gtl_json_number(line->spare), "needed",
                                  gtl_json_number(need->needed), "length", gtl_json_number(line->have)));
    }
    return list.array;
}

/* What each part of the gear bears at rest on the way. */
static json_t *strains(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_strain *strain = &sheet->rope_bill->strains[i];
        if (isnan(strain->drawn)) continue;
        gtl_json_append(
            &list,
            json_pack("{s:o, s:o, s:o, s:o, s:o}", "component", gtl_json_text(sheet->components[i].name),
                      "drawn", gtl_json_number(strain->drawn), "most", gtl_json_number(strain->most),
                      "height", gtl_json_number(strain->height), "use", gtl_json_number(strain->use)));
    }
    return list.array;
}

static json_t *text_or_null(const char *text)
{
    return text[0] ? gtl_json_text(text) : json_null();
}

/* What ends the way up; null where nobody hauls. */
static json_t *run(const gtl_sheet *sheet)
{
    static const char *const ends[] = {
        [GTL_WAY_OPEN] = "open", [GTL_WAY_BLOCKED] = "two-blocked", [GTL_WAY_NO_PLACE] = "no place"};
    static const char *const meetings[] = {
        [GTL_MEET_CLEAR] = "clear", [GTL_MEET_SHEAVES] = "sheaves", [GTL_MEET_CENTRES] = "centres"};
    const gtl_rope_bill *bill = sheet->rope_bill;
    if (sheet->rig->hand < 0) return json_null();
    return json_pack("{s:s, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o}", "end", ends[bill->end], "length",
                     gtl_json_number(bill->run), "looked", gtl_json_number(bill->looked), "one",
                     name_of(sheet, bill->one), "other", name_of(sheet, bill->other), "apart",
                     gtl_json_number(bill->gap), "clear", gtl_json_number(bill->one < 0 ? NAN : bill->clear),
                     "meets_by", bill->one < 0 ? json_null() : json_string(meetings[bill->meeting]), "reason",
                     text_or_null(bill->reason));
}

json_t *gtl_json_rope_bill(const gtl_sheet *sheet)
{
    const gtl_rope_bill *bill = sheet->rope_bill;
    if (!bill) return json_null();
    if (!bill->worked)
        return json_pack("{s:b, s:o, s:n, s:n, s:n, s:[], s:[]}", "worked", 0, "lift",
                         gtl_json_number(sheet->rig->lift), "way", "run", "resets", "ropes", "strains");
    return json_pack("{s:b, s:o, s:o, s:o, s:o, s:o, s:o}", "worked", 1, "lift",
                     gtl_json_number(sheet->rig->lift), "way", gtl_json_number(bill->way), "run", run(sheet),
                     "resets", bill->resets < 0 ? json_null() : json_integer(bill->resets), "ropes",
                     ropes(sheet), "strains", strains(sheet));
}
