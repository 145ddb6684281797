/* write_json.c - a sheet as JSON. The format is a contract: docs/report.schema.json describes it, fields may
 * be added, none is renamed. Numbers are SI and unrounded. */
#include "base/text.h"
#include "report/json_balance.h"
#include "report/json_band.h"
#include "report/json_batten.h"
#include "report/json_case.h"
#include "report/json_gear.h"
#include "report/json_loads.h"
#include "report/json_value.h"
#include "report/words.h"
#include "report/write.h"

#include <gantline/report.h>
#include <gantline/version.h>
#include <math.h>
#include <stdlib.h>

#define FORMAT "gantline-report-1"

/* A sink for words.h. */
static void append_sentence(void *list, const char *sentence)
{
    gtl_json_append(list, gtl_json_text(sentence));
}

static json_t *scope(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < sheet->outcome_count; i++)
        gtl_json_append(&list, gtl_json_text(sheet->outcomes[i].name));
    return list.array;
}

static json_t *why(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    gtl_words_why(sheet, GTL_ALL_NAMES, append_sentence, &list);
    return list.array;
}

static json_t *cautions(void)
{
    gtl_json_array list = {json_array()};
    gtl_words_cautions(append_sentence, &list);
    return list.array;
}

static json_t *not_checked(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    gtl_words_not_checked(sheet, append_sentence, &list);
    return list.array;
}

static json_t *warnings(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    gtl_print_units units = gtl_print_units_for(sheet);
    for (int i = 0; i < sheet->warning_count; i++) {
        const gtl_warning *warning = &sheet->warnings[i];
        char *text = gtl_words_warning(sheet, &units, warning);
        gtl_json_append(&list, json_pack("{s:s, s:o, s:o}", "code", gtl_warning_name(warning->code), "about",
                                         gtl_json_text(warning->about), "text", gtl_json_text(text)));
        free(text);
    }
    return list.array;
}

static json_t *cases(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < sheet->outcome_count; i++)
        gtl_json_append(&list, gtl_json_case(sheet, &sheet->outcomes[i]));
    return list.array;
}

static json_t *component(const gtl_sheet *sheet, const gtl_component *part)
{
    json_t *governing =
        part->governing < 0 ? json_null() : gtl_json_text(sheet->outcomes[part->governing].name);
    return json_pack("{s:o, s:s, s:o, s:o, s:o, s:o, s:s, s:o}", "component", gtl_json_text(part->name),
                     "kind", gtl_kind_name(part->kind), "demand", gtl_json_number(part->demand), "case",
                     governing, "capacity", gtl_json_number(part->capacity), "utilisation",
                     gtl_json_number(part->utilisation), "status", gtl_mark_name(part->mark), "chain",
                     gtl_json_steps(sheet, part));
}

static json_t *components(const gtl_sheet *sheet)
{
    gtl_json_array list = {json_array()};
    for (int i = 0; i < sheet->component_count; i++)
        gtl_json_append(&list, component(sheet, &sheet->components[i]));
    return list.array;
}

static json_t *program(void)
{
    return json_sprintf("gantline %s", gtl_version());
}

static json_t *whole(const gtl_sheet *sheet)
{
    return json_pack(
        "{s:s, s:o, s:o, s:s, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, "
        "s:o}",
        "format", FORMAT, "program", program(), "title", gtl_json_text(sheet->rig->title), "verdict",
        gtl_verdict_name(sheet->verdict), "scope", scope(sheet), "why", why(sheet), "cautions", cautions(),
        "not_checked", not_checked(sheet), "warnings", warnings(sheet), "cases", cases(sheet), "loads",
        gtl_json_loads(sheet), "balance", gtl_json_balance(sheet), "battens", gtl_json_battens(sheet->rig),
        "components", components(sheet), "chains", gtl_json_chains(sheet), "head_fittings",
        gtl_json_head_fittings(sheet), "use", gtl_json_use(sheet), "hardware", gtl_json_hardware(sheet),
        "posts", gtl_json_posts(sheet), "rope_bill", gtl_json_rope_bill(sheet));
}

char *gtl_write_json(const gtl_sheet *sheet)
{
    return gtl_json_written(whole(sheet));
}
