/* body_chain.c - bodies none of which can be worked alone: one pull is kept, and the others are told by it
 * until an equation has nothing else in it. */
#include "explain/body_solve.h"

#include <math.h>
#include <stdlib.h>

/* Less makes no plain solution; what multiplies more loses digits [1]. */
#define PLAIN    1e-3
#define TOO_MUCH 1e3
#define LINKS    12

/* A pull told by the one that is kept: by x kept + plus. */
typedef struct told {
    bool yes;
    double by;   /* [1] */
    double plus; /* [N] */
} told;

/* Which equation tells which piece; the last one, with piece -1, has only the kept pull in it. */
typedef struct link {
    int node;
    int axis;
    int piece;
} link;

typedef struct chain {
    gtl_bodies *bodies;
    told *pieces; /* one a piece */
    int kept;     /* piece */
    link links[LINKS];
    int count;
    bool closed;
} chain;

/* An equation, its told pulls written by the kept one: by x kept + plus + open x the one that is not told =
 * 0. */
typedef struct sums {
    double by;
    double plus;
    double open;
    int piece;  /* that is not told, -1: none */
    bool plain; /* at most one is not told */
} sums;

static sums add_up(const chain *c, const gtl_equation *equation)
{
    sums all = {.piece = -1, .plain = true};
    for (int i = 0; i < equation->count; i++) {
        const gtl_item *item = &equation->items[i];
        double factor = item->count * item->factor;
        bool known = item->piece < 0 || c->bodies->known[item->piece];
        if (known) {
            all.plus += factor * item->value;
            continue;
        }
        factor *= gtl_multiple(c->bodies, item->part);
        const told *pull = &c->pieces[item->piece];
        all.by += pull->yes ? factor * pull->by : 0;
        all.plus += pull->yes ? factor * pull->plus : 0;
        if (pull->yes) continue;
        all.plain &= all.piece < 0 || all.piece == item->piece;
        all.piece = item->piece;
        all.open += factor;
    }
    return all;
}

static bool is_used(const chain *c, int node, int axis)
{
    for (int i = 0; i < c->count; i++)
        if (c->links[i].node == node && c->links[i].axis == axis) return true;
    return false;
}

/* Whether an equation tells one pull more, or closes the chain. */
static bool take(chain *c, int node, int axis)
{
    gtl_equation equation;
    gtl_equation_of(c->bodies, node, axis, &equation);
    sums all = add_up(c, &equation);
    bool short_enough = equation.count > 0 && equation.count <= GTL_MOST_TERMS;
    gtl_equation_end(&equation);
    if (!short_enough || !all.plain) return false;
    if (all.piece < 0) {
        c->closed = fabs(all.by) > PLAIN;
    } else {
        if (fabs(all.open) <= PLAIN) return false;
        told pull = {true, -all.by / all.open, -all.plus / all.open};
        if (fabs(pull.by) > TOO_MUCH) return false;
        c->pieces[all.piece] = pull;
    }
    if (all.piece >= 0 || c->closed) c->links[c->count++] = (link){node, axis, all.piece};
    return all.piece >= 0 || c->closed;
}

/* Go round the bodies until the chain is closed; false where it does not close. */
static bool find(chain *c)
{
    const gtl_bodies *bodies = c->bodies;
    const gtl_rig *rig = bodies->lesson->rig;
    for (bool more = true; more && !c->closed;) {
        more = false;
        for (int i = 0; i < bodies->together * rig->dim && !c->closed; i++) {
            int node = bodies->order[bodies->alone + i / rig->dim], axis = rig->dim - 1 - i % rig->dim;
            if (c->count == LINKS || !gtl_is_free(rig, node, axis) || is_used(c, node, axis)) continue;
            more |= take(c, node, axis);
        }
    }
    return c->closed;
}

/* Append a term: factor x figure, or the figure alone. */
static void add_term(gtl_text *sum, double factor, gtl_figure figure)
{
    gtl_text term = {0};
    if (fabs(fabs(factor) - 1) > GTL_NEARLY)
        gtl_text_add(&term, "%s x ", gtl_exact_number(fabs(factor)).text);
    gtl_text_add(&term, "%s", figure.text);
    char *whole = gtl_text_take(&term);
    if (whole)
        gtl_sum_add(sum, factor < 0, whole);
    else
        sum->failed = true;
    free(whole);
}

/* Append "by x KEPT + plus", the kept pull as a symbol or as its value. */
static void add_told(const chain *c, gtl_text *sum, int piece, bool value)
{
    const gtl_lesson *lesson = c->bodies->lesson;
    const told *pull = &c->pieces[piece];
    double kept = gtl_base_pull(c->bodies, c->kept);
    gtl_figure figure = value ? gtl_exact_force(lesson, fabs(kept)) : gtl_symbol_base(c->bodies, c->kept);
    if (fabs(pull->by) > GTL_NEARLY) add_term(sum, value && kept < 0 ? -pull->by : pull->by, figure);
    if (fabs(pull->plus) > lesson->units.noise)
        gtl_sum_add(sum, pull->plus < 0, gtl_exact_force(lesson, fabs(pull->plus)).text);
}

/* "T(runner) = 2 x T(whip) + 9.807 N", or with the value of the kept pull, and what comes out. */
static void put_told(const chain *c, int piece, bool value)
{
    gtl_lesson *lesson = c->bodies->lesson;
    gtl_text sum = {0};
    add_told(c, &sum, piece, value);
    char *right = gtl_sum_take(&sum);
    gtl_figure symbol = gtl_symbol_base(c->bodies, piece);
    if (!right)
        lesson->document->failed = true;
    else if (value)
        gtl_document_equation(lesson->document, "%s = %s = %s", symbol.text, right,
                              gtl_exact_force(lesson, gtl_base_pull(c->bodies, piece)).text);
    else
        gtl_document_equation(lesson->document, "%s = %s", symbol.text, right);
    free(right);
}

/* The equation with each told pull written by the kept one: "2 x T(whip) + 9.807 N + T(whip) = 1471 N". */
static void put_in(const chain *c, const gtl_equation *equation)
{
    gtl_lesson *lesson = c->bodies->lesson;
    gtl_text sides[2] = {{0}, {0}};
    for (int i = 0; i < equation->count; i++) {
        const gtl_item *item = &equation->items[i];
        bool against = item->factor * item->value < 0;
        if (item->piece < 0 || c->bodies->known[item->piece]) {
            gtl_put_item(&sides[against], c->bodies, item, against, GTL_VALUES);
            continue;
        }
        const told *pull = &c->pieces[item->piece];
        double factor = item->count * item->factor * gtl_multiple(c->bodies, item->part) * (against ? -1 : 1);
        double plus = factor * pull->plus;
        if (fabs(pull->by) > GTL_NEARLY)
            add_term(&sides[against], factor * pull->by, gtl_symbol_base(c->bodies, c->kept));
        if (fabs(plus) > lesson->units.noise)
            gtl_sum_add(&sides[against], plus < 0, gtl_exact_force(lesson, fabs(plus)).text);
    }
    char *left = gtl_sum_take(&sides[0]), *right = gtl_sum_take(&sides[1]);
    if (left && right)
        gtl_document_equation(lesson->document, "%s = %s", left, right);
    else
        lesson->document->failed = true;
    free(left);
    free(right);
}

/* The closing equation: what is left before the kept pull, and what is known. */
static void put_closing(const chain *c, const gtl_equation *equation, double by, double plus)
{
    gtl_lesson *lesson = c->bodies->lesson;
    gtl_figure kept = gtl_symbol_base(c->bodies, c->kept), factor = gtl_exact_number(fabs(by));
    gtl_figure rest = gtl_exact_force(lesson, by < 0 ? plus : -plus);
    gtl_document_paragraph(lesson->document, "With the others put in, and like terms gathered:");
    put_in(c, equation);
    if (fabs(fabs(by) - 1) > GTL_NEARLY) {
        gtl_document_equation(lesson->document, "%s x %s = %s", factor.text, kept.text, rest.text);
        gtl_document_equation(lesson->document, "%s = %s / %s = %s", kept.text, rest.text, factor.text,
                              gtl_exact_force(lesson, gtl_base_pull(c->bodies, c->kept)).text);
    } else {
        gtl_document_equation(lesson->document, "%s = %s", kept.text, rest.text);
    }
}

static void put_link(const chain *c, const link *at)
{
    gtl_lesson *lesson = c->bodies->lesson;
    gtl_text text = {0};
    gtl_equation equation;
    gtl_text_add(&text, "The balance of ");
    gtl_add_body_name(&text, lesson, at->node);
    gtl_text_add(&text, lesson->rig->dim > 1 ? ", %s:" : ":", gtl_axis_name(lesson, at->axis));
    gtl_document_put(lesson->document, GTL_PARAGRAPH, NULL, &text);
    gtl_equation_of(c->bodies, at->node, at->axis, &equation);
    gtl_put_equation(c->bodies, &equation, GTL_SYMBOLS);
    sums all = add_up(c, &equation);
    if (at->piece >= 0)
        put_told(c, at->piece, false);
    else
        put_closing(c, &equation, all.by, all.plus);
    gtl_equation_end(&equation);
}

static void tell(const chain *c)
{
    gtl_bodies *bodies = c->bodies;
    gtl_document_paragraph(bodies->lesson->document,
                           "So one of them, %s, is kept as it is. The others are told by it, body by body, "
                           "until an equation has nothing else in it.",
                           gtl_symbol_base(bodies, c->kept).text);
    for (int i = 0; i < c->count; i++) put_link(c, &c->links[i]);
    if (c->count > 1) gtl_document_paragraph(bodies->lesson->document, "Put back into the others:");
    for (int i = 0; i < c->count; i++)
        if (c->links[i].piece >= 0) put_told(c, c->links[i].piece, true);
    gtl_tell_parts(bodies, c->kept);
    for (int i = 0; i < c->count; i++)
        if (c->links[i].piece >= 0) gtl_tell_parts(bodies, c->links[i].piece);
    bodies->known[c->kept] = true;
    for (int i = 0; i < c->count; i++)
        if (c->links[i].piece >= 0) bodies->known[c->links[i].piece] = true;
}

/* The pull to be kept: the hand's rope, else the first that is not known; -1 for none. */
static int pull_to_keep(const gtl_bodies *bodies)
{
    const gtl_rig *rig = bodies->lesson->rig;
    if (rig->driven >= 0 && !bodies->known[rig->driven]) return rig->driven;
    for (int i = 0; i < rig->piece_count; i++)
        if (!bodies->known[i]) return i;
    return -1;
}

void gtl_solve_chain(gtl_bodies *bodies)
{
    chain c = {.bodies = bodies, .kept = pull_to_keep(bodies)};
    c.pieces = calloc((size_t)bodies->lesson->rig->piece_count + 1, sizeof *c.pieces);
    if (!c.pieces)
        bodies->lesson->document->failed = true;
    else if (c.kept >= 0) {
        c.pieces[c.kept] = (told){.yes = true, .by = 1};
        if (find(&c)) tell(&c);
    }
    free(c.pieces);
}
