/* cmd_timber.c - `gantline timber`: what one piece of green wood weighs. */
#include "cli/cli.h"

#include "base/suggest.h"
#include "base/text.h"
#include "cli/tables.h"
#include "read/keys.h"
#include "read/typed_timber.h"

#include <gantline/gantline.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char help[] =
    "usage: gantline timber [OPTION]... SPECIES LENGTH DIAMETER\n"
    "       gantline timber [OPTION]... --density DENSITY LENGTH DIAMETER\n"
    "\n"
    "Works out what a piece of green wood weighs: its volume by the formula that fits\n"
    "what was measured, the density of its species with its spread, its mass at both\n"
    "ends of that, and what is not in these figures.\n"
    "\n"
    "  SPECIES   a green-wood row of the hardware tables: \"northern red oak\"\n"
    "  LENGTH    \"2 m\", \"16 ft\"\n"
    "  DIAMETER  \"40 cm\" halfway along, \"45 cm, 35 cm\" at both ends, or\n"
    "            \"45 cm, 40 cm, 35 cm\" at an end, halfway and at the other end\n"
    "\n"
    "      --bark THICKNESS   the diameters were measured under bark of that thickness;\n"
    "                         left out: over the bark\n"
    "      --density DENSITY  instead of SPECIES: \"1030 kg/m3\", \"64 lb/ft3\", or a\n"
    "                         range: \"860 kg/m3 .. 1190 kg/m3\"\n"
    "      --tables FILE      look in a table of your own first (`-`: standard input);\n"
    "                         may be given several times\n"
    "      --units UNITS      metric (the default) or us\n"
    "      --as FORM          text (the default) or json\n"
    "  -o, --output FILE      write to FILE, whole or not at all (`-`: standard output)\n"
    "  -h, --help             print this\n"
    "\n"
    "Exit status: 0; 2 if the command line or a table is wrong, no table has the\n"
    "species, or nothing could be written.\n"
    "\n"
    "Plan with the heavy end. Its figures are arithmetic on the numbers typed in.\n";

/* What a command line asks for. */
typedef struct wish {
    gtl_timber timber;
    const char *species; /* as typed; NULL: a density was */
    gtl_form form;
    bool us_units;
} wish;

/* One quantity, more than 0; false, and said. */
static bool read_quantity(const char *what, const char *text, gtl_quantity quantity, double *value)
{
    char why[GTL_WHY_SIZE];
    if (!gtl_parse_quantity(text, quantity, GTL_STANDARD_GRAVITY, value, NULL, why)) {
        gtl_say("%s: %s", what, why);
        return false;
    }
    if (*value > 0) return true;
    gtl_say("%s: `%s` is out of range; it has to be more than 0", what, text);
    return false;
}

static bool read_one_density(const char *text, double *value)
{
    if (!read_quantity("--density", text, GTL_DENSITY, value)) return false;
    if (*value >= GTL_WOOD_LIGHTEST && *value <= GTL_WOOD_SUBSTANCE) return true;
    gtl_say("--density: `%s` is out of range; it has to be " GTL_WOOD_WORDS, text);
    return false;
}

/* One figure, or two with dots between them. */
static bool read_density(const char *text, double typed[2])
{
    const char *dots = strstr(text, "..");
    if (!dots) {
        bool well = read_one_density(text, &typed[0]);
        typed[1] = typed[0];
        return well;
    }
    char *low = gtl_text_copy(text, (size_t)(dots - text));
    bool well = low && read_one_density(low, &typed[0]) && read_one_density(dots + 2, &typed[1]);
    if (!low) gtl_say("out of memory");
    free(low);
    if (!well || typed[0] < typed[1]) return well;
    gtl_say(
        "--density: a range runs from the smaller end to the greater; turn it round, or write one number");
    return false;
}

static bool read_measured(const gtl_arguments *read, const char *length, const char *diameter, wish *job)
{
    char why[GTL_TYPED_WHY];
    gtl_timber *timber = &job->timber;
    timber->bark = NAN;
    bool well = read_quantity("LENGTH", length, GTL_LENGTH, &timber->length);
    if (!gtl_typed_diameters(diameter, timber->diameters, &timber->diameter_count, why)) {
        gtl_say("DIAMETER: %s", why);
        well = false;
    }
    if (read->bark && !read_quantity("--bark", read->bark, GTL_LENGTH, &timber->bark)) well = false;
    if (read->density && !read_density(read->density, timber->typed)) well = false;
    return well;
}

static bool choose_units(const gtl_arguments *read, bool *us_units)
{
    *us_units = read->units && gtl_text_compare(read->units, "us") == 0;
    if (!read->units || *us_units || gtl_text_compare(read->units, "metric") == 0) return true;
    gtl_say("there are no units `%s`; write --units metric or --units us", read->units);
    return false;
}

static bool choose_form(const gtl_arguments *read, gtl_form *form)
{
    if (!gtl_choose_form(read, form)) return false;
    if (*form == GTL_TEXT || *form == GTL_JSON) return true;
    gtl_say("timber is told as text or json; write --as text or --as json");
    return false;
}

/* The job of a command line, all but the species' row; false, and said, if it is wrong. */
static bool understand(const gtl_arguments *read, wish *job)
{
    int wanted = read->density ? 2 : 3;
    *job = (wish){.species = read->density ? NULL : read->operands[0]};
    if (read->operand_count != wanted) {
        gtl_say("%s, please, and no more: quote each, such as %s\"2 m\" \"45 cm, 35 cm\"",
                read->density ? "length and diameter" : "species, length and diameter",
                read->density ? "" : "\"white oak\" ");
        return false;
    }
    bool well = read_measured(read, read->operands[wanted - 2], read->operands[wanted - 1], job);
    return choose_units(read, &job->us_units) && choose_form(read, &job->form) && well;
}

/* The species whose name holds the word or is near to it; NULL for none. */
static const char *nearest(const gtl_hardware *set, const char *name)
{
    gtl_suggestion near = {.wanted = gtl_word_of(name), .best = -1};
    for (int i = 0; i < set->row_count; i++)
        if (set->rows[i].kind == GTL_HW_GREEN_WOOD) gtl_suggest_try(&near, gtl_word_of(set->rows[i].name), i);
    for (int i = 0; i < set->row_count; i++)
        if (set->rows[i].kind == GTL_HW_GREEN_WOOD)
            gtl_suggest_whole(&near, gtl_word_of(set->rows[i].name), i);
    return near.best < 0 ? NULL : set->rows[near.best].name;
}

static bool find_species(const gtl_hardware *set, wish *job)
{
    char name[GTL_LINE_LIMIT + 1];
    char excerpt[GTL_EXCERPT_SIZE];
    if (!gtl_typed_species(gtl_word_of(job->species), name)) {
        gtl_say("SPECIES: `%s` is no name of a species; write one such as \"white oak\"",
                gtl_excerpt(gtl_word_of(job->species), excerpt));
        return false;
    }
    job->timber.row = gtl_hardware_find(set, GTL_HW_GREEN_WOOD, name);
    if (job->timber.row) return true;
    const char *near = nearest(set, name);
    gtl_excerpt(gtl_word_of(name), excerpt);
    if (near)
        gtl_say("no table has a [green-wood %s]; did you mean `%s`?", excerpt, near);
    else
        gtl_say(
            "no table has a [green-wood %s]; `gantline hardware` lists all rows, a table of your own adds "
            "more, and --density does without",
            excerpt);
    return false;
}

/* Whether the output is none of the tables; false, and said. */
static bool spares_tables(const gtl_arguments *read)
{
    bool spares = true;
    for (int i = 0; i < read->table_count && spares; i++) {
        gtl_input table = {.path = read->tables[i], .name = read->tables[i], .what = "the table"};
        if (strcmp(table.path, "-") != 0) spares = gtl_output_spares(read->output, &table);
    }
    return spares;
}

static int print(wish *job, const char *output)
{
    gtl_timber_work(&job->timber);
    char *report = gtl_timber_report(&job->timber, job->form, job->us_units);
    if (!report) return gtl_say("out of memory");
    bool written = gtl_output_write(output, report, NULL);
    free(report);
    return written ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
}

int gtl_cmd_timber(int count, char **arguments)
{
    gtl_arguments read;
    wish job;
    if (!gtl_read_arguments(count, arguments, "atobduh", false, &read)) return gtl_say_try_help("timber");
    if (read.help) return gtl_output_write(NULL, help, NULL) ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
    if (!understand(&read, &job)) return gtl_say_try_help("timber");
    if (!spares_tables(&read)) return GTL_EXIT_WRONG;
    gtl_hardware set = {0};
    bool well = gtl_read_tables(&set, &read) && (!job.species || find_species(&set, &job));
    int status = well ? print(&job, read.output) : GTL_EXIT_WRONG;
    gtl_hardware_end(&set);
    return status;
}
