/* forces.c - a solved state to the pulls on every thing, and from them to what is demanded of each component.
 */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

typedef struct scene {
    gtl_bench *bench;
    const gtl_rig *rig;
    gtl_case_kind kind;
    const gtl_state *state;
    gtl_forces *forces;
} scene;

static double size_of(const double v[3])
{
    return sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);
}

/* The pull of a part on the stop at one of its ends, towards the other [N]. */
static void part_pull(const scene *s, int part, int stop, double pull[3])
{
    const gtl_rig *rig = s->rig;
    int other = rig->parts[part].from == stop ? rig->parts[part].to : rig->parts[part].from;
    const double *here = s->state->at + 3 * rig->things[rig->stops[stop].thing].node;
    const double *there = s->state->at + 3 * rig->things[rig->stops[other].thing].node;
    for (int k = 0; k < 3; k++) pull[k] = there[k] - here[k];
    double scale = s->state->tension[part] / size_of(pull);
    for (int k = 0; k < 3; k++) pull[k] *= scale;
}

static void add_pull(const scene *s, int thing, const double vector[3])
{
    gtl_bench *bench = s->bench;
    gtl_pull *pull = &bench->pulls[bench->pull_count];
    memcpy(pull->vector, vector, sizeof pull->vector);
    pull->next = bench->first_pull[thing];
    bench->first_pull[thing] = bench->pull_count++;
    for (int k = 0; k < 3; k++) s->forces->passed[thing][k] += vector[k];
}

/* A weight at a thing, `own` or half of a spar's, and its share of what the case adds to its node: inertia
 * goes by weight; what catches the lifted load takes hold of it alone. */
static void weigh(const scene *s, int thing, double weight, bool own, double vector[3])
{
    int node = s->rig->things[thing].node;
    const double *added = s->state->added + 3 * node;
    double share = s->rig->nodes[node].weight > 0 ? weight / s->rig->nodes[node].weight : 0;
    if (s->kind == GTL_JAM) share = own && thing == s->rig->load;
    for (int k = 0; k < 3; k++) vector[k] = share * added[k];
    vector[s->rig->dim - 1] -= weight;
}

static void add_weight(const scene *s, int thing, double weight, bool own)
{
    double vector[3];
    weigh(s, thing, weight, own, vector);
    if (vector[0] != 0 || vector[1] != 0 || vector[2] != 0) add_pull(s, thing, vector);
}

static void demand(const scene *s, int component, double amount)
{
    if (component >= 0) s->forces->demand[component] = amount;
}

static void add_runs(const scene *s)
{
    for (int r = 0; r < s->rig->run_count; r++) {
        const gtl_run *run = &s->rig->runs[r];
        double pull[3];
        double other[3];
        part_pull(s, run->before, run->stop, pull);
        part_pull(s, run->before + 1, run->stop, other);
        for (int k = 0; k < 3; k++) {
            pull[k] += other[k];
            s->forces->rope[run->thing][k] += pull[k];
        }
        add_pull(s, run->thing, pull);
    }
}

/* What passes through the connectors of a tied stop: the resultant of its parts, with or without the spar's
 * weight. */
static void demand_of_tie(const scene *s, const gtl_stop *stop, const double pull[3], double weight)
{
    double loaded[3] = {0, 0, 0};
    if (weight > 0) weigh(s, stop->thing, weight, false, loaded);
    for (int k = 0; k < 3; k++) loaded[k] += pull[k];
    double amount = fmax(size_of(pull), size_of(loaded));
    for (int i = 0; i < stop->via.count; i++)
        demand(s, s->bench->connector_component[s->rig->vias[stop->via.first + i]], amount);
}

static void add_ties(const scene *s, const gtl_line *line)
{
    for (int i = 0; i < line->stop_count; i++) {
        int index = line->first_stop + i;
        const gtl_stop *stop = &s->rig->stops[index];
        if (!stop->tied) continue;
        double sum[3] = {0, 0, 0};
        for (int side = -1; side <= 0; side++) { /* the part before and the part after */
            int part = line->first_part + i + side;
            if (i + side < 0 || i + side >= line->stop_count - 1) continue;
            double pull[3];
            part_pull(s, part, index, pull);
            add_pull(s, stop->thing, pull);
            for (int k = 0; k < 3; k++) sum[k] += pull[k];
        }
        if (line->weight > 0) add_weight(s, stop->thing, line->weight / 2, false);
        demand_of_tie(s, stop, sum, line->weight / 2);
    }
}

/* Things on others first: what each holds it passes on, through its connectors. */
static void pass_on(const scene *s)
{
    for (int i = 0; i < s->rig->thing_count; i++) {
        int index = s->bench->by_depth[i];
        const gtl_thing *thing = &s->rig->things[index];
        add_weight(s, index, thing->weight, true);
        const double *passed = s->forces->passed[index];
        for (int k = 0; k < thing->via.count; k++)
            demand(s, s->bench->connector_component[s->rig->vias[thing->via.first + k]], size_of(passed));
        if (thing->on >= 0) add_pull(s, thing->on, passed);
    }
}

/* The greatest resultant of any set of the pulls on a body, the answer of what it is on among them. */
static double body_demand(const scene *s, int index)
{
    gtl_bench *bench = s->bench;
    int count = 0;
    for (int i = bench->first_pull[index]; i >= 0; i = bench->pulls[i].next)
        memcpy(bench->sums[count++], bench->pulls[i].vector, sizeof bench->sums[0]);
    if (s->rig->things[index].on >= 0) {
        for (int k = 0; k < 3; k++) bench->sums[count][k] = -s->forces->passed[index][k];
        count++;
    }
    return gtl_greatest_resultant(bench->sums, count, bench->angles, s->forces->governing[index]);
}

/* A hand that hauls is held to its limit where friction is in the figure, or where none is stated. In a jam
 * it pulls its limit, whatever that is. In a drop nobody knows what is left of the peak behind turns of
 * friction. */
static double hand_demand(const scene *s, int index)
{
    bool known = !isnan(s->rig->things[index].pull);
    if (s->kind == GTL_JAM) return NAN;
    if (s->kind == GTL_DROP && gtl_is_behind_turns(s->rig, index)) return NAN;
    bool counts = known || s->kind != GTL_HOLD || !s->bench->friction_stated;
    return counts ? size_of(s->forces->passed[index]) : NAN;
}

/* What an eyebolt or a pad keeps of its rating where it is pulled at an angle from its axis. */
static void look_along_axis(const scene *s, int thing, int component)
{
    const gtl_gear *gear = &s->rig->things[thing].gear;
    const double *pull = s->forces->passed[thing];
    bool idle = s->forces->demand[component] <= GTL_IDLE_SHARE * s->bench->force;
    /* Without a rating there is nothing to take from, and the greatest force is what has to be told. */
    if (!gear->fitting || idle || !gtl_is_rated(s->rig, GTL_ANCHOR, thing)) return;
    double along = 0;
    double across = 0;
    for (int k = 0; k < 3; k++) along += pull[k] * gear->axis[k];
    for (int k = 0; k < 3; k++) across += pow(pull[k] - along * gear->axis[k], 2);
    s->forces->angle[component] = atan2(sqrt(across), along);
    s->forces->keeps[component] = gtl_hardware_factor(gear->fitting, s->forces->angle[component]);
}

static void demand_of_things(const scene *s)
{
    for (int i = 0; i < s->rig->thing_count; i++) {
        int component = s->bench->thing_component[i];
        if (component < 0) continue;
        switch (s->rig->things[i].kind) {
        case GTL_ANCHOR:
            memcpy(s->forces->governing[i], s->forces->passed[i], sizeof s->forces->passed[i]);
            demand(s, component, size_of(s->forces->passed[i]));
            look_along_axis(s, i, component);
            break;
        case GTL_HAND:
            demand(s, component, hand_demand(s, i));
            break;
        default:
            demand(s, component, body_demand(s, i));
        }
    }
}

static void demand_of_lines(const scene *s)
{
    for (int i = 0; i < s->rig->line_count; i++) {
        const gtl_line *line = &s->rig->lines[i];
        double pull = 0;
        double push = 0;
        for (int k = 0; k < line->stop_count - 1; k++) {
            pull = fmax(pull, s->state->tension[line->first_part + k]);
            push = fmax(push, -s->state->tension[line->first_part + k]);
        }
        int component = s->bench->line_component[i];
        s->forces->demand[component] = pull;
        s->forces->push[component] = line->kind == GTL_SPAR ? push : 0;
    }
}

/* A guide resists whatever is left across its track. */
static void find_tracks(const scene *s)
{
    for (int n = 0; n < s->rig->node_count; n++) {
        const gtl_node *node = &s->rig->nodes[n];
        for (int k = 0; k < s->rig->dim - 1; k++)
            if (node->guided) s->forces->track[n][k] = s->forces->passed[node->root][k];
    }
}

static void clear(const scene *s)
{
    size_t things = (size_t)s->rig->thing_count;
    size_t components = (size_t)s->bench->component_count;
    memset(s->forces->passed, 0, things * sizeof *s->forces->passed);
    memset(s->forces->rope, 0, things * sizeof *s->forces->rope);
    memset(s->forces->governing, 0, things * sizeof *s->forces->governing);
    memset(s->forces->track, 0, (size_t)s->rig->node_count * sizeof *s->forces->track);
    memset(s->forces->demand, 0, components * sizeof *s->forces->demand);
    memset(s->forces->push, 0, components * sizeof *s->forces->push);
    for (size_t i = 0; i < components; i++) {
        s->forces->keeps[i] = 1;
        s->forces->angle[i] = NAN;
    }
    s->bench->pull_count = 0;
    for (size_t i = 0; i < things; i++) s->bench->first_pull[i] = -1;
}

void gtl_find_forces(gtl_bench *bench, gtl_case_kind kind, const gtl_state *state, gtl_forces *forces)
{
    scene now = {bench, bench->rig, kind, state, forces};
    clear(&now);
    add_runs(&now);
    for (int i = 0; i < bench->rig->line_count; i++) add_ties(&now, &bench->rig->lines[i]);
    pass_on(&now);
    demand_of_things(&now);
    demand_of_lines(&now);
    find_tracks(&now);
}

bool gtl_forces_begin(gtl_forces *forces, const gtl_bench *bench)
{
    size_t things = (size_t)bench->rig->thing_count + 1;
    size_t components = (size_t)bench->component_count + 1;
    forces->passed = calloc(things, sizeof *forces->passed);
    forces->rope = calloc(things, sizeof *forces->rope);
    forces->governing = calloc(things, sizeof *forces->governing);
    forces->track = calloc((size_t)bench->rig->node_count + 1, sizeof *forces->track);
    forces->demand = calloc(components, sizeof *forces->demand);
    forces->push = calloc(components, sizeof *forces->push);
    forces->keeps = calloc(components, sizeof *forces->keeps);
    forces->angle = calloc(components, sizeof *forces->angle);
    return forces->passed && forces->rope && forces->governing && forces->track && forces->demand &&
           forces->push && forces->keeps && forces->angle;
}

void gtl_forces_end(gtl_forces *forces)
{
    free(forces->passed);
    free(forces->rope);
    free(forces->governing);
    free(forces->track);
    free(forces->demand);
    free(forces->push);
    free(forces->keeps);
    free(forces->angle);
    *forces = (gtl_forces){0};
}
