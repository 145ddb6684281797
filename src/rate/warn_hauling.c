/* warn_hauling.c - what hauling itself warns of: gear that cannot take what the hand can give, and tackles
 * that do not do what they are often taken to do. */
#include "rate/rating.h"
#include <math.h>

/* A velocity ratio this near to 1 is 1: what is left is the solver's rounding. */
#define SAME_RATIO 1e-6
/* A tackle turned round hauls in 1/2, 2/3 or 3/4 of the lift. A line that merely leads at an angle comes
 * within a few per cent of 1, and nobody takes it for a tackle. */
#define TURNED_ROUND 0.9
/* What one person is planned to pull on a rope for longer, at the most [N]: common practice, without a
 * source. */
#define PLANNED_PULL 250.0
/* An effort at rest under this share of the load is none. */
#define BALANCED 1e-6

/* A hand that can pull more than its line is rated for breaks it when the load catches. */
static bool warn_of_strong_hands(const gtl_bench *bench, gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    bool kept = true;
    for (int p = 0; p < rig->piece_count; p++) {
        const gtl_piece *piece = &rig->pieces[p];
        if (piece->hand < 0) continue;
        const gtl_thing *hand = &rig->things[piece->hand];
        const gtl_component *line = &sheet->components[bench->line_component[piece->line]];
        if (!(hand->limit > line->capacity * (1 + GTL_UTILISATION_SLACK))) continue;
        gtl_warning warning = {
            GTL_WARN_HAND_BEYOND_GEAR, hand->name, -1, hand->limit, line->capacity, line->name};
        kept &= gtl_warn(sheet, warning);
    }
    return kept;
}

/* Whether the hauled line only turns on its way: over two blocks or more, none of which moves. Rings, posts
 * and bollards are there to hold; nobody counts parts of line at them. */
static bool only_turns(const gtl_rig *rig)
{
    const gtl_piece *piece = &rig->pieces[rig->driven];
    for (int r = piece->first_run; r < piece->first_run + piece->run_count; r++) {
        const gtl_thing *thing = &rig->things[rig->runs[r].thing];
        if (thing->kind != GTL_BLOCK || !rig->nodes[thing->node].fixed) return false;
    }
    return piece->run_count >= 2;
}

static bool warn_of_ratio(gtl_sheet *sheet, const gtl_outcome *hold)
{
    const gtl_rig *rig = hold->rig; /* with the hand that pulls, where there are two */
    bool kept = true;
    double ratio = hold->velocity_ratio;
    int outcome = (int)(hold - sheet->outcomes);
    if (only_turns(rig) && fabs(ratio - 1) <= SAME_RATIO)
        kept &= gtl_tell(sheet, GTL_WARN_DIRECTION_ONLY, rig->lines[rig->pieces[rig->driven].line].name, NAN,
                         NAN);
    if (ratio > 0 && ratio < TURNED_ROUND)
        kept &= gtl_tell(sheet, GTL_WARN_GAINS_NO_FORCE, rig->things[rig->hand].name, ratio, NAN);
    if ((ratio > 0 || rig->things[rig->hand].other >= 0) &&
        hold->state->effort < BALANCED * gtl_lifted_weight(rig))
        kept &= gtl_warn(sheet, (gtl_warning){GTL_WARN_BALANCED, gtl_lifted_name(rig), outcome,
                                              hold->state->effort, NAN, NULL});
    return kept;
}

/* Somebody who hauls on what carries him: a painter's chair. */
static bool warn_of_own_hauling(gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    bool kept = true;
    for (int i = 0; i < rig->thing_count; i++) {
        const gtl_thing *hand = &rig->things[i];
        if (hand->kind == GTL_HAND && hand->on >= 0 && !rig->nodes[hand->node].fixed)
            kept &= gtl_tell(sheet, GTL_WARN_HAULS_ITSELF, rig->things[hand->on].name, NAN, NAN);
    }
    return kept;
}

/* People on a rope pull their limit once, not for a whole lift. */
static bool warn_of_hard_pulls(gtl_sheet *sheet)
{
    bool kept = true;
    for (int i = 0; i < sheet->rig->thing_count; i++) {
        const gtl_thing *hand = &sheet->rig->things[i];
        double each = hand->people > 0 ? hand->limit / hand->people : NAN;
        if (each > PLANNED_PULL * (1 + GTL_UTILISATION_SLACK))
            kept &= gtl_tell(sheet, GTL_WARN_HARD_PULL, hand->name, each, NAN);
    }
    return kept;
}

bool gtl_warn_of_hauling(const gtl_bench *bench, gtl_sheet *sheet)
{
    const gtl_outcome *hold = gtl_sheet_outcome(sheet, GTL_HOLD);
    bool solved = sheet->rig->hand >= 0 && hold && hold->possible;
    return warn_of_own_hauling(sheet) && warn_of_strong_hands(bench, sheet) && warn_of_hard_pulls(sheet) &&
           (!solved || warn_of_ratio(sheet, hold));
}
