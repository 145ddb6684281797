/* hardware_rows.h - rows of the hardware tables as parts of a document. */
#ifndef CLI_HARDWARE_ROWS_H
#define CLI_HARDWARE_ROWS_H

#include "report/document.h"

#include <gantline/hardware.h>

/* Append all rows: those of each table of the user in turn, then the shipped ones, by kind. */
void gtl_compose_hardware(gtl_document *document, const gtl_hardware *set);

/* Append every row of that name in full; how many there are. */
int gtl_compose_hardware_named(gtl_document *document, const gtl_hardware *set, const char *name);

#endif
