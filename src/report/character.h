/* character.h - the characters of UTF-8 text, and the columns that they take on a screen. */
#ifndef REPORT_CHARACTER_H
#define REPORT_CHARACTER_H

#include <stdbool.h>
#include <stddef.h>

/* One character. Where the bytes are no UTF-8 it is a single byte, and not valid. */
typedef struct gtl_character {
    unsigned long code;
    size_t bytes;
    bool valid;
} gtl_character;

/* The character at the head of a text that is not at its end. */
gtl_character gtl_character_at(const char *text);

/* The columns of one character: 0 where it sits on the one before, 2 for wide East Asian ones, else 1. */
size_t gtl_character_width(unsigned long code);

/* The columns of the first `bytes` bytes of a text. */
size_t gtl_columns(const char *text, size_t bytes);

#endif
