/* warnings.c - what a practitioner would want pointed out: from the file, the ratings and the cases as a
 * whole. */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Under this, a design factor is a typing error more often than a choice. An arithmetic guard, from no
 * standard. */
#define LOW_DESIGN_FACTOR 4.0
/* Lowering with less than this share of the pull without friction rests on the friction. */
#define CARRIED 0.5
/* A demand that one per cent of length shifts by this share rests on how exactly the line was measured. */
#define SENSITIVE 0.20

static const char *const names[] = {
    [GTL_WARN_FRICTION_NOT_STATED] = "friction-not-stated",
    [GTL_WARN_FRICTION_NONE] = "friction-none",
    [GTL_WARN_UNRATED] = "unrated",
    [GTL_WARN_MBS_WITHOUT_FACTOR] = "mbs-without-factor",
    [GTL_WARN_LOW_DESIGN_FACTOR] = "low-design-factor",
    [GTL_WARN_WLL_ABOVE_MBS] = "wll-above-mbs",
    [GTL_WARN_REDIRECT_FORCE] = "redirect-force",
    [GTL_WARN_WIDE_BRIDLE] = "wide-bridle",
    [GTL_WARN_FLAT_LEG] = "flat-leg",
    [GTL_WARN_NEARLY_HORIZONTAL_LEG] = "nearly-horizontal-leg",
    [GTL_WARN_FAR_FROM_DRAWING] = "far-from-drawing",
    [GTL_WARN_NOT_PARALLEL] = "parts-not-parallel",
    [GTL_WARN_FRICTION_CARRIES] = "friction-carries",
    [GTL_WARN_WILL_NOT_LOWER] = "will-not-lower",
    [GTL_WARN_CANNOT_MOVE] = "cannot-move",
    [GTL_WARN_RUNS_AWAY] = "runs-away",
    [GTL_WARN_UNDECIDED] = "undecided-stop",
    [GTL_WARN_NOT_EVERY_COMBINATION] = "not-every-combination",
    [GTL_WARN_IDLE] = "idle",
    [GTL_WARN_WEIGHTLESS_BLOCK] = "weightless-block",
    [GTL_WARN_LENGTH_SENSITIVE] = "length-sensitive",
    [GTL_WARN_SEVERAL_PLACES] = "several-places",
    [GTL_WARN_SLACK_LINE] = "slack-line",
    [GTL_WARN_NEARLY_TAUT] = "nearly-taut",
    [GTL_WARN_NEUTRAL] = "neutral",
    [GTL_WARN_POORLY_CONDITIONED] = "poorly-conditioned",
};

const char *gtl_warning_name(gtl_warning_code code)
{
    return names[code];
}

bool gtl_warn(gtl_sheet *sheet, gtl_warning warning)
{
    for (int i = 0; i < sheet->warning_count; i++) /* told once, for the first case that shows it */
        if (sheet->warnings[i].code == warning.code && strcmp(sheet->warnings[i].about, warning.about) == 0)
            return true;
    size_t size = ((size_t)sheet->warning_count + 1) * sizeof *sheet->warnings;
    gtl_warning *grown = realloc(sheet->warnings, size);
    if (!grown) return false;
    sheet->warnings = grown;
    sheet->warnings[sheet->warning_count++] = warning;
    return true;
}

/* Of the rig, whatever the case. */
static bool tell(gtl_sheet *sheet, gtl_warning_code code, const char *about, double value, double other)
{
    return gtl_warn(sheet, (gtl_warning){code, about, -1, value, other});
}

static bool tell_of(gtl_sheet *sheet, const gtl_outcome *outcome, gtl_warning_code code, const char *about,
                    double value)
{
    return gtl_warn(sheet, (gtl_warning){code, about, (int)outcome->kind, value, NAN});
}

static bool warn_of_friction(gtl_sheet *sheet)
{
    bool kept = true;
    for (int r = 0; r < sheet->rig->run_count; r++) {
        const gtl_thing *thing = &sheet->rig->things[sheet->rig->runs[r].thing];
        bool none = thing->friction_stated && (thing->efficiency == 1 || thing->friction == 0);
        if (!thing->friction_stated)
            kept &= tell(sheet, GTL_WARN_FRICTION_NOT_STATED, thing->name, NAN, NAN);
        else if (none)
            kept &= tell(sheet, GTL_WARN_FRICTION_NONE, thing->name, NAN, NAN);
    }
    return kept;
}

static bool warn_of_rating(gtl_sheet *sheet, const char *name, const gtl_rating *rating)
{
    bool kept = true;
    double by_strength = rating->mbs / rating->design_factor;
    if (!isnan(rating->mbs) && isnan(rating->design_factor))
        kept &= tell(sheet, GTL_WARN_MBS_WITHOUT_FACTOR, name, rating->mbs, NAN);
    if (!isnan(rating->mbs) && rating->design_factor < LOW_DESIGN_FACTOR)
        kept &= tell(sheet, GTL_WARN_LOW_DESIGN_FACTOR, name, rating->design_factor, NAN);
    if (rating->wll > by_strength)
        kept &= tell(sheet, GTL_WARN_WLL_ABOVE_MBS, name, rating->wll, by_strength);
    return kept;
}

static bool warn_of_ratings(gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    bool kept = true;
    for (int i = 0; i < rig->thing_count; i++)
        kept &= warn_of_rating(sheet, rig->things[i].name, &rig->things[i].rating);
    for (int i = 0; i < rig->line_count; i++)
        kept &= warn_of_rating(sheet, rig->lines[i].name, &rig->lines[i].rating);
    for (int i = 0; i < rig->connector_count; i++)
        kept &= warn_of_rating(sheet, rig->connectors[i].name, &rig->connectors[i].rating);
    return kept;
}

static bool warn_of_components(gtl_sheet *sheet)
{
    bool kept = true;
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *component = &sheet->components[i];
        if (component->mark == GTL_MARK_UNRATED)
            kept &= tell(sheet, GTL_WARN_UNRATED, component->name, component->demand, NAN);
        if (component->mark == GTL_MARK_IDLE) kept &= tell(sheet, GTL_WARN_IDLE, component->name, NAN, NAN);
    }
    return kept;
}

/* A block that travels has a weight, and what carries it feels it. */
static bool warn_of_weightless(gtl_sheet *sheet)
{
    bool kept = true;
    for (int i = 0; i < sheet->rig->thing_count; i++) {
        const gtl_thing *thing = &sheet->rig->things[i];
        if (thing->kind == GTL_BLOCK && !sheet->rig->nodes[thing->node].fixed && !(thing->weight > 0))
            kept &= tell(sheet, GTL_WARN_WEIGHTLESS_BLOCK, thing->name, NAN, NAN);
    }
    return kept;
}

static gtl_warning_code code_of_impossible(const gtl_outcome *outcome)
{
    if (outcome->kind == GTL_HOLD) return GTL_WARN_RUNS_AWAY;
    return outcome->state->held_by_friction ? GTL_WARN_WILL_NOT_LOWER : GTL_WARN_CANNOT_MOVE;
}

static bool warn_of_impossible(gtl_sheet *sheet)
{
    bool kept = true;
    const char *load = sheet->rig->load < 0 ? "" : sheet->rig->things[sheet->rig->load].name;
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        if (!outcome->possible) kept &= tell_of(sheet, outcome, code_of_impossible(outcome), load, NAN);
    }
    return kept;
}

/* Lowering against a bollard the hand feels little because friction holds the rest: less friction, more pull.
 */
static bool warn_of_carrying_friction(gtl_sheet *sheet)
{
    const gtl_outcome *hold = gtl_sheet_outcome(sheet, GTL_HOLD);
    const gtl_outcome *lower = gtl_sheet_outcome(sheet, GTL_LOWER);
    if (sheet->rig->hand < 0 || !hold || !hold->possible || !lower || !lower->possible) return true;
    if (!(lower->state->effort < CARRIED * hold->state->effort)) return true;
    const char *hand = sheet->rig->things[sheet->rig->hand].name;
    return gtl_warn(sheet, (gtl_warning){GTL_WARN_FRICTION_CARRIES, hand, (int)GTL_LOWER,
                                         lower->state->effort, hold->state->effort});
}

static bool warn_of_undecided(gtl_sheet *sheet, const gtl_outcome *outcome)
{
    bool kept = true;
    int undecided = 0;
    for (int r = 0; r < sheet->rig->run_count; r++) {
        if (!outcome->state->undecided[r]) continue;
        const gtl_thing *thing = &sheet->rig->things[sheet->rig->runs[r].thing];
        undecided++;
        bool none = thing->friction_stated && (thing->efficiency == 1 || thing->friction == 0);
        if (!none) kept &= tell_of(sheet, outcome, GTL_WARN_UNDECIDED, thing->name, NAN);
    }
    if (!outcome->every_combination)
        kept &= tell_of(sheet, outcome, GTL_WARN_NOT_EVERY_COMBINATION, "", undecided);
    return kept;
}

static bool warn_of_state(gtl_sheet *sheet, const gtl_outcome *outcome)
{
    bool kept = true;
    const gtl_rig *rig = sheet->rig;
    gtl_state *state = outcome->state;
    int line;
    double share = gtl_length_sensitivity(rig, state, &line);
    if (share > SENSITIVE)
        kept &= tell_of(sheet, outcome, GTL_WARN_LENGTH_SENSITIVE, rig->lines[line].name, share);
    if (outcome->places > 1) kept &= tell_of(sheet, outcome, GTL_WARN_SEVERAL_PLACES, "", outcome->places);
    if (state->neutral)
        kept &= tell_of(sheet, outcome, GTL_WARN_NEUTRAL,
                        rig->things[rig->nodes[state->neutral_node].root].name, NAN);
    if (state->poorly_conditioned)
        kept &= tell_of(sheet, outcome, GTL_WARN_POORLY_CONDITIONED, "", state->pivot_ratio);
    return kept;
}

bool gtl_find_warnings(const gtl_bench *bench, gtl_sheet *sheet)
{
    bool kept = warn_of_impossible(sheet) && warn_of_carrying_friction(sheet) && warn_of_friction(sheet) &&
                warn_of_ratings(sheet) && warn_of_components(sheet);
    /* What several cases show is told of the one that usually is worst. */
    static const gtl_case_kind order[] = {GTL_RAISE, GTL_HOLD, GTL_LOWER};
    for (size_t i = 0; kept && i < sizeof order / sizeof *order; i++) {
        const gtl_outcome *outcome = gtl_sheet_outcome(sheet, order[i]);
        if (outcome && outcome->possible)
            kept = warn_of_undecided(sheet, outcome) && warn_of_state(sheet, outcome) &&
                   gtl_warn_of_shape(bench, outcome, sheet);
    }
    return kept && warn_of_weightless(sheet);
}
