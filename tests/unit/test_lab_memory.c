/* test_lab_memory.c - tables of readings with each allocation failing in turn. */
#include "unit/failing_memory.h"
#include "unit/lab_text.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static const char sound[] =
    "group,state,parts," LAB_RIG "a,,2,,6,3.3,0.2,0.4,0.02,0.001\n"
    "b,held,,three.ini,6,2.2,0.2,0.6,0.02,0.001\nc,,,three.ini,6,2.2,0.2,0.6,0.02,0.001\n"
    "d,,,three.ini,9,3.3,0.2,0.6,0.02,0.001\ne,,,three.ini,7,1,0.2,0.6,0.02,0.001\n";
static const char faulty[] =
    "group,parts," LAB_RIG "a,2,,6,-1,0.2,0.4,0.02,0.001\nb,,broken.ini,6,2.2,0.2,x,1,2\n";

/* Read with the first `allowed` allocations granted; true once none was refused. */
static bool reads_with(const char *text, gtl_status wanted, long allowed)
{
    lab_text read;
    long before = blocks_alive();
    gtl_faults_begin(&read.faults, "bench.csv");
    allow_allocations(allowed);
    read.status = gtl_lab_read(text, strlen(text), &lab_rigs, &read.lab, &read.faults);
    bool refused = allow_all_allocations();
    assert_int_equal(read.status, refused ? GTL_NO_MEMORY : wanted);
    lab_end(&read);
    assert_int_equal(blocks_alive(), before);
    return !refused;
}

static void reading(void **state)
{
    (void)state;
    long allowed = 0;
    while (!reads_with(sound, GTL_OK, allowed)) allowed++;
    assert_true(allowed > 100);
    allowed = 0;
    while (!reads_with(faulty, GTL_FAULTY, allowed)) allowed++;
    assert_true(allowed > 10);
}

/* Of JSON only our own allocations are refused, and the text is jansson's: it is not counted. */
static void writing(void **state)
{
    (void)state;
    lab_text read = sound_lab(sound);
    bool refused = true;
    for (long allowed = 0; refused; allowed++) {
        allow_allocations(allowed);
        char *report = gtl_lab_report(&read.lab, GTL_JSON);
        refused = allow_all_allocations();
        assert_true((report == NULL) == refused);
        free(report);
    }
    lab_end(&read);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reading),
        cmocka_unit_test(writing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
