/* rig.h - the rig as data: SI only, parts refer to each other by index, const once built. */
#ifndef GANTLINE_RIG_H
#define GANTLINE_RIG_H

#include <gantline/fault.h>
#include <gantline/hardware.h>
#include <gantline/timber.h>

/* NaN in a double below means: not stated. */

typedef enum gtl_kind {
    GTL_SHEET, /* the section [rig] itself */
    GTL_ANCHOR,
    GTL_BLOCK,
    GTL_FAIRLEAD,
    GTL_JOINT,
    GTL_LOAD,
    GTL_ARBOR,
    GTL_HAND,
    GTL_ROPE,
    GTL_SLING,
    GTL_SPAR,
    GTL_CONNECTOR,
    GTL_BATTEN
} gtl_kind;

#define GTL_KIND_COUNT (GTL_BATTEN + 1)

/* The word of the rig file for a kind: "anchor", "block", ... ("rig" for GTL_SHEET). */
GTL_API const char *gtl_kind_name(gtl_kind kind);

typedef enum gtl_case_kind {
    GTL_HOLD,  /* at rest, without friction */
    GTL_RAISE, /* the load moving up, slowly */
    GTL_LOWER, /* the load moving down, slowly */
    GTL_JAM,   /* the load is caught at its height, and every hand pulls all it can */
    GTL_START, /* raising from rest: everything that moves is accelerated */
    GTL_STOP,  /* braking while lowering */
    GTL_LOST,  /* a part lets go, and the rig finds its new place */
    GTL_DROP   /* a load has fallen free, and its line catches it: at the peak */
} gtl_case_kind;

#define GTL_CASE_KIND_COUNT 8

/* "hold", "raise", "lower", "jam", "start", "stop", "lost" or "drop". */
GTL_API const char *gtl_case_name(gtl_case_kind kind);

/* A case that the rig is to be worked in. */
typedef struct gtl_asked {
    gtl_case_kind kind;
    gtl_kind lost_kind; /* GTL_LOST: what lets go: an anchor, a rope, sling or spar, or a connector */
    int lost;           /* GTL_LOST: its index among things, lines or connectors, else -1 */
    char *name;         /* in reports: "raise", "lost beam"; owned by the rig */
} gtl_asked;

/* What the user's own tag or certificate says a part of the gear may carry. */
typedef struct gtl_rating {
    double wll;           /* working load limit [N] */
    double push_wll;      /* a spar's working load limit in push [N] */
    double mbs;           /* minimum breaking strength [N] */
    double design_factor; /* its own, else the rig's [1] */
} gtl_rating;

/* What else is stated of a piece of gear: the row of a hardware table that it is, and what takes from its
 * rating. Rows belong to the rig's hardware; NULL: not stated. */
typedef struct gtl_gear {
    const gtl_hardware_row *row;         /* of `hardware`: its ratings count beside the typed ones */
    const gtl_hardware_row *material;    /* ropes and slings, as all rows down to `choke` */
    const gtl_hardware_row *knot;        /* at the worse of its ends */
    const gtl_hardware_row *termination; /* likewise */
    const gtl_hardware_row *bend;        /* what a bend takes, where its diameters are stated */
    const gtl_hardware_row *hitch;       /* slings */
    const gtl_hardware_row *choke;       /* slings, choked */
    const gtl_hardware_row *fitting;     /* anchors */
    const gtl_hardware_row *side;        /* connectors: the row for `side_load` */
    bool choked;                         /* slings; `choke` is NULL where no table of its material is known */
    double choke_angle;                  /* [rad] */
    double axis[3];                      /* anchors: unit vector of a straight pull, as `at` [1] */
    double side_load;                    /* connectors: angle of the pull from its line [rad] */
    double diameter;                     /* of the rope, its own or the row's [m] */
    double sheave_diameter;              /* blocks, likewise [m] */
    double pin_diameter;                 /* where lines are tied, likewise [m] */
    double wear;                         /* what wear leaves [1] */
    double wet;                          /* what being wet leaves [1] */
} gtl_gear;

/* A run of connectors, in order from the thing outwards: rig->vias[first] ... */
typedef struct gtl_via {
    int first;
    int count;
} gtl_via;

/* Anything that has a place: anchor, block, fairlead, joint, load or hand. */
typedef struct gtl_thing {
    gtl_kind kind;
    char *name;    /* as spelled in the file; owned by the rig */
    int line;      /* of its header in the file */
    double at[3];  /* as drawn, height last: at[dim - 1] [m]; a thing on another has the other's */
    int on;        /* the thing that it sits on, -1 for none */
    gtl_via via;   /* connectors between it and what it sits on */
    int node;      /* the node that it moves with */
    bool guided;   /* this thing keeps its node on a vertical track */
    double weight; /* [N], 0 where it has none */
    bool weight_stated;

    /* Blocks and fairleads. */
    int sheaves;          /* as stated, 0 where not stated */
    bool friction_stated; /* false: worked without friction, and the verdict says so */
    double efficiency;    /* of one sheave or fairlead at a 180 degree wrap; of a range its low end [1] */
    double friction;      /* coefficient, fairleads only; of a range its high end [1] */
    double freest;        /* the end of such a range with less friction [1]; NaN: no range is stated */
    double wrap;          /* angle of contact that overrides the geometry [rad] */
    int turns;            /* whole extra turns, fairleads only */
    double clear;         /* least distance of a block's centre from that of the next stop of a rope [m] */

    /* Hands. */
    double pull;  /* known pull [N], NaN: worked out */
    double limit; /* the most that it can pull [N] */
    int people;   /* 0 where not stated */
    int other;    /* the hand (thing index) that pulls instead where this one would have to push, -1: none */
    bool let_go;  /* the other one pulls: this one's pull is 0 N, whatever it could */

    double each; /* arbors: weight of one counterweight [N]; NaN: not stated */

    /* The load that is let drop, see gtl_rig.dropped. */
    double fall;    /* how far it falls free before its line begins to take it [m] */
    double run_out; /* how far the rope is let run while it stops it [m]; NaN: not stated */

    gtl_rating rating;
    gtl_gear gear;
} gtl_thing;

/* A place that things share rigidly. All that is on an anchor shares a fixed node. */
typedef struct gtl_node {
    int root; /* the thing that is on nothing else */
    bool fixed;
    bool guided;   /* moves in height only */
    bool limp;     /* a batten's pick whose line is slack: it weighs nothing, and the batten keeps it plumb */
    double weight; /* of all things on it and of the ends of spars [N] */
    double at[3];  /* as drawn [m] */
} gtl_node;

/* A stop of a line's path. */
typedef struct gtl_stop {
    int thing;
    gtl_via via; /* connectors between the thing and the line; tied stops only */
    bool tied;   /* tied here (a hand's end counts as tied); else the line runs over it */
    bool freest; /* of a range of friction, this one bend of the line is worked at the end of less */
} gtl_stop;

/* A rope, sling or spar. Its stops are rig->stops[first_stop] ..., its parts rig->parts[first_part] ... */
typedef struct gtl_line {
    gtl_kind kind;
    char *name;
    int line; /* of its header in the file */
    int first_stop;
    int stop_count;
    int first_part; /* stop_count - 1 parts, in path order */
    int first_piece;
    int piece_count;
    double length;        /* as stated [m], NaN: as drawn, or hauled */
    double have;          /* of a hauled rope: all that there is of it [m] */
    int have_line;        /* where that is stated in the file */
    double spare;         /* of a rope: what has to be left of it beyond what is rove [m] */
    double weight;        /* of a spar, half of it at each end [N] */
    double stretch;       /* of ropes and slings: elongation over length [1] ... */
    double stretch_force; /* ... at this tension [N]; both NaN: not stated */
    gtl_rating rating;
    gtl_gear gear;
} gtl_line;

/* The stretch of a line between two stops next to each other. Part i of a line runs from stop i to stop i
 * + 1. */
typedef struct gtl_part {
    int line;
    int piece;
    int from; /* stop index */
    int to;   /* stop index */
} gtl_part;

/* What rules a piece of line. */
typedef enum gtl_piece_rule {
    GTL_TIED,   /* both ends tied: keeps its length */
    GTL_PULLED, /* a hand with a known pull at one end */
    GTL_DRIVEN, /* the hand whose pull is worked out */
    GTL_STRUT   /* a spar: keeps its length, may be pushed */
} gtl_piece_rule;

/* A line between two tied stops, with the running stops in between. */
typedef struct gtl_piece {
    int line;
    int first_part;
    int part_count;
    int first_run;
    int run_count; /* part_count - 1 */
    gtl_piece_rule rule;
    double length;   /* what it keeps [m], NaN: as drawn */
    int hand;        /* thing index, -1 where both ends are tied */
    bool hand_first; /* the hand is at the path's first stop */
} gtl_piece;

/* A running stop: where a line passes over a block or a fairlead. Between parts `before` and `before` + 1. */
typedef struct gtl_run {
    int thing;
    int stop;
    int piece;
    int before; /* part index */
} gtl_run;

/* A point of a batten that lines tie to: a load of its own. Its weight is `stiff` as read; what it is in
 * truth lies between the two as far as anybody can say, and depends on millimetres. */
typedef struct gtl_pick {
    int thing;
    double position; /* from the batten's first end [m] */
    double stiff;    /* what comes down on it on level lines that do not give; 0: its line is slack [N] */
    double springs;  /* likewise on a stiff batten, on lines that give alike [N] */
    double pushes; /* as `stiff`, were every line a prop that can push: below 0 where its line is slack [N] */
    double settles; /* what it gains where its line is 10 mm shorter than level [N]; NaN: not known */
} gtl_pick;

/* What hangs on a batten, spread evenly. */
typedef struct gtl_hung {
    double weight; /* all of it [N] */
    double from;   /* from the batten's first end [m] */
    double to;     /* likewise; the same for what hangs in one point [m] */
} gtl_hung;

/* A pipe or bar hung level on lines. It is no body of its own: its weight, and what hangs along it, come down
 * on its picks, rig->picks[first_pick] ..., from one end to the other. */
typedef struct gtl_batten {
    char *name;       /* owned by the rig */
    int line;         /* of its header in the file */
    double length;    /* [m] */
    double weight;    /* its own [N] */
    double total;     /* with what hangs on it [N] */
    double centre;    /* of gravity of all that, from its first end [m] */
    double stiffness; /* against bending: modulus times second moment of area [N m2]; NaN: not known */
    const gtl_hardware_row *pipe; /* NULL: not stated */
    int first_pick;
    int pick_count;
    int first_hung; /* rig->hung[first_hung] ..., its own weight not among them */
    int hung_count;
} gtl_batten;

/* A shackle, ring, hook or strop between a thing and what it hangs on. */
typedef struct gtl_connector {
    char *name;
    int line;
    int thing; /* stands in this thing's `on ... via`, else -1 */
    int stop;  /* stands at this stop of a path, else -1 */
    gtl_rating rating;
    gtl_gear gear;
} gtl_connector;

/* A load or a spar that is a piece of green wood: its weight was worked out. */
typedef struct gtl_wood {
    gtl_kind kind; /* GTL_LOAD or GTL_SPAR */
    int index;     /* among things or lines */
    gtl_timber timber;
} gtl_wood;

typedef struct gtl_rig {
    char *file;                             /* the name for messages; owned */
    char *title, *place, *date, *by, *note; /* "" where not stated */
    int dim;                                /* 1, 2 or 3 coordinates */
    bool us_units;                          /* print in feet and pounds */
    gtl_asked *cases;                       /* what is worked: hold first, then in the order of their kinds */
    int case_count;
    double gravity; /* [m/s2] */
    bool gravity_stated;
    double efficiency;    /* of blocks that state none, of a range its low end; NaN: not stated [1] */
    double freest;        /* the high end of that range [1]; NaN: no range is stated */
    double design_factor; /* NaN: not stated [1] */
    double lift;          /* how far the load is to go up from where it is drawn [m]; NaN: not stated */
    double acceleration;  /* of the lifted load, in start and stop [m/s2]; NaN: not stated */
    double speed;         /* that `time` takes to reach or to brake, where so stated [m/s]; else NaN */
    double time;          /* [s]; else NaN */
    double loss_factor;   /* forces after a loss over those at rest [1]; 2 where not stated */
    bool loss_factor_stated;
    const gtl_hardware_row *use; /* NULL: not stated */
    int load;                    /* the load that is lifted (thing index), -1 where nobody hauls */
    int dropped;                 /* the load that falls in the case drop (thing index), -1 for none */
    int hand;                    /* the hand whose pull is worked out (thing index), -1 for none */
    int driven;                  /* its piece, -1 for none */

    gtl_thing *things;
    int thing_count;
    gtl_node *nodes;
    int node_count;
    gtl_line *lines;
    int line_count;
    gtl_stop *stops;
    int stop_count;
    gtl_part *parts;
    int part_count;
    gtl_piece *pieces;
    int piece_count;
    gtl_run *runs;
    int run_count;
    gtl_connector *connectors;
    int connector_count;
    int *vias;
    int via_count; /* connector indices */

    gtl_batten *battens;
    int batten_count;
    gtl_pick *picks;
    int pick_count;
    gtl_hung *hung;
    int hung_count;

    gtl_wood *woods; /* in the order of the file */
    int wood_count;

    gtl_hardware *hardware; /* all tables, where any is used; owned, else NULL */
} gtl_rig;

/* Work a bend whose friction is a range at its end of less friction, as if that were all that is stated; one
 * of no range stays as it is. */
GTL_API void gtl_free_bend(gtl_thing *thing);

/* What a line runs over, with the friction that this run is worked with. A copy: its texts are the rig's. */
GTL_API gtl_thing gtl_bend_of(const gtl_rig *rig, int run);

/* Whether a case of that kind is worked. */
GTL_API bool gtl_rig_asks(const gtl_rig *rig, gtl_case_kind kind);

/* Diagonal of the box around all that is drawn [m]; 1 m where everything is in one place. */
GTL_API double gtl_rig_size(const gtl_rig *rig);

/* How long a piece is as drawn [m]. */
GTL_API double gtl_drawn_length(const gtl_rig *rig, int piece);

/* Weights of free nodes and known pulls, all added up [N]; 1 N where there are none. */
GTL_API double gtl_rig_force(const gtl_rig *rig);

/* What a load or a spar was worked out of; NULL where its weight was stated. */
GTL_API const gtl_timber *gtl_timber_of(const gtl_rig *rig, gtl_kind kind, int index);

/* The batten that a thing is a pick of (index), -1 for none. */
GTL_API int gtl_batten_of(const gtl_rig *rig, int thing);

/* Whether a thing is the lifted load, or a pick of the batten that is. */
GTL_API bool gtl_is_lifted(const gtl_rig *rig, int thing);

/* The weight of what is lifted: of the lifted load, of a batten all its picks [N]. NaN where nobody hauls. */
GTL_API double gtl_lifted_weight(const gtl_rig *rig);

/* What the lifted load is called: of a batten the batten's name; "" where nobody hauls. The rig's. */
GTL_API const char *gtl_lifted_name(const gtl_rig *rig);

/* The rig once more, to be changed; NULL without memory. The caller frees it, and before the original: the
 * rows of hardware stay the original's, so that the copy's own `hardware` is NULL. */
GTL_API gtl_rig *gtl_rig_copy(const gtl_rig *rig);

/* Give back a rig and all that it owns; NULL is allowed. */
GTL_API void gtl_rig_free(gtl_rig *rig);

#endif
