/* work_rig.c - from an input to a rated rig, or to its faults. */
#include "cli/cli.h"

#include <gantline/read.h>

static int rate(const gtl_rig *rig, gtl_rated_job *job, void *context, gtl_fault_list *faults)
{
    gtl_sheet sheet;
    gtl_status status = gtl_rate(rig, &sheet);
    int result = GTL_EXIT_WRONG;
    if (status == GTL_OK) {
        result = job(&sheet, context);
    } else if (status == GTL_NO_ANSWER) {
        gtl_faults_add(faults, sheet.blame, "%s", sheet.reason);
        result = gtl_say_faults(faults);
    } else {
        gtl_say("out of memory");
    }
    gtl_sheet_end(&sheet);
    return result;
}

int gtl_work_rig(const gtl_input *input, gtl_rated_job *job, void *context)
{
    gtl_fault_list faults;
    gtl_faults_begin(&faults, input->name);
    gtl_rig *rig = gtl_read_text(input->text, input->size, &faults);
    int status = rig ? rate(rig, job, context, &faults) : gtl_say_faults(&faults);
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    return status;
}
