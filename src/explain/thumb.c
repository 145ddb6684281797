/* thumb.c - the handbooks' rule of thumb for one tackle, beside the estimate: each sheave adds 10 % of the
 * load. */
#include "explain/counting.h"
#include "report/geometry.h"

#include <math.h>
#include <stdlib.h>

#define HALF_TURN 3.141592653589793 /* [rad] */
/* A rope that turns less than this runs straight through [rad]. */
#define STRAIGHT 1e-6
/* More than any tackle that the handbooks work out by the rule, lead blocks included. */
#define MANY_SHEAVES 8

/* A sheave of the tackle itself has a part that bears on either side. */
static bool is_of_tackle(const gtl_lesson *lesson, const gtl_run *run)
{
    return gtl_part_bears(lesson, run->before) && gtl_part_bears(lesson, run->before + 1);
}

/* Blocks of the tackle and lead blocks; none that floats on a line of its own. */
static bool has_only_sheaves(const gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    const gtl_piece *piece = &rig->pieces[rig->driven];
    for (int r = piece->first_run; r < piece->first_run + piece->run_count; r++) {
        double wrap = gtl_wrap_angle(lesson->hold, r);
        const gtl_thing *thing = &rig->things[rig->runs[r].thing];
        bool floats =
            !rig->nodes[thing->node].fixed && !gtl_node_goes_along(lesson, lesson->hold, thing->node);
        if (thing->kind != GTL_BLOCK || floats || wrap <= STRAIGHT) return false;
        if (is_of_tackle(lesson, &rig->runs[r]) && fabs(wrap - HALF_TURN) > STRAIGHT) return false;
    }
    return piece->run_count > 0;
}

static bool has_one_rope(const gtl_rig *rig)
{
    int count = 0;
    for (int i = 0; i < rig->line_count; i++) count += rig->lines[i].kind == GTL_ROPE;
    return count == 1 && rig->lines[rig->pieces[rig->driven].line].piece_count == 1;
}

static bool is_one_tackle(const gtl_lesson *lesson, const gtl_counting *counting)
{
    return counting->why == GTL_COUNTS && !counting->hand_on_body &&
           !isnan(lesson->hold->estimated_advantage) && has_one_rope(lesson->rig) && has_only_sheaves(lesson);
}

static bool is_raised_load(const gtl_lesson *lesson, int thing)
{
    const gtl_thing *at = &lesson->rig->things[thing];
    return at->kind == GTL_LOAD && at->weight > 0 && gtl_node_goes_along(lesson, lesson->hold, at->node);
}

/* The loads that hang on the tackle, and what they weigh together. */
static double weigh_loads(const gtl_lesson *lesson, gtl_text *symbols, int *count)
{
    double weight = 0;
    *count = 0;
    for (int i = 0; i < lesson->rig->thing_count; i++) {
        if (!is_raised_load(lesson, i)) continue;
        weight += lesson->rig->things[i].weight;
        if (++*count <= GTL_LONGEST_LIST) gtl_sum_add(symbols, false, gtl_symbol_weight(lesson, i).text);
    }
    return weight;
}

static void put_rule(gtl_lesson *lesson, const gtl_counting *counting)
{
    gtl_document *document = lesson->document;
    int sheaves = lesson->rig->pieces[lesson->rig->driven].run_count, loads;
    gtl_text sum = {0};
    double weight = weigh_loads(lesson, &sum, &loads);
    double effort = weight * (1 + sheaves / 10.0) / counting->count;
    char *symbols = gtl_sum_take(&sum);
    if (!symbols) document->failed = true;
    if (loads <= GTL_LONGEST_LIST)
        gtl_document_equation(document, "E(rule) = %s%s%s x (1 + %d / 10) / %d", loads > 1 ? "(" : "",
                              symbols ? symbols : "", loads > 1 ? ")" : "", sheaves, counting->count);
    gtl_document_equation(document, "E(rule) = %s x (1 + %d / 10) / %d = %s",
                          gtl_exact_force(lesson, weight).text, sheaves, counting->count,
                          gtl_exact_force(lesson, effort).text);
    free(symbols);
}

/* What the sheaves' efficiencies are in the estimate. */
static void add_efficiencies(const gtl_lesson *lesson, gtl_text *text)
{
    const gtl_rig *rig = lesson->rig;
    const gtl_piece *piece = &rig->pieces[rig->driven];
    double least = INFINITY, most = 0;
    int stated = 0;
    for (int r = piece->first_run; r < piece->first_run + piece->run_count; r++) {
        const gtl_thing *block = &rig->things[rig->runs[r].thing];
        if (!block->friction_stated) continue;
        stated++;
        least = fmin(least, block->efficiency);
        most = fmax(most, block->efficiency);
    }
    if (stated == 0)
        gtl_text_add(text, " Here none is stated, so there is no friction in it.");
    else if (least == most)
        gtl_text_add(text, " Here that is %s of a sheave, for a half turn.", gtl_exact_percent(least).text);
    else
        gtl_text_add(text, " Here they are from %s to %s, for a half turn.", gtl_exact_percent(least).text,
                     gtl_exact_percent(most).text);
    if (stated > 0 && stated < piece->run_count)
        gtl_text_add(text, " Where none is stated, there is no friction in it.");
}

/* Whether more rises than the loads of the rule. */
static bool raises_gear(const gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].weight > 0 && !is_raised_load(lesson, i) &&
            gtl_node_goes_along(lesson, lesson->hold, rig->things[i].node))
            return true;
    return false;
}

static void put_difference(gtl_lesson *lesson)
{
    gtl_document *document = lesson->document;
    gtl_text text = {0};
    if (!lesson->raise) {
        gtl_document_paragraph(document, "Raising is not told here, so no estimate stands beside it.");
        return;
    }
    gtl_document_paragraph(document, "The estimate of this solution, raising:");
    gtl_document_equation(document, "E = %s", gtl_exact_force(lesson, lesson->raise->state->effort).text);
    gtl_document_paragraph(document,
                           "These are two models. The rule adds the same share of the load for each "
                           "sheave, whatever sheave it is and however far the rope turns on it.");
    gtl_text_add(&text,
                 "The estimate multiplies: from stop to stop the pull grows by what the stated efficiency "
                 "asks for.");
    add_efficiencies(lesson, &text);
    if (raises_gear(lesson)) gtl_text_add(&text, " It raises the stated weight of the gear as well.");
    gtl_document_put(document, GTL_PARAGRAPH, NULL, &text);
    gtl_document_paragraph(document, "So the two need not agree, and are never mixed in one problem.");
}

void gtl_lesson_thumb(gtl_lesson *lesson)
{
    gtl_counting counting = gtl_count_parts(lesson);
    if (!gtl_somebody_hauls(lesson) || !lesson->hold || !is_one_tackle(lesson, &counting)) return;
    int sheaves = lesson->rig->pieces[lesson->rig->driven].run_count;
    gtl_document_heading(lesson->document, "The handbook's rule of thumb");
    gtl_lesson_step(lesson, "Each sheave adds 10 %% of the load");
    gtl_document_paragraph(lesson->document,
                           "For a single tackle a common rule of handbooks (NAVEDTRA 14251, Steelworker 2, "
                           "chapter 6) takes the load, "
                           "adds a tenth of it for each sheave that the rope runs over, lead blocks too, and "
                           "divides by the ideal "
                           "advantage. Here the rope runs over %d sheave%s, and the ideal advantage is %d. "
                           "The rule takes the load "
                           "alone: what blocks and other gear weigh is not in it.",
                           sheaves, sheaves == 1 ? "" : "s", counting.count);
    put_rule(lesson, &counting);
    if (sheaves > MANY_SHEAVES)
        gtl_document_paragraph(
            lesson->document,
            "With so many sheaves the rule is pushed too far: it is one for the common tackles, "
            "which have few. It adds as much for the last sheave as for the first.");
    put_difference(lesson);
}
