/* lifted.c - what is lifted: a load, or a batten by all its picks. */
#include "rig/building.h"

#include <math.h>

int gtl_heaviest_pick(const gtl_rig *rig, int batten)
{
    const gtl_batten *whole = &rig->battens[batten];
    const gtl_pick *heaviest = NULL;
    for (int i = 0; i < whole->pick_count; i++) {
        const gtl_pick *pick = &rig->picks[whole->first_pick + i];
        if (!heaviest || pick->stiff > heaviest->stiff) heaviest = pick;
    }
    return heaviest ? heaviest->thing : -1;
}

int gtl_batten_of(const gtl_rig *rig, int thing)
{
    for (int i = 0; i < rig->batten_count; i++)
        for (int k = 0; k < rig->battens[i].pick_count; k++)
            if (rig->picks[rig->battens[i].first_pick + k].thing == thing) return i;
    return -1;
}

bool gtl_is_lifted(const gtl_rig *rig, int thing)
{
    int batten = gtl_batten_of(rig, thing);
    return rig->load >= 0 && (thing == rig->load || (batten >= 0 && batten == gtl_batten_of(rig, rig->load)));
}

double gtl_lifted_weight(const gtl_rig *rig)
{
    int batten = rig->load < 0 ? -1 : gtl_batten_of(rig, rig->load);
    if (batten < 0) return rig->load < 0 ? NAN : rig->things[rig->load].weight;
    double sum = 0;
    for (int i = 0; i < rig->battens[batten].pick_count; i++)
        sum += rig->things[rig->picks[rig->battens[batten].first_pick + i].thing].weight;
    return sum;
}

const char *gtl_lifted_name(const gtl_rig *rig)
{
    int batten = rig->load < 0 ? -1 : gtl_batten_of(rig, rig->load);
    if (batten >= 0) return rig->battens[batten].name;
    return rig->load < 0 ? "" : rig->things[rig->load].name;
}
