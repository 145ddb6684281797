/* store_range.c - a figure that may be stated as a range: 88 % .. 94 %. */
#include "read/storing.h"

#include <stdio.h>
#include <string.h>

/* A range as the key would have it. */
static const char *example_of(const gtl_storing *s)
{
    if (s->row->quantity == GTL_FRACTION) return "88 % .. 94 %";
    return s->row->quantity == GTL_DENSITY ? "860 kg/m3 .. 1190 kg/m3" : "0.12 .. 0.20";
}

static void refuse(const gtl_storing *s, const char *why)
{
    gtl_faults_add(s->faults, s->entry->line, "`%s`: %s %s", s->row->key.key, why, example_of(s));
}

/* A piece of the value without the blanks around it. */
static void cut(const char *from, size_t length, char text[GTL_LINE_LIMIT + 1])
{
    gtl_word word = gtl_word_trim((gtl_word){from, length});
    snprintf(text, GTL_LINE_LIMIT + 1, "%.*s", GTL_SPELL(word));
}

static bool has_sign(const char *text)
{
    return strchr(text, '%') != NULL;
}

/* Whether a text can be read as a share without a sign, and the share. */
static bool is_bare_share(const char *text, double *share)
{
    char why[GTL_WHY_SIZE];
    return !has_sign(text) && gtl_parse_quantity(text, GTL_FRACTION, 1, share, NULL, why);
}

/* 0.88 .. 94 %, 88 % .. 94: nobody can say which of the two is a slip. */
static bool is_mixed(const char *low, const char *high)
{
    double share;
    if (has_sign(low)) return is_bare_share(high, &share);
    return has_sign(high) && is_bare_share(low, &share) && share <= 1;
}

/* What is wrong with the two ends as they are written; NULL: nothing. */
static const char *fault_of(const char *low, const char *high)
{
    if (high[0] == '.' || strstr(high, "..")) return "a range has two ends, and two dots between them:";
    if (low[0] == '\0' || high[0] == '\0') return "an end of the range is missing; write both, as in";
    if (is_mixed(low, high))
        return "one end of the range is in per cent and the other is not; write both alike, as in";
    return NULL;
}

/* Two ends that are one, or stand the wrong way round, are taken for a slip of the pen. */
static void store_ends(const gtl_storing *s, char low_text[GTL_LINE_LIMIT + 1], const char *high_text)
{
    double low = 0, high = 0;
    if (has_sign(high_text) && !has_sign(low_text)) strncat(low_text, " %", 3); /* it stands for both */
    if (!gtl_read_number(s, low_text, &low) || !gtl_read_number(s, high_text, &high)) return;
    if (!(low < high)) {
        refuse(s, "a range runs from the smaller end to the greater, or is one number; write it as in");
        return;
    }
    s->item->numbers[s->row->slot].value = low;
    s->item->numbers[s->row->slot].high = high;
}

/* 0.12-0.20: a dash between two numbers, not the sign of one. */
static bool has_dash(const char *text)
{
    const char *dash = strchr(text, '-');
    while (dash && dash > text && dash[-1] == ' ') dash--;
    return dash && dash > text && (strchr("0123456789%", dash[-1]) != NULL);
}

void gtl_store_range(const gtl_storing *s)
{
    char low[GTL_LINE_LIMIT + 1], high[GTL_LINE_LIMIT + 1];
    const char *value = s->entry->value, *dots = strstr(value, "..");
    if (!dots && has_dash(value)) {
        refuse(s, "a range takes two dots, not a dash:");
        return;
    }
    if (!dots || strlen(value) > GTL_LINE_LIMIT / 2) {
        gtl_store_number(s);
        return;
    }
    cut(value, (size_t)(dots - value), low);
    cut(dots + 2, strlen(dots + 2), high);
    const char *why = fault_of(low, high);
    if (why)
        refuse(s, why);
    else
        store_ends(s, low, high);
}
