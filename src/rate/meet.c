/* meet.c - which things come closer as a rope between them shortens, and how close they may come. */
#include "rate/way.h"
#include <math.h>
#include <stdlib.h>

/* --- what may meet --- */

/* Half of the size of what a rope lies in, as far as it is stated [m]. */
static double half_size(const gtl_thing *thing)
{
    return thing->kind == GTL_BLOCK ? thing->gear.sheave_diameter / 2 : NAN;
}

static void settle_clear(const gtl_rig *rig, gtl_meet *meet)
{
    const gtl_thing *one = &rig->things[meet->one], *other = &rig->things[meet->other];
    double stated = fmax(one->clear, other->clear); /* fmax passes over a NaN */
    double a = half_size(one), b = half_size(other);
    bool sizes = !isnan(a) || !isnan(b);
    meet->meeting = !isnan(stated) ? GTL_MEET_CLEAR : sizes ? GTL_MEET_SHEAVES : GTL_MEET_CENTRES;
    meet->clear = !isnan(stated) ? stated : sizes ? fmax(a, 0) + fmax(b, 0) : 0;
    meet->size_of_one_only = meet->meeting == GTL_MEET_SHEAVES && (isnan(a) || isnan(b));
}

/* A tied piece that runs over nothing keeps the distance of its ends; a spar too. */
static bool can_shorten(const gtl_rig *rig, const gtl_part *part)
{
    const gtl_piece *piece = &rig->pieces[part->piece];
    int from = rig->things[rig->stops[part->from].thing].node;
    int to = rig->things[rig->stops[part->to].thing].node;
    bool fixed = rig->nodes[from].fixed && rig->nodes[to].fixed;
    return from != to && !fixed && (piece->run_count > 0 || piece->hand >= 0);
}

gtl_meet *gtl_list_meets(const gtl_rig *rig, const gtl_state *hold, int *count)
{
    gtl_meet *meets = calloc((size_t)rig->part_count + 1, sizeof *meets);
    *count = 0;
    for (int p = 0; meets && p < rig->part_count; p++) {
        const gtl_part *part = &rig->parts[p];
        if (!can_shorten(rig, part)) continue;
        gtl_meet *meet = &meets[(*count)++];
        *meet = (gtl_meet){.one = rig->stops[part->from].thing, .other = rig->stops[part->to].thing};
        meet->way_up = 1;
        if (rig->dim == 1 && gtl_meet_distance(rig, meet, hold) < 0) meet->way_up = -1;
        settle_clear(rig, meet);
    }
    return meets;
}

/* --- how far apart they are --- */

/* From the other to the one [m]. */
static void between(const gtl_rig *rig, const gtl_meet *meet, const double *at, double vector[3])
{
    const double *one = at + 3 * rig->things[meet->one].node;
    const double *other = at + 3 * rig->things[meet->other].node;
    for (int k = 0; k < 3; k++) vector[k] = k < rig->dim ? one[k] - other[k] : 0;
}

static double length(const double vector[3])
{
    return sqrt(vector[0] * vector[0] + vector[1] * vector[1] + vector[2] * vector[2]);
}

double gtl_meet_distance(const gtl_rig *rig, const gtl_meet *meet, const gtl_state *state)
{
    double vector[3];
    between(rig, meet, state->at, vector);
    return rig->dim == 1 ? meet->way_up * vector[0] : length(vector);
}

double gtl_meet_closing(const gtl_rig *rig, const gtl_meet *meet, const gtl_state *state)
{
    double vector[3], motion[3];
    between(rig, meet, state->at, vector);
    between(rig, meet, state->rise, motion);
    if (rig->dim == 1) return -meet->way_up * motion[0];
    double far = length(vector);
    double along = vector[0] * motion[0] + vector[1] * motion[1] + vector[2] * motion[2];
    return far > 0 ? -along / far : length(motion);
}

/* --- whether a reset helps --- */

static int end_node(const gtl_rig *rig, const gtl_piece *piece, bool last)
{
    const gtl_part *part = &rig->parts[last ? piece->first_part + piece->part_count - 1 : piece->first_part];
    return rig->things[rig->stops[last ? part->to : part->from].thing].node;
}

static bool is_direct(const gtl_piece *piece)
{
    return piece->run_count == 0 && piece->hand < 0;
}

/* Mark all free nodes that lines without a bend join to those that are marked. */
static void mark_joined(const gtl_rig *rig, bool *marked)
{
    for (bool more = true; more;) {
        more = false;
        for (int p = 0; p < rig->piece_count; p++) {
            int first = end_node(rig, &rig->pieces[p], false), last = end_node(rig, &rig->pieces[p], true);
            bool joins = is_direct(&rig->pieces[p]) && !rig->nodes[first].fixed && !rig->nodes[last].fixed;
            if (!joins || marked[first] == marked[last]) continue;
            marked[first] = marked[last] = true;
            more = true;
        }
    }
}

/* Whether a joint on a marked node holds a rope that runs over something on its way. */
static bool grips_rope(const gtl_rig *rig, const bool *marked)
{
    for (int p = 0; p < rig->piece_count; p++) {
        const gtl_piece *piece = &rig->pieces[p];
        const gtl_part *first = &rig->parts[piece->first_part];
        const gtl_part *last = &rig->parts[piece->first_part + piece->part_count - 1];
        const gtl_thing *ends[2] = {&rig->things[rig->stops[first->from].thing],
                                    &rig->things[rig->stops[last->to].thing]};
        for (int e = 0; e < 2 && piece->run_count > 0 && piece->hand < 0; e++)
            if (ends[e]->kind == GTL_JOINT && marked[ends[e]->node]) return true;
    }
    return false;
}

bool gtl_can_reset(const gtl_rig *rig, const gtl_meet *meet, bool *failed)
{
    bool *marked = calloc((size_t)rig->node_count + 1, sizeof *marked);
    *failed = !marked;
    if (!marked) return false;
    int ends[2] = {rig->things[meet->one].node, rig->things[meet->other].node};
    for (int e = 0; e < 2; e++) marked[ends[e]] = !rig->nodes[ends[e]].fixed;
    mark_joined(rig, marked);
    bool can = !marked[rig->things[rig->load].node] && grips_rope(rig, marked);
    free(marked);
    return can;
}
