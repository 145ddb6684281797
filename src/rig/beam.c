/* beam.c - a beam on more lines than statics can share it among. Moments are positive where the beam sags,
 * deflections where it rises, and both are taken times the bending stiffness, which cancels where all is
 * level. */
#include "rig/beam.h"

#include <math.h>
#include <string.h>

/* A share of all that hangs that is rounding [1]; a sinking, as a share of weight times length cubed [1]. */
#define NOTHING   1e-12
#define NO_SINK   1e-11
#define TIP_SLACK 1e-9 /* how far beside an outer line the centre may lie, over the length [1] */
/* Lines come and go in fewer rounds than this. */
#define MOST_ROUNDS (8 * GTL_BEAM_MOST)

double gtl_beam_weight(const gtl_beam *beam)
{
    double sum = 0;
    for (int i = 0; i < beam->load_count; i++) sum += beam->loads[i].weight;
    return sum;
}

/* The moment of all that hangs about the first end [N m]. */
static double first_moment(const gtl_beam *beam)
{
    double sum = 0;
    for (int i = 0; i < beam->load_count; i++)
        sum += beam->loads[i].weight * (beam->loads[i].from + beam->loads[i].to) / 2;
    return sum;
}

double gtl_beam_centre(const gtl_beam *beam)
{
    double weight = gtl_beam_weight(beam);
    return weight > 0 ? first_moment(beam) / weight : NAN;
}

/* --- one stretch of beam --- */

/* What of a load lies between two places. */
static gtl_beam_load clip(const gtl_beam_load *load, double from, double to)
{
    gtl_beam_load part = {0, fmax(load->from, from), fmin(load->to, to)};
    if (load->to > load->from && part.to > part.from)
        part.weight = load->weight * (part.to - part.from) / (load->to - load->from);
    return part;
}

/* A point load at a support belongs to the stretch on its right; beyond the last, to that on its left. */
static bool is_point_in(const gtl_beam_load *load, double from, double to, bool last)
{
    return !(load->to > load->from) && load->from >= from && (load->from < to || (last && load->from <= to));
}

/* The integral of a (l^2 - a^2) over a spread load, over its length: what one end of a span feels of it. */
static double end_term(double span, double near, double far)
{
    if (!(far > near)) return near * (span * span - near * near);
    double at_far = far * far * (2 * span * span - far * far) / 4;
    double at_near = near * near * (2 * span * span - near * near) / 4;
    return (at_far - at_near) / (far - near);
}

/* A span between two supports as a simple beam. */
typedef struct span {
    double length;
    double left, right;           /* reactions at its ends [N] */
    double left_term, right_term; /* 6 A b / l and 6 A a / l of the three-moment equation [N m2] */
} span;

static span simple_span(const gtl_beam *beam, double from, double to, bool last)
{
    span s = {.length = to - from};
    for (int i = 0; i < beam->load_count; i++) {
        const gtl_beam_load *load = &beam->loads[i];
        gtl_beam_load part = is_point_in(load, from, to, last) ? *load : clip(load, from, to);
        if (!(part.weight > 0)) continue;
        double near = part.from - from, far = part.to - from;
        s.right += part.weight * (near + far) / 2 / s.length;
        s.left += part.weight * (s.length - (near + far) / 2) / s.length;
        s.right_term += part.weight * end_term(s.length, near, far) / s.length;
        s.left_term += part.weight * end_term(s.length, s.length - far, s.length - near) / s.length;
    }
    return s;
}

/* What hangs beyond an outer support: its weight, and the moment that it makes there (negative). */
static double overhang(const gtl_beam *beam, double support, bool right, double *moment)
{
    double weight = 0;
    *moment = 0;
    for (int i = 0; i < beam->load_count; i++) {
        const gtl_beam_load *load = &beam->loads[i];
        bool point = !(load->to > load->from);
        bool beyond = right ? load->from > support : load->from < support;
        gtl_beam_load part = right ? clip(load, support, load->to) : clip(load, load->from, support);
        if (point && beyond) part = *load;
        if (!(part.weight > 0)) continue;
        weight += part.weight;
        *moment -= part.weight * fabs((part.from + part.to) / 2 - support);
    }
    return weight;
}

/* --- three moments --- */

/* The moments over the inner supports of `count`; those over the outer two are there. Thomas's way through a
 * tridiagonal system whose diagonal outweighs the rest. */
static void solve_moments(const span *spans, const double *lift, int count, double *moment)
{
    double ratio[GTL_BEAM_MOST] = {0}, value[GTL_BEAM_MOST] = {0};
    value[0] = moment[0];
    for (int i = 1; i < count - 1; i++) {
        double before = spans[i - 1].length, after = spans[i].length;
        double right = -spans[i - 1].right_term - spans[i].left_term +
                       6 * ((lift[i - 1] - lift[i]) / before + (lift[i + 1] - lift[i]) / after);
        double pivot = 2 * (before + after) - before * ratio[i - 1];
        ratio[i] = after / pivot;
        value[i] = (right - before * value[i - 1]) / pivot;
    }
    for (int i = count - 2; i >= 1; i--) moment[i] = value[i] - ratio[i] * moment[i + 1];
}

void gtl_beam_on_props(const gtl_beam *beam, const double *lift, double *reaction)
{
    static const double level[GTL_BEAM_MOST];
    span spans[GTL_BEAM_MOST];
    double moment[GTL_BEAM_MOST] = {0};
    int count = beam->support_count;
    if (count <= 1) {
        reaction[0] = gtl_beam_weight(beam);
        return;
    }
    for (int i = 0; i + 1 < count; i++)
        spans[i] = simple_span(beam, beam->at[i], beam->at[i + 1], i + 2 == count);
    for (int i = 0; i < count; i++) reaction[i] = 0;
    reaction[0] = overhang(beam, beam->at[0], false, &moment[0]);
    reaction[count - 1] += overhang(beam, beam->at[count - 1], true, &moment[count - 1]);
    solve_moments(spans, lift ? lift : level, count, moment);
    for (int i = 0; i + 1 < count; i++) {
        double carried = (moment[i + 1] - moment[i]) / spans[i].length;
        reaction[i] += spans[i].left + carried;
        reaction[i + 1] += spans[i].right - carried;
    }
}

/* --- lines that cannot push --- */

/* A beam on those of its lines that are taut. */
typedef struct hanging {
    const gtl_beam *beam;
    const double *lift; /* NULL: level, or springs */
    bool springs;
    bool taut[GTL_BEAM_MOST];
    double reaction[GTL_BEAM_MOST]; /* feasible: in balance, none negative */
    double weight;
} hanging;

/* The beam on its taut lines alone; which those are into `index`. */
static int taut_lines(const hanging *h, double *at, double *lift, int *index)
{
    int count = 0;
    for (int i = 0; i < h->beam->support_count; i++) {
        if (!h->taut[i]) continue;
        at[count] = h->beam->at[i];
        lift[count] = h->lift ? h->lift[i] : 0;
        index[count++] = i;
    }
    return count;
}

/* A bar on equal springs is pulled down evenly and turned: the share of a line at `x`, where `count` lines
 * hold it [N]. */
static double spring_share(const hanging *h, const double *at, int count, double x)
{
    double middle = 0, spread = 0;
    for (int i = 0; i < count; i++) middle += at[i] / count;
    for (int i = 0; i < count; i++) spread += (at[i] - middle) * (at[i] - middle);
    double turn = first_moment(h->beam) - h->weight * middle;
    return h->weight / count + (spread > 0 ? turn * (x - middle) / spread : 0);
}

/* What the taut lines carry if they can push too. */
static void share(const hanging *h, double *reaction)
{
    double at[GTL_BEAM_MOST] = {0}, lift[GTL_BEAM_MOST] = {0}, part[GTL_BEAM_MOST] = {0};
    int index[GTL_BEAM_MOST] = {0};
    int count = taut_lines(h, at, lift, index);
    gtl_beam held = *h->beam;
    held.at = at;
    held.support_count = count;
    if (!h->springs) gtl_beam_on_props(&held, lift, part);
    memset(reaction, 0, (size_t)h->beam->support_count * sizeof *reaction);
    for (int i = 0; i < count; i++)
        reaction[index[i]] = h->springs ? spring_share(h, at, count, at[i]) : part[i];
}

static double cubed(double x)
{
    return x > 0 ? x * x * x : 0;
}

/* What bends the beam at `x` by all forces on it, but for a straight line [N m3]. */
static double bent(const hanging *h, double x)
{
    double sum = 0;
    for (int i = 0; i < h->beam->support_count; i++) sum += h->reaction[i] * cubed(x - h->beam->at[i]) / 6;
    for (int i = 0; i < h->beam->load_count; i++) {
        const gtl_beam_load *load = &h->beam->loads[i];
        double long_side = x - load->from, short_side = x - load->to;
        if (load->to > load->from)
            sum -= load->weight / (load->to - load->from) *
                   (cubed(long_side) * long_side - cubed(short_side) * short_side) / 24;
        else
            sum -= load->weight * cubed(long_side) / 6;
    }
    return sum;
}

/* How far the beam would sink below a slack line's level; above 0 the line is not slack [N m3], on springs
 * [N]. */
static double sinks(const hanging *h, int line)
{
    double at[GTL_BEAM_MOST] = {0}, lift[GTL_BEAM_MOST] = {0};
    int index[GTL_BEAM_MOST] = {0};
    int count = taut_lines(h, at, lift, index);
    double x = h->beam->at[line];
    if (h->springs) return spring_share(h, at, count, x);
    double first = lift[0] - bent(h, at[0]), last = lift[count - 1] - bent(h, at[count - 1]);
    double straight = first + (last - first) * (x - at[0]) / (at[count - 1] - at[0]);
    return (h->lift ? h->lift[line] : 0) - (bent(h, x) + straight);
}

/* Begin with the two lines beside the centre of gravity; false where there are none. */
static bool begin(hanging *h)
{
    const gtl_beam *beam = h->beam;
    int right = 1, last = beam->support_count - 1;
    double centre = gtl_beam_centre(beam), slack = TIP_SLACK * beam->length;
    if (!(centre >= beam->at[0] - slack && centre <= beam->at[last] + slack)) return false;
    while (right < last && beam->at[right] < centre) right++;
    double from = beam->at[right - 1], apart = beam->at[right] - from;
    double share_of_right = fmin(fmax((centre - from) / apart, 0), 1);
    memset(h->taut, 0, sizeof h->taut);
    memset(h->reaction, 0, sizeof h->reaction);
    h->taut[right - 1] = h->taut[right] = true;
    h->reaction[right] = h->weight * share_of_right;
    h->reaction[right - 1] = h->weight - h->reaction[right];
    return true;
}

/* Let the slack line that the beam sinks on most come taut; false where there is none. */
static bool tighten(hanging *h)
{
    double length = h->beam->length;
    double most = h->springs ? NOTHING * h->weight : NO_SINK * h->weight * length * length * length;
    int which = -1;
    for (int i = 0; i < h->beam->support_count; i++) {
        double sink = h->taut[i] ? 0 : sinks(h, i);
        if (!(sink > most)) continue;
        most = sink;
        which = i;
    }
    if (which >= 0) h->taut[which] = true;
    return which >= 0;
}

/* Go from the reactions that are there towards `wanted`, as far as none becomes negative; a line whose
 * reaction is used up goes slack. False where `wanted` was reached. */
static bool slacken(hanging *h, const double *wanted)
{
    double far = 1;
    int first = -1;
    for (int i = 0; i < h->beam->support_count; i++) {
        if (!h->taut[i] || wanted[i] >= -NOTHING * h->weight) continue;
        double step = h->reaction[i] / (h->reaction[i] - wanted[i]);
        if (first >= 0 && step >= far) continue;
        far = step;
        first = i;
    }
    for (int i = 0; i < h->beam->support_count; i++)
        h->reaction[i] = fmax(h->reaction[i] + far * (wanted[i] - h->reaction[i]), 0);
    if (first < 0) return false;
    h->reaction[first] = 0;
    h->taut[first] = false;
    return true;
}

/* Of all ways to carry the load without pushing, the one that stores the least work is the true one; from one
 * set of taut lines to the next that work falls, so that none comes twice. */
static bool settle(hanging *h)
{
    double wanted[GTL_BEAM_MOST] = {0};
    int rounds = 0;
    do {
        do {
            if (rounds++ > MOST_ROUNDS) return false;
            share(h, wanted);
        } while (slacken(h, wanted));
    } while (tighten(h));
    return true;
}

static bool hang(const gtl_beam *beam, const double *lift, bool springs, double *reaction)
{
    hanging h = {.beam = beam, .lift = lift, .springs = springs, .weight = gtl_beam_weight(beam)};
    if (beam->support_count == 1) {
        reaction[0] = h.weight;
        return fabs(gtl_beam_centre(beam) - beam->at[0]) <= TIP_SLACK * beam->length;
    }
    if (!begin(&h)) return false;
    /* All lines taut is what most battens come to. */
    for (int i = 0; i < beam->support_count; i++) h.taut[i] = true;
    share(&h, reaction);
    bool pushed = false;
    for (int i = 0; i < beam->support_count; i++) pushed |= reaction[i] < -NOTHING * h.weight;
    if (pushed) {
        if (!begin(&h) || !settle(&h)) return false;
        memcpy(reaction, h.reaction, (size_t)beam->support_count * sizeof *reaction);
    }
    for (int i = 0; i < beam->support_count; i++)
        if (reaction[i] < NOTHING * h.weight) reaction[i] = 0;
    return true;
}

bool gtl_beam_on_lines(const gtl_beam *beam, const double *lift, double *reaction)
{
    return hang(beam, lift, false, reaction);
}

bool gtl_beam_on_springs(const gtl_beam *beam, double *reaction)
{
    return hang(beam, NULL, true, reaction);
}
