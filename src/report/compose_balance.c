/* compose_balance.c - counterweights: what is out of balance, what the hand line takes for it, how many
 * weights are missing, and what the building holds. */
#include "base/text.h"
#include "report/compose.h"
#include "report/geometry.h"

#include <math.h>
#include <stdlib.h>

static gtl_figure force(const gtl_composer *composer, double newtons)
{
    return gtl_figure_force_unit(&composer->units, newtons);
}

static void add_kgf(gtl_text *text, const gtl_composer *composer, double newtons)
{
    gtl_text_add(text, "%s", force(composer, newtons).text);
    if (composer->units.kgf) gtl_text_add(text, " (%s kgf)", gtl_figure_kgf(newtons).text);
}

static bool is_level(const gtl_composer *composer, double over)
{
    return fabs(over) <= composer->units.noise;
}

/* Which side is the heavier. */
static const char *heavy(double over)
{
    return over > 0 ? "lifted" : "arbor";
}

/* What is in it, and how it goes with the load. */
static void stands(gtl_composer *composer, const gtl_balance *balance)
{
    const gtl_thing *arbor = &composer->rig->things[balance->arbor];
    gtl_text text = {0};
    add_kgf(&text, composer, arbor->weight);
    gtl_text_add(&text, " in it, itself included");
    if (!isnan(balance->travel))
        gtl_text_add(&text, "; goes %s %s %s for 1 %s of lift", gtl_figure_ratio(fabs(balance->travel)).text,
                     composer->units.length, balance->travel < 0 ? "up" : "down", composer->units.length);
    gtl_document_put(composer->document, GTL_PAIR, arbor->name, &text);
}

/* The same for every arbor: what is left of all weights at the lifted load. */
static void out_of_balance(gtl_composer *composer, const gtl_balance *balance)
{
    gtl_text text = {0};
    if (is_level(composer, balance->over)) {
        gtl_text_add(&text, "nothing");
    } else {
        add_kgf(&text, composer, fabs(balance->over));
        gtl_text_add(&text, " at the load, %s side heavy", heavy(balance->over));
    }
    gtl_text_add(&text, "; at rest, without friction");
    gtl_document_put(composer->document, GTL_PAIR, "Out of balance", &text);
}

/* Who pulls in each of the slow cases, and how much. */
static void on_the_line(gtl_composer *composer)
{
    gtl_text text = {0};
    const gtl_sheet *sheet = composer->sheet;
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        if (outcome->kind > GTL_LOWER) continue;
        gtl_text_add(&text, "%s%s ", text.length > 0 ? "; " : "", outcome->name);
        if (!outcome->possible)
            gtl_text_add(&text, "cannot be");
        else if (is_level(composer, outcome->state->effort))
            gtl_text_add(&text, "nothing");
        else
            gtl_text_add(&text, "%s by %s", force(composer, outcome->state->effort).text,
                         outcome->rig->things[outcome->rig->hand].name);
    }
    gtl_document_put(composer->document, GTL_PAIR, "On the hand line", &text);
}

static void needed(gtl_composer *composer, const gtl_balance *balance)
{
    const gtl_thing *arbor = &composer->rig->things[balance->arbor];
    double more = balance->needed - arbor->weight;
    gtl_text text = {0};
    if (isnan(balance->needed)) {
        gtl_text_add(&text, "no weight in %s makes it: it does not go down as the load rises", arbor->name);
    } else if (!(balance->needed > 0)) {
        gtl_text_add(&text, "even without %s its side is the heavier", arbor->name);
    } else {
        add_kgf(&text, composer, balance->needed);
        gtl_text_add(&text, " in %s", arbor->name);
        if (!is_level(composer, more))
            gtl_text_add(&text, ": %s %s", force(composer, fabs(more)).text, more > 0 ? "more" : "less");
    }
    gtl_document_put(composer->document, GTL_PAIR, "For balance", &text);
}

static void choice_row(gtl_composer *composer, const gtl_balance *balance, int index)
{
    const gtl_counterweights *choice = &balance->choice[index];
    const gtl_thing *arbor = &composer->rig->things[balance->arbor];
    bool level = is_level(composer, choice->over);
    bool nearest = balance->choice_count > 1 && index == balance->nearest;
    double weight = arbor->weight + choice->count * arbor->each;
    gtl_document_cell(composer->document, "%s%s%s%s",
                      choice->count < 0   ? "take out "
                      : choice->count > 0 ? "put in "
                                          : "as it is",
                      choice->count == 0 ? "" : gtl_figure_typed(fabs(choice->count)).text,
                      weight > 0 ? "" : ", more than is in it", nearest ? " (nearest)" : "");
    gtl_document_cell(composer->document, "%s", level ? "-" : heavy(choice->over));
    gtl_document_cell(composer->document, "%s",
                      gtl_figure_force(&composer->units, level ? 0 : fabs(choice->over)).text);
    gtl_figure line = gtl_figure_force(&composer->units, level ? 0 : choice->on_line);
    gtl_document_cell(composer->document, "%s", isnan(choice->on_line) ? "runs away" : line.text);
}

static void choices(gtl_composer *composer, const gtl_balance *balance)
{
    const gtl_thing *arbor = &composer->rig->things[balance->arbor];
    const char *unit = composer->units.force;
    gtl_text head = {0}, over = {0}, line = {0};
    gtl_text_add(&head, "Weights of %s in %s",
                 gtl_figure_mass_unit(&composer->units, arbor->each / composer->rig->gravity).text,
                 arbor->name);
    gtl_text_add(&over, "by, %s", unit);
    gtl_text_add(&line, "on the hand line, %s", unit);
    char *heads[] = {gtl_text_take(&head), gtl_text_take(&over), gtl_text_take(&line)};
    if (heads[0] && heads[1] && heads[2]) {
        const gtl_column columns[] = {
            {heads[0], false}, {"heavy side", false}, {heads[1], true}, {heads[2], true}};
        gtl_document_table(composer->document, columns, 4);
        for (int i = 0; i < balance->choice_count; i++) choice_row(composer, balance, i);
    } else {
        composer->document->failed = true;
    }
    for (int i = 0; i < 3; i++) free(heads[i]);
}

/* --- the building --- */

static void held(gtl_composer *composer, int component, const gtl_outcome *outcome)
{
    const gtl_component *part = &composer->sheet->components[component];
    const double *pull = outcome->forces.passed[part->index];
    int dim = composer->rig->dim;
    double down = -pull[dim - 1], across = gtl_vector_size(pull, dim - 1);
    gtl_document_cell(composer->document, "%s", part->name);
    gtl_document_cell(composer->document, "%s", gtl_figure_force(&composer->units, down).text);
    gtl_document_cell(composer->document, "%s", gtl_figure_force(&composer->units, across).text);
}

/* What each anchor has to hold, down and across, by the case in which the hand pulls most against friction.
 */
static void building(gtl_composer *composer)
{
    static const gtl_column columns[] = {
        {"What the building holds", false}, {"down", true}, {"across", true}};
    const gtl_sheet *sheet = composer->sheet;
    const gtl_outcome *raise = gtl_sheet_outcome(sheet, GTL_RAISE);
    const gtl_outcome *told = raise && raise->possible ? raise : gtl_sheet_outcome(sheet, GTL_HOLD);
    double down = 0;
    if (!told->possible) return;
    gtl_document_table(composer->document, columns, 3);
    for (int i = 0; i < sheet->component_count; i++) {
        if (sheet->components[i].kind != GTL_ANCHOR) continue;
        held(composer, i, told);
        down -= told->forces.passed[sheet->components[i].index][composer->rig->dim - 1];
    }
    gtl_document_cell(composer->document, "all together");
    gtl_document_cell(composer->document, "%s", gtl_figure_force(&composer->units, down).text);
    gtl_document_cell(composer->document, "-");
    gtl_document_paragraph(
        composer->document,
        "By %s, in %s; minus is up. Anchors above has every case, and the direction of the "
        "greatest pull.",
        told->name, composer->units.force);
}

static void no_figures(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    const char *mend =
        rig->hand < 0 ? "give the hand line a hand without `pull`."
        : rig->things[rig->hand].other >= 0
            ? "see Effort."
            : "see Effort; an endless hand line has a hand on each side: write the other one too, "
              "with `or`.";
    gtl_document_paragraph(composer->document, "Not worked out, since %s: %s",
                           rig->hand < 0 ? "nobody hauls whose pull could be" : "hold cannot be", mend);
}

void gtl_compose_balance(gtl_composer *composer)
{
    const gtl_sheet *sheet = composer->sheet;
    if (sheet->balance_count == 0) return;
    const gtl_balance *first = &sheet->balances[0];
    gtl_document_heading(composer->document, "Balance");
    for (int i = 0; i < sheet->balance_count; i++) stands(composer, &sheet->balances[i]);
    if (isnan(first->over)) {
        no_figures(composer);
    } else {
        out_of_balance(composer, first);
        on_the_line(composer);
        for (int i = 0; i < sheet->balance_count; i++) needed(composer, &sheet->balances[i]);
        for (int i = 0; i < sheet->balance_count; i++)
            if (sheet->balances[i].choice_count > 0) choices(composer, &sheet->balances[i]);
        building(composer);
    }
    gtl_document_bullet(composer->document,
                        "Load the batten first, then the arbor; unload the arbor first, then the batten. In "
                        "between, all that is on one side alone is out of balance: no hand holds that, so it "
                        "has to be held by other means until it is balanced.");
}
