/* worked.h - one problem with one set of figures, worked: its rig, the answers, the mistake that it shows. */
#ifndef WORKSHEET_WORKED_H
#define WORKSHEET_WORKED_H

#include "base/word.h"
#include "explain/lesson.h"
#include "report/document.h"
#include "worksheet/set.h"

/* What an answer is given in. */
typedef enum gtl_answer_unit {
    GTL_ANSWER_FORCE,  /* [N] */
    GTL_ANSWER_LENGTH, /* [m] */
    GTL_ANSWER_WORK,   /* [J] */
    GTL_ANSWER_RATIO,  /* [1] */
    GTL_ANSWER_PERCENT /* [1] */
} gtl_answer_unit;

typedef struct gtl_answer {
    const char *label; /* of our own words */
    const char *of;    /* the name of the part that it is about, "" for none; the rig's */
    gtl_answer_unit unit;
    double value; /* as `unit` says */
} gtl_answer;

/* A solution with one mistake in it. */
typedef struct gtl_shown {
    gtl_text asked;        /* the question that it answers */
    gtl_document solution; /* its lines */
    gtl_text reason;       /* for the key: what is wrong, and the right way */
    gtl_answer_unit unit;
    double wrong; /* what it comes to, as `unit` says */
    double right;
} gtl_shown;

typedef struct gtl_worked {
    const gtl_problem *problem;
    gtl_choice choice;
    gtl_entry *entries; /* the rig's, with the values chosen */
    gtl_rig *rig;
    gtl_sheet sheet;
    bool rated;               /* the sheet has to be ended */
    const gtl_outcome *hold;  /* NULL where it cannot be */
    const gtl_outcome *raise; /* NULL where it is not worked or cannot be */
    double lift;              /* [m]; NaN: not stated */
    const char *lift_text;    /* as typed */
    gtl_lesson lesson;        /* for figures and symbols */
    gtl_answer *answers;
    int answer_count;
    size_t answer_capacity;
    gtl_shown shown;
    bool failed; /* memory was short */
} gtl_worked;

/* Work a problem with the values chosen. False, and `why` says what has no answer and what to do; or without
 * memory, `failed` is set then. Ended in every case. */
bool gtl_work_problem(const gtl_problem *problem, const gtl_choice *choice, gtl_worked *worked,
                      char why[GTL_REASON_SIZE]);
void gtl_worked_end(gtl_worked *worked);

/* Whether a problem needs the rig with friction. */
bool gtl_problem_raises(const gtl_problem *problem);

/* Add an answer. */
void gtl_answer_add(gtl_worked *worked, const char *label, const char *of, gtl_answer_unit unit,
                    double value);
/* An answer's figure, to the nearest. */
gtl_figure gtl_answer_figure(const gtl_worked *worked, gtl_answer_unit unit, double value);

/* What a question needs of a rig, one bit a need. */
enum {
    GTL_NEEDS_HAND = 1,
    GTL_NEEDS_RAISE = 2,
    GTL_NEEDS_LIFT =
        4, /* how far the load rises is stated, and the rig's advantage stays the same on the way */
    GTL_NEEDS_STEADY = 8, /* the latter alone */
    GTL_NEEDS_LOAD = 16
};

/* needs.c: NULL, or why a rig has no answer to what needs that. */
const char *gtl_needs_missing(const gtl_worked *worked, unsigned needs);
/* Whether how much rope comes to the hand for a unit of lift is the same at each height. */
bool gtl_is_steady(const gtl_worked *worked);

/* --- asks.c --- */

/* The row that a word names, -1 for none; and the nearest, for messages. */
int gtl_ask_find(gtl_word word, const char **nearest);
unsigned gtl_ask_needs(int ask);
void gtl_ask_question(int ask, gtl_text *text, const gtl_worked *worked);
void gtl_ask_answer(int ask, gtl_worked *worked);

/* --- mistakes.c --- */

int gtl_mistake_find(gtl_word word, const char **nearest);
unsigned gtl_mistake_needs(int mistake);
/* Show it on the worked rig; NULL, or why this rig cannot show it. */
const char *gtl_mistake_show(int mistake, gtl_worked *worked);

/* --- given.c --- */

/* Append what is given: one pair a part of the rig. */
void gtl_compose_given(gtl_document *document, const gtl_worked *worked);
/* Whether the rig file states a key of a thing. */
bool gtl_is_typed(const gtl_worked *worked, const gtl_thing *thing, const char *key);
/* The values drawn, in words: "mass of crate 25 kg, lift 0.4 m". */
void gtl_add_drawn(gtl_text *text, const gtl_worked *worked);

/* --- tackle.c --- */

/* The lifted load as parts of one rope hold it. */
typedef struct gtl_tackle {
    bool counts;      /* the parts at the load are of one rope, plumb, and so many share its weight */
    int parts;        /* how many hold the load */
    double raised;    /* what hangs on them [N] */
    int last;         /* the thing that the hauling part comes from */
    bool from_moving; /* that moves with the load */
    int leads;        /* fixed blocks that only turn the rope on its way to the hand */
} gtl_tackle;

gtl_tackle gtl_tackle_of(const gtl_worked *worked);

/* --- join.c --- */

/* Move all elements of `from` behind those of `to`. */
void gtl_document_join(gtl_document *to, gtl_document *from);

#endif
