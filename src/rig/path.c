/* path.c - lines to parts, pieces and runs.
 *
 * A part is the stretch between two stops next to each other; a piece goes from one tied stop to the next; a
 * run is a running stop inside a piece. Parts, pieces and runs of a line, and of a piece, follow each other
 * in path order. */
#include "rig/building.h"
#include "rig/cut.h"

#include <math.h>

/* What rules a piece that ends at a hand, or at none. */
static void settle_rule(const gtl_rig *rig, gtl_piece *piece, int first, int last)
{
    int from = rig->stops[first].thing;
    int to = rig->stops[last].thing;
    piece->hand_first = rig->things[from].kind == GTL_HAND;
    piece->hand = piece->hand_first ? from : rig->things[to].kind == GTL_HAND ? to : -1;
    if (rig->lines[piece->line].kind == GTL_SPAR)
        piece->rule = GTL_STRUT;
    else if (piece->hand < 0)
        piece->rule = GTL_TIED;
    else
        piece->rule = isnan(rig->things[piece->hand].pull) ? GTL_DRIVEN : GTL_PULLED;
}

static void add_run(gtl_rig *rig, int piece, int stop, int before)
{
    rig->runs[rig->run_count++] = (gtl_run){rig->stops[stop].thing, stop, piece, before};
    rig->pieces[piece].run_count++;
}

/* The piece that begins at a stop; returns the stop at which it ends. */
static int cut_piece(gtl_rig *rig, int line, int first)
{
    int index = rig->piece_count++;
    gtl_piece *piece = &rig->pieces[index];
    *piece = (gtl_piece){.line = line,
                         .first_part = rig->part_count,
                         .first_run = rig->run_count,
                         .length = rig->lines[line].length};
    int stop = first;
    do {
        rig->parts[rig->part_count++] = (gtl_part){line, index, stop, stop + 1};
        stop++;
        if (!rig->stops[stop].tied) add_run(rig, index, stop, rig->part_count - 1);
    } while (!rig->stops[stop].tied);
    piece->part_count = rig->part_count - piece->first_part;
    settle_rule(rig, piece, first, stop);
    return stop;
}

static void cut_line(gtl_rig *rig, int index)
{
    gtl_line *line = &rig->lines[index];
    int last = line->first_stop + line->stop_count - 1;
    line->first_part = rig->part_count;
    line->first_piece = rig->piece_count;
    for (int stop = line->first_stop; stop < last;) stop = cut_piece(rig, index, stop);
    line->piece_count = rig->piece_count - line->first_piece;
}

/* Half of a spar's weight hangs at each of its ends. */
static void add_spar_weight(gtl_rig *rig, const gtl_line *line)
{
    for (int i = 0; i < line->stop_count; i++) {
        rig->nodes[rig->things[rig->stops[line->first_stop + i].thing].node].weight += line->weight / 2;
    }
}

void gtl_cut_paths(gtl_rig *rig)
{
    rig->part_count = rig->piece_count = rig->run_count = 0;
    for (int i = 0; i < rig->line_count; i++) {
        cut_line(rig, i);
        if (rig->lines[i].kind == GTL_SPAR) add_spar_weight(rig, &rig->lines[i]);
    }
}

/* A pull that is stated, but could not be read, is none that is worked out: no fault may follow from it. */
static void settle_unread_pulls(const gtl_building *b)
{
    for (int i = 0; i < b->rig->piece_count; i++) {
        gtl_piece *piece = &b->rig->pieces[i];
        if (piece->rule == GTL_DRIVEN && gtl_thing_item(b, piece->hand)->numbers[GTL_F_PULL].stated.yes)
            piece->rule = GTL_PULLED;
    }
}

void gtl_cut_lines(gtl_building *b)
{
    gtl_rig *rig = b->rig;
    /* No line has more parts, pieces or runs than stops. */
    rig->parts = gtl_room(b, rig->stop_count, sizeof *rig->parts);
    rig->pieces = gtl_room(b, rig->stop_count, sizeof *rig->pieces);
    rig->runs = gtl_room(b, rig->stop_count, sizeof *rig->runs);
    if (b->faults->out_of_memory) return;
    gtl_cut_paths(rig);
    settle_unread_pulls(b);
}
