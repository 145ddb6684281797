/* other.h - the rig with the other hand of its pair. */
#ifndef RIG_OTHER_H
#define RIG_OTHER_H

#include <gantline/rig.h>

/* Whether the hand that is worked out is one of a pair. */
bool gtl_rig_is_paired(const gtl_rig *rig);

/* The paired rig once more, as gtl_rig_copy, with the other hand worked out and the first one let go. */
gtl_rig *gtl_rig_other(const gtl_rig *rig);

#endif
