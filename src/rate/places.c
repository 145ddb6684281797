/* places.c - other equilibria near the drawing.
 *
 * A rig of ropes whose lifted load is its only weight hangs in one place. Spars, further weights and known
 * pulls may allow more: the search begins again from shaken drawings, and every place that it finds is rated.
 */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

#define ATTEMPTS 8
/* How far the drawing is shaken, and how far from it a place still counts as near it, over the rig's size. */
#define SHAKE 0.1
#define NEAR  0.25
/* Places closer than this are the same, over the rig's size. */
#define SAME 1e-4

typedef struct place_search {
    const gtl_rig *rig;
    gtl_state *state;
    double *begin;
    double **found;
    int count;
    double size; /* [m] */
    unsigned long long random;
} place_search;

static double next_random(place_search *search)
{
    /* Knuth's MMIX linear congruential generator, constants from memory: the same shakes in every run. */
    search->random = search->random * 6364136223846793005ULL + 1442695040888963407ULL;
    return (double)(search->random >> 11) / 4503599627370496.0 - 1;
}

/* Whether more than one place is possible at all (see the head of this file). */
static bool may_have_several(const gtl_rig *rig)
{
    int load_node = rig->hand < 0 ? -1 : rig->things[rig->load].node;
    bool others = false;
    for (int p = 0; p < rig->piece_count; p++) {
        if (rig->pieces[p].rule == GTL_STRUT) return true;
        others |= rig->pieces[p].rule == GTL_PULLED;
    }
    for (int n = 0; n < rig->node_count; n++)
        others |= !rig->nodes[n].fixed && n != load_node && rig->nodes[n].weight > 0;
    return others && rig->hand >= 0 && rig->dim > 1;
}

static double furthest(const gtl_rig *rig, const double *a, const double *b)
{
    double most = 0;
    for (int n = 0; n < rig->node_count; n++) {
        double square = 0;
        for (int k = 0; k < rig->dim; k++)
            square += (a[3 * n + k] - b[3 * n + k]) * (a[3 * n + k] - b[3 * n + k]);
        most = fmax(most, sqrt(square));
    }
    return most;
}

static double from_drawing(const place_search *search, const double *at)
{
    double most = 0;
    for (int n = 0; n < search->rig->node_count; n++) {
        double square = 0;
        for (int k = 0; k < search->rig->dim; k++) {
            double off = at[3 * n + k] - search->rig->nodes[n].at[k];
            square += off * off;
        }
        most = fmax(most, sqrt(square));
    }
    return most;
}

/* Keep the state's place, the one nearest the drawing first. False without memory. */
static bool keep_place(place_search *search)
{
    size_t size = 3 * (size_t)search->rig->node_count * sizeof(double);
    for (int i = 0; i < search->count; i++)
        if (furthest(search->rig, search->found[i], search->state->at) < SAME * search->size) return true;
    double *place = malloc(size);
    if (!place) return false;
    memcpy(place, search->state->at, size);
    search->found[search->count++] = place;
    if (from_drawing(search, place) >= from_drawing(search, search->found[0])) return true;
    search->found[search->count - 1] = search->found[0];
    search->found[0] = place;
    return true;
}

static void shake(place_search *search)
{
    for (int n = 0; n < search->rig->node_count; n++)
        for (int k = 0; k < search->rig->dim; k++)
            search->begin[3 * n + k] =
                search->rig->nodes[n].at[k] + SHAKE * search->size * next_random(search);
}

static bool seek(place_search *search)
{
    for (int attempt = 0; attempt < ATTEMPTS; attempt++) {
        shake(search);
        gtl_case which = {.kind = GTL_HOLD, .begin = search->begin};
        bool answer = gtl_solve(search->rig, &which, search->state) == GTL_OK && search->state->possible;
        if (search->state->status == GTL_NO_MEMORY) return false;
        bool near = answer && from_drawing(search, search->state->at) <= NEAR * search->size;
        if (near && !keep_place(search)) return false;
    }
    return true;
}

/* The drawing's own place, and from there on the search. */
static bool begin_search(place_search *search)
{
    size_t coordinates = 3 * (size_t)search->rig->node_count;
    search->state = gtl_state_new(search->rig);
    search->begin = calloc(coordinates + 1, sizeof *search->begin);
    search->found = calloc(ATTEMPTS + 1, sizeof *search->found);
    if (!search->state || !search->begin || !search->found) return false;
    if (!may_have_several(search->rig)) return true;
    gtl_case which = {.kind = GTL_HOLD};
    gtl_status status = gtl_solve(search->rig, &which, search->state);
    /* What stays anywhere is told as such; what has no place is told by the case itself. */
    if (status != GTL_OK || !search->state->possible || search->state->neutral)
        return status != GTL_NO_MEMORY;
    return keep_place(search) && seek(search);
}

bool gtl_find_places(const gtl_rig *rig, double ***found, int *count)
{
    place_search search = {.rig = rig, .size = gtl_rig_size(rig), .random = 7};
    bool done = begin_search(&search);
    gtl_state_free(search.state);
    free(search.begin);
    *found = search.found;
    *count = search.count > 0 ? search.count : 1; /* found[0] is NULL where the drawing is all there is */
    return done;
}

void gtl_free_places(double **places, int count)
{
    for (int i = 0; places && i < count; i++) free(places[i]);
    free(places);
}
