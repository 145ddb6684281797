/* gear.c - the gear of every item: the row of the hardware tables that it is, and the numbers that it or its
 * row states. What an item states itself stands before what its row states. */
#include "rig/gear.h"

#include <math.h>

#define RUNNING GTL_RUNNING_KINDS
#define RATED   (GTL_LINE_KINDS | RUNNING | PINNED)
#define PINNED  (GTL_ONE_KIND(GTL_ANCHOR) | RUNNING | GTL_ONE_KIND(GTL_JOINT) | GTL_ONE_KIND(GTL_CONNECTOR))
#define MASSIVE (RUNNING | GTL_ONE_KIND(GTL_JOINT) | GTL_ONE_KIND(GTL_SPAR))

/* What a row of gear can give, and to which kinds. */
static const struct {
    gtl_hardware_number number;
    unsigned kinds;
} given[] = {
    {GTL_HW_WLL, RATED},
    {GTL_HW_MBS, RATED},
    {GTL_HW_PUSH_WLL, GTL_ONE_KIND(GTL_SPAR)},
    {GTL_HW_MASS, MASSIVE},
    {GTL_HW_EFFICIENCY, RUNNING},
    {GTL_HW_COEFFICIENT, GTL_ONE_KIND(GTL_FAIRLEAD)},
    {GTL_HW_DIAMETER, GTL_ROPE_KINDS},
    {GTL_HW_SHEAVE_DIAMETER, GTL_ONE_KIND(GTL_BLOCK)},
    {GTL_HW_PIN_DIAMETER, PINNED},
};

/* What a kind takes, in words. */
static const struct {
    unsigned kinds;
    const char *words;
} takings[] = {
    {GTL_ONE_KIND(GTL_BLOCK), "wll, mbs, mass, efficiency, sheave diameter and pin diameter"},
    {GTL_ONE_KIND(GTL_FAIRLEAD), "wll, mbs, mass, friction, efficiency and pin diameter"},
    {GTL_ONE_KIND(GTL_JOINT), "wll, mbs, mass and pin diameter"},
    {GTL_ONE_KIND(GTL_SPAR), "wll, push wll, mbs and mass"},
    {GTL_ROPE_KINDS, "wll, mbs, diameter and material"},
    {PINNED, "wll, mbs and pin diameter"},
};

#define COUNT(table) (sizeof(table) / sizeof(table)[0])

static bool takes(gtl_kind kind, gtl_hardware_number number)
{
    for (size_t i = 0; i < COUNT(given); i++)
        if (given[i].number == number) return gtl_is_of(kind, given[i].kinds);
    return false;
}

static double row_number(const gtl_hardware_row *row, gtl_kind kind, gtl_hardware_number number)
{
    return row && takes(kind, number) ? row->numbers[number] : NAN;
}

double gtl_row_number(const gtl_building *b, int item, gtl_hardware_number number)
{
    return row_number(b->gear[item].row, b->draft->items[item].kind, number);
}

/* What the item states, else what its row does. */
static double either(const gtl_item *item, const gtl_hardware_row *row, gtl_field field,
                     gtl_hardware_number number)
{
    const gtl_number *typed = &item->numbers[field];
    return typed->stated.yes ? typed->value : row_number(row, item->kind, number);
}

/* A row that gives an item nothing changes nothing. */
static void check_gives(gtl_building *b, const gtl_item *item, const gtl_hardware_row *row)
{
    bool gives = !row || (gtl_is_of(item->kind, GTL_ROPE_KINDS) && row->material[0]);
    for (size_t i = 0; i < COUNT(given) && !gives; i++)
        gives = !isnan(row_number(row, item->kind, given[i].number));
    if (gives) return;
    size_t at = 0;
    while (!gtl_is_of(item->kind, takings[at].kinds)) at++;
    gtl_faults_add(
        b->faults, item->rows[GTL_R_HARDWARE].stated.line,
        "`hardware`: [gear %s] gives nothing that %s takes (%s); name another row, or leave it out",
        row->name, gtl_a_kind(item->kind), takings[at].words);
}

static void fill_anchor(gtl_building *b, gtl_item *item, gtl_gear *gear)
{
    const gtl_stated *fitting = &item->rows[GTL_R_FITTING].stated;
    const gtl_stated *axis = &item->axis.stated;
    gear->fitting = gtl_named_row(b, item, GTL_R_FITTING);
    if (fitting->yes && !axis->yes)
        gtl_faults_add(b->faults, fitting->line,
                       "`fitting` needs `axis`: the direction of a straight pull on it, such as axis = down");
    if (axis->yes && !fitting->yes)
        gtl_faults_add(b->faults, axis->line,
                       "`axis` needs `fitting`: what it is the axis of, such as fitting = shoulder-eyebolt");
}

static void fill_connector(gtl_building *b, const gtl_item *item, gtl_gear *gear)
{
    const gtl_number *angle = &item->numbers[GTL_F_SIDE_LOAD];
    gear->side_load = angle->value;
    if (angle->stated.yes) gear->side = gtl_needed_row(b, angle->stated.line, GTL_HW_SIDE_LOAD, "shackle");
}

static gtl_gear blank_gear(void)
{
    return (gtl_gear){.choke_angle = NAN,
                      .side_load = NAN,
                      .diameter = NAN,
                      .sheave_diameter = NAN,
                      .pin_diameter = NAN,
                      .wear = NAN,
                      .wet = NAN};
}

static void fill(gtl_building *b, gtl_item *item, gtl_gear *gear)
{
    gear->row = gtl_named_row(b, item, GTL_R_HARDWARE);
    check_gives(b, item, gear->row);
    gear->diameter = either(item, gear->row, GTL_F_DIAMETER, GTL_HW_DIAMETER);
    gear->sheave_diameter = either(item, gear->row, GTL_F_SHEAVE_DIAMETER, GTL_HW_SHEAVE_DIAMETER);
    gear->pin_diameter = either(item, gear->row, GTL_F_PIN_DIAMETER, GTL_HW_PIN_DIAMETER);
    gear->wear = item->numbers[GTL_F_WEAR].value;
    gear->wet = item->numbers[GTL_F_WET].value;
    if (gtl_is_of(item->kind, GTL_ROPE_KINDS)) gtl_find_rope_gear(b, item, gear);
    if (item->kind == GTL_ANCHOR) fill_anchor(b, item, gear);
    if (item->kind == GTL_CONNECTOR) fill_connector(b, item, gear);
}

void gtl_find_gear(gtl_building *b)
{
    b->rig->hardware = b->draft->hardware;
    b->draft->hardware = NULL;
    b->rig->use = gtl_named_row(b, &b->draft->sheet, GTL_R_USE);
    for (int i = 0; i < b->draft->item_count; i++) {
        b->gear[i] = blank_gear();
        if (!b->draft->items[i].lost) fill(b, &b->draft->items[i], &b->gear[i]);
    }
}
