/* verdict.c - demands against ratings, component by component, and what the whole comes to. */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>

static gtl_mark mark_for(double demand, double capacity, double idle)
{
    if (isnan(demand)) return GTL_MARK_UNRATED; /* no case came to a figure */
    if (demand <= idle) return GTL_MARK_IDLE;
    if (isnan(capacity)) return GTL_MARK_UNRATED;
    return demand / capacity <= 1 + GTL_UTILISATION_SLACK ? GTL_MARK_WITHIN : GTL_MARK_OVER;
}

/* How bad a mark is, for a spar that has one in pull and one in push. */
static int badness(gtl_mark mark)
{
    static const int order[] = {
        [GTL_MARK_IDLE] = 0, [GTL_MARK_WITHIN] = 1, [GTL_MARK_UNRATED] = 2, [GTL_MARK_OVER] = 3};
    return order[mark];
}

/* The worst of two cases for one component: a share of its rating, where its angle takes from that. */
typedef struct worst {
    double demand; /* [N]; NaN where no case came to one */
    double keeps;  /* [1] */
    double angle;  /* [rad] */
    int outcome;   /* -1: none */
} worst;

/* Of cases that differ by rounding alone the first governs. */
static worst worst_demand(const gtl_sheet *sheet, int index, bool push, double straight)
{
    worst found = {NAN, 1, NAN, -1};
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = gtl_rated(&sheet->outcomes[i]);
        double demand = push ? outcome->push[index] : outcome->demand[index];
        double keeps = push ? 1 : outcome->keeps[index];
        double bar = found.demand * (1 + GTL_UTILISATION_SLACK);
        /* Where figures are ranges a case may come to demands in one rig and be impossible in another. */
        bool counts = outcome->possible || sheet->outcomes[i].band.rigs > 1;
        if (!counts || !gtl_is_worse(demand, keeps, bar, found.keeps, straight)) continue;
        found = (worst){demand, keeps, push ? NAN : outcome->angle[index], i};
    }
    return found;
}

/* A component held against its rating, and the steps to that. */
typedef struct held {
    gtl_component component;
    gtl_step steps[GTL_STEP_KIND_COUNT];
} held;

static held rated(const gtl_sheet *sheet, int index, bool push, const gtl_bench *bench)
{
    held h = {.component = sheet->components[index]};
    worst found = worst_demand(sheet, index, push, bench->straight[index]);
    gtl_component *component = &h.component;
    component->push = push;
    component->demand = found.demand;
    component->governing = found.outcome;
    component->step_count = gtl_chain_steps(sheet->rig, component, found.keeps, found.angle, h.steps);
    component->capacity = gtl_chain_capacity(h.steps, component->step_count);
    component->utilisation = component->demand / component->capacity;
    component->mark = mark_for(component->demand, component->capacity, GTL_IDLE_SHARE * bench->force);
    return h;
}

/* Whether a spar is worse off in push than in pull. */
static bool pushed(const gtl_component *pull, const gtl_component *push)
{
    if (pull->kind != GTL_SPAR) return false;
    if (push->mark != pull->mark) return badness(push->mark) > badness(pull->mark);
    /* Without utilisations to compare, the greater force tells more. */
    bool rated_both = !isnan(push->utilisation) && !isnan(pull->utilisation);
    return rated_both ? push->utilisation > pull->utilisation : push->demand > pull->demand;
}

bool gtl_mark_components(const gtl_bench *bench, gtl_sheet *sheet)
{
    sheet->steps = calloc((size_t)sheet->component_count * GTL_STEP_KIND_COUNT + 1, sizeof *sheet->steps);
    if (!sheet->steps) return false;
    for (int i = 0; i < sheet->component_count; i++) {
        held pull = rated(sheet, i, false, bench);
        held push = pull.component.kind == GTL_SPAR ? rated(sheet, i, true, bench) : pull;
        const held *chosen = pushed(&pull.component, &push.component) ? &push : &pull;
        sheet->components[i] = chosen->component;
        sheet->components[i].first_step = sheet->step_count;
        for (int k = 0; k < chosen->component.step_count; k++)
            sheet->steps[sheet->step_count++] = chosen->steps[k];
    }
    return true;
}

static bool cannot(const gtl_sheet *sheet, gtl_case_kind kind)
{
    const gtl_outcome *outcome = gtl_sheet_outcome(sheet, kind);
    return outcome && !outcome->possible;
}

/* Whether a case with friction in it came to figures. */
static bool moved(const gtl_sheet *sheet)
{
    const gtl_outcome *raise = gtl_sheet_outcome(sheet, GTL_RAISE);
    const gtl_outcome *lower = gtl_sheet_outcome(sheet, GTL_LOWER);
    return (raise && raise->possible) || (lower && lower->possible);
}

static unsigned why_of_catch(const gtl_drop *caught)
{
    unsigned why = caught->shifts || caught->along >= 0 ? GTL_WHY_CATCH : 0;
    if (caught->let_out >= 0) why |= GTL_WHY_CATCHING_HAND;
    return caught->beyond ? why | GTL_WHY_STRETCH : why;
}

/* Why a case beyond the slow ones speaks against the rig. Braking needs a load that comes down by itself, as
 * lowering does. */
static unsigned why_of(const gtl_outcome *outcome)
{
    if (outcome->possible && outcome->drop > 0) return GTL_WHY_DROP;
    if (outcome->possible && outcome->caught) return why_of_catch(outcome->caught);
    if (outcome->possible || outcome->kind <= GTL_LOWER) return 0;
    if (outcome->kind == GTL_STOP && outcome->state->held_by_friction) return 0;
    return outcome->falls ? GTL_WHY_LOAD_FALLS : GTL_WHY_CASE_IMPOSSIBLE;
}

bool gtl_choke_angle_missing(const gtl_gear *gear)
{
    return gear->choked && isnan(gear->choke_angle);
}

bool gtl_choke_material_missing(const gtl_gear *gear)
{
    return gear->choked && !gear->material;
}

/* Whether something that takes from a rating is not stated, and may be worse than what was counted. */
static bool leaves_out(const gtl_rig *rig)
{
    bool any = false;
    for (int i = 0; i < rig->line_count; i++)
        any |=
            gtl_choke_angle_missing(&rig->lines[i].gear) || gtl_choke_material_missing(&rig->lines[i].gear);
    return any;
}

void gtl_find_verdict(const gtl_bench *bench, gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    unsigned why = 0;
    for (int i = 0; i < sheet->component_count; i++) {
        if (sheet->components[i].mark == GTL_MARK_OVER) why |= GTL_WHY_OVER;
        if (sheet->components[i].mark == GTL_MARK_UNRATED) why |= GTL_WHY_UNRATED;
        if (gtl_is_over_on_the_way(sheet, i)) why |= GTL_WHY_ON_THE_WAY;
    }
    for (int r = 0; r < rig->run_count; r++)
        if (!rig->things[rig->runs[r].thing].friction_stated) why |= GTL_WHY_FRICTION;
    if (rig->hand >= 0 && bench->friction_stated && !moved(sheet)) why |= GTL_WHY_NOT_MOVED;
    if (cannot(sheet, GTL_HOLD)) why |= GTL_WHY_HOLD_IMPOSSIBLE;
    if (cannot(sheet, GTL_RAISE)) why |= GTL_WHY_RAISE_IMPOSSIBLE;
    if (cannot(sheet, GTL_LOWER) && !gtl_sheet_outcome(sheet, GTL_LOWER)->state->held_by_friction)
        why |= GTL_WHY_LOWER_IMPOSSIBLE;
    for (int i = 0; i < sheet->outcome_count; i++) why |= why_of(&sheet->outcomes[i]);
    for (int i = 0; i < sheet->head_fitting_count; i++)
        if (sheet->head_fittings[i].mark == GTL_MARK_OVER) why |= GTL_WHY_HEAD_FITTING;
    if (leaves_out(rig)) why |= GTL_WHY_NOT_STATED;
    if (gtl_batten_parts(sheet)) why |= GTL_WHY_BATTEN;
    sheet->why = why;
    bool over = why & (GTL_WHY_OVER | GTL_WHY_HEAD_FITTING | GTL_WHY_ON_THE_WAY);
    sheet->verdict = over ? GTL_OVER : why ? GTL_UNRATED : GTL_WITHIN;
}
