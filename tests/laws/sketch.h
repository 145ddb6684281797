/* sketch.h - a rig as a test draws it: all its parts with their keys, to be mirrored, turned or loaded
 * otherwise, and then written as the text of a rig file. */
#ifndef LAWS_SKETCH_H
#define LAWS_SKETCH_H

#include "laws/chance.h"
#include <gantline/gantline.h>

/* hold, raise and lower, numbered from 0 */
#define BASIC_CASES 3

enum { SKETCH_THINGS = 64, SKETCH_LINES = 24, SKETCH_STOPS = 32, SKETCH_CONNECTORS = 64 };

/* Connectors from `first` on, in order from the thing outwards. */
typedef struct sketch_via {
    int first;
    int count;
} sketch_via;

/* NaN in a double: the key is not written. */
typedef struct sketch_thing {
    gtl_kind kind;
    double at[3]; /* across, along, height, whatever the rig's dimension [m] */
    int on;       /* -1: has a place of its own */
    sketch_via via;
    bool guided;
    double weight;     /* [N] */
    double efficiency; /* [1] */
    double friction;   /* [1] */
    double wrap;       /* [rad] */
    int turns;
    double pull;  /* [N] */
    double limit; /* [N] */
    double wll;   /* [N] */
    double mbs;   /* [N] */
    double wear;  /* [1] */
} sketch_thing;

typedef struct sketch_stop {
    int thing;
    sketch_via via;
} sketch_stop;

typedef struct sketch_line {
    gtl_kind kind;
    sketch_stop stops[SKETCH_STOPS];
    int stop_count;
    double length;     /* [m] */
    double weight;     /* [N] */
    double wll;        /* [N] */
    double push_wll;   /* [N] */
    double wear;       /* [1] */
    double wet;        /* [1] */
    const char *knot;  /* "" for none */
    const char *hitch; /* likewise; slings */
} sketch_line;

typedef struct sketch {
    int dim;
    int load; /* written as the lifted one where it is not -1 */
    double design_factor;
    bool cases[BASIC_CASES]; /* those asked for; none: not written */
    bool all_cases;          /* `cases = all` instead */
    double acceleration;     /* [m/s2] */
    sketch_thing things[SKETCH_THINGS];
    int thing_count;
    sketch_line lines[SKETCH_LINES];
    int line_count;
    double connectors[SKETCH_CONNECTORS]; /* their wll [N] */
    int connector_count;
} sketch;

void sketch_begin(sketch *s, int dim);
/* Each adds a part, with no key stated, and returns its index. */
int sketch_thing_at(sketch *s, gtl_kind kind, double across, double along, double height);
int sketch_thing_on(sketch *s, gtl_kind kind, int on);
int sketch_line_of(sketch *s, gtl_kind kind);
void sketch_stop_at(sketch *s, int line, int thing);
sketch_via sketch_connectors(sketch *s, int count);

/* The thing at the bottom of what `thing` sits on. */
int sketch_root(const sketch *s, int thing);
/* Where a thing is, as the file says it: as many numbers as the rig has dimensions, height last [m]. */
void sketch_place(const sketch *s, int thing, double at[3]);

/* A line's length as drawn [m]. */
double sketch_length(const sketch *s, int index);

/* The rig file's text, sections shuffled by `shuffle` where it is not NULL. The caller frees it. */
char *sketch_text(const sketch *s, chance *shuffle);
/* The name that a part has in the text. */
void sketch_name(char name[GTL_NAME_LIMIT + 1], gtl_kind kind, int index);

void sketch_mirror(sketch *s);
void sketch_turn(sketch *s, double angle);
void sketch_reverse_paths(sketch *s);
void sketch_scale_forces(sketch *s, double factor);
/* Worse sheaves and rougher bends, each by a share of its own up to `most`. */
void sketch_add_friction(sketch *s, chance *c, double most);

/* Give every tied line its length as drawn; a rope tied in the middle becomes several, for only such ropes
 * can have one. What hangs on what stays the same. */
void sketch_fix_lengths(sketch *s);
/* Draw a body higher, and all that spars join to it: a spar is as long as drawn. */
void sketch_lift(sketch *s, int thing, double rise);
/* Draw every body where the state has it; `rig` was read from the text of this sketch. */
void sketch_draw_solved(sketch *s, const gtl_rig *rig, const gtl_state *state);

/* Draw every free coordinate off by up to `most` [m], but the height of the lifted load's body; spars keep
 * their lengths. */
void sketch_shake(sketch *s, chance *c, int load, double most);

/* The sketch of a rig that was read from any file; ratings are left out. False where it has no room. */
bool sketch_of_rig(sketch *s, const gtl_rig *rig);

/* Index in the rig of the part that the sketch knows as that, -1 for none. */
int sketch_find_thing(const sketch *s, const gtl_rig *rig, int thing);
int sketch_find_line(const sketch *s, const gtl_rig *rig, int line);

#endif
