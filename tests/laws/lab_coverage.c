/* lab_coverage.c - readings made from a known efficiency per sheave: the fit has to find it, and its stated
 * uncertainty has to be true. U = 2u holds the known value in 93 to 98 of 100 trials, at 1,000 trials for
 * each of ten seeds (a normal error would lie within 2u 95.4 times in 100; the law's own chance at 1,000
 * trials is a standard deviation of 0.7). Where u is by scatter, Student's factor takes the place of 2.
 *
 * argv: [TRIALS [FIRST SEED]]. */
#include "laws/chance.h"
#include "laws/trial.h"

#include <gantline/lab.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define SEEDS 10

/* A bench, as it truly is. */
typedef struct bench {
    const char *name;
    int parts; /* of the textbook tackle; on a rig: of the rig below */
    bool rig;  /* read as a rig file */
    double e;  /* of each sheave, truly [1] */
    int rows;
    double reading;   /* half-width, stated and true [N]; 0: not stated, and the effort is off by a share */
    double share;     /* half-width of that share [1] */
    double factor;    /* of u [1] */
    double weigh;     /* moving weight, stated [N] */
    bool about_loads; /* the same load in each row, or several */
} bench;

/* Source of the factors for 5 and 11 degrees of freedom: JCGM 100:2008, table G.2, 95.45 %, from memory. */
static const bench benches[] = {
    {"four parts", 4, false, 0.94, 6, 0.05, 0, 2, 0, true},
    {"two parts and a moving weight", 2, false, 0.88, 8, 0.02, 0, 2, 0.4, true},
    {"a single sheave, three rows", 1, false, 0.9, 3, 0.05, 0, 2, 0, false},
    {"six parts, no friction", 6, false, 1, 6, 0.01, 0, 2, 0, true},
    {"by scatter, six rows", 4, false, 0.92, 6, 0, 0.03, 2.65, 0, true},
    {"by scatter, twelve rows", 3, false, 0.9, 12, 0, 0.04, 2.25, 0, true},
    {"three parts of a rig", 3, true, 0.93, 6, 0.03, 0, 2, 0, true},
    {"three parts of a rig without friction", 3, true, 1, 6, 0.03, 0, 2, 0, true},
};

/* Three parts, the rope made fast at the moving block: two sheaves. The blocks weigh nothing. */
static const char rig_text[] =
    "[anchor post]\nat = 0.8 m\n[block top]\non = post\nefficiency = 95 %\n[block low]\nat = 0.3 m\n"
    "efficiency = 95 %\n[load mass]\non = low\nmass = 1 kg\n[hand scale]\nat = 0.7 m\n"
    "[rope cord]\npath = low, top, low, scale\n";

static gtl_rig *give_rig(void *context, const char *name, gtl_fault_list *faults)
{
    (void)context;
    gtl_faults_begin(faults, name);
    return gtl_read_text(rig_text, strlen(rig_text), faults);
}

/* The pull that raises a weight, from sheave to sheave: the part at the hand carries most, or, where the rope
 * comes off the fixed block, the one after its first sheave [N]. */
static double true_effort(const bench *b, double weight)
{
    double carried = 0;
    double part = b->rig ? 1 : b->e;
    for (int i = 0; i < b->parts; i++, part *= b->e) carried += part;
    return weight / carried;
}

static int write_table(const bench *b, chance *c, char *text, size_t size)
{
    int used = snprintf(text, size, "%s,load [N],effort [N],load distance [m],effort distance [m]%s%s\n",
                        b->rig ? "rig" : "parts", b->reading > 0 ? ",reading [N],distance reading [m]" : "",
                        b->weigh > 0 ? ",moving weight [N]" : "");
    for (int i = 0; i < b->rows; i++) {
        double load = b->about_loads ? 3 + 1.5 * i : 8;
        double effort = true_effort(b, load + b->weigh);
        double a = b->reading;
        effort =
            a > 0 ? effort + chance_between(c, -a, a) : effort * (1 + chance_between(c, -b->share, b->share));
        load += a > 0 ? chance_between(c, -a, a) : 0;
        used += snprintf(text + used, size - (size_t)used, b->rig ? "bench.ini" : "%d", b->parts);
        used += snprintf(text + used, size - (size_t)used, ",%.12g,%.12g,0.2,%.12g", load, effort,
                         0.2 * b->parts);
        if (a > 0) used += snprintf(text + used, size - (size_t)used, ",%.12g,0.001", a);
        if (b->weigh > 0) used += snprintf(text + used, size - (size_t)used, ",%.12g", b->weigh);
        used += snprintf(text + used, size - (size_t)used, "\n");
    }
    return used;
}

/* What the trials of one bench and one seed came to. */
typedef struct tally {
    int held;    /* U holds the known value */
    int missing; /* no fit, or no uncertainty */
    int alarms;  /* a weight said to be forgotten, where none is */
    double sum;  /* of how far it was off, in u */
} tally;

static void try_once(const bench *b, chance *c, tally *t)
{
    char text[2000];
    gtl_lab lab;
    gtl_fault_list faults;
    const gtl_lab_source source = {give_rig, NULL};
    int size = write_table(b, c, text, sizeof text);
    gtl_faults_begin(&faults, "bench.csv");
    bool sound = gtl_lab_read(text, (size_t)size, &source, &lab, &faults) == GTL_OK && lab.set_up_count == 1;
    double off = sound ? (lab.set_ups[0].sheave_efficiency - b->e) / lab.set_ups[0].sheave_efficiency_u : NAN;
    if (isnan(off)) {
        t->missing++;
    } else {
        t->held += fabs(off) <= b->factor;
        t->sum += off;
    }
    for (int i = 0; i < lab.finding_count; i++) t->alarms += lab.findings[i].code == GTL_LAB_WEIGHT_FORGOTTEN;
    gtl_lab_end(&lab);
    gtl_faults_end(&faults);
}

/* 93 to 98 in 100 at 1,000 trials, wider in proportion where fewer are tried. */
static bool is_covered(const tally *t, int trials)
{
    double share = (double)t->held / trials;
    double wider = trials < 1000 ? 3 * sqrt(0.0455 * 0.9545 / trials) : 0;
    return t->missing == 0 && share >= 0.93 - wider && share <= 0.98 + wider;
}

/* A weight is said to be forgotten beyond three standard uncertainties, on one side: 1.3 times in 1,000; 10
 * in 1,000 are beyond chance. */
static bool is_quiet(const tally *t, int trials)
{
    return t->alarms <= (trials < 300 ? 3 : trials / 100);
}

int main(int argc, char **argv)
{
    int trials = argc > 1 ? (int)strtol(argv[1], NULL, 10) : trial_default(1000);
    long first = argc > 2 ? strtol(argv[2], NULL, 10) : 1;
    int passed = 0;
    int failed = 0;
    for (size_t i = 0; i < sizeof benches / sizeof *benches; i++) {
        for (long seed = first; seed < first + SEEDS; seed++) {
            tally t = {0};
            chance c = chance_begin((uint64_t)seed + 1000 * i);
            for (int k = 0; k < trials; k++) try_once(&benches[i], &c, &t);
            bool good = is_covered(&t, trials) && is_quiet(&t, trials);
            printf("%s%s, seed %ld: %d of %d within U, on the mean %+.2f u off, %d without, %d alarms\n",
                   good ? "" : "not ok ", benches[i].name, seed, t.held, trials, t.sum / trials, t.missing,
                   t.alarms);
            passed += good;
            failed += !good;
        }
    }
    printf("lab-coverage: %d passed, %d failed\n", passed, failed);
    return failed > 0;
}
