/* messages.c - what the program says on standard error. */
#include "cli/cli.h"

#include "base/text.h"
#include "report/escape.h"

#include <stdio.h>
#include <stdlib.h>
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

/* One fault; its place, `FILE:LINE:`, stands out on a terminal. */
static void say_fault(const gtl_fault_list *faults, const gtl_fault *fault, bool colour)
{
    gtl_text place = {0};
    gtl_text_add(&place, "%s:", gtl_fault_file(faults, fault));
    if (fault->line > 0) gtl_text_add(&place, "%d:", fault->line);
    char *head = gtl_text_take(&place);
    fputs(colour ? BOLD : "", stderr);
    print_clean(head ? head : "");
    fputs(colour ? PLAIN : "", stderr);
    fputs(" ", stderr);
    print_clean(fault->text);
    fputs("\n", stderr);
    free(head);
}

int gtl_say_faults(const gtl_fault_list *faults)
{
    if (faults->out_of_memory) gtl_say("out of memory");
    bool colour = in_colour();
    for (size_t i = 0; i < faults->count; i++) say_fault(faults, &faults->items[i], colour);
    return GTL_EXIT_WRONG;
}
