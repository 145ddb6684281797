/* warn_timber.c - pieces of green wood that may well be heavier than they were worked with. */
#include "rate/rating.h"
#include <math.h>

static bool warn_of_piece(gtl_sheet *sheet, const gtl_wood *wood)
{
    const gtl_rig *rig = sheet->rig;
    const gtl_timber *timber = &wood->timber;
    const char *name = wood->kind == GTL_SPAR ? rig->lines[wood->index].name : rig->things[wood->index].name;
    double worked = timber->masses[timber->end], heavy = timber->masses[GTL_WOOD_HEAVY];
    bool kept = true;
    if (worked < heavy)
        kept &= gtl_tell(sheet, GTL_WARN_MEAN_DENSITY, name, worked * rig->gravity, heavy * rig->gravity);
    if (!timber->row && !(timber->typed[1] > timber->typed[0]))
        kept &= gtl_tell(sheet, GTL_WARN_ONE_DENSITY, name, NAN, NAN);
    if (gtl_is_waisted(timber)) kept &= gtl_tell(sheet, GTL_WARN_MIDDLE_DIAMETER, name, NAN, NAN);
    return kept;
}

bool gtl_warn_of_timber(gtl_sheet *sheet)
{
    bool kept = true;
    for (int i = 0; i < sheet->rig->wood_count; i++) kept &= warn_of_piece(sheet, &sheet->rig->woods[i]);
    return kept;
}
