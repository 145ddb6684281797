/* meet.c - which things come closer as a rope between them shortens, and how close they may come. */
#include "rate/way.h"
#include <math.h>
#include <stdlib.h>

/* --- what may meet --- */

/* What is stated of the blocks that sit where a thing is: they all come as near as it does. NaN: nothing. */
typedef struct gtl_size {
    double clear; /* [m] */
    double half;  /* of the largest sheave [m] */
} gtl_size;

static gtl_size size_at(const gtl_rig *rig, int thing)
{
    gtl_size size = {NAN, NAN};
    for (int i = 0; i < rig->thing_count; i++) {
        const gtl_thing *block = &rig->things[i];
        if (block->node != rig->things[thing].node || block->kind != GTL_BLOCK) continue;
        size.clear = fmax(size.clear, block->clear); /* fmax passes over a NaN */
        size.half = fmax(size.half, block->gear.sheave_diameter / 2);
    }
    return size;
}

static void settle_clear(const gtl_rig *rig, gtl_meet *meet)
{
    gtl_size one = size_at(rig, meet->one), other = size_at(rig, meet->other);
    double stated = fmax(one.clear, other.clear);
    double halves = fmax(one.half, 0) + fmax(other.half, 0);
    meet->meeting = !isnan(stated) ? GTL_MEET_CLEAR : halves > 0 ? GTL_MEET_SHEAVES : GTL_MEET_CENTRES;
    meet->clear = !isnan(stated) ? stated : halves;
    meet->size_of_one_only = meet->meeting == GTL_MEET_SHEAVES && isnan(one.half + other.half);
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

static gtl_meet meet_of(const gtl_rig *rig, const gtl_part *part, const gtl_state *hold)
{
    gtl_meet meet = {.one = rig->stops[part->from].thing, .other = rig->stops[part->to].thing, .way_up = 1};
    if (rig->dim == 1 && gtl_meet_distance(rig, &meet, hold) < 0) meet.way_up = -1;
    settle_clear(rig, &meet);
    return meet;
}

static bool are_blocks(const gtl_rig *rig, const gtl_part *part)
{
    return rig->things[rig->stops[part->from].thing].kind == GTL_BLOCK &&
           rig->things[rig->stops[part->to].thing].kind == GTL_BLOCK;
}

/* Of several pairs that meet at once the first is named: two blocks tell most. */
gtl_meet *gtl_list_meets(const gtl_rig *rig, const gtl_state *hold, int *count)
{
    gtl_meet *meets = calloc((size_t)rig->part_count + 1, sizeof *meets);
    *count = 0;
    for (int pass = 0; meets && pass < 2; pass++)
        for (int p = 0; p < rig->part_count; p++)
            if (can_shorten(rig, &rig->parts[p]) && are_blocks(rig, &rig->parts[p]) == (pass == 0))
                meets[(*count)++] = meet_of(rig, &rig->parts[p], hold);
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
