/* mistakes_count.c - parts that are counted wrongly, and a mass that is taken for a force. */
#include "worksheet/mistake.h"

static const char *name_of(const gtl_worked *w, int thing)
{
    return w->rig->things[thing].name;
}

/* A count of `counted` parts where `tackle.parts` hold the load. */
static void show_count(gtl_worked *w, const gtl_tackle *tackle, int counted, const char *line)
{
    gtl_shown *shown = &w->shown;
    gtl_ask_to_hold(w);
    gtl_show_weight(w, tackle->raised);
    gtl_document_paragraph(&shown->solution, "%s I count %d part%s of rope.", line, counted,
                           counted == 1 ? "" : "s");
    gtl_show_division(w, tackle->raised, counted);
    shown->unit = GTL_ANSWER_FORCE;
    shown->right = tackle->raised / tackle->parts;
    shown->wrong = tackle->raised / counted;
}

/* The right way, behind the reason. */
static void add_right_count(gtl_worked *w, const gtl_tackle *tackle)
{
    gtl_text_add(&w->shown.reason, " %d part%s the load: T = %s / %d = %s.", tackle->parts,
                 tackle->parts == 1 ? " holds" : "s hold", GTL_FORCE_TEXT(w, tackle->raised), tackle->parts,
                 GTL_FORCE_TEXT(w, w->shown.right));
}

const char *gtl_show_hauling_part_counted(gtl_worked *w)
{
    gtl_tackle tackle = gtl_tackle_of(w);
    if (!tackle.counts) return GTL_COUNTS_NOT;
    if (tackle.from_moving) return "its hauling part leaves the moving block, so that counting it is right";
    show_count(w, &tackle, tackle.parts + 1, "Every part of the rope counts, the one to the hand too.");
    gtl_text_add(
        &w->shown.reason,
        "The part to the hand comes from %s, which is fixed: it only brings the pull down to the hand "
        "and does not hold the load.",
        name_of(w, tackle.last));
    add_right_count(w, &tackle);
    return NULL;
}

const char *gtl_show_hauling_part_not_counted(gtl_worked *w)
{
    gtl_tackle tackle = gtl_tackle_of(w);
    if (!tackle.counts) return GTL_COUNTS_NOT;
    if (!tackle.from_moving) return "its hauling part leaves a fixed block, so that leaving it out is right";
    if (tackle.parts < 2) return "one part alone holds its load, and without it none is left to count";
    show_count(w, &tackle, tackle.parts - 1,
               "The part to the hand is pulled by the hand, so it does not count.");
    gtl_text_add(
        &w->shown.reason,
        "The part to the hand comes from %s, which moves with the load: it pulls the load up like every "
        "other part there.",
        name_of(w, tackle.last));
    add_right_count(w, &tackle);
    return NULL;
}

/* A single fixed block is a lead block too: nothing of the rope comes back to the load. */
const char *gtl_show_lead_counted(gtl_worked *w)
{
    gtl_tackle tackle = gtl_tackle_of(w);
    if (!tackle.counts) return GTL_COUNTS_NOT;
    if (tackle.from_moving || (tackle.leads == 0 && tackle.parts > 1))
        return "it has no lead block: a fixed block from which the rope goes on to the hand, not to the load";
    gtl_shown *shown = &w->shown;
    gtl_ask_to_hold(w);
    gtl_show_weight(w, tackle.raised);
    gtl_document_paragraph(
        &shown->solution,
        "%d part%s the load, and the block %s, over which the rope goes to the hand, gives one "
        "more: an advantage of %d.",
        tackle.parts, tackle.parts == 1 ? " holds" : "s hold", name_of(w, tackle.last), tackle.parts + 1);
    gtl_show_division(w, tackle.raised, tackle.parts + 1);
    shown->unit = GTL_ANSWER_FORCE;
    shown->right = tackle.raised / tackle.parts;
    shown->wrong = tackle.raised / (tackle.parts + 1);
    gtl_text_add(&shown->reason,
                 "The block %s is fixed and only turns the rope. It adds nothing to the advantage.",
                 name_of(w, tackle.last));
    add_right_count(w, &tackle);
    return NULL;
}

const char *gtl_show_mass_as_newtons(gtl_worked *w)
{
    gtl_tackle tackle = gtl_tackle_of(w);
    if (!tackle.counts) return GTL_COUNTS_NOT;
    if (w->rig->us_units) return "it is printed in pounds, where a mass and its weight have the same number";
    if (!gtl_is_typed(w, &w->rig->things[w->rig->load], "mass"))
        return "its load is given by weight, not by mass";
    double kilograms = tackle.raised / w->rig->gravity;
    gtl_shown *shown = &w->shown;
    gtl_ask_to_hold(w);
    gtl_document_paragraph(&shown->solution, "On the parts of rope hang %s kg, so W = %s.",
                           GTL_RATIO_TEXT(kilograms), GTL_FORCE_TEXT(w, kilograms));
    gtl_document_paragraph(&shown->solution, "%d part%s the load.", tackle.parts,
                           tackle.parts == 1 ? " holds" : "s hold");
    gtl_show_division(w, kilograms, tackle.parts);
    shown->unit = GTL_ANSWER_FORCE;
    shown->right = tackle.raised / tackle.parts;
    shown->wrong = kilograms / tackle.parts;
    gtl_text_add(&shown->reason, "A kilogram is a mass, a newton a force. %s kg weigh %s kg x %s m/s2 = %s.",
                 GTL_RATIO_TEXT(kilograms), GTL_RATIO_TEXT(kilograms),
                 gtl_figure_gravity(w->rig->gravity).text, GTL_FORCE_TEXT(w, tackle.raised));
    add_right_count(w, &tackle);
    return NULL;
}
