/* search.h - what the steps of looking for a limit share. */
#ifndef STUDY_SEARCH_H
#define STUDY_SEARCH_H

#include <gantline/limit.h>

/* A rig whose load is changed again and again. */
typedef struct gtl_search {
    gtl_rig *rig;        /* the copy that is changed */
    int load;            /* thing index */
    double low, high;    /* the lightest and the heaviest load that is tried [kg] */
    double step;         /* from one load tried to the next, above 1 [1] */
    const bool *excused; /* one a component: not known as drawn, so that it bars no load; NULL: all are */
    int tried;
    bool failed; /* without memory: no number may be read */
} gtl_search;

/* What one load came to. */
typedef struct gtl_tried {
    double mass; /* of the load [kg] */
    bool permitted;
    bool within;    /* the same with the slack of a verdict, by which rounding does not decide */
    double use;     /* the greatest utilisation of any part, or of a head fitting by twice its line [1]; NaN:
                     * none */
    bool runs_away; /* other weights lift it */
    gtl_edge edge;  /* what bars it; where it is permitted, what is used most */
} gtl_tried;

/* try_load.c: judge a rated load, whose mass stays. */
void gtl_judge_load(const gtl_sheet *sheet, const bool *excused, gtl_tried *tried);
/* Say what bars a load. */
void gtl_bar_load(gtl_tried *tried, gtl_edge_kind kind, int component, int outcome, const char *reason);
/* Hang another weight [N] on the rig in place of its load, a thing index. */
void gtl_hang_load(gtl_rig *rig, int load, double weight);
/* Give the rig another load [kg], to the last digit as if it were typed as that mass. */
void gtl_set_load(gtl_search *search, double mass);
/* Work and judge it; sets search->failed without memory. */
void gtl_try_load(gtl_search *search, double mass, gtl_tried *tried);

/* seek.c: a permitted load where the drawn one is not; false where none was found. */
bool gtl_seek_permitted(gtl_search *search, const gtl_tried *drawn, gtl_tried *found);

/* close_in.c: from a permitted load on to the last one, heavier (`up`) or lighter. */
void gtl_find_edge(gtl_search *search, const gtl_tried *permitted, bool up, gtl_edge *edge);

/* summary.c: what the two sheets say beside the limit itself; false without memory. */
bool gtl_summarise(gtl_limit *limit);

#endif
