/* hardware.h - tables of gear and of what takes from its rating: rows with their source, SI only.
 *
 * The shipped tables (the folder hardware-tables, compiled in) and the user's own are one set; of two rows of
 * one kind and name the one added first is found, so that a user's row stands before a shipped one. */
#ifndef GANTLINE_HARDWARE_H
#define GANTLINE_HARDWARE_H

#include <gantline/fault.h>

typedef enum gtl_hardware_kind {
    GTL_HW_GEAR,        /* a piece of gear: rating, mass, efficiency, diameters */
    GTL_HW_MATERIAL,    /* what a rope or sling is made of */
    GTL_HW_KNOT,        /* strength that a knot leaves */
    GTL_HW_TERMINATION, /* strength that an end termination leaves */
    GTL_HW_BEND,        /* strength left at a bend, by its diameter over the rope's */
    GTL_HW_HITCH,       /* a sling's rating by how it is hitched, on its straight one */
    GTL_HW_CHOKE,       /* a choked sling's rating by the angle of choke */
    GTL_HW_MODE,        /* several legs counted by one factor: shown only, drawn legs need none */
    GTL_HW_FITTING,     /* an eyebolt's or pad's rating by the pull's angle from its axis */
    GTL_HW_SIDE_LOAD,   /* a connector's rating by the pull's angle from its line */
    GTL_HW_USE,         /* design factors by use */
    GTL_HW_SHEAVE,      /* efficiency of one sheave, a range: shown only */
    GTL_HW_FRICTION,    /* coefficient of friction of a fairlead, a range: shown only */
    GTL_HW_CLIP,        /* wire-rope clips: number and spacing: shown only */
    GTL_HW_PIPE,        /* a batten's pipe: its weight a length, and how stiff it is */
    GTL_HW_GREEN_WOOD,  /* the density of a species' wood as it is felled */
    GTL_HW_KIND_COUNT
} gtl_hardware_kind;

/* The word of a table for a kind: "gear", "material", "knot", "termination", "bend", "hitch", "choke",
 * "mode", "fitting", "side-load", "use", "sheave", "friction", "clip", "pipe", "green-wood". */
GTL_API const char *gtl_hardware_kind_name(gtl_hardware_kind kind);

/* The numbers that a row may state. */
typedef enum gtl_hardware_number {
    GTL_HW_WLL,              /* working load limit [N] */
    GTL_HW_PUSH_WLL,         /* of a spar, in push [N] */
    GTL_HW_MBS,              /* minimum breaking strength [N] */
    GTL_HW_MASS,             /* [kg] */
    GTL_HW_EFFICIENCY,       /* of one sheave at 180 degrees [1] */
    GTL_HW_COEFFICIENT,      /* of friction [1] */
    GTL_HW_DIAMETER,         /* of a rope, or of the rope that clips are for [m] */
    GTL_HW_SHEAVE_DIAMETER,  /* where the rope lies, at its tread [m] */
    GTL_HW_PIN_DIAMETER,     /* [m] */
    GTL_HW_KEEPS,            /* the one factor of a knot, termination, hitch or mode [1] */
    GTL_HW_LOW,              /* the range's lower end [1] */
    GTL_HW_HIGH,             /* the range's upper end [1] */
    GTL_HW_WIRE_ROPE,        /* design factor for wire rope [1] */
    GTL_HW_FIBRE_ROPE,       /* design factor for fibre rope and textile slings [1] */
    GTL_HW_CHAIN,            /* design factor for chain [1] */
    GTL_HW_SHACKLE,          /* design factor for shackles and other connectors [1] */
    GTL_HW_METAL,            /* design factor for other metal parts: blocks, anchors, plates [1] */
    GTL_HW_WLL_SHARE,        /* what of a WLL the use leaves [1] */
    GTL_HW_COUNT,            /* of clips [1] */
    GTL_HW_SPACING,          /* of clips [m] */
    GTL_HW_WALL,             /* of a pipe [m] */
    GTL_HW_LINEAR_MASS,      /* of a pipe [kg/m] */
    GTL_HW_MODULUS,          /* of elasticity of what a pipe is made of [Pa] */
    GTL_HW_SPECIFIC_GRAVITY, /* basic: oven-dry mass over green volume, against water [1] */
    GTL_HW_MOISTURE,         /* of green wood, on its oven-dry mass [1] */
    GTL_HW_DENSITY,          /* of green wood, without bark [kg/m3] */
    GTL_HW_LIGHT,            /* the light end of its spread [kg/m3] */
    GTL_HW_HEAVY,            /* the heavy end [kg/m3] */
    GTL_HW_NUMBER_COUNT
} gtl_hardware_number;

/* How a factor follows from an angle or a ratio. Steps stay steps: nothing is read between two of them. */
typedef enum gtl_hardware_rule {
    GTL_HW_ONE,    /* one factor, GTL_HW_KEEPS */
    GTL_HW_UP_TO,  /* steps: shares[i] up to and with edges[i], which rise; beyond the last, nothing */
    GTL_HW_FROM,   /* steps: shares[i] from edges[i] on, which rise; below the first, nothing */
    GTL_HW_FORMULA /* 1 - a / x^b from edges[0] on; a = shares[0], b = shares[1] */
} gtl_hardware_rule;

/* The rope class that a material is of, or that a row is for. */
typedef enum gtl_rope_class {
    GTL_CLASS_NONE, /* not stated: any */
    GTL_CLASS_FIBRE,
    GTL_CLASS_NATURAL_FIBRE,
    GTL_CLASS_WIRE,
    GTL_CLASS_CHAIN,
    GTL_CLASS_COUNT
} gtl_rope_class;

/* "", "fibre", "natural-fibre", "wire", "chain". */
GTL_API const char *gtl_rope_class_name(gtl_rope_class rope_class);

/* The most steps of one row. */
#define GTL_HW_STEPS 16

/* One row. Texts are owned by the set. */
typedef struct gtl_hardware_row {
    gtl_hardware_kind kind;
    char *name;
    char *file; /* the table that it stands in, for messages */
    int line;   /* of its header there */
    bool shipped;
    char *source; /* "" where a user's row states none */
    char *seen;   /* how the figures were seen: "seen", "quoted", "memory", "derived", "invented", "own" */
    char *note;   /* "" where there is none */
    double numbers[GTL_HW_NUMBER_COUNT]; /* NaN where not stated */
    bool weighed[GTL_HW_NUMBER_COUNT];   /* a force that was typed as a mass: taken times standard gravity */
    gtl_hardware_rule rule;
    int step_count;
    double edges[GTL_HW_STEPS];    /* [rad] of angles, [1] of ratios */
    double shares[GTL_HW_STEPS];   /* [1] */
    bool forbidden;                /* beyond the steps: not allowed; else nothing is published there */
    gtl_rope_class rope_class;     /* of a material; of any other row: the first class that it is for */
    bool classes[GTL_CLASS_COUNT]; /* all that it is for: see gtl_hardware_suits */
    bool no_knots;    /* of a material: no figure of a knot, or of a fibre rope's end, may be applied to it */
    bool over_people; /* of a use */
    bool on_single_leg; /* of a choke: its steps count on the straight rating, not on the choker's */
    char *material;     /* of gear: the name of a material's row, "" for none */
} gtl_hardware_row;

/* A set of rows, in the order in which they were added. */
typedef struct gtl_hardware {
    gtl_hardware_row *rows;
    int row_count;
    size_t row_capacity;
} gtl_hardware;

/* Add the rows of one table. `faults` was begun with the table's name; the same strict screen as for rigs.
 * `shipped`: a row without a source is a fault. False after a fault or without memory (out_of_memory); the
 * set is then as it was before. */
GTL_API bool gtl_hardware_read(gtl_hardware *set, const char *text, size_t size, bool shipped,
                               gtl_fault_list *faults);

/* Add the rows of all shipped tables. False without memory; the set is then as it was before. */
GTL_API bool gtl_hardware_add_shipped(gtl_hardware *set);

/* Give back all rows; the set is empty afterwards. Begin a set with (gtl_hardware){0}. */
GTL_API void gtl_hardware_end(gtl_hardware *set);

/* The row of that kind and name (ASCII case does not count), NULL for none. `set` may be NULL. */
GTL_API const gtl_hardware_row *gtl_hardware_find(const gtl_hardware *set, gtl_hardware_kind kind,
                                                  const char *name);

/* Whether a row is for ropes of that class: true where the row states none; false where it states some and
 * the class is not among them, or is not known (GTL_CLASS_NONE). */
GTL_API bool gtl_hardware_suits(const gtl_hardware_row *row, gtl_rope_class rope_class);

/* What a row leaves of a rating at an angle [rad] or a ratio [1] (not read where the rule is GTL_HW_ONE): 0
 * where the row forbids it, NaN where it does not reach, or `at` is negative or NaN. What differs from an
 * edge by a rounding (1e-9 of it) lies on the edge. [1] */
GTL_API double gtl_hardware_factor(const gtl_hardware_row *row, double at);

#endif
