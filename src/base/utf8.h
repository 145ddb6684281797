/* utf8.h - the characters of UTF-8 text. */
#ifndef BASE_UTF8_H
#define BASE_UTF8_H

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

/* Whether text is well-formed UTF-8 without control characters, the tab apart: it can be printed again as it
 * is. */
bool gtl_is_plain(const char *text);

#endif
