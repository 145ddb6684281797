/* cmd_hardware.c - `gantline hardware`: the hardware tables, shipped and the user's own, listed and checked.
 */
#include "cli/cli.h"

#include "base/suggest.h"
#include "cli/hardware_rows.h"
#include "cli/tables.h"
#include "report/write.h"

#include <stdlib.h>
#include <string.h>

static const char help[] =
    "usage: gantline hardware [--tables FILE]... [NAME]\n"
    "\n"
    "Lists the hardware tables: gear, and what knots, ends, bends, hitches and angles\n"
    "leave of a rating, each figure with its source and how it was seen. With NAME,\n"
    "shows every row of that name in full.\n"
    "\n"
    "      --tables FILE  check a table of your own and list it first (`-`: standard\n"
    "                     input); may be given several times\n"
    "  -h, --help         print this\n"
    "\n"
    "Exit status: 0; 2 if a table or the command line is wrong, there is no such\n"
    "NAME, or nothing could be written; standard error says FILE:LINE: what is wrong\n"
    "and how to mend it.\n";

/* The name of a row nearest to a word, of that kind or of any (GTL_HW_KIND_COUNT); NULL for none. */
static const char *nearest_name(const gtl_hardware *set, gtl_hardware_kind kind, const char *word)
{
    gtl_suggestion near = {.wanted = gtl_word_of(word), .best = -1};
    for (int i = 0; i < set->row_count; i++) {
        if (kind == GTL_HW_KIND_COUNT || set->rows[i].kind == kind)
            gtl_suggest_try(&near, gtl_word_of(set->rows[i].name), i);
    }
    return near.best >= 0 ? set->rows[near.best].name : NULL;
}

/* A row of gear whose material no table has; false, and said. */
static bool check_material(const gtl_hardware *set, const gtl_hardware_row *row)
{
    if (!row->material[0] || gtl_hardware_find(set, GTL_HW_MATERIAL, row->material)) return true;
    const char *near = nearest_name(set, GTL_HW_MATERIAL, row->material);
    gtl_fault_list faults;
    gtl_faults_begin(&faults, row->file);
    if (near) {
        gtl_faults_add(&faults, row->line, "[gear %s]: no table has a [material %s]; did you mean `%s`?",
                       row->name, row->material, near);
    } else {
        gtl_faults_add(&faults, row->line, "[gear %s]: no table has a [material %s]; write that row too",
                       row->name, row->material);
    }
    gtl_say_faults(&faults);
    gtl_faults_end(&faults);
    return false;
}

static bool check_materials(const gtl_hardware *set)
{
    bool well = true;
    for (int i = 0; i < set->row_count; i++) well = check_material(set, &set->rows[i]) && well;
    return well;
}

static int refuse_name(const gtl_hardware *set, const char *name)
{
    const char *near = nearest_name(set, GTL_HW_KIND_COUNT, name);
    if (near) return gtl_say("no table has a row `%s`; did you mean `%s`?", name, near);
    return gtl_say("no table has a row `%s`; `gantline hardware` lists them all", name);
}

static int print(const gtl_document *document)
{
    char *text = gtl_write_text(document);
    if (!text) return gtl_say("out of memory");
    bool written = gtl_output_write(NULL, text, NULL);
    free(text);
    return written ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
}

/* `name` NULL: all rows. */
static int show(const gtl_hardware *set, const char *name)
{
    gtl_document document = {0};
    int status;
    if (!name) gtl_compose_hardware(&document, set);
    if (name && gtl_compose_hardware_named(&document, set, name) == 0)
        status = refuse_name(set, name);
    else
        status = print(&document);
    gtl_document_end(&document);
    return status;
}

int gtl_cmd_hardware(int count, char **arguments)
{
    gtl_arguments read;
    if (!gtl_read_arguments(count, arguments, "th", false, &read)) return gtl_say_try_help("hardware");
    if (read.help) return gtl_output_write(NULL, help, NULL) ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
    if (read.operand_count > 1) {
        gtl_say("one name at a time, please");
        return gtl_say_try_help("hardware");
    }
    gtl_hardware set = {0};
    bool well = gtl_read_tables(&set, &read) && check_materials(&set);
    int status = well ? show(&set, read.operand_count == 1 ? read.operands[0] : NULL) : GTL_EXIT_WRONG;
    gtl_hardware_end(&set);
    return status;
}
