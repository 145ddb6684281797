/* work.c - work in and work out without friction, for one metre or foot of rise. */
#include "explain/raised.h"

void gtl_lesson_work(gtl_lesson *lesson)
{
    gtl_raised raised;
    gtl_document *document = lesson->document;
    if (!gtl_somebody_hauls(lesson) || !lesson->hold) return;
    if (!gtl_raised_begin(lesson, lesson->hold, &raised)) return;
    const char *unit = gtl_length_word(lesson);
    gtl_document_heading(document, "Work");
    gtl_lesson_step(lesson, "Work out: on what is raised");
    if (gtl_rates_stay(lesson, lesson->hold))
        gtl_document_paragraph(
            document,
            "Work is force times the way along it. The load rises by one %s, without friction:", unit);
    else
        gtl_document_paragraph(
            document,
            "Work is force times the way along it. For each %s that the load rises, reckoned with the rates "
            "at this place, without friction:",
            unit);
    gtl_raised_work(lesson, &raised, true);
    gtl_raised_end(&raised);
    gtl_lesson_step(lesson, "Work in: by the hand");
    bool comes = lesson->hold->state->velocity_ratio > 0;
    gtl_document_paragraph(document,
                           comes ? "The effort works as far as rope comes to the hand."
                                 : "Rope leaves the hand, against its pull. So the way counts as less "
                                   "than nothing, and the work too: the hand takes it in.");
    gtl_document_equation(document, "E = %s", gtl_exact_force(lesson, lesson->hold->state->effort).text);
    gtl_work_in(lesson, lesson->hold);
    gtl_document_equation(document, "U(in) = U(out)");
    gtl_document_paragraph(document,
                           "Both are the same: without friction no work is lost, and none is gained.");
}
