/* bodies.c - the pulls on each body without friction, up to the effort. */
#include "explain/body_solve.h"

#include <math.h>

#define FIRST_BODIES 30
#define LAST_BODIES  10

/* From the first stop of a piece to its last: "from head over tail and head to crew". */
static void add_way(gtl_text *text, const gtl_rig *rig, const gtl_piece *piece)
{
    int first = rig->parts[piece->first_part].from;
    int last = rig->parts[piece->first_part + piece->part_count - 1].to;
    gtl_text_add(text, "from %s", rig->things[rig->stops[first].thing].name);
    for (int i = 0; i < piece->run_count && i < GTL_MOST_ITEMS; i++)
        gtl_text_add(text, "%s%s", i == 0 ? " over " : ", ",
                     rig->things[rig->runs[piece->first_run + i].thing].name);
    if (piece->run_count > GTL_MOST_ITEMS)
        gtl_text_add(text, " and %d stops more", piece->run_count - GTL_MOST_ITEMS);
    gtl_text_add(text, " to %s", rig->things[rig->stops[last].thing].name);
}

static void tell_piece(const gtl_bodies *bodies, int index)
{
    gtl_lesson *lesson = bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    const gtl_piece *piece = &rig->pieces[index];
    gtl_text text = {0};
    gtl_text_add(&text, "%s, ", rig->lines[piece->line].name);
    add_way(&text, rig, piece);
    gtl_text_add(&text, ": ");
    if (bodies->outcome->state->slack[index])
        gtl_text_add(&text, "slack here, so it pulls on nothing");
    else if (bodies->idle[index])
        gtl_text_add(&text, "it carries nothing here, and is left out below");
    else if (piece->rule == GTL_STRUT)
        gtl_text_add(&text, "a spar, which can pull or push: %s, negative where it pushes",
                     gtl_symbol_piece(lesson, index).text);
    else if (piece->run_count > 0)
        gtl_text_add(&text, "%s in each of its %d parts", gtl_symbol_piece(lesson, index).text,
                     piece->part_count);
    else
        gtl_text_add(&text, "%s", gtl_symbol_piece(lesson, index).text);
    gtl_document_put(lesson->document, GTL_BULLET, NULL, &text);
}

/* What hands pull that is given. */
static void tell_known_pulls(const gtl_bodies *bodies)
{
    gtl_lesson *lesson = bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    int told = 0;
    for (int i = 0; i < rig->piece_count && told < GTL_MOST_ITEMS; i++) {
        if (rig->pieces[i].rule != GTL_PULLED || bodies->idle[i]) continue;
        if (told++ == 0) gtl_document_paragraph(lesson->document, "The rig file says what these hands pull:");
        gtl_document_equation(lesson->document, "%s = %s", gtl_symbol_piece(lesson, i).text,
                              gtl_exact_force(lesson, gtl_base_pull(bodies, i)).text);
    }
}

static bool any_tied_between(const gtl_rig *rig)
{
    for (int i = 0; i < rig->line_count; i++)
        if (rig->lines[i].piece_count > 1) return true;
    return false;
}

static void lines_step(const gtl_bodies *bodies)
{
    gtl_lesson *lesson = bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    gtl_lesson_step(lesson, "The lines and their pulls");
    if (rig->run_count > 0)
        gtl_document_paragraph(
            lesson->document, "Without friction a rope pulls equally on both sides of a sheave or a bend. So "
                              "it has one pull, the same in all its parts, from where it is tied to where it "
                              "is tied next, or to the hand.");
    if (any_tied_between(rig))
        gtl_document_paragraph(
            lesson->document, "A line that is tied in the middle is told in pieces: beyond the knot the pull "
                              "is another one.");
    for (int i = 0; i < rig->piece_count && i < GTL_MOST_ITEMS; i++) tell_piece(bodies, i);
    if (rig->piece_count > GTL_MOST_ITEMS)
        gtl_document_paragraph(lesson->document, "There are %d pieces of line more, of the same kinds.",
                               rig->piece_count - GTL_MOST_ITEMS);
    tell_known_pulls(bodies);
    gtl_document_paragraph(lesson->document,
                           rig->dim == 1
                               ? "Only heights are given, so every part is taken as vertical."
                               : "All directions are those of the place where the bodies really hang.");
}

static bool is_told(int index, int count)
{
    return count <= FIRST_BODIES + LAST_BODIES || index < FIRST_BODIES || index >= count - LAST_BODIES;
}

/* A body that is passed over, but whose results the ones behind it need. */
static void pass_over(gtl_bodies *bodies, int node)
{
    int pieces[3];
    int count = gtl_bodies_unknown(bodies, node, pieces);
    for (int i = 0; i < count && i < 3; i++) bodies->known[pieces[i]] = true;
}

static void alone_steps(gtl_bodies *bodies)
{
    for (int i = 0; i < bodies->alone; i++) {
        if (is_told(i, bodies->alone))
            gtl_body_step(bodies, bodies->order[i], GTL_BODY_ALONE);
        else
            pass_over(bodies, bodies->order[i]);
        if (i == FIRST_BODIES && !is_told(i, bodies->alone))
            gtl_document_paragraph(bodies->lesson->document,
                                   "%d bodies more are worked in the same way; they are not told here. The "
                                   "report has all their pulls.",
                                   bodies->alone - FIRST_BODIES - LAST_BODIES);
    }
}

/* What has to be solved at once: first the answer, then body by body that it balances. */
static void together_steps(gtl_bodies *bodies)
{
    gtl_lesson *lesson = bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    if (bodies->together == 0) return;
    int told = 0;
    gtl_lesson_step(lesson, "What has to be solved together");
    gtl_document_paragraph(
        lesson->document,
        "Each body%s has more unknown pulls than its own balance can give. %d unknown pulls "
        "stand in %d equations, which have to be solved together. What they come to is "
        "checked body by body below.",
        bodies->alone > 0 ? " that is left" : "", bodies->pieces, bodies->equations);
    gtl_solve_chain(bodies);
    for (int i = 0; i < rig->piece_count; i++) {
        if (bodies->known[i]) continue;
        bodies->known[i] = true;
        if (told++ >= GTL_MOST_ITEMS) continue;
        gtl_document_equation(lesson->document, "%s = %s",
                              gtl_symbol_pull(lesson, bodies->outcome, bodies->base[i]).text,
                              gtl_exact_force(lesson, gtl_base_pull(bodies, i)).text);
        gtl_tell_parts(bodies, i);
    }
    if (told > GTL_MOST_ITEMS)
        gtl_document_paragraph(lesson->document, "%d more are in the report.", told - GTL_MOST_ITEMS);
    for (int i = 0; i < bodies->together; i++)
        if (is_told(i, bodies->together))
            gtl_body_step(bodies, bodies->order[bodies->alone + i], GTL_BODY_TOGETHER);
}

void gtl_body_steps(gtl_bodies *bodies)
{
    alone_steps(bodies);
    together_steps(bodies);
    for (int i = 0; i < bodies->checks; i++)
        if (is_told(i, bodies->checks))
            gtl_body_step(bodies, bodies->order[bodies->alone + bodies->together + i], GTL_BODY_CHECK);
}

/* Why there is nothing to tell about the rig at rest. */
static void say_impossible(gtl_lesson *lesson)
{
    const gtl_outcome *outcome = gtl_sheet_outcome(lesson->sheet, GTL_HOLD);
    gtl_document_paragraph(lesson->document, "The rig cannot be held at rest without friction: %s.",
                           outcome && outcome->reason[0] ? outcome->reason : "no reason is known");
    gtl_document_paragraph(lesson->document, "So there are no forces at rest to be worked out.");
}

void gtl_lesson_bodies(gtl_lesson *lesson)
{
    gtl_bodies bodies;
    gtl_document_heading(lesson->document, "Forces without friction");
    if (!lesson->hold) {
        say_impossible(lesson);
        return;
    }
    if (gtl_bodies_begin(&bodies, lesson, lesson->hold)) {
        lines_step(&bodies);
        gtl_body_steps(&bodies);
        gtl_effort_step(&bodies);
    }
    gtl_bodies_end(&bodies);
}
