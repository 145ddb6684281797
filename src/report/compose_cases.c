/* compose_cases.c - what each case comes to: effort, tensions, forces on blocks, joints, anchors and guides.
 */
#include "base/text.h"
#include "report/compose.h"
#include "report/friction_words.h"
#include "report/geometry.h"
#include "rig/kind.h"

#include <math.h>
#include <stdlib.h>

/* --- effort --- */

static gtl_figure pull(const gtl_composer *composer, const gtl_outcome *outcome, int hand)
{
    return gtl_figure_force(&composer->units, gtl_outcome_pull(outcome, hand));
}

static gtl_figure pull_kgf(const gtl_composer *composer, const gtl_outcome *outcome, int hand)
{
    (void)composer;
    return gtl_figure_kgf(gtl_outcome_pull(outcome, hand));
}

static gtl_figure velocity_ratio(const gtl_composer *composer, const gtl_outcome *outcome, int index)
{
    (void)composer, (void)index;
    return gtl_figure_ratio(outcome->velocity_ratio);
}

static gtl_figure advantage(const gtl_composer *composer, const gtl_outcome *outcome, int index)
{
    (void)composer, (void)index;
    return gtl_figure_ratio(outcome->estimated_advantage);
}

static gtl_figure efficiency(const gtl_composer *composer, const gtl_outcome *outcome, int index)
{
    (void)composer, (void)index;
    return gtl_figure_percent(outcome->efficiency);
}

static void hand_rows(gtl_composer *composer, int hand)
{
    const char *name = composer->rig->things[hand].name;
    gtl_compose_case_row(composer, pull, hand, "pull of %s [%s]", name, composer->units.force);
    if (!composer->units.kgf) return;
    gtl_compose_case_row(composer, pull_kgf, hand, "pull of %s [kgf]", name);
}

/* How many states a case stands for, and which one is printed. */
static void tell_variants(gtl_composer *composer, const gtl_outcome *outcome)
{
    bool jam = outcome->kind == GTL_JAM;
    bool drop = outcome->kind == GTL_DROP && outcome->rig->hand >= 0;
    bool open = outcome->variants > (jam || drop ? 2 : 1);
    gtl_text text = {0};
    gtl_text_add(&text, "%s: %d states were rated, ", outcome->name, outcome->variants);
    if (jam) gtl_text_add(&text, "without friction and with it as in raise%s", open ? "; " : "");
    if (drop) gtl_text_add(&text, "with equal tensions and with friction as in lower%s", open ? "; " : "");
    if (open) gtl_text_add(&text, "with friction one way and the other at undecided stops");
    gtl_text_add(&text, "%s. ", outcome->every_combination ? "" : ", not in every combination");
    gtl_text_add(&text, "Figures are of the one %s; demands take the worst.",
                 jam    ? "without friction"
                 : drop ? "with equal tensions"
                        : "with equal tensions there");
    gtl_document_put(composer->document, GTL_BULLET, NULL, &text);
}

/* What a case has to say that no figure does. */
static void remarks(gtl_composer *composer, const gtl_outcome *outcome)
{
    const char *name = outcome->name;
    if (!outcome->possible) {
        bool elsewhere = outcome->band.tension && !isnan(outcome->band.tension[0][0]);
        gtl_document_bullet(
            composer->document, "%s%s: %s%s", name, outcome->falls ? "" : " cannot be", outcome->reason,
            elsewhere ? "; within the ranges stated there is friction with which it can be" : "");
        return;
    }
    if (outcome->variants > 1) tell_variants(composer, outcome);
    if (outcome->places > 1)
        gtl_document_bullet(
            composer->document,
            "%s: the rig can hang in %d places near the drawing; all were rated, the nearest is "
            "printed.",
            name, outcome->places);
}

static void effort_table(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    gtl_compose_case_table(composer, "Case");
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_HAND) hand_rows(composer, i);
    if (rig->hand < 0) return;
    const char *length = composer->units.length;
    gtl_compose_case_row(composer, velocity_ratio, 0, "rope to haul for 1 %s of lift [%s]", length, length);
    gtl_compose_case_row(composer, advantage, 0, "estimated advantage (load over pull)");
    gtl_compose_case_row(composer, efficiency, 0, "efficiency [%%]");
}

/* The contract's advantage counts one load: say so where that is not all that moves. */
static void advantage_note(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    bool others = false;
    for (int i = 0; i < rig->thing_count; i++)
        others |= gtl_is_of(rig->things[i].kind, GTL_WEIGHT_KINDS) && !gtl_is_lifted(rig, i) &&
                  !rig->nodes[rig->things[i].node].fixed;
    for (int i = 0; i < rig->line_count; i++) others |= rig->lines[i].weight > 0;
    if (others)
        gtl_document_paragraph(
            composer->document,
            "The estimated advantage counts the weight of %s alone; other weights move too, so "
            "that it is no measure of the tackle here.",
            gtl_lifted_name(rig));
}

void gtl_compose_effort(gtl_composer *composer)
{
    const gtl_outcome *hold = gtl_sheet_outcome(composer->sheet, GTL_HOLD);
    gtl_document_heading(composer->document, "Effort");
    if (gtl_compose_has_hand(composer->rig))
        effort_table(composer);
    else
        gtl_document_paragraph(composer->document, "Nobody hauls: the rig is worked as it hangs.");
    if (composer->rig->hand >= 0 && hold && hold->possible)
        gtl_document_paragraph(composer->document, "Ideal advantage (velocity ratio of hold): %s",
                               gtl_figure_ratio(hold->velocity_ratio).text);
    if (composer->rig->hand >= 0) advantage_note(composer);
    for (int i = 0; i < composer->sheet->outcome_count; i++) remarks(composer, &composer->sheet->outcomes[i]);
}

/* --- lines --- */

static gtl_figure tension(const gtl_composer *composer, const gtl_outcome *outcome, int part)
{
    if (outcome->part && outcome->part[part] < 0) return (gtl_figure){"gone"};
    if (gtl_outcome_slack(outcome, part)) return (gtl_figure){"slack"};
    return gtl_figure_force(&composer->units, gtl_outcome_tension(outcome, part));
}

static const char *stop_name(const gtl_rig *rig, int stop)
{
    return rig->things[rig->stops[stop].thing].name;
}

void gtl_compose_lines(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    bool pushed = false;
    gtl_document_heading(composer->document, "Tension in each part of line [%s]", composer->units.force);
    gtl_compose_case_table(composer, "Line and part");
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        gtl_document_row_head(composer->document, "%s %s", gtl_kind_name(line->kind), line->name);
        for (int k = 0; k < line->stop_count - 1; k++) {
            const gtl_part *part = &rig->parts[line->first_part + k];
            gtl_compose_case_row(composer, tension, line->first_part + k, "  %s to %s",
                                 stop_name(rig, part->from), stop_name(rig, part->to));
        }
        pushed |= line->kind == GTL_SPAR;
    }
    if (pushed) gtl_document_paragraph(composer->document, "A spar with a minus sign is pushed.");
}

/* --- blocks, fairleads and joints --- */

static gtl_figure rope_force(const gtl_composer *composer, const gtl_outcome *outcome, int thing)
{
    double force = gtl_vector_size(outcome->forces.rope[thing], composer->rig->dim);
    return gtl_figure_force(&composer->units, gtl_is_loose(outcome, thing) ? NAN : force);
}

static gtl_figure wrap(const gtl_composer *composer, const gtl_outcome *outcome, int run)
{
    int at = gtl_run_in(composer->rig, outcome, run);
    return gtl_figure_degrees(at < 0 ? NAN : gtl_wrap_angle(outcome, at));
}

/* The friction that a block or fairlead was worked with. */
static void friction_head(gtl_composer *composer, const gtl_thing *thing)
{
    gtl_text words = {0};
    gtl_friction_words(&words, thing);
    char *friction = gtl_text_take(&words);
    if (friction)
        gtl_document_row_head(composer->document, "%s %s, %s%s", gtl_kind_name(thing->kind), thing->name,
                              friction, thing->friction_stated ? "" : ": worked without");
    else
        composer->document->failed = true;
    free(friction);
}

static void wrap_rows(gtl_composer *composer, int thing)
{
    const gtl_rig *rig = composer->rig;
    for (int i = 0; i < rig->run_count; i++) {
        if (rig->runs[i].thing != thing) continue;
        gtl_compose_case_row(composer, wrap, i, "  wrap of %s%s [deg]",
                             rig->lines[rig->pieces[rig->runs[i].piece].line].name,
                             isnan(rig->things[thing].wrap) ? "" : ", as stated");
    }
}

static void block(gtl_composer *composer, const gtl_component *part)
{
    friction_head(composer, &composer->rig->things[part->index]);
    int index = (int)(part - composer->sheet->components);
    gtl_compose_case_row(composer, gtl_compose_demand, index, "  whole force on it");
    gtl_compose_case_row(composer, rope_force, part->index, "  of that from running rope");
    wrap_rows(composer, part->index);
}

static bool is_block(gtl_kind kind)
{
    return kind == GTL_BLOCK || kind == GTL_FAIRLEAD;
}

static int count_kind(const gtl_sheet *sheet, bool (*wanted)(gtl_kind))
{
    int count = 0;
    for (int i = 0; i < sheet->component_count; i++) count += wanted(sheet->components[i].kind);
    return count;
}

void gtl_compose_blocks(gtl_composer *composer)
{
    if (count_kind(composer->sheet, is_block) == 0) return;
    gtl_document_heading(composer->document, "Blocks and fairleads [%s]", composer->units.force);
    gtl_compose_case_table(composer, "Block or fairlead");
    for (int i = 0; i < composer->sheet->component_count; i++)
        if (is_block(composer->sheet->components[i].kind)) block(composer, &composer->sheet->components[i]);
    gtl_document_paragraph(composer->document,
                           "A block's rating is held against the whole force on the block, "
                           "not against the tension of the line.");
}

static bool is_joint(gtl_kind kind)
{
    return kind == GTL_JOINT;
}

void gtl_compose_joints(gtl_composer *composer)
{
    if (count_kind(composer->sheet, is_joint) == 0) return;
    gtl_document_heading(composer->document, "Joints: the greatest force across each [%s]",
                         composer->units.force);
    gtl_compose_case_table(composer, "Joint");
    for (int i = 0; i < composer->sheet->component_count; i++)
        if (is_joint(composer->sheet->components[i].kind))
            gtl_compose_case_row(composer, gtl_compose_demand, i, "%s", composer->sheet->components[i].name);
}

/* --- guides --- */

static gtl_figure track(const gtl_composer *composer, const gtl_outcome *outcome, int thing)
{
    if (gtl_is_loose(outcome, thing)) return gtl_figure_force(&composer->units, NAN);
    int node = outcome->rig->things[thing].node;
    return gtl_figure_force(&composer->units,
                            gtl_vector_size(outcome->forces.track[node], composer->rig->dim));
}

void gtl_compose_guides(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    bool any = false;
    for (int i = 0; i < rig->node_count; i++) {
        if (!rig->nodes[i].guided) continue;
        if (!any) {
            gtl_document_heading(composer->document, "Guides: what the track must resist [%s]",
                                 composer->units.force);
            gtl_compose_case_table(composer, "Guided body");
        }
        any = true;
        gtl_compose_case_row(composer, track, rig->nodes[i].root, "%s", rig->things[rig->nodes[i].root].name);
    }
}
