/* warn_lift.c - what a lift warns of: that the load does not go so far, and that forces grow on the way. */
#include "rate/rating.h"
#include <math.h>

/* Forces in a tackle whose parts are not quite parallel always change a little on the way [1]. */
#define GROWTH 0.01
/* Under this share of its rating nobody asks what a part bears [1]. */
#define LITTLE 0.1

static bool warn_of_short_way(gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    const gtl_rope_bill *bill = sheet->rope_bill;
    if (!(bill->way < rig->lift * (1 - GTL_RUN_SLACK))) return true;
    return gtl_tell(sheet, GTL_WARN_LIFT_CUT_SHORT, gtl_lifted_name(rig), bill->way, rig->lift);
}

/* From nothing any force is growth. */
static bool warn_of_growth(const gtl_bench *bench, gtl_sheet *sheet)
{
    bool kept = true;
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_strain *strain = &sheet->rope_bill->strains[i];
        bool little = strain->most < LITTLE * sheet->components[i].capacity;
        bool grows = strain->most > strain->drawn * (1 + GROWTH) + GTL_IDLE_SHARE * bench->force && !little;
        if (grows || gtl_is_over_on_the_way(sheet, i))
            kept &= gtl_tell(sheet, GTL_WARN_GROWS_ON_THE_WAY, sheet->components[i].name, strain->drawn,
                             strain->most);
    }
    return kept;
}

bool gtl_is_over_on_the_way(const gtl_sheet *sheet, int component)
{
    if (!sheet->rope_bill || !sheet->rope_bill->worked) return false;
    const gtl_component *part = &sheet->components[component];
    double use = sheet->rope_bill->strains[component].use;
    return use > 1 + GTL_UTILISATION_SLACK && (part->mark != GTL_MARK_OVER || use > part->utilisation);
}

bool gtl_warn_of_lift(const gtl_bench *bench, gtl_sheet *sheet)
{
    if (!sheet->rope_bill || !sheet->rope_bill->worked) return true;
    return warn_of_short_way(sheet) && warn_of_growth(bench, sheet);
}
