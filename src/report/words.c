/* words.c - every sentence of a report that does not belong to one form alone. */
#include "report/words.h"
#include "base/text.h"
#include "rate/rating.h"
#include "report/names.h"

#include <stdlib.h>

static const char *const cautions[] = {
    "Arithmetic on the numbers typed in, no approval.",
    "Static loads only.",
    "Not for lifting, holding or catching people.",
    "Gear, knots, edges, structures and trees are not inspected.",
    "Local law and codes come first.",
    "Have it checked by a qualified rigger or competent person.",
    "Have the structure or tree checked by somebody qualified for it.",
};

void gtl_words_cautions(gtl_sink *sink, void *context)
{
    for (size_t i = 0; i < sizeof cautions / sizeof *cautions; i++) sink(context, cautions[i]);
}

/* Hand over the finished sentence. */
static void say(gtl_text *text, gtl_sink *sink, void *context)
{
    char *sentence = gtl_text_take(text);
    sink(context, sentence);
    free(sentence);
}

static void add_marked(gtl_names *names, const gtl_sheet *sheet, gtl_mark mark)
{
    for (int i = 0; i < sheet->component_count; i++)
        if (sheet->components[i].mark == mark) gtl_names_add(names, sheet->components[i].name);
}

static void add_over(gtl_names *names, const gtl_sheet *sheet)
{
    add_marked(names, sheet, GTL_MARK_OVER);
}

static void add_unrated(gtl_names *names, const gtl_sheet *sheet)
{
    add_marked(names, sheet, GTL_MARK_UNRATED);
}

/* Whether an earlier run passes the same thing. */
static bool named_before(const gtl_rig *rig, int run)
{
    for (int i = 0; i < run; i++)
        if (rig->runs[i].thing == rig->runs[run].thing) return true;
    return false;
}

static void add_without_friction(gtl_names *names, const gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    for (int i = 0; i < rig->run_count; i++) {
        const gtl_thing *thing = &rig->things[rig->runs[i].thing];
        if (!thing->friction_stated && !named_before(rig, i)) gtl_names_add(names, thing->name);
    }
}

static void add_fallen(gtl_names *names, const gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].falls) gtl_names_add(names, sheet->outcomes[i].name);
}

static void add_dropped(gtl_names *names, const gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->outcome_count; i++)
        if (sheet->outcomes[i].possible && sheet->outcomes[i].drop > 0)
            gtl_names_add(names, sheet->outcomes[i].name);
}

/* Cases beyond the slow ones; braking a load that friction holds is no fault. */
static void add_not_worked(gtl_names *names, const gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        bool held = outcome->kind == GTL_STOP && outcome->state->held_by_friction;
        if (outcome->kind > GTL_LOWER && !outcome->possible && !outcome->falls && !held)
            gtl_names_add(names, outcome->name);
    }
}

static void add_head_fittings(gtl_names *names, const gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->head_fitting_count; i++)
        if (sheet->head_fittings[i].mark == GTL_MARK_OVER)
            gtl_names_add(names, sheet->components[sheet->head_fittings[i].fitting].name);
}

static void add_not_stated(gtl_names *names, const gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->rig->line_count; i++) {
        const gtl_line *line = &sheet->rig->lines[i];
        if (gtl_choke_angle_missing(&line->gear) || gtl_choke_material_missing(&line->gear))
            gtl_names_add(names, line->name);
    }
}

static void add_parting(gtl_names *names, const gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->warning_count; i++) {
        gtl_warning_code code = sheet->warnings[i].code;
        if (code == GTL_WARN_BATTEN_PARTS || code == GTL_WARN_BATTEN_TILTS)
            gtl_names_add(names, sheet->warnings[i].about);
    }
}

static void add_jerked(gtl_names *names, const gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_drop *caught = sheet->outcomes[i].caught;
        if (!caught || !sheet->outcomes[i].possible) continue;
        int other = caught->along >= 0 ? caught->along : caught->load;
        gtl_names_add(names, sheet->rig->things[other].name);
    }
}

static void add_beyond_stretch(gtl_names *names, const gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        for (int k = 0; outcome->possible && outcome->caught && k < sheet->rig->line_count; k++)
            if (gtl_is_beyond_stretch(&sheet->rig->lines[k], &outcome->caught->lines[k]))
                gtl_names_add(names, sheet->rig->lines[k].name);
    }
}

static void add_catching_hand(gtl_names *names, const gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        if (outcome->possible && outcome->caught && outcome->caught->let_out >= 0)
            gtl_names_add(names, sheet->rig->things[outcome->caught->let_out].name);
    }
}

static void add_over_on_the_way(gtl_names *names, const gtl_sheet *sheet)
{
    for (int i = 0; i < sheet->component_count; i++)
        if (gtl_is_over_on_the_way(sheet, i)) gtl_names_add(names, sheet->components[i].name);
}

/* The worst first: a reader may see no more than the beginning. */
static const struct gtl_reason {
    unsigned bit;
    const char *sentence;
    void (*add_names)(gtl_names *names, const gtl_sheet *sheet);
} reasons[] = {
    {GTL_WHY_OVER, "over the rating: ", add_over},
    {GTL_WHY_ON_THE_WAY, "over the rating further up the lift, at rest: ", add_over_on_the_way},
    {GTL_WHY_HEAD_FITTING, "head fitting under twice the line: ", add_head_fittings},
    {GTL_WHY_LOAD_FALLS, "a load falls after: ", add_fallen},
    {GTL_WHY_DROP, "something drops before it is caught, after: ", add_dropped},
    {GTL_WHY_HOLD_IMPOSSIBLE, "hold cannot be: the load runs away", NULL},
    {GTL_WHY_RAISE_IMPOSSIBLE, "raise cannot be worked out", NULL},
    {GTL_WHY_LOWER_IMPOSSIBLE, "lower cannot be worked out", NULL},
    {GTL_WHY_CASE_IMPOSSIBLE, "cannot be worked out: ", add_not_worked},
    {GTL_WHY_BATTEN, "does not stay a level batten, so that its lines share otherwise: ", add_parting},
    {GTL_WHY_CATCH, "in the drop more moves than is worked out: ", add_jerked},
    {GTL_WHY_CATCHING_HAND, "what has to be held in the drop is not known: ", add_catching_hand},
    {GTL_WHY_STRETCH, "the drop stretches lines beyond what is stated: ", add_beyond_stretch},
    {GTL_WHY_UNRATED, "no rating to check by: ", add_unrated},
    {GTL_WHY_NOT_STATED, "choke angle or material not stated: ", add_not_stated},
    {GTL_WHY_FRICTION, "friction not stated: ", add_without_friction},
    {GTL_WHY_NOT_MOVED, "neither raise nor lower came to figures, so friction is left out", NULL},
};

void gtl_words_why(const gtl_sheet *sheet, int most, gtl_sink *sink, void *context)
{
    for (size_t i = 0; i < sizeof reasons / sizeof *reasons; i++) {
        if (!(sheet->why & reasons[i].bit)) continue;
        gtl_text text = {0};
        gtl_text_add(&text, "%s", reasons[i].sentence);
        if (reasons[i].add_names) {
            gtl_names names = {.text = &text, .most = most};
            reasons[i].add_names(&names, sheet);
            gtl_names_end(&names);
        }
        say(&text, sink, context);
    }
}
