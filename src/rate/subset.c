/* subset.c - the greatest resultant of any set of pulls on a body.
 *
 * The set that is greatest lies on one side of a plane through the body: if d is its direction, it holds
 * every pull with a component along d and no other. Sides change where d is square to a pull. So it is enough
 * to go round each circle of directions square to one pull, and on it to try one direction between each two
 * places where another pull changes sides, with that one pull taken or left out. */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Directions closer than this count as the same [rad]; two pulls that differ by it differ in no printed
 * digit. */
#define SAME 1e-12

static double dot(const double a[3], const double b[3])
{
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

static void cross(const double a[3], const double b[3], double out[3])
{
    out[0] = a[1] * b[2] - a[2] * b[1];
    out[1] = a[2] * b[0] - a[0] * b[2];
    out[2] = a[0] * b[1] - a[1] * b[0];
}

static bool parallel(const double a[3], const double b[3])
{
    double square[3];
    cross(a, b, square);
    return sqrt(dot(square, square)) <= SAME * sqrt(dot(a, a) * dot(b, b));
}

/* Pulls in one direction are taken together or not at all: add them up. Returns how many are left. */
static int merge(double (*vectors)[3], int count)
{
    int used = 0;
    for (int i = 0; i < count; i++) {
        if (dot(vectors[i], vectors[i]) == 0) continue;
        int k = 0;
        while (k < used && !(dot(vectors[k], vectors[i]) > 0 && parallel(vectors[k], vectors[i]))) k++;
        if (k == used)
            memmove(vectors[used++], vectors[i], sizeof vectors[i]);
        else
            for (int m = 0; m < 3; m++) vectors[k][m] += vectors[i][m];
    }
    return used;
}

typedef struct search {
    double (*vectors)[3];
    int count;
    double most;
    double *best;
} search;

static void consider(search *s, const double sum[3])
{
    double size = sqrt(dot(sum, sum));
    if (!(size > s->most)) return;
    s->most = size;
    memcpy(s->best, sum, 3 * sizeof *sum);
}

/* All pulls on the side of d, those in line with pull i left out: and then with each side of that line. */
static void try_direction(search *s, int i, const double d[3])
{
    double sum[3] = {0, 0, 0};
    double along[3] = {0, 0, 0};
    double against[3] = {0, 0, 0};
    const double *line = s->vectors[i];
    for (int k = 0; k < s->count; k++) {
        const double *v = s->vectors[k];
        double *into = sum;
        if (parallel(v, line))
            into = dot(v, line) > 0 ? along : against;
        else if (dot(v, d) <= 0)
            continue;
        for (int m = 0; m < 3; m++) into[m] += v[m];
    }
    double with[3];
    for (int m = 0; m < 3; m++) with[m] = sum[m] + along[m];
    consider(s, with);
    for (int m = 0; m < 3; m++) with[m] = sum[m] + against[m];
    consider(s, with);
}

/* Two unit vectors square to v and to each other. */
static void span_circle(const double v[3], double e[3], double f[3])
{
    int least = 0;
    for (int k = 1; k < 3; k++)
        if (fabs(v[k]) < fabs(v[least])) least = k;
    double axis[3] = {0, 0, 0};
    axis[least] = 1;
    cross(v, axis, e);
    double size = sqrt(dot(e, e));
    for (int k = 0; k < 3; k++) e[k] /= size;
    cross(v, e, f);
    size = sqrt(dot(f, f));
    for (int k = 0; k < 3; k++) f[k] /= size;
}

static int compare_angles(const void *left, const void *right)
{
    double a = *(const double *)left;
    double b = *(const double *)right;
    return (a > b) - (a < b);
}

static void go_round(search *s, int i, double *angles)
{
    const double turn = 6.28318530717958647693;
    double e[3];
    double f[3];
    span_circle(s->vectors[i], e, f);
    int count = 0;
    for (int k = 0; k < s->count; k++) {
        if (parallel(s->vectors[k], s->vectors[i])) continue;
        /* v.(e cos a + f sin a) = 0 */
        double angle = atan2(-dot(s->vectors[k], e), dot(s->vectors[k], f));
        angles[count++] = angle;
        angles[count++] = angle > 0 ? angle - turn / 2 : angle + turn / 2;
    }
    if (count == 0) angles[count++] = 0; /* all in one line: any direction will do */
    qsort(angles, (size_t)count, sizeof *angles, compare_angles);
    for (int k = 0; k < count; k++) {
        double next = k + 1 < count ? angles[k + 1] : angles[0] + turn;
        double middle = (angles[k] + next) / 2;
        double d[3];
        for (int m = 0; m < 3; m++) d[m] = e[m] * cos(middle) + f[m] * sin(middle);
        try_direction(s, i, d);
    }
}

double gtl_greatest_resultant(double (*vectors)[3], int count, double *angles, double best[3])
{
    memset(best, 0, 3 * sizeof *best);
    search found = {vectors, merge(vectors, count), 0, best};
    for (int i = 0; i < found.count; i++) go_round(&found, i, angles);
    return found.most;
}
