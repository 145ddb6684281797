/* picks.h - the picks of battens as items of the draft. */
#ifndef READ_PICKS_H
#define READ_PICKS_H

#include "rig/draft.h"

/* Let every pick of every batten be a load at its place, whose weight is not known yet. Names are then in
 * order again; one that is taken is a fault. */
void gtl_add_picks(gtl_draft *draft, gtl_fault_list *faults);

#endif
