/* random.c - which figures a student has. Nothing of the C library's, so that a seed means the same
 * everywhere.
 *
 * A seed shuffles a problem's sets of figures, and the students get them in turn; no shuffled list is kept: a
 * number goes through a Feistel network (Feistel, "Cryptography and computer privacy", Scientific American,
 * May 1973), which leads no two numbers to one, and through it again as long as it comes out past the last
 * set. Its rounds are mixed by the finalizer of SplitMix64 (Steele, Lea and Flood, "Fast splittable
 * pseudorandom number generators", OOPSLA 2014), whose constants they are. Nobody is to be kept from guessing
 * anything. */
#include "worksheet/set.h"

#define ROUNDS 6
#define GOLDEN UINT64_C(0x9E3779B97F4A7C15)

static uint64_t mix(uint64_t z)
{
    z += GOLDEN;
    z = (z ^ (z >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94D049BB133111EB);
    return z ^ (z >> 31);
}

/* Where a number of twice `half` bits is led. */
static uint64_t lead(uint64_t number, unsigned half, uint64_t key)
{
    uint64_t mask = (UINT64_C(1) << half) - 1;
    uint64_t left = number >> half, right = number & mask;
    for (uint64_t round = 0; round < ROUNDS; round++) {
        uint64_t next = left ^ (mix(key + round * GOLDEN + mix(right)) & mask);
        left = right;
        right = next;
    }
    return left << half | right;
}

uint64_t gtl_draw_number(uint64_t seed, int problem, int student, uint64_t sets)
{
    unsigned half = 1;
    if (sets < 2) return 0;
    while (UINT64_C(1) << 2 * half < sets) half++;
    uint64_t key = mix(mix(seed) + (uint64_t)problem);
    uint64_t number = (uint64_t)(student - 1) % sets;
    do number = lead(number, half, key);
    while (number >= sets);
    return number;
}
