/* later.h - words of the format that this version does not know yet: told as such, never read and ignored. */
#ifndef READ_LATER_H
#define READ_LATER_H

#include "base/word.h"

bool gtl_is_later_key(gtl_word word);
bool gtl_is_later_kind(gtl_word word);

#endif
