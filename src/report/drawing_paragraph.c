/* drawing_paragraph.c - running text of a drawing into lines that are no wider than there is room. */
#include "report/character.h"
#include "report/drawing_frame.h"

#include <stdint.h>
#include <string.h>

/* How many bytes of a text make its first line: whole words, or what fits of a word that is wider. */
static size_t line_length(const char *text, double width, bool bold)
{
    size_t fitting = 0, words = 0;
    while (text[fitting]) {
        size_t next = fitting + gtl_character_at(text + fitting).bytes;
        if (gtl_text_width(text, next, bold) > width) break;
        if (text[fitting] == ' ') words = fitting;
        fitting = next;
    }
    if (!text[fitting] || text[fitting] == ' ') return fitting;
    if (words > 0) return words;
    return fitting > 0 ? fitting : gtl_character_at(text).bytes;
}

double gtl_frame_words(gtl_drawing *drawing, gtl_point foot, double width, int most, bool bold,
                       const char *words)
{
    for (int line = 1; *words; line++) {
        size_t length = line_length(words, width, bold);
        bool last = line == most && words[length];
        if (last) length = line_length(words, width - gtl_text_width("...", SIZE_MAX, bold), bold);
        gtl_shape_text(drawing, GTL_ROLE_FRAME, foot, bold, "%.*s%s", (int)length, words, last ? "..." : "");
        foot.y += GTL_TEXT_STEP;
        if (last) break;
        words += length;
        while (*words == ' ') words++;
    }
    return foot.y;
}
