/* tables.c - the hardware tables that a rig uses: its own files, from the rig file's folder, then the shipped
 * ones. A rig that names no row pays for none. */
#define _POSIX_C_SOURCE 200809L
#include "read/tables.h"

#include "base/suggest.h"
#include "base/text.h"

#include <errno.h>
#include <fcntl.h>
#include <gantline/read.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct loading {
    gtl_draft *draft;
    gtl_fault_list *faults;
    int line;      /* of `tables` in the rig file */
    gtl_text seen; /* the paths read so far, a zero after each */
} loading;

/* Numbers that are nothing without a row. */
static const gtl_field row_fields[] = {GTL_F_CHOKE_ANGLE, GTL_F_SIDE_LOAD, GTL_F_DIAMETER};

static bool uses_rows(const gtl_item *item)
{
    if (item->tables.stated.yes) return true;
    for (int i = 0; i < GTL_ROW_KEY_COUNT; i++)
        if (item->rows[i].stated.yes) return true;
    for (size_t i = 0; i < sizeof row_fields / sizeof row_fields[0]; i++)
        if (item->numbers[row_fields[i]].stated.yes) return true;
    return false;
}

static bool any_uses_rows(const gtl_draft *draft)
{
    bool uses = uses_rows(&draft->sheet);
    for (int i = 0; i < draft->item_count && !uses; i++) uses = uses_rows(&draft->items[i]);
    return uses;
}

/* A name as in the rig file, from the folder that the rig file is in. NULL without memory. */
static char *path_of(const loading *l, gtl_word name)
{
    gtl_text path = {0};
    const char *rig = l->faults->file;
    const char *slash = strrchr(rig, '/');
    if (slash && name.start[0] != '/') gtl_text_put(&path, rig, (size_t)(slash + 1 - rig));
    gtl_text_put(&path, name.start, name.length);
    return gtl_text_take(&path);
}

/* Read to the end or to `most` bytes. NULL if that went well, else why it did not. */
static const char *read_open(int file, char *buffer, size_t most, size_t *size)
{
    struct stat status;
    ssize_t more = 1;
    /* A pipe or a device named by mistake must not hold the program up. */
    if (fstat(file, &status) == 0 && !S_ISREG(status.st_mode)) return "that is no file of text";
    while (more != 0 && *size < most) {
        more = read(file, buffer + *size, most - *size);
        if (more > 0) *size += (size_t)more;
        if (more < 0 && errno != EINTR) return strerror(errno);
    }
    return NULL;
}

static const char *read_file(const char *path, char *buffer, size_t most, size_t *size)
{
    int file = open(path, O_RDONLY | O_CLOEXEC | O_NOCTTY | O_NONBLOCK);
    if (file < 0) return strerror(errno);
    const char *problem = read_open(file, buffer, most, size);
    close(file);
    return problem;
}

/* Add the rows of a table's text; what is wrong in it is told with its name. */
static void read_rows(loading *l, const char *path, const char *text, size_t size)
{
    gtl_fault_list own;
    gtl_faults_begin(&own, path);
    if (own.out_of_memory || !gtl_hardware_read(l->draft->hardware, text, size, false, &own))
        l->draft->tables_missing = true;
    gtl_faults_take(l->faults, &own);
    gtl_faults_end(&own);
}

static void read_table(loading *l, const char *path)
{
    size_t most =
        GTL_FILE_LIMIT + 1; /* one more than is taken, so that the reader says that it is too large */
    size_t size = 0;
    char *text = malloc(most);
    if (!text) {
        l->faults->out_of_memory = true;
        return;
    }
    const char *problem = read_file(path, text, most, &size);
    if (problem) {
        gtl_faults_add(l->faults, l->line,
                       "`tables`: cannot read `%s`: %s; mend the name, which counts from the rig file's "
                       "folder, or leave it out",
                       path, problem);
        l->draft->tables_missing = true;
    } else {
        read_rows(l, path, text, size);
    }
    free(text);
}

static bool seen_before(const loading *l, const char *path)
{
    for (const char *other = l->seen.bytes; other && other < l->seen.bytes + l->seen.length;
         other += strlen(other) + 1)
        if (strcmp(other, path) == 0) return true;
    return false;
}

static void add_table(loading *l, gtl_word name)
{
    if (name.length == 0) {
        gtl_faults_add(l->faults, l->line,
                       "`tables`: a file name is missing; write one, such as tables = mine.ini, or several "
                       "with commas between them");
        l->draft->tables_missing = true;
        return;
    }
    char *path = path_of(l, name);
    if (!path) {
        l->faults->out_of_memory = true;
    } else if (seen_before(l, path)) {
        gtl_faults_add(l->faults, l->line, "`tables` names `%s` twice; once will do", path);
    } else {
        gtl_text_put(&l->seen, path, strlen(path) + 1);
        read_table(l, path);
    }
    free(path);
}

static void add_own_tables(gtl_draft *draft, gtl_fault_list *faults)
{
    const gtl_row_name *tables = &draft->sheet.tables;
    loading l = {draft, faults, tables->stated.line, {0}};
    if (!tables->name.start) draft->tables_missing = true; /* given twice: told */
    if (!tables->name.start) return;
    gtl_word rest = tables->name;
    gtl_word name;
    while (gtl_word_cut(&rest, ',', &name)) add_table(&l, name);
    if (l.seen.failed) faults->out_of_memory = true;
    free(l.seen.bytes);
}

/* A row of gear in a user's table whose material no table has. */
static void check_material(const gtl_hardware *set, const gtl_hardware_row *row, gtl_fault_list *faults)
{
    gtl_fault_list own;
    if (row->shipped || !row->material[0] || gtl_hardware_find(set, GTL_HW_MATERIAL, row->material)) return;
    gtl_suggestion near = {.wanted = gtl_word_of(row->material), .best = -1};
    for (int i = 0; i < set->row_count; i++)
        if (set->rows[i].kind == GTL_HW_MATERIAL) gtl_suggest_try(&near, gtl_word_of(set->rows[i].name), i);
    gtl_faults_begin(&own, row->file);
    if (near.best >= 0)
        gtl_faults_add(&own, row->line, "[gear %s]: no table has a [material %s]; did you mean `%s`?",
                       row->name, row->material, set->rows[near.best].name);
    else
        gtl_faults_add(&own, row->line, "[gear %s]: no table has a [material %s]; write that row too",
                       row->name, row->material);
    gtl_faults_take(faults, &own);
    gtl_faults_end(&own);
}

void gtl_load_tables(gtl_draft *draft, gtl_fault_list *faults)
{
    if (!any_uses_rows(draft)) return;
    draft->hardware = calloc(1, sizeof *draft->hardware);
    if (!draft->hardware) {
        faults->out_of_memory = true;
        return;
    }
    const gtl_item *sheet = &draft->sheet;
    if (sheet->tables.stated.yes)
        add_own_tables(draft, faults);
    else if (sheet->lost || sheet->rough)
        draft->tables_missing = true;
    if (faults->out_of_memory) return;
    if (!gtl_hardware_add_shipped(draft->hardware)) faults->out_of_memory = true;
    if (faults->out_of_memory || draft->tables_missing) return;
    for (int i = 0; i < draft->hardware->row_count; i++)
        check_material(draft->hardware, &draft->hardware->rows[i], faults);
}
