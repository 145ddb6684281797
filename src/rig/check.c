/* check.c - the rig as a whole: whether everything is held, hauled and used. */
#include "rig/building.h"

#include <math.h>
#include <stdlib.h>

/* What reaches a node. */
typedef struct reach {
    bool touched; /* any stop of any line */
    bool tied;    /* a line is tied to it */
    bool loaded;  /* a load is on it */
} reach;

static const gtl_node *node_of(const gtl_rig *rig, int thing)
{
    return &rig->nodes[rig->things[thing].node];
}

static void find_reach(const gtl_rig *rig, reach *reaches)
{
    for (int i = 0; i < rig->stop_count; i++) {
        reach *at = &reaches[rig->things[rig->stops[i].thing].node];
        at->touched = true;
        if (rig->stops[i].tied) at->tied = true;
    }
    for (int i = 0; i < rig->thing_count; i++) {
        if (gtl_is_of(rig->things[i].kind, GTL_WEIGHT_KINDS)) reaches[rig->things[i].node].loaded = true;
    }
}

static void check_held(gtl_building *b, const gtl_node *node, const reach *at)
{
    const gtl_thing *root = &b->rig->things[node->root];
    if (node->fixed) return;
    if (!at->touched) {
        gtl_faults_add(
            b->faults, root->line,
            "nothing holds `%s`: no line reaches it; name it in a path, or give it `on` what it sits on",
            root->name);
    } else if (!at->tied && !at->loaded) {
        gtl_faults_add(b->faults, root->line,
                       "nothing holds `%s`: if it hangs on the structure give it `on = ANCHOR`, else a load "
                       "or a tied line",
                       root->name);
    }
}

static void check_nodes(gtl_building *b)
{
    reach *reaches = gtl_room(b, b->rig->node_count, sizeof *reaches);
    bool fixed = false;
    if (!reaches) return;
    find_reach(b->rig, reaches);
    for (int i = 0; i < b->rig->node_count; i++) {
        check_held(b, &b->rig->nodes[i], &reaches[i]);
        fixed = fixed || b->rig->nodes[i].fixed;
    }
    if (!fixed)
        gtl_faults_add(b->faults, 0,
                       "nothing here is fixed; add an anchor, such as [anchor beam] with at = 5.5 m");
    free(reaches);
}

static void check_connectors(gtl_building *b)
{
    for (int i = 0; i < b->rig->connector_count; i++) {
        if (b->used[i] >= 0) continue;
        gtl_faults_add(b->faults, b->rig->connectors[i].line,
                       "connector `%s` stands nowhere; name it after a `via`, or leave it out",
                       b->rig->connectors[i].name);
    }
}

/* How often the lines pass each thing, running or tied. */
static void count_stops(const gtl_rig *rig, int *counts, bool running)
{
    for (int i = 0; i < rig->stop_count; i++) {
        if (rig->stops[i].tied != running) counts[rig->stops[i].thing]++;
    }
}

static void check_sheaves(gtl_building *b, const int *passes)
{
    for (int i = 0; i < b->rig->thing_count; i++) {
        const gtl_thing *thing = &b->rig->things[i];
        gtl_stated stated = gtl_thing_item(b, i)->numbers[GTL_F_SHEAVES].stated;
        if (thing->sheaves == 0 || passes[i] <= thing->sheaves) continue;
        gtl_faults_add(b->faults, stated.line,
                       "`%s` has %d sheave%s, but the paths pass it %d times; mend one or the other",
                       thing->name, thing->sheaves, thing->sheaves == 1 ? "" : "s", passes[i]);
    }
}

static bool has_known_pull(const gtl_building *b, int thing)
{
    return gtl_thing_item(b, thing)->numbers[GTL_F_PULL].stated.yes;
}

/* Each hand hauls on one rope; at most one pull is worked out. */
static void check_hand(gtl_building *b, int index, int ropes)
{
    const gtl_thing *hand = &b->rig->things[index];
    if (ropes != 1) {
        gtl_faults_add(b->faults, hand->line, "hand `%s` %s; %s", hand->name,
                       ropes == 0 ? "hauls on nothing" : "hauls on several ropes",
                       ropes == 0 ? "put it at an end of a rope's path" : "give each rope a hand of its own");
    }
    if (has_known_pull(b, index) || hand->let_go) return;
    if (b->rig->hand < 0) {
        b->rig->hand = index;
        return;
    }
    const gtl_thing *first = &b->rig->things[b->rig->hand];
    gtl_faults_add(b->faults, hand->line,
                   "hand `%s` has no `pull`, nor has `%s` (line %d); one pull can be worked out, so give the "
                   "other its `pull`",
                   hand->name, first->name, first->line);
}

static void check_stops(gtl_building *b)
{
    int *passes = gtl_room(b, b->rig->thing_count, sizeof *passes);
    int *ties = gtl_room(b, b->rig->thing_count, sizeof *ties);
    if (passes && ties) {
        count_stops(b->rig, passes, true);
        count_stops(b->rig, ties, false);
        check_sheaves(b, passes);
        for (int i = 0; i < b->rig->thing_count; i++) {
            if (b->rig->things[i].kind == GTL_HAND) check_hand(b, i, ties[i]);
        }
    }
    free(passes);
    free(ties);
}

/* Whether a piece touches anything that can move. */
static bool can_move(const gtl_rig *rig, const gtl_piece *piece)
{
    for (int i = 0; i < piece->part_count; i++) {
        const gtl_part *part = &rig->parts[piece->first_part + i];
        if (!node_of(rig, rig->stops[part->from].thing)->fixed) return true;
        if (!node_of(rig, rig->stops[part->to].thing)->fixed) return true;
    }
    return false;
}

/* A piece between fixed points carries what it was stretched to, which nobody knows; a known pull is known.
 */
static void check_pieces(gtl_building *b)
{
    for (int i = 0; i < b->rig->piece_count; i++) {
        const gtl_piece *piece = &b->rig->pieces[i];
        const gtl_line *line = &b->rig->lines[piece->line];
        if (piece->rule == GTL_DRIVEN) b->rig->driven = i;
        if (piece->rule == GTL_PULLED || can_move(b->rig, piece)) continue;
        gtl_faults_add(b->faults, line->line,
                       "%s `%s` reaches nothing that can move, so its force cannot be worked out; leave it "
                       "out, or tie it to a free body",
                       gtl_kind_name(line->kind), line->name);
    }
}

/* A batten is one, whatever its picks; of several loads one that may be meant into *first. */
static int count_loads(const gtl_building *b, int *first)
{
    const gtl_rig *rig = b->rig;
    int count = 0;
    for (int i = rig->thing_count - 1; i >= 0; i--) {
        if (rig->things[i].kind != GTL_LOAD || gtl_thing_item(b, i)->batten >= 0) continue;
        *first = i;
        count++;
    }
    for (int i = 0; i < rig->batten_count; i++)
        if (rig->battens[i].pick_count > 0) *first = gtl_heaviest_pick(rig, i);
    return count + rig->batten_count;
}

static const char *name_as_load(const gtl_rig *rig, int thing)
{
    int batten = gtl_batten_of(rig, thing);
    if (thing < 0) return "";
    return batten < 0 ? rig->things[thing].name : rig->battens[batten].name;
}

static void settle_lifted(gtl_building *b)
{
    int only = -1;
    int loads = count_loads(b, &only);
    const gtl_stated *named = &b->draft->sheet.load.stated;
    int line = named->yes ? named->line : b->rig->things[b->rig->hand].line;
    int load = named->yes ? b->load : only;
    if (loads == 0) {
        gtl_faults_add(
            b->faults, line,
            "somebody hauls, but there is no load to lift; add a [load NAME], or give the hand its `pull`");
    } else if (loads > 1 && !named->yes) {
        gtl_faults_add(b->faults, line,
                       "there are %d loads; say in [rig] which one is lifted, such as load = %s", loads,
                       name_as_load(b->rig, only));
    } else if (load >= 0 && node_of(b->rig, load)->fixed) {
        gtl_faults_add(b->faults, line,
                       "load `%s` sits on something fixed, so nobody can lift it; give it `at`, or `on` a "
                       "body that moves",
                       b->rig->things[load].name);
    }
    b->rig->load = load;
}

/* Whether a default of [rig] reaches a part that takes it, without stating the key itself. */
static bool is_wanted(const gtl_building *b, gtl_field field, bool (*takes)(const gtl_building *b, int item))
{
    for (int i = 0; i < b->draft->item_count; i++) {
        if (takes(b, i) && !b->draft->items[i].numbers[field].stated.yes) return true;
    }
    return false;
}

/* Of a row that could not be found nobody knows what it states. */
static bool has_unknown_row(const gtl_building *b, int item)
{
    return b->draft->items[item].rows[GTL_R_HARDWARE].stated.yes && !b->gear[item].row;
}

static bool has_strength(const gtl_building *b, int item)
{
    return b->draft->items[item].numbers[GTL_F_MBS].stated.yes ||
           !isnan(gtl_row_number(b, item, GTL_HW_MBS)) || has_unknown_row(b, item);
}

static bool lacks_efficiency(const gtl_building *b, int item)
{
    return b->draft->items[item].kind == GTL_BLOCK && isnan(gtl_row_number(b, item, GTL_HW_EFFICIENCY));
}

/* A key of [rig] that changes nothing. */
static void check_defaults(gtl_building *b)
{
    const gtl_number *numbers = b->draft->sheet.numbers;
    const gtl_stated *factor = &numbers[GTL_F_DESIGN_FACTOR].stated;
    const gtl_stated *efficiency = &numbers[GTL_F_EFFICIENCY].stated;
    const gtl_stated *gravity = &numbers[GTL_F_GRAVITY].stated;
    if (factor->yes && !is_wanted(b, GTL_F_DESIGN_FACTOR, has_strength)) {
        gtl_faults_add(b->faults, factor->line,
                       "`design factor` changes nothing: no part has an `mbs` without a factor of its own; "
                       "leave it out");
    }
    if (efficiency->yes && !is_wanted(b, GTL_F_EFFICIENCY, lacks_efficiency)) {
        gtl_faults_add(
            b->faults, efficiency->line,
            "`efficiency` changes nothing: there is no block without an efficiency of its own; leave it out");
    }
    if (gravity->yes && !b->draft->mass_typed) {
        gtl_faults_add(
            b->faults, gravity->line,
            "`gravity` changes nothing: all weights and ratings are typed as forces; leave it out");
    }
}

/* Without a weight that moves or a known pull there is no force at all; that may come of another fault. */
static void check_weight(gtl_building *b)
{
    double total = 0;
    if (b->faults->count > 0) return;
    for (int i = 0; i < b->rig->node_count; i++) {
        if (!b->rig->nodes[i].fixed) total += b->rig->nodes[i].weight;
    }
    for (int i = 0; i < b->rig->thing_count; i++) {
        if (has_known_pull(b, i)) total += b->rig->things[i].pull;
    }
    if (total == 0) {
        gtl_faults_add(b->faults, 0,
                       "nothing that moves has a weight, and nobody pulls, so there is no force to work out; "
                       "add a load");
    }
}

void gtl_check_rig(gtl_building *b)
{
    if (b->rig->thing_count == 0) {
        gtl_faults_add(
            b->faults, 0,
            "no rig in it; a rig has at least an anchor, a line and a load, each in a section of its own");
        return;
    }
    check_nodes(b);
    check_connectors(b);
    check_stops(b);
    check_pieces(b);
    if (b->rig->hand >= 0) settle_lifted(b);
    gtl_check_arbors(b);
    gtl_check_travel(b);
    gtl_settle_cases(b);
    check_defaults(b);
    check_weight(b);
}
