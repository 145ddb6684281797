/* verdict.c - marks and verdict on random ratings against the contract's words.
 *
 * usage: verdict [COUNT [FIRST SEED]] */
#include "laws/rated.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Under this share of what moves the rig a part carries nothing. */
static const double idle_share = 1e-9;

static double stated_capacity(const sketch *s, double wll, double mbs)
{
    return fmin(isnan(wll) ? INFINITY : wll,
                isnan(mbs) || isnan(s->design_factor) ? INFINITY : mbs / s->design_factor);
}

/* Names are KIND-INDEX. */
static long number_of(const gtl_component *component)
{
    return strtol(strrchr(component->name, '-') + 1, NULL, 10);
}

/* What the sketch says that a component may carry [N]; infinite where it says nothing. */
static double capacity_of(const rated *r, const gtl_component *component, bool push)
{
    long number = number_of(component);
    const sketch *s = &r->drawn;
    double told;
    switch (component->kind) {
    case GTL_HAND:
        told = s->things[number].limit;
        return isnan(told) ? INFINITY : told;
    case GTL_ROPE:
    case GTL_SLING:
    case GTL_SPAR:
        return stated_capacity(s, push ? s->lines[number].push_wll : s->lines[number].wll, NAN);
    case GTL_CONNECTOR:
        return stated_capacity(s, s->connectors[number], NAN);
    default:
        return stated_capacity(s, s->things[number].wll, s->things[number].mbs);
    }
}

static gtl_mark mark_of(const rated *r, int i, bool push)
{
    double demand = NAN;
    for (int k = 0; k < r->sheet.outcome_count; k++) {
        const gtl_outcome *o = &r->sheet.outcomes[k];
        if (o->possible) demand = fmax(demand, push ? o->push[i] : o->demand[i]);
    }
    double capacity = capacity_of(r, &r->sheet.components[i], push);
    if (demand <= idle_share * gtl_rig_force(r->rig)) return GTL_MARK_IDLE;
    if (isnan(demand) || isinf(capacity)) return GTL_MARK_UNRATED;
    return demand / capacity <= 1 + 1e-9 ? GTL_MARK_WITHIN : GTL_MARK_OVER;
}

/* A spar is the worse of pulled and pushed: over, else unrated, else within. */
static gtl_mark worse(gtl_mark a, gtl_mark b)
{
    static const gtl_mark order[] = {GTL_MARK_OVER, GTL_MARK_UNRATED, GTL_MARK_WITHIN};
    for (size_t i = 0; i < sizeof order / sizeof *order; i++)
        if (a == order[i] || b == order[i]) return order[i];
    return GTL_MARK_IDLE;
}

static bool cannot(const rated *r, gtl_case_kind kind)
{
    const gtl_outcome *o = gtl_sheet_outcome(&r->sheet, kind);
    return o && !o->possible;
}

static bool can(const rated *r, gtl_case_kind kind)
{
    const gtl_outcome *o = gtl_sheet_outcome(&r->sheet, kind);
    return o && o->possible;
}

/* The greatest tension of a line at a run in any case and variant [N]. */
static double line_at(const rated *r, const gtl_run *run)
{
    const gtl_component *line = gtl_sheet_component(
        &r->sheet, r->rig->lines[r->rig->pieces[run->piece].line].kind, r->rig->pieces[run->piece].line);
    double most = 0;
    for (int k = 0; k < r->sheet.outcome_count; k++) {
        const gtl_outcome *o = &r->sheet.outcomes[k];
        if (!o->possible) continue;
        double here = fmax(o->state->tension[run->before], o->state->tension[run->before + 1]);
        most = fmax(most, o->variants > 1 ? o->demand[line - r->sheet.components] : here);
    }
    return most;
}

/* The fitting at the head of a run's block, if that has one sheave; NULL for none. */
static const gtl_connector *head_at(const rated *r, const gtl_run *run)
{
    const gtl_thing *block = &r->rig->things[run->thing];
    int passes = 0;
    for (int k = 0; k < r->rig->run_count; k++) passes += r->rig->runs[k].thing == run->thing;
    int sheaves = block->sheaves > 0 ? block->sheaves : passes;
    if (block->kind != GTL_BLOCK || block->via.count == 0 || sheaves != 1) return NULL;
    return &r->rig->connectors[r->rig->vias[block->via.first + block->via.count - 1]];
}

/* Whether the fitting at the head of a block with one sheave holds less than twice the line. */
static bool weak_head(const rated *r)
{
    for (int i = 0; i < r->rig->run_count; i++) {
        const gtl_connector *head = head_at(r, &r->rig->runs[i]);
        if (head && 2 * line_at(r, &r->rig->runs[i]) > head->rating.wll * (1 + 1e-9)) return true;
    }
    return false;
}

static gtl_verdict verdict_of(const rated *r, const gtl_mark *marks)
{
    bool unrated = false;
    for (int i = 0; i < r->sheet.component_count; i++) {
        if (marks[i] == GTL_MARK_OVER) return GTL_OVER;
        unrated |= marks[i] == GTL_MARK_UNRATED;
    }
    if (weak_head(r)) return GTL_OVER;
    /* A case that cannot be gave no figures with friction in them: it does not count as worked. */
    bool moves = can(r, GTL_RAISE) || can(r, GTL_LOWER);
    bool unmoved = r->rig->hand >= 0 && any_friction(r->rig) && !moves;
    /* Of the cases that cannot be, only a load that would not come down by itself leaves it alone. */
    bool stuck = cannot(r, GTL_LOWER) && !gtl_sheet_outcome(&r->sheet, GTL_LOWER)->state->held_by_friction;
    bool none = cannot(r, GTL_HOLD) || cannot(r, GTL_RAISE) || stuck;
    return unrated || any_unstated(r->rig) || unmoved || none ? GTL_UNRATED : GTL_WITHIN;
}

static int verdicts[3];

static void check_verdict(const rated *r, ruling *out)
{
    gtl_mark *marks = calloc((size_t)r->sheet.component_count + 1, sizeof *marks);
    if (!marks) abort();
    for (int i = 0; i < r->sheet.component_count; i++) {
        const gtl_component *component = &r->sheet.components[i];
        marks[i] = mark_of(r, i, false);
        if (component->kind == GTL_SPAR) marks[i] = worse(marks[i], mark_of(r, i, true));
        if (marks[i] != component->mark)
            ruling_break(out, "`%s` is %s, not %s", component->name, gtl_mark_name(marks[i]),
                         gtl_mark_name(component->mark));
    }
    gtl_verdict wanted = verdict_of(r, marks);
    verdicts[wanted]++;
    if (wanted != r->sheet.verdict)
        ruling_break(out, "the verdict is %s, not %s", gtl_verdict_name(wanted),
                     gtl_verdict_name(r->sheet.verdict));
    free(marks);
}

static void hold_verdict(const specimen *s, ruling *out)
{
    rated r;
    rate(s, &r);
    out->applied = r.answered;
    if (r.answered) check_verdict(&r, out);
    rated_end(&r);
}

/* The number of the sketch's thing that a component is, -1 where it is none with a wll. */
static int thing_number(const gtl_component *component)
{
    bool gear = component->kind == GTL_ANCHOR || component->kind == GTL_BLOCK || component->kind == GTL_JOINT;
    return gear ? (int)number_of(component) : -1;
}

/* The mark of a thing whose rating is that. */
static gtl_mark mark_with(const rated *r, int number, int component, double wll)
{
    rated other;
    sketch drawn = r->drawn;
    drawn.things[number].wll = wll;
    rate_drawn(&drawn, &other);
    gtl_mark mark = other.answered ? other.sheet.components[component].mark : GTL_MARK_IDLE;
    rated_end(&other);
    return mark;
}

/* Loaded to its rating a part is within, by a millionth more it is over. */
static void hold_brink(const specimen *s, ruling *out)
{
    rated r;
    rate(s, &r);
    chance c = chance_begin(s->seed);
    int i = r.answered && r.sheet.component_count > 0 ? chance_below(&c, r.sheet.component_count) : -1;
    int number = i < 0 ? -1 : thing_number(&r.sheet.components[i]);
    if (number >= 0 && isnan(r.drawn.things[number].mbs) && r.sheet.components[i].demand > 1) {
        double demand = r.sheet.components[i].demand;
        out->applied = true;
        if (mark_with(&r, number, i, demand) != GTL_MARK_WITHIN)
            ruling_break(out, "`%s`, loaded to its rating, is not within", r.sheet.components[i].name);
        if (mark_with(&r, number, i, demand * (1 - 1e-6)) != GTL_MARK_OVER)
            ruling_break(out, "`%s`, loaded a millionth over, is not over", r.sheet.components[i].name);
    }
    rated_end(&r);
}

/* Each verdict came up often enough to have been put to the test. */
static void judge_verdicts(int rigs, int *passed, int *failed)
{
    for (int i = 0; i < 3; i++) {
        bool enough = verdicts[i] >= 0.05 * rigs;
        printf("verdict %s: %d of %d rigs%s\n", gtl_verdict_name((gtl_verdict)i), verdicts[i], rigs,
               enough ? "" : ", too few");
        *passed += enough;
        *failed += !enough;
    }
}

/* The verdict where a head fitting holds that much. */
static gtl_verdict verdict_with(const rated *r, const gtl_connector *head, double wll)
{
    rated other;
    sketch drawn = r->drawn;
    drawn.connectors[strtol(strrchr(head->name, '-') + 1, NULL, 10)] = wll;
    rate_drawn(&drawn, &other);
    gtl_verdict verdict = other.sheet.verdict;
    rated_end(&other);
    return verdict;
}

/* A rig that is within its ratings is over them once a head fitting holds a millionth less than twice the
 * line, and not before. */
static void hold_head(const specimen *s, ruling *out)
{
    rated r;
    rate(s, &r);
    for (int i = 0; r.answered && r.sheet.verdict == GTL_WITHIN && i < r.rig->run_count; i++) {
        const gtl_connector *head = head_at(&r, &r.rig->runs[i]);
        double twice = head ? 2 * line_at(&r, &r.rig->runs[i]) : 0;
        if (!(twice > 0.01 * gtl_rig_force(r.rig))) continue;
        out->applied = true;
        if (verdict_with(&r, head, twice * (1 - 1e-6)) != GTL_OVER)
            ruling_break(out, "`%s` holds less than twice the line, and the rig is not over", head->name);
        /* What hangs under the block besides its line may be more than that. */
        const gtl_component *part =
            gtl_sheet_component(&r.sheet, GTL_CONNECTOR, (int)(head - r.rig->connectors));
        if (part->demand < twice && verdict_with(&r, head, twice * (1 + 1e-6)) != GTL_WITHIN)
            ruling_break(out, "`%s` holds twice the line, and the rig is not within", head->name);
    }
    rated_end(&r);
}

static const law laws[] = {
    {"marks and verdict", hold_verdict},
    {"on the brink of a rating", hold_brink},
    {"on the brink of a head fitting", hold_head},
};

int main(int argc, char **argv)
{
    trial_plan plan = {.name = "verdict",
                       .laws = laws,
                       .law_count = sizeof laws / sizeof *laws,
                       .rigs = trial_default(2000),
                       .last = judge_verdicts};
    return trial_run(&plan, argc, argv);
}
