/* lab.h - what a class measured on a rig or a tackle: a table of readings to work, advantage, efficiency,
 * uncertainty, and what looks wrong with it. */
#ifndef GANTLINE_LAB_H
#define GANTLINE_LAB_H

#include <gantline/read.h>
#include <gantline/report.h>
#include <gantline/solve.h>

/* Largest table that is read, in bytes, and its most rows. */
#define GTL_LAB_SIZE_LIMIT (256 * 1024)
#define GTL_LAB_ROW_LIMIT  2000

typedef enum gtl_lab_column {
    GTL_LAB_GROUP,
    GTL_LAB_RIG,
    GTL_LAB_PARTS,
    GTL_LAB_LOAD,
    GTL_LAB_EFFORT,
    GTL_LAB_LOAD_DISTANCE,
    GTL_LAB_EFFORT_DISTANCE,
    GTL_LAB_READING,
    GTL_LAB_DISTANCE_READING,
    GTL_LAB_MOVING_WEIGHT,
    GTL_LAB_SCALE_WEIGHT,
    GTL_LAB_SCALE,
    GTL_LAB_STATE
} gtl_lab_column;

#define GTL_LAB_COLUMN_COUNT 13

/* One row of the table of columns that the reader uses. */
typedef struct gtl_lab_column_help {
    gtl_lab_column column;
    const char *name;    /* as written in the header: "load distance" */
    const char *example; /* with its unit: "load distance [m]" */
    const char *unit;    /* the units allowed, blank-separated, "" for none */
    const char *need;    /* "always", "this or parts", "may be left out", ... */
    const char *meaning;
} gtl_lab_column_help;

/* Row `index` of that table, in the order of gtl_lab_column; NULL past the end. */
GTL_API const gtl_lab_column_help *gtl_lab_column_at(size_t index);

/* How a column stood in the table that was read. */
typedef struct gtl_lab_column_use {
    bool there;
    char unit[8];      /* as typed: "N", "kg", "cm"; "" for columns without one */
    bool used_gravity; /* a mass where a force belongs: taken times GTL_STANDARD_GRAVITY */
} gtl_lab_column_use;

/* Where the scale was, zeroed in that attitude. */
typedef enum gtl_lab_scale {
    GTL_LAB_SCALE_NOT_STATED, /* taken as upright */
    GTL_LAB_UPRIGHT,          /* it shows what the rope is pulled with */
    GTL_LAB_UPSIDE_DOWN /* it hangs on the rope by its hook: its own weight pulls too, and is not shown */
} gtl_lab_scale;

/* What looks wrong. In the comments: what `value` and `other` of the finding are. The table in
 * src/lab/findings.c has each rule and the reason for its threshold. */
typedef enum gtl_lab_code {
    /* Of a row. */
    GTL_LAB_OVER_WITHIN,       /* "efficiency-over-100-within": efficiency [1]; U, k = 2 [1] */
    GTL_LAB_OVER_BEYOND,       /* "efficiency-over-100-beyond": likewise */
    GTL_LAB_OVER_NOT_STATED,   /* "efficiency-over-100-uncertainty-not-stated": efficiency [1]; NaN */
    GTL_LAB_DISTANCES_SWAPPED, /* "distances-swapped": ideal advantage by distances [1]; that of the rig [1]
                                */
    GTL_LAB_UPSIDE_DOWN_RATIO, /* "ratio-upside-down": measured advantage [1]; that of the rig, ideal [1] */
    GTL_LAB_GRAMS,             /* "grams-for-newtons": factor by which the load is too great, or the effort
                                * too small (over 1), or the reverse (under 1) [1]; efficiency if mended [1] */
    GTL_LAB_KILOGRAMS,         /* "kilograms-for-newtons": likewise */
    GTL_LAB_HELD,       /* "held-not-moving": effort [N]; NaN. Stated so: not an efficiency of motion */
    GTL_LAB_LOOKS_HELD, /* "looks-held": effort [N]; the rig's effort at rest without friction [N] */
    GTL_LAB_SCALE_WEIGHT_MISSING, /* "scale-weight-missing": effort as read [N]; NaN. The effort is not known
                                   */
    GTL_LAB_NOT_THIS_RIG, /* "distances-not-of-this-rig": ideal advantage by distances [1]; the rig's [1] */
    GTL_LAB_NOT_THESE_PARTS,     /* "parts-not-of-distances": likewise; the parts [1] */
    GTL_LAB_BELOW_FRICTIONLESS,  /* "effort-below-frictionless": effort [N]; the least without friction [N] */
    GTL_LAB_FAR_FROM_PREDICTION, /* "far-from-prediction": effort [N]; the predicted, or the nearer end of the
                                  * range that holds [N] */
    GTL_LAB_NO_PREDICTION,       /* "no-prediction": load [N]; NaN. The set-up's `reason` says why */
    /* Of a set-up. */
    GTL_LAB_WEIGHT_FORGOTTEN, /* "weight-forgotten": weight that would explain it [N]; its U, k = 3 [N] */
    GTL_LAB_UNCERTAINTY_NOT_STATED, /* "uncertainty-not-stated": rows without it [1]; rows [1] */
    GTL_LAB_SCATTER,                /* "scatter-beyond-readings": how many times greater it is [1]; NaN */
    GTL_LAB_NO_FRICTION, /* "no-friction-found": efficiency per sheave, over 1 [1]; its U, k = 2 [1] */
    GTL_LAB_NO_FIT       /* "no-fit": rows counted [1]; NaN. No efficiency per sheave fits */
} gtl_lab_code;

#define GTL_LAB_CODE_COUNT 20

/* The code as text: "distances-swapped". */
GTL_API const char *gtl_lab_code_name(gtl_lab_code code);

typedef struct gtl_lab_finding {
    gtl_lab_code code;
    int row;      /* index into the lab's rows, -1: of the set-up as a whole */
    int set_up;   /* index into the lab's set-ups */
    bool bars;    /* the row is left out of the mean and the fit for it */
    bool on_load; /* GTL_LAB_GRAMS, GTL_LAB_KILOGRAMS: the load's column; false: the effort's */
    double value; /* see gtl_lab_code: unit by code */
    double other; /* likewise; NaN: none. Unit by code */
} gtl_lab_finding;

/* One row of readings and what it comes to. Half-widths a of readings count as u = a/sqrt(3); `reading`
 * is that of the load and of the effort alike, `distance reading` of both distances. Stated weights count
 * as exact. Products and ratios: relative variances are added. u is NaN where a half-width that goes into it
 * is not stated. */
typedef struct gtl_lab_row {
    int line;    /* in the file where the row begins */
    char *group; /* as typed, "" where not stated; owned by the lab */
    int set_up;  /* index into the lab's set-ups */
    bool held;   /* state: stated as held; else taken as moving */
    bool state_stated;
    gtl_lab_scale scale;

    double load;             /* as typed [N] */
    double effort_read;      /* as typed [N] */
    double effort;           /* with the scale's own weight where that pulls too; NaN: not known [N] */
    double load_distance;    /* [m] */
    double effort_distance;  /* [m] */
    double reading;          /* half-width of load and effort, NaN: not stated [N] */
    double distance_reading; /* half-width of the distances, NaN: not stated [m] */
    double moving_weight;    /* what rises with the load, rows of parts only, NaN: not stated [N] */
    double scale_weight;     /* NaN: not stated [N] */

    double work_in;         /* effort x its distance [J]; NaN where the effort is not known, as all with it */
    double work_out;        /* load x its distance: the useful work [J] */
    double ideal_advantage; /* by distances: effort distance / load distance [1] */
    double ideal_advantage_u;    /* standard uncertainty [1] */
    double measured_advantage;   /* by forces: load / effort [1] */
    double measured_advantage_u; /* standard uncertainty [1] */
    double efficiency;           /* work out / work in [1] */
    double efficiency_u;         /* standard uncertainty; U (k = 2) is twice it [1] */
    double efficiency_school;    /* the half-width by adding percentages [1] */
    double efficiency_all;       /* with the moving weight counted as raised; NaN where none is stated [1] */

    double reference_advantage; /* ideal, of the rig as drawn, or the parts; NaN: no answer [1] */
    gtl_case_kind
        predicted_case;      /* GTL_RAISE: moving, friction as stated in the rig; GTL_HOLD: no friction */
    double predicted_effort; /* in that case [N]; NaN: no answer */
    double predicted_hold;   /* at rest, without friction [N]; NaN likewise */
    double predicted_least;  /* rows held on a rig with friction: the load would stay up by no less [N] */
    double predicted_most;   /* likewise: and by no more; NaN for all other rows [N] */

    bool counted;      /* goes into the set-up's mean and fit; if not, a finding with `bars` says why */
    int first_finding; /* into the lab's findings */
    int finding_count;
} gtl_lab_row;

/* Where the uncertainty of the efficiency per sheave is from. */
typedef enum gtl_lab_fit_kind {
    GTL_LAB_FIT_NONE,     /* nothing fitted */
    GTL_LAB_FIT_READINGS, /* by the half-widths stated, of load and effort */
    GTL_LAB_FIT_SCATTER,  /* by the scatter of three rows or more about the fit: half-widths are not stated */
    GTL_LAB_FIT_UNKNOWN   /* fitted, but of fewer rows without half-widths: its uncertainty is not known */
} gtl_lab_fit_kind;

/* All rows on the same rig, or with the same number of parts. Parts stand for the textbook tackle: as many
 * sheaves as parts, each turned half round, all parts parallel, the hauling part leaving the fixed block:
 * load + moving weight = effort x (e + e^2 + ... + e^parts).
 *
 * The fit is the one efficiency that all blocks of the rig share (a fairlead keeps its own, stated), by least
 * squares of effort against the effort of raising; each row weighs by its uncertainty, or, by scatter, by its
 * effort squared. Above 1 it goes on smoothly, so that reading errors about 1 do not all fall on one side. */
typedef struct gtl_lab_set_up {
    char *name;            /* of the rig file as typed, or "" for parts; owned by the lab */
    gtl_rig *rig;          /* NULL for parts; owned by the lab */
    int parts;             /* 0 for a rig */
    double velocity_ratio; /* rope to the hand per unit of lift, as drawn; the parts [1]; NaN: no answer */
    bool friction_stated;  /* the rig states some friction */
    int row_count;
    int counted; /* rows in mean and fit */

    double efficiency_mean;   /* over the counted rows [1]; NaN: none */
    double efficiency_spread; /* their sample standard deviation [1]; NaN: fewer than two */

    gtl_lab_fit_kind fit;
    double sheave_efficiency;   /* [1]; over 1: no friction found; NaN: nothing fitted */
    double sheave_efficiency_u; /* standard uncertainty [1] */
    int degrees_of_freedom;     /* of u by scatter: rows - 1; else 0 */

    int first_finding; /* of the set-up itself, into the lab's findings */
    int finding_count;
    char reason[GTL_REASON_SIZE]; /* why a row has no prediction: the first; else "" */
} gtl_lab_set_up;

typedef struct gtl_lab {
    char *file; /* the name of the table in messages; owned */
    gtl_lab_column_use columns[GTL_LAB_COLUMN_COUNT];
    gtl_lab_row *rows; /* in the order of the file */
    int row_count;
    gtl_lab_set_up *set_ups; /* in the order in which the file first has them */
    int set_up_count;
    gtl_lab_finding *findings; /* of the rows in order, then of the set-ups in order */
    int finding_count;
    size_t finding_capacity;
} gtl_lab;

/* Who finds the rig that a row names. */
typedef struct gtl_lab_source {
    /* The rig for a name as typed in the column `rig`, that the lab owns from now on; NULL with what is wrong
     * in `faults`, which the call begins in any case, with the name of the file that it read. Asked once for
     * every different name. */
    gtl_rig *(*rig)(void *context, const char *name, gtl_fault_list *faults);
    void *context;
} gtl_lab_source;

/* Read a table of readings (CSV; comma, or semicolon where the header has no comma) and work it out.
 * `faults` is begun by the caller with the file's name; `source` may be NULL where no rigs can be read.
 * Returns GTL_OK; GTL_FAULTY with every fault in `faults`, and nothing worked out; or GTL_NO_MEMORY. The
 * caller gives `lab` back with gtl_lab_end in every case. Nothing is printed or opened. */
GTL_API gtl_status gtl_lab_read(const char *text, size_t size, const gtl_lab_source *source, gtl_lab *lab,
                                gtl_fault_list *faults);
GTL_API void gtl_lab_end(gtl_lab *lab);

/* Write what was found: GTL_TEXT, GTL_HTML, GTL_CSV or GTL_JSON ("gantline-lab-1", docs/lab.schema.json).
 * Returns text that the caller frees, NULL without memory. The same lab gives the same bytes. */
GTL_API char *gtl_lab_report(const gtl_lab *lab, gtl_form form);

#endif
