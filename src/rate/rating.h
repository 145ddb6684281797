/* rating.h - what the steps of rating share. */
#ifndef RATE_RATING_H
#define RATE_RATING_H

#include "rig/without.h"

#include <gantline/rate.h>

/* Below this share of what moves the rig a part carries nothing [1]. */
#define GTL_IDLE_SHARE 1e-9
/* Stops left undecided up to which every combination is tried. */
#define GTL_MOST_COMBINED 4

/* One pull on a thing, in a list that ends with `next` -1. */
typedef struct gtl_pull {
    double vector[3]; /* [N] */
    int next;
} gtl_pull;

/* Room for the pulls of one state, and which component each part of the gear is. */
typedef struct gtl_bench {
    const gtl_rig *rig;
    int component_count;
    int *thing_component; /* one a thing, -1 where it is none */
    int *line_component;
    int *connector_component;
    int *by_depth; /* things, those on others first */
    gtl_pull *pulls;
    int pull_count;
    int *first_pull;      /* one a thing, -1 for none */
    double (*sums)[3];    /* room for one thing's pulls, merged by direction */
    double *angles;       /* room for where they change sides */
    bool friction_stated; /* at any running stop */
    double force;         /* weights of free nodes and known pulls [N] */
    double *straight;     /* one a component: what it may carry pulled along its axis [N]; NaN: not known */
} gtl_bench;

/* bench.c: false without memory; gtl_bench_end in every case. */
bool gtl_bench_begin(gtl_bench *bench, const gtl_rig *rig);
void gtl_bench_end(gtl_bench *bench);
/* The components, all without demand yet, in the order of kinds. NULL without memory; the caller frees it. */
gtl_component *gtl_list_components(const gtl_bench *bench);

/* forces.c: room for the forces of one state; false without memory. */
bool gtl_forces_begin(gtl_forces *forces, const gtl_bench *bench);
void gtl_forces_end(gtl_forces *forces);
/* What a solved state of a case does to each thing, and each component's demand in it. */
void gtl_find_forces(gtl_bench *bench, gtl_case_kind kind, const gtl_state *state, gtl_forces *forces);

/* subset.c: the greatest resultant of any set of `count` vectors [N], and that resultant in `best`. `vectors`
 * is merged in place; `angles` has room for 2 count. */
double gtl_greatest_resultant(double (*vectors)[3], int count, double *angles, double best[3]);

/* variants.c: work one case, whose outcome says which, and its variants. */
gtl_status gtl_work_case(gtl_bench *bench, const double *const *places, int place_count, gtl_outcome *outcome,
                         gtl_sheet *sheet);
void gtl_outcome_end(gtl_outcome *outcome);
/* One number a component each, as in gtl_forces. */
typedef struct gtl_demands {
    const double *demand, *push, *keeps, *angle;
} gtl_demands;
/* Let other demands count in an outcome, component by component the worse. */
void gtl_take_worst(gtl_outcome *outcome, const gtl_demands *other, const gtl_bench *bench);
/* Whether a demand with what its angle leaves of the rating is worse than the one so far (NaN: none yet);
 * what it may carry pulled straight decides what is over. */
bool gtl_is_worse(double demand, double keeps, double so_far, double kept, double straight);

/* alternatives.c: list what a rig may be where figures are ranges, into the sheet; false without memory. The
 * first, where there is one, has all friction at its free end. */
bool gtl_list_alternatives(gtl_sheet *sheet);

/* band.c: work every case of the alternatives listed, and let their demands and figures count in the sheet's
 * outcomes. Returns GTL_OK, or what gtl_rate does. */
gtl_status gtl_work_alternatives(const gtl_bench *bench, gtl_sheet *sheet);
void gtl_band_end(gtl_band *band);

/* rate.c: work all cases of the sheet's rig into its outcomes. */
gtl_status gtl_work_cases(gtl_bench *bench, gtl_sheet *sheet);

/* loss.c: work the case in which a part lets go, from where the rig holds. The outcome says which; the sheet
 * holds the outcome of hold. */
gtl_status gtl_work_loss(const gtl_asked *asked, gtl_outcome *outcome, gtl_sheet *sheet);

/* pair.c */
/* As gtl_work_case, of a rig whose hand is one of a pair: with the one of the two that need not push. */
gtl_status gtl_work_pair(gtl_bench *bench, const double *const *places, int place_count, gtl_outcome *outcome,
                         gtl_sheet *sheet);
/* Let two outcomes of one case of a rig count, component by component the worse; one that cannot be stands
 * for both. `other` is used up. Returns GTL_OK or GTL_NO_MEMORY. */
gtl_status gtl_merge_worse(const gtl_rig *rig, gtl_outcome *outcome, gtl_outcome *other);

/* drop.c: work the case in which a load is caught after a fall, from where the rig holds. As gtl_work_loss.
 */
gtl_status gtl_work_drop(gtl_outcome *outcome, gtl_sheet *sheet);
void gtl_drop_free(gtl_drop *drop);
/* An outcome of the sheet's rig without a number, for a case of which there is no place to tell. False
 * without memory. */
bool gtl_blank_outcome(const gtl_sheet *sheet, gtl_outcome *outcome);

/* catch.c: what a rig comes to that holds a load so when it has to catch it. `hold` is its state, and `twice`
 * that with all that falls weighing twice as much. NULL without memory; gtl_drop_free gives it back. Nothing
 * gives where `stiffness` is not finite. */
gtl_drop *gtl_find_catch(const gtl_rig *rig, const gtl_state *hold, const gtl_state *twice);

/* rope_bill.c */
/* Make the sheet's bill, where its rig asks for one, once the cases are worked. GTL_NO_ANSWER, and the
 * sheet's reason says how much is needed, where there is too little of a hauled rope; else GTL_OK or
 * GTL_NO_MEMORY. */
gtl_status gtl_find_rope_bill(gtl_sheet *sheet);

/* balance.c: of every arbor, once the cases are worked; false without memory. */
bool gtl_find_balances(gtl_sheet *sheet);

/* chain.c */
/* The steps from a component's paper rating to its capacity, where its angle leaves `keeps`; how many, 0
 * where nothing rates it. */
int gtl_chain_steps(const gtl_rig *rig, const gtl_component *component, double keeps, double angle,
                    gtl_step steps[GTL_STEP_KIND_COUNT]);
/* Whether a part has any rating on paper. */
bool gtl_is_rated(const gtl_rig *rig, gtl_kind kind, int index);
/* Their product [N]; NaN where there are none, or one is not known. */
double gtl_chain_capacity(const gtl_step *steps, int count);
/* The least diameter of a bend or pin over the line's own [1], and at what; NaN where none is stated. */
double gtl_tightest_bend(const gtl_rig *rig, const gtl_line *line, const char **name);
const gtl_gear *gtl_gear_of(const gtl_rig *rig, gtl_kind kind, int index);
const gtl_rating *gtl_rating_of(const gtl_rig *rig, gtl_kind kind, int index);

/* gear.c: gear in a row down to each anchor, and head fittings; after marking. False without memory. */
bool gtl_find_chains(const gtl_bench *bench, gtl_sheet *sheet);

/* places.c: equilibria near the drawing, the nearest first. *found lists `*count` arrays of 3 coordinates a
 * node, NULL where the drawing's own is the only one. False without memory. */
bool gtl_find_places(const gtl_rig *rig, double ***found, int *count);
void gtl_free_places(double **places, int count);

/* verdict.c */
/* False without memory. */
bool gtl_mark_components(const gtl_bench *bench, gtl_sheet *sheet);
/* Whether a choked sling leaves unsaid what may make it weaker than counted. */
bool gtl_choke_angle_missing(const gtl_gear *gear);
bool gtl_choke_material_missing(const gtl_gear *gear);
void gtl_find_verdict(const gtl_bench *bench, gtl_sheet *sheet);

/* turns.c: what turns on the posts of the hauled rope do, once the cases are worked; false without memory. */
bool gtl_find_posts(gtl_sheet *sheet);

/* warnings.c; false without memory, as all that warns. */
bool gtl_find_warnings(const gtl_bench *bench, gtl_sheet *sheet);
bool gtl_warn(gtl_sheet *sheet, gtl_warning warning);
/* Of the rig, whatever the case. */
bool gtl_tell(gtl_sheet *sheet, gtl_warning_code code, const char *about, double value, double other);
/* warn_shape.c: of a case that can be. */
bool gtl_warn_of_shape(const gtl_bench *bench, const gtl_outcome *outcome, gtl_sheet *sheet);
/* warn_gear.c: of ratings, and of what takes from them; of the use. */
bool gtl_warn_of_gear(const gtl_bench *bench, gtl_sheet *sheet);
bool gtl_warn_of_use(gtl_sheet *sheet);
/* The design factor that the rig's use asks of a part: of a line of no stated material the greater of wire's
 * and fibre's, of a connector a shackle's, of anything else that of metal parts [1]. NaN: no use is stated,
 * or its row has none for that. */
double gtl_use_factor(const gtl_rig *rig, gtl_kind kind, int index);
/* warn_drop.c */
bool gtl_warn_of_drop(gtl_sheet *sheet);
/* Whether a line is pulled harder at the peak of a drop than where its stretch is stated. */
bool gtl_is_beyond_stretch(const gtl_line *line, const gtl_drop_line *caught);
/* warn_band.c: of what figures stated as ranges leave open. */
bool gtl_warn_of_bands(gtl_sheet *sheet);
/* warn_lift.c */
bool gtl_warn_of_lift(const gtl_bench *bench, gtl_sheet *sheet);
/* Whether a component is over its rating at rest further up the lift than where the load is drawn. */
bool gtl_is_over_on_the_way(const gtl_sheet *sheet, int component);
/* warn_hauling.c */
bool gtl_warn_of_hauling(const gtl_bench *bench, gtl_sheet *sheet);

/* warn_timber.c */
bool gtl_warn_of_timber(gtl_sheet *sheet);

/* warn_batten.c */
bool gtl_warn_of_battens(gtl_sheet *sheet);
/* Whether in any case the picks of a batten shift against each other, or rise differently as it is hauled, so
 * that it is no level batten any more. */
bool gtl_batten_parts(const gtl_sheet *sheet);

/* loss_batten.c: whether a batten has lost some of its lines and nothing else falls; then `remains` does not
 * fall either, and the reason says why there are no figures. */
bool gtl_batten_is_half_held(const gtl_rig *rig, const char *lost, gtl_remains *remains,
                             char reason[GTL_REASON_SIZE]);

#endif
