/* verdict.c - demands against ratings, component by component, and what the whole comes to. */
#include "rate/rating.h"
#include <math.h>

static const gtl_rating *rating_of(const gtl_rig *rig, const gtl_component *component)
{
    if (component->kind == GTL_CONNECTOR) return &rig->connectors[component->index].rating;
    if (component->kind >= GTL_ROPE) return &rig->lines[component->index].rating;
    return &rig->things[component->index].rating;
}

static double capacity_of(const gtl_rig *rig, const gtl_component *component, bool push)
{
    if (component->kind == GTL_HAND) return rig->things[component->index].limit;
    const gtl_rating *rating = rating_of(rig, component);
    return push ? rating->push_wll : gtl_capacity(rating);
}

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

/* The worst case's demand of one component, in pull or in push; NaN where no case came to one. */
static double worst_demand(const gtl_sheet *sheet, int index, bool push, gtl_case_kind *governing)
{
    double worst = NAN;
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        double demand = push ? outcome->push[index] : outcome->demand[index];
        /* Of cases that differ by rounding alone the first governs. */
        if (!outcome->possible || isnan(demand)) continue;
        if (!(demand <= worst * (1 + GTL_UTILISATION_SLACK))) *governing = outcome->kind;
        worst = fmax(worst, demand);
    }
    return worst;
}

static gtl_component rated(const gtl_sheet *sheet, int index, bool push, double idle)
{
    gtl_component component = sheet->components[index];
    component.push = push;
    component.demand = worst_demand(sheet, index, push, &component.governing);
    component.capacity = capacity_of(sheet->rig, &component, push);
    component.utilisation = component.demand / component.capacity;
    component.mark = mark_for(component.demand, component.capacity, idle);
    return component;
}

void gtl_mark_components(const gtl_bench *bench, gtl_sheet *sheet)
{
    double idle = GTL_IDLE_SHARE * bench->force;
    for (int i = 0; i < sheet->component_count; i++) {
        gtl_component pull = rated(sheet, i, false, idle);
        gtl_component push = rated(sheet, i, true, idle);
        /* Without utilisations to compare, the greater force tells more. */
        bool rated_both = !isnan(push.utilisation) && !isnan(pull.utilisation);
        bool greater = rated_both ? push.utilisation > pull.utilisation : push.demand > pull.demand;
        bool pushed = badness(push.mark) > badness(pull.mark) || (push.mark == pull.mark && greater);
        sheet->components[i] = pull.kind == GTL_SPAR && pushed ? push : pull;
    }
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

void gtl_find_verdict(const gtl_bench *bench, gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    unsigned why = 0;
    for (int i = 0; i < sheet->component_count; i++) {
        if (sheet->components[i].mark == GTL_MARK_OVER) why |= GTL_WHY_OVER;
        if (sheet->components[i].mark == GTL_MARK_UNRATED) why |= GTL_WHY_UNRATED;
    }
    for (int r = 0; r < rig->run_count; r++)
        if (!rig->things[rig->runs[r].thing].friction_stated) why |= GTL_WHY_FRICTION;
    if (rig->hand >= 0 && bench->friction_stated && !moved(sheet)) why |= GTL_WHY_NOT_MOVED;
    if (cannot(sheet, GTL_HOLD)) why |= GTL_WHY_HOLD_IMPOSSIBLE;
    if (cannot(sheet, GTL_RAISE)) why |= GTL_WHY_RAISE_IMPOSSIBLE;
    if (cannot(sheet, GTL_LOWER) && !gtl_sheet_outcome(sheet, GTL_LOWER)->state->held_by_friction)
        why |= GTL_WHY_LOWER_IMPOSSIBLE;
    sheet->why = why;
    sheet->verdict = why & GTL_WHY_OVER ? GTL_OVER : why ? GTL_UNRATED : GTL_WITHIN;
}
