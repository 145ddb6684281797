/* sketch_rig.c - from a rig that was read back to a sketch of it. */
#include "laws/sketch.h"
#include <math.h>

static sketch_via copy_via(sketch *s, gtl_via via)
{
    return via.count > 0 ? sketch_connectors(s, via.count) : (sketch_via){0, 0};
}

static void copy_thing(sketch *s, const gtl_rig *rig, const gtl_thing *thing)
{
    static const int axes[4][3] = {{0}, {2}, {0, 2}, {0, 1, 2}};
    sketch_thing *t = &s->things[sketch_thing_at(s, thing->kind, 0, 0, 0)];
    for (int k = 0; k < rig->dim; k++) t->at[axes[rig->dim][k]] = thing->at[k];
    t->on = thing->on;
    t->via = copy_via(s, thing->via);
    t->guided = thing->guided;
    t->pull = thing->kind == GTL_HAND ? thing->pull : NAN;
    if (thing->weight_stated) t->weight = thing->weight;
    if ((thing->kind != GTL_BLOCK && thing->kind != GTL_FAIRLEAD) || !thing->friction_stated) return;
    bool rubs = thing->kind == GTL_FAIRLEAD && !isnan(thing->friction);
    t->friction = rubs ? thing->friction : NAN;
    t->efficiency = rubs ? NAN : thing->efficiency;
    t->wrap = thing->wrap;
    t->turns = thing->turns;
}

static void copy_line(sketch *s, const gtl_rig *rig, const gtl_line *line)
{
    int index = sketch_line_of(s, line->kind);
    for (int i = 0; i < line->stop_count; i++) {
        const gtl_stop *stop = &rig->stops[line->first_stop + i];
        sketch_stop_at(s, index, stop->thing);
        s->lines[index].stops[i].via = copy_via(s, stop->via);
    }
    s->lines[index].length = line->length;
    if (line->weight > 0) s->lines[index].weight = line->weight;
}

bool sketch_of_rig(sketch *s, const gtl_rig *rig)
{
    if (rig->thing_count > SKETCH_THINGS || rig->line_count > SKETCH_LINES ||
        rig->connector_count > SKETCH_CONNECTORS)
        return false;
    sketch_begin(s, rig->dim);
    for (int i = 0; i < rig->thing_count; i++) copy_thing(s, rig, &rig->things[i]);
    for (int i = 0; i < rig->line_count; i++) copy_line(s, rig, &rig->lines[i]);
    s->load = rig->load;
    return true;
}
