/* plot_effort.c - measured against predicted effort, with the line on which the two agree. */
#include "lab/compose.h"
#include "lab/plot.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define TITLE "Measured against predicted effort"

#define LEFT     90.0  /* of the field [units] */
#define RIGHT    560.0 /* likewise */
#define TOP      60.0  /* likewise */
#define FOOT     530.0 /* likewise: as high as it is wide */
#define MARGIN   20.0  /* left of words */
#define GRID_PEN 0.4
#define LINE_PEN 1.6

/* A reading this many times as great as the greatest that counts would push all others together [1]. */
#define MOST_DRAWN 2.0

/* Set-ups in the key; the table of set-ups has all. */
#define MOST_KEYS 24

#define NEAR 40.0 /* of a letter to a mark [units] */

#define MOST_TAKEN 400 /* places of marks and letters that a letter keeps clear of */

typedef struct gtl_field {
    const gtl_lab *lab;
    gtl_drawing *plot;
    gtl_axis across; /* predicted [N] */
    gtl_axis up;     /* measured [N] */
    double most;     /* the greatest that is drawn [N] */
    gtl_bounds taken[MOST_TAKEN];
    int named[MOST_TAKEN]; /* the set-up whose letter it is, -1: a mark */
    int taken_count;
} gtl_field;

static bool has_both(const gtl_lab_row *row)
{
    return isfinite(row->effort) && isfinite(row->predicted_effort);
}

static double reach_of(const gtl_lab_row *row)
{
    double reach = gtl_lab_effort_coverage(row);
    return isfinite(reach) ? reach : 0;
}

static double greatest(const gtl_lab_row *row)
{
    double most = fmax(row->effort + reach_of(row), row->predicted_effort);
    return isfinite(row->predicted_most) ? fmax(most, row->predicted_most) : most;
}

/* The greatest of the rows that count, or of all, that is not over `limit`; 0 where there is none. */
static double find_most(const gtl_lab *lab, bool counted_only, double limit)
{
    double most = 0;
    for (int i = 0; i < lab->row_count; i++) {
        const gtl_lab_row *row = &lab->rows[i];
        if (has_both(row) && (row->counted || !counted_only) && greatest(row) <= limit)
            most = fmax(most, greatest(row));
    }
    return most;
}

static bool drawn(const gtl_field *field, const gtl_lab_row *row)
{
    return has_both(row) && greatest(row) <= field->most;
}

static gtl_point place_of(const gtl_field *field, double predicted, double measured)
{
    return (gtl_point){gtl_axis_place(&field->across, predicted), gtl_axis_place(&field->up, measured)};
}

/* --- the field --- */

static void grid(gtl_field *field)
{
    for (int i = 0; i < gtl_axis_ticks(&field->across); i++) {
        double tick = gtl_axis_tick(&field->across, i);
        gtl_point at = place_of(field, tick, tick);
        gtl_figure words = gtl_lab_typed(tick);
        gtl_plot_line(field->plot, (gtl_point){at.x, TOP}, (gtl_point){at.x, FOOT}, GRID_PEN, false);
        gtl_plot_line(field->plot, (gtl_point){LEFT, at.y}, (gtl_point){RIGHT, at.y}, GRID_PEN, false);
        gtl_plot_text(field->plot, (gtl_point){at.x, FOOT + GTL_TEXT_STEP}, GTL_ALIGN_MIDDLE, false, "%s",
                      words.text);
        gtl_plot_text(field->plot, (gtl_point){LEFT - 8, at.y + 5}, GTL_ALIGN_RIGHT, false, "%s", words.text);
    }
}

static void frame(gtl_field *field)
{
    gtl_drawing *plot = field->plot;
    gtl_plot_text(plot, (gtl_point){MARGIN, 24}, GTL_ALIGN_LEFT, true, TITLE);
    gtl_plot_text(plot, (gtl_point){MARGIN, TOP - 12}, GTL_ALIGN_LEFT, false, "effort, measured [N]");
    gtl_plot_text(plot, (gtl_point){RIGHT, FOOT + 2 * GTL_TEXT_STEP}, GTL_ALIGN_RIGHT, false,
                  "effort, predicted [N]");
    grid(field);
    gtl_plot_box(plot, (gtl_point){LEFT, TOP}, (gtl_point){RIGHT, FOOT});
    gtl_plot_line(plot, (gtl_point){LEFT, FOOT}, (gtl_point){RIGHT, TOP}, LINE_PEN, true);
    gtl_plot_text(plot, (gtl_point){RIGHT, TOP - 12}, GTL_ALIGN_RIGHT, false, "dashed: the two agree");
}

static void take(gtl_field *field, gtl_bounds bounds, int named)
{
    if (field->taken_count == MOST_TAKEN) return;
    field->named[field->taken_count] = named;
    field->taken[field->taken_count++] = bounds;
}

/* Whether a letter of the same set-up stands so near that it says enough. */
static bool is_named(const gtl_field *field, gtl_point at, int set_up)
{
    for (int i = 0; i < field->taken_count; i++)
        if (field->named[i] == set_up && fabs(field->taken[i].low.x - at.x) < NEAR &&
            fabs(field->taken[i].high.y - at.y) < NEAR)
            return true;
    return false;
}

static bool free_of_others(const gtl_field *field, gtl_bounds box)
{
    if (box.low.x < LEFT || box.high.x > RIGHT || box.low.y < TOP || box.high.y > FOOT) return false;
    for (int i = 0; i < field->taken_count; i++) {
        const gtl_bounds *other = &field->taken[i];
        if (box.low.x < other->high.x && box.high.x > other->low.x && box.low.y < other->high.y &&
            box.high.y > other->low.y)
            return false;
    }
    return true;
}

static gtl_point mark_of(const gtl_field *field, const gtl_lab_row *row)
{
    return place_of(field, row->predicted_effort, row->effort);
}

static void reading(gtl_field *field, const gtl_lab_row *row)
{
    double reach = reach_of(row);
    gtl_point at = mark_of(field, row);
    if (reach > 0)
        gtl_plot_bar(field->plot, place_of(field, row->predicted_effort, fmax(row->effort - reach, 0)),
                     place_of(field, row->predicted_effort, row->effort + reach));
    if (isfinite(row->predicted_least))
        gtl_plot_bar(field->plot, place_of(field, row->predicted_least, row->effort),
                     place_of(field, row->predicted_most, row->effort));
    gtl_plot_mark(field->plot, at, row->set_up, row->counted);
    double half = GTL_MARK_HALF + 1;
    take(field, (gtl_bounds){{at.x - half, at.y - half}, {at.x + half, at.y + half}}, -1);
}

/* The set-up's letter beside a mark, where there is room for it. */
static void letter(gtl_field *field, const gtl_lab_row *row)
{
    static const gtl_point sides[] = {{1, 0.5}, {-1, 0.5}, {1, -0.8}, {-1, -0.8}, {1, 1.6}, {-1, 1.6}};
    gtl_letter name = gtl_letter_of(row->set_up);
    double width = gtl_text_width(name.text, strlen(name.text), true);
    gtl_point at = mark_of(field, row);
    if (is_named(field, at, row->set_up)) return;
    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++) {
        double left = sides[i].x > 0 ? at.x + 10 : at.x - 10 - width, foot = at.y + 12 * sides[i].y;
        gtl_bounds box = {{left, foot - 13}, {left + width, foot + 3}};
        if (!free_of_others(field, box)) continue;
        gtl_plot_text(field->plot, (gtl_point){left, foot}, GTL_ALIGN_LEFT, true, "%s", name.text);
        take(field, box, row->set_up);
        return;
    }
}

static void letters(gtl_field *field)
{
    for (int i = 0; i < field->lab->row_count; i++)
        if (drawn(field, &field->lab->rows[i])) letter(field, &field->lab->rows[i]);
}

/* --- below the field --- */

static void add_missing(const gtl_field *field, gtl_text *text)
{
    int count = 0;
    for (int i = 0; i < field->lab->row_count; i++) {
        const gtl_lab_row *row = &field->lab->rows[i];
        if (drawn(field, row)) continue;
        gtl_text_add(text, "%s line %d (", count++ > 0 ? "," : " Not drawn:", row->line);
        if (has_both(row))
            gtl_text_add(text, "%s N, predicted %s N, off the scale)", gtl_lab_typed(row->effort).text,
                         gtl_figure_ratio(row->predicted_effort).text);
        else
            gtl_text_add(text, isfinite(row->effort) ? "no prediction)" : "effort not known)");
    }
    if (count > 0) gtl_text_add(text, ".");
}

/* Marks and names of the set-ups, then what the signs mean; the foot line of what would follow. */
static double key(gtl_field *field)
{
    double y = FOOT + 4 * GTL_TEXT_STEP;
    for (int i = 0; i < field->lab->set_up_count && i < MOST_KEYS; i++) {
        gtl_text text = {0};
        gtl_text_add(&text, "%s: ", gtl_letter_of(i).text);
        gtl_lab_add_name(&text, &field->lab->set_ups[i]);
        char *words = gtl_text_take(&text);
        if (!words) field->plot->failed = true;
        gtl_plot_mark(field->plot, (gtl_point){MARGIN + GTL_MARK_HALF, y - 5}, i, true);
        y = gtl_plot_words(field->plot, (gtl_point){MARGIN + 24, y}, words ? words : "");
        free(words);
    }
    gtl_text text = {0};
    if (field->lab->set_up_count > MOST_KEYS)
        gtl_text_add(&text, "And %d more; the table of set-ups has all. ",
                     field->lab->set_up_count - MOST_KEYS);
    gtl_text_add(&text, "A bar upward is U of the effort; across, the efforts that hold a load that is at "
                        "rest. Black counts, white does not.");
    add_missing(field, &text);
    char *words = gtl_text_take(&text);
    if (!words) field->plot->failed = true;
    y = gtl_plot_words(field->plot, (gtl_point){MARGIN, y + 8}, words ? words : "");
    free(words);
    return y;
}

/* --- in words --- */

static void add_set_up_alternative(const gtl_field *field, int index, gtl_text *text)
{
    int count = 0, above = 0, below = 0, near = 0;
    for (int i = 0; i < field->lab->row_count; i++) {
        const gtl_lab_row *row = &field->lab->rows[i];
        if (row->set_up != index || !drawn(field, row)) continue;
        count++;
        if (fabs(row->effort - row->predicted_effort) <= reach_of(row))
            near++;
        else if (row->effort > row->predicted_effort)
            above++;
        else
            below++;
    }
    if (count == 0) return;
    gtl_text_add(text, " ");
    gtl_lab_add_set_up(text, field->lab, index, true);
    gtl_text_add(text, ": %s; %d on the line within U, %d above, %d below.",
                 gtl_lab_count(count, "mark").text, near, above, below);
}

static void add_alternative(const gtl_field *field, gtl_text *text)
{
    gtl_text_add(text, "Each reading is a mark: across, the effort that is predicted, and upward, the effort "
                       "that was measured, both in newtons. On the slanting line the two agree.");
    for (int i = 0; i < field->lab->set_up_count; i++) add_set_up_alternative(field, i, text);
    add_missing(field, text);
}

static void draw(gtl_field *field, double most)
{
    field->across = gtl_axis_to(most, LEFT, RIGHT);
    field->up = field->across;
    field->up.from = FOOT;
    field->up.to = TOP;
    frame(field);
    for (int i = 0; i < field->lab->row_count; i++)
        if (drawn(field, &field->lab->rows[i])) reading(field, &field->lab->rows[i]);
    letters(field);
    field->plot->height = key(field);
}

void gtl_lab_plot_effort(const gtl_lab *lab, gtl_document *document)
{
    double counted = find_most(lab, true, INFINITY);
    double most = find_most(lab, false, counted > 0 ? MOST_DRAWN * counted : (double)INFINITY);
    if (most <= 0) return;
    gtl_field field = {.lab = lab, .plot = gtl_plot_begin(TITLE), .most = most};
    gtl_text alternative = {0};
    if (field.plot) {
        draw(&field, most);
        add_alternative(&field, &alternative);
    }
    gtl_plot_end(field.plot, document, "effort", &alternative);
}
