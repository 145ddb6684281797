/* json_case.c - one case of the report as JSON: its lists, each filled by a function that makes one entry. */
#include "report/json_case.h"
#include "report/geometry.h"
#include "report/json_band.h"
#include "report/json_drop.h"
#include "report/json_value.h"

#include <math.h>

/* What every entry is made from. */
typedef struct gtl_json_source {
    const gtl_sheet *sheet;
    const gtl_rig *rig; /* the sheet's: of parts, and of all that has the same index in both */
    const gtl_rig *own; /* what was worked in this case: of nodes, runs and pieces */
    const gtl_outcome *outcome;
} gtl_json_source;

/* Entry `index` of a list: a new reference, or NULL without memory. */
typedef json_t *gtl_json_entry(const gtl_json_source *source, int index);

/* Whether `index` has an entry in a list. */
typedef bool gtl_json_filter(const gtl_json_source *source, int index);

/* The entries for 0 .. count - 1; of a case that cannot be, none. */
static json_t *list(const gtl_json_source *source, int count, gtl_json_filter *filter, gtl_json_entry *entry)
{
    json_t *array = json_array();
    int last = source->outcome->possible ? count : 0;
    for (int i = 0; array && i < last; i++) {
        if (!filter(source, i) || json_array_append_new(array, entry(source, i)) == 0) continue;
        json_decref(array);
        return NULL;
    }
    return array;
}

static const char *stop_name(const gtl_rig *rig, int stop)
{
    return rig->things[rig->stops[stop].thing].name;
}

/* --- filters --- */

static bool every(const gtl_json_source *source, int index)
{
    (void)source, (void)index;
    return true;
}

static bool is_undecided(const gtl_json_source *source, int run)
{
    const gtl_rig *rig = source->own;
    const bool *here = source->outcome->state->undecided;
    if (!here[run]) return false;
    for (int i = 0; i < run; i++)
        if (here[i] && rig->runs[i].thing == rig->runs[run].thing) return false;
    return true;
}

static bool is_block(const gtl_json_source *source, int component)
{
    gtl_kind kind = source->sheet->components[component].kind;
    return kind == GTL_BLOCK || kind == GTL_FAIRLEAD;
}

static bool is_joint(const gtl_json_source *source, int component)
{
    return source->sheet->components[component].kind == GTL_JOINT;
}

static bool is_anchor(const gtl_json_source *source, int thing)
{
    return source->rig->things[thing].kind == GTL_ANCHOR;
}

static bool is_hand(const gtl_json_source *source, int thing)
{
    return source->rig->things[thing].kind == GTL_HAND;
}

static bool is_guided(const gtl_json_source *source, int node)
{
    return source->own->nodes[node].guided;
}

static bool is_loose(const gtl_json_source *source, int thing)
{
    return gtl_is_loose(source->outcome, thing);
}

static bool is_free(const gtl_json_source *source, int thing)
{
    return !is_loose(source, thing) && !source->own->nodes[source->own->things[thing].node].fixed;
}

/* --- entries --- */

static json_t *undecided(const gtl_json_source *source, int run)
{
    return gtl_json_text(source->own->things[source->own->runs[run].thing].name);
}

static json_t *loose(const gtl_json_source *source, int thing)
{
    return gtl_json_text(source->rig->things[thing].name);
}

static json_t *part(const gtl_json_source *source, int index)
{
    const gtl_rig *rig = source->rig;
    const gtl_part *at = &rig->parts[index];
    return json_pack("{s:o, s:o, s:o, s:o, s:b}", "line", gtl_json_text(rig->lines[at->line].name), "from",
                     gtl_json_text(stop_name(rig, at->from)), "to", gtl_json_text(stop_name(rig, at->to)),
                     "tension", gtl_json_number(gtl_outcome_tension(source->outcome, index)), "slack",
                     (int)gtl_outcome_slack(source->outcome, index));
}

static json_t *block(const gtl_json_source *source, int index)
{
    const gtl_component *component = &source->sheet->components[index];
    const double *rope = source->outcome->forces.rope[component->index];
    int dim = source->rig->dim;
    return json_pack("{s:o, s:o, s:o, s:o}", "block", gtl_json_text(component->name), "force",
                     gtl_json_number(source->outcome->demand[index]), "rope_force",
                     gtl_json_number(gtl_vector_size(rope, dim)), "rope_vector", gtl_json_vector(rope, dim));
}

static json_t *joint(const gtl_json_source *source, int index)
{
    const gtl_component *component = &source->sheet->components[index];
    const double *governing = source->outcome->forces.governing[component->index];
    int dim = source->rig->dim;
    return json_pack("{s:o, s:o, s:o}", "joint", gtl_json_text(component->name), "force",
                     gtl_json_number(gtl_vector_size(governing, dim)), "vector",
                     gtl_json_vector(governing, dim));
}

static json_t *anchor(const gtl_json_source *source, int thing)
{
    const double *pull = source->outcome->forces.passed[thing];
    int dim = source->rig->dim;
    return json_pack("{s:o, s:o, s:o, s:o}", "anchor", gtl_json_text(source->rig->things[thing].name),
                     "force", gtl_json_number(gtl_vector_size(pull, dim)), "vector",
                     gtl_json_vector(pull, dim), "from_vertical",
                     gtl_json_number(gtl_from_vertical(pull, dim)));
}

static json_t *guide(const gtl_json_source *source, int node)
{
    const double *push = source->outcome->forces.track[node];
    int dim = source->rig->dim;
    return json_pack("{s:o, s:o, s:o}", "thing",
                     gtl_json_text(source->own->things[source->own->nodes[node].root].name), "force",
                     gtl_json_number(gtl_vector_size(push, dim)), "vector", gtl_json_vector(push, dim));
}

/* How far rope comes to a hand for one unit of lift [1]; NaN where nothing is lifted. */
static double travel_ratio(const gtl_json_source *source, int hand)
{
    if (isnan(source->outcome->velocity_ratio)) return NAN;
    for (int i = 0; i < source->own->piece_count; i++)
        if (source->own->pieces[i].hand == hand) return -source->outcome->state->payout[i];
    return NAN;
}

static json_t *hand(const gtl_json_source *source, int index)
{
    const gtl_thing *thing = &source->rig->things[index];
    double force = gtl_outcome_pull(source->outcome, index);
    bool gone = isnan(force) && source->outcome->kind != GTL_DROP;
    return json_pack("{s:o, s:o, s:o, s:o}", "hand", gtl_json_text(thing->name), "force",
                     gtl_json_number(gone ? 0 : force), "travel_ratio",
                     gtl_json_number(travel_ratio(source, index)), "limit", gtl_json_number(thing->limit));
}

static json_t *place(const gtl_json_source *source, int index)
{
    const gtl_thing *thing = &source->rig->things[index];
    const double *at = source->outcome->state->at + 3 * source->own->things[index].node;
    return json_pack("{s:o, s:o, s:o}", "thing", gtl_json_text(thing->name), "at",
                     gtl_json_vector(at, source->rig->dim), "moved",
                     gtl_json_number(gtl_off_drawing(source->rig, source->outcome, index)));
}

/* --- the case --- */

static const struct gtl_json_list {
    const char *name;
    enum { RUNS, PARTS, COMPONENTS, THINGS, NODES } over;
    gtl_json_filter *filter;
    gtl_json_entry *entry;
} lists[] = {
    {"undecided", RUNS, is_undecided, undecided},
    {"loose", THINGS, is_loose, loose},
    {"lines", PARTS, every, part},
    {"blocks", COMPONENTS, is_block, block},
    {"joints", COMPONENTS, is_joint, joint},
    {"anchors", THINGS, is_anchor, anchor},
    {"guides", NODES, is_guided, guide},
    {"hands", THINGS, is_hand, hand},
    {"places", THINGS, is_free, place},
};

static bool put_lists(json_t *object, const gtl_json_source *source)
{
    const gtl_rig *rig = source->rig;
    const int counts[] = {[RUNS] = source->own->run_count,
                          [PARTS] = rig->part_count,
                          [COMPONENTS] = source->sheet->component_count,
                          [THINGS] = rig->thing_count,
                          [NODES] = source->own->node_count};
    for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
        json_t *array = list(source, counts[lists[i].over], lists[i].filter, lists[i].entry);
        if (json_object_set_new(object, lists[i].name, array) != 0) return false;
    }
    return true;
}

/* The hand that is worked out: of two the one that pulls in this case. */
static json_t *hauled_by(const gtl_outcome *outcome)
{
    int hand = outcome->rig->hand;
    return outcome->possible && hand >= 0 ? gtl_json_text(outcome->rig->things[hand].name) : json_null();
}

json_t *gtl_json_case(const gtl_sheet *sheet, const gtl_outcome *outcome)
{
    gtl_json_source source = {.sheet = sheet, .rig = sheet->rig, .own = outcome->rig, .outcome = outcome};
    double factor = outcome->kind == GTL_LOST ? sheet->rig->loss_factor : 1;
    json_t *object = json_pack(
        "{s:s, s:b, s:o, s:o, s:o, s:o, s:o, s:o, s:o}", "case", outcome->name, "possible",
        (int)outcome->possible, "why", outcome->possible ? json_null() : gtl_json_text(outcome->reason),
        "factor", gtl_json_number(factor), "residual",
        gtl_json_number(outcome->possible ? outcome->state->residual : NAN), "velocity_ratio",
        gtl_json_number(outcome->velocity_ratio), "estimated_advantage",
        gtl_json_number(outcome->estimated_advantage), "efficiency", gtl_json_number(outcome->efficiency),
        "hauled_by", hauled_by(outcome));
    bool made = object && put_lists(object, &source);
    made = made && json_object_set_new(object, "band", gtl_json_band(sheet, outcome)) == 0;
    if (made && outcome->kind == GTL_DROP)
        made = json_object_set_new(object, "drop", gtl_json_drop(sheet, outcome)) == 0;
    if (made) return object;
    json_decref(object);
    return NULL;
}
