/* utf8.c - see utf8.h. */
#include "base/utf8.h"

/* The length that a first byte announces, 0 for a byte that begins nothing. */
static size_t announced(unsigned char byte)
{
    if (byte < 0x80) return 1;
    if (byte >= 0xC2 && byte <= 0xDF) return 2;
    if (byte >= 0xE0 && byte <= 0xEF) return 3;
    if (byte >= 0xF0 && byte <= 0xF4) return 4;
    return 0;
}

gtl_character gtl_character_at(const char *text)
{
    static const unsigned long least[] = {0, 0, 0x80, 0x800, 0x10000};
    unsigned char first = (unsigned char)text[0];
    gtl_character bad = {first, 1, false};
    size_t bytes = announced(first);
    if (bytes == 0) return bad;
    unsigned long code = bytes == 1 ? first : first & (0x7FUL >> bytes);
    for (size_t i = 1; i < bytes; i++) {
        unsigned char next = (unsigned char)text[i]; /* the final zero is no such byte: never read past it */
        if ((next & 0xC0) != 0x80) return bad;
        code = code << 6 | (next & 0x3F);
    }
    bool surrogate = code >= 0xD800 && code <= 0xDFFF;
    if (code < least[bytes] || code > 0x10FFFF || surrogate) return bad;
    return (gtl_character){code, bytes, true};
}

bool gtl_is_plain(const char *text)
{
    while (*text) {
        gtl_character next = gtl_character_at(text);
        bool control = (next.code < 0x20 && next.code != '\t') || (next.code >= 0x7F && next.code < 0xA0);
        if (!next.valid || control) return false;
        text += next.bytes;
    }
    return true;
}
