/* rate.h - every case of a rig worked and rated: demands against ratings, verdict, warnings. */
#ifndef GANTLINE_RATE_H
#define GANTLINE_RATE_H

#include <gantline/rope_bill.h>

/* A part loaded to its rating by arithmetic alone is not over it: rounding must not decide [1]. */
#define GTL_UTILISATION_SLACK 1e-9

typedef enum gtl_verdict { GTL_WITHIN, GTL_OVER, GTL_UNRATED } gtl_verdict;

/* "within", "over" or "unrated". */
GTL_API const char *gtl_verdict_name(gtl_verdict verdict);

typedef enum gtl_mark { GTL_MARK_WITHIN, GTL_MARK_OVER, GTL_MARK_UNRATED, GTL_MARK_IDLE } gtl_mark;

/* "within", "over", "unrated" or "idle". */
GTL_API const char *gtl_mark_name(gtl_mark mark);

/* One step of the way from a paper rating to a capacity. */
typedef enum gtl_step_kind {
    GTL_STEP_LIMIT,    /* a hand's: what it can pull; factor [N] */
    GTL_STEP_WLL,      /* the paper rating; factor [N] */
    GTL_STEP_PUSH_WLL, /* likewise, of a spar in push */
    GTL_STEP_MBS,      /* likewise */
    GTL_STEP_KNOT,     /* row */
    GTL_STEP_TERMINATION,
    GTL_STEP_BEND,  /* value: diameter of the bend over the rope's [1] */
    GTL_STEP_HITCH, /* row */
    GTL_STEP_CHOKE, /* value: angle of choke [rad] */
    GTL_STEP_AXIS,  /* value: angle of the pull from the axis [rad] */
    GTL_STEP_SIDE,  /* value: side-load angle [rad] */
    GTL_STEP_WEAR,
    GTL_STEP_WET,
    GTL_STEP_FACTOR, /* the design factor; value: itself, factor: one over it */
    GTL_STEP_KIND_COUNT
} gtl_step_kind;

/* The first step's factor is the paper rating [N], the others are what is left [1]; their product is the
 * capacity. */
typedef struct gtl_step {
    gtl_step_kind kind;
    const gtl_hardware_row *row; /* that it rests on; NULL: the rig file */
    const char *at;              /* of a bend: the part at which it is, else "" */
    double value;                /* as the kind says, else NaN */
    double factor;
} gtl_step;

/* A part of the gear that has, or should have, a rating. */
typedef struct gtl_component {
    gtl_kind kind;
    int index;          /* into the rig's things, lines or connectors, as the kind says */
    const char *name;   /* the rig's */
    double demand;      /* the worst over all cases that can be [N]; NaN: in none */
    int governing;      /* index of the outcome of that demand, -1: none */
    bool push;          /* a spar governed by its push */
    double capacity;    /* what demand is held against [N]; NaN: nothing */
    double utilisation; /* demand over capacity [1]; NaN: none */
    gtl_mark mark;
    int first_step; /* of its chain: sheet->steps[first_step] ... */
    int step_count; /* 0 where nothing rates it */
} gtl_component;

/* What one state does to each thing of the rig. Forces are what the rig does to the thing named [N]. */
typedef struct gtl_forces {
    double (*passed)[3];    /* one a thing: what it passes to what it is on; of a root: all that it holds */
    double (*rope)[3];      /* one a thing: resultant of its running parts */
    double (*governing)[3]; /* one a thing: the set of pulls that makes its demand */
    double (*track)[3];     /* one a node: what a guide has to resist */
    double *demand;         /* one a component; of a spar in pull */
    double *push;           /* one a component: of a spar in push, else 0 */
    double *keeps;          /* one a component: what the angle of its pull leaves of its rating [1]; 0: not
                             * allowed so, NaN: nothing is known */
    double *angle;          /* one a component: that angle [rad]; NaN where none matters */
} gtl_forces;

/* Between what a case's figures lie where friction is stated as a range, or where the weight on a batten's
 * lines depends on how level they are: the least and the greatest over the rigs that it may be. */
typedef struct gtl_band {
    int rigs;          /* how many were worked, the printed one included; 1: nothing is a range */
    bool freest;       /* the printed one has all friction at its least: it pulls harder on the hand so */
    int shifts;        /* a body (thing index) that hangs elsewhere in another of them, so that between them
                        * more may be possible; -1: none, or nothing is a range */
    int undecided;     /* a stop of a range that is undecided in one of them; likewise */
    bool sometimes;    /* the case cannot be in all of them: in the others friction holds the load */
    double (*pull)[2]; /* one a thing, of hands [N]; NULL where nothing is a range, as both below */
    double (*tension)[2]; /* one a part of the sheet's rig [N] */
    double (*demand)[2];  /* one a component; of a spar in pull [N] */
} gtl_band;

/* The energy model may be so much too low where anchors do not give: 30 % (Weber, International Technical
 * Rescue Symposium 2002) [1]. */
#define GTL_DROP_LEFT_OUT 0.3

/* What one line does as it catches a load. */
typedef struct gtl_drop_line {
    double elastic; /* how much of it gives: its parts from the load up to the holding point [m] */
    double share;   /* how much of one newton more at the load goes into it, at most [1] */
    double tension; /* its greatest at the peak [N] */
    double stretch; /* how far that stretches it, over its length [1]; NaN: not stated */
} gtl_drop_line;

/* A load that has fallen free, at the peak of being caught. */
typedef struct gtl_drop {
    int load;           /* thing index */
    double weight;      /* of all that falls: the load and what sits rigidly with it [N] */
    double fall;        /* [m] */
    double stiffness;   /* force at the load for its going down, tensions equal at every stop [N/m] */
    double held;        /* likewise, where friction keeps from the line beyond what it can; stiffer [N/m] */
    double peak;        /* at the load, by `stiffness` [N] */
    double checked;     /* at the load, what ratings are held against: by `held`, and GTL_DROP_LEFT_OUT
                         * beyond [N] */
    double give;        /* how far the load goes down from where its line takes it to the peak [m] */
    int catcher;        /* the line that takes most of it, of those that state their stretch (line index) */
    double fall_factor; /* fall over the elastic length of that line [1] */
    double run_average; /* where the rope is let run: the force on average [N]; NaN: not stated */
    double run_peak;    /* likewise, the most, where it is stopped ever harder, as by a spring [N] */
    bool shifts;        /* a body hangs elsewhere at the peak than at rest */
    int along;          /* a body with a weight of its own in the lines that catch (thing index), -1: none */
    int let_out;        /* a hand behind turns, on a line that catches (thing index), -1: none */
    bool beyond;        /* a line is pulled harder at the peak than where its stretch is stated */
    gtl_drop_line *lines; /* one a line of the rig; owned */
} gtl_drop;

/* One case: its printed state, and the worst demands over the case's variants. In a loss all forces are
 * multiplied by the rig's loss factor, in `state` and `forces` too. In a drop they are those at the peak. */
typedef struct gtl_outcome {
    gtl_case_kind kind;
    const char *name;    /* "raise", "lost beam"; the rig's */
    const gtl_rig *rig;  /* what was worked: the sheet's, after a loss one of its own. Things, lines and
                          * connectors have the same indices in both, all else need not. */
    gtl_rig *own_rig;    /* owned; NULL where `rig` is the sheet's */
    int *part;           /* one a part of the sheet's rig: its index in `rig`, -1: gone; NULL: the same */
    bool *loose;         /* one a thing: it came loose and is left out; NULL: none can */
    double drop;         /* after a loss: the most slack in a line that then catches something: it drops so
                          * far before that, and the loss factor does not cover it [m]; else 0 */
    const char *catcher; /* that line; its rig's, NULL where nothing drops */
    bool falls;          /* after a loss: nothing holds a load any more */
    gtl_drop *caught;    /* in a drop: what it comes to; owned, NULL elsewhere */
    struct gtl_outcome *checked; /* in a drop: the case at the load that ratings are held against; owned */
    bool possible;
    const char *reason;         /* why it cannot be, else "" */
    gtl_state *state;           /* equal tensions at undecided stops; owned by the sheet */
    gtl_forces forces;          /* of that state */
    double *demand;             /* one a component: worst over the variants [N] */
    double *push;               /* likewise, of a spar in push [N] */
    double *keeps;              /* one a component: as in gtl_forces, of the variant that `demand` is of */
    double *angle;              /* likewise */
    double velocity_ratio;      /* [1]; NaN without a hand that is worked out */
    double estimated_advantage; /* the lifted load's weight over the effort [1]; NaN likewise */
    double efficiency;          /* of raising [1]; NaN elsewhere */
    int variants;               /* how many states were rated, this one included */
    bool every_combination;     /* false: too many undecided stops to try each combination */
    int places;                 /* how many equilibria near the drawing were found */
    gtl_band band;              /* what figures stated as ranges make of it */
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
    GTL_WARN_NOT_ALLOWED,        /* other: the gtl_step_kind, value: that step's; with: at what it bends */
    GTL_WARN_NOT_PUBLISHED,      /* likewise; the table says nothing there */
    GTL_WARN_TIGHT_BEND,      /* fibre rope; value: diameter of the bend over the rope's [1]; with: at what */
    GTL_WARN_VERY_TIGHT_BEND, /* likewise */
    GTL_WARN_CHOKE_ANGLE_NOT_STATED,
    GTL_WARN_MATERIAL_NOT_STATED, /* of a choked sling: a natural fibre rope keeps less */
    GTL_WARN_UNDER_USE_FACTOR,    /* value: its factor, other: the use's [1] */
    GTL_WARN_OVER_USE_SHARE,      /* value: utilisation of its wll, other: what the use leaves of that [1] */
    GTL_WARN_OVER_PEOPLE,
    GTL_WARN_HEAD_FITTING,      /* value: its capacity, other: twice the line [N]; with: the block */
    GTL_WARN_NO_FIGURES,        /* a jam or a loss that could not be worked out */
    GTL_WARN_DROPS,             /* value: the slack [m]; about: the line that catches */
    GTL_WARN_LOAD_FALLS,        /* about: the load */
    GTL_WARN_CAME_LOOSE,        /* about: the thing that is left out */
    GTL_WARN_ANCHOR_FORGOTTEN,  /* all its gear is rated, the anchor is not */
    GTL_WARN_HAND_BEYOND_GEAR,  /* value: the hand's limit, other: the capacity of `with`, its line [N] */
    GTL_WARN_FRICTION_MIXED,    /* some stops have friction, this one is stated to have none */
    GTL_WARN_LOW_EFFICIENCY,    /* of one sheave; value: it [1] */
    GTL_WARN_FAR_BELOW_RATING,  /* value: utilisation [1] */
    GTL_WARN_WRAP_NOT_AS_DRAWN, /* value: stated, other: of the geometry [rad] */
    GTL_WARN_DIRECTION_ONLY,    /* about: the line */
    GTL_WARN_GAINS_NO_FORCE,    /* value: velocity ratio [1] */
    GTL_WARN_BALANCED,          /* about: the load */
    GTL_WARN_HAULS_ITSELF,      /* about: the body that the hand is on */
    GTL_WARN_HARD_PULL,         /* value: what each is to pull [N] */
    GTL_WARN_MAY_NOT_LOWER,     /* about: the load; where friction is a range */
    GTL_WARN_BAND_NOT_PROVEN,   /* about: a body that hangs elsewhere, or a stop that is undecided, or "" */
    GTL_WARN_BATTEN_SLACK,   /* about: the pick; value: as `stiff`, other: as `springs` of its gtl_pick [N] */
    GTL_WARN_BATTEN_UNSURE,  /* likewise: they differ much */
    GTL_WARN_BATTEN_PARTS,   /* about: the batten; value: shift of two picks over what lies between [1] */
    GTL_WARN_BATTEN_TILTS,   /* likewise; value: how much slower its slowest pick rises [1] */
    GTL_WARN_BEYOND_STRETCH, /* value: tension at the peak, other: the force its stretch is stated at [N] */
    GTL_WARN_STRETCH_NOT_STATED, /* of a line that catches; value: its share of the load [1] */
    GTL_WARN_CATCH_JERKS,        /* about: a body that moves in a drop beside the load that falls */
    GTL_WARN_CATCHING_HAND,      /* about: a hand behind turns, in a drop */
    GTL_WARN_MEAN_DENSITY,     /* about: timber; value: its weight worked with, other: at the heavy end [N] */
    GTL_WARN_ONE_DENSITY,      /* about: timber of a density typed in, without a spread */
    GTL_WARN_MIDDLE_DIAMETER,  /* about: timber whose middle is thicker or thinner than both its ends */
    GTL_WARN_LIFT_CUT_SHORT,   /* about: the lifted load; value: how far it goes, other: the lift [m] */
    GTL_WARN_GROWS_ON_THE_WAY, /* about: a part; value: what it bears where the load is drawn, other: the most
                                * on the way up, at rest [N] */
    GTL_WARN_COUNT
} gtl_warning_code;

/* The code's spelling in reports: "friction-not-stated", ... */
GTL_API const char *gtl_warning_name(gtl_warning_code code);

/* One warning. Numbers stay SI; the report puts them in words. */
typedef struct gtl_warning {
    gtl_warning_code code;
    const char *about; /* name of the part, "" for the rig as a whole; the rig's */
    int outcome;       /* index of the outcome that shows it, -1: not of one case */
    double value;
    double other;
    const char *with; /* name of the other part that it speaks of, NULL: none; the rig's */
} gtl_warning;

/* Why the verdict is not `within`, one bit a reason. */
enum {
    GTL_WHY_OVER = 1,             /* a component is over its rating */
    GTL_WHY_UNRATED = 2,          /* a component has nothing to be checked by */
    GTL_WHY_FRICTION = 4,         /* a running stop's friction is not stated */
    GTL_WHY_NOT_MOVED = 8,        /* friction is stated, but neither raise nor lower is worked */
    GTL_WHY_HOLD_IMPOSSIBLE = 16, /* the load runs away */
    GTL_WHY_RAISE_IMPOSSIBLE = 32,
    GTL_WHY_LOWER_IMPOSSIBLE = 64, /* and not because friction holds the load */
    GTL_WHY_CASE_IMPOSSIBLE = 128, /* jam, start, stop or a loss could not be worked out */
    GTL_WHY_LOAD_FALLS = 256,      /* after a loss */
    GTL_WHY_HEAD_FITTING = 512,    /* one holds less than twice the line: over */
    GTL_WHY_DROP = 2048,           /* after a loss something drops before a line catches it */
    GTL_WHY_NOT_STATED = 1024,     /* what takes from a rating is not stated: choke angle, material */
    GTL_WHY_CATCH = 4096,          /* more moves in a drop than the load that falls */
    GTL_WHY_BATTEN = 16384,        /* a batten does not stay level, so that its lines share otherwise */
    GTL_WHY_CATCHING_HAND = 8192,  /* what a hand has to hold in a drop is not known */
    GTL_WHY_STRETCH = 32768,       /* a line is pulled harder in a drop than where its stretch is stated */
    GTL_WHY_ON_THE_WAY = 65536     /* a component is over its rating further up the lift */
};

/* Gear in a row from a line or a block to its anchor: sheet->links[first_link] ... */
typedef struct gtl_chain {
    int first_link;
    int link_count;
    int weakest; /* the component of greatest utilisation, -1 where one has none: the weakest is not known */
} gtl_chain;

/* The head fitting of a block with one sheave, held against twice the line (Lloyd's Code for Lifting
 * Appliances in a Marine Environment, chapter 8, 5.1, on the block's line). */
typedef struct gtl_head_fitting {
    int block;       /* component */
    int fitting;     /* component: the connector next to the block */
    double needed;   /* twice the greatest tension of the line in any case [N] */
    double capacity; /* of the fitting [N]; NaN: none */
    gtl_mark mark;
} gtl_head_fitting;

/* What is left once so many counterweights more are in an arbor. */
typedef struct gtl_counterweights {
    double count;   /* whole; negative: so many are taken out [1] */
    double over;    /* as in gtl_balance [N] */
    double on_line; /* what the hand on the lighter side holds then [N]; NaN: none is there, it runs away */
} gtl_counterweights;

/* How far an arbor is from balancing what is lifted: at rest, without friction, where the rig holds. Without
 * hold, or a hand that is worked out, nothing is known. */
typedef struct gtl_balance {
    int arbor;     /* thing */
    double travel; /* how far it goes down for one unit of lift [1]; NaN: not known */
    double over; /* that much more at the lifted load than the rig balances; negative: the arbor's side is the
                  * heavier [N]; NaN likewise */
    double needed; /* what has to be in it, itself included, for balance [N]; NaN: not known, or it goes not
                    * down as the load rises; 0 or less: something else balances more than the load */
    gtl_counterweights choice[2]; /* of its counterweights: that leaves the load heavier, that the arbor */
    int choice_count;             /* 0: no weight of one is stated; 1: one choice leaves nothing over */
    int nearest;                  /* the choice that leaves less */
} gtl_balance;

/* Up to so many whole turns on a post are worked. */
#define GTL_POST_TURNS 6

/* What a post does with one number of whole turns on it. NaN: that could not be worked. */
typedef struct gtl_post_turn {
    double
        hold; /* what the hand has to hold as the load comes down, all friction at its least; 0: nothing [N]
               */
    double raise;  /* what it has to pull to raise, all friction at its most [N] */
    double lead;   /* then, in the rope on the load's side of the post [N] */
    double force;  /* then, on the post [N] */
    double anchor; /* then, on the anchor that it sits on; NaN too where it sits on none [N] */
} gtl_post_turn;

/* A bend of the hauled rope that turns can be taken on: a fairlead of stated friction, next to the hand or
 * with turns on it already. */
typedef struct gtl_post {
    int thing;
    int anchor; /* thing index, -1: none */
    int enough; /* least number of turns with which the hand's limit holds the load; -1: none, or no limit */
    gtl_post_turn turns[GTL_POST_TURNS + 1];
} gtl_post;

/* All findings on one rig. */
typedef struct gtl_sheet {
    const gtl_rig *rig;
    gtl_verdict verdict;
    unsigned why;          /* GTL_WHY_ bits */
    gtl_outcome *outcomes; /* the cases worked, as rig->cases */
    int outcome_count;
    gtl_rig **alternatives; /* what the rig may be where figures are ranges; owned. The rig itself has every
                             * range at the end of more friction */
    int alternative_count;
    bool frees_all;            /* the first of them is the rig with all friction at its least */
    bool every_corner;         /* each combination of the ranges' ends is one of them, or the rig itself */
    gtl_component *components; /* in the order of the file's kinds: anchors ... connectors */
    int component_count;
    gtl_step *steps; /* of all components, see gtl_component */
    int step_count;
    gtl_chain *chains;
    int chain_count;
    int *links; /* component indices, see gtl_chain */
    int link_count;
    gtl_head_fitting *head_fittings;
    int head_fitting_count;
    gtl_balance *balances; /* one an arbor */
    int balance_count;
    gtl_post *posts; /* in the order of the hauled rope */
    int post_count;
    gtl_rope_bill *rope_bill; /* owned; NULL where none is asked for */
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

/* The first outcome of a kind of case, NULL where it was not worked. */
GTL_API const gtl_outcome *gtl_sheet_outcome(const gtl_sheet *sheet, gtl_case_kind kind);

/* The outcome that ratings are held against: of a drop that at more than its peak, else itself. */
GTL_API const gtl_outcome *gtl_rated(const gtl_outcome *outcome);

/* Whether no force of a case that can be is greater, with friction anywhere in its range, than the most of
 * its band: each combination of ends was worked, the case can be in all of them, it hangs in one place alone,
 * no body moves from one to another, no stop of a range is undecided. */
GTL_API bool gtl_band_is_proven(const gtl_sheet *sheet, const gtl_outcome *outcome);

/* What a hand pulls in a case that can be [N]; NaN where it hauls on nothing, or where that is not known: in
 * a drop, behind turns of friction. */
GTL_API double gtl_outcome_pull(const gtl_outcome *outcome, int hand);

/* Whether a hand's rope is held by turns around something before it comes to the hand. */
GTL_API bool gtl_is_behind_turns(const gtl_rig *rig, int hand);

/* The tension of a part of the sheet's rig in a case that can be; 0 where the part is gone [N]. */
GTL_API double gtl_outcome_tension(const gtl_outcome *outcome, int part);

/* Whether that part carries nothing for being slack or gone. */
GTL_API bool gtl_outcome_slack(const gtl_outcome *outcome, int part);

/* The component for a kind and index, NULL for none. */
GTL_API const gtl_component *gtl_sheet_component(const gtl_sheet *sheet, gtl_kind kind, int index);

#endif
