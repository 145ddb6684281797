/* warnings.c - what a practitioner would want pointed out: from the file and the cases as a whole, and the
 * list of all that the files beside it find. */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Lowering with less than this share of the pull without friction rests on the friction. */
#define CARRIED 0.5
/* A demand that one per cent of length shifts by this share rests on how exactly the line was measured. */
#define SENSITIVE 0.20
/* Plain bushed pulleys, the poorest sheaves with a figure in print, have 80 % (Delaney, notes of 2024, p.
 * 90); sheaves for wire rope have 91.7 % and more (Wire Rope Users Manual, 4th ed., pp. 86-88). A figure
 * under that is a whole tackle's more often than a sheave's. */
#define LOW_EFFICIENCY 0.80

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
    [GTL_WARN_NOT_ALLOWED] = "not-allowed",
    [GTL_WARN_NOT_PUBLISHED] = "not-published",
    [GTL_WARN_TIGHT_BEND] = "tight-bend",
    [GTL_WARN_VERY_TIGHT_BEND] = "very-tight-bend",
    [GTL_WARN_CHOKE_ANGLE_NOT_STATED] = "choke-angle-not-stated",
    [GTL_WARN_MATERIAL_NOT_STATED] = "material-not-stated",
    [GTL_WARN_UNDER_USE_FACTOR] = "under-use-factor",
    [GTL_WARN_OVER_USE_SHARE] = "over-use-share",
    [GTL_WARN_OVER_PEOPLE] = "over-people",
    [GTL_WARN_HEAD_FITTING] = "head-fitting",
    [GTL_WARN_NO_FIGURES] = "no-figures",
    [GTL_WARN_DROPS] = "drops",
    [GTL_WARN_LOAD_FALLS] = "load-falls",
    [GTL_WARN_CAME_LOOSE] = "came-loose",
    [GTL_WARN_ANCHOR_FORGOTTEN] = "anchor-forgotten",
    [GTL_WARN_HAND_BEYOND_GEAR] = "hand-beyond-gear",
    [GTL_WARN_FRICTION_MIXED] = "friction-mixed",
    [GTL_WARN_LOW_EFFICIENCY] = "low-efficiency",
    [GTL_WARN_FAR_BELOW_RATING] = "far-below-rating",
    [GTL_WARN_WRAP_NOT_AS_DRAWN] = "wrap-not-as-drawn",
    [GTL_WARN_DIRECTION_ONLY] = "direction-only",
    [GTL_WARN_GAINS_NO_FORCE] = "gains-no-force",
    [GTL_WARN_BALANCED] = "balanced",
    [GTL_WARN_HAULS_ITSELF] = "hauls-itself",
    [GTL_WARN_HARD_PULL] = "hard-pull",
    [GTL_WARN_MAY_NOT_LOWER] = "may-not-lower",
    [GTL_WARN_BAND_NOT_PROVEN] = "band-not-proven",
    [GTL_WARN_BATTEN_SLACK] = "batten-slack",
    [GTL_WARN_BATTEN_UNSURE] = "batten-unsure",
    [GTL_WARN_BATTEN_PARTS] = "batten-parts",
    [GTL_WARN_BATTEN_TILTS] = "batten-tilts",
    [GTL_WARN_BEYOND_STRETCH] = "beyond-stretch",
    [GTL_WARN_STRETCH_NOT_STATED] = "stretch-not-stated",
    [GTL_WARN_CATCH_JERKS] = "catch-jerks",
    [GTL_WARN_CATCHING_HAND] = "catching-hand",
    [GTL_WARN_MEAN_DENSITY] = "mean-density",
    [GTL_WARN_ONE_DENSITY] = "one-density",
    [GTL_WARN_MIDDLE_DIAMETER] = "middle-diameter",
    [GTL_WARN_LIFT_CUT_SHORT] = "lift-cut-short",
    [GTL_WARN_GROWS_ON_THE_WAY] = "grows-on-the-way",
};

const char *gtl_warning_name(gtl_warning_code code)
{
    return names[code];
}

/* A warning is told once of a part, for the first case that shows it; what a loss brings down, for each. */
static bool is_same(const gtl_warning *one, const gtl_warning *other)
{
    bool each = one->code == GTL_WARN_LOAD_FALLS || one->code == GTL_WARN_CAME_LOOSE ||
                one->code == GTL_WARN_NO_FIGURES || one->code == GTL_WARN_DROPS;
    return one->code == other->code && (!each || one->outcome == other->outcome) &&
           strcmp(one->about, other->about) == 0;
}

bool gtl_warn(gtl_sheet *sheet, gtl_warning warning)
{
    for (int i = 0; i < sheet->warning_count; i++)
        if (is_same(&sheet->warnings[i], &warning)) return true;
    size_t size = ((size_t)sheet->warning_count + 1) * sizeof *sheet->warnings;
    gtl_warning *grown = realloc(sheet->warnings, size);
    if (!grown) return false;
    sheet->warnings = grown;
    sheet->warnings[sheet->warning_count++] = warning;
    return true;
}

bool gtl_tell(gtl_sheet *sheet, gtl_warning_code code, const char *about, double value, double other)
{
    return gtl_warn(sheet, (gtl_warning){code, about, -1, value, other, NULL});
}

static bool tell_of(gtl_sheet *sheet, const gtl_outcome *outcome, gtl_warning_code code, const char *about,
                    double value)
{
    return gtl_warn(sheet, (gtl_warning){code, about, (int)(outcome - sheet->outcomes), value, NAN, NULL});
}

static bool is_frictionless(const gtl_thing *thing)
{
    return thing->friction_stated && (thing->efficiency == 1 || thing->friction == 0);
}

static const gtl_thing *thing_at(const gtl_rig *rig, int run)
{
    return &rig->things[rig->runs[run].thing];
}

static bool warn_of_friction(gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    bool kept = true;
    bool some = false; /* somewhere friction is stated */
    for (int r = 0; r < rig->run_count; r++)
        some |= thing_at(rig, r)->friction_stated && !is_frictionless(thing_at(rig, r));
    for (int r = 0; r < rig->run_count; r++) {
        const gtl_thing *thing = thing_at(rig, r);
        bool none = is_frictionless(thing);
        if (!thing->friction_stated)
            kept &= gtl_tell(sheet, GTL_WARN_FRICTION_NOT_STATED, thing->name, NAN, NAN);
        if (none) kept &= gtl_tell(sheet, GTL_WARN_FRICTION_NONE, thing->name, NAN, NAN);
        if (none && some) kept &= gtl_tell(sheet, GTL_WARN_FRICTION_MIXED, thing->name, NAN, NAN);
        if (thing->kind == GTL_BLOCK && thing->efficiency < LOW_EFFICIENCY)
            kept &= gtl_tell(sheet, GTL_WARN_LOW_EFFICIENCY, thing->name, thing->efficiency, NAN);
    }
    return kept;
}

/* Of a pair one hand and its rope may carry nothing: the other pulls in every case. */
static bool is_spare(const gtl_rig *rig, const gtl_component *component)
{
    if (component->kind == GTL_HAND) return rig->things[component->index].other >= 0;
    if (component->kind != GTL_ROPE) return false;
    const gtl_line *line = &rig->lines[component->index];
    int first = rig->stops[line->first_stop].thing;
    int last = rig->stops[line->first_stop + line->stop_count - 1].thing;
    int hand = rig->things[first].kind == GTL_HAND ? first : last;
    return rig->things[hand].kind == GTL_HAND && rig->things[hand].other >= 0;
}

static bool warn_of_components(gtl_sheet *sheet)
{
    bool kept = true;
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *component = &sheet->components[i];
        bool unrated = component->mark == GTL_MARK_UNRATED;
        bool beyond_its_table = component->step_count > 0 && isnan(component->capacity);
        if (unrated && !beyond_its_table) /* that one is told as such */
            kept &= gtl_tell(sheet, GTL_WARN_UNRATED, component->name, component->demand, NAN);
        bool spare = is_spare(sheet->rig, component);
        if (component->mark == GTL_MARK_IDLE && !spare)
            kept &= gtl_tell(sheet, GTL_WARN_IDLE, component->name, NAN, NAN);
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
            kept &= gtl_tell(sheet, GTL_WARN_WEIGHTLESS_BLOCK, thing->name, NAN, NAN);
    }
    return kept;
}

static gtl_warning_code code_of_impossible(const gtl_outcome *outcome)
{
    if (outcome->kind == GTL_HOLD) return GTL_WARN_RUNS_AWAY;
    if (outcome->kind == GTL_JAM || outcome->kind >= GTL_LOST) return GTL_WARN_NO_FIGURES;
    return outcome->state->held_by_friction ? GTL_WARN_WILL_NOT_LOWER : GTL_WARN_CANNOT_MOVE;
}

static const char *lifted_load(const gtl_rig *rig)
{
    return gtl_lifted_name(rig);
}

static bool warn_of_impossible(gtl_sheet *sheet)
{
    bool kept = true;
    const char *load = lifted_load(sheet->rig);
    for (int i = 0; i < sheet->outcome_count; i++) {
        const gtl_outcome *outcome = &sheet->outcomes[i];
        if (!outcome->possible && !outcome->falls)
            kept &= tell_of(sheet, outcome, code_of_impossible(outcome), load, NAN);
    }
    return kept;
}

/* What nothing holds any more after a loss: loads fall, other things are left out. */
static bool warn_of_loss(gtl_sheet *sheet, const gtl_outcome *outcome)
{
    bool kept = true;
    for (int k = 0; outcome->loose && k < sheet->rig->thing_count; k++) {
        const gtl_thing *thing = &sheet->rig->things[k];
        bool heavy = thing->kind == GTL_LOAD || thing->kind == GTL_ARBOR;
        gtl_warning_code code = heavy ? GTL_WARN_LOAD_FALLS : GTL_WARN_CAME_LOOSE;
        if (outcome->loose[k]) kept &= tell_of(sheet, outcome, code, thing->name, NAN);
    }
    if (outcome->possible && outcome->drop > 0)
        kept &= tell_of(sheet, outcome, GTL_WARN_DROPS, outcome->catcher, outcome->drop);
    return kept;
}

static bool warn_of_losses(gtl_sheet *sheet)
{
    bool kept = true;
    for (int i = 0; i < sheet->outcome_count; i++) kept &= warn_of_loss(sheet, &sheet->outcomes[i]);
    return kept;
}

/* Lowering against a bollard the hand feels little because friction holds the rest: less friction, more pull.
 */
static bool warn_of_carrying_friction(gtl_sheet *sheet)
{
    const gtl_outcome *hold = gtl_sheet_outcome(sheet, GTL_HOLD);
    const gtl_outcome *lower = gtl_sheet_outcome(sheet, GTL_LOWER);
    if (sheet->rig->hand < 0 || !hold || !hold->possible || !lower || !lower->possible) return true;
    if (lower->rig->hand != hold->rig->hand) return true; /* it has to be hauled down */
    /* Of a range of friction the end that carries most. */
    double least = lower->band.pull ? lower->band.pull[lower->rig->hand][0] : lower->state->effort;
    if (!(least < CARRIED * hold->state->effort)) return true;
    const char *hand = sheet->rig->things[lower->rig->hand].name;
    return gtl_warn(sheet, (gtl_warning){GTL_WARN_FRICTION_CARRIES, hand, (int)(lower - sheet->outcomes),
                                         least, hold->state->effort, NULL});
}

static bool warn_of_undecided(gtl_sheet *sheet, const gtl_outcome *outcome)
{
    bool kept = true;
    int undecided = 0;
    const gtl_rig *rig = outcome->rig;
    for (int r = 0; r < rig->run_count; r++) {
        if (!outcome->state->undecided[r]) continue;
        const gtl_thing *thing = thing_at(rig, r);
        undecided++;
        if (!is_frictionless(thing)) kept &= tell_of(sheet, outcome, GTL_WARN_UNDECIDED, thing->name, NAN);
    }
    if (!outcome->every_combination)
        kept &= tell_of(sheet, outcome, GTL_WARN_NOT_EVERY_COMBINATION, "", undecided);
    return kept;
}

static bool warn_of_state(gtl_sheet *sheet, const gtl_outcome *outcome)
{
    bool kept = true;
    const gtl_rig *rig = outcome->rig;
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

static bool warn_of_case(const gtl_bench *bench, gtl_sheet *sheet, const gtl_outcome *outcome)
{
    if (!outcome->possible) return true;
    return warn_of_undecided(sheet, outcome) && warn_of_state(sheet, outcome) &&
           gtl_warn_of_shape(bench, outcome, sheet);
}

bool gtl_find_warnings(const gtl_bench *bench, gtl_sheet *sheet)
{
    bool kept = gtl_warn_of_use(sheet) && warn_of_impossible(sheet) && warn_of_losses(sheet) &&
                gtl_warn_of_drop(sheet) && warn_of_carrying_friction(sheet) && warn_of_friction(sheet) &&
                gtl_warn_of_gear(bench, sheet) && warn_of_components(sheet) && gtl_warn_of_battens(sheet) &&
                gtl_warn_of_timber(sheet);
    /* What several cases show is told of the one that usually is worst. */
    const gtl_outcome *raise = gtl_sheet_outcome(sheet, GTL_RAISE);
    if (raise) kept = kept && warn_of_case(bench, sheet, raise);
    for (int i = 0; kept && i < sheet->outcome_count; i++)
        if (&sheet->outcomes[i] != raise) kept = warn_of_case(bench, sheet, &sheet->outcomes[i]);
    return kept && warn_of_weightless(sheet) && gtl_warn_of_hauling(bench, sheet) &&
           gtl_warn_of_lift(bench, sheet) && gtl_warn_of_bands(sheet);
}
