/* drawing_foot.c - below the views: scales, what the pens mean, and what a drawing of this kind leaves out.
 */
#include "report/drawing_frame.h"
#include "report/words.h"

#include <math.h>
#include <stdint.h>
#include <stdlib.h>

#define LONGEST_BAR 120.0
#define TICK        5.0
#define SAMPLE      34.0
/* Where the second scale begins. */
#define MIDDLE 320.0
#define PEN    1.3

/* --- scales --- */

/* The largest of 1, 2 or 5 times a power of ten that is not above `most`. */
static double round_below(double most)
{
    static const double steps[] = {5, 2, 1};
    double power = pow(10, floor(log10(most)));
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        if (steps[i] * power <= most) return steps[i] * power;
    return power;
}

static void line(gtl_drawing *drawing, gtl_point a, gtl_point b, double width, bool dashed)
{
    gtl_shape_add(drawing, (gtl_shape){.kind = GTL_SHAPE_LINE,
                                       .role = GTL_ROLE_FRAME,
                                       .index = -1,
                                       .view = -1,
                                       .a = a,
                                       .b = b,
                                       .width = width,
                                       .dashed = dashed});
}

/* A bar between two ticks, as long as `size` of a unit is drawn; upright where heights alone are to scale. */
static void put_bar(gtl_drawing *drawing, gtl_point from, double length, bool upright, const char *meaning)
{
    gtl_point to = upright ? (gtl_point){from.x, from.y - length} : (gtl_point){from.x + length, from.y};
    gtl_point tick = upright ? (gtl_point){TICK, 0} : (gtl_point){0, TICK};
    line(drawing, from, to, PEN, false);
    line(drawing, gtl_along(from, tick, -1), gtl_along(from, tick, 1), PEN, false);
    line(drawing, gtl_along(to, tick, -1), gtl_along(to, tick, 1), PEN, false);
    gtl_point foot = {(upright ? from.x : to.x) + 12, from.y + 5};
    gtl_shape_text(drawing, GTL_ROLE_FRAME, foot, false, "%s", meaning);
}

/* "0.5 m", however small. */
static gtl_figure meaning_of(double number, const char *unit)
{
    bool plain = number >= 0.001 && number < 1e6;
    return gtl_figure_after(plain ? gtl_figure_typed(number) : gtl_figure_power(number), unit);
}

static double put_scales(gtl_picture *picture, double top)
{
    const gtl_print_units *units = &picture->units;
    double metre = picture->scale * units->metres; /* of one printed unit of length, as drawn */
    double longest = round_below(LONGEST_BAR / metre);
    bool upright = picture->views[0].across < 0;
    double y = top + 14 + (upright ? longest * metre - 10 : 0);
    put_bar(picture->drawing, (gtl_point){GTL_MARGIN + TICK, y}, longest * metre, upright,
            meaning_of(longest, units->length).text);
    if (picture->newtons > 0) {
        double force = units->newtons / picture->newtons;
        double strongest = round_below(LONGEST_BAR / force);
        gtl_text text = {0};
        gtl_text_add(&text, "%s (arrows)", meaning_of(strongest, units->force).text);
        char *meaning = gtl_text_take(&text);
        if (meaning) put_bar(picture->drawing, (gtl_point){MIDDLE, y}, strongest * force, false, meaning);
        picture->drawing->failed |= !meaning;
        free(meaning);
    }
    return y + 22;
}

/* --- pens --- */

typedef struct gtl_sample {
    const char *meaning;
    double width;
    bool twice;
    bool dashed;
} gtl_sample;

static bool has_line(const gtl_picture *picture, gtl_kind kind)
{
    for (int i = 0; i < picture->rig->part_count; i++)
        if (picture->rig->lines[picture->rig->parts[i].line].kind == kind) return true;
    return false;
}

static bool has_slack(const gtl_picture *picture)
{
    for (int i = 0; picture->solved && i < picture->rig->piece_count; i++)
        if (picture->outcome->state->slack[i]) return true;
    return false;
}

static double put_sample(gtl_drawing *drawing, gtl_point foot, const gtl_sample *sample)
{
    for (int i = 0; i < (sample->twice ? 2 : 1); i++) {
        double y = foot.y - 5 + (sample->twice ? 5 * (i - 0.5) : 0);
        line(drawing, (gtl_point){foot.x, y}, (gtl_point){foot.x + SAMPLE, y}, sample->width, sample->dashed);
    }
    gtl_shape_text(drawing, GTL_ROLE_FRAME, (gtl_point){foot.x + SAMPLE + 8, foot.y}, false, "%s",
                   sample->meaning);
    return foot.x + SAMPLE + 8 + gtl_text_width(sample->meaning, SIZE_MAX, false) + 18;
}

static double put_pens(gtl_picture *picture, double top)
{
    const gtl_sample samples[] = {{"rope", 1.7, false, false},
                                  {"sling", 3, false, false},
                                  {"spar", 1.3, true, false},
                                  {"slack", 1.7, false, true}};
    const bool used[] = {has_line(picture, GTL_ROPE), has_line(picture, GTL_SLING),
                         has_line(picture, GTL_SPAR), has_slack(picture)};
    gtl_point foot = {GTL_MARGIN, top + 14};
    for (size_t i = 0; i < sizeof samples / sizeof *samples; i++)
        if (used[i]) foot.x = put_sample(picture->drawing, foot, &samples[i]);
    return foot.x > GTL_MARGIN ? top + 22 : top;
}

/* --- notes --- */

/* The rig drawn is one of several. */
static void add_band_note(gtl_text *text, const gtl_picture *picture)
{
    const gtl_outcome *outcome = picture->outcome;
    const gtl_print_units *units = &picture->units;
    if (!picture->sheet->frees_all || !outcome->band.pull) return;
    gtl_text_add(
        text,
        " Friction is stated as a range: drawn is the rig with all of it at its %s; forces on anchors, "
        "blocks and fairleads are the worst of %d.",
        outcome->band.freest ? "least" : "most", outcome->band.rigs);
    const double *pull = outcome->rig->hand < 0 ? NULL : outcome->band.pull[outcome->rig->hand];
    if (pull && !isnan(pull[0]) && !gtl_is_one_force(units, pull[0], pull[1]))
        gtl_text_add(text, " %s pulls %s to %s.", outcome->rig->things[outcome->rig->hand].name,
                     gtl_figure_rating(units, pull[0]).text, gtl_figure_force_unit(units, pull[1]).text);
}

static void add_figures_note(gtl_text *text, const gtl_picture *picture)
{
    const gtl_outcome *outcome = picture->outcome;
    if (!picture->solved) return;
    gtl_text_add(text, " At a block or fairlead stands the whole force on it.");
    if (picture->newtons > 0)
        gtl_text_add(text, " Arrows are the force on each anchor and the pull of each hand%s.",
                     picture->view_count > 1 ? ", as far as the view shows them; figures are whole forces"
                                             : "");
    if (outcome->variants > 1)
        gtl_text_add(
            text,
            " Tensions and pulls are of one state out of %d; forces on anchors, blocks and fairleads "
            "are the worst of all.",
            outcome->variants);
    add_band_note(text, picture);
    if (outcome->places > 1)
        gtl_text_add(text, " The rig can hang in %d places near its drawing; this is the nearest.",
                     outcome->places);
    if (outcome->drop > 0)
        gtl_text_add(text,
                     " Something drops before a line catches it: that makes more force than is drawn here.");
}

static void first_only(void *context, const char *sentence)
{
    gtl_text *text = context;
    if (text->length > 0 && text->bytes[text->length - 1] != ' ') return;
    if (sentence)
        gtl_text_add(text, "%s", sentence);
    else
        text->failed = true;
}

static double put_notes(gtl_picture *picture, double top)
{
    gtl_text text = {0};
    gtl_text_add(&text,
                 "%s to scale; sizes of sheaves and the spreading of parts that lie on each other are not.",
                 picture->views[0].across < 0 ? "Heights" : "Positions");
    add_figures_note(&text, picture);
    gtl_text_add(&text, " ");
    gtl_words_cautions(first_only, &text);
    char *words = gtl_text_take(&text);
    picture->drawing->failed |= !words;
    if (words)
        top = gtl_frame_words(picture->drawing, (gtl_point){GTL_MARGIN, top + 18}, GTL_FULL_WIDTH, 0, false,
                              words) -
              18;
    free(words);
    return top;
}

/* Lines of more than one kind in a bare drawing still have to be told apart. */
static double put_bare(gtl_picture *picture, double top)
{
    int kinds = 0;
    for (int kind = GTL_ROPE; kind <= GTL_SPAR; kind++) kinds += has_line(picture, (gtl_kind)kind);
    return kinds > 1 ? put_pens(picture, top) : top;
}

double gtl_frame_foot(gtl_picture *picture, double top)
{
    if (picture->bare) return put_bare(picture, top);
    top = put_scales(picture, top);
    top = put_pens(picture, top);
    return put_notes(picture, top);
}
