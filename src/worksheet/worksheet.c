/* worksheet.c - a set and a seed to sheets and their key. */
#include "worksheet/compose.h"

#include "report/write.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>

static const gtl_column columns[] = {{"Answer to", false}, {"Figure", true}, {"Accept", false}};

#define COLUMN_COUNT ((int)(sizeof columns / sizeof *columns))

/* Figures that are drawn together have no answer, though each had one with others. */
static void tell(const gtl_worked *worked, int student, const char *why, gtl_fault_list *faults)
{
    gtl_text drawn = {0};
    if (worked->failed || !worked->rig) {
        gtl_faults_add(faults, worked->problem->ask_line, "[problem %s], student %d: %s",
                       worked->problem->name, student, why);
        return;
    }
    gtl_add_drawn(&drawn, worked);
    char *words = gtl_text_take(&drawn);
    if (words)
        gtl_faults_add(faults, worked->problem->ask_line, "[problem %s], student %d, with %s: %s",
                       worked->problem->name, student, words, why);
    else
        faults->out_of_memory = true;
    free(words);
}

/* One problem of one student into all documents that it belongs to; the reason of a mistake into `reasons`.
 */
static void compose(gtl_class *made, int student, int index, gtl_document *reasons, gtl_fault_list *faults)
{
    const gtl_problem *problem = &made->set->problems[index];
    gtl_worked worked;
    char why[GTL_REASON_SIZE];
    uint64_t number = gtl_draw_number(made->wish.seed, index, student, gtl_problem_sets(problem));
    gtl_choice choice = gtl_problem_choice(problem, number);
    if (gtl_work_problem(problem, &choice, &worked, why)) {
        gtl_compose_problem(made, &worked, student, index + 1);
        gtl_compose_answers(made, &worked, index + 1);
        gtl_compose_reason(reasons, &worked, index + 1);
        if (student == 1) gtl_compose_solution(made, &worked, index + 1);
    } else if (worked.failed) {
        faults->out_of_memory = true;
    } else {
        tell(&worked, student, why, faults);
    }
    gtl_worked_end(&worked);
}

static void compose_student(gtl_class *made, int student, gtl_fault_list *faults)
{
    gtl_document reasons = {0};
    gtl_compose_student(made, student);
    gtl_document_heading(&made->key, "Answers of student %d", student);
    gtl_document_table(&made->key, columns, COLUMN_COUNT);
    for (int i = 0; i < made->set->problem_count && !faults->out_of_memory; i++)
        compose(made, student, i, &reasons, faults);
    gtl_document_join(&made->key, &reasons);
}

/* The problem with the fewest sets of figures, where that is less than there are students; else 0. */
static int least_sets(const gtl_set *set, int students)
{
    uint64_t least = (uint64_t)students;
    for (int i = 0; i < set->problem_count; i++) {
        uint64_t sets = gtl_problem_sets(&set->problems[i]);
        if (sets < least) least = sets;
    }
    return least < (uint64_t)students ? (int)least : 0;
}

/* Which problems some students share the figures of. */
static void put_sharing(gtl_class *made)
{
    for (int i = 0; i < made->set->problem_count; i++) {
        uint64_t sets = gtl_problem_sets(&made->set->problems[i]);
        if (sets >= (uint64_t)made->wish.students) continue;
        gtl_document_paragraph(
            &made->key,
            "Problem %d has %d set%s of figures for %d students: some share theirs. Wider ranges, "
            "or smaller steps, give each student others.",
            i + 1, (int)sets, sets == 1 ? "" : "s", made->wish.students);
    }
}

static void put_key_head(gtl_class *made)
{
    gtl_document_paragraph(
        &made->key,
        "For the teacher. Seed %" PRIu64 ", %d student%s: the same seed and set give the same "
        "sheets. Figures are rounded to the nearest; what lies within 1 %% of them is right (which "
        "9.81 m/s2 for g does, and 10 m/s2 does not). It is arithmetic on the numbers typed in, no "
        "approval of any rig.",
        made->wish.seed, made->wish.students, made->wish.students == 1 ? "" : "s");
    put_sharing(made);
}

/* A page only looks at its document. */
static char *page_of(const gtl_document *document, const char *what, const gtl_worksheet_wish *wish)
{
    char foot[64];
    snprintf(foot, sizeof foot, "%s, seed %" PRIu64, what, wish->seed);
    gtl_page page = {.document = *document, .foot = foot};
    return document->failed ? NULL : gtl_write_html(&page);
}

/* The key's title becomes a heading where it does not begin a page. */
static void put_behind(gtl_class *made)
{
    if (!made->key.failed) made->key.elements[0].kind = GTL_PARAGRAPH;
    gtl_document_leaf(&made->sheets);
    gtl_document_heading(&made->sheets, "Key");
    gtl_document_join(&made->sheets, &made->key);
}

static gtl_status write(gtl_class *made, gtl_worksheets *out)
{
    if (!made->solutions.failed && made->solutions.count > 0) gtl_document_leaf(&made->key);
    gtl_document_join(&made->key, &made->solutions);
    if (made->wish.together) put_behind(made);
    out->sheets =
        page_of(&made->sheets, made->wish.together ? "worksheet and key" : "worksheet", &made->wish);
    if (!made->wish.together) out->key = page_of(&made->key, "key", &made->wish);
    if (out->sheets && (out->key || made->wish.together)) return GTL_OK;
    gtl_worksheets_end(out);
    return GTL_NO_MEMORY;
}

gtl_status gtl_worksheet(const gtl_set *set, const gtl_worksheet_wish *wish, gtl_worksheets *made,
                         gtl_fault_list *faults)
{
    gtl_class sheets = {.set = set, .wish = *wish};
    size_t before = faults->count;
    *made = (gtl_worksheets){.least_sets = least_sets(set, wish->students)};
    gtl_compose_titles(&sheets);
    put_key_head(&sheets);
    for (int i = 1; i <= wish->students && !faults->out_of_memory; i++) compose_student(&sheets, i, faults);
    gtl_status status = faults->out_of_memory ? GTL_NO_MEMORY : GTL_FAULTY;
    if (faults->count == before && !faults->out_of_memory) status = write(&sheets, made);
    gtl_document_end(&sheets.sheets);
    gtl_document_end(&sheets.key);
    gtl_document_end(&sheets.solutions);
    return status;
}

void gtl_worksheets_end(gtl_worksheets *made)
{
    free(made->sheets);
    free(made->key);
    *made = (gtl_worksheets){0};
}
