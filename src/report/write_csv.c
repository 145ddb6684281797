/* write_csv.c - every force and check of a sheet as one flat table for a spreadsheet: one row each, SI,
 * unrounded. docs/report.md describes the records. A row that cannot have a figure has none, and its status
 * says why. */
#include "report/csv.h"
#include "report/geometry.h"
#include "report/words.h"
#include "report/write.h"

#include <math.h>

static const char *const heads[] = {"record",
                                    "name",
                                    "of",
                                    "from",
                                    "to",
                                    "case",
                                    "force [N]",
                                    "vector across [N]",
                                    "vector along [N]",
                                    "vector height [N]",
                                    "capacity [N]",
                                    "utilisation [1]",
                                    "status"};

/* One row; texts are "" and numbers NaN where there is nothing to say. */
typedef struct gtl_csv_row {
    const char *record;
    const char *name;
    const char *of;
    const char *from;
    const char *to;
    const char *in;       /* the case */
    double force;         /* [N] */
    const double *vector; /* as many entries as the rig has coordinates [N]; NULL: none */
    double capacity;      /* [N] */
    double utilisation;   /* [1] */
    const char *status;
} gtl_csv_row;

/* What the rows of one case are written from. */
typedef struct gtl_csv_writer {
    gtl_text *out;
    const gtl_sheet *sheet;
    const gtl_rig *rig;
    const gtl_outcome *outcome;
} gtl_csv_writer;

static gtl_csv_row row_of(const char *record, const char *name, const char *of, const char *in)
{
    return (gtl_csv_row){record, name, of, "", "", in, NAN, NULL, NAN, NAN, ""};
}

/* Across, along, height: height is a vector's last entry, along only stands in space. */
static void put_vector(gtl_text *out, const double *vector, int dim)
{
    const int entry[] = {dim > 1 ? 0 : -1, dim > 2 ? 1 : -1, dim - 1};
    for (int i = 0; i < 3; i++) {
        gtl_csv_number(out, vector && entry[i] >= 0 ? vector[entry[i]] : NAN);
        gtl_csv_comma(out);
    }
}

static void put(const gtl_csv_writer *w, const gtl_csv_row *row)
{
    const char *texts[] = {row->record, row->name, row->of, row->from, row->to, row->in};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        gtl_csv_text(w->out, texts[i]);
        gtl_csv_comma(w->out);
    }
    gtl_csv_number(w->out, row->force);
    gtl_csv_comma(w->out);
    put_vector(w->out, row->vector, w->rig->dim);
    gtl_csv_number(w->out, row->capacity);
    gtl_csv_comma(w->out);
    gtl_csv_number(w->out, row->utilisation);
    gtl_csv_comma(w->out);
    gtl_csv_text(w->out, row->status);
    gtl_csv_end(w->out);
}

/* --- the rows of one case --- */

static const char *stop_name(const gtl_rig *rig, int stop)
{
    return rig->things[rig->stops[stop].thing].name;
}

static void part(const gtl_csv_writer *w, int index)
{
    const gtl_part *at = &w->rig->parts[index];
    const gtl_line *line = &w->rig->lines[at->line];
    gtl_csv_row row = row_of("line", line->name, gtl_kind_name(line->kind), w->outcome->name);
    bool gone = w->outcome->part && w->outcome->part[index] < 0;
    row.from = stop_name(w->rig, at->from);
    row.to = stop_name(w->rig, at->to);
    row.force = gtl_outcome_tension(w->outcome, index);
    row.status = gone ? "gone" : gtl_outcome_slack(w->outcome, index) ? "slack" : "";
    put(w, &row);
}

/* A force on a thing, and its direction; one that came loose has none. */
static void force_on(const gtl_csv_writer *w, const char *record, int thing, const double *vector)
{
    const gtl_thing *at = &w->rig->things[thing];
    gtl_csv_row row = row_of(record, at->name, gtl_kind_name(at->kind), w->outcome->name);
    if (gtl_is_loose(w->outcome, thing)) {
        row.status = "loose";
    } else {
        row.force = gtl_vector_size(vector, w->rig->dim);
        row.vector = vector;
    }
    put(w, &row);
}

static void hand(const gtl_csv_writer *w, int thing)
{
    const gtl_thing *at = &w->rig->things[thing];
    gtl_csv_row row = row_of("hand", at->name, "hand", w->outcome->name);
    row.force = gtl_outcome_pull(w->outcome, thing);
    row.status = !isnan(row.force) ? "" : w->outcome->kind == GTL_DROP ? "not known" : "gone";
    put(w, &row);
}

static void thing(const gtl_csv_writer *w, int index)
{
    const gtl_forces *forces = &w->outcome->forces;
    switch (w->rig->things[index].kind) {
    case GTL_ANCHOR:
        force_on(w, "anchor", index, forces->passed[index]);
        break;
    case GTL_BLOCK:
    case GTL_FAIRLEAD:
        force_on(w, "rope on block", index, forces->rope[index]);
        break;
    case GTL_JOINT:
        force_on(w, "joint", index, forces->governing[index]);
        break;
    case GTL_HAND:
        hand(w, index);
        break;
    default:
        break;
    }
}

static void guide(const gtl_csv_writer *w, int node)
{
    if (w->outcome->rig->nodes[node].guided)
        force_on(w, "guide", w->outcome->rig->nodes[node].root, w->outcome->forces.track[node]);
}

/* What a part of the gear has to bear in this case: the worst of its variants. */
static void demand(const gtl_csv_writer *w, int index)
{
    const gtl_component *component = &w->sheet->components[index];
    gtl_csv_row row = row_of("demand", component->name, gtl_kind_name(component->kind), w->outcome->name);
    bool loose = component->kind < GTL_ROPE && gtl_is_loose(w->outcome, component->index);
    if (loose)
        row.status = "loose";
    else
        row.force = w->outcome->demand[index];
    put(w, &row);
    if (component->kind != GTL_SPAR) return;
    row.record = "demand in push";
    row.force = w->outcome->push[index];
    put(w, &row);
}

/* The ends of a band, a row each. */
static void ends(const gtl_csv_writer *w, gtl_csv_row row, const double range[2])
{
    static const char *const records[] = {"least", "most"};
    for (int i = 0; i < 2; i++) {
        row.record = records[i];
        row.force = range[i];
        put(w, &row);
    }
}

/* Between what forces lie over all the rigs that were worked, where figures are ranges. */
static void band(const gtl_csv_writer *w)
{
    const gtl_band *band = &w->outcome->band;
    const gtl_rig *rig = w->rig;
    for (int i = 0; i < rig->thing_count; i++)
        if (rig->things[i].kind == GTL_HAND)
            ends(w, row_of("", rig->things[i].name, "pull", w->outcome->name), band->pull[i]);
    for (int i = 0; i < rig->part_count; i++) {
        const gtl_line *line = &rig->lines[rig->parts[i].line];
        gtl_csv_row row = row_of("", line->name, "tension", w->outcome->name);
        row.from = stop_name(rig, rig->parts[i].from);
        row.to = stop_name(rig, rig->parts[i].to);
        ends(w, row, band->tension[i]);
    }
    for (int i = 0; i < w->sheet->component_count; i++)
        ends(w, row_of("", w->sheet->components[i].name, "demand", w->outcome->name), band->demand[i]);
}

static void one_case(const gtl_csv_writer *w)
{
    const gtl_outcome *outcome = w->outcome;
    gtl_csv_row row = row_of("case", outcome->name, gtl_case_name(outcome->kind), outcome->name);
    row.status = outcome->possible ? "worked" : "cannot be";
    put(w, &row);
    if (!outcome->possible) {
        row = row_of("why", outcome->reason, "case", outcome->name);
        put(w, &row);
        return;
    }
    for (int i = 0; i < w->rig->part_count; i++) part(w, i);
    for (int i = 0; i < w->rig->thing_count; i++) thing(w, i);
    for (int i = 0; i < outcome->rig->node_count; i++) guide(w, i);
    for (int i = 0; i < w->sheet->component_count; i++) demand(w, i);
    if (outcome->band.pull) band(w);
}

/* --- the rows of the whole --- */

static void check(const gtl_csv_writer *w, const gtl_component *component)
{
    gtl_csv_row row = row_of(component->push ? "check in push" : "check", component->name,
                             gtl_kind_name(component->kind), "");
    if (component->governing >= 0) row.in = w->sheet->outcomes[component->governing].name;
    row.force = component->demand;
    row.capacity = component->capacity;
    row.utilisation = component->utilisation;
    row.status = gtl_mark_name(component->mark);
    put(w, &row);
}

static void head_fitting(const gtl_csv_writer *w, const gtl_head_fitting *head)
{
    const gtl_component *components = w->sheet->components;
    gtl_csv_row row =
        row_of("head fitting", components[head->fitting].name, components[head->block].name, "");
    row.force = head->needed;
    row.capacity = head->capacity;
    row.status = gtl_mark_name(head->mark);
    put(w, &row);
}

static void warning(const gtl_csv_writer *w, const gtl_warning *warning)
{
    gtl_csv_row row = row_of("warning", warning->about, gtl_warning_name(warning->code), "");
    if (warning->outcome >= 0) row.in = w->sheet->outcomes[warning->outcome].name;
    put(w, &row);
}

/* A sentence of the report; a sink for words.h. */
static void say(const gtl_csv_writer *w, const char *record, const char *sentence)
{
    if (!sentence) w->out->failed = true;
    gtl_csv_row row = row_of(record, sentence ? sentence : "", "", "");
    put(w, &row);
}

static void why(void *writer, const char *sentence)
{
    say(writer, "why", sentence);
}

static void caution(void *writer, const char *sentence)
{
    say(writer, "caution", sentence);
}

static void not_checked(void *writer, const char *sentence)
{
    say(writer, "not checked", sentence);
}

static void head(const gtl_csv_writer *w)
{
    for (size_t i = 0; i < sizeof heads / sizeof *heads; i++) {
        if (i > 0) gtl_csv_comma(w->out);
        gtl_csv_text(w->out, heads[i]);
    }
    gtl_csv_end(w->out);
    gtl_csv_row row = row_of("verdict", w->rig->title, "", "");
    row.status = gtl_verdict_name(w->sheet->verdict);
    put(w, &row);
}

char *gtl_write_csv(const gtl_sheet *sheet)
{
    gtl_text out = {0};
    gtl_csv_writer w = {.out = &out, .sheet = sheet, .rig = sheet->rig};
    head(&w);
    gtl_words_why(sheet, GTL_ALL_NAMES, why, &w);
    gtl_words_cautions(caution, &w);
    for (int i = 0; i < sheet->component_count; i++) check(&w, &sheet->components[i]);
    for (int i = 0; i < sheet->head_fitting_count; i++) head_fitting(&w, &sheet->head_fittings[i]);
    for (int i = 0; i < sheet->outcome_count; i++) {
        w.outcome = &sheet->outcomes[i];
        one_case(&w);
    }
    for (int i = 0; i < sheet->warning_count; i++) warning(&w, &sheet->warnings[i]);
    gtl_words_not_checked(sheet, not_checked, &w);
    return gtl_text_take(&out);
}
