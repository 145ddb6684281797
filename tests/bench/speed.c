/* speed.c - how long solving takes: rigs from files, then the same two kinds of rig from small to large.
 *
 * usage: speed RIG... Every figure is the quickest of some batches: whatever else the machine does only adds.
 * Batches of small rigs repeat the work until the clock can tell it. */
#define _POSIX_C_SOURCE 200809L /* clock_gettime */

#include "common/large_rigs.h"

#include <gantline/gantline.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#define BATCHES 15
/* A batch lasts at least this long [s]. */
#define BATCH 0.01

static double seconds(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec + 1e-9 * (double)now.tv_nsec;
}

/* ---- what is timed ---- */

typedef struct job {
    const gtl_rig *rig;
    gtl_state *state;
    int cases; /* hold, raise, lower: the first so many */
    bool solved;
} job;

static void solve(job *j)
{
    for (int kind = 0; kind < j->cases; kind++) {
        gtl_case which = {.kind = (gtl_case_kind)kind};
        j->solved &= gtl_solve(j->rig, &which, j->state) == GTL_OK && j->state->possible;
    }
}

static void rate(job *j)
{
    gtl_sheet sheet;
    j->solved &= gtl_rate(j->rig, &sheet) == GTL_OK;
    gtl_sheet_end(&sheet);
}

static double batch(job *j, void (*work)(job *), int times)
{
    double begin = seconds();
    for (int i = 0; i < times; i++) work(j);
    return seconds() - begin;
}

/* Seconds that `work` takes, NaN where it failed. */
static double time_of(job *j, void (*work)(job *))
{
    double least = INFINITY;
    int times = 1;
    j->solved = true;
    while (batch(j, work, times) < BATCH) times *= 2;
    for (int i = 0; i < BATCHES; i++) least = fmin(least, batch(j, work, times) / times);
    return j->solved ? least : (double)NAN;
}

/* ---- rigs from files ---- */

static gtl_rig *read_file(const char *name)
{
    static char text[GTL_FILE_LIMIT];
    FILE *file = fopen(name, "rb");
    if (!file) return NULL;
    size_t size = fread(text, 1, sizeof text, file);
    fclose(file);
    gtl_fault_list faults;
    gtl_faults_begin(&faults, name);
    gtl_rig *rig = gtl_read_text(text, size, &faults);
    gtl_faults_end(&faults);
    return rig;
}

static bool time_file(const char *name)
{
    gtl_rig *rig = read_file(name);
    gtl_state *state = rig ? gtl_state_new(rig) : NULL;
    if (!state) {
        fprintf(stderr, "speed: cannot read %s\n", name);
        gtl_rig_free(rig);
        return false;
    }
    job j = {rig, state, 3, true};
    double solving = time_of(&j, solve);
    double rating = time_of(&j, rate);
    const char *base = strrchr(name, '/');
    printf("  %-16s %9.2f us, so %8.0f cases a second; rated whole %9.2f us\n", base ? base + 1 : name,
           1e6 * solving, 3 / solving, 1e6 * rating);
    gtl_state_free(state);
    gtl_rig_free(rig);
    return solving > 0 && rating > 0;
}

/* ---- from small to large ---- */

typedef struct growth {
    const char *what;
    const char *unit;
    gtl_rig *(*make)(int size);
    double (*check)(const gtl_rig *rig, const gtl_state *state, int size);
    int cases;
    int sizes[5];
} growth;

static gtl_rig *smooth_tackle(int sheaves)
{
    return large_tackle(sheaves, "99.9999 %");
}

/* How far the last case, lower, is from the exact pull, as a share of it. */
static double check_tackle(const gtl_rig *rig, const gtl_state *state, int sheaves)
{
    (void)rig;
    return fabs(state->effort / large_tackle_effort(sheaves, 1 / 0.999999) - 1);
}

/* How far the sag is from the catenary's, as a share of it. */
static double check_chain(const gtl_rig *rig, const gtl_state *state, int joints)
{
    (void)joints;
    double sag = 0;
    for (int n = 0; n < rig->node_count; n++) sag = fmax(sag, -state->at[3 * n + rig->dim - 1]);
    return fabs(sag / catenary().sag - 1);
}

static const growth growths[] = {
    {"tackle, three cases; off the exact pull",
     "sheaf",
     smooth_tackle,
     check_tackle,
     3,
     {10, 100, 1000, 10000}},
    {"hanging chain, hold; off the catenary's sag",
     "joint",
     large_chain,
     check_chain,
     1,
     {10, 50, 200, 1000, 2000}},
};

static bool time_size(const growth *g, int size)
{
    double begin = seconds();
    gtl_rig *rig = g->make(size);
    double read = seconds() - begin;
    gtl_state *state = rig ? gtl_state_new(rig) : NULL;
    if (!state) {
        gtl_rig_free(rig);
        return false;
    }
    job j = {rig, state, g->cases, true};
    double solving = time_of(&j, solve);
    printf("  %6d %10.1f us, %7.3f us a %s, %3d linear solves; made in %7.1f ms; off by %.1e\n", size,
           1e6 * solving, 1e6 * solving / size, g->unit, state->linear_solves, 1e3 * read,
           g->check(rig, state, size));
    gtl_state_free(state);
    gtl_rig_free(rig);
    return solving > 0;
}

int main(int count, char **arguments)
{
    bool sound = true;
    printf("three cases (hold, raise, lower):\n");
    for (int i = 1; i < count; i++) sound &= time_file(arguments[i]);
    for (size_t i = 0; i < sizeof growths / sizeof *growths; i++) {
        printf("%s:\n", growths[i].what);
        for (int k = 0; k < 5 && growths[i].sizes[k]; k++)
            sound &= time_size(&growths[i], growths[i].sizes[k]);
    }
    return sound ? 0 : 1;
}
