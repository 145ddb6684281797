/* timber_words.c - pieces of green wood as parts of a document. */
#include "report/timber_words.h"

#include <math.h>

static const char *const formulas[GTL_STEM_FORMULA_COUNT] = {
    [GTL_HUBER] = "L Am", [GTL_SMALIAN] = "L (A1 + A2) / 2", [GTL_NEWTON] = "L (A1 + 4 Am + A2) / 6"};

static const char *const places[GTL_STEM_FORMULA_COUNT] = {
    [GTL_HUBER] = "halfway", [GTL_SMALIAN] = "at its ends", [GTL_NEWTON] = "at its end, halfway and end"};

static void add_measured(gtl_text *text, const gtl_print_units *units, const gtl_timber *timber)
{
    gtl_text_add(text, "%s %s long, ", gtl_figure_typed(timber->length / units->metres).text, units->length);
    for (int i = 0; i < timber->diameter_count; i++)
        gtl_text_add(text, "%s%s",
                     i == 0                           ? ""
                     : i + 1 < timber->diameter_count ? ", "
                                                      : " and ",
                     gtl_figure_typed(timber->diameters[i] / units->width_metres).text);
    gtl_text_add(text, " %s through %s, ", units->width, places[timber->formula]);
    if (isnan(timber->bark))
        gtl_text_add(text, "over the bark");
    else
        gtl_text_add(text, "under bark of %s", gtl_figure_width_unit(units, timber->bark).text);
}

void gtl_compose_stem(gtl_document *document, const gtl_print_units *units, const char *label,
                      const char *kind, const gtl_timber *timber)
{
    gtl_text text = {0};
    gtl_text_add(&text, "%s%s, ", kind, timber->row ? timber->row->name : "wood of a density typed in");
    add_measured(&text, units, timber);
    gtl_text_add(&text, ": %s by %s's formula, %s", gtl_figure_volume_unit(units, timber->volume).text,
                 gtl_stem_formula_name(timber->formula), formulas[timber->formula]);
    if (!isnan(timber->frustum))
        gtl_text_add(&text, "; the frustum of a cone with these ends holds %s",
                     gtl_figure_volume_unit(units, timber->frustum).text);
    gtl_text_add(&text, "; bark counts as wood");
    gtl_document_put(document, GTL_PAIR, label, &text);
}

static gtl_figure density(const gtl_print_units *units, double number)
{
    return gtl_figure_density_unit(units, number);
}

static void add_row(gtl_text *text, const gtl_print_units *units, const gtl_timber *timber)
{
    const double *numbers = timber->row->numbers;
    gtl_text_add(text, "mean %s", density(units, numbers[GTL_HW_DENSITY]).text);
    if (!isnan(numbers[GTL_HW_SPECIFIC_GRAVITY]))
        gtl_text_add(text, ", basic specific gravity %s",
                     gtl_figure_typed(numbers[GTL_HW_SPECIFIC_GRAVITY]).text);
    if (!isnan(numbers[GTL_HW_MOISTURE]))
        gtl_text_add(text, ", moisture %s %% of the dry wood",
                     gtl_figure_typed(100 * numbers[GTL_HW_MOISTURE]).text);
    if (!isnan(timber->soaked))
        gtl_text_add(text,
                     "; wood of that specific gravity weighs %s with every hollow full of water, and no more",
                     density(units, timber->soaked).text);
    gtl_text_add(text, "%s", isnan(numbers[GTL_HW_HEAVY]) ? "" : "; the heavy end is the row's own");
}

void gtl_compose_wood(gtl_document *document, const gtl_print_units *units, const char *label,
                      const gtl_timber *timber)
{
    gtl_text text = {0};
    if (timber->row)
        add_row(&text, units, timber);
    else if (timber->typed[0] < timber->typed[1])
        gtl_text_add(&text, "typed in, from %s to %s", density(units, timber->typed[0]).text,
                     density(units, timber->typed[1]).text);
    else
        gtl_text_add(&text, "%s typed in, without a spread: no heavier end is allowed for",
                     density(units, timber->typed[0]).text);
    gtl_document_put(document, GTL_PAIR, label, &text);
}

void gtl_compose_wood_table(gtl_document *document)
{
    const gtl_column columns[] = {{"Piece", false}, {"light", true}, {"mean", true}, {"heavy", true}};
    gtl_document_table(document, columns, sizeof columns / sizeof *columns);
}

void gtl_compose_wood_rows(gtl_document *document, const gtl_print_units *units, const char *name,
                           const gtl_timber *timber, double gravity)
{
    gtl_document_cell(document, "%s: density [%s/%s3]", name, units->mass, units->length);
    for (int i = GTL_WOOD_LIGHT; i >= 0; i--)
        gtl_document_cell(document, "%s", gtl_figure_density(units, timber->densities[i]).text);
    gtl_document_cell(document, "%s: mass [%s]", name, units->mass);
    for (int i = GTL_WOOD_LIGHT; i >= 0; i--)
        gtl_document_cell(document, "%s", gtl_figure_mass(units, timber->masses[i]).text);
    gtl_document_cell(document, "%s: weight [%s]", name, units->force);
    for (int i = GTL_WOOD_LIGHT; i >= 0; i--)
        gtl_document_cell(document, "%s", gtl_figure_force(units, timber->masses[i] * gravity).text);
}

void gtl_words_timber(const gtl_timber *timber, gtl_sink *sink, void *context)
{
    static const char *const sentences[] = {
        "moisture: sapwood, heartwood, season and site change the density of one species by 20 % and more; a "
        "piece can be heavier than the heavy end",
        "branches, stubs, foliage, ivy, earth, ice and rain on the piece are not in its mass: add them as a "
        "load of their own",
        "decay and hollows: they are not taken off, and a piece that has them breaks sooner than it looks",
        "forks, burrs and the flare of a butt hold more than any formula of a stem says",
    };
    for (size_t i = 0; i < sizeof sentences / sizeof *sentences; i++) sink(context, sentences[i]);
    if (timber && gtl_is_waisted(timber))
        sink(context,
             "the middle is thicker or thinner than both ends: see that the diameters stand in order, "
             "end, halfway, end");
    if (timber && timber->formula == GTL_HUBER)
        sink(context,
             "one diameter makes a cylinder: a piece that tapers holds a little more, so measure both "
             "ends too");
}
