/* markup.h - a small reader of HTML that is XML too, and what else tests of a page share. */
#ifndef UNIT_MARKUP_H
#define UNIT_MARKUP_H

#include <gantline/gantline.h>

/* A sheet's page, with a rig file in it or, for NULL, without; the caller frees it. */
char *page_of(const gtl_sheet *sheet, const char *source, size_t size);

/* Fail unless tags nest and are closed, attributes are quoted, `<` and `&` stand for nothing but markup, and
 * no id stands twice. */
void assert_well_formed(const char *page);

/* What stands between the tags of `from` up to `to`, entities read; the caller frees it. */
char *words_between(const char *page, const char *from, const char *to);

/* Give a rig another name or title than any file could. */
void rename_to(char **name, const char *text);

/* How often `part` stands in the text. */
size_t count_of(const char *text, const char *part);

#endif
