/* lost.c - see lost.h. */
#include "unit/lost.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

const gtl_outcome *outcome_of(const rated *rig, const char *name)
{
    for (int i = 0; i < rig->sheet.outcome_count; i++)
        if (strcmp(rig->sheet.outcomes[i].name, name) == 0) return &rig->sheet.outcomes[i];
    fail_msg("no case %s", name);
    return NULL;
}

const gtl_outcome *possible_outcome(const rated *rig, const char *name)
{
    const gtl_outcome *outcome = outcome_of(rig, name);
    if (!outcome->possible) fail_msg("%s: %s", name, outcome->reason);
    return outcome;
}

double demand_in(const rated *rig, const char *outcome, const char *name)
{
    return possible_outcome(rig, outcome)->demand[component_of(rig, name) - rig->sheet.components];
}

double tension_in(const rated *rig, const char *outcome, int line, int part)
{
    return gtl_outcome_tension(possible_outcome(rig, outcome), rig->rig->lines[line].first_part + part);
}

double place_in(const rated *rig, const char *outcome, const char *name, int axis)
{
    const gtl_outcome *found = possible_outcome(rig, outcome);
    return found->state->at[3 * found->rig->things[thing_of(rig->rig, name)].node + axis];
}

bool is_loose(const rated *rig, const char *outcome, const char *name)
{
    return outcome_of(rig, outcome)->loose[thing_of(rig->rig, name)];
}

void assert_place(double value, double wanted)
{
    if (!(fabs(value - wanted) <= 1e-9)) fail_msg("%.15g m is not %.15g m", value, wanted);
}
