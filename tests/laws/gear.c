/* gear.c - jams, starts, stops and derates on random rigs: what must hold whatever the rig.
 *
 * usage: gear [COUNT [FIRST SEED]] */
#include "laws/rated.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What rounding in two solves may come to [1]. */
static const double rounding = 1e-7;

/* Whether the lifted load is all that has a weight, fixed blocks included, and nobody's pull is known. */
static bool is_single(const gtl_rig *rig)
{
    int weights = 0;
    for (int n = 0; n < rig->node_count; n++) weights += rig->nodes[n].weight > 0;
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_HAND && !isnan(rig->things[i].pull)) return false;
    return rig->hand >= 0 && weights == 1;
}

/* Everything that a rig may be asked for, rated throughout, with the hand's limit a multiple of its effort.
 */
static sketch asked(const specimen *s, chance *c, double limit)
{
    sketch drawn = s->made.sketch;
    drawn.all_cases = true;
    drawn.acceleration = chance_between(c, 0.1, 4);
    for (int i = 0; i < drawn.thing_count; i++) {
        if (drawn.things[i].kind == GTL_HAND && isnan(drawn.things[i].pull)) drawn.things[i].limit = limit;
        if (drawn.things[i].kind != GTL_HAND && drawn.things[i].kind != GTL_LOAD)
            drawn.things[i].wll = exp(chance_between(c, log(500), log(60000)));
    }
    for (int i = 0; i < drawn.line_count; i++) {
        drawn.lines[i].wll = exp(chance_between(c, log(500), log(60000)));
        if (drawn.lines[i].kind == GTL_SPAR) drawn.lines[i].push_wll = drawn.lines[i].wll;
    }
    for (int i = 0; i < drawn.connector_count; i++)
        drawn.connectors[i] = exp(chance_between(c, log(500), log(60000)));
    return drawn;
}

/* A specimen with one weight, asked for everything. False where it is none, or cannot be raised. */
static bool ask(const specimen *s, chance *c, rated *r)
{
    if (!is_single(s->rig) || !s->possible[GTL_HOLD] || !s->possible[GTL_RAISE]) return false;
    double effort = fmax(s->states[GTL_RAISE]->effort, s->states[GTL_HOLD]->effort);
    sketch drawn = asked(s, c, effort * chance_between(c, 1, 4));
    rate_drawn(&drawn, r);
    return true;
}

static const gtl_outcome *outcome_of(const rated *r, gtl_case_kind kind)
{
    const gtl_outcome *outcome = gtl_sheet_outcome(&r->sheet, kind);
    return outcome && outcome->possible ? outcome : NULL;
}

/* A load that is caught while the hand pulls more than raising takes leaves no part with less. */
static void hold_jam(const specimen *s, ruling *out)
{
    chance c = chance_begin(s->seed ^ 0x5EEDu);
    rated r;
    if (!ask(s, &c, &r)) return;
    const gtl_outcome *jam = r.answered ? outcome_of(&r, GTL_JAM) : NULL;
    const gtl_outcome *raise = r.answered ? outcome_of(&r, GTL_RAISE) : NULL;
    out->applied = jam && raise;
    for (int i = 0; out->applied && i < r.sheet.component_count; i++) {
        double slack = rounding * gtl_rig_force(r.rig);
        if (r.sheet.components[i].kind == GTL_HAND) continue;
        if (jam->demand[i] < raise->demand[i] - slack)
            ruling_break(out, "`%s` carries %g in the jam and %g raised", r.sheet.components[i].name,
                         jam->demand[i], raise->demand[i]);
    }
    rated_end(&r);
}

/* Heights alone and one weight: starting multiplies every demand of raising by 1 + a/g, stopping those of
 * lowering. */
static void hold_start(const specimen *s, ruling *out)
{
    static const gtl_case_kind pairs[][2] = {{GTL_RAISE, GTL_START}, {GTL_LOWER, GTL_STOP}};
    chance c = chance_begin(s->seed ^ 0x5EEDu);
    rated r;
    if (s->rig->dim > 1 || !ask(s, &c, &r)) return;
    for (int k = 0; r.answered && k < 2; k++) {
        const gtl_outcome *slow = outcome_of(&r, pairs[k][0]);
        const gtl_outcome *fast = outcome_of(&r, pairs[k][1]);
        if (!slow != !fast)
            ruling_break(out, "only one of %s and its fast case can be", gtl_case_name(pairs[k][0]));
        out->applied |= slow && fast;
        for (int i = 0; slow && fast && i < r.sheet.component_count; i++) {
            double wanted = slow->demand[i] * (1 + r.rig->acceleration / r.rig->gravity);
            if (fabs(fast->demand[i] - wanted) > rounding * gtl_rig_force(r.rig))
                ruling_break(out, "`%s` carries %g in %s, not %g", r.sheet.components[i].name,
                             fast->demand[i], fast->name, wanted);
        }
    }
    rated_end(&r);
}

/* Of all rigs: the hand pays for the weights, the known pulls and the inertia, and for friction besides. */
static void hold_inertia(const specimen *s, ruling *out)
{
    if (s->rig->hand < 0 || !s->possible[GTL_HOLD]) return;
    gtl_state *state = gtl_state_new(s->rig);
    if (!state) abort();
    double kept = s->rig->acceleration;
    s->rig->acceleration = 1.5;
    gtl_case which = {.kind = GTL_START};
    bool can = gtl_solve(s->rig, &which, state) == GTL_OK && state->possible;
    s->rig->acceleration = kept;
    out->applied = can;
    double work = 0;
    for (int n = 0; can && n < s->rig->node_count; n++) {
        const double *rise = state->rise + 3 * n;
        double square = rise[0] * rise[0] + rise[1] * rise[1] + rise[2] * rise[2];
        if (s->rig->nodes[n].fixed) continue;
        work += s->rig->nodes[n].weight * (rise[s->rig->dim - 1] + 1.5 / s->rig->gravity * square);
    }
    for (int p = 0; can && p < s->rig->piece_count; p++)
        if (s->rig->pieces[p].rule == GTL_PULLED)
            work += s->rig->things[s->rig->pieces[p].hand].pull * state->payout[p];
    double paid = can ? state->effort * state->velocity_ratio : 0;
    double bar = rounding * gtl_rig_force(s->rig) * fmax(1, can ? fabs(state->velocity_ratio) : 1);
    if (can && paid < work - bar) ruling_break(out, "the hand pays %g for %g", paid, work);
    gtl_state_free(state);
}

/* One weight: a heavier load lowers no utilisation, in no case. */
static void hold_heavier(const specimen *s, ruling *out)
{
    chance c = chance_begin(s->seed ^ 0x5EEDu);
    rated r;
    if (!ask(s, &c, &r)) return;
    sketch drawn = r.drawn;
    rated heavy;
    double more = chance_between(&c, 1, 1.5);
    for (int i = 0; i < drawn.thing_count; i++)
        if (drawn.things[i].weight > 0) drawn.things[i].weight *= more;
    rate_drawn(&drawn, &heavy);
    out->applied = r.answered && heavy.answered;
    for (int i = 0; out->applied && i < r.sheet.component_count; i++) {
        const gtl_component *one = &r.sheet.components[i];
        const gtl_component *other = &heavy.sheet.components[i];
        if (other->utilisation < one->utilisation * (1 - rounding) - rounding)
            ruling_break(out, "`%s` is used %g with the load and %g with a heavier one", one->name,
                         one->utilisation, other->utilisation);
    }
    rated_end(&r);
    rated_end(&heavy);
}

static double some_share(chance *c)
{
    return chance_of(c, 0.5) ? NAN : chance_between(c, 0.3, 1);
}

/* Whether a component's steps multiply up to its capacity. */
static void check_steps(const rated *r, const gtl_component *component, ruling *out)
{
    double product = component->step_count > 0 ? 1 : NAN;
    for (int k = 0; k < component->step_count; k++)
        product *= r->sheet.steps[component->first_step + k].factor;
    bool same =
        isnan(product) ? isnan(component->capacity) : fabs(product - component->capacity) <= 1e-12 * product;
    if (!same)
        ruling_break(out, "`%s`: the steps come to %g, not %g", component->name, product,
                     component->capacity);
}

/* A derate never raises a capacity; a basket doubles it. */
static void hold_derates(const specimen *s, ruling *out)
{
    static const char *const knots[] = {"", "bowline", "figure-eight-loop", "clove-hitch"};
    chance c = chance_begin(s->seed ^ 0xDE4A7Eu);
    rated plain;
    rated less;
    sketch drawn = asked(s, &c, 5000);
    drawn.all_cases = false;
    drawn.acceleration = NAN;
    rate_drawn(&drawn, &plain);
    bool basket = chance_of(&c, 0.3);
    for (int i = 0; i < drawn.line_count; i++) {
        sketch_line *line = &drawn.lines[i];
        line->wear = some_share(&c);
        if (line->kind == GTL_SPAR) continue;
        line->wet = some_share(&c);
        line->knot = knots[chance_below(&c, 4)];
        if (line->kind == GTL_SLING && basket) line->hitch = "basket";
    }
    rate_drawn(&drawn, &less);
    out->applied = plain.answered && less.answered;
    for (int i = 0; out->applied && i < plain.sheet.component_count; i++) {
        const gtl_component *one = &plain.sheet.components[i];
        const gtl_component *other = &less.sheet.components[i];
        double most = one->capacity * (one->kind == GTL_SLING && basket ? 2 : 1);
        check_steps(&less, other, out);
        if (other->capacity > most * (1 + 1e-12))
            ruling_break(out, "`%s` may carry %g, derated %g", one->name, one->capacity, other->capacity);
    }
    rated_end(&plain);
    rated_end(&less);
}

static const law laws[] = {
    {"a jam is no less than raising", hold_jam},    {"one weight, heights alone: 1 + a/g", hold_start},
    {"inertia is paid for", hold_inertia},          {"a heavier load lowers no utilisation", hold_heavier},
    {"derates take, steps multiply", hold_derates},
};

int main(int argc, char **argv)
{
    trial_plan plan = {
        .name = "gear", .laws = laws, .law_count = sizeof laws / sizeof *laws, .rigs = trial_default(1000)};
    return trial_run(&plan, argc, argv);
}
