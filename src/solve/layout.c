/* layout.c - a rig to the solver's room: what is unknown, what is walked in which order, where terms go. */
#include "solve/work.h"
#include <math.h>
#include <stdlib.h>
#include <string.h>

/* Every array of a work comes zeroed, and of one element at least: NULL then means that memory failed, and
 * what was made before can be freed. */
static void *zeroed(size_t count, size_t size)
{
    return calloc(count ? count : 1, size);
}

#define SNAPSHOTS(work)                                                                                      \
    {                                                                                                        \
        &(work)->before_step, &(work)->newton, &(work)->hung, &(work)->shape, &(work)->partly                \
    }

#define MAKE(field, count) (((field) = zeroed((size_t)(count), sizeof *(field))) != NULL)

static void number_coordinates(gtl_work *work)
{
    const gtl_rig *rig = work->rig;
    for (int n = 0; n < rig->node_count; n++) {
        for (int k = 0; k < 3; k++) {
            const gtl_node *node = &rig->nodes[n];
            bool upright = node->guided || node->limp;
            bool moves = !node->fixed && k < rig->dim && (!upright || k == rig->dim - 1);
            work->dof[3 * n + k] = moves ? work->dofs++ : -1;
        }
    }
    work->height_dof = rig->hand < 0 ? -1 : work->dof[3 * rig->things[rig->load].node + rig->dim - 1];
}

static bool allocate_state(gtl_work *work)
{
    const gtl_rig *rig = work->rig;
    int nodes = rig->node_count;
    int pieces = rig->piece_count;
    int runs = rig->run_count;
    return MAKE(work->weight, nodes) && MAKE(work->added, 3 * nodes) && MAKE(work->drawn, 3 * nodes) &&
           MAKE(work->kept, pieces) && MAKE(work->pull, pieces) && MAKE(work->contact, runs) &&
           MAKE(work->x, 3 * nodes) && MAKE(work->t, pieces) && MAKE(work->row, pieces) &&
           MAKE(work->sense, runs) && MAKE(work->unit, 3 * rig->part_count) &&
           MAKE(work->span, rig->part_count) && MAKE(work->log_ratio, rig->part_count) &&
           MAKE(work->log_slope, rig->part_count) && MAKE(work->length, pieces) &&
           MAKE(work->greatest, pieces) && MAKE(work->rate, 3 * nodes) &&
           MAKE(work->part_rate, rig->part_count) && MAKE(work->tried, 3 * runs) && MAKE(work->flow, runs);
}

static bool allocate_snapshots(gtl_work *work)
{
    const gtl_rig *rig = work->rig;
    gtl_snapshot *all[] = SNAPSHOTS(work);
    bool made = true;
    for (size_t i = 0; i < sizeof all / sizeof *all; i++)
        made = made && MAKE(all[i]->x, 3 * rig->node_count) && MAKE(all[i]->t, rig->piece_count) &&
               MAKE(all[i]->row, rig->piece_count);
    return made;
}

static void scale_rig(gtl_work *work)
{
    const gtl_rig *rig = work->rig;
    work->size = gtl_rig_size(rig);
    work->force = gtl_rig_force(rig);
    for (int n = 0; n < rig->node_count; n++) {
        work->weight[n] = rig->nodes[n].weight / work->force;
        for (int k = 0; k < rig->dim; k++) work->drawn[3 * n + k] = rig->nodes[n].at[k] / work->size;
    }
    for (int r = 0; r < rig->run_count; r++) {
        gtl_thing bend = gtl_bend_of(rig, r);
        work->contact[r] = gtl_contact_constant(&bend);
    }
    if (rig->hand >= 0) work->height = work->drawn[3 * rig->things[rig->load].node + rig->dim - 1];
}

/* Walk a piece from its tied end; its hand, if any, comes last. */
static void walk_piece(gtl_work *work, int p)
{
    const gtl_rig *rig = work->rig;
    const gtl_piece *piece = &rig->pieces[p];
    gtl_plan *plan = &work->plans[p];
    plan->first = piece->first_part;
    plan->count = piece->part_count;
    for (int i = 0; i < plan->count; i++) {
        int part = piece->first_part + (piece->hand_first ? plan->count - 1 - i : i);
        int stop = piece->hand_first ? rig->parts[part].to : rig->parts[part].from;
        int end = piece->hand_first ? rig->parts[part].from : rig->parts[part].to;
        int run = piece->first_run + (piece->hand_first ? plan->count - 1 - i : i - 1);
        work->walk_part[plan->first + i] = part;
        work->walk_run[plan->first + i] = i == 0 ? -1 : run;
        work->walk_node[plan->first + p + i] = rig->things[rig->stops[stop].thing].node;
        work->walk_node[plan->first + p + i + 1] = rig->things[rig->stops[end].thing].node;
    }
}

/* Give each free coordinate of a piece's stops a local number, once. `seen` is one a coordinate, all -1. */
static void number_locals(gtl_work *work, int p, int *seen, int *used)
{
    gtl_plan *plan = &work->plans[p];
    plan->first_local = *used;
    for (int i = 0; i <= plan->count; i++) {
        int stop = plan->first + p + i;
        for (int k = 0; k < 3; k++) {
            int dof = work->dof[3 * work->walk_node[stop] + k];
            if (dof >= 0 && seen[dof] < 0) {
                seen[dof] = plan->locals++;
                work->local_dof[(*used)++] = dof;
            }
            work->walk_local[3 * stop + k] = dof < 0 ? -1 : seen[dof];
        }
    }
    for (int i = 0; i < plan->locals; i++) seen[work->local_dof[plan->first_local + i]] = -1;
}

static bool walk_all(gtl_work *work)
{
    const gtl_rig *rig = work->rig;
    int stops = rig->part_count + rig->piece_count;
    if (!(MAKE(work->plans, rig->piece_count) && MAKE(work->walk_part, rig->part_count) &&
          MAKE(work->walk_run, rig->part_count) && MAKE(work->walk_node, stops) &&
          MAKE(work->walk_local, 3 * stops) && MAKE(work->local_dof, 3 * stops)))
        return false;
    int *seen = malloc(((size_t)work->dofs + 1) * sizeof *seen);
    if (!seen) return false;
    for (int i = 0; i < work->dofs; i++) seen[i] = -1;
    int used = 0;
    int most = 0;
    for (int p = 0; p < rig->piece_count; p++) {
        walk_piece(work, p);
        number_locals(work, p, seen, &used);
        if (work->plans[p].locals > most) most = work->plans[p].locals;
    }
    free(seen);
    return MAKE(work->gradient, most);
}

static size_t cell_count(const gtl_work *work)
{
    size_t count = 0;
    for (int p = 0; p < work->rig->piece_count; p++) {
        size_t locals = (size_t)work->plans[p].locals;
        count += locals * locals + 2 * locals + 2;
    }
    return count;
}

/* One pattern serves every state of a piece: its stops' coordinates, its own tension, the lifted load's
 * height. */
static void list_cells(const gtl_work *work, int p, gtl_cell *cells)
{
    const gtl_plan *plan = &work->plans[p];
    const int *dof = work->local_dof + plan->first_local;
    int own = work->dofs + p;
    size_t used = 0;
    for (int i = 0; i < plan->locals; i++)
        for (int k = 0; k < plan->locals; k++) cells[used++] = (gtl_cell){dof[i], dof[k]};
    for (int i = 0; i < plan->locals; i++) cells[used++] = (gtl_cell){dof[i], own};
    for (int i = 0; i < plan->locals; i++) cells[used++] = (gtl_cell){own, dof[i]};
    cells[used++] = (gtl_cell){own, own};
    cells[used] = (gtl_cell){own, p == work->rig->driven && work->height_dof >= 0 ? work->height_dof : own};
}

static void take_places(gtl_work *work, int p, int *place)
{
    gtl_plan *plan = &work->plans[p];
    plan->force_place = place;
    plan->tension_place = place + plan->locals * plan->locals;
    plan->row_place = plan->tension_place + plan->locals;
    plan->own_place = plan->row_place[plan->locals];
    plan->height_place = p == work->rig->driven ? plan->row_place[plan->locals + 1] : -1;
}

static bool make_curvature(gtl_work *work)
{
    for (int p = 0; p < work->rig->piece_count; p++) work->spars |= work->rig->pieces[p].rule == GTL_STRUT;
    return !work->spars || MAKE(work->curvature, (size_t)work->dofs * (size_t)work->dofs);
}

static bool make_pattern(gtl_work *work)
{
    size_t count = cell_count(work);
    gtl_cell *cells = calloc(count + 1, sizeof *cells);
    bool made = cells && MAKE(work->places, count) && MAKE(work->residual, work->unknowns) &&
                MAKE(work->step, work->unknowns) && MAKE(work->turn, work->dofs) &&
                MAKE(work->turn_by, work->dofs) && make_curvature(work);
    size_t used = 0;
    for (int p = 0; made && p < work->rig->piece_count; p++) {
        size_t locals = (size_t)work->plans[p].locals;
        list_cells(work, p, cells + used);
        used += locals * locals + 2 * locals + 2;
    }
    made = made && gtl_matrix_begin(&work->matrix, work->unknowns, cells, work->places, count);
    used = 0;
    for (int p = 0; made && p < work->rig->piece_count; p++) {
        size_t locals = (size_t)work->plans[p].locals;
        take_places(work, p, work->places + used);
        used += locals * locals + 2 * locals + 2;
    }
    free(cells);
    return made;
}

gtl_work *gtl_work_new(const gtl_rig *rig)
{
    gtl_work *work = calloc(1, sizeof *work);
    if (!work) return NULL;
    work->rig = rig;
    bool made = MAKE(work->dof, 3 * rig->node_count);
    if (made) number_coordinates(work);
    work->unknowns = work->dofs + rig->piece_count;
    made = made && allocate_state(work) && allocate_snapshots(work) && walk_all(work) && make_pattern(work);
    if (!made) {
        gtl_work_free(work);
        return NULL;
    }
    scale_rig(work);
    return work;
}

void gtl_work_free(gtl_work *work)
{
    if (!work) return;
    gtl_matrix_end(&work->matrix);
    void *rooms[] = {work->dof,      work->plans,      work->places,    work->walk_part, work->walk_node,
                     work->walk_run, work->walk_local, work->local_dof, work->weight,    work->added,
                     work->drawn,    work->kept,       work->pull,      work->contact,   work->x,
                     work->t,        work->row,        work->sense,     work->residual,  work->unit,
                     work->span,     work->log_ratio,  work->log_slope, work->length,    work->greatest,
                     work->rate,     work->part_rate,  work->step,      work->gradient,  work->tried,
                     work->flow,     work->turn,       work->turn_by,   work->curvature};
    for (size_t i = 0; i < sizeof rooms / sizeof *rooms; i++) free(rooms[i]);
    gtl_snapshot *all[] = SNAPSHOTS(work);
    for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
        free(all[i]->x);
        free(all[i]->t);
        free(all[i]->row);
    }
    free(work);
}
