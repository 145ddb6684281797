/* raised.c - what is raised as the load rises by h, as a force and as work. */
#include "explain/raised.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void add_item(gtl_raised *raised, const gtl_raised_item *item)
{
    if (item->force == 0 || item->way == 0) return;
    raised->sum += item->force * item->way;
    raised->items[raised->count++] = *item;
}

static void add_things(const gtl_lesson *lesson, const gtl_outcome *outcome, gtl_raised *raised)
{
    const gtl_rig *rig = lesson->rig;
    for (int i = 0; i < rig->thing_count; i++)
        add_item(raised, &(gtl_raised_item){gtl_symbol_weight(lesson, i), rig->things[i].name, i, -1, false,
                                            rig->things[i].weight,
                                            gtl_rise_of(lesson, outcome, rig->things[i].node, rig->dim - 1)});
}

/* A spar whose ends rise alike is raised whole. */
static void add_spar(const gtl_lesson *lesson, const gtl_outcome *outcome, int line, gtl_raised *raised)
{
    const gtl_rig *rig = lesson->rig;
    const gtl_line *spar = &rig->lines[line];
    int up = rig->dim - 1;
    double from = gtl_rise_of(lesson, outcome, gtl_part_from(rig, spar->first_part), up);
    double to = gtl_rise_of(lesson, outcome, gtl_part_to(rig, spar->first_part), up);
    gtl_raised_item item = {.name = spar->name, .thing = -1, .end = -1, .force = spar->weight, .way = from};
    if (fabs(from - to) <= GTL_STILL) {
        snprintf(item.symbol.text, sizeof item.symbol.text, "W(%s)", spar->name);
        add_item(raised, &item);
        return;
    }
    item.symbol = gtl_symbol_spar_half(lesson, line);
    item.force = spar->weight / 2;
    item.end = rig->stops[rig->parts[spar->first_part].from].thing;
    add_item(raised, &item);
    item.end = rig->stops[rig->parts[spar->first_part].to].thing;
    item.way = to;
    add_item(raised, &item);
}

static void add_spars(const gtl_lesson *lesson, const gtl_outcome *outcome, gtl_raised *raised)
{
    for (int i = 0; i < lesson->rig->line_count; i++)
        if (lesson->rig->lines[i].kind == GTL_SPAR) add_spar(lesson, outcome, i, raised);
}

static void add_pulls(const gtl_lesson *lesson, const gtl_outcome *outcome, gtl_raised *raised)
{
    const gtl_rig *rig = lesson->rig;
    for (int p = 0; p < rig->piece_count; p++) {
        if (rig->pieces[p].rule != GTL_PULLED) continue;
        const gtl_thing *hand = &rig->things[rig->pieces[p].hand];
        gtl_raised_item item = {.name = hand->name,
                                .thing = rig->pieces[p].hand,
                                .end = -1,
                                .pull = true,
                                .force = hand->pull,
                                .way = -gtl_piece_shortens(lesson, outcome, p)};
        snprintf(item.symbol.text, sizeof item.symbol.text, "P(%s)", hand->name);
        add_item(raised, &item);
    }
}

bool gtl_raised_begin(gtl_lesson *lesson, const gtl_outcome *outcome, gtl_raised *raised)
{
    const gtl_rig *rig = lesson->rig;
    size_t most = (size_t)rig->thing_count + 2 * (size_t)rig->line_count + (size_t)rig->piece_count;
    *raised = (gtl_raised){.items = calloc(most, sizeof *raised->items)};
    if (!raised->items) {
        lesson->document->failed = true;
        return false;
    }
    add_things(lesson, outcome, raised);
    add_spars(lesson, outcome, raised);
    add_pulls(lesson, outcome, raised);
    return true;
}

void gtl_raised_end(gtl_raised *raised)
{
    free(raised->items);
    *raised = (gtl_raised){0};
}

/* "0.5000 x W(arbor)"; a factor of 1 goes without saying. */
static void add_term(gtl_text *sum, double way, const char *factor)
{
    char term[120];
    gtl_figure share = gtl_exact_number(fabs(way));
    if (strcmp(share.text, "1") == 0)
        snprintf(term, sizeof term, "%s", factor);
    else
        snprintf(term, sizeof term, "%s x %s", share.text, factor);
    gtl_sum_add(sum, way < 0, term);
}

static void put_chain(gtl_lesson *lesson, const char *symbol, gtl_text *sum, const char *result)
{
    char *terms = gtl_sum_take(sum);
    if (!terms) lesson->document->failed = true;
    gtl_text chain = {0};
    gtl_text_add(&chain, "%s = %s", symbol, terms ? terms : "");
    if (result && strcmp(terms ? terms : "", result) != 0) gtl_text_add(&chain, " = %s", result);
    free(terms);
    gtl_document_put(lesson->document, GTL_EQUATION, NULL, &chain);
}

void gtl_raised_equations(gtl_lesson *lesson, const gtl_raised *raised)
{
    gtl_figure total = gtl_exact_force(lesson, raised->sum);
    gtl_text symbols = {0}, figures = {0};
    if (raised->count > GTL_LONGEST_LIST) {
        gtl_document_paragraph(lesson->document,
                               "%d weights and pulls, added up in this way:", raised->count);
        gtl_document_equation(lesson->document, "Q = %s", total.text);
        return;
    }
    for (int i = 0; i < raised->count; i++) {
        const gtl_raised_item *item = &raised->items[i];
        if (item->pull)
            gtl_document_equation(lesson->document, "%s = %s", item->symbol.text,
                                  gtl_exact_force(lesson, item->force).text);
        add_term(&symbols, item->way, item->symbol.text);
        add_term(&figures, item->way, gtl_exact_force(lesson, item->force).text);
    }
    put_chain(lesson, "Q", &symbols, NULL);
    put_chain(lesson, "Q", &figures, total.text);
}

const char *gtl_length_word(const gtl_lesson *lesson)
{
    return strcmp(lesson->units.length, "m") == 0 ? "metre" : "foot";
}

/* A way as long as a ratio says, for one unit of lift. */
static gtl_figure way_of(const gtl_lesson *lesson, double ratio)
{
    return gtl_figure_after(gtl_exact_number(ratio), lesson->units.length);
}

static void put_work_table(gtl_lesson *lesson, const gtl_raised *raised)
{
    static const gtl_column columns[] = {
        {"Of what", false}, {"Force", true}, {"Raised by", true}, {"Work", true}};
    gtl_document *document = lesson->document;
    gtl_document_table(document, columns, 4);
    for (int i = 0; i < raised->count; i++) {
        const gtl_raised_item *item = &raised->items[i];
        if (item->end >= 0)
            gtl_document_cell(document, "%s, at %s", item->symbol.text, lesson->rig->things[item->end].name);
        else
            gtl_document_cell(document, "%s", item->symbol.text);
        gtl_document_cell(document, "%s", gtl_exact_force(lesson, item->force).text);
        gtl_document_cell(document, "%s", way_of(lesson, item->way).text);
        gtl_document_cell(document, "%s",
                          gtl_exact_work(lesson, item->force * item->way * lesson->units.metres).text);
    }
}

void gtl_raised_work(gtl_lesson *lesson, const gtl_raised *raised, bool table)
{
    gtl_figure total = gtl_exact_work(lesson, raised->sum * lesson->units.metres);
    if (raised->count > GTL_LONGEST_LIST) {
        gtl_document_paragraph(lesson->document, "On %d weights and pulls, added up:", raised->count);
        gtl_document_equation(lesson->document, "U(out) = %s", total.text);
        return;
    }
    gtl_text sum = {0};
    if (table) put_work_table(lesson, raised);
    for (int i = 0; i < raised->count; i++) {
        double work = raised->items[i].force * raised->items[i].way * lesson->units.metres;
        gtl_figure term = gtl_exact_work(lesson, fabs(work));
        if (strcmp(term.text, "0") != 0) gtl_sum_add(&sum, work < 0, term.text);
    }
    put_chain(lesson, "U(out)", &sum, total.text);
}

void gtl_work_in(gtl_lesson *lesson, const gtl_outcome *outcome)
{
    const gtl_state *state = outcome->state;
    gtl_figure way = way_of(lesson, fabs(state->velocity_ratio));
    const char *sign = state->velocity_ratio < 0 ? "-" : "";
    gtl_document_equation(lesson->document, "U(in) = %sE x %s", sign, way.text);
    gtl_document_equation(
        lesson->document, "U(in) = %s%s x %s = %s", sign, gtl_exact_force(lesson, state->effort).text,
        way.text, gtl_exact_work(lesson, state->effort * state->velocity_ratio * lesson->units.metres).text);
}
