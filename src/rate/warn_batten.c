/* warn_batten.c - battens: what their lines share, and whether they stay the level bar that the sharing was
 * worked for. Each pick moves by itself in the solver; where the picks part, no figure of theirs holds. */
#include "rate/rating.h"
#include <math.h>

/* Picks may shift against each other by this share of what lies between them: about half a degree out of
 * level. More, and the batten is no level bar any more [1]. */
#define PARTED 0.01
/* The two ways of sharing differ by this share of all that hangs: told [1]. */
#define UNSURE 0.10

static const gtl_pick *pick_at(const gtl_rig *rig, const gtl_batten *batten, int index)
{
    return &rig->picks[batten->first_pick + index];
}

/* The pick of a batten on which the two ways of sharing differ most, -1 for none. */
static const gtl_pick *least_sure(const gtl_rig *rig, const gtl_batten *batten)
{
    const gtl_pick *found = NULL;
    double most = UNSURE * batten->total;
    for (int i = 0; i < batten->pick_count; i++) {
        const gtl_pick *pick = pick_at(rig, batten, i);
        if (!(fabs(pick->stiff - pick->springs) > most)) continue;
        most = fabs(pick->stiff - pick->springs);
        found = pick;
    }
    return found;
}

static bool warn_of_sharing(gtl_sheet *sheet, const gtl_batten *batten)
{
    const gtl_rig *rig = sheet->rig;
    bool kept = true;
    for (int i = 0; i < batten->pick_count; i++) {
        const gtl_pick *pick = pick_at(rig, batten, i);
        bool slack = pick->stiff == 0 || pick->springs == 0;
        if (slack)
            kept &= gtl_tell(sheet, GTL_WARN_BATTEN_SLACK, rig->things[pick->thing].name, pick->stiff,
                             pick->springs);
    }
    const gtl_pick *unsure = least_sure(rig, batten);
    if (unsure)
        kept &= gtl_tell(sheet, GTL_WARN_BATTEN_UNSURE, rig->things[unsure->thing].name, unsure->stiff,
                         unsure->springs);
    return kept;
}

/* Whether a pick carries nothing, so that where it is says nothing of the batten. */
static bool is_limp(const gtl_rig *rig, const gtl_outcome *outcome, const gtl_pick *pick)
{
    return (outcome->loose && outcome->loose[pick->thing]) || !(rig->things[pick->thing].weight > 0);
}

/* How far a pick is shifted against another, over what lies between them [1]. */
static double parting(const gtl_rig *rig, const gtl_outcome *outcome, const gtl_pick *one,
                      const gtl_pick *other)
{
    const double *here = outcome->state->at + 3 * outcome->rig->things[one->thing].node;
    const double *there = outcome->state->at + 3 * outcome->rig->things[other->thing].node;
    double sum = 0;
    for (int k = 0; k < rig->dim; k++) {
        double off = (here[k] - rig->things[one->thing].at[k]) - (there[k] - rig->things[other->thing].at[k]);
        sum += off * off;
    }
    return sqrt(sum) / fabs(one->position - other->position);
}

static bool is_hauled(const gtl_outcome *outcome)
{
    return outcome->kind != GTL_LOST && outcome->rig->hand >= 0;
}

/* How differently two picks rise as the rig is hauled, over how fast the faster one does [1]. */
static double tilting(const gtl_outcome *outcome, const gtl_pick *one, const gtl_pick *other)
{
    int up = outcome->rig->dim - 1;
    double here = outcome->state->rise[3 * outcome->rig->things[one->thing].node + up];
    double there = outcome->state->rise[3 * outcome->rig->things[other->thing].node + up];
    double fastest = fmax(fabs(here), fabs(there));
    return fastest > 0 ? fabs(here - there) / fastest : 0;
}

static void find_motion(const gtl_rig *rig, const gtl_outcome *outcome, int batten, double *parted,
                        double *tilted)
{
    const gtl_batten *whole = &rig->battens[batten];
    *parted = *tilted = 0;
    if (!outcome->possible) return;
    for (int i = 0; i < whole->pick_count; i++)
        for (int k = i + 1; k < whole->pick_count; k++) {
            const gtl_pick *one = pick_at(rig, whole, i), *other = pick_at(rig, whole, k);
            if (is_limp(rig, outcome, one) || is_limp(rig, outcome, other)) continue;
            *parted = fmax(*parted, parting(rig, outcome, one, other));
            if (is_hauled(outcome)) *tilted = fmax(*tilted, tilting(outcome, one, other));
        }
}

bool gtl_batten_parts(const gtl_sheet *sheet)
{
    bool parts = false;
    for (int i = 0; i < sheet->outcome_count; i++)
        for (int k = 0; k < sheet->rig->batten_count; k++) {
            double parted, tilted;
            find_motion(sheet->rig, &sheet->outcomes[i], k, &parted, &tilted);
            parts |= !(parted <= PARTED) || !(tilted <= PARTED);
        }
    return parts;
}

static bool warn_of_motion(gtl_sheet *sheet, int batten)
{
    const char *name = sheet->rig->battens[batten].name;
    bool kept = true;
    for (int i = 0; i < sheet->outcome_count; i++) {
        double parted, tilted;
        find_motion(sheet->rig, &sheet->outcomes[i], batten, &parted, &tilted);
        if (!(parted <= PARTED))
            kept &= gtl_warn(sheet, (gtl_warning){GTL_WARN_BATTEN_PARTS, name, i, parted, NAN, NULL});
        if (!(tilted <= PARTED))
            kept &= gtl_warn(sheet, (gtl_warning){GTL_WARN_BATTEN_TILTS, name, i, tilted, NAN, NULL});
    }
    return kept;
}

bool gtl_warn_of_battens(gtl_sheet *sheet)
{
    bool kept = true;
    for (int i = 0; i < sheet->rig->batten_count; i++)
        kept &= warn_of_sharing(sheet, &sheet->rig->battens[i]) && warn_of_motion(sheet, i);
    return kept;
}
