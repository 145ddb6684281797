/* drawing_field.c - where in a view there is room for a label: places around what it tells of are tried one
 * after the other, the nearest first; the farther ones get a thin leader. */
#include "report/drawing_field.h"
#include "base/grow.h"

#include <math.h>
#include <stdlib.h>

/* Between a label and what is beside it. */
#define CLEAR 1.5
/* A leader begins and ends short of what it joins. */
#define SHORT 2.0

/* A direction that leads to one side more than that has its label there [1]. */
#define SIDEWAYS 0.3

/* From an outline to labels that are led to it. */
static const double rings[] = {18, 36, 58, 86};
#define RINGS ((int)(sizeof rings / sizeof *rings))

/* --- what stands there --- */

/* Each adds one more to the field, which fails without memory. */
static void add_segment(gtl_field *field, gtl_segment segment)
{
    gtl_segment *room =
        gtl_grow(field->segments, field->segment_count, &field->segment_capacity, sizeof segment);
    field->failed = field->failed || !room;
    if (!room) return;
    field->segments = room;
    field->segments[field->segment_count++] = segment;
}

static void add_box(gtl_field *field, gtl_bounds box)
{
    gtl_bounds *room = gtl_grow(field->boxes, field->box_count, &field->box_capacity, sizeof box);
    field->failed = field->failed || !room;
    if (!room) return;
    field->boxes = room;
    field->boxes[field->box_count++] = box;
}

static void add_disc(gtl_field *field, gtl_disc disc)
{
    gtl_disc *room = gtl_grow(field->discs, field->disc_count, &field->disc_capacity, sizeof disc);
    field->failed = field->failed || !room;
    if (!room) return;
    field->discs = room;
    field->discs[field->disc_count++] = disc;
}

void gtl_field_begin(gtl_field *field, const gtl_drawing *drawing, int view, gtl_bounds room)
{
    *field = (gtl_field){.room = room};
    for (int i = 0; i < drawing->count; i++) {
        const gtl_shape *shape = &drawing->shapes[i];
        if (shape->view != view) continue;
        if (shape->kind == GTL_SHAPE_LINE) add_segment(field, (gtl_segment){shape->a, shape->b});
        if (shape->kind == GTL_SHAPE_CIRCLE) add_disc(field, (gtl_disc){shape->a, shape->radius});
        if (shape->kind == GTL_SHAPE_BOX) add_box(field, (gtl_bounds){shape->a, shape->b});
    }
}

void gtl_field_end(gtl_field *field)
{
    free(field->segments);
    free(field->discs);
    free(field->boxes);
}

/* --- what is free --- */

/* Cut a stretch of a segment, from *low to *high, to where it lies between two bounds of one coordinate. */
static bool cut(double start, double way, double least, double most, double *low, double *high)
{
    if (way == 0) return start > least && start < most;
    double one = (least - start) / way, other = (most - start) / way;
    *low = fmax(*low, fmin(one, other));
    *high = fmin(*high, fmax(one, other));
    return *low < *high;
}

static bool meets_segment(const gtl_bounds *box, const gtl_segment *segment)
{
    double low = 0, high = 1;
    return cut(segment->a.x, segment->b.x - segment->a.x, box->low.x, box->high.x, &low, &high) &&
           cut(segment->a.y, segment->b.y - segment->a.y, box->low.y, box->high.y, &low, &high);
}

static bool meets_disc(const gtl_bounds *box, const gtl_disc *disc)
{
    double across = fmax(fmax(box->low.x - disc->at.x, disc->at.x - box->high.x), 0);
    double down = fmax(fmax(box->low.y - disc->at.y, disc->at.y - box->high.y), 0);
    return hypot(across, down) < disc->radius;
}

static bool meets_box(const gtl_bounds *box, const gtl_bounds *other)
{
    return box->low.x < other->high.x && other->low.x < box->high.x && box->low.y < other->high.y &&
           other->low.y < box->high.y;
}

static bool is_inside(const gtl_bounds *box, const gtl_bounds *room)
{
    return box->low.x >= room->low.x && box->low.y >= room->low.y && box->high.x <= room->high.x &&
           box->high.y <= room->high.y;
}

static bool box_is_free(const gtl_field *field, const gtl_bounds *box)
{
    gtl_bounds wide = {{box->low.x - CLEAR, box->low.y - CLEAR}, {box->high.x + CLEAR, box->high.y + CLEAR}};
    if (!is_inside(box, &field->room)) return false;
    for (size_t i = 0; i < field->box_count; i++)
        if (meets_box(&wide, &field->boxes[i])) return false;
    for (size_t i = 0; i < field->disc_count; i++)
        if (meets_disc(&wide, &field->discs[i])) return false;
    for (size_t i = 0; i < field->segment_count; i++)
        if (meets_segment(&wide, &field->segments[i])) return false;
    return true;
}

static gtl_point between(gtl_point from, gtl_point to)
{
    return (gtl_point){to.x - from.x, to.y - from.y};
}

static double cross(gtl_point v, gtl_point w)
{
    return v.x * w.y - v.y * w.x;
}

static bool segments_cross(const gtl_segment *one, const gtl_segment *other)
{
    gtl_point v = between(one->a, one->b), w = between(other->a, other->b);
    double a = cross(v, between(one->a, other->a)), b = cross(v, between(one->a, other->b));
    double c = cross(w, between(other->a, one->a)), d = cross(w, between(other->a, one->b));
    return ((a > 0) != (b > 0)) && ((c > 0) != (d > 0));
}

static double distance(const gtl_segment *segment, gtl_point to)
{
    gtl_point way = between(segment->a, segment->b), there = between(segment->a, to);
    double square = way.x * way.x + way.y * way.y;
    double share = square > 0 ? (way.x * there.x + way.y * there.y) / square : 0;
    share = fmin(fmax(share, 0), 1);
    return hypot(there.x - share * way.x, there.y - share * way.y);
}

/* A leader crosses nothing. */
static bool leader_is_free(const gtl_field *field, const gtl_segment *leader)
{
    for (size_t i = 0; i < field->box_count; i++)
        if (meets_segment(&field->boxes[i], leader)) return false;
    for (size_t i = 0; i < field->disc_count; i++)
        if (distance(leader, field->discs[i].at) < field->discs[i].radius) return false;
    for (size_t i = 0; i < field->segment_count; i++)
        if (segments_cross(leader, &field->segments[i])) return false;
    return true;
}

/* --- places to try --- */

/* The box whose edge is `gap` beyond the target's outline, in a direction from a point of it: beside a line
 * so that no corner comes nearer, around a body (`corner`) with the nearest corner there. */
static gtl_seat seat_at(gtl_point from, gtl_point way, double reach, double gap, gtl_point size, bool corner)
{
    double half = corner ? 0 : fabs(way.x) * size.x / 2 + fabs(way.y) * size.y / 2;
    gtl_point middle = {from.x + way.x * (reach + gap + half), from.y + way.y * (reach + gap + half)};
    if (corner && fabs(way.x) > SIDEWAYS) middle.x += copysign(size.x / 2, way.x);
    if (corner && fabs(way.y) > SIDEWAYS) middle.y += copysign(size.y / 2, way.y);
    gtl_seat seat = {.led = gap >= rings[0]};
    seat.box.low = (gtl_point){middle.x - size.x / 2, middle.y - size.y / 2};
    seat.box.high = (gtl_point){middle.x + size.x / 2, middle.y + size.y / 2};
    seat.align = way.x > SIDEWAYS ? GTL_ALIGN_LEFT : way.x < -SIDEWAYS ? GTL_ALIGN_RIGHT : GTL_ALIGN_MIDDLE;
    seat.to = (gtl_point){from.x + way.x * (reach + SHORT), from.y + way.y * (reach + SHORT)};
    seat.from.x = fmin(fmax(seat.to.x, seat.box.low.x), seat.box.high.x);
    seat.from.y = fmin(fmax(seat.to.y, seat.box.low.y), seat.box.high.y);
    double left = hypot(seat.to.x - seat.from.x, seat.to.y - seat.from.y);
    if (left > SHORT) {
        seat.from.x += SHORT / left * (seat.to.x - seat.from.x);
        seat.from.y += SHORT / left * (seat.to.y - seat.from.y);
    }
    return seat;
}

static bool is_free(const gtl_field *field, const gtl_seat *seat)
{
    gtl_segment leader = {seat->from, seat->to};
    return box_is_free(field, &seat->box) && (!seat->led || leader_is_free(field, &leader));
}

/* Around a body: to the sides first, where text reads best. */
static bool try_around(const gtl_field *field, const gtl_target *target, double gap, gtl_point size,
                       gtl_seat *seat)
{
    static const gtl_point ways[] = {
        {1, 0},       {-1, 0},     {0.87, -0.5}, {0.87, 0.5}, {-0.87, -0.5}, {-0.87, 0.5},
        {0.5, -0.87}, {0.5, 0.87}, {0, 1},       {0, -1},     {-0.5, -0.87}, {-0.5, 0.87},
    };
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
        *seat = seat_at(target->a, ways[i], target->reach, gap, size, true);
        if (is_free(field, seat)) return true;
    }
    return false;
}

/* Along something long: from its middle outwards, on both sides. */
static bool try_along(const gtl_field *field, const gtl_target *target, double gap, gtl_point size,
                      gtl_seat *seat)
{
    static const double shares[] = {0.5,  0.4,  0.6,  0.3,  0.7,  0.2,  0.8, 0.12,
                                    0.88, 0.45, 0.55, 0.35, 0.65, 0.25, 0.75};
    gtl_point way = between(target->a, target->b);
    double length = hypot(way.x, way.y);
    gtl_point side = {-way.y / length, way.x / length};
    gtl_point out = target->sided ? between(target->inside, target->a) : (gtl_point){1, 0};
    if (side.x * out.x + side.y * out.y < 0) side = (gtl_point){-side.x, -side.y};
    for (size_t i = 0; i < sizeof shares / sizeof *shares; i++) {
        gtl_point from = {target->a.x + shares[i] * way.x, target->a.y + shares[i] * way.y};
        for (int sign = 1; sign >= -1; sign -= 2) {
            *seat = seat_at(from, (gtl_point){sign * side.x, sign * side.y}, target->reach, gap, size, false);
            if (is_free(field, seat)) return true;
        }
    }
    return false;
}

bool gtl_field_take(gtl_field *field, const gtl_target *target, gtl_point size, double next, gtl_seat *seat)
{
    gtl_point way = between(target->a, target->b);
    bool found = false;
    for (int ring = -1; !found && !field->failed && ring < RINGS; ring++)
        found = (way.x == 0 && way.y == 0 ? try_around : try_along)(
            field, target, ring < 0 ? next : rings[ring], size, seat);
    if (found) add_box(field, seat->box);
    if (found && seat->led) add_segment(field, (gtl_segment){seat->from, seat->to});
    return found && !field->failed;
}

gtl_field_mark gtl_field_now(const gtl_field *field)
{
    return (gtl_field_mark){field->segment_count, field->box_count};
}

void gtl_field_back(gtl_field *field, gtl_field_mark mark)
{
    field->segment_count = mark.segments;
    field->box_count = mark.boxes;
}
