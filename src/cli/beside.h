/* beside.h - files that an input names: where they are, and that none of them is written over. */
#ifndef CLI_BESIDE_H
#define CLI_BESIDE_H

#include "cli/cli.h"

typedef struct gtl_beside {
    const gtl_input *input;
    char **paths; /* of the files asked for so far; owned */
    size_t count;
} gtl_beside;

/* Where the file is that the input calls by `name`: meant from the input's folder; on standard input from the
 * folder of the program. Owned by `beside`; NULL without memory. */
const char *gtl_beside_path(gtl_beside *beside, const char *name);

/* Whether `path` is none of those files. False, and a message that calls the file `what`, if it is. */
bool gtl_beside_spares(const gtl_beside *beside, const char *path, const char *what);

void gtl_beside_end(gtl_beside *beside);

#endif
