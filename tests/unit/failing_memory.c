/* failing_memory.c - see failing_memory.h. */
#include "unit/failing_memory.h"

#include <errno.h>
#include <stddef.h>

static long allocations_left = -1; /* -1: without end */
static bool refused;               /* since the last look */
static long alive;

/* The names are the linker's. */
void *__real_malloc(size_t size);
void *__real_calloc(size_t count, size_t size);
void *__real_realloc(void *block, size_t size);
void __real_free(void *block);
void *__wrap_malloc(size_t size);
void *__wrap_calloc(size_t count, size_t size);
void *__wrap_realloc(void *block, size_t size);
void __wrap_free(void *block);

void allow_allocations(long count)
{
    allocations_left = count;
    refused = false;
}

bool allow_all_allocations(void)
{
    allocations_left = -1;
    return refused;
}

long blocks_alive(void)
{
    return alive;
}

static bool fails(void)
{
    if (allocations_left < 0) return false;
    if (allocations_left > 0) {
        allocations_left--;
        return false;
    }
    refused = true;
    errno = ENOMEM;
    return true;
}

void *__wrap_malloc(size_t size)
{
    void *block = fails() ? NULL : __real_malloc(size);
    alive += block != NULL;
    return block;
}

void *__wrap_calloc(size_t count, size_t size)
{
    void *block = fails() ? NULL : __real_calloc(count, size);
    alive += block != NULL;
    return block;
}

void *__wrap_realloc(void *block, size_t size)
{
    bool begins = block == NULL;
    void *moved = fails() ? NULL : __real_realloc(block, size);
    alive += begins && moved != NULL;
    return moved;
}

void __wrap_free(void *block)
{
    alive -= block != NULL;
    __real_free(block);
}
