/* route_words.c - the way of a line told in a sentence.
 *
 * A line of many stops is told at both its ends; of what lies between it is said how many stops there are,
 * so that a long tackle takes no more words than a short one. */
#include "report/route_words.h"
#include "report/geometry.h"

#include <math.h>
#include <string.h>

/* Within 15 degrees a part is called vertical, or level. */
#define COS_15 0.9659258262890683
#define SIN_15 0.25881904510252074

/* A line turns over a thing, or under it, where the middle of its arc is within 60 degrees of the top or the
 * bottom; the tangent is taken a little greater, so that what is just there falls on one side. */
#define TAN_60 1.75

/* A turn of less than a degree is none that anybody sees [1]. */
#define NO_TURN 0.0175

/* Up to so many stops all are told; of more, the first and the last parts. */
#define ALL_STOPS   10
#define FIRST_PARTS 3
#define LAST_PARTS  2

static const double *place(const gtl_scene *scene, int stop)
{
    int node = scene->rig->things[scene->rig->stops[stop].thing].node;
    return scene->figures ? scene->outcome->state->at + 3 * node : scene->rig->nodes[node].at;
}

/* Unit vector from one stop towards another; false where they are in one place. */
static bool direction(const gtl_scene *scene, int from, int to, double unit[3])
{
    const double *start = place(scene, from), *end = place(scene, to);
    int dim = scene->rig->dim;
    for (int i = 0; i < dim; i++) unit[i] = end[i] - start[i];
    double size = gtl_vector_size(unit, dim);
    for (int i = 0; i < dim; i++) unit[i] /= size;
    return size > 0;
}

static const char *name_at(const gtl_rig *rig, int stop)
{
    return rig->things[rig->stops[stop].thing].name;
}

/* --- figures --- */

static bool is_slack(const gtl_scene *scene, int part)
{
    return scene->outcome->state->slack[scene->rig->parts[part].piece];
}

static double tension(const gtl_scene *scene, int part)
{
    return is_slack(scene, part) ? 0 : scene->outcome->state->tension[part];
}

static gtl_figure figure(const gtl_scene *scene, int part)
{
    if (is_slack(scene, part)) return (gtl_figure){"slack"};
    return gtl_figure_force_unit(&scene->units, tension(scene, part));
}

/* Whether all parts of a line print the same. */
static bool all_alike(const gtl_scene *scene, const gtl_line *line)
{
    gtl_figure first = figure(scene, line->first_part);
    for (int k = 1; k < line->stop_count - 1; k++)
        if (strcmp(figure(scene, line->first_part + k).text, first.text) != 0) return false;
    return true;
}

static void add_common_figure(gtl_text *text, const gtl_scene *scene, const gtl_line *line)
{
    if (is_slack(scene, line->first_part))
        gtl_text_add(text, "; it is slack and carries nothing");
    else
        gtl_text_add(text, "; it carries %s%s", figure(scene, line->first_part).text,
                     line->stop_count > 2 ? " throughout" : "");
}

/* Of a line that is not told in full: what its parts come to. */
static void add_range(gtl_text *text, const gtl_scene *scene, const gtl_line *line)
{
    int least = line->first_part;
    int most = least;
    int slack = 0;
    for (int k = 0; k < line->stop_count - 1; k++) {
        int part = line->first_part + k;
        if (tension(scene, part) < tension(scene, least)) least = part;
        if (tension(scene, part) > tension(scene, most)) most = part;
        slack += is_slack(scene, part);
    }
    gtl_text_add(text, " Of its %d parts", line->stop_count - 1);
    if (slack > 0) gtl_text_add(text, " %d %s slack, and", slack, slack == 1 ? "is" : "are");
    gtl_text_add(text, " the least carries %s and the most %s.",
                 gtl_figure_force_unit(&scene->units, tension(scene, least)).text,
                 gtl_figure_force_unit(&scene->units, tension(scene, most)).text);
}

/* --- stops and parts --- */

static void add_vias(gtl_text *text, const gtl_rig *rig, gtl_via via)
{
    for (int i = 0; i < via.count; i++)
        gtl_text_add(text, "%s%s", i > 0 ? " and " : " by ", rig->connectors[rig->vias[via.first + i]].name);
}

static void add_beginning(gtl_text *text, const gtl_rig *rig, const gtl_stop *stop)
{
    const gtl_thing *thing = &rig->things[stop->thing];
    if (thing->kind == GTL_HAND) {
        gtl_text_add(text, " begins at the hand %s", thing->name);
        return;
    }
    gtl_text_add(text, " is tied to %s%s", thing->kind == GTL_BLOCK ? "the becket of " : "", thing->name);
    add_vias(text, rig, stop->via);
}

static void add_way(gtl_text *text, const double unit[3], int dim)
{
    double up = unit[dim - 1];
    const char *sense = up > 0 ? "up" : "down";
    if (fabs(up) >= COS_15)
        gtl_text_add(text, "%s ", sense);
    else if (fabs(up) > SIN_15)
        gtl_text_add(text, "slanting %s ", sense);
    else
        gtl_text_add(text, "across ");
    if (dim == 2 && fabs(up) < COS_15) gtl_text_add(text, "to the %s ", unit[0] > 0 ? "right" : "left");
}

static void add_part(gtl_text *text, const gtl_scene *scene, int part, bool with_figure)
{
    const gtl_part *at = &scene->rig->parts[part];
    double unit[3];
    if (direction(scene, at->from, at->to, unit)) add_way(text, unit, scene->rig->dim);
    gtl_text_add(text, "to %s", name_at(scene->rig, at->to));
    if (with_figure) gtl_text_add(text, " (%s)", figure(scene, part).text);
}

/* On which side a line passes a running stop: the outer side of its turn faces away from both its parts. */
static const char *side(const gtl_scene *scene, int stop)
{
    int dim = scene->rig->dim;
    double back[3], onward[3], inward[3];
    bool known = direction(scene, stop, stop - 1, back);
    known = direction(scene, stop, stop + 1, onward) && known;
    if (!known) return "round";
    for (int i = 0; i < dim; i++) inward[i] = back[i] + onward[i];
    if (scene->rig->things[scene->rig->stops[stop].thing].turns > 0) return "round";
    if (gtl_vector_size(inward, dim) < NO_TURN) return "straight past";
    double up = inward[dim - 1];
    if (TAN_60 * fabs(up) < gtl_vector_size(inward, dim - 1)) return "round";
    return up < 0 ? "over" : "under";
}

/* What a line does where a part has brought it, before it goes on. */
static void add_stop(gtl_text *text, const gtl_scene *scene, int stop)
{
    const gtl_stop *at = &scene->rig->stops[stop];
    const gtl_thing *thing = &scene->rig->things[at->thing];
    if (thing->kind == GTL_HAND) return;
    if (at->tied) {
        gtl_text_add(text, ", where it is tied");
        add_vias(text, scene->rig, at->via);
        return;
    }
    gtl_text_add(text, ", %s it", side(scene, stop));
    if (thing->turns > 0)
        gtl_text_add(text, " with %d whole turn%s more", thing->turns, thing->turns > 1 ? "s" : "");
}

/* --- lines --- */

static void add_parts(gtl_text *text, const gtl_scene *scene, const gtl_line *line, int from, int to,
                      bool with_figures)
{
    for (int k = from; k < to; k++) {
        gtl_text_add(text, "%s", k == 0 ? " and goes " : k > from ? ", " : " ");
        add_part(text, scene, line->first_part + k, with_figures);
        add_stop(text, scene, line->first_stop + k + 1);
    }
}

/* Whether the stops from `first` to `last` are two things in turn, and none of them is tied. */
static bool goes_to_and_fro(const gtl_rig *rig, int first, int last)
{
    for (int i = first; i <= last; i++)
        if (rig->stops[i].tied || (i > first + 1 && rig->stops[i].thing != rig->stops[i - 2].thing))
            return false;
    return true;
}

/* What lies between the parts that are told in full. */
static void add_middle(gtl_text *text, const gtl_scene *scene, const gtl_line *line)
{
    int reached = line->first_stop + FIRST_PARTS;
    int resumed = line->first_stop + line->stop_count - 1 - LAST_PARTS;
    const char *first = name_at(scene->rig, reached - 1), *second = name_at(scene->rig, reached);
    if (goes_to_and_fro(scene->rig, reached - 1, resumed))
        gtl_text_add(text, ", and so on to and fro between %s and %s", first, second);
    else
        gtl_text_add(text, ", then on by %d more stops in the order of its path", resumed - reached);
    gtl_text_add(text, ", and at last from %s", name_at(scene->rig, resumed));
}

static void add_rope(gtl_text *text, const gtl_scene *scene, const gtl_line *line)
{
    int parts = line->stop_count - 1;
    bool whole = line->stop_count <= ALL_STOPS;
    bool alike = scene->figures && all_alike(scene, line);
    bool with_figures = scene->figures && !alike;
    add_beginning(text, scene->rig, &scene->rig->stops[line->first_stop]);
    add_parts(text, scene, line, 0, whole ? parts : FIRST_PARTS, with_figures);
    if (!whole) {
        add_middle(text, scene, line);
        add_parts(text, scene, line, parts - LAST_PARTS, parts, with_figures);
    }
    if (alike) add_common_figure(text, scene, line);
    gtl_text_add(text, ".");
    if (!whole && with_figures) add_range(text, scene, line);
}

static void add_spar(gtl_text *text, const gtl_scene *scene, const gtl_line *line)
{
    gtl_text_add(text, " goes from %s ", name_at(scene->rig, line->first_stop));
    add_part(text, scene, line->first_part, false);
    if (scene->figures) {
        double force = scene->outcome->state->tension[line->first_part];
        if (fabs(force) <= scene->units.noise)
            gtl_text_add(text, "; it carries nothing");
        else
            gtl_text_add(text, "; it is %s with %s", force < 0 ? "pushed" : "pulled",
                         gtl_figure_force_unit(&scene->units, fabs(force)).text);
    }
    gtl_text_add(text, ".");
}

void gtl_add_route(gtl_text *text, const gtl_scene *scene, int line)
{
    const gtl_line *told = &scene->rig->lines[line];
    const gtl_line *as_drawn = &scene->sheet->rig->lines[line];
    const char *kind = gtl_kind_name(told->kind);
    if (told->stop_count == 0) {
        gtl_text_add(text, "The %s %s is gone.", kind, told->name);
        return;
    }
    gtl_text_add(text, "%s %s %s", told->stop_count < as_drawn->stop_count ? "What is left of the" : "The",
                 kind, told->name);
    if (told->kind == GTL_SPAR)
        add_spar(text, scene, told);
    else
        add_rope(text, scene, told);
}
