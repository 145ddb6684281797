/* body_several.c - pulls of a body that have to be taken together. */
#include "explain/body_solve.h"

#include <math.h>
#include <stdlib.h>

/* Smaller coefficients make no plain substitution [1]. */
#define PLAIN 1e-3

/* Two unknowns whose ratio one equation gives: other = ratio x first. */
typedef struct pair {
    gtl_bodies *bodies;
    int first, other; /* pieces */
    double by[2][2];  /* coefficients, [axis of the ratio, axis of the result] [first, other] [1] */
    double ratio;     /* [1] */
    const gtl_equation *result;
} pair;

static bool has_known(const gtl_bodies *bodies, const gtl_equation *equation)
{
    for (int i = 0; i < equation->count; i++)
        if (equation->items[i].piece < 0 || bodies->known[equation->items[i].piece]) return true;
    return false;
}

/* The two pieces that are not known yet; false where there are more. */
static bool find_two(pair *p, const int *pieces, int count)
{
    p->first = p->other = -1;
    for (int i = 0; i < count; i++) {
        if (p->bodies->known[pieces[i]]) continue;
        if (p->other >= 0) return false;
        if (p->first >= 0)
            p->other = pieces[i];
        else
            p->first = pieces[i];
    }
    return p->other >= 0;
}

static void look_along(const pair *p, const gtl_equation *equation, double by[2])
{
    by[0] = gtl_coefficient(p->bodies, equation, p->first);
    by[1] = gtl_coefficient(p->bodies, equation, p->other);
}

/* An equation of the two alone gives their ratio, another one then both; false where there are no such two.
 */
static bool find_pair(pair *p, const gtl_equation equations[3], const int *pieces, int count)
{
    if (!find_two(p, pieces, count)) return false;
    for (int k = 0; k < 3; k++) {
        look_along(p, &equations[k], p->by[0]);
        bool both = fabs(p->by[0][0]) > PLAIN && fabs(p->by[0][1]) > PLAIN;
        if (has_known(p->bodies, &equations[k]) || !both) continue;
        p->ratio = -p->by[0][0] / p->by[0][1];
        for (int m = 2; m >= 0; m--) {
            look_along(p, &equations[m], p->by[1]);
            if (m == k || fabs(p->by[1][0] + p->ratio * p->by[1][1]) <= PLAIN) continue;
            p->result = &equations[m];
            return true;
        }
    }
    return false;
}

/* "(0.8000 + 0.6000 x 1.333) x T(a)". */
static char *left_side(const pair *p, bool against)
{
    gtl_text sum = {0}, whole = {0};
    gtl_figure a = gtl_exact_number(fabs(p->by[1][0])), b = gtl_exact_number(fabs(p->by[1][1]));
    gtl_figure ratio = gtl_exact_number(fabs(p->ratio));
    gtl_text product = {0};
    gtl_text_add(&product, "%s x %s", b.text, ratio.text);
    char *second = gtl_text_take(&product);
    if (fabs(p->by[1][0]) > GTL_NEARLY) gtl_sum_add(&sum, (p->by[1][0] < 0) != against, a.text);
    if (second) gtl_sum_add(&sum, (p->by[1][1] * p->ratio < 0) != against, second);
    char *factor = gtl_sum_take(&sum);
    if (factor && second)
        gtl_text_add(&whole, "(%s) x %s", factor, gtl_symbol_base(p->bodies, p->first).text);
    else
        whole.failed = true;
    free(second);
    free(factor);
    return gtl_text_take(&whole);
}

static void substitute(const pair *p)
{
    gtl_lesson *lesson = p->bodies->lesson;
    gtl_figure first = gtl_symbol_base(p->bodies, p->first), other = gtl_symbol_base(p->bodies, p->other);
    gtl_figure ratio = gtl_exact_number(p->ratio);
    double coefficient = p->by[1][0] + p->ratio * p->by[1][1];
    gtl_document_paragraph(lesson->document,
                           "One equation has only these two pulls in it. It gives the one by the other:");
    gtl_document_equation(lesson->document, "%s = %s%s / %s x %s = %s x %s", other.text,
                          p->ratio < 0 ? "-" : "", gtl_exact_number(fabs(p->by[0][0])).text,
                          gtl_exact_number(fabs(p->by[0][1])).text, first.text, ratio.text, first.text);
    gtl_document_paragraph(lesson->document, "Put into another equation, only one unknown is left:");
    gtl_solving s = {.bodies = p->bodies,
                     .equation = p->result,
                     .piece = p->first,
                     .coefficient = fabs(coefficient),
                     .against = coefficient < 0,
                     .rest = fabs(coefficient) * gtl_base_pull(p->bodies, p->first)};
    gtl_put_solution(&s, left_side(p, s.against));
    double base = gtl_base_pull(p->bodies, p->first);
    bool minus = p->ratio * base < 0; /* two of them make a plus */
    gtl_document_equation(lesson->document, "%s = %s%s x %s = %s", other.text, minus ? "-" : "",
                          gtl_exact_number(fabs(p->ratio)).text, gtl_exact_force(lesson, fabs(base)).text,
                          gtl_exact_force(lesson, gtl_base_pull(p->bodies, p->other)).text);
}

/* Neither way: what is known is put in, and then what comes out. */
static void solve_at_once(const gtl_bodies *bodies, const gtl_equation equations[3], const int *pieces,
                          int count)
{
    gtl_lesson *lesson = bodies->lesson;
    bool any = false;
    for (int k = 0; k < 3; k++) any |= has_known(bodies, &equations[k]);
    if (any) gtl_document_paragraph(lesson->document, "With what is known put in:");
    for (int k = 0; k < 3; k++)
        if (has_known(bodies, &equations[k])) gtl_put_equation(bodies, &equations[k], GTL_PARTLY);
    gtl_document_paragraph(lesson->document, "Taken together, the equations leave one answer:");
    for (int i = 0; i < count; i++)
        if (!bodies->known[pieces[i]])
            gtl_document_equation(lesson->document, "%s = %s", gtl_symbol_base(bodies, pieces[i]).text,
                                  gtl_exact_force(lesson, gtl_base_pull(bodies, pieces[i])).text);
}

void gtl_solve_several(gtl_bodies *bodies, const gtl_equation equations[3], const int *pieces, int count)
{
    pair p = {.bodies = bodies};
    if (find_pair(&p, equations, pieces, count))
        substitute(&p);
    else if (!find_two(&p, pieces, count) ||
             !gtl_solve_across(bodies, equations, (const int[2]){p.first, p.other}))
        solve_at_once(bodies, equations, pieces, count);
}
