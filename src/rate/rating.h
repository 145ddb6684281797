/* rating.h - what the steps of rating share. */
#ifndef RATE_RATING_H
#define RATE_RATING_H

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

/* variants.c: work one case and its variants. */
gtl_status gtl_work_case(gtl_bench *bench, gtl_case_kind kind, const double *const *places, int place_count,
                         gtl_outcome *outcome, gtl_sheet *sheet);
void gtl_outcome_end(gtl_outcome *outcome);

/* places.c: equilibria near the drawing, the nearest first. *found lists `*count` arrays of 3 coordinates a
 * node, NULL where the drawing's own is the only one. False without memory. */
bool gtl_find_places(const gtl_rig *rig, double ***found, int *count);
void gtl_free_places(double **places, int count);

/* verdict.c */
void gtl_mark_components(const gtl_bench *bench, gtl_sheet *sheet);
void gtl_find_verdict(const gtl_bench *bench, gtl_sheet *sheet);

/* warnings.c and warn_shape.c; false without memory. */
bool gtl_find_warnings(const gtl_bench *bench, gtl_sheet *sheet);
bool gtl_warn(gtl_sheet *sheet, gtl_warning warning);
bool gtl_warn_of_shape(const gtl_bench *bench, const gtl_outcome *outcome, gtl_sheet *sheet);

#endif
