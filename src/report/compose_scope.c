/* compose_scope.c - the cases worked, in a sentence each, and what none of them covers. */
#include "base/text.h"
#include "report/compose.h"
#include "report/geometry.h"

#include <math.h>

/* What a number that was not stated directly comes from. */
static void add_acceleration(gtl_text *text, const gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    gtl_text_add(text, " at %s", gtl_figure_acceleration_unit(&composer->units, rig->acceleration).text);
    if (!isnan(rig->speed) && !isnan(rig->time))
        gtl_text_add(text, " (%s in %s s)", gtl_figure_speed_unit(&composer->units, rig->speed).text,
                     gtl_figure_typed(rig->time).text);
    gtl_text_add(text, ", %s %% of g; every body that moves adds its own inertia",
                 gtl_figure_percent(rig->acceleration / rig->gravity).text);
}

static void add_pulls(gtl_text *text, const gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    bool any = false, paired = false;
    for (int i = 0; i < rig->thing_count; i++) {
        gtl_thing hand = rig->things[i]; /* a copy: one of a pair is let go in the rig as read */
        if (hand.kind != GTL_HAND) continue;
        hand.let_go = false;
        gtl_text_add(text, "%s%s %s", any ? ", " : ": ", hand.name,
                     gtl_figure_force_unit(&composer->units, gtl_given_pull(&hand, GTL_JAM)).text);
        any = true;
        paired |= hand.other >= 0;
    }
    if (paired) gtl_text_add(text, ", the two of a pair in turn");
}

static const char *lost_name(const gtl_rig *rig, const gtl_asked *asked)
{
    if (asked->lost_kind == GTL_CONNECTOR) return rig->connectors[asked->lost].name;
    return asked->lost_kind >= GTL_ROPE ? rig->lines[asked->lost].name : rig->things[asked->lost].name;
}

/* What came loose, and what all forces were multiplied by, where it came to forces. */
static void add_loss(gtl_text *text, const gtl_composer *composer, int index)
{
    const gtl_rig *rig = composer->rig;
    const gtl_outcome *outcome = &composer->sheet->outcomes[index];
    const gtl_asked *asked = &rig->cases[index];
    bool any = false;
    gtl_text_add(text, "%s %s lets go", gtl_kind_name(asked->lost_kind), lost_name(rig, asked));
    if (!outcome->possible) return;
    gtl_text_add(text, "; the rig hangs anew; forces times %s", gtl_figure_typed(rig->loss_factor).text);
    for (int i = 0; i < rig->thing_count; i++) {
        if (!gtl_is_loose(outcome, i)) continue;
        gtl_text_add(text, "%s%s", any ? ", " : "; left out, being loose: ", rig->things[i].name);
        any = true;
    }
}

static void add_case(gtl_text *text, const gtl_composer *composer, int index)
{
    switch (composer->sheet->outcomes[index].kind) {
    case GTL_HOLD:
        gtl_text_add(text, "at rest, without friction");
        return;
    case GTL_RAISE:
        gtl_text_add(text, "the load moves up slowly, with the friction stated");
        return;
    case GTL_LOWER:
        gtl_text_add(text, "the load moves down slowly, with the friction stated");
        return;
    case GTL_JAM:
        gtl_text_add(text, "the load is caught at its height and every hand pulls all it can");
        add_pulls(text, composer);
        gtl_text_add(text, "; with friction as in raise and without, the worse counts");
        return;
    case GTL_START:
        gtl_text_add(text, "raising from rest");
        add_acceleration(text, composer);
        return;
    case GTL_STOP:
        gtl_text_add(text, "braking while lowering");
        add_acceleration(text, composer);
        return;
    case GTL_LOST:
        add_loss(text, composer, index);
        return;
    case GTL_DROP:
        gtl_text_add(text, "%s is caught after a free fall, at the peak; see Drop",
                     composer->rig->things[composer->rig->dropped].name);
        return;
    }
}

/* What a loss may do that no figure shows. */
static void tell_of_losses(gtl_composer *composer)
{
    if (!gtl_sheet_outcome(composer->sheet, GTL_LOST)) return;
    gtl_document_paragraph(
        composer->document,
        "After a loss things swing, drop and strike others on their way to where they hang "
        "anew, if they hang at all: what hits what is not computed. %s",
        composer->rig->loss_factor_stated
            ? "The factor on the forces is the one stated."
            : "The factor 2 is that of a load let go onto a line that just touches it; one "
              "that drops makes more.");
}

void gtl_compose_cases(gtl_composer *composer)
{
    const gtl_sheet *sheet = composer->sheet;
    gtl_document_heading(composer->document, "Cases");
    for (int i = 0; i < sheet->outcome_count; i++) {
        gtl_text text = {0};
        add_case(&text, composer, i);
        if (!sheet->outcomes[i].possible) gtl_text_add(&text, "; no figures, see Effort");
        gtl_document_put(composer->document, GTL_PAIR, gtl_compose_case(sheet, i).text, &text);
    }
    tell_of_losses(composer);
}
