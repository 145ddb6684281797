/* stability.c - curvature of the energy, with lines so stiff that what they resist does not count, and
 * Cholesky's method to see whether it is positive in all directions. Small and dense: the rigs of the tests
 * have few bodies. */
#include "laws/stability.h"
#include <math.h>
#include <stdlib.h>

/* Stiffness of lines over weight and size; and the curvature that counts as none, so that neutral bodies
 * pass. */
static const double stiff = 1e7;
static const double level = 1e-5;

typedef struct curvature {
    const mechanics *m;
    int count;      /* of free coordinates */
    int *freedom;   /* 3 a node: which free coordinate, -1 for none */
    double *matrix; /* count x count, over weight and size [1] */
    double *row;    /* count: how a piece grows */
} curvature;

static const int *freedom_of(const curvature *c, int stop)
{
    return c->freedom + 3 * c->m->rig->things[c->m->rig->stops[stop].thing].node;
}

static void number_freedoms(curvature *c)
{
    const gtl_rig *rig = c->m->rig;
    for (int n = 0; n < rig->node_count; n++)
        for (int k = 0; k < 3; k++) {
            bool held = rig->nodes[n].fixed || k >= rig->dim || (rig->nodes[n].guided && k < rig->dim - 1);
            c->freedom[3 * n + k] = held ? -1 : c->count++;
        }
}

/* A part's direction turns as its ends move: its tension over its length, square to it. */
static void add_part(curvature *c, int part)
{
    double unit[3];
    double length = part_direction(c->m, part, unit);
    double stiffness = c->m->state->tension[part] / length * c->m->size / c->m->force;
    const int *ends[2] = {freedom_of(c, c->m->rig->parts[part].from),
                          freedom_of(c, c->m->rig->parts[part].to)};
    for (int a = 0; a < 6; a++)
        for (int b = 0; b < 6; b++) {
            int row = ends[a / 3][a % 3];
            int column = ends[b / 3][b % 3];
            double square = (a % 3 == b % 3) - unit[a % 3] * unit[b % 3];
            if (row >= 0 && column >= 0)
                c->matrix[row * c->count + column] += (a / 3 == b / 3 ? 1 : -1) * stiffness * square;
        }
}

/* A piece that keeps its length resists all that would change it. */
static void add_piece(curvature *c, const gtl_piece *piece)
{
    for (int i = 0; i < c->count; i++) c->row[i] = 0;
    for (int i = 0; i < piece->part_count; i++) {
        double unit[3];
        part_direction(c->m, piece->first_part + i, unit);
        const int *from = freedom_of(c, c->m->rig->parts[piece->first_part + i].from);
        const int *to = freedom_of(c, c->m->rig->parts[piece->first_part + i].to);
        for (int k = 0; k < 3; k++) {
            if (from[k] >= 0) c->row[from[k]] -= unit[k];
            if (to[k] >= 0) c->row[to[k]] += unit[k];
        }
    }
    for (int a = 0; a < c->count; a++)
        for (int b = 0; b < c->count; b++) c->matrix[a * c->count + b] += stiff * c->row[a] * c->row[b];
}

/* Cholesky's factors exist where, and only where, the matrix is positive in all directions. */
static bool is_positive(double *matrix, int count)
{
    for (int k = 0; k < count; k++) {
        for (int i = 0; i < k; i++) matrix[k * count + k] -= matrix[k * count + i] * matrix[k * count + i];
        if (!(matrix[k * count + k] > 0)) return false;
        matrix[k * count + k] = sqrt(matrix[k * count + k]);
        for (int r = k + 1; r < count; r++) {
            for (int i = 0; i < k; i++)
                matrix[r * count + k] -= matrix[r * count + i] * matrix[k * count + i];
            matrix[r * count + k] /= matrix[k * count + k];
        }
    }
    return true;
}

bool comes_back(const mechanics *m)
{
    curvature c = {.m = m};
    size_t most = 3 * (size_t)m->rig->node_count;
    c.freedom = calloc(most, sizeof *c.freedom);
    c.matrix = calloc(most * most, sizeof *c.matrix);
    c.row = calloc(most, sizeof *c.row);
    if (!c.freedom || !c.matrix || !c.row) abort();
    number_freedoms(&c);
    for (int i = 0; i < m->rig->part_count; i++) add_part(&c, i);
    for (int p = 0; p < m->rig->piece_count; p++)
        if (m->rig->pieces[p].rule != GTL_PULLED && !m->state->slack[p]) add_piece(&c, &m->rig->pieces[p]);
    for (int i = 0; i < c.count; i++) c.matrix[i * c.count + i] += level;
    bool positive = is_positive(c.matrix, c.count);
    free(c.freedom);
    free(c.matrix);
    free(c.row);
    return positive;
}
