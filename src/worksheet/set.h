/* set.h - a set of problems as it was read: rigs as entries, and the texts that some of their values may
 * have.
 *
 * A value is varied on the entries, before anything is understood of them, so that a rig with other figures
 * is read like any rig, with all its faults told. */
#ifndef WORKSHEET_SET_H
#define WORKSHEET_SET_H

#include "read/screen.h"

#include <gantline/worksheet.h>

/* The most values that one problem varies, and questions that it asks. */
#define GTL_MOST_VARIED 8
#define GTL_MOST_ASKED  12
/* Lines to write on, where the set does not say. */
#define GTL_USUAL_ROOM 5

/* One value that differs from sheet to sheet. */
typedef struct gtl_vary {
    int line;      /* in the set */
    size_t entry;  /* of the rig: whose value it is */
    char **values; /* what may stand there, as typed into a rig file; owned */
    int count;     /* how many */
    size_t capacity;
} gtl_vary;

typedef struct gtl_problem {
    const char *name; /* the set's text */
    const char *text; /* words for the students, "" for none; likewise */
    int line;
    int rig_line;     /* of the key `rig` */
    int ask_line;     /* of `ask`, or of `mistake` */
    gtl_screened rig; /* the rig's entries, with the values of the file */
    void *values;     /* that these point to */
    char *file;       /* the rig's name, for messages; owned */
    gtl_vary varied[GTL_MOST_VARIED];
    int varied_count;
    gtl_vary lift;            /* how far the load rises; count 0: not stated */
    int asks[GTL_MOST_ASKED]; /* rows of the table of asks */
    int ask_count;
    int mistake; /* row of the table of mistakes, -1: it asks */
    int room;    /* lines to write on */
} gtl_problem;

struct gtl_set {
    gtl_screened screened; /* the set's own text */
    void *values;
    const char *title;
    const char *note;
    gtl_problem *problems;
    int problem_count;
    size_t problem_capacity;
};

/* range.c: read `LOW to HIGH step STEP`, or `A or B or C`, into the values of `vary`. False, and `why` says
 * what is wrong and what to write instead; or without memory, `why` is "" then. */
bool gtl_range_read(const char *text, gtl_vary *vary, char why[GTL_WHY_SIZE]);
void gtl_range_end(gtl_vary *vary);

/* How many sets of figures a problem has; never more than 1e9. */
uint64_t gtl_problem_sets(const gtl_problem *problem);

/* Which value each varied key has in one of them: one a varied key, then that of the lift. */
typedef struct gtl_choice {
    int value[GTL_MOST_VARIED + 1];
} gtl_choice;

gtl_choice gtl_problem_choice(const gtl_problem *problem, uint64_t number);

/* random.c: which of `sets` sets of figures a student has in a problem. No two students have the same as long
 * as there are enough. */
uint64_t gtl_draw_number(uint64_t seed, int problem, int student, uint64_t sets);

/* try_set.c: work each value of each problem, and tell what has no answer. */
void gtl_set_try(const gtl_set *set, gtl_fault_list *faults);

#endif
