/* limit_words.c - what bars a load, and what is left open, in sentences. */
#include "report/limit_words.h"
#include "base/text.h"
#include "report/names.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

const gtl_sheet *gtl_limit_sheet(const gtl_limit *limit)
{
    return limit->answered ? &limit->as_drawn : &limit->at_limit;
}

gtl_figure gtl_limit_part(const gtl_limit *limit, int component)
{
    const gtl_component *part = &gtl_limit_sheet(limit)->components[component];
    gtl_figure figure;
    snprintf(figure.text, sizeof figure.text, "%.10s %.32s", gtl_kind_name(part->kind), part->name);
    return figure;
}

/* The case of an edge; its colon or comma is the sentence's. */
static const char *case_of(const gtl_limit *limit, const gtl_edge *edge)
{
    return edge->outcome < 0 ? "" : limit->rig->cases[edge->outcome].name;
}

static void add_by_case(const gtl_limit *limit, const gtl_edge *edge, gtl_text *text)
{
    if (edge->outcome >= 0)
        gtl_text_add(text, ", by %s", case_of(limit, edge));
    else if (edge->kind == GTL_EDGE_RATING)
        gtl_text_add(text, ", at rest further up the lift");
}

/* A spar fails one way or the other. */
static void add_push(const gtl_sheet *sheet, const gtl_edge *edge, gtl_text *text)
{
    if (edge->outcome >= 0 && sheet->components[edge->component].push) gtl_text_add(text, ", in push");
}

/* On which side of an end of the range the loads are that it bars. */
static const char *side_of(const gtl_limit *limit, const gtl_edge *edge)
{
    return edge == &limit->lightest ? " below that" : " above that";
}

static void add_part_at_rating(const gtl_limit *limit, const gtl_edge *edge, gtl_text *text)
{
    gtl_text_add(text, "%s", gtl_limit_part(limit, edge->component).text);
    if (edge->jumps)
        gtl_text_add(text, " is over its rating all at once%s", side_of(limit, edge));
    else
        gtl_text_add(text, " is then at its rating");
    add_by_case(limit, edge, text);
    if (!edge->jumps) add_push(&limit->at_limit, edge, text);
}

/* What else may bar: said alike of the drawn load and of those beyond an end; `when` says which. */
static void add_other(const gtl_limit *limit, const gtl_edge *edge, const char *when, gtl_text *text)
{
    switch (edge->kind) {
    case GTL_EDGE_UNKNOWN:
        gtl_text_add(text, "%s has no rating to be checked by%s", gtl_limit_part(limit, edge->component).text,
                     when);
        add_by_case(limit, edge, text);
        break;
    case GTL_EDGE_CASE:
        gtl_text_add(text, "%s cannot be%s%s%s", edge->outcome < 0 ? "a case" : case_of(limit, edge), when,
                     edge->reason[0] ? ": " : "", edge->reason);
        break;
    default:
        gtl_text_add(text, "the rig has no answer%s: %s", when, edge->reason);
    }
}

static void add_fitting(const gtl_limit *limit, const gtl_edge *edge, gtl_text *text)
{
    gtl_text_add(text, "%s, a head fitting, ", gtl_limit_part(limit, edge->component).text);
    if (edge->jumps)
        gtl_text_add(text, "all at once does not hold twice the line%s", side_of(limit, edge));
    else
        gtl_text_add(text, "then holds twice the line, and no more");
}

char *gtl_limit_edge(const gtl_limit *limit, const gtl_edge *edge)
{
    gtl_text text = {0};
    if (edge->kind == GTL_EDGE_RATING)
        add_part_at_rating(limit, edge, &text);
    else if (edge->kind == GTL_EDGE_FITTING)
        add_fitting(limit, edge, &text);
    else
        add_other(limit, edge, side_of(limit, edge), &text);
    return gtl_text_take(&text);
}

static void add_part_over(const gtl_limit *limit, gtl_text *text)
{
    const gtl_edge *edge = &limit->barred;
    double use = edge->outcome >= 0 ? limit->as_drawn.components[edge->component].utilisation
                                    : limit->as_drawn.rope_bill->strains[edge->component].use;
    gtl_text_add(text, "%s ", gtl_limit_part(limit, edge->component).text);
    if (isfinite(use))
        gtl_text_add(text, "is at %s %% of its rating", gtl_figure_utilisation(use).text);
    else
        gtl_text_add(text, "must not be pulled so at all");
    add_by_case(limit, edge, text);
    add_push(&limit->as_drawn, edge, text);
}

char *gtl_limit_barred(const gtl_limit *limit)
{
    const gtl_edge *edge = &limit->barred;
    gtl_text text = {0};
    if (edge->kind == GTL_EDGE_RATING)
        add_part_over(limit, &text);
    else if (edge->kind == GTL_EDGE_FITTING)
        gtl_text_add(&text, "%s, a head fitting, does not hold twice the line",
                     gtl_limit_part(limit, edge->component).text);
    else
        add_other(limit, edge, "", &text);
    return gtl_text_take(&text);
}

/* --- lists of sentences --- */

/* Hand over the finished sentence. */
static void say(gtl_text *text, gtl_sink *sink, void *context)
{
    char *sentence = gtl_text_take(text);
    sink(context, sentence);
    free(sentence);
}

/* A sentence with what bars behind it. */
static void say_with(const char *before, char *bar, gtl_sink *sink, void *context)
{
    gtl_text text = {0};
    gtl_text_add(&text, "%s%s", before, bar ? bar : "");
    text.failed |= !bar;
    say(&text, sink, context);
    free(bar);
}

/* Whether any part that carries something has a rating to be brought to. */
static bool any_rated(const gtl_limit *limit)
{
    for (int i = 0; i < limit->at_limit.component_count; i++)
        if (limit->at_limit.components[i].mark == GTL_MARK_WITHIN) return true;
    return false;
}

char *gtl_limit_none(const gtl_limit *limit)
{
    gtl_text text = {0};
    gtl_figure most = gtl_limit_mass_down(limit, limit->highest);
    if (!limit->found)
        gtl_text_add(&text, "of the loads tried from %s to %s none is within the ratings",
                     gtl_limit_mass_down(limit, limit->lowest).text, most.text);
    else if (!any_rated(limit))
        gtl_text_add(&text, "no limit was found, since no part that carries the load has a rating");
    else
        gtl_text_add(&text, "no limit was found: no load tried up to %s brings a part to its rating",
                     most.text);
    return gtl_text_take(&text);
}

void gtl_limit_why(const gtl_limit *limit, gtl_sink *sink, void *context)
{
    if (!limit->permitted)
        say_with("the load as drawn is not within the ratings: ", gtl_limit_barred(limit), sink, context);
    if (!limit->found || limit->heaviest.kind == GTL_EDGE_NONE)
        say_with("", gtl_limit_none(limit), sink, context);
    else if (limit->heaviest.kind != GTL_EDGE_RATING || limit->heaviest.jumps)
        say_with("the limit is no rating reached: ", gtl_limit_edge(limit, &limit->heaviest), sink, context);
}

/* Those reasons of a sheet's verdict that leave a load open. */
static void say_open(const gtl_sheet *sheet, unsigned why, gtl_sink *sink, void *context)
{
    gtl_sheet masked = *sheet;
    masked.why = why & GTL_LIMIT_OPEN;
    gtl_words_why(&masked, GTL_ALL_NAMES, sink, context);
}

static void say_undecided(const gtl_limit *limit, gtl_sink *sink, void *context)
{
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = GTL_ALL_NAMES};
    gtl_text_add(&text, "which way friction acts is undecided, and the worse way counts: ");
    for (int i = 0; i < limit->undecided_count; i++)
        gtl_names_add(&names, limit->rig->things[limit->undecided[i]].name);
    gtl_names_end(&names);
    say(&text, sink, context);
}

void gtl_limit_open(const gtl_limit *limit, gtl_sink *sink, void *context)
{
    unsigned drawn = limit->answered ? limit->as_drawn.why : 0;
    if (limit->answered) say_open(&limit->as_drawn, drawn, sink, context);
    if (limit->found) say_open(&limit->at_limit, limit->at_limit.why & ~drawn, sink, context);
    if (limit->undecided_count > 0) say_undecided(limit, sink, context);
    if (!limit->every_combination)
        sink(context, "more stops are undecided than every combination was tried of");
    if (limit->between_ends)
        sink(context,
             "what is stated as a range was worked at its ends, and between them a force may be greater");
}
