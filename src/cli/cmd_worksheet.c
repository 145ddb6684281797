/* cmd_worksheet.c - `gantline worksheet`: a set of problems to sheets for a class, and their key. */
#include "cli/beside.h"
#include "cli/cli.h"

#include "base/text.h"

#include <gantline/read.h>
#include <gantline/worksheet.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char help[] =
    "usage: gantline worksheet [--seed N] [--students N] [-o FILE] [--key FILE] SET\n"
    "\n"
    "Makes problems for a class out of the set in the file SET (`-`: standard input):\n"
    "rigs, each with its drawing without the answers, with figures drawn from the\n"
    "ranges that the set gives, and room to work. It is a page of HTML, to print.\n"
    "\n"
    "      --seed N       which figures are drawn: the same number, the same sheets\n"
    "                     (left out: 1)\n"
    "      --students N   so many sheets, each with other figures (left out: 1)\n"
    "  -o, --output FILE  write the sheets to FILE, whole or not at all (`-` or left\n"
    "                     out: standard output)\n"
    "      --key FILE     write the key to a file of its own, with no answer left in\n"
    "                     the sheets; left out: the key follows the last sheet\n"
    "  -h, --help         print this\n"
    "\n";

static const char help_form[] =
    "\n"
    "A set, an INI file like a rig file; [problem NAME] as often as wanted:\n"
    "  [set]\n"
    "  title = TEXT                   heads the sheets\n"
    "  note = TEXT                    stands below it\n"
    "  [problem NAME]\n"
    "  rig = FILE                     a rig file, from the set's folder\n"
    "  ask = WHAT, WHAT               what is asked, or\n"
    "  mistake = WORD                 a solution with this mistake, to be found\n"
    "  vary NAME KEY = 20 kg to 60 kg step 5 kg\n"
    "                                 a figure of the rig that is drawn; also\n"
    "                                 = 80 % or 90 %, and `vary rig KEY` for [rig]\n"
    "  lift = 0.5 m                   how far the load rises; may be a range too\n"
    "  text = TEXT                    words for the students\n"
    "  room = 5                       lines to write on\n"
    "\n"
    "Exit status: 0; 2 if the set, a rig or the command line is wrong, a figure of a\n"
    "range has no answer, or a file could not be written; standard error says\n"
    "FILE:LINE: what is wrong and how to mend it.\n"
    "\n"
    "The figures are arithmetic on the numbers typed in, no approval.\n";

static void add_words(gtl_text *text, const char *head, const gtl_set_word *(*at)(size_t))
{
    const gtl_set_word *row;
    gtl_text_add(text, "%s\n", head);
    for (size_t i = 0; (row = at(i)); i++) gtl_text_add(text, "  %s\n      %s\n", row->word, row->meaning);
}

static int print_help(void)
{
    gtl_text text = {0};
    gtl_text_add(&text, "%s", help);
    add_words(&text, "What `ask` may name:", gtl_ask_at);
    add_words(&text, "What `mistake` may name:", gtl_mistake_at);
    gtl_text_add(&text, "%s", help_form);
    char *whole = gtl_text_take(&text);
    if (!whole) return gtl_say("out of memory");
    bool written = gtl_output_write(NULL, whole, NULL);
    free(whole);
    return written ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
}

/* What is to be made of one set. */
typedef struct gtl_job {
    gtl_worksheet_wish wish;
    const char *output; /* NULL: standard output */
    const char *key;    /* NULL: behind the sheets */
    const gtl_input *input;
    gtl_beside beside;
} gtl_job;

/* --- the rigs that the set names --- */

/* A gtl_set_opener. */
static bool open_rig(void *context, const char *name, gtl_set_file *file, char why[GTL_UNREADABLE_SIZE])
{
    gtl_job *job = context;
    const char *path = gtl_beside_path(&job->beside, name);
    gtl_input input = {0};
    const char *problem = path ? gtl_input_try(&input, path) : "out of memory";
    *file = (gtl_set_file){0};
    if (!problem) {
        file->name = gtl_text_copy(path, strlen(path));
        file->text = gtl_text_copy(input.text, input.size);
        file->size = input.size;
        if (!file->name || !file->text) problem = "out of memory";
    }
    snprintf(why, GTL_UNREADABLE_SIZE, "%s", problem ? problem : "");
    gtl_input_end(&input);
    return !problem;
}

/* --- output --- */

/* Neither file may be one that was read. */
static bool spares_all(const gtl_job *job, const char *path)
{
    return gtl_output_spares(path, job->input) && gtl_beside_spares(&job->beside, path, "a rig of the set");
}

/* The key is written first: sheets without one would be found out too late. */
static bool write_pages(const gtl_job *job, const gtl_worksheets *made)
{
    if (!spares_all(job, job->output) || !spares_all(job, job->key)) return false;
    if (job->key && !gtl_output_write(job->key, made->key, job->input)) return false;
    /* Two names may still be one file. */
    const gtl_input key = {.path = job->key, .name = job->key, .what = "the key"};
    if (job->key && strcmp(job->key, "-") != 0 && !gtl_output_spares(job->output, &key)) return false;
    return gtl_output_write(job->output, made->sheets, job->input);
}

static int print(const gtl_set *set, const gtl_job *job, gtl_fault_list *faults)
{
    gtl_worksheets made;
    gtl_status status = gtl_worksheet(set, &job->wish, &made, faults);
    int result = GTL_EXIT_WRONG;
    if (status == GTL_OK) {
        result = write_pages(job, &made) ? GTL_EXIT_WITHIN : GTL_EXIT_WRONG;
        if (result == GTL_EXIT_WITHIN && made.least_sets > 0)
            gtl_say(
                "note: a problem has %d set%s of figures for %d students, so that some share theirs; the key "
                "says which",
                made.least_sets, made.least_sets == 1 ? "" : "s", job->wish.students);
    } else if (status == GTL_FAULTY) {
        result = gtl_say_faults(faults);
    } else {
        gtl_say("out of memory");
    }
    gtl_worksheets_end(&made);
    return result;
}

static int read_and_print(gtl_job *job)
{
    gtl_fault_list faults;
    gtl_faults_begin(&faults, job->input->name);
    gtl_set *set = gtl_set_read(job->input->text, job->input->size, open_rig, job, &faults);
    int status = set ? print(set, job, &faults) : gtl_say_faults(&faults);
    gtl_set_free(set);
    gtl_faults_end(&faults);
    return status;
}

/* --- the command line --- */

/* A whole number from `least` to `most`. */
static bool read_number(const char *option, const char *text, uint64_t least, uint64_t most, uint64_t *number)
{
    size_t digits = strspn(text, "0123456789");
    bool whole = digits > 0 && digits <= 18 && text[digits] == '\0';
    *number = 0;
    for (size_t i = 0; whole && i < digits; i++) *number = 10 * *number + (uint64_t)(text[i] - '0');
    if (whole && *number >= least && *number <= most) return true;
    if (most > GTL_MOST_STUDENTS)
        gtl_say("%s: `%s` is no whole number of up to 18 digits; write %s 7", option, text, option);
    else
        gtl_say("%s: `%s` is no whole number from %d to %d; write %s 25", option, text, (int)least, (int)most,
                option);
    return false;
}

/* A page is HTML; a name that says otherwise is a slip. */
static bool check_ending(const char *path)
{
    static const char *const others[] = {".txt", ".json", ".csv", ".svg", ".ini", ".pdf"};
    const char *dot = path ? strrchr(path, '.') : NULL;
    for (size_t i = 0; dot && i < sizeof others / sizeof *others; i++) {
        if (gtl_text_compare(dot, others[i]) != 0) continue;
        gtl_say("sheets and key are pages of HTML, not what the ending of %s says; name it .html", path);
        return false;
    }
    return true;
}

/* Two outputs at one place would leave one of them. */
static bool check_places(const gtl_arguments *read)
{
    bool sheets = read->output && strcmp(read->output, "-") != 0;
    bool key = read->key && strcmp(read->key, "-") != 0;
    if (!read->key) return true;
    if (sheets != key || (sheets && strcmp(read->output, read->key) != 0)) return true;
    gtl_say("sheets and key would be written to one place; leave out --key to have both in one page");
    return false;
}

static bool understand(const gtl_arguments *read, gtl_job *job)
{
    uint64_t students = 1, seed = 1;
    if (read->seed && !read_number("--seed", read->seed, 0, UINT64_MAX, &seed)) return false;
    if (read->students && !read_number("--students", read->students, 1, GTL_MOST_STUDENTS, &students))
        return false;
    if (!check_ending(read->output) || !check_ending(read->key) || !check_places(read)) return false;
    *job = (gtl_job){.wish = {.seed = seed, .students = (int)students, .together = !read->key},
                     .output = read->output,
                     .key = read->key};
    if (read->operand_count == 1) return true;
    gtl_say(read->operand_count == 0 ? "which set of problems? (`-` reads standard input)"
                                     : "one set at a time, please");
    return false;
}

int gtl_cmd_worksheet(int count, char **arguments)
{
    gtl_arguments read;
    gtl_job job;
    if (!gtl_read_arguments(count, arguments, "enokh", false, &read)) return gtl_say_try_help("worksheet");
    if (read.help) return print_help();
    if (!understand(&read, &job)) return gtl_say_try_help("worksheet");
    gtl_input input;
    int status = GTL_EXIT_WRONG;
    if (gtl_input_read(&input, read.operands[0])) {
        input.what = "the set";
        job.input = job.beside.input = &input;
        status = read_and_print(&job);
    }
    gtl_beside_end(&job.beside);
    gtl_input_end(&input);
    return status;
}
