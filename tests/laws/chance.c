/* chance.c - the SplitMix64 generator (Steele, Lea and Flood 2014; constants from memory). */
#include "laws/chance.h"

static uint64_t next(chance *c)
{
    c->state += 0x9E3779B97F4A7C15u;
    uint64_t z = c->state;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9u;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBu;
    return z ^ (z >> 31);
}

chance chance_begin(uint64_t seed)
{
    chance mixed = {seed};
    return (chance){next(&mixed)};
}

double chance_between(chance *c, double low, double high)
{
    const double steps = 9007199254740992.0; /* 2^53 */
    return low + (high - low) * ((double)(next(c) >> 11) / steps);
}

int chance_below(chance *c, int count)
{
    return (int)(next(c) % (uint64_t)count);
}

bool chance_of(chance *c, double probability)
{
    return chance_between(c, 0, 1) < probability;
}
