/* cut.h - the steps that make nodes, parts, pieces and runs of a rig's things and paths: when it is built,
 * and again when a part of it has let go. */
#ifndef RIG_CUT_H
#define RIG_CUT_H

#include <gantline/rig.h>

/* nodes.c */
/* Let a thing, and all that is between it and its root, share the root's node, which is made if there is none
 * yet. `nodes` has room. */
void gtl_join_node(gtl_rig *rig, int thing, int root);
/* Put the weights and guides of all things on their nodes, which have none yet. */
void gtl_weigh_nodes(gtl_rig *rig);

/* path.c: all lines, stops resolved and nodes weighed, to parts, pieces and runs, which have room for as many
 * as there are stops; a line without stops has none. Spars put their weight on their nodes. */
void gtl_cut_paths(gtl_rig *rig);

#endif
