"""Where the bodies of a rig hang, and every tension, found without exact derivatives.

The rig without friction starts from its drawing; where that leads nowhere, potential energy is minimised instead.
Motion is never differentiated: the load is put a little higher and a little lower, and everything solved again.
"""
import math
from dataclasses import dataclass, replace

import numpy as np
from scipy.optimize import brentq, minimize, nnls

from rigfile import LINES, TIES

STEP = 1e-6       # of a difference quotient, in scaled unknowns
LIFT = 3e-6       # by which the load is moved to see what rope runs, of the rig's size
BEND = 3e-4       # a path that bends more than this over its length is measured over a shorter one
RUNS = 1e-6       # less than this share of the greatest run of rope is none (the contract's figure)
EQUAL = 1e-5      # lengths that differ by less, of the rig's size, count as equal
SOFT = 1e-7       # less stiffness than this, of the rig's force over its size, is none
SOLVED = 1e-10    # scaled residual of a solution


class NoAnswer(Exception):
    """This oracle finds no equilibrium."""


class Impossible(Exception):
    """There is an equilibrium, but only with a pull below zero."""


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
        self.parts, self.pieces, self.runs = [], [], []
        for line in rig.of(*LINES):
            self.add_line(line)
        self.ends = np.array([[self.node(a), self.node(b)] for _, a, b in self.parts])
        self.size = float(np.linalg.norm(np.ptp(self.drawn, axis=0))) or 1.0
        self.weigh()
        self.follow = self.carry_over()
        lengths = self.lengths(self.drawn)
        self.kept = np.array([p.line.length if p.line.length else self.piece_length(p, lengths) for p in self.pieces])
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
            rule = ('strut' if line.kind == 'spar' else 'tied' if not hand
                    else 'driven' if hand.pull is None else 'pulled')
            self.runs += [Run(stops[k], first + k - 1, len(self.pieces)) for k in range(a + 1, b)]
            self.pieces.append(Piece(line, first + a, b - a, rule, hand, stops[a] is hand))

    def weigh(self):
        self.weight = np.zeros(len(self.nodes))
        for item in self.rig.items:
            if item.kind == 'spar':
                for thing, _ in item.stops:
                    self.weight[self.node(thing)] += item.weight / 2
            elif item.weight:
                self.weight[self.node(item)] += item.weight
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

    def places(self, z):
        """Node positions for scaled unknowns; works on stacks of them too."""
        at = np.broadcast_to(self.drawn, z.shape[:-1] + self.drawn.shape).copy()
        for k, (node, axis) in enumerate(self.free):
            at[..., node, axis] = z[..., k] * self.size
        return at

    def directions(self, at):
        return at[..., self.ends[:, 1], :] - at[..., self.ends[:, 0], :]

    def lengths(self, at):
        return np.sqrt((self.directions(at) ** 2).sum(-1))

    def piece_length(self, piece, lengths):
        return lengths[..., piece.first:piece.first + piece.count].sum(-1)

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

    def tensions(self, z, sense, heading=None):
        """Tension in each part, over the rig's force."""
        heading = unit(self.directions(self.places(z))) if heading is None else heading
        owner = np.concatenate([[k] * p.count for k, p in enumerate(self.pieces)]).astype(int)
        base = z[..., len(self.free):][..., owner]
        return base * np.exp((self.rises(heading) * sense) @ self.follow.T)

    def node_forces(self, z, sense):
        heading = unit(self.directions(self.places(z)))
        pull = self.tensions(z, sense, heading)[..., None] * heading
        total = np.zeros(z.shape[:-1] + self.drawn.shape)
        total[..., :, -1] -= self.weight / self.force
        for part, (a, b) in enumerate(self.ends):
            total[..., a, :] += pull[..., part, :]
            total[..., b, :] -= pull[..., part, :]
        return total

    def residual(self, z, state):
        total = self.node_forces(z, state.sense)
        at = self.places(z)
        lengths = self.lengths(at)
        rows = [total[..., node, axis] for node, axis in self.free]
        for k, piece in enumerate(self.pieces):
            tension = z[..., len(self.free) + k]
            if state.slack[k]:
                rows.append(tension)
            elif piece.rule == 'pulled':
                rows.append(tension - piece.hand.pull / self.force)
            elif piece.rule == 'driven':
                rows.append((at[..., self.node(self.rig.lifted), -1] - state.height) / self.size)
            else:
                rows.append((self.piece_length(piece, lengths) - self.kept[k]) / self.size)
        return np.stack(rows, -1)

    # --- solving ---

    def newton(self, state, steps=80):
        """Newton with difference quotients, halved steps and the least change where the answer is not unique."""
        z = state.z.copy()
        now = np.linalg.norm(self.residual(z, state))
        sound = 1.0
        for _ in range(steps):
            jacobian = slope(lambda z: self.residual(z, state), z)
            if not np.isfinite(jacobian).all():
                break
            values = np.linalg.svd(jacobian, compute_uv=False)
            sound = values[-1] / values[0]
            move = np.linalg.lstsq(jacobian, -self.residual(z, state), rcond=1e-9)[0]
            share = 1.0
            while share > 1e-4 and not np.linalg.norm(self.residual(z + share * move, state)) < now:
                share /= 2
            if share <= 1e-4:
                break
            z = z + share * move
            now = np.linalg.norm(self.residual(z, state))
            if now < 1e-14:
                break
        if not now < SOLVED:
            raise NoAnswer(f'residual {now:.1e}')
        return replace(state, z=z, sound=sound)

    def settle(self, state):
        """Newton, letting go of lines that would push and taking back those that are too long."""
        for _ in range(3 * len(self.pieces) + 3):
            state = self.newton(state)
            lengths = self.lengths(self.places(state.z))
            slack = state.slack.copy()
            for k, piece in enumerate(self.pieces):
                if piece.rule == 'tied' and state.slack[k]:
                    slack[k] = self.piece_length(piece, lengths) <= self.kept[k] + 1e-9 * self.size
                elif piece.rule == 'tied':
                    slack[k] = state.z[len(self.free) + k] < -1e-9
            if (slack == state.slack).all():
                return state
            state = replace(state, slack=slack)
        raise NoAnswer('slack lines keep changing')

    def guess_tensions(self, at, slack):
        """Pulls, none below zero, that come nearest to balance at these places."""
        z = np.zeros(len(self.free) + len(self.pieces))
        for k, (node, axis) in enumerate(self.free):
            z[k] = at[node, axis] / self.size
        sense = np.zeros(len(self.runs))
        pick = lambda z: np.array([self.node_forces(z, sense)[node, axis] for node, axis in self.free])
        dead, columns = pick(z), []
        for k in range(len(self.pieces)):
            one = z.copy()
            one[len(self.free) + k] = 1
            columns.append(0 * dead if slack[k] else pick(one) - dead)
        matrix, fit = np.array(columns).T, np.linalg.lstsq
        strut = any(p.rule == 'strut' for p in self.pieces)
        z[len(self.free):] = fit(matrix, -dead, rcond=1e-9)[0] if strut else nnls(matrix, -dead)[0]
        for k, piece in enumerate(self.pieces):
            if piece.rule == 'pulled':
                z[len(self.free) + k] = piece.hand.pull / self.force
        return z

    def least_energy(self, hauled):
        """Places of least potential energy where the hauled line has this length, and which lines are slack there."""
        keep = [k for k, p in enumerate(self.pieces) if p.rule != 'pulled']
        strut = np.array([self.pieces[k].rule == 'strut' for k in keep])
        kept = np.array([hauled if k == self.driven else self.kept[k] for k in keep])
        part_lengths = lambda x: self.lengths(self.places(x))
        all_lengths = lambda x: np.stack([self.piece_length(p, part_lengths(x)) for p in self.pieces], -1)
        gaps = lambda x: (kept - all_lengths(x)[..., keep]) / self.size
        pulls = np.array([p.hand.pull if p.rule == 'pulled' else 0.0 for p in self.pieces])
        energy = lambda x: (self.places(x)[..., -1] @ self.weight + all_lengths(x) @ pulls) / self.force / self.size
        start = np.array([self.drawn[n, a] for n, a in self.free]) / self.size
        limits = [{'type': kind, 'fun': lambda x, w=which: gaps(x)[w],
                   'jac': lambda x, w=which: slope(gaps, x)[w]}
                  for kind, which in (('eq', strut), ('ineq', ~strut)) if which.any()]
        found = minimize(energy, start, jac=lambda x: slope(energy, x), constraints=limits, method='SLSQP',
                         options={'ftol': 1e-13, 'maxiter': 300})
        slack = np.zeros(len(self.pieces), bool)
        slack[keep] = gaps(found.x) > 1e-6
        return found.x, slack & [p.rule == 'tied' for p in self.pieces]

    def hang(self, height):
        """The shape without friction by least potential energy: of all lengths of the hauled line, the one that
        puts the load at its height."""
        if self.driven is None:
            return self.least_energy(None)
        lifted = self.node(self.rig.lifted)
        as_drawn = self.piece_length(self.pieces[self.driven], self.lengths(self.drawn))
        off = lambda hauled: self.places(self.least_energy(hauled)[0])[lifted, -1] - height
        grid = as_drawn * np.linspace(0.1, 1.5, 29)
        miss = [off(h) for h in grid]
        crossings = [k for k in range(len(grid) - 1) if miss[k] * miss[k + 1] <= 0]
        if not crossings:
            raise NoAnswer('the load does not come to its height')
        k = min(crossings, key=lambda k: abs(grid[k] + grid[k + 1] - 2 * as_drawn))
        return self.least_energy(brentq(off, grid[k], grid[k + 1], xtol=1e-7 * self.size))

    def shape(self):
        """The equilibrium without friction, if it is one that the contract lets be printed."""
        state = self.find_shape()
        moved = np.linalg.norm(self.places(state.z) - self.drawn, axis=1).max()
        if moved > self.size / 4 and any(p.rule == 'strut' for p in self.pieces):
            raise NoAnswer('far from the drawing, with a spar')
        self.stand(state)
        return state

    def stand(self, state):
        """Raise NoAnswer unless the lines alone say how the load is shared, and nothing moves when it is touched."""
        x, tensions = np.split(state.z, [len(self.free)])
        lengths = self.lengths(self.places(state.z))
        if lengths.min() < EQUAL * self.size:
            raise NoAnswer('a body runs up against another')
        spare = [self.kept[k] - self.piece_length(p, lengths) for k, p in enumerate(self.pieces)]
        taut = [k for k, p in enumerate(self.pieces) if p.rule != 'pulled'
                and (not state.slack[k] or spare[k] < EQUAL * self.size)]
        parts = slope(lambda x: self.lengths(self.places(x)), x) / self.size
        pieces = np.array([parts[self.pieces[k].first:][:self.pieces[k].count].sum(0) for k in taut])
        pieces = pieces.reshape(len(taut), len(x))
        values = np.linalg.svd(pieces, compute_uv=False)
        if len(taut) > len(x) or taut and values[-1] < 1e-8 * values[0]:
            raise NoAnswer('lines share a load by stiffness alone')
        holding = [self.pieces[k].rule != 'tied' or tensions[k] > 1e-9 for k in taut]
        # Motions that keep the length of every line that pulls.
        free = np.linalg.svd(pieces[holding])[2][sum(holding):].T
        at_pulls = lambda x: np.concatenate([x, np.broadcast_to(tensions, x.shape[:-1] + tensions.shape)], -1)
        forces = lambda x: self.node_forces(at_pulls(x), 0 * state.sense)
        pull = lambda x: -np.stack([forces(x)[..., n, a] for n, a in self.free], -1)
        curve = free.T @ slope(pull, x) @ free
        stiffness, ways = np.linalg.eigh((curve + curve.T) / 2)
        for stiff, way in zip(stiffness, ways.T):
            if stiff < -SOFT:
                raise NoAnswer('falls over when touched')
            if stiff < SOFT and np.abs(parts @ free @ way).max() > 1e-4:
                raise NoAnswer('a mechanism')

    def find_shape(self):
        lifted = self.rig.lifted
        height = self.drawn[self.node(lifted), -1] if lifted else 0.0
        no_slack = np.zeros(len(self.pieces), bool)
        blank = State(None, np.zeros(len(self.runs)), no_slack, height)
        pushing = None
        try:
            state = self.settle(replace(blank, z=self.guess_tensions(self.drawn, no_slack)))
            if self.driven is not None and state.z[len(self.free) + self.driven] < -1e-9:
                pushing = state  # believed only where hanging finds none that pulls
            elif np.abs(self.places(state.z) - self.drawn).max() < 0.5 * self.size:
                return state
        except NoAnswer:
            pass
        try:
            x, slack = self.hang(height)
            return self.settle(replace(blank, z=self.guess_tensions(self.places(x), slack), slack=slack))
        except NoAnswer:
            if not pushing:
                raise
            return pushing

    def with_friction(self, state, sense):
        """The same rig with friction that acts in these senses; in smaller steps where one is too bold."""
        try:
            return self.settle(replace(state, sense=sense.astype(float)))
        except NoAnswer:
            for share in np.linspace(0, 1, 21):
                state = self.settle(replace(state, sense=share * sense))
            return state

    def move(self, state):
        """The state with how far rope runs over each stop, along the path, for one unit of lift."""
        here, lift = self.places(state.z), LIFT
        while True:
            up, down = (self.newton(replace(state, height=state.height + way * lift * self.size)) for way in (1, -1))
            above, below = self.places(up.z), self.places(down.z)
            bend, run = np.abs(above + below - 2 * here).max(), np.abs(above - below).max()
            if bend < BEND * run or lift < 1e-8:
                break
            lift /= 10
        span = 2 * lift * self.size
        growth = (self.lengths(above) - self.lengths(below)) / span
        flow = np.zeros(len(self.runs))
        for r, run in enumerate(self.runs):
            piece = self.pieces[run.piece]
            flow[r] = (growth[run.before + 1:piece.first + piece.count].sum() if piece.hand_first
                       else -growth[piece.first:run.before + 1].sum())
        return replace(state, flow=flow, growth=growth, rise=(above - below) / span)

    def sense_of(self, flow, slack):
        live = np.array([not slack[run.piece] for run in self.runs], bool)
        greatest = np.abs(flow[live]).max() if live.any() else 0.0
        return np.where(live & (np.abs(flow) > RUNS * greatest), np.sign(flow), 0).astype(int)

    def work(self, case, shape=None, forced=None):
        """One case. `forced` maps undecided runs to a sense."""
        if not shape:
            shape = self.shape() if self.driven is None else self.move(self.shape())
        if case == 'hold':
            lone = self.driven is None
            undecided = tuple(range(len(self.runs))) if lone else ()
            state = replace(shape, undecided=undecided)
            return self.with_friction(state, spread(forced, len(self.runs))) if forced else state
        way = 1 if case == 'raise' else -1
        first = way * self.sense_of(shape.flow, shape.slack)
        sense, turned, undecided = first.copy(), set(), {r for r, s in enumerate(first) if s == 0}
        for _ in range(3 * len(self.runs) + 2):
            state = self.move(self.with_friction(shape, sense))
            again = way * self.sense_of(state.flow, state.slack)
            wrong = [r for r in range(len(self.runs)) if r not in undecided and again[r] != sense[r]]
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
            state = self.move(self.with_friction(state, sense + spread(forced, len(sense))))
        return replace(state, undecided=tuple(sorted(undecided)))


def spread(forced, count):
    return np.array([(forced or {}).get(r, 0) for r in range(count)])
