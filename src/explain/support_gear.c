/* support_gear.c - the supports side by side: with and without friction, with and without the gear's own
 * weight. */
#include "explain/support.h"

#include <stdio.h>
#include <stdlib.h>

static bool is_gear(const gtl_thing *thing)
{
    return thing->kind == GTL_BLOCK || thing->kind == GTL_FAIRLEAD || thing->kind == GTL_JOINT;
}

static double gear_weight(const gtl_rig *rig)
{
    double sum = 0;
    for (int i = 0; i < rig->thing_count; i++)
        if (is_gear(&rig->things[i])) sum += rig->things[i].weight;
    for (int i = 0; i < rig->line_count; i++) sum += rig->lines[i].weight;
    return sum;
}

/* The rig once more, its gear weighing nothing; NULL without memory. */
static gtl_rig *without_weight(const gtl_rig *rig)
{
    gtl_rig *copy = gtl_rig_copy(rig);
    if (!copy) return NULL;
    for (int i = 0; i < copy->node_count; i++) copy->nodes[i].weight = 0;
    for (int i = 0; i < copy->line_count; i++) copy->lines[i].weight = 0;
    for (int i = 0; i < copy->thing_count; i++) {
        gtl_thing *thing = &copy->things[i];
        if (is_gear(thing)) thing->weight = 0;
        copy->nodes[thing->node].weight += thing->weight;
    }
    return copy;
}

/* What a support gives upwards in a state of the weightless rig [N]. */
static double bare_reaction(gtl_lesson *lesson, const gtl_rig *bare, gtl_state *state, int node,
                            gtl_pull *pulls)
{
    gtl_outcome outcome = {.kind = GTL_HOLD, .rig = bare, .state = state};
    int count = gtl_pulls_on(lesson, &outcome, node, pulls), up = bare->dim - 1;
    double sum = bare->nodes[node].weight;
    for (int i = 0; i < count; i++) sum -= pulls[i].force * pulls[i].way[up];
    return sum;
}

/* What all supports give without the gear's weight, one a node; NULL where that rig has no such rest, with
 * the reason, or memory failed, when the document is failed. */
static double *bare_reactions(gtl_lesson *lesson, char reason[GTL_REASON_SIZE])
{
    const gtl_rig *rig = lesson->rig;
    const gtl_case hold = {.kind = GTL_HOLD};
    double *reactions = calloc((size_t)rig->node_count + 1, sizeof *reactions);
    gtl_pull *pulls = calloc(2 * (size_t)rig->part_count + 1, sizeof *pulls);
    gtl_rig *bare = without_weight(rig);
    gtl_state *state = bare ? gtl_state_new(bare) : NULL;
    gtl_status status = reactions && pulls && state ? gtl_solve(bare, &hold, state) : GTL_NO_MEMORY;
    bool found = status == GTL_OK && state->possible;
    for (int i = 0; found && i < rig->node_count; i++)
        reactions[i] = bare_reaction(lesson, bare, state, i, pulls);
    if (status == GTL_NO_MEMORY) lesson->document->failed = true;
    if (!found) {
        snprintf(reason, GTL_REASON_SIZE, "%s", state ? state->reason : "");
        free(reactions);
        reactions = NULL;
    }
    gtl_state_free(state);
    gtl_rig_free(bare);
    free(pulls);
    return reactions;
}

static void begin_table(gtl_lesson *lesson, const gtl_bodies *hold, const gtl_bodies *raise,
                        const double *bare)
{
    static const gtl_column name = {"support", false}, rest = {"at rest", true}, up = {"raising", true},
                            light = {"at rest, gear weightless", true};
    gtl_document_table(lesson->document, &name, 1);
    if (hold) gtl_document_column(lesson->document, &rest, false);
    if (raise) gtl_document_column(lesson->document, &up, false);
    if (bare) gtl_document_column(lesson->document, &light, false);
}

static void put_rows(gtl_lesson *lesson, const gtl_bodies *hold, const gtl_bodies *raise, const double *bare)
{
    const gtl_rig *rig = lesson->rig;
    int up = rig->dim - 1, told = 0;
    for (int i = 0; i < rig->node_count && told < GTL_MOST_ITEMS; i++) {
        if (!gtl_is_support(rig, i)) continue;
        told++;
        gtl_document_cell(lesson->document, "%s", rig->things[rig->nodes[i].root].name);
        if (hold)
            gtl_document_cell(lesson->document, "%s",
                              gtl_exact_force(lesson, gtl_reaction(hold, i, up)).text);
        if (raise)
            gtl_document_cell(lesson->document, "%s",
                              gtl_exact_force(lesson, gtl_reaction(raise, i, up)).text);
        if (bare) gtl_document_cell(lesson->document, "%s", gtl_exact_force(lesson, bare[i]).text);
    }
}

void gtl_supports_table(gtl_lesson *lesson, const gtl_bodies *hold, const gtl_bodies *raise)
{
    double gear = gear_weight(lesson->rig);
    bool weighs = gear > 0;
    char reason[GTL_REASON_SIZE] = "";
    double *bare = weighs && hold ? bare_reactions(lesson, reason) : NULL;
    gtl_lesson_step(lesson, "The supports side by side");
    gtl_document_paragraph(lesson->document, "What each support gives upwards:");
    begin_table(lesson, hold, raise, bare);
    put_rows(lesson, hold, raise, bare);
    if (!weighs)
        gtl_document_paragraph(
            lesson->document, "No weight is stated for blocks, joints or spars, so their own weight takes no "
                              "part in these figures.");
    else if (bare)
        gtl_document_paragraph(lesson->document,
                               "Blocks, joints and spars weigh %s together. In the last column they weigh "
                               "nothing, and the rig was worked once more: so much of what the supports hold "
                               "is the gear's own doing.",
                               gtl_exact_force(lesson, gear).text);
    else if (hold)
        gtl_document_paragraph(lesson->document,
                               "With blocks, joints and spars that weigh nothing there is no such rest, so "
                               "there is nothing to set beside: %s.",
                               reason);
    free(bare);
}
