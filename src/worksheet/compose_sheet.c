/* compose_sheet.c - what a student gets: drawings, what is given, questions, room to write. No answer is in
 * it, nor in anything that a page holds unseen. */
#include "worksheet/compose.h"

#include "report/drawing.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>

static const char rules[] = "Ropes weigh nothing and do not stretch, and a part that has no mass given "
                            "weighs nothing. Write each figure "
                            "with its unit. Drawings show how the rope runs; take lengths and places from "
                            "what is given. This is work on "
                            "paper: nothing here says that a rig may be used.";

void gtl_compose_titles(gtl_class *made)
{
    const gtl_set *set = made->set;
    const char *title = set->title[0] ? set->title : "Worksheet";
    gtl_text key = {0};
    gtl_document_title(&made->sheets, 4, title);
    if (set->note[0]) gtl_document_paragraph(&made->sheets, "%s", set->note);
    gtl_text_add(&key, "Key: %s", title);
    gtl_document_put(&made->key, GTL_TITLE, NULL, &key);
}

/* Where the figures are from, so that a sheet finds its key. */
static void put_mark(gtl_document *document, const gtl_class *made, int student)
{
    gtl_document_paragraph(document, "Figures: seed %" PRIu64 ", student %d.", made->wish.seed, student);
}

static bool us_units(const gtl_set *set)
{
    for (int i = 0; i < set->problem_count; i++)
        for (size_t k = 0; k < set->problems[i].rig.count; k++) {
            const gtl_entry *entry = &set->problems[i].rig.entries[k];
            if (entry->key && gtl_text_compare(entry->key, "units") == 0 &&
                gtl_text_compare(entry->value, "us") == 0)
                return true;
        }
    return false;
}

void gtl_compose_student(gtl_class *made, int student)
{
    gtl_document *document = &made->sheets;
    if (student > 1) gtl_document_leaf(document);
    gtl_document_heading(document, "Student %d", student);
    put_mark(document, made, student);
    gtl_document_paragraph(document, "Name, date:");
    gtl_document_room(document, 1);
    gtl_document_paragraph(document, "%s %s%s", rules,
                           "Where nothing else is said a mass of 1 kg weighs 9.80665 N; 9.81 N will do.",
                           us_units(made->set) ? " A mass of 1 lb weighs 1 lbf." : "");
}

/* The rig as its file draws it. */
static void put_drawing(gtl_document *document, const gtl_worked *worked, int student, int number)
{
    char title[64], prefix[64];
    snprintf(title, sizeof title, "The rig of problem %d", number);
    snprintf(prefix, sizeof prefix, "student-%d-rig-%d", student, number);
    gtl_drawing *drawing = gtl_draw_bare(&worked->sheet, title);
    char *words = gtl_words_bare(&worked->sheet);
    gtl_text markup = {.failed = !drawing || !words};
    if (!markup.failed) gtl_write_drawing(&markup, drawing, prefix, words);
    snprintf(title, sizeof title, "Student %d, the rig of problem %d", student, number);
    gtl_document_figure(document, title, &markup);
    gtl_drawing_end(drawing);
    free(words);
}

static void put_questions(gtl_document *document, const gtl_worked *worked)
{
    const gtl_problem *problem = worked->problem;
    for (int i = 0; i < problem->ask_count; i++) {
        gtl_text text = {0};
        if (problem->ask_count > 1) gtl_text_add(&text, "%c) ", 'a' + i);
        gtl_ask_question(problem->asks[i], &text, worked);
        gtl_document_put(document, GTL_PARAGRAPH, NULL, &text);
    }
}

/* Move the lines of a solution, which are not needed again. */
static void put_mistake(gtl_document *document, const gtl_worked *worked)
{
    const gtl_shown *shown = &worked->shown;
    gtl_document_paragraph(
        document,
        "Somebody was asked: %s The solution below has one mistake in it. Find it, say why it is "
        "wrong, and give the right figure.",
        shown->asked.bytes ? shown->asked.bytes : "");
    for (size_t i = 0; i < shown->solution.count; i++) {
        const gtl_element *line = &shown->solution.elements[i];
        if (line->kind == GTL_EQUATION)
            gtl_document_equation(document, "%s", line->text);
        else
            gtl_document_bullet(document, "%s", line->text);
    }
}

void gtl_compose_problem(gtl_class *made, const gtl_worked *worked, int student, int number)
{
    gtl_document *document = &made->sheets;
    bool mistake = worked->problem->mistake >= 0;
    gtl_document_step(document, mistake ? "Problem %d: find the mistake" : "Problem %d", number);
    if (worked->problem->text[0]) gtl_document_paragraph(document, "%s", worked->problem->text);
    put_drawing(document, worked, student, number);
    gtl_compose_given(document, worked);
    if (mistake)
        put_mistake(document, worked);
    else
        put_questions(document, worked);
    gtl_document_room(document, worked->problem->room);
}
