/* close_in.c - from a permitted load to the last one: steps until one is not permitted, then closer and
 * closer between the two, the permitted one always kept. */
#include "study/search.h"
#include <math.h>

/* The use that is aimed at, and the least that is close enough [1]. A little under 1: put back as a mass, the
 * limit has to stay on the permitted side. */
#define AIM   (1 - 1e-10)
#define CLOSE (1 - 2e-10)
/* Where the use jumps, or a case becomes impossible, the last permitted load is known this well [1]. */
#define NARROW 1e-13
/* False position that is slow is helped by a halving each so many tries. */
#define TURN 3

/* A permitted load and one beyond that is not. The excesses of their use over the aim are those that false
 * position goes by: that of an end which stays is halved (Illinois; Dowell and Jarratt 1971, from memory). */
typedef struct bracket {
    gtl_tried good, bad;
    double good_excess, bad_excess; /* [1] */
    int stayed;                     /* -1: the good end did last, +1: the bad one, 0: neither yet */
} bracket;

/* In steps to one side until a load is not permitted; false where none is. */
static bool walk(gtl_search *search, bool up, bracket *b)
{
    double end = up ? search->high : search->low;
    while (b->good.mass != end && !search->failed) {
        double next = b->good.mass * (up ? search->step : 1 / search->step);
        next = up ? fmin(next, end) : fmax(next, end);
        gtl_try_load(search, next, &b->bad);
        if (!b->bad.permitted) return !search->failed;
        b->good = b->bad;
    }
    return false;
}

static bool is_closed(const bracket *b)
{
    return b->good.use >= CLOSE || fabs(b->bad.mass - b->good.mass) <= NARROW * b->good.mass;
}

static bool by_rating(const gtl_tried *tried)
{
    return tried->edge.kind == GTL_EDGE_RATING || tried->edge.kind == GTL_EDGE_FITTING;
}

static double next_mass(const bracket *b, int round)
{
    double good = b->good.mass, bad = b->bad.mass;
    double middle = good + (bad - good) / 2;
    if (round % TURN == TURN - 1 || !by_rating(&b->bad) || !isfinite(b->bad_excess - b->good_excess))
        return middle;
    double next = good + (bad - good) * (b->good_excess / (b->good_excess - b->bad_excess));
    return (next - good) * (bad - next) > 0 ? next : middle; /* strictly between the two */
}

static void take(bracket *b, const gtl_tried *tried)
{
    if (tried->permitted) {
        b->good = *tried;
        b->good_excess = tried->use - AIM;
        if (b->stayed > 0) b->bad_excess /= 2;
        b->stayed = 1;
    } else {
        b->bad = *tried;
        b->bad_excess = tried->use - AIM;
        if (b->stayed < 0) b->good_excess /= 2;
        b->stayed = -1;
    }
}

static void close_in(gtl_search *search, bracket *b)
{
    b->good_excess = b->good.use - AIM;
    b->bad_excess = b->bad.use - AIM;
    b->stayed = 0;
    for (int round = 0; !is_closed(b); round++) {
        gtl_tried tried;
        gtl_try_load(search, next_mass(b, round), &tried);
        if (search->failed) return;
        take(b, &tried);
    }
}

void gtl_find_edge(gtl_search *search, const gtl_tried *permitted, bool up, gtl_edge *edge)
{
    bracket b = {.good = *permitted};
    *edge = (gtl_edge){.mass = NAN, .component = -1, .outcome = -1};
    if (!walk(search, up, &b)) return;
    close_in(search, &b);
    bool reached = b.good.use >= CLOSE;
    *edge = reached ? b.good.edge : b.bad.edge;
    edge->mass = b.good.mass;
    edge->jumps = !reached && by_rating(&b.bad);
}
