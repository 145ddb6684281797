"""A rig as arrays, the laws that hold in it, and Newton's method on them without exact derivatives.

Where a rig hangs is found by hanging.py, what moves by motion.py, what is left after a loss by loss.py.
"""
import math
from dataclasses import dataclass, replace

import numpy as np

from rigfile import LINES, TIES

STEP = 1e-6       # of a difference quotient, in scaled unknowns
EQUAL = 1e-5      # lengths that differ by less, of the rig's size, count as equal
SOLVED = 1e-10    # scaled residual of a solution


class NoAnswer(Exception):
    """This oracle finds no equilibrium."""


class Impossible(Exception):
    """The case cannot be: with a pull below zero, or since a load falls."""


@dataclass
class Piece:
    line: object
    first: int             # part
    count: int
    rule: str              # tied, strut, pulled or driven
    hand: object = None
    hand_first: bool = False


@dataclass
class Run:
    thing: object
    before: int            # part
    piece: int


@dataclass
class State:
    z: np.ndarray          # free coordinates over size, then a tension over force for each piece
    sense: np.ndarray      # one a run: +1 tension rises along the path
    slack: np.ndarray      # one a piece
    height: float          # of the lifted load
    given: np.ndarray      # one a piece: the tension at its hand, where that is given, over force
    caught: bool = False   # the load is held at its height, and the unknown of the driven piece is what holds it
    lean: np.ndarray = None    # one vector a node: acceleration over gravity
    steady: bool = True    # its inertia is that of its own motion
    sound: float = 1.0     # least over greatest singular value of the last Jacobian
    undecided: tuple = ()
    flow: np.ndarray = None
    growth: np.ndarray = None  # of each part's length, for one unit of lift
    rise: np.ndarray = None    # motion of each node, likewise


def unit(v):
    length = np.sqrt((v * v).sum(-1, keepdims=True))
    return v / np.maximum(length, 1e-300)


def slope(f, x):
    """Difference quotients of f, one column an unknown."""
    steps = STEP * np.eye(len(x))
    return ((f(x + steps) - f(x - steps)) / (2 * STEP)).T


class Statics:
    def __init__(self, rig):
        self.rig = rig
        roots = [i for i in rig.of('anchor', 'block', 'fairlead', 'joint', 'load', 'hand') if not i.on]
        self.nodes = {item: k for k, item in enumerate(roots)}
        self.drawn = np.array([item.at for item in roots], float)
        guided = {self.node(item) for item in rig.items if 'guide' in item.keys}
        self.fixed = [item.kind in ('anchor', 'hand') for item in roots]
        self.free = [(k, axis) for k in range(len(roots)) if not self.fixed[k]
                     for axis in range(rig.dim) if axis == rig.dim - 1 or k not in guided]
        self.index = tuple(np.array(self.free, int).reshape(-1, 2).T)
        self.parts, self.pieces, self.runs = [], [], []
        for line in rig.of(*LINES):
            self.add_line(line)
        self.ends = np.array([[self.node(a), self.node(b)] for _, a, b in self.parts], int).reshape(-1, 2)
        self.size = float(np.linalg.norm(np.ptp(self.drawn, axis=0))) or 1.0
        self.weigh()
        self.follow = self.carry_over()
        self.owner = np.concatenate([[k] * p.count for k, p in enumerate(self.pieces)] or [[]]).astype(int)
        self.member = (self.owner[:, None] == np.arange(len(self.pieces))).astype(float)
        self.kept = self.lengths_kept()
        self.driven = next((k for k, p in enumerate(self.pieces) if p.rule == 'driven'), None)

    # --- the rig as arrays ---

    def node(self, thing):
        while thing.on:
            thing = thing.on
        return self.nodes[thing]

    def add_line(self, line):
        stops = [thing for thing, _ in line.stops]
        first = len(self.parts)
        self.parts += [(line, a, b) for a, b in zip(stops, stops[1:])]
        cuts = [k for k, s in enumerate(stops) if k in (0, len(stops) - 1) or s.kind in TIES]
        for a, b in zip(cuts, cuts[1:]):
            hand = next((s for s in (stops[a], stops[b]) if s.kind == 'hand'), None)
            rule = ('strut' if line.kind == 'spar' else 'pulled' if hand and hand.pull is not None
                    else 'tied' if not hand or self.rig.holding else 'driven')
            self.runs += [Run(stops[k], first + k - 1, len(self.pieces)) for k in range(a + 1, b)]
            self.pieces.append(Piece(line, first + a, b - a, rule, hand, stops[a] is hand))

    def weigh(self):
        self.weight = np.zeros(len(self.nodes))
        for item in self.rig.items:
            if item.kind == 'spar':
                for thing, _ in item.stops:
                    self.weight[self.node(thing)] += item.weight / 2
            elif item.weight or item.dangling:
                self.weight[self.node(item)] += item.weight + sum(weight for _, weight, _ in item.dangling)
        pulls = sum(p.hand.pull for p in self.pieces if p.rule == 'pulled')
        self.force = float(self.weight[[not f for f in self.fixed]].sum() + pulls) or 1.0

    def carry_over(self):
        """Which runs raise the tension of a part above that of its piece: the hand's end, else the first part."""
        follow = np.zeros((len(self.parts), len(self.runs)))
        for r, run in enumerate(self.runs):
            piece = self.pieces[run.piece]
            span = range(piece.first, piece.first + piece.count)
            hand_last = piece.hand and not piece.hand_first
            for part in span:
                if hand_last and part <= run.before:
                    follow[part, r] = -1
                elif not hand_last and part > run.before:
                    follow[part, r] = 1
        return follow

    def lengths_kept(self):
        drawn = self.piece_lengths(self.drawn)
        kept = drawn.copy()
        for line in {p.line for p in self.pieces}:
            mine = [k for k, p in enumerate(self.pieces) if p.line is line]
            for k, length in zip(mine, line.kept or [line.length] * len(mine)):
                kept[k] = length or drawn[k]
        return kept

    def blank(self, height):
        """A state to fill: nothing slack, no friction, known pulls as they are."""
        given = np.array([p.hand.pull / self.force if p.rule == 'pulled' else np.nan for p in self.pieces])
        return State(None, np.zeros(len(self.runs)), np.zeros(len(self.pieces), bool), height, given)

    def places(self, z):
        """Node positions for scaled unknowns; works on stacks of them too."""
        at = np.empty(z.shape[:-1] + self.drawn.shape)
        at[...] = self.drawn
        at[(..., *self.index)] = z[..., :len(self.free)] * self.size
        return at

    def directions(self, at):
        return at[..., self.ends[:, 1], :] - at[..., self.ends[:, 0], :]

    def lengths(self, at):
        return np.sqrt((self.directions(at) ** 2).sum(-1))

    def piece_lengths(self, at):
        return self.lengths(at) @ self.member

    def pull_of(self, k, state):
        """The tension of piece k where its unknown counts from, in newtons."""
        return self.force * (state.given[k] if state.caught and k == self.driven else state.z[len(self.free) + k])

    # --- the laws ---

    def rises(self, heading):
        """Logarithm of the ratio of tensions that friction allows at each run."""
        rises = np.zeros(heading.shape[:-2] + (len(self.runs),))
        for r, run in enumerate(self.runs):
            if not run.thing.slip:
                continue
            a, b = heading[..., run.before, :], heading[..., run.before + 1, :]
            norm = lambda v: np.sqrt((v * v).sum(-1))
            wrap = 2 * np.arctan2(norm(b - a), norm(b + a)) if run.thing.wrap is None else run.thing.wrap
            if run.thing.slip[0] == 'bend':
                rises[..., r] = run.thing.slip[1] * (wrap + 2 * math.pi * run.thing.slip[2])
                continue
            # The larger root of (q - 1)^2 = f^2 (1 + q^2 - 2 q cos w), q the ratio of tensions.
            f2, c = run.thing.slip[1] ** 2, np.cos(wrap)
            root = np.sqrt(2 * f2 * (2 - f2 * (1 + c))) * np.abs(np.sin(wrap / 2))
            rises[..., r] = np.log((1 - f2 * c + root) / (1 - f2))
        return rises

    def tensions(self, z, state, heading=None):
        """Tension in each part, over the rig's force."""
        heading = unit(self.directions(self.places(z))) if heading is None else heading
        base = z[..., len(self.free):]
        if state.caught:
            base = base.copy()
            base[..., self.driven] = state.given[self.driven]
        return base[..., self.owner] * np.exp((self.rises(heading) * state.sense) @ self.follow.T)

    def node_forces(self, z, state):
        heading = unit(self.directions(self.places(z)))
        pull = self.tensions(z, state, heading)[..., None] * heading
        total = np.zeros(z.shape[:-1] + self.drawn.shape)
        total[..., :, -1] -= self.weight / self.force
        if state.lean is not None:
            total -= self.weight[:, None] * state.lean / self.force
        if state.caught:
            total[..., self.node(self.rig.lifted), -1] += z[..., len(self.free) + self.driven]
        for part, (a, b) in enumerate(self.ends):
            total[..., a, :] += pull[..., part, :]
            total[..., b, :] -= pull[..., part, :]
        return total

    def imbalance(self, z, state):
        """The forces in all free coordinates."""
        return self.node_forces(z, state)[(..., *self.index)]

    def residual(self, z, state):
        at = self.places(z)
        rest = (self.piece_lengths(at) - self.kept) / self.size
        rows = np.empty(z.shape[:-1] + (len(self.pieces),))
        for k, piece in enumerate(self.pieces):
            tension = z[..., len(self.free) + k]
            if state.slack[k]:
                rows[..., k] = tension
            elif piece.rule == 'pulled':
                rows[..., k] = tension - state.given[k]
            elif piece.rule == 'driven':
                rows[..., k] = (at[..., self.node(self.rig.lifted), -1] - state.height) / self.size
            else:
                rows[..., k] = rest[..., k]
        return np.concatenate([self.imbalance(z, state), rows], -1)

    # --- solving ---

    def newton(self, state, steps=80):
        """Newton with difference quotients, halved steps and the least change where the answer is not unique."""
        z = state.z.copy()
        off = self.residual(z, state)
        now = np.linalg.norm(off)
        sound = 1.0
        for _ in range(steps):
            jacobian = slope(lambda z: self.residual(z, state), z)
            if not np.isfinite(jacobian).all():
                break
            left, values, right = np.linalg.svd(jacobian)
            sound = values[-1] / values[0] if values[0] else 0.0
            keep = values > 1e-9 * values[0]
            move = -right[keep].T @ ((left[:, keep].T @ off) / values[keep])
            share = 1.0
            while share > 1e-4 and not np.linalg.norm(self.residual(z + share * move, state)) < now:
                share /= 2
            if share <= 1e-4:
                break
            z = z + share * move
            off = self.residual(z, state)
            now = np.linalg.norm(off)
            if now < 1e-14:
                break
        if not now < SOLVED * max(1.0, np.nanmax(state.given, initial=0.0)):
            raise NoAnswer(f'residual {now:.1e}')
        return replace(state, z=z, sound=sound)

    def settle(self, state):
        """Newton, letting go of lines that would push and taking back those that are too long."""
        for _ in range(3 * len(self.pieces) + 3):
            state = self.newton(state)
            lengths = self.piece_lengths(self.places(state.z))
            slack = state.slack.copy()
            for k, piece in enumerate(self.pieces):
                if piece.rule == 'tied' and state.slack[k]:
                    slack[k] = lengths[k] <= self.kept[k] + 1e-9 * self.size
                elif piece.rule == 'tied':
                    slack[k] = state.z[len(self.free) + k] < -1e-9
            if (slack == state.slack).all():
                return state
            state = replace(state, slack=slack)
        raise NoAnswer('slack lines keep changing')
