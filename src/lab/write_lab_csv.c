/* write_lab_csv.c - a lab as one flat table for a spreadsheet: a record a row of readings, then one a set-up;
 * SI, unrounded. docs/lab.md describes the columns. A number that is none is an empty field. */
#include "base/text.h"
#include "lab/compose.h"
#include "lab/plot.h"
#include "lab/write_lab.h"
#include "report/csv.h"

#include <math.h>
#include <stdlib.h>

static const char *const words_heads[] = {"record", "line", "group", "set-up", "rig", "parts", "counts"};

static const char *const heads[] = {"load [N]",
                                    "effort as read [N]",
                                    "effort [N]",
                                    "load distance [m]",
                                    "effort distance [m]",
                                    "reading [N]",
                                    "distance reading [m]",
                                    "moving weight [N]",
                                    "scale weight [N]",
                                    "work in [J]",
                                    "work out [J]",
                                    "ideal advantage [1]",
                                    "ideal advantage u [1]",
                                    "measured advantage [1]",
                                    "measured advantage u [1]",
                                    "efficiency [1]",
                                    "efficiency u [1]",
                                    "efficiency school [1]",
                                    "efficiency with all raised [1]",
                                    "predicted effort [N]",
                                    "predicted least [N]",
                                    "predicted most [N]",
                                    "rows [1]",
                                    "rows that count [1]",
                                    "efficiency mean [1]",
                                    "efficiency spread [1]",
                                    "sheave efficiency [1]",
                                    "sheave efficiency u [1]"};

#define NUMBER_COUNT (sizeof heads / sizeof *heads)
/* How many of them are of a row; the others are of a set-up. */
#define ROW_NUMBERS 22

static void put_heads(gtl_text *out)
{
    for (size_t i = 0; i < sizeof words_heads / sizeof *words_heads; i++) {
        gtl_csv_text(out, words_heads[i]);
        gtl_csv_comma(out);
    }
    for (size_t i = 0; i < NUMBER_COUNT; i++) {
        gtl_csv_text(out, heads[i]);
        gtl_csv_comma(out);
    }
    gtl_csv_text(out, "findings");
    gtl_csv_end(out);
}

static void put_numbers(gtl_text *out, const double *numbers, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        gtl_csv_number(out, numbers[i]);
        gtl_csv_comma(out);
    }
}

static void put_none(gtl_text *out, size_t count)
{
    for (size_t i = 0; i < count; i++) gtl_csv_comma(out);
}

/* Codes, a blank between each two. */
static void put_findings(gtl_text *out, const gtl_lab *lab, int first, int count)
{
    gtl_text codes = {0};
    gtl_text_add(&codes, "%s", "");
    for (int i = 0; i < count; i++)
        gtl_text_add(&codes, "%s%s", i > 0 ? " " : "", gtl_lab_code_name(lab->findings[first + i].code));
    char *whole = gtl_text_take(&codes);
    if (whole)
        gtl_csv_text(out, whole);
    else
        out->failed = true;
    free(whole);
    gtl_csv_end(out);
}

static void put_set_up_names(gtl_text *out, const gtl_lab *lab, int index)
{
    const gtl_lab_set_up *one = &lab->set_ups[index];
    gtl_csv_text(out, gtl_letter_of(index).text);
    gtl_csv_comma(out);
    gtl_csv_text(out, one->name);
    gtl_csv_comma(out);
    gtl_csv_number(out, one->parts > 0 ? (double)one->parts : (double)NAN);
    gtl_csv_comma(out);
}

static void put_row(gtl_text *out, const gtl_lab *lab, const gtl_lab_row *row)
{
    const double numbers[ROW_NUMBERS] = {row->load,
                                         row->effort_read,
                                         row->effort,
                                         row->load_distance,
                                         row->effort_distance,
                                         row->reading,
                                         row->distance_reading,
                                         row->moving_weight,
                                         row->scale_weight,
                                         row->work_in,
                                         row->work_out,
                                         row->ideal_advantage,
                                         row->ideal_advantage_u,
                                         row->measured_advantage,
                                         row->measured_advantage_u,
                                         row->efficiency,
                                         row->efficiency_u,
                                         row->efficiency_school,
                                         row->efficiency_all,
                                         row->predicted_effort,
                                         row->predicted_least,
                                         row->predicted_most};
    gtl_csv_text(out, "row");
    gtl_csv_comma(out);
    gtl_csv_number(out, row->line);
    gtl_csv_comma(out);
    gtl_csv_text(out, row->group);
    gtl_csv_comma(out);
    put_set_up_names(out, lab, row->set_up);
    gtl_csv_text(out, row->counted ? "yes" : "no");
    gtl_csv_comma(out);
    put_numbers(out, numbers, ROW_NUMBERS);
    put_none(out, NUMBER_COUNT - ROW_NUMBERS);
    put_findings(out, lab, row->first_finding, row->finding_count);
}

static void put_set_up(gtl_text *out, const gtl_lab *lab, int index)
{
    const gtl_lab_set_up *one = &lab->set_ups[index];
    const double numbers[NUMBER_COUNT - ROW_NUMBERS] = {one->row_count,         one->counted,
                                                        one->efficiency_mean,   one->efficiency_spread,
                                                        one->sheave_efficiency, one->sheave_efficiency_u};
    gtl_csv_text(out, "set-up");
    put_none(out, 3);
    put_set_up_names(out, lab, index);
    put_none(out, 1 + ROW_NUMBERS);
    put_numbers(out, numbers, NUMBER_COUNT - ROW_NUMBERS);
    put_findings(out, lab, one->first_finding, one->finding_count);
}

char *gtl_write_lab_csv(const gtl_lab *lab)
{
    gtl_text out = {0};
    put_heads(&out);
    for (int i = 0; i < lab->row_count; i++) put_row(&out, lab, &lab->rows[i]);
    for (int i = 0; i < lab->set_up_count; i++) put_set_up(&out, lab, i);
    return gtl_text_take(&out);
}
