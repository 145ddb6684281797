/* body_cross.c - two unknown pulls by two equations, each multiplied so that one pull falls out. */
#include "explain/body_solve.h"

#include <math.h>
#include <stdlib.h>

/* Less makes no plain solution [1]. */
#define PLAIN 1e-3

/* by[i][0] x first + by[i][1] x other = rest[i], of two axes. */
typedef struct crossing {
    const gtl_bodies *bodies;
    const gtl_equation *equation[2];
    const int *pieces;
    double by[2][2];
    double pull[2]; /* [N] */
    double rest[2]; /* [N] */
    double left;    /* what is left of the first piece's coefficient [1] */
} crossing;

/* Append factor x value, signs gathered in front of it. */
static void add_product(gtl_text *sum, double factor, double sign, gtl_figure value)
{
    gtl_text term = {0};
    if (fabs(fabs(factor) - 1) > GTL_NEARLY)
        gtl_text_add(&term, "%s x ", gtl_exact_number(fabs(factor)).text);
    gtl_text_add(&term, "%s", value.text);
    char *text = gtl_text_take(&term);
    if (text)
        gtl_sum_add(sum, factor * sign < 0, text);
    else
        sum->failed = true;
    free(text);
}

static void put(const crossing *c, const char *left, char *right, gtl_figure value)
{
    gtl_document *document = c->bodies->lesson->document;
    if (left && right)
        gtl_document_equation(document, "%s = %s = %s", left, right, value.text);
    else
        document->failed = true;
    free(right);
}

static void put_sorted(const crossing *c, int i)
{
    gtl_text left = {0};
    gtl_solving s = {.bodies = c->bodies, .equation = c->equation[i], .rest = c->rest[i]};
    for (int k = 0; k < 2; k++)
        if (fabs(c->by[i][k]) > GTL_NEARLY)
            add_product(&left, c->by[i][k], 1, gtl_symbol_base(c->bodies, c->pieces[k]));
    char *whole = gtl_sum_take(&left);
    put(c, whole, gtl_known_side(&s), gtl_exact_force(c->bodies->lesson, c->rest[i]));
    free(whole);
}

/* "0.5000 x T = 0.8000 x 300.0 N - 0.6000 x 100.0 N = 180.0 N", then T by itself. */
static void put_first(const crossing *c)
{
    gtl_lesson *lesson = c->bodies->lesson;
    gtl_text right = {0}, left = {0};
    double turn = c->left < 0 ? -1 : 1, product = fabs(c->left) * c->pull[0];
    gtl_figure symbol = gtl_symbol_base(c->bodies, c->pieces[0]);
    gtl_figure value = gtl_exact_force(lesson, product), factor = gtl_exact_number(fabs(c->left));
    const double by[2] = {c->by[1][1], -c->by[0][1]};
    for (int i = 0; i < 2; i++)
        add_product(&right, turn * by[i], c->rest[i] < 0 ? -1 : 1, gtl_exact_force(lesson, fabs(c->rest[i])));
    gtl_text_add(&left, "%s x %s", factor.text, symbol.text);
    char *whole = gtl_text_take(&left);
    put(c, whole, gtl_sum_take(&right), value);
    free(whole);
    gtl_document_equation(lesson->document, "%s = %s / %s = %s", symbol.text, value.text, factor.text,
                          gtl_exact_force(lesson, c->pull[0]).text);
}

/* The other pull by the equation in which it counts more. */
static void put_other(const crossing *c)
{
    gtl_lesson *lesson = c->bodies->lesson;
    int i = fabs(c->by[0][1]) > fabs(c->by[1][1]) ? 0 : 1;
    double turn = c->by[i][1] < 0 ? -1 : 1, product = fabs(c->by[i][1]) * c->pull[1];
    gtl_figure symbol = gtl_symbol_base(c->bodies, c->pieces[1]);
    gtl_figure value = gtl_exact_force(lesson, product), factor = gtl_exact_number(fabs(c->by[i][1]));
    gtl_text right = {0}, left = {0};
    bool later = turn * c->rest[i] < 0; /* the plus first */
    for (int pass = 0; pass < 2; pass++) {
        if ((pass == 1) == later)
            add_product(&right, turn, c->rest[i] < 0 ? -1 : 1, gtl_exact_force(lesson, fabs(c->rest[i])));
        else if (fabs(c->by[i][0]) > GTL_NEARLY)
            add_product(&right, -turn * c->by[i][0], c->pull[0] < 0 ? -1 : 1,
                        gtl_exact_force(lesson, fabs(c->pull[0])));
    }
    gtl_text_add(&left, "%s x %s", factor.text, symbol.text);
    char *whole = gtl_text_take(&left);
    put(c, whole, gtl_sum_take(&right), value);
    free(whole);
    gtl_document_equation(lesson->document, "%s = %s / %s = %s", symbol.text, value.text, factor.text,
                          gtl_exact_force(lesson, c->pull[1]).text);
}

/* Take two axes; false where they do not give both pulls plainly. */
static bool take(crossing *c, const gtl_equation *one, const gtl_equation *two)
{
    c->equation[0] = one;
    c->equation[1] = two;
    for (int i = 0; i < 2; i++) {
        c->rest[i] = 0;
        for (int k = 0; k < 2; k++) {
            c->by[i][k] = gtl_coefficient(c->bodies, c->equation[i], c->pieces[k]);
            c->rest[i] += c->by[i][k] * c->pull[k];
        }
    }
    c->left = c->by[0][0] * c->by[1][1] - c->by[1][0] * c->by[0][1];
    return fabs(c->left) > PLAIN && fabs(c->by[0][1]) > PLAIN && fabs(c->by[1][1]) > PLAIN;
}

static bool find_axes(crossing *c, const gtl_equation equations[3])
{
    for (int k = 0; k < 3; k++)
        for (int m = k + 1; m < 3; m++)
            if (take(c, &equations[k], &equations[m])) return true;
    return false;
}

bool gtl_solve_across(const gtl_bodies *bodies, const gtl_equation equations[3], const int pieces[2])
{
    gtl_document *document = bodies->lesson->document;
    crossing c = {.bodies = bodies,
                  .pieces = pieces,
                  .pull = {gtl_base_pull(bodies, pieces[0]), gtl_base_pull(bodies, pieces[1])}};
    if (!find_axes(&c, equations)) return false;
    gtl_document_paragraph(document, "What is not known is put on the left, what is known on the right:");
    for (int i = 0; i < 2; i++) put_sorted(&c, i);
    gtl_document_paragraph(
        document,
        "Each equation is multiplied by the number that stands before %s in the other, and "
        "the one is taken from the other. So %s falls out:",
        gtl_symbol_base(bodies, pieces[1]).text, gtl_symbol_base(bodies, pieces[1]).text);
    put_first(&c);
    gtl_document_paragraph(document, "Put back into one of the two equations:");
    put_other(&c);
    return true;
}
