/* drawing_notes.c - names and figures of a drawing, in the words of the report. */
#include "report/drawing_notes.h"
#include "base/grow.h"
#include "report/geometry.h"
#include "rig/kind.h"

#include <math.h>
#include <stdlib.h>

/* Beyond so many parts, or things, letters would not be found again: they are listed only. */
#define MOST_LETTERED 200
/* From so many parts between the same two bodies on all get letters. */
#define BUNDLE 3
/* In the elevation a part is told of if it shows so much of its length, else where it shows most [1]. */
#define SEEN_WELL 0.4
/* An arrow shorter than this leaves its label to the anchor. */
#define LONG_ENOUGH 24.0

/* --- words --- */

/* "OVER 128.5 %", with the case where it is another one; NULL for what is not over, or without memory. */
static char *over_words(const gtl_picture *picture, gtl_kind kind, int index)
{
    const gtl_component *part = gtl_over_component(picture, kind, index);
    gtl_text text = {0};
    if (!part) return NULL;
    gtl_text_add(&text, "OVER ");
    if (isinf(part->utilisation))
        gtl_text_add(&text, "(not allowed)");
    else
        gtl_text_add(&text, "%s %%", gtl_figure_utilisation(part->utilisation).text);
    if (part->governing >= 0 && part->governing != picture->index) {
        gtl_case_kind kind_of = picture->sheet->outcomes[part->governing].kind;
        gtl_text_add(&text, "%s%s", kind_of == GTL_LOST ? " after a loss" : " in ",
                     kind_of == GTL_LOST ? "" : gtl_case_name(kind_of));
    }
    return gtl_text_take(&text);
}

static const char *force_of(const gtl_picture *picture, double newtons, gtl_figure *figure)
{
    *figure = gtl_figure_force_unit(&picture->units, newtons);
    return figure->text;
}

/* In a drop the rig that is drawn has the peak in place of the load's weight. */
static void add_load(gtl_text *text, const gtl_picture *picture, int thing, const char *between)
{
    bool drop = picture->outcome->kind == GTL_DROP;
    const gtl_thing *load = &(drop ? picture->sheet->rig : picture->rig)->things[thing];
    double mass = load->weight / picture->rig->gravity;
    gtl_figure figure;
    bool worked_out = gtl_timber_of(picture->rig, load->kind, thing) != NULL;
    gtl_text_add(text, "%s%s", between,
                 worked_out
                     ? gtl_figure_after(gtl_figure_mass(&picture->units, mass), picture->units.mass).text
                     : gtl_figure_mass_unit(&picture->units, mass).text);
    gtl_text_add(text, "%s%s", between, force_of(picture, load->weight, &figure));
    if (drop && picture->solved && thing == picture->outcome->caught->load)
        gtl_text_add(text, "%speak %s", between, force_of(picture, picture->outcome->caught->peak, &figure));
}

static void add_track(gtl_text *text, const gtl_picture *picture, int thing, const char *between)
{
    int node = picture->rig->things[thing].node;
    gtl_figure figure;
    if (!picture->solved || picture->rig->nodes[node].root != thing || !picture->rig->nodes[node].guided)
        return;
    double force = gtl_vector_size(picture->outcome->forces.track[node], picture->rig->dim);
    gtl_text_add(text, "%strack %s", between, force_of(picture, force, &figure));
}

/* Figures of a body, each after `between`. */
static void add_figures(gtl_text *text, const gtl_picture *picture, int thing, const char *between)
{
    const gtl_thing *of = &picture->rig->things[thing];
    const gtl_component *part = gtl_sheet_component(picture->sheet, of->kind, thing);
    gtl_figure figure;
    double force = gtl_shown_force(picture, thing);
    if (gtl_is_of(of->kind, GTL_WEIGHT_KINDS) && !picture->bare) add_load(text, picture, thing, between);
    if (of->kind == GTL_FAIRLEAD && of->turns > 0)
        gtl_text_add(text, "%s%d turn%s", between, of->turns, of->turns == 1 ? "" : "s");
    if ((of->kind == GTL_BLOCK || of->kind == GTL_FAIRLEAD) && picture->solved && part)
        force = picture->outcome->demand[part - picture->sheet->components];
    if (isfinite(force)) gtl_text_add(text, "%s%s", between, force_of(picture, force, &figure));
    add_track(text, picture, thing, between);
}

/* What a part of line carries: a figure, "slack", or "" where the case has none. */
static gtl_figure part_figure(const gtl_picture *picture, int part)
{
    if (!picture->solved) return (gtl_figure){""};
    const gtl_state *state = picture->outcome->state;
    if (state->slack[picture->rig->parts[part].piece]) return (gtl_figure){"slack"};
    double tension = state->tension[part];
    bool pushed = picture->rig->lines[picture->rig->parts[part].line].kind == GTL_SPAR && tension < 0;
    gtl_figure figure = gtl_figure_force_unit(&picture->units, fabs(tension));
    return pushed ? gtl_figure_after(figure, "push") : figure;
}

/* --- the list of notes --- */

void gtl_note_add(gtl_notes *notes, gtl_note note, gtl_text *text, gtl_text *entry)
{
    gtl_note *room = gtl_grow(notes->items, notes->count, &notes->capacity, sizeof note);
    note.text = gtl_text_take(text);
    note.entry = gtl_text_take(entry);
    if (room) notes->items = room;
    if (room && note.text && note.entry) {
        notes->items[notes->count++] = note;
        return;
    }
    free(note.text);
    free(note.entry);
    free(note.over);
    notes->failed = true;
}

void gtl_note_target(gtl_note *note, gtl_point a, gtl_point b, double reach)
{
    note->targets[note->target_count++] = (gtl_target){.a = a, .b = b, .reach = reach};
}

static void note_body(gtl_notes *notes, const gtl_picture *picture, int thing)
{
    const gtl_view *view = &picture->views[0];
    const gtl_thing *of = &picture->rig->things[thing];
    const gtl_arrow *arrow = &view->arrows[thing];
    gtl_note note = {.rank = GTL_NOTE_BODY, .bundle = -1};
    gtl_text text = {0}, entry = {0};
    if (!view->spots[thing].shown) return;
    if (picture->rig->thing_count > MOST_LETTERED) note.view = -1;
    if (arrow->shown && gtl_length(gtl_between(arrow->tail, arrow->tip)) > LONG_ENOUGH)
        gtl_note_target(&note, arrow->tail, arrow->tip, 3);
    gtl_note_target(&note, view->spots[thing].at, view->spots[thing].at, view->spots[thing].reach);
    note.over = over_words(picture, of->kind, thing);
    gtl_add_short_name(&text, of->name);
    add_figures(&text, picture, thing, "\n");
    gtl_text_add(&entry, "%s ", gtl_kind_name(of->kind));
    gtl_add_short_name(&entry, of->name);
    add_figures(&entry, picture, thing, ", ");
    gtl_note_add(notes, note, &text, &entry);
}

/* --- parts --- */

static void add_route(gtl_text *entry, const gtl_picture *picture, int part)
{
    const gtl_rig *rig = picture->rig;
    const gtl_part *of = &rig->parts[part];
    if (rig->line_count > 1) {
        gtl_add_short_name(entry, rig->lines[of->line].name);
        gtl_text_add(entry, ", ");
    }
    gtl_add_short_name(entry, rig->things[rig->stops[of->from].thing].name);
    gtl_text_add(entry, " to ");
    gtl_add_short_name(entry, rig->things[rig->stops[of->to].thing].name);
    gtl_text_add(entry, "%s%s", picture->bare ? "" : ": ", part_figure(picture, part).text);
}

static double shown_length(const gtl_view *view, int part)
{
    const gtl_stretch *of = &view->stretches[part];
    return of->shown ? gtl_length(gtl_between(of->a, of->b)) : 0;
}

/* The view that tells of a part; -1 where none shows it. */
static int view_of(const gtl_picture *picture, int part)
{
    int best = 0;
    for (int i = 1; i < picture->view_count; i++)
        if (shown_length(&picture->views[i], part) > shown_length(&picture->views[best], part)) best = i;
    double most = shown_length(&picture->views[best], part);
    if (shown_length(&picture->views[0], part) >= SEEN_WELL * most) best = 0;
    return most > 0 ? best : -1;
}

/* The part of a line that also bears its name: the longest. */
static bool bears_name(const gtl_picture *picture, int part)
{
    const gtl_rig *rig = picture->rig;
    const gtl_line *line = &rig->lines[rig->parts[part].line];
    int longest = line->first_part;
    if (rig->part_count > MOST_LETTERED) return part == longest;
    for (int i = line->first_part; i < line->first_part + line->stop_count - 1; i++)
        if (shown_length(&picture->views[0], i) > shown_length(&picture->views[0], longest)) longest = i;
    return part == longest;
}

static void note_part(gtl_notes *notes, const gtl_picture *picture, int part, int bundle)
{
    const gtl_rig *rig = picture->rig;
    const gtl_line *line = &rig->lines[rig->parts[part].line];
    gtl_figure figure = part_figure(picture, part);
    bool named = bears_name(picture, part);
    gtl_note note = {.rank = bundle < 0 ? GTL_NOTE_PART : GTL_NOTE_BUNDLE, .bundle = bundle};
    gtl_text text = {0}, entry = {0};
    note.view = rig->part_count > MOST_LETTERED ? -1 : view_of(picture, part);
    if (note.view >= 0) {
        const gtl_stretch *at = &picture->views[note.view].stretches[part];
        gtl_note_target(&note, at->a, at->b, line->kind == GTL_SPAR ? 4 : 2);
    }
    if (named) note.over = over_words(picture, line->kind, rig->parts[part].line);
    if (named) gtl_add_short_name(&text, line->name);
    if (figure.text[0]) gtl_text_add(&text, "%s%s", named ? " " : "", figure.text);
    add_route(&entry, picture, part);
    gtl_note_add(notes, note, &text, &entry);
}

static bool alongside(const gtl_rig *rig, int one, int other)
{
    int a = rig->stops[rig->parts[one].from].thing, b = rig->stops[rig->parts[one].to].thing;
    int c = rig->stops[rig->parts[other].from].thing, d = rig->stops[rig->parts[other].to].thing;
    return (a == c && b == d) || (a == d && b == c);
}

/* Parts that run between the same bodies, this one among them; the first of them is *first. */
static int count_alongside(const gtl_picture *picture, int part, int *first)
{
    int count = 0;
    for (int i = picture->rig->part_count - 1; i >= 0; i--) {
        if (!alongside(picture->rig, part, i) || view_of(picture, i) != view_of(picture, part)) continue;
        count++;
        *first = i;
    }
    return count;
}

/* Notes of a bundle, from `first` on, stand on the outer sides of their parts. */
static void face_outwards(gtl_notes *notes, size_t first)
{
    gtl_point middle = {0, 0};
    double share = 1.0 / (double)(notes->count - first + (notes->count == first));
    for (size_t i = first; i < notes->count; i++) {
        const gtl_target *target = notes->items[i].targets;
        middle = gtl_along(middle, gtl_along(target->a, gtl_between(target->a, target->b), 0.5), share);
    }
    for (size_t i = first; i < notes->count; i++) {
        notes->items[i].targets[0].sided = true;
        notes->items[i].targets[0].inside = middle;
    }
}

static void note_parts(gtl_notes *notes, const gtl_picture *picture)
{
    bool many = picture->rig->part_count > MOST_LETTERED;
    for (int i = 0; i < picture->rig->part_count; i++) {
        int first = i;
        if (picture->bare) {
            if (picture->rig->line_count > 1 && bears_name(picture, i)) note_part(notes, picture, i, -1);
            continue;
        }
        bool bundled = !many && view_of(picture, i) >= 0 && count_alongside(picture, i, &first) >= BUNDLE;
        if (!bundled) note_part(notes, picture, i, -1);
        size_t own = notes->count;
        for (int k = i; bundled && first == i && k < picture->rig->part_count; k++)
            if (alongside(picture->rig, i, k) && view_of(picture, k) == view_of(picture, i))
                note_part(notes, picture, k, i);
        face_outwards(notes, own);
    }
}

/* --- connectors --- */

/* Its mark in the elevation, NULL for none. */
static const gtl_shape *link_of(const gtl_picture *picture, int connector)
{
    const gtl_drawing *drawing = picture->drawing;
    for (int i = 0; i < drawing->count; i++) {
        const gtl_shape *shape = &drawing->shapes[i];
        if (shape->role == GTL_ROLE_LINK && shape->view == 0 && shape->index == connector) return shape;
    }
    return NULL;
}

/* One that is over is told of even where nothing of it is seen. */
static void note_connector(gtl_notes *notes, const gtl_picture *picture, int connector)
{
    bool many = picture->rig->connector_count > MOST_LETTERED;
    const gtl_shape *link = many ? NULL : link_of(picture, connector);
    gtl_note note = {.rank = GTL_NOTE_CONNECTOR, .view = link ? 0 : -1, .bundle = -1};
    gtl_text text = {0}, entry = {0};
    if (!link && !gtl_over_component(picture, GTL_CONNECTOR, connector)) return;
    if (link) gtl_note_target(&note, link->a, link->a, link->radius);
    note.over = over_words(picture, GTL_CONNECTOR, connector);
    gtl_add_short_name(&text, picture->rig->connectors[connector].name);
    gtl_text_add(&entry, "connector ");
    gtl_add_short_name(&entry, picture->rig->connectors[connector].name);
    gtl_note_add(notes, note, &text, &entry);
}

void gtl_notes_begin(gtl_notes *notes, const gtl_picture *picture)
{
    *notes = (gtl_notes){0};
    for (int i = 0; i < picture->rig->thing_count; i++) note_body(notes, picture, i);
    note_parts(notes, picture);
    for (int i = 0; i < picture->rig->connector_count; i++) note_connector(notes, picture, i);
    for (int i = 1; i < picture->view_count; i++) gtl_note_names(notes, picture, i);
    notes->entries = calloc(notes->count + 1, sizeof *notes->entries);
    notes->failed = notes->failed || !notes->entries;
}

void gtl_notes_end(gtl_notes *notes)
{
    for (size_t i = 0; i < notes->count; i++) {
        free(notes->items[i].text);
        free(notes->items[i].entry);
        free(notes->items[i].over);
    }
    free(notes->items);
    free(notes->entries);
}
