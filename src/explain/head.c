/* head.c - what a worked solution begins with: what is asked, what it is not, the whole rig drawn. */
#include "explain/head.h"
#include "report/drawing.h"
#include "report/escape.h"
#include "report/words.h"

#include <stdlib.h>

#define TITLE_LINES 2

/* --- what stands before the first heading --- */

static void title(gtl_lesson *lesson)
{
    const char *given = lesson->rig->title[0] ? lesson->rig->title : lesson->rig->file;
    /* A page has one title: where something stands before it, it heads a section. */
    if (lesson->document->count > 0) {
        gtl_document_heading(lesson->document, "Worked solution");
        gtl_document_short(lesson->document, TITLE_LINES, given);
        return;
    }
    gtl_text text = {0};
    gtl_text_add(&text, "Worked solution: %s", given);
    char *whole = gtl_text_take(&text);
    gtl_document_title(lesson->document, TITLE_LINES, whole);
    free(whole);
}

static bool has_anchor(const gtl_rig *rig)
{
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_ANCHOR) return true;
    return false;
}

/* What has to be found of a rig that a hand hauls. */
static void ask_hand(const gtl_lesson *lesson, gtl_text *text)
{
    const gtl_rig *rig = lesson->rig;
    const char *hand = rig->things[rig->hand].name, *load = gtl_lifted_name(rig);
    if (lesson->wish.steps != GTL_STEPS_DISTANCES) {
        if (lesson->hold)
            gtl_text_add(text, "How hard must %s pull to hold %s at rest, without friction%s?", hand, load,
                         lesson->raise ? ", and to raise it slowly, with friction" : "");
        else if (lesson->raise)
            gtl_text_add(text, "How hard must %s pull to raise %s slowly, with friction?", hand, load);
        else
            gtl_text_add(text, "Why can %s not hold %s at rest?", hand, load);
    }
    if (lesson->wish.steps != GTL_STEPS_FORCES)
        gtl_text_add(text, "%sHow much rope comes to %s while %s rises, and what work is done?",
                     text->length > 0 ? " " : "", hand, load);
}

static void asked(gtl_lesson *lesson)
{
    gtl_text text = {0};
    if (lesson->rig->hand >= 0)
        ask_hand(lesson, &text);
    else
        gtl_text_add(&text, "No pull of a hand has to be found here: what does each line carry while all "
                            "hangs at rest?");
    if (lesson->wish.steps != GTL_STEPS_DISTANCES && has_anchor(lesson->rig))
        gtl_text_add(&text, " What do the supports hold?");
    gtl_document_put(lesson->document, GTL_PAIR, "Asked", &text);
}

/* A case that was asked for and has no figures. */
static void tell_impossible(gtl_lesson *lesson, gtl_case_kind kind, const char *label)
{
    const gtl_outcome *outcome = gtl_sheet_outcome(lesson->sheet, kind);
    if (!outcome || outcome->possible) return;
    gtl_document_pair(lesson->document, label, "cannot be: %s", outcome->reason);
    gtl_document_strong(lesson->document);
}

/* Nothing is held against a rating here, and nothing may read as if it were. */
static void verdict(gtl_lesson *lesson)
{
    static const char *const words[] = {
        [GTL_OVER] = "; its verdict on this rig is OVER: do not load it as it is",
        [GTL_UNRATED] = "; its verdict on this rig is UNRATED: too little is stated to say more",
        [GTL_WITHIN] = "",
    };
    gtl_verdict found = lesson->sheet->verdict;
    gtl_document_pair(lesson->document, "Ratings",
                      "are no part of this solution; `gantline report` checks them%s", words[found]);
    if (found != GTL_WITHIN) gtl_document_strong(lesson->document);
}

static void add_caution(void *text, const char *sentence)
{
    gtl_text *whole = text;
    gtl_text_add(whole, "%s%s", whole->length > 0 ? " " : "", sentence);
}

static void cautions(gtl_lesson *lesson)
{
    gtl_text text = {0};
    gtl_words_cautions(add_caution, &text);
    gtl_document_put(lesson->document, GTL_PAIR, "Cautions", &text);
    gtl_document_pair(
        lesson->document, "Rounding",
        "Figures here are rounded to the nearest, to four digits. A report rounds forces up, to "
        "three.");
}

/* --- the whole rig drawn --- */

/* The drawing of a case with its words, as markup; false without memory. */
static bool draw(gtl_lesson *lesson, int outcome, gtl_text *markup)
{
    gtl_drawing *drawing = gtl_draw(lesson->sheet, outcome);
    char *told = gtl_words_drawing(lesson->sheet, outcome);
    char *words = told ? gtl_escape_for_people(told) : NULL;
    gtl_text id = {0};
    gtl_text_add(&id, "%s-%d", lesson->prefix, ++lesson->figures);
    char *prefix = gtl_text_take(&id);
    bool made = drawing && words && prefix;
    if (made) gtl_write_drawing_pieces(markup, drawing, prefix, words);
    free(prefix);
    free(words);
    free(told);
    gtl_drawing_end(drawing);
    return made;
}

/* At rest, as the report draws it: the places are those of the solution, not of the file. */
static void figure(gtl_lesson *lesson)
{
    const gtl_outcome *hold = gtl_sheet_outcome(lesson->sheet, GTL_HOLD);
    gtl_text markup = {0};
    if (!hold || lesson->wish.form == GTL_TEXT) return; /* text leaves figures out */
    if (draw(lesson, (int)(hold - lesson->sheet->outcomes), &markup))
        gtl_document_figure(lesson->document, "The whole rig at rest", &markup);
    else
        lesson->document->failed = true;
}

void gtl_lesson_head(gtl_lesson *lesson)
{
    title(lesson);
    asked(lesson);
    tell_impossible(lesson, GTL_HOLD, "At rest");
    if (!lesson->wish.ideal) tell_impossible(lesson, GTL_RAISE, "Raising");
    verdict(lesson);
    cautions(lesson);
    gtl_document_heading(lesson->document, "Given");
    figure(lesson);
    gtl_lesson_given(lesson);
}
