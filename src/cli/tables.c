/* tables.c - hardware tables that a command line names. */
#include "cli/tables.h"

#include <gantline/read.h>

/* Add the rows of one file of the user's. False, and what is wrong said, if they cannot be read. */
static bool read_table(gtl_hardware *set, const char *path)
{
    gtl_input input;
    bool well = gtl_input_read(&input, path);
    if (well) {
        gtl_fault_list faults;
        gtl_faults_begin(&faults, input.name);
        well = gtl_hardware_read(set, input.text, input.size, false, &faults);
        if (!well) gtl_say_faults(&faults);
        gtl_faults_end(&faults);
    }
    gtl_input_end(&input);
    return well;
}

bool gtl_read_tables(gtl_hardware *set, const gtl_arguments *read)
{
    bool well = true;
    for (int i = 0; i < read->table_count; i++) well = read_table(set, read->tables[i]) && well;
    if (!gtl_hardware_add_shipped(set)) {
        gtl_say("the shipped tables cannot be read: out of memory, or a fault in one that was changed, which "
                "--tables tells");
        well = false;
    }
    return well;
}
