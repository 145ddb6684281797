/* building.h - a rig while it is built: what the steps of build.c hand on to each other. */
#ifndef RIG_BUILDING_H
#define RIG_BUILDING_H

#include "rig/draft.h"
#include "rig/kind.h"

typedef struct gtl_building {
    gtl_draft *draft;
    gtl_rig *rig;
    gtl_fault_list *faults;
    int *index;      /* one an item: where it is among the rig's things, lines or connectors, -1: lost */
    int *thing_item; /* one a thing */
    int *line_item;  /* one a line */
    gtl_gear *gear;  /* one an item */
    int *used;       /* one a connector: line of the `via` that it stands in, -1: none yet */
    int load;        /* the thing that [rig] `load` names, -1 for none */
} gtl_building;

/* Zeroed room for `count` items, at least one; NULL and out_of_memory set without memory. */
void *gtl_room(gtl_building *b, int count, size_t size);

/* The item that a thing or line was made from. */
const gtl_item *gtl_thing_item(const gtl_building *b, int thing);
const gtl_item *gtl_line_item(const gtl_building *b, int line);

/* gear.c: names of rows to rows, and with them the gear of every item. What cannot be found is a fault and
 * makes the item rough. */
void gtl_find_gear(gtl_building *b);
/* A number of the row that an item names by `hardware`, where its kind takes it; else NaN. */
double gtl_row_number(const gtl_building *b, int item, gtl_hardware_number number);

/* check_gear.c: axes, once the number of coordinates is known; then, of a rig whose names are whole, whether
 * diameters and tables change anything. */
void gtl_settle_axes(gtl_building *b);
void gtl_check_gear(gtl_building *b);

/* resolve.c: names to indices, for `on`, `path`, `via` and `load`. An unknown name, or one of a kind that
 * cannot stand there, is a fault, and the index stays -1. */
void gtl_resolve(gtl_building *b);

/* pair.c: hands of which one says `or`; its second in the file is let go. A pair that cannot be is a fault. */
void gtl_pair_hands(gtl_building *b);

/* nodes.c: things that sit on each other share a node. */
void gtl_build_nodes(gtl_building *b);

/* path.c: lines, stops resolved, to parts, pieces and runs. Only of a rig whose names are whole. */
void gtl_cut_lines(gtl_building *b);

/* check_item.c: what one section says by itself. */
void gtl_check_items(gtl_building *b);

/* check_line.c: what one path says by itself; lines with stops that are not resolved are passed over. */
void gtl_check_lines(gtl_building *b);

/* check.c: the rig as a whole, cut into pieces. Settles which load is lifted. */
void gtl_check_rig(gtl_building *b);

/* arbor.c: whether each arbor can balance anything. */
void gtl_check_arbors(gtl_building *b);

/* cases.c: what cases are worked, and whether each has its data. */
void gtl_settle_cases(gtl_building *b);

#endif
