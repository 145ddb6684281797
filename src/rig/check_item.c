/* check_item.c - what one section says by itself: keys that exclude each other, or that need another. */
#include "rig/building.h"

#include <math.h>
#include <stdint.h>

#define FIELD(field) (UINT64_C(1) << (field))

_Static_assert(GTL_FIELD_COUNT <= 64, "a bit for every field");

/* Two spellings of one thing. */
static const struct {
    gtl_field one;
    gtl_field other;
    const char *text;
} exclusions[] = {
    {GTL_F_MASS, GTL_F_WEIGHT, "`mass` and `weight` are two spellings of one thing; keep one of them"},
    {GTL_F_FRICTION, GTL_F_EFFICIENCY,
     "`friction` and `efficiency` are two spellings of one thing; keep one of them"},
    {GTL_F_LIMIT, GTL_F_PEOPLE,
     "`limit` and `people` are two spellings of one thing; keep `limit`, or `people` and `each`"},
};

/* A key that says nothing unless at least one of the others is there. */
static const struct {
    gtl_field one;
    uint64_t needs;
    const char *text;
} needs[] = {
    {GTL_F_PEOPLE, FIELD(GTL_F_EACH),
     "`people` needs `each`: how much one of them can pull, such as each = 250 N"},
    {GTL_F_EACH, FIELD(GTL_F_PEOPLE), "`each` needs `people`: how many haul, such as people = 2"},
    {GTL_F_DESIGN_FACTOR, FIELD(GTL_F_MBS),
     "`design factor` divides an `mbs`, and there is none here; add it, or leave the factor out"},
    {GTL_F_WRAP, FIELD(GTL_F_EFFICIENCY) | FIELD(GTL_F_FRICTION),
     "`wrap` changes nothing without friction; state the efficiency too, or leave `wrap` out"},
    {GTL_F_TURNS, FIELD(GTL_F_EFFICIENCY) | FIELD(GTL_F_FRICTION),
     "`turns` change nothing without friction; state `friction` or `efficiency` too, or leave them out"},
    {GTL_F_RUN, FIELD(GTL_F_FALL),
     "`run` changes nothing without `fall`: how far the load falls before its line takes it; add it, such as "
     "fall = 1 m, or leave `run` out"},
};

#define COUNT(table) (sizeof(table) / sizeof(table)[0])

static gtl_stated stated(const gtl_item *item, gtl_field field)
{
    return item->numbers[field].stated;
}

static int later(gtl_stated one, gtl_stated other)
{
    return one.line > other.line ? one.line : other.line;
}

static void check_exclusions(gtl_building *b, const gtl_item *item)
{
    for (size_t i = 0; i < COUNT(exclusions); i++) {
        gtl_stated one = stated(item, exclusions[i].one);
        gtl_stated other = stated(item, exclusions[i].other);
        if (one.yes && other.yes) gtl_faults_add(b->faults, later(one, other), "%s", exclusions[i].text);
    }
}

/* What a row of gear states in an item's stead. */
static const struct {
    gtl_hardware_number number;
    gtl_field field;
} row_fields[] = {
    {GTL_HW_MBS, GTL_F_MBS},
    {GTL_HW_EFFICIENCY, GTL_F_EFFICIENCY},
    {GTL_HW_COEFFICIENT, GTL_F_FRICTION},
};

/* The fields that an item or its row states, as bits; a block has the rig's efficiency too. */
static uint64_t all_stated(const gtl_building *b, int at)
{
    const gtl_item *item = &b->draft->items[at];
    uint64_t all = 0;
    for (unsigned i = 0; i < GTL_FIELD_COUNT; i++) {
        if (stated(item, (gtl_field)i).yes) all |= FIELD(i);
    }
    for (size_t i = 0; i < COUNT(row_fields); i++) {
        if (!isnan(gtl_row_number(b, at, row_fields[i].number))) all |= FIELD(row_fields[i].field);
    }
    bool given =
        b->draft->sheet.rough || b->draft->sheet.lost || stated(&b->draft->sheet, GTL_F_EFFICIENCY).yes;
    return item->kind == GTL_BLOCK && given ? all | FIELD(GTL_F_EFFICIENCY) : all;
}

static void check_needs(gtl_building *b, int at)
{
    const gtl_item *item = &b->draft->items[at];
    uint64_t all = all_stated(b, at);
    for (size_t i = 0; i < COUNT(needs); i++) {
        if ((all & FIELD(needs[i].one)) == 0 || (all & needs[i].needs) != 0) continue;
        gtl_faults_add(b->faults, stated(item, needs[i].one).line, "%s", needs[i].text);
    }
}

/* A thing is somewhere: at a place of its own, or on something. */
static void check_place(gtl_building *b, const gtl_item *item)
{
    const char *kind = gtl_kind_name(item->kind);
    if (item->at.stated.yes && item->on.stated.yes) {
        gtl_faults_add(b->faults, later(item->at.stated, item->on.stated),
                       "`at` and `on` together; keep `on` if %s `%s` sits on something, else `at`", kind,
                       item->name);
        return;
    }
    if (item->at.stated.yes || item->on.stated.yes) return;
    b->draft->whole = false;
    if (item->rough) return;
    if (item->kind == GTL_ANCHOR) {
        gtl_faults_add(b->faults, item->line, "anchor `%s` has no place; write `at`, such as at = 5.5 m",
                       item->name);
    } else {
        gtl_faults_add(b->faults, item->line,
                       "%s `%s` has no place; write `at`, such as at = 5.5 m, or `on` what it sits on", kind,
                       item->name);
    }
}

static void check_path(gtl_building *b, const gtl_item *item)
{
    if (item->path.stated.yes) return;
    b->draft->whole = false;
    if (item->rough) return;
    gtl_faults_add(b->faults, item->line,
                   "%s `%s` has no path; write its stops, such as path = beam, tail, crew",
                   gtl_kind_name(item->kind), item->name);
}

static void check_weight(gtl_building *b, const gtl_item *item)
{
    if (stated(item, GTL_F_MASS).yes || stated(item, GTL_F_WEIGHT).yes || item->rough) return;
    if (gtl_is_timber(item)) return;
    gtl_faults_add(b->faults, item->line, "%s `%s` has no weight; write its mass, such as mass = 60 kg",
                   gtl_kind_name(item->kind), item->name);
}

void gtl_check_items(gtl_building *b)
{
    for (int i = 0; i < b->draft->item_count; i++) {
        const gtl_item *item = &b->draft->items[i];
        if (item->lost) continue;
        if (gtl_is_of(item->kind, GTL_THING_KINDS)) check_place(b, item);
        if (gtl_is_of(item->kind, GTL_LINE_KINDS)) check_path(b, item);
        if (gtl_is_of(item->kind, GTL_WEIGHT_KINDS)) check_weight(b, item);
        if (item->kind == GTL_BATTEN) gtl_check_batten(b, item);
        check_exclusions(b, item);
        if (!item->rough) check_needs(b, i);
    }
}
