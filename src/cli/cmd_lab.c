/* cmd_lab.c - `gantline lab`: a table of what a class measured to work, advantage, efficiency and findings.
 */
#include "cli/beside.h"
#include "cli/cli.h"

#include "base/text.h"
#include "report/wrap.h"
#include "report/write.h"

#include <gantline/lab.h>
#include <gantline/read.h>
#include <stdlib.h>
#include <string.h>

static const char help[] = "usage: gantline lab [--as FORM] [-o FILE] DATA.csv\n"
                           "\n"
                           "Works out what a class measured on blocks and tackles: work in and out,\n"
                           "advantage by distances and by forces, efficiency with its uncertainty, what was\n"
                           "to be expected of the set-up, the efficiency per sheave that fits the readings,\n"
                           "and what looks wrong.\n"
                           "DATA.csv is a table (`-`: standard input), one row a reading, fields divided by\n"
                           "commas, or by semicolons where the first line has no comma.\n"
                           "\n"
                           "      --as FORM      text, for reading and printing\n"
                           "                     html, one page with plots, to print and hand out\n"
                           "                     csv, every figure in one table for a spreadsheet\n"
                           "                     json, for programs\n"
                           "                     left out: as the ending of FILE tells, else text\n"
                           "  -o, --output FILE  write to FILE, whole or not at all (`-`: standard output)\n"
                           "  -h, --help         print this\n"
                           "\n"
                           "Columns, in any order; the first line names them, each with its unit in square\n"
                           "brackets. A mass where a force is wanted is taken times 9.80665 m/s2, and told.\n"
                           "\n";

static const char help_end[] =
    "\n"
    "Exit status:\n"
    "  0  every row was read and worked out; findings do not change it\n"
    "  2  the table, a rig file that it names or the command line is wrong, or the\n"
    "     report could not be written; standard error says FILE:LINE: what is wrong\n"
    "     and how to mend it, and nothing is worked out\n"
    "\n"
    "The figures are arithmetic on the numbers typed in, no approval.\n";

/* Where the meanings of the columns begin. */
#define MEANING_INDENT 6

static void add_column(gtl_text *text, const gtl_lab_column_help *column)
{
    gtl_wrap wrap = {.column = MEANING_INDENT, .indent = MEANING_INDENT, .width = GTL_TEXT_WIDTH};
    gtl_text words = {0};
    gtl_text_add(&words, "%s", column->meaning);
    if (column->unit[0]) gtl_text_add(&words, ". Units: %s", column->unit);
    char *whole = gtl_text_take(&words);
    if (!whole) text->failed = true;
    gtl_text_add(text, "  %s (%s)\n", column->example, column->need);
    gtl_wrap_indent(text, MEANING_INDENT);
    gtl_wrap_words(text, whole ? whole : "", &wrap);
    free(whole);
}

static int print_help(void)
{
    gtl_text text = {0};
    const gtl_lab_column_help *column;
    gtl_text_add(&text, "%s", help);
    for (size_t i = 0; (column = gtl_lab_column_at(i)); i++) add_column(&text, column);
    gtl_text_add(&text, "%s", help_end);
    char *whole = gtl_text_take(&text);
    if (!whole) return gtl_say("out of memory");
    bool written = gtl_output_write(NULL, whole, NULL);
    free(whole);
    return written ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
}

/* --- the rigs that the table names --- */

static gtl_rig *read_rig(void *context, const char *name, gtl_fault_list *faults)
{
    const char *path = gtl_beside_path(context, name);
    gtl_faults_begin(faults, path ? path : name);
    if (!path) {
        faults->out_of_memory = true;
        return NULL;
    }
    gtl_input input;
    const char *why = gtl_input_try(&input, path);
    gtl_rig *rig = NULL;
    if (!input.text)
        faults->out_of_memory = true;
    else if (why)
        gtl_faults_add(faults, 0, "cannot be read: %s; a rig is looked for in the folder of the table", why);
    else
        rig = gtl_read_text(input.text, input.size, faults);
    gtl_input_end(&input);
    return rig;
}

/* --- the command --- */

static int print(const gtl_lab *lab, gtl_form form, const char *output, const gtl_beside *rigs)
{
    if (!gtl_beside_spares(rigs, output, "a rig of the table")) return GTL_EXIT_WRONG;
    char *report = gtl_lab_report(lab, form);
    if (!report) return gtl_say("out of memory");
    bool written = gtl_output_write(output, report, rigs->input);
    free(report);
    return written ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
}

static int read_and_work(const gtl_input *table, gtl_form form, const char *output)
{
    gtl_beside rigs = {.input = table};
    const gtl_lab_source source = {read_rig, &rigs};
    gtl_fault_list faults;
    gtl_lab lab;
    gtl_faults_begin(&faults, table->name);
    gtl_status status = gtl_lab_read(table->text, table->size, &source, &lab, &faults);
    int result = GTL_EXIT_WRONG;
    if (status == GTL_OK)
        result = print(&lab, form, output, &rigs);
    else if (status == GTL_NO_MEMORY && !faults.out_of_memory)
        gtl_say("out of memory");
    else
        gtl_say_faults(&faults);
    gtl_lab_end(&lab);
    gtl_faults_end(&faults);
    gtl_beside_end(&rigs);
    return result;
}

/* A drawing of a rig there is none of: the page has the plots. */
static bool choose_form(const gtl_arguments *read, gtl_form *form)
{
    bool chosen = gtl_choose_form(read, form);
    if (chosen && *form == GTL_SVG) gtl_say("`lab` writes no svg; write --as text, html, csv or json");
    return chosen && *form != GTL_SVG;
}

int gtl_cmd_lab(int count, char **arguments)
{
    gtl_arguments read;
    gtl_form form;
    if (!gtl_read_arguments(count, arguments, "aoh", false, &read)) return gtl_say_try_help("lab");
    if (read.help) return print_help();
    if (!choose_form(&read, &form)) return gtl_say_try_help("lab");
    if (read.operand_count != 1) {
        gtl_say(read.operand_count == 0 ? "which table of readings? (`-` reads standard input)"
                                        : "one table of readings at a time, please");
        return gtl_say_try_help("lab");
    }
    gtl_input table;
    int status = GTL_EXIT_WRONG;
    if (gtl_input_read(&table, read.operands[0])) {
        table.what = "the table of readings";
        status = read_and_work(&table, form, read.output);
    }
    gtl_input_end(&table);
    return status;
}
