/* rated.c - see rated.h. */
#include "unit/rated.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static gtl_rig *read_list(const char *format, va_list arguments)
{
    static char text[16384];
    int size = vsnprintf(text, sizeof text, format, arguments);
    assert_true(size > 0 && (size_t)size < sizeof text);
    gtl_fault_list faults;
    gtl_faults_begin(&faults, "test");
    gtl_rig *rig = gtl_read_text(text, (size_t)size, &faults);
    char *told = gtl_faults_text(&faults);
    gtl_faults_end(&faults);
    if (!rig) fail_msg("%s%s", told, text);
    free(told);
    return rig;
}

gtl_rig *read_sound(const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    gtl_rig *rig = read_list(format, arguments);
    va_end(arguments);
    return rig;
}

rated rate_sound(const char *format, ...)
{
    rated result;
    va_list arguments;
    va_start(arguments, format);
    result.rig = read_list(format, arguments);
    va_end(arguments);
    if (gtl_rate(result.rig, &result.sheet) != GTL_OK) fail_msg("no answer: %s", result.sheet.reason);
    return result;
}

void rated_end(rated *rig)
{
    gtl_sheet_end(&rig->sheet);
    gtl_rig_free(rig->rig);
}

const gtl_component *component_of(const rated *rig, const char *name)
{
    for (int i = 0; i < rig->sheet.component_count; i++)
        if (strcmp(rig->sheet.components[i].name, name) == 0) return &rig->sheet.components[i];
    fail_msg("no component %s", name);
    return NULL;
}

int thing_of(const gtl_rig *rig, const char *name)
{
    for (int i = 0; i < rig->thing_count; i++)
        if (strcmp(rig->things[i].name, name) == 0) return i;
    fail_msg("no thing %s", name);
    return -1;
}

double demand_of(const rated *rig, const char *name)
{
    return component_of(rig, name)->demand;
}

void assert_close(double value, double wanted)
{
    if (!(fabs(value - wanted) <= 1e-9 * fmax(fabs(value), fabs(wanted))))
        fail_msg("%.15g is not %.15g", value, wanted);
}
