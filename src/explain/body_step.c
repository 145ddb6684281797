/* body_step.c - one body cut free: what acts on it, its balance, and what comes out. */
#include "explain/balance.h"

#include <math.h>
#include <stdlib.h>

/* "part 2 of fall, to head", "log, to tip". */
static void put_pull_name(gtl_lesson *lesson, const gtl_pull *pull)
{
    const gtl_rig *rig = lesson->rig;
    const gtl_line *line = &rig->lines[rig->parts[pull->part].line];
    const char *other = rig->things[pull->other].name;
    if (line->stop_count > 2)
        gtl_document_cell(lesson->document, "part %d of %s, to %s", pull->part - line->first_part + 1,
                          line->name, other);
    else
        gtl_document_cell(lesson->document, "%s, to %s", line->name, other);
}

/* The row's cells for a direction: "up", or its cosines. */
static void put_way(gtl_lesson *lesson, const double way[3])
{
    int dim = lesson->rig->dim;
    if (dim == 1) gtl_document_cell(lesson->document, way[0] > 0 ? "up" : "down");
    for (int k = 0; k < dim && dim > 1; k++)
        gtl_document_cell(lesson->document, "%s",
                          gtl_exact_number(fabs(way[k]) <= GTL_NOTHING ? 0 : way[k]).text);
}

static void begin_table(gtl_lesson *lesson)
{
    static const gtl_column names[] = {{"what acts", false}, {"called", false}};
    static const gtl_column one[] = {{"way", false}};
    static const gtl_column two[] = {{"across", true}, {"up", true}};
    static const gtl_column three[] = {{"across", true}, {"along", true}, {"up", true}};
    static const gtl_column *const ways[] = {one, two, three};
    int dim = lesson->rig->dim;
    gtl_document_table(lesson->document, names, 2);
    for (int k = 0; k < dim; k++) gtl_document_column(lesson->document, &ways[dim - 1][k], false);
}

static void put_weights(const gtl_bodies *bodies, int node)
{
    const double down[3][3] = {{-1, 0, 0}, {0, -1, 0}, {0, 0, -1}};
    gtl_lesson *lesson = bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    for (int i = 0; i < rig->thing_count; i++) {
        if (rig->things[i].node != node || !(rig->things[i].weight > 0)) continue;
        gtl_document_cell(lesson->document, "weight of %s", rig->things[i].name);
        gtl_document_cell(lesson->document, "%s", gtl_symbol_weight(lesson, i).text);
        put_way(lesson, down[rig->dim - 1]);
    }
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        if (!(line->weight > 0)) continue;
        for (int end = 0; end < 2; end++) {
            int stop = line->first_stop + (end == 0 ? 0 : line->stop_count - 1);
            if (rig->things[rig->stops[stop].thing].node != node) continue;
            gtl_document_cell(lesson->document, "half the weight of %s", line->name);
            gtl_document_cell(lesson->document, "%s", gtl_symbol_spar_half(lesson, i).text);
            put_way(lesson, down[rig->dim - 1]);
        }
    }
}

/* Every pull by its name, as far as there is room. */
static void put_table(const gtl_bodies *bodies, int node)
{
    gtl_lesson *lesson = bodies->lesson;
    int told = 0, left = 0;
    begin_table(lesson);
    for (int i = bodies->first[node]; i < bodies->first[node + 1]; i++) {
        const gtl_pull *pull = &bodies->pulls[i];
        if (bodies->idle[lesson->rig->parts[pull->part].piece]) continue;
        if (++told > GTL_MOST_ITEMS) {
            left++;
            continue;
        }
        put_pull_name(lesson, pull);
        gtl_document_cell(lesson->document, "%s", gtl_symbol_pull(lesson, bodies->outcome, pull->part).text);
        put_way(lesson, pull->way);
    }
    put_weights(bodies, node);
    if (left > 0)
        gtl_document_paragraph(lesson->document, "%d more parts act on it, which are not listed.", left);
}

static void say_why(const gtl_bodies *bodies, int node, gtl_body_kind kind, int unknown)
{
    const gtl_rig *rig = bodies->lesson->rig;
    gtl_document *document = bodies->lesson->document;
    bool load = rig->load >= 0 && rig->things[rig->load].node == node;
    const char *begin = load ? "The lifted load hangs here. " : "";
    static const char *const counts[] = {"no pull", "one pull", "two pulls", "three pulls"};
    if (kind == GTL_BODY_CHECK)
        gtl_document_paragraph(
            document, "%sAll pulls on this body are known by now. They have to balance: a check.", begin);
    else if (kind == GTL_BODY_ALONE)
        gtl_document_paragraph(document,
                               "%sOf all that acts on this body, only %s %s not known yet: its balance alone "
                               "gives %s.",
                               begin, counts[unknown], unknown == 1 ? "is" : "are",
                               unknown == 1 ? "it" : "them");
    else
        gtl_document_paragraph(document, "%sIts balance is one part of the whole.", begin);
}

/* Whether a pull acts only by a share along a direction. */
static bool has_slanting(const gtl_equation equations[3])
{
    for (int k = 0; k < 3; k++)
        for (int i = 0; i < equations[k].count; i++)
            if (fabs(fabs(equations[k].items[i].factor) - 1) > GTL_NEARLY) return true;
    return false;
}

static int count_equations(const gtl_equation equations[3])
{
    int count = 0;
    for (int k = 0; k < 3; k++) count += equations[k].count > 0;
    return count;
}

static bool has_push(const gtl_equation equations[3])
{
    for (int k = 0; k < 3; k++)
        for (int i = 0; i < equations[k].count; i++)
            if (equations[k].items[i].value < 0) return true;
    return false;
}

/* What balance means here. */
static void say_principle(const gtl_bodies *bodies, int node, const gtl_equation equations[3])
{
    const gtl_rig *rig = bodies->lesson->rig;
    gtl_document *document = bodies->lesson->document;
    gtl_text text = {0};
    gtl_text_add(&text, "%s, so ",
                 bodies->outcome->kind == GTL_HOLD ? "It is at rest" : "It moves slowly and steadily");
    gtl_text_add(&text,
                 count_equations(equations) > 1
                     ? "along each direction what pulls one way is as great as what pulls the other way."
                     : "what pulls it up is as great as what pulls it down.");
    if (rig->nodes[node].guided) gtl_text_add(&text, " What pulls it sideways its track takes.");
    if (has_slanting(equations))
        gtl_text_add(&text,
                     " A number before a pull is its cosine from the table: the share of the pull that "
                     "acts along the direction.");
    if (has_push(equations))
        gtl_text_add(&text, " A spar is told as if it pulled. Where its S is negative it pushes, and minus S "
                            "stands on the side to which it pushes.");
    gtl_document_put(document, GTL_PARAGRAPH, NULL, &text);
}

static void put_equations(const gtl_bodies *bodies, const gtl_equation equations[3], gtl_writing writing)
{
    for (int k = 0; k < 3; k++) gtl_put_equation(bodies, &equations[k], writing);
}

static bool too_long(const gtl_equation equations[3])
{
    for (int k = 0; k < 3; k++)
        if (equations[k].count > GTL_MOST_TERMS) return true;
    return false;
}

static void say_results(const gtl_bodies *bodies, const int *pieces, int count)
{
    gtl_lesson *lesson = bodies->lesson;
    for (int i = 0; i < count; i++) {
        double pull = gtl_base_pull(bodies, pieces[i]);
        gtl_document_pair(lesson->document, "Result", "%s = %s",
                          gtl_symbol_pull(lesson, bodies->outcome, bodies->base[pieces[i]]).text,
                          gtl_exact_force(lesson, pull).text);
        if (pull < 0) gtl_document_paragraph(lesson->document, "The minus says that it pushes.");
        gtl_tell_parts(bodies, pieces[i]);
    }
}

static void put_balance(gtl_bodies *bodies, int node, gtl_body_kind kind, const int *pieces, int count)
{
    gtl_equation equations[3] = {{0}, {0}, {0}};
    for (int k = 0; k < bodies->lesson->rig->dim; k++)
        if (gtl_is_free(bodies->lesson->rig, node, k)) gtl_equation_of(bodies, node, k, &equations[k]);
    say_principle(bodies, node, equations);
    if (too_long(equations))
        gtl_document_paragraph(bodies->lesson->document,
                               "It has too many pulls to write them all: like ones are collected.");
    put_equations(bodies, equations, GTL_SYMBOLS);
    if (kind == GTL_BODY_ALONE) gtl_body_solve(bodies, equations, pieces, count);
    if (kind != GTL_BODY_ALONE || count_equations(equations) > 1) {
        gtl_document_paragraph(bodies->lesson->document, "With all values put in, both sides agree:");
        put_equations(bodies, equations, GTL_VALUES);
    }
    if (kind == GTL_BODY_ALONE) say_results(bodies, pieces, count);
    for (int k = 0; k < 3; k++) gtl_equation_end(&equations[k]);
}

void gtl_body_step(gtl_bodies *bodies, int node, gtl_body_kind kind)
{
    gtl_lesson *lesson = bodies->lesson;
    int pieces[3], count = gtl_bodies_unknown(bodies, node, pieces);
    gtl_text name = {0};
    gtl_add_body_name(&name, lesson, node);
    char *body = gtl_text_take(&name);
    if (!body) {
        lesson->document->failed = true;
        return;
    }
    gtl_lesson_step(lesson, "The body %s, cut free", body);
    say_why(bodies, node, kind, kind == GTL_BODY_ALONE ? count : 0);
    gtl_lesson_body_figure(lesson, bodies->outcome, node);
    put_table(bodies, node);
    put_balance(bodies, node, kind, pieces, count);
    free(body);
}
