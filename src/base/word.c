/* word.c - a stretch of somebody else's text. */
#include "base/word.h"

#include <string.h>

gtl_word gtl_word_of(const char *text)
{
    return (gtl_word){text, strlen(text)};
}

bool gtl_is_blank(char byte)
{
    return byte == ' ' || byte == '\t';
}

bool gtl_is_name_byte(char byte)
{
    return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') || (byte >= '0' && byte <= '9') ||
           byte == '-' || byte == '_';
}

bool gtl_is_name(gtl_word word)
{
    size_t length = 0;
    while (length < word.length && gtl_is_name_byte(word.start[length])) length++;
    return length > 0 && length == word.length;
}

gtl_word gtl_word_trim(gtl_word word)
{
    while (word.length > 0 && gtl_is_blank(word.start[0])) {
        word.start++;
        word.length--;
    }
    while (word.length > 0 && gtl_is_blank(word.start[word.length - 1])) word.length--;
    return word;
}

static int lower(char byte)
{
    return byte >= 'A' && byte <= 'Z' ? byte - 'A' + 'a' : (unsigned char)byte;
}

int gtl_word_compare(gtl_word left, gtl_word right)
{
    for (size_t i = 0; i < left.length && i < right.length; i++) {
        int difference = lower(left.start[i]) - lower(right.start[i]);
        if (difference != 0) return difference;
    }
    return (left.length > right.length) - (left.length < right.length);
}

bool gtl_word_cut(gtl_word *rest, char mark, gtl_word *piece)
{
    if (!rest->start) return false;
    const char *end = rest->length > 0 ? memchr(rest->start, mark, rest->length) : NULL;
    size_t length = end ? (size_t)(end - rest->start) : rest->length;
    *piece = gtl_word_trim((gtl_word){rest->start, length});
    *rest = end ? (gtl_word){end + 1, rest->length - length - 1} : (gtl_word){NULL, 0};
    return true;
}

/* A byte that goes on with a character of UTF-8 begun before it. */
static bool goes_on(char byte)
{
    return ((unsigned char)byte & 0xC0U) == 0x80U;
}

const char *gtl_excerpt(gtl_word word, char excerpt[GTL_EXCERPT_SIZE])
{
    static const char dots[] = "...";
    size_t length = word.length;
    bool cut = length >= GTL_EXCERPT_SIZE;
    if (cut) {
        length = GTL_EXCERPT_SIZE - sizeof dots;
        while (length > 0 && goes_on(word.start[length])) length--;
    }
    if (length > 0) memcpy(excerpt, word.start, length);
    memcpy(excerpt + length, cut ? dots : "", cut ? sizeof dots : 1);
    return excerpt;
}
