/* drawing_names.c - names of bodies where a view shows no figures: those on one spot together. */
#include "report/character.h"
#include "report/drawing_notes.h"
#include "report/escape.h"

#include <stdlib.h>
#include <string.h>

/* Names from files have up to 32 columns. */
#define MOST_COLUMNS 32
/* Bodies nearer than this share a label. */
#define ONE_SPOT 16.0
/* So many names are written under each other. */
#define MOST_NAMES 4
/* Beyond so many things the plan and the side view are left without names: the elevation has them. */
#define MOST_THINGS 200

void gtl_add_short_name(gtl_text *text, const char *name)
{
    char *whole = gtl_escape_for_people(name);
    size_t used = 0, columns = 0;
    bool fits = whole && gtl_columns(whole, strlen(whole)) <= MOST_COLUMNS;
    text->failed = text->failed || !whole;
    while (whole && whole[used]) {
        gtl_character next = gtl_character_at(whole + used);
        columns += gtl_character_width(next.code);
        if (!fits && columns > MOST_COLUMNS - 3) break;
        used += next.bytes;
    }
    if (whole) gtl_text_put(text, whole, used);
    if (whole && !fits) gtl_text_add(text, "...");
    free(whole);
}

static bool on_one_spot(const gtl_picture *picture, const gtl_view *view, int one, int other)
{
    if (!view->spots[one].shown || !view->spots[other].shown) return false;
    if (picture->rig->things[one].node == picture->rig->things[other].node) return true;
    return gtl_length(gtl_between(view->spots[one].at, view->spots[other].at)) < ONE_SPOT;
}

/* Whether an earlier thing's label names this one. */
static bool is_named(const gtl_picture *picture, const gtl_view *view, int thing)
{
    for (int i = 0; i < thing; i++)
        if (on_one_spot(picture, view, i, thing)) return true;
    return false;
}

static void note_spot(gtl_notes *notes, const gtl_picture *picture, int view, int thing)
{
    const gtl_view *of = &picture->views[view];
    gtl_note note = {.rank = GTL_NOTE_NAME, .view = view, .bundle = -1};
    gtl_text text = {0}, entry = {0};
    int count = 0;
    gtl_text_add(&entry, "%.*s", (int)strcspn(of->title, ":"), of->title);
    for (int i = thing; i < picture->rig->thing_count; i++) {
        const gtl_spot *spot = &of->spots[i];
        if (i != thing && !on_one_spot(picture, of, thing, i)) continue;
        if (note.target_count < 2) gtl_note_target(&note, spot->at, spot->at, spot->reach);
        gtl_text_add(&entry, "%s ", count ? "," : ":");
        gtl_add_short_name(&entry, picture->rig->things[i].name);
        if (count++ >= MOST_NAMES) continue;
        gtl_text_add(&text, "%s", count > 1 ? "\n" : "");
        gtl_add_short_name(&text, picture->rig->things[i].name);
    }
    if (count > MOST_NAMES) gtl_text_add(&text, "\nand %d more", count - MOST_NAMES);
    gtl_note_add(notes, note, &text, &entry);
}

void gtl_note_names(gtl_notes *notes, const gtl_picture *picture, int view)
{
    const gtl_view *of = &picture->views[view];
    if (picture->rig->thing_count > MOST_THINGS) return;
    for (int i = 0; i < picture->rig->thing_count; i++)
        if (of->spots[i].shown && !is_named(picture, of, i)) note_spot(notes, picture, view, i);
}
