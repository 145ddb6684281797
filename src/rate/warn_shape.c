/* warn_shape.c - what the shape of a solved case warns of: redirects, flat or wide legs, parts out of line.
 */
#include "rate/rating.h"
#include <math.h>

static const double degree = 3.14159265358979323846 / 180;

/* A redirect's force is told where it is more than this times its line. */
#define REDIRECT_TIMES 1.5
/* Included angle of a bridle over which legs carry more than the load [degrees]. */
#define WIDE_BRIDLE 120.0
/* Angle from horizontal under which a leg's tension grows fast, and under which it grows without bound
 * [degrees]. */
#define FLAT_LEG          30.0
#define NEARLY_HORIZONTAL 5.0
/* Angle between the parts at a travelling block up to which they count as parallel [degrees]. */
#define PARALLEL 5.0
/* A body this far from its drawing, over the rig's size, is not where it was drawn. */
#define FAR 0.25
/* A line slack by less than this share of its length may be drawn in by stretch elsewhere. */
#define NEARLY_TAUT 0.01
/* Angle by which a stated `wrap` may differ from the drawing: more than a drawing is rounded, less than half
 * of the difference between any two of 60, 90, 120 and 180 degrees [degrees]. */
#define WRAP_OFF 15.0

typedef struct view {
    const gtl_bench *bench;
    const gtl_rig *rig;
    const gtl_outcome *outcome;
    gtl_sheet *sheet;
} view;

static bool tell(const view *v, gtl_warning_code code, const char *about, double value, double other)
{
    return gtl_warn(v->sheet,
                    (gtl_warning){code, about, (int)(v->outcome - v->sheet->outcomes), value, other, NULL});
}

static double dot(const double a[3], const double b[3])
{
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static int node_of(const view *v, int stop)
{
    return v->rig->things[v->rig->stops[stop].thing].node;
}

/* Unit vector of a part away from one of its stops. */
static void lead(const view *v, int part, int stop, double unit[3])
{
    int other = v->rig->parts[part].from == stop ? v->rig->parts[part].to : v->rig->parts[part].from;
    const double *here = v->outcome->state->at + 3 * node_of(v, stop);
    const double *there = v->outcome->state->at + 3 * node_of(v, other);
    for (int k = 0; k < 3; k++) unit[k] = there[k] - here[k];
    double size = sqrt(dot(unit, unit));
    for (int k = 0; k < 3; k++) unit[k] /= size;
}

static double angle_between(const double a[3], const double b[3])
{
    double sum = 0;
    double difference = 0;
    for (int k = 0; k < 3; k++) {
        sum += (a[k] + b[k]) * (a[k] + b[k]);
        difference += (a[k] - b[k]) * (a[k] - b[k]);
    }
    return 2 * atan2(sqrt(difference), sqrt(sum));
}

static int passes(const view *v, int thing)
{
    int count = 0;
    for (int r = 0; r < v->rig->run_count; r++) count += v->rig->runs[r].thing == thing;
    return count;
}

static double loads_weight(const view *v)
{
    double sum = 0;
    for (int i = 0; i < v->rig->thing_count; i++)
        if (v->rig->things[i].kind == GTL_LOAD || v->rig->things[i].kind == GTL_ARBOR)
            sum += v->rig->things[i].weight;
    return sum;
}

/* A stop that line passes once, on something that does not move, only turns the line; its anchor feels both
 * parts. */
static bool look_at_redirects(const view *v)
{
    bool kept = true;
    for (int r = 0; r < v->rig->run_count; r++) {
        const gtl_run *run = &v->rig->runs[r];
        const gtl_thing *thing = &v->rig->things[run->thing];
        if (!v->rig->nodes[thing->node].fixed || passes(v, run->thing) > 1) continue;
        const double *pull = v->outcome->forces.rope[run->thing];
        double force = sqrt(dot(pull, pull));
        double line =
            fmax(v->outcome->state->tension[run->before], v->outcome->state->tension[run->before + 1]);
        bool idle = force <= GTL_IDLE_SHARE * v->bench->force; /* a line that is let go */
        if (!idle && (force > loads_weight(v) || force > REDIRECT_TIMES * line))
            kept &= tell(v, GTL_WARN_REDIRECT_FORCE, thing->name, force, line);
    }
    return kept;
}

/* Blocks that travel are meant to have their parts side by side. */
static bool look_at_parallels(const view *v)
{
    bool kept = true;
    for (int r = 0; r < v->rig->run_count; r++) {
        const gtl_run *run = &v->rig->runs[r];
        const gtl_thing *thing = &v->rig->things[run->thing];
        if (v->rig->nodes[thing->node].fixed || thing->kind != GTL_BLOCK) continue;
        double back[3];
        double on[3];
        lead(v, run->before, run->stop, back);
        lead(v, run->before + 1, run->stop, on);
        double angle = angle_between(back, on);
        if (angle > PARALLEL * degree) kept &= tell(v, GTL_WARN_NOT_PARALLEL, thing->name, angle, NAN);
    }
    return kept;
}

/* How far a stated angle of contact is from that of the drawing, whole turns apart, whichever way round the
 * line goes [rad]. */
static double wrap_off(double stated, double drawn)
{
    double turn = 360 * degree;
    double rest = fmod(stated, turn);
    double off = fmin(fabs(rest - drawn), fabs(turn - rest - drawn));
    return fmin(off, turn - rest + drawn);
}

/* Friction goes by the `wrap`, forces by the drawing. With heights alone nothing can be drawn at an angle. */
static bool look_at_wraps(const view *v)
{
    bool kept = true;
    bool drawn_so = v->outcome->kind == GTL_HOLD || v->outcome->kind == GTL_RAISE;
    for (int r = 0; drawn_so && v->rig->dim > 1 && r < v->rig->run_count; r++) {
        const gtl_run *run = &v->rig->runs[r];
        const gtl_thing *thing = &v->rig->things[run->thing];
        double back[3];
        double on[3];
        lead(v, run->before, run->stop, back);
        lead(v, run->before + 1, run->stop, on);
        double drawn = 180 * degree - angle_between(back, on);
        if (!isnan(thing->wrap) && wrap_off(thing->wrap, drawn) > WRAP_OFF * degree)
            kept &= tell(v, GTL_WARN_WRAP_NOT_AS_DRAWN, thing->name, thing->wrap, drawn);
    }
    return kept;
}

/* A line from one tied stop to the next that carries something. */
static bool is_leg(const view *v, int piece)
{
    const gtl_piece *p = &v->rig->pieces[piece];
    double tension = v->outcome->state->tension[p->first_part];
    return p->rule == GTL_TIED && p->part_count == 1 && tension > GTL_IDLE_SHARE * v->bench->force;
}

static bool look_at_flat_legs(const view *v)
{
    bool kept = true;
    for (int p = 0; v->rig->dim > 1 && p < v->rig->piece_count; p++) {
        if (!is_leg(v, p)) continue;
        int part = v->rig->pieces[p].first_part;
        double unit[3];
        lead(v, part, v->rig->parts[part].from, unit);
        double angle = asin(fmin(1, fabs(unit[v->rig->dim - 1])));
        const char *name = v->rig->lines[v->rig->pieces[p].line].name;
        if (angle < NEARLY_HORIZONTAL * degree)
            kept &= tell(v, GTL_WARN_NEARLY_HORIZONTAL_LEG, name, angle, NAN);
        else if (angle < FLAT_LEG * degree)
            kept &= tell(v, GTL_WARN_FLAT_LEG, name, angle, NAN);
    }
    return kept;
}

/* The stop at which a leg ends on a free node and rises from it, -1 for none; its direction from there. */
static int rises_from(const view *v, int piece, int node, double unit[3])
{
    if (!is_leg(v, piece)) return -1;
    const gtl_part *part = &v->rig->parts[v->rig->pieces[piece].first_part];
    int stop = node_of(v, part->from) == node ? part->from : node_of(v, part->to) == node ? part->to : -1;
    if (stop < 0) return -1;
    lead(v, v->rig->pieces[piece].first_part, stop, unit);
    return unit[v->rig->dim - 1] > 0 ? stop : -1;
}

static double widest_angle(const view *v, int node)
{
    double widest = 0;
    for (int p = 0; p < v->rig->piece_count; p++) {
        double one[3];
        if (rises_from(v, p, node, one) < 0) continue;
        for (int q = p + 1; q < v->rig->piece_count; q++) {
            double other[3];
            if (rises_from(v, q, node, other) >= 0) widest = fmax(widest, angle_between(one, other));
        }
    }
    return widest;
}

static bool look_at_bridles(const view *v)
{
    bool kept = true;
    for (int n = 0; v->rig->dim > 1 && n < v->rig->node_count; n++) {
        if (v->rig->nodes[n].fixed) continue;
        double widest = widest_angle(v, n);
        if (widest > WIDE_BRIDLE * degree)
            kept &= tell(v, GTL_WARN_WIDE_BRIDLE, v->rig->things[v->rig->nodes[n].root].name, widest, NAN);
    }
    return kept;
}

static bool look_at_places(const view *v)
{
    bool kept = true;
    double size = gtl_rig_size(v->rig);
    for (int n = 0; n < v->rig->node_count; n++) {
        const gtl_node *node = &v->rig->nodes[n];
        double off[3];
        for (int k = 0; k < 3; k++) off[k] = v->outcome->state->at[3 * n + k] - node->at[k];
        double moved = sqrt(dot(off, off));
        if (!node->fixed && moved > FAR * size)
            kept &= tell(v, GTL_WARN_FAR_FROM_DRAWING, v->rig->things[node->root].name, moved, NAN);
    }
    return kept;
}

static bool look_at_slack(const view *v)
{
    bool kept = true;
    for (int p = 0; p < v->rig->piece_count; p++) {
        if (!v->outcome->state->slack[p]) continue;
        const char *name = v->rig->lines[v->rig->pieces[p].line].name;
        double kept_length = v->outcome->state->kept_length[p];
        double share = (kept_length - v->outcome->state->piece_length[p]) / kept_length;
        kept &= tell(v, share < NEARLY_TAUT ? GTL_WARN_NEARLY_TAUT : GTL_WARN_SLACK_LINE, name, share, NAN);
    }
    return kept;
}

bool gtl_warn_of_shape(const gtl_bench *bench, const gtl_outcome *outcome, gtl_sheet *sheet)
{
    view v = {bench, outcome->rig, outcome, sheet};
    bool lost = outcome->kind == GTL_LOST; /* then nothing is expected where it was drawn */
    return look_at_redirects(&v) && look_at_parallels(&v) && look_at_flat_legs(&v) && look_at_bridles(&v) &&
           (lost || look_at_places(&v)) && look_at_slack(&v) && look_at_wraps(&v);
}
