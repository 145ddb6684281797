/* rig_file.c - the way from a text, or from entries, to a rig. */
#include "read/ini.h"
#include "read/screen.h"
#include "read/sections.h"
#include "read/tables.h"
#include "rig/build.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

/* Entries to a draft that was begun, the draft to a rig; the draft is ended. */
static gtl_rig *build(const gtl_entry *entries, size_t count, gtl_draft *draft, gtl_fault_list *faults)
{
    gtl_rig *rig = NULL;
    gtl_read_sections(entries, count, draft, faults);
    if (!faults->out_of_memory) gtl_load_tables(draft, faults);
    if (!faults->out_of_memory) rig = gtl_build(draft, faults);
    gtl_draft_end(draft);
    return rig;
}

gtl_rig *gtl_read_entries(const gtl_entry *entries, size_t count, gtl_fault_list *faults)
{
    gtl_draft draft;
    if (count > INT_MAX / 2) {
        gtl_faults_add(faults, 0, "far too many lines; split the rig");
        return NULL;
    }
    gtl_draft_begin(&draft);
    return build(entries, count, &draft, faults);
}

gtl_rig *gtl_read_text(const char *text, size_t size, gtl_fault_list *faults)
{
    gtl_screened screened;
    gtl_draft draft;
    void *values = NULL;
    gtl_rig *rig = NULL;
    if (gtl_screen(text, size, &gtl_rig_file, &screened, faults) &&
        gtl_ini_values(&screened.clean, screened.entries, screened.count, &values, faults)) {
        gtl_draft_begin(&draft);
        draft.sheet.rough = screened.rough;
        draft.whole = !screened.rough;
        draft.names_missing = screened.headless;
        rig = build(screened.entries, screened.count, &draft, faults);
    }
    gtl_ini_end(values);
    gtl_screened_end(&screened);
    return rig;
}
