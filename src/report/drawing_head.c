/* drawing_head.c - the head of a drawing: whose rig, which case, the verdict and what governs. */
#include "report/compose.h"
#include "report/drawing_frame.h"
#include "report/escape.h"
#include "report/words.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

/* More of a title is in the report. */
#define MOST_LINES 20
#define MOST_NAMES 3

static const char *const cases[GTL_CASE_KIND_COUNT] = {
    [GTL_HOLD] = "at rest, without friction",
    [GTL_RAISE] = "the load moving up, slowly",
    [GTL_LOWER] = "the load moving down, slowly",
    [GTL_JAM] = "the load caught, every hand pulling all it can",
    [GTL_START] = "raising from rest",
    [GTL_STOP] = "braking while lowering",
    [GTL_LOST] = "after it has let go",
    [GTL_DROP] = "a falling load being caught, at the peak",
};

/* A finished text in lines; it is used up. */
static double put(gtl_picture *picture, double y, bool bold, gtl_text *text)
{
    char *words = gtl_text_take(text);
    if (words)
        y = gtl_frame_words(picture->drawing, (gtl_point){GTL_MARGIN, y}, GTL_FULL_WIDTH, MOST_LINES, bold,
                            words);
    else
        picture->drawing->failed = true;
    free(words);
    return y;
}

static void add_escaped(gtl_text *text, const char *words)
{
    char *escaped = gtl_escape_for_people(words);
    text->failed = text->failed || !escaped;
    if (escaped) gtl_text_put(text, escaped, strlen(escaped));
    free(escaped);
}

static double put_case(gtl_picture *picture, double y)
{
    const gtl_outcome *outcome = picture->outcome;
    gtl_text text = {0};
    gtl_text_add(&text, "Case ");
    add_escaped(&text, outcome->name);
    gtl_text_add(&text, ": %s", cases[outcome->kind]);
    if (outcome->possible && outcome->kind == GTL_LOST)
        gtl_text_add(&text, ", forces times %s", gtl_figure_typed(picture->rig->loss_factor).text);
    y = put(picture, y, true, &text);
    if (outcome->possible) return y;
    gtl_text_add(&text, "%s", outcome->falls ? "" : "It cannot be: ");
    add_escaped(&text, outcome->reason);
    gtl_text_add(&text, ". Drawn as in the rig file, without forces.");
    return put(picture, y, true, &text);
}

typedef struct gtl_reasons {
    gtl_text *text;
    int count;
} gtl_reasons;

/* A sink for words.h. */
static void add_reason(void *context, const char *sentence)
{
    gtl_reasons *reasons = context;
    gtl_text_add(reasons->text, "%s", reasons->count++ ? "; " : " (");
    add_escaped(reasons->text, sentence ? sentence : "");
    reasons->text->failed = reasons->text->failed || !sentence;
}

static double put_verdict(gtl_picture *picture, double y)
{
    gtl_text text = {0};
    gtl_reasons reasons = {.text = &text};
    gtl_text_add(&text, "Verdict on all cases: %s", gtl_verdict_name(picture->sheet->verdict));
    gtl_words_why(picture->sheet, MOST_NAMES, add_reason, &reasons);
    if (reasons.count > 0) gtl_text_add(&text, ")");
    return put(picture, y, true, &text);
}

static double put_governing(gtl_picture *picture, double y)
{
    const gtl_component *worst = gtl_compose_worst(picture->sheet);
    gtl_text text = {0};
    if (!worst) {
        gtl_text_add(&text, "Governs: no part has a rating that could be checked");
        return put(picture, y, false, &text);
    }
    gtl_text_add(&text, "Governs: %s ", gtl_kind_name(worst->kind));
    add_escaped(&text, worst->name);
    if (isinf(worst->utilisation))
        gtl_text_add(&text, ", used in a way that is not allowed");
    else
        gtl_text_add(&text, ", at %s %% of its rating", gtl_figure_utilisation(worst->utilisation).text);
    gtl_text_add(&text, ", by ");
    add_escaped(&text, picture->sheet->outcomes[worst->governing].name);
    return put(picture, y, false, &text);
}

double gtl_frame_head(gtl_picture *picture, double top)
{
    double y = top + 18;
    if (picture->bare) return top;
    if (picture->drawing->title[0])
        y = gtl_frame_words(picture->drawing, (gtl_point){GTL_MARGIN, y}, GTL_FULL_WIDTH, MOST_LINES, true,
                            picture->drawing->title) +
            4;
    y = put_case(picture, y);
    y = put_verdict(picture, y);
    return put_governing(picture, y) - GTL_TEXT_STEP + 8;
}
