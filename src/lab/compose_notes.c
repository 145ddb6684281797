/* compose_notes.c - how far the figures of a lab go: uncertainty in plain words, and what was not checked. */
#include "lab/compose.h"

static void uncertainty(gtl_document *document)
{
    gtl_document_heading(document, "Uncertainty");
    gtl_document_paragraph(
        document,
        "A scale read to plus or minus a half-width a may be anywhere in that range: its standard "
        "uncertainty is a divided by the square root of 3. `reading` is the half-width of load and effort, "
        "`distance reading` that of both distances. Weights that are stated count as exact.");
    gtl_document_paragraph(
        document,
        "Of products and ratios the squares of the relative uncertainties are added (JCGM 100:2008, NIST TN "
        "1297). U is twice the standard uncertainty (k = 2): of a hundred readings like this one, about 95 "
        "lie within U of the true value, if nothing but reading error is at work.");
    gtl_document_paragraph(
        document, "Adding percentages, as many school books do, takes all errors at their worst and in one "
                  "direction at once. It is wider, and stands beside U so that both can be compared.");
}

static void not_checked(gtl_document *document)
{
    gtl_document_heading(document, "Not checked");
    gtl_document_bullet(document, "Whether the scale, the ruler and the weights are right, and whether the "
                                  "scale showed zero in the attitude in which it was read.");
    gtl_document_bullet(document, "Whether the load was going up slowly and steadily while the scale was "
                                  "read: `moving` is taken on trust.");
    gtl_document_bullet(document, "Whether rope rubbed on a block's cheek or on itself, and how stiff and "
                                  "heavy it is: the prediction has neither.");
    gtl_document_bullet(document, "Whether a rig file is the rig that stood on the bench.");
    gtl_document_bullet(document,
                        "Ratings: `gantline report` checks a rig against them, this table does not.");
}

void gtl_lab_compose_notes(gtl_document *document)
{
    uncertainty(document);
    not_checked(document);
}
