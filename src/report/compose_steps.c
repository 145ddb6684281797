/* compose_steps.c - from each part's paper rating to what its demand is held against, step by step. */
#include "base/text.h"
#include "rate/rating.h"
#include "report/compose.h"

#include <math.h>

/* --- paper ratings --- */

static const char *const papers[] = {[GTL_STEP_LIMIT] = "limit",
                                     [GTL_STEP_WLL] = "WLL",
                                     [GTL_STEP_PUSH_WLL] = "WLL in push",
                                     [GTL_STEP_MBS] = "MBS"};

static void add_paper(gtl_text *text, const gtl_print_units *units, gtl_step_kind kind, double newtons,
                      const gtl_hardware_row *row)
{
    gtl_text_add(text, "%s %s", gtl_figure_rating_unit(units, newtons).text, papers[kind]);
    if (row) gtl_text_add(text, " (%s)", row->name);
}

/* What is said of the ratings that a part's demand was not held against. */
typedef struct others {
    gtl_text *text;
    const gtl_composer *composer;
    const gtl_component *part;
    bool any;
} others;

static void add_other(others *o, gtl_step_kind kind, double newtons, const gtl_hardware_row *row)
{
    const gtl_composer *composer = o->composer;
    const gtl_step *rules = o->part->step_count > 0 ? &composer->sheet->steps[o->part->first_step] : NULL;
    double factor = gtl_rating_of(composer->rig, o->part->kind, o->part->index)->design_factor;
    if (isnan(newtons) || (rules && rules->kind == kind && rules->row == row)) return;
    if (o->text->length > 0) gtl_text_add(o->text, "%s", rules && !o->any ? "; also stated: " : "; ");
    o->any = true;
    add_paper(o->text, &composer->units, kind, newtons, row);
    if (kind == GTL_STEP_MBS && isnan(factor))
        gtl_text_add(o->text, ", no design factor");
    else if (kind == GTL_STEP_MBS)
        gtl_text_add(o->text, " / %s = %s", gtl_figure_typed(factor).text,
                     gtl_figure_rating_unit(&composer->units, newtons / factor).text);
}

static void add_others(gtl_text *text, const gtl_composer *composer, const gtl_component *part)
{
    if (part->kind == GTL_HAND) return;
    const gtl_rating *typed = gtl_rating_of(composer->rig, part->kind, part->index);
    const gtl_hardware_row *row = gtl_gear_of(composer->rig, part->kind, part->index)->row;
    others o = {.text = text, .composer = composer, .part = part};
    add_other(&o, GTL_STEP_WLL, typed->wll, NULL);
    add_other(&o, GTL_STEP_PUSH_WLL, typed->push_wll, NULL);
    add_other(&o, GTL_STEP_MBS, typed->mbs, NULL);
    if (!row) return;
    add_other(&o, GTL_STEP_WLL, row->numbers[GTL_HW_WLL], row);
    add_other(&o, GTL_STEP_PUSH_WLL, row->numbers[GTL_HW_PUSH_WLL], row);
    add_other(&o, GTL_STEP_MBS, row->numbers[GTL_HW_MBS], row);
}

/* --- what takes from them --- */

/* Why a step leaves what it leaves. */
static void add_reason(gtl_text *text, const gtl_step *step)
{
    const char *row = step->row ? step->row->name : "";
    gtl_figure angle = gtl_figure_degrees(step->value);
    switch (step->kind) {
    case GTL_STEP_HITCH:
        gtl_text_add(text, " hitch %s", row);
        break;
    case GTL_STEP_BEND:
        gtl_text_add(text, " bend at %s, %s times the rope's diameter", step->at,
                     gtl_figure_ratio(step->value).text);
        break;
    case GTL_STEP_CHOKE:
        gtl_text_add(text, " choke angle %s deg", angle.text);
        break;
    case GTL_STEP_AXIS:
        gtl_text_add(text, " %s, %s deg off its axis", row, angle.text);
        break;
    case GTL_STEP_SIDE:
        gtl_text_add(text, " side load at %s deg", angle.text);
        break;
    case GTL_STEP_WEAR:
        gtl_text_add(text, " wear");
        break;
    case GTL_STEP_WET:
        gtl_text_add(text, " wet");
        break;
    default:
        gtl_text_add(text, " %s", row);
    }
    if (step->factor == 0) gtl_text_add(text, " (not allowed)");
    if (isnan(step->factor)) gtl_text_add(text, " (nothing is published for that)");
}

static void add_step(gtl_text *text, const gtl_step *step)
{
    if (step->kind == GTL_STEP_FACTOR) {
        gtl_text_add(text, " / %s", gtl_figure_typed(step->value).text);
        return;
    }
    gtl_text_add(text, " x %s", gtl_figure_share(step->factor).text);
    add_reason(text, step);
}

static void add_steps(gtl_text *text, const gtl_composer *composer, const gtl_component *part)
{
    if (part->step_count == 0) return;
    const gtl_step *steps = &composer->sheet->steps[part->first_step];
    add_paper(text, &composer->units, steps[0].kind, steps[0].factor, steps[0].row);
    for (int i = 1; i < part->step_count; i++) add_step(text, &steps[i]);
    if (part->step_count == 1) return;
    if (isnan(part->capacity))
        gtl_text_add(text, ": no rating");
    else
        gtl_text_add(text, " = %s", gtl_figure_rating_unit(&composer->units, part->capacity).text);
}

/* --- what leaves more, so that it does not count --- */

static bool counts(const gtl_composer *composer, const gtl_component *part, const gtl_hardware_row *row)
{
    for (int i = 0; i < part->step_count; i++)
        if (composer->sheet->steps[part->first_step + i].row == row) return true;
    return false;
}

static void add_idle(gtl_text *text, const gtl_composer *composer, const gtl_component *part, gtl_step step)
{
    if (!step.row || isnan(step.factor) || counts(composer, part, step.row)) return;
    gtl_text_add(text, "; leaves more, so not counted:");
    add_step(text, &step);
}

/* Of its ends and its bends the worst counts: the others are told. */
static void add_ends_and_bends(gtl_text *text, const gtl_composer *composer, const gtl_component *part)
{
    if (part->step_count == 0 || (part->kind != GTL_ROPE && part->kind != GTL_SLING)) return;
    const gtl_line *line = &composer->rig->lines[part->index];
    const gtl_hardware_row *knot = line->gear.knot, *end = line->gear.termination, *bend = line->gear.bend;
    const char *at = "";
    double ratio = gtl_tightest_bend(composer->rig, line, &at);
    double bent = bend && !isnan(ratio) ? gtl_hardware_factor(bend, ratio) : NAN;
    double tied = knot ? knot->numbers[GTL_HW_KEEPS] : NAN, ended = end ? end->numbers[GTL_HW_KEEPS] : NAN;
    add_idle(text, composer, part, (gtl_step){GTL_STEP_KNOT, knot, "", NAN, tied});
    add_idle(text, composer, part, (gtl_step){GTL_STEP_TERMINATION, end, "", NAN, ended});
    add_idle(text, composer, part, (gtl_step){GTL_STEP_BEND, bend, at, ratio, bent});
}

void gtl_compose_ratings(gtl_composer *composer)
{
    gtl_document_heading(composer->document, "Ratings step by step, in the report's unit");
    gtl_document_paragraph(composer->document,
                           "WLL is the working load limit, MBS the breaking strength, divided by the design "
                           "factor; the smaller rules. A rating typed as a mass was taken times g. What "
                           "takes from a rating stands as a factor; of an end and a bend the worse counts.");
    bool any = false;
    for (int i = 0; i < composer->sheet->component_count; i++) {
        const gtl_component *part = &composer->sheet->components[i];
        gtl_text text = {0};
        add_steps(&text, composer, part);
        add_ends_and_bends(&text, composer, part);
        add_others(&text, composer, part);
        if (text.length == 0 && !text.failed) continue;
        any = true;
        gtl_document_put(composer->document, GTL_PAIR, part->name, &text);
    }
    if (!any) gtl_document_paragraph(composer->document, "None is stated.");
}
