/* input.c - a rig file read whole. */
#define _POSIX_C_SOURCE 200809L
#include "cli/cli.h"

#include <errno.h>
#include <fcntl.h>
#include <gantline/read.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

/* Read to the end of the file or to `most` bytes; returns how many, -1 on an error. */
static ssize_t read_all(int file, char *buffer, size_t most)
{
    size_t size = 0;
    while (size < most) {
        ssize_t more = read(file, buffer + size, most - size);
        if (more == 0) break;
        if (more > 0)
            size += (size_t)more;
        else if (errno != EINTR)
            return -1;
    }
    return (ssize_t)size;
}

const char *gtl_input_try(gtl_input *input, const char *path)
{
    bool standard = strcmp(path, "-") == 0;
    *input = (gtl_input){
        .path = standard ? NULL : path, .name = standard ? "(standard input)" : path, .what = "the rig"};
    /* One byte more than the reader takes, so that it says itself that a file is too large. */
    size_t most = GTL_FILE_LIMIT + 1;
    input->text = malloc(most);
    if (!input->text) return "out of memory";
    int file = standard ? STDIN_FILENO : open(path, O_RDONLY | O_CLOEXEC | O_NOCTTY);
    ssize_t size = file < 0 ? -1 : read_all(file, input->text, most);
    const char *why = size < 0 ? strerror(errno) : NULL;
    if (file >= 0 && !standard) close(file);
    input->size = size < 0 ? 0 : (size_t)size;
    return why;
}

bool gtl_input_read(gtl_input *input, const char *path)
{
    const char *why = gtl_input_try(input, path);
    if (!input->text)
        gtl_say("out of memory");
    else if (why)
        gtl_say("cannot read %s: %s", input->name, why);
    return !why;
}

void gtl_input_end(gtl_input *input)
{
    free(input->text);
    *input = (gtl_input){0};
}
