/* gantline.h - the whole library.
 *
 * A complete program: read a rig, work it, print the report.
 *
 *     #include <gantline/gantline.h>
 *     #include <stdio.h>
 *     #include <stdlib.h>
 *     #include <string.h>
 *
 *     int main(void)
 *     {
 *         const char *text = "[anchor beam]\nat = 3 m\n"
 *                            "[block tail]\nat = 1 m\nefficiency = 90 %\n"
 *                            "[load crate]\non = tail\nmass = 20 kg\n"
 *                            "[hand crew]\nat = 2.5 m\n"
 *                            "[rope fall]\npath = beam, tail, crew\n";
 *         gtl_fault_list faults;
 *         gtl_faults_begin(&faults, "example");
 *         gtl_rig *rig = gtl_read_text(text, strlen(text), &faults);
 *         gtl_sheet sheet;
 *         if (rig && gtl_rate(rig, &sheet) == GTL_OK) {
 *             char *report = gtl_report(&sheet, GTL_TEXT);
 *             puts(report ? report : "no memory");
 *             free(report);
 *         }
 *         if (rig) gtl_sheet_end(&sheet);
 *         gtl_rig_free(rig);
 *         gtl_faults_end(&faults);
 *     }
 */
#ifndef GANTLINE_H
#define GANTLINE_H

#include <gantline/explain.h>
#include <gantline/fault.h>
#include <gantline/hardware.h>
#include <gantline/lab.h>
#include <gantline/limit.h>
#include <gantline/rate.h>
#include <gantline/read.h>
#include <gantline/report.h>
#include <gantline/rig.h>
#include <gantline/solve.h>
#include <gantline/timber.h>
#include <gantline/units.h>
#include <gantline/version.h>
#include <gantline/worksheet.h>

#endif
