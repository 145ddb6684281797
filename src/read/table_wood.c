/* table_wood.c - a species' row as a whole: whether its figures can all be true. */
#include "read/table_row.h"

#include <gantline/timber.h>
#include <math.h>

/* Published densities are rounded to a pound a cubic foot, which is less than this of the lightest [1]. */
#define ROUNDING 0.05
/* Of water [kg/m3]. */
#define WATER 1000.0

static void tell(gtl_table_row *r, const char *key, const char *text)
{
    gtl_faults_add(r->faults, gtl_table_line(r, key), "%s", text);
    r->rough = true;
}

/* The Wood Handbook's equation 4-14 [kg/m3]; NaN where one of the two is not stated. */
static double sum_of(const gtl_table_row *r)
{
    const double *numbers = r->row->numbers;
    return numbers[GTL_HW_SPECIFIC_GRAVITY] * WATER * (1 + numbers[GTL_HW_MOISTURE]);
}

/* A density that is left out is what the other two come to. */
static void settle_density(gtl_table_row *r)
{
    double sum = sum_of(r);
    if (gtl_table_line(r, "density") > 0) return;
    r->row->numbers[GTL_HW_DENSITY] = sum;
    if (sum >= GTL_WOOD_LIGHTEST) return;
    gtl_faults_add(
        r->faults, r->row->line,
        "[green-wood %s] has no `density`; write it, such as density = 1026 kg/m3, or else `specific "
        "gravity` and `moisture`, which make no less than 100 kg/m3",
        r->row->name);
    r->rough = true;
}

static void check_sum(gtl_table_row *r)
{
    const double *numbers = r->row->numbers;
    double sum = sum_of(r);
    if (!(fabs(sum - numbers[GTL_HW_DENSITY]) > ROUNDING * numbers[GTL_HW_DENSITY])) return;
    gtl_faults_add(r->faults, gtl_table_line(r, "density"),
                   "`density` is not that of wood of this `specific gravity` and `moisture`, %.0f kg/m3; see "
                   "which of them is mistyped",
                   sum);
    r->rough = true;
}

void gtl_table_check_wood(gtl_table_row *r)
{
    const double *numbers = r->row->numbers;
    double gravity = numbers[GTL_HW_SPECIFIC_GRAVITY];
    double soaked = gtl_wood_soaked(gravity);
    settle_density(r);
    if (r->rough) return;
    if (gtl_table_line(r, "moisture") > 0 && gtl_table_line(r, "specific gravity") == 0)
        tell(r, "moisture", "`moisture` changes nothing without `specific gravity`; add it, or leave it out");
    else if (gravity * WATER > GTL_WOOD_SUBSTANCE)
        tell(
            r, "specific gravity",
            "`specific gravity` is more than 1.54, that of the wood's own substance; see whether it is typed "
            "in kg/m3");
    else if (numbers[GTL_HW_DENSITY] > soaked && gtl_table_line(r, "density") == 0)
        tell(r, "moisture",
             "`moisture` is more than such wood can hold with every hollow full; see which of it and "
             "`specific "
             "gravity` is mistyped");
    else if (numbers[GTL_HW_DENSITY] > soaked)
        tell(r, "density",
             "`density` is more than such wood weighs with every hollow full of water; see which of it and "
             "`specific gravity` is mistyped");
    else if (numbers[GTL_HW_HEAVY] > soaked)
        tell(r, "heavy",
             "`heavy` is more than such wood weighs with every hollow full of water; see which of it and "
             "`specific gravity` is mistyped");
    else if (numbers[GTL_HW_HEAVY] < numbers[GTL_HW_DENSITY])
        tell(r, "heavy", "`heavy` is less than `density`; see which of them is mistyped");
    else if (numbers[GTL_HW_LIGHT] > numbers[GTL_HW_DENSITY])
        tell(r, "light", "`light` is more than `density`; see which of them is mistyped");
    else
        check_sum(r);
}
