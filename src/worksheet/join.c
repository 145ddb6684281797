/* join.c - documents put one behind the other. */
#include "worksheet/worked.h"

#include "base/grow.h"

void gtl_document_join(gtl_document *to, gtl_document *from)
{
    if (from->failed) to->failed = true;
    for (size_t i = 0; i < from->count && !to->failed; i++) {
        gtl_element *elements = gtl_grow(to->elements, to->count, &to->capacity, sizeof *elements);
        if (!elements) {
            to->failed = true;
            break;
        }
        to->elements = elements;
        elements[to->count++] = from->elements[i];
        from->elements[i] = (gtl_element){0};
    }
    gtl_document_end(from);
}
