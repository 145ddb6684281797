/* rope_bill.c - the rope that a rig takes: in the reeving, round its sheaves, and what comes to the hand. */
#include "base/text.h"
#include "rate/rating.h"
#include "rate/way.h"
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

/* A length typed to the last digit is not too short by arithmetic alone [1]. */
#define LENGTH_SLACK 1e-9
#define FOOT         0.3048 /* [m] */

bool gtl_wants_rope_bill(const gtl_rig *rig)
{
    bool wants = !isnan(rig->lift);
    for (int i = 0; i < rig->line_count; i++)
        wants |= rig->lines[i].have > 0 || (rig->lines[i].kind == GTL_ROPE && rig->lines[i].spare > 0);
    for (int i = 0; i < rig->thing_count; i++) wants |= rig->things[i].clear > 0;
    return wants;
}

/* --- one rope --- */

/* All of a line in a state; where it is slack it is no shorter for that [m]. */
static double rove(const gtl_rig *rig, const gtl_state *state, int line)
{
    const gtl_line *of = &rig->lines[line];
    double length = 0;
    for (int p = of->first_piece; p < of->first_piece + of->piece_count; p++)
        length += isnan(state->kept_length[p]) ? state->piece_length[p] : state->kept_length[p];
    return length;
}

static bool is_hauled(const gtl_rig *rig, int line)
{
    const gtl_line *of = &rig->lines[line];
    for (int p = of->first_piece; p < of->first_piece + of->piece_count; p++)
        if (rig->pieces[p].hand >= 0) return true;
    return false;
}

/* What lies round one bend of a line, half a turn of it at least [m]; NaN: nobody knows how large it is. */
static double wrap_at(const gtl_rig *rig, const gtl_run *run, const gtl_line *line)
{
    const gtl_thing *thing = &rig->things[run->thing];
    double size = thing->kind == GTL_BLOCK ? thing->gear.sheave_diameter : thing->gear.pin_diameter;
    double thick = isnan(line->gear.diameter) ? 0 : line->gear.diameter;
    double angle = fmax(pi, thing->wrap) + 2 * pi * thing->turns; /* fmax passes over a NaN */
    return angle * (size + thick) / 2;
}

static void add_wraps(const gtl_rig *rig, gtl_rope_need *need)
{
    for (int r = 0; r < rig->run_count; r++) {
        if (rig->pieces[rig->runs[r].piece].line != need->line) continue;
        double wrap = wrap_at(rig, &rig->runs[r], &rig->lines[need->line]);
        if (isnan(wrap))
            need->open_wraps++;
        else
            need->wraps += wrap;
    }
}

static gtl_rope_need need_of(const gtl_rig *rig, const gtl_state *hold, int line)
{
    gtl_rope_need need = {.line = line};
    need.now = need.most = rove(rig, hold, line);
    need.comes = is_hauled(rig, line) && !isnan(rig->lift) ? 0 : NAN;
    add_wraps(rig, &need);
    return need;
}

/* --- all of them --- */

/* What visits each place. */
typedef struct gtl_counting {
    const gtl_rig *rig;
    gtl_rope_bill *bill;
    gtl_bench *bench;
    const gtl_component *components; /* the sheet's */
    gtl_forces forces;               /* in the place that is visited */
} gtl_counting;

static void count_ropes(const gtl_counting *counting, const gtl_state *state)
{
    for (int i = 0; i < counting->bill->rope_count; i++) {
        gtl_rope_need *need = &counting->bill->ropes[i];
        double rove_here = rove(counting->rig, state, need->line);
        need->most = fmax(need->most, rove_here);
        if (!isnan(need->comes)) need->comes = need->now - rove_here;
    }
}

/* A demand as a share of what it may be, with what the angle of the pull takes [1]; NaN: not rated. */
static double share_of(const gtl_counting *counting, int part, bool push)
{
    gtl_step steps[GTL_STEP_KIND_COUNT];
    const gtl_forces *forces = &counting->forces;
    gtl_component component = counting->components[part];
    component.push = push;
    int count = gtl_chain_steps(counting->rig, &component, forces->keeps[part], forces->angle[part], steps);
    return (push ? forces->push : forces->demand)[part] / gtl_chain_capacity(steps, count);
}

/* The same in the place that is visited; a spar's the worse of pull and push. */
static double use_of(const gtl_counting *counting, int part, bool known)
{
    double demand = counting->forces.demand[part];
    bool idle = !(demand > GTL_IDLE_SHARE * counting->bench->force);
    if (counting->components[part].kind == GTL_SPAR) /* fmax passes over a NaN */
        return fmax(share_of(counting, part, false), share_of(counting, part, true));
    if (known && !idle && isnan(counting->forces.keeps[part])) return INFINITY;
    return idle ? NAN : share_of(counting, part, false);
}

static void count_strain(gtl_counting *counting, int part, double height)
{
    const gtl_forces *forces = &counting->forces;
    gtl_strain *strain = &counting->bill->strains[part];
    double demand = isnan(forces->demand[part]) ? NAN : fmax(forces->demand[part], forces->push[part]);
    if (height == 0)
        *strain =
            (gtl_strain){.drawn = demand, .most = demand, .use = NAN, .known = !isnan(forces->keeps[part])};
    else
        strain->use = fmax(strain->use, use_of(counting, part, strain->known)); /* likewise */
    if (!(demand > strain->most)) return;
    strain->most = demand;
    strain->height = height;
}

static void count_strains(gtl_counting *counting, double height, const gtl_state *state)
{
    gtl_find_forces(counting->bench, GTL_HOLD, state, &counting->forces);
    for (int i = 0; i < counting->bench->component_count; i++) count_strain(counting, i, height);
}

/* A gtl_way_visit. */
static void count_place(void *context, double height, const gtl_state *state)
{
    gtl_counting *counting = context;
    count_ropes(counting, state);
    count_strains(counting, height, state);
}

static bool list_ropes(const gtl_counting *counting, const gtl_state *hold)
{
    const gtl_rig *rig = counting->rig;
    gtl_rope_bill *bill = counting->bill;
    bill->ropes = calloc((size_t)rig->line_count + 1, sizeof *bill->ropes);
    bill->strains = calloc((size_t)counting->bench->component_count + 1, sizeof *bill->strains);
    for (int i = 0; bill->ropes && i < rig->line_count; i++)
        if (rig->lines[i].kind == GTL_ROPE) bill->ropes[bill->rope_count++] = need_of(rig, hold, i);
    return bill->ropes && bill->strains;
}

/* Friction moves what floats, and with it the lengths of hauled ropes. */
static void count_friction(const gtl_sheet *sheet, gtl_rope_bill *bill)
{
    for (int o = 0; o < sheet->outcome_count; o++) {
        const gtl_outcome *outcome = &sheet->outcomes[o];
        if (outcome->kind > GTL_LOWER || !outcome->possible) continue;
        for (int i = 0; i < bill->rope_count; i++)
            bill->ropes[i].most =
                fmax(bill->ropes[i].most, rove(outcome->rig, outcome->state, bill->ropes[i].line));
    }
}

/* How many more holds the tackle has to take. */
static int resets_for(double lift, const gtl_rope_bill *bill)
{
    if (isnan(lift)) return -1;
    if (bill->end == GTL_WAY_OPEN) return bill->looked >= lift * (1 - GTL_RUN_SLACK) ? 0 : -1;
    if (bill->run >= lift * (1 - GTL_RUN_SLACK)) return 0;
    bool helps = bill->end == GTL_WAY_BLOCKED && bill->can_reset && bill->run > 0;
    double runs = ceil(lift / bill->run * (1 - GTL_RUN_SLACK));
    return helps && runs < GTL_MOST_RUNS ? (int)runs - 1 : -1;
}

static void add_up(const gtl_rig *rig, gtl_rope_bill *bill)
{
    for (int i = 0; i < bill->rope_count; i++) {
        gtl_rope_need *need = &bill->ropes[i];
        double spare = rig->lines[need->line].spare;
        need->needed = need->most + need->wraps + (isnan(spare) ? 0 : spare);
    }
    bill->resets = resets_for(rig->lift, bill);
    bill->way = isnan(rig->lift) ? 0 : fmin(rig->lift, isnan(bill->run) ? bill->looked : bill->run);
}

static bool go_up(gtl_counting *counting, const gtl_state *hold)
{
    const gtl_rig *rig = counting->rig;
    if (rig->hand >= 0) return gtl_go_up(rig, hold, rig->lift, counting->bill, count_place, counting);
    count_place(counting, 0, hold);
    return true;
}

static bool make(gtl_sheet *sheet, const gtl_outcome *hold)
{
    gtl_bench bench;
    /* The rig with the hand that pulls, where there are two. */
    gtl_counting counting = {
        .rig = hold->rig, .bill = sheet->rope_bill, .bench = &bench, .components = sheet->components};
    bool kept = gtl_bench_begin(&bench, hold->rig) && gtl_forces_begin(&counting.forces, &bench) &&
                list_ropes(&counting, hold->state) && go_up(&counting, hold->state);
    gtl_forces_end(&counting.forces);
    gtl_bench_end(&bench);
    if (!kept) return false;
    sheet->rope_bill->worked = true;
    count_friction(sheet, sheet->rope_bill);
    add_up(hold->rig, sheet->rope_bill);
    return true;
}

void gtl_rope_bill_free(gtl_rope_bill *bill)
{
    if (!bill) return;
    free(bill->ropes);
    free(bill->strains);
    free(bill);
}

/* --- rope that is too short --- */

static bool is_too_short(const gtl_rig *rig, const gtl_rope_need *need)
{
    return rig->lines[need->line].have < need->needed * (1 - LENGTH_SLACK);
}

/* Add to the sheet's reason, which is cut where it is full. */
static void say(gtl_sheet *sheet, const char *format, ...) GTL_PRINTF(2, 3);
static void say(gtl_sheet *sheet, const char *format, ...)
{
    size_t used = strlen(sheet->reason);
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(sheet->reason + used, sizeof sheet->reason - used, format, arguments);
    va_end(arguments);
}

/* What is needed, up to the next whole millimetre or thousandth of a foot. */
static void say_need(gtl_sheet *sheet, const gtl_rope_need *need)
{
    bool us = sheet->rig->us_units;
    double unit = us ? FOOT : 1;
    const char *name = us ? "ft" : "m";
    say(sheet, "%.3f %s are needed", ceil(need->needed / unit * 1000 - 1e-6) / 1000, name);
    if (need->needed > need->now * (1 + LENGTH_SLACK)) say(sheet, ", %.3f %s of it", need->now / unit, name);
    say(sheet, " for the reeving as drawn");
}

static void refuse(gtl_sheet *sheet, const gtl_rope_need *need)
{
    const gtl_line *line = &sheet->rig->lines[need->line];
    bool first = sheet->reason[0] == '\0';
    if (first) {
        sheet->blame = line->have_line;
        say(sheet, "`length`: `%s` is too short; take a longer one, or lead it otherwise: ", line->name);
    } else {
        say(sheet, "; `%s` (line %d) is too short as well: ", line->name, line->have_line);
    }
    say_need(sheet, need);
}

static gtl_status check(gtl_sheet *sheet)
{
    const gtl_rope_bill *bill = sheet->rope_bill;
    gtl_status status = GTL_OK;
    for (int i = 0; i < bill->rope_count; i++) {
        if (!is_too_short(sheet->rig, &bill->ropes[i])) continue;
        refuse(sheet, &bill->ropes[i]);
        status = GTL_NO_ANSWER;
    }
    return status;
}

gtl_status gtl_find_rope_bill(gtl_sheet *sheet)
{
    const gtl_outcome *hold = gtl_sheet_outcome(sheet, GTL_HOLD);
    if (!gtl_wants_rope_bill(sheet->rig)) return GTL_OK;
    sheet->rope_bill = calloc(1, sizeof *sheet->rope_bill);
    if (!sheet->rope_bill) return GTL_NO_MEMORY;
    *sheet->rope_bill = (gtl_rope_bill){.run = NAN, .one = -1, .other = -1, .gap = NAN, .resets = -1};
    if (!hold || !hold->possible) return GTL_OK;
    if (!make(sheet, hold)) return GTL_NO_MEMORY;
    return check(sheet);
}
