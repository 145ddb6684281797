/* keys.c - the one table of keys, in the order of kinds. docs/rig-file.md is the user's copy of it. */
#include "read/keys.h"

#include "base/unit_names.h"
#include "rig/draft.h"

#define NUMBER(kind, key, slot, quantity, range, form, meaning)                                              \
    {                                                                                                        \
        {kind, key, form, GTL_##quantity##_UNITS, meaning}, GTL_STORE_NUMBER, slot, GTL_##quantity, range    \
    }
#define RANGED(kind, key, slot, quantity, range, form, meaning)                                              \
    {                                                                                                        \
        {kind, key, form, GTL_##quantity##_UNITS, meaning}, GTL_STORE_RANGE, slot, GTL_##quantity, range     \
    }
#define WORDS(kind, key, how, slot, form, unit, meaning)                                                     \
    {                                                                                                        \
        {kind, key, form, unit, meaning}, how, slot, GTL_LENGTH, GTL_ANY                                     \
    }

#define REMARK(key, slot, form, meaning) WORDS(GTL_SHEET, key, GTL_STORE_REMARK, slot, form, "", meaning)

#define PLACE_FORM        "one length (height), two (across, height) or three (across, along, height)"
#define AT(kind, meaning) WORDS(kind, "at", GTL_STORE_AT, 0, PLACE_FORM, GTL_LENGTH_UNITS, meaning)
#define AT_OR_ON(kind)                                                                                       \
    AT(kind, "where it is drawn; unless it is fixed it is moved to where it really hangs"),                  \
        WORDS(kind, "on", GTL_STORE_ON, 0, "a name, with connectors after `via`: beam via shackle + ring",   \
              "", "what it sits on, rigidly, at the same place")
#define MASS_OR_WEIGHT(kind, range, meaning)                                                                 \
    NUMBER(kind, "mass", GTL_F_MASS, MASS, range, "a mass: 85 kg", meaning),                                 \
        NUMBER(kind, "weight", GTL_F_WEIGHT, FORCE, range, "a force: 830 N",                                 \
               "its weight, instead of `mass`")
#define GUIDE(kind)                                                                                          \
    WORDS(kind, "guide", GTL_STORE_GUIDE, 0, "vertical", "", "keeps it on a vertical track, without friction")
#define WRAP(kind, range)                                                                                    \
    NUMBER(kind, "wrap", GTL_F_WRAP, ANGLE, range, "an angle: 180 deg",                                      \
           "angle of contact, instead of the one that the geometry gives")
#define RATINGS(kind)                                                                                        \
    NUMBER(kind, "wll", GTL_F_WLL, FORCE, GTL_ABOVE_ZERO, "a force: 3 kN",                                   \
           "working load limit, from its tag or certificate"),                                               \
        NUMBER(kind, "mbs", GTL_F_MBS, FORCE, GTL_ABOVE_ZERO, "a force: 18 kN",                              \
               "minimum breaking strength; a rating only with a `design factor`, here or in [rig]"),         \
        NUMBER(kind, "design factor", GTL_F_DESIGN_FACTOR, NUMBER, GTL_ABOVE_ONE, "a number above 1: 8",     \
               "what its `mbs` is divided by, instead of the rig's factor")
#define ROW(kind, key, slot, form, meaning) WORDS(kind, key, GTL_STORE_ROW, slot, form, "", meaning)
#define HARDWARE(kind)                                                                                       \
    ROW(kind, "hardware", GTL_R_HARDWARE, "the name of a gear row: example-shackle",                         \
        "a row of the hardware tables: what it states counts where this section does not")
#define WEAR(kind)                                                                                           \
    NUMBER(kind, "wear", GTL_F_WEAR, FRACTION, GTL_SHARE, "a percentage: 90 %",                              \
           "what wear leaves of its rating, as whoever inspected it says")
#define PIN(kind)                                                                                            \
    NUMBER(kind, "pin diameter", GTL_F_PIN_DIAMETER, LENGTH, GTL_ABOVE_ZERO, "a length: 16 mm",              \
           "diameter of what a line with a `diameter` lies round here")
#define ROPE_GEAR(kind)                                                                                      \
    HARDWARE(kind),                                                                                          \
        ROW(kind, "material", GTL_R_MATERIAL, "the name of a material row: polyester",                       \
            "what it is made of"),                                                                           \
        NUMBER(kind, "diameter", GTL_F_DIAMETER, LENGTH, GTL_ABOVE_ZERO, "a length: 12 mm",                  \
               "its own; with the `sheave diameter` or `pin diameter` that it lies round: its bend"),        \
        ROW(kind, "knot", GTL_R_KNOT, "the name of a knot row: bowline",                                     \
            "the worst knot in it; what it keeps counts on the rating"),                                     \
        ROW(kind, "termination", GTL_R_TERMINATION, "the name of a termination row: eye-splice",             \
            "the worst of its ends; likewise"),                                                              \
        WEAR(kind),                                                                                          \
        NUMBER(kind, "wet", GTL_F_WET, FRACTION, GTL_SHARE, "a percentage: 85 %",                            \
               "what being wet leaves of its rating")
#define PATH(kind, form, meaning) WORDS(kind, "path", GTL_STORE_PATH, 0, form, "", meaning)
#define LENGTH(kind)                                                                                         \
    NUMBER(kind, "length", GTL_F_LENGTH, LENGTH, GTL_ABOVE_ZERO, "a length: 5.5 m",                          \
           "its length between the tied ends, instead of the drawn one")

#define STRETCH(kind)                                                                                        \
    WORDS(kind, "stretch", GTL_STORE_STRETCH, GTL_F_STRETCH,                                                 \
          "an elongation and the force that it is at: 3 % at 2 kN", "%, N",                                  \
          "how far it stretches; needed where it catches a `fall`")

#define TIMBER(kind)                                                                                         \
    WORDS(kind, "species", GTL_STORE_SPECIES, GTL_R_SPECIES,                                                 \
          "the name of a green-wood row: northern-red-oak", "",                                              \
          "what wood it is: its mass follows from `length` and `diameter`, instead of `mass`"),              \
        RANGED(kind, "density", GTL_F_DENSITY, DENSITY, GTL_WOODEN,                                          \
               "a density, or a range: 1030 kg/m3, 860 kg/m3 .. 1190 kg/m3",                                 \
               "of its wood with what water it holds, instead of `species`"),                                \
        NUMBER(kind, "length", GTL_F_STEM_LENGTH, LENGTH, GTL_ABOVE_ZERO, "a length: 2 m",                   \
               "of the piece of timber"),                                                                    \
        WORDS(kind, "diameter", GTL_STORE_DIAMETERS, 0,                                                      \
              "one length (halfway), two (the ends) or three (end, halfway, end): 45 cm, 35 cm",             \
              GTL_LENGTH_UNITS, "of the piece, over its bark unless `bark` is stated"),                      \
        NUMBER(kind, "bark", GTL_F_BARK, LENGTH, GTL_ABOVE_ZERO, "a length: 15 mm",                          \
               "its thickness, where the diameters were measured under it"),                                 \
        WORDS(kind, "density end", GTL_STORE_WOOD_END, 0, "heavy or mean", "",                               \
              "which figure of the density's spread is worked with; heavy where left out")

static const gtl_key_row rows[] = {
    REMARK("title", GTL_TITLE, "text", "heads the report"),
    REMARK("place", GTL_PLACE, "text", "where the rig is"),
    REMARK("date", GTL_DATE, "text", "when it is for"),
    REMARK("by", GTL_BY, "text", "who wrote the file"),
    REMARK("note", GTL_NOTE, "text", "anything else for the report"),
    WORDS(GTL_SHEET, "units", GTL_STORE_UNITS, 0, "metric or us", "", "what the report is printed in"),
    WORDS(GTL_SHEET, "cases", GTL_STORE_CASES, 0,
          "some of hold, raise, lower, jam, start, stop, lost NAME and drop, or all", "",
          "what is worked and rated; hold, raise and lower where left out"),
    WORDS(GTL_SHEET, "load", GTL_STORE_LOAD, 0, "the name of a load or a batten", "",
          "which load is lifted; needed where there are several"),
    RANGED(GTL_SHEET, "efficiency", GTL_F_EFFICIENCY, FRACTION, GTL_SHARE,
           "a percentage, or a range: 92 %, 88 % .. 94 %",
           "of one sheave of every block that states none, at a 180 degree wrap"),
    NUMBER(GTL_SHEET, "gravity", GTL_F_GRAVITY, ACCELERATION, GTL_ON_EARTH, "an acceleration: 9.81 m/s2",
           "local gravity, 9.7 to 10 m/s2; 9.80665 m/s2 where left out"),
    NUMBER(GTL_SHEET, "design factor", GTL_F_DESIGN_FACTOR, NUMBER, GTL_ABOVE_ONE, "a number above 1: 8",
           "what every `mbs` without a factor of its own is divided by"),
    WORDS(GTL_SHEET, "tables", GTL_STORE_TABLES, 0, "a file name, or several with commas: mine.ini", "",
          "hardware tables of your own, looked for from the rig file's folder; the shipped ones follow"),
    ROW(GTL_SHEET, "use", GTL_R_USE, "the name of a use row: eu-machinery",
        "what the rig is for: its published design factors are printed beside yours"),
    NUMBER(GTL_SHEET, "acceleration", GTL_F_ACCELERATION, ACCELERATION, GTL_ABOVE_ZERO,
           "an acceleration: 0.5 m/s2", "of the lifted load, in the cases start and stop"),
    NUMBER(GTL_SHEET, "speed", GTL_F_SPEED, SPEED, GTL_ABOVE_ZERO, "a speed: 0.5 m/s",
           "that the load reaches, or is braked from, in `time`; instead of `acceleration`"),
    NUMBER(GTL_SHEET, "time", GTL_F_TIME, TIME, GTL_ABOVE_ZERO, "a time: 0.4 s",
           "that it takes to reach `speed`, or to brake from it"),
    NUMBER(GTL_SHEET, "loss factor", GTL_F_LOSS_FACTOR, NUMBER, GTL_AT_LEAST_ONE, "a number, 1 or more: 2",
           "what the forces after a loss are multiplied by; 2 where left out"),

    NUMBER(GTL_SHEET, "lift", GTL_F_LIFT, LENGTH, GTL_ABOVE_ZERO, "a length: 4 m",
           "how far the load is to go up from where it is drawn: what rope that takes, and whether blocks "
           "meet"),

    AT(GTL_ANCHOR, "where it is; it does not move"),
    RATINGS(GTL_ANCHOR),
    HARDWARE(GTL_ANCHOR),
    ROW(GTL_ANCHOR, "fitting", GTL_R_FITTING, "the name of a fitting row: shoulder-eyebolt",
        "what is pulled here; its rating by the pull's angle from `axis`"),
    WORDS(GTL_ANCHOR, "axis", GTL_STORE_AXIS, 0,
          "down, up, or as many numbers as `at` has lengths, height last: 0, -1", "",
          "the direction of a straight pull on its `fitting`"),
    PIN(GTL_ANCHOR),
    WEAR(GTL_ANCHOR),

    AT_OR_ON(GTL_BLOCK),
    NUMBER(GTL_BLOCK, "sheaves", GTL_F_SHEAVES, WHOLE, GTL_AT_LEAST_ONE, "a whole number: 2",
           "how often it may be passed; as many as the paths use where left out"),
    RANGED(GTL_BLOCK, "efficiency", GTL_F_EFFICIENCY, FRACTION, GTL_SHARE,
           "a percentage, or a range: 92 %, 88 % .. 94 %", "of one sheave, at a 180 degree wrap"),
    WRAP(GTL_BLOCK, GTL_WITHIN_TURN),
    MASS_OR_WEIGHT(GTL_BLOCK, GTL_NOT_NEGATIVE, "its own mass"),
    GUIDE(GTL_BLOCK),
    RATINGS(GTL_BLOCK),
    HARDWARE(GTL_BLOCK),
    NUMBER(GTL_BLOCK, "sheave diameter", GTL_F_SHEAVE_DIAMETER, LENGTH, GTL_ABOVE_ZERO, "a length: 75 mm",
           "of its sheaves at the tread, where a line with a `diameter` lies"),
    NUMBER(GTL_BLOCK, "clear", GTL_F_CLEAR, LENGTH, GTL_ABOVE_ZERO, "a length: 300 mm",
           "least distance from its centre to that of the next stop of a rope: nearer they are two-blocked"),
    PIN(GTL_BLOCK),
    WEAR(GTL_BLOCK),

    AT_OR_ON(GTL_FAIRLEAD),
    RANGED(GTL_FAIRLEAD, "friction", GTL_F_FRICTION, NUMBER, GTL_NOT_NEGATIVE,
           "a number, or a range: 0.25, 0.12 .. 0.2", "coefficient of friction between the rope and it"),
    RANGED(GTL_FAIRLEAD, "efficiency", GTL_F_EFFICIENCY, FRACTION, GTL_SHARE,
           "a percentage, or a range: 60 %, 50 % .. 70 %", "at a 180 degree wrap, instead of `friction`"),
    NUMBER(GTL_FAIRLEAD, "turns", GTL_F_TURNS, WHOLE, GTL_NOT_NEGATIVE, "a whole number: 2",
           "whole extra turns of the rope around it"),
    WRAP(GTL_FAIRLEAD, GTL_NOT_NEGATIVE),
    MASS_OR_WEIGHT(GTL_FAIRLEAD, GTL_NOT_NEGATIVE, "its own mass"),
    RATINGS(GTL_FAIRLEAD),
    HARDWARE(GTL_FAIRLEAD),
    PIN(GTL_FAIRLEAD),
    WEAR(GTL_FAIRLEAD),

    AT_OR_ON(GTL_JOINT),
    MASS_OR_WEIGHT(GTL_JOINT, GTL_NOT_NEGATIVE, "its own mass"),
    GUIDE(GTL_JOINT),
    RATINGS(GTL_JOINT),
    HARDWARE(GTL_JOINT),
    PIN(GTL_JOINT),
    WEAR(GTL_JOINT),

    AT_OR_ON(GTL_LOAD),
    MASS_OR_WEIGHT(GTL_LOAD, GTL_ABOVE_ZERO, "its mass"),
    TIMBER(GTL_LOAD),
    GUIDE(GTL_LOAD),
    NUMBER(GTL_LOAD, "fall", GTL_F_FALL, LENGTH, GTL_NOT_NEGATIVE, "a length: 1 m",
           "how far it falls free before its line begins to take it, in the case drop"),
    NUMBER(GTL_LOAD, "run", GTL_F_RUN, LENGTH, GTL_ABOVE_ZERO, "a length: 3 m",
           "how far the rope is let run while it stops a `fall`; told beside the peak"),
    PIN(GTL_LOAD),

    AT(GTL_ARBOR, "where it is drawn; it is kept on a vertical track, and moved to where it really hangs"),
    WORDS(GTL_ARBOR, "on", GTL_STORE_ON, 0, "a name, with connectors after `via`: purchase via shackle", "",
          "the block or joint that it moves with, rigidly, at the same place"),
    MASS_OR_WEIGHT(GTL_ARBOR, GTL_ABOVE_ZERO, "all that is in it now, and its own"),
    NUMBER(GTL_ARBOR, "each", GTL_F_COUNTERWEIGHT, MASS, GTL_ABOVE_ZERO, "a mass: 12.5 kg",
           "of one counterweight: the report says how many make balance"),
    PIN(GTL_ARBOR),

    AT(GTL_HAND, "where it hauls from; it does not move"),
    WORDS(GTL_HAND, "on", GTL_STORE_ON, 0, "a name, with connectors after `via`: chair via ring", "",
          "the body that hauls itself"),
    NUMBER(GTL_HAND, "pull", GTL_F_PULL, FORCE, GTL_NOT_NEGATIVE, "a force: 200 N",
           "its pull where that is known; worked out where left out"),
    WORDS(GTL_HAND, "or", GTL_STORE_OR, 0, "the name of another hand", "",
          "which pulls instead in each case in which this one would have to push; neither has a `pull`"),
    NUMBER(GTL_HAND, "people", GTL_F_PEOPLE, WHOLE, GTL_AT_LEAST_ONE, "a whole number: 2",
           "how many haul, each pulling at most `each`"),
    NUMBER(GTL_HAND, "each", GTL_F_EACH, FORCE, GTL_ABOVE_ZERO, "a force: 250 N",
           "the most that each of the people can pull"),
    NUMBER(GTL_HAND, "limit", GTL_F_LIMIT, FORCE, GTL_ABOVE_ZERO, "a force: 3 kN",
           "the most that it can pull, instead of `people` and `each`"),

    PATH(GTL_ROPE, "two stops or more, in order: beam, tail, head, crew",
         "where it is tied (first, last; anchors, joints and loads between) and what it runs over"),
    NUMBER(GTL_ROPE, "length", GTL_F_LENGTH, LENGTH, GTL_ABOVE_ZERO, "a length: 5.5 m",
           "tied at both ends: its length between them, instead of the drawn one; hauled: all that there is "
           "of it to haul with"),
    NUMBER(GTL_ROPE, "spare", GTL_F_SPARE, LENGTH, GTL_ABOVE_ZERO, "a length: 1.5 m",
           "what has to be left of it beyond what is rove: knots, tails, what the hand holds"),
    STRETCH(GTL_ROPE),
    RATINGS(GTL_ROPE),
    ROPE_GEAR(GTL_ROPE),

    PATH(GTL_SLING, "two stops: crate, hook via shackle", "from one stop to the other, tied at both"),
    LENGTH(GTL_SLING),
    STRETCH(GTL_SLING),
    RATINGS(GTL_SLING),
    ROPE_GEAR(GTL_SLING),
    WORDS(GTL_SLING, "hitch", GTL_STORE_HITCH, GTL_R_HITCH, "straight, choke or basket", "",
          "how it is slung; legs that are drawn each on their own are not counted again"),
    NUMBER(GTL_SLING, "choke angle", GTL_F_CHOKE_ANGLE, ANGLE, GTL_HALF_TURN, "an angle: 120 deg",
           "of a choke, between its two parts: 180 deg runs straight through, 0 deg turns right back"),

    PATH(GTL_SPAR, "two stops: left, right", "from one end to the other"),
    MASS_OR_WEIGHT(GTL_SPAR, GTL_NOT_NEGATIVE, "its own mass, half of it at each end"),
    TIMBER(GTL_SPAR),
    RATINGS(GTL_SPAR),
    NUMBER(GTL_SPAR, "push wll", GTL_F_PUSH_WLL, FORCE, GTL_ABOVE_ZERO, "a force: 3 kN",
           "working load limit where it is pushed"),
    HARDWARE(GTL_SPAR),
    WEAR(GTL_SPAR),

    RATINGS(GTL_CONNECTOR),
    HARDWARE(GTL_CONNECTOR),
    NUMBER(GTL_CONNECTOR, "side load", GTL_F_SIDE_LOAD, ANGLE, GTL_HALF_TURN, "an angle: 45 deg",
           "of the pull from its line: 0 deg is a straight pull"),
    PIN(GTL_CONNECTOR),
    WEAR(GTL_CONNECTOR),

    AT(GTL_BATTEN, "its first end; it lies level, and runs along the first axis from there"),
    NUMBER(GTL_BATTEN, "length", GTL_F_LENGTH, LENGTH, GTL_ABOVE_ZERO, "a length: 12 m",
           "from its first end to its last"),
    NUMBER(GTL_BATTEN, "mass", GTL_F_MASS, MASS, GTL_NOT_NEGATIVE, "a mass: 48 kg",
           "of the bare batten, spread along it; or its `pipe`"),
    NUMBER(GTL_BATTEN, "weight", GTL_F_WEIGHT, FORCE, GTL_NOT_NEGATIVE, "a force: 470 N",
           "its weight, instead of `mass`"),
    ROW(GTL_BATTEN, "pipe", GTL_R_PIPE, "the name of a pipe row: schedule-40-1-1-2-in",
        "a row of the hardware tables, instead of `mass`: weighs so much a length, and is so stiff"),
    WORDS(GTL_BATTEN, "picks", GTL_STORE_PICKS, 0, "names and places: left at 0.5 m, right at 11.5 m",
          GTL_LENGTH_UNITS, "the points that lines tie to, from its first end; each can stand in a path"),
    WORDS(GTL_BATTEN, "loads", GTL_STORE_HUNG, 0, "weights and places: 6 kg at 1.5 m, 20 kg from 0 m to 12 m",
          GTL_FORCE_UNITS, "what hangs on it, in a point or spread evenly"),
};

#define ROW_COUNT (sizeof rows / sizeof rows[0])

const gtl_key *gtl_key_at(size_t index)
{
    return index < ROW_COUNT ? &rows[index].key : NULL;
}

const gtl_key_row *gtl_key_find(gtl_kind kind, gtl_word key)
{
    for (size_t i = 0; i < ROW_COUNT; i++) {
        if (rows[i].key.kind == kind && gtl_word_compare(key, gtl_word_of(rows[i].key.key)) == 0) {
            return &rows[i];
        }
    }
    return NULL;
}

gtl_kind gtl_kind_find(gtl_word name)
{
    gtl_kind kind = GTL_SHEET;
    while (kind < GTL_KIND_COUNT && gtl_word_compare(name, gtl_word_of(gtl_kind_name(kind))) != 0) kind++;
    return kind;
}

const char *gtl_kind_meaning(gtl_kind kind)
{
    static const char *const meanings[GTL_KIND_COUNT] = {
        [GTL_SHEET] = "the sheet itself: title, units, cases, and what holds for all parts",
        [GTL_ANCHOR] = "a point that does not move",
        [GTL_BLOCK] = "a body with sheaves, fixed or travelling",
        [GTL_FAIRLEAD] = "a bend without a sheave: a ring, a connector, a crotch, a post, a lowering bollard",
        [GTL_JOINT] =
            "a point where lines are tied: a bridle apex, a plate, a grab or hitch on a running rope",
        [GTL_LOAD] = "a body with a weight",
        [GTL_ARBOR] = "counterweights in their frame, on a vertical track, which balance what is lifted",
        [GTL_HAND] = "where somebody or something hauls",
        [GTL_ROPE] = "a line through two or more stops",
        [GTL_SLING] = "a line from one stop to another, tied at both",
        [GTL_SPAR] = "a rigid piece between two stops that can also be pushed",
        [GTL_CONNECTOR] = "a shackle, ring, hook or strop between a thing and what it hangs on",
        [GTL_BATTEN] = "a pipe or bar hung level on lines, with what hangs along it",
    };
    return meanings[kind];
}
