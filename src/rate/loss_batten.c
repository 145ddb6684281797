/* loss_batten.c - a loss that takes one line of a batten and leaves it others: the batten does not fall, its
 * other lines take over. What comes on them in the jerk is not worked, and no figure may stand for it. */
#include "rate/rating.h"
#include <stdio.h>

static bool is_loose(const gtl_rig *rig, const gtl_remains *remains, const gtl_batten *batten, int index)
{
    return remains->loose[rig->picks[batten->first_pick + index].thing];
}

/* Whether some picks of a batten have let go, and others have not. */
static bool is_half_held(const gtl_rig *rig, const gtl_remains *remains, int batten)
{
    const gtl_batten *whole = &rig->battens[batten];
    int loose = 0;
    for (int i = 0; i < whole->pick_count; i++) loose += is_loose(rig, remains, whole, i);
    return loose > 0 && loose < whole->pick_count;
}

/* The first load that falls and is no pick of a batten which other lines hold; -1 for none. */
static int truly_falls(const gtl_rig *rig, const gtl_remains *remains)
{
    for (int i = 0; i < rig->thing_count; i++) {
        int batten = gtl_batten_of(rig, i);
        bool heavy = rig->things[i].kind == GTL_LOAD || rig->things[i].kind == GTL_ARBOR;
        if (heavy && remains->loose[i] && (batten < 0 || !is_half_held(rig, remains, batten))) return i;
    }
    return -1;
}

bool gtl_batten_is_half_held(const gtl_rig *rig, const char *lost, gtl_remains *remains,
                             char reason[GTL_REASON_SIZE])
{
    int batten = 0;
    while (batten < rig->batten_count && !is_half_held(rig, remains, batten)) batten++;
    if (batten == rig->batten_count) return false;
    remains->falls = truly_falls(rig, remains);
    if (remains->falls >= 0) return false;
    for (int i = 0; i < rig->battens[batten].pick_count; i++)
        remains->loose[rig->picks[rig->battens[batten].first_pick + i].thing] = false; /* it does not fall */
    snprintf(reason, GTL_REASON_SIZE,
             "batten `%s` loses a line as `%s` lets go, and its other lines take over: what comes on them is "
             "not worked out. Do not rely on them",
             rig->battens[batten].name, lost);
    return true;
}
