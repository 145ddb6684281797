/* arbor.c - an arbor balances what is lifted: it has to move, and by itself. */
#include "rig/building.h"

void gtl_check_arbors(gtl_building *b)
{
    const gtl_rig *rig = b->rig;
    for (int i = 0; i < rig->thing_count; i++) {
        const gtl_thing *arbor = &rig->things[i];
        if (arbor->kind != GTL_ARBOR) continue;
        const gtl_thing *root = &rig->things[rig->nodes[arbor->node].root];
        bool lifted = rig->load >= 0 && rig->things[rig->load].node == arbor->node;
        if (rig->nodes[arbor->node].fixed)
            gtl_faults_add(b->faults, arbor->line,
                           "arbor `%s` sits on `%s`, which does not move, so it balances nothing; give it "
                           "`at`, and tie the lift line to it",
                           arbor->name, root->name);
        else if (lifted)
            gtl_faults_add(
                b->faults, arbor->line,
                "arbor `%s` moves as one with the lifted load `%s`, so it balances nothing; give it a place "
                "of its own",
                arbor->name, rig->things[rig->load].name);
        else if (root->kind == GTL_FAIRLEAD)
            gtl_faults_add(b->faults, arbor->line,
                           "arbor `%s` sits on fairlead `%s`, which runs on no track; make that a block",
                           arbor->name, root->name);
    }
}
