/* table_keys.c - the one table of the keys of hardware tables, in the order of kinds. docs/hardware-tables.md
 * is the user's copy of it. */
#include "read/table_keys.h"

/* A number that may be left out, and one that may not. */
#define NUMBER(kind, key, slot, quantity, range, example)                                                    \
    {                                                                                                        \
        kind, key, GTL_TABLE_NUMBER, slot, quantity, range, false, example                                   \
    }
#define NEEDED(kind, key, slot, quantity, range, example)                                                    \
    {                                                                                                        \
        kind, key, GTL_TABLE_NUMBER, slot, quantity, range, true, example                                    \
    }
#define WORDS(kind, key, how, needed, example)                                                               \
    {                                                                                                        \
        kind, key, how, 0, GTL_NUMBER, GTL_TABLE_NOT_NEGATIVE, needed, example                               \
    }
#define EDGES(kind, key, quantity, range, example)                                                           \
    {                                                                                                        \
        kind, key, GTL_TABLE_EDGES, 0, quantity, range, true, example                                        \
    }
/* Of a bend not needed: a formula may stand in their place. */
#define SHARES(kind, needed, example)                                                                        \
    {                                                                                                        \
        kind, "keeps", GTL_TABLE_SHARES, 0, GTL_FRACTION, GTL_TABLE_SHARE, needed, example                   \
    }
#define FORMULA(key, slot, example)                                                                          \
    {                                                                                                        \
        GTL_HW_BEND, key, GTL_TABLE_FORMULA, slot, GTL_NUMBER, GTL_TABLE_ABOVE_ZERO, false, example          \
    }

#define KEEPS(kind, range, example) NEEDED(kind, "keeps", GTL_HW_KEEPS, GTL_FRACTION, range, example)
#define CLASSES(kind)               WORDS(kind, "class", GTL_TABLE_CLASSES, false, "fibre, natural-fibre")
#define FACTOR(key, slot, example)  NUMBER(GTL_HW_USE, key, slot, GTL_NUMBER, GTL_TABLE_ABOVE_ONE, example)
#define TILTED(kind)                                                                                         \
    EDGES(kind, "up to", GTL_ANGLE, GTL_TABLE_END_ANGLE, "5 deg, 45 deg"),                                   \
        SHARES(kind, true, "100 %, 70 %"), WORDS(kind, "beyond", GTL_TABLE_BEYOND, true, "not allowed")
#define RANGE(kind, quantity, range, low, high)                                                              \
    NEEDED(kind, "low", GTL_HW_LOW, quantity, range, low),                                                   \
        NEEDED(kind, "high", GTL_HW_HIGH, quantity, range, high)

static const gtl_table_key keys[] = {
    NUMBER(GTL_HW_GEAR, "wll", GTL_HW_WLL, GTL_FORCE, GTL_TABLE_ABOVE_ZERO, "2.5 kN"),
    NUMBER(GTL_HW_GEAR, "push wll", GTL_HW_PUSH_WLL, GTL_FORCE, GTL_TABLE_ABOVE_ZERO, "3 kN"),
    NUMBER(GTL_HW_GEAR, "mbs", GTL_HW_MBS, GTL_FORCE, GTL_TABLE_ABOVE_ZERO, "22 kN"),
    NUMBER(GTL_HW_GEAR, "mass", GTL_HW_MASS, GTL_MASS, GTL_TABLE_NOT_NEGATIVE, "0.9 kg"),
    NUMBER(GTL_HW_GEAR, "efficiency", GTL_HW_EFFICIENCY, GTL_FRACTION, GTL_TABLE_SHARE, "92 %"),
    NUMBER(GTL_HW_GEAR, "friction", GTL_HW_COEFFICIENT, GTL_NUMBER, GTL_TABLE_NOT_NEGATIVE, "0.25"),
    NUMBER(GTL_HW_GEAR, "diameter", GTL_HW_DIAMETER, GTL_LENGTH, GTL_TABLE_ABOVE_ZERO, "12 mm"),
    NUMBER(GTL_HW_GEAR, "sheave diameter", GTL_HW_SHEAVE_DIAMETER, GTL_LENGTH, GTL_TABLE_ABOVE_ZERO, "75 mm"),
    NUMBER(GTL_HW_GEAR, "pin diameter", GTL_HW_PIN_DIAMETER, GTL_LENGTH, GTL_TABLE_ABOVE_ZERO, "16 mm"),
    WORDS(GTL_HW_GEAR, "material", GTL_TABLE_MATERIAL, false, "polyester"),

    WORDS(GTL_HW_MATERIAL, "class", GTL_TABLE_CLASS, true, "fibre"),
    WORDS(GTL_HW_MATERIAL, "knots", GTL_TABLE_KNOTS, false, "none"),

    KEEPS(GTL_HW_KNOT, GTL_TABLE_SHARE, "60 %"),

    KEEPS(GTL_HW_TERMINATION, GTL_TABLE_SHARE, "90 %"),
    CLASSES(GTL_HW_TERMINATION),

    CLASSES(GTL_HW_BEND),
    EDGES(GTL_HW_BEND, "from", GTL_NUMBER, GTL_TABLE_ABOVE_ZERO, "1, 2, 4"),
    SHARES(GTL_HW_BEND, false, "50 %, 65 %, 75 %"),
    FORMULA("coefficient", 0, "0.5"),
    FORMULA("power", 1, "0.5"),

    KEEPS(GTL_HW_HITCH, GTL_TABLE_MULTIPLE, "80 %"),
    CLASSES(GTL_HW_HITCH),

    EDGES(GTL_HW_CHOKE, "from", GTL_ANGLE, GTL_TABLE_ANGLE, "120 deg, 90 deg"),
    SHARES(GTL_HW_CHOKE, true, "100 %, 87 %"),
    WORDS(GTL_HW_CHOKE, "on", GTL_TABLE_ON, true, "choker"),
    CLASSES(GTL_HW_CHOKE),

    KEEPS(GTL_HW_MODE, GTL_TABLE_MULTIPLE, "140 %"),

    TILTED(GTL_HW_FITTING),
    TILTED(GTL_HW_SIDE_LOAD),

    FACTOR("wire rope", GTL_HW_WIRE_ROPE, "5"),
    FACTOR("fibre rope", GTL_HW_FIBRE_ROPE, "7"),
    FACTOR("chain", GTL_HW_CHAIN, "4"),
    FACTOR("shackle", GTL_HW_SHACKLE, "4"),
    FACTOR("metal", GTL_HW_METAL, "4"),
    NUMBER(GTL_HW_USE, "wll share", GTL_HW_WLL_SHARE, GTL_FRACTION, GTL_TABLE_SHARE, "50 %"),
    WORDS(GTL_HW_USE, "over people", GTL_TABLE_PEOPLE, false, "yes"),

    RANGE(GTL_HW_SHEAVE, GTL_FRACTION, GTL_TABLE_SHARE, "92 %", "96 %"),
    RANGE(GTL_HW_FRICTION, GTL_NUMBER, GTL_TABLE_NOT_NEGATIVE, "0.15", "0.2"),

    NEEDED(GTL_HW_CLIP, "diameter", GTL_HW_DIAMETER, GTL_LENGTH, GTL_TABLE_ABOVE_ZERO, "0.5 in"),
    NEEDED(GTL_HW_CLIP, "count", GTL_HW_COUNT, GTL_WHOLE, GTL_TABLE_AT_LEAST_ONE, "3"),
    NEEDED(GTL_HW_CLIP, "spacing", GTL_HW_SPACING, GTL_LENGTH, GTL_TABLE_ABOVE_ZERO, "3 in"),

    NEEDED(GTL_HW_PIPE, "diameter", GTL_HW_DIAMETER, GTL_LENGTH, GTL_TABLE_ABOVE_ZERO, "48.3 mm"),
    NEEDED(GTL_HW_PIPE, "wall", GTL_HW_WALL, GTL_LENGTH, GTL_TABLE_ABOVE_ZERO, "4 mm"),
    NEEDED(GTL_HW_PIPE, "weight", GTL_HW_LINEAR_MASS, GTL_LINEAR_MASS, GTL_TABLE_ABOVE_ZERO, "4.37 kg/m"),
    NUMBER(GTL_HW_PIPE, "elasticity", GTL_HW_MODULUS, GTL_ELASTICITY, GTL_TABLE_ABOVE_ZERO, "200 GPa"),

    NUMBER(GTL_HW_GREEN_WOOD, "specific gravity", GTL_HW_SPECIFIC_GRAVITY, GTL_NUMBER, GTL_TABLE_ABOVE_ZERO,
           "0.56"),
    NUMBER(GTL_HW_GREEN_WOOD, "moisture", GTL_HW_MOISTURE, GTL_FRACTION, GTL_TABLE_MULTIPLE, "83.1 %"),
    NUMBER(GTL_HW_GREEN_WOOD, "density", GTL_HW_DENSITY, GTL_DENSITY, GTL_TABLE_WOOD, "1026 kg/m3"),
    NUMBER(GTL_HW_GREEN_WOOD, "light", GTL_HW_LIGHT, GTL_DENSITY, GTL_TABLE_WOOD, "850 kg/m3"),
    NUMBER(GTL_HW_GREEN_WOOD, "heavy", GTL_HW_HEAVY, GTL_DENSITY, GTL_TABLE_WOOD, "1190 kg/m3"),

    WORDS(GTL_HW_KIND_COUNT, "source", GTL_TABLE_SOURCE, false, "the maker's certificate"),
    WORDS(GTL_HW_KIND_COUNT, "seen", GTL_TABLE_SEEN, false, "seen"),
    WORDS(GTL_HW_KIND_COUNT, "note", GTL_TABLE_NOTE, false, "for slow pulls"),
};

#define KEY_COUNT ((int)(sizeof keys / sizeof keys[0]))

_Static_assert(sizeof keys / sizeof keys[0] <= GTL_TABLE_KEY_LIMIT, "a bit of a set for every key");

const gtl_table_key *gtl_table_key_at(int index)
{
    return index < KEY_COUNT ? &keys[index] : NULL;
}

int gtl_table_key_find(gtl_hardware_kind kind, gtl_word key)
{
    for (int i = 0; i < KEY_COUNT; i++) {
        bool belongs = keys[i].kind == kind || keys[i].kind == GTL_HW_KIND_COUNT;
        if (belongs && gtl_word_compare(key, gtl_word_of(keys[i].key)) == 0) return i;
    }
    return -1;
}

gtl_hardware_kind gtl_table_kind_find(gtl_word name)
{
    gtl_hardware_kind kind = GTL_HW_GEAR;
    while (kind < GTL_HW_KIND_COUNT && gtl_word_compare(name, gtl_word_of(gtl_hardware_kind_name(kind))) != 0)
        kind++;
    return kind;
}
