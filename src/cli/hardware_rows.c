/* hardware_rows.c - rows of the hardware tables as parts of a document: what each states, in the order and
 * the words of the keys that it was read by. */
#include "cli/hardware_rows.h"

#include "read/table_keys.h"
#include "report/figures.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define DEGREES_A_RADIAN 57.29577951308232

static const char *const meanings[GTL_HW_KIND_COUNT] = {
    [GTL_HW_GEAR] = "pieces of gear; a rig file takes over what a row states",
    [GTL_HW_MATERIAL] = "what a rope or sling is made of",
    [GTL_HW_KNOT] = "the strength that a knot leaves in fibre rope",
    [GTL_HW_TERMINATION] = "the strength that an end termination leaves",
    [GTL_HW_BEND] = "the strength left at a bend by D/d, in steps or by 1 - coefficient / (D/d)^power",
    [GTL_HW_HITCH] = "a sling's rating by how it is hitched, on the one in a straight pull",
    [GTL_HW_CHOKE] = "a choked sling's rating by the angle of choke",
    [GTL_HW_MODE] = "several legs counted by one factor: shown only, drawn legs need none",
    [GTL_HW_FITTING] = "an eyebolt's or pad's rating by the pull's angle from its axis",
    [GTL_HW_SIDE_LOAD] = "a connector's rating by the pull's angle from its line",
    [GTL_HW_USE] = "design factors by use: shown beside yours, never put in its place",
    [GTL_HW_SHEAVE] = "the efficiency of one sheave at a 180 degree turn: shown only",
    [GTL_HW_FRICTION] = "the coefficient of friction of what a rope is led round: shown only",
    [GTL_HW_CLIP] = "wire-rope clips, the least number and their spacing: shown only",
    [GTL_HW_PIPE] = "pipe for battens: its weight a length, and how stiff it is",
    [GTL_HW_GREEN_WOOD] = "the density of a species' wood as it is felled, without bark",
};

/* A number as a table has it. Ratings go down, all else is as typed. */
static gtl_figure figure(gtl_quantity quantity, double si)
{
    static const gtl_print_units units = {.force = "kN", .newtons = 1000, .length = "m", .metres = 1};
    switch (quantity) {
    case GTL_FORCE:
        return gtl_figure_rating_unit(&units, si);
    case GTL_MASS:
        return gtl_figure_after(gtl_figure_typed(si), "kg");
    case GTL_LENGTH:
        return gtl_figure_after(gtl_figure_typed(si * 1000), "mm");
    case GTL_LINEAR_MASS:
        return gtl_figure_after(gtl_figure_typed(si), "kg/m");
    case GTL_ELASTICITY:
        return gtl_figure_after(gtl_figure_typed(si / 1e9), "GPa");
    case GTL_FRACTION:
        return gtl_figure_after(gtl_figure_typed(si * 100), "%");
    case GTL_DENSITY:
        return gtl_figure_after(gtl_figure_typed(si), "kg/m3");
    case GTL_ANGLE:
        return gtl_figure_after(gtl_figure_typed(si * DEGREES_A_RADIAN), "deg");
    default:
        return gtl_figure_typed(si);
    }
}

static void add_list(gtl_text *text, gtl_quantity quantity, const double *list, int count)
{
    for (int i = 0; i < count; i++)
        gtl_text_add(text, "%s%s", i > 0 ? ", " : "", figure(quantity, list[i]).text);
}

static void add_classes(gtl_text *text, const gtl_hardware_row *row)
{
    const char *comma = "";
    for (int i = 1; i < GTL_CLASS_COUNT; i++) {
        if (!row->classes[i]) continue;
        gtl_text_add(text, "%s%s", comma, gtl_rope_class_name((gtl_rope_class)i));
        comma = ", ";
    }
}

/* What a row states under a key; nothing where it does not. */
static void add_value(gtl_text *text, const gtl_hardware_row *row, const gtl_table_key *key)
{
    bool formula = row->rule == GTL_HW_FORMULA;
    switch (key->how) {
    case GTL_TABLE_NUMBER:
        if (!isnan(row->numbers[key->slot]))
            gtl_text_add(text, "%s", figure(key->quantity, row->numbers[key->slot]).text);
        break;
    case GTL_TABLE_EDGES:
        add_list(text, key->quantity, row->edges, formula ? 1 : row->step_count);
        break;
    case GTL_TABLE_SHARES:
        add_list(text, key->quantity, row->shares, formula ? 0 : row->step_count);
        break;
    case GTL_TABLE_FORMULA:
        if (formula) gtl_text_add(text, "%s", figure(key->quantity, row->shares[key->slot]).text);
        break;
    case GTL_TABLE_CLASS:
    case GTL_TABLE_CLASSES:
        add_classes(text, row);
        break;
    case GTL_TABLE_KNOTS:
        gtl_text_add(text, "%s", row->no_knots ? "none" : "");
        break;
    case GTL_TABLE_ON:
        gtl_text_add(text, "%s", row->on_single_leg ? "straight" : "choker");
        break;
    case GTL_TABLE_BEYOND:
        gtl_text_add(text, "%s", row->forbidden ? "not allowed" : "not given");
        break;
    case GTL_TABLE_PEOPLE:
        gtl_text_add(text, "%s", row->over_people ? "yes" : "");
        break;
    case GTL_TABLE_MATERIAL:
        gtl_text_add(text, "%s", row->material);
        break;
    default: /* source, seen and note are told apart from the figures */
        break;
    }
}

/* The row that is found instead of this one, NULL where it is found itself. */
static const gtl_hardware_row *shadow_of(const gtl_hardware *set, const gtl_hardware_row *row)
{
    const gtl_hardware_row *found = gtl_hardware_find(set, row->kind, row->name);
    return found == row ? NULL : found;
}

/* "keeps 55 %; class fibre. Source: SOURCE (seen)." */
static void compose_line(gtl_document *document, const gtl_hardware *set, const gtl_hardware_row *row)
{
    gtl_text text = {0};
    const gtl_table_key *key;
    for (int i = 0; (key = gtl_table_key_at(i)); i++) {
        gtl_text value = {0};
        if (key->kind == row->kind) add_value(&value, row, key);
        char *words = gtl_text_take(&value);
        if (!words) text.failed = true;
        if (words && words[0]) gtl_text_add(&text, "%s%s %s", text.length ? "; " : "", key->key, words);
        free(words);
    }
    gtl_text_add(&text, ". %s%s (%s).", row->source[0] ? "Source: " : "No source stated", row->source,
                 row->seen);
    const gtl_hardware_row *shadow = shadow_of(set, row);
    if (!row->shipped) gtl_text_add(&text, " Line %d.", row->line);
    if (shadow) gtl_text_add(&text, " Not used: %s:%d stands before it.", shadow->file, shadow->line);
    gtl_document_put(document, GTL_PAIR, row->name, &text);
}

/* A pair of a label and a text, left out where the text is empty. */
static void compose_pair(gtl_document *document, const char *label, const char *text)
{
    if (text[0]) gtl_document_pair(document, label, "%s", text);
}

static void compose_figures(gtl_document *document, const gtl_hardware_row *row)
{
    const gtl_table_key *key;
    for (int i = 0; (key = gtl_table_key_at(i)); i++) {
        gtl_text value = {0};
        if (key->kind != row->kind) continue;
        add_value(&value, row, key);
        char *words = gtl_text_take(&value);
        if (words)
            compose_pair(document, key->key, words);
        else
            document->failed = true;
        free(words);
    }
}

static void compose_row(gtl_document *document, const gtl_hardware *set, const gtl_hardware_row *row)
{
    gtl_document_heading(document, "[%s %s]", gtl_hardware_kind_name(row->kind), row->name);
    gtl_document_paragraph(document, "%s", meanings[row->kind]);
    compose_figures(document, row);
    compose_pair(document, "source", row->source[0] ? row->source : "not stated");
    compose_pair(document, "seen", row->seen);
    compose_pair(document, "note", row->note);
    gtl_document_pair(document, "table", "%s:%d%s", row->file, row->line, row->shipped ? " (shipped)" : "");
    const gtl_hardware_row *shadow = shadow_of(set, row);
    if (shadow) gtl_document_pair(document, "not used", "%s:%d stands before it", shadow->file, shadow->line);
}

/* The rows of one kind, of those from `first` up to `end`. */
static void compose_kind(gtl_document *document, const gtl_hardware *set, int kind, int first, int end)
{
    bool headed = false;
    for (int i = first; i < end; i++) {
        if ((int)set->rows[i].kind != kind) continue;
        if (!headed) {
            gtl_document_heading(document, "[%s NAME]", gtl_hardware_kind_name((gtl_hardware_kind)kind));
            gtl_document_paragraph(document, "%s", meanings[kind]);
        }
        headed = true;
        compose_line(document, set, &set->rows[i]);
    }
}

/* Where the table of row `first` ends; all shipped ones are one. */
static int end_of_table(const gtl_hardware *set, int first)
{
    const gtl_hardware_row *row = &set->rows[first];
    int end = first + 1;
    for (; end < set->row_count; end++) {
        const gtl_hardware_row *next = &set->rows[end];
        if (next->shipped != row->shipped || (!row->shipped && strcmp(next->file, row->file) != 0)) break;
    }
    return end;
}

/* What the word in brackets behind each source means. */
static void compose_legend(gtl_document *document)
{
    gtl_document_paragraph(document, "How each figure was seen stands in brackets behind its source:");
    gtl_document_pair(document, "seen", "in the source itself");
    gtl_document_pair(document, "quoted", "in another's words, who names the source");
    gtl_document_pair(document, "memory", "not looked up again: check it before you rely on it");
    gtl_document_pair(document, "derived", "worked out from figures that were seen, or chosen below them");
    gtl_document_pair(document, "invented", "for examples; never rate a rig by it");
    gtl_document_pair(document, "own", "of your own table");
    gtl_document_paragraph(document, "%s", "");
}

void gtl_compose_hardware(gtl_document *document, const gtl_hardware *set)
{
    compose_legend(document);
    for (int first = 0, end; first < set->row_count; first = end) {
        end = end_of_table(set, first);
        const gtl_hardware_row *row = &set->rows[first];
        gtl_document_title(document, 2, row->shipped ? "Shipped tables" : row->file);
        gtl_document_paragraph(document, "%s",
                               row->shipped ? "Figures in print, not the gear in hand: its own markings and "
                                              "its maker's word come first."
                                            : "Your own table. Where a shipped row has the same kind and "
                                              "name, yours is used.");
        for (int kind = 0; kind < GTL_HW_KIND_COUNT; kind++) compose_kind(document, set, kind, first, end);
        if (end < set->row_count) gtl_document_paragraph(document, "%s", "");
    }
}

int gtl_compose_hardware_named(gtl_document *document, const gtl_hardware *set, const char *name)
{
    int count = 0;
    for (int i = 0; i < set->row_count; i++) {
        if (gtl_text_compare(set->rows[i].name, name) != 0) continue;
        compose_row(document, set, &set->rows[i]);
        count++;
    }
    return count;
}
