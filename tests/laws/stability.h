/* stability.h - whether a rig comes back when touched: the second change of its potential energy, worked out
 * anew. */
#ifndef LAWS_STABILITY_H
#define LAWS_STABILITY_H

#include "laws/mechanics.h"

/* Whether no small motion that keeps all lengths, the hauled one too, lowers the energy of a state without
 * friction. */
bool comes_back(const mechanics *m);

#endif
