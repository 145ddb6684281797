/* table_shipped.c - the shipped tables into a set, by the same reader as the user's. */
#include "read/table_shipped.h"
#include "rig/hardware.h"

#include <string.h>

bool gtl_hardware_add_shipped(gtl_hardware *set)
{
    int before = set->row_count;
    bool well = true;
    for (const gtl_shipped_table *table = gtl_shipped_tables; table->file && well; table++) {
        gtl_fault_list faults;
        gtl_faults_begin(&faults, table->file);
        well =
            !faults.out_of_memory && gtl_hardware_read(set, table->text, strlen(table->text), true, &faults);
        gtl_faults_end(&faults);
    }
    if (!well) gtl_hardware_cut(set, before);
    return well;
}
