/* demands.c - what gtl_rate demands of every part, against all sets of pulls and all senses at undecided
 * stops.
 *
 * usage: demands [COUNT [FIRST SEED]] */
#include "laws/brute.h"
#include "laws/rated.h"
#include <math.h>
#include <stdlib.h>

static const double exact = 1e-9;

/* Whether a case demands anything of a component: of a hand, `hold` does only where no friction is stated. */
static bool is_demanded(const rated *r, const gtl_component *component, gtl_case_kind kind)
{
    if (component->kind != GTL_HAND || kind != GTL_HOLD) return true;
    return !isnan(r->rig->things[component->index].pull) || !any_friction(r->rig);
}

/* --- demands in the printed state --- */

static void check_demand(const rated *r, const gtl_outcome *o, int i, ruling *out)
{
    mechanics m = mechanics_of(r->rig, o->state);
    const gtl_component *component = &r->sheet.components[i];
    double wanted = brute_demand(&m, component, false);
    if (!is_demanded(r, component, o->kind) && !isnan(o->forces.demand[i]))
        ruling_break(out, "%s: `%s` counts", gtl_case_name(o->kind), component->name);
    if (!is_demanded(r, component, o->kind) || isnan(wanted)) return;
    out->applied = true;
    if (!(fabs(o->forces.demand[i] - wanted) <= exact * m.force))
        ruling_break(out, "%s: `%s` has a demand of %.12g N, by all sets %.12g N", gtl_case_name(o->kind),
                     component->name, o->forces.demand[i], wanted);
    double push = brute_demand(&m, component, true);
    if (component->kind == GTL_SPAR && !(fabs(o->forces.push[i] - push) <= exact * m.force))
        ruling_break(out, "%s: `%s` is pushed by %.12g N, not %.12g N", gtl_case_name(o->kind),
                     component->name, push, o->forces.push[i]);
}

static void hold_demands(const specimen *s, ruling *out)
{
    rated r;
    rate(s, &r);
    if (!r.answered) ruling_break(out, "rated, it has no answer: %s", r.rig ? r.sheet.reason : "not read");
    for (int k = 0; r.answered && k < r.sheet.outcome_count; k++)
        for (int i = 0; r.sheet.outcomes[k].possible && i < r.sheet.component_count; i++)
            check_demand(&r, &r.sheet.outcomes[k], i, out);
    rated_end(&r);
}

/* --- what else is told of a case --- */

static bool is_near(double a, double b)
{
    return (isnan(a) && isnan(b)) || fabs(a - b) <= exact * fmax(1, fabs(b));
}

/* Ratio, advantage and efficiency; none where nobody hauls, or where nothing has to be hauled. */
static void check_ratios(const gtl_rig *rig, const gtl_outcome *o, ruling *out)
{
    if (rig->hand < 0) return;
    mechanics m = mechanics_of(rig, o->state);
    double travel = -piece_rate(&m, rig->driven);
    double effort = m.state->tension[hand_part(&rig->pieces[rig->driven])];
    bool pulls = effort > exact * gtl_rig_force(rig);
    double advantage = pulls ? rig->things[rig->load].weight / effort : NAN;
    double efficiency = pulls && o->kind == GTL_RAISE ? work_out(&m) / (effort * travel) : NAN;
    out->applied = true;
    if (!is_near(o->velocity_ratio, travel) || !is_near(o->estimated_advantage, advantage) ||
        !is_near(o->efficiency, efficiency))
        ruling_break(out, "%s: ratio %g, advantage %g, efficiency %g, not %g, %g, %g", gtl_case_name(o->kind),
                     o->velocity_ratio, o->estimated_advantage, o->efficiency, travel, advantage, efficiency);
}

/* A track gives what the lines leave over across it. */
static void check_tracks(const gtl_rig *rig, const gtl_outcome *o, ruling *out)
{
    mechanics m = mechanics_of(rig, o->state);
    for (int n = 0; n < rig->node_count; n++) {
        double sum[3];
        node_force(&m, n, sum);
        for (int k = 0; k < rig->dim - 1 && rig->nodes[n].guided; k++)
            if (!(fabs(o->forces.track[n][k] - sum[k]) <= exact * m.force))
                ruling_break(out, "%s: the track of `%s` resists %g N, not %g N", gtl_case_name(o->kind),
                             rig->things[rig->nodes[n].root].name, o->forces.track[n][k], sum[k]);
    }
}

static void hold_figures(const specimen *s, ruling *out)
{
    rated r;
    rate(s, &r);
    for (int k = 0; r.answered && k < r.sheet.outcome_count; k++) {
        if (!r.sheet.outcomes[k].possible) continue;
        check_ratios(r.rig, &r.sheet.outcomes[k], out);
        check_tracks(r.rig, &r.sheet.outcomes[k], out);
    }
    rated_end(&r);
}

/* --- demands over all senses of undecided stops --- */

enum { MOST_OPEN = 4 };

typedef struct combinations {
    const rated *rated;
    const gtl_outcome *outcome;
    int open[MOST_OPEN];
    int count; /* of open stops; may be more than there is room for */
    gtl_state *state;
    signed char *sense;
    bool *forced;
    double *worst; /* one a component, NaN: none */
    int states;
} combinations;

static void find_open(combinations *c)
{
    const gtl_rig *rig = c->rated->rig;
    for (int i = 0; i < rig->run_count; i++) {
        c->forced[i] = c->outcome->state->undecided[i] && has_friction(&rig->things[rig->runs[i].thing]);
        if (!c->forced[i]) continue;
        if (c->count < MOST_OPEN) c->open[c->count] = i;
        c->count++;
    }
}

/* One way of sliding at the open stops: let it count, and see that friction holds as it was told to. */
static void try_combination(combinations *c, int number, ruling *out)
{
    const gtl_rig *rig = c->rated->rig;
    for (int i = 0; i < c->count; i++, number /= 3) c->sense[c->open[i]] = (signed char)(number % 3 - 1);
    gtl_case which = {.kind = c->outcome->kind, .sense = c->sense, .forced = c->forced};
    if (gtl_solve(rig, &which, c->state) != GTL_OK || !c->state->possible) return;
    c->states++;
    mechanics m = mechanics_of(rig, c->state);
    for (int i = 0; i < c->count; i++) {
        const gtl_run *run = &rig->runs[c->open[i]];
        double first = m.state->tension[run->before];
        double second = m.state->tension[run->before + 1];
        signed char sense = c->sense[c->open[i]];
        double wanted = sense == 0 ? first : greatest_beside(&m, c->open[i], sense > 0 ? first : second);
        if (!(fabs((sense >= 0 ? second : first) - wanted) <= exact * fmax(1, wanted / m.force) * m.force))
            ruling_break(out, "%s: told to slide %d at `%s`, tensions are %g and %g N",
                         gtl_case_name(c->outcome->kind), sense, rig->things[run->thing].name, first, second);
    }
    for (int i = 0; i < c->rated->sheet.component_count; i++) {
        const gtl_component *component = &c->rated->sheet.components[i];
        if (is_demanded(c->rated, component, c->outcome->kind))
            c->worst[i] = fmax(c->worst[i], brute_demand(&m, component, false));
    }
}

static void check_worst(const combinations *c, ruling *out)
{
    double force = mechanics_of(c->rated->rig, c->outcome->state).force;
    if (c->states != c->outcome->variants)
        ruling_break(out, "%s: %d states were rated, not %d", gtl_case_name(c->outcome->kind),
                     c->outcome->variants, c->states);
    for (int i = 0; i < c->rated->sheet.component_count; i++) {
        double found = c->outcome->demand[i];
        if (isnan(c->worst[i])) continue;
        if (!(fabs(found - c->worst[i]) <= 10 * exact * fmax(force, c->worst[i])))
            ruling_break(out, "%s: the worst for `%s` is %.12g N, found %.12g N",
                         gtl_case_name(c->outcome->kind), c->rated->sheet.components[i].name, c->worst[i],
                         found);
    }
}

static void try_all(const rated *r, const gtl_outcome *outcome, ruling *out)
{
    combinations c = {.rated = r, .outcome = outcome, .state = gtl_state_new(r->rig)};
    c.sense = calloc((size_t)r->rig->run_count + 1, sizeof *c.sense);
    c.forced = calloc((size_t)r->rig->run_count + 1, sizeof *c.forced);
    c.worst = calloc((size_t)r->sheet.component_count + 1, sizeof *c.worst);
    if (!c.state || !c.sense || !c.forced || !c.worst) abort();
    for (int i = 0; i < r->sheet.component_count; i++) c.worst[i] = NAN;
    find_open(&c);
    if (c.count > 0 && c.count <= MOST_OPEN) {
        out->applied = true;
        int numbers = (int)lround(pow(3, c.count));
        for (int number = 0; number < numbers; number++) try_combination(&c, number, out);
        check_worst(&c, out);
    }
    gtl_state_free(c.state);
    free(c.sense);
    free(c.forced);
    free(c.worst);
}

static void hold_variants(const specimen *s, ruling *out)
{
    rated r;
    rate(s, &r);
    for (int k = 0; r.answered && k < r.sheet.outcome_count; k++) {
        const gtl_outcome *outcome = &r.sheet.outcomes[k];
        if (outcome->possible && outcome->places == 1) try_all(&r, outcome, out);
    }
    rated_end(&r);
}

static const law laws[] = {
    {"greatest resultant of any set of pulls", hold_demands},
    {"ratios and tracks", hold_figures},
    {"worst of all senses at undecided stops", hold_variants},
};

int main(int argc, char **argv)
{
    trial_plan plan = {.name = "demands",
                       .laws = laws,
                       .law_count = sizeof laws / sizeof *laws,
                       .rigs = trial_default(2000)};
    return trial_run(&plan, argc, argv);
}
