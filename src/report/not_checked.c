/* not_checked.c - all that a verdict does not cover: what could not be checked here, then what never is. */
#include "base/text.h"
#include "rate/rating.h"
#include "report/names.h"
#include "report/words.h"

#include <math.h>
#include <stdlib.h>

/* Where sentences go, and what they are about. */
typedef struct gtl_speech {
    const gtl_sheet *sheet;
    const gtl_rig *rig;
    gtl_sink *sink;
    void *context;
} gtl_speech;

static void say(const gtl_speech *speech, const char *format, ...) GTL_PRINTF(2, 3);
static void say(const gtl_speech *speech, const char *format, ...)
{
    gtl_text text = {0};
    va_list arguments;
    va_start(arguments, format);
    gtl_text_add_list(&text, format, arguments);
    va_end(arguments);
    char *sentence = gtl_text_take(&text);
    speech->sink(speech->context, sentence);
    free(sentence);
}

/* End a sentence that lists names, and say it unless there were none. */
static void say_names(const gtl_speech *speech, gtl_names *names, const char *after)
{
    char *list = gtl_text_take(names->text);
    if (!list)
        speech->sink(speech->context, NULL);
    else if (names->count > 0)
        say(speech, "%s%s", list, after);
    free(list);
}

static bool is_rope_or_sling(const gtl_line *line)
{
    return line->kind == GTL_ROPE || line->kind == GTL_SLING;
}

/* --- parts --- */

static void say_unrated(const gtl_speech *speech)
{
    for (int i = 0; i < speech->sheet->component_count; i++) {
        const gtl_component *part = &speech->sheet->components[i];
        if (part->mark != GTL_MARK_UNRATED) continue;
        bool beyond = part->step_count > 0 && isnan(part->capacity);
        say(speech, "%s %s%s: %s", gtl_kind_name(part->kind), part->name, part->push ? ", in push" : "",
            beyond ? "no figure is published for the way it is used" : "no rating");
    }
}

static void say_unlimited(const gtl_speech *speech)
{
    for (int i = 0; i < speech->rig->thing_count; i++) {
        const gtl_thing *thing = &speech->rig->things[i];
        if (thing->kind == GTL_HAND && isnan(thing->limit))
            say(speech, "hand %s: no limit to its pull", thing->name);
    }
}

/* --- cases --- */

static const gtl_thing *unlimited_hand(const gtl_rig *rig)
{
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_HAND && isnan(rig->things[i].limit)) return &rig->things[i];
    return NULL;
}

/* A case that is not worked, and what stands in its way if not the user alone. Without an acceleration start
 * and stop are told together. */
static void add_case(const gtl_speech *speech, gtl_names *names, gtl_case_kind kind)
{
    const gtl_thing *hand = unlimited_hand(speech->rig);
    bool unsettled = isnan(speech->rig->acceleration);
    gtl_text text = {0};
    if (kind == GTL_STOP && unsettled) return;
    gtl_text_add(&text, "%s", kind == GTL_LOST ? "lost NAME" : gtl_case_name(kind));
    if (kind == GTL_JAM && hand) gtl_text_add(&text, " (no limit of %s is stated)", hand->name);
    if (kind == GTL_START && unsettled) gtl_text_add(&text, " and stop (no acceleration is stated)");
    char *said = gtl_text_take(&text);
    if (said)
        gtl_names_add(names, said);
    else
        names->text->failed = true;
    free(said);
}

static void say_cases(const gtl_speech *speech)
{
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = GTL_ALL_NAMES};
    gtl_text_add(&text, "cases not worked: ");
    for (int kind = GTL_RAISE; kind < GTL_CASE_KIND_COUNT; kind++) {
        bool can_be = kind == GTL_LOST || (kind != GTL_DROP && speech->rig->hand >= 0);
        if (can_be && !gtl_rig_asks(speech->rig, (gtl_case_kind)kind))
            add_case(speech, &names, (gtl_case_kind)kind);
    }
    say_names(speech, &names, "");
}

/* --- lines --- */

/* The stops of a line that tells its diameter where nobody tells that of the bend. */
static void say_open_bends(const gtl_speech *speech, const gtl_line *line)
{
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = GTL_ALL_NAMES};
    gtl_text_add(&text, "bends of %s at ", line->name);
    for (int i = 0; i < line->stop_count; i++) {
        const char *at;
        gtl_line here = *line;
        here.first_stop += i;
        here.stop_count = 1;
        const gtl_thing *thing = &speech->rig->things[speech->rig->stops[here.first_stop].thing];
        if (thing->kind != GTL_HAND && isnan(gtl_tightest_bend(speech->rig, &here, &at)))
            gtl_names_add(&names, thing->name);
    }
    say_names(speech, &names, ": no diameter is stated there");
}

static bool has_no_diameter(const gtl_line *line)
{
    return isnan(line->gear.diameter);
}

static bool has_no_end(const gtl_line *line)
{
    return !line->gear.knot && !line->gear.termination;
}

/* How many ropes and slings there are, and how many of them are as asked; those are named too. */
static int find_lines(const gtl_speech *speech, bool (*asked)(const gtl_line *line), gtl_names *names)
{
    int count = 0;
    for (int i = 0; i < speech->rig->line_count; i++) {
        const gtl_line *line = &speech->rig->lines[i];
        count += is_rope_or_sling(line);
        if (is_rope_or_sling(line) && asked(line)) gtl_names_add(names, line->name);
    }
    return count;
}

/* Where no rope tells its diameter no bend is counted, and none need be named. */
static void say_bends(const gtl_speech *speech)
{
    gtl_text text = {0};
    gtl_names without = {.text = &text, .most = GTL_ALL_NAMES};
    gtl_text_add(&text, "bends of ");
    bool none = find_lines(speech, has_no_diameter, &without) == without.count;
    say(speech, none ? "edges and bends that lines lie over" : "edges that lines lie over");
    if (none) without.count = 0;
    say_names(speech, &without, ": no diameter of the line is stated");
    for (int i = 0; i < speech->rig->line_count; i++) {
        const gtl_line *line = &speech->rig->lines[i];
        if (!is_rope_or_sling(line) || has_no_diameter(line)) continue;
        if (line->gear.bend)
            say_open_bends(speech, line);
        else
            say(speech, "bends of %s: no figure is published for its material", line->name);
    }
}

static void say_ends(const gtl_speech *speech)
{
    gtl_text text = {0};
    gtl_names without = {.text = &text, .most = GTL_ALL_NAMES};
    gtl_text_add(&text, "knots and terminations of ");
    int count = find_lines(speech, has_no_end, &without);
    bool none = without.count == count, all = without.count == 0;
    if (none) say(speech, "knots and terminations");
    if (!none && all) say(speech, "knots and terminations beyond the figures of those stated");
    if (none) without.count = 0;
    say_names(speech, &without, ": none is stated");
}

/* --- what no figure here holds --- */

static bool works(const gtl_speech *speech, gtl_case_kind kind)
{
    const gtl_outcome *outcome = gtl_sheet_outcome(speech->sheet, kind);
    return outcome && outcome->possible;
}

static void say_dynamics(const gtl_speech *speech)
{
    bool start = works(speech, GTL_START), stop = works(speech, GTL_STOP);
    say(speech, "dynamics%s: %s%ssnatching%s, swinging, wind",
        start && stop ? " beyond a steady start and stop"
        : start       ? " beyond a steady start"
        : stop        ? " beyond a steady stop"
                      : "",
        start ? "" : "starting, ", stop ? "" : "stopping, ",
        works(speech, GTL_DROP) ? " beyond the drop worked" : "");
    if (gtl_rig_asks(speech->rig, GTL_LOST))
        say(speech, "what a loss makes things drop on, swing into or hit");
}

/* What the case drop leaves open. */
static void say_drop(const gtl_speech *speech)
{
    if (!works(speech, GTL_DROP)) return;
    for (int i = 0; i < speech->rig->thing_count; i++) {
        const gtl_thing *thing = &speech->rig->things[i];
        if (thing->kind == GTL_HAND && gtl_is_behind_turns(speech->rig, i))
            say(speech, "hand %s in the drop: what it has to hold behind the turns is not known",
                thing->name);
    }
    say(speech, "what the falling load swings into or strikes, and whether its tie stays on it");
}

static void say_gear(const gtl_speech *speech)
{
    say(speech, "weight of ropes, slings and connectors");
    say(speech, "sheave radius and rope stiffness as such, beyond the efficiency stated");
    say(speech, "friction of guides");
}

static void say_battens(const gtl_speech *speech)
{
    for (int i = 0; i < speech->sheet->rig->batten_count; i++)
        say(speech, "batten %s: how it bends, and whether it, its couplings and its clamps hold",
            speech->sheet->rig->battens[i].name);
}

static void say_timber(const gtl_speech *speech)
{
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = GTL_ALL_NAMES};
    const gtl_rig *rig = speech->rig;
    gtl_text_add(&text, "the true weight and soundness of ");
    for (int i = 0; i < rig->wood_count; i++) {
        const gtl_wood *wood = &rig->woods[i];
        gtl_names_add(&names,
                      wood->kind == GTL_SPAR ? rig->lines[wood->index].name : rig->things[wood->index].name);
    }
    say_names(speech, &names, ": moisture, branches, foliage, decay and hollows");
}

static void say_arbors(const gtl_speech *speech)
{
    bool any = false;
    for (int i = 0; i < speech->rig->thing_count; i++) {
        const gtl_thing *thing = &speech->rig->things[i];
        if (thing->kind == GTL_ARBOR) say(speech, "arbor %s: its frame, rods and guides", thing->name);
        any |= thing->kind == GTL_ARBOR;
    }
    if (any) say(speech, "rope lock and stops; whether the weights stay in their frame");
}

static void say_condition(const gtl_speech *speech)
{
    say(speech, "condition and age of the gear");
}

static void say_structure(const gtl_speech *speech)
{
    say(speech, "the structure or tree itself");
}

static void (*const topics[])(const gtl_speech *) = {
    say_unrated, say_unlimited, say_cases,     say_gear,     say_arbors, say_battens,   say_timber,
    say_bends,   say_ends,      say_condition, say_dynamics, say_drop,   say_structure,
};

void gtl_words_not_checked(const gtl_sheet *sheet, gtl_sink *sink, void *context)
{
    gtl_speech speech = {sheet, sheet->rig, sink, context};
    for (size_t i = 0; i < sizeof topics / sizeof *topics; i++) topics[i](&speech);
}
