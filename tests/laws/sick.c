/* sick.c - rigs that have no answer are refused, with the part to blame and its line; rigs with a body that
 * may stay anywhere are answered, and say so.
 *
 * Each file of tests/laws/sick says in its head who is to blame (any one of those named) and words of the
 * reason; those of tests/laws/neutral need no more than to be there.
 *
 * usage: sick, at the top of the project */
#define _POSIX_C_SOURCE 200809L
#include <gantline/gantline.h>
#include <glob.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* So many rigs at least have to be there. */
enum { LEAST_SICK = 25, LEAST_NEUTRAL = 3 };

typedef struct rig_file {
    const char *name;
    char text[GTL_FILE_LIMIT];
    size_t size;
} rig_file;

static bool load(rig_file *f, const char *name)
{
    FILE *in = fopen(name, "rb");
    f->name = name;
    f->size = in ? fread(f->text, 1, sizeof f->text - 1, in) : 0;
    f->text[f->size] = '\0';
    if (in) fclose(in);
    return f->size > 0;
}

/* What the file's head says after `# KEY: `, up to the end of its line. */
static void expectation(const rig_file *f, const char *key, char *into, size_t size)
{
    char mark[32];
    snprintf(mark, sizeof mark, "# %s: ", key);
    const char *at = strstr(f->text, mark);
    at = at ? at + strlen(mark) : "";
    snprintf(into, size, "%.*s", (int)strcspn(at, "\n"), at);
}

/* The line of a section's header, 0 where there is none. */
static int header_line(const rig_file *f, const char *section)
{
    char header[80];
    int line = 1;
    snprintf(header, sizeof header, "[%s]\n", section);
    const char *at = strstr(f->text, header);
    for (const char *c = f->text; at && c < at; c++) line += *c == '\n';
    return at ? line : 0;
}

/* Whether one of the sections named is the one to blame, by its line and its name. */
static bool is_blamed(const rig_file *f, const char *sections, const gtl_sheet *sheet)
{
    char list[200];
    char *rest = NULL;
    snprintf(list, sizeof list, "%s", sections);
    for (char *section = strtok_r(list, ",", &rest); section; section = strtok_r(NULL, ",", &rest)) {
        char name[80];
        section += strspn(section, " ");
        const char *blank = strchr(section, ' ');
        snprintf(name, sizeof name, "`%s`", blank ? blank + 1 : section);
        if (header_line(f, section) == sheet->blame && sheet->blame > 0 && strstr(sheet->reason, name))
            return true;
    }
    return false;
}

static bool is_refused(const rig_file *f, gtl_status status, const gtl_sheet *sheet)
{
    char sections[200];
    char words[200];
    expectation(f, "refused", sections, sizeof sections);
    expectation(f, "words", words, sizeof words);
    bool refused =
        status == GTL_NO_ANSWER && words[0] && strstr(sheet->reason, words) && is_blamed(f, sections, sheet);
    if (refused) return true;
    printf("%s: wanted one of [%s] blamed, with the words `%s`\n", f->name, sections, words);
    if (status == GTL_OK)
        printf("    it was answered\n");
    else
        printf("    line %d: %s\n", sheet->blame, sheet->reason);
    return false;
}

static bool is_neutral(const rig_file *f, gtl_status status, const gtl_sheet *sheet)
{
    bool told = false;
    for (int i = 0; status == GTL_OK && i < sheet->warning_count; i++)
        told |= sheet->warnings[i].code == GTL_WARN_NEUTRAL;
    for (int i = 0; status == GTL_OK && i < sheet->outcome_count; i++)
        told = told && sheet->outcomes[i].possible && sheet->outcomes[i].state->neutral;
    if (!told)
        printf("%s: wanted an answer with a neutral body; line %d: %s\n", f->name, sheet->blame,
               sheet->reason);
    return told;
}

static bool try_rig(const char *name, bool (*judge)(const rig_file *, gtl_status, const gtl_sheet *))
{
    static rig_file f;
    gtl_fault_list faults;
    gtl_sheet sheet;
    gtl_faults_begin(&faults, name);
    gtl_rig *rig = load(&f, name) ? gtl_read_text(f.text, f.size, &faults) : NULL;
    bool passed = false;
    if (rig) {
        passed = judge(&f, gtl_rate(rig, &sheet), &sheet);
        gtl_sheet_end(&sheet);
    } else {
        printf("%s: not read: %s\n", name, faults.count > 0 ? faults.items[0].text : "no file");
    }
    gtl_rig_free(rig);
    gtl_faults_end(&faults);
    return passed;
}

static void try_folder(const char *pattern, int least, int *passed, int *failed,
                       bool (*judge)(const rig_file *, gtl_status, const gtl_sheet *))
{
    glob_t files;
    int count = glob(pattern, 0, NULL, &files) == 0 ? (int)files.gl_pathc : 0;
    for (int i = 0; i < count; i++) {
        bool well = try_rig(files.gl_pathv[i], judge);
        *passed += well;
        *failed += !well;
    }
    if (count < least) printf("%s: %d rigs, %d wanted\n", pattern, count, least);
    *failed += count < least;
    if (count > 0) globfree(&files);
}

int main(void)
{
    int passed = 0;
    int failed = 0;
    try_folder("tests/laws/sick/*.ini", LEAST_SICK, &passed, &failed, is_refused);
    try_folder("tests/laws/neutral/*.ini", LEAST_NEUTRAL, &passed, &failed, is_neutral);
    printf("sick: %d passed, %d failed\n", passed, failed);
    return failed > 0;
}
