/* equation.c - the balance of a body along an axis. */
#include "base/grow.h"
#include "explain/balance.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static void add_item(const gtl_bodies *bodies, gtl_equation *equation, const gtl_item *item)
{
    gtl_item *items = gtl_grow(equation->items, (size_t)equation->count, &equation->capacity, sizeof *items);
    if (!items) {
        bodies->lesson->document->failed = true;
        return;
    }
    equation->items = items;
    items[equation->count++] = *item;
}

/* Pulls of one name in one direction are told as one item. Only the last few are looked through, so that a
 * body of many parts does not take for ever; a rope's parts go up and down in turn. */
static bool joins(const gtl_bodies *bodies, gtl_equation *equation, const gtl_item *item)
{
    bool by_piece = bodies->outcome->kind == GTL_HOLD;
    int oldest = equation->count > GTL_MOST_TERMS ? equation->count - GTL_MOST_TERMS : 0;
    for (int i = equation->count - 1; i >= oldest; i--) {
        gtl_item *other = &equation->items[i];
        bool same = by_piece ? other->piece == item->piece : other->part == item->part;
        if (!same || fabs(other->factor - item->factor) > GTL_NEARLY) continue;
        other->count++;
        return true;
    }
    return false;
}

static void add_pulls(const gtl_bodies *bodies, int node, int axis, gtl_equation *equation)
{
    for (int i = bodies->first[node]; i < bodies->first[node + 1]; i++) {
        const gtl_pull *pull = &bodies->pulls[i];
        int piece = bodies->lesson->rig->parts[pull->part].piece;
        if (bodies->idle[piece] || fabs(pull->way[axis]) <= GTL_NEARLY) continue;
        gtl_item item = {.symbol = gtl_symbol_pull(bodies->lesson, bodies->outcome, pull->part),
                         .factor = pull->way[axis],
                         .count = 1,
                         .value = pull->force,
                         .piece = piece,
                         .part = pull->part};
        if (!joins(bodies, equation, &item)) add_item(bodies, equation, &item);
    }
}

static void add_weights(const gtl_bodies *bodies, int node, gtl_equation *equation)
{
    const gtl_rig *rig = bodies->lesson->rig;
    gtl_item item = {.factor = -1, .count = 1, .piece = -1, .part = -1};
    for (int i = 0; i < rig->thing_count; i++) {
        if (rig->things[i].node != node || !(rig->things[i].weight > 0)) continue;
        item.symbol = gtl_symbol_weight(bodies->lesson, i);
        item.value = rig->things[i].weight;
        add_item(bodies, equation, &item);
    }
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        if (!(line->weight > 0)) continue;
        for (int end = 0; end < 2; end++) {
            int stop = line->first_stop + (end == 0 ? 0 : line->stop_count - 1);
            if (rig->things[rig->stops[stop].thing].node != node) continue;
            item.symbol = gtl_symbol_spar_half(bodies->lesson, i);
            item.value = line->weight / 2;
            add_item(bodies, equation, &item);
        }
    }
}

/* Whether nothing acts along the axis but what the arithmetic leaves of plumb or level lines. */
static bool is_nothing(const gtl_bodies *bodies, int node, const gtl_equation *equation)
{
    double greatest = bodies->lesson->rig->nodes[node].weight, here = 0;
    for (int i = bodies->first[node]; i < bodies->first[node + 1]; i++)
        greatest = fmax(greatest, fabs(bodies->pulls[i].force));
    for (int i = 0; i < equation->count; i++)
        here =
            fmax(here, equation->items[i].count * fabs(equation->items[i].factor * equation->items[i].value));
    return here <= GTL_NOTHING * greatest;
}

void gtl_equation_of(const gtl_bodies *bodies, int node, int axis, gtl_equation *equation)
{
    *equation = (gtl_equation){0};
    add_pulls(bodies, node, axis, equation);
    if (axis == bodies->lesson->rig->dim - 1) add_weights(bodies, node, equation);
    if (is_nothing(bodies, node, equation)) equation->count = 0;
}

void gtl_equation_end(gtl_equation *equation)
{
    free(equation->items);
    *equation = (gtl_equation){0};
}

static bool is_known(const gtl_bodies *bodies, const gtl_item *item)
{
    return item->piece < 0 || bodies->known[item->piece];
}

/* Whether an item is written as its value. */
static bool by_value(const gtl_bodies *bodies, const gtl_item *item, gtl_writing writing)
{
    return writing == GTL_VALUES || (writing == GTL_PARTLY && is_known(bodies, item));
}

/* Whether it is written with a minus: a value's own sign is gathered with the others. */
static bool has_minus(const gtl_bodies *bodies, const gtl_item *item, bool against, gtl_writing writing)
{
    bool minus = (item->factor < 0) != against;
    return by_value(bodies, item, writing) && item->value < 0 ? !minus : minus;
}

void gtl_put_item(gtl_text *sum, const gtl_bodies *bodies, const gtl_item *item, bool against,
                  gtl_writing writing)
{
    gtl_text term = {0};
    gtl_figure value = gtl_exact_force(bodies->lesson, fabs(item->value));
    if (item->count > 1) gtl_text_add(&term, "%d x ", item->count);
    if (fabs(fabs(item->factor) - 1) > GTL_NEARLY)
        gtl_text_add(&term, "%s x ", gtl_exact_number(fabs(item->factor)).text);
    gtl_text_add(&term, "%s", by_value(bodies, item, writing) ? value.text : item->symbol.text);
    char *whole = gtl_text_take(&term);
    if (whole)
        gtl_sum_add(sum, has_minus(bodies, item, against, writing), whole);
    else
        bodies->lesson->document->failed = true;
    free(whole);
}

void gtl_put_items(gtl_text *sum, const gtl_bodies *bodies, const gtl_equation *equation, bool against,
                   gtl_writing writing, bool known)
{
    for (int pass = 0; pass < 2; pass++) {
        for (int i = 0; i < equation->count; i++) {
            const gtl_item *item = &equation->items[i];
            if (known && !is_known(bodies, item)) continue;
            if (has_minus(bodies, item, against, writing) == (pass == 1))
                gtl_put_item(sum, bodies, item, against, writing);
        }
    }
}

void gtl_put_equation(const gtl_bodies *bodies, const gtl_equation *equation, gtl_writing writing)
{
    gtl_text sides[2] = {{0}, {0}};
    if (equation->count == 0 || equation->count > GTL_MOST_TERMS) return;
    for (int i = 0; i < equation->count; i++) {
        const gtl_item *item = &equation->items[i];
        /* A pushing spar's pull is negative: it stands where its force acts. */
        bool against = (item->factor * item->value < 0);
        gtl_put_item(&sides[against], bodies, item, against, writing);
    }
    char *left = gtl_sum_take(&sides[0]), *right = gtl_sum_take(&sides[1]);
    if (left && right)
        gtl_document_equation(bodies->lesson->document, "%s = %s", left, right);
    else
        bodies->lesson->document->failed = true;
    free(left);
    free(right);
}
