/* ini.c - iniparser, handed a text that the screen has understood.
 *
 * It loads by file name only, so the text goes to a file in memory that has a name under /proc. Its numeric
 * getters and its dump functions are never called: they guess, and overflow. */
#define _GNU_SOURCE /* memfd_create */

#include "read/ini.h"

#include <errno.h>
#include <iniparser/iniparser.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <unistd.h>

/* Section, colon, key: the screen's limits keep them far below this. */
#define LOOKUP_SIZE 256

/* iniparser would write its complaints to standard error; the screen has made them already. */
static int keep_silent(const char *format, ...)
{
    (void)format;
    return 0;
}

static bool write_all(int file, const char *bytes, size_t length)
{
    while (length > 0) {
        ssize_t written = write(file, bytes, length);
        if (written < 0 && errno == EINTR) continue;
        if (written <= 0) return false;
        bytes += written;
        length -= (size_t)written;
    }
    return true;
}

/* iniparser goes on without looking whether it got the memory for its dictionary, and crashes: so make sure,
 * as far as anybody can, that it will get it. A line of four bytes takes it some 120. */
static bool has_room(size_t length)
{
    void *room = malloc(64 * 1024 + length * 64);
    free(room);
    return room != NULL;
}

/* The text as iniparser's dictionary, NULL with errno set. */
static dictionary *load(const gtl_text *clean)
{
    char name[64];
    dictionary *loaded = NULL;
    int file = memfd_create("rig", MFD_CLOEXEC);
    if (file < 0) return NULL;
    if (write_all(file, clean->bytes, clean->length)) {
        snprintf(name, sizeof name, "/proc/self/fd/%d", file);
        iniparser_set_error_callback(keep_silent);
        loaded = iniparser_load(name);
    }
    int error = errno;
    close(file);
    errno = error;
    return loaded;
}

/* The value of one key, NULL where the dictionary has none. */
static const char *look_up(const dictionary *loaded, const gtl_entry *entry)
{
    char name[LOOKUP_SIZE];
    snprintf(name, sizeof name, "%s%s%s:%s", entry->kind, entry->name[0] ? " " : "", entry->name, entry->key);
    return iniparser_getstring(loaded, name, NULL);
}

/* The screen leaves nothing over which iniparser could stumble: it is memory, or the way by /proc. */
static bool tell_failure(int error, gtl_fault_list *faults)
{
    if (error == 0 || error == ENOMEM) {
        faults->out_of_memory = true;
    } else {
        gtl_faults_add(faults, 0, "cannot be read by way of /proc/self/fd (%s); mount /proc, or free files",
                       strerror(error));
    }
    return false;
}

bool gtl_ini_values(const gtl_text *clean, gtl_entry *entries, size_t count, void **kept,
                    gtl_fault_list *faults)
{
    errno = 0;
    dictionary *loaded = has_room(clean->length) ? load(clean) : NULL;
    *kept = loaded;
    if (!loaded) return tell_failure(errno, faults);
    for (size_t i = 0; i < count; i++) {
        if (!entries[i].key) continue;
        entries[i].value = look_up(loaded, &entries[i]);
        /* The screen has seen this key; iniparser drops one silently where memory fails. */
        if (!entries[i].value) return tell_failure(ENOMEM, faults);
    }
    return true;
}

void gtl_ini_end(void *kept)
{
    if (kept) iniparser_freedict(kept);
}
