/* plot_efficiency.c - the efficiency of every reading, by set-up, with mean and spread. */
#include "lab/compose.h"
#include "lab/plot.h"

#include <math.h>
#include <stdlib.h>

#define TITLE "Efficiency by set-up"

/* Set-ups in one figure, so that each stands on a sheet of paper. */
#define MOST_LANES 6
/* Readings of a set-up stand one below the other, in no more tracks than these. */
#define MOST_TRACKS 8

#define LEFT      20.0  /* of the axis [units] */
#define RIGHT     600.0 /* of the axis [units] */
#define TOP       50.0  /* foot line of the first lane's name [units] */
#define TRACK     16.0  /* from one reading to the next [units] */
#define LANE_GAP  26.0  /* between two lanes [units] */
#define MEAN_HALF 9.0   /* of the stroke at the mean [units] */
#define GRID_PEN  0.4
#define WHOLE_PEN 1.6
#define MEAN_PEN  4.0

/* Beyond this an efficiency would push all others together: told in words, not drawn [1]. */
#define MOST_DRAWN 1.5

typedef struct gtl_lanes {
    const gtl_lab *lab;
    gtl_drawing *plot;
    gtl_axis axis; /* of efficiency [1] */
    int from, to;  /* set-ups */
} gtl_lanes;

static bool drawn(const gtl_lab_row *row)
{
    return isfinite(row->efficiency) && row->efficiency <= MOST_DRAWN;
}

static bool within(const gtl_lanes *lanes, const gtl_lab_row *row)
{
    return row->set_up >= lanes->from && row->set_up < lanes->to;
}

static double highest(const gtl_lanes *lanes)
{
    double most = 1;
    for (int i = 0; i < lanes->lab->row_count; i++) {
        const gtl_lab_row *row = &lanes->lab->rows[i];
        double reach = isfinite(row->efficiency_u) ? GTL_LAB_COVERAGE * row->efficiency_u : 0;
        if (within(lanes, row) && drawn(row)) most = fmax(most, fmin(row->efficiency + reach, MOST_DRAWN));
    }
    return most;
}

static bool is_whole(const gtl_axis *axis, int tick)
{
    return fabs(gtl_axis_tick(axis, tick) - 1) < axis->step / 2;
}

/* --- a lane --- */

static void lane_words(const gtl_lab *lab, int index, gtl_text *text)
{
    const gtl_lab_set_up *one = &lab->set_ups[index];
    gtl_text_add(text, "%s: ", gtl_letter_of(index).text);
    gtl_lab_add_name(text, one);
    gtl_text_add(text, ": ");
    if (!isfinite(one->efficiency_mean)) {
        gtl_text_add(text, "no row counts, so no mean");
        return;
    }
    gtl_text_add(text, "mean %s %%", gtl_figure_percent(one->efficiency_mean).text);
    if (isfinite(one->efficiency_spread))
        gtl_text_add(text, ", spread %s points", gtl_figure_percent(one->efficiency_spread).text);
    gtl_text_add(text, ", %d of %s", one->counted, gtl_lab_count(one->row_count, "row").text);
}

static void reading(gtl_lanes *lanes, const gtl_lab_row *row, double y)
{
    const gtl_axis *axis = &lanes->axis;
    double reach = GTL_LAB_COVERAGE * row->efficiency_u;
    if (isfinite(reach))
        gtl_plot_bar(lanes->plot,
                     (gtl_point){gtl_axis_place(axis, fmax(row->efficiency - reach, axis->low)), y},
                     (gtl_point){gtl_axis_place(axis, fmin(row->efficiency + reach, axis->high)), y});
    gtl_plot_mark(lanes->plot, (gtl_point){gtl_axis_place(axis, row->efficiency), y}, row->set_up,
                  row->counted);
}

/* Mean as a broad stroke, spread as a bar through it, a track below the readings. */
static void mean(gtl_lanes *lanes, const gtl_lab_set_up *one, double y)
{
    const gtl_axis *axis = &lanes->axis;
    if (!isfinite(one->efficiency_mean)) return;
    double x = gtl_axis_place(axis, one->efficiency_mean);
    gtl_plot_line(lanes->plot, (gtl_point){x, y - MEAN_HALF}, (gtl_point){x, y + MEAN_HALF}, MEAN_PEN, false);
    if (!isfinite(one->efficiency_spread)) return;
    gtl_plot_bar(lanes->plot,
                 (gtl_point){gtl_axis_place(axis, one->efficiency_mean - one->efficiency_spread), y},
                 (gtl_point){gtl_axis_place(axis, one->efficiency_mean + one->efficiency_spread), y});
}

/* The grid behind a lane; that of 100 % is heavier. */
static void grid(gtl_lanes *lanes, double top, double foot)
{
    const gtl_axis *axis = &lanes->axis;
    for (int i = 0; i < gtl_axis_ticks(axis); i++) {
        double x = gtl_axis_place(axis, gtl_axis_tick(axis, i));
        gtl_plot_line(lanes->plot, (gtl_point){x, top}, (gtl_point){x, foot},
                      is_whole(axis, i) ? WHOLE_PEN : GRID_PEN, false);
    }
}

/* A set-up from `y`, the foot line of its name; returns where the next lane begins. */
static double lane(gtl_lanes *lanes, int index, double y)
{
    const gtl_lab *lab = lanes->lab;
    gtl_text text = {0};
    lane_words(lab, index, &text);
    char *words = gtl_text_take(&text);
    if (!words) lanes->plot->failed = true;
    y = gtl_plot_words(lanes->plot, (gtl_point){LEFT, y}, words ? words : "");
    free(words);
    int count = 0;
    for (int i = 0; i < lab->row_count; i++)
        if (lab->rows[i].set_up == index && drawn(&lab->rows[i])) count++;
    double last = y + TRACK * (count < MOST_TRACKS ? count : MOST_TRACKS) + 4;
    grid(lanes, y - GTL_TEXT_STEP + 7, last + MEAN_HALF + 3);
    count = 0;
    for (int i = 0; i < lab->row_count; i++)
        if (lab->rows[i].set_up == index && drawn(&lab->rows[i]))
            reading(lanes, &lab->rows[i], y + TRACK * (count++ % MOST_TRACKS));
    mean(lanes, &lab->set_ups[index], last);
    return last + MEAN_HALF + LANE_GAP;
}

/* --- around the lanes --- */

static void scale(gtl_lanes *lanes, double foot)
{
    const gtl_axis *axis = &lanes->axis;
    for (int i = 0; i < gtl_axis_ticks(axis); i++) {
        double tick = gtl_axis_tick(axis, i);
        gtl_plot_text(lanes->plot, (gtl_point){gtl_axis_place(axis, tick), foot + GTL_TEXT_STEP},
                      GTL_ALIGN_MIDDLE, is_whole(axis, i), "%s", gtl_lab_typed(100 * tick).text);
    }
    gtl_plot_line(lanes->plot, (gtl_point){LEFT, foot}, (gtl_point){RIGHT, foot}, WHOLE_PEN, false);
    gtl_plot_text(lanes->plot, (gtl_point){(LEFT + RIGHT) / 2, foot + 2 * GTL_TEXT_STEP}, GTL_ALIGN_MIDDLE,
                  false, "efficiency [%%]");
}

/* Rows that no mark stands for. */
static void add_missing(const gtl_lanes *lanes, gtl_text *text)
{
    int count = 0;
    for (int i = 0; i < lanes->lab->row_count; i++) {
        const gtl_lab_row *row = &lanes->lab->rows[i];
        if (!within(lanes, row) || drawn(row)) continue;
        gtl_text_add(text, "%s line %d (", count++ > 0 ? "," : " Not drawn:", row->line);
        if (isfinite(row->efficiency))
            gtl_text_add(text, "%s %%, off the scale)", gtl_figure_percent(row->efficiency).text);
        else
            gtl_text_add(text, "no efficiency)");
    }
    if (count > 0) gtl_text_add(text, ".");
}

static double key(gtl_lanes *lanes, double y)
{
    gtl_text text = {0};
    gtl_text_add(&text, "A mark is a reading, its bar U each way. Black counts, white does not. The broad "
                        "stroke is the mean, its bar the spread.");
    add_missing(lanes, &text);
    char *words = gtl_text_take(&text);
    if (!words) lanes->plot->failed = true;
    y = gtl_plot_words(lanes->plot, (gtl_point){LEFT, y}, words ? words : "");
    free(words);
    return y;
}

static void add_lane_alternative(const gtl_lanes *lanes, int index, gtl_text *text)
{
    double least = INFINITY, most = -INFINITY;
    int count = 0;
    for (int i = 0; i < lanes->lab->row_count; i++) {
        const gtl_lab_row *row = &lanes->lab->rows[i];
        if (row->set_up != index || !drawn(row)) continue;
        count++;
        least = fmin(least, row->efficiency);
        most = fmax(most, row->efficiency);
    }
    gtl_text_add(text, " ");
    lane_words(lanes->lab, index, text);
    if (count > 0)
        gtl_text_add(text, "; %s from %s %% to %s %%", gtl_lab_count(count, "mark").text,
                     gtl_figure_percent(least).text, gtl_figure_percent(most).text);
    gtl_text_add(text, ".");
}

static void figure(const gtl_lab *lab, int from, int to, gtl_document *document)
{
    gtl_lanes lanes = {.lab = lab, .plot = gtl_plot_begin(TITLE), .from = from, .to = to};
    gtl_text prefix = {0}, alternative = {0};
    gtl_text_add(&prefix, "efficiency-%d", from / MOST_LANES);
    char *ids = gtl_text_take(&prefix);
    gtl_text_add(&alternative, "Efficiency across, from 0 to over 100 %%; one lane a set-up.");
    if (lanes.plot && ids) {
        lanes.axis = gtl_axis_to(highest(&lanes), LEFT, RIGHT);
        gtl_plot_text(lanes.plot, (gtl_point){LEFT, 24}, GTL_ALIGN_LEFT, true, TITLE);
        double y = TOP;
        for (int i = from; i < to; i++) y = lane(&lanes, i, y);
        scale(&lanes, y - LANE_GAP + 3);
        lanes.plot->height = key(&lanes, y + 2.5 * GTL_TEXT_STEP);
    } else {
        document->failed = true;
    }
    for (int i = from; i < to; i++) add_lane_alternative(&lanes, i, &alternative);
    add_missing(&lanes, &alternative);
    gtl_plot_end(lanes.plot, document, ids ? ids : "", &alternative);
    free(ids);
}

void gtl_lab_plot_efficiency(const gtl_lab *lab, gtl_document *document)
{
    for (int from = 0; from < lab->set_up_count; from += MOST_LANES)
        figure(lab, from, from + MOST_LANES < lab->set_up_count ? from + MOST_LANES : lab->set_up_count,
               document);
}
