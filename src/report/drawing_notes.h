/* drawing_notes.h - what is written into a drawing: names and figures, each with what it tells of. */
#ifndef REPORT_DRAWING_NOTES_H
#define REPORT_DRAWING_NOTES_H

#include "report/drawing_field.h"
#include "report/drawing_picture.h"

/* Notes are seated in this order: what has the fewest places to go first. */
typedef enum gtl_note_rank {
    GTL_NOTE_BUNDLE, /* a part of line beside others between the same bodies: a letter in any case */
    GTL_NOTE_BODY,
    GTL_NOTE_PART,
    GTL_NOTE_CONNECTOR,
    GTL_NOTE_NAME, /* in a view that shows no figures */
    GTL_NOTE_RANKS
} gtl_note_rank;

typedef struct gtl_note {
    gtl_note_rank rank;
    int view;              /* -1: shown in none, so only listed */
    gtl_target targets[2]; /* that a label may stand by, the better one first */
    int target_count;
    char *text;  /* lines; owned */
    char *entry; /* how the list tells it; owned */
    char *over;  /* "OVER 128.5 %" where it is; owned, else NULL */
    int bundle;  /* notes of one bundle follow each other and have this number, -1: in none */
} gtl_note;

/* A row of the list beside the drawing. */
typedef struct gtl_entry {
    char letters[8]; /* "" where nothing in the drawing points to it */
    const gtl_note *note;
} gtl_entry;

typedef struct gtl_notes {
    gtl_note *items;
    size_t count;
    size_t capacity;
    gtl_entry *entries; /* room for one a note */
    int entry_count;
    int letters; /* so many are given away */
    bool failed;
} gtl_notes;

/* Write all notes of a picture whose views are laid out and inked. Ended in every case. */
void gtl_notes_begin(gtl_notes *notes, const gtl_picture *picture);
void gtl_notes_end(gtl_notes *notes);

/* drawing_labels.c: into the views as labels, where there is room, else into the list. */
void gtl_label_views(gtl_picture *picture, gtl_notes *notes);

/* Add a note; it takes the texts. */
void gtl_note_add(gtl_notes *notes, gtl_note note, gtl_text *text, gtl_text *entry);
void gtl_note_target(gtl_note *note, gtl_point a, gtl_point b, double reach);

/* --- drawing_names.c --- */

/* A user's name for a label: for people, and no longer than is read at a glance. */
void gtl_add_short_name(gtl_text *text, const char *name);

/* The names of all bodies in a view that shows no figures of them. */
void gtl_note_names(gtl_notes *notes, const gtl_picture *picture, int view);

/* A cross in a box, the mark of what is over, on the foot line of a text. */
void gtl_mark_over(gtl_drawing *drawing, gtl_role role, int view, gtl_point foot);
/* That and the blank behind it. */
#define GTL_MARK_WIDTH 18.0

#endif
