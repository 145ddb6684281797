/* batten.c - battens while a rig is built: what hangs on each becomes a weight a pick, before anything else
 * asks what a load weighs. */
#include "rig/beam.h"
#include "rig/gear.h"

#include "base/text.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define PI 3.14159265358979323846
/* Picks nearer to each other are one [m]. */
#define LEAST_APART 0.01
/* How much shorter than level a line is for gtl_pick.settles [m]. */
#define OUT_OF_LEVEL 0.01
/* A single pick may stand so far beside the centre of gravity, over the length: rounded by hand [1]. */
#define CENTRED 1e-3
/* A place this far past an end, over the length, is a rounding [1]. */
#define PAST_END 1e-9
/* The most that hangs on one batten, its own weight not counted. */
#define MOST_HUNG 200

#define METRES_A_FOOT 0.3048

/* One batten while it is worked. */
typedef struct working {
    gtl_building *b;
    const gtl_item *item;
    gtl_batten *batten;
    const gtl_pick_typed *picks[GTL_BEAM_MOST]; /* from one end to the other */
    double at[GTL_BEAM_MOST];
    gtl_beam_load loads[MOST_HUNG + 1];
    gtl_beam beam;
} working;

static const gtl_number *number(const gtl_item *item, gtl_field field)
{
    return &item->numbers[field];
}

static void tell(working *w, int line, const char *text)
{
    gtl_faults_add(w->b->faults, line, "%s", text);
}

/* A place along a batten as a message gives it. */
static void add_place(const working *w, gtl_text *text, double metres)
{
    if (w->b->draft->us_units)
        gtl_text_add(text, "%.4g ft", metres / METRES_A_FOOT);
    else
        gtl_text_add(text, "%.4g m", metres);
}

/* --- what is missing --- */

static void tell_missing(gtl_building *b, const gtl_item *item, const char *what)
{
    gtl_faults_add(b->faults, item->line, "batten `%s` has no %s", item->name, what);
}

static void check_weight(gtl_building *b, const gtl_item *item)
{
    const gtl_stated *pipe = &item->rows[GTL_R_PIPE].stated;
    bool typed = number(item, GTL_F_MASS)->stated.yes || number(item, GTL_F_WEIGHT)->stated.yes;
    if (pipe->yes && typed)
        gtl_faults_add(b->faults, pipe->line,
                       "`pipe` gives the batten's weight already; keep it, or the `mass` that you weighed");
    else if (!pipe->yes && !typed && !item->rough)
        tell_missing(b, item, "weight; write its mass, such as mass = 48 kg, or its `pipe`");
}

void gtl_check_batten(gtl_building *b, const gtl_item *item)
{
    check_weight(b, item);
    bool whole = item->at.stated.yes && item->picks.stated.yes && number(item, GTL_F_LENGTH)->stated.yes;
    if (!whole) b->draft->whole = false;
    if (item->rough) return;
    if (!item->at.stated.yes)
        tell_missing(b, item, "place; write `at`, where its first end is, such as at = 1.5 m");
    if (!number(item, GTL_F_LENGTH)->stated.yes)
        tell_missing(b, item, "length; write it, such as length = 12 m");
    if (!item->picks.stated.yes)
        tell_missing(b, item,
                     "picks; write where its lines are tied, such as picks = left at 0.5 m, right "
                     "at 11.5 m");
}

/* --- what is along it --- */

static int by_place(const void *left, const void *right)
{
    const gtl_pick_typed *a = *(const gtl_pick_typed *const *)left;
    const gtl_pick_typed *b = *(const gtl_pick_typed *const *)right;
    return (a->at > b->at) - (a->at < b->at);
}

static bool is_along(const working *w, double place)
{
    double slack = PAST_END * w->beam.length;
    return place >= -slack && place <= w->beam.length + slack;
}

static double clamp(const working *w, double place)
{
    return fmin(fmax(place, 0), w->beam.length);
}

/* Its picks in order; false after a fault. */
static bool list_picks(working *w)
{
    const gtl_list *list = &w->item->picks;
    int line = list->stated.line;
    size_t faults = w->b->faults->count;
    if (list->count > GTL_BEAM_MOST) {
        gtl_faults_add(w->b->faults, line,
                       "`picks`: %d are more than the %d that a batten can have; split it", list->count,
                       GTL_BEAM_MOST);
        return false;
    }
    for (int i = 0; i < list->count; i++) w->picks[i] = &w->b->draft->picks[list->first + i];
    qsort(w->picks, (size_t)list->count, sizeof w->picks[0], by_place);
    for (int i = 0; i < list->count; i++) {
        char excerpt[GTL_EXCERPT_SIZE], other[GTL_EXCERPT_SIZE];
        gtl_excerpt(w->picks[i]->name, excerpt);
        w->at[i] = clamp(w, w->picks[i]->at);
        if (!is_along(w, w->picks[i]->at))
            gtl_faults_add(w->b->faults, line,
                           "`picks`: `%s` lies beyond the batten's ends; a place runs from 0 to its `length`",
                           excerpt);
        else if (i > 0 && w->at[i] - w->at[i - 1] < LEAST_APART)
            gtl_faults_add(w->b->faults, line,
                           "`picks`: `%s` and `%s` are less than 10 mm apart; tie both lines to one pick",
                           gtl_excerpt(w->picks[i - 1]->name, other), excerpt);
    }
    w->beam.support_count = list->count;
    return w->b->faults->count == faults;
}

/* The batten itself, and what hangs on it; false after a fault. */
static bool list_loads(working *w)
{
    const gtl_list *list = &w->item->hung;
    size_t faults = w->b->faults->count;
    if (list->count > MOST_HUNG) {
        gtl_faults_add(w->b->faults, list->stated.line,
                       "`loads`: %d are more than the %d that a batten can have; put some together",
                       list->count, MOST_HUNG);
        return false;
    }
    w->loads[0] = (gtl_beam_load){w->batten->weight, 0, w->beam.length};
    for (int i = 0; i < list->count; i++) {
        const gtl_hung *hung = &w->b->draft->hung[list->first + i];
        w->loads[i + 1] = (gtl_beam_load){hung->weight, clamp(w, hung->from), clamp(w, hung->to)};
        w->b->rig->hung[w->b->rig->hung_count++] =
            (gtl_hung){hung->weight, w->loads[i + 1].from, w->loads[i + 1].to};
        if (!is_along(w, hung->from) || !is_along(w, hung->to))
            gtl_faults_add(
                w->b->faults, list->stated.line,
                "`loads`: item %d lies beyond the batten's ends; a place runs from 0 to its `length`", i + 1);
    }
    w->batten->hung_count = list->count;
    w->beam.load_count = list->count + 1;
    return w->b->faults->count == faults;
}

/* --- what comes down on each pick --- */

static double stiffness_of(const gtl_hardware_row *pipe)
{
    if (!pipe) return NAN;
    double outer = pipe->numbers[GTL_HW_DIAMETER], inner = outer - 2 * pipe->numbers[GTL_HW_WALL];
    return pipe->numbers[GTL_HW_MODULUS] * PI / 64 * (pow(outer, 4) - pow(inner, 4));
}

static void tell_tips(working *w)
{
    gtl_text text = {0};
    bool one = w->beam.support_count == 1;
    gtl_text_add(&text, "`picks`: batten `%s` tips: its centre of gravity is ", w->batten->name);
    add_place(w, &text, w->batten->centre);
    gtl_text_add(&text, " from its first end, and that is not %s; move %s",
                 one ? "where its one pick is" : "between its outermost picks", one ? "it" : "one of them");
    char *words = gtl_text_take(&text);
    if (words)
        tell(w, w->item->picks.stated.line, words);
    else
        w->b->faults->out_of_memory = true;
    free(words);
}

/* What a pick gains where its line is short: statics leave one or two nothing to share. */
static double settling(const working *w, const double *level, int pick)
{
    double lift[GTL_BEAM_MOST] = {0}, shifted[GTL_BEAM_MOST];
    if (w->beam.support_count <= 2) return 0;
    if (isnan(w->batten->stiffness)) return NAN;
    lift[pick] = OUT_OF_LEVEL * w->batten->stiffness;
    return gtl_beam_on_lines(&w->beam, lift, shifted) ? shifted[pick] - level[pick] : NAN;
}

static bool share(const working *w, double *stiff, double *springs)
{
    if (w->beam.support_count > 1)
        return gtl_beam_on_lines(&w->beam, NULL, stiff) && gtl_beam_on_springs(&w->beam, springs);
    stiff[0] = springs[0] = w->batten->total;
    return fabs(w->batten->centre - w->at[0]) <= CENTRED * w->beam.length;
}

static void fill_picks(working *w)
{
    double stiff[GTL_BEAM_MOST], springs[GTL_BEAM_MOST], pushes[GTL_BEAM_MOST];
    gtl_rig *rig = w->b->rig;
    if (!share(w, stiff, springs)) {
        tell_tips(w);
        return;
    }
    gtl_beam_on_props(&w->beam, NULL, pushes);
    for (int i = 0; i < w->beam.support_count; i++) {
        int item = w->picks[i]->item;
        rig->picks[rig->pick_count++] = (gtl_pick){.thing = w->b->index[item],
                                                   .position = w->at[i],
                                                   .stiff = stiff[i],
                                                   .springs = springs[i],
                                                   .pushes = pushes[i],
                                                   .settles = settling(w, stiff, i)};
        w->b->draft->items[item].numbers[GTL_F_WEIGHT].value = stiff[i];
    }
    w->batten->pick_count = w->beam.support_count;
}

static double weight_of(working *w, const gtl_hardware_row *pipe)
{
    double gravity = w->b->rig->gravity;
    if (number(w->item, GTL_F_WEIGHT)->stated.yes) return number(w->item, GTL_F_WEIGHT)->value;
    if (number(w->item, GTL_F_MASS)->stated.yes) return number(w->item, GTL_F_MASS)->value * gravity;
    if (!pipe) return NAN;
    w->b->draft->mass_typed = true;
    return pipe->numbers[GTL_HW_LINEAR_MASS] * w->beam.length * gravity;
}

static bool picks_are_whole(const working *w)
{
    bool whole = w->item->picks.count > 0;
    for (int i = 0; i < w->item->picks.count; i++) {
        int item = w->b->draft->picks[w->item->picks.first + i].item;
        whole = whole && item >= 0 && w->b->index[item] >= 0;
    }
    return whole;
}

/* Work one batten whose section is whole. */
static void work(gtl_building *b, gtl_item *item)
{
    gtl_rig *rig = b->rig;
    gtl_batten *batten = &rig->battens[rig->batten_count++];
    *batten = (gtl_batten){.line = item->line, .first_pick = rig->pick_count, .first_hung = rig->hung_count};
    batten->name = gtl_text_copy(item->name, strlen(item->name));
    if (!batten->name) b->faults->out_of_memory = true;
    batten->pipe = gtl_named_row(b, item, GTL_R_PIPE);
    batten->length = number(item, GTL_F_LENGTH)->value;
    batten->stiffness = stiffness_of(batten->pipe);
    working w = {.b = b, .item = item, .batten = batten};
    w.beam = (gtl_beam){.at = w.at, .loads = w.loads, .length = batten->length};
    batten->weight = weight_of(&w, batten->pipe);
    if (b->faults->out_of_memory || item->rough || isnan(batten->length) || isnan(batten->weight)) return;
    if (!list_picks(&w) || !list_loads(&w) || !picks_are_whole(&w)) return;
    batten->total = gtl_beam_weight(&w.beam);
    batten->centre = gtl_beam_centre(&w.beam);
    if (batten->total > 0)
        fill_picks(&w);
    else
        tell(&w, item->line, "a batten of no weight with nothing on it pulls on no line; write its `mass`");
}

void gtl_weigh_battens(gtl_building *b)
{
    for (int i = 0; i < b->draft->item_count; i++)
        if (b->draft->items[i].kind == GTL_BATTEN && !b->draft->items[i].lost) work(b, &b->draft->items[i]);
}
