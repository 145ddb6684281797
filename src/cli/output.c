/* output.c - an output file is written whole or not at all, and every failure is told.
 *
 * An ordinary file is written beside its place and then renamed to it, so that nobody ever finds half a
 * report, and an old one stays until the new one is whole. What is no ordinary file (a terminal, a pipe, a
 * device) is written directly. */
#define _XOPEN_SOURCE 700
#include "cli/cli.h"

#include "base/text.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

static bool failed(const char *name)
{
    gtl_say("cannot write %s: %s", name, strerror(errno));
    return false;
}

/* All of the text, or errno says why not. */
static bool write_all(int file, const char *text)
{
    for (size_t left = strlen(text); left > 0;) {
        ssize_t written = write(file, text, left);
        if (written < 0 && errno == EINTR) continue;
        if (written < 0) return false;
        text += written;
        left -= (size_t)written;
    }
    return true;
}

/* A descriptor closed with a failure may have lost what was written. */
static bool write_and_close(int file, const char *text)
{
    bool written = write_all(file, text);
    int error = errno;
    bool closed = close(file) == 0;
    if (!written) errno = error;
    return written && closed;
}

static bool write_directly(const char *path, const char *text)
{
    int file = open(path, O_WRONLY | O_CLOEXEC | O_NOCTTY);
    return file >= 0 && write_and_close(file, text);
}

/* What a new file may be, by the process's own mask. */
static mode_t default_mode(void)
{
    mode_t mask = umask(0);
    umask(mask);
    return 0666 & ~mask;
}

/* Fill a file just made, and see that it is on the disk. */
static bool fill(int file, mode_t mode, const char *text)
{
    bool filled = fchmod(file, mode) == 0 && write_all(file, text) && fsync(file) == 0;
    int error = errno;
    bool closed = close(file) == 0;
    if (!filled) errno = error;
    return filled && closed;
}

/* Write beside `path`, a name without links, then rename. */
static bool replace(const char *path, mode_t mode, const char *text)
{
    const char *slash = strrchr(path, '/');
    gtl_text name = {0};
    gtl_text_put(&name, path, slash ? (size_t)(slash - path) + 1 : 0);
    gtl_text_add(&name, ".gantline-XXXXXX");
    char *beside = gtl_text_take(&name);
    if (!beside) return false;
    int file = mkstemp(beside);
    bool replaced = file >= 0 && fill(file, mode, text) && rename(beside, path) == 0;
    int error = errno;
    if (file >= 0 && !replaced) unlink(beside);
    free(beside);
    errno = error;
    return replaced;
}

/* Whether the file is the one that was read. */
static bool is_input(const struct stat *file, const gtl_input *input)
{
    struct stat read;
    if (!input) return false;
    if ((input->path ? stat(input->path, &read) : fstat(STDIN_FILENO, &read)) != 0) return false;
    return file->st_dev == read.st_dev && file->st_ino == read.st_ino;
}

/* An ordinary file that is there already: its mode stays, and so does a link to it. */
static bool replace_old(const char *path, mode_t mode, const char *text)
{
    if (access(path, W_OK) != 0) return false;
    char *target = realpath(path, NULL);
    bool replaced = target && replace(target, mode, text);
    int error = errno;
    free(target);
    errno = error;
    return replaced;
}

static bool refuse_input(const char *path, const gtl_input *input)
{
    gtl_say("%s is %s itself; name another file for the report", path, input->what);
    return false;
}

bool gtl_output_spares(const char *path, const gtl_input *input)
{
    struct stat old;
    bool standard = !path || strcmp(path, "-") == 0;
    if (standard || stat(path, &old) != 0 || !S_ISREG(old.st_mode) || !is_input(&old, input)) return true;
    return refuse_input(path, input);
}

static bool write_file(const char *path, const char *text, const gtl_input *input)
{
    struct stat old;
    if (stat(path, &old) != 0) {
        bool dangling = lstat(path, &old) == 0;
        bool written = errno == ENOENT && !dangling && replace(path, default_mode(), text);
        return written || failed(path);
    }
    if (S_ISREG(old.st_mode) && is_input(&old, input)) return refuse_input(path, input);
    bool written =
        S_ISREG(old.st_mode) ? replace_old(path, old.st_mode & 07777, text) : write_directly(path, text);
    return written || failed(path);
}

bool gtl_output_write(const char *path, const char *text, const gtl_input *input)
{
    if (path && strcmp(path, "-") != 0) return write_file(path, text, input);
    return write_and_close(STDOUT_FILENO, text) || failed("standard output");
}
