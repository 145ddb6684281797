/* rope_bills.c - the laws of rope and travel, on random rigs with some lift and clear distances or other.
 * Places on the way are solved here at once from the drawing, not step by step.
 *
 * usage: rope_bills [COUNT [FIRST SEED]] */
#include "laws/trial.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

/* Lengths, over the rig's size. */
static const double exact = 1e-9;
/* Lengths from places that are found by another way, over the rig's size. */
static const double solved = 1e-6;
/* Intervals of Simpson's rule, even. */
enum { INTERVALS = 64 };

static int bills;       /* that were made */
static int blocked;     /* that end where two things meet */
static int placeless;   /* that end where no place is found */
static int with_resets; /* that count any */

typedef struct billed {
    gtl_rig *rig;
    gtl_sheet sheet;
    const gtl_outcome *hold; /* NULL where there is no bill to speak of */
    const gtl_rope_bill *bill;
} billed;

/* Rate the rig with a lift, and with some of its blocks not let near to anything. */
static billed make_bill(const specimen *s)
{
    chance c = chance_begin(s->seed ^ 0xB111);
    billed b = {.rig = gtl_rig_copy(s->rig)};
    if (!b.rig) abort();
    double size = gtl_rig_size(b.rig);
    b.rig->lift = chance_between(&c, 0.01, 1) * size;
    for (int i = 0; i < b.rig->thing_count; i++) {
        gtl_thing *thing = &b.rig->things[i];
        if (thing->kind == GTL_BLOCK && chance_of(&c, 0.4)) thing->clear = chance_between(&c, 0, 0.05) * size;
    }
    for (int i = 0; i < b.rig->line_count; i++)
        if (chance_of(&c, 0.5)) b.rig->lines[i].spare = chance_between(&c, 0.1, 2);
    if (b.rig->hand < 0 || gtl_rate(b.rig, &b.sheet) != GTL_OK) return b;
    b.bill = b.sheet.rope_bill;
    b.hold = gtl_sheet_outcome(&b.sheet, GTL_HOLD);
    if (!b.hold->possible || !b.bill->worked) b.hold = NULL;
    return b;
}

static void billed_end(billed *b)
{
    gtl_sheet_end(&b->sheet);
    gtl_rig_free(b->rig);
}

/* --- a place on the way, found at once --- */

typedef struct elsewhere {
    gtl_rig *rig;
    gtl_state *state;
    bool holds;
} elsewhere;

static elsewhere place_at(const billed *b, double height)
{
    elsewhere e = {.rig = gtl_rig_copy(b->hold->rig)};
    if (!e.rig) abort();
    const gtl_state *hold = b->hold->state;
    for (int p = 0; p < e.rig->piece_count; p++)
        if (!isnan(hold->kept_length[p])) e.rig->pieces[p].length = hold->kept_length[p];
    for (int n = 0; n < e.rig->node_count; n++)
        for (int k = 0; k < e.rig->dim && !e.rig->nodes[n].fixed; k++)
            e.rig->nodes[n].at[k] = hold->at[3 * n + k] + height * hold->rise[3 * n + k];
    e.state = gtl_state_new(e.rig);
    if (!e.state) abort();
    e.holds = gtl_solve(e.rig, &(gtl_case){.kind = GTL_HOLD}, e.state) == GTL_OK && e.state->possible;
    return e;
}

static void elsewhere_end(elsewhere *e)
{
    gtl_state_free(e->state);
    gtl_rig_free(e->rig);
}

/* A rig that hangs in one place only, whatever the drawing: no spar, no known pull, no weight but the load.
 */
static bool is_plain(const gtl_rig *rig)
{
    for (int p = 0; p < rig->piece_count; p++)
        if (rig->pieces[p].rule == GTL_STRUT || rig->pieces[p].rule == GTL_PULLED) return false;
    for (int n = 0; n < rig->node_count; n++)
        if (!rig->nodes[n].fixed && rig->nodes[n].weight > 0 && n != rig->things[rig->load].node)
            return false;
    return true;
}

static double part_length(const gtl_rig *rig, const gtl_state *state, int part)
{
    const double *from = state->at + 3 * rig->things[rig->stops[rig->parts[part].from].thing].node;
    const double *to = state->at + 3 * rig->things[rig->stops[rig->parts[part].to].thing].node;
    double square = 0;
    for (int k = 0; k < rig->dim; k++) square += (to[k] - from[k]) * (to[k] - from[k]);
    return sqrt(square);
}

/* From the places alone. */
static double line_length(const gtl_rig *rig, const gtl_state *state, int line)
{
    double sum = 0;
    const gtl_line *of = &rig->lines[line];
    for (int i = 0; i < of->stop_count - 1; i++) sum += part_length(rig, state, of->first_part + i);
    return sum;
}

/* --- the laws --- */

static const gtl_rope_need *driven_rope(const billed *b)
{
    int line = b->hold->rig->pieces[b->hold->rig->driven].line;
    for (int i = 0; i < b->bill->rope_count; i++)
        if (b->bill->ropes[i].line == line) return &b->bill->ropes[i];
    return NULL;
}

/* Simpson's rule over rates at places found at once; NaN where one is not found [m]. */
static double hauled(const billed *b, double way)
{
    double sum = 0;
    for (int i = 0; i <= INTERVALS; i++) {
        elsewhere e = place_at(b, way * i / INTERVALS);
        double weight = i == 0 || i == INTERVALS ? 1 : i % 2 ? 4 : 2;
        sum += weight * (e.holds ? e.state->velocity_ratio : NAN);
        elsewhere_end(&e);
    }
    return sum * way / INTERVALS / 3;
}

/* With heights alone the ratio never changes until a line comes taut or slack. */
static bool changes(const billed *b, double way)
{
    elsewhere e = place_at(b, way);
    bool same = e.holds && fabs(e.state->velocity_ratio - b->hold->state->velocity_ratio) < exact;
    for (int p = 0; p < e.rig->piece_count; p++) same &= e.state->slack[p] == b->hold->state->slack[p];
    elsewhere_end(&e);
    return !same;
}

static void hold_ratio(const specimen *s, ruling *r)
{
    billed b = make_bill(s);
    const gtl_rope_need *need = b.hold ? driven_rope(&b) : NULL;
    if (need && b.bill->way > 0) {
        bool even = s->rig->dim == 1 && !changes(&b, b.bill->way * (1 - 1e-6));
        double size = gtl_rig_size(b.rig);
        if (even) {
            r->applied = true;
            double comes = b.hold->velocity_ratio * b.bill->way;
            if (!(fabs(need->comes - comes) <= exact * size))
                ruling_break(r, "%.12g m come to the hand, the ratio says %.12g m", need->comes, comes);
        }
    }
    billed_end(&b);
}

/* What comes to the hand is what the ratio adds up to on the way. */
static void hold_sum(const specimen *s, ruling *r)
{
    if (s->rig->hand < 0 || s->rig->dim == 1 || !is_plain(s->rig)) return;
    billed b = make_bill(s);
    /* Near the end of a way ratios may grow without limit: half of it is summed. */
    double way = b.hold ? b.bill->way / 2 : 0;
    if (way > 0) {
        elsewhere e = place_at(&b, way);
        double sum = e.holds ? hauled(&b, way) : NAN;
        int line = b.hold->rig->pieces[b.hold->rig->driven].line;
        if (!isnan(sum)) {
            r->applied = true;
            double comes = line_length(b.hold->rig, b.hold->state, line) - line_length(e.rig, e.state, line);
            if (!(fabs(comes - sum) <= 1e-5 * gtl_rig_size(b.rig)))
                ruling_break(r, "%.9g m come to the hand, the ratios add up to %.9g m", comes, sum);
        }
        elsewhere_end(&e);
    }
    billed_end(&b);
}

/* Where a place is found at once, the bill has counted at least its rope, and every tied line is as long as
 * at first. */
static void hold_rope(const specimen *s, ruling *r)
{
    if (s->rig->hand < 0 || !is_plain(s->rig)) return;
    billed b = make_bill(s);
    for (int i = 1; b.hold && i <= 3; i++) {
        elsewhere e = place_at(&b, b.bill->way * i / 3 * (1 - 1e-6));
        double size = gtl_rig_size(b.rig);
        for (int k = 0; e.holds && k < b.bill->rope_count; k++) {
            const gtl_rope_need *need = &b.bill->ropes[k];
            double rove = line_length(e.rig, e.state, need->line);
            double spare = b.rig->lines[need->line].spare;
            r->applied = true;
            if (rove + (spare > 0 ? spare : 0) > need->needed + solved * size)
                ruling_break(r, "%s takes %.12g m, the bill says %.12g m", b.rig->lines[need->line].name,
                             rove, need->needed);
            if (isnan(need->comes) && rove > need->now + solved * size)
                ruling_break(r, "%s has grown from %.12g to %.12g m", b.rig->lines[need->line].name,
                             need->now, rove);
        }
        elsewhere_end(&e);
    }
    billed_end(&b);
}

static bool shortens(const gtl_rig *rig, int part)
{
    const gtl_piece *piece = &rig->pieces[rig->parts[part].piece];
    return piece->run_count > 0 || piece->hand >= 0;
}

/* The least that the parts that can shorten have left beyond what their ends' blocks ask for [m]. */
static double room_left(const elsewhere *e, const gtl_rig *rig)
{
    double least = INFINITY;
    for (int p = 0; p < rig->part_count; p++) {
        int from = rig->things[rig->stops[rig->parts[p].from].thing].node;
        int to = rig->things[rig->stops[rig->parts[p].to].thing].node;
        bool fixed = rig->nodes[from].fixed && rig->nodes[to].fixed;
        double clear = 0;
        for (int i = 0; i < rig->thing_count; i++)
            if (rig->things[i].node == from || rig->things[i].node == to)
                clear = fmax(clear, rig->things[i].clear);
        if (shortens(rig, p) && !fixed && from != to)
            least = fmin(least, part_length(rig, e->state, p) - clear);
    }
    return least;
}

/* Nothing meets before the run is over, and just beyond its end something has met, or the rig does not hold.
 */
static void hold_run(const specimen *s, ruling *r)
{
    if (s->rig->hand < 0 || !is_plain(s->rig)) return;
    billed b = make_bill(s);
    bool ends = b.hold && b.bill->end == GTL_WAY_BLOCKED && b.bill->run > 0;
    double size = ends ? gtl_rig_size(b.rig) : 1;
    for (int i = 1; ends && i <= 4; i++) {
        elsewhere e = place_at(&b, b.bill->run * i / 4 * (1 - 1e-6));
        r->applied = true;
        if (e.holds && room_left(&e, e.rig) < -solved * size)
            ruling_break(r, "at %d/4 of the run of %.9g m something has met: %.3g m", i, b.bill->run,
                         room_left(&e, e.rig));
        elsewhere_end(&e);
    }
    if (ends) {
        elsewhere e = place_at(&b, b.bill->run + 1e-3 * size);
        if (e.holds && s->rig->dim > 1 && room_left(&e, e.rig) > 1e-3 * size)
            ruling_break(r, "beyond the run of %.9g m there is %.3g m left", b.bill->run,
                         room_left(&e, e.rig));
        elsewhere_end(&e);
    }
    billed_end(&b);
}

static void count(const gtl_rope_bill *bill)
{
    bills++;
    blocked += bill->end == GTL_WAY_BLOCKED;
    placeless += bill->end == GTL_WAY_NO_PLACE;
    with_resets += bill->resets > 0;
}

static void hold_resets(const billed *b, ruling *r)
{
    const gtl_rope_bill *bill = b->bill;
    double lift = b->rig->lift;
    if (bill->resets >= 0 && bill->end != GTL_WAY_OPEN &&
        !((bill->resets + 1) * bill->run >= lift * (1 - exact)))
        ruling_break(r, "%d resets of %.9g m do not make %.9g m", bill->resets, bill->run, lift);
    if (bill->resets > 0 && bill->resets * bill->run >= lift) ruling_break(r, "a reset too many");
    if (bill->way > lift || (bill->run >= 0 && bill->way > bill->run))
        ruling_break(r, "the figures are for more than the way");
}

/* A lift never makes a rig read better, and what it asks for adds up. */
static void hold_care(const specimen *s, ruling *r)
{
    gtl_sheet without;
    billed b = make_bill(s);
    bool answered = gtl_rate(s->rig, &without) == GTL_OK;
    if (b.hold && answered) {
        r->applied = true;
        count(b.bill);
        if (b.sheet.verdict != without.verdict &&
            (without.verdict == GTL_OVER || b.sheet.verdict == GTL_WITHIN))
            ruling_break(r, "the lift makes it read better");
        for (int i = 0; i < b.sheet.component_count; i++) {
            const gtl_strain *strain = &b.bill->strains[i];
            if (strain->most < strain->drawn) ruling_break(r, "less on the way than where it begins");
            if (strain->drawn > b.sheet.components[i].demand * (1 + exact))
                ruling_break(r, "more at rest than is demanded");
        }
        hold_resets(&b, r);
    }
    gtl_sheet_end(&without);
    billed_end(&b);
}

static void judge(const char *what, int found, int all, bool enough, int *passed, int *failed)
{
    printf("%s: %d of %d%s\n", what, found, all, enough ? "" : ", not as it should be");
    *passed += enough;
    *failed += !enough;
}

/* Ways that end where no place is found, though nothing meets, are those of rigs whose lines flatten. */
static void judge_all(int rigs, int *passed, int *failed)
{
    (void)rigs;
    judge("bills that end where things meet", blocked, bills, blocked >= 0.3 * bills, passed, failed);
    judge("bills that end without a place", placeless, bills, placeless <= 0.6 * bills, passed, failed);
    judge("bills that count resets", with_resets, bills, with_resets > 0, passed, failed);
}

static const law laws[] = {
    {"heights alone: rope is ratio times lift", hold_ratio}, {"rope is the sum of the ratio", hold_sum},
    {"no place takes more rope than the bill", hold_rope},   {"things meet where they are said to", hold_run},
    {"nothing reads better for a lift", hold_care},
};

int main(int argc, char **argv)
{
    trial_plan plan = {.name = "rope-bills",
                       .laws = laws,
                       .law_count = sizeof laws / sizeof *laws,
                       .rigs = trial_default(300),
                       .last = judge_all};
    return trial_run(&plan, argc, argv);
}
