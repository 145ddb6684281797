/* contact.c - what a sheave or a bend adds to the tension of a rope that runs over it.
 *
 * Sheave of efficiency e at 180 degrees: the bearing takes f times the resultant, (T2 - T1) = f |T1 a + T2
 * b|. With k = (1 - e)/(2 sqrt e) and s = sin(wrap/2) that is ln(T2/T1) = 2 asinh(k s), without the
 * cancellation that the quadratic form suffers at small wraps. Fairlead: ln(T2/T1) = mu (wrap + 2 pi turns).
 */
#include "solve/work.h"
#include <math.h>

static const double pi = 3.14159265358979323846;

double gtl_contact_constant(const gtl_thing *thing)
{
    if (!thing->friction_stated) return 0;
    if (thing->kind == GTL_BLOCK) return (1 - thing->efficiency) / (2 * sqrt(thing->efficiency));
    if (!isnan(thing->friction)) return thing->friction;
    return -log(thing->efficiency) / pi;
}

static double sheave_log(double k, double s, double *slope)
{
    *slope = 2 * k / sqrt(1 + k * k * s * s);
    return 2 * asinh(k * s);
}

double gtl_contact_log(const gtl_work *work, int run, const double a[3], const double b[3], double *slope)
{
    const gtl_thing *thing = &work->rig->things[work->rig->runs[run].thing];
    double constant = work->contact[run];
    bool sheave = thing->kind == GTL_BLOCK;
    double turns = sheave ? 0 : 2 * pi * thing->turns;
    *slope = 0;
    if (!isnan(thing->wrap)) {
        double ignored;
        return sheave ? sheave_log(constant, fabs(sin(thing->wrap / 2)), &ignored)
                      : constant * (thing->wrap + turns);
    }
    double sum = 0;
    double difference = 0;
    for (int k = 0; k < 3; k++) {
        sum += (a[k] + b[k]) * (a[k] + b[k]);
        difference += (a[k] - b[k]) * (a[k] - b[k]);
    }
    double s = sqrt(sum) / 2;
    double c = sqrt(difference) / 2;                  /* cos(wrap/2) */
    bool kink = s < 1e-12 || (!sheave && c < 0.5e-9); /* no derivative there: take 0 */
    if (sheave) {
        double log = sheave_log(constant, s, slope);
        if (kink) *slope = 0;
        return log;
    }
    *slope = kink ? 0 : constant * 2 / c;
    return constant * (2 * atan2(s, c) + turns);
}

/* The unit vector from a running stop along one of its parts, towards the part's other end. */
static void outwards(const gtl_rig *rig, const gtl_state *state, int part, int stop, double unit[3])
{
    int other = rig->parts[part].from == stop ? rig->parts[part].to : rig->parts[part].from;
    const double *here = state->at + 3 * rig->things[rig->stops[stop].thing].node;
    const double *there = state->at + 3 * rig->things[rig->stops[other].thing].node;
    double size = 0;
    for (int k = 0; k < 3; k++) size = hypot(size, there[k] - here[k]);
    for (int k = 0; k < 3; k++) unit[k] = (there[k] - here[k]) / size;
}

double gtl_friction_log(const gtl_rig *rig, const gtl_state *state, int run)
{
    const gtl_run *at = &rig->runs[run];
    double back[3], on[3], slope;
    outwards(rig, state, at->before, at->stop, back);
    outwards(rig, state, at->before + 1, at->stop, on);
    return gtl_contact_log(state->work, run, back, on, &slope);
}
