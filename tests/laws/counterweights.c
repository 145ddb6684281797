/* counterweights.c - laws of two hands of which one is let go, on random counterweight sets, single and
 * double purchase, in one to three dimensions: each case is that of the rig whose hand alone pulls; the hand
 * that is let go would have to push; nothing depends on which hand comes first, or on left and right; what
 * the building and the tracks hold is the weights; the counterweights that are said to be missing balance.
 *
 * argv: [RIGS [FIRST SEED]]. */
#include "laws/chance.h"
#include "laws/trial.h"

#include <gantline/rate.h>
#include <gantline/read.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define NEAR 1e-9 /* over the weight that moves */

typedef enum who { PAIR, DOWN, UP } who;

/* One set, as it is drawn. */
typedef struct set {
    int dim;
    bool twice;    /* double purchase */
    bool up_first; /* order of the hands in the file */
    bool up_says;  /* which of them says `or` */
    double way;    /* 1, or -1 where it is mirrored */
    double batten; /* masses [kg] */
    double arbor;
    double each;
    double e;       /* of the sheaves [1] */
    double span;    /* from the loft block to the head block [m] */
    double lean[4]; /* how far blocks and hands are off the arbor's plumb line [m] */
} set;

typedef struct writer {
    char text[4000];
    size_t used;
    const set *s;
} writer;

static void say(writer *w, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    int length = vsnprintf(w->text + w->used, sizeof w->text - w->used, format, arguments);
    va_end(arguments);
    w->used += (size_t)length;
}

static void place(writer *w, const char *kind, const char *name, double across, double height)
{
    say(w, "[%s %s]\nat = ", kind, name);
    if (w->s->dim > 1) say(w, "%.9g m, ", w->s->way * across);
    if (w->s->dim > 2) say(w, "%.9g m, ", 0.3 * across);
    say(w, "%.9g m\n", height);
}

static void block(writer *w, const char *name, double across, double height)
{
    char anchor[40];
    snprintf(anchor, sizeof anchor, "%s-beam", name);
    place(w, "anchor", anchor, across, height);
    say(w, "[block %s]\non = %s\n", name, anchor);
}

static void hand(writer *w, const char *name, const char *other, double across, bool says, bool pulls)
{
    place(w, "hand", name, across, name[0] == 'u' ? 1.2 : 1.6);
    say(w, "limit = 400 N\n");
    if (says) say(w, "or = %s\n", other);
    if (!pulls) say(w, "pull = 0 N\n");
}

static void hands(writer *w, who pulls)
{
    const set *s = w->s;
    for (int i = 0; i < 2; i++) {
        bool up = s->up_first == (i == 0);
        bool says = pulls == PAIR && up == s->up_says;
        hand(w, up ? "up" : "down", up ? "down" : "up", s->span + s->lean[up ? 2 : 3], says,
             pulls == PAIR || up == (pulls == UP));
    }
}

static void write_set(writer *w, const set *s, who pulls)
{
    *w = (writer){.s = s};
    say(w, "[rig]\nefficiency = %.9g\ncases = all\nacceleration = 0.2 m/s2\n", s->e);
    block(w, "loft", 0, 10);
    block(w, "head", s->span, 10.2);
    block(w, "front-head", s->span + s->lean[0], 10.4);
    block(w, "tension", s->span + s->lean[1], 0.3);
    place(w, "load", "batten", 0, 3);
    say(w, "mass = %.17g kg\n", s->batten);
    place(w, "arbor", "frame", s->span, 6);
    say(w, "mass = %.17g kg\neach = %.9g kg\n", s->arbor, s->each);
    hands(w, pulls);
    if (s->twice) {
        say(w, "[block top]\non = frame\nmass = 3 kg\n[block foot]\non = frame\nmass = 2 kg\n");
        place(w, "anchor", "lift-end", s->span, 9.8);
        place(w, "anchor", "front-end", s->span, 9.6);
        place(w, "anchor", "back-end", s->span, 0.5);
        say(w, "[rope lift]\npath = batten, loft, head, top, lift-end\n"
               "[rope front]\npath = front-end, top, front-head, down\n"
               "[rope back]\npath = back-end, foot, tension, up\n");
    } else {
        say(w, "[rope lift]\npath = batten, loft, head, frame\n[rope front]\npath = frame, front-head, down\n"
               "[rope back]\npath = frame, tension, up\n");
    }
}

static gtl_rig *read_set(const set *s, who pulls)
{
    writer w;
    gtl_fault_list faults;
    write_set(&w, s, pulls);
    gtl_faults_begin(&faults, "set.ini");
    gtl_rig *rig = gtl_read_text(w.text, w.used, &faults);
    if (!rig) printf("not read: %s\n%s\n", faults.items[0].text, w.text);
    gtl_faults_end(&faults);
    return rig;
}

static set random_set(chance *c)
{
    set s = {.dim = 1 + chance_below(c, 3),
             .twice = chance_of(c, 0.5),
             .up_first = chance_of(c, 0.5),
             .up_says = chance_of(c, 0.5),
             .way = 1,
             .batten = chance_between(c, 20, 400),
             .each = chance_between(c, 2, 20),
             .e = chance_of(c, 0.1) ? 1 : chance_between(c, 0.88, 0.99),
             .span = chance_between(c, 3, 9)};
    double balanced = s.twice ? 2 * s.batten - 5 : s.batten;
    s.arbor = balanced * chance_between(c, 0.75, 1.25);
    for (int i = 0; i < 4; i++) s.lean[i] = s.dim > 1 ? chance_between(c, -0.4, 0.6) : 0;
    return s;
}

/* --- the laws --- */

typedef struct tally {
    long seed;
    int passed, failed;
    int by_up, by_down, turned; /* cases by who pulls; rigs in which not all are of one hand */
    int refused;                /* cases that the hand alone has no answer in */
} tally;

static void hold_to(tally *t, bool holds, const char *what, const set *s)
{
    t->passed += holds;
    t->failed += !holds;
    if (holds) return;
    writer w;
    write_set(&w, s, PAIR);
    printf("not ok seed %ld: %s\n%s\n", t->seed, what, w.text);
}

static const char *puller(const gtl_outcome *outcome)
{
    return outcome->rig->things[outcome->rig->hand].name;
}

static bool same_tensions(const gtl_outcome *outcome, const gtl_state *state, double bar)
{
    bool same = fabs(outcome->state->effort - state->effort) <= bar;
    for (int p = 0; p < outcome->rig->part_count; p++)
        same = same && fabs(outcome->state->tension[p] - state->tension[p]) <= bar;
    return same;
}

/* The case by the one hand, by the other, and by the pair of them. */
static void compare(tally *t, const set *s, const gtl_outcome *outcome, gtl_rig *const single[3])
{
    gtl_state *state[3] = {NULL, gtl_state_new(single[DOWN]), gtl_state_new(single[UP])};
    bool can[3] = {false};
    double bar = NEAR * gtl_rig_force(outcome->rig) + 1e-7;
    for (int i = DOWN; i <= UP; i++)
        can[i] = gtl_solve(single[i], &(gtl_case){.kind = outcome->kind}, state[i]) == GTL_OK &&
                 state[i]->possible;
    /* With heights alone a hand whose side is not the heavier is refused: at rest it would hold nothing. */
    bool refused =
        s->dim == 1 && (state[DOWN]->status == GTL_NO_ANSWER || state[UP]->status == GTL_NO_ANSWER);
    hold_to(t, refused || outcome->possible == (can[DOWN] || can[UP]), "it can be where one of the hands can",
            s);
    if (outcome->possible) {
        int by = strcmp(puller(outcome), "up") == 0 ? UP : DOWN;
        *(by == UP ? &t->by_up : &t->by_down) += 1;
        refused = s->dim == 1 && state[by]->status == GTL_NO_ANSWER;
        t->refused += refused;
        hold_to(t, refused || can[by], "the hand that pulls can by itself", s);
        hold_to(t, refused || (can[by] && same_tensions(outcome, state[by], bar)), "as with that hand alone",
                s);
        int other = DOWN + UP - by;
        hold_to(t, !can[other] || state[other]->effort <= bar, "the other would have to push", s);
    }
    for (int i = DOWN; i <= UP; i++) gtl_state_free(state[i]);
}

/* What fixed points and tracks hold is all that weighs. */
static void weigh(tally *t, const set *s, const gtl_outcome *outcome)
{
    const gtl_rig *rig = outcome->rig;
    int up = rig->dim - 1;
    double sum[3] = {0};
    double weight = 0;
    for (int n = 0; n < rig->node_count; n++) {
        const gtl_node *node = &rig->nodes[n];
        weight += node->weight;
        for (int k = 0; k < rig->dim; k++)
            sum[k] += node->fixed ? outcome->forces.passed[node->root][k] : outcome->forces.track[n][k];
    }
    sum[up] += weight;
    for (int k = 0; k < rig->dim; k++)
        hold_to(t, fabs(sum[k]) <= 1e-7 * weight, "the building holds all that weighs", s);
}

static bool is_alike(const gtl_sheet *one, const gtl_sheet *other, double bar)
{
    bool alike = one->outcome_count == other->outcome_count;
    for (int i = 0; alike && i < one->outcome_count; i++) {
        const gtl_outcome *a = &one->outcomes[i], *b = &other->outcomes[i];
        alike = a->possible == b->possible;
        if (!alike || !a->possible) continue;
        bool idle = a->state->effort <= bar; /* in balance it is either's */
        alike = fabs(a->state->effort - b->state->effort) <= bar && (idle || !strcmp(puller(a), puller(b)));
    }
    for (int i = 0; alike && i < one->component_count; i++)
        for (int k = 0; alike && k < other->component_count; k++)
            if (strcmp(one->components[i].name, other->components[k].name) == 0)
                alike = fabs(one->components[i].demand - other->components[k].demand) <= bar;
    return alike;
}

/* The same set changed in some way that changes nothing. */
static void turn(tally *t, const set *s, const set *turned, const gtl_sheet *sheet, const char *what)
{
    gtl_rig *rig = read_set(turned, PAIR);
    gtl_sheet other = {0};
    bool rated = rig && gtl_rate(rig, &other) == GTL_OK;
    hold_to(t, rated && is_alike(sheet, &other, 1e-8 * gtl_rig_force(sheet->rig) + 1e-6), what, s);
    gtl_sheet_end(&other);
    gtl_rig_free(rig);
}

/* With so many counterweights more, what is said to be left is left. */
static void put_in(tally *t, const set *s, double mass, double on_line, const char *what)
{
    set filled = *s;
    filled.arbor += mass;
    if (filled.arbor <= 0) return;
    gtl_rig *rig = read_set(&filled, PAIR);
    gtl_sheet sheet = {0};
    bool rated = rig && gtl_rate(rig, &sheet) == GTL_OK;
    const gtl_outcome *hold = rated ? gtl_sheet_outcome(&sheet, GTL_HOLD) : NULL;
    hold_to(t, hold && hold->possible && fabs(hold->state->effort - on_line) <= 1e-6 * gtl_rig_force(rig),
            what, s);
    gtl_sheet_end(&sheet);
    gtl_rig_free(rig);
}

static void fill(tally *t, const set *s, const gtl_sheet *sheet)
{
    const gtl_balance *balance = &sheet->balances[0];
    double g = sheet->rig->gravity;
    hold_to(t, sheet->balance_count == 1 && balance->choice_count > 0, "the balance is told", s);
    put_in(t, s, balance->needed / g - s->arbor, 0, "what is needed balances");
    for (int i = 0; i < balance->choice_count; i++)
        put_in(t, s, balance->choice[i].count * s->each, balance->choice[i].on_line, "what is left is left");
}

static void try_set(tally *t, const set *s)
{
    gtl_rig *single[3] = {read_set(s, PAIR), read_set(s, DOWN), read_set(s, UP)};
    gtl_sheet sheet = {0};
    bool rated = single[0] && single[1] && single[2] && gtl_rate(single[0], &sheet) == GTL_OK;
    set mirrored = *s, swapped = *s;
    mirrored.way = -1;
    swapped.up_first = !s->up_first;
    swapped.up_says = !s->up_says;
    hold_to(t, rated, "it has an answer", s);
    int up = t->by_up, down = t->by_down;
    for (int i = 0; rated && i < sheet.outcome_count; i++) {
        if (sheet.outcomes[i].kind == GTL_JAM) continue; /* there each pulls in turn */
        compare(t, s, &sheet.outcomes[i], single);
        if (sheet.outcomes[i].possible && sheet.outcomes[i].kind <= GTL_LOWER)
            weigh(t, s, &sheet.outcomes[i]);
    }
    t->turned += t->by_up > up && t->by_down > down;
    if (rated) turn(t, s, &mirrored, &sheet, "left and right are alike");
    if (rated) turn(t, s, &swapped, &sheet, "the order of the hands changes nothing");
    if (rated) fill(t, s, &sheet);
    gtl_sheet_end(&sheet);
    for (int i = 0; i < 3; i++) gtl_rig_free(single[i]);
}

int main(int argc, char **argv)
{
    int rigs = argc > 1 ? (int)strtol(argv[1], NULL, 10) : trial_default(300);
    long first = argc > 2 ? strtol(argv[2], NULL, 10) : 1;
    tally t = {0};
    for (t.seed = first; t.seed < first + rigs; t.seed++) {
        chance c = chance_begin((uint64_t)t.seed);
        set s = random_set(&c);
        try_set(&t, &s);
    }
    printf("%d rigs: %d cases by the hand that raises, %d by the other; both pull in %d rigs, %d cases not "
           "compared\n",
           rigs, t.by_up, t.by_down, t.turned, t.refused);
    bool both = t.by_up > 0 && t.by_down > 0 && t.turned > 0;
    if (!both) printf("not ok one of the hands never pulled\n");
    printf("counterweights: %d passed, %d failed\n", t.passed + both, t.failed + !both);
    return t.failed > 0 || !both;
}
