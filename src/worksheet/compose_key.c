/* compose_key.c - what the teacher gets: every answer, what is wrong in each solution that holds a mistake,
 * and the first student's problems worked in full. */
#include "worksheet/compose.h"

#include <stdio.h>
#include <stdlib.h>

/* What a teacher accepts: 9.81 for g, and rounding to three digits, stay within it [1]. */
#define TOLERANCE 0.01

/* "24.24 N to 24.73 N". */
static void put_range(gtl_document *document, const gtl_worked *worked, const gtl_answer *answer)
{
    gtl_document_cell(document, "%s to %s",
                      gtl_answer_figure(worked, answer->unit, answer->value * (1 - TOLERANCE)).text,
                      gtl_answer_figure(worked, answer->unit, answer->value * (1 + TOLERANCE)).text);
}

void gtl_compose_answers(gtl_class *made, const gtl_worked *worked, int number)
{
    gtl_document *document = &made->key;
    gtl_text drawn = {0};
    gtl_add_drawn(&drawn, worked);
    char *words = gtl_text_take(&drawn);
    if (words)
        gtl_document_row_head(document, "Problem %d, %s: %s", number, worked->problem->name, words);
    else
        document->failed = true;
    free(words);
    for (int i = 0; i < worked->answer_count && !document->failed; i++) {
        const gtl_answer *answer = &worked->answers[i];
        gtl_document_cell(document, "%s%s%s", answer->label, answer->of[0] ? " " : "", answer->of);
        gtl_document_cell(document, "%s", gtl_answer_figure(worked, answer->unit, answer->value).text);
        put_range(document, worked, answer);
    }
}

void gtl_compose_reason(gtl_document *document, gtl_worked *worked, int number)
{
    gtl_text text = {0};
    if (worked->problem->mistake < 0) return;
    gtl_text_add(&text, "Problem %d, %s: %s", number, gtl_mistake_at((size_t)worked->problem->mistake)->word,
                 worked->shown.reason.bytes ? worked->shown.reason.bytes : "");
    gtl_document_put(document, GTL_BULLET, NULL, &text);
}

/* A lesson's elements stand under headings of their own here: the problem's number before each, so that every
 * heading of the page is another one. */
static void rename_heading(gtl_element *element, gtl_document *document, int number)
{
    gtl_text text = {0};
    gtl_text_add(&text, "Problem %d - %s", number, element->text);
    free(element->text);
    element->text = gtl_text_take(&text);
    if (!element->text) document->failed = true;
}

void gtl_compose_solution(gtl_class *made, const gtl_worked *worked, int number)
{
    gtl_document lesson = {0};
    char prefix[32];
    gtl_explain_wish wish = {.form = GTL_HTML, .ideal = !gtl_problem_raises(worked->problem)};
    snprintf(prefix, sizeof prefix, "solution-%d", number);
    gtl_document_heading(&made->solutions, "Problem %d - worked solution", number);
    gtl_explain_into(&lesson, &worked->sheet, &wish, prefix);
    for (size_t i = 0; i < lesson.count && !lesson.failed; i++) {
        gtl_element *element = &lesson.elements[i];
        if (element->kind == GTL_TITLE) element->kind = GTL_PARAGRAPH;
        if (element->kind == GTL_HEADING) rename_heading(element, &lesson, number);
    }
    gtl_document_join(&made->solutions, &lesson);
}
