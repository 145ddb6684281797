/* turns.c - posts on the hauled rope: what the hand has to hold, and what raising comes to, with none up to
 * some whole turns on each.
 *
 * Each number of turns is a rig of its own, worked by the solver as any other. Holding is worked with all
 * friction at its least, since then the most comes to the hand; raising with all of it at its most. */
#include "rate/rating.h"
#include "rig/other.h"
#include <math.h>
#include <stdlib.h>

/* What each number of turns is worked with. */
typedef struct trial {
    gtl_sheet *sheet;
    gtl_rig *free;  /* the rig with all friction at its least, to be changed */
    gtl_rig *rough; /* with all of it at its most, likewise */
    gtl_bench bench;
    gtl_forces forces;
    gtl_state *lowered; /* of `free` */
    gtl_state *raised;  /* of `rough` */
} trial;

static bool begin(trial *t, gtl_sheet *sheet)
{
    *t = (trial){.sheet = sheet, .free = gtl_rig_copy(sheet->rig), .rough = gtl_rig_copy(sheet->rig)};
    if (!t->free || !t->rough) return false;
    for (int i = 0; i < t->free->thing_count; i++) gtl_free_bend(&t->free->things[i]);
    t->lowered = gtl_state_new(t->free);
    t->raised = gtl_state_new(t->rough);
    bool made = gtl_bench_begin(&t->bench, t->rough);
    return made && gtl_forces_begin(&t->forces, &t->bench) && t->lowered && t->raised;
}

static void end(trial *t)
{
    gtl_state_free(t->lowered);
    gtl_state_free(t->raised);
    gtl_forces_end(&t->forces);
    gtl_bench_end(&t->bench);
    gtl_rig_free(t->free);
    gtl_rig_free(t->rough);
}

/* From where the rig holds. */
static gtl_status work(const trial *t, const gtl_rig *rig, gtl_case_kind kind, gtl_state *state)
{
    gtl_case which = {.kind = kind, .begin = gtl_sheet_outcome(t->sheet, GTL_HOLD)->state->at};
    return gtl_solve(rig, &which, state);
}

/* A load that friction alone holds asks nothing of the hand. */
static double held(const gtl_state *lowered)
{
    if (lowered->status != GTL_OK) return NAN;
    if (!lowered->possible) return lowered->held_by_friction ? 0 : NAN;
    return lowered->effort;
}

static double size_of(const double vector[3], int dim)
{
    double size = 0;
    for (int k = 0; k < dim; k++) size = hypot(size, vector[k]);
    return size;
}

/* The part of a run on the side that leads away from the hand. */
static int lead_part(const gtl_rig *rig, const gtl_run *run)
{
    return rig->pieces[run->piece].hand_first ? run->before + 1 : run->before;
}

static bool work_turns(trial *t, const gtl_run *run, int turns, gtl_post *post)
{
    gtl_post_turn *turn = &post->turns[turns];
    t->free->things[post->thing].turns = t->rough->things[post->thing].turns = turns;
    *turn = (gtl_post_turn){NAN, NAN, NAN, NAN, NAN};
    if (work(t, t->free, GTL_LOWER, t->lowered) == GTL_NO_MEMORY) return false;
    if (work(t, t->rough, GTL_RAISE, t->raised) == GTL_NO_MEMORY) return false;
    turn->hold = held(t->lowered);
    if (t->raised->status != GTL_OK || !t->raised->possible) return true;
    gtl_find_forces(&t->bench, GTL_RAISE, t->raised, &t->forces);
    turn->raise = t->raised->effort;
    turn->lead = t->raised->tension[lead_part(t->rough, run)];
    turn->force = t->forces.demand[t->bench.thing_component[post->thing]];
    if (post->anchor >= 0) turn->anchor = size_of(t->forces.passed[post->anchor], t->rough->dim);
    return true;
}

static int anchor_of(const gtl_rig *rig, int thing)
{
    while (rig->things[thing].on >= 0) thing = rig->things[thing].on;
    return rig->things[thing].kind == GTL_ANCHOR ? thing : -1;
}

static bool work_post(trial *t, int r, gtl_post *post)
{
    const gtl_rig *rig = t->sheet->rig;
    const gtl_run *run = &rig->runs[r];
    double limit = rig->things[rig->hand].limit;
    *post = (gtl_post){.thing = run->thing, .anchor = anchor_of(rig, run->thing), .enough = -1};
    int stated = rig->things[run->thing].turns;
    bool made = true;
    for (int turns = 0; made && turns <= GTL_POST_TURNS; turns++) made = work_turns(t, run, turns, post);
    t->free->things[post->thing].turns = t->rough->things[post->thing].turns = stated;
    for (int turns = GTL_POST_TURNS; turns >= 0; turns--)
        if (post->turns[turns].hold <= limit * (1 + GTL_UTILISATION_SLACK)) post->enough = turns;
    return made;
}

static bool is_listed(const gtl_sheet *sheet, int thing)
{
    for (int i = 0; i < sheet->post_count; i++)
        if (sheet->posts[i].thing == thing) return true;
    return false;
}

static bool is_post(const gtl_rig *rig, int r)
{
    const gtl_piece *piece = &rig->pieces[rig->driven];
    const gtl_thing *thing = &rig->things[rig->runs[r].thing];
    int last = piece->hand_first ? piece->first_run : piece->first_run + piece->run_count - 1;
    bool rubs =
        thing->friction_stated && (isnan(thing->friction) ? thing->efficiency < 1 : thing->friction > 0);
    return thing->kind == GTL_FAIRLEAD && rubs && (r == last || thing->turns > 0);
}

/* With two hands of which one pulls, or one that hauls the load down, no post is there to hold by. */
static bool can_hold(const gtl_sheet *sheet)
{
    const gtl_outcome *hold = gtl_sheet_outcome(sheet, GTL_HOLD);
    return sheet->rig->hand >= 0 && !gtl_rig_is_paired(sheet->rig) && hold && hold->possible &&
           hold->velocity_ratio > 0;
}

bool gtl_find_posts(gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    if (!can_hold(sheet)) return true;
    const gtl_piece *piece = &rig->pieces[rig->driven];
    sheet->posts = calloc((size_t)piece->run_count + 1, sizeof *sheet->posts);
    bool made = sheet->posts != NULL;
    for (int r = piece->first_run; made && r < piece->first_run + piece->run_count; r++) {
        trial t;
        if (!is_post(rig, r) || is_listed(sheet, rig->runs[r].thing)) continue;
        made = begin(&t, sheet) && work_post(&t, r, &sheet->posts[sheet->post_count]);
        sheet->post_count += made;
        end(&t);
    }
    return made;
}
