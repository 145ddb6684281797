/* mistakes_friction.c - friction left out, or one sheave's taken for all. */
#include "worksheet/mistake.h"

#include <math.h>

#define SAME 1e-9

static void ask_to_raise(gtl_worked *w)
{
    gtl_text_add(&w->shown.asked,
                 "With what pull does the hand %s raise the load slowly, with the friction given?",
                 gtl_hand_name(w));
}

const char *gtl_show_friction_forgotten(gtl_worked *w)
{
    gtl_tackle tackle = gtl_tackle_of(w);
    gtl_shown *shown = &w->shown;
    if (!tackle.counts) return GTL_COUNTS_NOT;
    ask_to_raise(w);
    gtl_show_weight(w, tackle.raised);
    gtl_document_paragraph(&shown->solution, "%d part%s the load.", tackle.parts,
                           tackle.parts == 1 ? " holds" : "s hold");
    gtl_show_division(w, tackle.raised, tackle.parts);
    shown->unit = GTL_ANSWER_FORCE;
    shown->wrong = w->hold->state->effort;
    shown->right = w->raise->state->effort;
    gtl_text_add(
        &shown->reason,
        "That is the pull without friction. At each sheave the rope's tension rises on its way to the hand, "
        "so that raising takes %s.",
        GTL_FORCE_TEXT(w, shown->right));
    return NULL;
}

/* The efficiency that every running stop of the hauled rope has; NaN where they differ, or are no blocks. */
static double one_efficiency(const gtl_rig *rig, int *stops)
{
    double efficiency = NAN;
    *stops = 0;
    for (int i = 0; i < rig->run_count; i++) {
        const gtl_thing *thing = &rig->things[rig->runs[i].thing];
        if (thing->kind != GTL_BLOCK || !thing->friction_stated) return NAN;
        if (++*stops > 1 && fabs(thing->efficiency - efficiency) > SAME) return NAN;
        efficiency = thing->efficiency;
    }
    return efficiency;
}

const char *gtl_show_one_sheave_for_all(gtl_worked *w)
{
    gtl_tackle tackle = gtl_tackle_of(w);
    gtl_shown *shown = &w->shown;
    int stops;
    double efficiency = one_efficiency(w->rig, &stops);
    if (!tackle.counts) return GTL_COUNTS_NOT;
    if (isnan(efficiency)) return "its sheaves are not all of the same efficiency";
    if (stops < 2) return "its rope runs over one sheave only";
    double wrong = tackle.raised / (tackle.parts * efficiency);
    ask_to_raise(w);
    gtl_show_weight(w, tackle.raised);
    gtl_document_paragraph(&shown->solution, "%d part%s the load, and the efficiency is %s.", tackle.parts,
                           tackle.parts == 1 ? " holds" : "s hold", gtl_exact_percent(efficiency).text);
    gtl_document_equation(&shown->solution, "E = W / (%d x %s) = %s / (%d x %s) = %s", tackle.parts,
                          gtl_exact_percent(efficiency).text, GTL_FORCE_TEXT(w, tackle.raised), tackle.parts,
                          gtl_exact_percent(efficiency).text, GTL_FORCE_TEXT(w, wrong));
    shown->unit = GTL_ANSWER_FORCE;
    shown->wrong = wrong;
    shown->right = w->raise->state->effort;
    gtl_text_add(
        &shown->reason,
        "%s is the efficiency of one sheave, and the rope runs over %d: each of them takes its share. The "
        "rig's efficiency as a whole is %s, and raising takes %s.",
        gtl_exact_percent(efficiency).text, stops, gtl_exact_percent(w->raise->efficiency).text,
        GTL_FORCE_TEXT(w, shown->right));
    return NULL;
}
