/* chance.h - random numbers that are the same on every machine for the same seed. */
#ifndef LAWS_CHANCE_H
#define LAWS_CHANCE_H

#include <stdbool.h>
#include <stdint.h>

typedef struct chance {
    uint64_t state;
} chance;

/* Seeds next to each other give sequences that have nothing to do with each other. */
chance chance_begin(uint64_t seed);
/* At least `low`, below `high`. */
double chance_between(chance *c, double low, double high);
/* 0 to count - 1. */
int chance_below(chance *c, int count);
/* True with that probability. */
bool chance_of(chance *c, double probability);

#endif
