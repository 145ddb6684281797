/* mistake.h - mistakes that recur, each shown on a rig that bears it out. Each function fills what is shown,
 * or says why this rig cannot show it. Every other line of the solution is right. */
#ifndef WORKSHEET_MISTAKE_H
#define WORKSHEET_MISTAKE_H

#include "worksheet/worked.h"

typedef const char *gtl_mistake_shower(gtl_worked *worked);

/* mistakes_count.c */
gtl_mistake_shower gtl_show_hauling_part_counted;
gtl_mistake_shower gtl_show_hauling_part_not_counted;
gtl_mistake_shower gtl_show_lead_counted;
gtl_mistake_shower gtl_show_mass_as_newtons;

/* mistakes_work.c */
gtl_mistake_shower gtl_show_ratio_upside_down;
gtl_mistake_shower gtl_show_rope_as_lift;
gtl_mistake_shower gtl_show_work_saved;
gtl_mistake_shower gtl_show_ideal_with_friction;

/* mistakes_friction.c */
gtl_mistake_shower gtl_show_friction_forgotten;
gtl_mistake_shower gtl_show_one_sheave_for_all;

/* mistakes_support.c */
gtl_mistake_shower gtl_show_load_only;
gtl_mistake_shower gtl_show_one_part;
gtl_mistake_shower gtl_show_angle_from_wrong_side;
gtl_mistake_shower gtl_show_not_parallel;

/* --- shared by them --- */

#define GTL_COUNTS_NOT                                                                                       \
    "parts of rope cannot be counted on it: that needs one hauled rope whose plumb parts alone hold the "    \
    "load"

/* A figure of an answer, for printf. */
#define GTL_FORCE_TEXT(w, value) gtl_answer_figure((w), GTL_ANSWER_FORCE, (value)).text
#define GTL_RATIO_TEXT(value)    gtl_exact_number(value).text

/* The line that every count begins with: what hangs on the parts. */
void gtl_show_weight(gtl_worked *worked, double weight);
/* The last line: `SYMBOL = WEIGHT / NUMBER = RESULT`. */
void gtl_show_division(gtl_worked *worked, double weight, double number);
/* The question of a pull that holds the load. */
void gtl_ask_to_hold(gtl_worked *worked);
const char *gtl_hand_name(const gtl_worked *worked);
const char *gtl_load_name(const gtl_worked *worked);

#endif
