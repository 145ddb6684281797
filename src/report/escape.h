/* escape.h - the only door through which a user's words come into a report. */
#ifndef REPORT_ESCAPE_H
#define REPORT_ESCAPE_H

/* For people: valid UTF-8 on one line, without characters that steer a terminal or turn the direction of
 * writing; each such is a `?`, a tab or line end a blank. The caller frees it; NULL without memory. */
char *gtl_escape_for_people(const char *text);

/* For programs: the same text, with U+FFFD for bytes that are no UTF-8. The caller frees it; NULL without
 * memory. */
char *gtl_escape_for_programs(const char *text);

#endif
