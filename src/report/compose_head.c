/* compose_head.c - what a reader must see first: verdict, what governs, effort, cautions.
 *
 * All of it fits the first 24 lines, whatever the user typed: what can be long is shortened here and stands
 * whole further down. */
#include "base/text.h"
#include "report/compose.h"
#include "report/words.h"

#include <math.h>
#include <stdlib.h>

#define TITLE_LINES  2
#define ORIGIN_LINES 1
#define REASON_LINES 3
/* Of a list of parts, or of losses, in the head. */
#define NAMES_IN_HEAD 2

static const char *const verdicts[] = {
    [GTL_WITHIN] = "WITHIN the ratings typed in",
    [GTL_OVER] = "OVER: do not load this rig as it is",
    [GTL_UNRATED] = "UNRATED: too little is stated to say more",
};

/* Place, date and author, as far as stated. */
static void origin(gtl_composer *composer)
{
    const gtl_rig *rig = composer->rig;
    const char *stated[] = {rig->place, rig->date, rig->by};
    gtl_text text = {0};
    for (size_t i = 0; i < sizeof stated / sizeof *stated; i++)
        if (stated[i][0]) gtl_compose_join(&text, ", ", stated[i]);
    bool any = text.length > 0;
    char *line = gtl_text_take(&text);
    if (any || !line) gtl_document_short(composer->document, ORIGIN_LINES, line);
    free(line);
}

/* A sink for words.h. */
static void add_reason(void *text, const char *sentence)
{
    gtl_compose_join(text, "; ", sentence);
}

/* The cases that the verdict rests on: all but the losses, and the first of those. */
static void add_scope(gtl_text *text, const gtl_sheet *sheet)
{
    int losses = 0;
    for (int i = 0; i < sheet->outcome_count; i++) {
        losses += sheet->outcomes[i].kind == GTL_LOST;
        if (losses <= NAMES_IN_HEAD) gtl_text_add(text, "%s%s", i > 0 ? ", " : "", sheet->outcomes[i].name);
    }
    if (losses > NAMES_IN_HEAD) gtl_text_add(text, " and %d more, see Cases", losses - NAMES_IN_HEAD);
}

static void verdict(gtl_composer *composer)
{
    gtl_text scope = {0};
    gtl_text_add(&scope, "%s (cases: ", verdicts[composer->sheet->verdict]);
    add_scope(&scope, composer->sheet);
    gtl_text_add(&scope, ")");
    gtl_document_put(composer->document, GTL_PAIR, "Verdict", &scope);
    gtl_document_strong(composer->document);
    gtl_text reasons = {0};
    gtl_words_why(composer->sheet, NAMES_IN_HEAD, add_reason, &reasons);
    if (reasons.length == 0 && !reasons.failed) return;
    gtl_document_put(composer->document, GTL_PAIR, "Because", &reasons);
    gtl_document_shorten(composer->document, REASON_LINES);
}

/* Strong words where the figures were asked for a load over people. */
static void people(gtl_composer *composer)
{
    const gtl_hardware_row *use = composer->rig->use;
    if (use && use->over_people)
        gtl_document_pair(
            composer->document, "People",
            "LOADS OVER PEOPLE (%s): factors are doubled where the law says so; this is no leave "
            "to stand below",
            use->name);
}

static void governs(gtl_composer *composer)
{
    const gtl_component *worst = gtl_compose_worst(composer->sheet);
    if (!worst) {
        gtl_document_pair(composer->document, "Governs", "no part has a rating that could be checked");
        return;
    }
    gtl_text text = {0};
    gtl_text_add(&text, "%s %s, ", gtl_kind_name(worst->kind), worst->name);
    if (isinf(worst->utilisation))
        gtl_text_add(&text, "used in a way that is not allowed");
    else
        gtl_text_add(&text, "at %s %% of its rating", gtl_figure_utilisation(worst->utilisation).text);
    gtl_text_add(&text, ", by %s%s", composer->sheet->outcomes[worst->governing].name,
                 worst->push ? ", in push" : "");
    gtl_document_put(composer->document, GTL_PAIR, "Governs", &text);
}

/* The pull of the hand in one outcome, with what belongs to it. */
static void pull(gtl_composer *composer, const char *label, const gtl_outcome *outcome)
{
    const gtl_thing *hand = &outcome->rig->things[outcome->rig->hand];
    double force = outcome->state->effort;
    gtl_text text = {0};
    const double *band = outcome->band.pull ? outcome->band.pull[outcome->rig->hand] : NULL;
    if (band && !isnan(band[1])) force = band[1];
    if (band && !gtl_is_one_force(&composer->units, band[0], band[1]))
        gtl_text_add(&text, "%s to ", gtl_figure_rating(&composer->units, band[0]).text);
    gtl_text_add(&text, "%s", gtl_figure_force_unit(&composer->units, force).text);
    if (composer->units.kgf) gtl_text_add(&text, " (%s kgf)", gtl_figure_kgf(force).text);
    gtl_text_add(&text, " by %s", hand->name);
    if (hand->people > 1)
        gtl_text_add(&text, ", %s for each of %d people",
                     gtl_figure_force_unit(&composer->units, force / hand->people).text, hand->people);
    if (outcome->velocity_ratio < 0 && outcome->kind == GTL_LOWER)
        gtl_text_add(&text, "; it hauls the load down");
    else if (outcome->velocity_ratio < 0)
        gtl_text_add(&text, "; it holds back, rope runs out");
    else if (outcome->kind == GTL_HOLD)
        gtl_text_add(&text, "; without friction, nothing moves");
    else if (outcome->kind == GTL_LOWER)
        gtl_text_add(&text, "; friction helps");
    else if (composer->sheet->why & GTL_WHY_FRICTION)
        gtl_text_add(&text, "; more in truth, friction is not stated");
    gtl_document_put(composer->document, GTL_PAIR, label, &text);
}

static void effort(gtl_composer *composer)
{
    const gtl_outcome *raise = gtl_sheet_outcome(composer->sheet, GTL_RAISE);
    const gtl_outcome *lower = gtl_sheet_outcome(composer->sheet, GTL_LOWER);
    const gtl_outcome *hold = gtl_sheet_outcome(composer->sheet, GTL_HOLD);
    if (composer->rig->hand < 0)
        gtl_document_pair(composer->document, "Effort", "%s: the rig is worked as it hangs",
                          gtl_compose_has_hand(composer->rig) ? "every pull is known" : "nobody hauls");
    else if (raise && raise->possible)
        pull(composer, "To raise", raise);
    else if (raise)
        gtl_document_pair(composer->document, "To raise", "cannot be; see Effort below");
    else if (hold && hold->possible)
        pull(composer, "To hold", hold);
    else if (!lower || !lower->possible)
        gtl_document_pair(composer->document, "Effort", "none worked out; see Effort below");
    if (!raise && lower && lower->possible) pull(composer, "To lower", lower);
}

void gtl_compose_head(gtl_composer *composer)
{
    const char *title = composer->rig->title;
    gtl_document_title(composer->document, TITLE_LINES, title[0] ? title : composer->rig->file);
    origin(composer);
    verdict(composer);
    people(composer);
    gtl_compose_light_timber(composer, NAMES_IN_HEAD);
    governs(composer);
    effort(composer);
    gtl_compose_put_cautions(composer, GTL_PAIR, "Cautions");
}
