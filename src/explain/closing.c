/* closing.c - what it all means, in sentences that this rig bears out. */
#include "explain/raised.h"

#include <math.h>

/* As near to a round number as this it is that number [1]. */
#define NEAR 1e-9

/* --- the pull and the way --- */

/* What the effort is held against: the weights that rise, or what is left of them where others help, or known
 * pulls work against the hand or with it. */
static const char *name_raised(const gtl_raised *raised)
{
    for (int i = 0; i < raised->count; i++)
        if (raised->items[i].pull || raised->items[i].way < 0)
            return "Q, all that it works against on balance";
    return "what is raised";
}

/* The pull is smaller than what is raised, and yet greater than what the load alone weighs. */
static void tell_above_load(gtl_lesson *lesson, double ratio)
{
    double load = gtl_lifted_weight(lesson->rig), effort = lesson->hold->state->effort;
    if (!(ratio > 1) || !(effort > load * (1 + NEAR))) return;
    gtl_document_paragraph(
        lesson->document,
        "And yet, at %s it pulls more than the load's weight, %s: the load is not all that it "
        "works against.",
        gtl_exact_force(lesson, effort).text, gtl_exact_force(lesson, load).text);
}

static void put_trade(gtl_lesson *lesson, double ratio, const char *what)
{
    gtl_document *document = lesson->document;
    gtl_figure number = gtl_exact_number(ratio), part = gtl_exact_number(1 / ratio);
    bool whole = fabs(ratio - round(ratio)) <= NEAR * ratio;
    if (!whole && fabs(ratio - 1) < 0.01)
        gtl_document_paragraph(document,
                               "Without friction the hand pulls about as much as %s, over about the same "
                               "way: hardly any force is gained, and no work is saved.",
                               what);
    else if (ratio > 1 + NEAR)
        gtl_document_paragraph(
            document,
            "Without friction the hand pulls %s%s %s %s, but takes in rope %s times as far "
            "as the load rises: the pull is smaller than that, the way longer, and no "
            "work is saved.",
            whole ? "1/" : "", whole ? number.text : part.text, whole ? "of" : "times", what, number.text);
    else if (ratio >= 1 - NEAR)
        gtl_document_paragraph(document,
                               "Without friction the hand pulls just as much as %s, over the same way: no "
                               "force is gained, and no work is saved.",
                               what);
    else
        gtl_document_paragraph(document,
                               "Without friction the hand pulls %s times %s, over %s times the way of the "
                               "load: the way is shorter, the pull greater, and no work is saved.",
                               part.text, what, number.text);
}

static void tell_trade(gtl_lesson *lesson, double ratio)
{
    gtl_raised raised;
    if (!(ratio > 0)) {
        gtl_document_paragraph(lesson->document,
                               "Hauling lowers the load here: the hand holds back the weights or "
                               "pulls that would raise it.");
        return;
    }
    if (gtl_raised_begin(lesson, lesson->hold, &raised)) put_trade(lesson, ratio, name_raised(&raised));
    gtl_raised_end(&raised);
    tell_above_load(lesson, ratio);
}

static void tell_hauling(gtl_lesson *lesson)
{
    const char *load = gtl_lifted_name(lesson->rig);
    if (!lesson->hold)
        gtl_document_paragraph(
            lesson->document,
            "Without friction %s does not stay at rest: the hand would have to push, and a "
            "rope can only be pulled.",
            load);
    else if (isnan(lesson->hold->estimated_advantage))
        gtl_document_paragraph(lesson->document,
                               "At rest and without friction the rig balances by itself: the "
                               "hand need not pull.");
    else
        tell_trade(lesson, lesson->hold->state->velocity_ratio);
}

static bool takes_work(const gtl_lesson *lesson)
{
    return lesson->raise && lesson->raise->efficiency < 1 - NEAR;
}

static void tell_friction(gtl_lesson *lesson)
{
    double lost = takes_work(lesson) ? 1 - lesson->raise->efficiency : 0;
    if (lost > 1 + NEAR)
        gtl_document_paragraph(lesson->document, "When the load is raised, all of the hand's work goes into "
                                                 "friction, and work of what sinks as well.");
    else if (lost > 0)
        gtl_document_paragraph(lesson->document,
                               "When the load is raised, %s of the hand's work goes into "
                               "friction.",
                               gtl_exact_percent(lost).text);
}

/* --- what the supports hold --- */

typedef struct vertical_balance {
    double supports; /* what all anchors hold together, upwards [N] */
    double weights;  /* of all that the rig has [N] */
    int hands;       /* that stand beside the rig and pull up or down */
    int hand;        /* one of them, -1 for none */
    int anchors;
} vertical_balance;

static vertical_balance balance_of(const gtl_lesson *lesson, const gtl_outcome *outcome)
{
    const gtl_rig *rig = lesson->rig;
    vertical_balance balance = {.hand = -1};
    int up = rig->dim - 1;
    for (int n = 0; n < rig->node_count; n++) balance.weights += rig->nodes[n].weight;
    for (int i = 0; i < rig->thing_count; i++) {
        const double *passed = outcome->forces.passed[i];
        if (rig->things[i].on >= 0) continue;
        if (rig->things[i].kind == GTL_ANCHOR) {
            balance.supports -= passed[up];
            balance.anchors++;
        }
        if (rig->things[i].kind == GTL_HAND && fabs(passed[up]) > lesson->units.noise) {
            balance.hands++;
            balance.hand = i;
        }
    }
    return balance;
}

static void add_reason(gtl_text *text, const gtl_lesson *lesson, const vertical_balance *balance, bool down)
{
    if (balance->hands == 1)
        gtl_text_add(text, "since the pull of %s is %s", lesson->rig->things[balance->hand].name,
                     down ? "downwards" : "upwards and bears a share");
    else
        gtl_text_add(text, "since the pulls of the hands, taken together, are %s",
                     down ? "downwards" : "upwards and bear a share");
}

/* What the supports hold, and why it is not just what everything weighs. */
static void add_balance(gtl_text *text, const gtl_lesson *lesson, const vertical_balance *balance)
{
    double more = balance->supports - balance->weights;
    /* Sums of many forces leave more noise than one. */
    double noise = lesson->units.noise * (10 + lesson->rig->thing_count);
    bool one = balance->anchors == 1;
    gtl_figure weighs = gtl_exact_force(lesson, balance->weights);
    if (balance->supports < -noise) {
        gtl_text_add(text,
                     "%s pulled upwards, with %s: hauling pulls up more than the %s that everything weighs",
                     one ? "the support is" : "the supports are together",
                     gtl_exact_force(lesson, -balance->supports).text, weighs.text);
        return;
    }
    gtl_text_add(text, "%s %s upwards: ", one ? "the support holds" : "the supports together hold",
                 gtl_exact_force(lesson, balance->supports).text);
    if (fabs(more) <= noise || balance->hands == 0) {
        gtl_text_add(text, "just what everything weighs");
        return;
    }
    gtl_text_add(text, "%s than the %s that everything weighs, ", more > 0 ? "more" : "less", weighs.text);
    add_reason(text, lesson, balance, more > 0);
}

static void tell_supports(gtl_lesson *lesson, const gtl_outcome *outcome)
{
    vertical_balance balance = balance_of(lesson, outcome);
    gtl_text text = {0};
    if (balance.anchors == 0) return;
    gtl_text_add(&text, "%s, ",
                 outcome->kind == GTL_RAISE ? "While the load is raised" : "At rest without friction");
    add_balance(&text, lesson, &balance);
    gtl_text_add(&text, ".");
    gtl_document_put(lesson->document, GTL_PARAGRAPH, NULL, &text);
}

void gtl_lesson_closing(gtl_lesson *lesson)
{
    const gtl_outcome *outcome = lesson->raise ? lesson->raise : lesson->hold;
    /* Where nothing is lost in raising, it is as at rest. */
    if (lesson->hold && lesson->raise && !takes_work(lesson)) outcome = lesson->hold;
    gtl_document_heading(lesson->document, "What it means");
    if (lesson->rig->hand >= 0 && lesson->rig->driven >= 0) {
        tell_hauling(lesson);
        tell_friction(lesson);
    }
    if (outcome) tell_supports(lesson, outcome);
}
