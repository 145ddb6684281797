/* timber.c - the mass of a piece of green wood. Pure arithmetic: no rig, no memory, SI. */
#include <gantline/timber.h>
#include <math.h>

#define PI 3.14159265358979323846

/* Of water, at which both figures of a species are published [kg/m3]. */
#define WATER 1000.0

const char *gtl_stem_formula_name(gtl_stem_formula formula)
{
    static const char *const names[GTL_STEM_FORMULA_COUNT] = {"Huber", "Smalian", "Newton"};
    return names[formula];
}

const char *gtl_wood_end_name(gtl_wood_end end)
{
    static const char *const names[GTL_WOOD_END_COUNT] = {"heavy", "mean", "light"};
    return names[end];
}

bool gtl_is_waisted(const gtl_timber *timber)
{
    const double *at = timber->diameters;
    return timber->diameter_count == 3 && !(at[1] >= fmin(at[0], at[2]) && at[1] <= fmax(at[0], at[2]));
}

double gtl_wood_soaked(double specific_gravity)
{
    return WATER * (specific_gravity + 1 - specific_gravity * WATER / GTL_WOOD_SUBSTANCE);
}

/* Over the bark, which is lifted too: it lies on both sides of what was measured. */
static double area(const gtl_timber *timber, int at)
{
    double bark = isnan(timber->bark) ? 0 : timber->bark;
    double diameter = timber->diameters[at] + 2 * bark;
    return PI / 4 * diameter * diameter;
}

static void work_volume(gtl_timber *timber)
{
    int last = timber->diameter_count - 1;
    double first = area(timber, 0), other = area(timber, last), middle = area(timber, last / 2);
    double length = timber->length;
    timber->frustum = length / 3 * (first + sqrt(first * other) + other);
    if (timber->diameter_count == 1) {
        timber->formula = GTL_HUBER;
        timber->volume = length * middle;
        timber->frustum = NAN;
    } else if (timber->diameter_count == 2) {
        timber->formula = GTL_SMALIAN;
        timber->volume = length * (first + other) / 2;
    } else {
        timber->formula = GTL_NEWTON;
        timber->volume = length * (first + 4 * middle + other) / 6;
    }
}

/* A figure stated, else the other. */
static double either(double stated, double otherwise)
{
    return isnan(stated) ? otherwise : stated;
}

/* What a row does not say of its spread is the figure's usual error; but soaked wood takes up no more. */
static void work_species(gtl_timber *timber)
{
    const double *numbers = timber->row->numbers;
    double mean = numbers[GTL_HW_DENSITY];
    timber->soaked = gtl_wood_soaked(numbers[GTL_HW_SPECIFIC_GRAVITY]);
    double most = mean * GTL_WOOD_SPREAD;
    if (most > timber->soaked) most = timber->soaked;
    timber->densities[GTL_WOOD_LIGHT] = either(numbers[GTL_HW_LIGHT], mean / GTL_WOOD_SPREAD);
    timber->densities[GTL_WOOD_MEAN] = mean;
    timber->densities[GTL_WOOD_HEAVY] = either(numbers[GTL_HW_HEAVY], most);
}

static void work_typed(gtl_timber *timber)
{
    timber->soaked = NAN;
    timber->densities[GTL_WOOD_LIGHT] = timber->typed[0];
    timber->densities[GTL_WOOD_MEAN] = (timber->typed[0] + timber->typed[1]) / 2;
    timber->densities[GTL_WOOD_HEAVY] = timber->typed[1];
}

void gtl_timber_work(gtl_timber *timber)
{
    timber->volume = timber->frustum = NAN;
    if (timber->diameter_count > 0) work_volume(timber);
    if (timber->row)
        work_species(timber);
    else
        work_typed(timber);
    for (int i = 0; i < GTL_WOOD_END_COUNT; i++) timber->masses[i] = timber->volume * timber->densities[i];
}
