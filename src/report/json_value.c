/* json_value.c - single JSON values. */
#include "report/json_value.h"
#include "base/text.h"
#include "report/escape.h"

#include <math.h>
#include <stdlib.h>

json_t *gtl_json_number(double number)
{
    /* Adding zero takes the sign off a zero: nobody should read "-0.0". */
    return isfinite(number) ? json_real(number + 0.0) : json_null();
}

json_t *gtl_json_text(const char *text)
{
    char *valid = text ? gtl_escape_for_programs(text) : NULL;
    json_t *value = valid ? json_string(valid) : NULL;
    free(valid);
    return value;
}

json_t *gtl_json_vector(const double *vector, int dim)
{
    json_t *array = json_array();
    for (int i = 0; array && i < dim; i++) {
        if (json_array_append_new(array, gtl_json_number(vector[i])) == 0) continue;
        json_decref(array);
        return NULL;
    }
    return array;
}

void gtl_json_append(gtl_json_array *list, json_t *value)
{
    if (!list->array) {
        json_decref(value);
    } else if (json_array_append_new(list->array, value) != 0) {
        json_decref(list->array);
        list->array = NULL;
    }
}

static int put(const char *bytes, size_t size, void *text)
{
    gtl_text_put(text, bytes, size);
    return 0;
}

char *gtl_json_written(json_t *value)
{
    gtl_text text = {0};
    int failed =
        !value || json_dump_callback(value, put, &text, JSON_INDENT(2) | JSON_REAL_PRECISION(17)) != 0;
    json_decref(value);
    gtl_text_put(&text, "\n", 1);
    char *written = gtl_text_take(&text);
    if (!failed) return written;
    free(written);
    return NULL;
}
