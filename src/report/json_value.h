/* json_value.h - single JSON values. Each returns a new reference, NULL without memory; json_pack and the
 * functions named `*_new` take such a NULL for their own failure. */
#ifndef REPORT_JSON_VALUE_H
#define REPORT_JSON_VALUE_H

#include <jansson.h>

/* A number, or null where there is none. */
json_t *gtl_json_number(double number);

/* The user's text; bytes that are no UTF-8 are replaced. */
json_t *gtl_json_text(const char *text);

/* A vector of `dim` numbers. */
json_t *gtl_json_vector(const double *vector, int dim);

/* A whole JSON text, indented, with its line end, of a value that is given back; the caller frees it. NULL
 * without memory, be it the value's. */
char *gtl_json_written(json_t *value);

/* A list that fails as a whole: `array` is NULL once memory failed. Begin one with {json_array()}. */
typedef struct gtl_json_array {
    json_t *array;
} gtl_json_array;

/* Append a value, which the list takes over. */
void gtl_json_append(gtl_json_array *list, json_t *value);

#endif
