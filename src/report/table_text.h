/* table_text.h - a table as plain text. */
#ifndef REPORT_TABLE_TEXT_H
#define REPORT_TABLE_TEXT_H

#include "base/text.h"
#include "report/document.h"

/* Append a table, its columns lined up by characters and its figures by their decimal points. A first cell
 * that is too wide for its column stands on a line of its own, so that no name is ever cut. */
void gtl_table_text(gtl_text *out, const gtl_table *table);

#endif
