/* csv.h - the fields of a CSV file: RFC 4180, no locale, no text that a spreadsheet could run. */
#ifndef REPORT_CSV_H
#define REPORT_CSV_H

#include "base/text.h"

/* Append a field. A text that looks like a formula gets an apostrophe before it, which a spreadsheet takes
 * for "this is text"; what it holds has come through gtl_escape_for_people. */
void gtl_csv_text(gtl_text *out, const char *text);

/* With as many digits as it takes to read the same number again; empty where it is none. A negative number
 * is a number, no formula. */
void gtl_csv_number(gtl_text *out, double number);

/* Append what stands between two fields, and behind the last of a row. */
void gtl_csv_comma(gtl_text *out);
void gtl_csv_end(gtl_text *out);

#endif
