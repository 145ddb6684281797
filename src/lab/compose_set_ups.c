/* compose_set_ups.c - what each set-up comes to: mean, spread, efficiency per sheave, and the rows left out.
 */
#include "lab/compose.h"
#include "lab/plot.h"
#include "report/names.h"

#include <math.h>
#include <stdlib.h>

static const gtl_column columns[] = {
    {"set-up", false}, {"rows", true}, {"that count", true}, {"mean [%]", true}, {"spread [%]", true}};

static const gtl_column fitted[] = {{"per sheave [%]", true}, {"its U [%]", true}, {"U is from", false}};

static const char *const kinds[] = {
    [GTL_LAB_FIT_NONE] = "no fit",
    [GTL_LAB_FIT_READINGS] = "readings",
    [GTL_LAB_FIT_SCATTER] = "scatter",
    [GTL_LAB_FIT_UNKNOWN] = "not known",
};

static void row(const gtl_lab *lab, int index, gtl_document *document)
{
    const gtl_lab_set_up *one = &lab->set_ups[index];
    gtl_text name = {0};
    gtl_text_add(&name, "%s: ", gtl_letter_of(index).text);
    gtl_lab_add_name(&name, one);
    gtl_document_put_cell(document, &name);
    gtl_document_cell(document, "%d", one->row_count);
    gtl_document_cell(document, "%d", one->counted);
    gtl_document_cell(document, "%s", gtl_figure_percent(one->efficiency_mean).text);
    gtl_document_cell(document, "%s", gtl_figure_percent(one->efficiency_spread).text);
    if (one->sheave_efficiency > 1)
        gtl_document_cell(document, "over 100");
    else
        gtl_document_cell(document, "%s", gtl_figure_percent(one->sheave_efficiency).text);
    gtl_document_cell(document, "%s", gtl_figure_percent(GTL_LAB_COVERAGE * one->sheave_efficiency_u).text);
    gtl_document_cell(document, "%s", kinds[one->fit]);
}

/* Which rows do not count, and why, by the first finding that bars each. */
static void left_out(const gtl_lab *lab, int index, gtl_document *document)
{
    if (lab->set_ups[index].counted == lab->set_ups[index].row_count) return;
    gtl_text text = {0};
    gtl_names names = {.text = &text, .most = GTL_ALL_NAMES};
    gtl_lab_add_set_up(&text, lab, index, true);
    gtl_text_add(&text, ", left out: ");
    for (int i = 0; i < lab->row_count; i++) {
        const gtl_lab_row *one = &lab->rows[i];
        const gtl_lab_finding *bar = gtl_lab_bar(lab, one);
        if (one->set_up != index || one->counted) continue;
        gtl_text name = {0};
        gtl_text_add(&name, "line %d (%s)", one->line,
                     bar ? gtl_lab_finding_title(bar->code) : "no efficiency");
        char *words = gtl_text_take(&name);
        if (!words) text.failed = true;
        if (words) gtl_names_add(&names, words);
        free(words);
    }
    gtl_document_put(document, GTL_BULLET, NULL, &text);
}

static bool any_parts(const gtl_lab *lab)
{
    for (int i = 0; i < lab->set_up_count; i++)
        if (lab->set_ups[i].parts > 0) return true;
    return false;
}

static bool any_rig(const gtl_lab *lab)
{
    for (int i = 0; i < lab->set_up_count; i++)
        if (lab->set_ups[i].parts == 0) return true;
    return false;
}

static void meaning(const gtl_lab *lab, gtl_document *document)
{
    gtl_document_paragraph(document,
                           "Mean and spread (sample standard deviation) are of the efficiencies of the rows "
                           "that count, each with the useful work alone. Heavy blocks make the efficiency of "
                           "one set-up grow with the load, so readings at several loads spread by that too.");
    gtl_document_paragraph(
        document,
        "\"Per sheave\" is the one efficiency of a single sheave at a half turn with which the efforts that "
        "were read fit best; the weight of the blocks is taken into account. U is its uncertainty for k = 2. "
        "A single sheave loses less than the whole set-up: never use the one figure for the other.");
    if (any_rig(lab))
        gtl_document_paragraph(document, "Of a rig, all blocks share that efficiency, whatever its file says "
                                         "of them; a fairlead keeps its own.");
    if (any_parts(lab))
        gtl_document_paragraph(
            document, "Parts stand for the textbook tackle: as many sheaves as parts, rope turned half round "
                      "each, all parts parallel, and the hauling part leaving the fixed block. A tackle "
                      "hauled from the moving block has one sheave less: describe it by a rig.");
}

void gtl_lab_compose_set_ups(const gtl_lab *lab, gtl_document *document)
{
    gtl_document_heading(document, "Set-ups");
    gtl_document_table(document, columns, (int)(sizeof columns / sizeof *columns));
    for (size_t i = 0; i < sizeof fitted / sizeof *fitted; i++)
        gtl_document_column(document, &fitted[i], i == 0);
    for (int i = 0; i < lab->set_up_count; i++) row(lab, i, document);
    for (int i = 0; i < lab->set_up_count; i++) left_out(lab, i, document);
    meaning(lab, document);
    gtl_lab_plot_efficiency(lab, document);
}
