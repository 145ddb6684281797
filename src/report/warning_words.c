/* warning_words.c - the sentence of each warning. docs/report.md says what to do about each, at more length.
 */
#include "base/text.h"
#include "report/words.h"

#include <string.h>

/* The first `%` with a letter stands for the warning's value, the second for its other number; how they are
 * printed is the letter's affair, see below. `%o` names the other part, `%k` says what a kind of step does.
 */
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
    [GTL_WARN_NOT_ALLOWED] = "%k: its table does not allow that, so nothing of its rating counts.",
    [GTL_WARN_NOT_PUBLISHED] = "%k: its table says nothing for that, so it counts as unrated. Find a "
                               "published figure, or change it.",
    [GTL_WARN_TIGHT_BEND] =
        "lies round %o at only %n times its own diameter. Under 8 times, fibre rope loses strength, and no "
        "table says how much (a rule of thumb, without a published source). Use a larger sheave or pin.",
    [GTL_WARN_VERY_TIGHT_BEND] =
        "lies round %o at only %n times its own diameter. Under 4 times, fibre rope loses much of its "
        "strength, and no table says how much (a rule of thumb, without a published source). Use a larger "
        "sheave or pin.",
    [GTL_WARN_CHOKE_ANGLE_NOT_STATED] =
        "is choked, and its angle of choke is not stated: it was worked as 120 deg or more. A tighter choke "
        "holds less. State its choke angle.",
    [GTL_WARN_MATERIAL_NOT_STATED] =
        "is choked, and its material is not stated: natural fibre rope and chain hold less so than was "
        "worked. State its material.",
    [GTL_WARN_UNDER_USE_FACTOR] =
        "its design factor is %n; the use asks for %n at the least. The smaller one is what was worked.",
    [GTL_WARN_OVER_USE_SHARE] = "%p of its wll is used; where only a wll is known, the use leaves %p of it.",
    [GTL_WARN_OVER_PEOPLE] =
        "the use is for loads over people. Factors are doubled there where the law says so; nothing was "
        "doubled here, only the factors in the file were worked. This program is not made for people: no "
        "load goes over anybody on the strength of this report.",
    [GTL_WARN_HEAD_FITTING] =
        "holds %r as the head fitting of %o, a block with one sheave; it has to hold twice the block's line, "
        "%f (Lloyd's Code for Lifting Appliances in a Marine Environment, chapter 8, 5.1).",
    [GTL_WARN_NO_FIGURES] =
        "this case has no figures, and nothing was rated for it; the reason stands under Effort.",
    [GTL_WARN_DROPS] = "had %l of slack when the part let go, so what it catches drops before that. The loss "
                       "factor is for a "
                       "load let go onto a taut line; a drop makes more, and that is not worked out.",
    [GTL_WARN_LOAD_FALLS] = "nothing holds it any more, and it falls. What it hits is not worked out.",
    [GTL_WARN_CAME_LOOSE] =
        "nothing holds it in its place any more: it is left out, and its weight too. Where it goes, and what "
        "it hits, is not worked out.",
    [GTL_WARN_ANCHOR_FORGOTTEN] =
        "all the gear on it is rated, and it is not: strong gear makes no strong anchor. It feels %f.",
    [GTL_WARN_HAND_BEYOND_GEAR] =
        "can pull %f, and the rating of its line, %o, is %r: if the load catches, the line is what gives. "
        "Fewer people, or a limit to the pull.",
    [GTL_WARN_FRICTION_MIXED] =
        "is stated to have no friction while other stops have some: the figures are neither a textbook's nor "
        "a rig's.",
    [GTL_WARN_LOW_EFFICIENCY] =
        "%p is under the efficiency of any plain sheave in print (80 %). What belongs here is one sheave's, "
        "not that of the whole tackle.",
    [GTL_WARN_FAR_BELOW_RATING] = "carries less than a thousandth of its rating. See that the unit of its "
                                  "rating is right, and that the "
                                  "load reaches it.",
    [GTL_WARN_WRAP_NOT_AS_DRAWN] =
        "its wrap is stated as %d, and as drawn the line turns through %d. Friction was worked with the one, "
        "forces with the other; see from which side the angle was measured.",
    [GTL_WARN_DIRECTION_ONLY] =
        "runs over blocks that all stand still: they turn it and gain nothing. As much rope is hauled as the "
        "load is lifted.",
    [GTL_WARN_GAINS_NO_FORCE] =
        "hauls in only %n times the lift: it pulls more than the weight that it lifts. See that the tackle "
        "is not turned round.",
    [GTL_WARN_BALANCED] =
        "is balanced at rest: it does not level out, it stays where friction leaves it, and a little more on "
        "either side sets it moving. Make it fast.",
    [GTL_WARN_HAULS_ITSELF] =
        "carries the hand that hauls it. If that is a person: this program is not for lifting people.",
    [GTL_WARN_HARD_PULL] =
        "is to pull %f each. For a sustained pull 150 to 250 N a person is planned (common practice, no "
        "source).",
    [GTL_WARN_MAY_NOT_LOWER] =
        "with friction elsewhere in its range it would not come down by itself, and would have to be pulled "
        "down. What is printed is where it does.",
    [GTL_WARN_BAND_NOT_PROVEN] =
        "what is stated as a range was worked at its ends alone, and %o: between the ends a force may be "
        "greater than any that is printed. Leave margin.",
    [GTL_WARN_BATTEN_SLACK] =
        "its line is slack in one of the two ways to share the batten's weight (%f on lines that do not "
        "give, %f on lines that give alike). The others were worked without it there.",
    [GTL_WARN_BATTEN_UNSURE] =
        "carries %f on level lines that do not give, %f on lines that give alike. How stiff batten "
        "and lines are, and how level, decides which is nearer; every demand takes the worse.",
    [GTL_WARN_BATTEN_PARTS] =
        "its picks shift against each other by %p of what lies between them. It is no level bar then, and "
        "what its lines carry is not known. Set its lines plumb and alike.",
    [GTL_WARN_BATTEN_TILTS] =
        "one of its picks rises %p less than another as it is hauled: it tilts, and its lines share "
        "otherwise. Let all its lines run alike.",
    [GTL_WARN_BEYOND_STRETCH] =
        "is pulled with %f at the peak, and its stretch is stated at %f: beyond that it is a guess. A rope "
        "may stiffen as it is pulled, and a stiffer one makes a higher peak. State its stretch near the "
        "peak.",
    [GTL_WARN_STRETCH_NOT_STATED] =
        "takes %p of the load as it is caught, and states no stretch: it was worked as if it gave nothing.",
    [GTL_WARN_CATCH_JERKS] =
        "moves or is jerked along as the load is caught: the peak is that of the load alone, falling plumb "
        "into lines at rest. What more this makes is not worked out.",
    [GTL_WARN_CATCHING_HAND] =
        "what it has to hold as the load is caught is not known: friction at turns does not hold in a snatch "
        "as it does in a slow pull. Make the rope fast, or plan for it to run.",
    [GTL_WARN_MEAN_DENSITY] =
        "was worked with the mean of its density, as the file says: %f. A heavy piece of it weighs %f.",
    [GTL_WARN_ONE_DENSITY] =
        "its density is one figure, without a spread. That of one species differs by 20 % and more: give a "
        "range, or its `species`.",
    [GTL_WARN_MIDDLE_DIAMETER] =
        "is thicker or thinner halfway than at both its ends. See that its diameters stand in order: end, "
        "halfway, end.",
    [GTL_WARN_LIFT_CUT_SHORT] =
        "goes up only %s of the %s that it is to be lifted; what stops it, and whether a reset helps, stands "
        "in the rope bill.",
    [GTL_WARN_GROWS_ON_THE_WAY] = "bears %f at rest where the load is drawn, and %f further up the lift. "
                                  "Ratings were checked where it is "
                                  "drawn: draw the load at the top of its lift, and check that too.",
};

/* What a part does that a table does not allow, or does not reach; with the step's value. */
static const char *const steps[GTL_STEP_KIND_COUNT] = {
    [GTL_STEP_BEND] = "lies round %o at only %n times its own diameter",
    [GTL_STEP_CHOKE] = "is choked at %d",
    [GTL_STEP_AXIS] = "is pulled %d from its axis",
    [GTL_STEP_SIDE] = "is pulled %d to the side",
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
    {'s', gtl_figure_length_down_unit},
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

/* A sentence with its numbers and names put in. */
static void add_sentence(gtl_text *text, const gtl_print_units *units, const gtl_warning *warning,
                         const char *sentence)
{
    double number = warning->value;
    for (const char *at = sentence; *at; at++) {
        const struct gtl_printer *printer = asked_for(at);
        if (printer) {
            gtl_text_add(text, "%s", printer->print(units, number).text);
            number = warning->other;
        } else if (strncmp(at, "%o", 2) == 0) {
            gtl_text_add(text, "%s", warning->with);
        } else if (strncmp(at, "%k", 2) == 0) {
            add_sentence(text, units, warning, steps[(int)warning->other]);
        } else {
            gtl_text_put(text, at, 1);
            continue;
        }
        at++;
    }
}

char *gtl_words_warning(const gtl_sheet *sheet, const gtl_print_units *units, const gtl_warning *warning)
{
    gtl_text text = {0};
    if (warning->outcome >= 0) gtl_text_add(&text, "%s: ", sheet->outcomes[warning->outcome].name);
    add_sentence(&text, units, warning, sentences[warning->code]);
    return gtl_text_take(&text);
}
