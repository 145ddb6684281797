/* other.c - the rig with the other hand of its pair. */
#include "rig/other.h"

#include <math.h>

bool gtl_rig_is_paired(const gtl_rig *rig)
{
    return rig->hand >= 0 && rig->things[rig->hand].other >= 0;
}

gtl_rig *gtl_rig_other(const gtl_rig *rig)
{
    gtl_rig *copy = gtl_rig_copy(rig);
    if (!copy) return NULL;
    int first = rig->hand;
    int second = rig->things[first].other;
    copy->things[first].pull = 0;
    copy->things[first].let_go = true;
    copy->things[second].pull = NAN;
    copy->things[second].let_go = false;
    copy->hand = second;
    for (int p = 0; p < copy->piece_count; p++) {
        gtl_piece *piece = &copy->pieces[p];
        if (piece->hand == first) piece->rule = GTL_PULLED;
        if (piece->hand != second) continue;
        piece->rule = GTL_DRIVEN;
        copy->driven = p;
    }
    return copy;
}
