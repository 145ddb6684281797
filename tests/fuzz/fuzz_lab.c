/* fuzz_lab.c - libFuzzer target: any bytes give a lab that holds together or faults, never a crash, a leak or
 * both; a row that counts has an efficiency that can be. Every name is the same rig. */
#include <gantline/lab.h>
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* Two parts, whatever the name. */
static gtl_rig *give_rig(void *context, const char *name, gtl_fault_list *faults)
{
    static const char text[] = "[anchor post]\nat = 0.8 m\n[block low]\nat = 0.3 m\nefficiency = 95 %\n"
                               "[load mass]\non = low\nmass = 1 kg\n[hand scale]\nat = 0.7 m\n"
                               "[rope cord]\npath = post, low, scale\n";
    (void)context;
    gtl_faults_begin(faults, name);
    return gtl_read_text(text, sizeof text - 1, faults);
}

static void check_row(const gtl_lab *lab, const gtl_lab_row *row)
{
    if (row->line < 2 || !row->group || row->set_up < 0 || row->set_up >= lab->set_up_count) abort();
    if (!(row->load > 0) || !(row->effort_read > 0)) abort();
    if (!(row->load_distance > 0) || !(row->effort_distance > 0)) abort();
    if (row->first_finding < 0 || row->first_finding + row->finding_count > lab->finding_count) abort();
    if (row->counted && !isfinite(row->efficiency)) abort();
    if (row->counted && isnan(row->efficiency_u) && row->efficiency > 1 + 1e-8) abort();
}

static void check_lab(const gtl_lab *lab)
{
    int rows = 0;
    int counted = 0;
    for (int i = 0; i < lab->row_count; i++) {
        check_row(lab, &lab->rows[i]);
        counted += lab->rows[i].counted;
    }
    for (int i = 0; i < lab->set_up_count; i++) {
        rows += lab->set_ups[i].row_count;
        counted -= lab->set_ups[i].counted;
        if (lab->set_ups[i].fit == GTL_LAB_FIT_NONE && !isnan(lab->set_ups[i].sheave_efficiency)) abort();
    }
    if (rows != lab->row_count || counted != 0) abort();
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    gtl_lab lab;
    gtl_fault_list faults;
    const gtl_lab_source source = {give_rig, NULL};
    gtl_faults_begin(&faults, "fuzz");
    gtl_status status = gtl_lab_read((const char *)data, size, &source, &lab, &faults);
    if ((status == GTL_OK) != (faults.count == 0)) abort();
    if (status == GTL_OK) {
        char *report = gtl_lab_report(&lab, GTL_JSON);
        if (!report) abort();
        free(report);
        check_lab(&lab);
    }
    gtl_lab_end(&lab);
    gtl_faults_end(&faults);
    return 0;
}
