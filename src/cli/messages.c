/* messages.c - what the program says on standard error. */
#include "cli/cli.h"

#include "base/text.h"
#include "report/escape.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define BOLD  "\033[1m"
#define PLAIN "\033[0m"

/* File names and quotes of the user must not steer the terminal. */
static void print_clean(const char *text)
{
    char *clean = gtl_escape_for_people(text);
    fputs(clean ? clean : "(no memory to say it)", stderr);
    free(clean);
}

int gtl_say(const char *format, ...)
{
    gtl_text text = {0};
    va_list arguments;
    va_start(arguments, format);
    gtl_text_add_list(&text, format, arguments);
    va_end(arguments);
    char *whole = gtl_text_take(&text);
    fputs("gantline: ", stderr);
    print_clean(whole ? whole : "out of memory");
    fputs("\n", stderr);
    free(whole);
    return GTL_EXIT_WRONG;
}

int gtl_say_try_help(const char *command)
{
    return gtl_say("try `gantline %s%s--help`", command, command[0] ? " " : "");
}

static bool in_colour(void)
{
    const char *forbidden = getenv("NO_COLOR");
    return isatty(STDERR_FILENO) && !(forbidden && forbidden[0]);
}

/* One fault; its place in the file, `FILE:LINE:`, stands out on a terminal. `line` ends in a zero. */
static void say_fault(const char *line, size_t name_length, bool colour)
{
    size_t place = name_length + 1;
    size_t number = strspn(line + place, "0123456789");
    if (number > 0) place += number + 1;
    char *head = gtl_text_copy(line, place);
    fputs(colour ? BOLD : "", stderr);
    print_clean(head ? head : "");
    fputs(colour ? PLAIN : "", stderr);
    print_clean(line + place);
    fputs("\n", stderr);
    free(head);
}

int gtl_say_faults(const gtl_fault_list *faults)
{
    char *text = gtl_faults_text(faults);
    if (!text || faults->out_of_memory) gtl_say("out of memory");
    size_t name_length = strlen(faults->file ? faults->file : "");
    bool colour = in_colour();
    for (char *line = text, *end; line && *line; line = end + 1) {
        /* A line end in the file's name is none of the list's. */
        end = line + name_length + strcspn(line + name_length, "\n");
        *end = '\0';
        say_fault(line, name_length, colour);
    }
    free(text);
    return GTL_EXIT_WRONG;
}
