/* version.c - see version.h. */
#include <gantline/version.h>

const char *gtl_version(void)
{
    return GTL_VERSION;
}
