/* seek.c - a permitted load where the drawn one is not.
 *
 * Loads are tried in steps from the drawn one. Between a load that is too light and its heavier neighbour
 * that is not there may be a window narrower than a step: it is found by halving, since what a load does
 * wrong says on which side of the window it lies. */
#include "study/search.h"
#include <math.h>

/* By how much heavier a load is tried to see whether its parts are then used more or less [1]. */
#define NUDGE 1e-4
/* A change of use this small is rounding [1]. */
#define SAME_USE 1e-9
/* A window narrower than this is none that anybody could load to [1]. */
#define NARROWEST 1e-9

/* Whether a load that is not permitted would be less wrong if it were heavier. */
static bool too_light(gtl_search *search, const gtl_tried *tried)
{
    gtl_tried heavier;
    if (tried->runs_away) return true;
    if (!(tried->use > 1) || isinf(tried->use)) return false;
    gtl_try_load(search, tried->mass * (1 + NUDGE), &heavier);
    return heavier.use < tried->use * (1 - SAME_USE);
}

/* The window between a load that is too light and one that is not, and that is not permitted either. */
static bool find_window(gtl_search *search, double light, double heavy, gtl_tried *found)
{
    while (heavy - light > NARROWEST * heavy && !search->failed) {
        double middle = light + (heavy - light) / 2;
        gtl_try_load(search, middle, found);
        if (found->permitted) return true;
        *(too_light(search, found) ? &light : &heavy) = middle;
    }
    return false;
}

/* In steps to one side. */
static bool seek(gtl_search *search, const gtl_tried *drawn, bool drawn_light, bool up, gtl_tried *found)
{
    double factor = up ? search->step : 1 / search->step;
    double last = drawn->mass;
    double mass = last * factor;
    bool last_light = drawn_light;
    while (mass >= search->low && mass <= search->high) {
        gtl_try_load(search, mass, found);
        if (found->permitted || search->failed) return !search->failed;
        bool light = too_light(search, found);
        bool crossed = up ? last_light && !light : light && !last_light;
        if (crossed && find_window(search, fmin(last, mass), fmax(last, mass), found)) return true;
        last_light = light;
        last = mass;
        mass *= factor;
    }
    return false;
}

bool gtl_seek_permitted(gtl_search *search, const gtl_tried *drawn, gtl_tried *found)
{
    bool light = too_light(search, drawn);
    if (seek(search, drawn, light, light, found)) return true;
    return !search->failed && seek(search, drawn, light, !light, found);
}
