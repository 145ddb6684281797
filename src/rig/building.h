/* building.h - a rig while it is built: what the steps of build.c hand on to each other. */
#ifndef RIG_BUILDING_H
#define RIG_BUILDING_H

#include "rig/draft.h"
#include "rig/kind.h"

typedef struct gtl_building {
    gtl_draft *draft;
    gtl_rig *rig;
    gtl_fault_list *faults;
    int *index; /* one an item: where it is among the rig's things, lines, connectors or battens, -1: lost */
    int *thing_item;    /* one a thing */
    int *line_item;     /* one a line */
    gtl_gear *gear;     /* one an item */
    gtl_timber *timber; /* one an item; without a diameter: it is none */
    int *used;          /* one a connector: line of the `via` that it stands in, -1: none yet */
    int load;           /* the thing that [rig] `load` names, -1 for none */
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

/* find_timber.c: what every item that is timber weighs. What is missing or changes nothing is a fault. */
void gtl_find_timber(gtl_building *b);
/* Whether an item says that it is timber. */
bool gtl_is_timber(const gtl_item *item);
/* The pieces of timber into the rig; then, of a rig cut into pieces, whether spars are as long as they need
 * to be. */
void gtl_keep_timber(gtl_building *b);
void gtl_check_timber(gtl_building *b);

/* check_gear.c: axes, once the number of coordinates is known; then, of a rig whose names are whole, whether
 * diameters and tables change anything. */
void gtl_settle_axes(gtl_building *b);
void gtl_check_gear(gtl_building *b);

/* resolve.c: names to indices, for `on`, `path`, `via` and `load`. An unknown name, or one of a kind that
 * cannot stand there, is a fault, and the index stays -1. */
void gtl_resolve(gtl_building *b);

/* pair.c: hands of which one says `or`; its second in the file is let go. A pair that cannot be is a fault.
 */
void gtl_pair_hands(gtl_building *b);

/* nodes.c: things that sit on each other share a node. */
void gtl_build_nodes(gtl_building *b);

/* path.c: lines, stops resolved, to parts, pieces and runs. Only of a rig whose names are whole. */
void gtl_cut_lines(gtl_building *b);

/* batten.c: what hangs on every batten becomes a weight a pick, in the items of the picks and in the rig.
 * After gear.c, before anything asks what a load weighs. */
void gtl_weigh_battens(gtl_building *b);
/* batten.c: what the section of a batten says by itself. */
void gtl_check_batten(gtl_building *b, const gtl_item *item);
/* lifted.c: the thing that is the heaviest pick of a batten, -1 where it has none. */
int gtl_heaviest_pick(const gtl_rig *rig, int batten);

/* check_item.c: what one section says by itself. */
void gtl_check_items(gtl_building *b);

/* ropes.c */
/* The `length` of a rope that is hauled is no length that it keeps, but all that there is of it. */
void gtl_settle_ropes(gtl_building *b);
/* Whether the file asks how much rope is needed, by any key that does. */
bool gtl_asks_for_rope(const gtl_building *b);
/* Whether `lift` and `clear` change anything, once the lines are cut. */
void gtl_check_travel(gtl_building *b);

/* check_line.c: what one path says by itself; lines with stops that are not resolved are passed over. */
void gtl_check_lines(gtl_building *b);

/* check.c: the rig as a whole, cut into pieces. Settles which load is lifted. */
void gtl_check_rig(gtl_building *b);

/* arbor.c: whether each arbor can balance anything. */
void gtl_check_arbors(gtl_building *b);

/* drops.c: which load is let drop, where the case is worked, and whether what catches it can be told. */
void gtl_settle_drop(gtl_building *b);
/* Whether any load states how far it falls. */
bool gtl_any_fall(const gtl_building *b);

/* cases.c: what cases are worked, and whether each has its data. */
void gtl_settle_cases(gtl_building *b);

#endif
