/* csv.c - see csv.h. */
#include "report/csv.h"
#include "base/utf8.h"
#include "report/escape.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* What makes a formula of a text: the wide forms of East Asian keyboards too, which some spreadsheets read as
 * the plain ones; and what a spreadsheet drops before it looks. */
static const unsigned long formula_signs[] = {'=',  '+',    '-',    '@',    '\t',  '\r',
                                              '\n', 0xFF1D, 0xFF0B, 0xFF0D, 0xFF20};

static bool looks_like_formula(const char *text)
{
    text += strspn(text, " ");
    if (!*text) return false;
    unsigned long first = gtl_character_at(text).code;
    for (size_t i = 0; i < sizeof formula_signs / sizeof *formula_signs; i++)
        if (first == formula_signs[i]) return true;
    return false;
}

/* Letters, digits, blanks and the like need no quotes, wherever a spreadsheet thinks that fields end. */
static bool needs_quotes(const char *text)
{
    for (; *text; text++) {
        bool letter = (*text >= 'a' && *text <= 'z') || (*text >= 'A' && *text <= 'Z');
        bool digit = *text >= '0' && *text <= '9';
        if (!letter && !digit && !strchr("-_. []", *text)) return true;
    }
    return false;
}

void gtl_csv_text(gtl_text *out, const char *text)
{
    const char *before = looks_like_formula(text) ? "'" : "";
    char *clean = gtl_escape_for_people(text);
    if (!clean) {
        out->failed = true;
        return;
    }
    bool quoted = *before || needs_quotes(clean);
    gtl_text_add(out, "%s%s", quoted ? "\"" : "", before);
    for (const char *at = clean; *at; at++) gtl_text_put(out, *at == '"' ? "\"\"" : at, *at == '"' ? 2 : 1);
    if (quoted) gtl_text_add(out, "\"");
    free(clean);
}

/* printf's point belongs to the locale, and may be more than one byte. */
static void put_digits(gtl_text *out, const char *digits)
{
    while (*digits) {
        size_t plain = strspn(digits, "-+e0123456789");
        gtl_text_put(out, digits, plain);
        digits += plain;
        if (!*digits) return;
        gtl_text_put(out, ".", 1);
        digits += strcspn(digits, "-+e0123456789");
    }
}

/* 17 digits always read as the same number again, and 15 often do. */
void gtl_csv_number(gtl_text *out, double number)
{
    char digits[64];
    if (!isfinite(number)) return;
    if (number == 0) number = 0; /* without a sign */
    for (int precision = 15; precision <= 17; precision++) {
        snprintf(digits, sizeof digits, "%.*g", precision, number);
        if (strtod(digits, NULL) == number) break;
    }
    put_digits(out, digits);
}

void gtl_csv_comma(gtl_text *out)
{
    gtl_text_put(out, ",", 1);
}

void gtl_csv_end(gtl_text *out)
{
    gtl_text_put(out, "\r\n", 2);
}
