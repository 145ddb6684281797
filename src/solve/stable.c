/* stable.c - whether a state with spars stays when it is touched.
 *
 * A place is one to stay in if the energy rises in every direction that the lines allow. What a line of kept
 * length resists is put in as a stiffness so great that only the directions square to it are left to decide;
 * then Cholesky's method says whether all curvatures are positive. It is a dozen lines and dense: rigs with
 * spars are small, and every library that has it brings a BLAS along. */
#include "solve/work.h"
#include <math.h>
#include <string.h>

/* Of a line, over the rig's force and size [1]. */
#define STIFF 1e8
/* Curvature that counts as none: what can turn freely does not fall over [1]. */
#define LEVEL 1e-5

static double *at(const gtl_work *work, int row, int column)
{
    return work->curvature + (size_t)row * (size_t)work->dofs + (size_t)column;
}

/* The force rows' own columns of the matrix hold the curvature of all tensions, with the sign turned. */
static void take_turning(const gtl_work *work)
{
    const gtl_matrix *matrix = &work->matrix;
    for (int column = 0; column < work->dofs; column++)
        for (int i = matrix->starts[column]; i < matrix->starts[column + 1]; i++)
            if (matrix->rows[i] < work->dofs) *at(work, matrix->rows[i], column) = -matrix->values[i];
}

/* A line that keeps its length: how it grows is, with the sign turned, its tension's column of the matrix. */
static void add_line(const gtl_work *work, int piece)
{
    const gtl_matrix *matrix = &work->matrix;
    int column = work->dofs + piece;
    for (int i = matrix->starts[column]; i < matrix->starts[column + 1]; i++)
        for (int k = matrix->starts[column]; k < matrix->starts[column + 1]; k++)
            if (matrix->rows[i] < work->dofs && matrix->rows[k] < work->dofs)
                *at(work, matrix->rows[i], matrix->rows[k]) += STIFF * matrix->values[i] * matrix->values[k];
}

/* Cholesky's factors, in place below the diagonal; false once a pivot is not positive. */
static bool positive(const gtl_work *work)
{
    for (int row = 0; row < work->dofs; row++) {
        for (int column = 0; column <= row; column++) {
            double rest = *at(work, row, column);
            for (int k = 0; k < column; k++) rest -= *at(work, row, k) * *at(work, column, k);
            if (row == column && !(rest > 0)) return false;
            *at(work, row, column) = row == column ? sqrt(rest) : rest / *at(work, column, column);
        }
    }
    return true;
}

/* With heights alone the rig is worked with all its parts vertical, and so are its spars: to the side every
 * part pulls back by its tension over its length, and a pushed one tips. */
static bool stands_upright(const gtl_work *work)
{
    memset(work->curvature, 0, (size_t)work->dofs * (size_t)work->dofs * sizeof *work->curvature);
    for (int p = 0; p < work->rig->piece_count; p++) {
        const gtl_plan *plan = &work->plans[p];
        for (int i = plan->first; i < plan->first + plan->count; i++) {
            int from = work->dof[3 * work->walk_node[i + p]];
            int to = work->dof[3 * work->walk_node[i + p + 1]];
            double stiff = work->t[p] / work->span[i];
            if (from >= 0) *at(work, from, from) += stiff;
            if (to >= 0) *at(work, to, to) += stiff;
            if (from < 0 || to < 0) continue;
            *at(work, from, to) -= stiff;
            *at(work, to, from) -= stiff;
        }
    }
    for (int i = 0; i < work->dofs; i++) *at(work, i, i) += LEVEL;
    return positive(work);
}

bool gtl_stable(gtl_work *work)
{
    gtl_balance(work);
    if (work->rig->dim == 1 && !stands_upright(work)) return false;
    memset(work->curvature, 0, (size_t)work->dofs * (size_t)work->dofs * sizeof *work->curvature);
    take_turning(work);
    for (int p = 0; p < work->rig->piece_count; p++)
        if (work->row[p] == GTL_ROW_LENGTH || work->row[p] == GTL_ROW_HEIGHT) add_line(work, p);
    for (int i = 0; i < work->dofs; i++) *at(work, i, i) += LEVEL;
    return positive(work);
}
