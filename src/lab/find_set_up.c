/* find_set_up.c - the rig or the number of parts that a row was measured on. */
#include "lab/work.h"

#include <math.h>
#include <string.h>

static bool is_same(const gtl_lab_set_up *set_up, const char *name, int parts)
{
    return set_up->parts == parts && strcmp(set_up->name, name) == 0;
}

static void ask_source(const gtl_lab_reading *r, gtl_lab_set_up *set_up)
{
    gtl_fault_list own = {0};
    if (!r->source) return;
    set_up->rig = r->source->rig(r->source->context, set_up->name, &own);
    gtl_faults_take(r->faults, &own);
    gtl_faults_end(&own);
}

/* The first bend of the rig whose friction is a range, NULL for none. */
static const char *ranged_bend(const gtl_rig *rig)
{
    for (int i = 0; i < rig->run_count; i++)
        if (!isnan(rig->things[rig->runs[i].thing].freest)) return rig->things[rig->runs[i].thing].name;
    return NULL;
}

/* A row on a rig that cannot be used: why. */
static void check_rig(const gtl_lab_reading *r, const gtl_lab_set_up *set_up, int line)
{
    if (!r->source) {
        gtl_faults_add(r->faults, line, "no rig can be read here; write `parts` instead");
    } else if (!set_up->rig) {
        gtl_faults_add(r->faults, line, "the rig `%s` cannot be used: see its own faults", set_up->name);
    } else if (set_up->rig->load < 0 || set_up->rig->driven < 0) {
        gtl_faults_add(
            r->faults, line,
            "in the rig `%s` nobody's pull is worked out, so that there is no effort to compare: it "
            "needs a load and one hand whose pull is not given",
            set_up->name);
    } else if (gtl_batten_of(set_up->rig, set_up->rig->load) >= 0) {
        gtl_faults_add(r->faults, line,
                       "in the rig `%s` a batten is lifted, and a load read off cannot be put in its place; "
                       "write a rig with a [load NAME]",
                       set_up->name);
    } else if (ranged_bend(set_up->rig)) {
        gtl_faults_add(r->faults, line,
                       "in the rig `%s` the friction of `%s` is a range, and a reading is compared with one "
                       "figure; write one number there",
                       set_up->name, ranged_bend(set_up->rig));
    }
}

int gtl_lab_find_set_up(const gtl_lab_reading *r, const char *name, int parts, int line)
{
    gtl_lab *lab = r->lab;
    int found = 0;
    while (found < lab->set_up_count && !is_same(&lab->set_ups[found], name, parts)) found++;
    gtl_lab_set_up *set_up = &lab->set_ups[found];
    if (found == lab->set_up_count) {
        char *copy = gtl_text_copy(name, strlen(name));
        if (!copy) {
            r->faults->out_of_memory = true;
            return -1;
        }
        *set_up = (gtl_lab_set_up){.name = copy, .parts = parts};
        lab->set_up_count++;
        if (parts == 0) ask_source(r, set_up);
    }
    if (parts == 0) check_rig(r, set_up, line);
    return found;
}
