/* warning_words.c - the sentence of each warning. docs/report.md says what to do about each, at more length.
 */
#include "base/text.h"
#include "report/words.h"

#include <string.h>

/* The first `%` with a letter stands for the warning's value, the second for its other number; how they are
 * printed is the letter's affair, see below. */
static const char *const sentences[GTL_WARN_COUNT] = {
    [GTL_WARN_FRICTION_NOT_STATED] =
        "its friction is not stated, so it was worked without: real forces are greater. State an efficiency "
        "(or friction).",
    [GTL_WARN_FRICTION_NONE] = "is stated to have no friction at all; no real sheave or ring is like that.",
    [GTL_WARN_UNRATED] = "has nothing to be checked by. Give its wll, or its mbs and a design factor.",
    [GTL_WARN_MBS_WITHOUT_FACTOR] =
        "has a breaking strength but no design factor, and that is no rating. Give a design factor.",
    [GTL_WARN_LOW_DESIGN_FACTOR] = "its design factor, %n, is low: see what your code of practice asks for.",
    [GTL_WARN_WLL_ABOVE_MBS] =
        "its wll, %r, is above its mbs over the design factor, %r. The smaller one rules; one of the "
        "figures may be mistyped.",
    [GTL_WARN_REDIRECT_FORCE] =
        "carries %f from a line that carries %f: a redirect can see up to twice the line's tension.",
    [GTL_WARN_WIDE_BRIDLE] =
        "its legs open to %d: their tension grows fast with the angle. Longer legs bring it down.",
    [GTL_WARN_FLAT_LEG] = "lies only %d above the horizontal. Under 30 deg ask a qualified person.",
    [GTL_WARN_NEARLY_HORIZONTAL_LEG] =
        "lies only %d from the horizontal: a small change of shape changes its tension greatly. Do not rely "
        "on this figure.",
    [GTL_WARN_FAR_FROM_DRAWING] = "hangs %l from where it is drawn. See that the drawing is meant so.",
    [GTL_WARN_NOT_PARALLEL] =
        "its parts of line stand %d apart, not side by side: it carries less than twice the line's tension.",
    [GTL_WARN_FRICTION_CARRIES] =
        "pulls only %f because friction carries the rest; with no friction it would be %f. A wet, worn or "
        "polished bend holds less than stated: be ready for more.",
    [GTL_WARN_WILL_NOT_LOWER] =
        "the load would not come down by itself: friction holds it, and it would have to be pulled down.",
    [GTL_WARN_CANNOT_MOVE] = "it cannot be moved so; the reason stands under Effort.",
    [GTL_WARN_RUNS_AWAY] = "the load runs away by itself: the hand would have to push.",
    [GTL_WARN_UNDECIDED] =
        "it is undecided which way rope runs here, so friction may hold it anywhere between. Figures "
        "printed have equal tensions here; demands take the worst.",
    [GTL_WARN_NOT_EVERY_COMBINATION] =
        "%n stops are undecided: too many to try every combination. Each was tried alone, and all one way.",
    [GTL_WARN_IDLE] = "carries nothing here. See whether that is meant, or whether it was left out.",
    [GTL_WARN_WEIGHTLESS_BLOCK] = "moves, but has no weight stated. Its weight is lifted too: give its mass.",
    [GTL_WARN_LENGTH_SENSITIVE] =
        "made 1 % longer it would change the greatest tension by %p. Stretch and measuring decide how this "
        "load is shared.",
    [GTL_WARN_SEVERAL_PLACES] =
        "the rig can hang in %n places near the drawing. The nearest is printed; demands take the worst.",
    [GTL_WARN_SLACK_LINE] = "is slack: it carries nothing here.",
    [GTL_WARN_NEARLY_TAUT] = "is slack by only %p of its length: stretch or measuring may bring it in.",
    [GTL_WARN_NEUTRAL] = "can turn or shift without any rope running or weight rising. It stays as drawn.",
    [GTL_WARN_POORLY_CONDITIONED] =
        "the rig is close to having no answer (pivot ratio %w): small changes of shape change the forces "
        "greatly.",
};

static gtl_figure plain(const gtl_print_units *units, double number)
{
    (void)units;
    return gtl_figure_typed(number);
}

static gtl_figure power(const gtl_print_units *units, double number)
{
    (void)units;
    return gtl_figure_power(number);
}

static gtl_figure percent(const gtl_print_units *units, double number)
{
    (void)units;
    return gtl_figure_after(gtl_figure_percent(number), "%");
}

static gtl_figure degrees(const gtl_print_units *units, double number)
{
    (void)units;
    return gtl_figure_after(gtl_figure_degrees(number), "deg");
}

static const struct gtl_printer {
    char letter;
    gtl_figure (*print)(const gtl_print_units *units, double number);
} printers[] = {
    {'f', gtl_figure_force_unit},
    {'r', gtl_figure_rating_unit},
    {'l', gtl_figure_length_unit},
    {'d', degrees},
    {'p', percent},
    {'n', plain},
    {'w', power},
};

/* The printer that a `%` and what follows it ask for, NULL where it is a plain sign. */
static const struct gtl_printer *asked_for(const char *at)
{
    for (size_t i = 0; *at == '%' && i < sizeof printers / sizeof *printers; i++)
        if (at[1] == printers[i].letter) return &printers[i];
    return NULL;
}

char *gtl_words_warning(const gtl_print_units *units, const gtl_warning *warning)
{
    gtl_text text = {0};
    double number = warning->value;
    if (warning->case_kind >= 0)
        gtl_text_add(&text, "%s: ", gtl_case_name((gtl_case_kind)warning->case_kind));
    for (const char *at = sentences[warning->code]; *at; at++) {
        const struct gtl_printer *printer = asked_for(at);
        if (!printer) {
            gtl_text_put(&text, at, 1);
            continue;
        }
        gtl_text_add(&text, "%s", printer->print(units, number).text);
        number = warning->other;
        at++;
    }
    return gtl_text_take(&text);
}
