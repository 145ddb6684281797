/* support.c - the balance of each support. */
#include "explain/support.h"
#include "explain/friction.h"
#include "report/geometry.h"

#include <math.h>
#include <stdlib.h>

bool gtl_is_support(const gtl_rig *rig, int node)
{
    return rig->nodes[node].fixed && rig->things[rig->nodes[node].root].kind == GTL_ANCHOR;
}

double gtl_reaction(const gtl_bodies *bodies, int node, int axis)
{
    const gtl_rig *rig = bodies->lesson->rig;
    double sum = axis == rig->dim - 1 ? rig->nodes[node].weight : 0;
    for (int i = bodies->first[node]; i < bodies->first[node + 1]; i++)
        sum -= bodies->pulls[i].force * bodies->pulls[i].way[axis];
    return sum;
}

/* "4 x T + W(head)": the other sign of what acts on the node. */
static char *right_side(const gtl_bodies *bodies, const gtl_equation *equation, gtl_writing writing)
{
    gtl_text sum = {0};
    for (int i = 0; i < equation->count; i++) gtl_put_item(&sum, bodies, &equation->items[i], true, writing);
    return gtl_sum_take(&sum);
}

static void put_reaction(const gtl_bodies *bodies, const gtl_equation *equation, int node, int axis)
{
    gtl_lesson *lesson = bodies->lesson;
    gtl_figure symbol = gtl_symbol_reaction(lesson, lesson->rig->nodes[node].root, axis);
    gtl_figure value = gtl_exact_force(lesson, gtl_reaction(bodies, node, axis));
    if (equation->count > GTL_MOST_TERMS) {
        gtl_document_paragraph(
            lesson->document,
            "The sum of %d pulls and weights, each by its share along the direction:", equation->count);
        gtl_document_equation(lesson->document, "%s = %s", symbol.text, value.text);
        return;
    }
    char *symbols = right_side(bodies, equation, GTL_SYMBOLS);
    char *values = right_side(bodies, equation, GTL_VALUES);
    const gtl_item *item = equation->items;
    bool plain = equation->count == 1 && item->count == 1 && fabs(item->factor + 1) <= GTL_NEARLY;
    if (symbols && values) {
        gtl_document_equation(lesson->document, "%s = %s", symbol.text, symbols);
        if (plain)
            gtl_document_equation(lesson->document, "%s = %s", symbol.text, value.text);
        else
            gtl_document_equation(lesson->document, "%s = %s = %s", symbol.text, values, value.text);
    } else {
        lesson->document->failed = true;
    }
    free(symbols);
    free(values);
}

/* All axes along which a node is held. Returns how many had something to hold. */
static int put_reactions(const gtl_bodies *bodies, int node)
{
    int count = 0;
    for (int k = 0; k < bodies->lesson->rig->dim; k++) {
        gtl_equation equation;
        if (gtl_is_free(bodies->lesson->rig, node, k)) continue;
        gtl_equation_of(bodies, node, k, &equation);
        if (equation.count > 0) put_reaction(bodies, &equation, node, k);
        count += equation.count > 0;
        gtl_equation_end(&equation);
    }
    return count;
}

/* Size and sign of what a support gives, in words. */
static void say_reaction(const gtl_bodies *bodies, int node)
{
    gtl_lesson *lesson = bodies->lesson;
    int dim = lesson->rig->dim, axes = 0;
    double force[3] = {0, 0, 0};
    for (int k = 0; k < 3 && k < dim; k++) {
        if (!gtl_is_free(lesson->rig, node, k)) force[k] = gtl_reaction(bodies, node, k);
        axes += fabs(force[k]) > lesson->units.noise;
    }
    double size = gtl_vector_size(force, dim);
    if (axes > 1) gtl_document_pair(lesson->document, "Altogether", "%s", gtl_exact_force(lesson, size).text);
    if (force[dim - 1] < -lesson->units.noise)
        gtl_document_paragraph(
            lesson->document,
            "The minus of the height says that the rig pulls it up: it holds the rig down.");
}

static void support_step(const gtl_bodies *bodies, int node)
{
    gtl_lesson *lesson = bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    gtl_lesson_step(lesson, "What %s%s holds %s", rig->nodes[node].fixed ? "" : "the track of ",
                    rig->things[rig->nodes[node].root].name,
                    bodies->outcome->kind == GTL_HOLD ? "at rest" : "while the load rises");
    gtl_lesson_body_figure(lesson, bodies->outcome, node);
    gtl_document_paragraph(lesson->document, "%s it balances what acts on it:",
                           bodies->outcome->kind == GTL_HOLD ? "At rest, without friction,"
                                                             : "While the load rises, with friction,");
    if (put_reactions(bodies, node) > 0)
        say_reaction(bodies, node);
    else
        gtl_document_paragraph(lesson->document, "Nothing acts on it: it holds nothing.");
}

static void say_principle(gtl_lesson *lesson)
{
    int dim = lesson->rig->dim;
    gtl_document_paragraph(
        lesson->document,
        "A support does not move either: what it gives balances all that acts on it. It feels every part of "
        "line that ends at it or runs over what sits on it, and the weight of what sits on it. R is the "
        "force "
        "that the support gives the rig; the rig acts on the support just as much the other way. Upwards "
        "counts as plus%s.",
        dim == 1 ? "" : ", and so do the directions in which the numbers of the places grow");
}

static void support_steps(const gtl_bodies *bodies)
{
    const gtl_rig *rig = bodies->lesson->rig;
    int told = 0, left = 0;
    for (int i = 0; i < rig->node_count; i++) {
        bool track = !rig->nodes[i].fixed && rig->nodes[i].guided;
        if (!gtl_is_support(rig, i) && !track) continue;
        if (++told <= GTL_MOST_ITEMS)
            support_step(bodies, i);
        else
            left++;
    }
    if (left > 0)
        gtl_document_paragraph(bodies->lesson->document, "%d supports more are worked in the same way.",
                               left);
    gtl_whole_step(bodies);
}

/* The bodies of a case with all pulls known, if the case is told; false without memory. */
static bool begin(gtl_bodies *bodies, gtl_lesson *lesson, const gtl_outcome *outcome)
{
    return !outcome || gtl_bodies_begin(bodies, lesson, outcome);
}

void gtl_lesson_support(gtl_lesson *lesson)
{
    gtl_bodies hold = {0}, raise = {0};
    const gtl_outcome *rests = lesson->hold;
    const gtl_outcome *rubbed = gtl_tells_friction(lesson) ? lesson->raise : NULL;
    if (!rests && !rubbed) return;
    gtl_document_heading(lesson->document, "Support");
    if (begin(&hold, lesson, rests) && begin(&raise, lesson, rubbed)) {
        say_principle(lesson);
        if (rests) support_steps(&hold);
        if (rubbed) support_steps(&raise);
        gtl_supports_table(lesson, rests ? &hold : NULL, rubbed ? &raise : NULL);
    }
    gtl_bodies_end(&hold);
    gtl_bodies_end(&raise);
}
