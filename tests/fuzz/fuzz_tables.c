/* fuzz_tables.c - libFuzzer target: any bytes give a whole set of rows or faults, never a crash, a leak or
 * both; what a row leaves of a rating is a share that the row states, nothing, or none. The seeds are the
 * shipped tables themselves. */
#include <gantline/hardware.h>
#include <math.h>
#include <stdint.h>
#include <stdlib.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* What every user of a row relies on. */
static void check_factor(const gtl_hardware_row *row, double at)
{
    double factor = gtl_hardware_factor(row, at);
    bool one = row->rule == GTL_HW_ONE;
    if (!isnan(factor) && !(factor >= 0 && factor <= (one ? 4 : 1))) abort();
}

static void check_row(const gtl_hardware_row *row)
{
    static const double places[] = {-1, 0, 1e-9, 0.5, 1, 2, 1e6, INFINITY, NAN};
    if (!row->name || !row->file || !row->source || !row->seen || !row->note || !row->material) abort();
    if (row->step_count < 0 || row->step_count > GTL_HW_STEPS || row->line < 1) abort();
    for (int i = 1; i < row->step_count; i++) {
        if (!(row->edges[i] > row->edges[i - 1])) abort();
    }
    for (int i = 0; i < row->step_count; i++) check_factor(row, row->edges[i]);
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) check_factor(row, places[i]);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    gtl_fault_list faults;
    gtl_hardware set = {0};
    gtl_faults_begin(&faults, "fuzz");
    bool well = gtl_hardware_read(&set, (const char *)data, size, false, &faults);
    if (well != (faults.count == 0) || well != (set.row_count > 0)) abort();
    for (int i = 0; i < set.row_count; i++) check_row(&set.rows[i]);
    char *text = gtl_faults_text(&faults);
    if (!text) abort();
    free(text);
    gtl_hardware_end(&set);
    gtl_faults_end(&faults);
    return 0;
}
