/* cmd_report.c - `gantline report`: a rig file to a report. */
#include "cli/cli.h"

#include "base/text.h"
#include "report/compose.h"
#include "report/names.h"

#include <gantline/gantline.h>
#include <stdlib.h>

static const char help[] =
    "usage: gantline report [--as FORM] [--case NAME] [-o FILE] RIG\n"
    "\n"
    "Works and rates the rig in the file RIG (`-`: standard input) and prints the\n"
    "report.\n"
    "\n"
    "      --as FORM      text, for reading and printing\n"
    "                     json, for programs\n"
    "                     csv, every force and check in one table for a spreadsheet\n"
    "                     svg, the rig drawn with its forces in one case\n"
    "                     html, one page with it all, to print and hand over\n"
    "                     left out: as the ending of FILE tells, else text\n"
    "      --case NAME    svg: the case to draw, by its name in the report: hold,\n"
    "                     raise, \"lost beam\" or \"loss 1\" (left out: raise, or hold)\n"
    "  -o, --output FILE  write to FILE, whole or not at all (`-`: standard output)\n"
    "  -h, --help         print this\n"
    "\n"
    "Exit status:\n"
    "  0  within: every part is within the ratings typed in\n"
    "  1  over: a part is over its rating\n"
    "  3  unrated: nothing is over, but not all could be checked\n"
    "  2  the rig file or the command line is wrong, the rig has no answer, or the\n"
    "     report could not be written; standard error says FILE:LINE: what is wrong\n"
    "     and how to mend it\n"
    "\n"
    "The report is arithmetic on the numbers typed in, no approval.\n";

/* Of a rig's cases, so many are named in a message. */
#define MOST_CASES 12

/* What is to be made of one rig file. */
typedef struct gtl_job {
    gtl_report_wish wish;
    const char *case_name; /* to draw, NULL: not said */
    const char *output;    /* NULL: standard output */
    const gtl_input *input;
} gtl_job;

static int status_of(gtl_verdict verdict)
{
    static const int statuses[] = {
        [GTL_WITHIN] = GTL_EXIT_WITHIN, [GTL_OVER] = GTL_EXIT_OVER, [GTL_UNRATED] = GTL_EXIT_UNRATED};
    return statuses[verdict];
}

static int refuse_case(const gtl_sheet *sheet, const char *name)
{
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = MOST_CASES};
    for (int i = 0; i < sheet->outcome_count; i++) gtl_names_add(&names, sheet->outcomes[i].name);
    gtl_names_end(&names);
    char *cases = gtl_text_take(&text);
    int status = cases ? gtl_say("this rig is not worked in a case `%s`; its cases are: %s", name, cases)
                       : gtl_say("out of memory");
    free(cases);
    return status;
}

/* The case of that name, long or short, capitals or not, into the wish; false, and said, where there is none.
 */
static bool choose_case(const gtl_sheet *sheet, const char *name, gtl_report_wish *wish)
{
    wish->outcome = -1;
    if (!name) return true;
    for (int i = 0; i < sheet->outcome_count; i++) {
        if (gtl_text_compare(sheet->outcomes[i].name, name) != 0 &&
            gtl_text_compare(gtl_compose_case(sheet, i).text, name) != 0)
            continue;
        wish->outcome = i;
        return true;
    }
    refuse_case(sheet, name);
    return false;
}

static int print(const gtl_sheet *sheet, void *context)
{
    const gtl_job *job = context;
    gtl_report_wish wish = job->wish;
    if (!choose_case(sheet, job->case_name, &wish)) return GTL_EXIT_WRONG;
    char *report = gtl_report_as(sheet, &wish);
    if (!report) return gtl_say("out of memory");
    bool written = gtl_output_write(job->output, report, job->input);
    free(report);
    return written ? status_of(sheet->verdict) : GTL_EXIT_WRONG;
}

/* The job that a command line asks for, all but its input; false, and said, if it is wrong. */
static bool understand(const gtl_arguments *read, gtl_job *job)
{
    *job = (gtl_job){.case_name = read->case_name, .output = read->output};
    if (!gtl_choose_form(read, &job->wish.form)) return false;
    if (read->case_name && job->wish.form != GTL_SVG) {
        gtl_say(
            "--case chooses what a drawing shows; the other forms have every case; write --as svg with it, "
            "or leave it out");
        return false;
    }
    if (read->operand_count == 1) return true;
    gtl_say(read->operand_count == 0 ? "which rig file? (`-` reads standard input)"
                                     : "one rig file at a time, please");
    return false;
}

int gtl_cmd_report(int count, char **arguments)
{
    gtl_arguments read;
    gtl_job job;
    if (!gtl_read_arguments(count, arguments, "acoh", false, &read)) return gtl_say_try_help("report");
    if (read.help) return gtl_output_write(NULL, help, NULL) ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
    if (!understand(&read, &job)) return gtl_say_try_help("report");
    gtl_input input;
    int status = GTL_EXIT_WRONG;
    if (gtl_input_read(&input, read.operands[0])) {
        job.input = &input;
        job.wish.source = input.text;
        job.wish.source_size = input.size;
        status = gtl_work_rig(&input, print, &job);
    }
    gtl_input_end(&input);
    return status;
}
