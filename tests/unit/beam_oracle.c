/* beam_oracle.c - beams from standard input, what the library shares out to standard output.
 *
 * A beam is a line of numbers: length, supports, loads, lifts (0 or 1); then the supports' places, the loads
 * (weight, from, to), and with lifts one a support. A line of answer: on props; whether it hangs, on lines;
 * likewise on springs. */
#include "rig/beam.h"

#include <stdio.h>

#define MOST_LOADS 32

static void print(bool hangs, const double *reaction, int count)
{
    printf(" %d", hangs ? 1 : 0);
    for (int i = 0; i < count; i++) printf(" %.17g", reaction[i]);
}

int main(void)
{
    double at[GTL_BEAM_MOST], lift[GTL_BEAM_MOST] = {0}, reaction[GTL_BEAM_MOST];
    gtl_beam_load loads[MOST_LOADS];
    gtl_beam beam = {.at = at, .loads = loads};
    int lifted = 0;
    while (scanf("%lf %d %d %d", &beam.length, &beam.support_count, &beam.load_count, &lifted) == 4) {
        if (beam.support_count > GTL_BEAM_MOST || beam.load_count > MOST_LOADS) return 2;
        for (int i = 0; i < beam.support_count; i++)
            if (scanf("%lf", &at[i]) != 1) return 2;
        for (int i = 0; i < beam.load_count; i++)
            if (scanf("%lf %lf %lf", &loads[i].weight, &loads[i].from, &loads[i].to) != 3) return 2;
        for (int i = 0; i < beam.support_count && lifted; i++)
            if (scanf("%lf", &lift[i]) != 1) return 2;
        gtl_beam_on_props(&beam, lifted ? lift : NULL, reaction);
        print(true, reaction, beam.support_count);
        print(gtl_beam_on_lines(&beam, lifted ? lift : NULL, reaction), reaction, beam.support_count);
        print(gtl_beam_on_springs(&beam, reaction), reaction, beam.support_count);
        printf("\n");
    }
    return 0;
}
