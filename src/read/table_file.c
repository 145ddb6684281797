/* table_file.c - the way from the text of a hardware table to rows of a set. */
#include "base/grow.h"
#include "base/text.h"
#include "read/ini.h"
#include "read/screen.h"
#include "read/table_row.h"
#include "read/table_unknown.h"
#include "rig/hardware.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

typedef struct reading {
    gtl_hardware *set;
    bool shipped;
    bool rough; /* a line of the file could not be understood: nothing may be called missing */
    gtl_fault_list *faults;
} reading;

static void no_memory(reading *r)
{
    r->faults->out_of_memory = true;
}

static char *copied(reading *r, const char *text)
{
    char *copy = gtl_text_copy(text, strlen(text));
    if (!copy) no_memory(r);
    return copy;
}

/* A row at the set's end that states nothing yet, NULL without memory. */
static gtl_hardware_row *add_row(reading *r, gtl_hardware_kind kind, const gtl_entry *header)
{
    gtl_hardware *set = r->set;
    gtl_hardware_row *rows = gtl_grow(set->rows, (size_t)set->row_count, &set->row_capacity, sizeof *rows);
    if (!rows) {
        no_memory(r);
        return NULL;
    }
    set->rows = rows;
    gtl_hardware_row *row = &rows[set->row_count++];
    *row = (gtl_hardware_row){.kind = kind, .line = header->line, .shipped = r->shipped};
    for (int i = 0; i < GTL_HW_NUMBER_COUNT; i++) row->numbers[i] = NAN;
    row->name = copied(r, header->name);
    row->file = copied(r, r->faults->file);
    row->source = copied(r, "");
    row->seen = copied(r, "own");
    row->note = copied(r, "");
    row->material = copied(r, "");
    return r->faults->out_of_memory ? NULL : row;
}

static void read_key(gtl_table_row *row, const gtl_entry *entry)
{
    int key = gtl_table_key_find(row->row->kind, gtl_word_of(entry->key));
    if (key < 0) {
        gtl_table_refuse_key(entry, row->row->kind, row->faults);
        row->rough = true;
    } else if (row->lines[key] > 0) {
        gtl_faults_add(row->faults, entry->line, "`%s` is given twice (first in line %d); keep one of them",
                       gtl_table_key_at(key)->key, row->lines[key]);
        row->rough = true;
    } else {
        gtl_table_store(row, key, entry);
    }
}

/* One section: its header, and the keys up to the next. */
static void read_section(reading *r, const gtl_entry *header, const gtl_entry *end)
{
    gtl_hardware_kind kind = gtl_table_kind_find(gtl_word_of(header->kind));
    if (kind == GTL_HW_KIND_COUNT) {
        gtl_table_refuse_kind(header, r->faults);
        return;
    }
    if (header->name[0] == '\0') {
        gtl_faults_add(r->faults, header->line, "a row needs a name; write [%s NAME]",
                       gtl_hardware_kind_name(kind));
        return;
    }
    gtl_table_row row = {add_row(r, kind, header), r->shipped, r->rough, 0, 0, {0}, r->faults};
    if (!row.row) return;
    for (const gtl_entry *entry = header + 1; entry < end; entry++) read_key(&row, entry);
    gtl_table_finish(&row);
}

static int compare_rows(const void *left, const void *right)
{
    const gtl_hardware_row *a = *(gtl_hardware_row *const *)left;
    const gtl_hardware_row *b = *(gtl_hardware_row *const *)right;
    int names =
        a->kind != b->kind ? (a->kind > b->kind) - (a->kind < b->kind) : gtl_text_compare(a->name, b->name);
    return names != 0 ? names : (a->line > b->line) - (a->line < b->line);
}

/* Two rows of one kind and name in one file: nobody can tell which one is meant. */
static void tell_twins(reading *r, int first, int count)
{
    if (count < 2) return;
    gtl_hardware_row **sorted = malloc((size_t)count * sizeof *sorted);
    if (!sorted) {
        no_memory(r);
        return;
    }
    for (int i = 0; i < count; i++) sorted[i] = &r->set->rows[first + i];
    qsort(sorted, (size_t)count, sizeof *sorted, compare_rows);
    for (int i = 1; i < count; i++) {
        const gtl_hardware_row *before = sorted[i - 1];
        const gtl_hardware_row *row = sorted[i];
        if (before->kind != row->kind || gtl_text_compare(before->name, row->name) != 0) continue;
        gtl_faults_add(r->faults, row->line, "there is a [%s %s] already (line %d); choose another name",
                       gtl_hardware_kind_name(row->kind), row->name, before->line);
    }
    free(sorted);
}

/* The screen leaves no key outside a section. */
static void read_sections(reading *r, const gtl_entry *entries, size_t count)
{
    int first = r->set->row_count;
    for (size_t i = 0, next; i < count && !r->faults->out_of_memory; i = next) {
        for (next = i + 1; next < count && entries[next].key; next++) continue;
        read_section(r, &entries[i], &entries[next]);
    }
    if (count == 0 && !r->rough) {
        gtl_faults_add(r->faults, 0,
                       "no row in this table; write one, such as [knot bowline] and under it "
                       "keeps = 55 %%");
    }
    if (!r->faults->out_of_memory) tell_twins(r, first, r->set->row_count - first);
}

bool gtl_hardware_read(gtl_hardware *set, const char *text, size_t size, bool shipped, gtl_fault_list *faults)
{
    gtl_screened screened;
    void *values = NULL;
    int before = set->row_count;
    bool well = gtl_screen(text, size, &gtl_table_file, &screened, faults) &&
                gtl_ini_values(&screened.clean, screened.entries, screened.count, &values, faults);
    if (well) {
        reading r = {set, shipped, screened.rough, faults};
        read_sections(&r, screened.entries, screened.count);
    }
    gtl_ini_end(values);
    gtl_screened_end(&screened);
    if (well && faults->count == 0 && !faults->out_of_memory) return true;
    gtl_hardware_cut(set, before);
    return false;
}
