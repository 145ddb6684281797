/* compose_limit.c - a limit as a document. */
#include "base/text.h"
#include "report/limit_words.h"
#include "report/names.h"
#include "report/write.h"

#include <gantline/report.h>
#include <math.h>
#include <stdlib.h>

#define TITLE_LINES 2

typedef struct sheet_writer {
    const gtl_limit *limit;
    gtl_print_units units;
    gtl_document *document;
} sheet_writer;

/* Sentences one behind the other. */
static void join(void *text, const char *sentence)
{
    gtl_text *whole = text;
    if (sentence)
        gtl_text_add(whole, "%s%s", whole->length > 0 ? "; " : "", sentence);
    else
        whole->failed = true;
}

static void join_plainly(void *text, const char *sentence)
{
    gtl_text *whole = text;
    if (sentence)
        gtl_text_add(whole, "%s%s", whole->length > 0 ? " " : "", sentence);
    else
        whole->failed = true;
}

/* A pair that ends with what bars a load. */
static void bar(sheet_writer *w, const char *label, const char *before, char *words)
{
    if (!words) w->document->failed = true;
    gtl_document_pair(w->document, label, "%s%s", before, words ? words : "");
    free(words);
}

/* --- the head --- */

static void heaviest(sheet_writer *w)
{
    const gtl_limit *limit = w->limit;
    if (limit->found && limit->heaviest.kind != GTL_EDGE_NONE) {
        gtl_document_pair(w->document, "Heaviest",
                          limit->open ? "%s is over none of the ratings that there are"
                                      : "%s is within the ratings typed in",
                          gtl_limit_mass_down(limit, limit->heaviest.mass).text);
        bar(w, "Stopped by", "", gtl_limit_edge(limit, &limit->heaviest));
        return;
    }
    bar(w, "Heaviest", "", gtl_limit_none(limit));
}

static void lightest(sheet_writer *w)
{
    const gtl_limit *limit = w->limit;
    if (!limit->found || limit->lightest.kind == GTL_EDGE_NONE) return;
    gtl_document_pair(w->document, "Lightest", "%s; a lighter load breaks something too",
                      gtl_limit_mass_up(limit, limit->lightest.mass).text);
    bar(w, "Stopped by", "", gtl_limit_edge(limit, &limit->lightest));
}

static void as_drawn(sheet_writer *w)
{
    if (w->limit->permitted)
        gtl_document_pair(w->document, "As drawn",
                          w->limit->open ? "%s is over none of the ratings that there are"
                                         : "%s is within the ratings typed in",
                          gtl_limit_mass_drawn(w->limit).text);
    else
        bar(w, "As drawn", "NOT WITHIN: ", gtl_limit_barred(w->limit));
}

static void warnings(sheet_writer *w)
{
    int count = w->limit->answered ? w->limit->as_drawn.warning_count : 0;
    if (count > 0)
        gtl_document_pair(w->document, "Warnings", "%d on the rig as drawn: read its report", count);
}

static void cases(sheet_writer *w)
{
    const gtl_rig *rig = w->limit->rig;
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = GTL_ALL_NAMES};
    for (int i = 0; i < rig->case_count; i++) gtl_names_add(&names, rig->cases[i].name);
    gtl_document_put(w->document, GTL_PAIR, "Cases", &text);
}

/* Before any figure that it takes from. */
static void open(sheet_writer *w)
{
    if (!w->limit->open) return;
    gtl_text text = {0};
    gtl_text_add(&text, "NOT ALL COULD BE CHECKED: the true limit may be lower");
    gtl_limit_open(w->limit, join, &text);
    gtl_document_put(w->document, GTL_PAIR, "Open", &text);
}

static void head(sheet_writer *w)
{
    const gtl_rig *rig = w->limit->rig;
    gtl_document_title(w->document, TITLE_LINES, rig->title[0] ? rig->title : rig->file);
    gtl_document_pair(w->document, "Load", "%s, drawn with %s", rig->things[w->limit->load].name,
                      gtl_limit_mass_drawn(w->limit).text);
    open(w);
    heaviest(w);
    lightest(w);
    as_drawn(w);
    warnings(w);
    cases(w);
    gtl_text cautions = {0};
    gtl_words_cautions(join_plainly, &cautions);
    gtl_document_put(w->document, GTL_PAIR, "Cautions", &cautions);
}

/* --- the sections --- */

static void next(sheet_writer *w)
{
    const gtl_limit *limit = w->limit;
    if (limit->next_count == 0) return;
    gtl_document_heading(w->document, "Next at the heaviest load");
    for (int i = 0; i < limit->next_count; i++) {
        const gtl_component *part = &limit->at_limit.components[limit->next[i]];
        gtl_document_bullet(w->document, "%s: %s %% of its rating, by %s%s",
                            gtl_limit_part(limit, limit->next[i]).text,
                            gtl_figure_utilisation(part->utilisation).text,
                            limit->rig->cases[part->governing].name, part->push ? ", in push" : "");
    }
}

static const char *const ratings[] = {
    [GTL_STEP_LIMIT] = "limit",
    [GTL_STEP_WLL] = "WLL",
    [GTL_STEP_PUSH_WLL] = "push WLL",
    [GTL_STEP_MBS] = "MBS",
};

/* Of a head fitting, twice its line counts too. */
static const char *status_of(const gtl_need *need, const gtl_component *part)
{
    if (isnan(need->needed)) return gtl_mark_name(GTL_MARK_UNRATED);
    bool over = need->needed > need->paper * (1 + GTL_UTILISATION_SLACK);
    return gtl_mark_name(over ? GTL_MARK_OVER : part->mark);
}

static void need_row(sheet_writer *w, const gtl_need *need)
{
    const gtl_component *part = &w->limit->as_drawn.components[need->component];
    gtl_document_cell(w->document, "%s", gtl_limit_part(w->limit, need->component).text);
    gtl_document_cell(w->document, "%s", gtl_figure_force(&w->units, part->demand).text);
    gtl_document_cell(w->document, "%s", ratings[need->kind]);
    gtl_document_cell(w->document, "%s", gtl_figure_rating(&w->units, need->paper).text);
    gtl_document_cell(w->document, "%s",
                      isinf(need->needed) ? "none will do" : gtl_figure_force(&w->units, need->needed).text);
    gtl_document_cell(w->document, "%s", status_of(need, part));
}

static void needs(sheet_writer *w)
{
    static const gtl_column columns[] = {{"Part", false}, {"demand", true}, {"rated by", false},
                                         {"it is", true}, {"needed", true}, {"status", false}};
    if (w->limit->need_count == 0) return;
    gtl_document_heading(w->document, "Ratings that the load as drawn needs [%s]", w->units.force);
    gtl_document_paragraph(
        w->document, "What knots, bends, hitches, angles, wear and the design factor take from a rating "
                     "stays as it is; so what is needed is more than the demand. A block's head fitting "
                     "needs twice its line.");
    gtl_document_table(w->document, columns, sizeof columns / sizeof *columns);
    for (int i = 0; i < w->limit->need_count; i++) need_row(w, &w->limit->needs[i]);
}

static void method(sheet_writer *w)
{
    gtl_document_heading(w->document, "How this was found");
    gtl_document_paragraph(w->document,
                           "Every load tried was hung into the rig itself and worked in all its cases; "
                           "nothing was scaled. One is "
                           "within the ratings if no part is over its own, every head fitting holds twice "
                           "its line, no case that "
                           "has to be is impossible, and no part that is rated as drawn loses its rating. "
                           "Loads between two that "
                           "were tried are taken to be like them. `gantline report` says all else.");
    gtl_document_paragraph(
        w->document, "The heaviest load and ratings are rounded down, the lightest load and forces up.");
}

static void compose(const gtl_limit *limit, gtl_document *document)
{
    sheet_writer w = {limit, gtl_print_units_for(gtl_limit_sheet(limit)), document};
    head(&w);
    next(&w);
    needs(&w);
    method(&w);
}

char *gtl_limit_report(const gtl_limit *limit, gtl_form form)
{
    if (form == GTL_JSON) return gtl_write_limit_json(limit);
    gtl_document document = {0};
    compose(limit, &document);
    char *text = gtl_write_text(&document);
    gtl_document_end(&document);
    return text;
}
