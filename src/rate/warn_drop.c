/* warn_drop.c - what a load that is caught after a fall warns of. */
#include "rate/rating.h"
#include <math.h>

/* A line that takes less than this of the load takes none of it [1]. */
#define NO_SHARE 1e-6

bool gtl_is_beyond_stretch(const gtl_line *line, const gtl_drop_line *caught)
{
    return line->stretch > 0 && caught->share >= NO_SHARE &&
           caught->tension > line->stretch_force * (1 + GTL_UTILISATION_SLACK);
}

static bool warn_of_line(gtl_sheet *sheet, int at, int index)
{
    const gtl_drop_line *line = &sheet->outcomes[at].caught->lines[index];
    const gtl_line *of = &sheet->rig->lines[index];
    bool kept = true;
    if (of->kind == GTL_SPAR || line->share < NO_SHARE) return true;
    /* A straight line through the one point stated is no more than a guess beyond it. */
    if (gtl_is_beyond_stretch(of, line))
        kept &= gtl_warn(sheet, (gtl_warning){GTL_WARN_BEYOND_STRETCH, of->name, at, line->tension,
                                              of->stretch_force, NULL});
    if (!(of->stretch > 0) && line->elastic > 0)
        kept &=
            gtl_warn(sheet, (gtl_warning){GTL_WARN_STRETCH_NOT_STATED, of->name, at, line->share, NAN, NULL});
    return kept;
}

bool gtl_warn_of_drop(gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    bool kept = true;
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_drop *caught = sheet->outcomes[i].caught;
        if (!caught || !sheet->outcomes[i].possible) continue;
        for (int k = 0; k < rig->line_count; k++) kept &= warn_of_line(sheet, i, k);
        int jerked = caught->along >= 0 ? caught->along : caught->load;
        if (caught->along >= 0 || caught->shifts)
            kept &= gtl_warn(
                sheet, (gtl_warning){GTL_WARN_CATCH_JERKS, rig->things[jerked].name, i, NAN, NAN, NULL});
        if (caught->let_out >= 0)
            kept &= gtl_warn(sheet, (gtl_warning){GTL_WARN_CATCHING_HAND, rig->things[caught->let_out].name,
                                                  i, NAN, NAN, NULL});
    }
    return kept;
}
