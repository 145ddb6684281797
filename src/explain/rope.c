/* rope.c - the rope's length kept: how bodies move as the load rises by h, and how much rope comes to a hand.
 */
#include "explain/rope.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

/* Equal terms of a sum. */
typedef struct term_group {
    double value; /* [1] */
    int count;
} term_group;

gtl_figure gtl_symbol_travel(const gtl_lesson *lesson, int hand)
{
    gtl_figure symbol = {"s"};
    if (hand == lesson->rig->hand) return symbol;
    snprintf(symbol.text, sizeof symbol.text, "s(%s)", lesson->rig->things[hand].name);
    return symbol;
}

/* --- how the bodies move --- */

static bool is_any_slack(const gtl_lesson *lesson, const gtl_outcome *outcome)
{
    for (int p = 0; p < lesson->rig->piece_count; p++)
        if (outcome->state->slack[p]) return true;
    return false;
}

static void tell_place(gtl_lesson *lesson, const gtl_outcome *outcome)
{
    bool slack = is_any_slack(lesson, outcome);
    gtl_document *document = lesson->document;
    gtl_document_paragraph(document,
                           "The load, %s, rises by h. A rope does not stretch: what its parts lose in length "
                           "has to go somewhere, to the "
                           "hand or to other parts of the same rope.",
                           gtl_lifted_name(lesson->rig));
    if (gtl_rates_stay(lesson, outcome))
        gtl_document_paragraph(
            document,
            "All %sparts that change their length hang plumb and stay so. So h may be any height, "
            "as long as no body meets another%s.",
            slack ? "taut " : "", slack ? " and no slack line comes taut" : "");
    else
        gtl_document_paragraph(document,
                               "Some parts stand at an angle, and the angles change as the load rises. "
                               "So these are the figures for a small rise h, at this place.");
    if (!lesson->hold)
        gtl_document_paragraph(
            document,
            "Without friction the load does not stay at rest; this is the motion while it is raised.");
    else if (lesson->raise && !gtl_same_travel(lesson, lesson->hold, lesson->raise))
        gtl_document_paragraph(
            document,
            "This is the place at rest. While the load is raised, friction lets the bodies hang otherwise.");
}

static int moving_nodes(const gtl_lesson *lesson, const gtl_outcome *outcome)
{
    int count = 0;
    for (int n = 0; n < lesson->rig->node_count; n++) count += gtl_node_moves(lesson, outcome, n);
    return count;
}

static void tell_bodies(gtl_lesson *lesson, const gtl_outcome *outcome)
{
    int left = moving_nodes(lesson, outcome), told = 0;
    gtl_lesson_step(lesson, "How the bodies move");
    for (int n = 0; n < lesson->rig->node_count; n++) {
        if (!gtl_node_moves(lesson, outcome, n)) continue;
        if (told++ == GTL_LONGEST_LIST) break;
        gtl_text text = {0};
        gtl_add_body_name(&text, lesson, n);
        gtl_text_add(&text, ": ");
        gtl_add_motion(&text, lesson, outcome, n);
        gtl_document_put(lesson->document, GTL_BULLET, NULL, &text);
    }
    if (left > GTL_LONGEST_LIST)
        gtl_document_paragraph(lesson->document, "%d more bodies move.", left - GTL_LONGEST_LIST);
}

/* --- the sum --- */

/* Group equal terms. Returns how many groups there are; -1 where they are more than a list may have. */
static int group_terms(const gtl_lesson *lesson, const gtl_outcome *outcome, const gtl_piece *piece,
                       bool together, term_group *groups)
{
    int count = 0;
    for (int i = piece->first_part; i < piece->first_part + piece->part_count; i++) {
        double value = gtl_part_shortens(lesson, outcome, i);
        int g = together ? 0 : count;
        if (value == 0) continue;
        while (g < count && fabs(groups[g].value - value) > GTL_STILL) g++;
        if (g == GTL_LONGEST_LIST) return -1;
        if (g == count) groups[count++] = (term_group){value, 0};
        groups[g].count++;
    }
    return count;
}

static int changing_parts(const gtl_lesson *lesson, const gtl_outcome *outcome, const gtl_piece *piece)
{
    int count = 0;
    for (int i = piece->first_part; i < piece->first_part + piece->part_count; i++)
        count += gtl_part_shortens(lesson, outcome, i) != 0;
    return count;
}

static void tell_sum(gtl_lesson *lesson, const gtl_outcome *outcome, int index)
{
    const gtl_piece *piece = &lesson->rig->pieces[index];
    term_group groups[GTL_LONGEST_LIST];
    bool together = changing_parts(lesson, outcome, piece) > GTL_MOST_SINGLE;
    int count = group_terms(lesson, outcome, piece, together, groups);
    double total = gtl_piece_shortens(lesson, outcome, index);
    gtl_text equation = {0}, sum = {0};
    for (int g = 0; g < count; g++) {
        char term[80];
        gtl_figure value = gtl_in_h(fabs(groups[g].value));
        if (groups[g].count > 1)
            snprintf(term, sizeof term, "%d x %s", groups[g].count, value.text);
        else
            snprintf(term, sizeof term, "%s", value.text);
        gtl_sum_add(&sum, groups[g].value < 0, term);
    }
    if (count < 0)
        gtl_document_paragraph(lesson->document,
                               "The %d parts that change, added up:", changing_parts(lesson, outcome, piece));
    if (piece->hand >= 0)
        gtl_text_add(&equation, "%s = ", gtl_symbol_travel(lesson, piece->hand).text);
    else if (count < 0)
        gtl_text_add(&equation, "0 = ");
    char *terms = gtl_sum_take(&sum);
    if (!terms) lesson->document->failed = true;
    /* A single term is the sum. */
    bool single = count == 1 && groups[0].count == 1;
    if (count >= 0 && !single) gtl_text_add(&equation, "%s = ", terms ? terms : "");
    gtl_text_add(&equation, "%s", gtl_in_h(total).text);
    free(terms);
    gtl_document_put(lesson->document, GTL_EQUATION, NULL, &equation);
}

static void tell_result(gtl_lesson *lesson, const gtl_outcome *outcome, int index)
{
    const gtl_piece *piece = &lesson->rig->pieces[index];
    double total = gtl_piece_shortens(lesson, outcome, index);
    if (piece->hand < 0) return;
    const char *hand = lesson->rig->things[piece->hand].name;
    if (total > 0)
        gtl_document_pair(lesson->document, "Result", "%s of rope comes to %s as the load rises by h.",
                          gtl_in_h(total).text, hand);
    else if (total < 0)
        gtl_document_pair(lesson->document, "Result", "%s of rope leaves %s as the load rises by h.",
                          gtl_in_h(-total).text, hand);
    else
        gtl_document_pair(lesson->document, "Result", "No rope comes to %s or leaves it.", hand);
}

/* --- one piece --- */

static void tell_principle(gtl_lesson *lesson, const gtl_outcome *outcome, const gtl_piece *piece)
{
    const gtl_rig *rig = lesson->rig;
    gtl_document *document = lesson->document;
    if (piece->hand < 0) {
        gtl_document_paragraph(document, "It is tied at both ends and keeps its length: what some parts "
                                         "lose, others gain. All together they change by nothing.");
        return;
    }
    const gtl_thing *hand = &rig->things[piece->hand];
    gtl_document_paragraph(document,
                           "One end is tied, the other is in %s: what its parts lose in all comes "
                           "to %s. Call it %s.",
                           hand->name, hand->name, gtl_symbol_travel(lesson, piece->hand).text);
    if (gtl_node_moves(lesson, outcome, hand->node))
        gtl_document_paragraph(document,
                               "%s moves with %s: %s is the rope that passes through the hand, "
                               "not the hand's way over the ground.",
                               hand->name, rig->things[rig->nodes[hand->node].root].name,
                               gtl_symbol_travel(lesson, piece->hand).text);
}

static void tell_piece(gtl_lesson *lesson, const gtl_outcome *outcome, int index)
{
    const gtl_piece *piece = &lesson->rig->pieces[index];
    gtl_text name = {0};
    gtl_add_piece_name(&name, lesson, index);
    char *title = gtl_text_take(&name);
    if (!title) lesson->document->failed = true;
    gtl_lesson_step(lesson, "The length of %s is kept", title ? title : "");
    free(title);
    tell_principle(lesson, outcome, piece);
    gtl_rope_parts(lesson, outcome, piece);
    gtl_rope_oblique(lesson, outcome, piece);
    tell_sum(lesson, outcome, index);
    tell_result(lesson, outcome, index);
}

/* Pieces whose rope runs, but for the one that is worked out: that comes last. */
static bool runs(const gtl_lesson *lesson, const gtl_outcome *outcome, int index)
{
    const gtl_piece *piece = &lesson->rig->pieces[index];
    if (index == lesson->rig->driven || outcome->state->slack[index]) return false;
    return changing_parts(lesson, outcome, piece) > 0;
}

static void tell_slack(gtl_lesson *lesson, const gtl_outcome *outcome)
{
    for (int p = 0, told = 0; p < lesson->rig->piece_count && told < GTL_LONGEST_LIST; p++) {
        if (!outcome->state->slack[p]) continue;
        gtl_text text = {0};
        told++;
        gtl_text_add(&text, "Not taut: ");
        gtl_add_piece_name(&text, lesson, p);
        gtl_text_add(&text, ". As long as it stays slack, its length binds nothing.");
        gtl_document_put(lesson->document, GTL_PARAGRAPH, NULL, &text);
    }
}

void gtl_lesson_rope(gtl_lesson *lesson)
{
    const gtl_outcome *outcome = gtl_travel_case(lesson);
    if (lesson->rig->hand < 0 || lesson->rig->driven < 0) {
        gtl_document_heading(lesson->document, "Distances");
        gtl_document_paragraph(
            lesson->document,
            "Nobody hauls here whose pull is to be worked out: the rig hangs at rest. Without "
            "a motion there is no way of a hand, no advantage and no work to tell.");
        return;
    }
    if (!outcome) return;
    gtl_document_heading(lesson->document, "Distances");
    tell_place(lesson, outcome);
    tell_bodies(lesson, outcome);
    int told = 0, more = 0;
    for (int p = 0; p < lesson->rig->piece_count; p++) {
        if (!runs(lesson, outcome, p)) continue;
        if (told < GTL_LONGEST_LIST)
            tell_piece(lesson, outcome, p);
        else
            more++;
        told++;
    }
    if (more > 0)
        gtl_document_paragraph(lesson->document, "In the same way for %d more lines that run.", more);
    tell_slack(lesson, outcome);
    tell_piece(lesson, outcome, lesson->rig->driven);
}
