/* args.c - command lines, read by getopt_long. */
#include "cli/cli.h"

#include <getopt.h>
#include <stdio.h>
#include <string.h>

static const struct option all[] = {
    {"as", required_argument, NULL, 'a'},      {"case", required_argument, NULL, 'c'},
    {"output", required_argument, NULL, 'o'},  {"tables", required_argument, NULL, 't'},
    {"ideal", no_argument, NULL, 'i'},         {"steps", required_argument, NULL, 's'},
    {"seed", required_argument, NULL, 'e'},    {"students", required_argument, NULL, 'n'},
    {"key", required_argument, NULL, 'k'},     {"help", no_argument, NULL, 'h'},
    {"version", no_argument, NULL, 'V'},       {"bark", required_argument, NULL, 'b'},
    {"density", required_argument, NULL, 'd'}, {"units", required_argument, NULL, 'u'}};

#define OPTION_COUNT (sizeof all / sizeof *all)

/* The long options among `letters`, ended as getopt_long wants it. */
static void choose_long(const char *letters, struct option chosen[OPTION_COUNT + 1])
{
    size_t count = 0;
    for (size_t i = 0; i < OPTION_COUNT; i++)
        if (strchr(letters, all[i].val)) chosen[count++] = all[i];
    chosen[count] = (struct option){0};
}

/* The short ones: of most options there is none. A leading `+` stops at the first operand, `:`
 * tells a missing argument from an unknown option. */
static void choose_short(const char *letters, bool stop_early, char chosen[16])
{
    snprintf(chosen, 16, "%s:%s%s%s", stop_early ? "+" : "", strchr(letters, 'o') ? "o:" : "",
             strchr(letters, 'h') ? "h" : "", strchr(letters, 'V') ? "V" : "");
}

/* Say what is wrong with the word just looked at. */
static bool refuse(char **arguments, int found)
{
    const char *word = arguments[optind - 1];
    if (found == ':')
        gtl_say("option `%s` needs something behind it", word);
    else if (strncmp(word, "--", 2) == 0)
        gtl_say("there is no option `%s` here", word);
    else
        gtl_say("there is no option `-%c` here", optopt);
    return false;
}

static bool keep_table(gtl_arguments *read, const char *path)
{
    if (read->table_count == GTL_TABLE_FILES) {
        gtl_say("more than %d --tables; put some of them in one file", GTL_TABLE_FILES);
        return false;
    }
    read->tables[read->table_count++] = path;
    return true;
}

bool gtl_read_arguments(int count, char **arguments, const char *letters, bool stop_early,
                        gtl_arguments *read)
{
    struct option options[OPTION_COUNT + 1];
    char short_options[16];
    int found;
    choose_long(letters, options);
    choose_short(letters, stop_early, short_options);
    *read = (gtl_arguments){0};
    optind = 0; /* begin anew: a command's own line follows the program's */
    opterr = 0;
    while ((found = getopt_long(count, arguments, short_options, options, NULL)) != -1) {
        switch (found) {
        case 'a':
            read->form = optarg;
            break;
        case 'c':
            read->case_name = optarg;
            break;
        case 'o':
            read->output = optarg;
            break;
        case 't':
            if (!keep_table(read, optarg)) return false;
            break;
        case 'i':
            read->ideal = true;
            break;
        case 's':
            read->steps = optarg;
            break;
        case 'e':
            read->seed = optarg;
            break;
        case 'n':
            read->students = optarg;
            break;
        case 'k':
            read->key = optarg;
            break;
        case 'b':
            read->bark = optarg;
            break;
        case 'd':
            read->density = optarg;
            break;
        case 'u':
            read->units = optarg;
            break;
        case 'h':
            read->help = true;
            break;
        case 'V':
            read->version = true;
            break;
        default:
            return refuse(arguments, found);
        }
    }
    read->operand_count = count - optind;
    read->operands = arguments + optind;
    return true;
}
