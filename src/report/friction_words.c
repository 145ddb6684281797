/* friction_words.c - see friction_words.h. */
#include "report/friction_words.h"
#include "report/figures.h"

#include <math.h>

void gtl_friction_words(gtl_text *text, const gtl_thing *thing)
{
    bool coefficient = !isnan(thing->friction), range = !isnan(thing->freest);
    if (!thing->friction_stated) {
        gtl_text_add(text, "friction not stated");
        return;
    }
    double least = thing->efficiency, most = thing->freest;
    if (coefficient) {
        least = range ? thing->freest : thing->friction;
        most = thing->friction;
    }
    double scale = coefficient ? 1 : 100;
    gtl_text_add(text, "%s %s", coefficient ? "friction" : "efficiency",
                 gtl_figure_typed(scale * least).text);
    if (range) gtl_text_add(text, " to %s", gtl_figure_typed(scale * most).text);
    if (!coefficient) gtl_text_add(text, " %% at 180 deg");
}
