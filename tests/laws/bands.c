/* bands.c - friction stated as a range, on random rigs: how often a force leaves its band at a friction
 * within the range. Where a band counts as proven, none may be greater than its most.
 *
 * usage: bands [COUNT [FIRST SEED]] */
#include "laws/rated.h"
#include <math.h>
#include <stdio.h>
#include <stdlib.h>

/* What rounding in two solves may come to, over the force that moves the rig [1]. */
static const double rounding = 1e-7;
/* Frictions tried in each rig. */
enum { VALUES = 8 };

/* Forces looked at, and those beyond the most of their band, or under its least. */
typedef struct count {
    int values; /* frictions tried, of one case each */
    int leaving;
    long forces;
    long beyond;
    long under;
} count;

static count proven, open;

static bool rubs(const gtl_thing *thing)
{
    if (!thing->friction_stated) return false;
    return isnan(thing->friction) ? thing->efficiency < 1 : thing->friction > 0;
}

/* Make ranges of some of what is stated. */
static bool widen(gtl_rig *rig, chance *c)
{
    bool made = false;
    for (int i = 0; i < rig->thing_count; i++) {
        gtl_thing *thing = &rig->things[i];
        if (!rubs(thing) || chance_of(c, 0.2)) continue;
        made = true;
        if (isnan(thing->friction)) {
            thing->freest = thing->efficiency + (1 - thing->efficiency) * chance_between(c, 0.05, 1);
            thing->efficiency *= chance_between(c, 0.7, 1);
        } else {
            thing->freest = thing->friction * chance_between(c, 0, 0.95);
            thing->friction *= chance_between(c, 1, 1.4);
        }
    }
    return made;
}

/* A friction within every range, now and then at one of its ends. */
static void choose(gtl_rig *rig, chance *c)
{
    for (int i = 0; i < rig->thing_count; i++) {
        gtl_thing *thing = &rig->things[i];
        if (isnan(thing->freest)) continue;
        double *most = isnan(thing->friction) ? &thing->efficiency : &thing->friction;
        double share = chance_of(c, 0.2) ? chance_below(c, 2) : chance_between(c, 0, 1);
        *most += share * (thing->freest - *most);
        thing->freest = NAN;
    }
}

/* One force against its band; false where it is beyond the most. */
static bool look(count *all, const double band[2], double force, double scale, bool *under)
{
    if (isnan(force)) return true;
    all->forces++;
    bool beyond = !(force <= band[1] + rounding * scale), below = !(force >= band[0] - rounding * scale);
    all->beyond += beyond;
    all->under += below;
    *under |= below;
    return !beyond;
}

static void compare(const gtl_sheet *sheet, const gtl_outcome *within, const gtl_outcome *o, ruling *out)
{
    const gtl_rig *rig = sheet->rig;
    bool sure = gtl_band_is_proven(sheet, o), under = false, well = true;
    count *all = sure ? &proven : &open;
    double scale = gtl_rig_force(rig);
    const char *where = "";
    for (int i = 0; i < rig->part_count; i++) scale = fmax(scale, fabs(gtl_outcome_tension(within, i)));
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_HAND &&
            !look(all, o->band.pull[i], gtl_outcome_pull(within, i), scale, &under))
            well = false, where = rig->things[i].name;
    for (int i = 0; i < rig->part_count; i++)
        if (!look(all, o->band.tension[i], gtl_outcome_tension(within, i), scale, &under))
            well = false, where = rig->lines[rig->parts[i].line].name;
    for (int i = 0; i < sheet->component_count; i++)
        if (!look(all, o->band.demand[i], within->demand[i], scale, &under) ||
            !(isnan(within->demand[i]) || within->demand[i] <= o->demand[i] + rounding * scale ||
              within->keeps[i] != o->keeps[i]))
            well = false, where = sheet->components[i].name;
    all->values++;
    all->leaving += !well || under;
    if (sure) out->applied = true;
    if (sure && !well) ruling_break(out, "%s: `%s` is beyond its band", o->name, where);
}

/* A case that can be for every end of the ranges can be within them. */
static void compare_case(const gtl_sheet *sheet, const gtl_outcome *within, const gtl_outcome *o, ruling *out)
{
    if (!o->possible) return;
    if (within->possible)
        compare(sheet, within, o, out);
    else if (gtl_band_is_proven(sheet, o) && !(o->band.sometimes && within->state->held_by_friction))
        ruling_break(out, "%s can be at every end, and not within: %s", o->name, within->reason);
}

static void try_value(const gtl_sheet *sheet, chance *c, ruling *out)
{
    gtl_rig *rig = gtl_rig_copy(sheet->rig);
    gtl_sheet within;
    choose(rig, c);
    if (gtl_rate(rig, &within) == GTL_OK)
        for (int i = 0; i < sheet->outcome_count; i++)
            compare_case(sheet, &within.outcomes[i], &sheet->outcomes[i], out);
    gtl_sheet_end(&within);
    gtl_rig_free(rig);
}

/* Half of the rigs are asked for every case. */
static void draw(const specimen *s, chance *c, rated *r)
{
    sketch drawn = s->made.sketch;
    drawn.all_cases = s->rig->hand >= 0 && s->possible[GTL_RAISE] && chance_of(c, 0.5);
    if (drawn.all_cases) drawn.acceleration = chance_between(c, 0.1, 2);
    for (int i = 0; drawn.all_cases && i < drawn.thing_count; i++)
        if (drawn.things[i].kind == GTL_HAND && isnan(drawn.things[i].pull))
            drawn.things[i].limit = 2 * s->states[GTL_RAISE]->effort;
    rate_drawn(&drawn, r);
}

static void hold_bands(const specimen *s, ruling *out)
{
    rated r;
    chance c = chance_begin(s->seed ^ 0x5A17u);
    draw(s, &c, &r);
    gtl_sheet sheet = {0};
    if (r.rig && widen(r.rig, &c)) {
        if (gtl_rate(r.rig, &sheet) == GTL_OK && sheet.alternative_count > 0)
            for (int i = 0; i < VALUES; i++) try_value(&sheet, &c, out);
        gtl_sheet_end(&sheet);
    }
    rated_end(&r);
}

static void tell(const char *what, const count *all)
{
    printf("%s: %d of %d cases at a friction within leave their band; of %ld forces %ld are beyond its most, "
           "%ld under its least\n",
           what, all->leaving, all->values, all->forces, all->beyond, all->under);
}

/* Enough was tried, and nothing that is proven was beyond its most. */
static void judge_all(int rigs, int *passed, int *failed)
{
    tell("bands that are proven", &proven);
    tell("bands that are not", &open);
    bool enough = proven.values >= 5 * rigs && open.values > 0 && proven.beyond == 0;
    *passed += enough;
    *failed += !enough;
}

int main(int argc, char **argv)
{
    static const law laws[] = {{"no force is beyond a proven band", hold_bands}};
    trial_plan plan = {
        .name = "bands", .laws = laws, .law_count = 1, .rigs = trial_default(150), .last = judge_all};
    return trial_run(&plan, argc, argv);
}
