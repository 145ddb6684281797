/* audit.c - gtl_audit passes what was solved, and finds one number of it spoilt by a millionth.
 *
 * usage: audit [COUNT [FIRST SEED]] */
#include "laws/trial.h"
#include <math.h>
#include <stdlib.h>

static const double millionth = 1e-6;
/* A part that carries less, over the rig's weight, could hide a millionth under the audit's limit. */
static const double least_share = 0.05;

static double audit(const specimen *s, int k)
{
    gtl_case which = {.kind = (gtl_case_kind)k};
    return gtl_audit(s->rig, &which, s->states[k]);
}

/* See that the audit now finds something, and again nothing once the number is put back. */
static void expect_found(const specimen *s, int k, double *number, double spoilt, const char *what,
                         const char *name, ruling *r)
{
    double good = *number;
    *number = spoilt;
    r->applied = true;
    double worst = audit(s, k);
    if (!(worst > GTL_AUDIT_LIMIT))
        ruling_break(r, "%s: %s of `%s` spoilt, and only %g found", gtl_case_name((gtl_case_kind)k), what,
                     name, worst);
    *number = good;
    if (!(audit(s, k) <= GTL_AUDIT_LIMIT))
        ruling_break(r, "%s: put back, and not passed", gtl_case_name((gtl_case_kind)k));
}

static void hold_good(const specimen *s, ruling *r)
{
    for (int k = 0; k < BASIC_CASES; k++) {
        if (!s->possible[k]) continue;
        double worst = audit(s, k);
        r->applied = true;
        if (!(worst <= GTL_AUDIT_LIMIT) || worst != s->states[k]->residual)
            ruling_break(r, "%s: %g found, %g told", gtl_case_name((gtl_case_kind)k), worst,
                         s->states[k]->residual);
    }
}

static void hold_tension(const specimen *s, ruling *r)
{
    chance c = chance_begin(s->seed);
    for (int k = 0; k < BASIC_CASES; k++) {
        if (!s->possible[k]) continue;
        int part = chance_below(&c, s->rig->part_count);
        double *tension = &s->states[k]->tension[part];
        double way = chance_of(&c, 0.5) ? 1 : -1;
        if (fabs(*tension) >= least_share * gtl_rig_force(s->rig))
            expect_found(s, k, tension, *tension * (1 + way * millionth), "a tension",
                         s->rig->lines[s->rig->parts[part].line].name, r);
    }
}

/* A body on slack lines, or one that may stay anywhere, is as good a little further. */
static bool is_held(const specimen *s, int k, int node)
{
    double sum = 0;
    for (int i = 0; i < s->rig->part_count; i++) {
        const gtl_part *part = &s->rig->parts[i];
        bool ends = s->rig->things[s->rig->stops[part->from].thing].node == node ||
                    s->rig->things[s->rig->stops[part->to].thing].node == node;
        if (ends) sum += fabs(s->states[k]->tension[i]);
    }
    return !s->states[k]->neutral && sum >= least_share * gtl_rig_force(s->rig);
}

static void hold_place(const specimen *s, ruling *r)
{
    chance c = chance_begin(s->seed);
    for (int k = 0; k < BASIC_CASES; k++) {
        if (!s->possible[k]) continue;
        int node = chance_below(&c, s->rig->node_count);
        int axis = chance_below(&c, s->rig->dim);
        const char *name = s->rig->things[s->rig->nodes[node].root].name;
        double *at = &s->states[k]->at[3 * node + axis];
        bool moves = !s->rig->nodes[node].fixed && is_held(s, k, node);
        if (moves) expect_found(s, k, at, *at + millionth * gtl_rig_size(s->rig), "a place", name, r);
    }
}

static void hold_sense(const specimen *s, ruling *r)
{
    for (int k = 0; k < BASIC_CASES; k++) {
        for (int i = 0; s->possible[k] && i < s->rig->run_count; i++) {
            const gtl_run *run = &s->rig->runs[i];
            const double *tension = s->states[k]->tension + run->before;
            if (!(fabs(tension[0] - tension[1]) > millionth * gtl_rig_force(s->rig))) continue;
            signed char good = s->states[k]->sense[i];
            s->states[k]->sense[i] = (signed char)-good;
            r->applied = true;
            if (!(audit(s, k) > GTL_AUDIT_LIMIT))
                ruling_break(r, "%s: the sense at `%s` turned round, and not found",
                             gtl_case_name((gtl_case_kind)k), s->rig->things[run->thing].name);
            s->states[k]->sense[i] = good;
        }
    }
}

/* Effort and velocity ratio are bound by work alone, in hold exactly. */
static void hold_effort(const specimen *s, ruling *r)
{
    gtl_state *state = s->states[GTL_HOLD];
    if (s->rig->driven < 0 || !s->possible[GTL_HOLD] || state->effort < least_share * gtl_rig_force(s->rig))
        return;
    const char *hand = s->rig->things[s->rig->hand].name;
    expect_found(s, GTL_HOLD, &state->effort, state->effort * (1 + millionth), "the effort", hand, r);
    if (fabs(state->velocity_ratio) < least_share) return;
    expect_found(s, GTL_HOLD, &state->velocity_ratio, state->velocity_ratio * (1 + millionth), "the travel",
                 hand, r);
}

static void hold_numbers(const specimen *s, ruling *r)
{
    gtl_state *state = s->states[GTL_HOLD];
    if (!s->possible[GTL_HOLD]) return;
    chance c = chance_begin(s->seed);
    int part = chance_below(&c, s->rig->part_count);
    expect_found(s, GTL_HOLD, &state->tension[part], NAN, "a tension",
                 s->rig->lines[s->rig->parts[part].line].name, r);
}

static const law laws[] = {
    {"a solved state passes", hold_good},       {"a tension spoilt is found", hold_tension},
    {"a place spoilt is found", hold_place},    {"a sense spoilt is found", hold_sense},
    {"an effort spoilt is found", hold_effort}, {"no number is found", hold_numbers},
};

int main(int argc, char **argv)
{
    trial_plan plan = {
        .name = "audit", .laws = laws, .law_count = sizeof laws / sizeof *laws, .rigs = trial_default(2000)};
    return trial_run(&plan, argc, argv);
}
