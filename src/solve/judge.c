/* judge.c - whether an answer may be believed, and words for what is wrong with a rig that has none.
 *
 * A singular matrix is never met while solving (see balance.c); here it is looked for. Its null vector says
 * what can move, or share a load, at will. */
#include "solve/work.h"
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

/* Of a null vector scaled to 1: what takes part, and what counts as nothing. */
#define TAKES_PART 0.05
#define NO_TENSION 1e-4
#define NO_MOTION  1e-4
#define NO_RUN     1e-5
/* Pivot ratio under which what is free to turn is looked for. */
#define WEAK 1e-6
/* Hanging that ended like this found no place. */
#define TOUCHING 1e-3
#define TORN     100.0
/* Rope hauled for one unit of lift from which on hauling does nothing for the height. */
#define FLAT     50.0
#define STRAINED 10.0
/* Two lines whose lengths differ by less than this share a load as if they were equal: no rope is stiffer. */
#define EQUAL_LENGTHS 1e-5

void gtl_refuse(gtl_state *state, int blame, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(state->reason, sizeof state->reason, format, arguments);
    va_end(arguments);
    state->blame = blame;
    state->status = GTL_NO_ANSWER;
}

typedef struct names {
    char text[160];
    int count;
    int line; /* of the first */
} names;

#define MOST_NAMES 4

static void add_name(names *list, const char *name, int line)
{
    size_t used = strlen(list->text);
    const char *between = list->count == 0 ? "" : ", ";
    if (list->count == MOST_NAMES)
        snprintf(list->text + used, sizeof list->text - used, " and others");
    else if (list->count < MOST_NAMES)
        snprintf(list->text + used, sizeof list->text - used, "%s`%s`", between, name);
    if (list->count == 0) list->line = line;
    list->count++;
}

static const gtl_thing *root_of(const gtl_work *work, int node)
{
    return &work->rig->things[work->rig->nodes[node].root];
}

static const gtl_line *line_of(const gtl_work *work, int piece)
{
    return &work->rig->lines[work->rig->pieces[piece].line];
}

/* The null vector of the matrix factored last, scaled to 1, in work->step. */
static void null_vector(gtl_work *work)
{
    for (int i = 0; i < work->unknowns; i++) work->step[i] = gtl_random(work);
    for (int round = 0; round < 3; round++) {
        work->solves++;
        gtl_matrix_solve(&work->matrix, work->step);
        double most = 0;
        for (int i = 0; i < work->unknowns; i++) most = fmax(most, fabs(work->step[i]));
        for (int i = 0; most > 0 && i < work->unknowns; i++) work->step[i] /= most;
    }
    for (int i = 0; i < 3 * work->rig->node_count; i++)
        work->rate[i] = work->dof[i] < 0 ? 0 : work->step[work->dof[i]];
    gtl_part_rates(work);
}

static double greatest(const double *values, int count)
{
    double most = 0;
    for (int i = 0; i < count; i++) most = fmax(most, fabs(values[i]));
    return most;
}

static void refuse_shared(gtl_work *work, gtl_state *state)
{
    names list = {"", 0, 0};
    for (int p = 0; p < work->rig->piece_count; p++)
        if (fabs(work->step[work->dofs + p]) > TAKES_PART)
            add_name(&list, line_of(work, p)->name, line_of(work, p)->line);
    gtl_refuse(state, list.line,
               "%s share the load in a way that only their stiffness decides, which is not known here: "
               "leave out all but as many as are needed, or give lengths that say which one is slack",
               list.text);
}

static double node_rate(const gtl_work *work, int node)
{
    return greatest(work->rate + 3 * node, 3);
}

static void refuse_mechanism(gtl_work *work, gtl_state *state)
{
    names list = {"", 0, 0};
    for (int n = 0; n < work->rig->node_count; n++)
        if (node_rate(work, n) > TAKES_PART) add_name(&list, root_of(work, n)->name, root_of(work, n)->line);
    const char *still =
        work->rig->driven < 0 ? "every line keeps its length or its pull" : "the hauling rope stands still";
    gtl_refuse(state, list.line,
               "%s can move while %s, so that nothing holds it in place: tie it with one line more, or see "
               "whether a part of the rope is missing in a path",
               list.text, still);
}

/* Whether a motion moves no rope over a stop, lengthens no taut line and lifts no weight. */
static bool costs_nothing(gtl_work *work)
{
    if (gtl_flows(work, work->flow) > NO_RUN) return false;
    for (int p = 0; p < work->rig->piece_count; p++)
        if (work->row[p] != GTL_ROW_SLACK && fabs(gtl_payout(work, p)) > NO_RUN) return false;
    for (int n = 0; n < work->rig->node_count; n++)
        if (work->weight[n] > 0 && fabs(work->rate[3 * n + work->rig->dim - 1]) > NO_RUN) return false;
    return true;
}

/* The null vector is the motion of what stays anywhere; the body that moves most names it. */
static void take_neutral(gtl_work *work)
{
    work->neutral_node = 0;
    for (int n = 1; n < work->rig->node_count; n++)
        if (node_rate(work, n) > node_rate(work, work->neutral_node)) work->neutral_node = n;
    gtl_keep_turn(work);
}

static gtl_judgement judge_null(gtl_work *work, gtl_state *state)
{
    null_vector(work);
    double motion = greatest(work->step, work->dofs);
    double tension = greatest(work->step + work->dofs, work->rig->piece_count);
    if (motion < NO_MOTION) {
        refuse_shared(work, state);
        return GTL_SICK;
    }
    if (tension < NO_TENSION && costs_nothing(work)) {
        take_neutral(work);
        return GTL_NEUTRAL;
    }
    refuse_mechanism(work, state);
    return GTL_SICK;
}

static void refuse_unmoved(gtl_work *work, gtl_state *state)
{
    const gtl_thing *load = &work->rig->things[work->rig->load];
    gtl_refuse(state, load->line,
               "hauling does not change the height of `%s` here: see whether the rope that is hauled holds "
               "it, or draw it away from the lowest place of its path",
               load->name);
}

static gtl_judgement judge_singular(gtl_work *work, gtl_state *state)
{
    int driven = work->rig->driven;
    if (driven < 0) return judge_null(work, state);
    double kept = work->kept[driven];
    gtl_row row = work->row[driven];
    work->row[driven] = GTL_ROW_LENGTH;
    work->kept[driven] = work->length[driven];
    gtl_judgement found = GTL_SICK;
    if (gtl_sound(work) < GTL_SINGULAR) {
        found = judge_null(work, state);
    } else {
        refuse_unmoved(work, state);
    }
    work->row[driven] = row;
    work->kept[driven] = kept;
    return found;
}

/* A slack line that is longer than its room by next to nothing shares the load all the same. */
static bool shares_if_taut(gtl_work *work, gtl_state *state)
{
    bool shares = false;
    for (int p = 0; !shares && p < work->rig->piece_count; p++) {
        bool nearly =
            work->row[p] == GTL_ROW_SLACK && work->kept[p] - work->length[p] < EQUAL_LENGTHS * work->kept[p];
        if (!nearly) continue;
        work->row[p] = GTL_ROW_LENGTH;
        if (gtl_sound(work) < GTL_SINGULAR) {
            null_vector(work);
            shares = greatest(work->step, work->dofs) < NO_MOTION;
        }
        if (shares) refuse_shared(work, state);
        work->row[p] = GTL_ROW_SLACK;
    }
    return shares;
}

/* A rope that is taut without pulling holds nothing: what only it holds can move. */
static void let_go_idle(gtl_work *work)
{
    for (int p = 0; p < work->rig->piece_count; p++) {
        bool tied = work->rig->pieces[p].rule == GTL_TIED && work->row[p] == GTL_ROW_LENGTH;
        if (!tied || fabs(work->t[p]) > GTL_NO_PUSH || gtl_goes_along(work, p)) continue;
        work->row[p] = GTL_ROW_SLACK;
        work->t[p] = 0;
    }
}

/* What rounding keeps from being singular altogether may still be free to turn; other weak matrices are
 * believed, with a caution. */
static gtl_judgement judge_weak(gtl_work *work)
{
    null_vector(work);
    bool pulls = greatest(work->step + work->dofs, work->rig->piece_count) >= NO_TENSION;
    if (pulls || !costs_nothing(work)) return GTL_GOOD;
    take_neutral(work);
    return GTL_NEUTRAL;
}

gtl_judgement gtl_judge(gtl_work *work, gtl_state *state)
{
    work->neutral_node = -1;
    let_go_idle(work);
    if (shares_if_taut(work, state)) return GTL_SICK;
    double ratio = gtl_sound(work);
    if (ratio >= WEAK) return GTL_GOOD;
    gtl_judgement found = ratio >= GTL_SINGULAR ? judge_weak(work) : judge_singular(work, state);
    gtl_sound(work);
    return found;
}

/* A body that fell out of the rig. */
static bool name_lost(gtl_work *work, gtl_state *state)
{
    int node;
    if (!(gtl_farthest(work, &node) > GTL_FALLEN_OUT)) return false;
    const gtl_thing *body = root_of(work, node);
    gtl_refuse(state, body->line,
               "nothing holds `%s`: no line carries it from above, or what it hangs on is not held itself",
               body->name);
    return true;
}

/* The free end of a spar far from its drawing. */
static bool name_fallen(gtl_work *work, gtl_state *state)
{
    for (int p = 0; p < work->rig->piece_count; p++) {
        if (work->rig->pieces[p].rule != GTL_STRUT) continue;
        for (int end = 0; end < 2; end++) {
            int node = work->walk_node[work->plans[p].first + p + end];
            if (!(gtl_away(work, node) > GTL_FAR)) continue;
            gtl_refuse(state, root_of(work, node)->line,
                       "`%s` falls over: stay it, or draw it where it can stand", root_of(work, node)->name);
            return true;
        }
    }
    return false;
}

/* Where the load's height says nothing of the hauled length, it is at the top or the bottom of its path. */
static bool name_flat(gtl_work *work, gtl_state *state)
{
    if (work->rig->driven < 0) return false;
    gtl_motion(work);
    if (fabs(gtl_payout(work, work->rig->driven)) < FLAT) return false;
    refuse_unmoved(work, state);
    return true;
}

static bool name_touching(gtl_work *work, gtl_state *state)
{
    for (int p = 0; p < work->rig->piece_count; p++) {
        const gtl_plan *plan = &work->plans[p];
        for (int i = plan->first; i < plan->first + plan->count; i++) {
            if (work->span[i] >= TOUCHING * work->length[p] / plan->count) continue;
            const gtl_thing *from = root_of(work, work->walk_node[i + p]);
            const gtl_thing *to = root_of(work, work->walk_node[i + p + 1]);
            const gtl_thing *body = work->rig->nodes[from->node].fixed ? to : from;
            gtl_refuse(state, body->line,
                       "`%s` runs up against `%s`: `%s` is too short, too long, or led so that it closes up",
                       body->name, body == from ? to->name : from->name, line_of(work, p)->name);
            return true;
        }
    }
    return false;
}

static bool name_torn(gtl_work *work, gtl_state *state, double bar)
{
    for (int p = 0; p < work->rig->piece_count; p++) {
        if (!(fabs(work->t[p]) > bar)) continue;
        const gtl_line *line = line_of(work, p);
        gtl_refuse(state, line->line,
                   "`%s` is too short for what is drawn, or drawn straight where it has to sag: draw the "
                   "sag, or give it a longer `length`",
                   line->name);
        return true;
    }
    return false;
}

static bool any_slack(const gtl_work *work)
{
    for (int p = 0; p < work->rig->piece_count; p++)
        if (work->row[p] == GTL_ROW_SLACK) return true;
    return false;
}

/* With heights alone the matrix does not depend on where things are drawn: what is wrong with it is wrong
 * anywhere. */
static bool name_by_drawing(gtl_work *work, gtl_state *state)
{
    if (work->rig->dim > 1 || any_slack(work)) return false;
    memcpy(work->x, work->drawn, 3 * (size_t)work->rig->node_count * sizeof *work->x);
    return gtl_judge(work, state) == GTL_SICK;
}

void gtl_name_failure(gtl_work *work, gtl_state *state)
{
    gtl_restore(work, &work->hung);
    gtl_exact_rows(work);
    work->smooth = 0;
    if (name_by_drawing(work, state)) return;
    gtl_restore(work, &work->hung);
    gtl_exact_rows(work);
    gtl_balance(work);
    if (name_lost(work, state) || name_fallen(work, state) || name_touching(work, state) ||
        name_torn(work, state, TORN))
        return;
    if (gtl_judge(work, state) == GTL_SICK) return;
    if (name_torn(work, state, STRAINED)) return;
    if (name_flat(work, state)) return;
    if (state->reason[0]) return; /* what Newton's state was found to suffer from */
    gtl_refuse(state, 0, "no place was found where this rig is in balance: draw it closer to how it hangs");
}
