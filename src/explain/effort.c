/* effort.c - what the hand pulls in the end. */
#include "explain/balance.h"

#include <math.h>

void gtl_effort_step(const gtl_bodies *bodies)
{
    gtl_lesson *lesson = bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    if (rig->driven < 0) return;
    const gtl_piece *piece = &rig->pieces[rig->driven];
    int part = piece->first_part + (piece->hand_first ? 0 : piece->part_count - 1);
    const char *hand = rig->things[rig->hand].name, *line = rig->lines[piece->line].name;
    double effort = bodies->outcome->state->effort;
    gtl_figure value = gtl_exact_force(lesson, effort);
    gtl_lesson_step(lesson, "The effort");
    if (fabs(effort) <= lesson->units.noise) {
        gtl_document_paragraph(lesson->document,
                               "%s does not have to pull: the rest of the rig is in balance without it.",
                               hand);
        gtl_document_equation(lesson->document, "E = 0");
        return;
    }
    gtl_document_paragraph(
        lesson->document,
        "%s hauls on the end of %s. A rope pulls at its end with the pull of its last part, "
        "so that is the effort E:",
        hand, line);
    gtl_document_equation(lesson->document, "E = %s = %s",
                          gtl_symbol_pull(lesson, bodies->outcome, part).text, value.text);
    gtl_document_pair(lesson->document, "Result", "E = %s", value.text);
}
