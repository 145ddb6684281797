/* travel.h - how bodies and parts of line move as the lifted load rises by h. */
#ifndef EXPLAIN_TRAVEL_H
#define EXPLAIN_TRAVEL_H

#include "explain/lesson.h"

/* A motion as small as this, beside the load's, is none to tell [1]. */
#define GTL_STILL 1e-7

/* A number as near as this to another is that number: the rest is rounding of the arithmetic [1]. */
#define GTL_EXACT 1e-9

/* Lists as long as this are told whole; of longer ones the beginning and the end. */
#define GTL_LONGEST_LIST 40

/* Motion of a node along an axis, and how much a part shortens, for one unit of lift; noise is zero [1]. */
double gtl_rise_of(const gtl_lesson *lesson, const gtl_outcome *outcome, int node, int axis);
double gtl_part_shortens(const gtl_lesson *lesson, const gtl_outcome *outcome, int part);

/* How much rope a piece gives up in all for one unit of lift; noise is zero [1]. */
double gtl_piece_shortens(const gtl_lesson *lesson, const gtl_outcome *outcome, int piece);

/* Unit vector along a part from its first stop to its last [1]. */
void gtl_part_way(const gtl_lesson *lesson, const gtl_outcome *outcome, int part, double way[3]);

/* Whether a part is plumb. */
bool gtl_part_is_plumb(const gtl_lesson *lesson, const gtl_outcome *outcome, int part);

bool gtl_node_moves(const gtl_lesson *lesson, const gtl_outcome *outcome, int node);

/* Whether a node rises exactly as the load does. */
bool gtl_node_goes_along(const gtl_lesson *lesson, const gtl_outcome *outcome, int node);

/* Whether all rates stay the same however far the load rises: bodies move in height only, and each part is
 * plumb, or its ends move alike. */
bool gtl_rates_stay(const gtl_lesson *lesson, const gtl_outcome *outcome);

/* Nodes at the two ends of a part. */
int gtl_part_from(const gtl_rig *rig, int part);
int gtl_part_to(const gtl_rig *rig, int part);

/* Whether two states have every body at the same place and moving alike. */
bool gtl_same_travel(const gtl_lesson *lesson, const gtl_outcome *one, const gtl_outcome *other);

/* "1 h", "0.5000 h". */
gtl_figure gtl_in_h(double ratio);

/* "rises by 1 h", "sinks by 2 h", "stays", "moves by 0.2500 h across and 1 h up". */
void gtl_add_motion(gtl_text *text, const gtl_lesson *lesson, const gtl_outcome *outcome, int node);

/* A piece as it is called in a sentence: "rope fall", "piece 2 of rope fall", "sling left". */
void gtl_add_piece_name(gtl_text *text, const gtl_lesson *lesson, int piece);

/* The case whose place and motion is told where one serves: hold, else raise; NULL where neither can be. */
const gtl_outcome *gtl_travel_case(const gtl_lesson *lesson);

/* Whether there is a hand whose pull is worked out, and a case to tell. */
bool gtl_somebody_hauls(const gtl_lesson *lesson);

/* rope.c: the rope that comes to a hand, s or s(NAME). */
gtl_figure gtl_symbol_travel(const gtl_lesson *lesson, int hand);

#endif
