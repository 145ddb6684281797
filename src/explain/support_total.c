/* support_total.c - the whole rig as one body: what carries it upwards, and what pulls it down. */
#include "explain/support.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Both sides of the balance, in one way of writing. */
typedef struct sides {
    const gtl_bodies *bodies;
    gtl_writing writing;
    gtl_text left;
    gtl_text right;
    int terms;
    double carried; /* by anchors [N] */
    double weight;  /* [N] */
    double hands;   /* what hands pull down with [N] */
} sides;

static void add(sides *s, gtl_text *side, double value, const char *symbol)
{
    bool values = s->writing == GTL_VALUES;
    s->terms++;
    gtl_sum_add(side, values && value < 0,
                values ? gtl_exact_force(s->bodies->lesson, fabs(value)).text : symbol);
}

static void add_supports(sides *s)
{
    gtl_lesson *lesson = s->bodies->lesson;
    int up = lesson->rig->dim - 1;
    for (int i = 0; i < lesson->rig->node_count; i++) {
        if (!gtl_is_support(lesson->rig, i)) continue;
        double force = gtl_reaction(s->bodies, i, up);
        s->carried += force;
        if (fabs(force) > lesson->units.noise)
            add(s, &s->left, force, gtl_symbol_reaction(lesson, lesson->rig->nodes[i].root, up).text);
    }
}

static void add_weights(sides *s)
{
    gtl_lesson *lesson = s->bodies->lesson;
    const gtl_rig *rig = lesson->rig;
    for (int i = 0; i < rig->thing_count; i++) {
        if (!(rig->things[i].weight > 0)) continue;
        s->weight += rig->things[i].weight;
        add(s, &s->right, rig->things[i].weight, gtl_symbol_weight(lesson, i).text);
    }
    for (int i = 0; i < rig->line_count; i++) {
        if (!(rig->lines[i].weight > 0)) continue;
        /* Both halves: the symbol without its "/2". */
        gtl_figure symbol = gtl_symbol_spar_half(lesson, i);
        symbol.text[strlen(symbol.text) - 2] = '\0';
        s->weight += rig->lines[i].weight;
        add(s, &s->right, rig->lines[i].weight, symbol.text);
    }
}

/* Hands that stand by themselves: what the rope pulls them up with they pull the rig down with. */
static void add_hands(sides *s)
{
    const gtl_rig *rig = s->bodies->lesson->rig;
    for (int i = 0; i < rig->node_count; i++) {
        if (!rig->nodes[i].fixed || gtl_is_support(rig, i)) continue;
        gtl_equation equation;
        gtl_equation_of(s->bodies, i, rig->dim - 1, &equation);
        s->hands -= gtl_reaction(s->bodies, i, rig->dim - 1);
        for (int k = 0; k < equation.count; k++, s->terms++)
            gtl_put_item(&s->right, s->bodies, &equation.items[k], false, s->writing);
        gtl_equation_end(&equation);
    }
}

static bool any_hand_pulls(const sides *s)
{
    const gtl_rig *rig = s->bodies->lesson->rig;
    for (int i = 0; i < rig->node_count; i++)
        if (rig->nodes[i].fixed && !gtl_is_support(rig, i) &&
            fabs(gtl_reaction(s->bodies, i, rig->dim - 1)) > s->bodies->lesson->units.noise)
            return true;
    return false;
}

static void put_line(sides *s, bool total)
{
    gtl_lesson *lesson = s->bodies->lesson;
    char *left = gtl_sum_take(&s->left), *right = gtl_sum_take(&s->right);
    if (!left || !right)
        lesson->document->failed = true;
    else if (s->terms > 2 * GTL_MOST_TERMS && total)
        gtl_document_equation(lesson->document, "%s = %s + %s", gtl_exact_force(lesson, s->carried).text,
                              gtl_exact_force(lesson, s->weight).text,
                              gtl_exact_force(lesson, s->hands).text);
    else if (s->terms <= 2 * GTL_MOST_TERMS && total)
        gtl_document_equation(lesson->document, "%s = %s = %s", left, right,
                              gtl_exact_force(lesson, s->carried).text);
    else if (s->terms <= 2 * GTL_MOST_TERMS)
        gtl_document_equation(lesson->document, "%s = %s", left, right);
    free(left);
    free(right);
}

void gtl_whole_step(const gtl_bodies *bodies)
{
    bool hold = bodies->outcome->kind == GTL_HOLD;
    gtl_document *document = bodies->lesson->document;
    sides probe = {.bodies = bodies};
    gtl_lesson_step(bodies->lesson, hold ? "The whole rig at rest" : "The whole rig while the load rises");
    gtl_document_paragraph(
        document,
        "Cut free as a whole, the rig has only what acts on it from outside: what the "
        "supports give%s all weights%s. In height they balance: a check of all that stands "
        "above.",
        any_hand_pulls(&probe) ? "," : " and",
        any_hand_pulls(&probe) ? ", and what hands pull up or down with" : "");
    for (int pass = 0; pass < 2; pass++) {
        sides s = {.bodies = bodies, .writing = pass == 0 ? GTL_SYMBOLS : GTL_VALUES};
        add_supports(&s);
        add_weights(&s);
        add_hands(&s);
        if (pass == 1 && s.terms > 2 * GTL_MOST_TERMS)
            gtl_document_paragraph(document, "All supports = all weights + what the hands pull down with:");
        put_line(&s, pass == 1);
    }
}
