/* body_words.c - a body that is cut free, told in sentences for whoever cannot see the figure. */
#include "explain/body_figure.h"

#include <math.h>

/* Half of the last digit that an angle is printed with [rad]. */
#define ON_THE_LINE 0.0008726646259971648
#define HALF_TURN   3.141592653589793 /* [rad] */

static void add_plane_way(gtl_text *text, const double way[3])
{
    double from_up = fabs(atan2(way[0], way[1]));
    const char *side = way[0] > 0 ? "right" : "left";
    if (from_up < ON_THE_LINE)
        gtl_text_add(text, "straight up");
    else if (HALF_TURN - from_up < ON_THE_LINE)
        gtl_text_add(text, "straight down");
    else if (fabs(from_up - HALF_TURN / 2) < ON_THE_LINE)
        gtl_text_add(text, "level to the %s", side);
    else
        gtl_text_add(text, "%s to the %s, %s from upright", way[1] > 0 ? "up" : "down", side,
                     gtl_exact_degrees(fmin(from_up, HALF_TURN - from_up)).text);
}

static void add_space_way(gtl_text *text, const double way[3])
{
    static const char *const along[2][3] = {
        {"level, towards smaller x", "level, towards smaller y", "straight down"},
        {"level, towards greater x", "level, towards greater y", "straight up"}};
    for (int i = 0; i < 3; i++) {
        if (1 - fabs(way[i]) > ON_THE_LINE * ON_THE_LINE / 2) continue;
        gtl_text_add(text, "%s", along[way[i] > 0][i]);
        return;
    }
    gtl_text_add(text, "cosines %s (x), %s (y), %s (up)", gtl_exact_number(way[0]).text,
                 gtl_exact_number(way[1]).text, gtl_exact_number(way[2]).text);
}

void gtl_add_way_words(gtl_text *text, const gtl_body *body, const gtl_force *force)
{
    const double *way = force->way;
    switch (body->lesson->rig->dim) {
    case 1:
        gtl_text_add(text, "straight %s", way[0] > 0 ? "up" : "down");
        break;
    case 2:
        add_plane_way(text, way);
        break;
    default:
        add_space_way(text, way);
    }
}

static const char *const verbs[] = {
    [GTL_FORCE_PULL] = "pulls",
    [GTL_FORCE_PUSH] = "pushes",
    [GTL_FORCE_WEIGHT] = "weighs",
    [GTL_FORCE_SUPPORT] = "holds",
};

static void add_force(gtl_text *text, const gtl_body *body, const gtl_force *force)
{
    const gtl_rig *rig = body->lesson->rig;
    gtl_text_add(text, " %s %s %s, ", gtl_force_name(force).text, verbs[force->kind],
                 gtl_force_size(body, force).text);
    gtl_add_way_words(text, body, force);
    if (force->other >= 0)
        gtl_text_add(text, force->kind == GTL_FORCE_PUSH ? ", from %s" : ", towards %s",
                     rig->things[force->other].name);
    if (force->last.text[0]) gtl_text_add(text, "; these are %d parts side by side", force->count);
    gtl_text_add(text, ".");
}

char *gtl_body_words(const gtl_body *body)
{
    gtl_text text = {0};
    gtl_add_body_name(&text, body->lesson, body->node);
    gtl_text_add(&text, ", cut free.");
    for (int i = 0; i < body->count; i++) add_force(&text, body, &body->forces[i]);
    if (body->left_out > 0) gtl_text_add(&text, " Forces that are not drawn: %d.", body->left_out);
    if (body->idle > 0) gtl_text_add(&text, " Parts that pull nothing here: %d.", body->idle);
    return gtl_text_take(&text);
}
