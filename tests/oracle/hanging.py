"""Where a rig hangs without friction: from its drawing, or by the least potential energy.

Only an equilibrium that the contract lets be printed is given back.
"""
import functools
from dataclasses import replace

import numpy as np
from scipy.optimize import brentq, minimize, nnls

from statics import EQUAL, NoAnswer, slope

SOFT = 1e-7       # less stiffness than this, of the rig's force over its size, is none


def guess_tensions(s, at, state):
    """The state at these places with pulls, none below zero, that come nearest to balance."""
    z = np.zeros(len(s.free) + len(s.pieces))
    z[:len(s.free)] = at[s.index] / s.size
    flat = replace(state, sense=0 * state.sense, caught=False)
    dead, columns = s.imbalance(z, flat), []
    for k in range(len(s.pieces)):
        one = z.copy()
        one[len(s.free) + k] = 1
        columns.append(0 * dead if state.slack[k] else s.imbalance(one, flat) - dead)
    matrix, fit = np.array(columns).T.reshape(len(dead), -1), np.linalg.lstsq
    strut = any(p.rule == 'strut' for p in s.pieces)
    if len(s.pieces):
        z[len(s.free):] = fit(matrix, -dead, rcond=1e-9)[0] if strut else nnls(matrix, -dead)[0]
    for k, piece in enumerate(s.pieces):
        if piece.rule == 'pulled':
            z[len(s.free) + k] = state.given[k]
    return replace(state, z=z)


def least_energy(s, state, hauled=None, start=None):
    """Places of least potential energy where the hauled line has this length, or the caught load its height; and
    which lines are slack there."""
    pulled = np.array([p.rule == 'pulled' or state.caught and p.rule == 'driven' for p in s.pieces], bool)
    keep = np.flatnonzero(~pulled)
    strut = np.array([s.pieces[k].rule == 'strut' for k in keep], bool)
    kept = np.array([hauled if k == s.driven else s.kept[k] for k in keep])
    all_lengths = lambda x: s.piece_lengths(s.places(x))
    gaps = lambda x: (kept - all_lengths(x)[..., keep]) / s.size
    pulls = np.where(pulled, np.nan_to_num(state.given), 0.0)
    dead = s.weight / s.force
    if state.caught:  # its weight does no work, and what it may weigh does not hold back the search
        dead = np.where(np.arange(len(dead)) == s.node(s.rig.lifted), 0.0, dead)
    energy = lambda x: (s.places(x)[..., -1] @ dead + all_lengths(x) @ pulls) / s.size
    start = s.drawn[s.index] / s.size if start is None else start
    limits = [{'type': kind, 'fun': lambda x, w=which: gaps(x)[w], 'jac': lambda x, w=which: slope(gaps, x)[w]}
              for kind, which in (('eq', strut), ('ineq', ~strut)) if which.any()]
    if state.caught:
        row = s.free.index((s.node(s.rig.lifted), s.rig.dim - 1))
        limits.append({'type': 'eq', 'fun': lambda x: x[row:row + 1] - state.height / s.size,
                       'jac': lambda x: np.eye(len(x))[row:row + 1]})
    found = minimize(energy, start, jac=lambda x: slope(energy, x), constraints=limits, method='SLSQP',
                     options={'ftol': 1e-13, 'maxiter': 100})
    slack = np.zeros(len(s.pieces), bool)
    slack[keep] = gaps(found.x) > 1e-6
    return found.x, slack & [p.rule == 'tied' for p in s.pieces]


def hang(s, state):
    """Places without friction by least potential energy: of all lengths of the hauled line, the one that puts the
    load at its height."""
    if s.driven is None or state.caught:
        return least_energy(s, state)
    lifted = s.node(s.rig.lifted)
    as_drawn = s.piece_lengths(s.drawn)[s.driven]
    off = functools.lru_cache(maxsize=None)(
        lambda hauled: s.places(least_energy(s, state, hauled)[0])[lifted, -1] - state.height)
    grid = as_drawn * np.linspace(0.1, 1.5, 29)
    for a, b in sorted(zip(grid, grid[1:]), key=lambda pair: abs(sum(pair) - 2 * as_drawn)):
        if off(a) * off(b) <= 0:
            return least_energy(s, state, brentq(off, a, b, xtol=1e-7 * s.size))
    raise NoAnswer('the load does not come to its height')


def settle_hung(s, state):
    x, slack = hang(s, state)
    return s.settle(guess_tensions(s, s.places(x), replace(state, slack=slack)))


def find_shape(s):
    lifted = s.rig.lifted
    blank = s.blank(s.drawn[s.node(lifted), -1] if lifted else 0.0)
    pushing = None
    try:
        state = s.settle(guess_tensions(s, s.drawn, blank))
        if s.driven is not None and s.pull_of(s.driven, state) < -1e-9 * s.force:
            pushing = state  # believed only where hanging finds none that pulls
        elif np.abs(s.places(state.z) - s.drawn).max() < 0.5 * s.size:
            return state
    except NoAnswer:
        pass
    try:
        return settle_hung(s, blank)
    except NoAnswer:
        if not pushing:
            raise
        return pushing


def shape(s):
    """The equilibrium without friction, if it is one that the contract lets be printed."""
    state = find_shape(s)
    moved = np.linalg.norm(s.places(state.z) - s.drawn, axis=1).max()
    if moved > s.size / 4 and any(p.rule == 'strut' for p in s.pieces):
        raise NoAnswer('far from the drawing, with a spar')
    stand(s, state)
    return state


def fallen_shape(s):
    """Where a rig comes to rest after a loss: where it was, if it stands there, else as it hangs."""
    found = []
    for seek in (lambda: s.settle(guess_tensions(s, s.drawn, s.blank(0.0))), lambda: settle_hung(s, s.blank(0.0))):
        try:
            state = seek()
            stand(s, state)
            return state
        except NoAnswer as reason:
            found.append(reason)
    raise found[-1]


def stand(s, state):
    """Raise NoAnswer unless the lines alone say how the load is shared, and nothing moves when it is touched."""
    x, tensions = np.split(state.z, [len(s.free)])
    pushing = s.driven is not None and s.pull_of(s.driven, state) < -1e-9 * s.force  # no rope stands so: it runs away
    at = s.places(state.z)
    if s.lengths(at).min(initial=np.inf) < EQUAL * s.size:
        raise NoAnswer('a body runs up against another')
    spare = s.kept - s.piece_lengths(at)
    taut = [k for k, p in enumerate(s.pieces) if p.rule != 'pulled'
            and (not state.slack[k] or spare[k] < EQUAL * s.size)]
    parts = slope(lambda x: s.lengths(s.places(x)), x) / s.size
    pieces = (s.member.T @ parts)[taut].reshape(len(taut), len(x))
    values = np.linalg.svd(pieces, compute_uv=False)
    if len(taut) > len(x) or taut and values[-1] < 1e-8 * values[0]:
        raise NoAnswer('lines share a load by stiffness alone')
    holding = [s.pieces[k].rule != 'tied' or tensions[k] > 1e-9 for k in taut]
    # Motions that keep the length of every line that pulls.
    free = np.linalg.svd(pieces[holding])[2][sum(holding):].T
    at_pulls = lambda x: np.concatenate([x, np.broadcast_to(tensions, x.shape[:-1] + tensions.shape)], -1)
    flat = replace(state, sense=0 * state.sense)
    curve = free.T @ slope(lambda x: -s.imbalance(at_pulls(x), flat), x) @ free
    stiffness, ways = np.linalg.eigh((curve + curve.T) / 2)
    for stiff, way in zip(stiffness, ways.T):
        if stiff < -SOFT and not pushing:
            raise NoAnswer('falls over when touched')
        if stiff < SOFT and np.abs(parts @ free @ way).max() > 1e-4:
            raise NoAnswer('a mechanism')
