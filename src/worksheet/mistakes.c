/* mistakes.c - the table of mistakes, and what showing them has in common. */
#include "worksheet/mistake.h"

#include "base/suggest.h"
#include "base/word.h"

#include <stdlib.h>

static const struct gtl_mistake {
    gtl_set_word word;
    unsigned needs;
    gtl_mistake_shower *show;
} mistakes[] = {
    {{"hauling-part-counted", "the part to the hand is counted though it leaves a fixed block"},
     GTL_NEEDS_HAND,
     gtl_show_hauling_part_counted},
    {{"hauling-part-not-counted", "it is not counted though it leaves the moving block"},
     GTL_NEEDS_HAND,
     gtl_show_hauling_part_not_counted},
    {{"lead-block-counted", "a block that only turns the rope is taken for advantage"},
     GTL_NEEDS_HAND,
     gtl_show_lead_counted},
    {{"anchor-sees-load-only", "the hand's pull is forgotten at the support"},
     GTL_NEEDS_HAND,
     gtl_show_load_only},
    {{"anchor-sees-one-part", "the support of a redirect is given one part of rope only"},
     0,
     gtl_show_one_part},
    {{"friction-forgotten", "the pull that holds is given as the one that raises"},
     GTL_NEEDS_RAISE,
     gtl_show_friction_forgotten},
    {{"one-sheave-for-all", "the efficiency of one sheave is taken for the rig's"},
     GTL_NEEDS_RAISE,
     gtl_show_one_sheave_for_all},
    {{"ideal-with-friction", "the ideal pull stands in a sum with friction"},
     GTL_NEEDS_RAISE | GTL_NEEDS_LIFT,
     gtl_show_ideal_with_friction},
    {{"mass-as-newtons", "kilograms are written as newtons"}, GTL_NEEDS_HAND, gtl_show_mass_as_newtons},
    {{"ratio-upside-down", "the advantage is taken the wrong way up"},
     GTL_NEEDS_RAISE,
     gtl_show_ratio_upside_down},
    {{"angle-from-wrong-side", "an angle from the plumb line is used as one from level"},
     0,
     gtl_show_angle_from_wrong_side},
    {{"parts-not-parallel", "legs that lean are counted in full"}, 0, gtl_show_not_parallel},
    {{"work-saved", "less pull is taken for less work"}, GTL_NEEDS_LIFT, gtl_show_work_saved},
    {{"rope-as-lift", "as much rope is thought to come as the load rises"},
     GTL_NEEDS_LIFT,
     gtl_show_rope_as_lift},
};

#define MISTAKE_COUNT (sizeof mistakes / sizeof *mistakes)

const gtl_set_word *gtl_mistake_at(size_t index)
{
    return index < MISTAKE_COUNT ? &mistakes[index].word : NULL;
}

int gtl_mistake_find(gtl_word word, const char **nearest)
{
    gtl_suggestion near = {.wanted = word, .best = -1};
    for (size_t i = 0; i < MISTAKE_COUNT; i++) {
        if (gtl_word_compare(gtl_word_of(mistakes[i].word.word), word) == 0) return (int)i;
        gtl_suggest_try(&near, gtl_word_of(mistakes[i].word.word), (int)i);
    }
    if (near.best >= 0) *nearest = mistakes[near.best].word.word;
    return -1;
}

unsigned gtl_mistake_needs(int mistake)
{
    return mistakes[mistake].needs;
}

const char *gtl_mistake_show(int mistake, gtl_worked *worked)
{
    return mistakes[mistake].show(worked);
}

/* --- shared --- */

const char *gtl_hand_name(const gtl_worked *worked)
{
    return worked->rig->things[worked->rig->hand].name;
}

const char *gtl_load_name(const gtl_worked *worked)
{
    return worked->rig->things[worked->rig->load].name;
}

void gtl_ask_to_hold(gtl_worked *worked)
{
    gtl_text_add(&worked->shown.asked,
                 "With what pull does the hand %s hold the load still, if there is no friction?",
                 gtl_hand_name(worked));
}

void gtl_show_weight(gtl_worked *worked, double weight)
{
    gtl_text body = {0};
    gtl_add_body_name(&body, &worked->lesson, worked->rig->things[worked->rig->load].node);
    char *name = gtl_text_take(&body);
    if (name)
        gtl_document_paragraph(&worked->shown.solution, "On the parts of rope hangs %s: W = %s.", name,
                               GTL_FORCE_TEXT(worked, weight));
    else
        worked->shown.solution.failed = true;
    free(name);
}

void gtl_show_division(gtl_worked *worked, double weight, double number)
{
    gtl_document_equation(&worked->shown.solution, "T = W / %s = %s / %s = %s", GTL_RATIO_TEXT(number),
                          GTL_FORCE_TEXT(worked, weight), GTL_RATIO_TEXT(number),
                          GTL_FORCE_TEXT(worked, weight / number));
}
