/* recut.c - paths cut anew once stops have dropped out of them: what was two parts, or two pieces, may be one
 * then. */
#include "rig/cut.h"
#include "rig/without.h"

#include <math.h>
#include <stdlib.h>

/* Close each path up, in an array of stops of its own: `to` says where each stop went, -1: gone. */
static bool close_paths(gtl_rig *left, const bool *gone, int *to)
{
    gtl_stop *stops = calloc((size_t)left->stop_count + 1, sizeof *stops);
    if (!stops) return false;
    int used = 0;
    for (int i = 0; i < left->line_count; i++) {
        gtl_line *line = &left->lines[i];
        int first = used;
        for (int stop = line->first_stop; stop < line->first_stop + line->stop_count; stop++) {
            to[stop] = gone[stop] ? -1 : used;
            if (!gone[stop]) stops[used++] = left->stops[stop];
        }
        line->first_stop = first;
        line->stop_count = used - first;
    }
    free(left->stops);
    left->stops = stops;
    left->stop_count = used;
    return true;
}

/* Connectors that stood at a stop, or under a thing, that let go stand nowhere. */
static void move_connectors(gtl_rig *left, const int *to)
{
    for (int i = 0; i < left->connector_count; i++) {
        gtl_connector *connector = &left->connectors[i];
        if (connector->stop >= 0) connector->stop = to[connector->stop];
        if (connector->thing >= 0 && left->things[connector->thing].on < 0) connector->thing = -1;
    }
}

/* A part lies now between the last stop that is left before it and the first one after it. */
static void map_parts(const gtl_rig *left, const gtl_rig *rig, const int *to, int *part)
{
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        int met = 0; /* stops that are left, up to the part */
        for (int k = 0; k < line->stop_count - 1; k++) {
            if (to[line->first_stop + k] >= 0) met++;
            bool inside = met > 0 && met < left->lines[i].stop_count;
            part[line->first_part + k] = inside ? left->lines[i].first_part + met - 1 : -1;
        }
    }
}

/* Whatever keeps its length has that of all pieces that it is made of. */
static void keep_lengths(gtl_rig *left, const gtl_rig *rig, const double *length, const int *part)
{
    for (int p = 0; p < left->piece_count; p++) {
        gtl_piece *piece = &left->pieces[p];
        if (piece->rule == GTL_DRIVEN) piece->rule = GTL_TIED; /* the hand holds on */
        piece->length = piece->rule == GTL_PULLED ? NAN : 0;
    }
    for (int p = 0; p < rig->piece_count; p++) {
        int now = part[rig->pieces[p].first_part];
        if (now >= 0) left->pieces[left->parts[now].piece].length += length[p];
    }
}

bool gtl_recut(gtl_rig *left, const gtl_rig *rig, const bool *gone, const double *length, int *part)
{
    int *to = calloc((size_t)rig->stop_count + 1, sizeof *to);
    bool closed = to && close_paths(left, gone, to);
    if (closed) {
        move_connectors(left, to);
        gtl_cut_paths(left);
        map_parts(left, rig, to, part);
        keep_lengths(left, rig, length, part);
    }
    free(to);
    return closed;
}
