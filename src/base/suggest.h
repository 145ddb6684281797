/* suggest.h - "did you mean": the candidate nearest to a misspelt word. */
#ifndef BASE_SUGGEST_H
#define BASE_SUGGEST_H

#include "base/word.h"

/* A search under way. Begin with the word only: (gtl_suggestion){.wanted = word, .best = -1}. */
typedef struct gtl_suggestion {
    gtl_word wanted;
    int best;     /* index of the nearest candidate so far, -1: none is near enough to be meant */
    int distance; /* of that one */
} gtl_suggestion;

/* Try one candidate; of two equally near the first is kept. */
void gtl_suggest_try(gtl_suggestion *search, gtl_word candidate, int index);

/* Where nothing is near: take the candidate that the word is a part of; of several none. To be tried after
 * all others. */
void gtl_suggest_whole(gtl_suggestion *search, gtl_word candidate, int index);

#endif
