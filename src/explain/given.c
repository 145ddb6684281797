/* given.c - what a rig file gives: bodies and their places, weights, friction, the way of each line. */
#include "explain/head.h"
#include "report/names.h"
#include "report/route_words.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

/* Of a long list so many are told; the rest is counted. */
#define MOST_TOLD 40
/* A mass that was typed comes back with rounding noise [1]. */
#define AS_TYPED 1e-9
/* The first mass that four decimals do not round away [kg or lb]. */
#define LEAST_MASS 0.001

#define POUND 0.45359237 /* [kg] */

/* --- bodies --- */

static void add_moves(gtl_text *text, const gtl_rig *rig, const gtl_thing *thing)
{
    const gtl_node *node = &rig->nodes[thing->node];
    if (thing->on >= 0)
        gtl_text_add(text, "on %s", rig->things[thing->on].name);
    else
        gtl_text_add(text, "%s", node->fixed ? "fixed" : node->guided ? "on a vertical track" : "free");
}

static void bodies(gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    char place[48];
    snprintf(place, sizeof place, "drawn at [%s]", lesson->units.length);
    const gtl_column columns[] = {{"body", false}, {"what it is", false}, {"moves", false}, {place, false}};
    gtl_document_table(lesson->document, columns, 4);
    for (int i = 0; i < rig->thing_count && i < MOST_TOLD; i++) {
        const gtl_thing *thing = &rig->things[i];
        gtl_text moves = {0};
        gtl_document_cell(lesson->document, "%s", thing->name);
        gtl_document_cell(lesson->document, "%s%s", gtl_is_lifted(rig, i) ? "lifted " : "",
                          gtl_kind_name(thing->kind));
        add_moves(&moves, rig, thing);
        gtl_document_put_cell(lesson->document, &moves);
        gtl_document_cell(lesson->document, "%s",
                          gtl_figure_place(&lesson->units, rig->nodes[thing->node].at, rig->dim).text);
    }
    if (rig->thing_count > MOST_TOLD)
        gtl_document_paragraph(lesson->document, "And %d bodies more.", rig->thing_count - MOST_TOLD);
}

/* --- weights --- */

/* A mass as somebody would type it, in one unit; false where it is none with four decimals. */
static bool typed_mass(double mass, double unit, const char *name, gtl_figure *figure)
{
    double number = mass / unit, round_number = round(number * 1e4) / 1e4;
    if (number < LEAST_MASS || fabs(number - round_number) > AS_TYPED * number) return false;
    *figure = gtl_figure_after(gtl_figure_typed(round_number), name);
    return true;
}

/* The mass behind a weight; false where the weight reads as one that was stated as a force. */
static bool mass_of(const gtl_lesson *lesson, double weight, gtl_figure *figure)
{
    double mass = weight / lesson->rig->gravity;
    bool us = lesson->rig->us_units;
    return typed_mass(mass, us ? POUND : 1, us ? "lb" : "kg", figure) ||
           typed_mass(mass, us ? 1 : POUND, us ? "kg" : "lb", figure);
}

static void weight(gtl_lesson *lesson, const char *name, double newtons)
{
    gtl_figure force = gtl_exact_force(lesson, newtons), mass;
    if (mass_of(lesson, newtons, &mass))
        gtl_document_equation(lesson->document, "W(%s) = %s x %s m/s2 = %s", name, mass.text,
                              gtl_figure_gravity(lesson->rig->gravity).text, force.text);
    else
        gtl_document_equation(lesson->document, "W(%s) = %s", name, force.text);
}

static void weights_of_things(gtl_lesson *lesson, int *told, gtl_names *weightless)
{
    const gtl_rig *rig = lesson->rig;
    for (int i = 0; i < rig->thing_count; i++) {
        const gtl_thing *thing = &rig->things[i];
        if (thing->weight > 0 && ++*told <= MOST_TOLD) weight(lesson, thing->name, thing->weight);
        if (thing->weight == 0 && thing->kind != GTL_ANCHOR && thing->kind != GTL_HAND)
            gtl_names_add(weightless, thing->name);
    }
}

static void weights_of_spars(gtl_lesson *lesson, int *told, gtl_names *weightless)
{
    const gtl_rig *rig = lesson->rig;
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        if (line->weight > 0 && ++*told <= MOST_TOLD) weight(lesson, line->name, line->weight);
        if (line->weight == 0 && line->kind == GTL_SPAR) gtl_names_add(weightless, line->name);
    }
}

static void weights(gtl_lesson *lesson)
{
    gtl_text text = {0};
    gtl_names weightless = {.text = &text, .most = MOST_TOLD};
    int told = 0;
    gtl_document_paragraph(lesson->document, "A weight is a force: mass times the acceleration of gravity.%s",
                           lesson->rig->us_units ? " One lbf is what one lb weighs at 9.80665 m/s2." : "");
    weights_of_things(lesson, &told, &weightless);
    weights_of_spars(lesson, &told, &weightless);
    if (told > MOST_TOLD) gtl_document_paragraph(lesson->document, "And %d weights more.", told - MOST_TOLD);
    gtl_names_end(&weightless);
    gtl_text_add(&text, "%s", weightless.count > 0 ? "; and all ropes and slings" : "all ropes and slings");
    gtl_document_put(lesson->document, GTL_PAIR, "Without weight", &text);
}

/* A batten is no body: its weight, and what hangs on it, are among the weights of its picks. */
static void battens(gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    for (int i = 0; i < rig->batten_count && i < MOST_TOLD; i++) {
        const gtl_batten *batten = &rig->battens[i];
        gtl_text text = {0};
        gtl_names picks = {.text = &text, .most = MOST_TOLD};
        gtl_text_add(&text, "its weight, and what hangs along it, come down on ");
        for (int k = 0; k < batten->pick_count; k++)
            gtl_names_add(&picks, rig->things[rig->picks[batten->first_pick + k].thing].name);
        gtl_names_end(&picks);
        gtl_text_add(&text, " and are among their weights above, shared as on lines that do not give");
        gtl_document_put(lesson->document, GTL_PAIR, batten->name, &text);
        if (rig->load >= 0 && gtl_batten_of(rig, rig->load) == i)
            gtl_document_equation(lesson->document, "%s = %s", gtl_symbol_lifted(lesson).text,
                                  gtl_exact_force(lesson, batten->total).text);
    }
}

/* --- hands and friction --- */

static bool is_known_pull(const gtl_thing *thing)
{
    return thing->kind == GTL_HAND && !isnan(thing->pull);
}

static bool has_known_pull(const gtl_rig *rig)
{
    for (int i = 0; i < rig->thing_count; i++)
        if (is_known_pull(&rig->things[i])) return true;
    return false;
}

/* Which of two hands this is about, and what of the other. */
static void pair_of_hands(gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    if (rig->hand < 0 || rig->things[rig->hand].other < 0) return;
    const char *pulls = rig->things[rig->hand].name, *other = rig->things[rig->things[rig->hand].other].name;
    const gtl_outcome *raise = gtl_sheet_outcome(lesson->sheet, GTL_RAISE);
    bool turns = raise && raise->possible && raise->rig->hand != rig->hand;
    gtl_document_paragraph(lesson->document,
                           "Of %s and %s only the one pulls that need not push: here %s, and %s is let go.%s",
                           pulls, other, pulls, other,
                           turns ? " To raise the load it is the other way round: the report has that." : "");
}

static void known_pulls(gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    if (has_known_pull(rig)) gtl_document_paragraph(lesson->document, "Pulls of hands that are known:");
    for (int i = 0; i < rig->thing_count; i++) {
        const gtl_thing *hand = &rig->things[i];
        if (is_known_pull(hand))
            gtl_document_equation(lesson->document, "P(%s) = %s", hand->name,
                                  gtl_exact_force(lesson, hand->pull).text);
    }
}

/* A stated friction; of a range the end that is worked with, which has more of it. */
static void put_friction(gtl_lesson *lesson, const gtl_thing *thing)
{
    bool coefficient = !isnan(thing->friction);
    double scale = coefficient ? 1 : 100, stated = coefficient ? thing->friction : thing->efficiency;
    const char *what = coefficient ? "coefficient of friction" : "efficiency";
    const char *unit = coefficient ? "" : " %", *where = coefficient ? "" : " at 180 deg";
    gtl_text text = {0};
    gtl_text_add(&text, "%s %s%s%s", what, gtl_figure_typed(scale * stated).text, unit, where);
    if (!isnan(thing->freest))
        gtl_text_add(&text, ": of the range stated, to %s%s, this is the end with more friction",
                     gtl_figure_typed(scale * thing->freest).text, unit);
    gtl_document_put(lesson->document, GTL_PAIR, thing->name, &text);
}

static void friction(gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    gtl_text text = {0};
    gtl_names silent = {.text = &text, .most = MOST_TOLD};
    int told = 0;
    for (int i = 0; i < rig->thing_count; i++) {
        const gtl_thing *thing = &rig->things[i];
        if (thing->kind != GTL_BLOCK && thing->kind != GTL_FAIRLEAD) continue;
        if (!thing->friction_stated)
            gtl_names_add(&silent, thing->name);
        else if (++told <= MOST_TOLD)
            put_friction(lesson, thing);
    }
    if (told > MOST_TOLD)
        gtl_document_paragraph(lesson->document, "And the friction of %d bodies more.", told - MOST_TOLD);
    gtl_names_end(&silent);
    bool any = silent.count > 0;
    char *names = gtl_text_take(&text);
    if (any)
        gtl_document_pair(lesson->document, "Friction", "not stated of %s, and none is put in there",
                          names ? names : "");
    if (any && !names) lesson->document->failed = true;
    free(names);
}

/* --- lines --- */

/* As the file draws it: no pull is known yet. */
static void routes(gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    gtl_scene scene = {
        .sheet = lesson->sheet, .outcome = NULL, .rig = rig, .units = lesson->units, .figures = false};
    for (int i = 0; i < rig->line_count && i < MOST_TOLD; i++) {
        gtl_text text = {0};
        gtl_add_route(&text, &scene, i);
        gtl_document_put(lesson->document, GTL_BULLET, NULL, &text);
    }
    if (rig->line_count > MOST_TOLD)
        gtl_document_paragraph(lesson->document, "And %d lines more.", rig->line_count - MOST_TOLD);
}

/* --- letters --- */

static bool has_spar(const gtl_rig *rig)
{
    for (int i = 0; i < rig->line_count; i++)
        if (rig->lines[i].kind == GTL_SPAR) return true;
    return false;
}

static void letters(gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    bool forces = lesson->wish.steps != GTL_STEPS_DISTANCES;
    gtl_text text = {0};
    gtl_text_add(&text, "W is a weight, T the pull of a rope or sling");
    if (has_spar(rig)) gtl_text_add(&text, ", S that of a spar, below zero where it pushes");
    if (has_known_pull(rig)) gtl_text_add(&text, ", P the known pull of a hand");
    if (forces) gtl_text_add(&text, ", R what a support holds");
    if (rig->hand >= 0) gtl_text_add(&text, ", E the effort: the pull of %s", rig->things[rig->hand].name);
    gtl_text_add(&text, ". The name in brackets says whose it is");
    gtl_text_add(&text, "%s.", lesson->raise ? "; with friction each part of a rope has a number" : "");
    gtl_document_put(lesson->document, GTL_PAIR, "Letters", &text);
}

void gtl_lesson_given(gtl_lesson *lesson)
{
    bodies(lesson);
    routes(lesson);
    weights(lesson);
    battens(lesson);
    pair_of_hands(lesson);
    known_pulls(lesson);
    if (!lesson->wish.ideal) friction(lesson);
    letters(lesson);
}
