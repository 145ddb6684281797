/* symmetry.c - the same rig drawn or loaded otherwise: what must stay as it is, and what must follow.
 *
 * usage: symmetry [COUNT [FIRST SEED]] */
#include "laws/trial.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

/* Two solutions of one rig, each exact to 1e-10 and good matrices no worse than 1e-4, agree to this. */
static const double alike = 1e-7;

/* How the second of two rigs came out of the first. */
typedef struct change {
    void (*place)(double at[3]); /* where a body of the first is in the second; NULL: where it was */
    double forces;               /* all of the second's over the first's */
    bool reversed;               /* paths read from the other end */
} change;

typedef struct pair {
    const specimen *first;
    const specimen *second;
    const change *change;
    gtl_case_kind kind;
    ruling *ruling;
} pair;

static void compare_line(const pair *p, int drawn)
{
    const sketch *s = &p->first->made.sketch;
    const gtl_line *a = &p->first->rig->lines[sketch_find_line(s, p->first->rig, drawn)];
    const gtl_line *b = &p->second->rig->lines[sketch_find_line(s, p->second->rig, drawn)];
    double force = mechanics_of(p->first->rig, p->first->states[p->kind]).force;
    int parts = a->stop_count - 1;
    for (int i = 0; i < parts; i++) {
        double was = p->first->states[p->kind]->tension[a->first_part + i];
        int other = p->change->reversed ? parts - 1 - i : i;
        double is = p->second->states[p->kind]->tension[b->first_part + other];
        if (!(fabs(is / p->change->forces - was) <= alike * force))
            ruling_break(p->ruling, "%s: %.12g N in `%s`, then %.12g N", gtl_case_name(p->kind), was, a->name,
                         is);
    }
}

static void compare_place(const pair *p, int drawn)
{
    const sketch *s = &p->first->made.sketch;
    const gtl_thing *a = &p->first->rig->things[sketch_find_thing(s, p->first->rig, drawn)];
    const gtl_thing *b = &p->second->rig->things[sketch_find_thing(s, p->second->rig, drawn)];
    double at[3];
    memcpy(at, p->first->states[p->kind]->at + 3 * a->node, sizeof at);
    if (p->change->place) p->change->place(at);
    const double *is = p->second->states[p->kind]->at + 3 * b->node;
    /* What may stay anywhere has a law of its own in states.c. */
    if (p->first->states[p->kind]->neutral) return;
    for (int k = 0; k < s->dim; k++)
        if (!(fabs(is[k] - at[k]) <= alike * gtl_rig_size(p->first->rig)))
            ruling_break(p->ruling, "%s: `%s` is %g m from where it should be", gtl_case_name(p->kind),
                         a->name, is[k] - at[k]);
}

static void compare(pair *p)
{
    const sketch *s = &p->first->made.sketch;
    for (int k = 0; k < BASIC_CASES; k++) {
        p->kind = (gtl_case_kind)k;
        if (p->first->possible[k] != p->second->possible[k])
            ruling_break(p->ruling, "%s can be in one of them only: %s%s", gtl_case_name(p->kind),
                         p->first->states[k]->reason, p->second->states[k]->reason);
        if (!p->first->possible[k] || !p->second->possible[k]) continue;
        for (int i = 0; i < s->line_count; i++) compare_line(p, i);
        for (int i = 0; i < s->thing_count; i++) compare_place(p, i);
    }
}

/* Work the changed sketch and hold it against the first. */
static void hold_alike(const specimen *s, const sketch *changed, const change *how, chance *shuffle,
                       ruling *r)
{
    specimen other;
    char why[GTL_REASON_SIZE + 16] = "";
    r->applied = true;
    if (specimen_begin(&other, changed, shuffle, why, sizeof why) == WORKED) {
        pair p = {s, &other, how, GTL_HOLD, r};
        compare(&p);
    } else {
        ruling_break(r, "changed, it has no answer: %s", why);
    }
    specimen_end(&other);
}

static void mirrored(double at[3])
{
    at[0] = -at[0];
}

static void hold_mirror(const specimen *s, ruling *r)
{
    static const change how = {mirrored, 1, false};
    if (s->rig->dim == 1) return;
    sketch changed = s->made.sketch;
    sketch_mirror(&changed);
    hold_alike(s, &changed, &how, NULL, r);
}

static const double angle = 1.234;

static void turned(double at[3])
{
    double across = at[0] * cos(angle) - at[1] * sin(angle);
    at[1] = at[0] * sin(angle) + at[1] * cos(angle);
    at[0] = across;
}

static void hold_turn(const specimen *s, ruling *r)
{
    static const change how = {turned, 1, false};
    if (s->rig->dim < 3) return;
    sketch changed = s->made.sketch;
    sketch_turn(&changed, angle);
    hold_alike(s, &changed, &how, NULL, r);
}

static void hold_order(const specimen *s, ruling *r)
{
    static const change how = {NULL, 1, false};
    chance shuffle = chance_begin(s->seed);
    hold_alike(s, &s->made.sketch, &how, &shuffle, r);
}

static void hold_reversal(const specimen *s, ruling *r)
{
    static const change how = {NULL, 1, true};
    sketch changed = s->made.sketch;
    sketch_reverse_paths(&changed);
    hold_alike(s, &changed, &how, NULL, r);
}

static void hold_doubling(const specimen *s, ruling *r)
{
    static const change how = {NULL, 2, false};
    sketch changed = s->made.sketch;
    sketch_scale_forces(&changed, 2);
    hold_alike(s, &changed, &how, NULL, r);
}

/* Rougher stops never make raising easier where no body shifts. */
static void hold_more_friction(const specimen *s, ruling *r)
{
    if (!s->possible[GTL_RAISE]) return;
    chance c = chance_begin(s->seed);
    sketch changed = s->made.sketch;
    sketch_add_friction(&changed, &c, 0.2);
    specimen other;
    char why[GTL_REASON_SIZE + 16];
    finding found = specimen_begin(&other, &changed, NULL, why, sizeof why);
    double bar = 1e-9 * gtl_rig_size(s->rig);
    bool moved = found != WORKED || !other.possible[GTL_RAISE];
    for (int i = 0; !moved && i < 3 * s->rig->node_count; i++)
        moved = fabs(s->states[GTL_RAISE]->at[i] - other.states[GTL_RAISE]->at[i]) > bar;
    if (!moved) {
        double was = s->states[GTL_RAISE]->effort;
        double is = other.states[GTL_RAISE]->effort;
        r->applied = true;
        if (!(is >= was * (1 - 1e-9))) ruling_break(r, "raising took %.12g N, now %.12g N", was, is);
    }
    specimen_end(&other);
}

/* --- the velocity ratio and the motion against two shapes close by --- */

/* The solved rig drawn where it hangs, lines of fixed length, the load higher by that much. */
static finding lift_by(const specimen *s, double rise, specimen *other, char *why, size_t size)
{
    sketch changed = s->made.sketch;
    sketch_fix_lengths(&changed);
    sketch_draw_solved(&changed, s->rig, s->states[GTL_HOLD]);
    for (int i = 0; i < changed.thing_count; i++)
        if (sketch_find_thing(&s->made.sketch, s->rig, i) == s->rig->load) sketch_lift(&changed, i, rise);
    return specimen_begin(other, &changed, NULL, why, size);
}

static double hauled_length(const specimen *s)
{
    mechanics m = mechanics_of(s->rig, s->states[GTL_HOLD]);
    return piece_length(&m, s->rig->driven);
}

static bool same_slack(const specimen *a, const specimen *b)
{
    for (int i = 0; i < a->made.sketch.line_count; i++) {
        const gtl_line *one = &a->rig->lines[sketch_find_line(&a->made.sketch, a->rig, i)];
        const gtl_line *other = &b->rig->lines[sketch_find_line(&a->made.sketch, b->rig, i)];
        if (one->piece_count == 1 &&
            a->states[GTL_HOLD]->slack[one->first_piece] != b->states[GTL_HOLD]->slack[other->first_piece])
            return false;
    }
    return true;
}

static void compare_motion(const specimen *s, const specimen *above, const specimen *below, double step,
                           ruling *r)
{
    const gtl_state *state = s->states[GTL_HOLD];
    double travel = (hauled_length(below) - hauled_length(above)) / (2 * step);
    double most = fmax(1, fabs(travel));
    r->applied = true;
    if (!(fabs(travel - state->velocity_ratio) <= 2e-5 * most))
        ruling_break(r, "velocity ratio %.9g, by two shapes %.9g", state->velocity_ratio, travel);
    for (int i = 0; i < s->made.sketch.thing_count; i++) {
        int a = above->rig->things[sketch_find_thing(&s->made.sketch, above->rig, i)].node;
        int b = below->rig->things[sketch_find_thing(&s->made.sketch, below->rig, i)].node;
        const gtl_thing *thing = &s->rig->things[sketch_find_thing(&s->made.sketch, s->rig, i)];
        for (int k = 0; k < s->rig->dim && !state->neutral; k++) {
            double rate = (above->states[GTL_HOLD]->at[3 * a + k] - below->states[GTL_HOLD]->at[3 * b + k]) /
                          (2 * step);
            if (!(fabs(rate - state->rise[3 * thing->node + k]) <= 2e-5 * fmax(most, fabs(rate))))
                ruling_break(r, "`%s` moves by %.9g, by two shapes %.9g", thing->name,
                             state->rise[3 * thing->node + k], rate);
        }
    }
}

static void hold_motion(const specimen *s, ruling *r)
{
    if (s->rig->driven < 0 || !s->possible[GTL_HOLD]) return;
    double step = 1e-4 * gtl_rig_size(s->rig);
    specimen above;
    specimen below;
    char why[GTL_REASON_SIZE + 16] = "it cannot be";
    finding up = lift_by(s, step, &above, why, sizeof why);
    finding down = lift_by(s, -step, &below, why, sizeof why);
    if (up != WORKED || down != WORKED || !above.possible[GTL_HOLD] || !below.possible[GTL_HOLD])
        ruling_break(r, "no answer with the load a little higher or lower: %s", why);
    else if (same_slack(s, &above) && same_slack(s, &below))
        compare_motion(s, &above, &below, step, r);
    specimen_end(&above);
    specimen_end(&below);
}

static const law laws[] = {
    {"mirrored", hold_mirror},
    {"turned about the vertical", hold_turn},
    {"sections in another order", hold_order},
    {"paths read from the other end", hold_reversal},
    {"all weights and pulls doubled", hold_doubling},
    {"more friction never eases raising", hold_more_friction},
    {"motion by two shapes close by", hold_motion},
};

int main(int argc, char **argv)
{
    trial_plan plan = {.name = "symmetry",
                       .laws = laws,
                       .law_count = sizeof laws / sizeof *laws,
                       .rigs = trial_default(2500)};
    return trial_run(&plan, argc, argv);
}
