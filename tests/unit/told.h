/* told.h - one case of a rig in words, for tests that look for some in them. */
#ifndef UNIT_TOLD_H
#define UNIT_TOLD_H

#include "unit/rated.h"

/* One case of a rig in words; the caller frees it. */
char *told_of(const rated *rig, const char *name);
char *told(const char *text, const char *name);

/* Fail unless a case of a rig is told in these words, or is not. */
void expect(const char *rig, const char *name, const char *words);
void expect_not(const char *rig, const char *name, const char *words);

#endif
