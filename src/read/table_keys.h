/* table_keys.h - the table of all keys that a row of a hardware table may have. */
#ifndef READ_TABLE_KEYS_H
#define READ_TABLE_KEYS_H

#include "base/word.h"

#include <gantline/hardware.h>
#include <gantline/units.h>

/* How the value of a key is read and kept. */
typedef enum gtl_table_how {
    GTL_TABLE_NUMBER,  /* a quantity; slot: gtl_hardware_number */
    GTL_TABLE_EDGES,   /* quantities with commas between them: where the steps end or begin */
    GTL_TABLE_SHARES,  /* likewise: what the steps keep */
    GTL_TABLE_FORMULA, /* a quantity of 1 - a / x^b; slot: 0 for a, 1 for b */
    GTL_TABLE_CLASS,
    GTL_TABLE_CLASSES,
    GTL_TABLE_KNOTS,
    GTL_TABLE_ON,
    GTL_TABLE_BEYOND,
    GTL_TABLE_PEOPLE,
    GTL_TABLE_MATERIAL,
    GTL_TABLE_SOURCE,
    GTL_TABLE_SEEN,
    GTL_TABLE_NOTE,
    GTL_TABLE_HOW_COUNT
} gtl_table_how;

/* What a number has to be. */
typedef enum gtl_table_range {
    GTL_TABLE_NOT_NEGATIVE,
    GTL_TABLE_ABOVE_ZERO,
    GTL_TABLE_AT_LEAST_ONE,
    GTL_TABLE_ABOVE_ONE,
    GTL_TABLE_SHARE,     /* above 0, at most 1 */
    GTL_TABLE_MULTIPLE,  /* above 0, at most 4 */
    GTL_TABLE_END_ANGLE, /* above 0, at most 180 degrees */
    GTL_TABLE_ANGLE,     /* 0 to 180 degrees */
    GTL_TABLE_WOOD       /* a density that wood can have */
} gtl_table_range;

typedef struct gtl_table_key {
    gtl_hardware_kind kind; /* GTL_HW_KIND_COUNT: of every kind */
    const char *key;
    gtl_table_how how;
    int slot;
    gtl_quantity quantity;
    gtl_table_range range;
    bool needed;         /* a row without it says nothing */
    const char *example; /* a value as it is typed */
} gtl_table_key;

/* More than there are keys. */
#define GTL_TABLE_KEY_LIMIT 128

/* Key `index` of the table, NULL past the end; a key of every kind comes after those of single kinds. */
const gtl_table_key *gtl_table_key_at(int index);

/* The index of a key of a kind, -1 for none. */
int gtl_table_key_find(gtl_hardware_kind kind, gtl_word key);

/* The kind of that name, GTL_HW_KIND_COUNT for none. */
gtl_hardware_kind gtl_table_kind_find(gtl_word name);

#endif
