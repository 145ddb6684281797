/* tables.h - hardware tables that a command line names. */
#ifndef CLI_TABLES_H
#define CLI_TABLES_H

#include "cli/cli.h"

#include <gantline/hardware.h>

/* Add the rows of the user's tables, then the shipped ones. False, and what is wrong said, if they cannot be
 * read. */
bool gtl_read_tables(gtl_hardware *set, const gtl_arguments *read);

#endif
