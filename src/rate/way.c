/* way.c - the load's way up, place by place.
 *
 * Each place is solved anew on a copy of the rig that is drawn there: every body where the motion of the last
 * place takes it, the load at its new height, every tied line with the length that it has. Steps end where
 * the first two things would meet if all went on evenly; one that goes too far, or finds no place, is halved.
 */
#include "rate/way.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Steps over the rig's size: with heights alone everything moves evenly until a line comes taut or slack. */
#define STEP_EVEN 0.125
#define STEP      (1.0 / 64)
/* Things this close to meeting meet, over the rig's size; what is left of the run is added on. */
#define MET_EVEN 1e-11
#define MET      1e-7
/* A step this small is none, over the rig's size. */
#define NO_STEP 1e-9
/* Places in a row after which steps grow again. */
#define ENOUGH      6
#define MOST_PLACES 2000
/* How far is looked for things that meet, over the rig's size. */
#define LOOK 2

typedef struct gtl_climb {
    const gtl_rig *rig;
    const gtl_state *hold;
    gtl_rig *moved;   /* drawn where the last place is tried */
    gtl_state *state; /* of the place being tried */
    gtl_state *last;  /* the last place in which the rig holds; NULL: `hold` itself */
    double height;    /* of that above the drawing [m] */
    gtl_meet *meets;
    int meet_count;
    double size;    /* [m] */
    double met;     /* from there on things have met [m] */
    double longest; /* step [m] */
    double step;    /* the next is no longer [m] */
    int in_a_row;   /* places found since one was not */
    double lift;    /* NaN: not stated [m] */
    gtl_rope_bill *bill;
    bool failed; /* without memory */
} gtl_climb;

static const gtl_state *here(const gtl_climb *climb)
{
    return climb->last ? climb->last : climb->hold;
}

/* --- places --- */

/* Every tied line and spar keeps the length that it has to keep as drawn. */
static void keep_lengths(gtl_climb *climb)
{
    for (int p = 0; p < climb->rig->piece_count; p++)
        if (!isnan(climb->hold->kept_length[p])) climb->moved->pieces[p].length = climb->hold->kept_length[p];
}

/* Draw the rig so much higher than at its last place. */
static void draw(gtl_climb *climb, double step)
{
    const gtl_rig *rig = climb->rig;
    const gtl_state *from = here(climb);
    int up = rig->dim - 1, load = rig->things[rig->load].node;
    for (int n = 0; n < rig->node_count; n++)
        for (int k = 0; k < rig->dim && !rig->nodes[n].fixed; k++)
            climb->moved->nodes[n].at[k] = from->at[3 * n + k] + step * from->rise[3 * n + k];
    climb->moved->nodes[load].at[up] = climb->hold->at[3 * load + up] + climb->height + step;
}

/* Try a place; false where the rig does not hold there, and `state` says why. */
static bool try_place(gtl_climb *climb, double step)
{
    draw(climb, step);
    gtl_state_free(climb->state);
    climb->state = gtl_state_new(climb->moved);
    if (!climb->state) {
        climb->failed = true;
        return false;
    }
    gtl_status status = gtl_solve(climb->moved, &(gtl_case){.kind = GTL_HOLD}, climb->state);
    climb->failed = status == GTL_NO_MEMORY;
    return status == GTL_OK && climb->state->possible;
}

/* The place tried becomes the last one. */
static void move_on(gtl_climb *climb, double step)
{
    gtl_state_free(climb->last);
    climb->last = climb->state;
    climb->state = NULL;
    climb->height += step;
    if (++climb->in_a_row < ENOUGH) return;
    climb->step = fmin(2 * climb->step, climb->longest);
    climb->in_a_row = 0;
}

static void step_back(gtl_climb *climb, double step)
{
    climb->step = step / 2;
    climb->in_a_row = 0;
}

/* --- what meets --- */

static double gap(const gtl_climb *climb, int meet, const gtl_state *state)
{
    return gtl_meet_distance(climb->rig, &climb->meets[meet], state) - climb->meets[meet].clear;
}

/* The pair that is nearest to meeting in a state, -1: there is none. */
static int nearest(const gtl_climb *climb, const gtl_state *state)
{
    int found = -1;
    for (int i = 0; i < climb->meet_count; i++)
        if (found < 0 || gap(climb, i, state) < gap(climb, found, state) - NO_STEP * climb->size) found = i;
    return found;
}

static bool have_met(const gtl_climb *climb, const gtl_state *state, double within)
{
    int meet = nearest(climb, state);
    return meet >= 0 && gap(climb, meet, state) <= within;
}

/* How far the load goes up until a pair is so close, if all goes on evenly [m]; infinite: it does not. */
static double left_until(const gtl_climb *climb, int meet, double within)
{
    double closing = gtl_meet_closing(climb->rig, &climb->meets[meet], here(climb));
    double left = gap(climb, meet, here(climb)) - within;
    return closing > 0 ? fmax(left, 0) / closing : INFINITY;
}

static double next_step(const gtl_climb *climb)
{
    double step = climb->step;
    for (int i = 0; i < climb->meet_count; i++) step = fmin(step, left_until(climb, i, climb->met / 2));
    double to_lift = climb->lift - climb->height;
    return to_lift > 0 ? fmin(step, to_lift) : step;
}

/* --- the end of the way --- */

static void note_pair(gtl_climb *climb)
{
    int meet = nearest(climb, here(climb));
    if (meet < 0) return;
    gtl_rope_bill *bill = climb->bill;
    bill->one = climb->meets[meet].one;
    bill->other = climb->meets[meet].other;
    bill->gap = gtl_meet_distance(climb->rig, &climb->meets[meet], here(climb));
    bill->clear = climb->meets[meet].clear;
    bill->meeting = climb->meets[meet].meeting;
    bill->size_of_one_only = climb->meets[meet].size_of_one_only;
}

/* Two things meet; the little that is left of the way is evenly gone, if that is not far. */
static void end_blocked(gtl_climb *climb)
{
    gtl_rope_bill *bill = climb->bill;
    int meet = nearest(climb, here(climb));
    double left = left_until(climb, meet, 0);
    bill->end = GTL_WAY_BLOCKED;
    bill->run = climb->height + (left < 10 * climb->met ? left : 0);
    note_pair(climb);
    bill->gap = fmin(bill->gap, fmax(bill->clear, 0));
    bill->can_reset = gtl_can_reset(climb->rig, &climb->meets[meet], &climb->failed);
}

static void end_without_place(gtl_climb *climb, const char *reason)
{
    gtl_rope_bill *bill = climb->bill;
    bill->end = GTL_WAY_NO_PLACE;
    bill->run = climb->height;
    note_pair(climb);
    memcpy(bill->reason, reason, sizeof bill->reason);
}

/* --- the way --- */

/* One step, or half of it the next time; false at the end of the way. */
static bool go_on(gtl_climb *climb)
{
    if (have_met(climb, here(climb), climb->met)) {
        end_blocked(climb);
        return false;
    }
    double step = next_step(climb);
    bool found = try_place(climb, step);
    if (climb->failed) return false;
    bool passed = found && have_met(climb, climb->state, 0);
    if (found && !passed) {
        move_on(climb, step);
        return true;
    }
    step_back(climb, step);
    if (climb->step > NO_STEP * climb->size) return true;
    if (passed)
        end_blocked(climb);
    else
        end_without_place(climb, climb->state->reason);
    return false;
}

static void go(gtl_climb *climb, gtl_way_visit *visit, void *context)
{
    double far = fmax(climb->lift, LOOK * climb->size); /* fmax passes over a NaN */
    double last = 0;
    visit(context, 0, climb->hold);
    for (int places = 0; places < MOST_PLACES && climb->height < far && go_on(climb); places++) {
        bool on_the_way = climb->height <= climb->lift * (1 + GTL_RUN_SLACK);
        if (climb->height > last && on_the_way) visit(context, climb->height, here(climb));
        last = climb->height;
    }
    climb->bill->looked = fmax(climb->height, climb->bill->run);
}

static bool begin(gtl_climb *climb)
{
    climb->size = gtl_rig_size(climb->rig);
    climb->met = (climb->rig->dim == 1 ? MET_EVEN : MET) * climb->size;
    climb->longest = climb->step = (climb->rig->dim == 1 ? STEP_EVEN : STEP) * climb->size;
    climb->moved = gtl_rig_copy(climb->rig);
    climb->meets = gtl_list_meets(climb->rig, climb->hold, &climb->meet_count);
    if (!climb->moved || !climb->meets) return false;
    keep_lengths(climb);
    return true;
}

bool gtl_go_up(const gtl_rig *rig, const gtl_state *hold, double lift, gtl_rope_bill *bill,
               gtl_way_visit *visit, void *context)
{
    gtl_climb climb = {.rig = rig, .hold = hold, .lift = lift, .bill = bill};
    bool made = begin(&climb);
    if (made) go(&climb, visit, context);
    gtl_state_free(climb.state);
    gtl_state_free(climb.last);
    gtl_rig_free(climb.moved);
    free(climb.meets);
    return made && !climb.failed;
}
