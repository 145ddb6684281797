/* character.h - the columns that characters take on a screen. */
#ifndef REPORT_CHARACTER_H
#define REPORT_CHARACTER_H

#include "base/utf8.h"

/* The columns of one character: 0 where it sits on the one before, 2 for wide East Asian ones, else 1. */
size_t gtl_character_width(unsigned long code);

/* The columns of the first `bytes` bytes of a text. */
size_t gtl_columns(const char *text, size_t bytes);

#endif
