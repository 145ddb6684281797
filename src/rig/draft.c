/* draft.c - a rig as it was typed, and its names in order, so that ten thousand stops find theirs quickly. */
#include "rig/draft.h"

#include "base/grow.h"
#include "base/suggest.h"
#include "base/text.h"

#include <gantline/units.h>
#include <math.h>
#include <stdlib.h>

/* A search for a near name looks at all of them: a file full of unknown names gets this many. */
#define MOST_SUGGESTIONS 100

gtl_item gtl_item_blank(gtl_kind kind, const char *name, int line)
{
    gtl_item item = {.kind = kind, .name = name, .line = line, .batten = -1};
    for (int i = 0; i < GTL_FIELD_COUNT; i++) item.numbers[i].value = item.numbers[i].high = NAN;
    return item;
}

void gtl_draft_begin(gtl_draft *draft)
{
    *draft = (gtl_draft){.gravity = GTL_STANDARD_GRAVITY, .whole = true, .suggestions = MOST_SUGGESTIONS};
    draft->sheet = gtl_item_blank(GTL_SHEET, "", 0);
    for (int i = 0; i < GTL_REMARK_COUNT; i++) draft->remarks[i] = "";
}

void gtl_draft_end(gtl_draft *draft)
{
    if (draft->hardware) gtl_hardware_end(draft->hardware);
    free(draft->hardware);
    free(draft->items);
    free(draft->refs);
    free(draft->vias);
    free(draft->picks);
    free(draft->hung);
    for (int i = 0; i < draft->name_count; i++) free(draft->names[i]);
    free(draft->names);
    free(draft->by_name);
    *draft = (gtl_draft){.whole = false};
}

bool gtl_draft_add_item(gtl_draft *draft, const gtl_item *item)
{
    size_t count = (size_t)draft->item_count;
    gtl_item *items = gtl_grow(draft->items, count, &draft->item_capacity, sizeof *items);
    if (!items) return false;
    draft->items = items;
    items[draft->item_count++] = *item;
    return true;
}

bool gtl_draft_add_ref(gtl_draft *draft, gtl_word name)
{
    gtl_ref *refs = gtl_grow(draft->refs, (size_t)draft->ref_count, &draft->ref_capacity, sizeof *refs);
    if (!refs) return false;
    draft->refs = refs;
    refs[draft->ref_count++] = (gtl_ref){name, draft->via_count, 0};
    return true;
}

bool gtl_draft_add_via(gtl_draft *draft, gtl_word name)
{
    gtl_word *vias = gtl_grow(draft->vias, (size_t)draft->via_count, &draft->via_capacity, sizeof *vias);
    if (!vias) return false;
    draft->vias = vias;
    vias[draft->via_count++] = name;
    draft->refs[draft->ref_count - 1].via_count++;
    return true;
}

bool gtl_draft_add_pick(gtl_draft *draft, gtl_word name, double at)
{
    size_t count = (size_t)draft->pick_count;
    gtl_pick_typed *picks = gtl_grow(draft->picks, count, &draft->pick_capacity, sizeof *picks);
    if (!picks) return false;
    draft->picks = picks;
    picks[draft->pick_count++] = (gtl_pick_typed){name, at, -1};
    return true;
}

bool gtl_draft_add_hung(gtl_draft *draft, const gtl_hung *hung)
{
    size_t count = (size_t)draft->hung_count;
    gtl_hung *list = gtl_grow(draft->hung, count, &draft->hung_capacity, sizeof *list);
    if (!list) return false;
    draft->hung = list;
    list[draft->hung_count++] = *hung;
    return true;
}

const char *gtl_draft_keep_name(gtl_draft *draft, gtl_word name)
{
    size_t count = (size_t)draft->name_count;
    char **names = gtl_grow(draft->names, count, &draft->name_capacity, sizeof *names);
    if (!names) return NULL;
    draft->names = names;
    names[count] = gtl_text_copy(name.start, name.length);
    if (names[count]) draft->name_count++;
    return names[count];
}

static int by_name(const void *left, const void *right)
{
    const gtl_named *a = left;
    const gtl_named *b = right;
    int order = gtl_word_compare(a->name, b->name);
    return order != 0 ? order : (a->item > b->item) - (a->item < b->item);
}

bool gtl_draft_sort_names(gtl_draft *draft)
{
    size_t count = (size_t)draft->item_count;
    free(draft->by_name);
    draft->by_name = calloc(count + 1, sizeof *draft->by_name);
    if (!draft->by_name) return false;
    for (size_t i = 0; i < count; i++) {
        draft->by_name[i] = (gtl_named){gtl_word_of(draft->items[i].name), (int)i};
    }
    qsort(draft->by_name, count, sizeof *draft->by_name, by_name);
    return true;
}

int gtl_draft_find(const gtl_draft *draft, gtl_word name)
{
    int low = 0;
    int high = draft->item_count;
    while (low < high) {
        int middle = low + (high - low) / 2;
        if (gtl_word_compare(draft->by_name[middle].name, name) < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    bool found = low < draft->item_count && gtl_word_compare(draft->by_name[low].name, name) == 0;
    return found ? draft->by_name[low].item : -1;
}

int gtl_draft_nearest(gtl_draft *draft, gtl_word name)
{
    gtl_suggestion search = {.wanted = name, .best = -1};
    if (draft->suggestions == 0) return -1;
    draft->suggestions--;
    for (int i = 0; i < draft->item_count; i++) {
        gtl_suggest_try(&search, gtl_word_of(draft->items[i].name), i);
    }
    return search.best;
}
