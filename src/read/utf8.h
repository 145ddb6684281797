/* utf8.h - whether text can be printed again as it is. */
#ifndef READ_UTF8_H
#define READ_UTF8_H

#include <stdbool.h>

/* Whether text is well-formed UTF-8 without control characters, the tab apart. */
bool gtl_is_plain(const char *text);

#endif
