/* compose_rows.c - the rows of a lab: as they were typed, what they come to, and what was to be expected. */
#include "lab/compose.h"
#include "lab/plot.h"

#include <gantline/units.h>
#include <math.h>
#include <string.h>

static void name_cell(const gtl_lab_row *row, gtl_document *document)
{
    if (row->group[0])
        gtl_document_cell(document, "%d, %s", row->line, row->group);
    else
        gtl_document_cell(document, "%d", row->line);
}

static void typed_cell(double number, gtl_document *document)
{
    gtl_document_cell(document, "%s", gtl_lab_typed(number).text);
}

/* --- as typed --- */

static const char *state_of(const gtl_lab_row *row)
{
    if (!row->state_stated) return "moving?";
    return row->held ? "held" : "moving";
}

static const char *scale_of(const gtl_lab_row *row)
{
    static const char *const names[] = {[GTL_LAB_SCALE_NOT_STATED] = "-",
                                        [GTL_LAB_UPRIGHT] = "upright",
                                        [GTL_LAB_UPSIDE_DOWN] = "upside down"};
    return names[row->scale];
}

/* What was typed in one more column, where the table had it. */
static const struct gtl_more_column {
    gtl_lab_column column;
    gtl_column head;
    const char *words; /* of a sentence about all rows, before the number */
    const char *unit;
} more[] = {
    {GTL_LAB_READING, {"reading [N]", true}, "load and effort are read to plus or minus", "N"},
    {GTL_LAB_DISTANCE_READING, {"dist. reading [m]", true}, "distances are read to plus or minus", "m"},
    {GTL_LAB_MOVING_WEIGHT, {"moving weight [N]", true}, "the moving weight is", "N"},
    {GTL_LAB_SCALE_WEIGHT, {"scale weight [N]", true}, "the weight of the scale is", "N"},
};

#define MORE_COUNT (sizeof more / sizeof *more)

static double number_in(const gtl_lab_row *row, gtl_lab_column column)
{
    return column == GTL_LAB_READING            ? row->reading
           : column == GTL_LAB_DISTANCE_READING ? row->distance_reading
           : column == GTL_LAB_MOVING_WEIGHT    ? row->moving_weight
                                                : row->scale_weight;
}

/* Whether a sentence says as much as the column would: all rows have the same number. */
static bool is_alike(const gtl_lab *lab, gtl_lab_column column)
{
    double first = number_in(&lab->rows[0], column);
    for (int i = 0; i < lab->row_count; i++)
        if (!(number_in(&lab->rows[i], column) == first)) return false;
    return true;
}

static bool has_column(const gtl_lab *lab, gtl_lab_column column)
{
    return lab->columns[column].there && !is_alike(lab, column);
}

/* Whether the rows' states are more than a sentence. */
static bool has_states(const gtl_lab *lab)
{
    for (int i = 0; i < lab->row_count; i++)
        if (lab->rows[i].held || !lab->rows[i].state_stated) return true;
    return false;
}

static void reading_row(const gtl_lab *lab, const gtl_lab_row *row, gtl_document *document)
{
    name_cell(row, document);
    gtl_document_cell(document, "%s", gtl_letter_of(row->set_up).text);
    typed_cell(row->load, document);
    typed_cell(row->load_distance, document);
    typed_cell(row->effort_read, document);
    typed_cell(row->effort_distance, document);
    if (has_states(lab)) gtl_document_cell(document, "%s", state_of(row));
    for (size_t i = 0; i < MORE_COUNT; i++)
        if (has_column(lab, more[i].column)) typed_cell(number_in(row, more[i].column), document);
    if (lab->columns[GTL_LAB_SCALE].there) gtl_document_cell(document, "%s", scale_of(row));
}

/* What is the same in all rows; a mass taken for a force; a state taken for granted. */
static void taken(const gtl_lab *lab, gtl_document *document)
{
    bool guessed = false;
    for (size_t i = 0; i < MORE_COUNT; i++)
        if (lab->columns[more[i].column].there && is_alike(lab, more[i].column))
            gtl_document_bullet(document, "In all rows %s %s %s", more[i].words,
                                gtl_lab_typed(number_in(&lab->rows[0], more[i].column)).text, more[i].unit);
    if (!has_states(lab))
        gtl_document_bullet(document, "All rows are stated as read while the load was moving up");
    for (int i = 0; i < lab->row_count; i++) guessed = guessed || !lab->rows[i].state_stated;
    if (guessed)
        gtl_document_bullet(
            document,
            "\"moving?\": no state is stated; the row is taken as read while the load was going up");
    for (int i = 0; i < GTL_LAB_COLUMN_COUNT; i++)
        if (lab->columns[i].used_gravity)
            gtl_document_bullet(document, "The column `%s` is in %s: taken times g, %s m/s2, as a force",
                                gtl_lab_column_at((size_t)i)->name, lab->columns[i].unit,
                                gtl_figure_gravity(GTL_STANDARD_GRAVITY).text);
}

static void more_heads(const gtl_lab *lab, gtl_document *document)
{
    static const gtl_column state = {"state", false}, scale = {"scale", false};
    bool first = true;
    if (has_states(lab)) {
        gtl_document_column(document, &state, first);
        first = false;
    }
    for (size_t i = 0; i < MORE_COUNT; i++) {
        if (!has_column(lab, more[i].column)) continue;
        gtl_document_column(document, &more[i].head, first);
        first = false;
    }
    if (lab->columns[GTL_LAB_SCALE].there) gtl_document_column(document, &scale, first);
}

void gtl_lab_compose_readings(const gtl_lab *lab, gtl_document *document)
{
    static const gtl_column columns[] = {{"line, group", false}, {"set-up", false},
                                         {"load [N]", true},     {"its dist. [m]", true},
                                         {"effort [N]", true},   {"its dist. [m]", true}};
    gtl_document_heading(document, "Readings as typed");
    gtl_document_table(document, columns, (int)(sizeof columns / sizeof *columns));
    more_heads(lab, document);
    for (int i = 0; i < lab->row_count; i++) reading_row(lab, &lab->rows[i], document);
    taken(lab, document);
}

/* --- what they come to --- */

/* A figure that does not count stands in brackets, so that none looks like one that does. */
static void judged_cell(const gtl_lab_row *row, gtl_figure figure, gtl_document *document)
{
    bool bracketed = !row->counted && strcmp(figure.text, "-") != 0;
    gtl_document_cell(document, "%s%s%s", bracketed ? "(" : "", figure.text, bracketed ? ")" : "");
}

static void work_row(const gtl_lab_row *row, bool all, gtl_document *document)
{
    name_cell(row, document);
    judged_cell(row, gtl_figure_ratio(row->work_in), document);
    judged_cell(row, gtl_figure_ratio(row->work_out), document);
    judged_cell(row, gtl_figure_ratio(row->ideal_advantage), document);
    judged_cell(row, gtl_figure_ratio(row->measured_advantage), document);
    judged_cell(row, gtl_figure_percent(row->efficiency), document);
    judged_cell(row, gtl_figure_percent(GTL_LAB_COVERAGE * row->efficiency_u), document);
    judged_cell(row, gtl_figure_percent(row->efficiency_school), document);
    if (all) judged_cell(row, gtl_figure_percent(row->efficiency_all), document);
    gtl_document_cell(document, "%s", row->counted ? "yes" : "NO");
    if (!row->counted) gtl_document_strong(document);
}

void gtl_lab_compose_work(const gtl_lab *lab, gtl_document *document)
{
    static const gtl_column columns[] = {{"line, group", false},
                                         {"work in [J]", true},
                                         {"work out [J]", true},
                                         {"ideal [1]", true},
                                         {"measured [1]", true}};
    static const gtl_column shares[] = {{"efficiency [%]", true}, {"U [%]", true}, {"school [%]", true}};
    static const gtl_column moved = {"all raised [%]", true}, counts = {"counts", false};
    bool all = lab->columns[GTL_LAB_MOVING_WEIGHT].there;
    gtl_document_heading(document, "Work, advantage, efficiency");
    gtl_document_table(document, columns, (int)(sizeof columns / sizeof *columns));
    for (size_t i = 0; i < sizeof shares / sizeof *shares; i++)
        gtl_document_column(document, &shares[i], i == 0);
    if (all) gtl_document_column(document, &moved, false);
    gtl_document_column(document, &counts, false);
    for (int i = 0; i < lab->row_count; i++) work_row(&lab->rows[i], all, document);
    gtl_document_bullet(document, "Work is force times distance. Ideal advantage: effort distance over load "
                                  "distance. Measured advantage: load over effort. Efficiency: work out over "
                                  "work in, which is measured over ideal advantage");
    gtl_document_bullet(document,
                        "U belongs to the efficiency, for k = 2; \"school\" is what adding the percentages "
                        "of the four readings gives instead. Both are in points of per cent");
    gtl_document_bullet(document, "In brackets: the row does not count, and a finding says why");
    if (all)
        gtl_document_bullet(document,
                            "\"All raised\" counts the moving weight as raised too; the mean does not");
}

/* --- what was to be expected --- */

static const char *basis_of(const gtl_lab_row *row)
{
    if (isfinite(row->predicted_least)) return "held";
    if (!isfinite(row->predicted_effort)) return "none";
    return row->predicted_case == GTL_RAISE ? "raise" : "hold";
}

static void prediction_row(const gtl_lab_row *row, gtl_document *document)
{
    bool ranged = isfinite(row->predicted_least);
    name_cell(row, document);
    typed_cell(row->effort, document);
    gtl_document_cell(document, "%s", gtl_figure_ratio(gtl_lab_effort_coverage(row)).text);
    if (ranged)
        gtl_document_cell(document, "%s to %s", gtl_figure_ratio(row->predicted_least).text,
                          gtl_figure_ratio(row->predicted_most).text);
    else
        gtl_document_cell(document, "%s", gtl_figure_ratio(row->predicted_effort).text);
    judged_cell(row, gtl_figure_percent(ranged ? (double)NAN : row->effort / row->predicted_effort - 1),
                document);
    gtl_document_cell(document, "%s", basis_of(row));
}

void gtl_lab_compose_prediction(const gtl_lab *lab, gtl_document *document)
{
    static const gtl_column columns[] = {{"line, group", false},  {"effort [N]", true},  {"its U [N]", true},
                                         {"predicted [N]", true}, {"differs [%]", true}, {"by", false}};
    gtl_document_heading(document, "Against the prediction");
    gtl_document_table(document, columns, (int)(sizeof columns / sizeof *columns));
    for (int i = 0; i < lab->row_count; i++) prediction_row(&lab->rows[i], document);
    gtl_document_bullet(
        document,
        "By \"raise\": with the friction that the rig file states, the load going up. By \"hold\": without "
        "friction, since none is stated, or only parts are: the effort read should be greater. By \"held\": "
        "any effort in that range holds the load still. By \"none\": the rig has no answer");
    gtl_document_bullet(document,
                        "A row that differs by less than U of its effort agrees with the prediction");
    gtl_lab_plot_effort(lab, document);
}
