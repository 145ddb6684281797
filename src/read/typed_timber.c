/* typed_timber.c - what is said of a piece of timber, from text. */
#include "read/typed_timber.h"

#include <stdio.h>
#include <string.h>

bool gtl_typed_species(gtl_word typed, char name[GTL_LINE_LIMIT + 1])
{
    size_t length = 0;
    typed = gtl_word_trim(typed);
    if (typed.length > GTL_LINE_LIMIT) return false;
    for (size_t i = 0; i < typed.length; i++) {
        bool blank = gtl_is_blank(typed.start[i]);
        bool more = blank && length > 0 && name[length - 1] == '-';
        if (!more) name[length++] = blank ? '-' : typed.start[i];
    }
    name[length] = '\0';
    return gtl_is_name((gtl_word){name, length});
}

static bool read_diameter(gtl_word piece, bool alone, double *value, char why[GTL_TYPED_WHY])
{
    char text[GTL_LINE_LIMIT + 1], problem[GTL_WHY_SIZE], excerpt[GTL_EXCERPT_SIZE];
    if (piece.length > GTL_LINE_LIMIT) piece.length = GTL_LINE_LIMIT;
    snprintf(text, sizeof text, "%.*s", GTL_SPELL(piece));
    if (!gtl_parse_quantity(text, GTL_LENGTH, GTL_STANDARD_GRAVITY, value, NULL, problem)) {
        snprintf(why, GTL_TYPED_WHY, "%s%s", problem,
                 alone ? "" : " (commas stand between lengths; decimals take a point)");
        return false;
    }
    if (*value > 0) return true;
    snprintf(why, GTL_TYPED_WHY, "`%s` is out of range; it has to be more than 0",
             gtl_excerpt(piece, excerpt));
    return false;
}

bool gtl_typed_diameters(const char *text, double diameters[3], int *count, char why[GTL_TYPED_WHY])
{
    bool alone = !strchr(text, ',');
    gtl_word rest = gtl_word_of(text), piece;
    int read = 0;
    while (gtl_word_cut(&rest, ',', &piece)) {
        if (read == 3) {
            snprintf(why, GTL_TYPED_WHY,
                     "more than three lengths; write one (halfway), two (the ends) or three (end, halfway, "
                     "end)");
            return false;
        }
        if (!read_diameter(piece, alone, &diameters[read++], why)) return false;
    }
    *count = read;
    return true;
}
