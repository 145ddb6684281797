/* tackle.c - whether parts of rope may be counted on a rig, and what a count finds. */
#include "worksheet/worked.h"

#include <math.h>

/* What differs by less is the same but for rounding [1]. */
#define SAME 1e-9

static bool same(double a, double b)
{
    return fabs(a - b) <= SAME * fmax(fabs(a), fabs(b));
}

/* Whether a part runs up and down, as the rig hangs. */
static bool is_plumb(const gtl_rig *rig, const gtl_state *state, int part)
{
    const double *from = state->at + 3 * rig->things[rig->stops[rig->parts[part].from].thing].node;
    const double *to = state->at + 3 * rig->things[rig->stops[rig->parts[part].to].thing].node;
    double across = 0, whole = 0;
    for (int i = 0; i < rig->dim; i++) {
        if (i < rig->dim - 1) across = hypot(across, to[i] - from[i]);
        whole = hypot(whole, to[i] - from[i]);
    }
    return across <= SAME * whole;
}

static int node_at(const gtl_rig *rig, int stop)
{
    return rig->things[rig->stops[stop].thing].node;
}

/* A part between two points that do not move cannot turn. */
static bool stands_still(const gtl_rig *rig, int part)
{
    return rig->nodes[node_at(rig, rig->parts[part].from)].fixed &&
           rig->nodes[node_at(rig, rig->parts[part].to)].fixed;
}

bool gtl_is_steady(const gtl_worked *worked)
{
    const gtl_rig *rig = worked->rig;
    if (!worked->hold) return false;
    for (int i = 0; i < rig->part_count; i++)
        if (!stands_still(rig, i) && !is_plumb(rig, worked->hold->state, i)) return false;
    return true;
}

/* The stops of the hauled piece, from the hand inwards: `index` 0 is the hand itself. */
static int stop_from_hand(const gtl_rig *rig, int index)
{
    const gtl_piece *piece = &rig->pieces[rig->driven];
    int first = rig->parts[piece->first_part].from;
    return piece->hand_first ? first + index : first + piece->part_count - index;
}

/* Fixed stops that the rope passes after the one next to the load, on its way to the hand. */
static int count_leads(const gtl_rig *rig, int node)
{
    const gtl_piece *piece = &rig->pieces[rig->driven];
    int fixed = 0;
    for (int i = 1; i <= piece->part_count && node_at(rig, stop_from_hand(rig, i)) != node; i++) fixed++;
    return fixed > 1 ? fixed - 1 : 0;
}

/* How many parts of the hauled piece end at the load's node; -1 where another line does, or one is not plumb.
 */
static int count_parts(const gtl_rig *rig, const gtl_state *state, int node)
{
    int count = 0;
    for (int i = 0; i < rig->part_count; i++) {
        bool from = node_at(rig, rig->parts[i].from) == node, to = node_at(rig, rig->parts[i].to) == node;
        if (!from && !to) continue;
        if (rig->parts[i].piece != rig->driven || !is_plumb(rig, state, i)) return -1;
        count++;
    }
    return count;
}

gtl_tackle gtl_tackle_of(const gtl_worked *worked)
{
    const gtl_rig *rig = worked->rig;
    gtl_tackle tackle = {.last = -1};
    if (!worked->hold || rig->driven < 0 || rig->load < 0) return tackle;
    const gtl_state *state = worked->hold->state;
    int node = rig->things[rig->load].node;
    tackle.parts = count_parts(rig, state, node);
    tackle.raised = rig->nodes[node].weight;
    tackle.last = rig->stops[stop_from_hand(rig, 1)].thing;
    tackle.from_moving = rig->things[tackle.last].node == node;
    tackle.leads = tackle.from_moving ? 0 : count_leads(rig, node);
    bool still = node_at(rig, stop_from_hand(rig, 0)) != node;
    tackle.counts = tackle.parts > 0 && still && same(state->velocity_ratio, tackle.parts) &&
                    same(state->effort * tackle.parts, tackle.raised);
    return tackle;
}
