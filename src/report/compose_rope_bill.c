/* compose_rope_bill.c - how much rope there has to be, and how far the load goes up before blocks meet. */
#include "base/text.h"
#include "report/compose.h"

#include <math.h>

static const char *name_of(const gtl_composer *composer, int thing)
{
    return composer->rig->things[thing].name;
}

static gtl_figure length(const gtl_composer *composer, double metres)
{
    return gtl_figure_length_unit(&composer->units, metres);
}

static gtl_figure down(const gtl_composer *composer, double metres)
{
    return gtl_figure_length_down_unit(&composer->units, metres);
}

/* --- how far it goes --- */

static void add_pair(const gtl_composer *composer, gtl_text *text)
{
    const gtl_rope_bill *bill = composer->sheet->rope_bill;
    gtl_text_add(text, "%s and %s are then %s apart", name_of(composer, bill->one),
                 name_of(composer, bill->other), length(composer, bill->gap).text);
}

static void add_meeting(const gtl_composer *composer, gtl_text *text)
{
    const gtl_rope_bill *bill = composer->sheet->rope_bill;
    if (bill->meeting == GTL_MEET_CENTRES) {
        gtl_text_add(text,
                     "the centres of %s and %s meet: their size is not stated and not counted, so in truth "
                     "they meet before that; state `clear`",
                     name_of(composer, bill->one), name_of(composer, bill->other));
        return;
    }
    add_pair(composer, text);
    if (bill->meeting == GTL_MEET_CLEAR)
        gtl_text_add(text, ", as near as `clear` lets them");
    else
        gtl_text_add(text,
                     ", and %s; cheeks, hooks and shackles are not counted, so in truth they meet before "
                     "that; state `clear`",
                     bill->size_of_one_only ? "the sheave of the one touches the middle of the other, whose "
                                              "size is not stated"
                                            : "their sheaves touch");
}

static void put_run(gtl_composer *composer)
{
    const gtl_rope_bill *bill = composer->sheet->rope_bill;
    gtl_text text = {0};
    if (bill->end == GTL_WAY_OPEN) {
        gtl_text_add(&text, "not within %s, which is as far as was looked",
                     down(composer, bill->looked).text);
    } else if (bill->end == GTL_WAY_BLOCKED) {
        gtl_text_add(&text, bill->run > 0 ? "after %s: " : "as it is drawn, without any lift: ",
                     down(composer, bill->run).text);
        add_meeting(composer, &text);
    } else {
        gtl_text_add(&text, "not before, but from %s up no place was found in which the rig holds",
                     down(composer, bill->run).text);
        if (bill->one >= 0) {
            gtl_text_add(&text, "; ");
            add_pair(composer, &text);
        }
        if (bill->reason[0]) gtl_text_add(&text, ". The solver says: %s", bill->reason);
    }
    gtl_document_put(composer->document, GTL_PAIR, "Two-blocked", &text);
    if (bill->run == 0 || bill->run < composer->rig->lift) gtl_document_strong(composer->document);
}

static void put_resets(gtl_composer *composer)
{
    const gtl_rope_bill *bill = composer->sheet->rope_bill;
    gtl_text text = {0};
    if (bill->resets == 0)
        gtl_text_add(&text, "none");
    else if (bill->resets > 0)
        gtl_text_add(&text,
                     "%d: %d runs of at most %s. Each time the load has to be held by other means, a stopper "
                     "or a brake that is rated for it, while the tackle is drawn out and takes a new hold; "
                     "a competent person sees to that. What the load settles back is not counted, and every "
                     "run is taken to be as long as the first",
                     bill->resets, bill->resets + 1, down(composer, bill->run).text);
    else if (bill->end == GTL_WAY_BLOCKED)
        gtl_text_add(&text,
                     "none helps: no grab or hitch of the tackle holds a rope on which it could take a "
                     "new hold. Draw the load nearer, or hang the tackle higher");
    else
        gtl_text_add(&text, "not known: the way up could not be worked so far");
    gtl_document_put(composer->document, GTL_PAIR, "Resets", &text);
    if (bill->resets != 0) gtl_document_strong(composer->document);
}

static void put_lift(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    const gtl_rope_bill *bill = composer->sheet->rope_bill;
    if (!isnan(rig->lift))
        gtl_document_pair(composer->document, "Lift", "%s, from where %s is drawn",
                          length(composer, rig->lift).text, gtl_lifted_name(rig));
    if (rig->hand < 0) return;
    put_run(composer);
    if (!isnan(rig->lift)) put_resets(composer);
    if (bill->way < rig->lift)
        gtl_document_pair(composer->document, "Figures below", "are for the first %s of the lift",
                          down(composer, bill->way).text);
}

/* --- what rope there has to be --- */

static void put_cell(gtl_composer *composer, double metres)
{
    gtl_document_cell(composer->document, "%s", gtl_figure_length_up(&composer->units, metres).text);
}

static void rope_row(gtl_composer *composer, const gtl_rope_need *need)
{
    const gtl_line *line = &composer->rig->lines[need->line];
    gtl_document_cell(composer->document, "%s", line->name);
    put_cell(composer, need->now);
    put_cell(composer, need->comes);
    put_cell(composer, need->open_wraps > 0 && need->wraps == 0 ? NAN : need->wraps);
    put_cell(composer, line->spare);
    put_cell(composer, need->needed);
    gtl_document_cell(composer->document, "%s",
                      isnan(line->have) ? "-" : gtl_figure_length(&composer->units, line->have).text);
}

static void table(gtl_composer *composer)
{
    static const gtl_column columns[] = {{"Rope", false},         {"rove now", true}, {"to the hand", true},
                                         {"round sheaves", true}, {"spare", true},    {"needed", true},
                                         {"there is", true}};
    const gtl_rope_bill *bill = composer->sheet->rope_bill;
    gtl_document_table(composer->document, columns, sizeof columns / sizeof *columns);
    for (int i = 0; i < bill->rope_count; i++) rope_row(composer, &bill->ropes[i]);
}

static void put_open_wraps(gtl_composer *composer)
{
    const gtl_rope_bill *bill = composer->sheet->rope_bill;
    for (int i = 0; i < bill->rope_count; i++) {
        const gtl_rope_need *need = &bill->ropes[i];
        if (need->open_wraps == 0) continue;
        gtl_document_bullet(
            composer->document,
            "%s: what lies round %d of its sheaves or bends is not counted, since no diameter "
            "is stated there.",
            composer->rig->lines[need->line].name, need->open_wraps);
    }
}

static void put_terms(gtl_composer *composer)
{
    bool spare = true;
    const gtl_rope_bill *bill = composer->sheet->rope_bill;
    for (int i = 0; i < bill->rope_count; i++)
        spare = spare && !isnan(composer->rig->lines[bill->ropes[i].line].spare);
    put_open_wraps(composer);
    gtl_document_bullet(
        composer->document,
        "Lengths are from centre to centre, at rest, on places worked out along the lift. Rope "
        "stretch is not counted%s.",
        spare ? "" : ", nor, where no `spare` is stated, are knots, tails and what the hand holds");
    if (composer->rig->hand >= 0)
        gtl_document_bullet(composer->document,
                            "Only what is next to each other on a rope is watched for meeting, not loads, "
                            "knots or other parts of the rig.");
}

void gtl_compose_rope_bill(gtl_composer *composer)
{
    const gtl_rope_bill *bill = composer->sheet->rope_bill;
    if (!bill) return;
    gtl_document_heading(composer->document, "Rope bill [%s]", composer->units.length);
    if (!bill->worked) {
        gtl_document_paragraph(composer->document, "Not worked: the rig does not hold where it is drawn.");
        gtl_document_strong(composer->document);
        return;
    }
    put_lift(composer);
    table(composer);
    put_terms(composer);
}
