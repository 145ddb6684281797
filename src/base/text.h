/* text.h - text that grows. Once memory fails it stays failed, so that callers look once, at the end. */
#ifndef BASE_TEXT_H
#define BASE_TEXT_H

#include <gantline/fault.h>
#include <stdarg.h>

typedef struct gtl_text {
    char *bytes; /* ends with a zero that `length` does not count; NULL while empty */
    size_t length;
    size_t capacity;
    bool failed;
} gtl_text;

/* Append, printf's format. */
void gtl_text_add(gtl_text *text, const char *format, ...) GTL_PRINTF(2, 3);
void gtl_text_add_list(gtl_text *text, const char *format, va_list arguments);

/* Append bytes as they are. */
void gtl_text_put(gtl_text *text, const char *bytes, size_t length);

/* The finished text, which the caller frees, or NULL if memory failed on the way. `text` is empty afterwards.
 */
char *gtl_text_take(gtl_text *text);

/* A copy of a string of `length` bytes, which the caller frees; NULL without memory. */
char *gtl_text_copy(const char *bytes, size_t length);

/* Compare without regard to ASCII case, whatever the locale: below, at or above zero as strcmp. */
int gtl_text_compare(const char *left, const char *right);

#endif
