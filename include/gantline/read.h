/* read.h - a rig file, or entries handed over without one, to a rig. */
#ifndef GANTLINE_READ_H
#define GANTLINE_READ_H

#include <gantline/fault.h>
#include <gantline/rig.h>
#include <gantline/units.h>

/* Largest rig file and longest line that are read, in bytes. */
#define GTL_FILE_LIMIT (256 * 1024)
#define GTL_LINE_LIMIT 1000
/* Longest name of a thing, line or connector, in bytes. */
#define GTL_NAME_LIMIT 32

/* One line of a rig. A section's header is an entry of its own, with key and value NULL. */
typedef struct gtl_entry {
    const char *kind;  /* "rig", "block", ... */
    const char *name;  /* "" for [rig] */
    const char *key;   /* NULL: the header */
    const char *value; /* NULL: the header */
    int line;
} gtl_entry;

/* Read the text of a rig file. Returns a rig that the caller frees with gtl_rig_free, or NULL with every
 * fault in `faults` (begun by the caller with the file's name). */
GTL_API gtl_rig *gtl_read_text(const char *text, size_t size, gtl_fault_list *faults);

/* Build a rig from entries, in order; the limits on file, line and name length do not apply. As
 * gtl_read_text. */
GTL_API gtl_rig *gtl_read_entries(const gtl_entry *entries, size_t count, gtl_fault_list *faults);

/* One row of the table of keys that the reader uses. */
typedef struct gtl_key {
    gtl_kind kind;
    const char *key;
    const char *form; /* what to write: "a length, or two or three: 5.5 m, 2 m" */
    const char *unit; /* the units allowed, "" for none */
    const char *meaning;
} gtl_key;

/* Row `index` of the table of all keys of all kinds, kinds in order; NULL past the end. */
GTL_API const gtl_key *gtl_key_at(size_t index);

/* What a kind is, in half a sentence. */
GTL_API const char *gtl_kind_meaning(gtl_kind kind);

#endif
