/* build.h - a draft to a rig. */
#ifndef RIG_BUILD_H
#define RIG_BUILD_H

#include "rig/draft.h"

/* Build the rig of a draft, names resolved and defaults filled in, and check its structure. NULL if there is
 * any fault in the list, then or before; the caller frees the rig with gtl_rig_free. */
gtl_rig *gtl_build(gtl_draft *draft, gtl_fault_list *faults);

#endif
