/* mistakes_support.c - supports that are given too little, and legs that lean. */
#include "worksheet/mistake.h"

#include "report/geometry.h"

#include <math.h>
#include <stdlib.h>

#define PI   3.14159265358979323846
#define SAME 1e-6 /* of two legs, their lean and their pull [1] */

static double held(const gtl_worked *w, int anchor)
{
    return gtl_vector_size(w->hold->forces.passed[anchor], w->rig->dim);
}

static bool is_anchor(const gtl_rig *rig, int thing)
{
    return rig->things[thing].kind == GTL_ANCHOR && rig->things[thing].on < 0;
}

/* --- an anchor above a tackle --- */

/* The one anchor that holds anything, -1 where there are several. */
static int only_anchor(const gtl_worked *w)
{
    int found = -1;
    for (int i = 0; i < w->rig->thing_count; i++) {
        if (!is_anchor(w->rig, i) || !(held(w, i) > w->lesson.units.noise)) continue;
        if (found >= 0) return -1;
        found = i;
    }
    return found;
}

static double all_weights(const gtl_rig *rig)
{
    double sum = 0;
    for (int i = 0; i < rig->thing_count; i++) sum += rig->things[i].weight;
    for (int i = 0; i < rig->line_count; i++) sum += rig->lines[i].weight;
    return sum;
}

const char *gtl_show_load_only(gtl_worked *w)
{
    gtl_shown *shown = &w->shown;
    int anchor = only_anchor(w);
    double weights = all_weights(w->rig), effort = w->hold->state->effort;
    if (anchor < 0) return "more than one anchor holds something";
    if (!(fabs(held(w, anchor) - weights - effort) <= SAME * weights))
        return "its hand does not pull straight down on what the anchor holds";
    const char *name = w->rig->things[anchor].name;
    gtl_text_add(
        &shown->asked,
        "How hard is the anchor %s pulled while the hand %s holds the load, if there is no friction?", name,
        gtl_hand_name(w));
    gtl_document_paragraph(
        &shown->solution,
        "The load and the gear hang on %s, and nothing else does. Together they weigh W = %s.", name,
        GTL_FORCE_TEXT(w, weights));
    gtl_document_equation(&shown->solution, "R(%s) = W = %s", name, GTL_FORCE_TEXT(w, weights));
    shown->unit = GTL_ANSWER_FORCE;
    shown->wrong = weights;
    shown->right = held(w, anchor);
    gtl_text_add(
        &shown->reason,
        "The hand pulls down on the anchor too, with %s. R(%s) = %s + %s = %s: more than the weight.",
        GTL_FORCE_TEXT(w, effort), name, GTL_FORCE_TEXT(w, weights), GTL_FORCE_TEXT(w, effort),
        GTL_FORCE_TEXT(w, shown->right));
    return NULL;
}

/* --- a redirect --- */

/* Whether any line is tied at a node. */
static bool has_tie(const gtl_rig *rig, int node)
{
    for (int i = 0; i < rig->stop_count; i++)
        if (rig->stops[i].tied && rig->things[rig->stops[i].thing].node == node) return true;
    return false;
}

/* The one run over what sits on an anchor that holds nothing else; -1 for none. */
static int only_run(const gtl_rig *rig, int node)
{
    int found = -1;
    if (has_tie(rig, node) || !rig->nodes[node].fixed) return -1;
    for (int i = 0; i < rig->run_count; i++) {
        if (rig->things[rig->runs[i].thing].node != node) continue;
        if (found >= 0) return -1;
        found = i;
    }
    return found;
}

/* The anchor of a redirect whose two parts have most on it that one alone has not; its run is *run. */
static int find_redirect(const gtl_worked *w, int *run)
{
    int best = -1;
    for (int i = 0; i < w->rig->thing_count; i++) {
        int own = is_anchor(w->rig, i) ? only_run(w->rig, w->rig->things[i].node) : -1;
        if (own < 0 || (best >= 0 && held(w, i) <= held(w, best))) continue;
        best = i;
        *run = own;
    }
    return best;
}

const char *gtl_show_one_part(gtl_worked *w)
{
    gtl_shown *shown = &w->shown;
    int run = -1, anchor = find_redirect(w, &run);
    if (anchor < 0) return "it has no anchor that holds a single redirect and nothing else";
    const char *name = w->rig->things[anchor].name, *block = w->rig->things[w->rig->runs[run].thing].name;
    double tension = gtl_outcome_tension(w->hold, w->rig->runs[run].before);
    gtl_text_add(&shown->asked,
                 "How hard is the anchor %s pulled while the load is held, if there is no friction?", name);
    gtl_document_paragraph(
        &shown->solution,
        "The rope runs over %s with T = %s. This is what the block passes on to its anchor.", block,
        GTL_FORCE_TEXT(w, tension));
    gtl_document_equation(&shown->solution, "R = T = %s", GTL_FORCE_TEXT(w, tension));
    shown->unit = GTL_ANSWER_FORCE;
    shown->wrong = tension;
    shown->right = held(w, anchor);
    gtl_text_add(
        &shown->reason,
        "Two parts of rope leave %s, each with %s, and the anchor has to hold both%s. Added up with their "
        "directions: R = %s.",
        block, GTL_FORCE_TEXT(w, tension),
        w->rig->nodes[w->rig->things[anchor].node].weight > 0 ? ", and the block's weight" : "",
        GTL_FORCE_TEXT(w, shown->right));
    return NULL;
}

/* --- two legs --- */

typedef struct legs {
    int node;
    double angle; /* of each from the plumb line [rad] */
    double pull;  /* in each [N] */
} legs;

/* Whether the lines at a node are two that go up alike on both sides, and such as hang plumb below it. */
static bool are_legs(const gtl_worked *w, int node, gtl_pull *pulls, legs *found)
{
    int count = gtl_pulls_on(&w->lesson, w->hold, node, pulls), up = w->rig->dim - 1, leaning[2],
        legs_count = 0;
    for (int i = 0; i < count; i++) {
        if (pulls[i].slack || fabs(pulls[i].way[up] + 1) < SAME) continue;
        if (legs_count == 2 || pulls[i].way[up] <= SAME) return false;
        leaning[legs_count++] = i;
    }
    if (legs_count < 2) return false;
    const gtl_pull *a = &pulls[leaning[0]], *b = &pulls[leaning[1]];
    double lean = 0;
    for (int i = 0; i < up; i++) {
        if (fabs(a->way[i] + b->way[i]) > SAME) return false;
        lean = hypot(lean, a->way[i]);
    }
    if (lean < SAME || fabs(a->force - b->force) > SAME * fabs(a->force)) return false;
    *found = (legs){node, atan2(lean, a->way[up]), a->force};
    return true;
}

/* The legs of a bridle; false where the rig has none that are alike. */
static bool find_legs(gtl_worked *w, legs *found)
{
    gtl_pull *pulls = calloc((size_t)w->rig->part_count * 2 + 1, sizeof *pulls);
    bool any = false;
    if (!pulls) w->failed = true;
    for (int i = 0; pulls && !any && i < w->rig->node_count; i++)
        if (!w->rig->nodes[i].fixed) any = are_legs(w, i, pulls, found);
    free(pulls);
    return any;
}

#define NO_LEGS "it has no point that hangs on two legs alike, one leaning to each side"

static void ask_for_legs(gtl_worked *w, const legs *of, double carried)
{
    const char *name = w->rig->things[w->rig->nodes[of->node].root].name;
    gtl_text_add(&w->shown.asked,
                 "Two legs, each %s from the plumb line, carry %s at %s. What is the tension in each?",
                 gtl_exact_degrees(of->angle).text, GTL_FORCE_TEXT(w, carried), name);
    w->shown.unit = GTL_ANSWER_FORCE;
    w->shown.right = of->pull;
}

static void add_right_legs(gtl_worked *w, const legs *of, double carried)
{
    gtl_text_add(&w->shown.reason, " Upwards: 2 x T x cos(%s) = %s, so T = %s.",
                 gtl_exact_degrees(of->angle).text, GTL_FORCE_TEXT(w, carried), GTL_FORCE_TEXT(w, of->pull));
}

const char *gtl_show_angle_from_wrong_side(gtl_worked *w)
{
    gtl_shown *shown = &w->shown;
    legs of;
    if (!find_legs(w, &of)) return NO_LEGS;
    double carried = 2 * of.pull * cos(of.angle);
    ask_for_legs(w, &of, carried);
    shown->wrong = carried / (2 * sin(of.angle));
    gtl_document_paragraph(&shown->solution,
                           "Upwards each leg pulls with T x sin(%s), and both together carry %s.",
                           gtl_exact_degrees(of.angle).text, GTL_FORCE_TEXT(w, carried));
    gtl_document_paragraph(&shown->solution, "T = %s / (2 x sin(%s)) = %s", GTL_FORCE_TEXT(w, carried),
                           gtl_exact_degrees(of.angle).text, GTL_FORCE_TEXT(w, shown->wrong));
    gtl_text_add(&shown->reason,
                 "The angle is measured from the plumb line, so that the upward share of a leg is its "
                 "cosine. The sine "
                 "belongs to the angle from level, %s.",
                 gtl_exact_degrees(PI / 2 - of.angle).text);
    add_right_legs(w, &of, carried);
    return NULL;
}

const char *gtl_show_not_parallel(gtl_worked *w)
{
    gtl_shown *shown = &w->shown;
    legs of;
    if (!find_legs(w, &of)) return NO_LEGS;
    double carried = 2 * of.pull * cos(of.angle);
    ask_for_legs(w, &of, carried);
    shown->wrong = carried / 2;
    gtl_document_paragraph(&shown->solution, "Two legs share the weight, so each has half of it.");
    gtl_document_equation(&shown->solution, "T = %s / 2 = %s", GTL_FORCE_TEXT(w, carried),
                          GTL_FORCE_TEXT(w, shown->wrong));
    gtl_text_add(&shown->reason, "The legs lean. Only the upward share of each tension carries, so that each "
                                 "has to be more than half.");
    add_right_legs(w, &of, carried);
    return NULL;
}
