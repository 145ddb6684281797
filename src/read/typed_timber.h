/* typed_timber.h - what is said of a piece of timber, from text: in a rig file and on a command line alike.
 */
#ifndef READ_TYPED_TIMBER_H
#define READ_TYPED_TIMBER_H

#include "base/word.h"

#include <gantline/read.h>
#include <gantline/units.h>

/* The longest message of these, with its final zero. */
#define GTL_TYPED_WHY 320

/* The row's name that a species typed in one word or several means: blanks become hyphens. False where that
 * is no name. */
bool gtl_typed_species(gtl_word typed, char name[GTL_LINE_LIMIT + 1]);

/* One to three lengths with commas between them [m]. False where they are not, and `why` says what to write.
 */
bool gtl_typed_diameters(const char *text, double diameters[3], int *count, char why[GTL_TYPED_WHY]);

#endif
