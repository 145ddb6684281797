/* range.c - the values that a key may have: `20 kg to 60 kg step 5 kg`, or `80 % or 85 % or 90 %`. Numbers
 * are counted in whole units of their last digit, so that no value comes out as 0.30000000000000004. */
#include "worksheet/set.h"

#include "base/grow.h"
#include "base/word.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MOST_DIGITS 12

static bool refuse(char why[GTL_WHY_SIZE], const char *problem, gtl_word word)
{
    char excerpt[GTL_EXCERPT_SIZE];
    snprintf(why, GTL_WHY_SIZE, "`%s` %s", gtl_excerpt(word, excerpt), problem);
    return false;
}

static bool add_value(gtl_vary *vary, gtl_word value, char why[GTL_WHY_SIZE])
{
    if (value.length == 0) {
        snprintf(why, GTL_WHY_SIZE, "a value is missing before or after `or`; write 20 kg or 25 kg");
        return false;
    }
    if (vary->count == GTL_MOST_VALUES) {
        snprintf(why, GTL_WHY_SIZE, "more than %d values; choose a larger step", GTL_MOST_VALUES);
        return false;
    }
    for (int i = 0; i < vary->count; i++)
        if (gtl_word_compare(gtl_word_of(vary->values[i]), value) == 0)
            return refuse(why, "stands there twice; keep one of them", value);
    char **values = gtl_grow(vary->values, (size_t)vary->count, &vary->capacity, sizeof *values);
    char *copy = gtl_text_copy(value.start, value.length);
    if (values) vary->values = values;
    if (values && copy) {
        vary->values[vary->count++] = copy;
        return true;
    }
    free(copy);
    return false;
}

/* The first place of a word between blanks, NULL for none. */
static const char *find_word(gtl_word text, const char *word)
{
    size_t length = strlen(word);
    for (size_t i = 1; i + length < text.length; i++) {
        if (!gtl_is_blank(text.start[i - 1]) || !gtl_is_blank(text.start[i + length])) continue;
        if (gtl_word_compare((gtl_word){text.start + i, length}, gtl_word_of(word)) == 0)
            return text.start + i;
    }
    return NULL;
}

/* Cut off what stands before the word, trimmed; all of it where the word is not there. */
static gtl_word cut_word(gtl_word *rest, const char *word)
{
    const char *at = find_word(*rest, word);
    gtl_word piece = *rest;
    if (at) piece.length = (size_t)(at - rest->start);
    size_t used = at ? piece.length + strlen(word) : rest->length;
    *rest = (gtl_word){rest->start + used, rest->length - used};
    return gtl_word_trim(piece);
}

/* A decimal number with its unit: `units` of the last digit, `decimals` digits behind the point. */
typedef struct decimal {
    long long units;
    int decimals;
    gtl_word unit;
} decimal;

static bool is_digit(char byte)
{
    return byte >= '0' && byte <= '9';
}

static bool read_decimal(gtl_word word, decimal *number)
{
    size_t i = 0;
    int digits = 0;
    bool point = false;
    *number = (decimal){0};
    for (; i < word.length && (is_digit(word.start[i]) || (word.start[i] == '.' && !point)); i++) {
        if (word.start[i] == '.') {
            point = true;
            continue;
        }
        number->units = 10 * number->units + (word.start[i] - '0');
        number->decimals += point;
        if (++digits > MOST_DIGITS) return false;
    }
    number->unit = gtl_word_trim((gtl_word){word.start + i, word.length - i});
    return digits > 0;
}

/* Counted with that many digits behind the point; false where that is too many. */
static bool rescale(decimal *number, int decimals)
{
    for (; number->decimals < decimals; number->decimals++) {
        if (number->units > 100000000000000000LL) return false;
        number->units *= 10;
    }
    return true;
}

static bool add_decimal(gtl_vary *vary, long long units, int decimals, gtl_word unit, char why[GTL_WHY_SIZE])
{
    char text[96];
    long long power = 1;
    for (; decimals > 0 && units % 10 == 0; decimals--) units /= 10;
    for (int i = 0; i < decimals; i++) power *= 10;
    int length = decimals > 0 ? snprintf(text, sizeof text, "%lld.%0*lld %.*s", units / power, decimals,
                                         units % power, GTL_SPELL(unit))
                              : snprintf(text, sizeof text, "%lld %.*s", units, GTL_SPELL(unit));
    return add_value(vary, gtl_word_trim((gtl_word){text, (size_t)length}), why);
}

/* The numbers of `LOW to HIGH step STEP`, all with as many digits behind the point. */
static bool read_ends(gtl_word text, decimal ends[3], char why[GTL_WHY_SIZE])
{
    static const char *const words[] = {"to", "step", ""};
    int decimals = 0;
    for (int i = 0; i < 3; i++) {
        gtl_word piece = i < 2 ? cut_word(&text, words[i]) : gtl_word_trim(text);
        if (piece.length > 40 || !read_decimal(piece, &ends[i]))
            return refuse(why, "is no number with a unit; write 20 kg to 60 kg step 5 kg", piece);
        if (gtl_word_compare(ends[i].unit, ends[0].unit) != 0)
            return refuse(why, "has another unit than the first number; write all three in one unit", piece);
        if (ends[i].decimals > decimals) decimals = ends[i].decimals;
    }
    for (int i = 0; i < 3; i++) {
        if (rescale(&ends[i], decimals)) continue;
        snprintf(why, GTL_WHY_SIZE, "too many digits; write rounder numbers");
        return false;
    }
    return true;
}

static bool read_steps(gtl_word text, gtl_vary *vary, char why[GTL_WHY_SIZE])
{
    decimal ends[3];
    if (!read_ends(text, ends, why)) return false;
    long long low = ends[0].units, high = ends[1].units, step = ends[2].units;
    if (step == 0 || low >= high) {
        snprintf(why, GTL_WHY_SIZE, "a range goes up by a step above zero: 20 kg to 60 kg step 5 kg");
        return false;
    }
    if ((high - low) % step != 0) {
        snprintf(why, GTL_WHY_SIZE, "the steps do not end at the second number; change it, or the step");
        return false;
    }
    if ((high - low) / step >= GTL_MOST_VALUES) {
        snprintf(why, GTL_WHY_SIZE, "more than %d values; choose a larger step", GTL_MOST_VALUES);
        return false;
    }
    for (long long at = low; at <= high; at += step)
        if (!add_decimal(vary, at, ends[0].decimals, ends[0].unit, why)) return false;
    return true;
}

static bool read_words(gtl_word text, gtl_vary *vary, char why[GTL_WHY_SIZE])
{
    while (find_word(text, "or"))
        if (!add_value(vary, cut_word(&text, "or"), why)) return false;
    return add_value(vary, gtl_word_trim(text), why);
}

bool gtl_range_read(const char *text, gtl_vary *vary, char why[GTL_WHY_SIZE])
{
    gtl_word all = gtl_word_of(text);
    why[0] = '\0';
    if (find_word(all, "to") && !find_word(all, "step")) {
        snprintf(why, GTL_WHY_SIZE, "a range needs its step; write 20 kg to 60 kg step 5 kg");
        return false;
    }
    return find_word(all, "step") ? read_steps(all, vary, why) : read_words(all, vary, why);
}

void gtl_range_end(gtl_vary *vary)
{
    for (int i = 0; i < vary->count; i++) free(vary->values[i]);
    free(vary->values);
    *vary = (gtl_vary){0};
}

/* More than this nobody needs, and a number drawn among them has room in 64 bits. */
#define MOST_SETS 1000000000U

static uint64_t times(uint64_t sets, const gtl_vary *vary)
{
    uint64_t count = vary->count > 1 ? (uint64_t)vary->count : 1;
    return sets * count > MOST_SETS ? MOST_SETS : sets * count;
}

uint64_t gtl_problem_sets(const gtl_problem *problem)
{
    uint64_t sets = times(1, &problem->lift);
    for (int i = 0; i < problem->varied_count; i++) sets = times(sets, &problem->varied[i]);
    return sets;
}

static int digit(uint64_t *number, const gtl_vary *vary)
{
    uint64_t count = vary->count > 1 ? (uint64_t)vary->count : 1;
    int value = (int)(*number % count);
    *number /= count;
    return value;
}

gtl_choice gtl_problem_choice(const gtl_problem *problem, uint64_t number)
{
    gtl_choice choice = {{0}};
    for (int i = 0; i < problem->varied_count; i++) choice.value[i] = digit(&number, &problem->varied[i]);
    choice.value[problem->varied_count] = digit(&number, &problem->lift);
    return choice;
}
