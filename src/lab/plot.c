/* plot.c - see plot.h. */
#include "lab/plot.h"
#include "report/escape.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* The fewest and, but for rounding, the most steps of an axis lie between this and twice as many. */
#define FEWEST_STEPS 4

#define MARGIN   10.0 /* at the right of words [units] */
#define BAR_HALF 5.0  /* of the stroke across a bar's end [units] */
#define THIN_PEN 1.2
#define MARK_PEN 2.0
#define NOISE    1e-9 /* of a step, which is none [1] */
#define ALPHABET 26
#define SEAM     0.6

/* 1, 2 or 5 times a power of ten, such that `span` has at least FEWEST_STEPS of them. */
static double round_step(double span)
{
    static const double steps[] = {5, 2, 1};
    double power = pow(10, floor(log10(span / FEWEST_STEPS)));
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        if (span / (steps[i] * power) >= FEWEST_STEPS - NOISE) return steps[i] * power;
    return power;
}

gtl_axis gtl_axis_to(double highest, double from, double to)
{
    double step = round_step(highest);
    return (gtl_axis){.high = step * ceil(highest / step - NOISE), .step = step, .from = from, .to = to};
}

double gtl_axis_place(const gtl_axis *axis, double value)
{
    return axis->from + (axis->to - axis->from) * (value - axis->low) / (axis->high - axis->low);
}

int gtl_axis_ticks(const gtl_axis *axis)
{
    return (int)floor((axis->high - axis->low) / axis->step + NOISE) + 1;
}

double gtl_axis_tick(const gtl_axis *axis, int tick)
{
    return axis->low + axis->step * tick;
}

gtl_drawing *gtl_plot_begin(const char *title)
{
    gtl_drawing *plot = calloc(1, sizeof *plot);
    if (!plot) return NULL;
    plot->title = gtl_text_copy(title, strlen(title));
    if (!plot->title) plot->failed = true;
    plot->width = GTL_DRAWING_WIDTH;
    return plot;
}

void gtl_plot_end(gtl_drawing *plot, gtl_document *document, const char *prefix, gtl_text *alternative)
{
    gtl_text markup = {0};
    char *raw = gtl_text_take(alternative);
    char *words = raw ? gtl_escape_for_people(raw) : NULL;
    if (!plot || plot->failed || !words) document->failed = true;
    if (!document->failed) {
        gtl_write_drawing(&markup, plot, prefix, words);
        gtl_document_figure(document, plot->title, &markup);
    }
    free(words);
    free(raw);
    gtl_drawing_end(plot);
}

/* --- strokes and texts --- */

static void add(gtl_drawing *plot, gtl_shape shape)
{
    shape.role = GTL_ROLE_FRAME;
    shape.index = -1;
    shape.view = -1;
    gtl_shape_add(plot, shape);
}

void gtl_plot_line(gtl_drawing *plot, gtl_point a, gtl_point b, double width, bool dashed)
{
    add(plot, (gtl_shape){.kind = GTL_SHAPE_LINE, .a = a, .b = b, .width = width, .dashed = dashed});
}

void gtl_plot_box(gtl_drawing *plot, gtl_point low, gtl_point high)
{
    add(plot, (gtl_shape){.kind = GTL_SHAPE_BOX, .a = low, .b = high, .width = THIN_PEN});
}

static void put_text(gtl_drawing *plot, gtl_point at, gtl_align align, bool bold, char *text)
{
    if (!text) plot->failed = true;
    if (text)
        add(plot, (gtl_shape){.kind = GTL_SHAPE_TEXT, .a = at, .align = align, .bold = bold, .text = text});
}

void gtl_plot_text(gtl_drawing *plot, gtl_point at, gtl_align align, bool bold, const char *format, ...)
{
    gtl_text text = {0};
    va_list arguments;
    va_start(arguments, format);
    gtl_text_add_list(&text, format, arguments);
    va_end(arguments);
    char *raw = gtl_text_take(&text);
    put_text(plot, at, align, bold, raw ? gtl_escape_for_people(raw) : NULL);
    free(raw);
}

/* How many bytes of `words` stand in one line: whole words, or of one too long as much as there is room for.
 */
static size_t line_of(const char *words, double room)
{
    size_t fits = 0, all = strlen(words);
    for (size_t at = 0; at < all;) {
        size_t end = at + strspn(words + at, " ");
        end += strcspn(words + end, " ");
        if (gtl_text_width(words, end, false) > room) break;
        fits = at = end;
    }
    if (fits > 0) return fits;
    size_t cut = strcspn(words + strspn(words, " "), " ") + strspn(words, " ");
    while (cut > 1 && (gtl_text_width(words, cut, false) > room || (words[cut] & 0xC0) == 0x80)) cut--;
    return cut;
}

double gtl_plot_words(gtl_drawing *plot, gtl_point at, const char *words)
{
    const double room = GTL_DRAWING_WIDTH - MARGIN - at.x;
    char *clean = gtl_escape_for_people(words);
    if (!clean) plot->failed = true;
    words = clean ? clean : "";
    while (*(words += strspn(words, " "))) {
        size_t bytes = line_of(words, room);
        put_text(plot, at, GTL_ALIGN_LEFT, false, gtl_text_copy(words, bytes));
        words += bytes;
        at.y += GTL_TEXT_STEP;
    }
    free(clean);
    return at.y;
}

void gtl_plot_bar(gtl_drawing *plot, gtl_point a, gtl_point b)
{
    bool level = a.y == b.y;
    double x = level ? 0 : BAR_HALF, y = level ? BAR_HALF : 0;
    gtl_plot_line(plot, a, b, THIN_PEN, false);
    gtl_plot_line(plot, (gtl_point){a.x - x, a.y - y}, (gtl_point){a.x + x, a.y + y}, THIN_PEN, false);
    gtl_plot_line(plot, (gtl_point){b.x - x, b.y - y}, (gtl_point){b.x + x, b.y + y}, THIN_PEN, false);
}

/* --- marks --- */

static void circle(gtl_drawing *plot, gtl_point at, gtl_fill fill)
{
    add(plot,
        (gtl_shape){
            .kind = GTL_SHAPE_CIRCLE, .a = at, .radius = GTL_MARK_HALF, .width = MARK_PEN, .fill = fill});
}

static void square(gtl_drawing *plot, gtl_point at, gtl_fill fill)
{
    double half = GTL_MARK_HALF - 0.5;
    add(plot, (gtl_shape){.kind = GTL_SHAPE_BOX,
                          .a = {at.x - half, at.y - half},
                          .b = {at.x + half, at.y + half},
                          .width = MARK_PEN,
                          .fill = fill});
}

/* With a tip at `dx`, `dy` from the middle, one of them 0. */
static void triangle(gtl_drawing *plot, gtl_point at, gtl_point tip, double width, gtl_fill fill)
{
    add(plot, (gtl_shape){.kind = GTL_SHAPE_HEAD,
                          .a = {at.x + tip.x, at.y + tip.y},
                          .b = {at.x - tip.x + tip.y, at.y - tip.y + tip.x},
                          .c = {at.x - tip.x - tip.y, at.y - tip.y - tip.x},
                          .width = width,
                          .fill = fill});
}

/* Of two halves that lie over each other by a little, so that no seam shows. */
static void diamond(gtl_drawing *plot, gtl_point at, gtl_fill fill)
{
    const double half = GTL_MARK_HALF + 1.5;
    const gtl_point corners[] = {
        {at.x, at.y - half}, {at.x + half, at.y}, {at.x, at.y + half}, {at.x - half, at.y}};
    for (int i = 0; i < 2; i++) {
        double over = i == 0 ? SEAM : -SEAM;
        add(plot, (gtl_shape){.kind = GTL_SHAPE_HEAD,
                              .a = corners[2 * i],
                              .b = {corners[1].x, corners[1].y + over},
                              .c = {corners[3].x, corners[3].y + over},
                              .fill = fill});
    }
    for (int i = 0; i < 4; i++) gtl_plot_line(plot, corners[i], corners[(i + 1) % 4], MARK_PEN, false);
}

void gtl_plot_mark(gtl_drawing *plot, gtl_point at, int number, bool filled)
{
    const gtl_fill fill = filled ? GTL_FILL_BLACK : GTL_FILL_WHITE;
    static const gtl_point tips[] = {
        {0, -GTL_MARK_HALF}, {0, GTL_MARK_HALF}, {-GTL_MARK_HALF, 0}, {GTL_MARK_HALF, 0}};
    int shape = number % GTL_MARK_SHAPES;
    if (shape == 0)
        circle(plot, at, fill);
    else if (shape == 1)
        square(plot, at, fill);
    else if (shape == 2)
        diamond(plot, at, fill);
    else
        triangle(plot, at, tips[shape - 3], MARK_PEN, fill);
}

gtl_letter gtl_letter_of(int number)
{
    gtl_letter letter = {""};
    char turned[sizeof letter.text];
    size_t length = 0;
    for (int rest = number + 1; rest > 0 && length < sizeof turned - 1; rest = (rest - 1) / ALPHABET)
        turned[length++] = (char)('A' + (rest - 1) % ALPHABET);
    for (size_t i = 0; i < length; i++) letter.text[i] = turned[length - 1 - i];
    return letter;
}
