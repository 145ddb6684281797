/* json_timber.c - timber as JSON. */
#include "report/json_timber.h"

#include "report/json_value.h"
#include "report/timber_words.h"

json_t *gtl_json_spread(const double figures[GTL_WOOD_END_COUNT], double factor)
{
    return json_pack("{s:o, s:o, s:o}", "heavy", gtl_json_number(factor * figures[GTL_WOOD_HEAVY]), "mean",
                     gtl_json_number(factor * figures[GTL_WOOD_MEAN]), "light",
                     gtl_json_number(factor * figures[GTL_WOOD_LIGHT]));
}

/* A sink for timber_words.h. */
static void append_sentence(void *list, const char *sentence)
{
    gtl_json_append(list, gtl_json_text(sentence));
}

json_t *gtl_json_timber_cautions(const gtl_timber *timber)
{
    gtl_json_array list = {json_array()};
    gtl_words_timber(timber, append_sentence, &list);
    return list.array;
}

static json_t *text_of(const gtl_hardware_row *row, const char *text)
{
    return row ? gtl_json_text(text) : json_null();
}

json_t *gtl_json_timber(const gtl_timber *timber)
{
    const gtl_hardware_row *row = timber->row;
    return json_pack("{s:o, s:o, s:o, s:o, s:o, s:o, s:o, s:s, s:o, s:o, s:o, s:o, s:o, s:s, s:o}", "species",
                     text_of(row, row ? row->name : NULL), "table", text_of(row, row ? row->file : NULL),
                     "source", text_of(row, row ? row->source : NULL), "seen",
                     text_of(row, row ? row->seen : NULL), "length", gtl_json_number(timber->length),
                     "diameters", gtl_json_vector(timber->diameters, timber->diameter_count), "bark",
                     gtl_json_number(timber->bark), "formula", gtl_stem_formula_name(timber->formula),
                     "volume", gtl_json_number(timber->volume), "frustum", gtl_json_number(timber->frustum),
                     "density", gtl_json_spread(timber->densities, 1), "soaked",
                     gtl_json_number(timber->soaked), "mass", gtl_json_spread(timber->masses, 1), "used",
                     gtl_wood_end_name(timber->end), "cautions", gtl_json_timber_cautions(timber));
}
