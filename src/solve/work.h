/* work.h - the solver's own room, and what its steps call each other by.
 *
 * Everything in here is scaled: places and lengths by the rig's size, forces by what moves it (weights of
 * free nodes and known pulls), so that good matrices look alike whatever the rig.
 *
 * A piece is *walked* from its tied end to its hand (or along its path): the walk_ arrays hold its parts,
 * stops and running stops in that order. Unknowns: the coordinates of free nodes, then one tension a piece,
 * that of its most loaded part. Equations: the force balance of each coordinate, then one row a piece. */
#ifndef SOLVE_WORK_H
#define SOLVE_WORK_H

#include "solve/matrix.h"
#include <gantline/solve.h>

/* Residual at which Newton's method has arrived: four digits above what doubles give on a good matrix [1]. */
#define GTL_ARRIVED 1e-10
/* A rope that pushes by less than this carries nothing [1]. */
#define GTL_NO_PUSH 1e-9
/* Matrices whose pivot ratio is lower are singular: on 964 good states the least was 2.5e-4, on singular ones
 * the greatest 4e-12. */
#define GTL_SINGULAR 1e-9
/* Below this a matrix is believed, with a caution. */
#define GTL_POOR 1e-5
/* Rope that runs slower than this share of the fastest does not run. */
#define GTL_STILL 1e-6
/* A body this far from its drawing, over the rig's size, is somewhere else. */
#define GTL_FAR 0.25

/* A body this far from its drawing fell out of the rig. */
#define GTL_FALLEN_OUT 10.0

/* What a piece's row says. */
typedef enum gtl_row {
    GTL_ROW_LENGTH, /* its length is kept */
    GTL_ROW_PULL,   /* the pull at its hand is known */
    GTL_ROW_HEIGHT, /* the lifted load is at its height */
    GTL_ROW_SLACK,  /* it carries nothing */
    GTL_ROW_ELASTIC /* hanging only: it stretches by its tension */
} gtl_row;

/* Where a piece's terms go. Locals are the free coordinates of its stops, each once. */
typedef struct gtl_plan {
    int first;       /* its first part in walk_part; its first stop in walk_node is first + its own index */
    int count;       /* parts */
    int first_local; /* into local_dof */
    int locals;
    int *force_place;   /* locals x locals places in the matrix: force row, coordinate column */
    int *tension_place; /* locals places: force row, the piece's tension */
    int *row_place;     /* locals places: the piece's row, coordinate column */
    int own_place;      /* the piece's row, its own tension */
    int height_place;   /* the driven piece's row, the lifted load's height; else -1 */
} gtl_plan;

/* A state put by. */
typedef struct gtl_snapshot {
    double *x;
    double *t;
    gtl_row *row;
} gtl_snapshot;

typedef struct gtl_work {
    const gtl_rig *rig;
    double size;    /* diagonal of the drawn rig's box [m] */
    double force;   /* weights of free nodes and known pulls [N] */
    int dofs;       /* coordinates of free nodes */
    int unknowns;   /* dofs + pieces */
    int height_dof; /* the lifted load's height, -1 where nobody hauls */
    bool spars;

    int *dof;        /* 3 a node, -1 where it does not move */
    gtl_plan *plans; /* one a piece */
    int *places;     /* the plans' place tables */
    int *walk_part;
    int *walk_node;
    int *walk_run;   /* run between this part and the one before, -1 at a piece's first */
    int *walk_local; /* 3 a stop of walk_node, -1 where it does not move */
    int *local_dof;
    gtl_matrix matrix;

    double *weight; /* one a node */
    double *drawn;  /* 3 a node */
    double *kept;   /* one a piece: the length it keeps; of a driven one the hauled length while hanging */
    double *pull;   /* one a piece, 0 where none is known */
    double *added;  /* 3 a node: force beyond its weight, in force by `share`: inertia */
    bool jammed;    /* the lifted load is caught at its height: no balance there, and no hand is worked out */
    double caught;  /* what catches it, upwards; filled by gtl_balance where it is jammed */
    double *contact; /* one a run: sheave constant or fairlead coefficient; wrap and turns are the rig's */
    double height;   /* of the lifted load, as drawn */
    const double *begin; /* 3 a node [m]: where the search begins, NULL: the drawing */

    /* The state that the steps work on. */
    double *x;          /* 3 a node */
    double *t;          /* one a piece */
    gtl_row *row;       /* one a piece */
    signed char *sense; /* one a run, along the walk */
    double share;       /* of friction and inertia that is in force, 0 to 1 */
    double stretch;     /* elastic rows: length a unit of tension adds, over the piece's own */
    double smooth; /* elastic rows: length at which a part's direction blurs, over the piece's mean part */

    /* Filled by gtl_balance from the state. */
    double *residual;  /* one an unknown */
    double *unit;      /* 3 a part, in walking order: its direction */
    double *span;      /* one a part, in walking order: its length */
    double *log_ratio; /* one a part, in walking order: log of its tension over the piece's first part's */
    double *log_slope; /* one a part, in walking order: of the log at the run before it, by s = |a + b|/2 */
    double *length;    /* one a piece */
    int *greatest;     /* one a piece: the part of greatest tension, counted from its first */

    /* Filled by gtl_motion. */
    double *rate;      /* 3 a node: for one unit of lift */
    double *part_rate; /* one a part, in walking order: how its length grows for one unit of lift */

    double *step;             /* one an unknown: Newton's step, or any other right-hand side */
    double *curvature;        /* dofs x dofs, with spars alone: see stable.c */
    double *gradient;         /* one a local of the largest piece */
    gtl_snapshot before_step; /* the state that Newton's and hanging's steps come back to */
    gtl_snapshot newton;      /* Newton's from the drawing */
    gtl_snapshot hung;        /* the hanging one */
    gtl_snapshot shape;       /* the one taken, without friction */
    gtl_snapshot partly;      /* the last one with part of the friction in force */
    bool *tried;              /* 3 a run: senses that contradicted themselves */
    double *flow;             /* one a run */
    int solves;
    bool fresh;         /* the matrix factored last is that of the state as it is */
    double pivot_ratio; /* of the matrix factored last by gtl_sound or gtl_motion */
    int neutral_node;   /* of the state judged last: a body that stays anywhere, -1 for none */
    double *turn;       /* one a coordinate: the motion of what stays anywhere, where neutral_node is one */
    double
        *turn_by; /* one a coordinate: times a displacement, how far it went along `turn`; blind to shifts */
    unsigned long long random; /* state of the generator that shakes and starts inverse iterations */
} gtl_work;

/* layout.c: room and matrix pattern for one rig; NULL without memory. */
gtl_work *gtl_work_new(const gtl_rig *rig);
void gtl_work_free(gtl_work *work);

/* balance.c: residual, and matrix, of the state. */
void gtl_balance(gtl_work *work);
/* The directions and lengths of all parts, and nothing else. */
void gtl_measure(gtl_work *work);
/* The greatest residual; NaN if any is. */
double gtl_worst(const gtl_work *work);
/* The tension of the part at place `index` of a piece's walk. */
double gtl_part_tension(const gtl_work *work, int piece, int index);

/* neutral.c */
/* Keep the null vector just found (in rate and step) as the motion of what stays anywhere. */
void gtl_keep_turn(gtl_work *work);
/* How far a displacement (one a coordinate) goes along the motion of what stays anywhere; 0 where nothing
 * does. */
double gtl_turned(const gtl_work *work, const double *displacement);
/* How far the state has gone along it from `places` (3 a node). */
double gtl_turned_since(gtl_work *work, const double *places);
/* Put it back to where it was at `places`, and let the rest settle. */
bool gtl_turn_back(gtl_work *work, const double *places);

/* newton.c */
/* To the nearest state with the rows as they are. The state is left where it got to. */
bool gtl_newton(gtl_work *work);
/* The same, letting go ropes that push and taking back those that are too long. */
bool gtl_settle(gtl_work *work);
/* Whether a tied piece is plainly longer than the way between its stops. */
bool gtl_drawn_slack(const gtl_work *work, int piece);
/* Whether a piece ends at a batten's pick that weighs nothing: it carries nothing, and only goes along. */
bool gtl_goes_along(const gtl_work *work, int piece);
/* Whether any rope pushes; `driven_too` counts the hauled one. */
bool gtl_pushes(const gtl_work *work, bool driven_too);
/* Factor the matrix of the state as it is, which then is fresh; its pivot ratio. */
double gtl_sound(gtl_work *work);
void gtl_keep(const gtl_work *work, gtl_snapshot *snapshot);
void gtl_restore(gtl_work *work, const gtl_snapshot *snapshot);

/* Uniform in -1 to 1, the same in every run of the program. */
double gtl_random(gtl_work *work);

/* hang.c */
/* From soft ropes, which forget the drawing, or from stiff ones, which stay closer to it but may get caught.
 */
typedef enum gtl_hang_from { GTL_HANG_SOFT, GTL_HANG_STIFF } gtl_hang_from;
/* Let the rig hang from where it is, whatever the drawing; ends near the state, with slack lines found. */
bool gtl_hang(gtl_work *work, gtl_hang_from from);

/* Whether something falls out of the rig once the hauling rope is let go. The state is left as it was. */
bool gtl_falls(gtl_work *work);

/* stable.c: whether an arrived state with spars stays when it is touched. */
bool gtl_stable(gtl_work *work);

/* shape.c */
/* Where the rig hangs without friction. On failure the state's reason and blame are set. */
bool gtl_shape(gtl_work *work, gtl_state *state);
/* From a hanging state's elastic rows to the exact ones; tied lines that are slack stay so. */
void gtl_exact_rows(gtl_work *work);
/* How far a node is from its drawing. */
double gtl_away(const gtl_work *work, int node);
/* Furthest that a node is from its drawing, and which. */
double gtl_farthest(const gtl_work *work, int *node);

/* judge.c */
typedef enum gtl_judgement { GTL_GOOD, GTL_NEUTRAL, GTL_SICK } gtl_judgement;
/* Whether the matrix of an arrived state can be believed; names what is wrong with it in the state. */
gtl_judgement gtl_judge(gtl_work *work, gtl_state *state);
/* Name why hanging found no place. */
void gtl_name_failure(gtl_work *work, gtl_state *state);
/* Refuse: reason and the line to blame. */
void gtl_refuse(gtl_state *state, int blame, const char *format, ...) GTL_PRINTF(3, 4);

/* motion.c */
/* Rates of parts for rates of coordinates (both in the work's arrays). */
void gtl_part_rates(gtl_work *work);
/* The motion of the state as the lifted load rises. Factors the matrix. */
void gtl_motion(gtl_work *work);
/* Rope that passes each run along the walk for one unit of lift, into `flow` (one a run); the greatest of
 * all, hands included. */
double gtl_flows(const gtl_work *work, double *flow);
/* How a piece grows for one unit of lift. */
double gtl_payout(const gtl_work *work, int piece);

/* friction.c */
/* Put friction on the shape, with the senses of its motion, or with those that the case forces. */
void gtl_friction(gtl_work *work, const gtl_case *which, gtl_state *state);

/* jam.c */
/* The arrived state with the load caught at its height and every hand pulling what the case gives it. */
void gtl_jam(gtl_work *work, const gtl_case *which, gtl_state *state);

/* A case that cannot be, and why. */
void gtl_forbid(gtl_state *state, const char *reason);

/* contact.c */
/* Log of the greater over the lesser tension at a run where the unit vectors `a` and `b` lead away from it;
 * *slope is its derivative by s = |a + b|/2. */
double gtl_contact_log(const gtl_work *work, int run, const double a[3], const double b[3], double *slope);
double gtl_contact_constant(const gtl_thing *thing);

#endif
