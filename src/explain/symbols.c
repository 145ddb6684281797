/* symbols.c - how a quantity is called in equations. */
#include "explain/lesson.h"

#include <stdio.h>

static gtl_figure named(const char *letter, const char *name)
{
    gtl_figure symbol;
    snprintf(symbol.text, sizeof symbol.text, "%s(%s)", letter, name);
    return symbol;
}

/* Whether the rig has one piece of rope, so that its pulls need no name. */
static bool one_rope(const gtl_rig *rig)
{
    int count = 0;
    for (int i = 0; i < rig->piece_count; i++) count += rig->pieces[i].rule != GTL_STRUT;
    return count == 1;
}

gtl_figure gtl_symbol_part(const gtl_lesson *lesson, int part)
{
    const gtl_rig *rig = lesson->rig;
    const gtl_line *line = &rig->lines[rig->parts[part].line];
    gtl_figure symbol;
    char letter[16];
    if (line->kind == GTL_SPAR) return named("S", line->name);
    snprintf(letter, sizeof letter, "T%d", part - line->first_part + 1);
    if (!one_rope(rig)) return named(line->stop_count > 2 ? letter : "T", line->name);
    snprintf(symbol.text, sizeof symbol.text, "%s", line->stop_count > 2 ? letter : "T");
    return symbol;
}

gtl_figure gtl_symbol_piece(const gtl_lesson *lesson, int piece)
{
    const gtl_rig *rig = lesson->rig;
    const gtl_line *line = &rig->lines[rig->pieces[piece].line];
    gtl_figure symbol;
    if (line->kind == GTL_SPAR) return named("S", line->name);
    if (one_rope(rig)) return (gtl_figure){"T"};
    if (line->piece_count == 1) return named("T", line->name);
    snprintf(symbol.text, sizeof symbol.text, "T(%s, piece %d)", line->name, piece - line->first_piece + 1);
    return symbol;
}

gtl_figure gtl_symbol_pull(const gtl_lesson *lesson, const gtl_outcome *outcome, int part)
{
    return outcome->kind == GTL_HOLD ? gtl_symbol_piece(lesson, lesson->rig->parts[part].piece)
                                     : gtl_symbol_part(lesson, part);
}

gtl_figure gtl_symbol_weight(const gtl_lesson *lesson, int thing)
{
    return named("W", lesson->rig->things[thing].name);
}

gtl_figure gtl_symbol_lifted(const gtl_lesson *lesson)
{
    return named("W", gtl_lifted_name(lesson->rig));
}

gtl_figure gtl_symbol_spar_half(const gtl_lesson *lesson, int line)
{
    gtl_figure symbol;
    snprintf(symbol.text, sizeof symbol.text, "W(%s)/2", lesson->rig->lines[line].name);
    return symbol;
}

gtl_figure gtl_symbol_reaction(const gtl_lesson *lesson, int thing, int axis)
{
    static const char *const plane[] = {"Rx", "Rz"}, *const space[] = {"Rx", "Ry", "Rz"};
    int dim = lesson->rig->dim;
    const char *letter = dim == 1 ? "R" : dim == 2 ? plane[axis] : space[axis];
    return named(letter, lesson->rig->things[thing].name);
}

const char *gtl_axis_name(const gtl_lesson *lesson, int axis)
{
    if (axis == lesson->rig->dim - 1) return "up";
    return axis == 0 ? "across" : "along";
}
