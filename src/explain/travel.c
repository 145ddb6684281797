/* travel.c - how bodies and parts of line move as the lifted load rises by h. */
#include "explain/travel.h"

#include <math.h>
#include <string.h>

static double without_noise(double ratio)
{
    return fabs(ratio) <= GTL_STILL ? 0 : ratio;
}

int gtl_part_from(const gtl_rig *rig, int part)
{
    return rig->things[rig->stops[rig->parts[part].from].thing].node;
}

int gtl_part_to(const gtl_rig *rig, int part)
{
    return rig->things[rig->stops[rig->parts[part].to].thing].node;
}

double gtl_rise_of(const gtl_lesson *lesson, const gtl_outcome *outcome, int node, int axis)
{
    if (lesson->rig->nodes[node].fixed) return 0;
    return without_noise(outcome->state->rise[3 * node + axis]);
}

void gtl_part_way(const gtl_lesson *lesson, const gtl_outcome *outcome, int part, double way[3])
{
    const gtl_rig *rig = lesson->rig;
    const double *from = outcome->state->at + 3 * gtl_part_from(rig, part);
    const double *to = outcome->state->at + 3 * gtl_part_to(rig, part);
    double length = 0;
    for (int i = 0; i < 3; i++) way[i] = 0;
    for (int i = 0; i < rig->dim; i++) {
        way[i] = to[i] - from[i];
        length = hypot(length, way[i]);
    }
    for (int i = 0; i < 3 && length > 0; i++) way[i] /= length;
}

double gtl_part_shortens(const gtl_lesson *lesson, const gtl_outcome *outcome, int part)
{
    const gtl_rig *rig = lesson->rig;
    double way[3], sum = 0;
    gtl_part_way(lesson, outcome, part, way);
    for (int i = 0; i < rig->dim; i++)
        sum += way[i] * (gtl_rise_of(lesson, outcome, gtl_part_from(rig, part), i) -
                         gtl_rise_of(lesson, outcome, gtl_part_to(rig, part), i));
    return without_noise(sum);
}

double gtl_piece_shortens(const gtl_lesson *lesson, const gtl_outcome *outcome, int piece)
{
    /* The count of parts adds to the noise. */
    double sum = -outcome->state->payout[piece];
    return fabs(sum) <= GTL_EXACT * (lesson->rig->pieces[piece].part_count + 9) ? 0 : sum;
}

bool gtl_part_is_plumb(const gtl_lesson *lesson, const gtl_outcome *outcome, int part)
{
    double way[3];
    gtl_part_way(lesson, outcome, part, way);
    for (int i = 0; i < 3; i++)
        if (i != lesson->rig->dim - 1 && fabs(way[i]) > GTL_EXACT) return false;
    return true;
}

bool gtl_node_moves(const gtl_lesson *lesson, const gtl_outcome *outcome, int node)
{
    for (int i = 0; i < lesson->rig->dim; i++)
        if (gtl_rise_of(lesson, outcome, node, i) != 0) return true;
    return false;
}

bool gtl_node_goes_along(const gtl_lesson *lesson, const gtl_outcome *outcome, int node)
{
    int up = lesson->rig->dim - 1;
    for (int i = 0; i < up; i++)
        if (gtl_rise_of(lesson, outcome, node, i) != 0) return false;
    return fabs(gtl_rise_of(lesson, outcome, node, up) - 1) <= GTL_STILL;
}

static bool moves_alike(const gtl_lesson *lesson, const gtl_outcome *outcome, int one, int other)
{
    for (int i = 0; i < lesson->rig->dim; i++)
        if (fabs(gtl_rise_of(lesson, outcome, one, i) - gtl_rise_of(lesson, outcome, other, i)) > GTL_STILL)
            return false;
    return true;
}

bool gtl_rates_stay(const gtl_lesson *lesson, const gtl_outcome *outcome)
{
    const gtl_rig *rig = lesson->rig;
    for (int n = 0; n < rig->node_count; n++)
        for (int i = 0; i < rig->dim - 1; i++)
            if (gtl_rise_of(lesson, outcome, n, i) != 0) return false;
    for (int i = 0; i < rig->part_count; i++) {
        if (outcome->state->slack[rig->parts[i].piece] || gtl_part_is_plumb(lesson, outcome, i)) continue;
        if (!moves_alike(lesson, outcome, gtl_part_from(rig, i), gtl_part_to(rig, i))) return false;
    }
    return true;
}

bool gtl_same_travel(const gtl_lesson *lesson, const gtl_outcome *one, const gtl_outcome *other)
{
    const gtl_rig *rig = lesson->rig;
    double size = gtl_rig_size(rig);
    for (int n = 0; n < rig->node_count; n++)
        for (int i = 0; i < rig->dim; i++) {
            int k = 3 * n + i;
            if (fabs(one->state->at[k] - other->state->at[k]) > 1e-6 * size) return false;
            if (fabs(one->state->rise[k] - other->state->rise[k]) > 1e-6) return false;
        }
    return true;
}

gtl_figure gtl_in_h(double ratio)
{
    gtl_figure number = gtl_exact_number(ratio);
    return strcmp(number.text, "0") == 0 ? number : gtl_figure_after(number, "h");
}

/* In height only: "rises by 1 h". */
static void add_height(gtl_text *text, double rise)
{
    gtl_text_add(text, "%s by %s", rise > 0 ? "rises" : "sinks", gtl_in_h(fabs(rise)).text);
}

/* "0.2500 h across", to whichever side: the sign says it. */
static void add_components(gtl_text *text, const gtl_lesson *lesson, const gtl_outcome *outcome, int node)
{
    int dim = lesson->rig->dim, told = 0, count = 0;
    for (int i = 0; i < dim; i++) count += gtl_rise_of(lesson, outcome, node, i) != 0;
    gtl_text_add(text, "moves by ");
    for (int i = 0; i < dim; i++) {
        double rise = gtl_rise_of(lesson, outcome, node, i);
        if (rise == 0) continue;
        bool down = i == dim - 1 && rise < 0;
        if (told++ > 0) gtl_text_add(text, told == count ? " and " : ", ");
        gtl_text_add(text, "%s %s", gtl_in_h(down ? -rise : rise).text,
                     down ? "down" : gtl_axis_name(lesson, i));
    }
}

void gtl_add_motion(gtl_text *text, const gtl_lesson *lesson, const gtl_outcome *outcome, int node)
{
    int up = lesson->rig->dim - 1;
    bool upright = true;
    for (int i = 0; i < up; i++) upright = upright && gtl_rise_of(lesson, outcome, node, i) == 0;
    if (!gtl_node_moves(lesson, outcome, node))
        gtl_text_add(text, "stays");
    else if (upright)
        add_height(text, gtl_rise_of(lesson, outcome, node, up));
    else
        add_components(text, lesson, outcome, node);
}

void gtl_add_piece_name(gtl_text *text, const gtl_lesson *lesson, int piece)
{
    const gtl_line *line = &lesson->rig->lines[lesson->rig->pieces[piece].line];
    if (line->piece_count > 1) gtl_text_add(text, "piece %d of ", piece - line->first_piece + 1);
    gtl_text_add(text, "%s %s", gtl_kind_name(line->kind), line->name);
}

const gtl_outcome *gtl_travel_case(const gtl_lesson *lesson)
{
    return lesson->hold ? lesson->hold : lesson->raise;
}

bool gtl_somebody_hauls(const gtl_lesson *lesson)
{
    return lesson->rig->hand >= 0 && lesson->rig->driven >= 0 && gtl_travel_case(lesson);
}
