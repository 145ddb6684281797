/* work.c - a problem with one choice of figures: the rig is read, worked, and asked. */
#include "worksheet/worked.h"

#include "base/grow.h"
#include "report/geometry.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* A mistake that changes the answer by less than this is none that anybody could find [1]. */
#define LEAST_DIFFERENCE 0.02
/* [N] */
#define MOST_IN_NEWTONS 20000

static bool refuse(char why[GTL_REASON_SIZE], const char *reason)
{
    snprintf(why, GTL_REASON_SIZE, "%s", reason);
    return false;
}

static bool no_memory(gtl_worked *worked)
{
    worked->failed = true;
    return false;
}

bool gtl_problem_raises(const gtl_problem *problem)
{
    unsigned needs = problem->mistake >= 0 ? gtl_mistake_needs(problem->mistake) : 0;
    for (int i = 0; i < problem->ask_count; i++) needs |= gtl_ask_needs(problem->asks[i]);
    return (needs & GTL_NEEDS_RAISE) != 0;
}

/* --- answers --- */

void gtl_answer_add(gtl_worked *worked, const char *label, const char *of, gtl_answer_unit unit, double value)
{
    gtl_answer *answers =
        gtl_grow(worked->answers, (size_t)worked->answer_count, &worked->answer_capacity, sizeof *answers);
    if (!answers) {
        worked->failed = true;
        return;
    }
    worked->answers = answers;
    answers[worked->answer_count++] = (gtl_answer){label, of, unit, value};
}

gtl_figure gtl_answer_figure(const gtl_worked *worked, gtl_answer_unit unit, double value)
{
    switch (unit) {
    case GTL_ANSWER_FORCE:
        return gtl_exact_force(&worked->lesson, value);
    case GTL_ANSWER_LENGTH:
        return gtl_exact_length(&worked->lesson, value);
    case GTL_ANSWER_WORK:
        return gtl_exact_work(&worked->lesson, value);
    case GTL_ANSWER_PERCENT:
        return gtl_exact_percent(value);
    default:
        return gtl_exact_number(value);
    }
}

/* --- reading --- */

static bool choose_values(gtl_worked *worked)
{
    const gtl_problem *problem = worked->problem;
    size_t size = problem->rig.count * sizeof *worked->entries;
    worked->entries = malloc(size + 1);
    if (!worked->entries) return no_memory(worked);
    memcpy(worked->entries, problem->rig.entries, size);
    for (int i = 0; i < problem->varied_count; i++) {
        const gtl_vary *vary = &problem->varied[i];
        worked->entries[vary->entry].value = vary->values[worked->choice.value[i]];
    }
    return true;
}

static bool read_rig(gtl_worked *worked, char why[GTL_REASON_SIZE])
{
    gtl_fault_list faults;
    gtl_faults_begin(&faults, worked->problem->file);
    worked->rig = gtl_read_entries(worked->entries, worked->problem->rig.count, &faults);
    if (!worked->rig && faults.count > 0 && !faults.out_of_memory) {
        const gtl_fault *fault = &faults.items[0];
        snprintf(why, GTL_REASON_SIZE, "%s:%d: %s", gtl_fault_file(&faults, fault), fault->line, fault->text);
    } else if (!worked->rig) {
        no_memory(worked);
    }
    gtl_faults_end(&faults);
    return worked->rig != NULL;
}

/* --- working --- */

static const gtl_outcome *possible(const gtl_sheet *sheet, gtl_case_kind kind)
{
    const gtl_outcome *outcome = gtl_sheet_outcome(sheet, kind);
    return outcome && outcome->possible ? outcome : NULL;
}

/* A class compares figures: all of one problem are in newtons, unless they are very large. */
static gtl_print_units units_for(const gtl_sheet *sheet)
{
    gtl_print_units units = gtl_print_units_for(sheet);
    if (sheet->rig->us_units || gtl_rig_force(sheet->rig) > MOST_IN_NEWTONS) return units;
    units.force = "N";
    units.newtons = 1;
    return units;
}

static bool rate(gtl_worked *worked, char why[GTL_REASON_SIZE])
{
    gtl_status status = gtl_rate(worked->rig, &worked->sheet);
    worked->rated = true;
    if (status == GTL_NO_MEMORY) return no_memory(worked);
    if (status != GTL_OK) {
        snprintf(why, GTL_REASON_SIZE, "%.120s:%d: %.260s", worked->problem->file, worked->sheet.blame,
                 worked->sheet.reason);
        return false;
    }
    worked->hold = possible(&worked->sheet, GTL_HOLD);
    worked->raise = possible(&worked->sheet, GTL_RAISE);
    if (worked->hold && worked->hold->state->runs_away) worked->hold = NULL;
    worked->lesson = (gtl_lesson){.sheet = &worked->sheet,
                                  .rig = worked->rig,
                                  .units = units_for(&worked->sheet),
                                  .hold = worked->hold,
                                  .raise = worked->raise};
    return true;
}

static void read_lift(gtl_worked *worked)
{
    const gtl_vary *lift = &worked->problem->lift;
    char ignored[GTL_WHY_SIZE];
    worked->lift = NAN;
    worked->lift_text = "";
    if (lift->count == 0) return;
    worked->lift_text = lift->values[worked->choice.value[worked->problem->varied_count]];
    gtl_parse_quantity(worked->lift_text, GTL_LENGTH, NAN, &worked->lift, NULL, ignored);
}

/* --- asking --- */

static bool answer(gtl_worked *worked, char why[GTL_REASON_SIZE])
{
    for (int i = 0; i < worked->problem->ask_count; i++) {
        const char *missing = gtl_needs_missing(worked, gtl_ask_needs(worked->problem->asks[i]));
        if (missing) {
            snprintf(why, GTL_REASON_SIZE, "this rig has no one answer to `%s`: %s",
                     gtl_ask_at((size_t)worked->problem->asks[i])->word, missing);
            return false;
        }
        gtl_ask_answer(worked->problem->asks[i], worked);
    }
    return true;
}

static bool show_mistake(gtl_worked *worked, char why[GTL_REASON_SIZE])
{
    int mistake = worked->problem->mistake;
    const char *word = gtl_mistake_at((size_t)mistake)->word;
    const char *missing = gtl_needs_missing(worked, gtl_mistake_needs(mistake));
    if (!missing) missing = gtl_mistake_show(mistake, worked);
    if (missing) {
        snprintf(why, GTL_REASON_SIZE, "this rig cannot show `%s`: %s", word, missing);
        return false;
    }
    const gtl_shown *shown = &worked->shown;
    if (shown->asked.failed || shown->reason.failed || shown->solution.failed) return no_memory(worked);
    if (!(fabs(shown->wrong - shown->right) > LEAST_DIFFERENCE * fabs(shown->right))) {
        snprintf(
            why, GTL_REASON_SIZE,
            "`%s` changes the answer by less than 2 %% here, which nobody would find; choose other values",
            word);
        return false;
    }
    gtl_answer_add(worked, "Right figure", "", shown->unit, shown->right);
    return true;
}

bool gtl_work_problem(const gtl_problem *problem, const gtl_choice *choice, gtl_worked *worked,
                      char why[GTL_REASON_SIZE])
{
    *worked = (gtl_worked){.problem = problem, .choice = *choice};
    why[0] = '\0';
    if (!choose_values(worked) || !read_rig(worked, why) || !rate(worked, why)) return false;
    read_lift(worked);
    bool well = problem->mistake >= 0 ? show_mistake(worked, why) : answer(worked, why);
    if (well && worked->answer_count == 0 && !worked->failed)
        well = refuse(why, "no anchor holds anything, so there is nothing to ask");
    return well && !worked->failed;
}

void gtl_worked_end(gtl_worked *worked)
{
    free(worked->shown.asked.bytes);
    free(worked->shown.reason.bytes);
    gtl_document_end(&worked->shown.solution);
    free(worked->answers);
    if (worked->rated) gtl_sheet_end(&worked->sheet);
    gtl_rig_free(worked->rig);
    free(worked->entries);
    *worked = (gtl_worked){0};
}
