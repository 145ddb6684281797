/* efficiency.c - raising with friction: estimated advantage, work in and work out, efficiency. */
#include "explain/raised.h"
#include "report/names.h"

#include <math.h>

/* As near to 1 as this nothing is lost [1]. */
#define NOTHING_LOST 1e-9

/* Whether all moves as at rest without friction. */
static bool moves_as_ideal(const gtl_lesson *lesson)
{
    return lesson->hold && gtl_same_travel(lesson, lesson->hold, lesson->raise);
}

static void tell_place(gtl_lesson *lesson)
{
    if (!lesson->hold || moves_as_ideal(lesson)) return;
    gtl_document_paragraph(lesson->document,
                           "With friction the bodies hang otherwise than at rest. So the rates are those of "
                           "this place, not those told above.");
}

/* Stops with friction over which no rope runs, or either way. */
static void tell_undecided(gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = 6};
    for (int r = 0; r < rig->run_count; r++)
        if (lesson->raise->state->undecided[r] && rig->things[rig->runs[r].thing].friction_stated)
            gtl_names_add(&names, rig->things[rig->runs[r].thing].name);
    gtl_names_end(&names);
    if (names.count == 0) return;
    gtl_text_add(&text, ": which way friction acts there is not decided. These figures have it equal on both "
                        "sides; it may be anything between.");
    gtl_document_put(lesson->document, GTL_PARAGRAPH, NULL, &text);
}

static void tell_advantage(gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    gtl_document *document = lesson->document;
    double load = gtl_lifted_weight(rig), effort = lesson->raise->state->effort;
    gtl_lesson_step(lesson, "The estimated advantage");
    gtl_document_paragraph(document, "It is the load's own weight over the effort that raises it, with the "
                                     "friction that is stated. It is an estimate: only a measurement tells "
                                     "what friction really takes.");
    gtl_document_equation(document, "E = %s", gtl_exact_force(lesson, effort).text);
    gtl_document_equation(document, "A(estimated) = %s / E", gtl_symbol_lifted(lesson).text);
    gtl_document_equation(document, "A(estimated) = %s / %s = %s", gtl_exact_force(lesson, load).text,
                          gtl_exact_force(lesson, effort).text,
                          gtl_exact_number(lesson->raise->estimated_advantage).text);
}

static void tell_work(gtl_lesson *lesson, const gtl_raised *raised)
{
    gtl_document *document = lesson->document;
    const gtl_state *state = lesson->raise->state;
    double metres = lesson->units.metres, in = state->effort * state->velocity_ratio;
    gtl_lesson_step(lesson, "Work in and work out with friction");
    gtl_document_paragraph(document, "For each %s that the load rises%s:", gtl_length_word(lesson),
                           gtl_rates_stay(lesson, lesson->raise) ? "" : ", at this place");
    gtl_raised_work(lesson, raised, !moves_as_ideal(lesson));
    gtl_work_in(lesson, lesson->raise);
    gtl_figure lost = gtl_exact_work(lesson, (in - raised->sum) * metres);
    gtl_document_equation(document, "U(friction) = U(in) - U(out)");
    gtl_document_equation(document, "U(friction) = %s %s %s = %s", gtl_exact_work(lesson, in * metres).text,
                          raised->sum < 0 ? "+" : "-",
                          gtl_exact_work(lesson, fabs(raised->sum) * metres).text, lost.text);
}

static void tell_ratio(gtl_lesson *lesson, const gtl_raised *raised)
{
    gtl_document *document = lesson->document;
    const gtl_state *state = lesson->raise->state;
    double metres = lesson->units.metres, efficiency = lesson->raise->efficiency;
    gtl_lesson_step(lesson, "The efficiency");
    gtl_document_paragraph(document, "It is the share of the hand's work that comes out again.");
    gtl_document_equation(document, "e(rig) = U(out) / U(in)");
    gtl_document_equation(document, "e(rig) = %s / %s = %s = %s",
                          gtl_exact_work(lesson, raised->sum * metres).text,
                          gtl_exact_work(lesson, state->effort * state->velocity_ratio * metres).text,
                          gtl_exact_number(efficiency).text, gtl_exact_percent(efficiency).text);
    if (efficiency < -NOTHING_LOST)
        gtl_document_pair(document, "Result",
                          "all of the hand's work goes into friction, and what sinks gives "
                          "more than what rises takes.");
    else if (efficiency < 1 - NOTHING_LOST)
        gtl_document_pair(document, "Result", "%s of the hand's work goes into friction.",
                          gtl_exact_percent(1 - efficiency).text);
    else
        gtl_document_pair(document, "Result", "none of the hand's work goes into friction.");
}

/* The same by the pulls: only where the rig hangs and moves alike in both cases. */
static void tell_by_pulls(gtl_lesson *lesson)
{
    if (!moves_as_ideal(lesson)) return;
    double ideal = lesson->hold->state->effort, effort = lesson->raise->state->effort;
    if (!(ideal > lesson->units.noise)) return;
    gtl_document_paragraph(lesson->document, "The hand's way is the same with and without friction. So the "
                                             "efficiency is also the effort without friction over the effort "
                                             "with it:");
    gtl_document_equation(lesson->document, "e(rig) = %s / %s = %s", gtl_exact_force(lesson, ideal).text,
                          gtl_exact_force(lesson, effort).text, gtl_exact_number(ideal / effort).text);
}

/* Where friction is not stated, and none that is takes any work, nothing can be told that is not the ideal
 * once more: and that must not read as checked. */
static bool has_nothing_to_tell(const gtl_lesson *lesson)
{
    double efficiency = lesson->raise->efficiency;
    return (lesson->sheet->why & GTL_WHY_FRICTION) && efficiency >= 1 - NOTHING_LOST;
}

static void tell_not_stated(gtl_lesson *lesson)
{
    if (!(lesson->sheet->why & GTL_WHY_FRICTION)) return;
    gtl_document_paragraph(lesson->document,
                           "Friction is not stated at every stop, and is left out where it is "
                           "not. So the real effort is greater, and the real efficiency lower.");
    if (!has_nothing_to_tell(lesson)) return;
    gtl_document_paragraph(lesson->document,
                           "No friction that is stated takes any work here: so there is no "
                           "estimated advantage and no efficiency to tell. The effort to raise "
                           "the load comes out without friction:");
    gtl_document_equation(lesson->document, "E = %s",
                          gtl_exact_force(lesson, lesson->raise->state->effort).text);
}

void gtl_lesson_efficiency(gtl_lesson *lesson)
{
    gtl_raised raised;
    if (!lesson->raise || !gtl_somebody_hauls(lesson)) return;
    gtl_document_heading(lesson->document, "Efficiency");
    tell_place(lesson);
    tell_not_stated(lesson);
    if (has_nothing_to_tell(lesson)) return;
    tell_undecided(lesson);
    if (isnan(lesson->raise->estimated_advantage)) {
        gtl_document_paragraph(lesson->document,
                               "It takes no effort to raise the load: the rest of the rig does "
                               "it. So there is no advantage and no efficiency to tell.");
        return;
    }
    if (isnan(lesson->raise->efficiency)) {
        gtl_document_equation(lesson->document, "E = %s",
                              gtl_exact_force(lesson, lesson->raise->state->effort).text);
        gtl_document_paragraph(lesson->document,
                               "With this pull the hand holds back while it gives out rope: the "
                               "load rises by itself, and the hand takes work in. So there is "
                               "no estimated advantage and no efficiency to tell.");
        return;
    }
    tell_advantage(lesson);
    if (!gtl_raised_begin(lesson, lesson->raise, &raised)) return;
    tell_work(lesson, &raised);
    tell_ratio(lesson, &raised);
    gtl_raised_end(&raised);
    tell_by_pulls(lesson);
}
