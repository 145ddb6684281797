/* gear_rows.c - names of rows of the hardware tables to rows. */
#include "rig/gear.h"

#include "base/suggest.h"

#include <stdio.h>

/* Longer than any row's name: see GTL_NAME_LIMIT. */
#define NAME_SIZE 64

/* The keys that name a row, and the kind of row that each takes. */
static const struct {
    const char *key;
    gtl_hardware_kind kind;
} row_keys[GTL_ROW_KEY_COUNT] = {
    [GTL_R_HARDWARE] = {"hardware", GTL_HW_GEAR},
    [GTL_R_MATERIAL] = {"material", GTL_HW_MATERIAL},
    [GTL_R_KNOT] = {"knot", GTL_HW_KNOT},
    [GTL_R_TERMINATION] = {"termination", GTL_HW_TERMINATION},
    [GTL_R_HITCH] = {"hitch", GTL_HW_HITCH},
    [GTL_R_FITTING] = {"fitting", GTL_HW_FITTING},
    [GTL_R_PIPE] = {"pipe", GTL_HW_PIPE},
    [GTL_R_SPECIES] = {"species", GTL_HW_GREEN_WOOD},
    [GTL_R_USE] = {"use", GTL_HW_USE},
};

static const gtl_hardware_row *find(const gtl_building *b, gtl_hardware_kind kind, gtl_word name)
{
    char text[NAME_SIZE];
    if (name.length >= NAME_SIZE) return NULL;
    snprintf(text, sizeof text, "%.*s", GTL_SPELL(name));
    return gtl_hardware_find(b->rig->hardware, kind, text);
}

/* The row of that kind whose name is so near that it may be meant, NULL for none. */
static const gtl_hardware_row *nearest(gtl_building *b, gtl_hardware_kind kind, gtl_word name)
{
    const gtl_hardware *set = b->rig->hardware;
    gtl_suggestion search = {.wanted = name, .best = -1};
    if (b->draft->suggestions == 0) return NULL;
    b->draft->suggestions--;
    for (int i = 0; i < set->row_count; i++)
        if (set->rows[i].kind == kind) gtl_suggest_try(&search, gtl_word_of(set->rows[i].name), i);
    /* Species are called by a part of their name: red oak. */
    for (int i = 0; i < set->row_count && kind == GTL_HW_GREEN_WOOD; i++)
        if (set->rows[i].kind == kind) gtl_suggest_whole(&search, gtl_word_of(set->rows[i].name), i);
    return search.best >= 0 ? &set->rows[search.best] : NULL;
}

/* A row of that name in any kind, NULL for none. */
static const gtl_hardware_row *find_other(const gtl_building *b, gtl_word name)
{
    const gtl_hardware_row *row = NULL;
    for (int kind = 0; kind < GTL_HW_KIND_COUNT && !row; kind++) row = find(b, (gtl_hardware_kind)kind, name);
    return row;
}

/* The key that takes rows of a kind, NULL for none. */
static const char *key_of(gtl_hardware_kind kind)
{
    for (int i = 0; i < GTL_ROW_KEY_COUNT; i++)
        if (row_keys[i].kind == kind) return row_keys[i].key;
    return NULL;
}

/* Sheaves and bends as a kind: their rows are shown, and each rig has figures of its own. */
static void refuse_range(gtl_building *b, int line, const char *key, const gtl_hardware_row *row)
{
    bool sheave = row->kind == GTL_HW_SHEAVE;
    double low = row->numbers[GTL_HW_LOW], high = row->numbers[GTL_HW_HIGH], scale = sheave ? 100 : 1;
    char range[64];
    const char *sign = sheave ? " %" : "";
    if (low < high)
        snprintf(range, sizeof range, "%.4g%s .. %.4g%s", scale * low, sign, scale * high, sign);
    else
        snprintf(range, sizeof range, "%.4g%s", scale * low, sign);
    gtl_faults_add(
        b->faults, line,
        "`%s`: the row [%s %s] is of a kind of bend, not of a piece of gear; write `%s = %s`, or a "
        "figure of your own",
        key, gtl_hardware_kind_name(row->kind), row->name, sheave ? "efficiency" : "friction", range);
}

/* The name of a row of another kind. */
static void refuse_other(gtl_building *b, int line, gtl_row_key key, const gtl_hardware_row *row)
{
    const char *other = key_of(row->kind);
    if (row->kind == GTL_HW_SHEAVE || row->kind == GTL_HW_FRICTION)
        refuse_range(b, line, row_keys[key].key, row);
    else
        gtl_faults_add(
            b->faults, line,
            "`%s`: no table has a [%s %s], only a [%s %s]%s%s%s; `gantline hardware` lists all rows",
            row_keys[key].key, gtl_hardware_kind_name(row_keys[key].kind), row->name,
            gtl_hardware_kind_name(row->kind), row->name, other ? ", which `" : "", other ? other : "",
            other ? "` takes" : "");
}

static void refuse_unknown(gtl_building *b, int line, gtl_row_key key, gtl_word name)
{
    const char *word = row_keys[key].key;
    gtl_hardware_kind kind = row_keys[key].kind;
    const gtl_hardware_row *other = find_other(b, name);
    const gtl_hardware_row *near = other ? NULL : nearest(b, kind, name);
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_excerpt(name, excerpt);
    if (other)
        refuse_other(b, line, key, other);
    else if (near)
        gtl_faults_add(b->faults, line,
                       "`%s`: no table has a [%s %s]; did you mean `%s`? `gantline hardware` lists all rows",
                       word, gtl_hardware_kind_name(kind), excerpt, near->name);
    else
        gtl_faults_add(
            b->faults, line,
            "`%s`: no table has a [%s %s]; mend the name, or write the row into a table of your own "
            "(`tables` in [rig]); `gantline hardware` lists all rows",
            word, gtl_hardware_kind_name(kind), excerpt);
}

const gtl_hardware_row *gtl_named_row(gtl_building *b, gtl_item *item, gtl_row_key key)
{
    const gtl_row_name *typed = &item->rows[key];
    if (typed->name.length == 0) return NULL;
    const gtl_hardware_row *row = find(b, row_keys[key].kind, typed->name);
    if (row) return row;
    item->rough = true;
    if (!b->draft->tables_missing) refuse_unknown(b, typed->stated.line, key, typed->name);
    return NULL;
}

const gtl_hardware_row *gtl_needed_row(gtl_building *b, int line, gtl_hardware_kind kind, const char *name)
{
    const gtl_hardware_row *row = gtl_hardware_find(b->rig->hardware, kind, name);
    if (!row)
        gtl_faults_add(b->faults, line, "no table has a [%s %s], which this needs; write that row",
                       gtl_hardware_kind_name(kind), name);
    return row;
}
