/* gear.c - gear in a row: from each line and block down to its anchor, and the head fittings of blocks.
 *
 * Chains are listed in two passes of the same walk: the first counts, the second fills what was counted. */
#include "rate/rating.h"
#include <math.h>
#include <stdlib.h>

/* Lloyd's Code for Lifting Appliances in a Marine Environment, chapter 8, 5.1: the head fitting of a block
 * with one sheave holds at least twice what the block's line does. */
#define HEAD_TIMES 2.0

typedef struct walk {
    const gtl_bench *bench;
    const gtl_rig *rig;
    gtl_sheet *sheet; /* its `links` and `chains` are NULL while they are counted */
} walk;

/* What is no component, such as a load, is no gear and drops out. */
static void add_link(const walk *w, int component)
{
    if (component < 0) return;
    if (w->sheet->links) w->sheet->links[w->sheet->link_count] = component;
    w->sheet->link_count++;
}

static void add_connector(const walk *w, gtl_via via, int place)
{
    add_link(w, w->bench->connector_component[w->rig->vias[via.first + place]]);
}

/* Connectors are kept from what they hang on outwards: here they are met the other way round. */
static void add_via(const walk *w, gtl_via via)
{
    for (int i = via.count - 1; i >= 0; i--) add_connector(w, via, i);
}

static bool ends_at_anchor(const gtl_rig *rig, int thing)
{
    return rig->things[rig->nodes[rig->things[thing].node].root].kind == GTL_ANCHOR;
}

/* The thing, and all that it sits on. */
static void add_down_from(const walk *w, int thing)
{
    for (int i = thing; i >= 0; i = w->rig->things[i].on) {
        add_link(w, w->bench->thing_component[i]);
        add_via(w, w->rig->things[i].via);
    }
}

/* The component nearest to its rating; not known while one that carries something has none. */
static int weakest_of(const gtl_sheet *sheet, const int *links, int count)
{
    int weakest = -1;
    double most = -1;
    for (int i = 0; i < count; i++) {
        const gtl_component *part = &sheet->components[links[i]];
        if (part->mark == GTL_MARK_IDLE) continue;
        if (part->mark == GTL_MARK_UNRATED || isnan(part->utilisation)) return -1;
        if (!(part->utilisation > most)) continue;
        most = part->utilisation;
        weakest = links[i];
    }
    return weakest;
}

static void end_chain(const walk *w, int first)
{
    gtl_sheet *sheet = w->sheet;
    int count = sheet->link_count - first;
    if (sheet->chains)
        sheet->chains[sheet->chain_count] = (gtl_chain){
            .first_link = first,
            .link_count = count,
            .weakest = weakest_of(sheet, sheet->links + first, count),
        };
    sheet->chain_count++;
}

/* A line that is tied to an anchor, or to what sits on one. */
static void add_line_chains(const walk *w, int line)
{
    const gtl_line *l = &w->rig->lines[line];
    for (int i = 0; i < l->stop_count; i++) {
        const gtl_stop *stop = &w->rig->stops[l->first_stop + i];
        if (!stop->tied || !ends_at_anchor(w->rig, stop->thing)) continue;
        int first = w->sheet->link_count;
        add_link(w, w->bench->line_component[line]);
        add_via(w, stop->via);
        add_down_from(w, stop->thing);
        end_chain(w, first);
    }
}

static void add_thing_chain(const walk *w, int thing)
{
    const gtl_thing *t = &w->rig->things[thing];
    bool gear = t->kind == GTL_BLOCK || t->kind == GTL_FAIRLEAD || t->kind == GTL_JOINT;
    if (!gear || t->on < 0 || !ends_at_anchor(w->rig, thing)) return;
    int first = w->sheet->link_count;
    add_down_from(w, thing);
    end_chain(w, first);
}

static void add_chains(const walk *w)
{
    w->sheet->link_count = 0;
    w->sheet->chain_count = 0;
    for (int i = 0; i < w->rig->line_count; i++) add_line_chains(w, i);
    for (int i = 0; i < w->rig->thing_count; i++) add_thing_chain(w, i);
}

/* --- head fittings --- */

/* The most that the line carries at a running stop in any case [N]. Where a case has variants, or other
 * rigs that it may be, which may pull harder there than the state that is printed, its line's worst stands
 * for that. A block that a loss sets loose has no line over it any more. */
static double line_at(const walk *w, const gtl_run *run)
{
    double most = 0;
    int line = w->bench->line_component[w->rig->pieces[run->piece].line];
    for (int i = 0; i < w->sheet->outcome_count; i++) {
        const gtl_outcome *outcome = gtl_rated(&w->sheet->outcomes[i]);
        if (!outcome->possible || (outcome->loose && outcome->loose[run->thing])) continue;
        most = fmax(most, gtl_outcome_tension(outcome, run->before));
        most = fmax(most, gtl_outcome_tension(outcome, run->before + 1));
        if (outcome->variants > 1 || w->sheet->outcomes[i].band.rigs > 1)
            most = fmax(most, outcome->demand[line]);
    }
    return most;
}

static gtl_mark mark_of(double needed, double capacity)
{
    if (isnan(capacity)) return GTL_MARK_UNRATED;
    return needed / capacity <= 1 + GTL_UTILISATION_SLACK ? GTL_MARK_WITHIN : GTL_MARK_OVER;
}

/* Look at the block under a running stop that has one sheave, which hangs by a connector. */
static void look_at_head(const walk *w, const gtl_run *run)
{
    const gtl_thing *block = &w->rig->things[run->thing];
    double needed = HEAD_TIMES * line_at(w, run);
    if (block->via.count == 0 || needed <= GTL_IDLE_SHARE * w->bench->force) return;
    int next = w->rig->vias[block->via.first + block->via.count - 1];
    int fitting = w->bench->connector_component[next];
    double capacity = w->sheet->components[fitting].capacity;
    w->sheet->head_fittings[w->sheet->head_fitting_count++] = (gtl_head_fitting){
        .block = w->bench->thing_component[run->thing],
        .fitting = fitting,
        .needed = needed,
        .capacity = capacity,
        .mark = mark_of(needed, capacity),
    };
}

static void find_head_fittings(const walk *w, int *passes)
{
    for (int r = 0; r < w->rig->run_count; r++) passes[w->rig->runs[r].thing]++;
    for (int r = 0; r < w->rig->run_count; r++) {
        const gtl_run *run = &w->rig->runs[r];
        const gtl_thing *thing = &w->rig->things[run->thing];
        int sheaves = thing->sheaves > 0 ? thing->sheaves : passes[run->thing];
        if (thing->kind == GTL_BLOCK && sheaves == 1) look_at_head(w, run);
    }
}

bool gtl_find_chains(const gtl_bench *bench, gtl_sheet *sheet)
{
    walk w = {bench, bench->rig, sheet};
    add_chains(&w);
    int *links = calloc((size_t)sheet->link_count + 1, sizeof *links);
    gtl_chain *chains = calloc((size_t)sheet->chain_count + 1, sizeof *chains);
    gtl_head_fitting *heads = calloc((size_t)bench->rig->run_count + 1, sizeof *heads);
    int *passes = calloc((size_t)bench->rig->thing_count + 1, sizeof *passes);
    bool made = links && chains && heads && passes;
    sheet->links = links;
    sheet->chains = chains;
    sheet->head_fittings = heads;
    sheet->head_fitting_count = 0;
    if (made) add_chains(&w);
    if (made) find_head_fittings(&w, passes);
    free(passes);
    return made;
}
