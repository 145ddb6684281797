/* lab.c - a table of readings, step by step: header, rows, figures, predictions, findings, set-ups. */
#include "lab/work.h"

#include <stdlib.h>
#include <string.h>

/* Room for all rows; each may be a set-up of its own. */
static bool make_room(gtl_lab *lab, size_t rows)
{
    lab->rows = calloc(rows, sizeof *lab->rows);
    lab->set_ups = calloc(rows + 1, sizeof *lab->set_ups);
    return lab->rows && lab->set_ups;
}

static void read_rows(const gtl_lab_table *table, const gtl_lab_source *source, gtl_lab *lab,
                      gtl_fault_list *faults)
{
    gtl_lab_places places = {{0}};
    if (!gtl_lab_read_header(table, &places, lab->columns, faults)) return;
    if (!make_room(lab, table->record_count - 1)) {
        faults->out_of_memory = true;
        return;
    }
    gtl_lab_reading reading = {table, &places, source, lab, faults};
    for (size_t i = 1; i < table->record_count && !faults->out_of_memory; i++)
        gtl_lab_read_row(&reading, &table->records[i]);
}

static bool work_out(gtl_lab *lab)
{
    for (int i = 0; i < lab->row_count; i++) gtl_lab_work_row(&lab->rows[i]);
    return gtl_lab_predict(lab) && gtl_lab_find_rows(lab) && gtl_lab_sum_up(lab);
}

gtl_status gtl_lab_read(const char *text, size_t size, const gtl_lab_source *source, gtl_lab *lab,
                        gtl_fault_list *faults)
{
    gtl_lab_table table = {0};
    *lab = (gtl_lab){
        .file = gtl_text_copy(faults->file ? faults->file : "", faults->file ? strlen(faults->file) : 0)};
    if (!lab->file) faults->out_of_memory = true;
    size_t before = faults->count;
    if (!faults->out_of_memory && gtl_lab_table_read(text, size, &table, faults))
        read_rows(&table, source, lab, faults);
    gtl_lab_table_end(&table);
    if (faults->out_of_memory) return GTL_NO_MEMORY;
    if (faults->count > before) return GTL_FAULTY;
    return work_out(lab) ? GTL_OK : GTL_NO_MEMORY;
}

void gtl_lab_end(gtl_lab *lab)
{
    for (int i = 0; i < lab->row_count; i++) free(lab->rows[i].group);
    for (int i = 0; i < lab->set_up_count; i++) {
        free(lab->set_ups[i].name);
        gtl_rig_free(lab->set_ups[i].rig);
    }
    free(lab->file);
    free(lab->rows);
    free(lab->set_ups);
    free(lab->findings);
    *lab = (gtl_lab){0};
}
