/* suspects.c - forces that cannot be right: which slip would explain them.
 *
 * A slip is put the other way round, and the efficiency looked at that would come of it. It is told only if
 * the forces as typed cannot be believed, and mended they can: so there is evidence on both sides. More than
 * one slip may explain a row; then each is told, and nobody but the class can say which it was. */
#include "lab/work.h"

#include <math.h>

/* Below a quarter no bench tackle works, and a third too much is no reading error [1]. */
#define BELIEVED_LEAST 0.25
#define BELIEVED_MOST  1.3
/* Mended it has to look like a bench: half lost at most, and no gain beyond a small reading error [1]. */
#define MENDED_LEAST 0.5
#define MENDED_MOST  1.02
/* Where it is known what is likely, mended it has to be near that: the friction of one bench differs by no
 * more from day to day [1]. */
#define MENDED_NEAR 1.25
/* Upside down, what was typed must be the worse by as much: else a bad tackle would be turned into a good one
 * [1]. And the rig must multiply by as much: of a single part both ways look alike [1]. */
#define TURN_GAIN  1.5
#define TURN_LEAST 1.5

static bool is_believed(double share)
{
    return share >= BELIEVED_LEAST && share <= BELIEVED_MOST;
}

static bool is_mended(const gtl_lab_row *row, double share, double expected)
{
    if (!(share >= MENDED_LEAST && share <= MENDED_MOST + gtl_lab_force_share(row))) return false;
    return isnan(expected) || (share <= expected * MENDED_NEAR && share >= expected / MENDED_NEAR);
}

/* Load and effort in each other's columns. */
static bool suspect_turned(gtl_lab *lab, int row, double expected)
{
    const gtl_lab_row *r = &lab->rows[row];
    double promised = r->reference_advantage;
    double typed = r->measured_advantage / promised;
    double mended = 1 / (r->measured_advantage * promised);
    if (promised < TURN_LEAST && promised > 1 / TURN_LEAST) return true;
    if (!is_mended(r, mended, expected) || (typed * TURN_GAIN > mended && typed <= BELIEVED_MOST))
        return true;
    return gtl_lab_keep_finding(lab, (gtl_lab_finding){.code = GTL_LAB_UPSIDE_DOWN_RATIO,
                                                       .row = row,
                                                       .set_up = r->set_up,
                                                       .value = r->measured_advantage,
                                                       .other = promised});
}

/* One column's number in grams or kilograms, under a heading in newtons. */
static bool suspect_mass(gtl_lab *lab, int row, double expected, gtl_lab_code code, double factor,
                         bool on_load)
{
    const gtl_lab_row *r = &lab->rows[row];
    double mended = gtl_lab_share(r) / factor;
    if (is_believed(gtl_lab_share(r)) || !is_mended(r, mended, expected)) return true;
    return gtl_lab_keep_finding(lab, (gtl_lab_finding){.code = code,
                                                       .row = row,
                                                       .set_up = r->set_up,
                                                       .on_load = on_load,
                                                       .value = factor,
                                                       .other = mended});
}

bool gtl_lab_suspect(gtl_lab *lab, int row, double expected)
{
    const double grams = 1000 / GTL_STANDARD_GRAVITY; /* in the weight of one newton */
    const double kilograms = 1 / GTL_STANDARD_GRAVITY;
    if (isnan(gtl_lab_share(&lab->rows[row]))) return true;
    return suspect_turned(lab, row, expected) &&
           suspect_mass(lab, row, expected, GTL_LAB_GRAMS, grams, true) &&
           suspect_mass(lab, row, expected, GTL_LAB_GRAMS, 1 / grams, false) &&
           suspect_mass(lab, row, expected, GTL_LAB_KILOGRAMS, kilograms, true) &&
           suspect_mass(lab, row, expected, GTL_LAB_KILOGRAMS, 1 / kilograms, false);
}
