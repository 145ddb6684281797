/* generator.h - random rigs, the same for the same seed: a support, what lifts from it, what is lifted, and
 * how the hauling end is led to the hand, put together at random in one, two or three dimensions. All data
 * are invented. */
#ifndef LAWS_GENERATOR_H
#define LAWS_GENERATOR_H

#include "laws/sketch.h"

/* What a rig was made to hold that cannot be told from its parts alone. */
typedef struct generated {
    sketch sketch;
    const char *support;
    const char *lift;
    const char *cargo;
    const char *lead;
    bool floating_redirect;
} generated;

void generate(uint64_t seed, generated *out);

#endif
