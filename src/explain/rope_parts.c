/* rope_parts.c - how the parts of a piece of line change as the load rises by h, and why. */
#include "explain/rope.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

/* Parts at an angle whose shortening is worked out before the reader's eyes. */
#define MOST_OBLIQUE 12

static const char *name_at(const gtl_rig *rig, int stop)
{
    return rig->things[rig->stops[stop].thing].name;
}

static void add_reason(gtl_text *text, const gtl_lesson *lesson, const gtl_outcome *outcome, int part)
{
    const gtl_rig *rig = lesson->rig;
    int ends[] = {gtl_part_from(rig, part), gtl_part_to(rig, part)};
    bool moves[] = {gtl_node_moves(lesson, outcome, ends[0]), gtl_node_moves(lesson, outcome, ends[1])};
    if (!moves[0] && !moves[1]) {
        gtl_text_add(text, "both ends stay");
        return;
    }
    int first = moves[0] ? 0 : 1;
    const int stops[] = {rig->parts[part].from, rig->parts[part].to};
    gtl_text_add(text, "%s ", name_at(rig, stops[first]));
    gtl_add_motion(text, lesson, outcome, ends[first]);
    gtl_text_add(text, " and %s ", name_at(rig, stops[!first]));
    gtl_add_motion(text, lesson, outcome, ends[!first]);
}

/* Whether two parts next to each other change alike, for the same reason. */
static bool are_alike(const gtl_lesson *lesson, const gtl_outcome *outcome, int one, int other)
{
    const gtl_rig *rig = lesson->rig;
    int a = rig->stops[rig->parts[one].from].thing, b = rig->stops[rig->parts[one].to].thing;
    int c = rig->stops[rig->parts[other].from].thing, d = rig->stops[rig->parts[other].to].thing;
    bool between_the_same = (a == c && b == d) || (a == d && b == c);
    return between_the_same && fabs(gtl_part_shortens(lesson, outcome, one) -
                                    gtl_part_shortens(lesson, outcome, other)) <= GTL_STILL;
}

/* Parts `first` to `last`, which are alike. */
static void tell_part(gtl_lesson *lesson, const gtl_outcome *outcome, int first, int last)
{
    const gtl_rig *rig = lesson->rig;
    int before = rig->lines[rig->parts[first].line].first_part - 1;
    double shortens = gtl_part_shortens(lesson, outcome, first);
    const char *from = name_at(rig, rig->parts[first].from), *to = name_at(rig, rig->parts[first].to);
    gtl_text text = {0};
    if (first == last)
        gtl_text_add(&text, "part %d, from %s to %s: ", first - before, from, to);
    else
        gtl_text_add(&text, "parts %d to %d, between %s and %s: each ", first - before, last - before, from,
                     to);
    if (shortens == 0)
        gtl_text_add(&text, "keeps its length, since ");
    else
        gtl_text_add(&text, "%s by %s, since ", shortens > 0 ? "shortens" : "lengthens",
                     gtl_in_h(fabs(shortens)).text);
    add_reason(&text, lesson, outcome, first);
    gtl_document_put(lesson->document, GTL_BULLET, NULL, &text);
}

/* The last of the parts from `first` on that are told in one go. */
static int alike_to(const gtl_lesson *lesson, const gtl_outcome *outcome, int first, int end)
{
    int last = first;
    while (last + 1 < end && are_alike(lesson, outcome, first, last + 1)) last++;
    return last - first < GTL_MOST_SINGLE ? first : last;
}

void gtl_rope_parts(gtl_lesson *lesson, const gtl_outcome *outcome, const gtl_piece *piece)
{
    int end = piece->first_part + piece->part_count, told = 0;
    for (int i = piece->first_part, last; i < end; i = last + 1) {
        last = alike_to(lesson, outcome, i, end);
        bool is_end = last == end - 1;
        if (!is_end && told++ >= GTL_LONGEST_LIST) continue;
        if (is_end && told > GTL_LONGEST_LIST)
            gtl_document_bullet(lesson->document, "and so on, part by part, up to the last:");
        tell_part(lesson, outcome, i, last);
    }
}

/* What moves along a part at an angle: the motion of its ends towards each other, axis by axis, times the
 * cosine. */
static void tell_cosines(gtl_lesson *lesson, const gtl_outcome *outcome, int part)
{
    const gtl_rig *rig = lesson->rig;
    double way[3], shortens = gtl_part_shortens(lesson, outcome, part);
    gtl_text sum = {0};
    gtl_part_way(lesson, outcome, part, way);
    for (int i = 0; i < rig->dim; i++) {
        double nearer = gtl_rise_of(lesson, outcome, gtl_part_from(rig, part), i) -
                        gtl_rise_of(lesson, outcome, gtl_part_to(rig, part), i);
        char term[120];
        if (fabs(nearer) <= GTL_STILL || fabs(way[i]) <= GTL_STILL) continue;
        snprintf(term, sizeof term, "%s x %s", gtl_exact_number(fabs(way[i])).text,
                 gtl_in_h(fabs(nearer)).text);
        gtl_sum_add(&sum, way[i] * nearer < 0, term);
    }
    char *terms = gtl_sum_take(&sum);
    if (!terms) lesson->document->failed = true;
    gtl_document_paragraph(lesson->document,
                           "Along part %d:", part - rig->lines[rig->parts[part].line].first_part + 1);
    gtl_document_equation(lesson->document, "%s = %s", terms ? terms : "", gtl_in_h(shortens).text);
    free(terms);
}

void gtl_rope_oblique(gtl_lesson *lesson, const gtl_outcome *outcome, const gtl_piece *piece)
{
    int count = 0;
    for (int i = piece->first_part; i < piece->first_part + piece->part_count; i++) {
        if (gtl_part_is_plumb(lesson, outcome, i) || gtl_part_shortens(lesson, outcome, i) == 0) continue;
        if (count++ == 0)
            gtl_document_paragraph(
                lesson->document,
                "A part at an angle loses only what its ends move towards each other along it: each "
                "component of the motion times the cosine of the part's angle with it.");
        if (count > MOST_OBLIQUE) continue;
        tell_cosines(lesson, outcome, i);
    }
    if (count > MOST_OBLIQUE)
        gtl_document_paragraph(lesson->document, "In the same way for %d more parts.", count - MOST_OBLIQUE);
}
