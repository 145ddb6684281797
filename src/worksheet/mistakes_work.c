/* mistakes_work.c - mistakes about advantage, distance and work. */
#include "worksheet/mistake.h"

#include <math.h>

#define NO_GAIN "the rope comes as far as the load rises, so that nothing would be wrong"

static double ratio(const gtl_worked *w)
{
    return w->hold->state->velocity_ratio;
}

static const char *length(const gtl_worked *w, double metres, gtl_figure *figure)
{
    *figure = gtl_answer_figure(w, GTL_ANSWER_LENGTH, metres);
    return figure->text;
}

static const char *work(const gtl_worked *w, double joules, gtl_figure *figure)
{
    *figure = gtl_answer_figure(w, GTL_ANSWER_WORK, joules);
    return figure->text;
}

const char *gtl_show_ratio_upside_down(gtl_worked *w)
{
    gtl_shown *shown = &w->shown;
    double weight = w->rig->things[w->rig->load].weight, effort = w->raise->state->effort;
    gtl_text_add(
        &shown->asked,
        "The hand %s raises the load %s slowly, with friction, by a pull of %s. What is the estimated "
        "advantage?",
        gtl_hand_name(w), gtl_load_name(w), GTL_FORCE_TEXT(w, effort));
    gtl_document_paragraph(&shown->solution, "The load weighs W = %s, the pull is E = %s.",
                           GTL_FORCE_TEXT(w, weight), GTL_FORCE_TEXT(w, effort));
    gtl_document_equation(&shown->solution, "A = E / W = %s / %s = %s", GTL_FORCE_TEXT(w, effort),
                          GTL_FORCE_TEXT(w, weight), GTL_RATIO_TEXT(effort / weight));
    shown->unit = GTL_ANSWER_RATIO;
    shown->wrong = effort / weight;
    shown->right = weight / effort;
    gtl_text_add(
        &shown->reason,
        "The ratio is upside down. The advantage says how many times the pull the load is: A = W / E = "
        "%s / %s = %s.",
        GTL_FORCE_TEXT(w, weight), GTL_FORCE_TEXT(w, effort), GTL_RATIO_TEXT(weight / effort));
    return NULL;
}

const char *gtl_show_rope_as_lift(gtl_worked *w)
{
    gtl_shown *shown = &w->shown;
    gtl_figure lift, rope;
    length(w, w->lift, &lift);
    length(w, w->lift * ratio(w), &rope);
    if (fabs(ratio(w) - 1) < 0.01) return NO_GAIN;
    gtl_text_add(&shown->asked, "The load rises by %s. How much rope comes to the hand %s?", w->lift_text,
                 gtl_hand_name(w));
    gtl_document_paragraph(
        &shown->solution, "The rope does not stretch. So as much of it comes to the hand as the load rises.");
    gtl_document_equation(&shown->solution, "s = h = %s", lift.text);
    shown->unit = GTL_ANSWER_LENGTH;
    shown->wrong = w->lift;
    shown->right = w->lift * ratio(w);
    gtl_text_add(
        &shown->reason,
        "Each part that holds the load gets shorter, and what all of them lose comes to the hand: %s times "
        "the rise. s = %s x h = %s x %s = %s.",
        GTL_RATIO_TEXT(ratio(w)), GTL_RATIO_TEXT(ratio(w)), GTL_RATIO_TEXT(ratio(w)), lift.text, rope.text);
    return NULL;
}

const char *gtl_show_work_saved(gtl_worked *w)
{
    gtl_shown *shown = &w->shown;
    double effort = w->hold->state->effort;
    gtl_figure lift, rope, less, all;
    if (fabs(ratio(w) - 1) < 0.01) return NO_GAIN;
    length(w, w->lift, &lift);
    length(w, w->lift * ratio(w), &rope);
    work(w, effort * w->lift, &less);
    work(w, effort * w->lift * ratio(w), &all);
    gtl_text_add(&shown->asked, "Without friction: what work does the hand %s do while the load rises by %s?",
                 gtl_hand_name(w), w->lift_text);
    gtl_document_paragraph(
        &shown->solution,
        "Without friction the pull is E = %s. Work is force times distance, so with less pull "
        "there is less work to do.",
        GTL_FORCE_TEXT(w, effort));
    gtl_document_equation(&shown->solution, "E x h = %s x %s = %s", GTL_FORCE_TEXT(w, effort), lift.text,
                          less.text);
    shown->unit = GTL_ANSWER_WORK;
    shown->wrong = effort * w->lift;
    shown->right = effort * w->lift * ratio(w);
    gtl_text_add(
        &shown->reason,
        "The hand does not move by %s but by %s, %s times as far. No work is saved: E x s = %s x %s = %s.",
        lift.text, rope.text, GTL_RATIO_TEXT(ratio(w)), GTL_FORCE_TEXT(w, effort), rope.text, all.text);
    return NULL;
}

const char *gtl_show_ideal_with_friction(gtl_worked *w)
{
    gtl_shown *shown = &w->shown;
    double ideal = w->hold->state->effort, effort = w->raise->state->effort;
    double way = w->lift * w->raise->state->velocity_ratio;
    gtl_figure rope, less, all;
    length(w, way, &rope);
    work(w, ideal * way, &less);
    work(w, effort * way, &all);
    gtl_text_add(&shown->asked,
                 "With the friction given: what work does the hand %s do while it raises the load by %s?",
                 gtl_hand_name(w), w->lift_text);
    gtl_document_paragraph(&shown->solution,
                           "The ideal advantage is %s, so s = %s of rope comes to the hand.",
                           GTL_RATIO_TEXT(ratio(w)), rope.text);
    gtl_document_paragraph(&shown->solution, "By the ideal advantage the pull is E = %s.",
                           GTL_FORCE_TEXT(w, ideal));
    gtl_document_equation(&shown->solution, "E x s = %s x %s = %s", GTL_FORCE_TEXT(w, ideal), rope.text,
                          less.text);
    shown->unit = GTL_ANSWER_WORK;
    shown->wrong = ideal * way;
    shown->right = effort * way;
    gtl_text_add(
        &shown->reason,
        "The distance is right: it does not depend on friction. The pull is wrong: the ideal advantage knows "
        "no friction, and with it the hand pulls %s. E x s = %s x %s = %s.",
        GTL_FORCE_TEXT(w, effort), GTL_FORCE_TEXT(w, effort), rope.text, all.text);
    return NULL;
}
