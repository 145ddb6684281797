/* compose.h - sheets and key on their way to documents. */
#ifndef WORKSHEET_COMPOSE_H
#define WORKSHEET_COMPOSE_H

#include "worksheet/worked.h"

typedef struct gtl_class {
    const gtl_set *set;
    gtl_worksheet_wish wish;
    gtl_document sheets;
    gtl_document key;
    gtl_document solutions; /* worked in full, of the first student */
} gtl_class;

/* Begin both documents with their titles. */
void gtl_compose_titles(gtl_class *made);
/* Begin the sheet of a student, and the answers to it. */
void gtl_compose_student(gtl_class *made, int student);
/* One problem of the sheet that was begun; `number` counts from 1. */
void gtl_compose_problem(gtl_class *made, const gtl_worked *worked, int student, int number);
/* Its rows in the key. */
void gtl_compose_answers(gtl_class *made, const gtl_worked *worked, int number);
/* What is said of it behind the student's table: of a mistake, what is wrong. */
void gtl_compose_reason(gtl_document *document, gtl_worked *worked, int number);
/* The worked solution, by explain. */
void gtl_compose_solution(gtl_class *made, const gtl_worked *worked, int number);

#endif
