"""What moves in a rig, and each case worked: friction against the motion, inertia, a load that is caught.

Motion is never differentiated: the load is put a little higher and a little lower, and everything solved again.
"""
from dataclasses import replace

import numpy as np

import hanging
from statics import NoAnswer

LIFT = 3e-6       # by which the load is moved to see what rope runs, of the rig's size
BEND = 3e-4       # a path that bends more than this over its length is measured over a shorter one
RUNS = 1e-6       # less than this share of the greatest run of rope is none (the contract's figure)
DIRECTION = {'raise': 1, 'lower': -1, 'start': 1, 'stop': -1}
INERTIA = ('start', 'stop')


def spread(forced, count):
    return np.array([(forced or {}).get(r, 0) for r in range(count)])


def with_friction(s, state, sense):
    """The same rig with friction that acts in these senses; in smaller steps where one is too bold."""
    try:
        return s.settle(replace(state, sense=sense.astype(float)))
    except NoAnswer:
        for share in np.linspace(0, 1, 21):
            state = s.settle(replace(state, sense=share * sense))
        return state


def move(s, state):
    """The state with how far rope runs over each stop, along the path, for one unit of lift."""
    here, lift = s.places(state.z), LIFT
    while True:
        up, down = (s.newton(replace(state, height=state.height + way * lift * s.size)) for way in (1, -1))
        above, below = s.places(up.z), s.places(down.z)
        bend, run = np.abs(above + below - 2 * here).max(), np.abs(above - below).max()
        if bend < BEND * run or lift < 1e-8:
            break
        lift /= 10
    span = 2 * lift * s.size
    growth = (s.lengths(above) - s.lengths(below)) / span
    flow = np.zeros(len(s.runs))
    for r, run in enumerate(s.runs):
        piece = s.pieces[run.piece]
        flow[r] = (growth[run.before + 1:piece.first + piece.count].sum() if piece.hand_first
                   else -growth[piece.first:run.before + 1].sum())
    return replace(state, flow=flow, growth=growth, rise=(above - below) / span)


def sense_of(s, flow, slack):
    live = np.array([not slack[run.piece] for run in s.runs], bool)
    greatest = np.abs(flow[live]).max() if live.any() else 0.0
    return np.where(live & (np.abs(flow) > RUNS * greatest), np.sign(flow), 0).astype(int)


def in_motion(s, case, shape, sense):
    """The case with friction in these senses, and with the inertia of what moves: of its own motion.

    Motion gives inertia and inertia a shape that moves otherwise: Anderson's mixing of the last two rounds.
    """
    state = move(s, with_friction(s, shape, sense))
    if case not in INERTIA:
        return state
    share = s.rig.acceleration / s.rig.gravity
    lean, before = np.zeros_like(state.rise), None
    for _ in range(60):
        wanted = share * state.rise
        off = wanted - lean
        if np.abs(off).max() < 1e-9 * share:
            return state
        mixed = wanted
        if before and np.abs(off - before[1]).max() > 0:
            change = off - before[1]
            mixed = wanted - (off * change).sum() / (change * change).sum() * (wanted - before[0])
        before, lean = (wanted, off), mixed
        state = move(s, s.settle(replace(state, lean=lean)))
    return replace(state, steady=False)


def catch(s, shape):
    """The load held at its height, and every hand pulling all it can; without friction."""
    given = np.array([np.nan if not p.hand else 0.0 if p.hand.rests else max(p.hand.limit, p.hand.pull or 0.0) / s.force
                      for p in s.pieces])
    held = replace(shape, given=given, caught=True, growth=None)
    z = held.z.copy()
    z[len(s.free) + s.driven] = 0.0
    try:
        return s.settle(replace(held, z=z))
    except NoAnswer:
        return hanging.settle_hung(s, held)


def resting(s, shape, forced):
    """At rest: without friction, or with friction either way where nobody hauls."""
    lone = s.driven is None
    live = tuple(r for r, run in enumerate(s.runs) if not shape.slack[run.piece])
    state = replace(shape, undecided=live if lone else ())
    return with_friction(s, state, spread(forced, len(s.runs))) if forced else state


def jammed(s, shape, forced):
    """The load caught, and friction as it is in raise."""
    raised = work(s, 'raise', shape)
    state = with_friction(s, catch(s, shape), raised.sense + spread(forced, len(s.runs)))
    return replace(state, undecided=raised.undecided)


def work(s, case, shape, forced=None):
    """One case from the shape without friction. `forced` maps undecided runs to a sense."""
    if case in ('hold', 'lost', 'drop'):
        return resting(s, shape, forced)
    if case == 'jam':
        return jammed(s, shape, forced)
    way = DIRECTION[case]
    first = way * sense_of(s, shape.flow, shape.slack)
    sense, turned, undecided = first.copy(), set(), {r for r, one in enumerate(first) if one == 0}
    for _ in range(3 * len(s.runs) + 2):
        state = in_motion(s, case, shape, sense)
        again = way * sense_of(s, state.flow, state.slack)
        wrong = [r for r in range(len(s.runs)) if r not in undecided and again[r] != sense[r]]
        if not wrong:
            break
        for r in wrong:
            if r in turned or again[r] == 0:
                undecided.add(r)
                sense[r] = 0
            else:
                turned.add(r)
                sense[r] = -sense[r]
    if forced:
        state = in_motion(s, case, shape, sense + spread(forced, len(sense)))
    if not state.steady:
        raise NoAnswer('inertia and motion do not settle')
    return replace(state, undecided=tuple(sorted(undecided)))
