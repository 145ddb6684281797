/* counting.c - counting the parts that bear: only where it is true, else why it is not. */
#include "explain/counting.h"
#include "report/names.h"

#include <math.h>
#include <stdio.h>

/* Whether a part joins what rises with the load to the rest. */
static bool crosses(const gtl_lesson *lesson, int part)
{
    const gtl_rig *rig = lesson->rig;
    return gtl_node_goes_along(lesson, lesson->hold, gtl_part_from(rig, part)) !=
           gtl_node_goes_along(lesson, lesson->hold, gtl_part_to(rig, part));
}

static bool carries(const gtl_lesson *lesson, int part)
{
    const gtl_state *state = lesson->hold->state;
    return !state->slack[lesson->rig->parts[part].piece] && fabs(state->tension[part]) > lesson->units.noise;
}

/* The part in the hand, and the stop before the hand. */
static int hand_part(const gtl_rig *rig)
{
    const gtl_piece *piece = &rig->pieces[rig->driven];
    return piece->hand_first ? piece->first_part : piece->first_part + piece->part_count - 1;
}

/* Where the part in the hand comes from. */
static int leaves_stop(const gtl_rig *rig)
{
    int part = hand_part(rig);
    return rig->pieces[rig->driven].hand_first ? rig->parts[part].to : rig->parts[part].from;
}

/* Seen from what rises, the part goes up. */
static bool leads_up(const gtl_lesson *lesson, int part)
{
    double way[3];
    gtl_part_way(lesson, lesson->hold, part, way);
    double up = way[lesson->rig->dim - 1];
    return gtl_node_goes_along(lesson, lesson->hold, gtl_part_from(lesson->rig, part)) ? up > 0 : up < 0;
}

bool gtl_part_bears(const gtl_lesson *lesson, int part)
{
    return lesson->rig->parts[part].piece == lesson->rig->driven && crosses(lesson, part);
}

static bool other_body(const gtl_lesson *lesson, gtl_counting *counting)
{
    for (int n = 0; n < lesson->rig->node_count; n++) {
        if (!gtl_node_moves(lesson, lesson->hold, n) || gtl_node_goes_along(lesson, lesson->hold, n))
            continue;
        counting->node = n;
        return true;
    }
    return false;
}

/* Look at every part that joins what rises to the rest. */
static void look_at_parts(const gtl_lesson *lesson, gtl_counting *counting)
{
    const gtl_rig *rig = lesson->rig;
    for (int i = 0; i < rig->part_count; i++) {
        bool hauled = rig->parts[i].piece == rig->driven;
        if (!crosses(lesson, i) || (!hauled && !carries(lesson, i))) continue;
        counting->part = i;
        counting->why = !hauled                                       ? GTL_NO_OTHER_LINE
                        : !gtl_part_is_plumb(lesson, lesson->hold, i) ? GTL_NO_PLUMB
                        : !leads_up(lesson, i)                        ? GTL_NO_UPWARD
                                                                      : GTL_COUNTS;
        if (counting->why != GTL_COUNTS) return;
        counting->count++;
    }
    counting->part = -1;
    if (counting->count == 0) counting->why = GTL_NO_ROPE_THERE;
}

gtl_counting gtl_count_parts(const gtl_lesson *lesson)
{
    const gtl_rig *rig = lesson->rig;
    gtl_counting counting = {.why = GTL_COUNTS, .node = -1, .part = -1};
    if (!gtl_somebody_hauls(lesson) || !lesson->hold) {
        counting.why = GTL_NO_AT_REST;
        return counting;
    }
    if (other_body(lesson, &counting))
        counting.why = GTL_NO_OTHER_BODY;
    else
        look_at_parts(lesson, &counting);
    if (counting.why != GTL_COUNTS) return counting;
    if (fabs(counting.count - lesson->hold->state->velocity_ratio) > GTL_EXACT * counting.count) {
        counting.why = GTL_NO_SUM;
        return counting;
    }
    counting.hand_counts = crosses(lesson, hand_part(rig));
    counting.hand_on_body = gtl_node_goes_along(lesson, lesson->hold, rig->things[rig->hand].node);
    return counting;
}

/* --- in words --- */

static void put_other_body(gtl_lesson *lesson, int node)
{
    gtl_text text = {0};
    if (node == lesson->rig->things[lesson->rig->load].node) {
        gtl_document_paragraph(lesson->document,
                               "Counting parts is no way here: the load does not rise straight "
                               "up, so the parts that hold it need not shorten by h.");
        return;
    }
    gtl_text_add(&text, "Counting parts is no way here: ");
    gtl_add_body_name(&text, lesson, node);
    gtl_text_add(&text, " ");
    gtl_add_motion(&text, lesson, lesson->hold, node);
    gtl_text_add(&text,
                 " while the load rises by h. So the parts need not all shorten alike, and their number "
                 "does not tell the advantage.");
    gtl_document_put(lesson->document, GTL_PARAGRAPH, NULL, &text);
}

static void put_other_line(gtl_lesson *lesson, int part)
{
    const gtl_rig *rig = lesson->rig;
    gtl_text text = {0};
    gtl_text_add(&text, "Counting parts is no way here: ");
    gtl_add_piece_name(&text, lesson, rig->parts[part].piece);
    gtl_text_add(&text, " carries as well, and its pull need not be that of ");
    gtl_add_piece_name(&text, lesson, rig->driven);
    gtl_text_add(&text, ".");
    gtl_document_put(lesson->document, GTL_PARAGRAPH, NULL, &text);
}

static void put_angle(gtl_lesson *lesson, int part)
{
    const gtl_rig *rig = lesson->rig;
    const gtl_line *line = &rig->lines[rig->parts[part].line];
    gtl_document_paragraph(
        lesson->document,
        "Counting parts is no way here: part %d of %s %s stands at an angle. Only a part of "
        "its pull lifts, so it does not count in full.",
        part - line->first_part + 1, gtl_kind_name(line->kind), line->name);
}

static void put_why_not(gtl_lesson *lesson, const gtl_counting *counting)
{
    static const char *const plain[] = {
        [GTL_NO_AT_REST] = NULL,
        [GTL_NO_ROPE_THERE] = "Counting parts is no way here: the rope that is hauled does not hold up what "
                              "rises with the load.",
        [GTL_NO_UPWARD] = "Counting parts is no way here: a part of the rope leads down from what rises, and "
                          "does not help to bear it.",
        [GTL_NO_SUM] = "Counting parts is no way here: their number is not the way of the hand over that of "
                       "the load."};
    switch (counting->why) {
    case GTL_NO_OTHER_BODY:
        put_other_body(lesson, counting->node);
        break;
    case GTL_NO_OTHER_LINE:
        put_other_line(lesson, counting->part);
        break;
    case GTL_NO_PLUMB:
        put_angle(lesson, counting->part);
        break;
    default:
        if (plain[counting->why]) gtl_document_paragraph(lesson->document, "%s", plain[counting->why]);
    }
}

/* The mistake that is made most: the part in the hand. */
static void put_hand_part(gtl_lesson *lesson, const gtl_counting *counting)
{
    const gtl_rig *rig = lesson->rig;
    const char *hand = rig->things[rig->hand].name;
    const char *from = rig->things[rig->stops[leaves_stop(rig)].thing].name;
    if (counting->hand_on_body && counting->hand_counts)
        gtl_document_paragraph(lesson->document,
                               "The part in %s counts: the hand rises with the load, so this part bears too.",
                               hand);
    else if (counting->hand_counts)
        gtl_document_paragraph(lesson->document,
                               "The part that goes to %s counts: it leaves %s, which rises with the load.",
                               hand, from);
    else
        gtl_document_paragraph(
            lesson->document,
            "The part that goes to %s does not count: it leaves %s, which does not rise with "
            "the load.",
            hand, from);
}

/* Their numbers along the line: "1, 2 and 3", "1 to 120". Those of one piece that bear often stand in a row.
 */
static void put_numbers(gtl_lesson *lesson, const gtl_counting *counting)
{
    const gtl_piece *piece = &lesson->rig->pieces[lesson->rig->driven];
    int first = piece->first_part, end = first + piece->part_count;
    int before = lesson->rig->lines[piece->line].first_part - 1;
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = GTL_LONGEST_LIST};
    for (int i = first, last; i < end; i = last + 1) {
        char name[40];
        last = i;
        if (!gtl_part_bears(lesson, i)) continue;
        while (last + 1 < end && gtl_part_bears(lesson, last + 1)) last++;
        if (last == i)
            snprintf(name, sizeof name, "%d", i - before);
        else
            snprintf(name, sizeof name, "%d %s %d", i - before, last == i + 1 ? "and" : "to", last - before);
        gtl_names_add(&names, name);
    }
    gtl_names_end(&names);
    gtl_document_put(lesson->document, GTL_PAIR, counting->count == 1 ? "The part" : "The parts", &text);
}

static void put_count(gtl_lesson *lesson, const gtl_counting *counting)
{
    gtl_text text = {0};
    gtl_text_add(&text, "Counting is a way here: ");
    gtl_add_piece_name(&text, lesson, lesson->rig->driven);
    gtl_text_add(&text, " alone holds up what rises, %s, and no other body moves. %s",
                 counting->count == 1 ? "by one plumb part" : "by plumb parts only",
                 counting->count == 1 ? "So that part shortens by h."
                                      : "So each such part shortens by h, and all of them pull alike.");
    gtl_document_put(lesson->document, GTL_PARAGRAPH, NULL, &text);
    put_numbers(lesson, counting);
    put_hand_part(lesson, counting);
    gtl_document_pair(lesson->document, "Result", "%d part%s: the ideal advantage is %d.", counting->count,
                      counting->count == 1 ? "" : "s", counting->count);
}

void gtl_lesson_counting(gtl_lesson *lesson)
{
    gtl_counting counting = gtl_count_parts(lesson);
    if (counting.why == GTL_NO_AT_REST) return;
    gtl_lesson_step(lesson, "Counting the parts");
    if (counting.why == GTL_COUNTS)
        put_count(lesson, &counting);
    else
        put_why_not(lesson, &counting);
}
