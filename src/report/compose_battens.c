/* compose_battens.c - battens: as they were read, and what comes down on each pick, both ways of sharing side
 * by side. */
#include "base/text.h"
#include "report/compose.h"

#include <math.h>

#define PASCALS_A_GIGAPASCAL 1e9

/* --- as read --- */

static const char *pick_name(const gtl_rig *rig, const gtl_pick *pick)
{
    return rig->things[pick->thing].name;
}

static const gtl_pick *pick_at(const gtl_rig *rig, const gtl_batten *batten, int index)
{
    return &rig->picks[batten->first_pick + index];
}

static void add_hung(const gtl_composer *composer, gtl_text *text, const gtl_hung *hung)
{
    const gtl_print_units *units = &composer->units;
    gtl_text_add(text, "%s ", gtl_figure_force_unit(units, hung->weight).text);
    if (hung->to > hung->from)
        gtl_text_add(text, "from %s to %s", gtl_figure_length_unit(units, hung->from).text,
                     gtl_figure_length_unit(units, hung->to).text);
    else
        gtl_text_add(text, "at %s", gtl_figure_length_unit(units, hung->from).text);
}

void gtl_compose_batten_pair(gtl_composer *composer, const gtl_batten *batten)
{
    const gtl_rig *rig = composer->rig;
    const gtl_print_units *units = &composer->units;
    bool lifted = rig->load >= 0 && gtl_batten_of(rig, rig->load) == (int)(batten - rig->battens);
    gtl_text text = {0};
    gtl_text_add(&text, "batten%s, %s long", lifted ? " that is lifted" : "",
                 gtl_figure_length_unit(units, batten->length).text);
    if (batten->pipe) gtl_text_add(&text, ", pipe %s", batten->pipe->name);
    gtl_text_add(&text, ", itself %s", gtl_figure_force_unit(units, batten->weight).text);
    for (int i = 0; i < batten->hung_count; i++) {
        gtl_text_add(&text, "%s", i == 0 ? "; on it " : ", ");
        add_hung(composer, &text, &rig->hung[batten->first_hung + i]);
    }
    gtl_text_add(&text, "; in all %s", gtl_figure_force_unit(units, batten->total).text);
    if (units->kgf) gtl_text_add(&text, " (%s kgf)", gtl_figure_kgf(batten->total).text);
    gtl_document_put(composer->document, GTL_PAIR, batten->name, &text);
}

/* --- shared out --- */

static void pick_row(gtl_composer *composer, const gtl_pick *pick)
{
    gtl_document *document = composer->document;
    const gtl_print_units *units = &composer->units;
    gtl_document_cell(document, "%s", pick_name(composer->rig, pick));
    gtl_document_cell(document, "%s", gtl_figure_length(units, pick->position).text);
    gtl_document_cell(document, "%s", gtl_figure_force(units, pick->stiff).text);
    gtl_document_cell(document, "%s", gtl_figure_force(units, pick->springs).text);
    gtl_document_cell(document, "%s", gtl_figure_force(units, fabs(pick->springs - pick->stiff)).text);
    gtl_document_cell(document, "%s", gtl_figure_force(units, pick->settles).text);
}

static void batten_rows(gtl_composer *composer, const gtl_batten *batten)
{
    gtl_document_row_head(composer->document, "batten %s: in all %s, centre of gravity at %s", batten->name,
                          gtl_figure_force(&composer->units, batten->total).text,
                          gtl_figure_length_unit(&composer->units, batten->centre).text);
    for (int i = 0; i < batten->pick_count; i++) pick_row(composer, pick_at(composer->rig, batten, i));
}

/* Slack lines, which the shares are worked without. */
static void slack_bullets(gtl_composer *composer, const gtl_batten *batten)
{
    const gtl_rig *rig = composer->rig;
    for (int i = 0; i < batten->pick_count; i++) {
        const gtl_pick *pick = pick_at(rig, batten, i);
        if (pick->stiff == 0 && pick->pushes < 0)
            gtl_document_bullet(composer->document,
                                "%s: on lines that do not give its line is slack. It would have to push %s; "
                                "it was let go, and the others worked again without it.",
                                pick_name(rig, pick),
                                gtl_figure_force_unit(&composer->units, -pick->pushes).text);
        else if (pick->stiff == 0)
            gtl_document_bullet(composer->document, "%s: on lines that do not give its line is slack.",
                                pick_name(rig, pick));
        if (pick->springs == 0)
            gtl_document_bullet(composer->document, "%s: on lines that give alike its line is slack.",
                                pick_name(rig, pick));
    }
}

static const gtl_pick *most_settling(const gtl_rig *rig, const gtl_batten *batten)
{
    const gtl_pick *most = pick_at(rig, batten, 0);
    for (int i = 1; i < batten->pick_count; i++)
        if (pick_at(rig, batten, i)->settles > most->settles) most = pick_at(rig, batten, i);
    return most;
}

static void level_bullet(gtl_composer *composer, const gtl_batten *batten)
{
    const gtl_rig *rig = composer->rig;
    if (batten->pick_count < 3) {
        gtl_document_bullet(
            composer->document, "%s: %s by statics alone, however stiff it is; millimetres change nothing.",
            batten->name, batten->pick_count == 1 ? "one line carries all" : "two lines share");
    } else if (isnan(batten->stiffness)) {
        gtl_document_bullet(composer->document,
                            "%s: how much 10 mm out of level change is not known, since how stiff it is was "
                            "not stated (a `pipe` whose row states its `elasticity` would).",
                            batten->name);
    } else {
        const gtl_pick *most = most_settling(rig, batten);
        gtl_document_bullet(
            composer->document,
            "%s: 10 mm out of level matter most at %s, which gains %s if its line is so much "
            "too short. From the sizes of %s and %s GPa, on lines that do not give; how much "
            "the lines give is not known.",
            batten->name, pick_name(rig, most), gtl_figure_force_unit(&composer->units, most->settles).text,
            batten->pipe->name,
            gtl_figure_typed(batten->pipe->numbers[GTL_HW_MODULUS] / PASCALS_A_GIGAPASCAL).text);
    }
}

void gtl_compose_battens(gtl_composer *composer)
{
    static const gtl_column columns[] = {{"Pick", false},   {"along", true},   {"stiff lines", true},
                                         {"springs", true}, {"between", true}, {"10 mm short", true}};
    const gtl_rig *rig = composer->rig;
    if (rig->batten_count == 0) return;
    gtl_document_heading(composer->document, "Battens: what comes down on each pick [%s]",
                         composer->units.force);
    gtl_document_paragraph(composer->document,
                           "Each batten hangs level. Stiff lines: it bends over lines that do not give. "
                           "Springs: it does not bend, and its lines give alike. With more than two lines "
                           "neither is the truth, which depends on batten, lines and millimetres; each "
                           "demand takes the worse of the two. Figures of cases are those on stiff lines. "
                           "Along: from its first end "
                           "[%s]. 10 mm short: what a pick gains on stiff lines if its line is so much too "
                           "short; in no demand.",
                           composer->units.length);
    gtl_document_table(composer->document, columns, sizeof columns / sizeof *columns);
    for (int i = 0; i < rig->batten_count; i++) batten_rows(composer, &rig->battens[i]);
    for (int i = 0; i < rig->batten_count; i++) {
        slack_bullets(composer, &rig->battens[i]);
        level_bullet(composer, &rig->battens[i]);
    }
}
