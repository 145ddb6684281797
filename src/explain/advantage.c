/* advantage.c - the ideal advantage by both roads, side by side. */
#include "explain/counting.h"
#include "explain/raised.h"
#include "report/names.h"

#include <math.h>
#include <stdlib.h>

/* How near the two roads have to come before it is said that they agree [1]. */
#define AGREES 1e-6

static double by_forces(const gtl_lesson *lesson, const gtl_raised *raised)
{
    return raised->sum / lesson->hold->state->effort;
}

static void tell_distances(gtl_lesson *lesson)
{
    double s = lesson->hold->state->velocity_ratio;
    gtl_document *document = lesson->document;
    gtl_lesson_step(lesson, "The ideal advantage by the distances");
    gtl_document_paragraph(document, "It is the rope that comes to the hand over the way that the load "
                                     "rises, as the rope keeps its length.");
    gtl_document_equation(document, "s = %s", gtl_in_h(s).text);
    gtl_document_equation(document, "A(distances) = s / h");
    gtl_document_equation(document, "A(distances) = %s / 1 h = %s", gtl_in_h(s).text,
                          gtl_exact_number(s).text);
    if (s < 0)
        gtl_document_paragraph(document, "Less than nothing: the hand gives out rope as the load rises. "
                                         "Hauling lowers the load; other weights or pulls raise it.");
}

static bool has_known_pull(const gtl_rig *rig)
{
    for (int p = 0; p < rig->piece_count; p++)
        if (rig->pieces[p].rule == GTL_PULLED) return true;
    return false;
}

static void tell_forces(gtl_lesson *lesson, const gtl_raised *raised)
{
    gtl_document *document = lesson->document;
    gtl_lesson_step(lesson, "The ideal advantage by the forces");
    gtl_document_paragraph(
        document,
        "Without friction no work is lost: the hand's, E times s, is the work on all that is raised. Call "
        "that Q times h. Each weight counts in Q as far as it rises for each h; what sinks counts against "
        "it.%s",
        has_known_pull(lesson->rig)
            ? " A known pull counts as far as its rope goes out; where rope comes in, against it."
            : "");
    gtl_raised_equations(lesson, raised);
    gtl_document_paragraph(document,
                           "The effort is that of the balance of forces, at rest without friction.");
    gtl_figure effort = gtl_exact_force(lesson, lesson->hold->state->effort);
    gtl_document_equation(document, "E = %s", effort.text);
    gtl_document_equation(document, "A(forces) = Q / E");
    gtl_document_equation(document, "A(forces) = %s / %s = %s", gtl_exact_force(lesson, raised->sum).text,
                          effort.text, gtl_exact_number(by_forces(lesson, raised)).text);
}

static void tell_side_by_side(gtl_lesson *lesson, const gtl_raised *raised)
{
    static const gtl_column columns[] = {{"Road", false}, {"From", false}, {"Ideal advantage", true}};
    gtl_document *document = lesson->document;
    double s = lesson->hold->state->velocity_ratio, q = by_forces(lesson, raised);
    gtl_lesson_step(lesson, "Side by side");
    gtl_document_table(document, columns, 3);
    gtl_document_cell(document, "distances");
    gtl_document_cell(document, "%s / 1 h", gtl_in_h(s).text);
    gtl_document_cell(document, "%s", gtl_exact_number(s).text);
    gtl_document_cell(document, "forces");
    gtl_document_cell(document, "%s / %s", gtl_exact_force(lesson, raised->sum).text,
                      gtl_exact_force(lesson, lesson->hold->state->effort).text);
    gtl_document_cell(document, "%s", gtl_exact_number(q).text);
    if (fabs(s - q) <= AGREES * fabs(s))
        gtl_document_paragraph(document, "Both roads lead to the same number: %s.",
                               s > 1 + AGREES ? "what is gained in pull is paid for in way"
                                              : "pull and way always make up for each other");
}

/* Names of what else counts in Q: weights or known pulls, for it or against it. Returns how many. */
static int add_others(gtl_text *text, const gtl_lesson *lesson, const gtl_raised *raised, bool pulls,
                      bool helps)
{
    gtl_names names = {.text = text, .most = 6};
    for (int i = 0; i < raised->count; i++) {
        const gtl_raised_item *item = &raised->items[i];
        bool is_load = !item->pull && item->thing >= 0 && gtl_is_lifted(lesson->rig, item->thing);
        if (is_load || item->pull != pulls || (item->way < 0) != helps) continue;
        bool again = i > 0 && item->thing < 0 && raised->items[i - 1].name == item->name;
        if (!again) gtl_names_add(&names, item->name);
    }
    gtl_names_end(&names);
    return names.count;
}

static void put_others(gtl_lesson *lesson, const gtl_raised *raised)
{
    static const char *const words[2][2] = {
        {"Raised as well", "Helping, since it sinks"},
        {"Pulling against the rise, with a known pull", "Helping, with a known pull"}};
    for (int kind = 0; kind < 4; kind++) {
        gtl_text text = {0};
        gtl_text_add(&text, "%s: ", words[kind / 2][kind % 2]);
        int count = add_others(&text, lesson, raised, kind / 2, kind % 2);
        gtl_text_add(&text, ".");
        if (count > 0)
            gtl_document_put(lesson->document, GTL_PARAGRAPH, NULL, &text);
        else
            free(text.bytes);
    }
}

static void tell_load_alone(gtl_lesson *lesson, const gtl_raised *raised)
{
    const gtl_rig *rig = lesson->rig;
    gtl_document *document = lesson->document;
    double load = gtl_lifted_weight(rig), effort = lesson->hold->state->effort;
    gtl_lesson_step(lesson, "What the hand gains: the load alone over the effort");
    gtl_document_equation(document, "A(load) = %s / E", gtl_symbol_lifted(lesson).text);
    gtl_document_equation(document, "A(load) = %s / %s = %s", gtl_exact_force(lesson, load).text,
                          gtl_exact_force(lesson, effort).text, gtl_exact_number(load / effort).text);
    if (fabs(load - raised->sum) <= AGREES * load && raised->count == 1) {
        gtl_document_paragraph(document, "The load is all that is raised, so this is the ideal advantage "
                                         "itself.");
        return;
    }
    if (raised->sum > load * (1 + AGREES))
        gtl_document_paragraph(
            document,
            "This is less than the ideal advantage: the load is not all that the hand works against.");
    else if (raised->sum < load * (1 - AGREES))
        gtl_document_paragraph(document, "This is not the ideal advantage: the hand does not raise the load "
                                         "all by itself.");
    put_others(lesson, raised);
}

static void tell_none(gtl_lesson *lesson)
{
    gtl_document_paragraph(lesson->document, "At rest it does not hold without friction: there is no effort, "
                                             "and so no ideal advantage by the forces.");
    gtl_document_paragraph(lesson->document, "The reason: %s.",
                           gtl_sheet_outcome(lesson->sheet, GTL_HOLD)->reason);
}

static void tell_balanced(gtl_lesson *lesson, const gtl_raised *raised)
{
    gtl_document_paragraph(lesson->document, "The rest of the rig balances the load: what rises and what "
                                             "sinks come to nothing together.");
    gtl_raised_equations(lesson, raised);
    gtl_document_paragraph(lesson->document, "At rest without friction the hand has nothing to pull. So "
                                             "there is no advantage to speak of.");
}

void gtl_lesson_advantage(gtl_lesson *lesson)
{
    gtl_raised raised;
    if (lesson->rig->hand < 0 || lesson->rig->driven < 0) return;
    gtl_document_heading(lesson->document, "Both roads");
    if (!lesson->hold) {
        tell_none(lesson);
        return;
    }
    if (!gtl_raised_begin(lesson, lesson->hold, &raised)) return;
    if (isnan(lesson->hold->estimated_advantage)) {
        tell_balanced(lesson, &raised);
    } else {
        tell_distances(lesson);
        tell_forces(lesson, &raised);
        tell_side_by_side(lesson, &raised);
        if (lesson->hold->state->velocity_ratio > 0) tell_load_alone(lesson, &raised);
        gtl_lesson_counting(lesson);
    }
    gtl_raised_end(&raised);
}
