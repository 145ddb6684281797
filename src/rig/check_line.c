/* check_line.c - what one path says by itself. */
#include "rig/building.h"

#include <math.h>

/* Two stops nearer than this have no direction between them [m]. */
#define SAME_PLACE 1e-6

/* One line under the eye. */
typedef struct looking {
    gtl_building *b;
    const gtl_line *line;
    int path;  /* line of its `path` in the file */
    int first; /* stops */
    int last;
} looking;

static const gtl_thing *thing_at(const looking *l, int stop)
{
    return &l->b->rig->things[l->b->rig->stops[stop].thing];
}

static bool is_hand(const looking *l, int stop)
{
    return thing_at(l, stop)->kind == GTL_HAND;
}

/* A sling or a spar goes from one stop to another, tied at both. */
static void check_ends_only(const looking *l)
{
    const char *kind = gtl_kind_name(l->line->kind);
    if (l->line->stop_count != 2) {
        gtl_faults_add(l->b->faults, l->path,
                       "a %s has two stops, not %d; make `%s` a rope, or write one %s a stretch", kind,
                       l->line->stop_count, l->line->name, kind);
    }
    for (int i = l->first; i <= l->last; i++) {
        if (!is_hand(l, i)) continue;
        gtl_faults_add(l->b->faults, l->path, "hand `%s` cannot haul on a %s; make `%s` a rope",
                       thing_at(l, i)->name, kind, l->line->name);
    }
}

static void check_hands(const looking *l)
{
    for (int i = l->first + 1; i < l->last; i++) {
        if (!is_hand(l, i)) continue;
        gtl_faults_add(l->b->faults, l->path,
                       "hand `%s` stands in the middle of the path; it hauls at one end of it",
                       thing_at(l, i)->name);
    }
    if (is_hand(l, l->first) && is_hand(l, l->last)) {
        gtl_faults_add(l->b->faults, l->path, "hands at both ends; tie one end of `%s` to something",
                       l->line->name);
    }
}

static void check_vias(const looking *l)
{
    for (int i = l->first; i <= l->last; i++) {
        const gtl_stop *stop = &l->b->rig->stops[i];
        if (stop->tied || stop->via.count == 0) continue;
        gtl_faults_add(
            l->b->faults, l->path,
            "`%s` runs over `%s` here, so no connector can be between them; put it in that %s's `on ... via`",
            l->line->name, thing_at(l, i)->name, gtl_kind_name(thing_at(l, i)->kind));
    }
}

static bool same_place(const looking *l, const gtl_thing *one, const gtl_thing *other)
{
    double distance = 0;
    for (int i = 0; i < l->b->rig->dim; i++) distance = fmax(distance, fabs(one->at[i] - other->at[i]));
    /* A place that could not be read is no place. */
    return l->b->rig->dim > 0 && !isnan(one->at[0] + other->at[0]) && distance < SAME_PLACE;
}

/* Between two stops at one place a line has no direction. */
static void check_places(const looking *l)
{
    for (int i = l->first; i < l->last; i++) {
        const gtl_thing *one = thing_at(l, i);
        const gtl_thing *other = thing_at(l, i + 1);
        if (one->node >= 0 && one->node == other->node) {
            gtl_faults_add(l->b->faults, l->path,
                           "`%s` and `%s` move as one, so no line runs between them; leave one of them out",
                           one->name, other->name);
        } else if (same_place(l, one, other)) {
            gtl_faults_add(
                l->b->faults, l->path,
                "`%s` and `%s` are at one place, so the line between them has no direction; %s", one->name,
                other->name,
                l->b->rig->dim == 1
                    ? "give them different heights, or write two lengths (across, height) in every `at`"
                    : "draw them apart");
        }
    }
}

/* A length is that of a line between its tied ends, or all that there is of a hauled one. */
static void check_length(const looking *l)
{
    gtl_stated stated = gtl_line_item(l->b, (int)(l->line - l->b->rig->lines))->numbers[GTL_F_LENGTH].stated;
    if (!stated.yes || l->line->kind != GTL_ROPE) return;
    if (is_hand(l, l->first) || is_hand(l, l->last)) return;
    for (int i = l->first + 1; i < l->last; i++) {
        if (!l->b->rig->stops[i].tied) continue;
        gtl_faults_add(
            l->b->faults, stated.line,
            "`length` of a rope that is tied at `%s` in the middle is not clear; write one rope a stretch",
            thing_at(l, i)->name);
        return;
    }
}

static bool is_resolved(const looking *l)
{
    bool resolved = l->first <= l->last;
    for (int i = l->first; i <= l->last; i++) resolved = resolved && l->b->rig->stops[i].thing >= 0;
    return resolved;
}

static void check_line(const looking *l)
{
    if (!is_resolved(l)) return;
    if (l->line->kind != GTL_ROPE) {
        check_ends_only(l);
    } else if (l->first == l->last) {
        gtl_faults_add(l->b->faults, l->path,
                       "a path has at least two stops; name what the other end of `%s` is tied to",
                       l->line->name);
    } else {
        check_hands(l);
    }
    check_vias(l);
    check_places(l);
    check_length(l);
}

void gtl_check_lines(gtl_building *b)
{
    for (int i = 0; i < b->rig->line_count; i++) {
        const gtl_line *line = &b->rig->lines[i];
        looking l = {b, line, gtl_line_item(b, i)->path.stated.line, line->first_stop,
                     line->first_stop + line->stop_count - 1};
        check_line(&l);
    }
}
