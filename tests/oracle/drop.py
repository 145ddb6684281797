"""A load that has fallen free and is caught: the peak, from the balance of work and energy, and what a part is held
against its rating at.

What the load brings into each part is found from the rig with its load thrice as heavy; the peak by bisection.
"""
import copy
import math
from dataclasses import dataclass

import motion
from statics import Impossible, unit

TOO_LOW = 0.7     # measured peaks with rigid anchors: the model's over this
TINY = 1e-6       # a share of the load that is none; a body that has not moved, of the rig's size


@dataclass
class Caught:
    peak: float
    checked: float
    weight: float
    stiffness: float
    doubtful: bool


def heavier(rig, weight):
    """The rig with all that falls weighing so much."""
    other = copy.deepcopy(rig)
    load = next(item for item in other.items if item.fall is not None)
    load.weight += weight - falling_weight(other)
    return other


def root(thing):
    while thing.on:
        thing = thing.on
    return thing


def falling_weight(rig):
    load = root(next(item for item in rig.items if item.fall is not None))
    spars = sum(spar.weight / 2 for spar in rig.of('spar') for thing, _ in spar.stops if root(thing) is load)
    return spars + sum(item.weight for item in rig.items if item.kind != 'spar' and root(item) is load)


def ratio(run, pulls):
    """Greater over lesser tension at a stop where rope runs over it."""
    thing = run.thing
    if not thing.slip:
        return 1.0
    back, on = pulls
    wrap = thing.wrap if thing.wrap is not None else math.pi - math.acos(max(-1.0, min(1.0, float(back @ on))))
    if thing.slip[0] == 'bend':
        return math.exp(thing.slip[1] * (wrap + 2 * math.pi * thing.slip[2]))
    f = thing.slip[1]
    b = (1 - f * f * math.cos(wrap)) / (1 - f * f)
    return b + math.sqrt(max(0.0, b * b - 1))


def holds(thing):
    return thing.kind == 'fairlead' and bool(thing.slip) and thing.slip[2] > 0


def reach(s, at, start):
    """{part: (whether it gives, how much of its tension friction leaves)}, for a load whose root is `start`."""
    found, heading = {}, unit(s.directions(at))
    for piece in s.pieces:
        stops = [s.parts[piece.first][1]] + [s.parts[piece.first + k][2] for k in range(piece.count)]
        wanted = [k for k, stop in enumerate(stops) if root(stop) is start]
        wanted = wanted or [k for k, stop in enumerate(stops) if not s.fixed[s.node(stop)]]
        for k in wanted:
            for way in (1, -1):
                gives, left, n = 1.0, 1.0, k if way > 0 else k - 1
                while 0 <= n < piece.count:
                    old = found.get(piece.first + n, (0.0, 0.0))
                    found[piece.first + n] = (max(old[0], gives), max(old[1], left))
                    run = next((r for r in s.runs if r.before == piece.first + min(n, n + way)), None)
                    n += way
                    if run and 0 <= n < piece.count:
                        pulls = (-heading[run.before], heading[run.before + 1])
                        gives, left = (0.0, 0.0) if holds(run.thing) else (gives, left / ratio(run, pulls))
    return found


def peak_by_energy(weight, fall, stiffness):
    """The greatest force of a spring that stops a weight: by halving, where it has taken up all that is lost."""
    surplus = lambda force: weight * (fall + force / stiffness) - force * force / (2 * stiffness)
    low, high = weight, 2 * weight
    while surplus(high) > 0:
        high *= 2
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (middle, high) if surplus(middle) > 0 else (low, middle)
    return (low + high) / 2


def behind_turns(s, hand):
    return any(holds(run.thing) for run in s.runs if s.pieces[run.piece].hand is hand)


def caught(s, shape, prepare, tensions_of):
    """What catching the load comes to. Raises Impossible."""
    rig = s.rig
    load = next(item for item in rig.items if item.fall is not None)
    weight = falling_weight(rig)
    hold = motion.work(s, 'hold', shape)
    thrice, shape_thrice = prepare(heavier(rig, 3 * weight))
    heavy = motion.work(thrice, 'hold', shape_thrice)
    share = (tensions_of(thrice, heavy) - tensions_of(s, hold)) / (2 * weight)
    at = s.places(hold.z)
    lengths, reached = s.lengths(at), reach(s, at, root(load))
    giving = [0.0, 0.0]
    for p, (line, _, _) in enumerate(s.parts):
        if line.stretch and abs(share[p]) > TINY:
            each = share[p] ** 2 * lengths[p] * line.stretch[0] / line.stretch[1]
            giving = [sum_ + each * way for sum_, way in zip(giving, reached.get(p, (0.0, 0.0)))]
    if not all(giving):
        raise Impossible('nothing gives')
    peak = peak_by_energy(weight, load.fall, 1 / giving[0])
    checked = max(peak, peak_by_energy(weight, load.fall, 1 / giving[1])) / TOO_LOW
    return Caught(peak, checked, weight, 1 / giving[0],
                  doubtful(s, thrice, (hold, heavy), share, peak, tensions_of, prepare, load))


def doubtful(s, thrice, states, share, peak, tensions_of, prepare, load):
    """Whether more moves than the load, somebody holds it behind turns, or a line is stretched beyond what is
    stated."""
    moved = abs(s.places(states[0].z) - thrice.places(states[1].z)).max() > TINY * s.size
    takes = [p for p in range(len(s.parts)) if abs(share[p]) > TINY]
    bodies = {root(thing) for p in takes for thing in s.parts[p][1:]}
    along = any(s.weight[s.nodes[body]] > 0 and not s.fixed[s.nodes[body]] and body is not root(load)
                for body in bodies)
    hands = {s.pieces[s.owner[p]].hand for p in takes} - {None}
    top, shape = prepare(heavier(s.rig, peak))
    tension = tensions_of(top, motion.work(top, 'hold', shape))
    beyond = any(s.parts[p][0].stretch and tension[p] > s.parts[p][0].stretch[1] * (1 + 1e-9) for p in takes)
    return bool(moved or along or beyond or any(behind_turns(s, hand) for hand in hands))
