/* nodes.c - things that sit on each other share a node; the thing at the bottom, on nothing else, is its root
 * and gives it its place. A node is fixed if its root is an anchor, or a hand, which stands where it is. */
#include "rig/building.h"
#include "rig/cut.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static void refuse_ring(gtl_building *b, int thing)
{
    const gtl_item *item = gtl_thing_item(b, thing);
    gtl_faults_add(
        b->faults, item->on.stated.line,
        "`%s` sits on `%s`, and so in the end on itself; give the lowest of them `at` instead of `on`",
        item->name, b->rig->things[b->rig->things[thing].on].name);
    b->draft->whole = false;
}

/* The root under a thing, -1 where there is none since the things sit in a ring. `seen` keeps, one a thing,
 * in which walk it was met: a thing met before that has no node yet leads into a ring, and the walk that met
 * it twice is the one that found the ring. */
static int find_root(gtl_building *b, int thing, int walk, int *seen)
{
    while (b->rig->things[thing].node < 0 && b->rig->things[thing].on >= 0) {
        if (seen[thing] != 0) {
            if (seen[thing] == walk) refuse_ring(b, thing);
            return -1;
        }
        seen[thing] = walk;
        thing = b->rig->things[thing].on;
    }
    int node = b->rig->things[thing].node;
    return node >= 0 ? b->rig->nodes[node].root : thing;
}

static int node_of(gtl_rig *rig, int root)
{
    gtl_thing *thing = &rig->things[root];
    if (thing->node >= 0) return thing->node;
    thing->node = rig->node_count++;
    gtl_node *node = &rig->nodes[thing->node];
    *node = (gtl_node){.root = root, .fixed = thing->kind == GTL_ANCHOR || thing->kind == GTL_HAND};
    memcpy(node->at, thing->at, sizeof node->at);
    return thing->node;
}

void gtl_join_node(gtl_rig *rig, int thing, int root)
{
    int node = node_of(rig, root);
    for (int i = thing; i != root && rig->things[i].node < 0; i = rig->things[i].on) {
        rig->things[i].node = node;
        memcpy(rig->things[i].at, rig->nodes[node].at, sizeof rig->things[i].at);
    }
}

static void join_all(gtl_building *b, int *seen)
{
    for (int i = 0; i < b->rig->thing_count; i++) {
        int root = find_root(b, i, i + 1, seen);
        if (root >= 0) gtl_join_node(b->rig, i, root);
    }
}

/* Every `at` has as many lengths as the first one. */
static void settle_dimensions(gtl_building *b)
{
    const gtl_item *first = NULL;
    for (int i = 0; i < b->rig->thing_count; i++) {
        const gtl_item *item = gtl_thing_item(b, i);
        if (item->at.count == 0) continue;
        if (!first) first = item;
        if (item->at.count == first->at.count) continue;
        gtl_faults_add(b->faults, item->at.stated.line,
                       "`at` has %d length%s here and %d for `%s` (line %d); give every `at` the same number",
                       item->at.count, item->at.count == 1 ? "" : "s", first->at.count, first->name,
                       first->at.stated.line);
        b->draft->whole = false;
    }
    b->rig->dim = first ? first->at.count : 0;
}

/* A guide that changes nothing, or stands at the wrong thing. */
static void check_guide(gtl_building *b, int thing)
{
    const gtl_item *item = gtl_thing_item(b, thing);
    int node = b->rig->things[thing].node;
    if (!item->guide.yes || node < 0) return;
    const gtl_thing *root = &b->rig->things[b->rig->nodes[node].root];
    if (b->rig->dim == 1) {
        gtl_faults_add(b->faults, item->guide.line,
                       "`guide` changes nothing where all is worked vertical; leave it out, or write two "
                       "lengths in every `at`");
    } else if (b->rig->nodes[node].fixed) {
        gtl_faults_add(b->faults, item->guide.line,
                       "`guide` changes nothing: `%s` sits on `%s`, which does not move; leave it out",
                       item->name, root->name);
    } else if (item->on.stated.yes && root->kind == GTL_FAIRLEAD) {
        gtl_faults_add(
            b->faults, item->guide.line,
            "a fairlead has no `guide`, and `%s` sits on one; give `%s` the `at`, and let `%s` sit on it",
            item->name, item->name, root->name);
    } else if (item->on.stated.yes) {
        gtl_faults_add(b->faults, item->guide.line,
                       "`guide` belongs to what `%s` sits on; put it at `%s` (line %d)", item->name,
                       root->name, root->line);
    }
}

void gtl_weigh_nodes(gtl_rig *rig)
{
    for (int i = 0; i < rig->thing_count; i++) {
        const gtl_thing *thing = &rig->things[i];
        if (thing->node < 0) continue;
        rig->nodes[thing->node].weight += thing->weight;
        if (thing->guided) rig->nodes[thing->node].guided = true;
    }
    for (int i = 0; i < rig->pick_count; i++) {
        int node = rig->things[rig->picks[i].thing].node;
        if (node >= 0) rig->nodes[node].limp = rig->nodes[node].weight == 0;
    }
}

void gtl_build_nodes(gtl_building *b)
{
    int *seen = gtl_room(b, b->rig->thing_count, sizeof *seen);
    if (!seen) return;
    settle_dimensions(b);
    join_all(b, seen);
    for (int i = 0; i < b->rig->thing_count; i++) check_guide(b, i);
    gtl_weigh_nodes(b->rig);
    free(seen);
}
