/* words.c - names of rows and set-ups, counts and figures in a lab's sentences. */
#include "lab/compose.h"
#include "lab/plot.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

void gtl_lab_add_row(gtl_text *text, const gtl_lab_row *row, bool capital)
{
    gtl_text_add(text, "%cine %d", capital ? 'L' : 'l', row->line);
    if (row->group[0]) gtl_text_add(text, ", group %s", row->group);
}

void gtl_lab_add_name(gtl_text *text, const gtl_lab_set_up *set_up)
{
    if (set_up->parts > 0)
        gtl_text_add(text, "%s", gtl_lab_count(set_up->parts, "part").text);
    else
        gtl_text_add(text, "%s", set_up->name);
}

void gtl_lab_add_set_up(gtl_text *text, const gtl_lab *lab, int set_up, bool capital)
{
    gtl_text_add(text, "%cet-up %s (", capital ? 'S' : 's', gtl_letter_of(set_up).text);
    gtl_lab_add_name(text, &lab->set_ups[set_up]);
    gtl_text_add(text, ")");
}

gtl_figure gtl_lab_count(int count, const char *noun)
{
    gtl_figure figure;
    snprintf(figure.text, sizeof figure.text, "%d %.20s%s", count, noun, count == 1 ? "" : "s");
    return figure;
}

/* printf's point belongs to the locale, and may be more than one byte. */
gtl_figure gtl_lab_typed(double number)
{
    gtl_figure figure = {"-"};
    char digits[sizeof figure.text];
    if (!isfinite(number)) return figure;
    snprintf(digits, sizeof digits, "%.6g", number);
    size_t whole = strspn(digits, "-+e0123456789");
    size_t point = strcspn(digits + whole, "-+e0123456789");
    snprintf(figure.text, sizeof figure.text, "%.*s%s%.20s", (int)whole, digits, point > 0 ? "." : "",
             digits + whole + point);
    return figure;
}

gtl_figure gtl_lab_newtons(double newtons)
{
    return gtl_figure_after(gtl_lab_typed(newtons), "N");
}

const gtl_lab_finding *gtl_lab_bar(const gtl_lab *lab, const gtl_lab_row *row)
{
    for (int i = 0; i < row->finding_count; i++)
        if (lab->findings[row->first_finding + i].bars) return &lab->findings[row->first_finding + i];
    return NULL;
}

double gtl_lab_effort_coverage(const gtl_lab_row *row)
{
    return GTL_LAB_COVERAGE * row->reading / sqrt(3);
}
