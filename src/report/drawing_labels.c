/* drawing_labels.c - notes into a view: as a label where there is room, else as a letter that the list
 * explains, else only into the list. */
#include "report/drawing_notes.h"

#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* From an outline to a label next to it; letters find their way between the parts of a tackle. */
#define NEXT        4.0
#define NEXT_LETTER 2.5
#define PEN_LEADER  0.7
#define PEN_MARK    1.6
#define MARK_SIZE   11.0
/* A last line has none below it: from the top of its letters to the foot of those that hang down. */
#define LAST_LINE 17.5
#define FOOT      13.0

typedef struct gtl_labelling {
    gtl_picture *picture;
    gtl_notes *notes;
    gtl_field fields[GTL_MOST_VIEWS];
} gtl_labelling;

/* --- what a label looks like --- */

void gtl_mark_over(gtl_drawing *drawing, gtl_role role, int view, gtl_point foot)
{
    gtl_point low = {foot.x, foot.y - MARK_SIZE}, high = {foot.x + MARK_SIZE, foot.y};
    gtl_shape shape = {.kind = GTL_SHAPE_BOX, .role = role, .index = -1, .view = view, .width = PEN_MARK};
    shape.a = low;
    shape.b = high;
    gtl_shape_add(drawing, shape);
    shape.kind = GTL_SHAPE_LINE;
    gtl_shape_add(drawing, shape);
    shape.a = (gtl_point){low.x, high.y};
    shape.b = (gtl_point){high.x, low.y};
    gtl_shape_add(drawing, shape);
}

/* How large a text of several lines is, with the words for what is over as its last one. */
static gtl_point size_of(const char *text, const char *over, bool bold)
{
    gtl_point size = {over ? GTL_MARK_WIDTH + gtl_text_width(over, SIZE_MAX, true) : 0,
                      over ? GTL_TEXT_STEP : 0};
    while (*text) {
        size_t length = strcspn(text, "\n");
        double width = gtl_text_width(text, length, bold);
        if (width > size.x) size.x = width;
        size.y += GTL_TEXT_STEP;
        text += length + (text[length] == '\n');
    }
    size.y -= GTL_TEXT_STEP - LAST_LINE;
    return size;
}

static void put_text(gtl_labelling *l, int view, const gtl_seat *seat, int line, const char *text,
                     size_t length, bool bold)
{
    const gtl_bounds *box = &seat->box;
    double x = seat->align == GTL_ALIGN_LEFT    ? box->low.x
               : seat->align == GTL_ALIGN_RIGHT ? box->high.x
                                                : (box->low.x + box->high.x) / 2;
    gtl_shape shape = {
        .kind = GTL_SHAPE_TEXT, .role = GTL_ROLE_LABEL, .index = -1, .view = view, .bold = bold};
    shape.a = (gtl_point){x, box->low.y + FOOT + GTL_TEXT_STEP * line};
    shape.align = seat->align;
    shape.text = gtl_text_copy(text, length);
    if (shape.text)
        gtl_shape_add(l->picture->drawing, shape);
    else
        l->notes->failed = true;
}

/* The mark stands at the left of its line, whichever side the line keeps to. */
static void put_over(gtl_labelling *l, int view, const gtl_seat *seat, int line, const char *over)
{
    double width = GTL_MARK_WIDTH + gtl_text_width(over, SIZE_MAX, true);
    gtl_seat own = *seat;
    gtl_point foot = {seat->box.low.x, seat->box.low.y + FOOT + GTL_TEXT_STEP * line};
    if (seat->align == GTL_ALIGN_RIGHT) foot.x = seat->box.high.x - width;
    if (seat->align == GTL_ALIGN_MIDDLE) foot.x = (seat->box.low.x + seat->box.high.x - width) / 2;
    own.align = GTL_ALIGN_LEFT;
    own.box.low.x = foot.x + GTL_MARK_WIDTH;
    gtl_mark_over(l->picture->drawing, GTL_ROLE_LABEL, view, foot);
    put_text(l, view, &own, line, over, strlen(over), true);
}

static void put_label(gtl_labelling *l, int view, const gtl_seat *seat, const char *text, const char *over,
                      bool bold)
{
    int line = 0;
    if (seat->led)
        gtl_shape_add(l->picture->drawing, (gtl_shape){.kind = GTL_SHAPE_LINE,
                                                       .role = GTL_ROLE_LEADER,
                                                       .index = -1,
                                                       .view = view,
                                                       .a = seat->from,
                                                       .b = seat->to,
                                                       .width = PEN_LEADER});
    while (*text) {
        size_t length = strcspn(text, "\n");
        put_text(l, view, seat, line++, text, length, bold);
        text += length + (text[length] == '\n');
    }
    if (over) put_over(l, view, seat, line, over);
}

/* --- the list --- */

static void list_note(gtl_labelling *l, const gtl_note *note, const char *letters)
{
    gtl_entry *entry = &l->notes->entries[l->notes->entry_count++];
    snprintf(entry->letters, sizeof entry->letters, "%.7s", letters);
    entry->note = note;
}

/* a ... z, aa ... */
static void spell(int number, char letters[8])
{
    char turned[8];
    int count = 0;
    for (; number >= 0 && count < 6; number = number / 26 - 1) turned[count++] = (char)('a' + number % 26);
    for (int i = 0; i < count; i++) letters[i] = turned[count - 1 - i];
    letters[count] = '\0';
}

/* --- seats --- */

static bool find_seat(gtl_labelling *l, const gtl_note *note, const char *text, const char *over, bool bold,
                      gtl_seat *seat)
{
    gtl_point size = size_of(text, over, bold);
    for (int i = 0; note->view >= 0 && i < note->target_count; i++)
        if (gtl_field_take(&l->fields[note->view], &note->targets[i], size, bold ? NEXT_LETTER : NEXT, seat))
            return true;
    return false;
}

/* A note of its own: written out, else a letter, else only listed. */
static void seat_note(gtl_labelling *l, const gtl_note *note)
{
    char letters[8];
    gtl_seat seat;
    if (!note->text[0] && !note->over) return;
    if (find_seat(l, note, note->text, note->over, false, &seat)) {
        put_label(l, note->view, &seat, note->text, note->over, false);
        return;
    }
    spell(l->notes->letters, letters);
    bool lettered = find_seat(l, note, letters, NULL, true, &seat);
    if (lettered) put_label(l, note->view, &seat, letters, NULL, true);
    l->notes->letters += lettered;
    list_note(l, note, lettered ? letters : "");
}

/* Letters for a bundle, each beside its own part. False, and nothing is taken, where one has no room. */
static bool seat_each(gtl_labelling *l, const gtl_note *first, int count, gtl_seat *seats)
{
    gtl_field *field = &l->fields[first->view];
    gtl_field_mark before = gtl_field_now(field);
    char letters[8];
    for (int i = 0; i < count; i++) {
        spell(l->notes->letters + i, letters);
        if (find_seat(l, first + i, letters, NULL, true, &seats[i])) continue;
        gtl_field_back(field, before);
        return false;
    }
    return true;
}

/* One label for all of a bundle: "a-f", beside any of its parts. False where it has no room either. */
static bool seat_range(gtl_labelling *l, const gtl_note *first, int count)
{
    char low[8], high[8], range[24];
    gtl_seat seat;
    spell(l->notes->letters, low);
    spell(l->notes->letters + count - 1, high);
    snprintf(range, sizeof range, "%s-%s", low, high);
    for (int i = 0; i < count; i++) {
        if (!find_seat(l, first + i, range, NULL, true, &seat)) continue;
        put_label(l, first->view, &seat, range, NULL, true);
        return true;
    }
    return false;
}

static void seat_bundle(gtl_labelling *l, const gtl_note *first, int count)
{
    char letters[8];
    gtl_seat *seats = calloc((size_t)count, sizeof *seats);
    l->notes->failed = l->notes->failed || !seats;
    if (!seats || !first->text[0]) {
        free(seats);
        return;
    }
    bool each = seat_each(l, first, count, seats);
    bool lettered = each || seat_range(l, first, count);
    for (int i = 0; i < count; i++) {
        spell(l->notes->letters + i, letters);
        if (each) put_label(l, first->view, &seats[i], letters, NULL, true);
        list_note(l, first + i, lettered ? letters : "");
    }
    l->notes->letters += lettered ? count : 0;
    free(seats);
}

static void seat_rank(gtl_labelling *l, gtl_note_rank rank, bool over)
{
    const gtl_note *notes = l->notes->items;
    int count = (int)l->notes->count;
    for (int i = 0, next; i < count; i = next) {
        next = i + 1;
        while (notes[i].bundle >= 0 && next < count && notes[next].bundle == notes[i].bundle) next++;
        if (notes[i].rank != rank) continue;
        if (rank == GTL_NOTE_BUNDLE && over)
            seat_bundle(l, &notes[i], next - i);
        else if (rank != GTL_NOTE_BUNDLE && !notes[i].over == !over)
            seat_note(l, &notes[i]);
    }
}

void gtl_label_views(gtl_picture *picture, gtl_notes *notes)
{
    gtl_labelling l = {.picture = picture, .notes = notes};
    for (int i = 0; i < picture->view_count; i++)
        gtl_field_begin(&l.fields[i], picture->drawing, i, picture->views[i].room);
    for (int rank = 0; rank < GTL_NOTE_RANKS && !notes->failed; rank++) {
        seat_rank(&l, (gtl_note_rank)rank, true);
        seat_rank(&l, (gtl_note_rank)rank, false);
    }
    for (int i = 0; i < picture->view_count; i++) {
        notes->failed = notes->failed || l.fields[i].failed;
        gtl_field_end(&l.fields[i]);
    }
}
