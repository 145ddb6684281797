/* copy.c - a rig once more, to be changed where the first has to stay as it is. */
#include "base/text.h"

#include <gantline/rig.h>
#include <stdlib.h>
#include <string.h>

/* `count` items in room for `most` (at least one); NULL without memory. */
static void *copy_of(const void *items, int count, int most, size_t size)
{
    void *room = calloc(most > 0 ? (size_t)most : 1, size);
    if (room && count > 0) memcpy(room, items, (size_t)count * size);
    return room;
}

#define COPY(field, count, most)                                                                             \
    (((copy)->field = copy_of((rig)->field, (count), (most), sizeof *(rig)->field)) != NULL)

/* Arrays without texts of their own. Nodes, parts, pieces and runs get room for as many as there can be, so
 * that things may come off each other and paths be cut anew. */
static bool copy_arrays(gtl_rig *copy, const gtl_rig *rig)
{
    return COPY(nodes, rig->node_count, rig->thing_count) && COPY(stops, rig->stop_count, rig->stop_count) &&
           COPY(parts, rig->part_count, rig->stop_count) && COPY(pieces, rig->piece_count, rig->stop_count) &&
           COPY(runs, rig->run_count, rig->stop_count) && COPY(vias, rig->via_count, rig->via_count) &&
           COPY(picks, rig->pick_count, rig->pick_count) && COPY(hung, rig->hung_count, rig->hung_count) &&
           COPY(woods, rig->wood_count, rig->wood_count);
}

/* Give the copy a text of its own in place of the one that it shares; false without memory. */
static bool own_text(char **text)
{
    if (*text) *text = gtl_text_copy(*text, strlen(*text));
    return *text != NULL;
}

/* Arrays whose items own their names. Each counts one more only once its name is there: what a copy that
 * failed half way counts is what it owns. */
#define COPY_NAMED(field, counter)                                                                           \
    do {                                                                                                     \
        if (!COPY(field, rig->counter, rig->counter)) return false;                                          \
        for (int i = 0; i < rig->counter; i++, copy->counter++)                                              \
            if (!own_text(&copy->field[i].name)) return false;                                               \
    } while (0)

static bool copy_named(gtl_rig *copy, const gtl_rig *rig)
{
    copy->thing_count = copy->line_count = copy->connector_count = copy->case_count = copy->batten_count = 0;
    COPY_NAMED(things, thing_count);
    COPY_NAMED(lines, line_count);
    COPY_NAMED(connectors, connector_count);
    return true;
}

static bool copy_cases_and_battens(gtl_rig *copy, const gtl_rig *rig)
{
    COPY_NAMED(cases, case_count);
    COPY_NAMED(battens, batten_count);
    return true;
}

static bool copy_texts(gtl_rig *copy, const gtl_rig *rig)
{
    char *const texts[] = {rig->file, rig->title, rig->place, rig->date, rig->by, rig->note};
    char **const own[] = {&copy->file, &copy->title, &copy->place, &copy->date, &copy->by, &copy->note};
    bool made = true;
    for (size_t i = 0; i < sizeof own / sizeof *own; i++) {
        *own[i] = texts[i];
        made = own_text(own[i]) && made;
    }
    return made;
}

gtl_rig *gtl_rig_copy(const gtl_rig *rig)
{
    gtl_rig *copy = calloc(1, sizeof *copy);
    if (!copy) return NULL;
    *copy = *rig;
    copy->hardware = NULL; /* the rows stay the original's */
    copy->cases = NULL;
    copy->things = NULL;
    copy->nodes = NULL;
    copy->lines = NULL;
    copy->stops = NULL;
    copy->parts = NULL;
    copy->pieces = NULL;
    copy->runs = NULL;
    copy->connectors = NULL;
    copy->vias = NULL;
    copy->battens = NULL;
    copy->picks = NULL;
    copy->hung = NULL;
    copy->woods = NULL;
    bool texts = copy_texts(copy, rig); /* first: no text may be left that is the original's */
    bool named = copy_named(copy, rig) && copy_cases_and_battens(copy, rig);
    if (named && copy_arrays(copy, rig) && texts) return copy;
    gtl_rig_free(copy);
    return NULL;
}
