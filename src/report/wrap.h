/* wrap.h - running text into lines of a width. */
#ifndef REPORT_WRAP_H
#define REPORT_WRAP_H

#include "base/text.h"

typedef struct gtl_wrap {
    size_t column;  /* of the pen when the text begins */
    size_t indent;  /* of all further lines */
    size_t width;   /* no line is wider */
    int most_lines; /* the rest is left out, shown by three dots; 0: no limit */
} gtl_wrap;

/* Append `words` in lines, the last one ended too. A word wider than a line is cut. */
void gtl_wrap_words(gtl_text *out, const char *words, const gtl_wrap *wrap);

/* Append blanks. */
void gtl_wrap_indent(gtl_text *out, size_t columns);

#endif
