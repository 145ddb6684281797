/* drawing_words.c - one case of a rig told in words, for whoever cannot see its drawing: a paragraph a line.
 *
 * Figures are the report's: tensions and pulls of the state that is printed, forces on bodies and anchors the
 * worst of all states that the case stands for. */
#include "report/drawing.h"

#include "report/escape.h"
#include "report/geometry.h"
#include "report/route_words.h"
#include "report/words.h"
#include "rig/kind.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Of a list of names, or of bodies, so many are told. */
#define MOST_NAMES  8
#define MOST_BODIES 24

/* A pull as near as this to the plumb line or to level is told as there: half of the last digit printed
 * [rad]. */
#define ON_THE_LINE 0.0008726646259971648
#define PI          3.141592653589793

/* --- what the case is --- */

static const char *const cases[] = {
    [GTL_HOLD] = "at rest, without friction",
    [GTL_RAISE] = "the load moves up slowly, with the friction stated",
    [GTL_LOWER] = "the load moves down slowly, with the friction stated",
    [GTL_JAM] = "the load is caught at its height and every hand pulls all it can",
    [GTL_START] = "raising from rest, with the inertia of all that moves",
    [GTL_STOP] = "braking while lowering, with the inertia of all that moves",
    [GTL_LOST] = "a part lets go, and the rig hangs anew",
    [GTL_DROP] = "a load is caught after a free fall, at the peak of it",
};

static void add_loss(gtl_text *text, const gtl_scene *scene)
{
    const gtl_outcome *outcome = scene->outcome;
    gtl_text_add(text, " All forces are times %s.", gtl_figure_typed(scene->rig->loss_factor).text);
    for (int i = 0; i < scene->rig->thing_count; i++)
        if (gtl_is_loose(outcome, i))
            gtl_text_add(text, " %s came loose and is left out.", scene->rig->things[i].name);
    if (outcome->drop > 0)
        gtl_text_add(text,
                     " What %s catches drops before that, since the line had %s of slack: that makes more "
                     "force than is told here.",
                     outcome->catcher, gtl_figure_length_unit(&scene->units, outcome->drop).text);
}

static void add_drop(gtl_text *text, const gtl_scene *scene)
{
    const gtl_drop *caught = scene->outcome->caught;
    gtl_text_add(
        text, " %s falls %s, and the peak is %s there; parts are held against their ratings at %s there.",
        scene->rig->things[caught->load].name, gtl_figure_length_unit(&scene->units, caught->fall).text,
        gtl_figure_force_unit(&scene->units, caught->peak).text,
        gtl_figure_force_unit(&scene->units, caught->checked).text);
}

/* What a case's figures leave open. */
static void add_open(gtl_text *text, const gtl_scene *scene)
{
    const gtl_outcome *outcome = scene->outcome;
    if (outcome->variants > 1)
        gtl_text_add(text,
                     " Tensions and pulls are of one state out of %d that may be, %s; forces on bodies and "
                     "anchors are the worst of all.",
                     outcome->variants,
                     outcome->kind == GTL_JAM ? "the one without friction"
                     : outcome->kind == GTL_DROP
                         ? "the one with equal tensions"
                         : "the one with equal tensions where friction may act either "
                           "way");
    if (scene->sheet->frees_all && outcome->band.pull)
        gtl_text_add(text,
                     " Friction is stated as a range: tensions and pulls have all of it at its %s; forces on "
                     "bodies and anchors are the worst of %d rigs.",
                     outcome->band.freest ? "least" : "most", outcome->band.rigs);
    if (outcome->places > 1)
        gtl_text_add(text, " The rig can hang in %d places near its drawing; this is the nearest.",
                     outcome->places);
    if ((scene->sheet->why & GTL_WHY_FRICTION) && gtl_case_direction(outcome->kind) > 0)
        gtl_text_add(text, " Friction is not stated everywhere: the true pull is more.");
}

static void tell_case(gtl_text *text, const gtl_scene *scene)
{
    const gtl_outcome *outcome = scene->outcome;
    gtl_text_add(text, "Case %s: %s.", outcome->name, cases[outcome->kind]);
    if (!scene->figures) {
        gtl_text_add(text, " %s%s. What follows is the rig as its file draws it, without forces.",
                     outcome->falls ? "" : "It cannot be: ", outcome->reason);
        return;
    }
    if (outcome->kind == GTL_LOST) add_loss(text, scene);
    if (outcome->kind == GTL_DROP) add_drop(text, scene);
    add_open(text, scene);
}

/* --- the verdict --- */

/* A sink for words.h. */
static void add_reason(void *context, const char *sentence)
{
    gtl_text *text = context;
    if (sentence)
        gtl_text_add(text, "; %s", sentence);
    else
        text->failed = true;
}

static void add_over(gtl_text *text, const gtl_sheet *sheet, const gtl_component *part)
{
    gtl_text_add(text, " The %s %s is over its rating", gtl_kind_name(part->kind), part->name);
    if (isfinite(part->utilisation))
        gtl_text_add(text, ", at %s %%", gtl_figure_utilisation(part->utilisation).text);
    else
        gtl_text_add(text, ", used in a way that is not allowed");
    gtl_text_add(text, ", by %s.", sheet->outcomes[part->governing].name);
}

static void tell_verdict(gtl_text *text, const gtl_scene *scene)
{
    static const char *const verdicts[] = {
        [GTL_WITHIN] = "within the ratings typed in",
        [GTL_OVER] = "over: do not load this rig as it is",
        [GTL_UNRATED] = "unrated: too little is stated to say more",
    };
    const gtl_sheet *sheet = scene->sheet;
    gtl_text_add(text, "The verdict on the rig, by all cases worked, is %s", verdicts[sheet->verdict]);
    gtl_words_why(sheet, MOST_NAMES, add_reason, text);
    gtl_text_add(text, ".");
    for (int i = 0; i < sheet->component_count; i++)
        if (sheet->components[i].mark == GTL_MARK_OVER) add_over(text, sheet, &sheet->components[i]);
}

/* --- hands, bodies and loads --- */

static void tell_hands(gtl_text *text, const gtl_scene *scene)
{
    const gtl_rig *rig = scene->rig;
    for (int i = 0; i < rig->thing_count; i++) {
        if (rig->things[i].kind != GTL_HAND || !scene->figures) continue;
        double pull = gtl_outcome_pull(scene->outcome, i);
        bool unknown = scene->outcome->kind == GTL_DROP && gtl_is_behind_turns(scene->outcome->rig, i);
        gtl_text_add(text, "%sThe hand %s", text->length > 0 ? " " : "", rig->things[i].name);
        if (isnan(pull)) {
            gtl_text_add(text, "%s",
                         unknown ? " holds what is left behind the turns: not known." : " pulls on nothing.");
            continue;
        }
        gtl_text_add(text, " pulls %s", gtl_figure_force_unit(&scene->units, pull).text);
        if (scene->units.kgf) gtl_text_add(text, " (%s kgf)", gtl_figure_kgf(pull).text);
        bool holds_back =
            i == rig->hand && scene->outcome->kind == GTL_RAISE && scene->outcome->velocity_ratio < 0;
        gtl_text_add(text, "%s.", holds_back ? ", holding back while rope runs out" : "");
    }
}

/* Whether a component still takes part in a case that came to figures: what came loose does not. */
static bool is_told(const gtl_scene *scene, const gtl_component *part)
{
    return scene->figures && !gtl_is_loose(scene->outcome, part->index);
}

static gtl_figure demand(const gtl_scene *scene, const gtl_component *part)
{
    return gtl_figure_force_unit(&scene->units, scene->outcome->demand[part - scene->sheet->components]);
}

/* The forces on all bodies of the kinds from `first` to `last`. */
static void tell_bodies(gtl_text *text, const gtl_scene *scene, gtl_kind first, gtl_kind last,
                        const char *beginning)
{
    const gtl_sheet *sheet = scene->sheet;
    int count = 0;
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *part = &sheet->components[i];
        if (part->kind < first || part->kind > last || !is_told(scene, part)) continue;
        if (++count <= MOST_BODIES)
            gtl_text_add(text, "%s %s %s", count > 1 ? "," : beginning, part->name, demand(scene, part).text);
    }
    if (count > MOST_BODIES) gtl_text_add(text, " and %d more", count - MOST_BODIES);
    if (count > 0) gtl_text_add(text, ".");
}

static void tell_blocks(gtl_text *text, const gtl_scene *scene)
{
    tell_bodies(text, scene, GTL_BLOCK, GTL_FAIRLEAD, "The whole force on each block or fairlead:");
}

static void tell_joints(gtl_text *text, const gtl_scene *scene)
{
    tell_bodies(text, scene, GTL_JOINT, GTL_JOINT, "The greatest force across each joint:");
}

static void add_direction(gtl_text *text, const double *pull, int dim)
{
    double angle = gtl_from_vertical(pull, dim);
    if (isnan(angle)) return;
    if (angle < ON_THE_LINE) {
        gtl_text_add(text, ", pulled straight down");
        return;
    }
    if (PI - angle < ON_THE_LINE) {
        gtl_text_add(text, ", pulled straight up");
        return;
    }
    if (fabs(angle - PI / 2) < ON_THE_LINE)
        gtl_text_add(text, ", pulled level");
    else
        gtl_text_add(text, ", pulled %s, %s deg from straight down", angle < PI / 2 ? "down" : "up",
                     gtl_figure_degrees(angle).text);
    if (dim == 2) gtl_text_add(text, ", to the %s", pull[0] > 0 ? "right" : "left");
}

static bool has_let_go(const gtl_scene *scene, int anchor)
{
    const gtl_asked *asked = &scene->sheet->rig->cases[scene->outcome - scene->sheet->outcomes];
    return asked->lost_kind == GTL_ANCHOR && asked->lost == anchor;
}

static void tell_anchors(gtl_text *text, const gtl_scene *scene)
{
    const gtl_sheet *sheet = scene->sheet;
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *part = &sheet->components[i];
        if (part->kind != GTL_ANCHOR || !is_told(scene, part)) continue;
        gtl_text_add(text, "%sThe anchor %s", text->length > 0 ? " " : "", part->name);
        if (has_let_go(scene, part->index)) {
            gtl_text_add(text, " has let go.");
        } else if (scene->outcome->demand[i] <= scene->units.noise) {
            gtl_text_add(text, " holds nothing.");
        } else {
            gtl_text_add(text, " holds %s", demand(scene, part).text);
            add_direction(text, scene->outcome->forces.passed[part->index], sheet->rig->dim);
            gtl_text_add(text, ".");
        }
    }
}

static void tell_guides(gtl_text *text, const gtl_scene *scene)
{
    const gtl_rig *rig = scene->rig;
    for (int i = 0; i < rig->node_count; i++) {
        if (!rig->nodes[i].guided || !scene->figures) continue;
        double force = gtl_vector_size(scene->outcome->forces.track[i], rig->dim);
        gtl_text_add(text, "%sThe track of %s has to resist %s.", text->length > 0 ? " " : "",
                     rig->things[rig->nodes[i].root].name, gtl_figure_force_unit(&scene->units, force).text);
    }
}

static void tell_loads(gtl_text *text, const gtl_scene *scene)
{
    const gtl_rig *rig = scene->sheet->rig;
    for (int i = 0; i < rig->thing_count; i++) {
        const gtl_thing *load = &rig->things[i];
        if (!gtl_is_of(load->kind, GTL_WEIGHT_KINDS)) continue;
        gtl_text_add(text, "%sThe %s %s", text->length > 0 ? " " : "", gtl_kind_name(load->kind), load->name);
        if (load->on >= 0) gtl_text_add(text, ", on %s,", rig->things[load->on].name);
        gtl_text_add(text, " weighs %s", gtl_figure_force_unit(&scene->units, load->weight).text);
        if (scene->units.kgf) gtl_text_add(text, " (%s kgf)", gtl_figure_kgf(load->weight).text);
        gtl_text_add(text, "%s.", i == rig->load ? " and is the one that is lifted" : "");
    }
}

/* --- the whole --- */

/* One paragraph more, through the door for user text; nothing where it is empty. */
static void put(gtl_text *whole, gtl_text *paragraph)
{
    bool empty = paragraph->length == 0 && !paragraph->failed;
    char *raw = gtl_text_take(paragraph);
    char *clean = raw ? gtl_escape_for_people(raw) : NULL;
    free(raw);
    if (!empty && clean) gtl_text_add(whole, "%s%s", whole->length > 0 ? "\n" : "", clean);
    if (!clean) whole->failed = true;
    free(clean);
}

char *gtl_words_bare(const gtl_sheet *sheet)
{
    gtl_scene scene = {.sheet = sheet, .rig = sheet->rig, .units = gtl_print_units_for(sheet)};
    gtl_text whole = {0}, paragraph = {0};
    for (int i = 0; i < scene.rig->line_count; i++) {
        gtl_add_route(&paragraph, &scene, i);
        put(&whole, &paragraph);
    }
    return gtl_text_take(&whole);
}

char *gtl_words_drawing(const gtl_sheet *sheet, int outcome)
{
    static void (*const after_routes[])(gtl_text *, const gtl_scene *) = {
        tell_hands, tell_blocks, tell_joints, tell_anchors, tell_guides, tell_loads, tell_verdict};
    const gtl_outcome *told = &sheet->outcomes[outcome];
    gtl_scene scene = {.sheet = sheet,
                       .outcome = told,
                       .rig = told->possible ? told->rig : sheet->rig,
                       .units = gtl_print_units_for(sheet),
                       .figures = told->possible};
    gtl_text whole = {0}, paragraph = {0};
    tell_case(&paragraph, &scene);
    put(&whole, &paragraph);
    for (int i = 0; i < scene.rig->line_count; i++) {
        gtl_add_route(&paragraph, &scene, i);
        put(&whole, &paragraph);
    }
    for (size_t i = 0; i < sizeof after_routes / sizeof *after_routes; i++) {
        after_routes[i](&paragraph, &scene);
        put(&whole, &paragraph);
    }
    return gtl_text_take(&whole);
}
