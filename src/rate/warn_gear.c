/* warn_gear.c - what ratings warn of: typed figures that contradict each other, what takes from them, the
 * factors that the use asks for, and parts whose rating does not go with the rest of the rig. */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>

/* Under this, a design factor is a typing error more often than a choice. An arithmetic guard, from no
 * standard. */
#define LOW_DESIGN_FACTOR 4.0
/* Bends over the rope's diameter under which fibre rope is warned of. Rules of thumb: no published source. */
#define TIGHT_BEND      8.0
#define VERY_TIGHT_BEND 4.0
/* Gear is chosen by tens, at the most by hundreds of what it carries. The wrong unit, N for kN or lb for
 * kip, is a thousand. */
#define FAR_BELOW 1e-3

static bool is_under(double value, double bar)
{
    return value < bar * (1 - GTL_UTILISATION_SLACK);
}

/* --- ratings as typed, and those of the part's row --- */

/* The smaller of a typed rating and the row's, as the capacity takes it [N]. */
static double smaller(double typed, const gtl_gear *gear, gtl_hardware_number number)
{
    return gear->row ? fmin(typed, gear->row->numbers[number]) : typed; /* fmin passes over a NaN */
}

static bool warn_of_rating(gtl_sheet *sheet, const char *name, const gtl_rating *rating, const gtl_gear *gear)
{
    bool kept = true;
    double mbs = smaller(rating->mbs, gear, GTL_HW_MBS);
    double wll = smaller(rating->wll, gear, GTL_HW_WLL);
    double by_strength = mbs / rating->design_factor;
    if (!isnan(mbs) && isnan(rating->design_factor))
        kept &= gtl_tell(sheet, GTL_WARN_MBS_WITHOUT_FACTOR, name, mbs, NAN);
    if (!isnan(mbs) && rating->design_factor < LOW_DESIGN_FACTOR)
        kept &= gtl_tell(sheet, GTL_WARN_LOW_DESIGN_FACTOR, name, rating->design_factor, NAN);
    if (wll > by_strength) kept &= gtl_tell(sheet, GTL_WARN_WLL_ABOVE_MBS, name, wll, by_strength);
    return kept;
}

static bool warn_of_ratings(gtl_sheet *sheet)
{
    const gtl_rig *rig = sheet->rig;
    bool kept = true;
    for (int i = 0; i < rig->thing_count; i++) {
        const gtl_thing *thing = &rig->things[i];
        kept &= warn_of_rating(sheet, thing->name, &thing->rating, &thing->gear);
    }
    for (int i = 0; i < rig->line_count; i++) {
        const gtl_line *line = &rig->lines[i];
        kept &= warn_of_rating(sheet, line->name, &line->rating, &line->gear);
    }
    for (int i = 0; i < rig->connector_count; i++) {
        const gtl_connector *connector = &rig->connectors[i];
        kept &= warn_of_rating(sheet, connector->name, &connector->rating, &connector->gear);
    }
    return kept;
}

/* --- what takes from a rating --- */

/* Steps that a table forbids, or knows nothing of. */
static bool warn_of_steps(gtl_sheet *sheet, const gtl_component *component)
{
    bool kept = true;
    for (int i = 0; i < component->step_count; i++) {
        const gtl_step *step = &sheet->steps[component->first_step + i];
        if (step->factor > 0) continue;
        gtl_warning warning = {
            .code = step->factor == 0 ? GTL_WARN_NOT_ALLOWED : GTL_WARN_NOT_PUBLISHED,
            .about = component->name,
            .outcome = step->kind == GTL_STEP_AXIS ? component->governing : -1,
            .value = step->value,
            .other = step->kind,
            .with = step->at,
        };
        kept &= gtl_warn(sheet, warning);
    }
    return kept;
}

static gtl_rope_class class_of(const gtl_gear *gear)
{
    return gear->material ? gear->material->rope_class : GTL_CLASS_NONE;
}

/* A line of no stated material may be of fibre. */
static bool warn_of_bend(gtl_sheet *sheet, const gtl_line *line)
{
    const char *at = NULL;
    gtl_rope_class class = class_of(&line->gear);
    double ratio = gtl_tightest_bend(sheet->rig, line, &at);
    if (class == GTL_CLASS_WIRE || class == GTL_CLASS_CHAIN || !is_under(ratio, TIGHT_BEND)) return true;
    gtl_warning warning = {
        .code = is_under(ratio, VERY_TIGHT_BEND) ? GTL_WARN_VERY_TIGHT_BEND : GTL_WARN_TIGHT_BEND,
        .about = line->name,
        .outcome = -1,
        .value = ratio,
        .other = NAN,
        .with = at,
    };
    return gtl_warn(sheet, warning);
}

static bool warn_of_line(gtl_sheet *sheet, const gtl_line *line)
{
    bool kept = warn_of_bend(sheet, line);
    if (gtl_choke_angle_missing(&line->gear))
        kept &= gtl_tell(sheet, GTL_WARN_CHOKE_ANGLE_NOT_STATED, line->name, NAN, NAN);
    if (gtl_choke_material_missing(&line->gear))
        kept &= gtl_tell(sheet, GTL_WARN_MATERIAL_NOT_STATED, line->name, NAN, NAN);
    return kept;
}

/* --- the use --- */

double gtl_use_factor(const gtl_rig *rig, gtl_kind kind, int index)
{
    if (!rig->use || kind == GTL_HAND) return NAN;
    const double *numbers = rig->use->numbers;
    if (kind == GTL_CONNECTOR && !isnan(numbers[GTL_HW_SHACKLE])) return numbers[GTL_HW_SHACKLE];
    if (kind != GTL_ROPE && kind != GTL_SLING) return numbers[GTL_HW_METAL];
    switch (class_of(gtl_gear_of(rig, kind, index))) {
    case GTL_CLASS_WIRE:
        return numbers[GTL_HW_WIRE_ROPE];
    case GTL_CLASS_CHAIN:
        return numbers[GTL_HW_CHAIN];
    case GTL_CLASS_FIBRE:
    case GTL_CLASS_NATURAL_FIBRE:
        return numbers[GTL_HW_FIBRE_ROPE];
    default: /* fmax passes over a NaN */
        return fmax(numbers[GTL_HW_WIRE_ROPE], numbers[GTL_HW_FIBRE_ROPE]);
    }
}

/* The user's own figures against the use's: the design factor, or what stands for it where a breaking
 * strength and a working load limit are known; where only a working load limit is known, what is used of it.
 */
static bool warn_of_use_factor(gtl_sheet *sheet, const gtl_component *component)
{
    const gtl_hardware_row *use = sheet->rig->use;
    const gtl_rating *rating = gtl_rating_of(sheet->rig, component->kind, component->index);
    const gtl_gear *gear = gtl_gear_of(sheet->rig, component->kind, component->index);
    double mbs = smaller(rating->mbs, gear, GTL_HW_MBS);
    double own =
        isnan(rating->design_factor) ? mbs / smaller(rating->wll, gear, GTL_HW_WLL) : rating->design_factor;
    double wanted = gtl_use_factor(sheet->rig, component->kind, component->index);
    double share = use->numbers[GTL_HW_WLL_SHARE];
    bool rated = component->kind != GTL_HAND && component->step_count > 0;
    if (rated && !isnan(mbs) && is_under(own, wanted))
        return gtl_tell(sheet, GTL_WARN_UNDER_USE_FACTOR, component->name, own, wanted);
    if (rated && isnan(mbs) && is_under(share, component->utilisation))
        return gtl_tell(sheet, GTL_WARN_OVER_USE_SHARE, component->name, component->utilisation, share);
    return true;
}

bool gtl_warn_of_use(gtl_sheet *sheet)
{
    bool kept = true;
    if (!sheet->rig->use) return true;
    if (sheet->rig->use->over_people) kept &= gtl_tell(sheet, GTL_WARN_OVER_PEOPLE, "", NAN, NAN);
    for (int i = 0; i < sheet->component_count; i++) kept &= warn_of_use_factor(sheet, &sheet->components[i]);
    return kept;
}

/* --- parts beside each other --- */

static bool warn_of_head_fittings(gtl_sheet *sheet)
{
    bool kept = true;
    for (int i = 0; i < sheet->head_fitting_count; i++) {
        const gtl_head_fitting *head = &sheet->head_fittings[i];
        gtl_warning warning = {
            .code = GTL_WARN_HEAD_FITTING,
            .about = sheet->components[head->fitting].name,
            .outcome = -1,
            .value = head->capacity,
            .other = head->needed,
            .with = sheet->components[head->block].name,
        };
        if (head->mark == GTL_MARK_OVER) kept &= gtl_warn(sheet, warning);
    }
    return kept;
}

/* Whether everything in a chain has a rating but its last part, the anchor. */
static bool is_rated_to_its_anchor(const gtl_sheet *sheet, const gtl_chain *chain)
{
    const int *links = sheet->links + chain->first_link;
    for (int i = 0; i < chain->link_count - 1; i++)
        if (isnan(sheet->components[links[i]].capacity)) return false;
    return true;
}

/* Strong gear on an anchor that nobody rated. Where some of its gear is unrated too, the gaps are told as
 * such. */
static bool warn_of_forgotten_anchors(const gtl_bench *bench, gtl_sheet *sheet)
{
    bool kept = true;
    enum { NO_CHAIN, ALL_RATED, SOME_UNRATED };
    char *gear = calloc((size_t)bench->component_count + 1, sizeof *gear);
    if (!gear) return false;
    for (int i = 0; i < sheet->chain_count; i++) {
        const gtl_chain *chain = &sheet->chains[i];
        char *at = &gear[sheet->links[chain->first_link + chain->link_count - 1]];
        if (*at != SOME_UNRATED) *at = is_rated_to_its_anchor(sheet, chain) ? ALL_RATED : SOME_UNRATED;
    }
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *anchor = &sheet->components[i];
        if (anchor->kind == GTL_ANCHOR && anchor->mark == GTL_MARK_UNRATED && gear[i] == ALL_RATED)
            kept &= gtl_tell(sheet, GTL_WARN_ANCHOR_FORGOTTEN, anchor->name, anchor->demand, NAN);
    }
    free(gear);
    return kept;
}

bool gtl_warn_of_gear(const gtl_bench *bench, gtl_sheet *sheet)
{
    bool kept = warn_of_ratings(sheet);
    for (int i = 0; i < sheet->component_count; i++) {
        const gtl_component *component = &sheet->components[i];
        kept &= warn_of_steps(sheet, component);
        if (component->kind != GTL_HAND && component->mark == GTL_MARK_WITHIN &&
            component->utilisation < FAR_BELOW)
            kept &= gtl_tell(sheet, GTL_WARN_FAR_BELOW_RATING, component->name, component->utilisation, NAN);
    }
    for (int i = 0; i < sheet->rig->line_count; i++) kept &= warn_of_line(sheet, &sheet->rig->lines[i]);
    return kept && warn_of_head_fittings(sheet) && warn_of_forgotten_anchors(bench, sheet);
}
