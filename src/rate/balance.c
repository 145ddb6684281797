/* balance.c - how far each arbor is from balancing what is lifted, in the place in which the rig holds.
 *
 * The figures are those of hold, so without friction. The force that is missing at the lifted load is the
 * work that raising it by one unit takes, all weights and known pulls together: what the hand does in hold.
 */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>

/* A count as near to a whole number as this is that number [1]. */
#define WHOLE 1e-9
/* An arbor that goes down by less for one unit of lift balances nothing [1]. */
#define STILL 1e-6

/* What the hand on the side that is not heavy pulls against so much at the load; NaN where there is none. */
static double pull_against(const gtl_outcome *hold, double over)
{
    const gtl_rig *rig = hold->rig;
    for (int p = 0; p < rig->piece_count; p++) {
        int hand = rig->pieces[p].hand;
        double pull = over / -hold->state->payout[p];
        bool either = hand >= 0 && (hand == rig->hand || hand == rig->things[rig->hand].other);
        if (either && pull >= 0) return pull;
    }
    return NAN;
}

static void count_weights(gtl_balance *balance, const gtl_outcome *hold, double each)
{
    double over = balance->over;
    double by_one = balance->travel * each; /* at the load */
    double exact = over / by_one;
    double whole[2] = {floor(exact + WHOLE), ceil(exact - WHOLE)};
    for (int i = 0; i < 2; i++) {
        double left = over - whole[i] * by_one;
        if (whole[0] == whole[1]) left = 0;
        balance->choice[i] = (gtl_counterweights){whole[i], left, fabs(pull_against(hold, left))};
    }
    balance->choice_count = whole[0] == whole[1] ? 1 : 2;
    balance->nearest = balance->choice_count == 2 && fabs(balance->choice[1].over) < balance->choice[0].over;
}

static gtl_balance balance_of(const gtl_sheet *sheet, int arbor)
{
    const gtl_outcome *hold = gtl_sheet_outcome(sheet, GTL_HOLD);
    const gtl_thing *thing = &sheet->rig->things[arbor];
    gtl_balance balance = {.arbor = arbor, .travel = NAN, .over = NAN, .needed = NAN};
    if (!hold->possible || hold->rig->hand < 0) return balance;
    balance.travel = -hold->state->rise[3 * thing->node + sheet->rig->dim - 1];
    balance.over = hold->state->effort * hold->velocity_ratio;
    if (!(balance.travel > STILL)) return balance;
    balance.needed = thing->weight + balance.over / balance.travel;
    if (!isnan(thing->each)) count_weights(&balance, hold, thing->each);
    return balance;
}

bool gtl_find_balances(gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    sheet->balances = calloc((size_t)rig->thing_count + 1, sizeof *sheet->balances);
    if (!sheet->balances) return false;
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_ARBOR) sheet->balances[sheet->balance_count++] = balance_of(sheet, i);
    return true;
}
