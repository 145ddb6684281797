/* loss.c - the laws of what is left when a part of a rig lets go, on random rigs: anchors, lines and
 * connectors are lost one by one.
 *
 * usage: loss [COUNT [FIRST SEED]] */
#include "laws/losses.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Forces and lengths, over the rig's own. */
static const double exact = 1e-9;
/* Two searches that end in the same place. */
static const double same = 1e-6;

/* Do that for every loss that comes to figures. */
static void each_loss(const specimen *s, ruling *r,
                      void (*check)(const gtl_rig *, const gtl_outcome *, ruling *))
{
    const losses *l = plain_losses(s);
    if (!l->answered) ruling_break(r, "%s", l->sheet.reason);
    for (int i = 1; l->answered && i < l->sheet.outcome_count; i++)
        if (l->sheet.outcomes[i].possible) check(l->rig, &l->sheet.outcomes[i], r);
}

static int node_of(const gtl_rig *rig, int stop)
{
    return rig->things[rig->stops[stop].thing].node;
}

/* --- statics of what is left --- */

/* The weight of what is left and the pulls on it leave nothing over on any free body. */
static void check_forces(const gtl_rig *whole, const gtl_outcome *lost, ruling *r)
{
    (void)whole;
    const gtl_rig *rig = lost->rig;
    mechanics m = mechanics_of(rig, lost->state);
    r->applied = true;
    for (int n = 0; n < rig->node_count; n++) {
        double sum[3] = {0, 0, 0};
        sum[rig->dim - 1] = -rig->nodes[n].weight;
        for (int i = 0; i < rig->part_count; i++) {
            double unit[3];
            part_direction(&m, i, unit);
            int ends = (node_of(rig, rig->parts[i].from) == n) - (node_of(rig, rig->parts[i].to) == n);
            for (int k = 0; k < 3; k++) sum[k] += ends * lost->state->tension[i] * unit[k];
        }
        for (int k = 0; k < rig->dim; k++) {
            bool held = rig->nodes[n].fixed || (rig->nodes[n].guided && k < rig->dim - 1);
            if (!held && !(fabs(sum[k]) <= exact * m.force))
                ruling_break(r, "%s: %g N are left on `%s`", lost->name, sum[k],
                             rig->things[rig->nodes[n].root].name);
        }
    }
}

static void hold_forces(const specimen *s, ruling *r)
{
    each_loss(s, r, check_forces);
}

/* No rope pushes, none is longer than it was, and one that is shorter carries nothing. */
static void check_lengths(const gtl_rig *whole, const gtl_outcome *lost, ruling *r)
{
    (void)whole;
    const gtl_rig *rig = lost->rig;
    mechanics m = mechanics_of(rig, lost->state);
    r->applied = true;
    for (int p = 0; p < rig->piece_count; p++) {
        const gtl_piece *piece = &rig->pieces[p];
        const char *name = rig->lines[piece->line].name;
        double tension = lost->state->tension[piece->first_part];
        double over = piece_length(&m, p) - piece->length;
        if (piece->rule == GTL_DRIVEN) ruling_break(r, "%s: somebody hauls on `%s`", lost->name, name);
        if (piece->rule == GTL_PULLED) {
            if (!(fabs(tension - rig->things[piece->hand].pull) <= exact * m.force))
                ruling_break(r, "%s: `%s` is not pulled as it was", lost->name, name);
            continue;
        }
        if (!(over <= exact * m.size)) ruling_break(r, "%s: `%s` is %g m too long", lost->name, name, over);
        if (piece->rule == GTL_STRUT) continue;
        if (!(tension >= -exact * m.force)) ruling_break(r, "%s: `%s` pushes", lost->name, name);
        if (over < -1e-6 * m.size && tension > exact * m.force)
            ruling_break(r, "%s: `%s` is slack and pulls with %g N", lost->name, name, tension);
    }
}

static void hold_lengths(const specimen *s, ruling *r)
{
    each_loss(s, r, check_lengths);
}

static bool is_in(const gtl_rig *rig, gtl_via via, int connector)
{
    for (int i = 0; i < via.count; i++)
        if (rig->vias[via.first + i] == connector) return true;
    return false;
}

/* A connector stands where it is said to stand, or nowhere. */
static void check_connectors(const gtl_rig *whole, const gtl_outcome *lost, ruling *r)
{
    const gtl_rig *rig = lost->rig;
    for (int i = 0; i < whole->connector_count; i++) {
        const gtl_connector *now = &rig->connectors[i];
        r->applied = true;
        bool at_stop = now->stop < 0 || is_in(rig, rig->stops[now->stop].via, i);
        bool at_thing = now->thing < 0 || is_in(rig, rig->things[now->thing].via, i);
        if (!at_stop || !at_thing) ruling_break(r, "%s: `%s` stands elsewhere", lost->name, now->name);
    }
}

static void hold_connectors(const specimen *s, ruling *r)
{
    each_loss(s, r, check_connectors);
}

/* What the rig was drawn with is still there, or gone: parts lie on their own line, what let go carries
 * nothing, and what is loose carries nothing. */
static void check_parts(const gtl_rig *whole, const gtl_outcome *lost, ruling *r)
{
    r->applied = true;
    for (int i = 0; i < whole->part_count; i++) {
        int now = lost->part[i];
        if (now < -1 || now >= lost->rig->part_count ||
            (now >= 0 && lost->rig->parts[now].line != whole->parts[i].line))
            ruling_break(r, "%s: part %d has become part %d", lost->name, i, now);
    }
    for (int i = 0; i < whole->thing_count; i++) {
        const double *passed = lost->forces.passed[i];
        if (lost->loose[i] && (passed[0] != 0 || passed[1] != 0 || passed[2] != 0))
            ruling_break(r, "%s: `%s` is loose and passes a force on", lost->name, whole->things[i].name);
    }
}

static void hold_parts(const specimen *s, ruling *r)
{
    each_loss(s, r, check_parts);
}

static void hold_lost_idle(const specimen *s, ruling *r)
{
    const losses *l = plain_losses(s);
    for (int i = 1; l->answered && i < l->sheet.outcome_count; i++) {
        const gtl_asked *asked = &l->rig->cases[i];
        const gtl_outcome *lost = &l->sheet.outcomes[i];
        const gtl_component *gone = gtl_sheet_component(&l->sheet, asked->lost_kind, asked->lost);
        if (!lost->possible || !gone) continue;
        r->applied = true;
        double demand = lost->demand[gone - l->sheet.components];
        if (demand != 0) ruling_break(r, "%s: still carries %g N", lost->name, demand);
    }
}

/* --- energy --- */

static double energy(const gtl_rig *rig, const double *at,
                     double (*length)(const gtl_rig *, const double *, int))
{
    double sum = 0;
    for (int n = 0; n < rig->node_count; n++) sum += rig->nodes[n].weight * at[3 * n + rig->dim - 1];
    for (int p = 0; p < rig->piece_count; p++)
        if (rig->pieces[p].rule == GTL_PULLED)
            sum += rig->things[rig->pieces[p].hand].pull * length(rig, at, p);
    return sum;
}

static double length_at(const gtl_rig *rig, const double *at, int piece)
{
    double sum = 0;
    for (int i = 0; i < rig->pieces[piece].part_count; i++) {
        const gtl_part *part = &rig->parts[rig->pieces[piece].first_part + i];
        const double *a = at + 3 * node_of(rig, part->from);
        const double *b = at + 3 * node_of(rig, part->to);
        sum += hypot(hypot(b[0] - a[0], b[1] - a[1]), b[2] - a[2]);
    }
    return sum;
}

static bool has_spar(const gtl_rig *rig)
{
    for (int i = 0; i < rig->line_count; i++)
        if (rig->lines[i].kind == GTL_SPAR) return true;
    return false;
}

/* A rig of ropes hangs where its weights, and the ropes that hands pull in, have the least energy. What lets
 * go only takes away from what keeps it from there, so that it comes down; a single load comes down itself.
 * With spars there may be several places, and that need not be. */
static void check_energy(const gtl_rig *whole, const gtl_outcome *lost, ruling *r)
{
    const gtl_rig *rig = lost->rig;
    if (has_spar(whole)) return;
    r->applied = true;
    double *before = calloc(3 * (size_t)rig->node_count + 1, sizeof *before);
    if (!before) abort();
    for (int n = 0; n < rig->node_count; n++) memcpy(before + 3 * n, rig->nodes[n].at, 3 * sizeof *before);
    double risen = energy(rig, lost->state->at, length_at) - energy(rig, before, length_at);
    if (!(risen <= same * gtl_rig_force(rig) * gtl_rig_size(rig)))
        ruling_break(r, "%s: the rig has risen by %g N m", lost->name, risen);
    free(before);
}

static void hold_energy(const specimen *s, ruling *r)
{
    each_loss(s, r, check_energy);
}

/* --- the factor --- */

static void compare(const double *one, const double *three, int count, double factor, double floor,
                    const char *what, const gtl_outcome *lost, ruling *r)
{
    for (int i = 0; i < count; i++) {
        bool both = isnan(one[i]) && isnan(three[i]);
        if (!both && !(fabs(three[i] - factor * one[i]) <= exact * fmax(fabs(three[i]), floor)))
            ruling_break(r, "%s: %s is %.17g and becomes %.17g", lost->name, what, one[i], three[i]);
    }
}

/* Places stay; every force is multiplied, wherever it stands. */
static void hold_factor(const specimen *s, ruling *r)
{
    losses one = lose_each(s->rig, 1);
    losses three = lose_each(s->rig, 3);
    double least = exact * gtl_rig_force(s->rig);
    for (int i = 1; one.answered && three.answered && i < one.sheet.outcome_count; i++) {
        const gtl_outcome *a = &one.sheet.outcomes[i];
        const gtl_outcome *b = &three.sheet.outcomes[i];
        if (a->possible != b->possible || a->falls != b->falls)
            ruling_break(r, "%s: not both can be", a->name);
        if (!a->possible || !b->possible) continue;
        r->applied = true;
        int things = 3 * s->rig->thing_count;
        compare(a->state->at, b->state->at, 3 * a->rig->node_count, 1, 1, "a place", a, r);
        compare(a->state->tension, b->state->tension, a->rig->part_count, 3, least, "a tension", a, r);
        compare(a->demand, b->demand, one.sheet.component_count, 3, least, "a demand", a, r);
        compare(a->push, b->push, one.sheet.component_count, 3, least, "a push", a, r);
        compare(a->forces.passed[0], b->forces.passed[0], things, 3, least, "what is passed on", a, r);
        compare(a->forces.rope[0], b->forces.rope[0], things, 3, least, "what ropes do", a, r);
        compare(a->forces.track[0], b->forces.track[0], 3 * a->rig->node_count, 3, least, "a track's", a, r);
    }
    losses_end(&one);
    losses_end(&three);
}

/* --- against other rigs --- */

/* To lose a line that is slack in hold changes nothing. */
static void hold_slack(const specimen *s, ruling *r)
{
    const gtl_state *hold = s->states[GTL_HOLD];
    if (!s->possible[GTL_HOLD] || has_spar(s->rig) || hold->neutral || hold->poorly_conditioned) return;
    const losses *l = plain_losses(s);
    for (int i = 1; l->answered && i < l->sheet.outcome_count; i++) {
        const gtl_asked *asked = &l->rig->cases[i];
        const gtl_outcome *lost = &l->sheet.outcomes[i];
        if (asked->lost_kind < GTL_ROPE || asked->lost_kind > GTL_SPAR) continue;
        const gtl_line *line = &s->rig->lines[asked->lost];
        if (line->piece_count != 1 || !hold->slack[line->first_piece]) continue;
        r->applied = true;
        if (!lost->possible) ruling_break(r, "%s: %s", lost->name, lost->reason);
        for (int k = 0; lost->possible && k < s->rig->part_count; k++)
            if (!(fabs(gtl_outcome_tension(lost, k) - hold->tension[k]) <= same * gtl_rig_force(s->rig)))
                ruling_break(r, "%s: part %d had %g N and has %g", lost->name, k, hold->tension[k],
                             gtl_outcome_tension(lost, k));
    }
}

static void drop_line(sketch *s, int line)
{
    s->line_count--;
    memmove(&s->lines[line], &s->lines[line + 1], (size_t)(s->line_count - line) * sizeof s->lines[0]);
}

/* The rig as it hangs, hands held fast, connectors left out, without a line. False where it has no such text.
 */
static bool type_without(const specimen *s, int line, sketch *typed)
{
    const gtl_state *hold = s->states[GTL_HOLD];
    *typed = s->made.sketch;
    typed->load = -1;
    sketch_draw_solved(typed, s->rig, hold);
    for (int i = 0; i < typed->thing_count; i++) {
        typed->things[i].via.count = 0;
        if (typed->things[i].kind != GTL_HAND || !isnan(typed->things[i].pull)) continue;
        if (typed->things[i].on >= 0) return false;
        typed->things[i].kind = GTL_ANCHOR;
        typed->things[i].limit = NAN;
    }
    for (int i = 0; i < typed->line_count; i++) {
        const gtl_line *was = &s->rig->lines[sketch_find_line(&s->made.sketch, s->rig, i)];
        bool slack = hold->slack[was->first_piece];
        for (int k = 0; k < typed->lines[i].stop_count; k++) typed->lines[i].stops[k].via.count = 0;
        if (slack && was->piece_count > 1) return false;
        if (slack) typed->lines[i].length = hold->kept_length[was->first_piece];
    }
    typed->connector_count = 0;
    drop_line(typed, line);
    return true;
}

static bool any_loose(const gtl_rig *rig, const gtl_outcome *lost)
{
    for (int i = 0; i < rig->thing_count; i++)
        if (lost->loose[i]) return true;
    return false;
}

/* The loss of a line held against the rig that never had it. */
static void compare_typed(const specimen *s, int line, const losses *l, const gtl_outcome *lost, ruling *r)
{
    char why[GTL_REASON_SIZE + 16];
    sketch typed;
    specimen other;
    if (!lost->possible || lost->state->poorly_conditioned || lost->state->neutral || lost->places > 1)
        return;
    if (any_loose(l->rig, lost) || !type_without(s, line, &typed)) return;
    bool worked = specimen_begin(&other, &typed, NULL, why, sizeof why) == WORKED && other.possible[GTL_HOLD];
    for (int i = 0; worked && i < typed.line_count; i++) {
        const gtl_line *a = &other.rig->lines[sketch_find_line(&typed, other.rig, i)];
        const gtl_line *b = &l->rig->lines[sketch_find_line(&s->made.sketch, s->rig, i < line ? i : i + 1)];
        r->applied = true;
        for (int k = 0; k < a->stop_count - 1; k++) {
            double wanted = other.states[GTL_HOLD]->tension[a->first_part + k];
            double found = gtl_outcome_tension(lost, b->first_part + k);
            if (!(fabs(found - wanted) <= same * gtl_rig_force(s->rig)))
                ruling_break(r, "%s: `%s` has %.12g N, and %.12g where it is typed so", lost->name, b->name,
                             found, wanted);
        }
    }
    specimen_end(&other);
}

static void hold_typed(const specimen *s, ruling *r)
{
    if (!s->possible[GTL_HOLD]) return;
    const losses *l = plain_losses(s);
    for (int line = 0; l->answered && line < s->made.sketch.line_count; line++) {
        int index = sketch_find_line(&s->made.sketch, s->rig, line);
        for (int i = 1; i < l->sheet.outcome_count; i++)
            if (l->rig->cases[i].lost == index && l->rig->cases[i].lost_kind == s->rig->lines[index].kind)
                compare_typed(s, line, l, &l->sheet.outcomes[i], r);
    }
}

/* --- what became of them --- */

static int count_of[3];

static void count_outcomes(const specimen *s)
{
    const losses *l = plain_losses(s);
    for (int i = 1; l->answered && i < l->sheet.outcome_count; i++) {
        const gtl_outcome *lost = &l->sheet.outcomes[i];
        count_of[lost->possible ? 0 : lost->falls ? 1 : 2]++;
    }
}

static void tell_outcomes(int rigs, int *passed, int *failed)
{
    int all = count_of[0] + count_of[1] + count_of[2];
    printf("losses on %d rigs: %d hang elsewhere, %d fall, %d have no answer\n", rigs, count_of[0],
           count_of[1], count_of[2]);
    bool mixed = rigs < 20 || (count_of[0] > all / 3 && count_of[1] > all / 10 && count_of[2] < all / 2);
    *passed += mixed;
    *failed += !mixed;
}

static const law laws[] = {
    {"nothing is left over on what is left", hold_forces},
    {"ropes keep their lengths, and pull", hold_lengths},
    {"parts stay on their lines, what is loose carries nothing", hold_parts},
    {"connectors stay where they are, or let go", hold_connectors},
    {"what let go carries nothing", hold_lost_idle},
    {"what is left comes down", hold_energy},
    {"the factor is on every force", hold_factor},
    {"a line that is slack may go", hold_slack},
    {"a rig without a line is one that never had it", hold_typed},
};

int main(int argc, char **argv)
{
    trial_plan plan = {.name = "loss",
                       .laws = laws,
                       .law_count = sizeof laws / sizeof *laws,
                       .rigs = trial_default(400),
                       .each = count_outcomes,
                       .last = tell_outcomes};
    return trial_run(&plan, argc, argv);
}
