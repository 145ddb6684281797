/* fuzz_read.c - libFuzzer target: any bytes give a whole rig or faults, never a crash, a leak or both.
 * clang -fsanitize=fuzzer,address,undefined, with the library and iniparser; seeds in corpus/. */
#include <gantline/gantline.h>
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* What every user of a rig relies on. */
static void check_rig(const gtl_rig *rig)
{
    int parts = 0;
    if (rig->dim < 1 || rig->dim > 3 || !gtl_rig_asks(rig, GTL_HOLD)) abort();
    for (int i = 0; i < rig->node_count; i++) {
        if (!(rig->nodes[i].weight >= 0) || !isfinite(rig->nodes[i].at[0])) abort();
    }
    for (int i = 0; i < rig->thing_count; i++) {
        if (rig->things[i].node < 0 || rig->things[i].node >= rig->node_count) abort();
    }
    for (int i = 0; i < rig->piece_count; i++) {
        const gtl_piece *piece = &rig->pieces[i];
        if (piece->first_part != parts || piece->run_count != piece->part_count - 1) abort();
        parts += piece->part_count;
    }
    if (parts != rig->part_count) abort();
    if ((rig->hand >= 0) != (rig->driven >= 0) || (rig->hand >= 0) != (rig->load >= 0)) abort();
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "fuzz");
    gtl_rig *rig = gtl_read_text((const char *)data, size, &faults);
    if ((rig != NULL) != (faults.count == 0)) abort();
    if (rig) check_rig(rig);
    char *text = gtl_faults_text(&faults);
    if (!text) abort();
    free(text);
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    return 0;
}
