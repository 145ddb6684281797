/* check_gear.c - directions of anchors; and whether diameters and tables that are typed change anything. */
#include "rig/building.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* ---- axes ---- */

static void settle_axis(gtl_building *b, const gtl_item *item, double axis[3])
{
    const gtl_direction_typed *typed = &item->axis;
    int dim = b->rig->dim;
    double length = hypot(hypot(typed->to[0], typed->to[1]), typed->to[2]);
    if (typed->upright != 0) {
        axis[dim - 1] = typed->upright;
    } else if (typed->count == dim) {
        for (int k = 0; k < dim; k++) axis[k] = typed->to[k] / length;
    } else if (typed->count > 0) {
        gtl_faults_add(
            b->faults, typed->stated.line,
            "`axis` has %d number%s, and every `at` %d length%s; give it as many, or write down, or up",
            typed->count, typed->count == 1 ? "" : "s", dim, dim == 1 ? "" : "s");
    }
}

void gtl_settle_axes(gtl_building *b)
{
    for (int i = 0; i < b->rig->thing_count && b->rig->dim > 0; i++)
        settle_axis(b, gtl_thing_item(b, i), b->rig->things[i].gear.axis);
}

/* ---- diameters ---- */

/* What a line with a diameter lies round, as far as can be told. */
typedef struct bends {
    bool *sheave;    /* one a thing: a line with a diameter runs over its sheaves */
    bool *pin;       /* one a thing: such a line runs over it or is tied round it */
    bool *connector; /* one a connector: such a line is tied round it */
    bool *line;      /* one a line: something with a diameter is in it */
} bends;

/* Whether a diameter is there: stated, or of a row, or perhaps, where something could not be read. */
static bool may_have(const gtl_item *item, gtl_field field, double diameter)
{
    return item->rough || item->numbers[field].stated.yes || !isnan(diameter);
}

/* Tied with connectors, a line lies in the last of them; over a block's sheave it lies where it runs. */
static void note_stop(const gtl_building *b, int line, const gtl_stop *stop, const bool *connector_may,
                      const bends *met)
{
    const gtl_rig *rig = b->rig;
    const gtl_thing *thing = &rig->things[stop->thing];
    const gtl_item *item = gtl_thing_item(b, stop->thing);
    bool thick = may_have(gtl_line_item(b, line), GTL_F_DIAMETER, rig->lines[line].gear.diameter);
    thick |= !stop->tied && gtl_asks_for_rope(b); /* what lies round it is counted, however thin */
    if (stop->tied && stop->via.count > 0) {
        int last = rig->vias[stop->via.first + stop->via.count - 1];
        met->connector[last] = met->connector[last] || thick;
        met->line[line] = met->line[line] || connector_may[last];
    } else if (!stop->tied && thing->kind == GTL_BLOCK) {
        met->sheave[stop->thing] = met->sheave[stop->thing] || thick;
        met->line[line] =
            met->line[line] || may_have(item, GTL_F_SHEAVE_DIAMETER, thing->gear.sheave_diameter);
    } else {
        met->pin[stop->thing] = met->pin[stop->thing] || thick;
        met->line[line] = met->line[line] || may_have(item, GTL_F_PIN_DIAMETER, thing->gear.pin_diameter);
    }
}

static void note_stops(const gtl_building *b, const bool *connector_may, const bends *met)
{
    for (int i = 0; i < b->rig->line_count; i++) {
        const gtl_line *line = &b->rig->lines[i];
        for (int k = 0; k < line->stop_count; k++)
            note_stop(b, i, &b->rig->stops[line->first_stop + k], connector_may, met);
    }
}

static void refuse(gtl_building *b, const gtl_item *item, gtl_field field, bool changes, const char *text)
{
    const gtl_stated *stated = &item->numbers[field].stated;
    if (stated->yes && !changes) gtl_faults_add(b->faults, stated->line, "%s", text);
}

static void check_item(gtl_building *b, int at, const bends *met)
{
    static const char sheave[] =
        "`sheave diameter` changes nothing: no line with a `diameter` runs over this "
        "block; state the line's, or leave it out";
    static const char pin[] =
        "`pin diameter` changes nothing: no line with a `diameter` lies round it; state the "
        "line's, or leave it out";
    static const char last[] =
        "`pin diameter` changes nothing: no line with a `diameter` is tied round it (of "
        "several connectors at a stop, the line lies in the last); state the line's, or "
        "leave it out";
    static const char line[] = "`diameter` changes nothing: nothing that the line lies round has a `sheave "
                               "diameter` or a `pin diameter`; state one, or leave it out";
    const gtl_item *item = &b->draft->items[at];
    int index = b->index[at];
    if (item->lost) return;
    if (item->kind == GTL_CONNECTOR) {
        refuse(b, item, GTL_F_PIN_DIAMETER, met->connector[index], last);
    } else if (gtl_is_of(item->kind, GTL_LINE_KINDS)) {
        refuse(b, item, GTL_F_DIAMETER, met->line[index], line);
    } else {
        refuse(b, item, GTL_F_SHEAVE_DIAMETER, met->sheave[index], sheave);
        refuse(b, item, GTL_F_PIN_DIAMETER, met->pin[index], pin);
    }
}

/* Which connectors may have a diameter, one a connector. */
static void note_connectors(const gtl_building *b, bool *may)
{
    for (int i = 0; i < b->draft->item_count; i++) {
        const gtl_item *item = &b->draft->items[i];
        if (item->kind == GTL_CONNECTOR && !item->lost)
            may[b->index[i]] = may_have(item, GTL_F_PIN_DIAMETER, b->gear[i].pin_diameter);
    }
}

static void check_diameters(gtl_building *b)
{
    const gtl_rig *rig = b->rig;
    bends met = {gtl_room(b, rig->thing_count, sizeof(bool)), gtl_room(b, rig->thing_count, sizeof(bool)),
                 gtl_room(b, rig->connector_count, sizeof(bool)), gtl_room(b, rig->line_count, sizeof(bool))};
    bool *connector_may = gtl_room(b, rig->connector_count, sizeof(bool));
    if (!b->faults->out_of_memory) {
        note_connectors(b, connector_may);
        note_stops(b, connector_may, &met);
        for (int i = 0; i < b->draft->item_count; i++) check_item(b, i, &met);
    }
    free(met.sheave);
    free(met.pin);
    free(met.connector);
    free(met.line);
    free(connector_may);
}

/* ---- tables ---- */

/* Mark a row, if there is one, in an array of one a row. */
static void use(const gtl_rig *rig, bool *used, const gtl_hardware_row *row)
{
    if (row) used[row - rig->hardware->rows] = true;
}

static void use_gear(const gtl_rig *rig, bool *used, const gtl_gear *gear)
{
    const gtl_hardware_row *rows[] = {gear->row,         gear->material, gear->knot,
                                      gear->termination, gear->bend,     gear->hitch,
                                      gear->choke,       gear->fitting,  gear->side};
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) use(rig, used, rows[i]);
}

static bool same_file(const gtl_hardware_row *one, const gtl_hardware_row *other)
{
    return one->shipped == other->shipped && strcmp(one->file, other->file) == 0;
}

/* Each file of the user's is used if one of its rows is. The rows of a file follow each other. */
static void check_files(gtl_building *b, const bool *used)
{
    const gtl_hardware *set = b->rig->hardware;
    for (int i = 0, next; i < set->row_count && !set->rows[i].shipped; i = next) {
        bool any = false;
        for (next = i; next < set->row_count && same_file(&set->rows[next], &set->rows[i]); next++)
            any = any || used[next];
        if (any) continue;
        gtl_faults_add(
            b->faults, b->draft->sheet.tables.stated.line,
            "`tables`: nothing of `%s` is used; name a row of it, such as `%s`, or leave the file out",
            set->rows[i].file, set->rows[i].name);
    }
}

/* A rough item may have named any row. */
static bool any_rough(const gtl_draft *draft)
{
    bool rough = draft->tables_missing || draft->sheet.rough;
    for (int i = 0; i < draft->item_count && !rough; i++) rough = draft->items[i].rough;
    return rough;
}

static void check_tables(gtl_building *b)
{
    if (!b->draft->sheet.tables.stated.yes || any_rough(b->draft)) return;
    bool *used = gtl_room(b, b->rig->hardware->row_count, sizeof *used);
    if (!used) return;
    use(b->rig, used, b->rig->use);
    for (int i = 0; i < b->rig->batten_count; i++) use(b->rig, used, b->rig->battens[i].pipe);
    for (int i = 0; i < b->rig->wood_count; i++) use(b->rig, used, b->rig->woods[i].timber.row);
    for (int i = 0; i < b->draft->item_count; i++) use_gear(b->rig, used, &b->gear[i]);
    check_files(b, used);
    free(used);
}

void gtl_check_gear(gtl_building *b)
{
    check_diameters(b);
    check_tables(b);
}
