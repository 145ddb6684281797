/* chain.c - from a component's paper rating to its capacity: what each step leaves, and where it comes from.
 *
 * Of several paper ratings the one that comes to the smallest capacity rules. An end and a bend are never
 * counted both: the worse of them counts (0027/ND rev. 11.2, 7.6.1, 7.7.2). */
#include "rate/rating.h"
#include <gantline/units.h>
#include <math.h>

typedef struct builder {
    const gtl_rig *rig;
    const gtl_component *component;
    gtl_step *steps;
    int count;
} builder;

const gtl_gear *gtl_gear_of(const gtl_rig *rig, gtl_kind kind, int index)
{
    if (kind == GTL_CONNECTOR) return &rig->connectors[index].gear;
    if (kind >= GTL_ROPE) return &rig->lines[index].gear;
    return &rig->things[index].gear;
}

const gtl_rating *gtl_rating_of(const gtl_rig *rig, gtl_kind kind, int index)
{
    if (kind == GTL_CONNECTOR) return &rig->connectors[index].rating;
    if (kind >= GTL_ROPE) return &rig->lines[index].rating;
    return &rig->things[index].rating;
}

static void add(builder *b, gtl_step step)
{
    b->steps[b->count++] = step;
}

static gtl_step step_of(gtl_step_kind kind, const gtl_hardware_row *row, double value, double factor)
{
    return (gtl_step){.kind = kind, .row = row, .at = "", .value = value, .factor = factor};
}

/* --- the paper rating --- */

/* The paper rating that rules, with its design factor (1 for a working load limit). */
typedef struct paper {
    gtl_step step;
    double design_factor;
} paper;

/* Take a rating if there is one and it comes to less than that so far. */
static void consider(paper *least, gtl_step_kind kind, const gtl_hardware_row *row, double rating,
                     double factor)
{
    double capacity = rating / factor;
    if (isnan(capacity) || capacity >= least->step.factor / least->design_factor) return;
    *least = (paper){step_of(kind, row, NAN, rating), factor};
}

/* A row's force. One that its tag says as a mass weighs what it weighs here. */
static double row_force(const gtl_rig *rig, const gtl_hardware_row *row, gtl_hardware_number which)
{
    return row->numbers[which] * (row->weighed[which] ? rig->gravity / GTL_STANDARD_GRAVITY : 1);
}

/* False where there is nothing to rate it by. */
static bool find_paper(const builder *b, paper *least)
{
    const gtl_component *component = b->component;
    *least = (paper){step_of(GTL_STEP_LIMIT, NULL, NAN, INFINITY), 1};
    if (component->kind == GTL_HAND) {
        consider(least, GTL_STEP_LIMIT, NULL, b->rig->things[component->index].limit, 1);
        return !isinf(least->step.factor);
    }
    const gtl_rating *typed = gtl_rating_of(b->rig, component->kind, component->index);
    const gtl_hardware_row *row = gtl_gear_of(b->rig, component->kind, component->index)->row;
    double factor = typed->design_factor;
    if (component->push) {
        consider(least, GTL_STEP_PUSH_WLL, NULL, typed->push_wll, 1);
        if (row) consider(least, GTL_STEP_PUSH_WLL, row, row_force(b->rig, row, GTL_HW_PUSH_WLL), 1);
    } else {
        consider(least, GTL_STEP_WLL, NULL, typed->wll, 1);
        consider(least, GTL_STEP_MBS, NULL, typed->mbs, factor);
        if (row) consider(least, GTL_STEP_WLL, row, row_force(b->rig, row, GTL_HW_WLL), 1);
        if (row) consider(least, GTL_STEP_MBS, row, row_force(b->rig, row, GTL_HW_MBS), factor);
    }
    return !isinf(least->step.factor);
}

bool gtl_is_rated(const gtl_rig *rig, gtl_kind kind, int index)
{
    gtl_component component = {.kind = kind, .index = index};
    builder b = {.rig = rig, .component = &component};
    paper least;
    return find_paper(&b, &least);
}

/* --- what takes from it --- */

/* Whether a step leaves less than another; what is not known counts as less than anything but nothing. */
static bool leaves_less(double factor, double than)
{
    if (isnan(factor)) return than != 0 && !isnan(than);
    return isnan(than) ? factor == 0 : factor < than;
}

/* What a line lies or is tied round at a stop, and its diameter [m]; NaN: not stated. */
static double bend_at(const gtl_rig *rig, const gtl_stop *stop, const char **name)
{
    const gtl_thing *thing = &rig->things[stop->thing];
    *name = thing->name;
    if (stop->tied && stop->via.count > 0) {
        const gtl_connector *last = &rig->connectors[rig->vias[stop->via.first + stop->via.count - 1]];
        *name = last->name;
        return last->gear.pin_diameter;
    }
    return !stop->tied && thing->kind == GTL_BLOCK ? thing->gear.sheave_diameter : thing->gear.pin_diameter;
}

double gtl_tightest_bend(const gtl_rig *rig, const gtl_line *line, const char **name)
{
    double tightest = NAN;
    for (int i = 0; i < line->stop_count; i++) {
        const char *at;
        double ratio = bend_at(rig, &rig->stops[line->first_stop + i], &at) / line->gear.diameter;
        if (isnan(ratio) || ratio >= tightest) continue;
        tightest = ratio;
        *name = at;
    }
    return tightest;
}

/* Put a step in the place of a worse or equal one. */
static void keep_worse(gtl_step *worst, gtl_step step)
{
    if (!worst->row || leaves_less(step.factor, worst->factor)) *worst = step;
}

/* The worse of its ends and its bends. */
static void add_end_or_bend(builder *b, const gtl_line *line)
{
    gtl_step worst = {.row = NULL};
    const gtl_gear *gear = &line->gear;
    const char *at = "";
    double ratio = gtl_tightest_bend(b->rig, line, &at);
    if (gear->knot)
        keep_worse(&worst, step_of(GTL_STEP_KNOT, gear->knot, NAN, gear->knot->numbers[GTL_HW_KEEPS]));
    if (gear->termination)
        keep_worse(&worst, step_of(GTL_STEP_TERMINATION, gear->termination, NAN,
                                   gear->termination->numbers[GTL_HW_KEEPS]));
    if (gear->bend && !isnan(ratio)) {
        gtl_step bent = step_of(GTL_STEP_BEND, gear->bend, ratio, gtl_hardware_factor(gear->bend, ratio));
        bent.at = at;
        keep_worse(&worst, bent);
    }
    if (worst.row) add(b, worst);
}

/* A choker's table counts on the choked rating or on the straight one, as its row says. */
static void add_hitch(builder *b, const gtl_gear *gear)
{
    bool choked = gear->choke && !isnan(gear->choke_angle);
    bool on_straight = choked && gear->choke->on_single_leg;
    if (gear->hitch && !on_straight)
        add(b, step_of(GTL_STEP_HITCH, gear->hitch, NAN, gear->hitch->numbers[GTL_HW_KEEPS]));
    if (choked)
        add(b, step_of(GTL_STEP_CHOKE, gear->choke, gear->choke_angle,
                       gtl_hardware_factor(gear->choke, gear->choke_angle)));
}

static void add_derates(builder *b, double keeps, double angle)
{
    const gtl_component *component = b->component;
    const gtl_gear *gear = gtl_gear_of(b->rig, component->kind, component->index);
    bool line = component->kind == GTL_ROPE || component->kind == GTL_SLING;
    if (line) add_end_or_bend(b, &b->rig->lines[component->index]);
    if (line) add_hitch(b, gear);
    if (gear->fitting && !isnan(angle)) add(b, step_of(GTL_STEP_AXIS, gear->fitting, angle, keeps));
    if (gear->side)
        add(b, step_of(GTL_STEP_SIDE, gear->side, gear->side_load,
                       gtl_hardware_factor(gear->side, gear->side_load)));
    if (!isnan(gear->wear)) add(b, step_of(GTL_STEP_WEAR, NULL, NAN, gear->wear));
    if (!isnan(gear->wet)) add(b, step_of(GTL_STEP_WET, NULL, NAN, gear->wet));
}

int gtl_chain_steps(const gtl_rig *rig, const gtl_component *component, double keeps, double angle,
                    gtl_step steps[GTL_STEP_KIND_COUNT])
{
    builder b = {.rig = rig, .component = component, .steps = steps};
    paper least;
    if (!find_paper(&b, &least)) return 0;
    add(&b, least.step);
    if (component->kind != GTL_HAND) add_derates(&b, keeps, angle);
    if (least.step.kind == GTL_STEP_MBS)
        add(&b, step_of(GTL_STEP_FACTOR, NULL, least.design_factor, 1 / least.design_factor));
    return b.count;
}

double gtl_chain_capacity(const gtl_step *steps, int count)
{
    double capacity = count > 0 ? 1 : NAN;
    for (int i = 0; i < count; i++) /* divided, as the user would: 18 kN / 10 is 1.8 kN to the last digit */
        capacity = steps[i].kind == GTL_STEP_FACTOR ? capacity / steps[i].value : capacity * steps[i].factor;
    return capacity;
}
