/* lesson.h - a worked solution on its way to a document: what its sections share.
 *
 * Every figure comes from a solved state; nothing is worked out here but what a sentence needs: sums, ratios,
 * directions. An equation is a chain of terms with " = " between them, in which
 *
 *   - a number without a point is exact, another is rounded to the nearest in its last digit;
 *   - `x` is times, `/` is divided by, `^` is to the power of; brackets () as usual; a minus sign stands
 *     before a term;
 *   - a number may have its unit behind it: N kN lbf kip, kg lb, m ft, J kJ "ft lbf" "ft kip", m/s2, %, deg;
 *   - a symbol is a letter, then figures or letters of its axis, then a name in brackets: T, T3, T3(fall),
 *     W(crate), Rx(beam).
 *
 * Whoever reads them again can so work each one out. */
#ifndef EXPLAIN_LESSON_H
#define EXPLAIN_LESSON_H

#include "report/document.h"
#include "report/figures.h"
#include <gantline/explain.h>

typedef struct gtl_lesson {
    const gtl_sheet *sheet;
    const gtl_rig *rig; /* the sheet's, and that of `hold` and `raise` */
    gtl_explain_wish wish;
    gtl_print_units units;
    const gtl_outcome *hold;  /* NULL where it cannot be */
    const gtl_outcome *raise; /* NULL where it is not worked, cannot be, or friction is left out */
    gtl_document *document;
    const char *prefix; /* begins the ids of this lesson's figures: several may stand in one page */
    int figures;        /* how many figures it has */
    int steps;          /* how many steps it has */
} gtl_lesson;

/* explain.c: compose the lesson of a sheet into a document, behind what stands in it. `prefix` as in the
 * lesson. Look at document->failed afterwards. */
void gtl_explain_into(gtl_document *document, const gtl_sheet *sheet, const gtl_explain_wish *wish,
                      const char *prefix);

/* Begin the next step, numbered. */
void gtl_lesson_step(gtl_lesson *lesson, const char *format, ...) GTL_PRINTF(2, 3);

/* --- exact.c: figures rounded to the nearest, four digits and at least one decimal, so that none of them
 * reads as exact; a zero (by units.noise, or a billionth) is "0" --- */

gtl_figure gtl_exact_force(const gtl_lesson *lesson, double newtons); /* with its unit */
gtl_figure gtl_exact_length(const gtl_lesson *lesson, double metres); /* likewise */
gtl_figure gtl_exact_work(const gtl_lesson *lesson, double joules);   /* likewise: J, kJ, ft lbf, ft kip */
gtl_figure gtl_exact_percent(double share);                           /* "86.2 %" */
gtl_figure gtl_exact_degrees(double radians);                         /* "35.3 deg" */
/* A ratio or a cosine; one that is whole, but for rounding noise, is printed as a whole number, so exact. */
gtl_figure gtl_exact_number(double number);

/* --- symbols.c: how a quantity is called in equations, the same in every section --- */

/* The pull of a part of line, which friction may make another in each: T3, T3(fall); a spar's S(log). */
gtl_figure gtl_symbol_part(const gtl_lesson *lesson, int part);
/* The one pull of a piece of line without friction: T, T(fall), T(fall, piece 2); a spar's S(log). */
gtl_figure gtl_symbol_piece(const gtl_lesson *lesson, int piece);
/* The part's in a case: with friction the part's own, without the piece's. */
gtl_figure gtl_symbol_pull(const gtl_lesson *lesson, const gtl_outcome *outcome, int part);
/* What a thing weighs, W(crate); of a spar the half at each end, W(log)/2. */
gtl_figure gtl_symbol_weight(const gtl_lesson *lesson, int thing);
/* Of what is lifted: of a batten its whole weight. */
gtl_figure gtl_symbol_lifted(const gtl_lesson *lesson);
gtl_figure gtl_symbol_spar_half(const gtl_lesson *lesson, int line);
/* What an anchor, or a track, holds along an axis (0 ... dim - 1): R(beam) where the rig has heights alone,
 * else Rx(beam), Ry(beam), Rz(beam), the last coordinate the height. */
gtl_figure gtl_symbol_reaction(const gtl_lesson *lesson, int thing, int axis);
/* The axis in words: "up", "across", "along". */
const char *gtl_axis_name(const gtl_lesson *lesson, int axis);

/* --- sum.c --- */

/* Append a term to a sum: "a", "a + b", "a - b", "-a". */
void gtl_sum_add(gtl_text *sum, bool minus, const char *term);
/* The sum; "0" where nothing was added. The caller frees it; NULL without memory. `sum` is empty afterwards.
 */
char *gtl_sum_take(gtl_text *sum);

/* --- pulls.c: what acts on the bodies at one node --- */

/* A part of line that ends at, or runs over, a thing of the node. */
typedef struct gtl_pull {
    int part;
    int thing;     /* of this node: where the part touches it */
    int other;     /* the thing at its other end */
    double way[3]; /* unit vector from the node along the part, height at [dim - 1] [1] */
    double force;  /* its tension; a spar's is negative where it pushes [N] */
    bool slack;
} gtl_pull;

/* The pulls on a node in a case. `pulls` has room for 2 a part of the rig. Returns how many there are. */
int gtl_pulls_on(const gtl_lesson *lesson, const gtl_outcome *outcome, int node, gtl_pull *pulls);

/* The things of a node in a sentence: "tail with drop on it". */
void gtl_add_body_name(gtl_text *text, const gtl_lesson *lesson, int node);

/* --- the sections, in their order; each may have nothing to tell --- */

void gtl_lesson_head(gtl_lesson *lesson);      /* what is given and asked, the whole rig drawn */
void gtl_lesson_bodies(gtl_lesson *lesson);    /* the pulls on each body without friction, up to the effort */
void gtl_lesson_rope(gtl_lesson *lesson);      /* the rope's length kept: travel of hand and load */
void gtl_lesson_advantage(gtl_lesson *lesson); /* both roads side by side, and counting where it is valid */
void gtl_lesson_work(gtl_lesson *lesson);      /* work in and out without friction */
void gtl_lesson_friction(gtl_lesson *lesson);  /* stop by stop, up to the effort */
void gtl_lesson_efficiency(gtl_lesson *lesson); /* estimated advantage, work in and out, efficiency */
void gtl_lesson_support(gtl_lesson *lesson);    /* the balance of each anchor, and of the whole */
void gtl_lesson_thumb(gtl_lesson *lesson);      /* the handbook's rule of thumb beside it */
void gtl_lesson_closing(gtl_lesson *lesson);    /* what it means */

/* body_figure.c: the bodies of a node cut free, with every pull on them as an arrow; put into the document.
 */
void gtl_lesson_body_figure(gtl_lesson *lesson, const gtl_outcome *outcome, int node);

#endif
