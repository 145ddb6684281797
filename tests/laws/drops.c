/* drops.c - the laws of a load that is caught after a fall, on random rigs whose ropes and slings are given
 * some stretch or other.
 *
 * usage: drops [COUNT [FIRST SEED]] */
#include "laws/trial.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Forces and energies, over the rig's own. */
static const double exact = 1e-9;

typedef struct dropped {
    gtl_rig *rig;
    gtl_sheet sheet;
    const gtl_outcome *drop; /* NULL where the rig has no answer, or the case cannot be */
} dropped;

/* The lifted load, or the first that can move; -1 for none. */
static int load_of(const gtl_rig *rig)
{
    if (rig->load >= 0) return rig->load;
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_LOAD && !rig->nodes[rig->things[i].node].fixed) return i;
    return -1;
}

static void ask_for_drop(gtl_rig *rig)
{
    rig->cases = realloc(rig->cases, ((size_t)rig->case_count + 1) * sizeof *rig->cases);
    char *name = malloc(sizeof "drop");
    if (!rig->cases || !name) abort();
    strcpy(name, "drop");
    rig->cases[rig->case_count++] = (gtl_asked){.kind = GTL_DROP, .lost = -1, .name = name};
}

/* Rate the rig with its load let drop by `fall` sizes of the rig, its lines `soft` times as stretchy. */
static dropped drop_it(const specimen *s, double fall, double soft)
{
    chance c = chance_begin(s->seed ^ 0xD209);
    dropped d = {.rig = gtl_rig_copy(s->rig)};
    if (!d.rig) abort();
    ask_for_drop(d.rig);
    d.rig->dropped = load_of(d.rig);
    d.rig->things[d.rig->dropped].fall = fall * gtl_rig_size(d.rig);
    d.rig->things[d.rig->dropped].run_out = NAN;
    for (int i = 0; i < d.rig->line_count; i++) {
        gtl_line *line = &d.rig->lines[i];
        line->stretch = line->kind == GTL_SPAR ? NAN : soft * chance_between(&c, 0.001, 0.2);
        line->stretch_force = chance_between(&c, 0.2, 20) * gtl_rig_force(d.rig);
    }
    if (gtl_rate(d.rig, &d.sheet) == GTL_OK) d.drop = gtl_sheet_outcome(&d.sheet, GTL_DROP);
    if (d.drop && !d.drop->possible) d.drop = NULL;
    return d;
}

static void dropped_end(dropped *d)
{
    gtl_sheet_end(&d->sheet);
    gtl_rig_free(d->rig);
}

static double any_fall(const specimen *s)
{
    chance c = chance_begin(s->seed + 17);
    return chance_of(&c, 0.2) ? chance_between(&c, 0, 0.001) : chance_between(&c, 0, 2);
}

/* --- the laws --- */

static void hold_twice(const specimen *s, ruling *r)
{
    if (load_of(s->rig) < 0) return;
    dropped d = drop_it(s, 0, 1);
    if (d.drop) {
        r->applied = true;
        if (d.drop->caught->peak != 2 * d.drop->caught->weight)
            ruling_break(r, "%.17g N is not twice %.17g N", d.drop->caught->peak, d.drop->caught->weight);
    }
    dropped_end(&d);
}

/* Beyond turns a line gives nothing, and a known pull has tightened lines before the load does. */
static bool is_plain(const gtl_rig *rig)
{
    for (int i = 0; i < rig->run_count; i++)
        if (rig->things[rig->runs[i].thing].turns > 0) return false;
    for (int i = 0; i < rig->piece_count; i++)
        if (rig->pieces[i].rule == GTL_PULLED) return false;
    return true;
}

/* Half of force times elongation in every part that takes some of the load, found from the state at the peak
 * alone [J]. */
static double energy_held(const dropped *d)
{
    mechanics m = mechanics_of(d->drop->rig, d->drop->state);
    double sum = 0;
    for (int i = 0; i < d->rig->part_count; i++) {
        const gtl_line *line = &d->rig->lines[d->rig->parts[i].line];
        double unit[3], tension = d->drop->state->tension[i];
        double length = part_direction(&m, i, unit);
        if (line->stretch > 0) sum += tension * (tension / line->stretch_force * line->stretch * length) / 2;
    }
    return sum;
}

/* What the load has lost is in the lines. Where other weights hang there too, or anything moves, the program
 * says itself that it does not know all. */
static void hold_energy(const specimen *s, ruling *r)
{
    if (load_of(s->rig) < 0 || !is_plain(s->rig)) return;
    dropped d = drop_it(s, any_fall(s), 1);
    if (d.drop && !d.drop->caught->shifts && d.drop->caught->along < 0) {
        const gtl_drop *caught = d.drop->caught;
        double lost = caught->weight * (caught->fall + caught->give);
        double held = energy_held(&d);
        bool other = false; /* a weight that hangs in lines of its own */
        for (int n = 0; n < d.rig->node_count; n++)
            other |=
                !d.rig->nodes[n].fixed && d.rig->nodes[n].weight > 0 && n != d.rig->things[caught->load].node;
        r->applied = !other;
        if (!other && !(fabs(held / lost - 1) <= 1e-6))
            ruling_break(r, "the load lost %g J, the lines hold %g J", lost, held);
    }
    dropped_end(&d);
}

/* Softer lines never raise a peak, nor does a longer fall ever lower one. */
static void hold_order(const specimen *s, ruling *r)
{
    if (load_of(s->rig) < 0) return;
    double fall = any_fall(s);
    dropped plain = drop_it(s, fall, 1), softer = drop_it(s, fall, 3), longer = drop_it(s, 2 * fall, 1);
    if (plain.drop && softer.drop && longer.drop) {
        r->applied = true;
        if (softer.drop->caught->peak > plain.drop->caught->peak * (1 + exact) ||
            softer.drop->caught->checked > plain.drop->caught->checked * (1 + exact))
            ruling_break(r, "softer lines make a higher peak");
        if (longer.drop->caught->peak < plain.drop->caught->peak * (1 - exact) ||
            longer.drop->caught->checked < plain.drop->caught->checked * (1 - exact))
            ruling_break(r, "a longer fall makes a lower peak");
    }
    dropped_end(&plain);
    dropped_end(&softer);
    dropped_end(&longer);
}

/* Ratings are held against more than the peak, and what is not known stays so. */
static void hold_care(const specimen *s, ruling *r)
{
    if (load_of(s->rig) < 0) return;
    gtl_sheet without;
    dropped d = drop_it(s, any_fall(s), 1);
    bool answered = gtl_rate(s->rig, &without) == GTL_OK;
    if (d.drop && answered) {
        const gtl_drop *caught = d.drop->caught;
        r->applied = true;
        if (!(caught->checked >= caught->peak / 0.7 * (1 - exact)))
            ruling_break(r, "checked at %g N, the peak is %g N", caught->checked, caught->peak);
        if (!(caught->held >= caught->stiffness * (1 - exact)))
            ruling_break(r, "friction makes the lines softer");
        if (without.verdict != GTL_WITHIN && d.sheet.verdict == GTL_WITHIN)
            ruling_break(r, "the drop makes it read better");
        bool doubtful = caught->shifts || caught->along >= 0 || caught->let_out >= 0 || caught->beyond;
        if (doubtful && d.sheet.verdict == GTL_WITHIN) ruling_break(r, "doubtful, and yet within");
    }
    gtl_sheet_end(&without);
    dropped_end(&d);
}

static const law laws[] = {
    {"let go at once it makes twice its weight", hold_twice},
    {"what the load has lost is in the lines", hold_energy},
    {"softer lines catch softer, longer falls harder", hold_order},
    {"nothing doubtful reads well", hold_care},
};

int main(int argc, char **argv)
{
    trial_plan plan = {
        .name = "drops", .laws = laws, .law_count = sizeof laws / sizeof *laws, .rigs = trial_default(300)};
    return trial_run(&plan, argc, argv);
}
