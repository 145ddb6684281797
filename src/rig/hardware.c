/* hardware.c - rows of the hardware tables as data: their words, how one is found, what it leaves of a
 * rating. */
#include "rig/hardware.h"

#include "base/text.h"

#include <math.h>
#include <stdlib.h>

/* An angle or a ratio this near to an edge, relative to it, lies on the edge: a rounding in the geometry must
 * not decide which step counts. */
#define EDGE_SLACK 1e-9

const char *gtl_hardware_kind_name(gtl_hardware_kind kind)
{
    static const char *const names[GTL_HW_KIND_COUNT] = {
        [GTL_HW_GEAR] = "gear",         [GTL_HW_MATERIAL] = "material",
        [GTL_HW_KNOT] = "knot",         [GTL_HW_TERMINATION] = "termination",
        [GTL_HW_BEND] = "bend",         [GTL_HW_HITCH] = "hitch",
        [GTL_HW_CHOKE] = "choke",       [GTL_HW_MODE] = "mode",
        [GTL_HW_FITTING] = "fitting",   [GTL_HW_SIDE_LOAD] = "side-load",
        [GTL_HW_USE] = "use",           [GTL_HW_SHEAVE] = "sheave",
        [GTL_HW_FRICTION] = "friction", [GTL_HW_CLIP] = "clip",
        [GTL_HW_PIPE] = "pipe",         [GTL_HW_GREEN_WOOD] = "green-wood",
    };
    return names[kind];
}

const char *gtl_rope_class_name(gtl_rope_class rope_class)
{
    static const char *const names[GTL_CLASS_COUNT] = {
        [GTL_CLASS_NONE] = "",     [GTL_CLASS_FIBRE] = "fibre", [GTL_CLASS_NATURAL_FIBRE] = "natural-fibre",
        [GTL_CLASS_WIRE] = "wire", [GTL_CLASS_CHAIN] = "chain",
    };
    return names[rope_class];
}

void gtl_hardware_cut(gtl_hardware *set, int row_count)
{
    while (set->row_count > row_count) {
        gtl_hardware_row *row = &set->rows[--set->row_count];
        free(row->name);
        free(row->file);
        free(row->source);
        free(row->seen);
        free(row->note);
        free(row->material);
    }
}

void gtl_hardware_end(gtl_hardware *set)
{
    gtl_hardware_cut(set, 0);
    free(set->rows);
    *set = (gtl_hardware){0};
}

const gtl_hardware_row *gtl_hardware_find(const gtl_hardware *set, gtl_hardware_kind kind, const char *name)
{
    for (int i = 0; set && i < set->row_count; i++) {
        const gtl_hardware_row *row = &set->rows[i];
        if (row->kind == kind && gtl_text_compare(row->name, name) == 0) return row;
    }
    return NULL;
}

bool gtl_hardware_suits(const gtl_hardware_row *row, gtl_rope_class rope_class)
{
    return row->rope_class == GTL_CLASS_NONE || (rope_class != GTL_CLASS_NONE && row->classes[rope_class]);
}

static double up_to(const gtl_hardware_row *row, double at)
{
    for (int i = 0; i < row->step_count; i++) {
        if (at <= row->edges[i] * (1 + EDGE_SLACK)) return row->shares[i];
    }
    return row->forbidden ? 0 : NAN;
}

static double from(const gtl_hardware_row *row, double at)
{
    for (int i = row->step_count - 1; i >= 0; i--) {
        if (at >= row->edges[i] * (1 - EDGE_SLACK)) return row->shares[i];
    }
    return row->forbidden ? 0 : NAN;
}

static double formula(const gtl_hardware_row *row, double at)
{
    if (at < row->edges[0] * (1 - EDGE_SLACK)) return NAN;
    return 1 - row->shares[0] / pow(at, row->shares[1]);
}

double gtl_hardware_factor(const gtl_hardware_row *row, double at)
{
    if (row->rule == GTL_HW_ONE) return row->numbers[GTL_HW_KEEPS];
    if (!(at >= 0)) return NAN;
    if (row->rule == GTL_HW_UP_TO) return up_to(row, at);
    return row->rule == GTL_HW_FROM ? from(row, at) : formula(row, at);
}
