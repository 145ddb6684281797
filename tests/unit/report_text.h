/* report_text.h - the text report of a rig, for tests that look for words in it. */
#ifndef UNIT_REPORT_TEXT_H
#define UNIT_REPORT_TEXT_H

#include <gantline/gantline.h>

/* The report as printed; the caller frees it. */
char *printed(const char *rig);

/* The report with every run of blanks and line ends as one blank, so that it does not matter where lines
 * break; the caller frees it. */
char *flowing(const char *rig);

/* Fail unless the words stand in the text, or do not. */
void assert_says(const char *text, const char *words);
void assert_keeps_quiet(const char *text, const char *words);

#endif
