/* friction_words.h - the friction that a bend is stated to have, in words. */
#ifndef REPORT_FRICTION_WORDS_H
#define REPORT_FRICTION_WORDS_H

#include "base/text.h"

#include <gantline/rig.h>

/* "friction 0.25", "efficiency 88 % to 94 % at 180 deg", "friction not stated". */
void gtl_friction_words(gtl_text *text, const gtl_thing *thing);

#endif
