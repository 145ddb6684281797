/* gear_items.c - see gear_items.h. */
#include "report/gear_items.h"
#include "rate/rating.h"

#include <math.h>
#include <stdlib.h>

int gtl_gear_count(const gtl_rig *rig)
{
    return rig->thing_count + rig->line_count + rig->connector_count;
}

gtl_gear_item gtl_gear_item_at(const gtl_rig *rig, int index)
{
    if (index < rig->thing_count) {
        const gtl_thing *thing = &rig->things[index];
        return (gtl_gear_item){
            .kind = thing->kind, .name = thing->name, .gear = &thing->gear, .thing = thing};
    }
    index -= rig->thing_count;
    if (index < rig->line_count) {
        const gtl_line *line = &rig->lines[index];
        return (gtl_gear_item){.kind = line->kind, .name = line->name, .gear = &line->gear, .line = line};
    }
    const gtl_connector *connector = &rig->connectors[index - rig->line_count];
    return (gtl_gear_item){.kind = GTL_CONNECTOR, .name = connector->name, .gear = &connector->gear};
}

/* Its weight, where its kind has one [N]. */
static double weight_of(const gtl_gear_item *item)
{
    if (item->thing) return item->thing->weight_stated ? item->thing->weight : NAN;
    return item->kind == GTL_SPAR ? item->line->weight : NAN;
}

double gtl_gear_worked(const gtl_rig *rig, const gtl_gear_item *item, gtl_hardware_number number)
{
    switch (number) {
    case GTL_HW_MASS:
        return weight_of(item) / rig->gravity;
    case GTL_HW_EFFICIENCY:
        return item->thing ? item->thing->efficiency : NAN;
    case GTL_HW_COEFFICIENT:
        return item->thing ? item->thing->friction : NAN;
    case GTL_HW_DIAMETER:
        return item->gear->diameter;
    case GTL_HW_SHEAVE_DIAMETER:
        return item->gear->sheave_diameter;
    case GTL_HW_PIN_DIAMETER:
        return item->gear->pin_diameter;
    default:
        return NAN;
    }
}

static void mark(bool *used, const gtl_rig *rig, const gtl_hardware_row *row)
{
    if (row) used[row - rig->hardware->rows] = true;
}

static void mark_item(bool *used, const gtl_rig *rig, const gtl_gear_item *item)
{
    const gtl_gear *gear = item->gear;
    const char *at;
    mark(used, rig, gear->row);
    mark(used, rig, gear->material);
    mark(used, rig, gear->knot);
    mark(used, rig, gear->termination);
    mark(used, rig, gear->hitch);
    mark(used, rig, gear->choke);
    mark(used, rig, gear->fitting);
    mark(used, rig, gear->side);
    if (gear->bend && !isnan(gtl_tightest_bend(rig, item->line, &at))) mark(used, rig, gear->bend);
}

bool *gtl_gear_rows(const gtl_rig *rig, int *count)
{
    *count = rig->hardware ? rig->hardware->row_count : 0;
    bool *used = *count > 0 ? calloc((size_t)*count, sizeof *used) : NULL;
    if (!used) return NULL;
    mark(used, rig, rig->use);
    for (int i = 0; i < rig->batten_count; i++) mark(used, rig, rig->battens[i].pipe);
    for (int i = 0; i < rig->wood_count; i++) mark(used, rig, rig->woods[i].timber.row);
    for (int i = 0; i < gtl_gear_count(rig); i++) {
        gtl_gear_item item = gtl_gear_item_at(rig, i);
        mark_item(used, rig, &item);
    }
    return used;
}
