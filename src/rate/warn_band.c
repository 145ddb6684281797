/* warn_band.c - what stays open where figures are stated as ranges. */
#include "rate/rating.h"
#include <math.h>

/* Why a force may lie beyond those of the rigs that were worked. */
static const char *const moves = "this body hangs elsewhere in one than in another";
static const char *const turns = "which way rope runs over this stop is undecided in one";
static const char *const places = "the rig can hang in several places";
static const char *const held = "friction holds it in one, and lets it come down in another";
static const char *const many = "there are too many to work every combination";

static bool warn(gtl_sheet *sheet, int outcome, const char *about, const char *why)
{
    return gtl_warn(sheet, (gtl_warning){GTL_WARN_BAND_NOT_PROVEN, about, outcome, NAN, NAN, why});
}

static bool warn_of_case(gtl_sheet *sheet, int index)
{
    const gtl_outcome *outcome = &sheet->outcomes[index];
    const gtl_band *band = &outcome->band;
    const gtl_thing *things = sheet->rig->things;
    bool kept = true;
    if (!outcome->possible) return true;
    if (band->shifts >= 0) kept &= warn(sheet, index, things[band->shifts].name, moves);
    if (band->undecided >= 0) kept &= warn(sheet, index, things[band->undecided].name, turns);
    if (band->pull && outcome->places > 1) kept &= warn(sheet, index, "", places);
    /* A load that is held back comes down in some of the rigs only. */
    if (!band->sometimes || sheet->rig->load < 0) return kept;
    const char *load = things[sheet->rig->load].name;
    kept &= gtl_warn(sheet, (gtl_warning){GTL_WARN_MAY_NOT_LOWER, load, index, NAN, NAN, NULL});
    return kept && warn(sheet, index, load, held);
}

bool gtl_warn_of_bands(gtl_sheet *sheet)
{
    bool kept = true;
    for (int i = 0; i < sheet->outcome_count; i++) kept &= warn_of_case(sheet, i);
    if (sheet->frees_all && !sheet->every_corner) kept &= warn(sheet, -1, "", many);
    return kept;
}
