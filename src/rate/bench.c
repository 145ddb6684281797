/* bench.c - the room in which one rig's states are rated. */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>

static bool is_component(const gtl_thing *thing)
{
    if (thing->kind == GTL_HAND) return !isnan(thing->limit);
    return thing->kind != GTL_LOAD && thing->kind != GTL_ARBOR;
}

/* The component's own name, index and kind; nothing is demanded of it yet. */
static gtl_component component(gtl_kind kind, int index, const char *name)
{
    return (gtl_component){.kind = kind,
                           .index = index,
                           .name = name,
                           .demand = NAN,
                           .governing = GTL_HOLD,
                           .capacity = NAN,
                           .utilisation = NAN,
                           .mark = GTL_MARK_UNRATED};
}

static void number_things(gtl_bench *bench, gtl_kind kind)
{
    for (int i = 0; i < bench->rig->thing_count; i++)
        if (bench->rig->things[i].kind == kind && is_component(&bench->rig->things[i]))
            bench->thing_component[i] = bench->component_count++;
}

static void number_lines(gtl_bench *bench, gtl_kind kind)
{
    for (int i = 0; i < bench->rig->line_count; i++)
        if (bench->rig->lines[i].kind == kind) bench->line_component[i] = bench->component_count++;
}

static void number_components(gtl_bench *bench)
{
    for (int i = 0; i < bench->rig->thing_count; i++) bench->thing_component[i] = -1;
    for (int kind = GTL_ANCHOR; kind <= GTL_HAND; kind++) number_things(bench, (gtl_kind)kind);
    for (int kind = GTL_ROPE; kind <= GTL_SPAR; kind++) number_lines(bench, (gtl_kind)kind);
    for (int i = 0; i < bench->rig->connector_count; i++)
        bench->connector_component[i] = bench->component_count++;
}

static int depth(const gtl_rig *rig, int thing)
{
    int count = 0;
    for (int i = rig->things[thing].on; i >= 0; i = rig->things[i].on) count++;
    return count;
}

/* Things on others first, so that each one's pulls are known before it passes them on. */
static void sort_by_depth(gtl_bench *bench)
{
    int deepest = 0;
    for (int i = 0; i < bench->rig->thing_count; i++)
        if (depth(bench->rig, i) > deepest) deepest = depth(bench->rig, i);
    int used = 0;
    for (int level = deepest; level >= 0; level--)
        for (int i = 0; i < bench->rig->thing_count; i++)
            if (depth(bench->rig, i) == level) bench->by_depth[used++] = i;
}

/* Only what has an axis can be pulled off it. */
static void find_straight(gtl_bench *bench)
{
    for (int i = 0; i < bench->component_count; i++) bench->straight[i] = NAN;
    for (int i = 0; i < bench->rig->thing_count; i++) {
        gtl_step steps[GTL_STEP_KIND_COUNT];
        gtl_component anchor = component(GTL_ANCHOR, i, bench->rig->things[i].name);
        if (!bench->rig->things[i].gear.fitting || bench->thing_component[i] < 0) continue;
        int count = gtl_chain_steps(bench->rig, &anchor, 1, NAN, steps);
        bench->straight[bench->thing_component[i]] = gtl_chain_capacity(steps, count);
    }
}

bool gtl_bench_begin(gtl_bench *bench, const gtl_rig *rig)
{
    *bench = (gtl_bench){.rig = rig, .force = gtl_rig_force(rig)};
    size_t things = (size_t)rig->thing_count + 1;
    /* Every run; two parts at a tied stop; a spar's two ends; of each thing its weight, what it passes on,
     * and the answer of what it is on. */
    size_t most =
        (size_t)rig->run_count + 2 * (size_t)rig->stop_count + 2 * (size_t)rig->line_count + 3 * things;
    bench->thing_component = calloc(things, sizeof *bench->thing_component);
    bench->line_component = calloc((size_t)rig->line_count + 1, sizeof *bench->line_component);
    bench->connector_component = calloc((size_t)rig->connector_count + 1, sizeof *bench->connector_component);
    bench->by_depth = calloc(things, sizeof *bench->by_depth);
    bench->first_pull = calloc(things, sizeof *bench->first_pull);
    bench->pulls = calloc(most, sizeof *bench->pulls);
    bench->sums = calloc(most, sizeof *bench->sums);
    bench->angles = calloc(2 * most, sizeof *bench->angles);
    size_t components = things + (size_t)rig->line_count + (size_t)rig->connector_count;
    bench->straight = calloc(components, sizeof *bench->straight);
    if (!(bench->thing_component && bench->line_component && bench->connector_component && bench->by_depth &&
          bench->first_pull && bench->pulls && bench->sums && bench->angles && bench->straight))
        return false;
    number_components(bench);
    sort_by_depth(bench);
    find_straight(bench);
    for (int r = 0; r < rig->run_count; r++)
        bench->friction_stated |= rig->things[rig->runs[r].thing].friction_stated;
    return true;
}

void gtl_bench_end(gtl_bench *bench)
{
    void *rooms[] = {bench->thing_component,
                     bench->line_component,
                     bench->connector_component,
                     bench->by_depth,
                     bench->first_pull,
                     bench->pulls,
                     bench->sums,
                     bench->angles,
                     bench->straight};
    for (size_t i = 0; i < sizeof rooms / sizeof *rooms; i++) free(rooms[i]);
    *bench = (gtl_bench){0};
}

gtl_component *gtl_list_components(const gtl_bench *bench)
{
    const gtl_rig *rig = bench->rig;
    gtl_component *list = calloc((size_t)bench->component_count + 1, sizeof *list);
    if (!list) return NULL;
    for (int i = 0; i < rig->thing_count; i++)
        if (bench->thing_component[i] >= 0)
            list[bench->thing_component[i]] = component(rig->things[i].kind, i, rig->things[i].name);
    for (int i = 0; i < rig->line_count; i++)
        list[bench->line_component[i]] = component(rig->lines[i].kind, i, rig->lines[i].name);
    for (int i = 0; i < rig->connector_count; i++)
        list[bench->connector_component[i]] = component(GTL_CONNECTOR, i, rig->connectors[i].name);
    return list;
}
