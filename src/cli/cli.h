/* cli.h - what the commands of the program share: statuses, messages, arguments, input and output.
 *
 * Nothing but a finished report, list or help text goes to standard output, and only with a status that says
 * so. All else goes to standard error. */
#ifndef CLI_CLI_H
#define CLI_CLI_H

#include <gantline/report.h>

/* Exit statuses. */
enum {
    GTL_EXIT_WITHIN = 0, /* also: did what was asked, no report wanted */
    GTL_EXIT_OVER = 1,
    GTL_EXIT_WRONG = 2, /* input or command line wrong, no answer, or not written */
    GTL_EXIT_UNRATED = 3
};

/* One command: its own arguments, its own name first; returns the exit status. */
typedef int gtl_command(int count, char **arguments);

gtl_command gtl_cmd_report;
gtl_command gtl_cmd_limit;
gtl_command gtl_cmd_explain;
gtl_command gtl_cmd_lab;
gtl_command gtl_cmd_worksheet;
gtl_command gtl_cmd_keys;
gtl_command gtl_cmd_hardware;
gtl_command gtl_cmd_timber;

/* --- messages, to standard error --- */

/* Say something as the program: `gantline: ...`. Returns GTL_EXIT_WRONG. */
int gtl_say(const char *format, ...) GTL_PRINTF(1, 2);

/* Point to the help of a command, "" for the program's own. Returns GTL_EXIT_WRONG. */
int gtl_say_try_help(const char *command);

/* Print a list of faults. Returns GTL_EXIT_WRONG. */
int gtl_say_faults(const gtl_fault_list *faults);

/* --- arguments --- */

/* The most tables that one command line names. */
#define GTL_TABLE_FILES 16

/* What a command line may hold; each command allows some of it. */
typedef struct gtl_arguments {
    const char *form;                    /* of --as, NULL where not given */
    const char *output;                  /* of --output, NULL where not given */
    const char *case_name;               /* of --case, NULL where not given */
    const char *tables[GTL_TABLE_FILES]; /* of each --tables, in order */
    int table_count;
    const char *steps;    /* of --steps, NULL where not given */
    const char *seed;     /* of --seed, likewise */
    const char *students; /* of --students, likewise */
    const char *key;      /* of --key, likewise */
    const char *bark;     /* of --bark, likewise */
    const char *density;  /* of --density, likewise */
    const char *units;    /* of --units, likewise */
    bool ideal;
    bool help;
    bool version;
    int operand_count;
    char **operands;
} gtl_arguments;

/* Read a command line. `letters` are the options allowed: a (--as), c (--case), o (--output), t (--tables),
 * i (--ideal), s (--steps), e (--seed), n (--students), k (--key), b (--bark), d (--density), u (--units),
 * h (--help), V (--version). `stop_early`:
 * the first operand ends the options. False, and a message, if it is wrong. */
bool gtl_read_arguments(int count, char **arguments, const char *letters, bool stop_early,
                        gtl_arguments *read);

/* The form that --as names; where it is left out, the one that the ending of --output tells; else text.
 * False, and a message, if there is no such form. */
bool gtl_choose_form(const gtl_arguments *read, gtl_form *form);

/* --- input --- */

/* A file read whole. */
typedef struct gtl_input {
    const char *path; /* as given; NULL: standard input */
    const char *name; /* for messages */
    const char *what; /* likewise: "the rig"; whoever reads something else says so */
    char *text;       /* owned; not ended by a zero */
    size_t size;
} gtl_input;

/* Read a rig file or a table, `-` for standard input. False, and a message, if it cannot be read. */
bool gtl_input_read(gtl_input *input, const char *path);

/* The same, saying nothing: what is wrong, NULL if it was read. Ended by gtl_input_end in every case. */
const char *gtl_input_try(gtl_input *input, const char *path);
void gtl_input_end(gtl_input *input);

/* --- a rig --- */

/* What is done with a rated rig; returns the exit status. */
typedef int gtl_rated_job(const gtl_sheet *sheet, void *context);

/* Read, work and rate the rig of an input, and do the job with it; or say what is wrong with it, or why it
 * has no answer. Returns the exit status. */
int gtl_work_rig(const gtl_input *input, gtl_rated_job *job, void *context);

/* --- output --- */

/* Write `text` to a file, whole or not at all; NULL or `-` is standard output. `input` is never written on
 * (NULL: there is none). False, and a message, if it could not be written. */
bool gtl_output_write(const char *path, const char *text, const gtl_input *input);

/* Whether `path` (NULL, `-`: standard output) is another file than the input. False, and a message, if not.
 */
bool gtl_output_spares(const char *path, const gtl_input *input);

#endif
