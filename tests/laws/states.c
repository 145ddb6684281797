/* states.c - the laws that a single state must obey, and those between the cases of one rig; the mix of the
 * rigs.
 *
 * usage: states [COUNT [FIRST SEED]] */
#include "laws/census.h"
#include "laws/stability.h"
#include "laws/trial.h"
#include <math.h>
#include <stdio.h>
#include <string.h>

/* Forces and lengths, over the rig's own. */
static const double exact = 1e-9;
/* No body has moved that moved by less, over the rig's size. */
static const double unmoved = 1e-9;

/* What stays as drawn has not turned by more [rad]. */
static const double unturned = 1e-3;

/* --- each state by itself --- */

/* Do that for every state that is there. */
static void each_state(const specimen *s, ruling *r,
                       void (*check)(const mechanics *, gtl_case_kind, ruling *))
{
    for (int k = 0; k < BASIC_CASES; k++) {
        if (!s->possible[k]) continue;
        mechanics m = mechanics_of(s->rig, s->states[k]);
        check(&m, (gtl_case_kind)k, r);
    }
}

static void check_forces(const mechanics *m, gtl_case_kind kind, ruling *r)
{
    for (int n = 0; n < m->rig->node_count; n++) {
        const gtl_node *node = &m->rig->nodes[n];
        if (node->fixed) continue;
        r->applied = true;
        double sum[3];
        node_force(m, n, sum);
        for (int k = 0; k < m->rig->dim; k++) {
            bool held = node->guided && k < m->rig->dim - 1;
            if (!held && !(fabs(sum[k]) <= exact * m->force))
                ruling_break(r, "%s: %g N are left on `%s`", gtl_case_name(kind), sum[k],
                             m->rig->things[node->root].name);
        }
    }
}

static void hold_forces(const specimen *s, ruling *r)
{
    each_state(s, r, check_forces);
}

/* Weights and what anchors, hands and tracks give: no force and no turning is left over. */
static void check_moments(const mechanics *m, gtl_case_kind kind, ruling *r)
{
    double moment[3] = {0, 0, 0};
    r->applied = true;
    for (int n = 0; n < m->rig->node_count; n++) {
        const gtl_node *node = &m->rig->nodes[n];
        const double *at = m->state->at + 3 * n;
        double outer[3];
        node_force(m, n, outer); /* a held node gives the opposite; weights are in the sum of both */
        for (int k = 0; k < 3; k++) {
            bool held = node->fixed || (node->guided && k < m->rig->dim - 1);
            outer[k] = held ? -outer[k] : 0;
        }
        outer[m->rig->dim - 1] -= node->weight;
        for (int k = 0; k < 3; k++)
            moment[k] += at[(k + 1) % 3] * outer[(k + 2) % 3] - at[(k + 2) % 3] * outer[(k + 1) % 3];
    }
    for (int k = 0; k < 3; k++)
        if (!(fabs(moment[k]) <= exact * m->force * 2 * m->size))
            ruling_break(r, "%s: a moment of %g N m is left", gtl_case_name(kind), moment[k]);
}

static void hold_moments(const specimen *s, ruling *r)
{
    each_state(s, r, check_moments);
}

/* At a stop over which rope runs: exactly the ratio of its friction, rising the way the rope goes; elsewhere
 * equal. */
static void check_ratio(const mechanics *m, gtl_case_kind kind, int run, ruling *r)
{
    const gtl_run *stop = &m->rig->runs[run];
    const gtl_thing *thing = &m->rig->things[stop->thing];
    double first = m->state->tension[stop->before];
    double second = m->state->tension[stop->before + 1];
    bool rubs = kind != GTL_HOLD && !m->state->undecided[run] && m->state->sense[run] != 0;
    bool rises = m->state->sense[run] > 0;
    double wanted = rubs ? greatest_beside(m, run, rises ? first : second) : rises ? first : second;
    double found = rises ? second : first;
    if (!(fabs(found - wanted) <= exact * fmax(1, wanted / m->force) * m->force))
        ruling_break(r, "%s: tensions %.17g and %.17g N at `%s`, %.17g wanted", gtl_case_name(kind), first,
                     second, thing->name, wanted);
}

static void check_friction(const mechanics *m, gtl_case_kind kind, ruling *r)
{
    for (int i = 0; i < m->rig->run_count; i++) {
        r->applied |= kind != GTL_HOLD && has_friction(&m->rig->things[m->rig->runs[i].thing]);
        check_ratio(m, kind, i, r);
    }
}

static void hold_friction(const specimen *s, ruling *r)
{
    each_state(s, r, check_friction);
}

/* The sense against the flow, and the flow against the bodies' motion. */
static void check_senses(const mechanics *m, gtl_case_kind kind, ruling *r)
{
    double most = 0;
    if (m->rig->driven < 0) return;
    for (int i = 0; i < m->rig->run_count; i++) most = fmax(most, fabs(run_flow(m, i)));
    for (int i = 0; i < m->rig->run_count; i++) {
        const char *name = m->rig->things[m->rig->runs[i].thing].name;
        double flow = run_flow(m, i);
        r->applied = true;
        if (!(fabs(flow - m->state->flow[i]) <= 1e-8 * fmax(1, most)))
            ruling_break(r, "%s: rope passes `%s` by %g, not %g", gtl_case_name(kind), name, flow,
                         m->state->flow[i]);
        if (kind == GTL_HOLD || m->state->undecided[i] || !(fabs(flow) > 2e-6 * most)) continue;
        bool rises = (flow > 0) == (kind == GTL_RAISE);
        if (m->state->sense[i] != (rises ? 1 : -1))
            ruling_break(r, "%s: rope passes `%s` by %g, but the sense is %d", gtl_case_name(kind), name,
                         flow, m->state->sense[i]);
    }
}

static void hold_senses(const specimen *s, ruling *r)
{
    each_state(s, r, check_senses);
}

/* Where nobody hauls no motion decides a stop; held by a hand, all tensions are equal and nothing is left to
 * decide. */
static void hold_undecided(const specimen *s, ruling *r)
{
    const gtl_state *state = s->states[GTL_HOLD];
    for (int i = 0; s->possible[GTL_HOLD] && i < s->rig->run_count; i++) {
        r->applied = true;
        if (state->undecided[i] != (s->rig->hand < 0))
            ruling_break(r, "hold: the stop at `%s` is %s", s->rig->things[s->rig->runs[i].thing].name,
                         state->undecided[i] ? "undecided" : "decided");
    }
}

static void check_piece(const mechanics *m, gtl_case_kind kind, int p, ruling *r)
{
    const gtl_piece *piece = &m->rig->pieces[p];
    const char *name = m->rig->lines[piece->line].name;
    double stated = m->rig->lines[piece->line].length;
    double kept = isnan(stated) ? drawn_length(m->rig, p) : stated;
    double over = piece_length(m, p) - kept;
    bool slack = m->state->slack[p];
    if (slack ? over > exact * m->size : !(fabs(over) <= exact * m->size))
        ruling_break(r, "%s: `%s` is %g m off its length", gtl_case_name(kind), name, over);
    for (int i = 0; slack && i < piece->part_count; i++)
        if (!(fabs(m->state->tension[piece->first_part + i]) <= exact * m->force))
            ruling_break(r, "%s: `%s` is slack and pulls", gtl_case_name(kind), name);
}

/* Tied lines are as long as drawn or stated, slack ones carry nothing, and what is slack has room. */
static void check_lengths(const mechanics *m, gtl_case_kind kind, ruling *r)
{
    for (int p = 0; p < m->rig->piece_count; p++) {
        gtl_piece_rule rule = m->rig->pieces[p].rule;
        if (rule != GTL_TIED && rule != GTL_STRUT) continue;
        r->applied = true;
        check_piece(m, kind, p, r);
    }
}

static void hold_lengths(const specimen *s, ruling *r)
{
    each_state(s, r, check_lengths);
}

/* Ropes only pull, a known pull is what it is, the lifted load is at its height, what is fixed stays, a
 * guided body keeps its track. */
static void check_pulls(const mechanics *m, gtl_case_kind kind, ruling *r)
{
    r->applied = true;
    for (int i = 0; i < m->rig->part_count; i++)
        if (m->rig->pieces[m->rig->parts[i].piece].rule != GTL_STRUT &&
            m->state->tension[i] < -exact * m->force)
            ruling_break(r, "%s: `%s` pushes", gtl_case_name(kind),
                         m->rig->lines[m->rig->parts[i].line].name);
    for (int p = 0; p < m->rig->piece_count; p++) {
        const gtl_piece *piece = &m->rig->pieces[p];
        if (piece->rule != GTL_PULLED) continue;
        double pull = m->rig->things[piece->hand].pull;
        if (!(fabs(m->state->tension[hand_part(piece)] - pull) <= exact * m->force))
            ruling_break(r, "%s: `%s` does not pull what it should", gtl_case_name(kind),
                         m->rig->things[piece->hand].name);
    }
    for (int n = 0; n < m->rig->node_count; n++) {
        const gtl_node *node = &m->rig->nodes[n];
        for (int k = 0; k < m->rig->dim; k++) {
            bool up = k == m->rig->dim - 1;
            bool lifted = up && m->rig->load >= 0 && m->rig->things[m->rig->load].node == n;
            bool stays = node->fixed || lifted || (node->guided && !up);
            if (stays && !(fabs(m->state->at[3 * n + k] - node->at[k]) <= exact * m->size))
                ruling_break(r, "%s: `%s` has left its place", gtl_case_name(kind),
                             m->rig->things[node->root].name);
        }
    }
}

static void hold_pulls(const specimen *s, ruling *r)
{
    each_state(s, r, check_pulls);
}

/* Hold gives back all work, raising takes more, lowering gives less. */
static void check_work(const mechanics *m, gtl_case_kind kind, ruling *r)
{
    if (m->rig->driven < 0) return;
    r->applied = true;
    double travel = -piece_rate(m, m->rig->driven);
    double in = m->state->tension[hand_part(&m->rig->pieces[m->rig->driven])] * travel;
    double lost = (in - work_out(m)) / (m->force * fmax(1, fabs(travel)));
    bool kept = kind == GTL_HOLD ? fabs(lost) <= exact : kind == GTL_RAISE ? lost >= -exact : lost <= exact;
    if (!kept) ruling_break(r, "%s: %g of the work is lost", gtl_case_name(kind), lost);
    if (!(fabs(travel - m->state->velocity_ratio) <= 1e-8 * fmax(1, fabs(travel))))
        ruling_break(r, "%s: the velocity ratio is %.17g, not %.17g", gtl_case_name(kind), travel,
                     m->state->velocity_ratio);
}

static void hold_work(const specimen *s, ruling *r)
{
    each_state(s, r, check_work);
}

/* Every state that was taken had a matrix that decides it, or says that something may stay anywhere. */
static void check_pivots(const mechanics *m, gtl_case_kind kind, ruling *r)
{
    r->applied = true;
    if (!(m->state->pivot_ratio > 1e-9 || m->state->neutral))
        ruling_break(r, "%s: pivot ratio %g", gtl_case_name(kind), m->state->pivot_ratio);
}

static void hold_pivots(const specimen *s, ruling *r)
{
    each_state(s, r, check_pivots);
}

/* A spreader that can turn without anything rising is left as drawn. */
static void check_neutral_spar(const mechanics *m, gtl_case_kind kind, const gtl_line *spar, ruling *r)
{
    int a = m->rig->things[m->rig->stops[spar->first_stop].thing].node;
    int b = m->rig->things[m->rig->stops[spar->first_stop + 1].thing].node;
    if (m->state->neutral_node != a && m->state->neutral_node != b) return;
    const double *from = m->rig->nodes[a].at;
    const double *to = m->rig->nodes[b].at;
    double drawn = atan2(to[1] - from[1], to[0] - from[0]);
    double found =
        atan2(m->state->at[3 * b + 1] - m->state->at[3 * a + 1], m->state->at[3 * b] - m->state->at[3 * a]);
    r->applied = true;
    if (!(fabs(remainder(found - drawn, 2 * acos(-1))) <= unturned))
        ruling_break(r, "%s: `%s` has turned by %g rad", gtl_case_name(kind), spar->name, found - drawn);
}

static void check_neutral(const mechanics *m, gtl_case_kind kind, ruling *r)
{
    for (int i = 0; m->state->neutral && m->rig->dim == 3 && i < m->rig->line_count; i++)
        if (m->rig->lines[i].kind == GTL_SPAR) check_neutral_spar(m, kind, &m->rig->lines[i], r);
}

static void hold_neutral(const specimen *s, ruling *r)
{
    each_state(s, r, check_neutral);
}

/* What hangs comes back when touched; a spar may stand only where it does. */
static void hold_stable(const specimen *s, ruling *r)
{
    if (!s->possible[GTL_HOLD]) return;
    mechanics m = mechanics_of(s->rig, s->states[GTL_HOLD]);
    r->applied = true;
    if (!comes_back(&m)) ruling_break(r, "hold: a place that the rig leaves when touched");
}

/* --- between the cases --- */

static bool shifted(const specimen *s, int k)
{
    double bar = unmoved * gtl_rig_size(s->rig);
    for (int i = 0; i < 3 * s->rig->node_count; i++)
        if (!(fabs(s->states[k]->at[i] - s->states[GTL_HOLD]->at[i]) <= bar)) return true;
    return false;
}

/* Where no body shifts, friction makes raising no easier and lowering no harder. */
static void hold_order(const specimen *s, ruling *r)
{
    if (s->rig->driven < 0 || !s->possible[GTL_HOLD]) return;
    double hold = s->states[GTL_HOLD]->effort;
    double slack = exact * mechanics_of(s->rig, s->states[GTL_HOLD]).force;
    if (s->possible[GTL_RAISE] && !shifted(s, GTL_RAISE)) {
        r->applied = true;
        if (!(s->states[GTL_RAISE]->effort >= hold - slack))
            ruling_break(r, "raising takes %g N, holding %g N", s->states[GTL_RAISE]->effort, hold);
    }
    if (s->possible[GTL_LOWER] && !shifted(s, GTL_LOWER)) {
        r->applied = true;
        if (!(s->states[GTL_LOWER]->effort <= hold + slack))
            ruling_break(r, "lowering takes %g N, holding %g N", s->states[GTL_LOWER]->effort, hold);
    }
}

/* With the lifted load's as the only weight and no known pull, what is won in force is paid in rope. */
static void hold_advantage(const specimen *s, ruling *r)
{
    if (s->rig->driven < 0 || !s->possible[GTL_HOLD]) return;
    double weight = s->rig->things[s->rig->load].weight;
    if (gtl_rig_force(s->rig) > weight * (1 + 1e-12)) return;
    for (int p = 0; p < s->rig->piece_count; p++)
        if (s->rig->pieces[p].rule == GTL_PULLED) return;
    r->applied = true;
    double ratio = weight / s->states[GTL_HOLD]->effort;
    double travel = s->states[GTL_HOLD]->velocity_ratio;
    if (!(fabs(ratio - travel) <= 1e-8 * fabs(travel)))
        ruling_break(r, "force ratio %.12g, velocity ratio %.12g", ratio, travel);
}

static const law laws[] = {
    {"balance of forces", hold_forces},
    {"balance of moments", hold_moments},
    {"tension ratio at each stop", hold_friction},
    {"sense of friction", hold_senses},
    {"stops that no motion decides", hold_undecided},
    {"lengths kept", hold_lengths},
    {"pulls and places given", hold_pulls},
    {"work", hold_work},
    {"pivots", hold_pivots},
    {"what can turn stays", hold_neutral},
    {"comes back when touched", hold_stable},
    {"lower, hold, raise in order", hold_order},
    {"velocity ratio is force ratio", hold_advantage},
};

int main(int argc, char **argv)
{
    trial_plan plan = {.name = "states",
                       .laws = laws,
                       .law_count = sizeof laws / sizeof *laws,
                       .rigs = trial_default(2500),
                       .each = census_count,
                       .last = census_judge};
    return trial_run(&plan, argc, argv);
}
