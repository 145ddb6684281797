/* words.c - every sentence of a report that does not belong to one form alone. */
#include "report/words.h"
#include "base/text.h"
#include "report/names.h"

#include <math.h>
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

/* What no rig file can state and no report covers. */
static const char *const never_checked[] = {
    "weight of ropes, slings and connectors",
    "sheave radius and rope stiffness as such, beyond the efficiency stated",
    "friction of guides",
    "edges and bends that lines lie over",
    "knots and terminations",
    "condition and age of the gear",
    "dynamics: starting, stopping, snatching, swinging, wind",
    "the structure or tree itself",
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

static const struct gtl_reason {
    unsigned bit;
    const char *sentence;
    void (*add_names)(gtl_names *names, const gtl_sheet *sheet);
} reasons[] = {
    {GTL_WHY_OVER, "over the rating: ", add_over},
    {GTL_WHY_HOLD_IMPOSSIBLE, "hold cannot be: the load runs away", NULL},
    {GTL_WHY_RAISE_IMPOSSIBLE, "raise cannot be worked out", NULL},
    {GTL_WHY_LOWER_IMPOSSIBLE, "lower cannot be worked out", NULL},
    {GTL_WHY_UNRATED, "no rating to check by: ", add_unrated},
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

void gtl_words_not_checked(const gtl_sheet *sheet, gtl_sink *sink, void *context)
{
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *part = &sheet->components[i];
        if (part->mark != GTL_MARK_UNRATED) continue;
        gtl_text text = {0};
        gtl_text_add(&text, "%s %s%s: no rating", gtl_kind_name(part->kind), part->name,
                     part->push ? ", in push" : "");
        say(&text, sink, context);
    }
    for (int i = 0; i < sheet->rig->thing_count; i++) {
        const gtl_thing *thing = &sheet->rig->things[i];
        if (thing->kind != GTL_HAND || !isnan(thing->limit)) continue;
        gtl_text text = {0};
        gtl_text_add(&text, "hand %s: no limit to its pull", thing->name);
        say(&text, sink, context);
    }
    for (size_t i = 0; i < sizeof never_checked / sizeof *never_checked; i++) sink(context, never_checked[i]);
}
