/* body_view.c - a body that is laid out, as shapes, with its labels where there is room for them. */
#include "explain/body_spokes.h"
#include "report/drawing_field.h"
#include "report/drawing_picture.h"
#include "report/escape.h"

#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

#define FINE       0.8
#define PLAIN      1.3
#define GROUND     2.6
#define SHAFT      1.7
#define HEAD       11.0
#define HATCHES    5
#define LABEL_HIGH 17.5
/* Letters reach that far below their foot line. */
#define BELOW 4.5
/* From an arrow's end to its label, or its key. */
#define NEXT     6.0
#define NEXT_KEY 4.0
/* Above and below the arrows labels have as much room. */
#define ROOM 66.0
/* A symbol no wider than that is its own key. */
#define SHORT_KEY 44.0
/* Of no more labels than that one may stand away from its arrow. */
#define FEW_LABELS 4
/* Of more forces than that, symbols have no room beside each other. */
#define MOST_SYMBOLS 8

typedef struct gtl_sketch {
    const gtl_body *body;
    const gtl_body_view *view;
    gtl_drawing *drawing;
    gtl_layout layout;
} gtl_sketch;

static void add(const gtl_sketch *sketch, gtl_shape shape)
{
    shape.view = sketch->view->number;
    gtl_shape_add(sketch->drawing, shape);
}

static void add_line(const gtl_sketch *sketch, int thing, gtl_point a, gtl_point b, double width)
{
    add(sketch,
        (gtl_shape){
            .kind = GTL_SHAPE_LINE, .role = GTL_ROLE_BODY, .index = thing, .a = a, .b = b, .width = width});
}

static void add_circle(const gtl_sketch *sketch, const gtl_slab *slab, double radius, double width,
                       gtl_fill fill)
{
    add(sketch, (gtl_shape){.kind = GTL_SHAPE_CIRCLE,
                            .role = GTL_ROLE_BODY,
                            .index = slab->thing,
                            .a = slab->at,
                            .radius = radius,
                            .width = width,
                            .fill = fill});
}

/* --- the things --- */

/* A thick line, hatched on the side that faces away from the body. */
static void ink_anchor(const gtl_sketch *sketch, const gtl_slab *slab)
{
    double away = sketch->layout.stands ? 1 : -1;
    double line = slab->at.y - away * slab->high, end = slab->at.y + away * slab->high;
    add_line(sketch, slab->thing, (gtl_point){slab->at.x - slab->wide, line},
             (gtl_point){slab->at.x + slab->wide, line}, GROUND);
    for (int i = 0; i < HATCHES; i++) {
        double x = slab->at.x + slab->wide * (2.0 * i / (HATCHES - 1) - 1);
        add_line(sketch, slab->thing, (gtl_point){x, line}, (gtl_point){x + 6, end}, PLAIN);
    }
}

/* Sheaves about one axle. */
static void ink_block(const gtl_sketch *sketch, const gtl_slab *slab)
{
    add_circle(sketch, slab, slab->wide, PLAIN, GTL_FILL_WHITE);
    add_circle(sketch, slab, slab->wide * 0.82, FINE, GTL_FILL_NONE);
    if (sketch->body->lesson->rig->things[slab->thing].sheaves > 1)
        add_circle(sketch, slab, slab->wide * 0.6, FINE, GTL_FILL_NONE);
    add_circle(sketch, slab, 2.2, 0, GTL_FILL_BLACK);
}

static void ink_fairlead(const gtl_sketch *sketch, const gtl_slab *slab)
{
    add_circle(sketch, slab, slab->wide, PLAIN, GTL_FILL_WHITE);
    add_circle(sketch, slab, 6, 0, GTL_FILL_BLACK);
}

static void ink_joint(const gtl_sketch *sketch, const gtl_slab *slab)
{
    add_circle(sketch, slab, slab->wide, PLAIN, GTL_FILL_WHITE);
}

static void ink_load(const gtl_sketch *sketch, const gtl_slab *slab)
{
    add(sketch, (gtl_shape){.kind = GTL_SHAPE_BOX,
                            .role = GTL_ROLE_BODY,
                            .index = slab->thing,
                            .a = {slab->at.x - slab->wide, slab->at.y - slab->high},
                            .b = {slab->at.x + slab->wide, slab->at.y + slab->high},
                            .width = PLAIN,
                            .fill = GTL_FILL_WHITE});
}

static void ink_hand(const gtl_sketch *sketch, const gtl_slab *slab)
{
    add_line(sketch, slab->thing, (gtl_point){slab->at.x - slab->wide, slab->at.y},
             (gtl_point){slab->at.x + slab->wide, slab->at.y}, 2);
}

static void ink_slabs(const gtl_sketch *sketch)
{
    static void (*const ink[GTL_KIND_COUNT])(const gtl_sketch *, const gtl_slab *) = {
        [GTL_ANCHOR] = ink_anchor, [GTL_BLOCK] = ink_block, [GTL_FAIRLEAD] = ink_fairlead,
        [GTL_JOINT] = ink_joint,   [GTL_LOAD] = ink_load,   [GTL_HAND] = ink_hand,
        [GTL_ARBOR] = ink_load,
    };
    const gtl_layout *layout = &sketch->layout;
    for (int i = 0; i < layout->slab_count; i++) {
        const gtl_slab *slab = &layout->slabs[i];
        gtl_point foot = {slab->at.x, slab->at.y + slab->high};
        if (i + 1 < layout->slab_count)
            add_line(sketch, slab->thing, foot, (gtl_point){foot.x, foot.y + 12}, PLAIN);
        ink[sketch->body->lesson->rig->things[slab->thing].kind](sketch, slab);
    }
}

/* --- the arrows --- */

/* A pull leads away from the body, a push onto it. */
static void ink_arrow(const gtl_sketch *sketch, const gtl_spoke *spoke)
{
    const gtl_force *force = &sketch->body->forces[spoke->force];
    bool push = force->kind == GTL_FORCE_PUSH;
    gtl_point tip = push ? spoke->near : spoke->far, tail = push ? spoke->far : spoke->near;
    double head = fmin(HEAD, 0.6 * spoke->length);
    gtl_point way = gtl_unit(gtl_between(tail, tip), (gtl_point){0, 1}), neck = gtl_along(tip, way, -head);
    add(sketch, (gtl_shape){.kind = GTL_SHAPE_LINE,
                            .role = GTL_ROLE_ARROW,
                            .index = force->thing,
                            .a = tail,
                            .b = tip,
                            .width = SHAFT});
    add(sketch, (gtl_shape){.kind = GTL_SHAPE_HEAD,
                            .role = GTL_ROLE_BODY,
                            .index = force->thing,
                            .a = tip,
                            .b = gtl_along(neck, gtl_quarter(way), head / 3),
                            .c = gtl_along(neck, gtl_quarter(way), -head / 3),
                            .fill = GTL_FILL_BLACK});
}

/* --- labels --- */

gtl_figure gtl_force_key(const gtl_body *body, int force)
{
    gtl_figure key = {""};
    bool brief = body->count <= MOST_SYMBOLS;
    for (int i = 0; i < body->count; i++)
        brief = brief && !body->forces[i].last.text[0] &&
                gtl_text_width(body->forces[i].symbol.text, SIZE_MAX, true) <= SHORT_KEY;
    if (brief)
        key = gtl_force_name(&body->forces[force]);
    else
        snprintf(key.text, sizeof key.text, "%c", 'a' + force);
    return key;
}

static char *label_of(const gtl_sketch *sketch, int force)
{
    const gtl_body *body = sketch->body;
    const gtl_force *of = &body->forces[force];
    gtl_text text = {0};
    if (sketch->view->keyed)
        gtl_text_add(&text, "%s", gtl_force_key(body, force).text);
    else
        gtl_text_add(&text, "%s%s %s", gtl_force_name(of).text, of->count > 1 ? "," : "",
                     gtl_force_size(body, of).text);
    char *raw = gtl_text_take(&text), *clean = raw ? gtl_escape_for_people(raw) : NULL;
    free(raw);
    return clean;
}

/* Where a force's label belongs: at its outermost arrow. NULL: none of its arrows is seen in this view. */
static const gtl_spoke *outermost(const gtl_layout *layout, int force)
{
    const gtl_spoke *found = NULL;
    for (int i = 0; i < layout->spoke_count; i++) {
        const gtl_spoke *spoke = &layout->spokes[i];
        if (spoke->force == force && (!found || fabs(spoke->offset) >= fabs(found->offset))) found = spoke;
    }
    return found;
}

static void put_label(const gtl_sketch *sketch, const gtl_seat *seat, char *text)
{
    double x = seat->align == GTL_ALIGN_LEFT    ? seat->box.low.x
               : seat->align == GTL_ALIGN_RIGHT ? seat->box.high.x
                                                : (seat->box.low.x + seat->box.high.x) / 2;
    add(sketch, (gtl_shape){.kind = GTL_SHAPE_TEXT,
                            .role = GTL_ROLE_LABEL,
                            .index = -1,
                            .a = {x, seat->box.high.y - BELOW},
                            .bold = sketch->view->keyed,
                            .align = seat->align,
                            .text = text});
    if (seat->led)
        add(sketch, (gtl_shape){.kind = GTL_SHAPE_LINE,
                                .role = GTL_ROLE_LEADER,
                                .index = -1,
                                .a = seat->from,
                                .b = seat->to,
                                .width = FINE});
}

/* False where there is no room for it. */
static bool label(const gtl_sketch *sketch, gtl_field *field, int force)
{
    const gtl_spoke *spoke = outermost(&sketch->layout, force);
    if (!spoke) return true;
    char *text = label_of(sketch, force);
    if (!text) {
        sketch->drawing->failed = true;
        return true;
    }
    gtl_point size = {gtl_text_width(text, SIZE_MAX, sketch->view->keyed), LABEL_HIGH};
    gtl_target target = {.a = spoke->far, .b = spoke->far};
    gtl_seat seat;
    bool found = gtl_field_take(field, &target, size, sketch->view->keyed ? NEXT_KEY : NEXT, &seat);
    bool crowded = found && seat.led && !sketch->view->keyed && sketch->body->count > FEW_LABELS;
    if (found && !crowded)
        put_label(sketch, &seat, text);
    else
        free(text);
    return found && !crowded;
}

/* --- the view --- */

static gtl_bounds bounds_of(const gtl_shape *shape)
{
    if (shape->kind == GTL_SHAPE_TEXT) return gtl_text_bounds(shape);
    gtl_bounds box = {shape->a, shape->a};
    if (shape->kind == GTL_SHAPE_CIRCLE) {
        box.low = (gtl_point){shape->a.x - shape->radius, shape->a.y - shape->radius};
        box.high = (gtl_point){shape->a.x + shape->radius, shape->a.y + shape->radius};
        return box;
    }
    box.low = (gtl_point){fmin(shape->a.x, shape->b.x), fmin(shape->a.y, shape->b.y)};
    box.high = (gtl_point){fmax(shape->a.x, shape->b.x), fmax(shape->a.y, shape->b.y)};
    return box;
}

/* Highest and lowest of the shapes from `first` on. */
static void extent(const gtl_drawing *drawing, int first, double *low, double *high)
{
    *low = 0;
    *high = 0;
    for (int i = first; i < drawing->count; i++) {
        gtl_bounds box = bounds_of(&drawing->shapes[i]);
        *low = fmin(*low, box.low.y);
        *high = fmax(*high, box.high.y);
    }
}

static void move(gtl_drawing *drawing, int first, gtl_point by)
{
    for (int i = first; i < drawing->count; i++) {
        gtl_shape *shape = &drawing->shapes[i];
        shape->a = gtl_along(shape->a, by, 1);
        shape->b = gtl_along(shape->b, by, 1);
        shape->c = gtl_along(shape->c, by, 1);
    }
}

static void take_back(gtl_drawing *drawing, int first)
{
    while (drawing->count > first) free(drawing->shapes[--drawing->count].text);
}

static bool label_all(const gtl_sketch *sketch, int first)
{
    gtl_field field;
    double low, high;
    extent(sketch->drawing, first, &low, &high);
    gtl_bounds room = {{-sketch->view->width / 2, low - ROOM}, {sketch->view->width / 2, high + ROOM}};
    gtl_field_begin(&field, sketch->drawing, sketch->view->number, room);
    bool fit = true;
    for (int i = 0; i < sketch->body->count; i++) fit = label(sketch, &field, i) && fit;
    if (field.failed) sketch->drawing->failed = true;
    gtl_field_end(&field);
    return fit;
}

bool gtl_body_view_draw(const gtl_body *body, gtl_drawing *drawing, const gtl_body_view *view, double *foot)
{
    gtl_sketch sketch = {.body = body, .view = view, .drawing = drawing};
    int first = drawing->count;
    double low, high;
    gtl_lay_out(&sketch.layout, body, view);
    ink_slabs(&sketch);
    for (int i = 0; i < sketch.layout.spoke_count; i++) ink_arrow(&sketch, &sketch.layout.spokes[i]);
    if (!label_all(&sketch, first) && !view->keyed) {
        take_back(drawing, first);
        return false;
    }
    extent(drawing, first, &low, &high);
    move(drawing, first, (gtl_point){view->spot.x, view->spot.y - low});
    *foot = view->spot.y + high - low;
    return true;
}
