/* explain.c - the worked solution of a rig: reads like a table of contents. */
#include "explain/lesson.h"
#include "report/write.h"

/* What a section belongs to; all of them where all steps are asked for. */
typedef enum gtl_road { BOTH, FORCES, DISTANCES } gtl_road;

static const struct gtl_section {
    void (*compose)(gtl_lesson *lesson);
    gtl_road road;
    bool friction; /* left out of the ideal rig */
} sections[] = {
    {gtl_lesson_head, BOTH, false},      {gtl_lesson_bodies, FORCES, false},
    {gtl_lesson_rope, DISTANCES, false}, {gtl_lesson_advantage, BOTH, false},
    {gtl_lesson_work, DISTANCES, false}, {gtl_lesson_friction, FORCES, true},
    {gtl_lesson_efficiency, BOTH, true}, {gtl_lesson_support, FORCES, false},
    {gtl_lesson_thumb, FORCES, true},    {gtl_lesson_closing, BOTH, false},
};

#define SECTION_COUNT (sizeof sections / sizeof *sections)

static bool is_told(const gtl_explain_wish *wish, const struct gtl_section *section)
{
    if (!section->compose || (section->friction && wish->ideal)) return false;
    if (wish->steps == GTL_STEPS_ALL || section->road == BOTH) return true;
    return section->road == (wish->steps == GTL_STEPS_FORCES ? FORCES : DISTANCES);
}

/* A case that is told: worked, and possible. */
static const gtl_outcome *told_case(const gtl_sheet *sheet, gtl_case_kind kind)
{
    const gtl_outcome *outcome = gtl_sheet_outcome(sheet, kind);
    return outcome && outcome->possible ? outcome : NULL;
}

void gtl_lesson_step(gtl_lesson *lesson, const char *format, ...)
{
    gtl_text title = {0};
    va_list arguments;
    va_start(arguments, format);
    gtl_text_add(&title, "%d. ", ++lesson->steps);
    gtl_text_add_list(&title, format, arguments);
    va_end(arguments);
    gtl_document_put(lesson->document, GTL_STEP, NULL, &title);
}

void gtl_explain_into(gtl_document *document, const gtl_sheet *sheet, const gtl_explain_wish *wish,
                      const char *prefix)
{
    const gtl_outcome *hold = told_case(sheet, GTL_HOLD);
    const gtl_outcome *raise = wish->ideal ? NULL : told_case(sheet, GTL_RAISE);
    /* Of two hands of which one is let go the lesson is about the one that holds. */
    if (hold && raise && raise->rig->hand != hold->rig->hand) raise = NULL;
    gtl_lesson lesson = {.sheet = sheet,
                         .rig = hold    ? hold->rig
                                : raise ? raise->rig
                                        : sheet->rig,
                         .wish = *wish,
                         .units = gtl_print_units_for(sheet),
                         .hold = hold,
                         .raise = raise,
                         .document = document,
                         .prefix = prefix};
    for (size_t i = 0; i < SECTION_COUNT; i++)
        if (is_told(wish, &sections[i])) sections[i].compose(&lesson);
}

static char *page_of(const gtl_document *document)
{
    /* A page only looks at its document. */
    gtl_page page = {.document = *document, .foot = "worked solution"};
    return document->failed ? NULL : gtl_write_html(&page);
}

char *gtl_explain(const gtl_sheet *sheet, const gtl_explain_wish *wish)
{
    if (wish->form != GTL_TEXT && wish->form != GTL_HTML) return NULL;
    gtl_document document = {0};
    gtl_explain_into(&document, sheet, wish, "step");
    char *text = wish->form == GTL_HTML ? page_of(&document) : gtl_write_text(&document);
    gtl_document_end(&document);
    return text;
}
