/* text.c - text that grows. */
#include "base/text.h"
#include "base/word.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Room for `more` bytes and the final zero. */
static bool make_room(gtl_text *text, size_t more)
{
    if (text->failed) return false;
    size_t needed = text->length + more + 1;
    if (needed <= text->capacity) return true;
    size_t wanted = text->capacity * 2 > needed ? text->capacity * 2 : needed + 64;
    char *moved = realloc(text->bytes, wanted);
    if (!moved) {
        text->failed = true;
        return false;
    }
    text->bytes = moved;
    text->capacity = wanted;
    return true;
}

void gtl_text_put(gtl_text *text, const char *bytes, size_t length)
{
    if (!make_room(text, length)) return;
    if (length > 0) memcpy(text->bytes + text->length, bytes, length);
    text->length += length;
    text->bytes[text->length] = '\0';
}

void gtl_text_add_list(gtl_text *text, const char *format, va_list arguments)
{
    va_list again;
    va_copy(again, arguments);
    int length = vsnprintf(NULL, 0, format, arguments);
    if (length < 0) {
        text->failed = true;
    } else if (make_room(text, (size_t)length)) {
        vsnprintf(text->bytes + text->length, (size_t)length + 1, format, again);
        text->length += (size_t)length;
    }
    va_end(again);
}

void gtl_text_add(gtl_text *text, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    gtl_text_add_list(text, format, arguments);
    va_end(arguments);
}

char *gtl_text_take(gtl_text *text)
{
    gtl_text_put(text, "", 0); /* an empty text is a text too */
    char *bytes = text->bytes;
    if (text->failed) {
        free(bytes);
        bytes = NULL;
    }
    *text = (gtl_text){0};
    return bytes;
}

char *gtl_text_copy(const char *bytes, size_t length)
{
    char *copy = malloc(length + 1);
    if (!copy) return NULL;
    if (length > 0) memcpy(copy, bytes, length);
    copy[length] = '\0';
    return copy;
}

int gtl_text_compare(const char *left, const char *right)
{
    return gtl_word_compare(gtl_word_of(left), gtl_word_of(right));
}
