/* drawing_columns.c - a rig with heights alone, spread to the side so that it can be seen.
 *
 * Bodies are placed one by one, in the order in which lines come to them. Each takes the first column where
 * it stands on no other body and no line, and where no line of its own runs over another body. */
#include "report/drawing_picture.h"

#include <math.h>
#include <stdlib.h>

/* Bodies in one column are this far apart at least, over the height of the rig [1]. */
#define APART 0.12
/* A line passes a body at this distance at least, in columns. */
#define CLEAR 0.3
/* With more bodies than this no search is made: each gets a column of its own. */
#define MOST_SEARCHED 40

typedef struct gtl_spreading {
    const gtl_rig *rig;
    const gtl_view *view;
    gtl_point *place; /* one a node: column, and height over that of the rig */
    bool *placed;     /* one a node */
} gtl_spreading;

static int node_of(const gtl_spreading *s, int stop)
{
    return s->rig->things[s->rig->stops[stop].thing].node;
}

/* Whether a line from a to b runs over `body`, or too near. */
static bool runs_over(gtl_point a, gtl_point b, gtl_point body)
{
    double low = fmin(a.y, b.y), high = fmax(a.y, b.y);
    if (body.y <= low - APART / 2 || body.y >= high + APART / 2) return false;
    double share = high > low ? (fmin(fmax(body.y, low), high) - a.y) / (b.y - a.y) : 0;
    return fabs(a.x + share * (b.x - a.x) - body.x) < CLEAR;
}

/* Whether `node` at its place would lie on a line between others, or have a line of its own over another. */
static bool is_in_the_way(const gtl_spreading *s, int node)
{
    for (int p = 0; p < s->rig->part_count; p++) {
        int a = node_of(s, s->rig->parts[p].from), b = node_of(s, s->rig->parts[p].to);
        bool own = a == node || b == node;
        if (!s->placed[a] || !s->placed[b]) continue;
        if (!own && runs_over(s->place[a], s->place[b], s->place[node])) return true;
        for (int other = 0; own && other < s->rig->node_count; other++)
            if (s->placed[other] && other != a && other != b &&
                runs_over(s->place[a], s->place[b], s->place[other]))
                return true;
    }
    return false;
}

static bool stands_clear(const gtl_spreading *s, int node)
{
    for (int other = 0; other < s->rig->node_count; other++) {
        if (other == node || !s->placed[other]) continue;
        gtl_point way = gtl_between(s->place[node], s->place[other]);
        if (fabs(way.x) < 1 && fabs(way.y) < APART) return false;
    }
    return !is_in_the_way(s, node);
}

/* Column 0, 1, -1, 2, ...; whoever hauls stands to the side. */
static double column_of(const gtl_spreading *s, int node, int trial)
{
    int step = s->rig->things[s->rig->nodes[node].root].kind == GTL_HAND ? trial + 1 : trial;
    return step % 2 ? (step + 1) / 2 : -step / 2;
}

static void place_node(gtl_spreading *s, int node)
{
    if (s->placed[node]) return;
    s->placed[node] = true;
    int trial = 0, last = 2 * s->rig->node_count + 2;
    do s->place[node].x = column_of(s, node, trial++);
    while (s->rig->node_count <= MOST_SEARCHED && trial < last && !stands_clear(s, node));
    if (s->rig->node_count > MOST_SEARCHED) s->place[node].x = node;
}

static void place_all(gtl_spreading *s)
{
    for (int i = 0; i < s->rig->stop_count; i++)
        if (s->view->spots[s->rig->stops[i].thing].shown) place_node(s, node_of(s, i));
    for (int i = 0; i < s->rig->thing_count; i++)
        if (s->view->spots[i].shown) place_node(s, s->rig->things[i].node);
}

/* Into the spots, counted from the leftmost column. */
static void take_over(const gtl_spreading *s, gtl_view *view)
{
    double left = INFINITY;
    for (int n = 0; n < s->rig->node_count; n++)
        if (s->placed[n]) left = fmin(left, s->place[n].x);
    for (int i = 0; i < s->rig->thing_count; i++)
        if (view->spots[i].shown) view->spots[i].flat.x = s->place[s->rig->things[i].node].x - left;
}

bool gtl_spread_columns(const gtl_picture *picture, gtl_view *view)
{
    const gtl_rig *rig = picture->rig;
    gtl_spreading s = {.rig = rig, .view = view};
    s.place = calloc((size_t)rig->node_count + 1, sizeof *s.place);
    s.placed = calloc((size_t)rig->node_count + 1, sizeof *s.placed);
    bool made = s.place && s.placed;
    double height = 0;
    for (int i = 0; i < rig->thing_count; i++) height = fmax(height, view->spots[i].flat.y);
    for (int i = 0; made && i < rig->thing_count; i++)
        s.place[rig->things[i].node].y = height > 0 ? view->spots[i].flat.y / height : 0;
    if (made) {
        place_all(&s);
        take_over(&s, view);
    }
    free(s.place);
    free(s.placed);
    return made;
}
