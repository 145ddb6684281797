/* matrix.h - one sparse matrix of fixed pattern, factored by KLU. */
#ifndef SOLVE_MATRIX_H
#define SOLVE_MATRIX_H

#include <stdbool.h>
#include <stddef.h>
#include <suitesparse/klu.h>

/* A place named by its row and column, before the pattern is known. */
typedef struct gtl_cell {
    int row;
    int column;
} gtl_cell;

typedef struct gtl_matrix {
    int order;
    int *starts;    /* order + 1: where each column begins */
    int *rows;      /* row of each place */
    double *values; /* value of each place */
    int *diagonal;  /* place of each diagonal entry */
    klu_symbolic *symbolic;
    klu_numeric *numeric;
    klu_common common;
} gtl_matrix;

/* Make the pattern from cells (doubled ones count once; the whole diagonal is added). place[i] becomes the
 * place of cells[i]. False without memory. */
bool gtl_matrix_begin(gtl_matrix *matrix, int order, const gtl_cell *cells, int *place, size_t count);
void gtl_matrix_end(gtl_matrix *matrix);
void gtl_matrix_clear(gtl_matrix *matrix);

/* Factor; the ratio of the least to the greatest pivot, 0 if it cannot be factored. */
double gtl_matrix_factor(gtl_matrix *matrix);
/* Solve in place with the last factors. */
void gtl_matrix_solve(gtl_matrix *matrix, double *right);

#endif
