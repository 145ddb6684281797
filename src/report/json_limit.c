/* json_limit.c - a limit as JSON. The format is a contract: docs/limit.schema.json describes it, fields may
 * be added, none is renamed. Numbers are SI and unrounded. */
#include "base/text.h"
#include "report/json_value.h"
#include "report/limit_words.h"
#include "report/write.h"

#include <gantline/version.h>
#include <math.h>
#include <stdlib.h>

#define FORMAT "gantline-limit-1"

/* A list that fails as a whole: `array` is NULL once memory failed. */
typedef struct sentences {
    json_t *array;
} sentences;

static void append(sentences *list, json_t *value)
{
    if (list->array && json_array_append_new(list->array, value) == 0) return;
    if (!list->array) json_decref(value);
    json_decref(list->array);
    list->array = NULL;
}

/* A sink for words.h. */
static void append_sentence(void *list, const char *sentence)
{
    append(list, gtl_json_text(sentence));
}

static json_t *part_name(const gtl_limit *limit, int component)
{
    return component < 0 ? json_null() : gtl_json_text(gtl_limit_sheet(limit)->components[component].name);
}

static json_t *case_name(const gtl_limit *limit, int outcome)
{
    return outcome < 0 ? json_null() : gtl_json_text(limit->rig->cases[outcome].name);
}

/* Null where there is none. */
static json_t *edge_of(const gtl_limit *limit, const gtl_edge *edge)
{
    if (edge->kind == GTL_EDGE_NONE) return json_null();
    return json_pack("{s:s, s:o, s:o, s:b, s:o}", "edge", gtl_edge_name(edge->kind), "component",
                     part_name(limit, edge->component), "case", case_name(limit, edge->outcome), "jumps",
                     (int)edge->jumps, "reason", gtl_json_text(edge->reason));
}

static json_t *next(const gtl_limit *limit)
{
    sentences list = {json_array()};
    for (int i = 0; i < limit->next_count; i++) {
        const gtl_component *part = &limit->at_limit.components[limit->next[i]];
        append(&list, json_pack("{s:o, s:o, s:o}", "component", part_name(limit, limit->next[i]), "case",
                                case_name(limit, part->governing), "utilisation",
                                gtl_json_number(part->utilisation)));
    }
    return list.array;
}

static json_t *needed(const gtl_limit *limit)
{
    static const char *const ratings[] = {
        [GTL_STEP_LIMIT] = "limit",
        [GTL_STEP_WLL] = "wll",
        [GTL_STEP_PUSH_WLL] = "push wll",
        [GTL_STEP_MBS] = "mbs",
    };
    sentences list = {json_array()};
    for (int i = 0; i < limit->need_count; i++) {
        const gtl_need *need = &limit->needs[i];
        append(&list, json_pack("{s:o, s:s, s:o, s:o, s:o}", "component", part_name(limit, need->component),
                                "rating", ratings[need->kind], "demand",
                                gtl_json_number(limit->as_drawn.components[need->component].demand), "paper",
                                gtl_json_number(need->paper), "needed", gtl_json_number(need->needed)));
    }
    return list.array;
}

static json_t *why(const gtl_limit *limit)
{
    sentences list = {json_array()};
    gtl_limit_why(limit, append_sentence, &list);
    gtl_limit_open(limit, append_sentence, &list);
    return list.array;
}

static json_t *cautions(void)
{
    sentences list = {json_array()};
    gtl_words_cautions(append_sentence, &list);
    return list.array;
}

static json_t *scope(const gtl_rig *rig)
{
    sentences list = {json_array()};
    for (int i = 0; i < rig->case_count; i++) append(&list, gtl_json_text(rig->cases[i].name));
    return list.array;
}

static const char *found(const gtl_limit *limit)
{
    if (!limit->found) return "none permitted";
    return limit->heaviest.kind == GTL_EDGE_NONE ? "no limit" : "limit";
}

static json_t *whole(const gtl_limit *limit)
{
    const gtl_edge *top = &limit->heaviest;
    return json_pack("{s:s, s:o, s:o, s:o, s:s, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:b, s:b, s:o, s:o, "
                     "s:o, s:o, s:o}",
                     "format", FORMAT, "program", json_sprintf("gantline %s", gtl_version()), "title",
                     gtl_json_text(limit->rig->title), "load",
                     gtl_json_text(limit->rig->things[limit->load].name), "found", found(limit), "mass",
                     gtl_json_number(top->mass), "least", gtl_json_number(limit->lightest.mass), "component",
                     part_name(limit, top->component), "case", case_name(limit, top->outcome), "heaviest",
                     edge_of(limit, top), "lightest", edge_of(limit, &limit->lightest), "barred",
                     edge_of(limit, &limit->barred), "drawn", gtl_json_number(limit->drawn), "permitted",
                     (int)limit->permitted, "open", (int)limit->open, "next", next(limit), "needed",
                     needed(limit), "why", why(limit), "scope", scope(limit->rig), "cautions", cautions());
}

char *gtl_write_limit_json(const gtl_limit *limit)
{
    return gtl_json_written(whole(limit));
}
