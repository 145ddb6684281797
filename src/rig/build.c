/* build.c - a draft to a rig: everything gets its place in the rig's arrays, then names become indices. */
#include "rig/build.h"

#include "base/text.h"
#include "rig/building.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

void *gtl_room(gtl_building *b, int count, size_t size)
{
    void *room = calloc(count > 0 ? (size_t)count : 1, size);
    if (!room) b->faults->out_of_memory = true;
    return room;
}

const gtl_item *gtl_thing_item(const gtl_building *b, int thing)
{
    return &b->draft->items[b->thing_item[thing]];
}

const gtl_item *gtl_line_item(const gtl_building *b, int line)
{
    return &b->draft->items[b->line_item[line]];
}

static char *keep_text(gtl_building *b, const char *text)
{
    char *copy = gtl_text_copy(text, strlen(text));
    if (!copy) b->faults->out_of_memory = true;
    return copy;
}

static bool is_stated(const gtl_item *item, gtl_field field)
{
    return item->numbers[field].stated.yes;
}

static double value(const gtl_item *item, gtl_field field)
{
    return item->numbers[field].value;
}

static gtl_rating rating_of(const gtl_building *b, const gtl_item *item)
{
    gtl_rating rating = {value(item, GTL_F_WLL), value(item, GTL_F_PUSH_WLL), value(item, GTL_F_MBS),
                         value(item, GTL_F_DESIGN_FACTOR)};
    if (!is_stated(item, GTL_F_DESIGN_FACTOR)) rating.design_factor = b->rig->design_factor;
    return rating;
}

/* Its weight, stated or of the mass in its row; NaN where there is neither, or where it cannot be read. */
static double weight_of(gtl_building *b, const gtl_item *item, int at)
{
    if (is_stated(item, GTL_F_WEIGHT)) return value(item, GTL_F_WEIGHT);
    if (is_stated(item, GTL_F_MASS)) return value(item, GTL_F_MASS) * b->rig->gravity;
    double mass =
        gtl_is_timber(item) ? b->timber[at].masses[b->timber[at].end] : gtl_row_number(b, at, GTL_HW_MASS);
    if (!isnan(mass)) b->draft->mass_typed = true;
    return mass * b->rig->gravity;
}

/* A whole number that is 0 where it is not stated, or not readable. */
static int whole(const gtl_item *item, gtl_field field)
{
    double number = value(item, field);
    return number > 0 ? (int)number : 0;
}

/* Its own friction, else its row's, else, of a block, the rig's. */
static void fill_friction(const gtl_building *b, gtl_thing *thing, const gtl_item *item, int at)
{
    bool own = is_stated(item, GTL_F_EFFICIENCY) || is_stated(item, GTL_F_FRICTION);
    thing->efficiency = own ? value(item, GTL_F_EFFICIENCY) : gtl_row_number(b, at, GTL_HW_EFFICIENCY);
    thing->friction = own ? value(item, GTL_F_FRICTION) : gtl_row_number(b, at, GTL_HW_COEFFICIENT);
    const gtl_number *efficiency = &item->numbers[GTL_F_EFFICIENCY],
                     *friction = &item->numbers[GTL_F_FRICTION];
    thing->freest = efficiency->high;
    if (!isnan(friction->high)) {
        thing->friction = friction->high;
        thing->freest = friction->value;
    }
    if (item->kind == GTL_BLOCK && !own && isnan(thing->efficiency)) {
        thing->efficiency = b->rig->efficiency;
        thing->freest = b->rig->freest;
    }
}

static void fill_bend(const gtl_building *b, gtl_thing *thing, const gtl_item *item, int at)
{
    thing->sheaves = whole(item, GTL_F_SHEAVES);
    fill_friction(b, thing, item, at);
    thing->friction_stated = !isnan(thing->efficiency) || !isnan(thing->friction);
    thing->wrap = value(item, GTL_F_WRAP);
    thing->turns = whole(item, GTL_F_TURNS);
    thing->clear = value(item, GTL_F_CLEAR);
}

static void fill_hand(gtl_thing *thing, const gtl_item *item)
{
    thing->pull = value(item, GTL_F_PULL);
    thing->people = whole(item, GTL_F_PEOPLE);
    thing->limit = thing->people > 0 ? thing->people * value(item, GTL_F_EACH) : value(item, GTL_F_LIMIT);
}

static void add_thing(gtl_building *b, const gtl_item *item, int at)
{
    gtl_thing *thing = &b->rig->things[b->rig->thing_count++];
    b->thing_item[b->index[at]] = at;
    *thing = (gtl_thing){.kind = item->kind, .line = item->line, .on = -1, .node = -1, .other = -1};
    thing->name = keep_text(b, item->name);
    for (int i = 0; i < 3; i++) thing->at[i] = i < item->at.count ? item->at.at[i] : item->at.count ? 0 : NAN;
    thing->guided = item->guide.yes || item->kind == GTL_ARBOR;
    double weight = weight_of(b, item, at);
    thing->weight_stated = !isnan(weight);
    thing->weight = thing->weight_stated ? weight : 0;
    thing->rating = rating_of(b, item);
    thing->gear = b->gear[at];
    fill_bend(b, thing, item, at);
    thing->fall = value(item, GTL_F_FALL);
    thing->run_out = value(item, GTL_F_RUN);
    fill_hand(thing, item);
    thing->each = value(item, GTL_F_COUNTERWEIGHT) * b->rig->gravity;
}

static void add_line(gtl_building *b, const gtl_item *item, int at)
{
    gtl_line *line = &b->rig->lines[b->rig->line_count++];
    b->line_item[b->index[at]] = at;
    *line = (gtl_line){.kind = item->kind, .line = item->line};
    line->name = keep_text(b, item->name);
    line->length = value(item, GTL_F_LENGTH);
    line->spare = value(item, GTL_F_SPARE);
    line->have = NAN;
    line->stretch = value(item, GTL_F_STRETCH);
    line->stretch_force = value(item, GTL_F_STRETCH_FORCE);
    double weight = weight_of(b, item, at);
    line->weight = isnan(weight) ? 0 : weight;
    line->rating = rating_of(b, item);
    line->gear = b->gear[at];
}

static void add_connector(gtl_building *b, const gtl_item *item, int at)
{
    gtl_connector *connector = &b->rig->connectors[b->rig->connector_count++];
    *connector = (gtl_connector){.line = item->line, .thing = -1, .stop = -1};
    connector->name = keep_text(b, item->name);
    connector->rating = rating_of(b, item);
    connector->gear = b->gear[at];
}

/* Where each item goes: things, lines, connectors and battens are numbered in the order of the file. */
static void number_items(gtl_building *b, int *things, int *lines, int *connectors, int *battens)
{
    for (int i = 0; i < b->draft->item_count; i++) {
        const gtl_item *item = &b->draft->items[i];
        int *next = gtl_is_of(item->kind, GTL_THING_KINDS)  ? things
                    : gtl_is_of(item->kind, GTL_LINE_KINDS) ? lines
                    : item->kind == GTL_BATTEN              ? battens
                                                            : connectors;
        b->index[i] = item->lost ? -1 : (*next)++;
    }
}

/* All arrays whose size is known from the draft; false without memory. */
static bool make_room(gtl_building *b)
{
    gtl_rig *rig = b->rig;
    int things = 0, lines = 0, connectors = 0, battens = 0;
    b->index = gtl_room(b, b->draft->item_count, sizeof *b->index);
    if (!b->index) return false;
    number_items(b, &things, &lines, &connectors, &battens);
    b->gear = gtl_room(b, b->draft->item_count, sizeof *b->gear);
    b->timber = gtl_room(b, b->draft->item_count, sizeof *b->timber);
    b->thing_item = gtl_room(b, things, sizeof *b->thing_item);
    b->line_item = gtl_room(b, lines, sizeof *b->line_item);
    b->used = gtl_room(b, connectors, sizeof *b->used);
    rig->things = gtl_room(b, things, sizeof *rig->things);
    rig->nodes = gtl_room(b, things, sizeof *rig->nodes);
    rig->lines = gtl_room(b, lines, sizeof *rig->lines);
    rig->connectors = gtl_room(b, connectors, sizeof *rig->connectors);
    rig->stops = gtl_room(b, b->draft->ref_count, sizeof *rig->stops);
    rig->vias = gtl_room(b, b->draft->via_count, sizeof *rig->vias);
    rig->battens = gtl_room(b, battens, sizeof *rig->battens);
    rig->picks = gtl_room(b, b->draft->pick_count, sizeof *rig->picks);
    rig->hung = gtl_room(b, b->draft->hung_count, sizeof *rig->hung);
    if (b->faults->out_of_memory) return false;
    for (int i = 0; i < connectors; i++) b->used[i] = -1;
    return true;
}

static void fill_sheet(gtl_building *b)
{
    gtl_rig *rig = b->rig;
    const gtl_draft *draft = b->draft;
    rig->file = keep_text(b, b->faults->file ? b->faults->file : "");
    rig->title = keep_text(b, draft->remarks[GTL_TITLE]);
    rig->place = keep_text(b, draft->remarks[GTL_PLACE]);
    rig->date = keep_text(b, draft->remarks[GTL_DATE]);
    rig->by = keep_text(b, draft->remarks[GTL_BY]);
    rig->note = keep_text(b, draft->remarks[GTL_NOTE]);
    rig->us_units = draft->us_units;
    rig->gravity = draft->gravity;
    rig->gravity_stated = is_stated(&draft->sheet, GTL_F_GRAVITY);
    rig->efficiency = value(&draft->sheet, GTL_F_EFFICIENCY);
    rig->freest = draft->sheet.numbers[GTL_F_EFFICIENCY].high;
    rig->design_factor = value(&draft->sheet, GTL_F_DESIGN_FACTOR);
    rig->lift = value(&draft->sheet, GTL_F_LIFT);
    rig->load = rig->hand = rig->driven = rig->dropped = -1;
}

static void add_items(gtl_building *b)
{
    for (int i = 0; i < b->draft->item_count; i++) {
        const gtl_item *item = &b->draft->items[i];
        if (item->lost) continue;
        if (gtl_is_of(item->kind, GTL_THING_KINDS)) {
            add_thing(b, item, i);
        } else if (gtl_is_of(item->kind, GTL_LINE_KINDS)) {
            add_line(b, item, i);
        } else if (item->kind == GTL_CONNECTOR) {
            add_connector(b, item, i);
        }
    }
}

static void build(gtl_building *b)
{
    fill_sheet(b);
    if (!make_room(b)) return;
    gtl_find_gear(b);
    gtl_find_timber(b);
    gtl_weigh_battens(b);
    if (b->faults->out_of_memory) return;
    add_items(b);
    gtl_keep_timber(b);
    gtl_check_items(b);
    gtl_resolve(b);
    gtl_pair_hands(b);
    gtl_build_nodes(b);
    gtl_settle_axes(b);
    gtl_settle_ropes(b);
    gtl_check_lines(b);
    if (b->faults->out_of_memory || !b->draft->whole) return;
    gtl_cut_lines(b);
    if (b->faults->out_of_memory) return;
    gtl_check_rig(b);
    gtl_check_gear(b);
    gtl_check_timber(b);
}

gtl_rig *gtl_build(gtl_draft *draft, gtl_fault_list *faults)
{
    gtl_building b = {.draft = draft, .faults = faults, .load = -1};
    b.rig = gtl_room(&b, 1, sizeof *b.rig);
    if (b.rig) build(&b);
    free(b.index);
    free(b.gear);
    free(b.timber);
    free(b.thing_item);
    free(b.line_item);
    free(b.used);
    if (faults->count == 0 && !faults->out_of_memory) return b.rig;
    gtl_rig_free(b.rig);
    return NULL;
}
