/* drawing.c - what holds of every drawing: lines touch the sheaves that they run over, forces are to scale,
 * no label covers anything, all of it is inside.
 *
 * usage: drawing [COUNT [FIRST SEED]] */
#include "laws/rated.h"
#include "report/drawing_shapes.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const double touching = 0.01; /* a line and its sheave [units] */
static const double to_scale = 0.1;  /* an arrow [units] */

/* One drawing of one case of a rig. */
typedef struct plate {
    const gtl_outcome *outcome;
    const gtl_rig *rig; /* what is drawn */
    const gtl_drawing *drawing;
} plate;

/* Hold a law against the drawing of every case. */
static void hold_all(const specimen *s, void (*hold)(const plate *, ruling *), ruling *out)
{
    rated r;
    rate(s, &r);
    for (int i = 0; r.answered && i < r.sheet.outcome_count; i++) {
        gtl_drawing *drawing = gtl_draw(&r.sheet, i);
        const gtl_outcome *outcome = &r.sheet.outcomes[i];
        out->applied = true;
        if (!drawing)
            ruling_break(out, "%s is not drawn", outcome->name);
        else
            hold(&(plate){outcome, outcome->possible ? outcome->rig : r.sheet.rig, drawing}, out);
        gtl_drawing_end(drawing);
    }
    rated_end(&r);
}

static double distance(gtl_point a, gtl_point b)
{
    return hypot(b.x - a.x, b.y - a.y);
}

/* --- lines and sheaves --- */

/* The straight stretch of a part in a view, NULL where none is drawn. */
static const gtl_shape *stretch_of(const plate *p, int view, int part)
{
    for (int i = 0; i < p->drawing->count; i++) {
        const gtl_shape *shape = &p->drawing->shapes[i];
        if (shape->role == GTL_ROLE_PART && shape->view == view && shape->index == part) return shape;
    }
    return NULL;
}

/* The end that is at the sheave lies on it, and the line is square to the radius there. */
static void hold_touch(const gtl_shape *wrap, const gtl_shape *line, bool arrives, ruling *out)
{
    gtl_point end = arrives ? line->b : line->a;
    double along = distance(line->a, line->b);
    double off = ((line->b.x - line->a.x) * (wrap->a.y - line->a.y) -
                  (line->b.y - line->a.y) * (wrap->a.x - line->a.x)) /
                 along;
    if (fabs(distance(end, wrap->a) - wrap->radius) > touching)
        ruling_break(out, "a line ends %g off its sheave", distance(end, wrap->a) - wrap->radius);
    if (fabs(fabs(off) - wrap->radius) > touching)
        ruling_break(out, "a line is no tangent: %g from the axle, radius %g", fabs(off), wrap->radius);
    if ((off > 0) != (wrap->sweep > 0) && fabs(wrap->sweep) > 1e-3)
        ruling_break(out, "a line goes round the wrong way");
    double angle = arrives ? wrap->from : wrap->from + wrap->sweep;
    gtl_point on = {wrap->a.x + wrap->radius * cos(angle), wrap->a.y + wrap->radius * sin(angle)};
    if (distance(on, end) > touching) ruling_break(out, "an arc ends %g off its line", distance(on, end));
}

static void hold_wraps(const plate *p, ruling *out)
{
    for (int i = 0; i < p->drawing->count; i++) {
        const gtl_shape *wrap = &p->drawing->shapes[i];
        if (wrap->role != GTL_ROLE_WRAP) continue;
        int before = p->rig->runs[wrap->index].before;
        const gtl_shape *in = stretch_of(p, wrap->view, before);
        const gtl_shape *away = stretch_of(p, wrap->view, before + 1);
        if (!in || !away) {
            ruling_break(out, "an arc has no line on both sides");
            continue;
        }
        hold_touch(wrap, in, true, out);
        hold_touch(wrap, away, false, out);
    }
}

static void lines_touch(const specimen *s, ruling *out)
{
    hold_all(s, hold_wraps, out);
}

/* Every part that is not seen end on is drawn in each view, and where it is drawn it goes from body to body.
 */
static void hold_parts(const plate *p, ruling *out)
{
    int views = p->rig->dim == 3 ? 3 : 1;
    for (int part = 0; part < p->rig->part_count; part++) {
        bool found = false;
        for (int view = 0; view < views; view++) found |= stretch_of(p, view, part) != NULL;
        if (!found) ruling_break(out, "part %d is in no view", part);
    }
}

static void parts_are_drawn(const specimen *s, ruling *out)
{
    hold_all(s, hold_parts, out);
}

/* --- forces --- */

/* What a view shows of a vector, counted in its own unit. */
static double seen(const plate *p, int view, const double v[3])
{
    if (p->rig->dim == 1) return fabs(v[0]);
    if (p->rig->dim == 2) return hypot(v[0], v[1]);
    return view == 0 ? hypot(v[0], v[2]) : view == 1 ? hypot(v[1], v[2]) : hypot(v[0], v[1]);
}

/* The pull of a hand as a vector: along its line, from the places that the state has. */
static bool hand_vector(const plate *p, int hand, double v[3])
{
    const gtl_rig *rig = p->rig;
    for (int i = 0; i < rig->part_count; i++) {
        int from = rig->stops[rig->parts[i].from].thing, to = rig->stops[rig->parts[i].to].thing;
        if (from != hand && to != hand) continue;
        const double *a = p->outcome->state->at + 3 * rig->things[from].node;
        const double *b = p->outcome->state->at + 3 * rig->things[to].node;
        double whole = 0;
        for (int k = 0; k < rig->dim; k++) whole = hypot(whole, b[k] - a[k]);
        for (int k = 0; k < rig->dim; k++) v[k] = p->outcome->state->tension[i] * (b[k] - a[k]) / whole;
        return true;
    }
    return false;
}

static void hold_arrows(const plate *p, ruling *out)
{
    for (int i = 0; i < p->drawing->count; i++) {
        const gtl_shape *arrow = &p->drawing->shapes[i];
        if (arrow->role != GTL_ROLE_ARROW) continue;
        double v[3] = {0};
        bool hand = p->rig->things[arrow->index].kind == GTL_HAND;
        if (!p->outcome->possible) ruling_break(out, "a case that cannot be shows a force");
        if (!p->outcome->possible || (hand && !hand_vector(p, arrow->index, v))) continue;
        if (!hand) memcpy(v, p->outcome->forces.passed[arrow->index], sizeof v);
        double wanted = seen(p, arrow->view, v) / p->drawing->newtons;
        double length = distance(arrow->a, arrow->b);
        /* Of several states an anchor's arrow shows the worst, and that is no less than the printed one. */
        bool worst = !hand && p->outcome->variants > 1;
        if (worst ? length < wanted - to_scale : fabs(length - wanted) > to_scale)
            ruling_break(out, "an arrow is %g long, not %g", length, wanted);
    }
}

static void arrows_are_to_scale(const specimen *s, ruling *out)
{
    hold_all(s, hold_arrows, out);
}

/* --- places --- */

/* Bodies that sit on nothing are where the state has them, to one scale, their heights at least. */
static void hold_places(const plate *p, ruling *out)
{
    const double *first = NULL;
    gtl_point first_at = {0, 0};
    for (int i = 0; i < p->drawing->count; i++) {
        const gtl_shape *box = &p->drawing->shapes[i];
        if (box->kind != GTL_SHAPE_BOX || box->role != GTL_ROLE_BODY || box->view != 0) continue;
        const gtl_thing *load = &p->rig->things[box->index];
        if (load->on >= 0) continue;
        const double *at = p->outcome->possible ? p->outcome->state->at + 3 * load->node : load->at;
        gtl_point middle = {(box->a.x + box->b.x) / 2, (box->a.y + box->b.y) / 2};
        if (first && fabs(first_at.y - middle.y -
                          (at[p->rig->dim - 1] - first[p->rig->dim - 1]) * p->drawing->scale) > to_scale)
            ruling_break(out, "a height is not to scale");
        if (first && p->rig->dim > 1 &&
            fabs(middle.x - first_at.x - (at[0] - first[0]) * p->drawing->scale) > to_scale)
            ruling_break(out, "a place is not to scale");
        if (!first) first_at = middle;
        if (!first) first = at;
    }
}

static void places_are_to_scale(const specimen *s, ruling *out)
{
    hold_all(s, hold_places, out);
}

/* --- labels --- */

static bool overlap(const gtl_bounds *one, const gtl_bounds *other)
{
    return one->low.x < other->high.x && other->low.x < one->high.x && one->low.y < other->high.y &&
           other->low.y < one->high.y;
}

/* Whether a point of a segment is in a box, by halving: another road than the drawing takes. */
static bool enters(const gtl_bounds *box, gtl_point a, gtl_point b)
{
    gtl_bounds around = {{fmin(a.x, b.x), fmin(a.y, b.y)}, {fmax(a.x, b.x), fmax(a.y, b.y)}};
    around.high.x += 1e-9;
    around.high.y += 1e-9;
    if (!overlap(box, &around)) return false;
    if (distance(a, b) < 0.01) return true;
    gtl_point middle = {(a.x + b.x) / 2, (a.y + b.y) / 2};
    return enters(box, a, middle) || enters(box, middle, b);
}

static bool near_circle(const gtl_bounds *box, const gtl_shape *circle)
{
    gtl_point nearest = {fmin(fmax(circle->a.x, box->low.x), box->high.x),
                         fmin(fmax(circle->a.y, box->low.y), box->high.y)};
    return distance(nearest, circle->a) < circle->radius;
}

/* What of a drawing a text must not lie on. */
static bool covers(const gtl_bounds *box, const gtl_shape *shape)
{
    gtl_bounds other;
    switch (shape->kind) {
    case GTL_SHAPE_TEXT:
        other = gtl_text_bounds(shape);
        return overlap(box, &other);
    case GTL_SHAPE_LINE:
        return enters(box, shape->a, shape->b);
    case GTL_SHAPE_CIRCLE:
        return near_circle(box, shape);
    case GTL_SHAPE_BOX:
        return overlap(box, &(gtl_bounds){shape->a, shape->b});
    default:
        return false; /* arcs lie on sheaves, heads on arrows */
    }
}

static void hold_labels(const plate *p, ruling *out)
{
    for (int i = 0; i < p->drawing->count; i++) {
        const gtl_shape *text = &p->drawing->shapes[i];
        if (text->kind != GTL_SHAPE_TEXT) continue;
        gtl_bounds box = gtl_text_bounds(text);
        for (int k = 0; k < p->drawing->count; k++)
            if (k != i && covers(&box, &p->drawing->shapes[k]))
                ruling_break(out, "`%s` of role %d covers a shape %d of role %d", text->text, text->role,
                             p->drawing->shapes[k].kind, p->drawing->shapes[k].role);
    }
}

static void labels_cover_nothing(const specimen *s, ruling *out)
{
    hold_all(s, hold_labels, out);
}

/* Every part's figure is written somewhere: in its view or in the list. */
static void hold_figures(const plate *p, ruling *out)
{
    int texts = 0, wanted = 0;
    for (int i = 0; i < p->drawing->count; i++) {
        const char *text = p->drawing->shapes[i].text;
        size_t length = text ? strlen(text) : 0;
        texts += length > 1 && (strcmp(text + length - 1, "N") == 0 || strstr(text, "lbf") ||
                                strstr(text, "kip") || strstr(text, "push") || strstr(text, "slack"));
    }
    wanted = p->outcome->possible ? p->rig->part_count : 0;
    if (texts < wanted) ruling_break(out, "%d figures for %d parts", texts, wanted);
}

static void figures_are_told(const specimen *s, ruling *out)
{
    hold_all(s, hold_figures, out);
}

/* A letter of the list, up to "zzz", as a number; -1 for any other text. */
static int letter_number(const char *text, size_t length)
{
    int number = 0;
    if (length > 3) return -1;
    for (size_t i = 0; i < length; i++) {
        if (text[i] < 'a' || text[i] > 'z') return -1;
        number = 26 * number + text[i] - 'a' + 1;
    }
    return number;
}

/* How often a letter stands in the views, by itself or in a range. */
static int times_shown(const gtl_drawing *drawing, int number)
{
    int times = 0;
    for (int i = 0; i < drawing->count; i++) {
        const gtl_shape *text = &drawing->shapes[i];
        if (!text->text || text->role != GTL_ROLE_LABEL || !text->bold) continue;
        size_t length = strcspn(text->text, "-");
        int low = letter_number(text->text, length);
        int high = text->text[length]
                       ? letter_number(text->text + length + 1, strlen(text->text) - length - 1)
                       : low;
        times += low >= 0 && high >= 0 && number >= low && number <= high;
    }
    return times;
}

/* What the list explains stands in the drawing, once. */
static void hold_letters(const plate *p, ruling *out)
{
    for (int i = 0; i < p->drawing->count; i++) {
        const gtl_shape *text = &p->drawing->shapes[i];
        if (!text->text || text->role != GTL_ROLE_FRAME || !text->bold) continue;
        int number = letter_number(text->text, strlen(text->text));
        if (number > 0 && times_shown(p->drawing, number) != 1)
            ruling_break(out, "letter %s stands %d times in the drawing", text->text,
                         times_shown(p->drawing, number));
    }
}

static void letters_are_found(const specimen *s, ruling *out)
{
    hold_all(s, hold_letters, out);
}

/* --- the whole --- */

static gtl_bounds bounds_of(const gtl_shape *shape)
{
    if (shape->kind == GTL_SHAPE_TEXT) return gtl_text_bounds(shape);
    double r = shape->kind == GTL_SHAPE_CIRCLE || shape->kind == GTL_SHAPE_ARC ? shape->radius : 0;
    gtl_point b = shape->kind == GTL_SHAPE_LINE || shape->kind == GTL_SHAPE_BOX ? shape->b : shape->a;
    return (gtl_bounds){{fmin(shape->a.x, b.x) - r, fmin(shape->a.y, b.y) - r},
                        {fmax(shape->a.x, b.x) + r, fmax(shape->a.y, b.y) + r}};
}

static void hold_inside(const plate *p, ruling *out)
{
    for (int i = 0; i < p->drawing->count; i++) {
        gtl_bounds box = bounds_of(&p->drawing->shapes[i]);
        bool inside = box.low.x >= 0 && box.low.y >= 0 && box.high.x <= GTL_DRAWING_WIDTH &&
                      box.high.y <= p->drawing->height;
        if (!inside)
            ruling_break(out, "a shape %d of role %d is outside: %g %g %g %g", p->drawing->shapes[i].kind,
                         p->drawing->shapes[i].role, box.low.x, box.low.y, box.high.x, box.high.y);
    }
}

static void all_is_inside(const specimen *s, ruling *out)
{
    hold_all(s, hold_inside, out);
}

int main(int argc, char **argv)
{
    static const law laws[] = {
        {"lines touch their sheaves", lines_touch},           {"every part is drawn", parts_are_drawn},
        {"arrows are to scale", arrows_are_to_scale},         {"loads are to scale", places_are_to_scale},
        {"labels cover nothing", labels_cover_nothing},       {"every figure is told", figures_are_told},
        {"letters of the list are found", letters_are_found}, {"all is inside", all_is_inside},
    };
    trial_plan plan = {
        .name = "drawing", .laws = laws, .law_count = sizeof laws / sizeof *laws, .rigs = trial_default(500)};
    return trial_run(&plan, argc, argv);
}
