/* gear_words.c - what is stated of a piece of gear beside its ratings, in words. */
#include "report/gear_words.h"

#include <math.h>

static void add_row(gtl_text *text, const char *words, const gtl_hardware_row *row)
{
    if (row) gtl_text_add(text, ", %s %s", words, row->name);
}

static void add_width(gtl_text *text, const gtl_print_units *units, const char *words, double metres)
{
    if (!isnan(metres)) gtl_text_add(text, ", %s %s", words, gtl_figure_width_unit(units, metres).text);
}

static void add_angle(gtl_text *text, const char *words, double radians)
{
    if (!isnan(radians)) gtl_text_add(text, ", %s %s deg", words, gtl_figure_degrees(radians).text);
}

static void add_share(gtl_text *text, const char *words, double share)
{
    if (!isnan(share)) gtl_text_add(text, ", %s leaves %s %%", words, gtl_figure_typed(100 * share).text);
}

/* The direction of a straight pull; only a fitting has one. */
static void add_axis(gtl_text *text, const gtl_gear *gear, int dim)
{
    if (!gear->fitting) return;
    gtl_text_add(text, ", axis %s", gtl_figure_typed(gear->axis[0]).text);
    for (int i = 1; i < dim; i++) gtl_text_add(text, ", %s", gtl_figure_typed(gear->axis[i]).text);
}

void gtl_gear_words(gtl_text *text, const gtl_print_units *units, const gtl_gear *gear, int dim)
{
    add_row(text, "hardware", gear->row);
    add_row(text, "material", gear->material);
    add_width(text, units, "diameter", gear->diameter);
    add_width(text, units, "sheave diameter", gear->sheave_diameter);
    add_width(text, units, "pin diameter", gear->pin_diameter);
    add_row(text, "knot", gear->knot);
    add_row(text, "termination", gear->termination);
    add_row(text, "hitch", gear->hitch);
    add_angle(text, "choke angle", gear->choke_angle);
    add_row(text, "fitting", gear->fitting);
    add_axis(text, gear, dim);
    add_angle(text, "side load", gear->side_load);
    add_share(text, "wear", gear->wear);
    add_share(text, "wet", gear->wet);
}
