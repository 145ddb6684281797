/* drawings.c - rigs drawn badly hang in the same place: all examples of the manual, and random rigs.
 *
 * usage: drawings [RANDOM RIGS [FIRST SEED]], at the top of the project, where docs/examples is */
#define _POSIX_C_SOURCE 200809L
#include "laws/stability.h"
#include "laws/trial.h"
#include "rig/other.h"
#include <glob.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* How far a drawing is off, over the rig's size, and what share of drawings has to come to the same place:
 * for ropes alone there is one place only; with spars a bad drawing may show another place, or none. */
static const double off_ropes = 0.2;
static const double off_spars = 0.1;
static const double share_ropes = 1;
static const double share_spars = 0.99;
static const double share_random_ropes = 0.999; /* of those, in 11,100 drawings one was refused */
/* Random rigs that have no answer as drawn, run away, or hold a body that may stay anywhere. */
static const double most_left_out = 0.08;
/* Places nearer than this are the same, over the rig's size. */
static const double same = 1e-6;
/* Random rigs hold spars much shorter than themselves. One drawn the other way round is a drawing of another
 * place; this share of the shortest, the ends off by as much each, keeps them the right way round. */
static const double off_shortest = 0.25;
enum { TRIALS = 100, FEW_TRIALS = 10 };

/* What became of all drawings of one rig, or of many. */
typedef struct tally {
    int trials;
    int alike;     /* the same place */
    int cautioned; /* another place, and the report says that it may be */
    int refused;   /* no answer, with a reason */
    int wrong;     /* another place taken as good */
} tally;

typedef struct subject {
    const char *name;
    sketch drawn; /* with all lengths given */
    gtl_rig *rig;
    gtl_state *state; /* hold */
    bool spars;
    double off; /* how far its drawings are off [m] */
} subject;

static gtl_rig *read_sketch(const sketch *s)
{
    gtl_fault_list faults;
    char *text = sketch_text(s, NULL);
    gtl_faults_begin(&faults, "rig");
    gtl_rig *rig = gtl_read_text(text, strlen(text), &faults);
    gtl_faults_end(&faults);
    free(text);
    return rig;
}

static bool solve_hold(const gtl_rig *rig, gtl_state *state)
{
    gtl_case which = {.kind = GTL_HOLD};
    return gtl_solve(rig, &which, state) == GTL_OK && state->possible && !state->neutral;
}

/* Whether the rig as drawn has a place to compare with. */
static bool subject_begin(subject *s, const char *name, const sketch *drawn)
{
    *s = (subject){.name = name, .drawn = *drawn};
    sketch_fix_lengths(&s->drawn);
    s->rig = read_sketch(&s->drawn);
    s->state = s->rig ? gtl_state_new(s->rig) : NULL;
    for (int i = 0; i < drawn->line_count; i++) s->spars |= drawn->lines[i].kind == GTL_SPAR;
    if (!s->state || !solve_hold(s->rig, s->state)) return false;
    s->off = (s->spars ? off_spars : off_ropes) * gtl_rig_size(s->rig);
    return true;
}

static double shortest_spar(const sketch *s)
{
    double shortest = INFINITY;
    for (int i = 0; i < s->line_count; i++)
        if (s->lines[i].kind == GTL_SPAR) shortest = fmin(shortest, sketch_length(s, i));
    return shortest;
}

static void subject_end(subject *s)
{
    gtl_state_free(s->state);
    gtl_rig_free(s->rig);
}

static bool is_alike(const subject *s, const gtl_state *state)
{
    double force = mechanics_of(s->rig, s->state).force;
    for (int i = 0; i < 3 * s->rig->node_count; i++)
        if (!(fabs(state->at[i] - s->state->at[i]) <= same * gtl_rig_size(s->rig))) return false;
    for (int i = 0; i < s->rig->part_count; i++)
        if (!(fabs(state->tension[i] - s->state->tension[i]) <= same * force)) return false;
    return true;
}

/* Whether the report of a drawing owns up that its place may not be the one meant. */
static bool is_cautioned(const gtl_rig *rig)
{
    gtl_sheet sheet;
    bool told = false;
    gtl_status status = gtl_rate(rig, &sheet);
    for (int i = 0; status == GTL_OK && i < sheet.warning_count; i++) {
        gtl_warning_code code = sheet.warnings[i].code;
        told |= code == GTL_WARN_SEVERAL_PLACES || code == GTL_WARN_FAR_FROM_DRAWING;
    }
    gtl_sheet_end(&sheet);
    return told;
}

static bool holds(const gtl_rig *rig, const gtl_state *state)
{
    mechanics m = mechanics_of(rig, state);
    return comes_back(&m);
}

static void tell(const subject *s, int trial, const char *what, const char *why)
{
    printf("%s, drawing %d: %s%s%s\n", s->name, trial, what, why[0] ? ": " : "", why);
}

static void judge_other(const subject *s, const gtl_rig *rig, const gtl_state *state, int trial, tally *t)
{
    bool clear = state->status == GTL_OK ? !state->possible && state->reason[0] : state->reason[0] != '\0';
    if (clear) {
        t->refused++;
        tell(s, trial, "refused", state->reason);
    } else if (!holds(rig, state)) {
        t->wrong++;
        tell(s, trial, "a place that the rig leaves when touched", "");
    } else if (is_cautioned(rig)) {
        t->cautioned++;
        tell(s, trial, "another place, with a caution", "");
    } else {
        t->wrong++;
        tell(s, trial, "another place, taken as good", "");
    }
}

static void try_drawing(const subject *s, chance *c, int trial, tally *t)
{
    sketch bad = s->drawn;
    sketch_shake(&bad, c, s->rig->load, s->off);
    gtl_rig *rig = read_sketch(&bad);
    gtl_state *state = rig ? gtl_state_new(rig) : NULL;
    t->trials++;
    if (!state)
        tell(s, trial, "not read", "");
    else if (solve_hold(rig, state) && is_alike(s, state))
        t->alike++;
    else
        judge_other(s, rig, state, trial, t);
    if (state && state->status == GTL_OK && state->possible &&
        !(state->pivot_ratio > 1e-9 || state->neutral)) {
        t->wrong++;
        tell(s, trial, "taken on a singular matrix", "");
    }
    gtl_state_free(state);
    gtl_rig_free(rig);
}

static void try_subject(const subject *s, uint64_t seed, int trials, tally *t)
{
    chance c = chance_begin(seed);
    for (int trial = 0; trial < trials; trial++) try_drawing(s, &c, trial, t);
}

/* One test: as many alike as must be, none taken as good that is not. */
static bool is_kept(const char *name, const tally *t, double share)
{
    bool kept = t->trials > 0 && t->wrong == 0 && t->alike >= share * t->trials;
    printf("%s: %d of %d drawings alike, %d cautioned, %d refused, %d wrong%s\n", name, t->alike, t->trials,
           t->cautioned, t->refused, t->wrong, kept ? "" : ", not as it should be");
    return kept;
}

/* The rig in the words of a sketch: of two hands the one that holds is worked out and the other pulls 0 N,
 * and an arbor is a load on a track. */
static gtl_rig *plain(gtl_rig *rig)
{
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_ARBOR) rig->things[i].kind = GTL_LOAD;
    if (!gtl_rig_is_paired(rig)) return rig;
    gtl_state *state = gtl_state_new(rig);
    gtl_rig *other = state && !solve_hold(rig, state) ? gtl_rig_other(rig) : NULL;
    gtl_state_free(state);
    return other ? other : rig;
}

/* The sketch of an example file; false where it cannot be read. */
static bool sketch_file(const char *name, sketch *s)
{
    static char text[GTL_FILE_LIMIT];
    FILE *in = fopen(name, "rb");
    size_t size = in ? fread(text, 1, sizeof text, in) : 0;
    if (in) fclose(in);
    gtl_fault_list faults;
    gtl_faults_begin(&faults, name);
    gtl_rig *rig = gtl_read_text(text, size, &faults);
    gtl_rig *held = rig ? plain(rig) : NULL;
    bool done = held && sketch_of_rig(s, held);
    if (held != rig) gtl_rig_free(held);
    gtl_faults_end(&faults);
    gtl_rig_free(rig);
    return done;
}

static bool try_example(const char *name)
{
    subject s;
    sketch drawn;
    tally t = {0};
    bool begun = sketch_file(name, &drawn) && subject_begin(&s, name, &drawn);
    if (!begun) return is_kept(name, &t, 1);
    try_subject(&s, 1, trial_default(TRIALS), &t);
    bool kept = is_kept(name, &t, s.spars ? share_spars : share_ropes);
    subject_end(&s);
    return kept;
}

static void try_examples(int *passed, int *failed)
{
    glob_t files;
    if (glob("docs/examples/*.ini", 0, NULL, &files) != 0) {
        puts("docs/examples holds no rig");
        ++*failed;
        return;
    }
    for (size_t i = 0; i < files.gl_pathc; i++) {
        bool kept = try_example(files.gl_pathv[i]);
        *passed += kept;
        *failed += !kept;
    }
    globfree(&files);
}

static void try_random(long count, long first, int *passed, int *failed)
{
    tally ropes = {0};
    tally spars = {0};
    long left_out = 0;
    for (long seed = first; seed < first + count; seed++) {
        generated made;
        subject s;
        char name[32];
        snprintf(name, sizeof name, "seed %ld", seed);
        generate((uint64_t)seed, &made);
        bool begun = subject_begin(&s, name, &made.sketch);
        s.off = fmin(s.off, off_shortest * shortest_spar(&s.drawn));
        if (begun) try_subject(&s, (uint64_t)seed, FEW_TRIALS, s.spars ? &spars : &ropes);
        left_out += !begun;
        subject_end(&s);
    }
    printf("random rigs left out, without one place to compare with: %ld of %ld\n", left_out, count);
    bool kept[] = {is_kept("random rigs of ropes", &ropes, share_random_ropes),
                   is_kept("random rigs with spars", &spars, share_spars),
                   (double)left_out <= most_left_out * (double)count};
    for (int i = 0; i < 3; i++) {
        *passed += kept[i];
        *failed += !kept[i];
    }
}

int main(int argc, char **argv)
{
    int passed = 0;
    int failed = 0;
    long count = argc > 1 ? strtol(argv[1], NULL, 10) : trial_default(500);
    long first = argc > 2 ? strtol(argv[2], NULL, 10) : 1;
    try_examples(&passed, &failed);
    try_random(count, first, &passed, &failed);
    printf("drawings: %d passed, %d failed\n", passed, failed);
    return failed > 0;
}
