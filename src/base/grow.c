/* grow.c - arrays that grow as they are filled. */
#include "base/grow.h"

#include <stdint.h>
#include <stdlib.h>

void *gtl_grow(void *items, size_t count, size_t *capacity, size_t item_size)
{
    if (count < *capacity) return items;
    size_t wanted = *capacity ? *capacity * 2 : 16;
    if (wanted > SIZE_MAX / 2 / item_size) return NULL;
    void *moved = realloc(items, wanted * item_size);
    if (moved) *capacity = wanted;
    return moved;
}
