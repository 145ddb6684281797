/* balance.c - in which order the bodies of a rig can be worked out. */
#include "explain/balance.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Directions that differ by less do not tell two pulls apart [1]. */
#define APART 1e-6

/* What is known of a node while the bodies are sorted. */
typedef struct sorting {
    gtl_bodies *bodies;
    int *unknown; /* one a node: how many pieces, 0 where it cannot be worked alone, -1: look again */
    bool *done;   /* one a node */
} sorting;

bool gtl_is_free(const gtl_rig *rig, int node, int axis)
{
    if (rig->nodes[node].fixed) return false;
    return axis == rig->dim - 1 || !rig->nodes[node].guided;
}

double gtl_base_pull(const gtl_bodies *bodies, int piece)
{
    return bodies->outcome->state->tension[bodies->base[piece]];
}

double gtl_multiple(const gtl_bodies *bodies, int part)
{
    const double *tension = bodies->outcome->state->tension;
    return tension[part] / tension[bodies->base[bodies->lesson->rig->parts[part].piece]];
}

/* A known pull is at the hand; else the multiples are counted from the end away from it. */
static int base_of(const gtl_piece *piece)
{
    bool last = piece->rule == GTL_PULLED ? !piece->hand_first : piece->hand >= 0 && piece->hand_first;
    return piece->first_part + (last ? piece->part_count - 1 : 0);
}

static bool is_idle(const gtl_bodies *bodies, int piece)
{
    const gtl_state *state = bodies->outcome->state;
    return state->slack[piece] || fabs(gtl_base_pull(bodies, piece)) <= bodies->lesson->units.noise;
}

void gtl_bodies_restart(gtl_bodies *bodies)
{
    const gtl_rig *rig = bodies->lesson->rig;
    for (int i = 0; i < rig->piece_count; i++)
        bodies->known[i] = bodies->idle[i] || rig->pieces[i].rule == GTL_PULLED;
}

/* Add up how often each unknown piece pulls along each free axis of a node. */
static void add_coefficients(const gtl_bodies *bodies, int node)
{
    const gtl_rig *rig = bodies->lesson->rig;
    for (int i = bodies->first[node]; i < bodies->first[node + 1]; i++) {
        int piece = rig->parts[bodies->pulls[i].part].piece;
        if (bodies->known[piece]) continue;
        double multiple = gtl_multiple(bodies, bodies->pulls[i].part);
        bodies->scale[piece] += fabs(multiple);
        for (int k = 0; k < rig->dim; k++)
            if (gtl_is_free(rig, node, k))
                bodies->coefficient[3 * piece + k] += multiple * bodies->pulls[i].way[k];
    }
}

/* Take a piece's sums, which are cleared; false where they come to nothing, or were taken before. */
static bool take_coefficients(const gtl_bodies *bodies, int piece, double taken[3])
{
    double *sums = bodies->coefficient + 3 * piece, scale = bodies->scale[piece];
    bool any = false;
    for (int k = 0; k < 3; k++) {
        any |= fabs(sums[k]) > GTL_NEARLY * scale;
        taken[k] = scale > 0 ? sums[k] / scale : 0;
        sums[k] = 0;
    }
    bodies->scale[piece] = 0;
    return any;
}

static int find_unknown(const gtl_bodies *bodies, int node, int pieces[3], double columns[3][3])
{
    int count = 0;
    add_coefficients(bodies, node);
    for (int i = bodies->first[node]; i < bodies->first[node + 1]; i++) {
        int piece = bodies->lesson->rig->parts[bodies->pulls[i].part].piece;
        double taken[3];
        if (bodies->known[piece] || !take_coefficients(bodies, piece, taken)) continue;
        if (count < 3) {
            pieces[count] = piece;
            memcpy(columns[count], taken, sizeof taken);
        }
        count++;
    }
    return count;
}

int gtl_bodies_unknown(gtl_bodies *bodies, int node, int pieces[3])
{
    double columns[3][3];
    return find_unknown(bodies, node, pieces, columns);
}

/* Whether no column is made of the others. Columns are cut down to what the ones before leave of them. */
static bool independent(double columns[3][3], int count)
{
    for (int i = 0; i < count; i++) {
        double size = hypot(hypot(columns[i][0], columns[i][1]), columns[i][2]);
        if (size <= APART) return false;
        for (int k = 0; k < 3; k++) columns[i][k] /= size;
        for (int j = i + 1; j < count; j++) {
            double along = 0;
            for (int k = 0; k < 3; k++) along += columns[i][k] * columns[j][k];
            for (int k = 0; k < 3; k++) columns[j][k] -= along * columns[i][k];
        }
    }
    return true;
}

/* How many unknown pulls a body gives, 0 where it cannot be worked alone. */
static int look_at(const sorting *s, int node)
{
    int pieces[3];
    double columns[3][3];
    if (s->unknown[node] >= 0) return s->unknown[node];
    int count = find_unknown(s->bodies, node, pieces, columns);
    bool alone = count >= 1 && count <= 3 && independent(columns, count);
    s->unknown[node] = alone ? count : 0;
    return s->unknown[node];
}

/* Whether a body is plainer than another: fewer unknowns, or as many and fewer pulls. */
static bool is_plainer(const sorting *s, int node, int than)
{
    const int *first = s->bodies->first;
    if (s->unknown[node] != s->unknown[than]) return s->unknown[node] < s->unknown[than];
    return first[node + 1] - first[node] < first[than + 1] - first[than];
}

/* The body to be taken next: the lifted load's where it can be, else the plainest; -1 for none. */
static int next_body(const sorting *s)
{
    const gtl_rig *rig = s->bodies->lesson->rig;
    int best = -1, load = rig->load >= 0 ? rig->things[rig->load].node : -1;
    if (load >= 0 && !s->done[load] && look_at(s, load) > 0) return load;
    for (int i = 0; i < rig->node_count; i++) {
        if (s->done[i] || look_at(s, i) == 0) continue;
        if (best < 0 || is_plainer(s, i, best)) best = i;
    }
    return best;
}

/* A piece is known now: the bodies that it touches have to be looked at again. */
static void make_known(const sorting *s, int piece)
{
    const gtl_rig *rig = s->bodies->lesson->rig;
    const gtl_piece *known = &rig->pieces[piece];
    s->bodies->known[piece] = true;
    for (int i = known->first_part; i < known->first_part + known->part_count; i++) {
        s->unknown[rig->things[rig->stops[rig->parts[i].from].thing].node] = -1;
        s->unknown[rig->things[rig->stops[rig->parts[i].to].thing].node] = -1;
    }
}

static void sort_alone(const sorting *s)
{
    gtl_bodies *bodies = s->bodies;
    for (int node = next_body(s); node >= 0; node = next_body(s)) {
        int pieces[3];
        int count = gtl_bodies_unknown(bodies, node, pieces);
        bodies->order[bodies->alone++] = node;
        s->done[node] = true;
        for (int i = 0; i < count && i < 3; i++) make_known(s, pieces[i]);
    }
}

/* Whether anything acts on a body at all. */
static bool is_at_work(const gtl_bodies *bodies, int node)
{
    const gtl_rig *rig = bodies->lesson->rig;
    bool any = rig->nodes[node].weight > 0;
    for (int i = bodies->first[node]; i < bodies->first[node + 1]; i++)
        any |= !bodies->idle[rig->parts[bodies->pulls[i].part].piece];
    return any;
}

/* Along how many axes anything acts on a body. */
static int count_axes(const gtl_bodies *bodies, int node)
{
    int count = 0;
    for (int k = 0; k < bodies->lesson->rig->dim; k++) {
        gtl_equation equation;
        if (!gtl_is_free(bodies->lesson->rig, node, k)) continue;
        gtl_equation_of(bodies, node, k, &equation);
        count += equation.count > 0;
        gtl_equation_end(&equation);
    }
    return count;
}

/* What is left: bodies with unknowns, then those whose pulls are all known. */
static void sort_rest(const sorting *s)
{
    gtl_bodies *bodies = s->bodies;
    int pieces[3];
    for (int i = 0; i < bodies->lesson->rig->node_count; i++) {
        if (s->done[i] || gtl_bodies_unknown(bodies, i, pieces) == 0) continue;
        bodies->order[bodies->alone + bodies->together++] = i;
        bodies->equations += count_axes(bodies, i);
        s->done[i] = true;
    }
    for (int i = 0; i < bodies->lesson->rig->node_count; i++)
        if (!s->done[i] && is_at_work(bodies, i))
            bodies->order[bodies->alone + bodies->together + bodies->checks++] = i;
    for (int i = 0; i < bodies->lesson->rig->piece_count; i++) bodies->pieces += !bodies->known[i];
}

static void sort(gtl_bodies *bodies)
{
    const gtl_rig *rig = bodies->lesson->rig;
    sorting s = {.bodies = bodies,
                 .unknown = calloc((size_t)rig->node_count + 1, sizeof *s.unknown),
                 .done = calloc((size_t)rig->node_count + 1, sizeof *s.done)};
    if (s.unknown && s.done) {
        for (int i = 0; i < rig->node_count; i++) {
            s.unknown[i] = -1;
            s.done[i] = rig->nodes[i].fixed;
        }
        sort_alone(&s);
        sort_rest(&s);
    } else {
        bodies->lesson->document->failed = true;
    }
    free(s.unknown);
    free(s.done);
}

static bool find_room(gtl_bodies *bodies, const gtl_rig *rig)
{
    size_t nodes = (size_t)rig->node_count + 1, pieces = (size_t)rig->piece_count + 1;
    bodies->pulls = calloc(2 * (size_t)rig->part_count + 1, sizeof *bodies->pulls);
    bodies->first = calloc(nodes, sizeof *bodies->first);
    bodies->base = calloc(pieces, sizeof *bodies->base);
    bodies->idle = calloc(pieces, sizeof *bodies->idle);
    bodies->known = calloc(pieces, sizeof *bodies->known);
    bodies->order = calloc(nodes, sizeof *bodies->order);
    bodies->coefficient = calloc(3 * pieces, sizeof *bodies->coefficient);
    bodies->scale = calloc(pieces, sizeof *bodies->scale);
    return bodies->pulls && bodies->first && bodies->base && bodies->idle && bodies->known && bodies->order &&
           bodies->coefficient && bodies->scale;
}

bool gtl_bodies_begin(gtl_bodies *bodies, gtl_lesson *lesson, const gtl_outcome *outcome)
{
    const gtl_rig *rig = lesson->rig;
    *bodies = (gtl_bodies){.lesson = lesson, .outcome = outcome};
    if (!find_room(bodies, rig)) {
        lesson->document->failed = true;
        return false;
    }
    for (int i = 0; i < rig->node_count; i++)
        bodies->first[i + 1] =
            bodies->first[i] + gtl_pulls_on(lesson, outcome, i, bodies->pulls + bodies->first[i]);
    for (int i = 0; i < rig->piece_count; i++) {
        bodies->base[i] = base_of(&rig->pieces[i]);
        bodies->idle[i] = is_idle(bodies, i);
    }
    gtl_bodies_restart(bodies);
    sort(bodies);
    gtl_bodies_restart(bodies);
    return !lesson->document->failed;
}

void gtl_bodies_end(gtl_bodies *bodies)
{
    void *rooms[] = {bodies->pulls, bodies->first, bodies->base,        bodies->idle,
                     bodies->known, bodies->order, bodies->coefficient, bodies->scale};
    for (size_t i = 0; i < sizeof rooms / sizeof *rooms; i++) free(rooms[i]);
    *bodies = (gtl_bodies){0};
}
