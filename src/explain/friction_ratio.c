/* friction_ratio.c - where the ratio of the pulls on both sides of a stop comes from. */
#include "explain/friction.h"
#include "report/geometry.h"
#include "report/names.h"

#include <math.h>
#include <stdlib.h>

#define HALF_TURN 3.141592653589793 /* [rad] */

bool gtl_rubs(const gtl_thing *thing)
{
    if (!thing->friction_stated) return false;
    if (thing->kind == GTL_FAIRLEAD && !isnan(thing->friction)) return thing->friction > 0;
    return thing->efficiency < 1;
}

static bool same_number(double a, double b)
{
    return (isnan(a) && isnan(b)) || fabs(a - b) <= GTL_NEARLY * fmax(1, fabs(a));
}

static bool alike(const gtl_rig *rig, const gtl_ratio *ratio, int run, double angle)
{
    const gtl_thing *a = &rig->things[rig->runs[ratio->run].thing];
    const gtl_thing *b = &rig->things[rig->runs[run].thing];
    return a->kind == b->kind && same_number(ratio->angle, angle) && a->turns == b->turns &&
           isnan(a->wrap) == isnan(b->wrap) && same_number(a->friction, b->friction) &&
           same_number(a->efficiency, b->efficiency);
}

static double ratio_at(const gtl_bodies *bodies, int run)
{
    const double *tension = bodies->outcome->state->tension + bodies->lesson->rig->runs[run].before;
    return fmax(tension[0], tension[1]) / fmin(tension[0], tension[1]);
}

/* Whether the pulls at a stop differ. */
static bool differs(const gtl_bodies *bodies, int run)
{
    const gtl_rig *rig = bodies->lesson->rig;
    return bodies->outcome->state->sense[run] != 0 && !bodies->idle[rig->runs[run].piece] &&
           gtl_rubs(&rig->things[rig->runs[run].thing]) && ratio_at(bodies, run) > 1 + GTL_NEARLY;
}

bool gtl_ratios_begin(gtl_ratios *ratios, const gtl_bodies *bodies)
{
    const gtl_rig *rig = bodies->lesson->rig;
    size_t room = (size_t)rig->run_count + 1;
    *ratios = (gtl_ratios){.items = calloc(room, sizeof *ratios->items),
                           .of_run = calloc(room, sizeof *ratios->of_run)};
    if (!ratios->items || !ratios->of_run) {
        bodies->lesson->document->failed = true;
        return false;
    }
    for (int run = 0; run < rig->run_count; run++) {
        ratios->of_run[run] = -1;
        if (!differs(bodies, run)) continue;
        double angle = gtl_wrap_angle(bodies->outcome, run);
        int index = 0;
        while (index < ratios->count && !alike(rig, &ratios->items[index], run, angle)) index++;
        if (index == ratios->count)
            ratios->items[ratios->count++] = (gtl_ratio){run, angle, ratio_at(bodies, run)};
        ratios->of_run[run] = index;
    }
    return true;
}

void gtl_ratios_end(gtl_ratios *ratios)
{
    free(ratios->items);
    free(ratios->of_run);
    *ratios = (gtl_ratios){0};
}

/* The things that have a ratio, each once. */
static void add_places(gtl_text *text, const gtl_rig *rig, const gtl_ratios *ratios, int index)
{
    gtl_names names = {.text = text, .most = GTL_MOST_ITEMS};
    for (int run = 0; run < rig->run_count; run++) {
        if (ratios->of_run[run] != index) continue;
        bool before = false;
        for (int i = 0; i < run && !before; i++)
            before = ratios->of_run[i] == index && rig->runs[i].thing == rig->runs[run].thing;
        if (!before) gtl_names_add(&names, rig->things[rig->runs[run].thing].name);
    }
    gtl_names_end(&names);
}

/* A sheave at half a turn: its efficiency itself. */
static void plain_sheave(gtl_document *document, int number, const gtl_thing *thing, double ratio)
{
    gtl_document_paragraph(document,
                           "The rope turns through half a circle here. There a sheave passes on its "
                           "efficiency's share of the pull, so the greater pull is the lesser one over the "
                           "efficiency:");
    gtl_document_equation(document, "k%d = 1 / %s = %s", number, gtl_exact_number(thing->efficiency).text,
                          gtl_exact_number(ratio).text);
}

/* Another angle: the bearing takes f times the force that both parts put on it. */
static void turned_sheave(gtl_document *document, int number, const gtl_thing *thing, const gtl_ratio *item)
{
    gtl_figure e = gtl_exact_number(thing->efficiency), k = gtl_exact_number(item->ratio);
    double f = (1 - thing->efficiency) / (1 + thing->efficiency);
    gtl_figure share = gtl_exact_number(f), cosine = gtl_exact_number(cos(item->angle));
    gtl_document_paragraph(
        document,
        "The rope turns through %s here. The efficiency is meant at half a circle; a smaller force on the "
        "bearing rubs less. The two pulls differ by f times the force that both together put on the sheave, "
        "with f from the efficiency:",
        gtl_exact_degrees(item->angle).text);
    gtl_document_equation(document, "f%d = (1 - %s) / (1 + %s) = %s", number, e.text, e.text, share.text);
    gtl_document_paragraph(document,
                           "With pulls of 1 and k, and %s for the cosine of the angle, that law, squared, "
                           "holds for one k above 1:",
                           cosine.text);
    gtl_document_equation(document, "k%d = %s", number, k.text);
    /* A negative cosine stands in brackets, as a factor does. */
    bool minus = cosine.text[0] == '-';
    const char *left = minus ? "(" : "", *right = minus ? ")" : "";
    gtl_document_equation(document, "(k%d - 1)^2 = f%d^2 x (1 + k%d^2 - 2 x k%d x %s%s%s)", number, number,
                          number, number, left, cosine.text, right);
    gtl_document_equation(document, "(%s - 1)^2 = %s^2 x (1 + %s^2 - 2 x %s x %s%s%s)", k.text, share.text,
                          k.text, k.text, left, cosine.text, right);
}

/* A bend without a sheave. */
static void bend(gtl_document *document, int number, const gtl_thing *thing, const gtl_ratio *item)
{
    gtl_figure k = gtl_exact_number(item->ratio);
    gtl_figure angle = gtl_exact_degrees(item->angle - 2 * HALF_TURN * thing->turns);
    gtl_text all = {0};
    if (thing->turns > 0)
        gtl_text_add(&all, "(%s + %d x 360 deg)", angle.text, thing->turns);
    else
        gtl_text_add(&all, "%s", angle.text);
    char *whole = gtl_text_take(&all);
    if (!whole) {
        document->failed = true;
        return;
    }
    if (isnan(thing->friction)) {
        gtl_document_paragraph(document,
                               "The rope bends over this without a sheave. Friction there multiplies: each "
                               "half circle by 1 over the efficiency, so the angle counts in half circles:");
        gtl_document_equation(document, "k%d = (1 / %s)^(%s / 180 deg) = %s", number,
                              gtl_exact_number(thing->efficiency).text, whole, k.text);
    } else {
        gtl_document_paragraph(
            document, "The rope bends over this without a sheave. Friction there multiplies: e, "
                      "which is 2.71828, to the power of the coefficient of friction times the angle "
                      "in radians:");
        gtl_document_equation(document, "w%d = %s / 180 deg x 3.14159 = %s", number, whole,
                              gtl_exact_number(item->angle).text);
        gtl_document_equation(document, "k%d = 2.71828^(%s x w%d) = 2.71828^(%s x %s) = %s", number,
                              gtl_exact_number(thing->friction).text, number,
                              gtl_exact_number(thing->friction).text, gtl_exact_number(item->angle).text,
                              k.text);
    }
    free(whole);
}

void gtl_ratio_step(const gtl_bodies *bodies, const gtl_ratios *ratios, int index)
{
    gtl_lesson *lesson = bodies->lesson;
    const gtl_ratio *item = &ratios->items[index];
    const gtl_thing *thing = &lesson->rig->things[lesson->rig->runs[item->run].thing];
    gtl_text places = {0};
    add_places(&places, lesson->rig, ratios, index);
    char *where = gtl_text_take(&places);
    if (!where) {
        lesson->document->failed = true;
        return;
    }
    gtl_lesson_step(lesson, "The ratio k%d of the pulls at %s", index + 1, where);
    free(where);
    if (!isnan(thing->wrap))
        gtl_document_paragraph(lesson->document, "The angle of contact is the one that the rig file states.");
    if (thing->kind == GTL_FAIRLEAD)
        bend(lesson->document, index + 1, thing, item);
    else if (fabs(item->angle - HALF_TURN) <= GTL_NEARLY)
        plain_sheave(lesson->document, index + 1, thing, item->ratio);
    else
        turned_sheave(lesson->document, index + 1, thing, item);
    gtl_document_pair(lesson->document, "Result", "k%d = %s", index + 1, gtl_exact_number(item->ratio).text);
}
