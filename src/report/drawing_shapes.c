/* drawing_shapes.c - the list of shapes that a drawing is. */
#include "report/drawing_shapes.h"
#include "report/character.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* Widths over the size of the text: no common sans-serif font has wider ones [1]. */
#define THIN    0.42
#define LETTER  0.65
#define CAPITAL 0.8
#define BROAD   1.02
#define WIDE    1.12 /* takes two columns */
#define BOLD    1.18 /* times as wide */

static bool make_room(gtl_drawing *drawing)
{
    if (drawing->failed) return false;
    if (drawing->count < drawing->capacity) return true;
    int capacity = 2 * drawing->capacity + 64;
    gtl_shape *moved = realloc(drawing->shapes, (size_t)capacity * sizeof *moved);
    if (!moved) {
        drawing->failed = true;
        return false;
    }
    drawing->shapes = moved;
    drawing->capacity = capacity;
    return true;
}

void gtl_shape_add(gtl_drawing *drawing, gtl_shape shape)
{
    if (make_room(drawing))
        drawing->shapes[drawing->count++] = shape;
    else
        free(shape.text);
}

void gtl_shape_text(gtl_drawing *drawing, gtl_role role, gtl_point at, bool bold, const char *format, ...)
{
    gtl_text text = {0};
    va_list arguments;
    va_start(arguments, format);
    gtl_text_add_list(&text, format, arguments);
    va_end(arguments);
    char *line = gtl_text_take(&text);
    if (line)
        gtl_shape_add(drawing, (gtl_shape){.kind = GTL_SHAPE_TEXT,
                                           .role = role,
                                           .index = -1,
                                           .view = -1,
                                           .a = at,
                                           .bold = bold,
                                           .text = line});
    else
        drawing->failed = true;
}

static double character_width(gtl_character character)
{
    size_t columns = gtl_character_width(character.code);
    char ascii = character.code < 0x80 ? (char)character.code : 0;
    if (columns != 1) return columns == 0 ? 0 : WIDE;
    if (!ascii) return BROAD;
    if (strchr("ijltfrIJ.,:;'|!()[]-/ ", ascii)) return THIN;
    if (strchr("mwMW%@+=<>~#&", ascii)) return BROAD;
    return ascii >= 'A' && ascii <= 'Z' ? CAPITAL : LETTER;
}

double gtl_text_width(const char *text, size_t bytes, bool bold)
{
    double width = 0;
    for (size_t i = 0; i < bytes && text[i];) {
        gtl_character next = gtl_character_at(text + i);
        width += character_width(next);
        i += next.bytes;
    }
    return width * GTL_TEXT_SIZE * (bold ? BOLD : 1);
}

/* How far letters reach above and below their foot line. */
#define ABOVE 13.0
#define BELOW 4.5

gtl_bounds gtl_text_bounds(const gtl_shape *text)
{
    double width = gtl_text_width(text->text, SIZE_MAX, text->bold);
    double left = text->a.x - width * (text->align == GTL_ALIGN_LEFT     ? 0
                                       : text->align == GTL_ALIGN_MIDDLE ? 0.5
                                                                         : 1);
    return (gtl_bounds){{left, text->a.y - ABOVE}, {left + width, text->a.y + BELOW}};
}

void gtl_drawing_end(gtl_drawing *drawing)
{
    if (!drawing) return;
    for (int i = 0; i < drawing->count; i++) free(drawing->shapes[i].text);
    free(drawing->shapes);
    free(drawing->title);
    free(drawing);
}
