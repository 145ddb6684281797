/* compose_lab.c - the head of a lab's document, its findings, and the order of all. */
#include "lab/compose.h"
#include "report/words.h"

#include <stdlib.h>

#define TITLE_LINES 2

static void read_pair(const gtl_lab *lab, gtl_document *document)
{
    gtl_document_pair(document, "Read", "%s of %s; all of them are told below",
                      gtl_lab_count(lab->row_count, "row").text,
                      gtl_lab_count(lab->set_up_count, "set-up").text);
}

/* How many rows, or set-ups, have findings of their own. */
static int rows_found(const gtl_lab *lab)
{
    int count = 0;
    for (int i = 0; i < lab->row_count; i++)
        if (lab->rows[i].finding_count > 0) count++;
    return count;
}

static int set_ups_found(const gtl_lab *lab)
{
    int count = 0;
    for (int i = 0; i < lab->set_up_count; i++)
        if (lab->set_ups[i].finding_count > 0) count++;
    return count;
}

static void findings_pair(const gtl_lab *lab, gtl_document *document)
{
    int rows = rows_found(lab), set_ups = set_ups_found(lab);
    if (lab->finding_count == 0)
        gtl_document_pair(document, "Findings", "none; a slip that looks right is not found");
    else
        gtl_document_pair(document, "Findings", "%d, in %s%s%s: read them before any figure",
                          lab->finding_count, rows > 0 ? gtl_lab_count(rows, "row").text : "",
                          rows > 0 && set_ups > 0 ? " and " : "",
                          set_ups > 0 ? gtl_lab_count(set_ups, "set-up").text : "");
}

static void counted_pair(const gtl_lab *lab, gtl_document *document)
{
    int left_out = 0;
    for (int i = 0; i < lab->row_count; i++)
        if (!lab->rows[i].counted) left_out++;
    if (left_out == 0) return;
    gtl_document_pair(document, "Left out", "%d of %s: in no mean and no fit; a finding says why", left_out,
                      gtl_lab_count(lab->row_count, "row").text);
    gtl_document_strong(document);
}

static void join(void *text, const char *sentence)
{
    gtl_text *whole = text;
    if (sentence)
        gtl_text_add(whole, "%s%s", whole->length > 0 ? " " : "", sentence);
    else
        whole->failed = true;
}

static void head(const gtl_lab *lab, gtl_document *document)
{
    gtl_text title = {0}, cautions = {0};
    gtl_text_add(&title, "What was measured: %s", lab->file);
    char *line = gtl_text_take(&title);
    gtl_document_title(document, TITLE_LINES, line);
    free(line);
    read_pair(lab, document);
    findings_pair(lab, document);
    counted_pair(lab, document);
    gtl_words_cautions(join, &cautions);
    gtl_document_put(document, GTL_PAIR, "Cautions", &cautions);
}

/* --- findings --- */

/* Of the findings of a row, a deeper one explains a shallower that follows it. */
static int depth(gtl_lab_code code)
{
    switch (code) {
    case GTL_LAB_DISTANCES_SWAPPED:
    case GTL_LAB_UPSIDE_DOWN_RATIO:
    case GTL_LAB_GRAMS:
    case GTL_LAB_KILOGRAMS:
    case GTL_LAB_NOT_THIS_RIG:
    case GTL_LAB_NOT_THESE_PARTS:
        return 2;
    case GTL_LAB_OVER_BEYOND:
    case GTL_LAB_BELOW_FRICTIONLESS:
        return 1;
    default:
        return 0;
    }
}

static bool is_explained(const gtl_lab *lab, int finding)
{
    const gtl_lab_finding *one = &lab->findings[finding];
    for (int i = finding - 1; one->row >= 0 && i >= lab->rows[one->row].first_finding; i--)
        if (depth(lab->findings[i].code) > depth(one->code)) return true;
    return false;
}

/* Each names its place, what is found, where to look, and its code, by which docs/lab.md is searched. */
static void put_finding(const gtl_lab *lab, int index, gtl_document *document)
{
    const gtl_lab_finding *finding = &lab->findings[index];
    gtl_text text = {0};
    if (finding->row >= 0)
        gtl_lab_add_row(&text, &lab->rows[finding->row], true);
    else
        gtl_lab_add_set_up(&text, lab, finding->set_up, true);
    gtl_text_add(&text, ": ");
    gtl_lab_say_finding(&text, lab, finding);
    if (is_explained(lab, index))
        gtl_text_add(&text, ". What was found before would explain it.");
    else
        gtl_text_add(&text, ". Look first at: %s.", gtl_lab_look_first(finding->code));
    if (finding->row >= 0 && gtl_lab_bar(lab, &lab->rows[finding->row]) == finding)
        gtl_text_add(&text, " The row is left out of the mean and the fit.");
    gtl_text_add(&text, " [%s]", gtl_lab_code_name(finding->code));
    gtl_document_put(document, GTL_BULLET, NULL, &text);
}

void gtl_lab_compose_findings(const gtl_lab *lab, gtl_document *document)
{
    gtl_document_heading(document, "Findings");
    for (int i = 0; i < lab->finding_count; i++) put_finding(lab, i, document);
    if (lab->finding_count == 0)
        gtl_document_paragraph(document,
                               "None. Readings that are wrong in a way that looks right are not found.");
}

void gtl_lab_compose(const gtl_lab *lab, gtl_document *document)
{
    head(lab, document);
    gtl_lab_compose_findings(lab, document);
    gtl_lab_compose_set_ups(lab, document);
    gtl_lab_compose_readings(lab, document);
    gtl_lab_compose_work(lab, document);
    gtl_lab_compose_prediction(lab, document);
    gtl_lab_compose_notes(document);
}
