/* ranged.c - see ranged.h. */
#include "unit/ranged.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

ranged find_range(const char *text)
{
    ranged found = {.rig = read_sound("%s", text)};
    gtl_status status = gtl_find_limit(found.rig, &found.limit);
    if (status != GTL_OK) fail_msg("status %d: %s", status, found.limit.reason);
    return found;
}

void ranged_end(ranged *found)
{
    gtl_limit_end(&found->limit);
    gtl_rig_free(found->rig);
}

void assert_part(const ranged *found, int component, const char *name)
{
    assert_true(component >= 0);
    assert_string_equal(found->limit.at_limit.components[component].name, name);
}

/* An edge by a rating: a hair within the closed form, never beyond. */
void assert_at_rating(const ranged *found, const gtl_edge *edge, double weight, const char *part,
                      const char *which)
{
    assert_int_equal(edge->kind, GTL_EDGE_RATING);
    if (!(fabs(edge->mass * G / weight - 1) <= 1e-9))
        fail_msg("%.15g N is not %.15g N", edge->mass * G, weight);
    assert_part(found, edge->component, part);
    assert_string_equal(found->rig->cases[edge->outcome].name, which);
    assert_false(edge->jumps);
}
