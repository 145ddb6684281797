/* draft.h - a rig as it was typed: every section with its values in SI and their lines, names still words.
 * The words point into the entries that were read; the draft must not outlive them. */
#ifndef RIG_DRAFT_H
#define RIG_DRAFT_H

#include "base/word.h"

#include <gantline/rig.h>

/* The numbers that a section may state. */
typedef enum gtl_field {
    GTL_F_MASS,
    GTL_F_WEIGHT,
    GTL_F_EFFICIENCY,
    GTL_F_FRICTION,
    GTL_F_WRAP,
    GTL_F_TURNS,
    GTL_F_SHEAVES,
    GTL_F_PULL,
    GTL_F_LIMIT,
    GTL_F_PEOPLE,
    GTL_F_EACH,
    GTL_F_LENGTH,
    GTL_F_WLL,
    GTL_F_PUSH_WLL,
    GTL_F_MBS,
    GTL_F_DESIGN_FACTOR,
    GTL_F_GRAVITY,
    GTL_F_ACCELERATION,
    GTL_F_SPEED,
    GTL_F_TIME,
    GTL_F_LOSS_FACTOR,
    GTL_F_CHOKE_ANGLE,
    GTL_F_SIDE_LOAD,
    GTL_F_DIAMETER,
    GTL_F_SHEAVE_DIAMETER,
    GTL_F_PIN_DIAMETER,
    GTL_F_WEAR,
    GTL_F_WET,
    GTL_F_COUNTERWEIGHT, /* of one in an arbor */
    GTL_F_LIFT,          /* how far the load is to go up; [rig] only */
    GTL_F_CLEAR,         /* of a block: nearer than this it meets the next one */
    GTL_F_SPARE,         /* of a rope: beyond what is rove */
    GTL_F_FALL,
    GTL_F_RUN,
    GTL_F_STRETCH,       /* what follows `stretch`: an elongation ... */
    GTL_F_STRETCH_FORCE, /* ... and after `at` the tension that it is at; has no key of its own */
    GTL_F_STEM_LENGTH,   /* of a piece of timber */
    GTL_F_DENSITY,
    GTL_F_BARK,
    GTL_FIELD_COUNT
} gtl_field;

/* The rows of the hardware tables that a section may name. */
typedef enum gtl_row_key {
    GTL_R_HARDWARE,
    GTL_R_MATERIAL,
    GTL_R_KNOT,
    GTL_R_TERMINATION,
    GTL_R_HITCH,
    GTL_R_FITTING,
    GTL_R_PIPE,    /* battens only */
    GTL_R_SPECIES, /* loads and spars */
    GTL_R_USE,     /* [rig] only */
    GTL_ROW_KEY_COUNT
} gtl_row_key;

/* The free texts of [rig]. */
typedef enum gtl_remark { GTL_TITLE, GTL_PLACE, GTL_DATE, GTL_BY, GTL_NOTE, GTL_REMARK_COUNT } gtl_remark;

/* That something was stated, and where. What was stated but could not be read is told already: its value is
 * absent, and no fault may follow from that. */
typedef struct gtl_stated {
    bool yes;
    int line;
} gtl_stated;

typedef struct gtl_number {
    gtl_stated stated;
    double value; /* SI; NaN where not stated or not readable; of a range its low end */
    double high;  /* of a range its high end, SI; else NaN */
} gtl_number;

/* Names in a row: draft->refs[first] ... */
typedef struct gtl_list {
    gtl_stated stated;
    int first;
    int count; /* 0 where not stated or not readable */
} gtl_list;

typedef struct gtl_place_typed {
    gtl_stated stated;
    int count; /* coordinates, 0 where not stated or not readable */
    double at[3];
} gtl_place_typed;

/* The diameters of a piece of timber. */
typedef struct gtl_diameters_typed {
    gtl_stated stated;
    int count;    /* 0 where not stated or not readable */
    double of[3]; /* [m] */
} gtl_diameters_typed;

/* A direction: as many numbers as `at` has lengths, or a word for up or down. */
typedef struct gtl_direction_typed {
    gtl_stated stated;
    int count;    /* numbers, 0 where it is a word, or not readable */
    double to[3]; /* not all 0 [1] */
    int upright;  /* +1 up, -1 down, else 0 */
} gtl_direction_typed;

/* The name of a row, empty where not stated or not readable. */
typedef struct gtl_row_name {
    gtl_stated stated;
    gtl_word name;
} gtl_row_name;

/* A name, with the connectors of its `via`: draft->vias[first_via] ... */
typedef struct gtl_ref {
    gtl_word name;
    int first_via;
    int via_count;
} gtl_ref;

/* A point of a batten that lines tie to. */
typedef struct gtl_pick_typed {
    gtl_word name;
    double at; /* from the batten's first end [m] */
    int item;  /* the load that stands for it, -1: none yet */
} gtl_pick_typed;

/* One section. */
typedef struct gtl_item {
    gtl_kind kind;
    const char *name;
    int line;
    bool
        lost; /* its kind or its name cannot be relied on: it may be referred to, and no more is said of it */
    bool rough; /* something in it could not be read: nothing may be called missing */
    gtl_number numbers[GTL_FIELD_COUNT];
    gtl_row_name rows[GTL_ROW_KEY_COUNT];
    gtl_place_typed at;
    gtl_direction_typed axis;
    gtl_diameters_typed diameters;
    gtl_stated wood_end_stated;
    gtl_wood_end wood_end; /* heavy where not stated */
    gtl_list on;           /* one name */
    gtl_list path;
    gtl_list load;       /* one name; [rig] only */
    gtl_list other;      /* one name; hands only: which pulls where this one would have to push */
    gtl_list losses;     /* what lets go, a case each; [rig] only */
    gtl_row_name tables; /* [rig] only: the whole value, file names with commas between them */
    gtl_list picks;      /* battens: draft->picks[first] ..., as typed */
    gtl_list hung;       /* battens: draft->hung[first] ... */
    int batten;          /* a load that is a pick: the item of its batten, else -1 */
    gtl_stated guide;
    gtl_stated cases;   /* [rig] only */
    gtl_stated others;  /* free texts and units: nobody asks which */
    size_t first_entry; /* where its keys begin among the entries that were read */
} gtl_item;

typedef struct gtl_named {
    gtl_word name;
    int item;
} gtl_named;

typedef struct gtl_draft {
    gtl_item sheet; /* [rig]; blank where the section is left out */
    bool has_sheet;
    const char *remarks[GTL_REMARK_COUNT];
    gtl_hardware *hardware; /* all tables, complete, where any is used; owned until a rig takes it over */
    bool tables_missing;    /* one could not be read: no row may be called unknown */
    bool us_units;
    bool cases[GTL_CASE_KIND_COUNT]; /* named; of GTL_LOST: any */
    bool all_cases;                  /* `all`: every case that the file has data for */
    double gravity;                  /* as stated, else standard */
    bool mass_typed;                 /* gravity matters */
    bool whole;         /* every section, name and path could be read: the rig can be judged as a whole */
    bool names_missing; /* a header could not be read: no name may be called unknown */
    int suggestions;    /* how many more unknown names are searched for something near */

    gtl_item *items; /* in the order of the file, [rig] not among them */
    int item_count;
    size_t item_capacity;
    gtl_ref *refs;
    int ref_count;
    size_t ref_capacity;
    gtl_word *vias;
    int via_count;
    size_t via_capacity;
    gtl_pick_typed *picks;
    int pick_count;
    size_t pick_capacity;
    gtl_hung *hung;
    int hung_count;
    size_t hung_capacity;
    char **names; /* of picks; owned */
    int name_count;
    size_t name_capacity;
    gtl_named *by_name; /* one an item, in order of name, then of the file */
} gtl_draft;

/* An empty draft. */
void gtl_draft_begin(gtl_draft *draft);
void gtl_draft_end(gtl_draft *draft);

/* An item of which nothing is stated. */
gtl_item gtl_item_blank(gtl_kind kind, const char *name, int line);

/* Append; false without memory. */
bool gtl_draft_add_item(gtl_draft *draft, const gtl_item *item);
bool gtl_draft_add_ref(gtl_draft *draft, gtl_word name);
/* A connector of the ref added last. */
bool gtl_draft_add_via(gtl_draft *draft, gtl_word name);

bool gtl_draft_add_pick(gtl_draft *draft, gtl_word name, double at);
bool gtl_draft_add_hung(gtl_draft *draft, const gtl_hung *hung);
/* A word as a text that lasts as long as the draft; NULL without memory. */
const char *gtl_draft_keep_name(gtl_draft *draft, gtl_word name);

/* Put the items in order of name, once all are there, and again once more are; false without memory. */
bool gtl_draft_sort_names(gtl_draft *draft);
/* The first item of that name, -1 for none. */
int gtl_draft_find(const gtl_draft *draft, gtl_word name);
/* The item whose name is so near that it may be meant, -1 for none. */
int gtl_draft_nearest(gtl_draft *draft, gtl_word name);

#endif
