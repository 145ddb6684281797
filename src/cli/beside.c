/* beside.c - files that an input names. */
#include "cli/beside.h"

#include "base/text.h"

#include <stdlib.h>
#include <string.h>

static char *path_of(const gtl_input *input, const char *name)
{
    const char *slash = input->path && name[0] != '/' ? strrchr(input->path, '/') : NULL;
    gtl_text text = {0};
    if (slash) gtl_text_put(&text, input->path, (size_t)(slash - input->path) + 1);
    if (!slash && strcmp(name, "-") == 0) gtl_text_add(&text, "./"); /* a file, not standard input */
    gtl_text_add(&text, "%s", name);
    return gtl_text_take(&text);
}

const char *gtl_beside_path(gtl_beside *beside, const char *name)
{
    char *path = path_of(beside->input, name);
    char **paths = path ? realloc(beside->paths, (beside->count + 1) * sizeof *paths) : NULL;
    if (!paths) {
        free(path);
        return NULL;
    }
    beside->paths = paths;
    return paths[beside->count++] = path;
}

bool gtl_beside_spares(const gtl_beside *beside, const char *path, const char *what)
{
    for (size_t i = 0; i < beside->count; i++) {
        const gtl_input file = {.path = beside->paths[i], .name = beside->paths[i], .what = what};
        if (!gtl_output_spares(path, &file)) return false;
    }
    return true;
}

void gtl_beside_end(gtl_beside *beside)
{
    for (size_t i = 0; i < beside->count; i++) free(beside->paths[i]);
    free(beside->paths);
    *beside = (gtl_beside){0};
}
