/* matrix.c - see matrix.h. KLU's row scaling stays off: it would lift a row that holds nothing but the
 * regularising diagonal to 1, and hide that the matrix is singular. */
#include "solve/matrix.h"
#include <math.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* Old pivots in their old order are good enough while the ratio stays above this; below, pivot anew. */
#define PIVOT_ANEW 1e-6

typedef struct ordered_cell {
    int row;
    int column;
    size_t index; /* into the caller's cells; past their count: a diagonal entry */
} ordered_cell;

static int compare_cells(const void *left, const void *right)
{
    const ordered_cell *a = left;
    const ordered_cell *b = right;
    if (a->column != b->column) return a->column < b->column ? -1 : 1;
    if (a->row != b->row) return a->row < b->row ? -1 : 1;
    return 0;
}

static ordered_cell *order_cells(int order, const gtl_cell *cells, size_t count)
{
    ordered_cell *list = malloc((count + (size_t)order) * sizeof *list);
    if (!list) return NULL;
    for (size_t i = 0; i < count; i++) list[i] = (ordered_cell){cells[i].row, cells[i].column, i};
    for (int i = 0; i < order; i++) list[count + (size_t)i] = (ordered_cell){i, i, count + (size_t)i};
    qsort(list, count + (size_t)order, sizeof *list, compare_cells);
    return list;
}

static void place_cells(gtl_matrix *matrix, const ordered_cell *list, int *place, size_t count)
{
    int used = 0;
    int column = 0;
    for (size_t i = 0; i < count + (size_t)matrix->order; i++) {
        if (i == 0 || compare_cells(&list[i - 1], &list[i]) != 0) {
            while (column < list[i].column) matrix->starts[++column] = used;
            matrix->rows[used++] = list[i].row;
        }
        if (list[i].index < count)
            place[list[i].index] = used - 1;
        else
            matrix->diagonal[list[i].index - count] = used - 1;
    }
    while (column < matrix->order) matrix->starts[++column] = used;
}

bool gtl_matrix_begin(gtl_matrix *matrix, int order, const gtl_cell *cells, int *place, size_t count)
{
    *matrix = (gtl_matrix){.order = order};
    ordered_cell *list = order_cells(order, cells, count);
    matrix->starts = calloc((size_t)order + 1, sizeof *matrix->starts);
    matrix->rows = calloc(count + (size_t)order, sizeof *matrix->rows);
    matrix->values = calloc(count + (size_t)order, sizeof *matrix->values);
    matrix->diagonal = calloc((size_t)order, sizeof *matrix->diagonal);
    bool room = list && matrix->starts && matrix->rows && matrix->values && matrix->diagonal;
    if (room) {
        place_cells(matrix, list, place, count);
        klu_defaults(&matrix->common);
        matrix->common.tol = 1.0;
        matrix->common.scale = 0;
        matrix->common.halt_if_singular = 0;
        matrix->symbolic = klu_analyze(order, matrix->starts, matrix->rows, &matrix->common);
    }
    free(list);
    return room && matrix->symbolic;
}

void gtl_matrix_end(gtl_matrix *matrix)
{
    if (matrix->numeric) klu_free_numeric(&matrix->numeric, &matrix->common);
    if (matrix->symbolic) klu_free_symbolic(&matrix->symbolic, &matrix->common);
    free(matrix->starts);
    free(matrix->rows);
    free(matrix->values);
    free(matrix->diagonal);
    *matrix = (gtl_matrix){0};
}

void gtl_matrix_clear(gtl_matrix *matrix)
{
    memset(matrix->values, 0, (size_t)matrix->starts[matrix->order] * sizeof *matrix->values);
}

static bool all_finite(const gtl_matrix *matrix)
{
    double sum = 0; /* any inf or nan leaves it inf or nan */
    for (int i = 0; i < matrix->starts[matrix->order]; i++) sum += matrix->values[i] * 0.0;
    return sum == 0;
}

static double pivot_ratio(gtl_matrix *matrix)
{
    if (!klu_rcond(matrix->symbolic, matrix->numeric, &matrix->common)) return 0;
    return isfinite(matrix->common.rcond) ? matrix->common.rcond : 0;
}

double gtl_matrix_factor(gtl_matrix *matrix)
{
    if (!all_finite(matrix)) return 0;
    if (matrix->numeric) {
        bool done = klu_refactor(matrix->starts, matrix->rows, matrix->values, matrix->symbolic,
                                 matrix->numeric, &matrix->common);
        double ratio = done ? pivot_ratio(matrix) : 0;
        if (ratio > PIVOT_ANEW) return ratio;
        klu_free_numeric(&matrix->numeric, &matrix->common);
    }
    matrix->numeric =
        klu_factor(matrix->starts, matrix->rows, matrix->values, matrix->symbolic, &matrix->common);
    return matrix->numeric ? pivot_ratio(matrix) : 0;
}

void gtl_matrix_solve(gtl_matrix *matrix, double *right)
{
    bool done = matrix->numeric &&
                klu_solve(matrix->symbolic, matrix->numeric, matrix->order, 1, right, &matrix->common);
    for (int i = 0; !done && i < matrix->order; i++) right[i] = NAN;
}
