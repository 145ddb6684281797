/* rate.h - every case of a rig worked and rated: demands against ratings, verdict, warnings. */
#ifndef GANTLINE_RATE_H
#define GANTLINE_RATE_H

#include <gantline/solve.h>

/* A part loaded to its rating by arithmetic alone is not over it: rounding must not decide [1]. */
#define GTL_UTILISATION_SLACK 1e-9

typedef enum gtl_verdict { GTL_WITHIN, GTL_OVER, GTL_UNRATED } gtl_verdict;

/* "within", "over" or "unrated". */
GTL_API const char *gtl_verdict_name(gtl_verdict verdict);

typedef enum gtl_mark { GTL_MARK_WITHIN, GTL_MARK_OVER, GTL_MARK_UNRATED, GTL_MARK_IDLE } gtl_mark;

/* "within", "over", "unrated" or "idle". */
GTL_API const char *gtl_mark_name(gtl_mark mark);

/* A part of the gear that has, or should have, a rating. */
typedef struct gtl_component {
    gtl_kind kind;
    int index;               /* into the rig's things, lines or connectors, as the kind says */
    const char *name;        /* the rig's */
    double demand;           /* the worst over all cases that can be [N]; NaN: in none */
    gtl_case_kind governing; /* the case of that demand */
    bool push;               /* a spar governed by its push */
    double capacity;         /* what demand is held against [N]; NaN: nothing */
    double utilisation;      /* demand over capacity [1]; NaN: none */
    gtl_mark mark;
} gtl_component;

/* What one state does to each thing of the rig. Forces are what the rig does to the thing named [N]. */
typedef struct gtl_forces {
    double (*passed)[3];    /* one a thing: what it passes to what it is on; of a root: all that it holds */
    double (*rope)[3];      /* one a thing: resultant of its running parts */
    double (*governing)[3]; /* one a thing: the set of pulls that makes its demand */
    double (*track)[3];     /* one a node: what a guide has to resist */
    double *demand;         /* one a component; of a spar in pull */
    double *push;           /* one a component: of a spar in push, else 0 */
} gtl_forces;

/* One case: its printed state, and the worst demands over the case's variants. */
typedef struct gtl_outcome {
    gtl_case_kind kind;
    bool possible;
    const char *reason;         /* why it cannot be, else "" */
    gtl_state *state;           /* equal tensions at undecided stops; owned by the sheet */
    gtl_forces forces;          /* of that state */
    double *demand;             /* one a component: worst over the variants [N] */
    double *push;               /* likewise, of a spar in push [N] */
    double velocity_ratio;      /* [1]; NaN without a hand that is worked out */
    double estimated_advantage; /* the lifted load's weight over the effort [1]; NaN likewise */
    double efficiency;          /* of raising [1]; NaN elsewhere */
    int variants;               /* how many states were rated, this one included */
    bool every_combination;     /* false: too many undecided stops to try each combination */
    int places;                 /* how many equilibria near the drawing were found */
} gtl_outcome;

typedef enum gtl_warning_code {
    GTL_WARN_FRICTION_NOT_STATED,
    GTL_WARN_FRICTION_NONE,
    GTL_WARN_UNRATED,
    GTL_WARN_MBS_WITHOUT_FACTOR,
    GTL_WARN_LOW_DESIGN_FACTOR,     /* value: the factor */
    GTL_WARN_WLL_ABOVE_MBS,         /* value: wll, other: mbs over factor [N] */
    GTL_WARN_REDIRECT_FORCE,        /* value: force, other: the line's tension [N] */
    GTL_WARN_WIDE_BRIDLE,           /* value: included angle [rad] */
    GTL_WARN_FLAT_LEG,              /* value: angle from horizontal [rad] */
    GTL_WARN_NEARLY_HORIZONTAL_LEG, /* value: likewise */
    GTL_WARN_FAR_FROM_DRAWING,      /* value: distance [m] */
    GTL_WARN_NOT_PARALLEL,          /* value: angle between the parts [rad] */
    GTL_WARN_FRICTION_CARRIES,      /* lower only; value: the pull, other: the pull without friction [N] */
    GTL_WARN_WILL_NOT_LOWER,
    GTL_WARN_CANNOT_MOVE, /* raise, or a lower that friction does not hold */
    GTL_WARN_RUNS_AWAY,
    GTL_WARN_UNDECIDED,
    GTL_WARN_NOT_EVERY_COMBINATION, /* value: undecided stops */
    GTL_WARN_IDLE,
    GTL_WARN_WEIGHTLESS_BLOCK,
    GTL_WARN_LENGTH_SENSITIVE, /* value: share of the greatest tension [1] */
    GTL_WARN_SEVERAL_PLACES,   /* value: how many */
    GTL_WARN_SLACK_LINE,
    GTL_WARN_NEARLY_TAUT, /* value: slack as a share of its length [1] */
    GTL_WARN_NEUTRAL,
    GTL_WARN_POORLY_CONDITIONED, /* value: pivot ratio [1] */
    GTL_WARN_COUNT
} gtl_warning_code;

/* The code's spelling in reports: "friction-not-stated", ... */
GTL_API const char *gtl_warning_name(gtl_warning_code code);

/* One warning. Numbers stay SI; the report puts them in words. */
typedef struct gtl_warning {
    gtl_warning_code code;
    const char *about; /* name of the part, "" for the rig as a whole; the rig's */
    int case_kind;     /* a gtl_case_kind, -1: not of one case */
    double value;
    double other;
} gtl_warning;

/* Why the verdict is not `within`, one bit a reason. */
enum {
    GTL_WHY_OVER = 1,             /* a component is over its rating */
    GTL_WHY_UNRATED = 2,          /* a component has nothing to be checked by */
    GTL_WHY_FRICTION = 4,         /* a running stop's friction is not stated */
    GTL_WHY_NOT_MOVED = 8,        /* friction is stated, but neither raise nor lower is worked */
    GTL_WHY_HOLD_IMPOSSIBLE = 16, /* the load runs away */
    GTL_WHY_RAISE_IMPOSSIBLE = 32,
    GTL_WHY_LOWER_IMPOSSIBLE = 64 /* and not because friction holds the load */
};

/* All findings on one rig. */
typedef struct gtl_sheet {
    const gtl_rig *rig;
    gtl_verdict verdict;
    unsigned why;                         /* GTL_WHY_ bits */
    gtl_outcome outcomes[GTL_CASE_COUNT]; /* the cases worked, in order hold, raise, lower */
    int outcome_count;
    gtl_component *components; /* in the order of the file's kinds: anchors ... connectors */
    int component_count;
    gtl_warning *warnings;
    int warning_count;
    char reason[GTL_REASON_SIZE]; /* where there is no answer: why */
    int blame;                    /* where there is no answer: the line in the file */
} gtl_sheet;

/* Work and rate all cases of a rig, which must outlive the sheet. Returns GTL_OK, GTL_NO_ANSWER (reason and
 * blame are set, nothing else may be read) or GTL_NO_MEMORY. The caller gives it back with gtl_sheet_end
 * in every case. */
GTL_API gtl_status gtl_rate(const gtl_rig *rig, gtl_sheet *sheet);
GTL_API void gtl_sheet_end(gtl_sheet *sheet);

/* Capacity of a rating [N]: the smaller of wll and mbs over design factor; NaN where it is no rating. */
GTL_API double gtl_capacity(const gtl_rating *rating);

/* The outcome of a case, NULL where it was not worked. */
GTL_API const gtl_outcome *gtl_sheet_outcome(const gtl_sheet *sheet, gtl_case_kind kind);

/* The component for a kind and index, NULL for none. */
GTL_API const gtl_component *gtl_sheet_component(const gtl_sheet *sheet, gtl_kind kind, int index);

#endif
