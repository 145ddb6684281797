/* audit.c - a finished state held against the laws it must obey, from its public numbers alone.
 *
 * Deliberately another road than the solver's: nothing of the engine is used here but the state's layout,
 * forces are summed from places and tensions, friction is held against the quadratic form of its law. */
#include <gantline/solve.h>
#include <math.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

typedef struct findings {
    const gtl_rig *rig;
    gtl_case_kind kind;
    const gtl_state *state;
    double force; /* [N] */
    double size;  /* [m] */
    double worst; /* [1] */
} findings;

static void note(findings *found, double disagreement)
{
    double size = fabs(disagreement);
    if (!(size <= found->worst)) found->worst = isnan(size) ? INFINITY : size;
}

static const double *place(const findings *found, int stop)
{
    return found->state->at + 3 * found->rig->things[found->rig->stops[stop].thing].node;
}

/* Direction of a part from its first stop to its second; its length [m]. */
static double direction(const findings *found, int part, double unit[3])
{
    const double *from = place(found, found->rig->parts[part].from);
    const double *to = place(found, found->rig->parts[part].to);
    double x = to[0] - from[0];
    double y = to[1] - from[1];
    double z = to[2] - from[2];
    double length = sqrt(x * x + y * y + z * z);
    unit[0] = x / length;
    unit[1] = y / length;
    unit[2] = z / length;
    return length;
}

/* What lines do to each node, three a node [N]. */
static void sum_forces(const findings *found)
{
    double *force = found->state->scratch;
    memset(force, 0, 3 * (size_t)found->rig->node_count * sizeof *force);
    for (int i = 0; i < found->rig->part_count; i++) {
        double unit[3];
        direction(found, i, unit);
        const gtl_part *part = &found->rig->parts[i];
        double *from = force + 3 * found->rig->things[found->rig->stops[part->from].thing].node;
        double *to = force + 3 * found->rig->things[found->rig->stops[part->to].thing].node;
        for (int k = 0; k < 3; k++) {
            from[k] += found->state->tension[i] * unit[k];
            to[k] -= found->state->tension[i] * unit[k];
        }
    }
}

/* Free nodes in balance; fixed ones and tracks give the reactions that balance the whole, in force and
 * moment. */
static void check_balance(findings *found)
{
    double *force = found->state->scratch;
    const gtl_rig *rig = found->rig;
    int up = rig->dim - 1;
    double total[3] = {0, 0, 0};
    double moment[3] = {0, 0, 0};
    for (int n = 0; n < rig->node_count; n++) {
        const gtl_node *node = &rig->nodes[n];
        double outer[3] = {0, 0, 0}; /* weight and reaction on this node */
        force[3 * n + up] -= node->weight;
        for (int k = 0; k < 3; k++) force[3 * n + k] += found->state->added[3 * n + k];
        for (int k = 0; k < 3; k++) {
            bool held = node->fixed || ((node->guided || node->limp) && k != up);
            if (!held) note(found, force[3 * n + k] / found->force);
            if (held) outer[k] -= force[3 * n + k];
            outer[k] += found->state->added[3 * n + k];
        }
        outer[up] -= node->weight;
        const double *at = found->state->at + 3 * n;
        for (int k = 0; k < 3; k++) {
            int a = (k + 1) % 3;
            int b = (k + 2) % 3;
            total[k] += outer[k];
            moment[k] += (at[a] * outer[b] - at[b] * outer[a]) / found->size;
        }
    }
    double span = 0; /* places far from the origin round their moments by as much */
    for (int i = 0; i < 3 * rig->node_count; i++) span = fmax(span, fabs(found->state->at[i]));
    for (int k = 0; k < 3; k++) note(found, total[k] / found->force);
    for (int k = 0; k < 3; k++) note(found, moment[k] / found->force / fmax(1, span / found->size));
}

static double angle_of_contact(const double back[3], const double on[3])
{
    double sum = 0;
    double difference = 0;
    for (int k = 0; k < 3; k++) {
        sum += (on[k] - back[k]) * (on[k] - back[k]);
        difference += (on[k] + back[k]) * (on[k] + back[k]);
    }
    return 2 * atan2(sqrt(sum), sqrt(difference));
}

/* By how much the tensions at a run leave what its friction allows, over the greater one. */
static double beyond_friction(const findings *found, int r, double less, double more)
{
    const gtl_thing bend = gtl_bend_of(found->rig, r), *thing = &bend;
    if (!thing->friction_stated) return (more - less) / more;
    double back[3];
    double on[3];
    direction(found, found->rig->runs[r].before, back);
    direction(found, found->rig->runs[r].before + 1, on);
    double wrap = isnan(thing->wrap) ? angle_of_contact(back, on) : thing->wrap;
    if (thing->kind == GTL_BLOCK) {
        double f = (1 - thing->efficiency) / (1 + thing->efficiency);
        double half = sin(wrap / 2);
        /* 1 - cos w = 2 sin^2(w/2): T1^2 + T2^2 - 2 T1 T2 cos w without cancellation */
        double bearing = f * sqrt((more - less) * (more - less) + 4 * less * more * half * half);
        return (more - less - bearing) / more;
    }
    double mu = isnan(thing->friction) ? -log(thing->efficiency) / pi : thing->friction;
    return (more - less * exp(mu * (wrap + 2 * pi * thing->turns))) / more;
}

/* A run's tensions may differ by what friction gives, no more, and in its sense alone; exactly so where rope
 * runs. */
static void check_friction(findings *found, const gtl_case *which)
{
    for (int r = 0; r < found->rig->run_count; r++) {
        int before = found->rig->runs[r].before;
        double first = found->state->tension[before];
        double second = found->state->tension[before + 1];
        signed char sense = found->state->sense[r];
        bool rubs = sense != 0 && (gtl_case_direction(which->kind) != 0 || found->state->undecided[r]);
        double less = sense < 0 ? second : first;
        double more = sense < 0 ? first : second;
        if (!rubs)
            note(found, (first - second) / found->force);
        else if (more > 0)
            note(found, beyond_friction(found, r, less, more) * more / found->force);
        else
            note(found, (more - less) / found->force);
    }
}

static void check_lengths(findings *found)
{
    for (int p = 0; p < found->rig->piece_count; p++) {
        const gtl_piece *piece = &found->rig->pieces[p];
        double length = 0;
        double unit[3];
        for (int i = 0; i < piece->part_count; i++) length += direction(found, piece->first_part + i, unit);
        double kept = found->state->kept_length[p];
        double over = length - kept;
        if (isnan(kept) || (found->state->slack[p] && over < 0)) continue;
        note(found, over / found->size);
    }
}

/* What is given: fixed nodes where they are, guided ones on their track, the lifted load at its height. */
static void check_places(findings *found)
{
    const gtl_rig *rig = found->rig;
    int up = rig->dim - 1;
    for (int n = 0; n < rig->node_count; n++) {
        const gtl_node *node = &rig->nodes[n];
        bool lifted = rig->hand >= 0 && rig->things[rig->load].node == n;
        for (int k = 0; k < 3; k++) {
            bool given = node->fixed || ((node->guided || node->limp) && k != up) || (lifted && k == up);
            if (given) note(found, (found->state->at[3 * n + k] - node->at[k]) / found->size);
        }
    }
}

/* The pull that the case gives the hand at a piece's end, NaN where there is none to be held against. */
static double pull_at(const findings *found, const gtl_piece *piece)
{
    bool hauled = piece->rule == GTL_PULLED || piece->rule == GTL_DRIVEN;
    return hauled ? gtl_given_pull(&found->rig->things[piece->hand], found->kind) : NAN;
}

/* Ropes and hands pull; a known pull is what it is. */
static void check_pulls(findings *found)
{
    for (int i = 0; i < found->rig->part_count; i++) {
        const gtl_piece *piece = &found->rig->pieces[found->rig->parts[i].piece];
        double tension = found->state->tension[i];
        if (piece->rule != GTL_STRUT && tension < 0) note(found, tension / found->force);
        if (found->state->slack[found->rig->parts[i].piece]) note(found, tension / found->force);
        int last = piece->hand_first ? piece->first_part : piece->first_part + piece->part_count - 1;
        double given = i == last ? pull_at(found, piece) : NAN;
        if (!isnan(given)) note(found, (tension - given) / found->force);
    }
}

/* Raising, the hand puts in at least what weights and known pulls take out; lowering, at most; holding, as
 * much. */
static void check_work(findings *found, const gtl_case *which)
{
    const gtl_rig *rig = found->rig;
    if (rig->hand < 0 || which->forced || which->kind == GTL_JAM)
        return; /* senses that are tried out need not go with the motion */
    double out = 0;
    for (int n = 0; n < rig->node_count; n++)
        if (!rig->nodes[n].fixed) out += rig->nodes[n].weight * found->state->rise[3 * n + rig->dim - 1];
    for (int p = 0; p < rig->piece_count; p++)
        if (rig->pieces[p].rule == GTL_PULLED)
            out += rig->things[rig->pieces[p].hand].pull * found->state->payout[p];
    for (int i = 0; i < 3 * rig->node_count; i++) out -= found->state->added[i] * found->state->rise[i];
    double in = found->state->effort * found->state->velocity_ratio;
    double lost = (in - out) / found->force / fmax(1, fabs(found->state->velocity_ratio));
    int direction = gtl_case_direction(which->kind);
    if (direction == 0 || direction * lost < 0) note(found, lost);
}

double gtl_audit(const gtl_rig *rig, const gtl_case *which, const gtl_state *state)
{
    findings result = {rig, which->kind, state, gtl_rig_force(rig), gtl_rig_size(rig), 0};
    sum_forces(&result);
    check_balance(&result);
    check_friction(&result, which);
    check_lengths(&result);
    check_places(&result);
    check_pulls(&result);
    check_work(&result, which);
    return result.worst;
}
