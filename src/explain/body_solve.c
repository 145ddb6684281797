/* body_solve.c - the unknown pulls of a body, from its equations, one after the other. */
#include "explain/body_solve.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* The height is the axis to solve along, unless another is so much better there [1]. */
#define PLAIN_ENOUGH 0.2

double gtl_coefficient(const gtl_bodies *bodies, const gtl_equation *equation, int piece)
{
    double sum = 0;
    for (int i = 0; i < equation->count; i++) {
        const gtl_item *item = &equation->items[i];
        if (item->piece == piece) sum += item->count * item->factor * gtl_multiple(bodies, item->part);
    }
    return sum;
}

/* One item's share of the coefficient: "4", "2 x 0.8000", "1.064", "0.8000 x 1.064". */
static void put_factor(gtl_text *sum, const gtl_solving *s, const gtl_item *item)
{
    double multiple = gtl_multiple(s->bodies, item->part), cosine = fabs(item->factor);
    bool whole = fabs(cosine - 1) <= GTL_NEARLY, same = fabs(multiple - 1) <= GTL_NEARLY;
    gtl_text term = {0};
    if (item->count > 1) gtl_text_add(&term, "%d", item->count);
    if (!whole) gtl_text_add(&term, "%s%s", term.length ? " x " : "", gtl_exact_number(cosine).text);
    if (!same) gtl_text_add(&term, "%s%s", term.length ? " x " : "", gtl_exact_number(multiple).text);
    if (term.length == 0) gtl_text_add(&term, "1");
    char *text = gtl_text_take(&term);
    if (text)
        gtl_sum_add(sum, (item->factor < 0) != s->against, text);
    else
        s->bodies->lesson->document->failed = true;
    free(text);
}

/* "4 x T", "(1 + 1.064) x T1", "T". */
static char *left_side(const gtl_solving *s)
{
    gtl_text sum = {0}, whole = {0};
    int count = 0;
    for (int i = 0; i < s->equation->count; i++) count += s->equation->items[i].piece == s->piece;
    for (int i = 0; i < s->equation->count && count <= GTL_MOST_TERMS; i++)
        if (s->equation->items[i].piece == s->piece) put_factor(&sum, s, &s->equation->items[i]);
    if (count > GTL_MOST_TERMS) gtl_text_add(&sum, "%s", gtl_exact_number(s->coefficient).text);
    gtl_figure symbol = gtl_symbol_base(s->bodies, s->piece);
    char *factor = gtl_sum_take(&sum);
    bool one = count == 1 && fabs(s->coefficient - 1) <= GTL_NEARLY;
    if (factor && !one)
        gtl_text_add(&whole, count > 1 && count <= GTL_MOST_TERMS ? "(%s) x %s" : "%s x %s", factor,
                     symbol.text);
    else
        gtl_text_add(&whole, "%s", symbol.text);
    if (!factor) whole.failed = true;
    free(factor);
    return gtl_text_take(&whole);
}

char *gtl_known_side(const gtl_solving *s)
{
    gtl_text sum = {0};
    int count = 0;
    for (int i = 0; i < s->equation->count; i++) {
        const gtl_item *item = &s->equation->items[i];
        if (item->piece >= 0 && !s->bodies->known[item->piece]) continue;
        count++;
    }
    if (count > GTL_MOST_TERMS)
        gtl_text_add(&sum, "%s", gtl_exact_force(s->bodies->lesson, s->rest).text);
    else
        gtl_put_items(&sum, s->bodies, s->equation, !s->against, GTL_VALUES, true);
    return gtl_sum_take(&sum);
}

/* "4 x T = 1157.2 N + 15.69 N = 1172.9 N", then "T = 1172.9 N / 4 = 293.2 N". Takes `left`. */
void gtl_put_solution(const gtl_solving *s, char *left)
{
    gtl_lesson *lesson = s->bodies->lesson;
    char *right = gtl_known_side(s);
    gtl_figure rest = gtl_exact_force(lesson, s->rest);
    gtl_figure value = gtl_exact_force(lesson, gtl_base_pull(s->bodies, s->piece));
    if (!left || !right)
        lesson->document->failed = true;
    else if (strcmp(right, "0") != 0 && strcmp(right, rest.text) != 0)
        gtl_document_equation(lesson->document, "%s = %s = %s", left, right, rest.text);
    else
        gtl_document_equation(lesson->document, "%s = %s", left, right);
    if (fabs(s->coefficient - 1) > GTL_NEARLY)
        gtl_document_equation(lesson->document, "%s = %s / %s = %s",
                              gtl_symbol_base(s->bodies, s->piece).text, rest.text,
                              gtl_exact_number(s->coefficient).text, value.text);
    free(left);
    free(right);
}

/* The one piece of an equation that is not known yet; -1 where there are none or several. */
static int only_unknown(const gtl_bodies *bodies, const gtl_equation *equation, const int *pieces, int count)
{
    int found = -1;
    for (int i = 0; i < count; i++) {
        double coefficient = gtl_coefficient(bodies, equation, pieces[i]);
        if (bodies->known[pieces[i]] || fabs(coefficient) <= GTL_NEARLY) continue;
        if (found >= 0) return -1;
        found = pieces[i];
    }
    return found;
}

/* The axis along which a single unknown pulls, and most plainly; -1 for none. */
static int best_axis(const gtl_bodies *bodies, const gtl_equation equations[3], const int *pieces, int count)
{
    int best = -1, up = bodies->lesson->rig->dim - 1;
    double most = 0, upright = 0;
    for (int k = 0; k < 3; k++) {
        int piece = only_unknown(bodies, &equations[k], pieces, count);
        double here = piece >= 0 ? fabs(gtl_coefficient(bodies, &equations[k], piece)) : 0;
        if (k == up) upright = here;
        if (here <= most || here <= GTL_NOTHING) continue;
        most = here;
        best = k;
    }
    return upright > 0 && upright >= PLAIN_ENOUGH * most ? up : best;
}

static void solve_along(gtl_bodies *bodies, const gtl_equation *equation, int piece)
{
    double coefficient = gtl_coefficient(bodies, equation, piece);
    gtl_solving s = {.bodies = bodies,
                     .equation = equation,
                     .piece = piece,
                     .coefficient = fabs(coefficient),
                     .against = coefficient < 0,
                     .rest = fabs(coefficient) * gtl_base_pull(bodies, piece)};
    gtl_put_solution(&s, left_side(&s));
    bodies->known[piece] = true;
}

void gtl_body_solve(gtl_bodies *bodies, const gtl_equation equations[3], const int *pieces, int count)
{
    int left = count;
    for (int axis = 0; left > 0 && axis >= 0; left -= axis >= 0) {
        axis = best_axis(bodies, equations, pieces, count);
        if (axis >= 0)
            solve_along(bodies, &equations[axis], only_unknown(bodies, &equations[axis], pieces, count));
    }
    if (left > 0) gtl_solve_several(bodies, equations, pieces, count);
    for (int i = 0; i < count; i++) bodies->known[pieces[i]] = true;
}

gtl_figure gtl_symbol_base(const gtl_bodies *bodies, int piece)
{
    return gtl_symbol_pull(bodies->lesson, bodies->outcome, bodies->base[piece]);
}

static void tell_part(const gtl_bodies *bodies, int piece, int part)
{
    gtl_lesson *lesson = bodies->lesson;
    gtl_document_equation(lesson->document, "%s = %s x %s = %s", gtl_symbol_part(lesson, part).text,
                          gtl_exact_number(gtl_multiple(bodies, part)).text,
                          gtl_exact_force(lesson, gtl_base_pull(bodies, piece)).text,
                          gtl_exact_force(lesson, bodies->outcome->state->tension[part]).text);
}

void gtl_tell_parts(const gtl_bodies *bodies, int piece)
{
    const gtl_piece *told = &bodies->lesson->rig->pieces[piece];
    bool first = bodies->base[piece] == told->first_part;
    int step = first ? 1 : -1, last = first ? told->first_part + told->part_count - 1 : told->first_part;
    if (bodies->outcome->kind == GTL_HOLD) return;
    for (int i = 1; i < told->part_count && i <= GTL_MOST_ITEMS; i++)
        tell_part(bodies, piece, bodies->base[piece] + i * step);
    if (told->part_count - 1 > GTL_MOST_ITEMS) tell_part(bodies, piece, last);
}
