/* trial.h - laws held against many random rigs: each rig generated, read and worked once, then shown to every
 * law. */
#ifndef LAWS_TRIAL_H
#define LAWS_TRIAL_H

#include "laws/generator.h"
#include "laws/mechanics.h"

/* One random rig with its states, which hold numbers where the case is possible. */
typedef struct specimen {
    uint64_t seed;
    generated made;
    char *text;
    gtl_rig *rig;
    gtl_state *states[BASIC_CASES];
    bool possible[BASIC_CASES]; /* worked, answered, and it can be */
} specimen;

/* What one law says of one rig. */
typedef struct ruling {
    bool applied;
    char broken[256]; /* the first breach in words, "" for none */
} ruling;

void ruling_break(ruling *r, const char *format, ...) GTL_PRINTF(2, 3);

typedef struct law {
    const char *name;
    void (*hold)(const specimen *, ruling *);
} law;

/* Whether a rig could be worked at all; says why not. */
typedef enum finding { WORKED, NOT_READ, NO_ANSWER } finding;

/* Read and work all cases of a sketch. The caller gives it back with specimen_end in every case. */
finding specimen_begin(specimen *s, const sketch *drawn, chance *shuffle, char *why, size_t size);
void specimen_end(specimen *s);

/* How many rigs a program tries by itself: fewer under a sanitizer. */
int trial_default(int plain);

/* A program of laws. */
typedef struct trial_plan {
    const char *name;
    const law *laws;
    int law_count;
    int rigs;                                         /* tried where argv does not say */
    void (*each)(const specimen *);                   /* NULL, or sees every rig */
    void (*last)(int rigs, int *passed, int *failed); /* NULL, or adds tests of its own */
} trial_plan;

/* Hold all laws against random rigs; argv: [COUNT [FIRST SEED]]. Prints each law with the rigs that it
 * applied to and the breaches, and the suite's line; of a single rig its text too. Returns the status. */
int trial_run(const trial_plan *plan, int argc, char **argv);

#endif
