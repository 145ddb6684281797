/* asks.c - what a problem may ask: one table. */
#include "worksheet/worked.h"

#include "base/suggest.h"
#include "base/word.h"
#include "report/geometry.h"

#define HAND(w) ((w)->rig->things[(w)->rig->hand].name)
#define LOAD(w) ((w)->rig->things[(w)->rig->load].name)

/* --- weight and pulls --- */

static void ask_weight(gtl_text *text, const gtl_worked *w)
{
    gtl_text_add(text, "What does the load %s weigh?", LOAD(w));
}

static void answer_weight(gtl_worked *w)
{
    gtl_answer_add(w, "Weight of", LOAD(w), GTL_ANSWER_FORCE, w->rig->things[w->rig->load].weight);
}

static void ask_hold(gtl_text *text, const gtl_worked *w)
{
    gtl_text_add(text, "With what pull does the hand %s hold the load still, if there is no friction?",
                 HAND(w));
}

static void answer_hold(gtl_worked *w)
{
    gtl_answer_add(w, "Pull to hold, by", HAND(w), GTL_ANSWER_FORCE, w->hold->state->effort);
}

static void ask_raise(gtl_text *text, const gtl_worked *w)
{
    gtl_text_add(text, "With what pull does the hand %s raise the load slowly, with the friction given?",
                 HAND(w));
}

static void answer_raise(gtl_worked *w)
{
    gtl_answer_add(w, "Pull to raise, by", HAND(w), GTL_ANSWER_FORCE, w->raise->state->effort);
}

/* --- advantage --- */

static void ask_ideal(gtl_text *text, const gtl_worked *w)
{
    gtl_text_add(text,
                 "What is the ideal advantage: how many times as far as the load rises does the rope come to "
                 "the hand %s?",
                 HAND(w));
}

static void answer_ideal(gtl_worked *w)
{
    gtl_answer_add(w, "Ideal advantage", "", GTL_ANSWER_RATIO, w->hold->state->velocity_ratio);
}

static void ask_estimated(gtl_text *text, const gtl_worked *w)
{
    gtl_text_add(
        text,
        "What is the estimated advantage: the weight of the load %s over the pull that raises it, with "
        "the friction given?",
        LOAD(w));
}

static void answer_estimated(gtl_worked *w)
{
    gtl_answer_add(w, "Estimated advantage", "", GTL_ANSWER_RATIO, w->raise->estimated_advantage);
}

static void ask_efficiency(gtl_text *text, const gtl_worked *w)
{
    (void)w;
    gtl_text_add(text,
                 "What is the efficiency of raising: the work done on all that rises over the hand's work?");
}

static void answer_efficiency(gtl_worked *w)
{
    gtl_answer_add(w, "Efficiency", "", GTL_ANSWER_PERCENT, w->raise->efficiency);
}

/* --- distance and work --- */

static void ask_distance(gtl_text *text, const gtl_worked *w)
{
    gtl_text_add(text, "The load rises by %s. How much rope comes to the hand %s?", w->lift_text, HAND(w));
}

static void answer_distance(gtl_worked *w)
{
    gtl_answer_add(w, "Rope to the hand", HAND(w), GTL_ANSWER_LENGTH,
                   w->hold->state->velocity_ratio * w->lift);
}

static void ask_work_in(gtl_text *text, const gtl_worked *w)
{
    gtl_text_add(text,
                 "What work does the hand %s do while it raises the load by %s, with the friction given?",
                 HAND(w), w->lift_text);
}

static void answer_work_in(gtl_worked *w)
{
    const gtl_state *state = w->raise->state;
    gtl_answer_add(w, "Work of the hand", HAND(w), GTL_ANSWER_WORK,
                   state->effort * state->velocity_ratio * w->lift);
}

static void ask_work_out(gtl_text *text, const gtl_worked *w)
{
    gtl_text_add(text, "What work is done on the load %s alone while it rises by %s?", LOAD(w), w->lift_text);
}

static void answer_work_out(gtl_worked *w)
{
    gtl_answer_add(w, "Work on the load", LOAD(w), GTL_ANSWER_WORK,
                   w->rig->things[w->rig->load].weight * w->lift);
}

/* --- supports --- */

/* One answer an anchor that holds something. */
static void answer_supports(gtl_worked *w, const gtl_outcome *outcome)
{
    for (int i = 0; i < w->rig->thing_count; i++) {
        const gtl_thing *thing = &w->rig->things[i];
        if (thing->kind != GTL_ANCHOR || thing->on >= 0) continue;
        double force = gtl_vector_size(outcome->forces.passed[i], w->rig->dim);
        if (force > w->lesson.units.noise)
            gtl_answer_add(w, "Force on", thing->name, GTL_ANSWER_FORCE, force);
    }
}

static void ask_support(gtl_text *text, const gtl_worked *w)
{
    gtl_text_add(text, "How hard is each anchor pulled while the load is held%s?",
                 w->rig->hand >= 0 ? ", if there is no friction" : "");
}

static void answer_support(gtl_worked *w)
{
    answer_supports(w, w->hold);
}

static void ask_support_raising(gtl_text *text, const gtl_worked *w)
{
    (void)w;
    gtl_text_add(text,
                 "How hard is each anchor pulled while the load is raised slowly, with the friction given?");
}

static void answer_support_raising(gtl_worked *w)
{
    answer_supports(w, w->raise);
}

/* --- the table --- */

static const struct gtl_ask {
    gtl_set_word word;
    unsigned needs;
    void (*question)(gtl_text *, const gtl_worked *);
    void (*answer)(gtl_worked *);
} asks[] = {
    {{"weight", "what the load weighs"}, GTL_NEEDS_LOAD, ask_weight, answer_weight},
    {{"hold", "the pull that holds the load without friction"}, GTL_NEEDS_HAND, ask_hold, answer_hold},
    {{"raise", "the pull that raises it with the friction stated"}, GTL_NEEDS_RAISE, ask_raise, answer_raise},
    {{"ideal advantage", "rope to the hand over the load's rise"}, GTL_NEEDS_HAND, ask_ideal, answer_ideal},
    {{"estimated advantage", "the load's weight over the pull that raises it"},
     GTL_NEEDS_RAISE,
     ask_estimated,
     answer_estimated},
    {{"efficiency", "of raising"}, GTL_NEEDS_RAISE, ask_efficiency, answer_efficiency},
    {{"hand distance", "the rope that comes to the hand; with `lift`"},
     GTL_NEEDS_LIFT,
     ask_distance,
     answer_distance},
    {{"work in", "what the hand does in raising; with `lift`"},
     GTL_NEEDS_LIFT | GTL_NEEDS_RAISE,
     ask_work_in,
     answer_work_in},
    {{"work out", "what is done on the load alone; with `lift`"},
     GTL_NEEDS_LIFT,
     ask_work_out,
     answer_work_out},
    {{"support", "the force on each anchor without friction"}, 0, ask_support, answer_support},
    {{"support in raising", "the force on each anchor in raising"},
     GTL_NEEDS_RAISE,
     ask_support_raising,
     answer_support_raising},
};

#define ASK_COUNT (sizeof asks / sizeof *asks)

const gtl_set_word *gtl_ask_at(size_t index)
{
    return index < ASK_COUNT ? &asks[index].word : NULL;
}

int gtl_ask_find(gtl_word word, const char **nearest)
{
    gtl_suggestion near = {.wanted = word, .best = -1};
    for (size_t i = 0; i < ASK_COUNT; i++) {
        if (gtl_word_compare(gtl_word_of(asks[i].word.word), word) == 0) return (int)i;
        gtl_suggest_try(&near, gtl_word_of(asks[i].word.word), (int)i);
    }
    if (near.best >= 0) *nearest = asks[near.best].word.word;
    return -1;
}

unsigned gtl_ask_needs(int ask)
{
    return asks[ask].needs;
}

void gtl_ask_question(int ask, gtl_text *text, const gtl_worked *worked)
{
    asks[ask].question(text, worked);
}

void gtl_ask_answer(int ask, gtl_worked *worked)
{
    asks[ask].answer(worked);
}
