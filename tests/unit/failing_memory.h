/* failing_memory.h - memory that fails on demand, and is counted.
 *
 * Programs that use it are linked with -Wl,--wrap=malloc,--wrap=calloc,--wrap=realloc,--wrap=free. Shared
 * libraries keep their own memory: what they allocate never fails, and is not counted. */
#ifndef UNIT_FAILING_MEMORY_H
#define UNIT_FAILING_MEMORY_H

#include <stdbool.h>

/* Grant that many allocations from now on, and refuse the rest. */
void allow_allocations(long count);
/* Grant all again; whether any was refused since allow_allocations. */
bool allow_all_allocations(void);
/* Blocks that are allocated and not freed. */
long blocks_alive(void);

#endif
