/* head.h - the beginning of a worked solution, in two files. */
#ifndef EXPLAIN_HEAD_H
#define EXPLAIN_HEAD_H

#include "explain/lesson.h"

/* given.c: bodies and their places, weights, friction, the way of each line, what the letters mean. */
void gtl_lesson_given(gtl_lesson *lesson);

#endif
