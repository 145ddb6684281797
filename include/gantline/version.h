/* version.h - which gantline this is. */
#ifndef GANTLINE_VERSION_H
#define GANTLINE_VERSION_H

#include <gantline/fault.h>

#define GTL_VERSION "0.1.0"

/* The version of the library that runs, as GTL_VERSION was when it was built. Never freed. */
GTL_API const char *gtl_version(void);

#endif
