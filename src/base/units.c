/* units.c - a number and a unit, as typed, to SI. The number is read digit by digit: what strtod would take
 * in some locale, or as hexadecimal, infinity or nan, never gets as far as strtod. */
#include "base/unit_names.h"
#include "base/word.h"

#include <gantline/units.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Nothing that hangs is 1e12 of any SI unit; a larger number is a slip, and would drown the solver. */
#define GREATEST 1e12
/* Nor is anything that is not nothing less than this. */
#define LEAST 1e-30
/* The largest whole number read, well inside an int. */
#define GREATEST_WHOLE 1e9
/* The most digits of a number, all told; far more than a double holds. */
#define MOST_DIGITS 60

typedef struct unit {
    const char *name;
    gtl_quantity quantity;
    double factor; /* one of it in SI */
} unit;

/* Exact values of lb, ft, in, lbf, kgf and kip: NIST SP 811, appendix B. */
static const unit units[] = {
    {"kg", GTL_MASS, 1},
    {"g", GTL_MASS, 1e-3},
    {"t", GTL_MASS, 1e3},
    {"lb", GTL_MASS, 0.45359237},
    {"N", GTL_FORCE, 1},
    {"kN", GTL_FORCE, 1e3},
    {"daN", GTL_FORCE, 10},
    {"kgf", GTL_FORCE, GTL_STANDARD_GRAVITY},
    {"lbf", GTL_FORCE, 4.4482216152605},
    {"kip", GTL_FORCE, 4448.2216152605},
    {"m", GTL_LENGTH, 1},
    {"cm", GTL_LENGTH, 1e-2},
    {"mm", GTL_LENGTH, 1e-3},
    {"ft", GTL_LENGTH, 0.3048},
    {"in", GTL_LENGTH, 0.0254},
    {"deg", GTL_ANGLE, 3.14159265358979323846 / 180},
    {"rad", GTL_ANGLE, 1},
    {"%", GTL_FRACTION, 1e-2},
    {"m/s2", GTL_ACCELERATION, 1},
    {"ft/s2", GTL_ACCELERATION, 0.3048},
    {"m/s", GTL_SPEED, 1},
    {"ft/s", GTL_SPEED, 0.3048},
    {"m/min", GTL_SPEED, 1.0 / 60},
    {"ft/min", GTL_SPEED, 0.3048 / 60},
    {"s", GTL_TIME, 1},
    {"ms", GTL_TIME, 1e-3},
    {"min", GTL_TIME, 60},
    {"kg/m", GTL_LINEAR_MASS, 1},
    {"lb/ft", GTL_LINEAR_MASS, 0.45359237 / 0.3048},
    {"GPa", GTL_ELASTICITY, 1e9},
    {"MPa", GTL_ELASTICITY, 1e6},
    {"kg/m3", GTL_DENSITY, 1},
    {"lb/ft3", GTL_DENSITY, 0.45359237 / (0.3048 * 0.3048 * 0.3048)},
};

/* What a message calls a quantity, an example of it, and the units it may be typed in. */
static const struct {
    const char *noun;
    const char *example;
    const char *names;
} quantities[] = {
    [GTL_MASS] = {"a mass", "85 kg", GTL_MASS_UNITS},
    [GTL_FORCE] = {"a force", "4.5 kN", GTL_FORCE_UNITS},
    [GTL_LENGTH] = {"a length", "5.5 m", GTL_LENGTH_UNITS},
    [GTL_ANGLE] = {"an angle", "180 deg", GTL_ANGLE_UNITS},
    [GTL_FRACTION] = {"a fraction", "92 %", GTL_FRACTION_UNITS},
    [GTL_ACCELERATION] = {"an acceleration", "9.81 m/s2", GTL_ACCELERATION_UNITS},
    [GTL_SPEED] = {"a speed", "0.5 m/s", GTL_SPEED_UNITS},
    [GTL_TIME] = {"a time", "0.4 s", GTL_TIME_UNITS},
    [GTL_LINEAR_MASS] = {"a mass a length", "4 kg/m", GTL_LINEAR_MASS_UNITS},
    [GTL_ELASTICITY] = {"a modulus of elasticity", "200 GPa", GTL_ELASTICITY_UNITS},
    [GTL_DENSITY] = {"a density", "1030 kg/m3", GTL_DENSITY_UNITS},
    [GTL_NUMBER] = {"a plain number", "2.5", GTL_NUMBER_UNITS},
    [GTL_WHOLE] = {"a whole number", "2", GTL_WHOLE_UNITS},
};

/* Words that people write for a unit, and what to write instead. */
static const struct {
    const char *word;
    const char *advice;
} advices[] = {
    {"ton", "means 2000 lb, 2240 lb or 1000 kg, by place and trade: write lb, kg or t (1000 kg)"},
    {"tons", "means 2000 lb, 2240 lb or 1000 kg, by place and trade: write lb, kg or t (1000 kg)"},
    {"tonf", "means 2000 lbf, 2240 lbf or 1000 kgf, by place and trade: write lbf, kgf or kN"},
    {"cwt", "means 100 lb or 112 lb, by place: write lb or kg"},
    {"tonne", "is written t"},
    {"tonnes", "is written t"},
    {"lbs", "is written lb"},
    {"#", "is written lb for a mass and lbf for a force"},
    {"pound", "is written lb for a mass and lbf for a force"},
    {"pounds", "is written lb for a mass and lbf for a force"},
    {"kilo", "is written kg"},
    {"kilos", "is written kg"},
    {"kgs", "is written kg"},
    {"kp", "is written kgf"},
    {"kips", "is written kip"},
    {"newton", "is written N"},
    {"newtons", "is written N"},
    {"metre", "is written m"},
    {"metres", "is written m"},
    {"meter", "is written m"},
    {"meters", "is written m"},
    {"foot", "is written ft"},
    {"feet", "is written ft"},
    {"'", "is written ft"},
    {"inch", "is written in"},
    {"inches", "is written in"},
    {"\"", "is written in"},
    {"degree", "is written deg"},
    {"degrees", "is written deg"},
    {"\xC2\xB0", "is written deg"},
    {"percent", "is written %"},
    {"m/s^2", "is written m/s2"},
    {"m/s\xC2\xB2", "is written m/s2"},
    {"ft/s^2", "is written ft/s2"},
    {"ft/s\xC2\xB2", "is written ft/s2"},
    {"mps", "is written m/s"},
    {"fps", "is written ft/s"},
    {"fpm", "is written ft/min"},
    {"sec", "is written s"},
    {"secs", "is written s"},
    {"second", "is written s"},
    {"seconds", "is written s"},
    {"minute", "is written min"},
    {"minutes", "is written min"},
    {"kg/m^3", "is written kg/m3"},
    {"kg/m\xC2\xB3", "is written kg/m3"},
    {"lb/ft^3", "is written lb/ft3"},
    {"lb/ft\xC2\xB3", "is written lb/ft3"},
    {"pcf", "is written lb/ft3"},
};

#define COUNT(table) (sizeof(table) / sizeof(table)[0])

const char *gtl_unit_names(gtl_quantity quantity)
{
    return quantities[quantity].names;
}

/* One reading under way: what is left of the text, what was wanted, where the message goes. */
typedef struct reading {
    gtl_word all;
    gtl_word rest;
    gtl_quantity wanted;
    char *why;
} reading;

static bool refuse(reading *r, const char *format, ...) GTL_PRINTF(2, 3);

static bool refuse(reading *r, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(r->why, GTL_WHY_SIZE, format, arguments);
    va_end(arguments);
    return false;
}

/* "write a mass such as 85 kg" belongs into every refusal of a whole value. */
static bool refuse_whole(reading *r, const char *problem)
{
    char excerpt[GTL_EXCERPT_SIZE];
    return refuse(r, "`%s` %s; write %s such as %s", gtl_excerpt(r->all, excerpt), problem,
                  quantities[r->wanted].noun, quantities[r->wanted].example);
}

static char next(const reading *r)
{
    return r->rest.length > 0 ? r->rest.start[0] : '\0';
}

static void skip(reading *r, size_t count)
{
    r->rest.start += count;
    r->rest.length -= count;
}

static bool take(reading *r, char byte)
{
    if (next(r) != byte) return false;
    skip(r, 1);
    return true;
}

static bool is_digit(char byte)
{
    return byte >= '0' && byte <= '9';
}

/* A number in decimals as whole digits and a power of ten, which strtod reads alike in every locale. */
typedef struct decimals {
    char digits[MOST_DIGITS + 1];
    int count;
    int exponent;
} decimals;

/* Appends the digits that come next; false where they are too many. */
static bool take_digits(reading *r, decimals *number)
{
    for (; is_digit(next(r)); skip(r, 1)) {
        if (number->count == MOST_DIGITS) return false;
        number->digits[number->count++] = next(r);
    }
    return true;
}

/* An exponent such as e-3, if one comes next: an `e` alone is left to be taken for a unit. */
static void take_exponent(reading *r, decimals *number)
{
    size_t at = 1;
    if (next(r) != 'e' && next(r) != 'E') return;
    bool negative = r->rest.length > at && r->rest.start[at] == '-';
    if (negative || (r->rest.length > at && r->rest.start[at] == '+')) at++;
    if (r->rest.length <= at || !is_digit(r->rest.start[at])) return;
    int exponent = 0;
    for (; at < r->rest.length && is_digit(r->rest.start[at]); at++) {
        if (exponent < 10000) exponent = exponent * 10 + (r->rest.start[at] - '0');
    }
    skip(r, at);
    number->exponent += negative ? -exponent : exponent;
}

/* What may follow a number only if the number itself is misspelt. */
static bool refuse_number_tail(reading *r, const decimals *number)
{
    char byte = next(r);
    if (byte == ',' || byte == '.' || byte == '_') {
        return refuse_whole(r,
                            "is no number: use one decimal point and no mark between thousands (2.5, 12000)");
    }
    bool zero_alone = number->count == 1 && number->digits[0] == '0';
    if (zero_alone && (byte == 'x' || byte == 'X')) return refuse_whole(r, "is not written in decimals");
    return true;
}

static bool take_number(reading *r, double *value)
{
    decimals number = {.count = 0};
    bool negative = take(r, '-');
    if (!negative) take(r, '+');
    bool fits = take_digits(r, &number);
    if (fits && next(r) == '.') {
        skip(r, 1);
        int before = number.count;
        fits = take_digits(r, &number);
        number.exponent = before - number.count;
    }
    if (!fits) return refuse_whole(r, "has too many digits");
    if (number.count == 0) return refuse_whole(r, "does not begin with a number");
    take_exponent(r, &number);
    if (!refuse_number_tail(r, &number)) return false;

    char spelling[MOST_DIGITS + 32];
    snprintf(spelling, sizeof spelling, "%.*se%d", number.count, number.digits, number.exponent);
    double size = strtod(spelling, NULL);
    bool all_zeros = strspn(number.digits, "0") == (size_t)number.count;
    if (!isfinite(size)) return refuse_whole(r, "is too large a number");
    if (size < LEAST && !all_zeros) return refuse_whole(r, "is too small a number");
    *value = negative ? -size : size;
    return true;
}

/* The unit that comes next: up to a blank or, so that 16ft4in can be read, a digit; m/s2 keeps its own. */
static gtl_word take_unit(reading *r)
{
    r->rest = gtl_word_trim(r->rest);
    gtl_word word = {r->rest.start, 0};
    bool divided = false;
    while (word.length < r->rest.length) {
        char byte = r->rest.start[word.length];
        if (gtl_is_blank(byte) || (is_digit(byte) && !divided)) break;
        divided = divided || byte == '/';
        word.length++;
    }
    skip(r, word.length);
    r->rest = gtl_word_trim(r->rest);
    return word;
}

static const unit *find_unit(gtl_word name)
{
    for (size_t i = 0; i < COUNT(units); i++) {
        if (gtl_word_compare(name, gtl_word_of(units[i].name)) == 0) return &units[i];
    }
    return NULL;
}

static bool refuse_unit(reading *r, gtl_word name)
{
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_excerpt(name, excerpt);
    for (size_t i = 0; i < COUNT(advices); i++) {
        if (gtl_word_compare(name, gtl_word_of(advices[i].word)) != 0) continue;
        return refuse(r, "`%s` %s", excerpt, advices[i].advice);
    }
    if (quantities[r->wanted].names[0] == '\0') {
        return refuse(r, "`%s` after the number: %s stands alone, without a unit", excerpt,
                      quantities[r->wanted].noun);
    }
    return refuse(r, "unknown unit `%s`; the units of %s are %s", excerpt, quantities[r->wanted].noun,
                  quantities[r->wanted].names);
}

/* Whether a unit may stand where `wanted` is wanted: itself, and a mass for a force, as tags say it. */
static bool fits(const unit *found, gtl_quantity wanted)
{
    return found->quantity == wanted || (found->quantity == GTL_MASS && wanted == GTL_FORCE);
}

static const unit *take_fitting_unit(reading *r)
{
    char excerpt[GTL_EXCERPT_SIZE];
    gtl_word name = take_unit(r);
    if (name.length == 0) {
        refuse_whole(r, "has no unit");
        return NULL;
    }
    const unit *found = find_unit(name);
    if (!found) {
        refuse_unit(r, name);
    } else if (!fits(found, r->wanted)) {
        refuse(r, "`%s` is %s; %s is wanted here, such as %s", gtl_excerpt(r->all, excerpt),
               found->quantity == GTL_FRACTION ? "a percentage" : quantities[found->quantity].noun,
               quantities[r->wanted].noun, quantities[r->wanted].example);
        found = NULL;
    }
    return found;
}

/* The inches after feet. Feet that are not whole, or inches that make a foot, are taken for a slip. */
static bool take_inches(reading *r, double feet, double *inches)
{
    double number = 0;
    if (!is_digit(next(r)) && next(r) != '.') return refuse_whole(r, "holds more than one quantity");
    if (!take_number(r, &number)) return false;
    const unit *found = find_unit(take_unit(r));
    if (!found || strcmp(found->name, "in") != 0 || r->rest.length > 0) {
        return refuse_whole(r, "goes on after the feet, which only inches may, as in 16 ft 4 in");
    }
    if (feet != floor(feet) || number >= 12) {
        return refuse_whole(r, "is mixed up: before inches go whole feet, and 12 inches are a foot");
    }
    *inches = number;
    return true;
}

/* What follows the number: a unit that fits, or none where none is needed. */
static bool take_scale(reading *r, double gravity, double *value, bool *weighed)
{
    bool may_be_bare = r->wanted == GTL_FRACTION || r->wanted == GTL_NUMBER || r->wanted == GTL_WHOLE;
    if (may_be_bare && gtl_word_trim(r->rest).length == 0) return true;
    bool negative = signbit(*value);
    const unit *found = take_fitting_unit(r);
    if (!found) return false;
    double inches = 0;
    if (r->rest.length > 0) {
        if (strcmp(found->name, "ft") != 0) return refuse_whole(r, "holds more than one quantity");
        if (!take_inches(r, *value, &inches)) return false;
    }
    /* 0.3048 and 0.0254 in one product keep 16 ft 4 in as exact as 196 in. */
    *value = inches > 0 ? (*value * 12 + (negative ? -inches : inches)) * 0.0254 : *value * found->factor;
    if (found->quantity == GTL_MASS && r->wanted == GTL_FORCE) {
        *value *= gravity;
        *weighed = true;
    }
    return true;
}

bool gtl_parse_quantity(const char *text, gtl_quantity wanted, double gravity, double *si, bool *used_gravity,
                        char why[GTL_WHY_SIZE])
{
    gtl_word all = gtl_word_trim(gtl_word_of(text));
    reading r = {all, all, wanted, why};
    double value = 0;
    bool weighed = false;
    why[0] = '\0';
    if (all.length == 0) {
        return refuse(&r, "there is no value; write %s such as %s", quantities[wanted].noun,
                      quantities[wanted].example);
    }
    if (!take_number(&r, &value) || !take_scale(&r, gravity, &value, &weighed)) return false;
    if (fabs(value) > GREATEST || (wanted == GTL_WHOLE && fabs(value) > GREATEST_WHOLE)) {
        return refuse_whole(&r, "is too large a number");
    }
    if (wanted == GTL_WHOLE && value != floor(value)) return refuse_whole(&r, "is not whole");
    *si = value;
    if (weighed && used_gravity) *used_gravity = true;
    return true;
}
