/* grow.h - arrays that grow as they are filled. */
#ifndef BASE_GROW_H
#define BASE_GROW_H

#include <stddef.h>

/* Make room for one more than `count` items: returns the array, moved or not, or NULL without memory, when
 * the old array still stands. The room doubles, so that filling an array stays linear. */
void *gtl_grow(void *items, size_t count, size_t *capacity, size_t item_size);

#endif
