/* lab_text.h - the text of a table of readings to what it comes to, for tests that then look at it. */
#ifndef UNIT_LAB_TEXT_H
#define UNIT_LAB_TEXT_H

#include <gantline/lab.h>

typedef struct lab_text {
    gtl_lab lab;
    gtl_fault_list faults;
    gtl_status status;
} lab_text;

/* The columns that most tests need: eight, the last two with the half-widths. */
#define LAB_PARTS                                                                                            \
    "parts,load [N],effort [N],load distance [m],effort distance [m],reading [N],distance reading [m]\n"
/* The same on a rig. */
#define LAB_RIG                                                                                              \
    "rig,load [N],effort [N],load distance [m],effort distance [m],reading [N],distance reading [m]\n"

/* Two rigs, invented. "three.ini": three parts, blocks without weight, 90 % each. "bare.ini": the same
 * without friction. Anything else is not there. */
extern const gtl_lab_source lab_rigs;

/* Read a table, with those rigs. The caller gives it back. */
lab_text read_lab(const char *text);
/* The same; it has to be sound. */
lab_text sound_lab(const char *text);
void lab_end(lab_text *read);

/* The whole list of faults has to be this text, `FILE:LINE: ...` a line, of the file "bench.csv". */
void assert_faults(const char *text, const char *wanted);

/* Whether a row, or, where it is -1, a set-up, has a finding of that code; `found` may be NULL. */
bool has_finding(const gtl_lab *lab, int row, int set_up, gtl_lab_code code, gtl_lab_finding *found);
/* A row has these findings and no others; ends with -1. */
void assert_findings(const lab_text *read, int row, const int *codes);

#endif
