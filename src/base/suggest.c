/* suggest.c - "did you mean". */
#include "base/suggest.h"

/* Longer words are not compared: no name or key is that long. */
#define LONGEST 40

static int least(int a, int b)
{
    return a < b ? a : b;
}

static bool same(char left, char right)
{
    return gtl_word_compare((gtl_word){&left, 1}, (gtl_word){&right, 1}) == 0;
}

/* How many letters have to be put in, left out, changed or swapped with their neighbour. Three rows of the
 * usual table are kept, since a swap looks two rows back. */
static int distance(gtl_word a, gtl_word b)
{
    int rows[3][LONGEST + 1];
    int *before = rows[0], *last = rows[1], *row = rows[2];
    for (size_t j = 0; j <= b.length; j++) last[j] = before[j] = (int)j;
    for (size_t i = 1; i <= a.length; i++) {
        row[0] = (int)i;
        for (size_t j = 1; j <= b.length; j++) {
            int change = same(a.start[i - 1], b.start[j - 1]) ? 0 : 1;
            row[j] = least(least(last[j] + 1, row[j - 1] + 1), last[j - 1] + change);
            bool swapped = i > 1 && j > 1 && same(a.start[i - 1], b.start[j - 2]) &&
                           same(a.start[i - 2], b.start[j - 1]);
            if (swapped) row[j] = least(row[j], before[j - 2] + 1);
        }
        int *spare = before;
        before = last;
        last = row;
        row = spare;
    }
    return last[b.length];
}

/* How far a word of that length may be off and still be meant: short names differ by a letter on purpose. */
static int reach(size_t length)
{
    return length < 3 ? 0 : length < 5 ? 1 : length < 9 ? 2 : 3;
}

void gtl_suggest_try(gtl_suggestion *search, gtl_word candidate, int index)
{
    size_t a = search->wanted.length;
    size_t b = candidate.length;
    if (a > LONGEST || b > LONGEST) return;
    int limit = reach(a < b ? a : b);
    int lengths_apart = a > b ? (int)(a - b) : (int)(b - a);
    if (lengths_apart > limit) return;
    int found = distance(search->wanted, candidate);
    if (found > limit || (search->best >= 0 && found >= search->distance)) return;
    search->best = index;
    search->distance = found;
}

void gtl_suggest_whole(gtl_suggestion *search, gtl_word candidate, int index)
{
    size_t length = search->wanted.length;
    bool found = false;
    if (search->best < -1 || (search->best >= 0 && search->distance >= 0) || length < 3) return;
    for (size_t i = 0; i + length <= candidate.length && !found; i++)
        found = gtl_word_compare(search->wanted, (gtl_word){candidate.start + i, length}) == 0;
    if (!found) return;
    search->best = search->best >= 0 ? -2 : index;
    search->distance = -1;
}
