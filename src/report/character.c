/* character.c - the columns that characters take on a screen.
 *
 * The C library's own functions depend on the locale of the process, which a library must neither trust nor
 * change; two short tables are enough to keep columns straight. */
#include "report/character.h"
#include <string.h>

typedef struct gtl_span {
    unsigned long first;
    unsigned long last;
} gtl_span;

/* Marks that sit on the character before them, and characters without a width. */
static const gtl_span flat[] = {
    {0x0300, 0x036F}, {0x0483, 0x0489}, {0x0591, 0x05BD}, {0x0610, 0x061A},
    {0x064B, 0x065F}, {0x0E34, 0x0E3A}, {0x0E47, 0x0E4E}, {0x1AB0, 0x1AFF},
    {0x1DC0, 0x1DFF}, {0x200B, 0x200F}, {0x20D0, 0x20FF}, {0x302A, 0x302D},
    {0x3099, 0x309A}, {0xFE00, 0xFE0F}, {0xFE20, 0xFE2F}, {0xE0100, 0xE01EF},
};

static const gtl_span wide[] = {
    {0x1100, 0x115F},   {0x2E80, 0x303E},   {0x3041, 0xA4CF},   {0xAC00, 0xD7A3},
    {0xF900, 0xFAFF},   {0xFE30, 0xFE6F},   {0xFF00, 0xFF60},   {0xFFE0, 0xFFE6},
    {0x1F300, 0x1F64F}, {0x1F680, 0x1F6FF}, {0x1F900, 0x1F9FF}, {0x20000, 0x3FFFD},
};

static bool within(const gtl_span *spans, size_t count, unsigned long code)
{
    for (size_t i = 0; i < count; i++)
        if (code >= spans[i].first && code <= spans[i].last) return true;
    return false;
}

size_t gtl_character_width(unsigned long code)
{
    if (code < 0x0300) return 1;
    if (within(flat, sizeof flat / sizeof *flat, code)) return 0;
    return within(wide, sizeof wide / sizeof *wide, code) ? 2 : 1;
}

size_t gtl_columns(const char *text, size_t bytes)
{
    size_t columns = 0;
    for (size_t i = 0; i < bytes && text[i];) {
        gtl_character next = gtl_character_at(text + i);
        columns += gtl_character_width(next.code);
        i += next.bytes;
    }
    return columns;
}
