/* cmd_limit.c - `gantline limit`: a rig file to the heaviest load that its ratings permit. */
#include "cli/cli.h"

#include <gantline/gantline.h>
#include <stdlib.h>
#include <string.h>

static const char help[] =
    "usage: gantline limit [--as FORM] [-o FILE] RIG\n"
    "\n"
    "Finds the heaviest load that keeps every part of the rig in the file RIG (`-`:\n"
    "standard input) within its rating in all the rig's cases, and what stops it; the\n"
    "lightest, where a lighter load breaks something too; and the ratings that the\n"
    "load as drawn needs.\n"
    "\n"
    "      --as FORM      text (the default) or json\n"
    "  -o, --output FILE  write to FILE, whole or not at all (`-`: standard output)\n"
    "  -h, --help         print this\n"
    "\n"
    "Exit status:\n"
    "  0  the load as drawn is permitted, and all could be checked\n"
    "  1  the load as drawn is not permitted\n"
    "  3  something is unrated, undecided or not stated: the true limit may be lower\n"
    "  2  the rig file or the command line is wrong, the rig has no answer, or the\n"
    "     limit could not be written; standard error says FILE:LINE: what is wrong\n"
    "     and how to mend it\n"
    "\n"
    "The limit is arithmetic on the numbers typed in, no approval.\n";

static const char *const forms[] = {[GTL_TEXT] = "text", [GTL_JSON] = "json"};

static bool form_named(const char *name, gtl_form *form)
{
    for (size_t i = 0; i < sizeof forms / sizeof *forms; i++) {
        if (strcmp(forms[i], name) != 0) continue;
        *form = (gtl_form)i;
        return true;
    }
    gtl_say("there is no form `%s`; write --as text or --as json", name);
    return false;
}

static int status_of(const gtl_limit *limit)
{
    if (limit->open) return GTL_EXIT_UNRATED;
    return limit->permitted ? GTL_EXIT_WITHIN : GTL_EXIT_OVER;
}

static int print(const gtl_limit *limit, gtl_form form, const char *output, const gtl_input *input)
{
    char *report = gtl_limit_report(limit, form);
    if (!report) return gtl_say("out of memory");
    bool written = gtl_output_write(output, report, input);
    free(report);
    return written ? status_of(limit) : GTL_EXIT_WRONG;
}

/* Find and print the limits of a rig that was read without faults. */
static int work(const gtl_rig *rig, gtl_form form, const char *output, const gtl_input *input,
                gtl_fault_list *faults)
{
    gtl_limit limit;
    gtl_status status = gtl_find_limit(rig, &limit);
    int result = GTL_EXIT_WRONG;
    if (status == GTL_OK) {
        result = print(&limit, form, output, input);
    } else if (status == GTL_NO_MEMORY) {
        gtl_say("out of memory");
    } else {
        gtl_faults_add(faults, limit.blame, "%s", limit.reason);
        result = gtl_say_faults(faults);
    }
    gtl_limit_end(&limit);
    return result;
}

static int read_and_work(const gtl_input *input, gtl_form form, const char *output)
{
    gtl_fault_list faults;
    gtl_faults_begin(&faults, input->name);
    gtl_rig *rig = gtl_read_text(input->text, input->size, &faults);
    int status = rig ? work(rig, form, output, input, &faults) : gtl_say_faults(&faults);
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    return status;
}

int gtl_cmd_limit(int count, char **arguments)
{
    gtl_arguments read;
    gtl_form form = GTL_TEXT;
    if (!gtl_read_arguments(count, arguments, "aoh", false, &read)) return gtl_say_try_help("limit");
    if (read.help) return gtl_output_write(NULL, help, NULL) ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
    if (read.form && !form_named(read.form, &form)) return gtl_say_try_help("limit");
    if (read.operand_count != 1) {
        gtl_say(read.operand_count == 0 ? "which rig file? (`-` reads standard input)"
                                        : "one rig file at a time, please");
        return gtl_say_try_help("limit");
    }
    gtl_input input;
    int status = GTL_EXIT_WRONG;
    if (gtl_input_read(&input, read.operands[0])) status = read_and_work(&input, form, read.output);
    gtl_input_end(&input);
    return status;
}
