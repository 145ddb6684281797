/* utf8.c - whether text can be printed again as it is. */
#include "read/utf8.h"

#include <stdint.h>

/* One character at `text`: its length in bytes and its code, length 0 where it is not well formed. The final
 * zero is no continuation byte, so that nothing past it is looked at. */
static int decode(const unsigned char *text, uint32_t *code)
{
    static const uint32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
    int length = text[0] < 0x80 ? 1 : text[0] >= 0xF0 ? 4 : text[0] >= 0xE0 ? 3 : 2;
    if (length == 1) {
        *code = text[0];
        return 1;
    }
    *code = text[0] & (0xFFU >> (length + 1));
    for (int i = 1; i < length; i++) {
        if ((text[i] & 0xC0U) != 0x80) return 0;
        *code = (*code << 6) | (text[i] & 0x3FU);
    }
    bool surrogate = *code >= 0xD800 && *code <= 0xDFFF;
    bool leads = text[0] >= 0xC2 && text[0] <= 0xF4;
    return leads && *code >= least[length] && *code <= 0x10FFFF && !surrogate ? length : 0;
}

bool gtl_is_plain(const char *text)
{
    const unsigned char *at = (const unsigned char *)text;
    while (*at) {
        uint32_t code = 0;
        int length = decode(at, &code);
        bool control = (code < 0x20 && code != '\t') || (code >= 0x7F && code < 0xA0);
        if (length == 0 || control) return false;
        at += length;
    }
    return true;
}
