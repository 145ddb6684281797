/* work.h - the steps from a table of readings to what it comes to, in the order in which they are taken. */
#ifndef LAB_WORK_H
#define LAB_WORK_H

#include "lab/columns.h"

/* read_row.c: one record to a row of readings, everything else NaN; its set-up is looked up, or made. Faults
 * go to `faults`. */
typedef struct gtl_lab_reading {
    const gtl_lab_table *table;
    const gtl_lab_places *places;
    const gtl_lab_source *source;
    gtl_lab *lab; /* with room for all rows and set-ups */
    gtl_fault_list *faults;
} gtl_lab_reading;
void gtl_lab_read_row(const gtl_lab_reading *reading, const gtl_lab_record *record);

/* find_set_up.c: the set-up of a rig by its name, or of parts where `name` is "": one that is there already,
 * or a new one, for which the source is asked. -1 without memory. A rig that cannot be used is told at each
 * line that names it. */
int gtl_lab_find_set_up(const gtl_lab_reading *reading, const char *name, int parts, int line);

/* row.c: work, advantages, efficiency, and their uncertainties. */
void gtl_lab_work_row(gtl_lab_row *row);
/* The standard uncertainty of a half-width [its unit]. */
double gtl_lab_standard(double half_width);

/* predict.c: what each row's rig or parts say. False without memory. */
bool gtl_lab_predict(gtl_lab *lab);
/* The effort of raising where all blocks of a set-up have one efficiency e [N]; NaN: no answer. `even` is a
 * copy of the set-up's rig to be changed, NULL for parts. False without memory. */
bool gtl_lab_model(const gtl_lab_set_up *set_up, gtl_rig *even, const gtl_lab_row *row, double e,
                   double *effort);

/* findings.c: all that looks wrong with each row, and which rows count. False without memory. */
bool gtl_lab_find_rows(gtl_lab *lab);
/* Keep one more; `bars` is taken from the table of rules. */
bool gtl_lab_keep_finding(gtl_lab *lab, gtl_lab_finding finding);
/* The efficiency of a row by its forces alone, beside what rig or parts promise without friction, all that
 * rises counted [1]; NaN: not known. */
double gtl_lab_share(const gtl_lab_row *row);
/* U = 2u of the product or ratio of a row's two forces, or of its two distances, as a share of it [1]; 0
 * where half-widths are not stated. */
double gtl_lab_force_share(const gtl_lab_row *row);
double gtl_lab_distance_share(const gtl_lab_row *row);

/* suspects.c: slips that would explain forces which cannot be right. `expected`: the share that is likely
 * [1], NaN: not known. False without memory. */
bool gtl_lab_suspect(gtl_lab *lab, int row, double expected);

/* set_up.c: mean and spread, and what looks wrong with a set-up as a whole. fit.c: the one efficiency per
 * sheave. intercept.c: a weight that nobody counted. False without memory. */
bool gtl_lab_sum_up(gtl_lab *lab);

/* What the fit leaves for others to look at. */
typedef struct gtl_lab_fitted {
    int *rows; /* the counted rows of the set-up */
    int count;
    double *effort; /* of the model, one a counted row [N] */
    double *slope;  /* how the effort as read would grow with the load, likewise [1] */
    double *sigma;  /* standard uncertainty of effort by force readings, or its effort where by scatter [N] */
    double birge;   /* how many times the scatter is beyond the readings [1]; 1: it is not */
} gtl_lab_fitted;
bool gtl_lab_fit(const gtl_lab *lab, gtl_lab_set_up *set_up, gtl_rig *even, gtl_lab_fitted *fitted);
void gtl_lab_fitted_end(gtl_lab_fitted *fitted);
/* The weight that would explain an effort left over at no load, and U (k = 3) of it [N]. False: none shows.
 */
bool gtl_lab_left_over(const gtl_lab *lab, const gtl_lab_set_up *set_up, const gtl_lab_fitted *fitted,
                       double *weight, double *expanded);

#endif
