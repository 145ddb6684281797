/* limit.h - the heaviest load that keeps every part within its rating in all cases of a rig, and the
 * lightest.
 *
 * A load is permitted if no part and no head fitting is over its rating, no case speaks against the rig by
 * being impossible, and every part that has a known rating at the load as drawn still has one. Each load is
 * tried on the rig itself, with the whole of gtl_rate: nothing is scaled. */
#ifndef GANTLINE_LIMIT_H
#define GANTLINE_LIMIT_H

#include <gantline/rate.h>

/* How far from the load as drawn others are tried, as a share of it and as a multiple of it [1]. */
#define GTL_LIMIT_LEAST 1e-6
#define GTL_LIMIT_MOST  1e6
/* Nobody asks for a lightest load below this share of one that is permitted [1]. */
#define GTL_LIMIT_LIGHT 1e-3

/* Reasons of a verdict that bar no load, but leave open whether it is permitted: GTL_WHY_ bits. */
#define GTL_LIMIT_OPEN                                                                                       \
    (GTL_WHY_UNRATED | GTL_WHY_FRICTION | GTL_WHY_NOT_MOVED | GTL_WHY_NOT_STATED | GTL_WHY_DROP |            \
     GTL_WHY_CATCH | GTL_WHY_CATCHING_HAND | GTL_WHY_STRETCH | GTL_WHY_BATTEN)

/* What bars the loads beyond the last permitted one. */
typedef enum gtl_edge_kind {
    GTL_EDGE_NONE,     /* nothing, as far as loads were tried */
    GTL_EDGE_RATING,   /* a part would be over its rating */
    GTL_EDGE_FITTING,  /* a block's head fitting would hold less than twice the line */
    GTL_EDGE_UNKNOWN,  /* nothing would be known of a part's rating: no table or key reaches that far */
    GTL_EDGE_CASE,     /* a case would be impossible */
    GTL_EDGE_NO_ANSWER /* the rig would have no answer */
} gtl_edge_kind;

/* "rating", "head fitting", "unknown rating", "case" or "no answer"; "" for none. */
GTL_API const char *gtl_edge_name(gtl_edge_kind kind);

/* One end of the permitted range. */
typedef struct gtl_edge {
    gtl_edge_kind kind;
    double mass;   /* of the last permitted load [kg]; NaN: none is the last, or none permitted */
    int component; /* what bars: into the sheets' components, -1: none */
    int outcome;   /* in which case: into the rig's cases, -1: not of one case; of a rating, at rest on the
                    * way up that the rig's lift is */
    bool jumps;    /* the part passes its rating at once: no load brings it just there */
    char reason[GTL_REASON_SIZE]; /* of a case, or of no answer: why; else "" */
} gtl_edge;

/* What a part's paper rating would have to be for the load as drawn. */
typedef struct gtl_need {
    int component;
    gtl_step_kind kind; /* which rating: GTL_STEP_LIMIT to GTL_STEP_MBS */
    double paper;       /* what it is [N] */
    double needed;      /* [N]; infinite: no rating is enough, NaN: not known */
} gtl_need;

/* How many parts stand behind the one that limits. */
#define GTL_LIMIT_NEXT 3

typedef struct gtl_limit {
    const gtl_rig *rig;
    int load;           /* the load that was varied (thing index) */
    double drawn;       /* its mass as drawn [kg] */
    double lowest;      /* the lightest load that would be tried [kg] */
    double highest;     /* likewise the heaviest [kg] */
    bool answered;      /* the rig has an answer as drawn, and `as_drawn` may be read */
    gtl_sheet as_drawn; /* of `rig` */
    bool permitted;     /* the load as drawn is */
    gtl_edge barred;    /* what bars the load as drawn; kind GTL_EDGE_NONE where it is permitted */
    bool found;         /* a permitted load was found, and `at_limit` may be read */
    gtl_edge heaviest;  /* kind GTL_EDGE_NONE: no limit */
    gtl_edge lightest;  /* kind GTL_EDGE_NONE: every lighter load is permitted */
    gtl_sheet at_limit; /* of `own_rig` at the heaviest load, at some permitted one where there is no limit;
                         * the same components and cases as in `as_drawn` */
    gtl_rig *own_rig;   /* the rig with that load; owned */
    int next[GTL_LIMIT_NEXT]; /* components of the greatest use at the limit, without the one that bars */
    int next_count;
    gtl_need *needs; /* of every part that has a rating and a demand as drawn */
    int need_count;
    int *undecided; /* things at which friction may act either way, in either sheet; each once */
    int undecided_count;
    bool every_combination; /* false: too many undecided stops to try each combination */
    bool between_ends;      /* friction, or a batten's share, is a range, and more may be possible within */
    bool open;              /* something is unrated, undecided or not stated */
    int tried;              /* how many loads were worked */
    char reason[GTL_REASON_SIZE]; /* after GTL_FAULTY and GTL_NO_ANSWER: why */
    int blame;                    /* likewise: the line in the file, 0: the file as a whole */
} gtl_limit;

/* Find the limits of a rig, which must outlive them. Returns GTL_OK; GTL_FAULTY where it is not said which
 * load is meant, and GTL_NO_ANSWER where the rig has none as drawn and no load was found that is permitted
 * (reason and blame are set, nothing else may be read); or GTL_NO_MEMORY. The caller gives them back with
 * gtl_limit_end in every case. */
GTL_API gtl_status gtl_find_limit(const gtl_rig *rig, gtl_limit *limit);
GTL_API void gtl_limit_end(gtl_limit *limit);

#endif
