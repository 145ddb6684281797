/* word.h - a stretch of somebody else's text. It never owns and never changes what it points to. */
#ifndef BASE_WORD_H
#define BASE_WORD_H

#include <stdbool.h>
#include <stddef.h>

typedef struct gtl_word {
    const char *start;
    size_t length;
} gtl_word;

/* A word as the two arguments that printf's "%.*s" takes. */
#define GTL_SPELL(word) (int)(word).length, (word).start

/* All of a string. */
gtl_word gtl_word_of(const char *text);

/* Without the blanks (spaces and tabs) at both ends. */
gtl_word gtl_word_trim(gtl_word word);

/* Compare without regard to ASCII case: below, at or above zero as strcmp. */
int gtl_word_compare(gtl_word left, gtl_word right);

/* Cut off what stands before the first `mark` of `rest`, trimmed; the whole rest where there is none. A text
 * always has one piece more than it has marks. False once the last piece was taken. */
bool gtl_word_cut(gtl_word *rest, char mark, gtl_word *piece);

/* Whether a byte may stand in a name: an ASCII letter or digit, `-` or `_`. */
bool gtl_is_name_byte(char byte);
/* Whether a word is made of nothing else, and not empty. */
bool gtl_is_name(gtl_word word);
bool gtl_is_blank(char byte);

/* The longest excerpt, with its final zero. */
#define GTL_EXCERPT_SIZE 48

/* The word as a message quotes it: a long one is cut between two characters and ends with dots. */
const char *gtl_excerpt(gtl_word word, char excerpt[GTL_EXCERPT_SIZE]);

#endif
