/* friction.c - friction put in stop by stop, up to the effort of raising. */
#include "explain/friction.h"
#include "report/names.h"

#include <math.h>
#include <stdlib.h>

/* Names of the things at whose stops something holds, each once. */
typedef bool gtl_at_stop(const gtl_bodies *bodies, const gtl_ratios *ratios, int run);

/* Say a sentence about the stops that a test picks; nothing where there are none. */
static void say_of(const gtl_bodies *bodies, const gtl_ratios *ratios, gtl_at_stop *picks, const char *before,
                   const char *after)
{
    const gtl_rig *rig = bodies->lesson->rig;
    gtl_text text = {0};
    gtl_text_add(&text, "%s", before);
    gtl_names names = {.text = &text, .most = GTL_MOST_ITEMS};
    for (int i = 0; i < rig->thing_count; i++) {
        bool any = false;
        for (int run = 0; run < rig->run_count && !any; run++)
            any = rig->runs[run].thing == i && picks(bodies, ratios, run);
        if (any) gtl_names_add(&names, rig->things[i].name);
    }
    gtl_names_end(&names);
    gtl_text_add(&text, "%s", after);
    if (names.count > 0)
        gtl_document_put(bodies->lesson->document, GTL_PARAGRAPH, NULL, &text);
    else
        free(text.bytes);
}

/* Rope that does not run, or runs nobody can say which way, over a stop that rubs. */
static bool is_undecided(const gtl_bodies *bodies, const gtl_ratios *ratios, int run)
{
    (void)ratios;
    const gtl_rig *rig = bodies->lesson->rig;
    return bodies->outcome->state->undecided[run] && gtl_rubs(&rig->things[rig->runs[run].thing]);
}

static bool is_not_stated(const gtl_bodies *bodies, const gtl_ratios *ratios, int run)
{
    (void)ratios;
    const gtl_rig *rig = bodies->lesson->rig;
    return !rig->things[rig->runs[run].thing].friction_stated;
}

static bool is_stated_none(const gtl_bodies *bodies, const gtl_ratios *ratios, int run)
{
    const gtl_thing *thing = &bodies->lesson->rig->things[bodies->lesson->rig->runs[run].thing];
    return !is_not_stated(bodies, ratios, run) && !gtl_rubs(thing);
}

/* A stop that rubs, with rope that runs dead straight over it. */
static bool is_straight(const gtl_bodies *bodies, const gtl_ratios *ratios, int run)
{
    const gtl_rig *rig = bodies->lesson->rig;
    return ratios->of_run[run] < 0 && bodies->outcome->state->sense[run] != 0 &&
           gtl_rubs(&rig->things[rig->runs[run].thing]) && !bodies->idle[rig->runs[run].piece];
}

static void say_exceptions(const gtl_bodies *bodies, const gtl_ratios *ratios)
{
    say_of(bodies, ratios, is_undecided, "At ",
           ": no rope runs there while the load rises, or it cannot be said which way. Friction may hold any "
           "difference there up to its own. Equal pulls are put in, which is one of many answers.");
    say_of(bodies, ratios, is_not_stated, "No friction is stated at ",
           ". Nothing is put in there; friction that is there in truth is not in these figures.");
    say_of(bodies, ratios, is_stated_none, "Stated to be without friction: ", ".");
    say_of(bodies, ratios, is_straight, "Over ",
           " the rope runs so straight that it presses on nothing, and nothing is lost.");
}

static void tell_run(const gtl_bodies *bodies, const gtl_ratios *ratios, int run)
{
    gtl_lesson *lesson = bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    const gtl_run *at = &rig->runs[run];
    const gtl_line *line = &rig->lines[rig->parts[at->before].line];
    bool onward = bodies->outcome->state->sense[run] > 0;
    int from = onward ? at->before : at->before + 1, to = onward ? at->before + 1 : at->before;
    gtl_document_bullet(lesson->document, "over %s, %s runs from part %d to part %d: %s = k%d x %s",
                        rig->things[at->thing].name, line->name, from - line->first_part + 1,
                        to - line->first_part + 1, gtl_symbol_part(lesson, to).text, ratios->of_run[run] + 1,
                        gtl_symbol_part(lesson, from).text);
}

static void which_way_step(const gtl_bodies *bodies, const gtl_ratios *ratios)
{
    gtl_lesson *lesson = bodies->lesson;
    int told = 0;
    gtl_lesson_step(lesson, "Which way each rope runs");
    if (ratios->count > 0)
        gtl_document_paragraph(lesson->document,
                               "The load rises, and rope runs over the stops. Friction holds back what runs: "
                               "the part towards which the rope runs pulls more than the part from which it "
                               "comes, k times as much. So each part has a pull of its own now.");
    for (int run = 0; run < lesson->rig->run_count; run++)
        if (ratios->of_run[run] >= 0 && ++told <= GTL_MOST_ITEMS) tell_run(bodies, ratios, run);
    if (told > GTL_MOST_ITEMS)
        gtl_document_paragraph(lesson->document, "%d stops more go the same way.", told - GTL_MOST_ITEMS);
    say_exceptions(bodies, ratios);
}

/* "T3 = k1 x T2 = 1.132 x T1": a part from the one before it, counted from the base. */
static void tell_ratio(const gtl_bodies *bodies, const gtl_ratios *ratios, int part, int before, int run)
{
    gtl_lesson *lesson = bodies->lesson;
    const double *tension = bodies->outcome->state->tension;
    gtl_figure from = gtl_symbol_part(lesson, before), to = gtl_symbol_part(lesson, part);
    gtl_figure base = gtl_symbol_part(lesson, bodies->base[lesson->rig->parts[part].piece]);
    double multiple = gtl_multiple(bodies, part);
    gtl_text text = {0};
    int ratio = ratios->of_run[run];
    if (ratio < 0)
        gtl_text_add(&text, "%s = %s", to.text, from.text);
    else if (tension[part] > tension[before])
        gtl_text_add(&text, "%s = k%d x %s", to.text, ratio + 1, from.text);
    else
        gtl_text_add(&text, "%s = %s / k%d", to.text, from.text, ratio + 1);
    if (fabs(multiple - 1) > GTL_NEARLY)
        gtl_text_add(&text, " = %s x %s", gtl_exact_number(multiple).text, base.text);
    gtl_document_put(lesson->document, GTL_EQUATION, NULL, &text);
}

static void piece_ratios(const gtl_bodies *bodies, const gtl_ratios *ratios, int index)
{
    const gtl_piece *piece = &bodies->lesson->rig->pieces[index];
    int base = bodies->base[index] - piece->first_part;
    int told = 0;
    for (int i = base + 1; i < piece->part_count && told++ < GTL_MOST_ITEMS; i++)
        tell_ratio(bodies, ratios, piece->first_part + i, piece->first_part + i - 1,
                   piece->first_run + i - 1);
    for (int i = base - 1; i >= 0 && told++ < GTL_MOST_ITEMS; i--)
        tell_ratio(bodies, ratios, piece->first_part + i, piece->first_part + i + 1, piece->first_run + i);
    if (piece->part_count - 1 <= GTL_MOST_ITEMS) return;
    int last = base == 0 ? piece->first_part + piece->part_count - 1 : piece->first_part;
    gtl_document_paragraph(bodies->lesson->document, "So it goes on to the last part:");
    gtl_document_equation(bodies->lesson->document, "%s = %s x %s",
                          gtl_symbol_part(bodies->lesson, last).text,
                          gtl_exact_number(gtl_multiple(bodies, last)).text,
                          gtl_symbol_part(bodies->lesson, bodies->base[index]).text);
}

static void parts_step(const gtl_bodies *bodies, const gtl_ratios *ratios)
{
    gtl_lesson *lesson = bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    gtl_lesson_step(lesson, "Each part from the one before it");
    gtl_document_paragraph(
        lesson->document,
        "Stop by stop the ratios multiply. So all parts of a piece of line are multiples of "
        "one of them.");
    for (int i = 0; i < rig->piece_count; i++) {
        if (bodies->idle[i]) continue;
        if (rig->pieces[i].part_count > 1) piece_ratios(bodies, ratios, i);
        if (rig->pieces[i].rule != GTL_PULLED) continue;
        gtl_document_paragraph(lesson->document,
                               "The rig file says what %s pulls:", rig->things[rig->pieces[i].hand].name);
        gtl_document_equation(lesson->document, "%s = %s", gtl_symbol_part(lesson, bodies->base[i]).text,
                              gtl_exact_force(lesson, gtl_base_pull(bodies, i)).text);
        gtl_tell_parts(bodies, i);
    }
}

static void say_idle(const gtl_bodies *bodies)
{
    const gtl_rig *rig = bodies->lesson->rig;
    int told = 0;
    for (int i = 0; i < rig->piece_count && told < GTL_MOST_ITEMS; i++) {
        if (!bodies->idle[i]) continue;
        told++;
        gtl_document_paragraph(bodies->lesson->document, "%s carries nothing while the load rises%s.",
                               rig->lines[rig->pieces[i].line].name,
                               bodies->outcome->state->slack[i] ? ": it is slack" : "");
    }
}

/* All pulls of the case, side by side. */
static void pulls_table(const gtl_bodies *bodies)
{
    static const gtl_column columns[] = {{"part", false}, {"called", false}, {"pull", true}};
    gtl_lesson *lesson = bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    gtl_document_paragraph(lesson->document, "All pulls while the load rises:");
    gtl_document_table(lesson->document, columns, 3);
    for (int i = 0; i < rig->part_count && i < GTL_MOST_ITEMS; i++) {
        gtl_document_cell(lesson->document, "%s, from %s to %s", rig->lines[rig->parts[i].line].name,
                          rig->things[rig->stops[rig->parts[i].from].thing].name,
                          rig->things[rig->stops[rig->parts[i].to].thing].name);
        gtl_document_cell(lesson->document, "%s", gtl_symbol_part(lesson, i).text);
        gtl_document_cell(lesson->document, "%s",
                          gtl_exact_force(lesson, bodies->outcome->state->tension[i]).text);
    }
    if (rig->part_count > GTL_MOST_ITEMS)
        gtl_document_paragraph(lesson->document, "%d parts more are in the report.",
                               rig->part_count - GTL_MOST_ITEMS);
}

static void tell_raise(gtl_bodies *bodies, const gtl_ratios *ratios)
{
    which_way_step(bodies, ratios);
    say_idle(bodies);
    for (int i = 0; i < ratios->count && i < GTL_MOST_ITEMS; i++) gtl_ratio_step(bodies, ratios, i);
    if (ratios->count > GTL_MOST_ITEMS)
        gtl_document_paragraph(bodies->lesson->document, "%d ratios more are found in the same way.",
                               ratios->count - GTL_MOST_ITEMS);
    parts_step(bodies, ratios);
    gtl_body_steps(bodies);
    gtl_effort_step(bodies);
    pulls_table(bodies);
}

static bool any_rubs(const gtl_rig *rig)
{
    for (int i = 0; i < rig->run_count; i++)
        if (gtl_rubs(&rig->things[rig->runs[i].thing])) return true;
    return false;
}

static bool all_stated(const gtl_rig *rig)
{
    for (int i = 0; i < rig->run_count; i++)
        if (!rig->things[rig->runs[i].thing].friction_stated) return false;
    return true;
}

/* Where raising is not told: why; NULL where it is. */
static const char *why_not(const gtl_lesson *lesson, const gtl_outcome *raise)
{
    const gtl_rig *rig = lesson->rig;
    if (rig->run_count == 0)
        return "No rope runs over anything here, so nothing rubs: there is no friction to put in.";
    if (rig->driven < 0)
        return "Nobody hauls here, so no rope runs. Friction at the stops may hold any difference of the "
               "pulls "
               "up to its own; which, nobody can say. The pulls above are those without it.";
    if (!raise) return "The rig file does not ask for raising, so friction is not put in here.";
    if (raise->possible && raise->rig->hand != rig->hand)
        return "To raise the load the other hand has to pull: what friction takes then is in the report.";
    if (raise->possible && !any_rubs(rig))
        return all_stated(rig)
                   ? "All stops are stated to be without friction: raising takes the same pulls as "
                     "holding."
                   : "No stop that rope runs over is stated to have friction, and of some nothing is stated. "
                     "So none "
                     "can be put in: the pulls above leave it out, and real stops rub.";
    return NULL;
}

bool gtl_tells_friction(const gtl_lesson *lesson)
{
    return lesson->raise && !why_not(lesson, lesson->raise);
}

void gtl_lesson_friction(gtl_lesson *lesson)
{
    const gtl_outcome *raise = gtl_sheet_outcome(lesson->sheet, GTL_RAISE);
    const char *reason = why_not(lesson, raise);
    gtl_document_heading(lesson->document, "Friction");
    if (reason) {
        gtl_document_paragraph(lesson->document, "%s", reason);
        return;
    }
    if (!raise->possible) {
        gtl_document_paragraph(lesson->document, "The load cannot be raised so: %s.", raise->reason);
        return;
    }
    gtl_bodies bodies;
    gtl_ratios ratios = {0};
    if (gtl_bodies_begin(&bodies, lesson, raise) && gtl_ratios_begin(&ratios, &bodies))
        tell_raise(&bodies, &ratios);
    gtl_ratios_end(&ratios);
    gtl_bodies_end(&bodies);
}
