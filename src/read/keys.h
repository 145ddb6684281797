/* keys.h - the table of all keys: what each means, how it is typed, and where its value goes. */
#ifndef READ_KEYS_H
#define READ_KEYS_H

#include "base/word.h"

#include <gantline/read.h>

/* How the value of a key is read and kept. */
typedef enum gtl_how {
    GTL_STORE_NUMBER, /* a quantity; slot: gtl_field */
    GTL_STORE_RANGE,  /* likewise, or two of them: from, to */
    GTL_STORE_REMARK, /* free text; slot: gtl_remark */
    GTL_STORE_AT,
    GTL_STORE_ON,
    GTL_STORE_PATH,
    GTL_STORE_LOAD,
    GTL_STORE_OR,
    GTL_STORE_GUIDE,
    GTL_STORE_UNITS,
    GTL_STORE_CASES,
    GTL_STORE_ROW, /* the name of a row of the hardware tables; slot: gtl_row_key */
    GTL_STORE_HITCH,
    GTL_STORE_AXIS,
    GTL_STORE_TABLES,
    GTL_STORE_PICKS,
    GTL_STORE_HUNG,
    GTL_STORE_SPECIES, /* as GTL_STORE_ROW, but blanks may stand for hyphens */
    GTL_STORE_DIAMETERS,
    GTL_STORE_WOOD_END,
    GTL_STORE_STRETCH, /* an elongation and the force that it is at; slot: gtl_field of the first */
    GTL_HOW_COUNT
} gtl_how;

/* What a number has to be. */
typedef enum gtl_range {
    GTL_ANY,
    GTL_NOT_NEGATIVE,
    GTL_ABOVE_ZERO,
    GTL_AT_LEAST_ONE,
    GTL_ABOVE_ONE,
    GTL_SHARE,       /* above 0, at most 1 */
    GTL_WITHIN_TURN, /* 0 to 360 degrees */
    GTL_HALF_TURN,   /* 0 to 180 degrees */
    GTL_ON_EARTH,    /* a local gravity */
    GTL_WOODEN       /* a density that wood can have */
} gtl_range;

/* What a density of wood has to be, in words. */
#define GTL_WOOD_WORDS                                                                                       \
    "100 to 1540 kg/m3 (6.25 to 96.1 lb/ft3): no green wood is lighter, and none heavier than its own "      \
    "substance"

typedef struct gtl_key_row {
    gtl_key key;
    gtl_how how;
    int slot;
    gtl_quantity quantity;
    gtl_range range;
} gtl_key_row;

/* The row for a key of a kind, NULL for none. */
const gtl_key_row *gtl_key_find(gtl_kind kind, gtl_word key);

/* The kind of that name, GTL_KIND_COUNT for none. */
gtl_kind gtl_kind_find(gtl_word name);

#endif
