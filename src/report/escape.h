/* escape.h - the only door through which a user's words come into a report. */
#ifndef REPORT_ESCAPE_H
#define REPORT_ESCAPE_H

#include "base/text.h"
#include "base/utf8.h"

/* For people: valid UTF-8 on one line, without characters that steer a terminal or turn the direction of
 * writing; each such is a `?`, a tab or line end a blank. The caller frees it; NULL without memory. */
char *gtl_escape_for_people(const char *text);

/* For programs: the same text, with U+FFFD for bytes that are no UTF-8. The caller frees it; NULL without
 * memory. */
char *gtl_escape_for_programs(const char *text);

/* For HTML and XML, between tags and inside quoted attributes: append text that no reader of markup takes for
 * anything else. What XML cannot hold at all is U+FFFD. Direction marks stay: see gtl_escape_for_people. */
void gtl_escape_markup(gtl_text *out, const char *text);

/* Whether XML can hold a character. */
bool gtl_is_xml(gtl_character character);

/* Whether a character steers a terminal, breaks the line, hides, or turns the direction of writing. */
bool gtl_steers(unsigned long code);

#endif
