/* main.c - the program: a table of commands. */
#include "cli/cli.h"

#include <gantline/gantline.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>

static const struct gtl_entry_point {
    const char *name;
    gtl_command *run;
} commands[] = {
    {"report", gtl_cmd_report},     {"limit", gtl_cmd_limit},         {"explain", gtl_cmd_explain},
    {"lab", gtl_cmd_lab},           {"worksheet", gtl_cmd_worksheet}, {"keys", gtl_cmd_keys},
    {"hardware", gtl_cmd_hardware}, {"timber", gtl_cmd_timber},
};

static const char help[] = "usage: gantline COMMAND [OPTION]... [FILE]\n"
                           "\n"
                           "Reads a rig file (ropes, blocks, anchors, loads) and prints every force in it,\n"
                           "checked against the ratings typed in, with cautions.\n"
                           "\n"
                           "  gantline report RIG    work and rate a rig, print the report\n"
                           "  gantline limit RIG     find the heaviest load that the ratings permit\n"
                           "  gantline explain RIG   write a worked solution of a rig, for a class\n"
                           "  gantline lab DATA.csv  work out what a class measured on a bench\n"
                           "  gantline worksheet SET make problems for a class, and their key\n"
                           "  gantline keys          list all that a rig file may hold\n"
                           "  gantline hardware      list the hardware tables, or check one of your own\n"
                           "  gantline timber ...    what a piece of green wood weighs\n"
                           "  gantline --version     print the version\n"
                           "  gantline --help        print this; each command has its own --help\n"
                           "\n"
                           "Exit status: 0 within the ratings, 1 over a rating, 3 unrated; 2 wrong input,\n"
                           "no answer, or nothing could be written.\n"
                           "\n"
                           "Its figures are arithmetic on the numbers typed in, no approval.\n";

static gtl_command *command_named(const char *name)
{
    for (size_t i = 0; i < sizeof commands / sizeof *commands; i++)
        if (strcmp(commands[i].name, name) == 0) return commands[i].run;
    return NULL;
}

int main(int count, char **arguments)
{
    /* A reader that went away is a failed write, told like any other. */
    signal(SIGPIPE, SIG_IGN);
    gtl_arguments read;
    if (!gtl_read_arguments(count, arguments, "hV", true, &read)) return gtl_say_try_help("");
    if (read.help) return gtl_output_write(NULL, help, NULL) ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
    if (read.version)
        return gtl_output_write(NULL, "gantline " GTL_VERSION "\n", NULL) ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
    if (read.operand_count == 0) {
        gtl_say("a command is missing");
        return gtl_say_try_help("");
    }
    gtl_command *run = command_named(read.operands[0]);
    if (run) return run(read.operand_count, read.operands);
    gtl_say("there is no command `%s`", read.operands[0]);
    return gtl_say_try_help("");
}
