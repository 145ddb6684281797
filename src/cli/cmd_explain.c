/* cmd_explain.c - `gantline explain`: a rig file to a worked solution. */
#include "cli/cli.h"

#include "base/text.h"

#include <gantline/gantline.h>
#include <stdlib.h>

static const char help[] =
    "usage: gantline explain [--as FORM] [--ideal] [--steps STEPS] [-o FILE] RIG\n"
    "\n"
    "Writes a worked solution of the rig in the file RIG (`-`: standard input): which\n"
    "body to look at and why, the pulls on it, each equation in symbols and in\n"
    "numbers, the rope's length kept, both roads to the advantage, work, friction\n"
    "stop by stop, and what the supports hold.\n"
    "\n"
    "      --as FORM      text, for reading\n"
    "                     html, one page with each body drawn, to print and hand over\n"
    "                     left out: as the ending of FILE tells, else text\n"
    "      --ideal        leave friction out altogether\n"
    "      --steps STEPS  forces: pulls, friction, supports\n"
    "                     distances: the rope's way, and work\n"
    "                     all (the default)\n"
    "  -o, --output FILE  write to FILE, whole or not at all (`-`: standard output)\n"
    "  -h, --help         print this\n"
    "\n"
    "Exit status:\n"
    "  0  the rig is explained; this is no verdict: `gantline report` has the verdict\n"
    "  2  the rig file or the command line is wrong, the rig has no answer, or the\n"
    "     solution could not be written; standard error says FILE:LINE: what is\n"
    "     wrong and how to mend it\n"
    "\n"
    "Figures are rounded to the nearest, where a report rounds forces up. They are\n"
    "arithmetic on the numbers typed in, no approval.\n";

/* What is to be made of one rig file. */
typedef struct gtl_job {
    gtl_explain_wish wish;
    const char *output; /* NULL: standard output */
    const gtl_input *input;
} gtl_job;

static int print(const gtl_sheet *sheet, void *context)
{
    const gtl_job *job = context;
    char *solution = gtl_explain(sheet, &job->wish);
    if (!solution) return gtl_say("out of memory");
    bool written = gtl_output_write(job->output, solution, job->input);
    free(solution);
    return written ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
}

/* The place of a word among `count` words, capitals or not; -1: it is none of them. */
static int place_of(const char *word, const char *const *words, int count)
{
    for (int i = 0; i < count; i++)
        if (gtl_text_compare(words[i], word) == 0) return i;
    return -1;
}

static bool choose_form(const gtl_arguments *read, gtl_form *form)
{
    static const char *const names[] = {"text", "html"};
    static const gtl_form forms[] = {GTL_TEXT, GTL_HTML};
    if (!read->form) {
        if (!gtl_choose_form(read, form)) return false;
        if (*form == GTL_TEXT || *form == GTL_HTML) return true;
        gtl_say("a worked solution is text or html, not what the ending of %s asks for; name it .txt or "
                ".html, or write --as text or --as html",
                read->output);
        return false;
    }
    int found = place_of(read->form, names, 2);
    if (found < 0) gtl_say("a worked solution has no form `%s`; write --as text or --as html", read->form);
    *form = forms[found < 0 ? 0 : found];
    return found >= 0;
}

static bool choose_steps(const char *name, gtl_steps *steps)
{
    static const char *const names[] = {
        [GTL_STEPS_ALL] = "all", [GTL_STEPS_FORCES] = "forces", [GTL_STEPS_DISTANCES] = "distances"};
    int found = name ? place_of(name, names, 3) : GTL_STEPS_ALL;
    if (found < 0) gtl_say("there are no steps `%s`; write --steps forces, distances or all", name);
    *steps = (gtl_steps)(found < 0 ? 0 : found);
    return found >= 0;
}

/* The job that a command line asks for, all but its input; false, and said, if it is wrong. */
static bool understand(const gtl_arguments *read, gtl_job *job)
{
    *job = (gtl_job){.wish.ideal = read->ideal, .output = read->output};
    if (!choose_form(read, &job->wish.form) || !choose_steps(read->steps, &job->wish.steps)) return false;
    if (read->operand_count == 1) return true;
    gtl_say(read->operand_count == 0 ? "which rig file? (`-` reads standard input)"
                                     : "one rig file at a time, please");
    return false;
}

int gtl_cmd_explain(int count, char **arguments)
{
    gtl_arguments read;
    gtl_job job;
    if (!gtl_read_arguments(count, arguments, "aisoh", false, &read)) return gtl_say_try_help("explain");
    if (read.help) return gtl_output_write(NULL, help, NULL) ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
    if (!understand(&read, &job)) return gtl_say_try_help("explain");
    gtl_input input;
    int status = GTL_EXIT_WRONG;
    if (gtl_input_read(&input, read.operands[0])) {
        job.input = &input;
        status = gtl_work_rig(&input, print, &job);
    }
    gtl_input_end(&input);
    return status;
}
