/* lab_text.c - see lab_text.h. */
#include "unit/lab_text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#define THREE(efficiency)                                                                                    \
    "[anchor post]\nat = 0.8 m\n[block top]\non = post\n" efficiency "[block low]\nat = 0.3 m\n" efficiency  \
    "[load mass]\non = low\nmass = 1 kg\n[hand scale]\nat = 0.7 m\n[rope cord]\npath = low, top, low, "      \
    "scale\n"

static gtl_rig *give_rig(void *context, const char *name, gtl_fault_list *faults)
{
    static const struct {
        const char *name;
        const char *text;
    } rigs[] = {
        {"three.ini", THREE("efficiency = 90 %\n")},
        {"bare.ini", THREE("")},
        {"ranged.ini",
         "[anchor post]\nat = 3 m\n[block wheel]\non = post\nefficiency = 88 .. 94 %\n[load mass]\n"
         "at = 0 m\nmass = 1 kg\n[hand pupil]\nat = 1 m\n[rope line]\npath = mass, wheel, pupil\n"},
        {"idle.ini", "[anchor post]\nat = 1 m\n[load mass]\nat = 0 m\nmass = 1 kg\n[rope tie]\npath = post, "
                     "mass\n"},
        {"broken.ini", "[anchor post]\nat = 1 furlong\n"},
    };
    (void)context;
    gtl_faults_begin(faults, name);
    for (size_t i = 0; i < sizeof rigs / sizeof *rigs; i++)
        if (strcmp(rigs[i].name, name) == 0) return gtl_read_text(rigs[i].text, strlen(rigs[i].text), faults);
    gtl_faults_add(faults, 0, "there is no such file");
    return NULL;
}

const gtl_lab_source lab_rigs = {give_rig, NULL};

lab_text read_lab(const char *text)
{
    lab_text read;
    gtl_faults_begin(&read.faults, "bench.csv");
    read.status = gtl_lab_read(text, strlen(text), &lab_rigs, &read.lab, &read.faults);
    return read;
}

lab_text sound_lab(const char *text)
{
    lab_text read = read_lab(text);
    char *faults = gtl_faults_text(&read.faults);
    if (read.status != GTL_OK) print_error("%s\n", faults);
    free(faults);
    assert_int_equal(read.status, GTL_OK);
    return read;
}

void lab_end(lab_text *read)
{
    gtl_lab_end(&read->lab);
    gtl_faults_end(&read->faults);
}

void assert_faults(const char *text, const char *wanted)
{
    lab_text read = read_lab(text);
    char *faults = gtl_faults_text(&read.faults);
    assert_string_equal(faults, wanted);
    assert_int_equal(read.status, GTL_FAULTY);
    free(faults);
    lab_end(&read);
}

bool has_finding(const gtl_lab *lab, int row, int set_up, gtl_lab_code code, gtl_lab_finding *found)
{
    for (int i = 0; i < lab->finding_count; i++) {
        const gtl_lab_finding *finding = &lab->findings[i];
        if (finding->code != code || finding->row != row || (row < 0 && finding->set_up != set_up)) continue;
        if (found) *found = *finding;
        return true;
    }
    return false;
}

void assert_findings(const lab_text *read, int row, const int *codes)
{
    const gtl_lab_row *r = &read->lab.rows[row];
    int count = 0;
    for (; codes[count] >= 0; count++) {
        if (count >= r->finding_count)
            fail_msg("row %d lacks %s", row, gtl_lab_code_name((gtl_lab_code)codes[count]));
        const gtl_lab_finding *finding = &read->lab.findings[r->first_finding + count];
        assert_string_equal(gtl_lab_code_name(finding->code), gtl_lab_code_name((gtl_lab_code)codes[count]));
        assert_int_equal(finding->row, row);
    }
    if (r->finding_count > count)
        fail_msg("row %d has %s", row, gtl_lab_code_name(read->lab.findings[r->first_finding + count].code));
}
