/* solve.h - one case of one rig to a state: where bodies hang, every tension. */
#ifndef GANTLINE_SOLVE_H
#define GANTLINE_SOLVE_H

#include <gantline/rig.h>

/* The longest reason kept in a state, with its final zero. */
#define GTL_REASON_SIZE 400

/* What to work out. A case never holds a force: it says which way the load moves, and, for variants, which
 * way rope is to run over stops that the motion leaves undecided, and where to begin the search. */
typedef struct gtl_case {
    gtl_case_kind kind;
    /* NULL, or one a run: -1, 0 or +1 fixes the sense of an undecided stop (+1: tension rises along the
     * path). Only read at runs whose `forced` is set. */
    const signed char *sense;
    const bool *forced; /* NULL, or one a run */
    /* NULL, or three coordinates a node [m]: where to begin instead of the drawing. Lengths stay as drawn. */
    const double *begin;
    bool frictionless; /* jam only: equal tensions at every stop */
} gtl_case;

/* Which way the lifted load moves in a case, so how friction acts: 1 up (jam too), -1 down, 0 neither. */
GTL_API int gtl_case_direction(gtl_case_kind kind);

/* What a hand pulls in a case where that is given: its known pull; in jam all it can, if it is not let go
 * [N]. NaN: worked out. */
GTL_API double gtl_given_pull(const gtl_thing *hand, gtl_case_kind kind);

/* What one case of one rig comes to. Made by gtl_state_new, filled by gtl_solve, reused without allocating.
 * Unless `status` is GTL_OK and `possible` is true every number is NaN. */
typedef struct gtl_state {
    gtl_status status;
    bool possible;                /* false: the case cannot be, and `reason` says why */
    char reason[GTL_REASON_SIZE]; /* "" where there is nothing to tell */
    bool held_by_friction;        /* lower only: it cannot be since the load would not come down by itself */
    bool would_push; /* the hand would have to push: it cannot be, or has no answer, with this hand */
    int blame;       /* line in the file that a GTL_NO_ANSWER points to, 0: the rig */

    double *at;            /* 3 a node, height at [dim - 1] [m] */
    double *tension;       /* one a part [N]; a spar's is negative where it is pushed */
    double *piece_length;  /* one a piece, as it is in this state [m] */
    double *kept_length;   /* one a piece, what it has to keep; NaN where it keeps none [m] */
    bool *slack;           /* one a piece: let go, carries nothing */
    signed char *sense;    /* one a run: +1 tension rises along the path, -1 falls, 0 equal */
    bool *undecided;       /* one a run */
    double *flow;          /* one a run: rope passing along the path for one unit of lift [1] */
    double *rise;          /* 3 a node: motion for one unit of lift [1] */
    double *payout;        /* one a piece: how its length grows for one unit of lift [1] */
    double *added;         /* 3 a node: force beyond its weight: inertia; in jam what catches the load [N] */
    double effort;         /* the hand's pull, NaN without a hand that is worked out [N] */
    double velocity_ratio; /* rope coming to the hand for one unit of lift, NaN likewise [1] */
    double residual;       /* the audit's worst, over the rig's weight and size [1] */

    double pivot_ratio; /* least over greatest pivot of the matrix believed [1] */
    bool neutral;       /* a body can turn or stay anywhere: it stays as drawn */
    int neutral_node;   /* which, -1 for none */
    bool poorly_conditioned;
    bool runs_away;    /* hold only: a hand would have to push */
    int linear_solves; /* how many it took */

    double *scratch;       /* 3 a node: the audit's own room */
    struct gtl_work *work; /* the solver's own room */
} gtl_state;

/* Room for the states of one rig, which must outlive it. NULL without memory. The caller frees it. */
GTL_API gtl_state *gtl_state_new(const gtl_rig *rig);
GTL_API void gtl_state_free(gtl_state *state);

/* Work out one case. Returns state->status: GTL_OK (look at `possible`), GTL_NO_ANSWER or GTL_NO_MEMORY.
 * `state` must come from gtl_state_new for the same rig. */
GTL_API gtl_status gtl_solve(const gtl_rig *rig, const gtl_case *which, gtl_state *state);

/* What a hand pulls in a state: the tension of its rope there [N]; NaN where it hauls on nothing. */
GTL_API double gtl_hand_pull(const gtl_rig *rig, const gtl_state *state, int hand);

/* What friction gives where a line runs over a stop, in the shape of a solved state: the natural logarithm
 * of the greater tension over the smaller one [1]; 0 where none is stated. */
GTL_API double gtl_friction_log(const gtl_rig *rig, const gtl_state *state, int run);

/* How far the greatest tension moves, as a share of it, if a tied line is made 1 % longer: the worst line.
 * Uses the matrix of the state just solved. *line receives the line's index, -1 for none. [1] */
GTL_API double gtl_length_sensitivity(const gtl_rig *rig, gtl_state *state, int *line);

/* The worst disagreement of a finished state with the laws it must obey, found from the state's public
 * numbers alone: forces on each body, force and moment of the whole, friction at each stop, lengths kept,
 * work in at least work out. Over the rig's weight and size [1]; NaN if any number is. `which` as solved. */
GTL_API double gtl_audit(const gtl_rig *rig, const gtl_case *which, const gtl_state *state);

/* What the audit may find before a state is refused [1]. */
#define GTL_AUDIT_LIMIT 1e-8

#endif
